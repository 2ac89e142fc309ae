"""The hooks of version 1: what each is called with, what it does, and that its docs say the same.

The frozen list below changes only by an argument more.
"""

from __future__ import annotations

import doctest
import importlib.util
import inspect
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from wirecalc import tables
from wirecalc.jobs import sheet as jobsheet
from wirecalc.plugging import hooks
from wirecalc.testing import Outcome, check_plugin, plugin_set, run_command
from wirecalc.testing.plugins import HOOKS

PAGE = Path(__file__).parents[2] / "docs" / "hooks.md"
VERSION_1 = {  # the arguments that a hook is called with, and what it returns
    "wirecalc_calculations": ((), "Sequence[Calculation[Any] | Deferred]"),
    "wirecalc_tables": ((), "Sequence[Path]"),
    "wirecalc_cautions": ((), "Sequence[Caution]"),
    "wirecalc_house_rules": ((), "Sequence[HouseRule | RequiredChecks]"),
}
SIDECAR = """
title = "Shop crimps, invented"
purpose = "demonstration"
not_for = "work"
checked = "invented"
key = ["awg"]
[sources.shop]
title = "shop sheet, invented"
[columns.awg]
type = "integer"
[columns.minimum_lbf]
type = "number"
"""
PULL = {"wire": "18 AWG", "terminal": "ring"}


@pytest.fixture
def shop(tmp_path: Path) -> ModuleType:
    """The plugin that the page is, with the table that it speaks of."""
    source = re.findall(r"^```python\n(.*?)^```", PAGE.read_text(), re.DOTALL | re.MULTILINE)
    (tmp_path / "shop.py").write_text("\n".join(source), encoding="utf-8")
    folder = tmp_path / "shop_tables"
    folder.mkdir()
    (folder / "shop-crimps.toml").write_text(SIDECAR, encoding="utf-8")
    rows = "awg,minimum_lbf,source,confidence,copies,note\n18,25,shop,house,,\n"
    (folder / "shop-crimps.csv").write_text(rows, encoding="utf-8")
    spec = importlib.util.spec_from_file_location("shop", tmp_path / "shop.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture
def with_shop(shop: ModuleType) -> Iterator[Callable[..., Outcome]]:
    with plugin_set(shop):
        yield run_command


def test_hooks_are_those_of_version_1() -> None:
    assert set(HOOKS) == set(VERSION_1)
    for name, (arguments, returned) in VERSION_1.items():
        signature = inspect.signature(getattr(hooks, name))
        assert tuple(signature.parameters)[: len(arguments)] == arguments
        assert signature.return_annotation == returned


@pytest.mark.parametrize("name", HOOKS)
def test_every_hook_has_an_example_a_heading_and_a_test(name: str) -> None:
    (found,) = doctest.DocTestFinder(recurse=False).find(getattr(hooks, name), name)
    assert len(found.examples) >= 3
    assert any(name in example.source for example in found.examples)
    assert callable(globals()[f"test_{name}"])
    section = re.search(rf"^## {name}\n\n`(.*?)`\n(.*?)(^## |\Z)", PAGE.read_text(), re.S | re.M)
    assert section is not None
    signature = inspect.signature(getattr(hooks, name))
    assert section[1] == f"{name}{signature}".replace("'", "")
    assert f"@hookimpl\ndef {name}(" in section[2]


def test_the_page_is_a_plugin_that_keeps_the_contract(shop: ModuleType) -> None:
    assert check_plugin(shop) == []


def test_wirecalc_calculations(with_shop: Callable[..., Outcome]) -> None:
    assert with_shop("door-gap", "--seal-gap", "0.9 mm").status == 0
    assert with_shop("door-gap", "--seal-gap", "1.1 mm").status == 1
    assert "Is the door seal tight enough?" in with_shop().out


def test_wirecalc_tables(with_shop: Callable[..., Outcome]) -> None:
    assert "25" in with_shop("tables", "shop-crimps").out
    assert tables.load("shop-crimps").row(awg=18).number("minimum_lbf") == 25
    assert with_shop("tables", "awg").status == 0


def test_wirecalc_cautions(with_shop: Callable[..., Outcome]) -> None:
    assert "reach behind the seal" in with_shop("door-gap", "--seal-gap", "0.9 mm").out


def test_wirecalc_house_rules(shop: ModuleType) -> None:
    sheet: dict[str, Any] = {
        "job": {"title": "invented", "kind": "refrigerator"},
        "check": [{"calculation": "door-gap", "seal_gap": "0.4 mm"}],
    }
    pull = {"calculation": "pull", **PULL, "force": "26 lbf"}
    with plugin_set(shop) as plugins:
        verdicts = [
            [
                (c.provider, str(c.verdict))
                for c in plugins.run("pull", {**PULL, "force": f}).criteria
            ]
            for f in ("24 lbf", "25 lbf", "19 lbf")
        ]
        without = jobsheet.evaluate(sheet, plugins)
        joint = jobsheet.evaluate({**sheet, "check": [*sheet["check"], pull]}, plugins)
    assert verdicts == [
        [("bundled", "pass"), ("shop", "fail")],
        [("bundled", "pass"), ("shop", "pass")],
        [("bundled", "fail"), ("shop", "fail")],
    ]
    assert any("pull" in str(n) for n in without.not_tested if n.required)
    assert not any("every joint" in str(n) for n in joint.not_tested)

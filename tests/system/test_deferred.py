"""Calculations that a plugin defers: nothing of them is imported before one is asked for."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc.base.errors import DeclarationError

from .conftest import Outside

Command = Callable[..., Any]
SHELF = """
from wirecalc import deferred, hookimpl


@hookimpl
def wirecalc_calculations():
    return [deferred("{target}", part="shop", question="Is it lifted?")]
"""
LIFT = '''
from collections.abc import Iterator
from typing import Annotated
from wirecalc import Item, Reading, calculation, figure


@calculation(part="shop")
def lift_motor(
    current: Annotated[float, Reading("A", above=0, high=100, text="line current of the load")],
) -> Iterator[Item]:
    """Is it lifted?"""
    yield figure("twice", 2 * current, "A")
'''
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")


def _add(outside: Outside, module: str, target: str = "demo_lift:lift_motor") -> None:
    outside.add("demo_shelf", SHELF.format(target=target))
    Path(outside.folder, "demo_lift.py").write_text(module, encoding="utf-8")


def test_a_deferred_calculation_is_listed_and_runs(plugged: Command, outside: Outside) -> None:
    _add(outside, LIFT)
    assert "lift-motor  Is it lifted?" in " ".join(plugged().out.split("\n")).replace("   ", "  ")
    done = plugged("lift-motor", "--current", "2 A")
    assert done.status == 0
    assert "4 A" in done.out


def test_nothing_of_it_is_imported_before_it_is_asked_for(
    plugged: Command, outside: Outside
) -> None:
    _add(outside, "raise RuntimeError('imported')\n")
    assert plugged().status == 0
    assert (plugged(*PULL).status, plugged(*PULL).err) == (0, "")


@pytest.mark.parametrize(
    ("module", "target", "says"),
    [
        ("raise RuntimeError('imported')\n", "demo_lift:lift_motor", "RuntimeError: imported"),
        ("raise SystemExit(0)\n", "demo_lift:lift_motor", "SystemExit"),
        ("lift_motor = 7\n", "demo_lift:lift_motor", "is no calculation"),
        ("", "demo_nowhere:lift_motor", "demo_nowhere"),
        (LIFT.replace("Is it lifted?", "Another?"), "demo_lift:lift_motor", "another name"),
    ],
)
def test_one_that_does_not_load_is_a_defect_of_its_plugin(
    plugged: Command, outside: Outside, module: str, target: str, says: str
) -> None:
    _add(outside, module, target)
    for words in (("lift-motor", "--current", "2 A"), ("lift-motor", "--help")):
        done = plugged(*words)
        assert (done.status, done.out) == (4, "")
        assert says in done.err
        assert "demo_shelf" in done.err
    listed = {p["name"]: p for p in plugged("plugins", "--format", "json").json["plugins"]}
    assert listed["demo_shelf"]["state"] == "in part"
    assert says in listed["demo_shelf"]["reason"]
    assert plugged(*PULL).status == 0


def test_a_bundled_name_cannot_be_taken(plugged: Command, outside: Outside) -> None:
    _add(outside, LIFT, "demo_lift:pull")
    done = plugged(*PULL)
    assert done.status == 0
    assert "bundled calculation's" in done.err


@pytest.mark.parametrize(
    "texts",
    [
        {"target": "no_colon", "part": "a", "question": "b?"},
        {"target": "a:b", "part": "", "question": "b?"},
        {"target": "a:b", "part": "a", "question": ""},
    ],
)
def test_what_says_too_little_is_refused(texts: dict[str, str]) -> None:
    target = texts.pop("target")
    with pytest.raises(DeclarationError, match="write module:function"):
        wirecalc.deferred(target, **texts)

"""The name that an input had before: refused everywhere, with the name that it has now."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Annotated, Any

import pytest

import wirecalc
from wirecalc import (
    PRACTICE,
    HouseRule,
    Item,
    Nameplate,
    Reading,
    Wire,
    at_most,
    calculation,
    setting,
)
from wirecalc.base.errors import DeclarationError
from wirecalc.plugging import settings

Cli = Callable[..., Any]
NOW = "is building_wire now (wire of the building)"


@calculation(part="demo", renamed={"wire": "building_wire", "volts": "nameplate_voltage"})
def demo_run(
    building_wire: Annotated[Wire, "wire of the building"],
    load: Annotated[float, Reading("A", low=0, high=100, text="current of the load")],
    nameplate_voltage: Annotated[
        float | None, Nameplate("V", low=1, high=600, text="volts on the plate"), setting()
    ] = None,
) -> Iterator[Item]:
    """Does the wire carry it?"""
    limit = 15.0 if building_wire.area_cmil < 5000 else 20.0
    yield at_most("load", load, limit, "A", source=PRACTICE)


def _by_the_old_name(inputs: Any, items: Any) -> Iterator[Item]:
    if inputs.get("wire") is not None:
        yield at_most("shop's load", inputs["load"], 10.0, "A", source=PRACTICE)


class _Shop:
    """A plugin with the calculation above, and a rule by a name of before for some calculations."""

    def __init__(self, *calculations: str) -> None:
        self.calculations = calculations

    @wirecalc.hookimpl
    def wirecalc_calculations(self) -> list[Any]:
        return [demo_run]

    @wirecalc.hookimpl
    def wirecalc_house_rules(self) -> list[HouseRule]:
        rule = HouseRule("lighter", self.calculations, _by_the_old_name)
        return [rule] if self.calculations else []


@pytest.fixture(autouse=True)
def shop(wirecalc_only: Callable[..., Any]) -> Callable[..., Any]:
    wirecalc_only(_Shop())
    return wirecalc_only


def test_on_the_command_line(wirecalc_cli: Cli) -> None:
    done = wirecalc_cli("demo-run", "--wire", "14 AWG", "--load", "3 A")
    assert (done.status, done.out) == (2, "")
    assert "--wire: is --building-wire now (wire of the building)" in done.err
    assert "is needed" not in done.err
    done = wirecalc_cli("demo-run", "--wire=14 AWG", "--lode", "3 A")
    assert "--wire: is --building-wire now" in done.err
    assert "--load: is needed" in done.err
    assert wirecalc_cli("demo-run", "--building-wire", "14 AWG", "--load", "3 A").status == 0


def test_in_python() -> None:
    with pytest.raises(wirecalc.BadInput, match="--building-wire now"):
        wirecalc.run("demo-run", wire="14 AWG", load="3 A")
    given = {"wire": "14 AWG", "building_wire": "14 AWG", "load": "3 A"}
    with pytest.raises(wirecalc.BadInput, match="--building-wire now"):
        wirecalc.run("demo-run", **given)


SHEET = """
[job]
title = "invented"
kind = "bench"
[nameplate]
{plate}
[readings.house]
{readings}
[[check]]
calculation = "demo-run"
uses = "house"
{check}
"""


@pytest.mark.parametrize(
    ("place", "text", "label"),
    [
        ("check", 'wire = "14 AWG"', f"check demo-run: wire: {NOW}"),
        ("readings", 'wire = "14 AWG"', f"readings.house: wire: {NOW}"),
        ("plate", 'volts = "120 V"', "nameplate: volts: is nameplate_voltage now"),
    ],
)
def test_on_a_job_sheet(
    wirecalc_cli: Cli, tmp_path: Path, place: str, text: str, label: str
) -> None:
    parts = {"plate": "", "readings": 'load = "3 A"', "check": 'building_wire = "14 AWG"'}
    good, bad = tmp_path / "good.toml", tmp_path / "bad.toml"
    good.write_text(SHEET.format(**parts), encoding="utf-8")
    bad.write_text(SHEET.format(**parts | {place: f"{parts[place]}\n{text}"}), encoding="utf-8")
    assert wirecalc_cli("job", str(good)).status != 2
    done = wirecalc_cli("job", str(bad))
    assert (done.status, done.out) == (2, "")
    assert label in " ".join(done.err.split())


@pytest.mark.parametrize("head", ["wire", "Wire"])
def test_as_a_column_of_a_batch(wirecalc_cli: Cli, tmp_path: Path, head: str) -> None:
    rows = tmp_path / "rows.csv"
    rows.write_text(f"{head},load (A)\n14 AWG,3\n", encoding="utf-8")
    done = wirecalc_cli("batch", "demo-run", str(rows))
    assert (done.status, done.out) == (2, "")
    assert f"column {head}: {NOW}" in " ".join(done.err.split())
    assert "is needed" not in done.err
    kept = wirecalc_cli("batch", "demo-run", str(rows), "--keep", head, "--building-wire", "14 AWG")
    assert kept.status == 0


def test_as_an_option_of_a_batch(wirecalc_cli: Cli, tmp_path: Path) -> None:
    rows = tmp_path / "rows.csv"
    rows.write_text("load\n3 A\n", encoding="utf-8")
    done = wirecalc_cli("batch", "demo-run", str(rows), "--wire", "14 AWG")
    assert (done.status, done.out) == (2, "")
    assert "--wire: is --building-wire now" in done.err
    assert "is needed" not in done.err


@pytest.mark.parametrize("asks", ['input = "wire"\none_of = ["14 AWG"]', "WHEN"])
def test_in_a_rules_file(
    wirecalc_cli: Cli, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, asks: str
) -> None:
    when = 'criterion = "load"\ntimes = 0.8\nwhen = { wire = ["14 AWG"] }'
    rules = tmp_path / "our.toml"
    text = f'[[rule]]\nname = "r"\ncalculations = ["demo-run"]\n{asks.replace("WHEN", when)}\n'
    rules.write_text(text, encoding="utf-8")
    done = wirecalc_cli("rules", str(rules))
    assert done.status == 2
    assert f"demo-run: wire {NOW}" in " ".join((done.out + done.err).split())
    with wirecalc.testing.plugin_set(_Shop()):
        monkeypatch.setenv(settings.RULES, str(rules))
        run = wirecalc_cli("demo-run", "--building-wire", "14 AWG", "--load", "3 A")
    assert run.status == 3  # what the shop meant is not in force


def test_in_a_house_rule_of_a_plugin(shop: Callable[..., Any]) -> None:
    shop(_Shop("demo-run"))
    found = wirecalc.run("demo-run", building_wire="14 AWG", load="3 A")
    assert found.verdict == "cannot tell"
    assert found.decided_by is not None
    assert "input wire is building_wire now" in found.decided_by.reason


def test_a_rule_for_every_calculation_may_ask_for_what_some_have(shop: Callable[..., Any]) -> None:
    shop(_Shop("*"))
    assert wirecalc.run("demo-run", building_wire="14 AWG", load="3 A").verdict == "pass"


@pytest.mark.parametrize("renamed", [{"load": "load"}, {"wire": "copper"}, {"load": "wire"}])
def test_what_cannot_have_been_renamed(renamed: dict[str, str]) -> None:
    declared = calculation(part="demo", renamed=renamed)(demo_run.function)
    with pytest.raises(DeclarationError, match="cannot have been renamed"):
        _ = declared.inputs


def test_the_docs_list_every_name_of_before() -> None:
    text = (Path(__file__).parents[2] / "docs/changes.md").read_text(encoding="utf-8")
    listed = set(re.findall(r"^\| `(\S+)` \| `(\S+)` \| `(\S+)` \|$", text, re.MULTILINE))
    with wirecalc.testing.plugin_set() as catalogue:
        declared = {
            (name, old, new)
            for name, provided in catalogue.calculations.items()
            for old, new in provided.calculation.renamed.items()
        }
    assert listed == declared

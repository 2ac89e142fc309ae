"""How readings are taken: said once, for every input that somebody measures."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import wirecalc
from wirecalc import tables
from wirecalc.commands.prompting import how_read
from wirecalc.plugging import host
from wirecalc.published.measuring import ways
from wirecalc.testing import Outside
from wirecalc.typed.quantity_kinds import Reading

CALCULATIONS = {
    name: provided.calculation
    for name, provided in wirecalc.build(bundled_only=True).calculations.items()
}
INPUTS = {i.name: i for calc in CALCULATIONS.values() for i in calc.inputs}
NOT_READ = {"source_resistance"}  # of a model: nobody measures the supply apart
ROWS = tables.load("measuring").rows


def test_every_reading_has_one_way_and_every_way_reads_something() -> None:
    named = Counter(name for row in ROWS for name in row.text("inputs").split())
    assert [name for name, times in named.items() if times > 1] == []
    assert set(named) - set(INPUTS) == set()
    measured = {name for name, i in INPUTS.items() if type(i.kind) is Reading}
    assert measured - set(named) == NOT_READ


def test_every_calculation_says_how_it_is_measured() -> None:
    for name, calc in CALCULATIONS.items():
        assert ways([i.name for i in calc.inputs]), name


def test_ways_come_in_the_order_of_the_inputs_with_those_that_are_read_so() -> None:
    found = ways(["force", "peak", "wire", "settled", "voltage_at_start"])
    assert [(way.name, way.inputs) for way in found] == [
        ("a pull", ("force",)),
        ("the peak of a start", ("peak", "voltage_at_start")),
        ("the wire's size", ("wire",)),
        ("amps with a clamp", ("settled",)),
    ]
    assert found[3].drawing == "clamp"
    assert ways(["terminal"]) == []


def test_no_two_ways_say_the_same_and_none_is_long() -> None:
    said = [s for row in ROWS for s in row.text("text").split(". ")]
    assert [s for s, times in Counter(said).items() if times > 1] == []
    assert [row.text("way") for row in ROWS if len(row.text("text")) > 400] == []


def test_what_would_hurt_or_spoil_is_said() -> None:
    """The one thing of each reading that people get wrong, by the cautions and docstrings."""
    said = {row.text("way"): row.text("text") for row in ROWS}
    for way, least in {
        "amps with a clamp": "around one conductor",
        "ohms of a winding": "capacitors bled and proven",
        "ohms of a part": "both wires off it",
        "ohms to the case": "it cannot pass",
        "insulation": "Plug out",
        "the ground path": "current of 1 A or more",
        "capacitance": "proven under 5 V",
        "a pull": "slowly and straight",
        "volts, nothing running": "known source before and after",
        "temperature at which it switches": "1 K a minute",
        "test leads": "taken off twice",
        "temperature of an oven": "at least three cycles",
    }.items():
        assert least in said[way], way


def test_it_is_said_by_explain_and_by_ask(wirecalc_cli: Callable[..., Any]) -> None:
    text = " ".join(wirecalc_cli("explain", "pull").out.split())
    (way,) = ways(["force"])
    assert f"How to measure - the wire's size (--wire): {ways(['wire'])[0].text}" in text
    assert f"- a pull (--force): {way.text}" in text
    assert " ".join(" ".join(how_read("force")).split()) == f"How: {way.text}"
    assert how_read("terminal") == []


def test_a_plugin_may_bring_ways_of_its_own(wirecalc_outside: Outside, tmp_path: Path) -> None:
    own = tmp_path / "measuring-frost.csv"
    own.write_text(
        "way,inputs,drawing,text,source,confidence,copies,note\n"
        "frost,frost_thickness,,A ruler against the thickest.,own,common practice,,\n",
        encoding="utf-8",
    )
    bundled = Path(str(host.__file__)).parents[2] / "tables" / "measuring.toml"
    own.with_suffix(".toml").write_text(bundled.read_text(encoding="utf-8"), encoding="utf-8")
    source = (
        "from pathlib import Path\nfrom wirecalc import hookimpl\n\n@hookimpl\n"
        f"def wirecalc_tables():\n    return [Path({str(tmp_path)!r})]\n"
    )
    wirecalc_outside.add("demo_frost", source)
    with host.build().in_use():
        assert [way.name for way in ways(["frost_thickness"])] == ["frost"]
    with host.build(bundled_only=True).in_use():
        assert ways(["frost_thickness"]) == []

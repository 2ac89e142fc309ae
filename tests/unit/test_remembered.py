"""What is kept from run to run changes no run: each comes to what it comes to alone."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any

from wirecalc import PRACTICE, Item, OneOf, Reading, asked, assumed, at_most, calculation, setting
from wirecalc.engine.from_plugins import ProvidedCalculation
from wirecalc.engine.remembered import Remembered
from wirecalc.engine.running import run
from wirecalc.instruments import readings
from wirecalc.instruments.declared import read
from wirecalc.jobs import batch_columns

A = Reading("A", low=0, high=100, typical="5 A", text="amps")
CLASS = Reading("C", low=0, high=300, typical="60 C", text="class of the wire")


@calculation(part="test")
def hanging(
    load: Annotated[float, A],
    style: Annotated[str, OneOf(("open", "closed"), text="how it is built"), setting()] = "open",
    other: Annotated[float | None, A, asked("it counts too", when="style=closed")] = None,
    warm: Annotated[float, CLASS, assumed("90 C", source=PRACTICE)] = 60.0,
) -> Iterator[Item]:
    """Is the load small?"""
    yield at_most("load", load + (other or 0.0), warm / 10, "A", source=PRACTICE)


ROWS: list[dict[str, Any]] = [
    {"load": "5 A", "style": "open", "warm": "60 C"},
    {"load": "5 A", "style": "closed", "warm": "60 C"},
    {"load": "8 A", "style": "open", "warm": "60 C"},
    {"load": "8 A", "style": "open", "warm": "unknown"},
    {"load": "8 A", "style": "open", "warm": "90 C"},
    {"load": "5 A", "style": "unknown", "warm": "60 C"},
]


def test_runs_of_the_same_inputs_with_other_values_are_as_each_alone() -> None:
    provided, shared = ProvidedCalculation("demo", "1.0", hanging), Remembered()
    together = [run(provided, row, remembered=shared) for row in ROWS]
    assert [(f.verdict, f.decided_by) for f in together] == [
        (f.verdict, f.decided_by) for f in (run(provided, row) for row in ROWS)
    ]
    assert [str(f.verdict) for f in together] == [
        *("pass", "cannot tell", "fail", "cannot tell", "pass", "cannot tell")
    ]
    untold = together[3].criterion("load").reason  # it fails only as what is unknown is assumed
    assert untold.startswith("warm 60 C was assumed; with warm 90 C pass")


def test_a_text_that_was_read_without_an_instrument_is_read_again_with_one() -> None:
    provided, shared = ProvidedCalculation("demo", "1.0", hanging), Remembered()
    clamp = {
        "name": "clamp",
        "range": [{"reads": "current", "from": "0.50 A", "to": "60.00 A", "error": "2% + 5"}],
    }
    declared, problems = read([clamp], {"current": "clamp"}, "tests")
    assert problems == []
    assert run(provided, ROWS[0], remembered=shared).inputs[0].high is None
    with readings.in_use(declared):
        high = run(provided, ROWS[0], remembered=shared).inputs[0].high
    assert high is not None and abs(high - 5.15) < 1e-12  # 5 A + 2 % + 5 counts of 0.01 A


def test_a_cell_is_the_text_itself_save_for_a_unit_of_its_header_and_a_comma() -> None:
    plain, unit = (
        batch_columns.plan(hanging, [head], {}).columns[0].given("5") for head in ("load", "load_A")
    )
    assert (plain, unit) == ("5", "5 A")
    comma = batch_columns.plan(hanging, ["load"], {}, decimal_comma=True)
    assert comma.columns[0].given("1,5 A") == "1.5 A"

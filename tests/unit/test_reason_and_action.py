"""The reason of a cannot tell and what to do next speak of the same thing."""

from __future__ import annotations

from itertools import permutations

import pytest

import wirecalc
from wirecalc import PRACTICE, at_least, cannot_tell
from wirecalc.engine.band import AT_AN_END, Given, merge_criteria
from wirecalc.said.criteria import Criterion
from wirecalc.said.findings import Judged
from wirecalc.said.verdicts import Verdict

UNKNOWN = cannot_tell("size", "its mark is not known", measure="read the mark", needs=("mark",))
FAILS = at_least("size", 1.0, 2.0, "uF", source=PRACTICE, action="replace it")
PASSES = at_least("size", 3.0, 2.0, "uF", source=PRACTICE, action="replace it")


def _judged(*runs: Criterion) -> Judged:
    (judged,) = merge_criteria([[Given(c, "demo")] for c in runs], 0).values()
    return judged


@pytest.mark.parametrize("runs", list(permutations([UNKNOWN, FAILS, PASSES])))
def test_what_is_not_known_is_asked_for_before_a_better_meter(runs: list[Criterion]) -> None:
    judged = _judged(*runs)
    assert judged.verdict is Verdict.CANNOT_TELL
    assert judged.reason.startswith("its mark is not known")
    assert judged.action == "read the mark"
    assert judged.criterion.needs == ("mark",)
    assert (AT_AN_END in judged.reason) is (runs[0] is not UNKNOWN)


@pytest.mark.parametrize("runs", list(permutations([FAILS, PASSES])))
def test_a_value_too_near_asks_for_a_better_meter(runs: list[Criterion]) -> None:
    judged = _judged(*runs)
    assert "too close for this meter" in judged.reason
    assert judged.action.startswith("measure so that it is known to better than")


@pytest.mark.parametrize("measured", ["26.5 uF ±5%", "28.4 uF ±2%", "28.6 uF ±2%", "25.4 uF ±2%"])
def test_a_capacitor_without_a_tolerance_is_not_blamed_on_the_meter(measured: str) -> None:
    finding = wirecalc.run(
        "capacitor",
        measured_capacitance=measured,
        marked_capacitance="30 uF",
        capacitor_duty="run",
    )
    (low,) = (c for c in finding.criteria if c.criterion.name == "capacitance, lower limit")
    assert low.verdict is Verdict.CANNOT_TELL
    assert "narrowest marked tolerance" in low.reason
    assert low.action.startswith("read the tolerance")

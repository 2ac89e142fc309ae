"""What failed before power is said before power is put on, and putting it on is no default."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from wirecalc import build
from wirecalc.asking.job_interview import Interview
from wirecalc.asking.job_question import Question

CATALOGUE = build(bundled_only=True)
INSULATION = {
    "calculation": "insulation",
    "name": "insulation",
    "step": "before power",
    "tested_part": "machine",
    "test_voltage": "500 V",
    "electronics_unplugged": "yes",
    "switched_on": "yes",
    "protection": "class-i",
}


def at_power(reading: str) -> Question:
    """Return the first question at power up, of a washer whose insulation was measured."""
    sheet: dict[str, Any] = {
        "job": {
            "kind": "dishwasher",
            "title": "trips",
            "connection": "cord-connected",
            "date": "2026-11-30",
            "machine": "invented",
            "technician": "invented",
        },
        "check": [{**INSULATION, "insulation_resistance": reading}],
    }
    interview = Interview(sheet, CATALOGUE, Path(), "2026-11-30")
    for _ in range(80):
        asked = interview.next()
        assert asked is not None
        if not isinstance(asked, Question):
            interview.later(asked)
        elif asked.step == "power up":
            return asked
        else:
            typed = "later" if "later" in asked.choices else ""
            assert not interview.answer(asked, typed), asked
    raise AssertionError("no question at power up")


@pytest.mark.parametrize(
    ("reading", "says", "then", "default"),
    [
        (
            "0.3 Mohm",
            "STOP  insulation FAIL: insulation to the case: 0.3 Mohm is below 1 Mohm",
            "No power before it is mended and measured again.",
            "later",
        ),
        (
            "1.02 Mohm ±3%",
            "STOP  insulation CANNOT TELL: ",
            "Settle it before power is put on.",
            "do it now",
        ),
    ],
)
def test_what_failed_before_power_is_said_and_after_a_fail_doing_it_is_no_default(
    reading: str, says: str, then: str, default: str
) -> None:
    asked = at_power(reading)
    assert says in asked.says
    assert then in asked.says
    assert asked.default == asked.enter == default


def test_where_nothing_stands_against_it_power_is_the_next_thing() -> None:
    asked = at_power("50 Mohm")
    assert "STOP" not in asked.says
    assert asked.default == "do it now"

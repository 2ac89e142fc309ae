"""The first lines of a job: what protects a person comes first, and of many checks a few are told.

Machine and readings are invented.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from wirecalc import build
from wirecalc.jobs import sheet as jobsheet
from wirecalc.jobs.job import MISSING, Counted, Job
from wirecalc.output import summary
from wirecalc.output.job_short import job_short
from wirecalc.said.verdicts import Verdict

CATALOGUE = build(bundled_only=True)
STRIP = {"calculation": "strip", "wire": "18 AWG", "style": "closed", "barrel_length": "6 mm"}
WET = {
    "calculation": "insulation",
    "insulation_resistance": "0.3 Mohm",
    "tested_part": "machine",
    "test_voltage": "500 V",
    "electronics_unplugged": "yes",
    "switched_on": "yes",
    "protection": "class-i",
}


def job(*checks: dict[str, Any]) -> Job:
    sheet = {"job": {"title": "invented", "kind": "dishwasher"}, "check": [*checks]}
    return jobsheet.evaluate(sheet, CATALOGUE, Path())


def short(name: str) -> dict[str, Any]:
    """Return a check that fails: a wire that was stripped too short."""
    return {**STRIP, "name": name, "stripped": "2 mm"}


def test_what_protects_a_person_decides_first_wherever_it_stands_on_the_sheet() -> None:
    done = job(short("one"), WET, short("two"))
    assert [c.name for c in done.decided_by] == ["insulation", "one", "two"]
    assert summary.lines(done)[0].said.startswith("insulation: ")


def test_of_what_was_not_tested_too_it_comes_first() -> None:
    unread = {**STRIP, "name": "one", "stripped": "unknown"}
    first, *rest = summary.lines(job(unread))
    assert first.label == summary.NOT_TESTED
    assert first.said.startswith("ground path")
    assert next(line.said for line in rest if line.label == "Decided by").startswith("one")


def test_of_many_checks_three_are_told_in_full_and_the_rest_is_named() -> None:
    done = job(*(short(name) for name in ("one", "two", "three", "four", "five")), WET)
    labels = [line.label for line in summary.lines(done, 3)]
    assert labels.count("Decided by") == 3
    said = job_short(done)
    assert "And by  three; four; five" in said
    assert len([line for line in summary.lines(done) if line.label == "Decided by"]) == 6
    assert said.count("Decided by") == 3


def test_where_three_decided_nothing_is_left_to_name() -> None:
    done = job(short("one"), short("two"), WET)
    assert "And by" not in job_short(done)


def test_where_all_of_it_is_stands_below_unless_it_is_said_elsewhere() -> None:
    done = job(WET)
    assert job_short(done).endswith("and --full")
    assert "--full" not in job_short(done, says_rest=False)


@pytest.mark.parametrize(
    ("calculation", "protects"),
    [
        *((c, True) for c in ("ground", "insulation", "leakage", "screening", "outlet")),
        *(("discharge", True), ("strip", False), ("supply", False)),
    ],
)
def test_what_protects_from_a_shock(calculation: str, protects: bool) -> None:
    untold = Counted("x", Verdict.CANNOT_TELL, MISSING, missing=calculation)
    assert untold.protects is protects

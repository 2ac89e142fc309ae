"""One recorded job as rows of flat tables. The jobs here are invented and written by hand."""

from __future__ import annotations

import json
from typing import Any

import pytest

from wirecalc.base.errors import BadText
from wirecalc.jobs.record_names import unnamed
from wirecalc.jobs.record_rows import id_of, rows_of
from wirecalc.jobs.record_tables import TABLES

NAME = "2026-03-04-dishwasher-dead-0123abcd"
FINDING = {
    "calculation": "pull",
    "plugin": "bundled",
    "version": "1",
    "verdict": "pass",
    "decided_by": "held",
    "inputs": [
        {"name": "force", "value": 24.0, "unit": "lbf", "low": 23.5, "high": 24.5, "from": "sheet",
         "given": "24 lbf"},
        {"name": "wires", "value": ["18 AWG", "16 AWG"], "unit": "", "from": "sheet"},
        {"name": "stranded", "value": True, "unit": "", "from": "assumed"},
        {"name": "die", "value": None, "unit": "", "from": "left out"},
        {"name": "tool", "value": None, "unit": "", "from": "unknown"},
    ],
    "criteria": [
        {"name": "held", "provider": "bundled", "origin": "standard", "sense": "at least",
         "actual": 23.5, "limit": 20.0, "caution_limit": None, "unit": "lbf", "low": 23.5,
         "high": 24.5, "margin": 3.5, "verdict": "pass", "reason": "enough", "source": "s"},
    ],
    "sources": {"s": {"title": "T", "edition": "", "where": "table 1", "confidence": "demo"}},
}  # fmt: skip
CHECK = {"name": "lead", "stage": "as left", "step": "wire", "machine": "b", "tool": "A",
         "part": "ring", "finding": FINDING}  # fmt: skip
JOB: dict[str, Any] = {
    "title": "Two machines",
    "kind": "",
    "verdict": "pass",
    "about": {"callback_of": "2026-01-02-earlier-job-89abcdef", "callback_cause": "came off"},
    "machines": [{"name": "a", "kind": "range"}, {"name": "b", "kind": "dishwasher"}],
    "checks": [CHECK, {**CHECK, "machine": "", "finding": None}],
    "not_tested": [{"name": "n", "required": True, "calculation": "ground", "step": "s"}],
}


def rows(job: Any, table: str, *, with_names: bool = False) -> list[dict[str, Any]]:
    names = [c.name for t in TABLES if t.name == table for c in t.columns]
    found = rows_of(NAME, job, with_names=with_names)[table]
    return [dict(zip(names, row, strict=True)) for row in found]


def test_a_record_is_known_by_day_and_content() -> None:
    assert id_of(NAME) == "2026-03-04-0123abcd"
    assert id_of("2026-13-04-x-0123abcd") == id_of("notes.txt") == id_of("2026-03-04") == ""


def test_a_job_of_two_machines() -> None:
    (job,) = rows(JOB, "records")
    assert (job["record"], job["date"]) == ("2026-03-04-0123abcd", "2026-03-04")
    assert (job["machine"], job["kind"]) == ("a; b", "range; dishwasher")
    assert (job["callback_of"], job["callback_date"]) == ("2026-01-02-89abcdef", "2026-01-02")
    first, second = rows(JOB, "checks")
    assert (first["check_number"], first["kind"], first["verdict"]) == (1, "dishwasher", "pass")
    assert (second["check_number"], second["kind"], second["verdict"]) == (2, "", "")


@pytest.mark.parametrize(
    ("said", "earlier", "day"),
    [("2026-01-02", "", "2026-01-02"), ("last winter", "", ""), (None, "", "")],
)
def test_a_callback_goes_back_to_a_day_or_to_words(said: Any, earlier: str, day: str) -> None:
    (job,) = rows({**JOB, "about": {"callback_of": said}}, "records")
    assert (job["callback_of"], job["callback_date"]) == (earlier, day)


def test_a_reading_is_a_number_or_words() -> None:
    found = {r["name"]: (r["value"], r["words"], r["low"]) for r in rows(JOB, "readings")}
    assert found == {
        "force": (24.0, "", 23.5),
        "wires": (None, "18 AWG; 16 AWG", None),
        "stranded": (None, "yes", None),
        "tool": (None, "", None),  # said to be unknown; the die was left out
    }


def test_a_criterion_has_its_source() -> None:
    (held,) = rows(JOB, "criteria")
    assert (held["source"], held["confidence"]) == ("T, table 1", "demo")
    numbers = (held["actual"], held["limit_at"], held["caution_at"], held["margin"])
    assert numbers == (23.5, 20.0, None, 3.5)


def test_what_was_not_tested() -> None:
    (missing,) = rows(JOB, "not_tested")
    assert (missing["calculation"], missing["required"], missing["step"]) == ("ground", 1, "s")


@pytest.mark.parametrize(
    "change",
    [
        {"checks": 5},
        {"checks": [{}]},
        {"not_tested": [{}]},
        {"verdict": None, "checks": None},
        {"about": "words"},
        {"checks": [{**CHECK, "finding": {**FINDING, "inputs": [{"name": "x"}]}}]},
        {"checks": [{**CHECK, "finding": {**FINDING, "criteria": [{"name": "x", "reason": ""}]}}]},
        {"checks": [{**CHECK, "finding": {**FINDING, "criteria": [{"name": "x"}]}}]},
        {"checks": [{**CHECK, "finding": {**FINDING, "inputs": [{"name": "x", "value": 10**400,
                                                                 "from": "sheet"}]}}]},
        {"title": json.loads("[" * 900 + "]" * 900)},
    ],
)  # fmt: skip
@pytest.mark.parametrize("with_names", [True, False])
def test_what_is_no_job_is_said(change: dict[str, Any], with_names: bool) -> None:
    with pytest.raises(BadText, match="missing or wrong"):
        rows_of(NAME, {**JOB, **change}, with_names=with_names)


def test_a_sign_that_is_no_text_is_a_question_mark() -> None:
    (first, _) = rows({**JOB, "checks": [{**CHECK, "tool": "a\ud800"}, CHECK]}, "checks")
    assert first["tool"] == "a?"


def test_groups_have_numbers_and_files_no_name() -> None:
    criteria = [
        {"name": "Bob: lowest", "reason": "Bob is below Bobby"},
        {"name": "Bobby: lowest", "reason": "above"},
        {"name": "all together", "reason": "Bob and Bobby"},
    ]
    inputs = [
        {"value": "bob's class.csv, 5 rows", "given": "jobs/bob's class.csv"},
        {"value": "bob.csv", "given": "C:\\jobs\\bob.csv"},
        {"value": "0.5 mm2", "given": "0.5 mm2"},
        {"value": 2.0, "given": "2.0 A"},
        {"value": None, "given": None},
    ]
    finding = {"criteria": criteria, "inputs": inputs, "decided_by": "Bobby: lowest"}
    found = unnamed({"tool": "A", "finding": finding})
    assert [(c["name"], c["reason"]) for c in found["finding"]["criteria"]] == [
        ("group 1: lowest", "group 1 is below group 2"),
        ("group 2: lowest", "above"),
        ("all together", "group 1 and group 2"),
    ]
    assert found["finding"]["decided_by"] == "group 2: lowest"
    assert [i["value"] for i in found["finding"]["inputs"]] == [
        "file, 5 rows", "file", "0.5 mm2", 2.0, None,
    ]  # fmt: skip
    assert finding["criteria"] is criteria  # what was read stays as it was

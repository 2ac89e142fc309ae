"""The first lines of a job: what decided, and what to do next."""

from __future__ import annotations

from dataclasses import replace

import pytest

from wirecalc.jobs.checks import AS_FOUND, AS_LEFT, JobCheck, Machine, NotTested
from wirecalc.jobs.job import Job
from wirecalc.output import summary
from wirecalc.published.sources import confirmed
from wirecalc.said.criteria import Criterion, at_least, at_most, cannot_tell
from wirecalc.said.findings import Finding, InputRecord, Judged

PRINTED = confirmed("std", "a standard", "table 1", copies=2)


def check(name: str, *criteria: Criterion, stage: str = AS_LEFT, meter: bool = True) -> JobCheck:
    bands = [(c.actual, c.actual) if meter else (None, None) for c in criteria]
    judged = tuple(
        Judged(c, "bundled", c.verdict, c.reason, c.next_action, *band)
        for c, band in zip(criteria, bands, strict=True)
    )
    return JobCheck(name, stage, name, Finding(name, "bundled", "1", (), criteria=judged))


def pull(force: float, action: str = "set the tool up again") -> Criterion:
    return at_least("pull", force, 20.0, "lbf", source=PRINTED, action=action)


def of(*checks: JobCheck, not_tested: tuple[NotTested, ...] = ()) -> list[tuple[str, str]]:
    job = Job("a job", {}, checks, not_tested)
    return [(line.label, line.said) for line in summary.lines(job)]


def test_the_same_thing_to_do_for_two_stands_once() -> None:
    assert of(check("a", pull(19.0)), check("b", pull(18.0))) == [
        ("Decided by", "a: pull: 19 lbf is below 20 lbf"),
        ("Decided by", "b: pull: 18 lbf is below 20 lbf"),
        ("Next", "set the tool up again"),
    ]
    labels = [label for label, _ in of(check("a", pull(19.0, "one")), check("b", pull(18.0)))]
    assert labels == ["Decided by", "Next", "Decided by", "Next"]


def test_a_pass_names_the_reading_that_is_nearest_not_the_plate() -> None:
    plate = check("part", at_least("volts", 250.0, 250.0, "V", source=PRINTED), meter=False)
    read = check("crimp", pull(24.0), at_most("drop", 9.0, 10.0, "mV", source=PRINTED))
    assert of(plate, read)[0] == ("Closest reading", "crimp: drop: 9 mV, at most 10 mV")
    assert of(plate)[0] == ("Closest", "part: volts: 250 V, at least 250 V")


def test_what_was_mended_is_told_with_both_numbers() -> None:
    found = check("crimp", pull(15.0), stage=AS_FOUND)
    assert of(found, check("crimp", pull(24.0))) == [
        ("Was", "crimp: pull: 15 lbf is below 20 lbf"),
        ("Is now", "pull: 24 lbf, at least 20 lbf"),
        ("Next", summary.NOTHING_TO_DO),
    ]


def test_what_was_removed_is_told_as_a_word_not_a_reading() -> None:
    found = check("cord", pull(15.0), stage=AS_FOUND)._replace(removed="taken away")
    assert of(found, check("crimp", pull(24.0)))[:2] == [
        ("Was", "cord: pull: 15 lbf is below 20 lbf"),
        ("Is now", "removed, not measured: taken away"),
    ]


def test_what_is_missing_is_named_with_its_reason() -> None:
    said = of(check("a", pull(24.0)), not_tested=(NotTested("ground", True, "no meter"),))
    assert said == [
        ("Not tested", "ground, which is needed: no meter"),
        ("Next", "test it: ground"),
    ]
    assert of() == [
        ("Decided by", "nothing was checked as left"),
        ("Next", "measure after the work"),
    ]


@pytest.mark.parametrize(
    ("checks", "sentence"),
    [
        ([check("a", pull(19.0))], "1 check fails at the end of the work."),
        (
            [check("a", pull(19.0)), check("b", cannot_tell("drop", "not measured"))],
            "1 check fails at the end of the work.",
        ),
        ([check("a", pull(19.0)), check("b", pull(18.0))], "2 checks fail at the end of the work."),
        (
            [check("a", pull(24.0))],
            "At the end of the work, what was checked is within the limits.",
        ),
        (
            [check("a", pull(19.0), stage=AS_FOUND)],
            "Nothing is passed yet: what failed was not measured again.",
        ),
        ([], "Nothing is passed yet: nothing was checked as left."),
    ],
)
def test_one_sentence_says_what_the_verdict_means(checks: list[JobCheck], sentence: str) -> None:
    assert summary.says(Job("a job", {}, tuple(checks))) == sentence


def test_what_was_said_to_the_customer_stands_first() -> None:
    job = Job("a job", {"date": "2026-01-02", "work": "new belt", "hand_over": "use it"}, kind="k")
    assert summary.about(job) == [
        ("Said at hand-over", "use it"),
        ("Work done", "new belt"),
        ("Kind", "k"),
        ("Date", "2026-01-02"),
    ]


def test_a_machine_that_fails_is_not_for_use() -> None:
    until = "Not for use until that is put right."
    failed, passed = (check("a", pull(19.0)),), (check("a", pull(24.0)),)
    one = "1 check fails at the end of the work."
    assert summary.says(Job("a job", {}, failed, kind="washer")) == f"{one} {until}"
    several = Job("a job", {}, failed, machines=(Machine("range"), Machine("washer")))
    assert until in summary.says(several)
    assert until not in summary.says(Job("a job", {}, passed, kind="washer"))


def test_how_readings_are_shown_and_who_acts_are_told() -> None:
    job = Job("a job", {}, (check("a", pull(19.0)),))
    assert summary.notes(job) == [summary.METER]
    assert summary.notes(replace(job, kind="washer")) == [summary.METER, summary.DOER]
    by_plate = (check("a", pull(24.0), meter=False),)
    assert summary.notes(Job("a job", {}, by_plate, kind="washer")) == []


def test_a_mended_check_is_not_told_again_as_the_closest() -> None:
    was, now = (at_most("drop", mv, 10.0, "mV", source=PRINTED) for mv in (20.0, 9.9))
    found, left = check("crimp", pull(15.0), was, stage=AS_FOUND), check("crimp", pull(24.0), now)
    labels = [label for label, _ in of(found, left, check("a", pull(28.0)))]
    assert labels == ["Was", "Is now", "Next"]
    labels = [label for label, _ in of(found, left, check("a", pull(20.1)))]
    assert labels == ["Was", "Is now", "Closest reading", "Next"]


def test_what_a_fail_leaves_open_is_named() -> None:
    untold = [check(f"u{n}", cannot_tell("drop", "not measured")) for n in range(6)]
    missing = (NotTested("ground", True, "no meter"),)
    said = of(check("a", pull(19.0)), *untold[:2], not_tested=missing)
    assert said[-1] == ("Cannot tell", "u0; u1; ground")
    assert of(check("a", pull(19.0)), *untold)[-1] == ("Cannot tell", "u0; u1; u2; u3; 2 more")
    assert of(check("a", pull(19.0)))[-1][0] == "Next"


def test_what_a_pass_leaves_untested_is_named() -> None:
    said = of(check("a", pull(24.0)), not_tested=(NotTested("ground", False, "no meter"),))
    assert said[-2:] == [("Next", summary.NOTHING_TO_DO), ("Not tested", "ground")]


def test_a_pass_counts_the_readings_as_left_that_were_taken_as_exact() -> None:
    def of_inputs(job_check: JobCheck, *notes: str) -> JobCheck:
        inputs = tuple(
            InputRecord(f"reading {n}", "5 A", 5.0, "A", None, None, "typed", (note,))
            for n, note in enumerate(notes)
        )
        assert job_check.finding is not None
        return job_check._replace(finding=replace(job_check.finding, inputs=inputs))

    exact, printed = "taken as exact", "assumed stranded"
    two = of_inputs(check("a", pull(30.0)), exact, exact, printed)
    found = of_inputs(check("b", pull(30.0), stage=AS_FOUND), exact)
    said = "2 readings were taken as exact: no error of a meter was given."
    assert said in summary.notes(Job("a job", {}, (two, found), ()))
    fails = of_inputs(check("a", pull(10.0)), exact)
    assert not [n for n in summary.notes(Job("a job", {}, (fails,), ())) if "exact" in n]
    one = of_inputs(check("a", pull(30.0)), exact, printed)
    assert "1 reading was taken as exact" in " ".join(summary.notes(Job("a job", {}, (one,), ())))

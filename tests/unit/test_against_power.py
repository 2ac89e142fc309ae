"""What failed before power is said before power is put on, and putting it on is no default."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from wirecalc import build
from wirecalc.asking.job_check import OfCheck
from wirecalc.asking.job_interview import Interview
from wirecalc.asking.job_question import Question
from wirecalc.commands.job_dialogue import lead_through
from wirecalc.in_page.questions import JobQuestions
from wirecalc.said.verdicts import Verdict

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


GROUND = {
    "calculation": "ground",
    "name": "ground path",
    "step": "before power",
    "ground_point": "plug-pin",
}
GO_ON = "go on"


def job(*checks: dict[str, Any]) -> Interview:
    """Return the questions of a dishwasher with some checks, the head answered."""
    head = {
        "kind": "dishwasher",
        "title": "trips",
        "connection": "cord-connected",
        "date": "2026-11-30",
        "machine": "invented",
        "technician": "invented",
    }
    sheet = {"job": head, "check": [dict(check) for check in checks]}
    return Interview(sheet, CATALOGUE, Path(), "2026-11-30")


def until(interview: Interview, key: str) -> Question:
    """Pass over all before a question, by the start of its key."""
    for _ in range(80):
        asked = interview.next()
        assert asked is not None
        if not isinstance(asked, Question):
            interview.later(asked)
        elif asked.key.startswith(key) or asked.step == key:
            return asked
        else:
            typed = GO_ON if asked.key == "stop" else "later" if "later" in asked.choices else ""
            assert not interview.answer(asked, typed), asked
    raise AssertionError(f"no question {key}")


def at_power(reading: str) -> Question:
    """Return the first question at power up, of a dishwasher whose insulation was measured."""
    return until(job({**INSULATION, "insulation_resistance": reading}), "power up")


@pytest.mark.parametrize(
    ("reading", "stop", "default"),
    [
        (
            "0.3 Mohm",
            "STOP  insulation FAIL. No power before what fails is mended and measured again.",
            "later",
        ),
        (
            "1.02 Mohm ±3%",
            "STOP  insulation CANNOT TELL. Settle this before power is put on.",
            "do it now",
        ),
    ],
)
def test_what_failed_before_power_is_said_and_after_a_fail_doing_it_is_no_default(
    reading: str, stop: str, default: str
) -> None:
    asked = at_power(reading)
    assert asked.stops == [stop]
    assert asked.default == asked.enter == default


def test_where_nothing_stands_against_it_power_is_the_next_thing() -> None:
    asked = at_power("50 Mohm")
    assert not asked.stops
    assert asked.default == "do it now"


WET = {**INSULATION, "insulation_resistance": "0.3 Mohm"}


def readings(interview: Interview, name: str) -> dict[str, str]:
    """Return what is read of a check, by its stage."""
    of = [c for c in interview.sheet["check"] if c["name"] == name]
    return {c.get("stage", "as left"): c.get("insulation_resistance", "none") for c in of}


def take(interview: Interview, **answers: str) -> None:
    """Answer the questions of the check that is asked, what is offered by Enter, to its end."""
    asked = interview.next()
    at = asked.at if isinstance(asked, OfCheck) else -1
    while isinstance(asked, OfCheck) and asked.at == at:
        declared = asked.talk.next()
        if declared is not None:
            offered = asked.offered.get(declared.name)
            asked.talk.answer(
                declared.name, answers.get(declared.name, offered.answer if offered else None)
            )
        assert not interview.took(asked, ended=declared is None)
        asked = interview.next()


def test_what_failed_before_power_is_measured_again_and_the_first_reading_stays_as_found() -> None:
    interview = job(WET)
    stop = until(interview, "stop")
    assert stop.stops[0] == "STOP  No power before what fails is mended and measured again."
    _, line = stop.stops
    assert line.startswith("insulation FAIL: insulation to the case: 0.3 Mohm is below 1 Mohm")
    again, leave, on = stop.choices
    assert (again, leave) == ("measure again: insulation", "leave the job here")
    assert on == "go on, power stays off"
    assert stop.default == stop.enter == leave
    assert not interview.answer(stop, "1")
    asked = interview.next()
    assert isinstance(asked, OfCheck)
    assert (asked.check.name, asked.check.place.stage) == ("insulation", "as left")
    assert not {"insulation_resistance", "switched_on"} & set(asked.check.given)
    take(interview, insulation_resistance="50 Mohm", switched_on="yes", electronics_unplugged="yes")
    assert readings(interview, "insulation") == {"as found": "0.3 Mohm", "as left": "50 Mohm"}
    power = until(interview, "power up")
    assert not power.stops


def test_a_sheet_that_is_taken_up_is_stopped_again_and_it_fails_no_less_before_it_is_read() -> None:
    interview = job(WET)
    assert not interview.answer(until(interview, "stop"), "again")
    taken_up = Interview(interview.sheet, CATALOGUE, Path(), "2026-11-30")
    stop = until(taken_up, "stop")
    assert any("insulation" in line for line in stop.stops)
    power = until(taken_up, "power up")
    assert power.stops
    assert power.default == "later"


def test_what_failed_twice_keeps_both_readings() -> None:
    interview = job({**WET, "stage": "as found"}, {**WET, "insulation_resistance": "0.4 Mohm"})
    stop = until(interview, "stop")
    assert not interview.answer(stop, stop.choices[0])
    (note,) = [c["note"] for c in interview.sheet["check"] if "note" in c]
    assert "0.4 Mohm is below 1 Mohm" in note
    assert readings(interview, "insulation") == {"as found": "0.3 Mohm", "as left": "none"}


def test_what_failed_as_found_and_was_not_measured_again_stands_against_power() -> None:
    interview = job({**WET, "stage": "as found"})
    stop = until(interview, "stop")
    _, line = stop.stops
    assert line.startswith("insulation FAIL: as found, and not measured again: insulation to the")
    assert not interview.answer(stop, GO_ON)
    assert until(interview, "power up").default == "later"
    assert "measure again: insulation" in until(job({**WET, "stage": "as found"}), "stop").choices


def test_what_was_only_begun_and_what_was_said_not_to_be_known_is_asked_for() -> None:
    for reading in ({}, {"ground_resistance": "unknown"}):
        interview = job({**GROUND, **reading})
        stop = until(interview, "stop")
        assert stop.stops[0] == "STOP  Settle this before power is put on."
        assert stop.choices[-1] == "go on all the same"
        assert not interview.answer(stop, "1")
        asked = interview.next()
        assert isinstance(asked, OfCheck)
        assert asked.talk.next() is asked.check.calculation.input("ground_resistance")
        assert len(interview.sheet["check"]) == 1


def test_a_fail_stands_first_and_then_what_keeps_a_person_from_a_live_case() -> None:
    strip = {"calculation": "strip", "step": "wire", "wire": "18 AWG", "style": "closed"}
    short = {**strip, "name": "short", "barrel_length": "6 mm", "stripped": "2 mm"}
    interview = job(strip, short, GROUND, WET)
    lines = until(interview, "stop").stops[1:]
    assert [": " in line for line in lines] == [True, True, False, False]  # two in full
    names = [
        line.split(" FAIL")[0].split(" CANNOT")[0] for line in until(interview, "stop").stops[1:]
    ]
    assert names == ["insulation", "short", "ground path", "strip"]


def test_leaving_it_there_ends_the_questions_and_the_sheet_is_not_done() -> None:
    interview = job(WET)
    assert not interview.answer(until(interview, "stop"), "")
    assert interview.next() is None
    assert interview.is_taken_up
    assert interview.evaluated().verdict is Verdict.FAIL
    assert interview.back()
    assert until(interview, "stop")


def test_gone_past_once_it_is_not_asked_again_in_the_same_sitting() -> None:
    interview = job(WET)
    assert not interview.answer(until(interview, "stop"), GO_ON)
    assert until(interview, "power up").key != "stop"


def test_terminal_and_page_show_it_above_the_question() -> None:
    interview = job(WET)
    until(interview, "stop")
    said: list[str] = []

    def read(prompt: str) -> str:
        if prompt == "> ":
            raise EOFError
        return ""

    with pytest.raises(EOFError):
        lead_through(interview, read, said.append, lambda: None)
    text = "\n".join(said)
    assert text.index("STOP  No power before") < text.index("insulation FAIL")
    assert text.index("insulation FAIL") < text.index("What do you do now?")
    page = JobQuestions(interview.sheet, CATALOGUE, Path(), "2026-11-30")
    until(page.interview, "stop")
    asks = page.step("open", "")["asks"]
    assert [line for line in asks["stops"] if line.startswith("insulation FAIL")]


def test_a_bench_is_not_stopped() -> None:
    pull = {"calculation": "pull", "step": "prove the joint", "wire": "18 AWG", "force": "9 lbf"}
    pull["terminal"] = "ring"
    sheet = {"job": {"kind": "bench", "title": "sample"}, "check": [pull]}
    interview = Interview(sheet, CATALOGUE, Path(), "")
    while (asked := interview.next()) is not None:
        assert isinstance(asked, Question)
        assert asked.key != "stop"
        assert not interview.answer(asked, "")


def test_what_failed_as_found_with_power_is_read_again_with_power() -> None:
    hot = {"calculation": "supply", "stage": "as found", "voltage_running": "90 V"}
    live = {**hot, "step": "live readings", "nameplate_voltage": "120 V"}
    assert not until(job(live), "power up").stops
    assert until(job({**live, "step": "dead tests"}), "power up").stops

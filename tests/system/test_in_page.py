"""What the page asks of Python: the command line's own findings, pages, refusals and questions."""

from __future__ import annotations

import json
import shlex
from typing import Any

import pytest

import wirecalc
from wirecalc.in_page import asked
from wirecalc.in_page.asked import Page
from wirecalc.pocket.fields import calculation_object

from .pocket import answered, every_example

DROP = {"current": "1.6 A", "nameplate_voltage": "115 V", "building_wire": "14 AWG"}
COMPUTER = {"trace", "start-curve", "pull-batch", "pull-tester"}


@pytest.fixture(scope="module")
def page() -> Page:
    return Page()


def test_each_example_is_the_finding_of_the_library_or_names_the_computer(page: Page) -> None:
    away = set()
    for request in every_example():
        done = answered(page, request)
        if "refused" in done:
            away.add(request.get("name", "a sheet"))
            assert "needs the computer" in json.dumps(done)
        elif request["do"] == "answer":
            own = wirecalc.run(request["name"], **request["given"])
            assert done["finding"]["verdict"] == own.verdict
            assert done["page"].startswith("<!DOCTYPE html>")
    assert away == {*COMPUTER, "a sheet"}


def test_the_page_of_a_run_is_that_of_the_command_line(
    page: Page, capsys: pytest.CaptureFixture[str]
) -> None:
    from wirecalc.cli import main

    calc = wirecalc.build(bundled_only=True).find("drop").calculation
    main([*shlex.split(calc.example)[1:], "--format", "html"])
    done = answered(page, {"do": "answer", "name": "drop", "given": dict(calc.example_inputs)})
    assert done["page"] == capsys.readouterr().out.rstrip("\n")


def test_what_is_refused_is_said_of_the_input(page: Page) -> None:
    done = answered(page, {"do": "answer", "name": "drop", "given": {**DROP, "current": "1.6 Q"}})
    assert [p["name"] for p in done["refused"]] == ["current"]
    assert done["refused"][0]["would_do"] == "write it in A, mA, uA"
    (needed,) = answered(page, {"do": "answer", "name": "outlet", "given": {}})["refused"]
    assert needed["wrong"] == "is needed"
    assert needed["would_do"] == "such as 120-grounded"  # no option of the command line


def test_a_pass_comes_with_what_stops_the_work(page: Page) -> None:
    done = answered(
        page, {"do": "answer", "name": "drop", "given": {**DROP, "run_length": "60 ft"}}
    )
    assert done["finding"]["verdict"] == "pass"
    stops = [c for c in done["finding"]["cautions"] if c["severity"] == "stop"]
    assert len(done["stops"]) == len(stops) >= 3


def test_a_form_asks_at_once_for_what_is_needed_whatever_else_is_given() -> None:
    calc = wirecalc.build(bundled_only=True).find("drop").calculation
    needed = [f["name"] for f in calculation_object(calc)["fields"] if f["needed"]]
    assert needed == ["current", "nameplate_voltage", "building_wire", "run_length"]  # no cord yet
    calc = wirecalc.build(bundled_only=True).find("insulation").calculation
    fields = {f["name"]: f["needed"] for f in calculation_object(calc)["fields"]}
    assert fields["tested_part"]
    assert not fields["electronics_unplugged"]  # of a machine, not of a bare part
    calc = wirecalc.build(bundled_only=True).find("windings").calculation
    fields = {f["name"]: f["needed"] for f in calculation_object(calc)["fields"]}
    assert fields["reading_1_2"]  # in whatever way its pins are


def test_a_value_is_sought_there_too(page: Page) -> None:
    given = {**DROP, "run_length": "sought"}
    done = answered(page, {"do": "answer", "name": "drop", "given": given})
    assert done["sought"]["schema"] == "wirecalc.sought/1"


@pytest.mark.parametrize(("today", "refused"), [("2027-06-30", False), ("2027-07-01", True)])
def test_after_its_last_day_nothing_is_computed(
    today: str, refused: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Day(asked.datetime.date):
        @classmethod
        def today(cls) -> Day:
            return cls.fromisoformat(today)

    monkeypatch.setattr(asked.datetime, "date", Day)
    done = answered(Page("2027-06-30"), {"do": "answer", "name": "drop", "given": DROP})
    assert ("this file" in [p["name"] for p in done.get("refused", [])]) is refused


def test_a_sheet_of_what_needs_the_computer_is_refused_by_name(page: Page) -> None:
    sheet = '[job]\ntitle = "class"\nkind = "bench"\n[[check]]\ncalculation = "pull-batch"\n'
    done = answered(page, {"do": "report", "sheet": sheet})
    assert done["refused"][0]["wrong"].startswith("pull-batch needs the computer")


def test_a_job_by_questions_says_what_hands_keep_to_once_and_asks_no_name(page: Page) -> None:
    done = answered(page, {"do": "job", "step": "open"})
    asked_, stops = [], []
    for typed in ("refrigerator", "warm inside", *[""] * 8):
        done = answered(page, {"do": "job", "step": "answer", "typed": typed})
        asked_.append(done["asks"]["says"])
        stops += [(done["asks"]["step"], line) for line in done["asks"]["stops"]]
    assert not [says for says in asked_ if "Who" in says]
    assert len(stops) == len(set(stops)) >= 3
    assert 'kind = "refrigerator"' in done["sheet"]
    back = answered(page, {"do": "job", "step": "back"})
    assert back["asks"]["says"] == asked_[-2]


def test_a_wrong_answer_to_a_question_is_said_and_changes_nothing(page: Page) -> None:
    before = answered(page, {"do": "job", "step": "open"})
    done = answered(page, {"do": "job", "step": "answer", "typed": "spaceship"})
    assert done["problems"][0]["wrong"] == "there is no kind 'spaceship'"
    assert done["asks"] == before["asks"]
    assert done["sheet"] == before["sheet"]


def steps(page: Page, *taken: tuple[str, str]) -> dict[str, Any]:
    """Return what is asked after some steps of a job that was open."""
    done: dict[str, Any] = {}
    for step, typed in taken:
        done = answered(page, {"do": "job", "step": step, "typed": typed})
    return done


def on_the_bench(page: Page, check: str) -> dict[str, Any]:
    """Open a job with one check, and return what is asked first."""
    sheet = f'[job]\nkind = "bench"\ntitle = "a"\ndate = "2026-11-30"\n[[check]]\n{check}'
    done = answered(page, {"do": "job", "step": "open", "sheet": sheet})
    while done["asks"]["of"] == "job":
        done = steps(page, ("answer", ""))
    return done


def test_what_is_settled_may_still_be_judged_by_what_was_not_asked(page: Page) -> None:
    strip = 'calculation = "strip"\nwire = "18 AWG"\nstyle = "closed"\n'
    on_the_bench(page, strip)
    done = steps(page, ("answer", "6.4 mm"))
    assert done["asks"]["field"] is None
    first, length = done["asks"]["standing"]
    assert first == "So far figures only: nothing was given to judge."
    assert length.startswith("strip: 6.65 to 8.45 mm")
    assert [m["name"] for m in done["asks"]["more"]] == ["stripped"]
    done = steps(page, ("more", "stripped"))
    assert done["asks"]["field"]["name"] == "stripped"
    done = steps(page, ("answer", "6.8 Q"))
    assert done["problems"][0]["name"] == done["asks"]["field"]["name"] == "stripped"
    done = steps(page, ("answer", "2 mm"))
    assert done["asks"]["standing"][0].startswith("So far: FAIL")
    assert 'stripped = "2 mm"' in done["sheet"]


def test_answers_that_cannot_be_used_together_say_why(page: Page) -> None:
    given = {"wire": "26x30 AWG", "cut_strands": "20"}
    lines = "".join(f'{name} = "{value}"\n' for name, value in given.items())
    done = on_the_bench(page, f'calculation = "strands"\n{lines}')
    assert done["asks"]["field"]["name"] == "nicked_strands"
    done = steps(page, ("answer", "7"))  # 27 of 26
    assert done["problems"][0]["name"].endswith("cut_strands")
    assert done["problems"][0]["wrong"] == "20 cut and 7 nicked of 26 strands"
    assert done["asks"]["field"]["name"] == "nicked_strands"


def test_what_stands_against_power_is_read_before_it(page: Page) -> None:
    sheet = """[job]
kind = "dishwasher"
title = "trips"
connection = "cord-connected"
date = "2026-11-30"
machine = "invented"
[[check]]
calculation = "insulation"
name = "insulation"
step = "before power"
tested_part = "machine"
test_voltage = "500 V"
electronics_unplugged = "yes"
switched_on = "yes"
protection = "class-i"
insulation_resistance = "0.3 Mohm"
"""
    done = answered(page, {"do": "job", "step": "open", "sheet": sheet})
    said = []
    while done["asks"]["step"] != "power up":
        said.append(done["asks"])
        choices = done["asks"].get("choices", [])
        typed = next((c for c in choices if c == "later" or c.startswith("go on")), "")
        done = steps(page, ("answer", typed) if done["asks"]["of"] == "job" else ("later", ""))
    (stop,) = [a for a in said if any("insulation" in line for line in a.get("stops", []))]
    assert stop["default"] == "leave the job here"  # going on is no default
    assert any(line.startswith("STOP  insulation FAIL") for line in done["asks"]["stops"])
    assert "STOP" not in done["asks"]["says"]
    assert done["asks"]["default"] == "later"


def test_what_is_erased_is_not_kept_by_python_either(page: Page) -> None:
    done = steps(page, ("open", ""), ("erase", ""), ("report", ""))
    assert done["refused"][0]["would_do"] == "begin one, or import its sheet"


def test_no_step_without_a_job() -> None:
    done = answered(Page(), {"do": "job", "step": "answer", "typed": "yes"})
    assert done["refused"][0]["would_do"] == "begin one, or import its sheet"

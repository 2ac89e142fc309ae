"""A job by questions without a terminal: what is asked when, what the sheet has, one step back.

Machines and readings are invented.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from wirecalc import BadInput, build
from wirecalc.asking.job_check import OfCheck
from wirecalc.asking.job_interview import Interview
from wirecalc.asking.job_question import Question
from wirecalc.asking.job_state import file_name
from wirecalc.asking.plates import OF_THE_MACHINE
from wirecalc.base.errors import PluginDefect
from wirecalc.commands.job_stops import of_machine
from wirecalc.jobs.sheet.plan import on_plate
from wirecalc.jobs.sheet.shape import problems_of

CATALOGUE = build(bundled_only=True)
HERE = Path()
HEAD = {
    "kind": "washer",
    "title": "does not turn",
    "machine": "washer, 120 V",
    "technician": "",
    "date": "",
}
LEAKAGE = {"switched_on": "yes", "leakage_current": "0.2 mA ±0.01 mA", "machine_kind": "stationary"}
READINGS = {
    "nameplate_voltage": "120 V",
    "voltage_running": "117 V",
    "outlet_kind": "120-grounded",
    "line_neutral": "118 V",
    "line_ground": "118 V",
    "neutral_ground": "0.1 V",
    "ground_proof": "low-impedance",
    "ground_point": "plug-pin",
    "ground_resistance": "0.06 ohm ±0.01 ohm",
    **LEAKAGE,
}


class Person:
    """Answers by the key of a question, and by the name of an input."""

    def __init__(self, sheet: Mapping[str, Any] | None = None, **answers: str) -> None:
        self.interview = Interview(sheet or {}, CATALOGUE, HERE, "2026-01-27")
        self.answers = {**HEAD, **READINGS, **answers}
        self.asked: list[str] = []
        self.texts: list[str] = []

    def run(self, most: int = 200) -> Person:
        for _ in range(most):
            if not self.one():
                break
        return self

    def one(self) -> bool:
        """Answer one question; False where nothing is asked."""
        asked = self.interview.next()
        if asked is None:
            return False
        if isinstance(asked, Question):
            self.asked.append(asked.key)
            typed = self.answers.get(asked.key, self._usual(asked))
            problems = self.interview.answer(asked, typed)
            assert not problems, (asked.key, problems)
        else:
            self.check(asked)
        self.texts.append(self.interview.text())
        return True

    def check(self, asked: OfCheck) -> None:
        question = asked.talk.next()
        if question is None:
            assert not self.interview.took(asked, ended=True)
            return
        self.asked.append(f"{asked.check.name}: {question.name}")
        offered = asked.offered.get(question.name)
        answer = self.answers.get(question.name) or (offered.answer if offered else None)
        many = [answer] if question.many and isinstance(answer, str) else answer
        asked.talk.answer(question.name, many)
        assert not self.interview.took(asked)

    @staticmethod
    def _usual(asked: Question) -> str:
        if asked.key.startswith("confirmed"):
            return "yes"
        if asked.key == "stop":
            return "go on"
        if asked.key.startswith("open "):
            return " ".join(str(n) for n, _ in enumerate(asked.choices, start=1))
        return "leakage" if "leakage" in asked.choices else ""

    @property
    def sheet(self) -> dict[str, Any]:
        return tomllib.loads(self.interview.text())

    def of(self, check: str) -> list[str]:
        return [key.split(": ")[1] for key in self.asked if key.startswith(f"{check}: ")]


def test_job_ends_with_what_a_sheet_of_its_kind_must_have() -> None:
    person = Person(technician="an invented one").run()
    job = person.interview.evaluated()
    assert job.verdict == "pass", job.reasons
    assert [c.calculation for c in job.checks] == ["ground", "leakage", "outlet", "supply"]
    assert person.sheet["job"]["date"] == "2026-01-27"
    assert person.sheet["nameplate"] == {"nameplate_voltage": "120 V"}
    assert "asked_up_to" not in job.about


def test_questions_follow_the_work() -> None:
    person = Person(**{"step wire": "strip", "step power up": "start"}).run()
    steps = [key for key in person.asked if key.startswith("step ")]
    assert steps == [
        f"step {step}"
        for step in (
            *("isolate", "dead tests", "parts", "wire", "joint", "prove the joint"),
            *("power up", "return to service"),
        )
    ]
    order = [key.split(": ")[0] for key in person.asked if ": " in key]
    assert list(dict.fromkeys(order)) == [
        "strip",
        "ground path",
        "outlet",
        "supply",
        "start",
        "leakage",
    ]


def test_nothing_is_asked_twice() -> None:
    chosen = {"step wire": "strip", "step joint": "terminal", "step power up": "start"}
    person = Person(**chosen, wire="18 AWG", style="closed", barrel_length="6 mm").run()
    assert person.of("strip")[0] == "wire"
    plate = [key for key in person.asked if key.endswith(": nameplate_voltage")]
    assert plate == ["supply: nameplate_voltage"]
    assert len(person.asked) == len(set(person.asked))


def test_wire_of_one_check_is_offered_for_the_next_and_a_reading_of_another_stage_is_not() -> None:
    sheet = {
        "job": {"title": "t", "kind": "washer", "asked_up_to": "words"},
        "check": [
            {
                "calculation": "strip",
                "wire": ["18 AWG"],
                "style": "closed",
                "barrel_length": "6 mm",
            },
            {"calculation": "inrush", "name": "start", "stage": "as found", "voltage": "117 V"},
            {"calculation": "joint-drop", "name": "joint"},
            {"calculation": "inrush", "name": "start"},
        ],
    }
    person = Person(sheet)
    offers = {}
    while isinstance(asked := person.interview.next(), OfCheck):
        offers[asked.check.name, asked.check.place.stage] = asked.offered
        person.interview.later(asked)
    assert offers["joint", "as left"]["wire"].answer == "18 AWG"
    assert offers["joint", "as left"]["wire"].of == "strip"
    assert "voltage" not in offers["start", "as left"]


def test_what_was_seen_with_a_reading_is_seen_again_after_the_work() -> None:
    seen = {"start_device": "ptc", "by_itself": "yes", "device_resistance": "0.2 ohm"}
    sheet = {
        "job": {"title": "t", "kind": "refrigerator", "asked_up_to": "words"},
        "check": [
            {"calculation": "start-device", "stage": "as found", **seen},
            {"calculation": "start-device"},
        ],
    }
    left = Person(sheet).interview.next()  # it failed as found: nothing more is asked of that
    assert isinstance(left, OfCheck) and left.at == 1
    assert set(left.offered) == {"start_device"}


def test_unknown_is_never_offered() -> None:
    sheet = {
        "job": {"title": "t", "kind": "washer", "asked_up_to": "words"},
        "check": [
            {"calculation": "strip", "wire": ["unknown"], "style": "closed"},
            {"calculation": "joint-drop", "name": "joint"},
        ],
    }
    interview = Person(sheet).interview
    while isinstance(asked := interview.next(), OfCheck):
        assert "wire" not in asked.offered
        interview.later(asked)


def test_check_that_is_dropped_leaves_the_others_where_they_were() -> None:
    person = Person(**{"step wire": "1 2 3"})
    while not isinstance(asked := person.interview.next(), OfCheck):
        person.one()
    person.interview.later(asked)
    second = person.interview.next()
    assert isinstance(second, OfCheck) and second.check.name == "new lead"
    person.interview.drop(second)
    third = person.interview.next()
    assert isinstance(third, OfCheck) and third.check.name == "strip"
    person.interview.later(third)
    assert not isinstance(person.interview.next(), OfCheck)
    assert [c["name"] for c in person.sheet["check"]] == ["lead", "strip"]


def test_file_of_a_new_sheet_has_the_name_of_its_kind() -> None:
    assert file_name("heat-pump-dryer", 1) == "heat-pump-dryer.toml"
    assert file_name("Wash / dry", 2) == "wash-dry-2.toml"
    assert file_name("??", 1) == "job.toml"


def test_sheet_can_be_evaluated_after_every_answer() -> None:
    person = Person(**{"step wire": "1 2 3", "step joint": "1 2 3", "step power up": "1"}).run()
    assert len(person.texts) > 40
    for text in dict.fromkeys(person.texts):
        sheet = tomllib.loads(text)
        wrong = [p for p in problems_of(sheet) if p.name not in ("check", "job")]
        assert not wrong
        if sheet.get("check"):
            Interview(sheet, CATALOGUE, HERE)  # refused it would raise


def test_taken_up_after_every_answer_it_ends_as_if_nothing_had_happened() -> None:
    whole = Person(**{"step wire": "strip"}).run()
    texts = list(dict.fromkeys(whole.texts))
    for number, text in enumerate(texts[:: max(1, len(texts) // 5)]):
        again = Person(tomllib.loads(text), **{"step wire": "strip"}).run()
        assert again.sheet == whole.sheet, number
        done = {key for key in tomllib.loads(text).get("job", {}) if key in HEAD}
        assert not done & set(again.asked)


def test_nothing_is_asked_again_of_a_check_that_is_done() -> None:
    """What was said not to be there stands on no sheet, and is not asked for twice."""
    whole = Person(**{"needed insulation or leakage": "leakage", "needed ground path, ground": "1"})
    while "other" not in whole.asked:
        whole.one()
    assert "other_leakage" in whole.of("leakage")
    assert Person(whole.sheet).run().of("leakage") == []
    before = next(n for n, key in enumerate(whole.asked) if key == "leakage: other_leakage")
    again = Person(tomllib.loads(whole.texts[before - 1])).run()
    assert "other_leakage" in again.of("leakage")  # the one in whose middle it was left


@pytest.mark.parametrize(
    ("answer", "reason", "open_"),
    [
        ("later", "", True),
        ("not tested", "no clamp on the van", True),
        ("does not apply", "", False),
    ],
)
def test_needed_check_is_made_or_said_why_not(answer: str, reason: str, open_: bool) -> None:
    why = "two wires, double insulated" if answer == "does not apply" else reason
    person = Person(
        **{
            "needed ground path, ground": answer,
            "why not tested": why,
            "why it does not apply": why,
        }
    ).run()
    job = person.interview.evaluated()
    missing = [n.calculation for n in job.not_tested if n.required]
    assert missing == (["ground"] if open_ else [])
    assert job.verdict == ("cannot tell" if open_ else "pass")


def test_no_time_is_no_reason_why_a_check_does_not_apply() -> None:
    person = Person(**{"needed ground path, ground": "does not apply"})
    while not (isinstance(asked := person.interview.next(), Question) and "why" in asked.key):
        person.one()
    before = person.interview.text()
    (problem,) = person.interview.answer(asked, "no time")
    assert "'no time' is no reason why it does not apply" in str(problem)
    assert person.interview.text() == before
    assert not person.interview.answer(asked, "double insulated")


def test_check_that_must_be_made_of_every_machine_is_never_said_not_to_apply() -> None:
    person = Person()
    for asked in questions(person):
        if asked.key.startswith("needed supply"):
            assert "does not apply" not in asked.choices
            return
    pytest.fail("supply was not asked for")


def questions(person: Person) -> Iterator[Question]:
    while (asked := person.interview.next()) is not None:
        if isinstance(asked, Question):
            yield asked
        person.one()


def test_what_failed_as_found_is_measured_again_before_the_power_comes_back() -> None:
    readings = {"open_pin": "", "reading_1_2": "4 ohm", "reading_1_3": "5 ohm"}
    readings |= {"reading_2_3": "8 ohm", "case_resistance": "0.01 Mohm", "motor_kind": "motor"}
    person = Person(**{"step dead tests": "motor windings (as found)"}, **readings)
    person.answers["again motor windings, windings"] = "later"
    person.answers["needed supply, supply"] = "do it now"  # later is meant, after such a fail
    person.run()
    at = person.asked.index
    assert at("step joint") < at("again motor windings, windings")
    assert at("again motor windings, windings") < at("confirmed covers_back")
    assert at("confirmed covers_back") < at("stop") < at("supply: voltage_running")
    assert person.interview.evaluated().verdict == "cannot tell"


def test_back_takes_the_last_answer_back_whatever_it_was() -> None:
    strip = {"wire": "18 AWG", "style": "closed", "barrel_length": "6 mm"}
    person = Person(**{"step wire": "strip"}, **strip)
    texts = [person.interview.text()]
    while person.one():
        texts.append(person.interview.text())
    for expected in reversed(texts[-12:-1]):
        assert person.interview.back()
        assert person.interview.text().replace('asked_up_to = "words"\n', "") == expected.replace(
            'asked_up_to = "words"\n', ""
        )
    assert person.run().interview.evaluated().verdict == "pass"
    assert not Person().interview.back()


def test_answer_that_the_sheet_contradicts_is_not_taken() -> None:
    person = Person(machine_kind="refrigerator")
    while True:
        asked = person.interview.next()
        if isinstance(asked, OfCheck) and asked.check.calculation.name == "leakage":
            break
        person.one()
    before = person.interview.text()
    asked.talk.answer("machine_kind", "refrigerator")
    (problem,) = person.interview.took(asked)
    assert 'the sheet says kind = "washer"' in str(problem)
    assert person.interview.text() == before


def test_check_may_be_dropped_or_left_for_later() -> None:
    person = Person(**{"step wire": "strip"})
    while not isinstance(asked := person.interview.next(), OfCheck):
        person.one()
    person.interview.drop(asked)
    assert "check" not in tomllib.loads(person.interview.text())
    assert person.interview.back()
    asked = person.interview.next()
    assert isinstance(asked, OfCheck)
    person.interview.later(asked)
    assert not isinstance(person.interview.next(), OfCheck)
    assert tomllib.loads(person.interview.text())["check"][0]["calculation"] == "strip"


@pytest.mark.parametrize(
    ("typed", "kind"), [("fridge", "refrigerator"), ("3", ""), ("Tumble Dryer", "dryer")]
)
def test_kind_is_taken_by_name_by_number_and_by_other_names(typed: str, kind: str) -> None:
    interview = Interview({}, CATALOGUE, HERE)
    asked = interview.next()
    assert isinstance(asked, Question)
    assert not interview.answer(asked, typed)
    assert interview.kind == (kind or asked.choices[2])


def test_kind_that_there_is_not_is_asked_again() -> None:
    interview = Interview({}, CATALOGUE, HERE)
    asked = interview.next()
    assert isinstance(asked, Question)
    (problem,) = interview.answer(asked, "refridgerater")
    assert "did you mean refrigerator?" in str(problem)
    assert interview.text() == "[job]\n"
    (problem,) = interview.answer(asked, "")
    assert "an answer is needed" in str(problem)


def test_unlisted_refrigerant_is_refused_at_once() -> None:
    person = Person(kind="refrigerator")
    for asked in questions(person):
        if asked.key == "refrigerant":
            (problem,) = person.interview.answer(asked, "R-999")
            assert "write flammable or not flammable" in str(problem)
            assert not person.interview.answer(asked, "R-134a")
            return


def test_plate_of_the_machine_feeds_all_and_what_is_printed_on_a_part_is_asked_of_each() -> None:
    printed = {
        i.name: i.kind
        for p in CATALOGUE.calculations.values()
        for i in p.calculation.inputs
        if on_plate(i.kind)
    }
    assert set(OF_THE_MACHINE) <= set(printed), "a name that no calculation has"
    of_parts = {"wire_temperature", "marked_capacitance", "new_cutoff_voltage", "tab_width"}
    assert of_parts <= set(printed)
    assert not of_parts & set(OF_THE_MACHINE)
    spoken = {name for name, kind in printed.items() if "on the plate" in kind.text}
    assert spoken <= set(OF_THE_MACHINE), "it is said to stand on the plate"


def test_defect_of_a_plugin_keeps_no_job_from_its_end(monkeypatch: pytest.MonkeyPatch) -> None:
    person = Person(**{"step wire": "strip"})
    run = type(CATALOGUE).run

    def broken(self: Any, name: str, *rest: Any, **more: Any) -> Any:
        if name == "strip":
            raise PluginDefect("plugin x failed")
        return run(self, name, *rest, **more)

    monkeypatch.setattr(type(CATALOGUE), "run", broken)
    job = person.run().interview.evaluated()
    assert [c.name for c in job.checks if c.defect] == ["strip"]
    assert person.of("leakage")


def test_flammable_refrigerant_stands_first() -> None:
    person = Person(kind="refrigerator")
    for asked in questions(person):
        if asked.key == "title":
            assert any(stop.startswith("STOP") for stop in of_machine(person.sheet["job"]))
            return


def test_sheet_of_several_machines_and_one_that_is_refused_are_not_taken_up() -> None:
    with pytest.raises(BadInput, match="one machine"):
        Interview({"job": {"title": "t"}, "machine": [{"name": "a"}]}, CATALOGUE, HERE)
    wrong = {"job": {"title": "t"}, "check": [{"calculation": "pull", "force": "3 V"}]}
    with pytest.raises(BadInput, match="force"):
        Interview(wrong, CATALOGUE, HERE)


def test_other_check_by_words() -> None:
    person = Person(**{"step wire": ""})
    for asked in questions(person):
        if asked.key == "other":
            assert "speaks of" in str(person.interview.answer(asked, "xyzzy")[0])
            assert not person.interview.answer(asked, "cord gets warm")
            which = person.interview.next()
            assert isinstance(which, Question) and which.key == "which"
            assert not person.interview.answer(which, "1")
            stage = person.interview.next()
            assert isinstance(stage, Question) and stage.choices == ("as left", "as found")
            assert not person.interview.answer(stage, "")
            assert isinstance(person.interview.next(), OfCheck)
            return


@pytest.mark.parametrize(
    ("kind", "asked"), [("dryer", set()), ("range", {"range_rating"}), ("refrigerator", set())]
)
def test_what_the_kind_cannot_have_is_not_asked_of_it(kind: str, asked: set[str]) -> None:
    circuit = {"current": "9 A", "breaker": "15 A", "building_wire": "14 AWG", "conductors": "2"}
    circuit |= {"only_receptacle": "yes", "ambient": "30 C", "receptacle": "15 A"}
    sheet = {
        "job": {"title": "t", "kind": kind, "asked_up_to": "words"},
        "check": [
            {"calculation": "breaker", **circuit},
            {"calculation": "ground", "ground_point": "plug-pin"},
        ],
    }
    person = Person(sheet).run()
    only = {"range_rating", "storage_water_heater"}
    assert only & set(person.of("breaker")) <= asked
    assert ("neutral_strap" in person.of("ground")) is (kind != "refrigerator")


def test_check_that_was_good_as_found_may_stand_for_how_it_is_left() -> None:
    good = {"element_resistance": "10.6 ohm", "lead_resistance": "0 ohm"}
    plate = {"nameplate_power": "5400 W", "nameplate_voltage": "240 V"}
    person = Person(kind="dryer", energy="electric", **plate, **good)
    person.answers |= {"step dead tests": "element (as found)"}
    for asked in questions(person):
        if asked.key == "needed element, element":
            found = next(c for c in asked.choices if c.startswith("as it was found"))
            assert not person.interview.answer(asked, found)
            break
    (entry,) = person.sheet["check"]
    assert "stage" not in entry and entry["element_resistance"] == "10.6 ohm"
    bad = Person(kind="dryer", energy="electric", nameplate_voltage="240 V", element_open="yes")
    bad.answers |= {"step dead tests": "element (as found)"}
    for asked in questions(bad):
        if asked.key == "needed element, element":
            assert not any(c.startswith("as it was found") for c in asked.choices)
            return


def test_dead_step_asks_for_the_reading_that_needs_no_power() -> None:
    person = Person(**{"step dead tests": "run capacitor (as found)"})
    person.answers |= {"marked_capacitance": "35 uF", "measured_capacitance": "34.8 uF ±1%"}
    while "step parts" not in person.asked:
        person.one()
    assert person.of("run capacitor")[:2] == ["marked_capacitance", "measured_capacitance"]
    assert "capacitor_current" not in person.of("run capacitor")
    person = Person(**{"step isolate": "bleeding", "marked_capacitance": "35 uF"})
    person.answers |= {"resistor": "20 kohm", "resistor_power": "2 W", "left_voltage": "40 V"}
    while "step dead tests" not in person.asked:
        person.one()
    assert "left_voltage" in person.of("bleeding")
    assert "capacitor_voltage" not in person.of("bleeding")


def test_does_not_apply_is_offered_only_where_it_can_be_so() -> None:
    windings = {"step dead tests": "motor windings (as found)", "reading_1_2": "4 ohm"}
    offered: dict[str, list[str]] = {}
    for name, person in (("shut", Person()), ("opened", Person(**{"step joint": "terminal"}))):
        person.answers |= windings if name == "opened" else {}
        for asked in questions(person):
            if asked.key.startswith("confirmed "):
                offered[f"{name} {asked.key[10:]}"] = list(asked.choices)[2:]
    assert offered["shut test_jumpers_off"] == ["none was used", "the cabinet was not opened"]
    assert offered["opened test_jumpers_off"] == ["none was used"]
    assert offered["opened leads_clear"] == []
    assert offered["shut covers_back"] == offered["shut safety_switches_proved"] == []
    assert "does not apply" not in [word for words in offered.values() for word in words]


def test_what_is_left_for_later_is_confirmed_once_more_at_the_end() -> None:
    person = Person(**{"confirmed covers_back": "later"}).run()
    assert person.asked.count("confirmed covers_back") == 2
    assert person.asked.count("confirmed leads_clear") == 1
    assert person.interview.evaluated().verdict == "cannot tell"


def test_what_was_left_out_is_not_asked_at_every_taking_up_but_once_at_the_end() -> None:
    left = {"wire": "18 AWG", "style": "closed", "barrel_length": "", "tab_width": "0.25 in"}
    whole = Person(**{"step wire": "strip", "step joint": "push-on"}, **left, current="1.2 A")
    while "push-on: current" not in whole.asked:
        whole.one()
    again = Person(whole.sheet, **left).run()
    at = again.asked.index
    assert again.of("strip") == ["barrel_length"]
    assert at("push-on: terminal_width") < at("open 0") < at("strip: barrel_length")
    assert at("supply: voltage_running") < at("open 0")
    later = Person(whole.sheet, **{"open 0": ""}, **left).run()
    assert later.of("strip") == []

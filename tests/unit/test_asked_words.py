"""What may be typed at a question beside an answer: abbreviations, sought, words for a choice."""

from __future__ import annotations

import pytest

from wirecalc import build
from wirecalc.asking.answers import Taken, taken
from wirecalc.asking.conversation import Conversation
from wirecalc.asking.job_question import Question, chosen
from wirecalc.base.errors import BadText, Problem
from wirecalc.commands.dialogue import converse

CATALOGUE = build(bundled_only=True)


def heard_of(name: str, *typed: str) -> str:
    """Type some lines to the questions of a calculation; return what was said."""
    lines, heard = list(typed), []

    def read(prompt: str) -> str:
        heard.append(prompt)
        if not lines:
            raise EOFError
        return lines.pop(0)

    calc = CATALOGUE.calculations[name].calculation
    with pytest.raises(EOFError):
        converse(
            calc,
            lambda given: CATALOGUE.run(name, given),
            lambda given: CATALOGUE.run(name, given, origin="sheet", missing_is_unknown=True),
            read,
            heard.append,
        )
    return " ".join("\n".join(heard).split())


def conversation(name: str, **given: object) -> Conversation:
    return Conversation(
        CATALOGUE.calculations[name].calculation,
        lambda answers: CATALOGUE.run(name, answers, origin="sheet", missing_is_unknown=True),
        given,
    )


def test_name_is_chosen_by_its_abbreviation() -> None:
    plate = ("1.6 A", "12.5 A", "120 V")
    said = heard_of("inrush", *plate, "118 V", "10.9 A", "1.2 A", "0.4 s", "inrush", "SFA")
    assert said.endswith("service_factor_current>"), said


def test_what_is_assumed_says_what_it_comes_to_where_it_is_not_said() -> None:
    plate = ("1.6 A", "12.5 A", "120 V")
    said = heard_of("inrush", *plate, "118 V", "10.9 A", "1.2 A", "0.4 s", "")
    assert "Enter: not known: inrush is assumed, and it stays MARGINAL" in said
    assert "So far: MARGINAL" in said
    said = heard_of("inrush", *plate, "118 V", "10.9 A", "1.2 A", "0.4 s", "1")
    assert "So far: PASS" in said


def test_name_in_place_of_another_is_typed_by_its_abbreviation() -> None:
    said = heard_of("capacitor", "45 uF", "", "", "MFD")
    assert said.endswith("marked_high>") or "measured_capacitance>" in said


@pytest.mark.parametrize("typed", ["sought", "sought 5 to 40 lbf", "Sought"])
def test_sought_is_answered_with_the_line_to_type(typed: str) -> None:
    said = heard_of("pull", "18 AWG", "ring", typed)
    word = typed.casefold()
    shown = f"'{word}'" if " " in word else word
    assert "is sought on one line" in said
    line = f"wirecalc pull --wire '18 AWG' --terminal ring --force {shown}"
    assert line in said.replace("\\ ", "")
    assert said.endswith("force>")


def test_what_must_be_so_for_a_reading_is_asked_before_it() -> None:
    talk = conversation("insulation", protection="class-i", tested_part="machine")
    asked = []
    answers = {"test_voltage": "500 V", "insulation_resistance": ">500 Mohm"}
    while (question := talk.next()) is not None:
        asked.append(question.name)
        default = "no-strap" if question.name == "neutral_strap" else "yes"
        talk.answer(question.name, answers.get(question.name, default))
    before = asked[: asked.index("insulation_resistance")]
    assert set(before) == {"test_voltage", "switched_on", "electronics_unplugged", "neutral_strap"}
    of_part = conversation("insulation", protection="class-i", tested_part="compressor")
    assert [i.name for i in [of_part.next()] if i] == ["test_voltage"]


@pytest.mark.parametrize(
    ("name", "reading", "first"),
    [
        ("leakage", "leakage_current", ["switched_on"]),
        ("screening", "over_range", ["switched_on"]),
        ("screening", "device_held", ["test_button_trips"]),
    ],
)
def test_each_reading_has_its_guards_before_it(name: str, reading: str, first: list[str]) -> None:
    talk = conversation(name)
    asked = []
    while (question := talk.next()) is not None and len(asked) < 20:
        asked.append(question.name)
        talk.answer(question.name, "yes" if question.kind.of is bool else question.kind.example)
    assert reading in asked
    for guard in first:
        assert asked.index(guard) < asked.index(reading)


def test_every_guard_names_a_reading_of_its_calculation() -> None:
    for name, provided in CATALOGUE.calculations.items():
        inputs = {i.name for i in provided.calculation.inputs}
        for declared in provided.calculation.inputs:
            assert declared.kind.before in ("", *inputs), (name, declared.name)


def test_what_a_part_cannot_have_is_not_spoken_of() -> None:
    ptc = {"start_device": "ptc", "device_resistance": "6.8 ohm", "browned_or_rattling": "no"}
    talk = conversation("start-device", **ptc, by_itself="yes", device_cold="yes")
    names = {offer.input.name for offer in talk.offers()}
    assert not names & {"contact_upright", "contact_inverted", "coil_open"}
    finding = CATALOGUE.run("start-device", ptc)
    assert not {i.name for i in finding.inputs} & {"contact_upright", "coil_open"}


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("replaced", "new"), ("I replaced it", "new"), ("unplugged for good", "gone"), ("2", "gone")],
)
def test_words_that_people_say_mean_a_choice(typed: str, meant: str) -> None:
    also = {"replaced": "new", "unplugged": "gone"}
    question = Question("a", "?", choices=("new", "gone", "later"), also=also)
    assert chosen(question, typed) == [meant]
    with pytest.raises(BadText):
        chosen(question, "replaced and unplugged")


def test_strap_of_a_dryer_is_asked_before_the_ground_path_is_read() -> None:
    talk = conversation("ground", ground_point="plug-pin")
    first = talk.next()
    assert first is not None and first.name == "neutral_strap"
    talk.answer("neutral_strap", "removed")
    then = talk.next()
    assert then is not None and then.name == "neutral_open"


@pytest.mark.parametrize(("typed", "meant"), [("1", "yes"), ("2", "no"), ("y", "y"), ("no", "no")])
def test_yes_and_no_have_numbers_as_in_the_lines_that_are_confirmed(typed: str, meant: str) -> None:
    answer = taken(CATALOGUE.calculations["insulation"].calculation.input("switched_on"), typed)
    assert isinstance(answer, Taken)
    assert answer.text == meant


@pytest.mark.parametrize("typed", ["0", "3"])
def test_a_number_that_stands_for_neither_is_refused(typed: str) -> None:
    answer = taken(CATALOGUE.calculations["insulation"].calculation.input("switched_on"), typed)
    assert isinstance(answer, Problem)
    assert "yes or no" in answer.would_do or "yes or no" in answer.wrong


@pytest.mark.parametrize("enter", ["leaves it out", ""])
def test_a_bare_number_is_no_words(enter: str) -> None:
    with pytest.raises(BadText, match="2 is a number"):
        chosen(Question("work", "What was done?", enter=enter), "2")
    assert chosen(Question("work", "What was done?", enter=enter), "2 leads") == ["2 leads"]
    assert chosen(Question("machine", "Which machine?"), "4711") == ["4711"]


def test_where_nothing_is_judged_what_was_worked_out_is_shown() -> None:
    said = heard_of("strip", "18 AWG", "", "closed", "6 mm")
    assert "nothing was given to judge. strip: 6.25 to 8.05 mm" in said

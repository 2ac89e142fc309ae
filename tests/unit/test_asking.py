"""The dialogue: order, words in place of an answer, lists, what is wrong, what contradicts."""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator, Mapping
from typing import Annotated, Any

import pytest

from tests.calculations.trials import FILED, TRIALS
from wirecalc import (
    Bands,
    Count,
    Finding,
    Item,
    OneOf,
    Problem,
    Reading,
    ReadingsFile,
    asked,
    at_least,
    build,
    calculation,
)
from wirecalc.asking.answers import choices
from wirecalc.asking.conversation import Conversation
from wirecalc.asking.order import in_order
from wirecalc.cli import main
from wirecalc.commands.dialogue import command_line, converse
from wirecalc.engine.declaration import Calculation
from wirecalc.engine.from_plugins import ProvidedCalculation
from wirecalc.engine.running import run
from wirecalc.published.sources import confirmed

PRINTED = confirmed("std", "a standard", "table 1", copies=2)
CATALOGUE = build(bundled_only=True)


def refuse(load: float, least: float, **_: object) -> Iterator[Problem]:
    if least > load:
        yield Problem("least", "is more than the load", "swap them")


@calculation(part="test", refuse=refuse)
def needing(
    load: Annotated[float, Reading("A", above=0, high=90, text="amps")],
    least: Annotated[float, Reading("A", low=0, high=90, text="least")] = 1.0,
    live: Annotated[int, Count("live wires of the cord", goes_with="cord")] = 3,
    cord: Annotated[float | None, Reading("m", low=0, high=90, text="length of cord")] = None,
    more: Annotated[list[float] | None, Reading("A", low=0, high=90, text="others")] = None,
    kind: Annotated[str | None, OneOf(("a", "b"), text="kind", goes_with="least")] = None,
) -> Iterator[Item]:
    """Is the load enough?"""
    yield at_least("enough", load, least, "A", source=PRINTED)


AMPS = Reading("A", low=0, high=90, text="amps")


@calculation(part="test")
def dear(
    one: Annotated[float | None, AMPS, asked("it counts")] = None,
    two: Annotated[float | None, AMPS, asked("it counts too")] = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Is it dear to run?"""
    yield at_least("enough", one or 0.0, two or 0.0, "A", source=PRINTED)


class Person:
    """Types the given lines one after another, and hears what is said."""

    def __init__(self, *lines: str) -> None:
        self.lines, self.prompts, self.heard = list(lines), [], ""  # type: ignore[var-annotated]

    def read(self, prompt: str) -> str:
        self.prompts.append(prompt.rstrip("> "))
        if not self.lines:
            raise EOFError
        return self.lines.pop(0)

    def say(self, text: str) -> None:
        self.heard += text + "\n"

    def talk(self, calc: Calculation[Any] = needing) -> Mapping[str, object]:
        given, finding = converse(
            calc, lambda g: compute(calc, g), lambda g: probe(calc, g), self.read, self.say
        )
        assert finding.criteria == compute(calc, given).criteria
        assert not self.lines, "typed lines that nobody asked for"
        return given


def compute(calc: Calculation[Any], given: Mapping[str, object]) -> Finding:
    return run(ProvidedCalculation("demo", "1", calc), given)


def probe(calc: Calculation[Any], given: Mapping[str, object]) -> Finding:
    demo = ProvidedCalculation("demo", "1", calc)
    return run(demo, given, origin="sheet", missing_is_unknown=True)


def test_plates_are_asked_first_and_the_meter_last_each_behind_what_it_goes_with() -> None:
    assert [q.name for q in in_order(needing.inputs)] == [
        *("load", "least", "kind", "cord", "live", "more")
    ]
    inrush = CATALOGUE.calculations["inrush"].calculation
    asked = [q.name for q in in_order(inrush.inputs)]
    assert asked.index("locked_rotor_current") < asked.index("motor_kind") < asked.index("peak")
    assert asked.index("meter_mode") == asked.index("peak") + 1


def test_question_says_why_with_span_example_and_what_an_empty_line_does() -> None:
    person = Person("5 A", "", "", "")
    assert person.talk() == {"load": "5 A"}
    said = " ".join(person.heard.split())
    assert "needing: Is the load enough?" in said
    assert "load: amps over 0 up to 90 A; such as 10 A" in said
    assert "length of cord from 0 up to 90 m; such as 10 m" in said
    assert "Enter: cannot tell without it" in said
    assert "Left out: length of cord." in said
    assert person.prompts == ["load", "cord", "more", "more"]  # live and kind go with nothing


def test_what_goes_with_an_answer_is_asked() -> None:
    person = Person("5 A", "3 m", "", "live", "2", "least", "2 A", "b", "")
    assert person.talk() == {"load": "5 A", "least": "2 A", "cord": "3 m", "live": "2", "kind": "b"}
    assert "a, b" in person.heard


def test_wrong_answer_is_explained_as_on_the_command_line_and_asked_again(
    capsys: pytest.CaptureFixture[str],
) -> None:
    person = Person("2.5", "", *[""] * 9)
    with pytest.raises(EOFError):  # 2.5 names no wire, and a wire is needed
        person.talk(CATALOGUE.calculations["pull"].calculation)
    heard = " ".join(person.heard.split())
    main(["pull", "--wire", "2.5", "--force", "20", "--terminal", "ring", "--bundled-only"])
    complaint = capsys.readouterr().err.splitlines()[0].removeprefix("wirecalc: --wire: ")
    assert f"wire: {complaint}" in heard
    person = Person("6 V", "6 A", "", "", "")
    assert person.talk() == {"load": "6 A"}
    assert person.prompts[:2] == ["load", "load"]


def test_needed_input_cannot_be_left_out() -> None:
    person = Person("", "skip", "5 A", "", "", "")
    assert person.talk() == {"load": "5 A"}
    assert person.heard.count("load: is needed (amps); such as 10 A, or unknown") == 2


@pytest.mark.parametrize("words", ["unknown", "Don't know", "don’t know", "DO NOT KNOW", "no idea"])
def test_not_knowing_is_an_answer_and_no_pass_and_nothing_more_is_needed(words: str) -> None:
    person = Person(words, "")
    given = person.talk()
    assert given == {"load": "unknown"}
    assert compute(needing, given).verdict == "cannot tell"
    assert "So far: CANNOT TELL" in person.heard


@pytest.mark.parametrize("word", ["help", "?"])
def test_help_says_it_again(word: str) -> None:
    person = Person(word, "5 A", "", "", word, "")
    assert person.talk() == {"load": "5 A"}
    assert person.heard.count("load: amps") == 2
    assert "±(2%+5)" in person.heard
    assert "least: least" in person.heard  # where it is settled


def test_back_offers_the_answer_before_again() -> None:
    person = Person("5 A", "3 m", "back", "back", "6 A", "4 m", "", "")
    assert person.talk() == {"load": "6 A", "cord": "4 m"}
    assert "Enter keeps 5 A" in person.heard
    assert "Enter keeps 3 m" in person.heard
    assert person.prompts[:6] == ["load", "cord", "more", "cord", "load", "cord"]


def test_back_where_it_is_settled_and_at_the_first_question() -> None:
    person = Person("back", "5 A", "", "1 A", "", "back", "", "")
    assert person.talk() == {"load": "5 A", "more": ["1 A"]}
    assert "This is the first question." in person.heard
    assert "Enter keeps 1 A" in person.heard


def test_skip_takes_an_answer_back_with_what_goes_with_it() -> None:
    person = Person("5 A", "3 m", "", "live", "2", "cord", "skip", "")
    assert person.talk() == {"load": "5 A"}


def test_list_is_asked_until_an_empty_line() -> None:
    person = Person("5 A", "", "1 A", "x", "2 A", "back", "unknown", "3 A", "", "")
    assert person.talk() == {"load": "5 A", "more": ["1 A", "unknown", "3 A"]}
    assert "Dropped 2 A." in person.heard
    more = [f"more {n} (Enter ends the list)" for n in (2, 2, 3, 2, 3, 4)]
    assert person.prompts[2:] == ["more", *more, "more"]


def test_contradiction_is_said_and_the_person_can_change_any_of_them() -> None:
    person = Person("5 A", "", "", "least", "9 A", "4 A", "", "")
    assert person.talk() == {"load": "5 A", "least": "4 A"}
    assert "least: is more than the load; swap them" in person.heard
    person = Person("5 A", "", "", "least", "9 A", "skip", "load", "10 A", "")
    assert person.talk() == {"load": "10 A"}


@pytest.mark.parametrize(
    ("typed", "given", "read_back"),
    [
        ("11", "11 A", "11 A?"),
        (" 11.5 ", "11.5 A", "11.5 A?"),
        ("11 ±2%", "11 A ±2%", "11 A ±2%?"),
        ("10.9 +/-(2%+5)", "10.9 A ±(2%+5)", "10.9 A ±(2%+5)?"),
    ],
)
def test_bare_number_is_read_back_with_the_unit_that_was_shown(
    typed: str, given: str, read_back: str
) -> None:
    person = Person(typed, "", "", "", "")
    assert person.talk() == {"load": given}
    assert read_back in person.heard
    assert person.prompts[:3] == ["load", "load", "cord"]


def test_bare_number_that_was_read_wrongly_does_not_count() -> None:
    person = Person("11", "12 A", "", "", "")
    assert person.talk() == {"load": "12 A"}
    person = Person("11", "unknown", "5 A", "", "", "")
    assert person.talk() == {"load": "5 A"}
    person = Person("111", "5 A", "", "", "")  # outside what it can be: refused, never read back
    assert person.talk() == {"load": "5 A"}
    assert "111 A?" not in person.heard
    assert "outside over 0 up to 90 A" in person.heard


def test_bare_temperature_is_read_back_in_both_scales() -> None:
    splice = CATALOGUE.calculations["heat-rating"].calculation
    person = Person("105", "")
    with pytest.raises(EOFError):
        person.talk(splice)
    assert "105 C (that is 221 F)?" in person.heard  # 105 x 9/5 + 32


def test_bare_gauge_is_read_back_with_awg() -> None:
    splice = CATALOGUE.calculations["splice"].calculation
    person = Person("18", "", "2.5", "", "16-22", "22-16", "")
    with pytest.raises(EOFError):
        person.talk(splice)
    assert "18 AWG?" in person.heard and "22-16 AWG?" in person.heard
    assert "write 2.5 mm2" in person.heard  # an area has its unit
    assert "is the wrong way round" in person.heard


def test_word_of_a_list_may_be_chosen_by_its_number() -> None:
    pull = CATALOGUE.calculations["pull"].calculation
    kinds = pull.input("terminal").kind.span.split(", ")
    person = Person("18 AWG", "2", "25 lbf", "")
    assert person.talk(pull)["terminal"] == kinds[1]
    assert f"2 {kinds[1]}" in person.heard
    person = Person("18 AWG", "0", str(len(kinds) + 1), "ring", "25 lbf", "")
    assert person.talk(pull)["terminal"] == "ring"


def test_short_words_have_no_numbers() -> None:
    person = Person("1.6 A", "code_letter", "11", "L", "1/4 hp")
    with pytest.raises(EOFError):
        person.talk(CATALOGUE.calculations["inrush"].calculation)
    assert "'11' is not one of A, B, C" in " ".join(person.heard.split())
    device = CATALOGUE.calculations["start-device"].calculation  # ptc has three letters
    assert choices(device.input("start_device"))[0] == "ptc"


def test_three_things_taken_for_not_there_are_said_and_help_has_the_others() -> None:
    person = Person("30 A", "22 A", "10 AWG", "yes", "2", "25 C", "", "help", "")
    person.talk(CATALOGUE.calculations["breaker"].calculation)
    said = " ".join(person.heard.split())
    assert "no household range (range_rating); and 2 more, see help" in said
    assert "(taken so: nothing else on the circuit)" in said


def test_what_stands_in_for_an_answer_is_not_asked() -> None:
    """The code letter and its horsepower stand in for locked-rotor amps."""
    plate = ("1.6 A", "12 A", "115 V", "117 V", "11 A", "1.2 A", "0.4 s", "inrush", "")
    inrush = CATALOGUE.calculations["inrush"].calculation
    person = Person(*plate)
    person.talk(inrush)
    assert not {"code_letter", "horsepower"} & set(person.prompts)
    person = Person("1.6 A", "code_letter", "L", "1/4 hp", *plate[2:])
    given = person.talk(inrush)
    assert (given["code_letter"], given["horsepower"]) == ("L", "1/4 hp")
    assert "or code_letter (locked-rotor code letter of an open motor)" in person.heard
    person = Person("1.6 A", "", "L", "1/4 hp", *plate[2:])  # no LRA: asked by itself
    assert person.talk(inrush) == given


def test_verdict_is_said_as_soon_as_it_is_settled_with_what_could_change_it() -> None:
    person = Person("15 A", "9 A", "yes", "", "", "", "", "")
    person.talk(CATALOGUE.calculations["breaker"].calculation)
    said = " ".join(person.heard.split())
    assert "So far: PASS load on the breaker" in said
    assert "Could still make it fail: receptacle" in said
    assert "Taken so: nothing else on the circuit (other_current)" in said


def test_what_would_be_taken_for_not_there_is_asked_where_it_could_change_the_verdict() -> None:
    person = Person("15 A", "9 A", "yes", "", "", "", "", "")
    person.talk(CATALOGUE.calculations["breaker"].calculation)
    assert {"maximum_breaker", "cord"} <= set(person.prompts)
    assert "other_current" not in person.prompts  # the only outlet: nothing else can be on it
    assert "Enter: none is marked on the plate" in person.heard


def test_fail_is_settled_where_nothing_that_is_still_asked_undoes_it() -> None:
    person = Person("1.6 A", "12 A", "115 V", "117 V", "11 A", "9 A", "")
    person.talk(CATALOGUE.calculations["inrush"].calculation)
    assert "settle_time" not in person.prompts
    assert "So far: FAIL" in person.heard


def test_calculation_that_is_dear_is_not_run_before_all_that_it_asks_for_is_there() -> None:
    runs: list[Mapping[str, object]] = []

    def probe_once(given: Mapping[str, object]) -> Finding:
        runs.append(given)
        return probe(dear, given)

    talk = Conversation(dear, probe_once)
    asked_for = []
    while (question := talk.next()) is not None:
        asked_for.append(question.name)
        assert talk.is_needed(question) and not talk.contradictions()
        talk.answer(question.name, question.kind.example)
    assert asked_for == ["one", "two"]
    assert len(runs) == 1


def test_what_is_only_missing_is_asked_and_no_contradiction() -> None:
    person = Person("115 V", "8 A", "", "", "cord", "16 AWG", "20 ft", "")
    person.talk(CATALOGUE.calculations["drop"].calculation)
    assert "cannot be used together" not in person.heard
    assert person.prompts[2:6] == ["building_wire", "resistance_per_length", "more", "cord"]


def test_file_that_is_not_there_is_asked_again_and_one_that_is_there_is_read_with_the_rest(
    tmp_path: Any,
) -> None:
    semicolons = tmp_path / "class.csv"
    semicolons.write_text("force (lbf)\n" + "26,1\n24,9\n25,3\n25,8\n26,0\n", encoding="utf-8")
    batch = CATALOGUE.calculations["pull-batch"].calculation
    answers = {
        "wire": "18 AWG",
        "terminal": "ring",
        "readings": str(semicolons),
        "decimal_comma": "yes",
    }
    files = (str(tmp_path / "none.csv"), str(semicolons), "")  # it is kept: another is to blame
    person = Person("18 AWG", "ring", *files, "decimal_comma", "yes", "", "")
    assert person.talk(batch) == answers
    assert "none.csv" in person.heard


def examples(calc: Calculation[Any]) -> dict[str, str]:
    """Return the answers that the declaration's own example gives."""
    shown = shlex.split(calc.example)[2:]
    return dict(
        zip((o.lstrip("-").replace("-", "_") for o in shown[::2]), shown[1::2], strict=True)
    )


@pytest.mark.parametrize("name", sorted(set(TRIALS) - set(FILED)))
def test_every_bundled_calculation_can_be_asked(name: str) -> None:
    calc = CATALOGUE.calculations[name].calculation
    answers = examples(calc)
    if any(isinstance(calc.input(n).kind, ReadingsFile) for n in answers):
        pytest.skip("its example names a file")
    asked: set[str] = set()
    rest = list(answers)

    def read(prompt: str) -> str:
        name = prompt.split("> ")[0]
        if name == "more":  # where it is settled: what the example gives besides
            left = [n for n in rest if n not in asked]
            return left[0] if left else ""
        if " " in name or name in asked:  # a list's next line
            return ""
        asked.add(name)
        return answers.get(name, "")

    given, finding = converse(
        calc,
        lambda g: CATALOGUE.run(name, g),
        lambda g: probe(calc, g),
        read,
        lambda _: None,
    )
    plain = {k: v[0] if isinstance(v, list) and len(v) == 1 else v for k, v in given.items()}
    assert plain == answers
    expected = CATALOGUE.run(name, answers)
    for part in ("verdict", "inputs", "criteria", "not_checked", "calculation"):
        assert str(getattr(finding, part)) == str(getattr(expected, part)), part


def test_command_line_is_quoted_and_survives_a_dash() -> None:
    given = {"load": "-5 A", "more": ["1 A ±(2%+5)", "2 A"], "kind": "it's"}
    line = command_line(needing, given, ["--format", "json"])
    assert shlex.split(line) == [
        *("wirecalc", "needing", "--load=-5 A", "--more", "1 A ±(2%+5)", "--more", "2 A"),
        *("--kind", "it's", "--format", "json"),
    ]
    assert re.search(r"'1 A ±\(2%\+5\)'", line)

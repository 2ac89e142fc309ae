"""The dialogue: order, words in place of an answer, lists, what is wrong, what contradicts."""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator, Mapping
from typing import Annotated, Any

import pytest

from tests.calculations.trials import FILED, TRIALS
from wirecalc import (
    Count,
    Finding,
    Item,
    OneOf,
    Problem,
    Reading,
    ReadingsFile,
    at_least,
    build,
    calculation,
)
from wirecalc.cli import main
from wirecalc.commands.dialogue import command_line, converse, questions
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
        given, finding = converse(calc, lambda g: compute(calc, g), self.read, self.say)
        assert finding.criteria == compute(calc, given).criteria
        assert not self.lines, "typed lines that nobody asked for"
        return given


def compute(calc: Calculation[Any], given: Mapping[str, object]) -> Finding:
    return run(ProvidedCalculation("demo", "1", calc), given)


def test_needed_inputs_come_first_and_others_behind_what_they_go_with() -> None:
    assert [q.name for q in questions(needing)] == [
        *("load", "least", "cord", "live", "more", "kind")
    ]


def test_question_says_why_with_span_example_and_what_an_empty_line_does() -> None:
    person = Person("5 A", "", "", "")
    assert person.talk() == {"load": "5 A"}
    said = " ".join(person.heard.split())
    assert "needing: Is the load enough?" in said
    assert "load: amps over 0 up to 90 A; such as 10 A" in said
    assert "Enter takes 1 A (assumed)" in said
    assert "length of cord from 0 up to 90 m; such as 10 m Enter leaves it out" in said
    assert "Left out: length of cord. What needs it is not checked." in said
    assert person.prompts == ["load", "least", "cord", "more"]  # live and kind go with nothing


def test_what_goes_with_an_answer_is_asked() -> None:
    person = Person("5 A", "2 A", "3 m", "2", "", "b")
    assert person.talk() == {
        "load": "5 A",
        "least": "2 A",
        "cord": "3 m",
        "live": "2",
        "kind": "b",
    }
    assert "a, b" in person.heard


def test_wrong_answer_is_explained_as_on_the_command_line_and_asked_again(
    capsys: pytest.CaptureFixture[str],
) -> None:
    person = Person("20", "20.3 lbf", "ring", "", *[""] * 9)
    with pytest.raises(EOFError):  # 20 lacks its unit, as the second answer is no wire
        person.talk(CATALOGUE.calculations["pull"].calculation)
    heard = " ".join(person.heard.split())
    main(["pull", "--wire", "20", "--force", "20", "--terminal", "ring", "--bundled-only"])
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
def test_not_knowing_is_an_answer_and_no_pass(words: str) -> None:
    person = Person(words, "", "", "")
    given = person.talk()
    assert given == {"load": "unknown"}
    assert compute(needing, given).verdict == "cannot tell"


@pytest.mark.parametrize("word", ["help", "?"])
def test_help_says_it_again(word: str) -> None:
    person = Person(word, "5 A", "", "", "")
    assert person.talk() == {"load": "5 A"}
    assert person.heard.count("load: amps") == 2
    assert "±(2%+5)" in person.heard


def test_back_offers_the_answer_before_again() -> None:
    person = Person("5 A", "2 A", "back", "back", "", "3 A", "", "", "b")
    assert person.talk() == {"load": "5 A", "least": "3 A", "kind": "b"}
    assert "Enter keeps 5 A" in person.heard
    assert "Enter keeps 2 A" in person.heard
    assert person.prompts[:6] == ["load", "least", "cord", "least", "load", "least"]


def test_back_at_the_first_question() -> None:
    person = Person("back", "5 A", "", "", "")
    assert person.talk() == {"load": "5 A"}
    assert "This is the first question." in person.heard


def test_skip_takes_an_answer_back_with_what_goes_with_it() -> None:
    person = Person("5 A", "", "3 m", "2", "back", "back", "skip", "")
    assert person.talk() == {"load": "5 A"}


def test_list_is_asked_until_an_empty_line() -> None:
    person = Person("5 A", "", "", "1 A", "x", "2 A", "back", "unknown", "3 A", "")
    assert person.talk() == {"load": "5 A", "more": ["1 A", "unknown", "3 A"]}
    assert "Dropped 2 A." in person.heard
    more = [f"more {n} (Enter ends the list)" for n in (2, 2, 3, 2, 3, 4)]
    assert person.prompts[3:] == ["more", *more]


def test_list_is_offered_again_whole() -> None:
    person = Person("5 A", "2 A", "", "1 A", "2 A", "", "back", "", "a")
    assert person.talk() == {"load": "5 A", "least": "2 A", "more": ["1 A", "2 A"], "kind": "a"}
    assert "Enter keeps 1 A; 2 A" in person.heard


def test_contradiction_is_said_and_the_person_can_change_any_of_them() -> None:
    person = Person("5 A", "9 A", "", "", "a", "", "4 A")
    assert person.talk() == {"load": "5 A", "least": "4 A", "kind": "a"}
    assert "least: is more than the load; swap them" in person.heard
    person = Person("5 A", "9 A", "", "", "a", "back", "10 A", "")
    assert person.talk() == {"load": "10 A", "least": "9 A", "kind": "a"}


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
    lines = [answers.get(q.name, "") for q in questions(batch)]
    lines.insert(lines.index(str(semicolons)), str(tmp_path / "none.csv"))
    person = Person(*lines)
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

    def read(prompt: str) -> str:
        input_name = prompt.split("> ")[0]
        if " " in input_name or input_name in asked:  # a list's next line
            return ""
        asked.add(input_name)
        return answers.get(input_name, "")

    given, finding = converse(calc, lambda g: CATALOGUE.run(name, g), read, lambda _: None)
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

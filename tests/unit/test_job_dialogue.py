"""What a person sees and may type while led through a job; the machine is invented."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from wirecalc import build
from wirecalc.asking.job_interview import Interview
from wirecalc.asking.job_question import Question, chosen
from wirecalc.base.errors import BadText, PluginDefect
from wirecalc.commands.job_dialogue import lead_through

CATALOGUE = build(bundled_only=True)
WASHER = ("washer", "does not turn", "", "", "", "")  # as far as the first step
TO_WIRE = (*WASHER, "", "", "", "3")  # bleeding, dead tests and parts: none; wire: strip


def led(*typed: str) -> tuple[str, dict[str, Any], list[str]]:
    """Type some lines; return what was said, the sheet then, and each text that was kept."""
    lines, heard, kept = list(typed), [], []
    interview = Interview({}, CATALOGUE, Path(), "2026-01-27")

    def read(prompt: str) -> str:
        heard.append(prompt)
        if not lines:
            raise EOFError
        return lines.pop(0)

    with pytest.raises(EOFError):
        lead_through(interview, read, heard.append, lambda: kept.append(interview.text()))
    return "\n".join(heard), tomllib.loads(interview.text()), kept


def test_sheet_is_kept_after_every_answer() -> None:
    _, sheet, kept = led(*TO_WIRE, "18 AWG", "", "closed")
    assert tomllib.loads(kept[-1]) == sheet
    assert sheet["check"] == [
        {
            "calculation": "strip",
            "name": "strip",
            "step": "wire",
            "wire": ["18 AWG"],
            "style": "closed",
        }
    ]
    # none; kind, title, date, the rest; four steps; two readings
    assert len(dict.fromkeys(kept)) == 11


def test_what_serves_in_a_check_is_said_once() -> None:
    heard, _, _ = led(*TO_WIRE, "later", "", "", "plug-pin", "0.06 ohm ±0.01 ohm", "")
    assert heard.count("later: not now; drop: not this check") == 1
    assert "--- BEFORE POWER: ground path, as left" in heard


def test_check_is_left_for_later_or_dropped() -> None:
    heard, sheet, _ = led(*TO_WIRE, "Later")
    assert [c["name"] for c in sheet["check"]] == ["strip"]
    assert "--- JOINT" in heard
    heard, sheet, _ = led(*TO_WIRE, "18 AWG", "", "drop")
    assert "check" not in sheet
    assert "--- JOINT" in heard


def test_back_goes_over_checks_and_questions_alike() -> None:
    heard, sheet, _ = led(*TO_WIRE, "18 AWG", "", "back", "back", "1")
    assert [c["calculation"] for c in sheet["check"]] == ["gauge"]
    assert "This is the first question." not in heard
    heard, _, _ = led("back", "washer")
    assert "This is the first question." in heard


def test_help_says_it_again_and_a_wrong_number_what_would_do() -> None:
    heard, _, _ = led(*WASHER, "?", "7", "1")
    assert heard.count("Which of these do you check, or did?") == 2
    assert "what was answered stays in the sheet" in " ".join(heard.split())
    assert "there is no 7 in the list; type a number from 1 to 1" in heard


def test_hazard_of_the_machine_is_said_first_and_once() -> None:
    heard, _, _ = led("fridge", "does not cool", "", "", "", "", "R-600a", "")
    assert heard.index("STOP: plate shows R-600a") < heard.index("Which machine")
    assert heard.count("STOP: plate shows R-600a") == 1


def test_answer_that_the_sheet_contradicts_is_explained_and_asked_again() -> None:
    steps = [""] * 6  # from isolate to the proof of the joint, none
    closed = ["later", "leakage", *["yes"] * 4]  # the ground path, and what is confirmed
    to_leakage = [
        *WASHER,
        *steps,
        *closed,
        "later",
        "later",
        "",
    ]  # outlet, supply, and nothing else
    readings = ["yes", "0.2 mA ±0.01 mA", "", "machine_kind", "refrigerator"]
    heard, sheet, _ = led(*to_leakage, *readings)
    said = " ".join(heard.split())
    assert "That does not go with what the sheet has" in said
    assert "'refrigerator', and the sheet says kind = \"washer\"" in said
    assert "machine_kind" not in sheet["check"][-1]


def test_plugin_that_fails_is_said_and_its_check_left(monkeypatch: pytest.MonkeyPatch) -> None:
    run = type(CATALOGUE).run

    def broken(self: Any, name: str, given: Any, **more: Any) -> Any:
        if name == "strip" and "wire" in given:
            raise PluginDefect("plugin x failed")
        return run(self, name, given, **more)

    monkeypatch.setattr(type(CATALOGUE), "run", broken)
    heard, sheet, _ = led(*TO_WIRE, "18 AWG", "")
    assert sheet["check"][0]["wire"] == ["18 AWG"]
    assert "--- JOINT" in heard


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("2", ["no"]),
        ("YES", ["yes"]),
        ("it has none", ["does not apply: it has none"]),
        ("does not", ["does not apply: it has none"]),
        ("", []),
    ],
)
def test_choice_by_number_word_or_beginning(typed: str, meant: list[str]) -> None:
    choices = ("yes", "no", "does not apply: it has none")
    assert chosen(Question("a", "?", choices=choices, enter="later"), typed) == meant
    for wrong in ("0", "4", "maybe"):
        with pytest.raises(BadText):
            chosen(Question("a", "?", choices=choices, enter="later"), wrong)


def test_several_may_be_chosen() -> None:
    one = Question("a", "?", choices=("start (as found)", "circuit", "cord"), several=True)
    assert chosen(one, "1, 3") == ["start (as found)", "cord"]
    assert chosen(one, "3 1 3") == ["cord", "start (as found)"]
    assert chosen(one, "circuit; start") == ["circuit", "start (as found)"]
    with pytest.raises(BadText, match="an answer is needed"):
        chosen(one, " ")


def test_what_hands_need_is_said_before_a_step_is_asked() -> None:
    text, _, _ = led(*TO_WIRE)
    for step, stop in (
        ("ISOLATE", "pull the plug"),
        ("ISOLATE", "prove dead"),
        ("ISOLATE", "a capacitor is charged"),
        ("DEAD TESTS", "keep it unplugged or locked out"),
    ):
        after = text.partition(f"--- {step}\n")[2]
        assert f"STOP  {stop}" in after.partition("\n\n")[0]


def test_no_word_of_a_choice_is_cut_on_a_narrow_terminal() -> None:
    from wirecalc.asking.job_question import Question
    from wirecalc.commands.job_dialogue import _text
    from wirecalc.output import terminal_width

    choices = ("yes", "no", "does not apply: the cabinet was not opened at all")
    question = Question("k", "Are the covers back?", (), choices, "", "", "")
    with terminal_width.shown_on(terminal_width.Screen(40)):
        lines = _text(question)
    words = {word for choice in choices for word in choice.split()}
    assert words <= {word.rstrip(",") for line in lines for word in line.split()}
    assert max(map(len, lines)) <= 40


def test_stops_of_a_dead_machine_are_said_again_after_a_live_reading() -> None:
    fridge = ["fridge", "does not cool", "", "", "", "plugged in", "", "R-134a"]
    to_live = [*fridge, "", "", "1", "later"]  # no bleeding, no dead tests; the start, then not
    text, _, _ = led(*to_live)
    parts = text.partition("--- PARTS\n")[2].partition("\n\n")[0]
    assert "pull the plug" in parts and "prove dead" in parts
    text, _, _ = led(*fridge, "", "", "")  # nothing is read live
    assert "keep it unplugged" in text.partition("--- PARTS\n")[2].partition("\n\n")[0]


def test_machine_that_may_be_wired_in_has_both_poles_locked() -> None:
    plug, poles = "pull the plug", "lock both poles of the breaker"
    for connection, said in (("", {plug, poles}), ("plug", {plug}), ("hard-wired", {poles})):
        text, _, _ = led("dryer", "no heat", "", "", "", "electric", connection)
        assert {line for line in (plug, poles) if line in text} == said, connection
    text, _, _ = led(*WASHER)
    assert plug in text and poles not in text


def test_sheet_that_is_taken_up_says_first_what_stops_and_waits() -> None:
    _, sheet, _ = led("fridge", "does not cool", "", "", "", "", "", "R-600a", "", "1")
    heard: list[str] = []

    def read(prompt: str) -> str:
        heard.append(prompt)
        if prompt.startswith("Enter"):
            return ""
        raise EOFError

    interview = Interview(sheet, CATALOGUE, Path(), "2026-01-27")
    with pytest.raises(EOFError):
        lead_through(interview, read, heard.append, lambda: None)
    first, _, then = "\n".join(heard).partition("Enter goes on> ")
    assert "STOP: plate shows R-600a" in first and "pull the plug" in first
    assert len(first.splitlines()) <= 19
    assert "STOP" not in then and "motor windings, as found" in then


def test_a_long_list_is_named_and_help_says_why() -> None:
    """So that what stops the work is still on a screen of twenty lines above it."""
    sheet = {
        "job": {
            "kind": "refrigerator",
            "title": "t",
            "asked_up_to": "isolate",
            "date": "2026-01-27",
        }
    }
    heard: list[str] = []
    typed = iter(["", "?"])

    def read(prompt: str) -> str:
        heard.append(prompt)
        line = next(typed, None)
        if line is None:
            raise EOFError
        return line

    from wirecalc.output import terminal_width

    screen = terminal_width.Screen(40, terminal=True)
    with terminal_width.shown_on(screen), pytest.raises(EOFError):
        lead_through(Interview(sheet, CATALOGUE, Path(), ""), read, heard.append, lambda: None)
    first, _, after = "\n".join(heard).partition("Enter goes on> ")[2].partition("\n> ")
    assert "1 motor windings (as found)," in first
    assert "? says why each is checked" in first
    assert len(first.splitlines()) <= 19
    assert "overload (as found): open when" in after


@pytest.mark.parametrize(("count", "named"), [(9, False), (10, True)])
def test_a_list_of_nine_lines_has_its_words(count: int, named: bool) -> None:
    from wirecalc.commands.job_dialogue import _text

    names = [f"check {n}" for n in range(count)]
    notes = [f"{name}: why" for name in names]
    said = "\n".join(_text(Question("k", "Which?", notes, names, "none", several=True)))
    assert (": why" not in said) is named
    assert ": why" in "\n".join(_text(Question("k", "?", notes, names, "none"), whole=True))

"""`wirecalc ask job` at a small terminal: from the first question to the page, left and killed."""

from __future__ import annotations

import subprocess
import tomllib
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest

from .conftest import COMMAND, Outcome, clean_environment
from .terminal import Terminal

SMALL = (20, 40)  # rows and columns, of a phone
ASKED = {  # words of a question of the job -> what is typed; an invented washer
    "What kind of machine": "washing machine",
    "What is wrong": "does not turn",
    "Which machine": "washer, 120 V (invented)",
    "Who does the work": "",
    "On which day": "2026-01-27",
    "How is it connected": "1",
    "1 motor windings": "",
    "1 bleeding": "",
    "1 heater (as found)": "",
    "1 lead (as found)": "3",
    "supply is needed": "",
    "ground path is needed": "1",
    "one is needed": "leakage",
    "Did you measure": "",
    "test jumpers are off": "1",
    "safety switches are proved": "yes",
    "covers and bonding": "yes",
    "leads are clear": "yes",
    "the cause of an opened": "none had opened",
    "What was done": "belt put back",
    "What was the customer told": "",
}
READINGS = {
    "wire": "18 AWG",
    "style": "closed",
    "barrel_length": "6.4",
    "nameplate_voltage": "120 V",
    "voltage_running": "117.2 V ±(1%+3)",
    "outlet_kind": "120-grounded",
    "line_neutral": "118.0 V ±(1%+3)",
    "line_ground": "117.9 V ±(1%+3)",
    "neutral_ground": "0.10 V ±(1%+3)",
    "ground_proof": "low-impedance",
    "ground_point": "plug-pin",
    "ground_resistance": "0.062 ohm ±(1%+2)",
    "leakage_current": "0.21 mA ±(2%+2)",
    "machine_kind": "stationary",
    "switched_on": "yes",
    "neutral_strap": "",
    "other_leakage": "",
}


def reply(asked: str) -> str:
    """Say what is typed at a prompt, by what was shown since the last."""
    name = asked.rsplit("\n", 1)[-1].removesuffix("> ").split(" ")[0]
    said = " ".join(asked.split())
    if not name:
        known = [typed for words, typed in ASKED.items() if words in said]
        return known[0] if known else ""
    if "Enter ends the list" in asked.rsplit("\n", 1)[-1] or "Enter takes it" in said:
        return ""
    return READINGS.get(name, "")


def answers(terminal: Terminal, most: int = 200) -> Iterator[str]:
    """Answer question after question, and yield what was shown and typed; stop at the end."""
    for _ in range(most):
        shown = terminal.wait_for_prompt()
        if shown is None:
            return
        typed = reply(shown)
        terminal.type(f"{typed}\r")
        yield f"{shown}{typed}"


def run_on(folder: Path, *words: str, count: int = 200) -> tuple[int, str]:
    with Terminal([COMMAND, "ask", "job", *words], folder, size=SMALL) as terminal:
        shown = list(answers(terminal, count))
        assert shown
        return terminal.end(), terminal.seen


def sheet_of(folder: Path) -> Any:
    return tomllib.loads((folder / "washer.toml").read_text(encoding="utf-8"))


def test_from_the_first_question_to_the_page_without_an_editor(
    empty_folder: Path, command: Callable[..., Outcome]
) -> None:
    status, seen = run_on(empty_folder)
    assert status == 0, seen
    assert "JOB: PASS" in seen
    assert max(len(line) for line in seen.partition("JOB: ")[0].splitlines()) <= 40
    sheet = sheet_of(empty_folder)
    names = [c["name"] for c in sheet["check"]]
    assert names == ["strip", "supply", "outlet", "ground path", "leakage"]
    assert sheet["check"][0]["barrel_length"] == "6.4 mm"
    assert sheet["nameplate"] == {"nameplate_voltage": "120 V"}
    assert sheet["confirmed"]["cut_off_cause_found"] == "does not apply: none had opened"
    assert len((empty_folder / "washer.toml").read_text().splitlines()) < 60
    assert "--output washer.html" in seen.rpartition("The page to hand over")[2]
    page = command("job", "washer.toml", "--format", "html", "--output", "washer.html")
    assert page.status == 0
    assert "belt put back" in (empty_folder / "washer.html").read_text(encoding="utf-8")


@pytest.mark.parametrize("after", [3, 12, 23])
def test_killed_and_taken_up_again_nothing_is_lost_but_the_answer_in_the_air(
    empty_folder: Path, after: int
) -> None:
    shown: list[str] = []
    with Terminal([COMMAND, "ask", "job"], empty_folder, size=SMALL) as terminal:
        shown += answers(terminal, after)
        terminal.wait_for_prompt()
        terminal.type("half an ans")
        terminal.kill()
    asked = [line.split("> ")[0].rsplit("\n", 1)[-1] for line in shown]
    with Terminal([COMMAND, "ask", "job", "washer.toml"], empty_folder, size=SMALL) as terminal:
        later = list(answers(terminal))
        assert terminal.end() == 0
    again = [line.split("> ")[0].rsplit("\n", 1)[-1] for line in later]
    named = {n for n in READINGS if READINGS[n]}
    assert not named & set(asked) & set(again) - {"switched_on"}, "asked twice"
    assert sheet_of(empty_folder)["check"][-1]["leakage_current"] == READINGS["leakage_current"]
    assert {f.name for f in empty_folder.iterdir()} == {"washer.toml"}


@pytest.mark.parametrize("key", ["\x03", "\x04"], ids=["Ctrl-C", "Ctrl-D"])
def test_leaving_says_where_the_answers_are(empty_folder: Path, key: str) -> None:
    with Terminal([COMMAND, "ask", "job", "mine.toml"], empty_folder, size=SMALL) as terminal:
        list(answers(terminal, 3))
        terminal.wait_for_prompt()
        assert terminal.leave(key) == 130
    assert "mine.toml has what was answered" in " ".join(terminal.seen.split())
    assert "Traceback" not in terminal.seen
    said = tomllib.loads((empty_folder / "mine.toml").read_text(encoding="utf-8"))["job"]
    assert said == {"kind": "washer", "title": "does not turn", "machine": ASKED["Which machine"]}


def test_leaving_before_anything_is_answered_writes_nothing(empty_folder: Path) -> None:
    with Terminal([COMMAND, "ask", "job"], empty_folder) as terminal:
        terminal.wait_for_prompt()
        assert terminal.leave("\x03") == 130
    assert terminal.seen.endswith("Left. Nothing was written.\n")
    assert not list(empty_folder.iterdir())


def test_terminal_that_goes_away_leaves_the_sheet_whole(empty_folder: Path) -> None:
    with Terminal([COMMAND, "ask", "job"], empty_folder) as terminal:
        list(answers(terminal, 3))
        terminal.wait_for_prompt()
        terminal.hang_up()
    assert sheet_of(empty_folder)["job"]["title"] == "does not turn"


def without_terminal(folder: Path, *words: str, **pipes: Any) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [COMMAND, *words],
        cwd=folder,
        env=clean_environment(),
        capture_output=True,
        encoding="utf-8",
        check=False,
        **pipes,
    )


def test_without_a_terminal_nothing_is_asked_or_written(empty_folder: Path) -> None:
    for pipes in ({"input": "washer\n"}, {"preexec_fn": lambda: __import__("os").close(0)}):
        done = without_terminal(empty_folder, "ask", "job", **pipes)
        assert (done.returncode, done.stdout) == (2, "")
        assert "asks at a terminal" in done.stderr
        assert "wirecalc job --new KIND" in done.stderr
    assert not list(empty_folder.iterdir())


BY_HAND = """\
# written by hand
[job]
title = "Washer"
kind = "washer"
[[check]]
calculation = "supply"   # at the plug
voltage_running = "117.2 V"
nameplate_voltage = "120 V"
"""


def test_sheet_that_was_written_by_hand_is_kept_beside(empty_folder: Path) -> None:
    file = empty_folder / "mine.toml"
    file.write_text(BY_HAND, encoding="utf-8")
    with Terminal([COMMAND, "ask", "job", "mine.toml"], empty_folder) as terminal:
        list(answers(terminal, 3))
        terminal.wait_for_prompt()
        assert terminal.leave("\x03") == 130
    assert (empty_folder / "mine-before-1.toml").read_text(encoding="utf-8") == BY_HAND
    sheet: Mapping[str, Any] = tomllib.loads(file.read_text(encoding="utf-8"))
    assert sheet["check"] == tomllib.loads(BY_HAND)["check"]


def test_comment_that_was_added_by_hand_is_kept_beside_too(empty_folder: Path) -> None:
    for turn in range(2):
        with Terminal([COMMAND, "ask", "job", "mine.toml"], empty_folder) as terminal:
            list(answers(terminal, 3 if turn == 0 else 2))
            terminal.wait_for_prompt()
            assert terminal.leave("\x03") == 130
        assert [f.name for f in empty_folder.iterdir()] == ["mine.toml"]
    with (empty_folder / "mine.toml").open("a", encoding="utf-8") as file:
        file.write("# ask for the maker's sheet\n")
    with Terminal([COMMAND, "ask", "job", "mine.toml"], empty_folder) as terminal:
        list(answers(terminal, 2))
        terminal.wait_for_prompt()
        assert terminal.leave("\x03") == 130
    kept = (empty_folder / "mine-before-1.toml").read_text(encoding="utf-8")
    assert "maker's sheet" in kept


def test_sheet_in_a_folder_that_is_not_there(empty_folder: Path) -> None:
    with Terminal([COMMAND, "ask", "job", "none/mine.toml"], empty_folder) as terminal:
        assert terminal.end() == 2
    assert "its folder is not there; make it" in " ".join(terminal.seen.split())


def test_sheet_that_another_program_changed_meanwhile_stays_as_it_is(empty_folder: Path) -> None:
    with Terminal([COMMAND, "ask", "job"], empty_folder) as terminal:
        list(answers(terminal, 3))
        terminal.wait_for_prompt()
        (empty_folder / "washer.toml").write_text(BY_HAND, encoding="utf-8")
        terminal.type("invented\r")
        assert terminal.end() == 2
    assert "was changed by another program" in terminal.seen
    assert (empty_folder / "washer.toml").read_text(encoding="utf-8") == BY_HAND


@pytest.mark.parametrize(
    ("sheet", "said"),
    [
        ("title =", "is not TOML"),
        (BY_HAND.replace("117.2 V", "117.2 lbf"), "voltage_running"),
        (
            '[job]\ntitle = "a"\n[[machine]]\nname = "x"\n' + BY_HAND[BY_HAND.index("[[") :],
            "machine",
        ),
    ],
)
def test_sheet_that_is_refused_is_not_taken_up(empty_folder: Path, sheet: str, said: str) -> None:
    (empty_folder / "mine.toml").write_text(sheet, encoding="utf-8")
    with Terminal([COMMAND, "ask", "job", "mine.toml"], empty_folder) as terminal:
        assert terminal.end() == 2
    assert said in terminal.seen
    assert (empty_folder / "mine.toml").read_text(encoding="utf-8") == sheet

"""`wirecalc ask` at a real terminal, and where there is none."""

from __future__ import annotations

import json
import shlex
import subprocess
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

from .conftest import COMMAND, Outcome, Outside, clean_environment
from .terminal import Terminal

PULL = {"wire": "18 AWG", "terminal": "ring", "force": "20.3 lbf ±0.5 lbf", "more": ""}


def answer(terminal: Terminal, answers: dict[str, str]) -> None:
    for name, typed in answers.items():
        terminal.wait_for(f"{name}> ")
        terminal.type(typed + "\r")


def test_answers_give_the_finding_and_the_line_that_repeats_it(
    empty_folder: Path, command: Callable[..., Outcome]
) -> None:
    with Terminal([COMMAND, "ask", "pull", "--full"], empty_folder) as terminal:
        answer(terminal, PULL)
        assert terminal.end() == 3
    shown, _, line = terminal.seen.partition("The same again:\n")
    shown, _, entry = shown.partition("\nFor a job sheet:\n")
    sheet = tomllib.loads(entry)["check"]
    answered = {name: typed for name, typed in PULL.items() if typed}
    assert sheet == [{"calculation": "pull"} | answered]
    repeated = command(*shlex.split(line.replace("\\\n", ""))[1:])  # as a shell joins them
    assert repeated.status == 3
    finding, _, once_more = shown.rpartition(f"\n{'-' * 80}\n")
    assert finding.endswith(repeated.out)
    assert repeated.out.startswith(once_more.strip())


def test_line_goes_through_a_shell_as_it_stands(empty_folder: Path) -> None:
    answers = PULL | {"terminal": "FORK", "force": "27.0 ±(2%+5)\r"}
    with Terminal([COMMAND, "ask", "pull", "--format", "json"], empty_folder) as terminal:
        answer(terminal, answers)
        assert terminal.end() == 0
    body, _, line = terminal.seen.partition("The same again:\n")
    body = body.partition("\nFor a job sheet:\n")[0]
    script = f'PATH={COMMAND.parent}:$PATH; eval "$0"'
    again = subprocess.run(
        ["sh", "-c", script, line], capture_output=True, cwd=empty_folder, check=True
    )
    assert json.loads(again.stdout) == json.loads(body[body.index("\n{") :])


def test_output_file_and_questions_at_the_terminal(empty_folder: Path) -> None:
    words = [COMMAND, "ask", "pull", "--format", "json", "--output", "pull"]
    with Terminal(words, empty_folder) as terminal:
        answer(terminal, PULL)
        assert terminal.end() == 3
    written = json.loads((empty_folder / "pull").read_text())
    assert written["decided_by"] == "pull-out force"
    line = terminal.seen.partition("The same again:\n")[2]
    assert line.strip().endswith("--format json --output pull")


def test_stdout_that_goes_elsewhere_holds_the_finding_alone(
    empty_folder: Path, tmp_path: Path
) -> None:
    out = tmp_path / "out.json"
    words = [COMMAND, "ask", "pull", "--format", "json"]
    with Terminal(words, empty_folder, stdout=out) as terminal:
        answer(terminal, PULL)
        assert terminal.end() == 3
    assert json.loads(out.read_text())["verdict"] == "cannot tell"


@pytest.mark.parametrize("key", ["\x03", "\x04"], ids=["Ctrl-C", "Ctrl-D"])
@pytest.mark.parametrize("after", [0, 1, 3])
def test_leaving_leaves_nothing(empty_folder: Path, key: str, after: int) -> None:
    words = [COMMAND, "ask", "pull", "--output", "kept.txt"]
    with Terminal(words, empty_folder) as terminal:
        answer(terminal, dict(list(PULL.items())[:after]))
        terminal.wait_for(f"{list(PULL)[after]}> ")
        assert terminal.leave(key) == 130
    assert terminal.seen.endswith("Left. Nothing was computed.\n")
    assert "Traceback" not in terminal.seen
    assert not list(empty_folder.iterdir())


def test_line_editing(empty_folder: Path) -> None:
    """Arrow up brings the answer before: an editor of lines is there."""
    pytest.importorskip("readline")
    words = [COMMAND, "ask", "equivalent"]
    with Terminal(words, empty_folder, env={"TERM": "xterm"}) as terminal:
        terminal.wait_for("> ")
        terminal.type("18 AWGx\r")
        terminal.wait_for("wire: ")
        terminal.wait_for("wire> ")
        terminal.type("\x1b[A\x7f\r")
        assert terminal.end() == 0
    assert "--wire '18 AWG'" in terminal.seen


def test_without_a_name_it_asks_which(empty_folder: Path) -> None:
    with Terminal([COMMAND, "ask"], empty_folder) as terminal:
        assert "does this crimp hold" in terminal.wait_for("calculation> ").casefold()
        terminal.type("pul\r")
        assert "What fits 'pul', best first" in terminal.wait_for("calculation> ")
        terminal.type("\r")
        terminal.wait_for("calculation> ")
        terminal.type("pull\r")
        answer(terminal, PULL)
        assert terminal.end() == 3


def test_words_lead_to_a_calculation_by_its_number(empty_folder: Path) -> None:
    with Terminal([COMMAND, "ask", "is", "my", "crimp", "good"], empty_folder) as terminal:
        shown = terminal.wait_for("calculation> ")
        number = next(line[0] for line in shown.splitlines() if line[1:].startswith(" pull:"))
        terminal.type("9\r")
        assert "Nothing here speaks of '9'" in terminal.wait_for("calculation> ")
        terminal.type("crimp pull\r")
        shown = terminal.wait_for("calculation> ")
        number = next(line[0] for line in shown.splitlines() if line[1:].startswith(" pull:"))
        terminal.type(f"{number}\r")
        answer(terminal, PULL)
        assert terminal.end() == 3


def test_defect_of_a_plugin_does_not_lose_the_answers(empty_folder: Path, outside: Outside) -> None:
    outside.add("shop", RAISES)
    with Terminal([COMMAND, "ask", "lift"], empty_folder, env=outside.env) as terminal:
        answer(terminal, {"gap": "2 mm"})
        assert terminal.end() == 4
    assert "wirecalc lift --gap '2 mm'" in terminal.seen


RAISES = """
from typing import Annotated
from wirecalc import Reading, calculation, hookimpl

@calculation(part="shop")
def lift(gap: Annotated[float, Reading("mm", low=0, high=20, text="gap")]):
    '''Does it lift?'''
    raise RuntimeError("broken")
    yield

@hookimpl
def wirecalc_calculations():
    return [lift]
"""


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("ask", "pull"), 'run it without questions: wirecalc pull --wire "18 AWG"'),
        (("ask",), "run it without questions: `wirecalc NAME --help`"),
        (("ask", "pul"), "What fits 'pul', best first"),
        (("ask", "pull", "--format", "jso"), "--format: 'jso' is not known here"),
        (("ask", "pull", "--chart", "x.doc"), "x.doc"),
        (("ask", "pull", "ring"), "wirecalc ask pull\n"),
    ],
    ids=" ".join,
)
def test_refused_where_there_is_no_terminal(
    command: Callable[..., Outcome], words: tuple[str, ...], said: str
) -> None:
    done = command(*words, input=b"18 AWG\n")
    assert (done.status, done.out) == (2, "")
    assert said in done.err


def test_terminal_without_the_signs(empty_folder: Path) -> None:
    env = {"LC_ALL": "C", "PYTHONIOENCODING": "ascii", "PYTHONCOERCECLOCALE": "0"}
    assert "LC_ALL" not in clean_environment()
    with Terminal([COMMAND, "ask", "pull"], empty_folder, env=env) as terminal:
        terminal.wait_for("wire> ")
        terminal.type("?\r")
        terminal.wait_for("1.30 A +/-3%")
        assert terminal.leave("\x03") == 130

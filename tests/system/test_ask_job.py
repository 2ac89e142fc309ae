"""`wirecalc ask job` at a small terminal: from the first question to the page, left and killed."""

from __future__ import annotations

import subprocess
import tomllib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from tests.asked_job import READINGS, reply

from .conftest import COMMAND, Outcome, clean_environment
from .terminal import Terminal

SMALL = (20, 40)  # rows and columns, of a phone


def answers(terminal: Terminal, most: int = 200) -> Iterator[str]:
    """Answer question after question, and yield what was shown and typed; stop at the end."""
    for _ in range(most):
        shown = terminal.wait_for_prompt()
        if shown is None:
            return
        typed = reply(shown)
        terminal.type(f"{typed}\r")
        yield f"{shown}{typed}"


def test_hung_up_killed_and_taken_up_to_the_page_without_an_editor(
    empty_folder: Path, command: Callable[..., Outcome]
) -> None:
    """The terminal goes away, then the battery: what is lost is the answer in the air."""
    shown: list[str] = []
    sheet = empty_folder / "washer.toml"
    with Terminal([COMMAND, "ask", "job"], empty_folder, size=SMALL) as terminal:
        shown += answers(terminal, 3)
        terminal.wait_for_prompt()
        terminal.hang_up()
    assert tomllib.loads(sheet.read_text("utf-8"))["job"]["title"] == "does not turn"
    with Terminal([COMMAND, "ask", "job"], empty_folder, size=SMALL) as terminal:
        shown += answers(terminal, 20)
        terminal.wait_for_prompt()
        terminal.type("half an ans")
        terminal.kill()
    with Terminal([COMMAND, "ask", "job"], empty_folder, size=SMALL) as terminal:
        later = list(answers(terminal))
        assert terminal.end() == 0, terminal.seen
        seen = terminal.seen
    assert all(len(screen.splitlines()) <= SMALL[0] for screen in (*shown, *later))
    asked, again = ([s.rsplit("> ", 1)[0].rsplit("\n", 1)[-1] for s in of] for of in (shown, later))
    assert not {n for n in READINGS if READINGS[n]} & set(asked) & set(again), "asked twice"
    assert "JOB: PASS" in seen
    assert max(len(line) for line in seen.partition("JOB: ")[0].splitlines()) <= SMALL[1]
    assert {f.name for f in empty_folder.iterdir()} == {"washer.toml"}
    assert "--output washer.html" in seen.rpartition("The page to hand over")[2]
    page = command("job", "washer.toml", "--format", "html", "--output", "washer.html")
    assert page.status == 0
    assert "belt put back" in (empty_folder / "washer.html").read_text(encoding="utf-8")


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
    closed = {"preexec_fn": lambda: __import__("os").close(0)}
    done = without_terminal(empty_folder, "ask", "job", **closed)
    assert (done.returncode, done.stdout) == (2, "")
    assert "asks at a terminal" in done.stderr
    assert "wirecalc job --new KIND" in done.stderr
    assert not list(empty_folder.iterdir())

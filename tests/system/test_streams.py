"""Closed pipes, full disks, terminals without the signs: no crash, and no false verdict."""

from __future__ import annotations

import os
import signal
import subprocess
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import pytest

from .conftest import COMMAND, LONGEST_RUN, clean_environment
from .terminal import Terminal

Command = Callable[..., Any]
SHEET = str(Path(__file__).parents[2] / "docs" / "examples" / "dishwasher.toml")
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")


@pytest.mark.parametrize("words", [("tables", "awg"), (*PULL, "24 lbf"), ("--help",), ()])
def test_closed_pipe_is_quiet(words: tuple[str, ...], empty_folder: Path) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    try:
        done = subprocess.run(
            [COMMAND, *words],
            stdout=writing,
            stderr=subprocess.PIPE,
            cwd=empty_folder,
            env=clean_environment(),
            timeout=LONGEST_RUN,
            check=False,
        )
    finally:
        os.close(writing)
    assert done.stderr == b""
    assert done.returncode == 0


def test_head_of_a_pipe(empty_folder: Path) -> None:
    shell = f"'{COMMAND}' tables nec-ampacity | head -1"
    done = subprocess.run(
        ["sh", "-c", shell], capture_output=True, check=False, timeout=LONGEST_RUN, cwd=empty_folder
    )
    assert done.stderr == b""
    assert len(done.stdout.splitlines()) == 1


INRUSH = ("inrush", "--locked-rotor-current", "12 A", "--rated-load-current", "1.6 A")
INRUSH += ("--peak", "11 A", "--settled", "9 A")


def seen(folder: Path, words: Sequence[str | Path], lines: int) -> list[str]:
    """What a terminal of so many lines has on it and above it, when the command has ended."""
    with Terminal([COMMAND, *words], folder, env={"LINES": str(lines)}) as terminal:
        assert terminal.end() == 1
    return terminal.seen.splitlines()


@pytest.mark.parametrize(
    ("words", "starts"), [(INRUSH, "FAIL  "), (("job", SHEET), "JOB: FAIL  ")], ids=["one", "job"]
)
def test_a_terminal_that_is_filled_ends_with_the_verdict_and_what_to_do(
    empty_folder: Path, command: Command, words: tuple[str, ...], starts: str
) -> None:
    words = (*words, "--full")
    printed = command(*words).out.splitlines()
    shown = seen(empty_folder, words, 24)
    assert shown[: len(printed)] == printed
    again = shown[len(printed) :]
    assert again[0] == ""
    assert set(again[1]) == {"-"}
    assert again[2].startswith(starts)
    assert again[2] == printed[0]
    assert any(line.strip().startswith("Next  ") for line in again[-3:])
    assert len(again) < 20
    assert seen(empty_folder, words, len(printed) + 1) == printed  # and the shell's prompt
    assert seen(empty_folder, words, len(printed)) == shown


def test_the_short_text_fills_no_usual_terminal_and_is_said_again_on_a_lower_one(
    empty_folder: Path, command: Command
) -> None:
    printed = command(*INRUSH, "--short").out.splitlines()
    assert seen(empty_folder, INRUSH, 24) == printed
    again = seen(empty_folder, INRUSH, 12)[len(printed) + 2]
    assert again == printed[0].partition(" [")[0]


@pytest.mark.parametrize("more", [("--format", "json"), ("--output", "x.txt")])
def test_only_the_whole_text_on_a_terminal_is_said_again(
    empty_folder: Path, command: Command, more: tuple[str, ...]
) -> None:
    words = (*INRUSH, *more)
    assert seen(empty_folder, words, 4) == command(*words).out.splitlines()


@pytest.mark.parametrize(
    "shell",
    ["2>&-", ">/dev/null 2>/dev/full"],
    ids=["stderr closed", "stderr full"],
)
def test_refusal_exits_2_where_nobody_can_read_it(shell: str, empty_folder: Path) -> None:
    """Python's own exit after an exception is 1, and would read as a fail."""
    done = subprocess.run(
        ["sh", "-c", f"'{COMMAND}' pull --force 24 {shell}"],
        stdout=subprocess.PIPE,
        check=False,
        timeout=LONGEST_RUN,
        cwd=empty_folder,
    )
    assert (done.returncode, done.stdout) == (2, b"")


@pytest.mark.parametrize("shell", [">&-", ">/dev/full"], ids=["stdout closed", "stdout full"])
def test_result_that_cannot_be_printed_is_no_verdict(shell: str, empty_folder: Path) -> None:
    done = subprocess.run(
        ["sh", "-c", f"'{COMMAND}' {' '.join(map(repr, PULL))} '24 lbf' {shell}"],
        stderr=subprocess.PIPE,
        check=False,
        timeout=LONGEST_RUN,
        cwd=empty_folder,
    )
    assert done.returncode in (2, 4)
    assert b"Traceback" not in done.stderr


ASCII_SETTINGS = {
    "encoding": {"PYTHONIOENCODING": "ascii"},
    "locale C": {"PYTHONIOENCODING": "", "LC_ALL": "C"},
    "locale POSIX": {"PYTHONIOENCODING": "", "LC_ALL": "POSIX"},
}


@pytest.mark.parametrize("env", ASCII_SETTINGS.values(), ids=ASCII_SETTINGS)
@pytest.mark.parametrize("words", [[], ["--format", "json"]], ids=["text", "json"])
def test_terminal_without_the_sign(command: Command, env: dict[str, str], words: list[str]) -> None:
    done = command(*PULL, "27.0 lbf ±(2%+5)", *words, env=env)
    assert (done.status, done.err) == (0, "")
    assert "+/-(2%+5)" in done.out or "±(2%+5)" in done.out
    if words:
        (force,) = (i for i in done.json["inputs"] if i["name"] == "force")
        # 2 % of 27 is 0.54, and five counts of the last digit of 27.0 are 0.5
        assert force["low"] == pytest.approx(27 - 1.04)
        assert force["high"] == pytest.approx(27 + 1.04)


def test_ascii_output_holds_ascii_only(command: Command) -> None:
    done = command(*PULL, "24 lbf ±1 lbf", env={"PYTHONIOENCODING": "ascii"})
    assert done.out.isascii()
    assert "+/-1 lbf" in done.out


def test_ascii_refusal(command: Command) -> None:
    done = command(*PULL, "24 Ω", env={"PYTHONIOENCODING": "ascii"})
    assert (done.status, done.out) == (2, "")
    assert done.err.isascii()
    assert "--force: " in done.err


def test_bytes_that_are_no_text_are_refused(empty_folder: Path) -> None:
    done = subprocess.run(
        [os.fsencode(COMMAND), *(w.encode() for w in PULL), b"24 lbf\xff"],
        capture_output=True,
        check=False,
        env=clean_environment(),
        timeout=LONGEST_RUN,
        cwd=empty_folder,
    )
    assert (done.returncode, done.stdout) == (2, b"")
    assert b"--force: " in done.stderr


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP])
def test_a_batch_that_is_told_to_end_leaves_nothing_half_written(
    empty_folder: Path, number: int
) -> None:
    rows = subprocess.Popen(
        [COMMAND, "batch", "pull", "-", "--output", "rows.csv"],
        cwd=empty_folder,
        env=clean_environment(),
        stdin=subprocess.PIPE,
    )
    with rows:
        assert rows.stdin is not None
        rows.stdin.write(b"wire,terminal,force\n18 AWG,ring,24 lbf\n")
        rows.stdin.flush()
        end = time.monotonic() + 30
        while not list(empty_folder.iterdir()) and time.monotonic() < end:
            time.sleep(0.02)
        assert [p.name[:10] for p in empty_folder.iterdir()] == [".rows.csv."]
        rows.send_signal(number)
    assert (rows.returncode, list(empty_folder.iterdir())) == (-number, [])

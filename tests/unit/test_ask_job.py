"""`wirecalc ask job` without a terminal of its own: the file of a sheet, and those left unfinished.

The questions are answered in process; at a real terminal `tests/system/test_ask_job.py` does it.
"""

from __future__ import annotations

import contextlib
import os
import tomllib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.asked_job import ASKED, reply
from wirecalc.cli import main
from wirecalc.commands import terminal
from wirecalc.output import terminal_width

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


class Asked:
    """A person at a terminal of 40 columns, in a folder of their own."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, folder: Path) -> None:
        self.folder = folder
        self.screens: list[str] = []
        self._shown: list[str] = []
        self._answer: Callable[[str], str] = reply
        monkeypatch.chdir(folder)
        monkeypatch.setattr(terminal, "is_there", lambda: True)
        monkeypatch.setattr(terminal, "at_terminal", self._at_terminal)
        monkeypatch.setattr(terminal, "read", self._read)
        monkeypatch.setattr(terminal, "say", self._shown.append)

    @contextlib.contextmanager
    def _at_terminal(self) -> Iterator[None]:
        with terminal_width.shown_on(terminal_width.Screen(40, terminal=True)):
            yield

    def _read(self, prompt: str) -> str:
        self.screens.append("\n".join([*self._shown, prompt]))
        self._shown.clear()
        return self._answer(self.screens[-1])

    def job(self, *words: str, most: int = 200, end: type[BaseException] = EOFError) -> int:
        """Answer so many questions, then leave; return the exit status."""
        self.screens.clear()
        self._shown.clear()

        def answer(shown: str) -> str:
            if len(self.screens) > most:
                raise end
            return reply(shown)

        self._answer = answer
        return main(["ask", "job", *words])

    def lines(self, *lines: str) -> int:
        """Type some lines to a new run, then leave; return the exit status."""
        self.screens.clear()
        left = list(lines)

        def answer(shown: str) -> str:
            if not left:
                raise EOFError
            return left.pop(0)

        self._answer = answer
        return main(["ask", "job"])

    @property
    def said(self) -> str:
        """What was said since the last question."""
        return " ".join("\n".join(self._shown).split())

    def sheet(self, name: str = "washer.toml") -> Any:
        return tomllib.loads((self.folder / name).read_text(encoding="utf-8"))


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Asked:
    return Asked(monkeypatch, tmp_path)


def test_sheet_has_what_was_answered_and_no_more(
    asked: Asked, capsys: pytest.CaptureFixture[str]
) -> None:
    assert asked.job() == 0
    assert all(len(line) <= 40 for screen in asked.screens for line in screen.splitlines())
    assert not [s for s in asked.screens if len(s.splitlines()) > 19]
    sheet = asked.sheet()
    assert [c["name"] for c in sheet["check"]] == [
        "strip",
        "ground path",
        "leakage",
        "outlet",
        "supply",
    ]
    assert sheet["check"][0]["barrel_length"] == "6.4 mm"
    assert sheet["nameplate"] == {"nameplate_voltage": "120 V"}
    assert sheet["confirmed"]["cut_off_cause_found"] == "does not apply: none had opened"
    assert len((asked.folder / "washer.toml").read_text("utf-8").splitlines()) < 60
    assert "JOB: PASS" in capsys.readouterr().out


@pytest.mark.parametrize("end", [EOFError, KeyboardInterrupt])
def test_leaving_says_where_the_answers_are(asked: Asked, end: type[BaseException]) -> None:
    assert asked.job("mine.toml", most=3, end=end) == 130
    assert "mine.toml has what was answered" in asked.said
    said = asked.sheet("mine.toml")["job"]
    assert said == {"kind": "washer", "title": "does not turn", "machine": ASKED["Which machine"]}


def test_leaving_before_anything_is_answered_writes_nothing(asked: Asked) -> None:
    assert asked.job(most=0) == 130
    assert asked.said.endswith("Left. Nothing was written.")
    assert not list(asked.folder.iterdir())


def test_unfinished_sheets_are_named_and_the_latest_goes_on(asked: Asked) -> None:
    asked.job(most=3)
    assert asked.lines("") == 130  # the machine was asked for; who does the work is next
    assert "washer.toml: does not turn; up to the machine; 0 checks" in flat(asked.screens[0])
    assert "Enter: goes on with washer.toml" in flat(asked.screens[0])
    assert "Who does the work" in asked.screens[1]
    assert asked.lines("2", "dryer", "no heat") == 130
    assert [f.name for f in sorted(asked.folder.iterdir())] == ["dryer.toml", "washer.toml"]
    os.utime(asked.folder / "dryer.toml", (0, 0))  # long ago
    assert asked.lines("7", "washer.toml") == 130
    first = flat(asked.screens[0])
    assert first.index("1 washer.toml") < first.index("2 dryer.toml: no heat") < first.index("3 a")
    assert "there is no 7 in the list" in asked.screens[1]


def test_how_far_a_sheet_got_is_said_by_its_step(asked: Asked) -> None:
    asked.job(most=17)
    asked.lines()
    assert "up to joint; 1 check;" in flat(asked.screens[0])


def test_what_is_finished_broken_or_of_others_is_not_offered(asked: Asked) -> None:
    assert asked.job() == 0
    (asked.folder / "hand.toml").write_text(BY_HAND, encoding="utf-8")
    head = "# Written by `wirecalc ask job`, which takes it up again\n"
    (asked.folder / "broken.toml").write_text(head + "[job", encoding="utf-8")
    (asked.folder / "folder.toml").mkdir()
    (asked.folder / "odd.toml").write_text(head + 'job = "x"\n', encoding="utf-8")
    asked.lines()
    assert "What kind of machine" in asked.screens[0]


def test_leaving_where_it_asks_which_goes_on_writes_nothing(asked: Asked) -> None:
    asked.job(most=3)
    before = (asked.folder / "washer.toml").read_bytes()
    assert asked.lines() == 130
    assert asked.said.endswith("Left. Nothing was written.")
    assert (asked.folder / "washer.toml").read_bytes() == before


def flat(text: str) -> str:
    return " ".join(text.split())


def test_sheet_that_was_written_by_hand_is_kept_beside(asked: Asked) -> None:
    (asked.folder / "mine.toml").write_text(BY_HAND, encoding="utf-8")
    assert asked.job("mine.toml", most=3) == 130
    assert (asked.folder / "mine-before-1.toml").read_text(encoding="utf-8") == BY_HAND
    assert asked.sheet("mine.toml")["check"] == tomllib.loads(BY_HAND)["check"]


def test_comment_that_was_added_by_hand_is_kept_beside_too(asked: Asked) -> None:
    for most in (3, 2):
        assert asked.job("mine.toml", most=most) == 130
        assert [f.name for f in asked.folder.iterdir()] == ["mine.toml"]
    with (asked.folder / "mine.toml").open("a", encoding="utf-8") as file:
        file.write("# ask for the maker's sheet\n")
    assert asked.job("mine.toml", most=2) == 130
    assert "maker's sheet" in (asked.folder / "mine-before-1.toml").read_text(encoding="utf-8")


def test_sheet_in_a_folder_that_is_not_there(
    asked: Asked, capsys: pytest.CaptureFixture[str]
) -> None:
    assert asked.job("none/mine.toml") == 2
    assert "its folder is not there; make it" in flat(capsys.readouterr().err)


def test_sheet_that_another_program_changed_meanwhile_stays_as_it_is(
    asked: Asked, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def read(prompt: str) -> str:
        if prompt == "> " and (file := asked.folder / "washer.toml").exists():
            file.write_text(BY_HAND, encoding="utf-8")
        return asked._read(prompt)

    monkeypatch.setattr(terminal, "read", read)
    assert asked.job() == 2
    assert "was changed by another program" in flat(capsys.readouterr().err)
    assert (asked.folder / "washer.toml").read_text(encoding="utf-8") == BY_HAND


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
def test_sheet_that_is_refused_is_not_taken_up(
    asked: Asked, capsys: pytest.CaptureFixture[str], sheet: str, said: str
) -> None:
    (asked.folder / "mine.toml").write_text(sheet, encoding="utf-8")
    assert asked.job("mine.toml") == 2
    assert said in capsys.readouterr().err
    assert (asked.folder / "mine.toml").read_text(encoding="utf-8") == sheet

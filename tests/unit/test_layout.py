"""Text as wide as the screen: 40 columns to 100, values whole, lines to copy that paste."""

from __future__ import annotations

import io
import shlex

import pytest

from wirecalc.output import layout, terminal_width


@pytest.mark.parametrize(
    ("columns", "width"),
    [
        *(("20", 40), ("39", 40), ("40", 40), ("41", 41), ("80", 80), ("100", 100), ("101", 100)),
        *(("", 80), ("0", 80), ("-5", 80), ("wide", 80), ("80.5", 80)),
    ],
)
def test_columns_says_the_width_between_40_and_100(
    monkeypatch: pytest.MonkeyPatch, columns: str, width: int
) -> None:
    monkeypatch.setenv("COLUMNS", columns)
    assert terminal_width.looked_at(io.StringIO()) == (width, False, False)


class _Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("env", "colour"),
    [
        ({"TERM": "xterm"}, True),
        ({"TERM": "xterm", "NO_COLOR": ""}, True),
        ({"TERM": "xterm", "NO_COLOR": "1"}, False),
        ({"TERM": "dumb"}, False),
        ({}, False),
    ],
)
def test_colour_is_for_a_terminal_that_takes_it_and_never_under_no_color(
    monkeypatch: pytest.MonkeyPatch, env: dict[str, str], colour: bool
) -> None:
    for name in ("TERM", "NO_COLOR", "COLUMNS"):
        monkeypatch.delenv(name, raising=False)
    for name, value in env.items():
        monkeypatch.setenv(name, value)
    assert terminal_width.looked_at(_Terminal()).colour is colour
    assert not terminal_width.looked_at(io.StringIO()).colour


def test_a_width_holds_until_the_end_of_its_block() -> None:
    before = terminal_width.width()
    with terminal_width.shown_on(terminal_width.Screen(50)):
        assert terminal_width.width() == 50
        terminal_width.for_a_file()
        assert terminal_width.width() == 80
    assert terminal_width.width() == before


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        ("x" * 34 + " 20 lbf", "20 lbf"),
        ("x" * 34 + " 1 1/2 in", "1 1/2 in"),
        ("x" * 33 + " 1.5 mm2", "1.5 mm2"),
        ("x" * 32 + " ±0.5 lbf", "±0.5 lbf"),
        ("x" * 33 + " 18 AWG", "18 AWG"),
        ("x" * 34 + ' 1/4 "', '1/4 "'),
        ("x" * 34 + " 14 °C", "14 °C"),
    ],
)
def test_no_line_ends_between_a_value_and_its_unit(text: str, whole: str) -> None:
    with terminal_width.shown_on(terminal_width.Screen(40)):
        lines = layout.wrap(text)
        assert lines[-1] == whole
        assert layout.table([(text, "")])[-1].strip() == whole


LONG = (
    'wirecalc trace --recording "a recording of a start with a long name of its own.csv" --x "3 A"'
)


@pytest.mark.parametrize("columns", [40, 41, 60, 80])
def test_a_command_that_is_broken_gives_the_same_words_to_a_shell(columns: int) -> None:
    with terminal_width.shown_on(terminal_width.Screen(columns)):
        lines = layout.command(LONG)
    assert max(map(len, lines)) <= columns
    assert shlex.split("\n".join(lines).replace("\\\n", "")) == shlex.split(LONG)


def test_where_columns_have_no_room_each_row_stands_by_itself() -> None:
    rows = [("name", "n", "pass", "fail"), ("a learner of the shop", "3", "2", "1")]
    with terminal_width.shown_on(terminal_width.Screen(40)):
        assert layout.table(rows)[1].split() == ["a", "learner", "of", "the", "shop", "3", "2", "1"]
        long = [(*rows[0], "a remark"), (*rows[1], "what was seen of it in the shop")]
        assert layout.table(long, head=True) == [
            "a learner of the shop: n 3; pass 2;",
            "    fail 1; a remark what was seen of",
            "    it in the shop",
        ]


def test_verdicts_are_coloured_at_the_start_of_a_line_alone() -> None:
    text = (
        "FAIL  a\n  CANNOT TELL  b\nJOB: PASS  c\n    2  PASS   d\nSTOP  e\nit is no FAIL\nPASSED"
    )
    coloured = terminal_width.coloured(text)
    assert coloured.count("\x1b[0m") == 5
    for word, code in (("FAIL", "1;31"), ("CANNOT TELL", "36"), ("PASS", "32"), ("STOP", "1;31")):
        assert f"\x1b[{code}m{word}\x1b[0m" in coloured
    assert coloured.splitlines()[5:] == ["it is no FAIL", "PASSED"]


def test_a_label_has_its_text_beside_it_from_60_columns_on() -> None:
    with terminal_width.shown_on(terminal_width.Screen(60)):
        assert layout.labelled("  Next", "go on", 10) == ["  Next    go on"]
    with terminal_width.shown_on(terminal_width.Screen(59)):
        assert layout.labelled("  Next", "go on", 10) == ["  Next  go on"]

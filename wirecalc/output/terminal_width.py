"""What the text goes to: how wide it is, whether a person sits at it, and whether it has colour.

`COLUMNS` says the width, else the terminal does, else it is 80; never under 40, and never over
100, where lines no longer read well.
"""

from __future__ import annotations

import contextlib
import os
import re
import sys
from collections.abc import Iterator
from typing import NamedTuple, TextIO

NARROWEST, USUAL, WIDEST = 40, 80, 100  # columns
_COLOURS = {"PASS": "32", "MARGINAL": "33", "CANNOT TELL": "36", "FAIL": "1;31", "STOP": "1;31"}
_WORD = re.compile(
    r"^(\x20*(?:JOB: |Also +|\d+  (?:.{14}  )?)?)(PASS|MARGINAL|CANNOT TELL|FAIL|STOP)\b",
    re.MULTILINE,
)


class Screen(NamedTuple):
    """What the text goes to."""

    width: int = USUAL
    terminal: bool = False
    colour: bool = False


_now = [Screen()]


def now() -> Screen:
    """Return what the text goes to now."""
    return _now[-1]


def width() -> int:
    """Return the width of what the text goes to now, in columns."""
    return _now[-1].width


def looked_at(stream: TextIO | None) -> Screen:
    """Return what a stream is: a terminal with its width, or anything else."""
    terminal = False
    with contextlib.suppress(OSError, ValueError):  # a stream that is closed is none
        terminal = stream is not None and stream.isatty()
    return Screen(_columns(stream if terminal else None), terminal, terminal and _takes_colour())


@contextlib.contextmanager
def shown_on(screen: Screen) -> Iterator[None]:
    """Have the text laid out for this, until the end of the block."""
    _now.append(screen)
    try:
        yield
    finally:
        _now.pop()


def for_a_file() -> None:
    """Have the text laid out for a file from now on: nobody sits at it."""
    _now[-1] = Screen(_columns(None))


def coloured(text: str) -> str:
    """Return a text with its verdicts and stops coloured; they say the same without.

    >>> coloured("FAIL  it failed")
    '\\x1b[1;31mFAIL\\x1b[0m  it failed'
    """
    return _WORD.sub(lambda m: f"{m[1]}\x1b[{_COLOURS[m[2]]}m{m[2]}\x1b[0m", text)


def said_columns() -> int | None:
    """Return the width that the variable COLUMNS says, as far as it is one; None without it."""
    said = os.environ.get("COLUMNS", "")
    return _within(int(said)) if re.fullmatch(r"[1-9]\d{0,4}", said, re.ASCII) else None


def _columns(terminal: TextIO | None) -> int:
    if (said := said_columns()) is not None:
        return said
    with contextlib.suppress(OSError, ValueError):
        if terminal is not None and (wide := os.get_terminal_size(terminal.fileno()).columns):
            return _within(wide)
    return USUAL


def _within(columns: int) -> int:
    return max(NARROWEST, min(columns, WIDEST))


def _takes_colour() -> bool:
    plain = os.environ.get("NO_COLOR") or os.environ.get("TERM", "dumb") == "dumb"
    return not plain and sys.platform != "win32"

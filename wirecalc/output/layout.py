"""Laying out plain text: wrapped paragraphs, titled blocks and columns within 80 characters."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Sequence

WIDTH = 80
_MOVES = re.compile(  # the cursor, or turns letters round: no part of what a name or a note says
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff"
    "\ufffe\uffff]"
)
_ASCII = str.maketrans({"±": "+/-", "Ω": "ohm", "×": "x", "²": "2", "°": "", "µ": "u"})


def printable(text: str, encoding: str) -> str:
    """Return a text that an encoding can show: what it lacks is spelled out, or a question mark."""
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        return text.translate(_ASCII).encode(encoding, "replace").decode(encoding)
    return text


def visible(text: str, instead: str = "?") -> str:
    """Return a text with a mark for all that would move a cursor or turn letters round.

    >>> visible("red \\x1b[31m and \\u202edetrevni")
    'red ?[31m and ?detrevni'
    """
    return _MOVES.sub(instead, text)


def block(title: str, lines: Iterable[str]) -> list[str]:
    """Return a titled, indented block of lines; nothing where there are none."""
    inside = [f"  {line}" for line in lines if line]
    return ["", *wrap(title), *inside] if inside else []


def wrap(text: str, start: str = "", indent: str | None = None) -> list[str]:
    """Wrap a text to the width, with a first and a following indent; nothing for no text."""
    if not text:
        return []
    follow = " " * len(start) if indent is None else indent
    return textwrap.wrap(
        visible(text),
        WIDTH - 2,
        initial_indent=start,
        subsequent_indent=follow,
        break_long_words=True,
        break_on_hyphens=False,  # names of tables, options and standards stay whole
    )


def command(line: str) -> list[str]:
    """Lay out a command line so that a shell takes it as it stands, an option never broken."""
    lines = [""]
    for part in re.split(r" (?=--)", line):
        if lines[-1] and len(lines[-1]) + len(part) + 3 > WIDTH - 2:
            lines[-1] += " \\"
            lines.append("      " + part)
        else:
            lines[-1] = f"{lines[-1]} {part}" if lines[-1] else f"  {part}"
    return lines


def table(
    rows: Sequence[Sequence[str]], width: int = WIDTH - 2, align: Sequence[str] | None = None
) -> list[str]:
    """Lay out rows in columns; the widest column is wrapped so that the whole fits the width.

    `align` is left or right for each column; left if not given.
    """
    if not rows:
        return []
    from tabulate import tabulate

    rows = [[visible(cell) for cell in row] for row in rows]
    widths = [max(len(row[i]) for row in rows) for i in range(len(rows[0]))]
    gaps = 2 * (len(widths) - 1)
    while sum(widths) + gaps > width:
        widest = widths.index(max(widths))
        rest = sorted(widths)[-2] if len(widths) > 1 else 0
        widths[widest] = max(
            min(widths[widest] - 1, width - gaps - sum(widths) + widths[widest]), min(rest, 10), 8
        )
    text: str = tabulate(
        rows,
        tablefmt="plain",
        maxcolwidths=list(widths),
        disable_numparse=True,
        colalign=align,
    )
    return [line.rstrip() for line in text.splitlines()]


def columns(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """Lay out rows below their heads, nothing wrapped."""
    from tabulate import tabulate

    shown = [[visible(cell) for cell in row] for row in (heads, *rows)]
    text: str = tabulate(shown, tablefmt="plain", disable_numparse=True)
    return [line.rstrip() for line in text.splitlines()]

"""Laying out plain text: wrapped paragraphs, titled blocks and columns as wide as the screen."""

from __future__ import annotations

import functools
import re
from collections.abc import Iterable, Iterator, Sequence

from ..typed.unit_names import SPELLINGS
from . import terminal_width

_MOVES = re.compile(  # the cursor, or turns letters round: no part of what a name or a note says
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff"
    "\ufffe\uffff]"
)
_ASCII = str.maketrans({"±": "+/-", "Ω": "ohm", "×": "x", "²": "2", "°": "", "µ": "u"})
_ON = " \\"  # behind a line of a command that goes on
_WORD = r"""(?:"[^"]*"|'[^']*'|\S)+"""  # of a shell: what is quoted is a part of it
_KEPT = "\xa0"  # a space at which no line ends
_FEW = 60  # columns; under it a label has the text below it and not beside it
_OTHER = ("AWG", "J/W", "times")  # behind a number, beside the units that are typed
_COLUMN = 12, 24  # the least width of a column that is wrapped, and the longest word kept whole


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


def rule() -> str:
    """Return a line across the screen."""
    return "-" * terminal_width.width()


def begun(text: str) -> str:
    """Return a text as a sentence or a line begins, with the capitals that it has.

    >>> begun("size in AWG"), begun("kVA code")
    ('Size in AWG', 'kVA code')
    """
    first = text.split(" ", 1)[0]
    return text[:1].upper() + text[1:] if first.islower() else text


def wrap(text: str, start: str = "", indent: str | None = None) -> list[str]:
    """Wrap a text to the width, with a first and a following indent; nothing for no text.

    No line ends between a number and its unit.
    """
    if not text:
        return []
    follow = " " * len(start) if indent is None else indent
    return _lines(visible(text), terminal_width.width() - 2, start, follow)


def labelled(label: str, text: str, room: int) -> list[str]:
    """Wrap a text beside its label, for which there is `room`; on a narrow screen below it."""
    if not narrow():
        return wrap(text, f"{label:<{room}}")
    if not label.strip():
        return wrap(text, label)
    return wrap(f"{label}  {text}", indent=" " * (len(label) - len(label.lstrip()) + 2))


def narrow() -> bool:
    """Return whether a label and a text have no room side by side."""
    return terminal_width.width() < _FEW


def _lines(text: str, width: int, start: str = "", follow: str = "") -> list[str]:
    import textwrap

    lines = textwrap.wrap(
        _value(tuple(SPELLINGS)).sub(lambda m: m[0].replace(" ", _KEPT), text),
        width,
        initial_indent=start,
        subsequent_indent=follow,
        break_long_words=True,
        break_on_hyphens=False,  # names of tables, options and standards stay whole
    )
    return [line.replace(_KEPT, " ") for line in lines]


@functools.cache
def _value(dimensions: tuple[str, ...]) -> re.Pattern[str]:
    """Return what matches a number with its unit of some dimensions, as it is typed or printed."""
    spelled = [pair for dimension in dimensions for pair in SPELLINGS[dimension].items()]
    units = [n for name, more in spelled for n in (name, *more)]
    longest_first = sorted({*units, *_OTHER}, key=len, reverse=True)
    return re.compile(
        rf"(?<!\w)\d[\d.]*(?: \d+/\d+|/\d+)? (?:{'|'.join(map(re.escape, longest_first))})(?!\w)"
    )


def command(line: str) -> list[str]:
    """Lay out a command line so that a shell takes it as it stands when it is pasted.

    An option stays with its value, as far as both fit a line.
    """
    most = terminal_width.width() - 2 - len(_ON)
    lines = [""]
    for part in re.findall(rf"--{_WORD} (?!--){_WORD}|{_WORD}", line):
        apart = part.split(" ", 1) if len(part) + 6 > most and part.startswith("--") else [part]
        for word in apart:
            if lines[-1].strip() and len(lines[-1]) + 1 + len(word) > most:
                lines[-1] += _ON
                lines.append("     ")
            lines[-1] += f" {word}"
            # a shell joins it: no blank goes before the rest; within single quotes it would not
            while len(lines[-1]) > most and "'" not in lines[-1]:
                lines[-1:] = [lines[-1][:most] + "\\", lines[-1][most:]]
    return [f" {lines[0]}", *lines[1:]]


def table(
    rows: Sequence[Sequence[str]],
    width: int | None = None,
    align: Sequence[str] | None = None,
    *,
    head: bool = False,
) -> list[str]:
    """Lay out rows in columns; the widest column is wrapped so that the whole fits the width.

    Where the columns become too narrow to read, each row stands by itself: `head` says that the
    first row names the columns. `align` is left or right for each column; left if not given.
    """
    if not rows:
        return []
    from tabulate import tabulate

    width = terminal_width.width() - 2 if width is None else width
    rows = [[visible(cell) for cell in row] for row in rows]
    widths = _widths(rows, width)
    if not _readable(rows, widths):
        return [line for row in _stacked(rows, head) for line in _lines(row, width, follow="    ")]
    cells = [
        ["\n".join(_lines(cell, w)) for cell, w in zip(row, widths, strict=True)] for row in rows
    ]
    text: str = tabulate(cells, tablefmt="plain", disable_numparse=True, colalign=align)
    return [line.rstrip() for line in text.splitlines()]


def _widths(rows: Sequence[Sequence[str]], width: int) -> list[int]:
    widths = [max(1, *(len(row[i]) for row in rows)) for i in range(len(rows[0]))]
    gaps = 2 * (len(widths) - 1)
    while (over := sum(widths) + gaps - width) > 0 and max(widths) > 1:
        widest = widths.index(max(widths))
        others = max([1, *(w for i, w in enumerate(widths) if i != widest)])
        widths[widest] = max(widths[widest] - over, min(others, widths[widest] - 1))
    return widths


def _readable(rows: Sequence[Sequence[str]], widths: Sequence[int]) -> bool:
    """Return whether each column is wide enough for its words."""
    least, most = _COLUMN
    for i, width in enumerate(widths):
        natural = max(len(row[i]) for row in rows)
        word = max((len(w) for row in rows for w in row[i].split()), default=0)
        if width < min(natural, max(least, min(word, most))):
            return False
    return True


def _stacked(rows: Sequence[Sequence[str]], head: bool) -> Iterator[str]:
    """Yield each row as a text of its own, with the heads of its cells if there are some."""
    if not head:
        yield from ("  ".join(cell for cell in row if cell) for row in rows)
        return
    heads, *rest = rows
    for first, *cells in rest:
        named = (f"{h} {c}".strip() for h, c in zip(heads[1:], cells, strict=True) if c)
        yield f"{first}: {'; '.join(named)}"


def columns(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """Lay out rows below their heads, nothing wrapped."""
    from tabulate import tabulate

    shown = [[visible(cell) for cell in row] for row in (heads, *rows)]
    text: str = tabulate(shown, tablefmt="plain", disable_numparse=True)
    return [line.rstrip() for line in text.splitlines()]

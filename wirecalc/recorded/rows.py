"""Rows of a recording as numbers: all at once where every cell is plain, else one by one.

Row by row the bad ones are found and named by their lines.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Iterator, Sequence
from datetime import datetime, time
from typing import TYPE_CHECKING, NamedTuple

from ..base.errors import BadText
from ..typed.quantity_kinds import Reading

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

SHOWN = 5  # bad rows named in one complaint
_MOST_DIGITS = 15  # of a number that is read at once
_DAY = 86400.0


class Layout(NamedTuple):
    """How the rows are written: which cells count, and what turns each into its declared unit."""

    delimiter: str
    cells: int
    stamps: tuple[int, ...]
    columns: tuple[int, ...]
    factors: tuple[float, ...]  # of the stamps, then of each column
    kinds: tuple[Reading, ...]
    heads: tuple[str, ...]
    begins: int  # byte at which the rows begin
    line: int  # number of the line that begins there
    comma: bool
    clock: bool


def at_once(data: bytes, layout: Layout) -> Numbers | None:
    """Parse rows of plain numbers; None where any cell is something else."""
    import numpy as np

    data = data.replace(b"\r\n", b"\n").lstrip(b"\n")
    while b"\n\n" in data:
        data = data.replace(b"\n\n", b"\n")
    parting = layout.delimiter.encode()
    data = data.replace(parting + b" ", parting)
    if b" " in data or (parting != b"\t" and b"\t" in data):
        return None
    marks = np.frombuffer(data, np.uint8)
    at = np.flatnonzero((marks == parting[0]) | (marks == 10))
    if not at.size or at.size % layout.cells or np.diff(at, prepend=-1).min() < 2:
        return None
    ends = marks[at].reshape(-1, layout.cells) == 10
    if ends[:, :-1].any() or not ends[:, -1].all():
        return None
    numbers = _decimals(marks, at, b"," if layout.comma else b".")
    if numbers is None:
        numbers = _floats(data, parting, layout)
    if numbers is None or numbers.size != at.size:
        return None
    rows = numbers.reshape(-1, layout.cells)[:, [layout.stamps[0], *layout.columns]]
    return np.ascontiguousarray(rows * np.array(layout.factors))


def _decimals(marks: NDArray[np.uint8], at: NDArray[np.int_], point: bytes) -> Numbers | None:
    """Parse cells of sign, digits and point, all at once; None where one is anything else.

    Up to 15 digits make a whole number that a float holds, and so does the power of ten that it
    is divided by: the quotient is the float that is nearest to what was written.
    """
    import numpy as np

    is_digit = (marks >= 48) & (marks <= 57)
    starts = np.concatenate(([0], at[:-1] + 1))
    points = np.flatnonzero(marks == point[0])
    signs = np.count_nonzero((marks == 43) | (marks == 45))
    first = marks[starts]
    negative = first == 45
    digits = np.flatnonzero(is_digit)
    if (
        digits.size + points.size + signs + at.size != marks.size
        or np.count_nonzero(negative | (first == 43)) != signs
    ):
        return None
    so_far = np.cumsum(is_digit)
    ends = so_far[at]
    count = np.diff(ends, prepend=0)
    if count.min() < 1 or count.max() > _MOST_DIGITS:
        return None
    powers = 10.0 ** np.arange(_MOST_DIGITS + 1)
    place = np.repeat(ends, count) - 1 - np.arange(digits.size)
    whole = np.add.reduceat((marks[digits] - 48) * powers[place], ends - count)
    if points.size:
        cell = np.searchsorted(at, points)
        if np.diff(cell).min(initial=1) < 1:
            return None
        whole[cell] /= powers[ends[cell] - so_far[points]]
    return np.where(negative, -whole, whole)


def _floats(data: bytes, parting: bytes, layout: Layout) -> Numbers | None:
    """Parse numbers of any form that C reads; None where one is none."""
    import warnings

    import numpy as np

    comma = b",." if layout.comma else b""
    table = bytes.maketrans(parting + b"\n" + comma[:1], b"  " + comma[1:])
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            return np.fromstring(data.translate(table), sep=" ")
    except (ValueError, DeprecationWarning):
        return None


def inside(rows: Numbers, layout: Layout) -> bool:
    """Whether every number is finite and within the span of its column."""
    import numpy as np

    lows, highs = rows.min(axis=0), rows.max(axis=0)
    ends = zip(lows[1:], highs[1:], layout.kinds, strict=True)
    return bool(np.isfinite(lows + highs).all()) and all(
        kind.inside(low) and kind.inside(high) for low, high, kind in ends
    )


def row_by_row(data: bytes, layout: Layout, line: int, stamps: Stamps) -> tuple[Numbers, list[int]]:
    """Parse the rows of a piece one by one; raises BadText that names those that are bad."""
    import numpy as np

    rows, numbers = [], []
    bad: dict[str, list[int]] = {}
    hint: dict[str, str] = {}
    texts = data.decode("utf-8", errors="replace").split("\n")
    for number, text in enumerate(texts, start=line):
        if not text.strip():
            continue
        try:
            cells = next(csv.reader([text.rstrip("\r")], delimiter=layout.delimiter))
            if len(cells) != layout.cells:
                raise BadText(
                    f"{len(cells)} cells and not {layout.cells}", "every row needs as many cells"
                )
            rows.append([stamps.read(cells), *_values(cells, layout)])
            numbers.append(number)
        except (BadText, csv.Error) as error:
            said = error.wrong if isinstance(error, BadText) else str(error)
            hint.setdefault(said, error.would_do if isinstance(error, BadText) else "")
            bad.setdefault(said, []).append(number)
    if bad:
        said, where = next(iter(bad.items()))
        where_all = named(sorted(n for lines in bad.values() for n in lines)[:SHOWN])
        first = f" (row {where[0]})" if len(bad) > 1 else ""
        raise BadText(f"row {where_all}: {said}{first}", hint[said])
    return np.array(rows, dtype=float).reshape(-1, 1 + len(layout.columns)), numbers


def _values(cells: Sequence[str], layout: Layout) -> Iterator[float]:
    of_each = zip(layout.columns, layout.factors[1:], layout.kinds, layout.heads, strict=True)
    for at, factor, kind, head in of_each:
        value = _number(cells[at], head, layout) * factor
        if not kind.inside(value):
            raise BadText(f"column {head}: outside {kind.span}", "check the unit")
        yield value


def _number(cell: str, head: str, layout: Layout) -> float:
    text = cell.strip().replace(",", ".") if layout.comma else cell.strip()
    try:
        value = math.nan if "_" in text else float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise BadText(
            f"column {head}: {cell[:20]!r} is no number",
            "say that commas are decimal (--decimal-comma yes)" if "," in cell else "mend the row",
        )
    return value


class Stamps:
    """Stamps as numbers of seconds; a clock time that steps back by half a day is the next day."""

    def __init__(self, layout: Layout) -> None:
        self.layout = layout
        self.day, self.before = 0.0, -math.inf
        self.zero: datetime | None = None
        self.dated: bool | None = None

    def read(self, cells: Sequence[str]) -> float:
        """Return the stamp of a row in s; raises BadText where it is none."""
        if not self.layout.clock:
            at = self.layout.stamps[0]
            return _number(cells[at], "of time", self.layout) * self.layout.factors[0]
        text = " ".join(cells[i].strip() for i in self.layout.stamps).replace(",", ".")
        dated = "-" in text[:8]
        self.dated = dated if self.dated is None else self.dated
        if dated is not self.dated:
            raise BadText("a time with a date among times without", "write all in one way")
        try:
            return self._dated(text) if dated else self._clock(text)
        except (ValueError, TypeError):
            raise BadText(
                f"{text[:30]!r} is no time", "such as 12:03:07.250 or 2026-01-31 12:03:07"
            ) from None

    def _dated(self, text: str) -> float:
        stamp = datetime.fromisoformat(text)
        if self.zero is None:
            self.zero = datetime.combine(stamp.date(), time(), stamp.tzinfo)
        return (stamp - self.zero).total_seconds()

    def _clock(self, text: str) -> float:
        hours, minutes, *rest = text.split(":")
        seconds = 3600 * int(hours) + 60 * int(minutes) + float(rest[0] if rest else 0)
        if len(rest) > 1 or not (0 <= int(hours) < 24 and 0 <= int(minutes) < 60):
            raise ValueError(text)
        if seconds < self.before - _DAY / 2:
            self.day += _DAY
        self.before = seconds
        return self.day + seconds


def named(lines: Sequence[int]) -> str:
    """Write line numbers."""
    return ", ".join(map(str, lines))

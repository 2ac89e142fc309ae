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
from .clamp import Clamp

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

SHOWN = 5  # bad rows named in one complaint
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
    clamp: Clamp | None = None
    parquet: bool = False


def at_once(data: bytes, layout: Layout) -> Numbers | None:
    """Parse rows of plain numbers; None where any cell is something else, or pyarrow is not there.

    Returns a row of the array for the stamps and one for each column. What it takes, `row_by_row`
    takes too and reads the same; a quoted cell is left to that.
    """
    if b'"' in data:
        return None
    try:
        import pyarrow as pa
        from pyarrow import csv as arrow
    except ImportError:
        return None
    import numpy as np

    names = [str(i) for i in range(layout.cells)]
    taken = [names[i] for i in (layout.stamps[0], *layout.columns)]
    reading = arrow.ReadOptions(use_threads=False, column_names=names, block_size=len(data) + 1)
    form = arrow.ParseOptions(delimiter=layout.delimiter, quote_char=False)
    numbers = arrow.ConvertOptions(
        column_types=dict.fromkeys(taken, pa.float64()),
        include_columns=list(dict.fromkeys(taken)),
        null_values=[],
        decimal_point="," if layout.comma else ".",
    )
    try:
        table = arrow.read_csv(pa.BufferReader(data), reading, form, numbers)
    except pa.ArrowInvalid:
        return None
    columns = np.empty((len(taken), table.num_rows))
    for i, name in enumerate(taken):
        np.multiply(table.column(name), layout.factors[i], out=columns[i])
    return columns


def inside(columns: Numbers, layout: Layout) -> bool:
    """Whether every number is finite and within the span of its column."""
    import numpy as np

    lows, highs = columns.min(axis=1), columns.max(axis=1)
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
    made = np.array(rows, dtype=float).reshape(-1, 1 + len(layout.columns))
    return np.ascontiguousarray(made.T), numbers


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

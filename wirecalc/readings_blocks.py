"""Rows of a recording in blocks of numbers, checked, and kept so that they can be read again.

A block of bytes is parsed by numpy at once where every cell is a plain number, and row by row
where it is not: there the bad rows are named. Small recordings stay in memory, larger ones as
binary numbers in a nameless temporary file, and where that has no room they are parsed again.
"""

from __future__ import annotations

import csv
import math
import tempfile
from collections.abc import Callable, Iterator, Sequence
from datetime import datetime, time
from pathlib import Path
from typing import IO, TYPE_CHECKING, NamedTuple

from .errors import BadText
from .kinds import Reading

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

CHUNK = 1 << 20  # bytes parsed at once
MOST_KEPT = 1_000_000  # numbers kept in memory
MOST_SPOOLED = 1 << 30  # bytes of the file up to which its numbers go to a temporary file
_SHOWN = 5  # bad rows named in one complaint
_DAY = 86400.0
_BINS, _LEAST = 20, -12  # steps between stamps are counted in 20 classes a decade from 1e-12 s


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


class Block(NamedTuple):
    """Some rows: stamps in s, and the values of each column."""

    t: Numbers
    values: tuple[Numbers, ...]


class Overview(NamedTuple):
    """What is known of a recording once it was read: of all rows, and of each column."""

    rows: int
    first: float
    last: float
    step: float  # usual time between two stamps, s
    longest: float  # longest time between two stamps, s
    repeats: int  # rows with the stamp of the row before
    low: tuple[float, ...]
    high: tuple[float, ...]
    last_digit: float  # worth of the last digit of the measured column, as written


class Store:
    """The rows of a recording, to be gone through again."""

    def __init__(self, path: Path, layout: Layout) -> None:
        self.path, self.layout = path, layout
        self.kept: list[Numbers] | None = []
        self.size = 0
        self.spool: IO[bytes] | None = None
        self.lengths: list[int] = []

    def keep(self, rows: Numbers) -> None:
        """Keep rows that were parsed, in memory or beside it."""
        if self.kept is None:
            self._write(rows)
            return
        self.kept.append(rows)
        self.size += rows.size
        if self.size > MOST_KEPT:
            before, self.kept = self.kept, None
            try:
                if self.path.stat().st_size <= MOST_SPOOLED:
                    self.spool = tempfile.TemporaryFile()  # noqa: SIM115 (closed with the store)
            except OSError:
                self.spool = None
            for block in before:
                self._write(block)

    def _write(self, rows: Numbers) -> None:
        if self.spool is None:
            return
        try:
            self.spool.write(rows.tobytes())
            self.lengths.append(len(rows))
        except OSError:  # no room: the file is parsed again instead
            self.spool.close()
            self.spool = None

    def blocks(self) -> Iterator[Block]:
        """Go through the rows from the first."""
        for rows in self._rows():
            yield Block(rows[:, 0], tuple(rows[:, i] for i in range(1, rows.shape[1])))

    def _rows(self) -> Iterator[Numbers]:
        import numpy as np

        if self.kept is not None:
            yield from self.kept
        elif self.spool is not None:
            width = 1 + len(self.layout.columns)
            at = 0
            for length in self.lengths:
                self.spool.seek(at)
                at += length * width * 8
                data = self.spool.read(length * width * 8)
                yield np.frombuffer(data).reshape(length, width)
        else:
            yield from (rows for rows, _ in _parsed(self.path, self.layout))

    def __del__(self) -> None:
        if self.spool is not None:
            self.spool.close()


def read_store(path: Path, layout: Layout) -> tuple[Store, Overview]:
    """Read all rows and check them; raises BadText that names the first bad rows."""
    import numpy as np

    store = Store(path, layout)
    counts, sums = np.zeros((2, 24 * _BINS))
    rows, repeats, longest, first, last = 0, 0, 0.0, math.nan, math.nan
    low = np.full(len(layout.columns), math.inf)
    high = -low
    for block, line_of in _parsed(path, layout):
        t = block[:, 0]
        steps = np.diff(t, prepend=last if rows else t[0])[0 if rows else 1 :]
        if steps.size and steps.min() < 0:
            back = np.flatnonzero(steps < 0)[:_SHOWN] + (0 if rows else 1)
            raise BadText(
                f"row {_named(line_of(back))}: the time goes backwards",
                "sort the rows, or cut the file where a new recording begins",
            )
        some = steps[steps > 0]
        classes = np.clip((np.log10(some) - _LEAST) * _BINS, 0, len(counts) - 1).astype(int)
        counts += np.bincount(classes, minlength=len(counts))
        sums += np.bincount(classes, some, minlength=len(sums))
        repeats += steps.size - some.size
        longest = max(longest, float(steps.max(initial=0.0)))
        first, last = (first if rows else float(t[0])), float(t[-1])
        low = np.minimum(low, block[:, 1:].min(axis=0))
        high = np.maximum(high, block[:, 1:].max(axis=0))
        rows += len(block)
        store.keep(block)
    if rows < 2 or last == first:
        raise BadText(
            f"{str(path)!r} holds {rows or 'no'} reading{'s' * (rows != 1)} at one time",
            "a recording needs rows at several times",
        )
    middle = int(np.searchsorted(np.cumsum(counts), counts.sum() / 2))
    near = slice(max(middle - 1, 0), middle + 2)
    step = float(sums[near].sum() / counts[near].sum())
    found = (tuple(map(float, low)), tuple(map(float, high)))
    return store, Overview(
        rows, first, last, step, longest, repeats, *found, _last_digit(path, layout)
    )


_LineOf = Callable[["NDArray[np.int_]"], Sequence[int]]


def _parsed(path: Path, layout: Layout) -> Iterator[tuple[Numbers, _LineOf]]:
    """Parse the rows in blocks; with each block, what finds the line numbers of its rows."""
    stamps = _Stamps(layout)
    for line, data in _pieces(path, layout):
        found = None if layout.clock else _at_once(data, layout)
        if found is not None and _inside(found, layout):
            lines = _lines_of(data, line)
        else:
            found, numbers = _row_by_row(data, layout, line, stamps)
            lines = _taken_from(numbers)
        if len(found):
            yield found, lines


def _taken_from(numbers: Sequence[int]) -> _LineOf:
    return lambda at: [numbers[i] for i in at]


def _lines_of(data: bytes, line: int) -> _LineOf:
    def find(at: NDArray[np.int_]) -> Sequence[int]:
        filled = [n for n, text in enumerate(data.splitlines(), start=line) if text.strip()]
        return [filled[i] for i in at]

    return find


def _named(lines: Sequence[int]) -> str:
    return ", ".join(map(str, lines))


def _pieces(path: Path, layout: Layout) -> Iterator[tuple[int, bytes]]:
    """Yield pieces of the file that end with a line, each with the number of its first line."""
    with path.open("rb") as file:
        file.seek(layout.begins)
        line, rest = layout.line, b""
        while chunk := file.read(CHUNK):
            whole, mark, tail = (rest + chunk).rpartition(b"\n")
            if not mark:
                rest = tail
                if len(rest) > 4 * CHUNK:
                    raise BadText(f"row {line} never ends", "save it as CSV, a row a reading")
                continue
            rest = tail
            yield line, whole + mark
            line += whole.count(b"\n") + 1
        if rest.strip():
            yield line, rest + b"\n"


def _at_once(data: bytes, layout: Layout) -> Numbers | None:
    """Parse rows of plain numbers; None where any cell is something else."""
    import warnings

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
    comma = b",." if layout.comma else b""
    table = bytes.maketrans(parting + b"\n" + comma[:1], b"  " + comma[1:])
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            numbers = np.fromstring(data.translate(table), sep=" ")
    except (ValueError, DeprecationWarning):
        return None
    if numbers.size != at.size:
        return None
    rows = numbers.reshape(-1, layout.cells)[:, [layout.stamps[0], *layout.columns]]
    return np.ascontiguousarray(rows * np.array(layout.factors))


def _inside(rows: Numbers, layout: Layout) -> bool:
    """Whether every number is finite and within the span of its column."""
    import numpy as np

    lows, highs = rows.min(axis=0), rows.max(axis=0)
    ends = zip(lows[1:], highs[1:], layout.kinds, strict=True)
    return bool(np.isfinite(lows + highs).all()) and all(
        kind.inside(low) and kind.inside(high) for low, high, kind in ends
    )


def _row_by_row(
    data: bytes, layout: Layout, line: int, stamps: _Stamps
) -> tuple[Numbers, list[int]]:
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
        named = _named(sorted(n for lines in bad.values() for n in lines)[:_SHOWN])
        first = f" (row {where[0]})" if len(bad) > 1 else ""
        raise BadText(f"row {named}: {said}{first}", hint[said])
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


class _Stamps:
    """Stamps as numbers of seconds; a clock time that steps back by half a day is the next day."""

    def __init__(self, layout: Layout) -> None:
        self.layout = layout
        self.day, self.before = 0.0, -math.inf
        self.zero: datetime | None = None

    def read(self, cells: Sequence[str]) -> float:
        if not self.layout.clock:
            at = self.layout.stamps[0]
            return _number(cells[at], "of time", self.layout) * self.layout.factors[0]
        text = " ".join(cells[i].strip() for i in self.layout.stamps).replace(",", ".")
        try:
            return self._dated(text) if "-" in text[:8] else self._clock(text)
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


def _last_digit(path: Path, layout: Layout) -> float:
    """Return the worth of the last digit of the measured column, from the first rows."""
    places = 0
    with path.open("rb") as file:
        file.seek(layout.begins)
        for raw in file.readlines(4096):
            cells = raw.decode("utf-8", errors="replace").split(layout.delimiter)
            if len(cells) == layout.cells:
                cell = cells[layout.columns[0]].strip().replace(",", ".")
                places = max(places, len(cell.partition(".")[2]))
    return 10.0**-places

"""The rows of a recording in blocks, checked once, and kept so that they can be read again.

Small recordings stay in memory, larger ones as binary numbers in a nameless temporary file, and
where that has no room they are parsed again.
"""

from __future__ import annotations

import math
import tempfile
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import IO, TYPE_CHECKING, NamedTuple

from ..base.errors import BadText
from .parquet import parquet_rows
from .rows import SHOWN, Layout, Stamps, at_once, inside, named, row_by_row

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

CHUNK = 1 << 20  # bytes parsed at once
QUICK = 1 << 18  # bytes of a file from which it is worth to load the quick reader
MOST_KEPT = 1_000_000  # numbers kept in memory
MOST_SPOOLED = 1 << 30  # bytes of the file up to which its numbers go to a temporary file
_BINS, _LEAST = 20, -12  # steps between stamps are counted in 20 classes a decade from 1e-12 s
_CLASSES = 24 * _BINS


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
    last_digit: float | None  # worth of the last digit of the measured column, where it is text


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
            self.lengths.append(rows.shape[1])
        except OSError:  # no room: the file is parsed again instead
            self.spool.close()
            self.spool = None

    def blocks(self) -> Iterator[Block]:
        """Go through the rows from the first."""
        for rows in self._rows():
            rows.flags.writeable = False  # all runs and house rules share them
            yield Block(rows[0], tuple(rows[1:]))

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
                yield np.frombuffer(data).reshape(width, length)
        else:
            yield from (rows for rows, _ in _parsed(self.path, self.layout))

    def __del__(self) -> None:
        if self.spool is not None:
            self.spool.close()


def read_store(path: Path, layout: Layout) -> tuple[Store, Overview]:
    """Read all rows and check them; raises BadText that names the first bad rows."""
    import numpy as np

    store = Store(path, layout)
    counts, sums = np.zeros((2, _CLASSES))
    rows, repeats, longest, first, last = 0, 0, 0.0, math.nan, math.nan
    low = np.full(len(layout.columns), math.inf)
    high = -low
    for block, line_of in _parsed(path, layout):
        t = block[0]
        steps = np.empty(t.size)
        np.subtract(t[1:], t[:-1], out=steps[1:])
        steps[0] = t[0] - last if rows else 0.0
        steps = steps[0 if rows else 1 :]
        if steps.size and steps.min() < 0:
            back = np.flatnonzero(steps < 0)[:SHOWN] + (0 if rows else 1)
            raise BadText(
                f"row {named(line_of(back))}: the time goes backwards",
                "sort the rows, or cut the file where a new recording begins",
            )
        some = steps if steps.size and steps.min() > 0 else steps[steps > 0]
        ends = _classes(np.array([some.min(), some.max()])) if some.size else np.array([0, 0])
        if ends[0] == ends[1]:
            counts[ends[0]] += some.size
            sums[ends[0]] += some.sum()
        else:
            classes = _classes(some)
            counts += np.bincount(classes, minlength=len(counts))
            sums += np.bincount(classes, some, minlength=len(sums))
        repeats += steps.size - some.size
        longest = max(longest, float(steps.max(initial=0.0)))
        first, last = (first if rows else float(t[0])), float(t[-1])
        low = np.minimum(low, block[1:].min(axis=1))
        high = np.maximum(high, block[1:].max(axis=1))
        rows += len(t)
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


def _classes(steps: Numbers) -> NDArray[np.int_]:
    """Return the classes of steps between stamps, in s."""
    import numpy as np

    found: NDArray[np.int_] = np.clip((np.log10(steps) - _LEAST) * _BINS, 0, _CLASSES - 1).astype(
        int
    )
    return found


_LineOf = Callable[["NDArray[np.int_]"], Sequence[int]]


def _parsed(path: Path, layout: Layout) -> Iterator[tuple[Numbers, _LineOf]]:
    """Parse the rows in blocks; with each block, what finds the line numbers of its rows."""
    if layout.parquet:
        for rows, first in parquet_rows(path, layout):
            yield rows, _counted_from(first)
        return
    stamps = Stamps(layout)
    quick = not layout.clock and path.stat().st_size >= QUICK
    for line, data in _pieces(path, layout):
        found = at_once(data, layout) if quick else None
        if found is not None and found.size and inside(found, layout):
            lines = _lines_of(data, line)
        else:
            found, numbers = row_by_row(data, layout, line, stamps)
            lines = _taken_from(numbers)
        if found.size:
            yield found, lines


def _counted_from(first: int) -> _LineOf:
    return lambda at: [int(i) + first for i in at]


def _taken_from(numbers: Sequence[int]) -> _LineOf:
    return lambda at: [numbers[i] for i in at]


def _lines_of(data: bytes, line: int) -> _LineOf:
    def find(at: NDArray[np.int_]) -> Sequence[int]:
        filled = [n for n, text in enumerate(data.splitlines(), start=line) if text.strip()]
        return [filled[i] for i in at]

    return find


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


def _last_digit(path: Path, layout: Layout) -> float | None:
    """Return the worth of the last digit of the measured column, from the first rows of a text."""
    if layout.parquet:
        return None
    places = 0
    with path.open("rb") as file:
        file.seek(layout.begins)
        for raw in file.readlines(4096):
            cells = raw.decode("utf-8", errors="replace").split(layout.delimiter)
            if len(cells) == layout.cells:
                cell = cells[layout.columns[0]].strip().replace(",", ".")
                places = max(places, len(cell.partition(".")[2]))
    return 10.0**-places

"""A recording as an input: a CSV of stamps and values that is read in blocks, as often as needed.

    recording: Annotated[
        RecordedColumns,
        ReadingsStream(("current", "power"), {"current": Reading("A", ...), ...},
                       text="CSV of time and current", error_input="current_error",
                       comma_input="decimal_comma", column_input="column"),
    ]

A file of any length takes the same memory. Units stand in the header (`current_A`, `t (ms)`) or
in a second line; without a header the columns are time, the first measured quantity and what is
declared beside it, in their declared units. Stamps are numbers, clock times (which may pass
midnight) or ISO dates with times; they may repeat and may not go backwards. Every row is checked
before anything is computed. Needs numpy (the extra `analysis`).
"""

from __future__ import annotations

import importlib.util
import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from ..base.errors import BadText, did_you_mean
from ..typed.kinds import TAKEN_AS_EXACT, Kind, Read
from ..typed.quantities import Number, error_amount
from ..typed.quantity_kinds import Reading
from ..typed.units import converter
from .head import (
    CLOCK,
    bare_name,
    cells_of,
    first_lines,
    fits,
    has_unit,
    is_value,
    stamps_of,
    unit_of,
)

if TYPE_CHECKING:
    from .blocks import Block, Overview, Store
    from .rows import Layout


class RecordedColumns(NamedTuple):
    """A recording: `blocks()` may be gone through again and again.

    `columns` are the declared names, the measured quantity first, and `heads` what the header
    calls them. `scale` and `shift` move a measured value to an end of the meter's band.
    """

    name: str
    columns: tuple[str, ...]
    heads: tuple[str, ...]
    overview: Overview
    store: Store
    clock: bool = False
    scale: float = 1.0
    shift: float = 0.0

    def blocks(self) -> Iterator[Block]:
        """Go through the recording: arrays of stamps in s and of each column's values."""
        return self.store.blocks()

    def moved(self, value: float) -> float:
        """Return an absolute value, an rms or a peak at this end of the meter's band."""
        return max(0.0, value * self.scale + self.shift)

    def __str__(self) -> str:
        return f"{self.name}, {self.overview.rows} rows"


class ReadingsStream(Kind):
    """A recording. `measured` names the quantities of which the file has one, the best first."""

    of = RecordedColumns
    of_file = True

    def __init__(
        self,
        measured: Sequence[str],
        kinds: Mapping[str, Reading],
        *,
        text: str,
        beside: Sequence[str] = (),
        error_input: str = "",
        comma_input: str = "",
        column_input: str = "",
        typical: str = "recording.csv",
        sample: str = "",
    ) -> None:
        self.measured, self.beside = tuple(measured), tuple(beside)
        self.kinds, self.text, self._example = dict(kinds), text, typical
        self.sample = sample
        self.error_input, self.comma_input = error_input, comma_input
        self.column_input = column_input
        self.companions = tuple(n for n in (error_input, comma_input, column_input) if n)

    @property
    def example(self) -> str:
        """A text that may be typed."""
        return self._example

    @property
    def span(self) -> str:
        """What may be typed, in words."""
        wanted = " or ".join(f"{name}_{self.kinds[name].unit}" for name in self.measured)
        return f"a CSV file with the columns t_s and {wanted}"

    @property
    def schema(self) -> dict[str, Any]:
        """JSON schema of the given value."""
        return {"type": "string", "description": self.text, "examples": [self.example]}

    def read(self, given: object) -> Read:
        """Read the file as it stands, without a meter's error."""
        return self.read_with(given, {})

    def read_with(self, given: object, companions: Mapping[str, object]) -> Read:
        """Check every row; the companions say the error, the comma and the column."""
        if not isinstance(given, str):
            raise BadText(f"{given!r} is not the name of a file", f'such as "{self.example}"')
        from .blocks import read_store

        if importlib.util.find_spec("numpy") is None:
            do = "install it with: pip install 'wirecalc[analysis]'"
            raise BadText("reading a recording needs numpy", do)
        comma = str(companions.get(self.comma_input)).casefold() in ("yes", "y", "true")
        path = Path(given)
        names, layout = self._layout(path, comma, str(companions.get(self.column_input) or ""))
        store, overview = read_store(path, layout)
        value = RecordedColumns(path.name, names, layout.heads, overview, store, layout.clock)
        error = str(companions.get(self.error_input) or "").replace("+/-", "").lstrip("±").strip()
        if not error:
            return Read(value, notes=(TAKEN_AS_EXACT,))
        percent, amount = _error(error, self.kinds[names[0]], layout, overview.last_digit)
        low = value._replace(scale=1 - percent, shift=-amount)
        high = value._replace(scale=1 + percent, shift=amount)
        return Read(value, low, high, notes=(f"each ±{error}",))

    def _layout(self, path: Path, comma: bool, wanted: str) -> tuple[tuple[str, ...], Layout]:
        from .rows import Layout

        lines, delimiter = first_lines(path)
        head = cells_of(lines[0], delimiter)
        factors: list[float]
        used = 1
        if all(is_value(cell, comma) for cell in head):
            if wanted:
                raise BadText(f"it has no header, so no column {wanted!r}", "leave --column out")
            names = (self.measured[0], *self.beside)[: len(head) - 1]
            stamps, columns, factors = [0], list(range(1, len(names) + 1)), [1.0] * len(head)
            heads, used = names, 0
        else:
            units = cells_of(lines[1], delimiter) if len(lines) > 1 else []
            if len(units) == len(head) and all(re.fullmatch(r"[(\[].*[)\]]|", u) for u in units):
                head, used = [f"{h} {u}" for h, u in zip(head, units, strict=True)], 2
            stamps, factor = stamps_of(head)
            names, columns = self._columns(head, wanted, stamps)
            heads = tuple(head[i] for i in columns)
            factors = [factor]
            for name, at in zip(names, columns, strict=True):
                kind = self.kinds[name]
                factors.append(
                    converter(unit_of(head[at], kind)[1], kind.unit, kind.dimension)(1.0)
                )
        first = cells_of(lines[used], delimiter) if len(lines) > used else []
        if not names or len(first) < 2:
            raise BadText(f"{str(path)!r} holds no readings", "write t_s and current_A, and rows")
        clock = len(first) == len(head) and CLOCK.match(first[stamps[0]]) is not None
        return names, Layout(
            delimiter,
            len(head),
            tuple(stamps if clock else stamps[:1]),
            tuple(columns),
            (1.0 if clock else factors[0], *factors[1:]),
            tuple(self.kinds[n] for n in names),
            tuple(heads),
            lines[used].begins,
            lines[used].number,
            comma,
            clock,
        )

    def _columns(
        self, head: Sequence[str], wanted: str, stamps: Sequence[int]
    ) -> tuple[tuple[str, ...], list[int]]:
        """Find the measured column, the one that was asked for or the first that fits."""
        others = [i for i in range(len(head)) if i not in stamps]
        if wanted:
            named = [
                i for i in others if wanted.casefold() in (head[i].casefold(), bare_name(head[i]))
            ]
            if not named:
                known = [head[i] for i in others]
                raise BadText(f"the file has no column {wanted!r}", did_you_mean(wanted, known))
            others_first = named
        else:
            others_first = others
        found = next(
            (
                (name, i)
                for name in self.measured
                for only in (True, False)
                for i in others_first
                if fits(head[i], name, self.kinds[name], only)
            ),
            None,
        )
        if found is None:
            said = " or ".join(f"{n}_{self.kinds[n].unit}" for n in self.measured)
            raise BadText(
                f"the file has no column of {' or '.join(self.measured)} with its unit",
                f"write {said} in the header; its columns: {', '.join(head)[:120]}",
            )
        names, columns = [found[0]], [found[1]]
        for name in self.beside:
            at = next((i for i in others if fits(head[i], name, self.kinds[name], False)), None)
            if at is not None:
                names.append(name)
                columns.append(at)
        return tuple(names), columns


def _error(error: str, kind: Reading, layout: Layout, count: float) -> tuple[float, float]:
    """Return the meter's error as a share of the reading and an amount in the declared unit."""
    factor = layout.factors[1]
    unit = unit_of(layout.heads[0], kind)[1] if has_unit(layout.heads[0]) else kind.unit
    nothing, one = (error_amount(error, Number(v, count), kind.dimension, unit) for v in (0.0, 1.0))
    return one - nothing, nothing * factor

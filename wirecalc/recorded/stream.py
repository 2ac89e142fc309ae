"""A recording as an input: a CSV of stamps and values that is read in blocks, as often as needed.

    recording: Annotated[
        RecordedColumns,
        ReadingsStream(("current", "power"), {"current": Reading("A", ...), ...},
                       text="CSV of time and current", error_input="current_error",
                       comma_input="decimal_comma", column_input="column"),
    ]

A file of any length takes the same memory. Units stand in the header (`current_A`, `t (ms)`) or
in a second line; a column in mV is that of a clamp whose scale is said (`probe_mV (100 mV/A)`, or
an input of its own). Without a header the columns are time, the first measured quantity and what is
declared beside it, in their declared units. Stamps are numbers, clock times (which may pass
midnight) or ISO dates with times; they may repeat and may not go backwards. A Parquet file has the
same names of columns. Every row is checked before anything is computed. Needs numpy (the extra
`analysis`).
"""

from __future__ import annotations

import importlib.util
import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from ..base.errors import BadText
from ..base.extras import install
from ..typed.kinds import TAKEN_AS_EXACT, Kind, Read
from ..typed.quantities import Number, error_amount
from ..typed.quantity_kinds import Reading
from .clamp import read_clamp, volts_in
from .columns import Declared
from .head import has_unit, unit_of

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

    def place(self, name: str) -> int | None:
        """Return where a declared column stands among the values; None where there is none."""
        return self.columns.index(name) if name in self.columns else None

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
        clamp_input: str = "",
        typical: str = "recording.csv",
        sample: str = "",
    ) -> None:
        self.measured, self.beside = tuple(measured), tuple(beside)
        self.kinds, self.text, self._example = dict(kinds), text, typical
        self.sample = sample
        self.error_input, self.comma_input = error_input, comma_input
        self.column_input, self.clamp_input = column_input, clamp_input
        said = (error_input, comma_input, column_input, clamp_input)
        self.companions = tuple(n for n in said if n)

    @property
    def example(self) -> str:
        """A text that may be typed."""
        return self._example

    @property
    def span(self) -> str:
        """What may be typed, in words."""
        wanted = " or ".join(f"{name}_{self.kinds[name].unit}" for name in self.measured)
        return f"a CSV or Parquet file with the columns t_s and {wanted}"

    @property
    def schema(self) -> dict[str, Any]:
        """JSON schema of the given value."""
        return {"type": "string", "description": self.text, "examples": [self.example]}

    def read(self, given: object) -> Read:
        """Read the file as it stands, without a meter's error."""
        return self.read_with(given, {})

    def read_with(self, given: object, companions: Mapping[str, object]) -> Read:
        """Check every row; the companions say error, comma, column and clamp."""
        if not isinstance(given, str):
            raise BadText(f"{given!r} is not the name of a file", f'such as "{self.example}"')
        from .blocks import read_store
        from .layout import layout_of

        if importlib.util.find_spec("numpy") is None:
            do = install("analysis")
            raise BadText("reading a recording needs numpy", do)
        comma = str(companions.get(self.comma_input)).casefold() in ("yes", "y", "true")
        path = Path(given)
        wanted, scale = (
            str(companions.get(n) or "") for n in (self.column_input, self.clamp_input)
        )
        clamp = read_clamp(scale) if scale else None
        declared = Declared(self.measured, self.kinds, self.beside)
        names, layout = layout_of(path, declared, wanted, clamp, comma=comma)
        store, overview = read_store(path, layout)
        value = RecordedColumns(path.name, names, layout.heads, overview, store, layout.clock)
        by_head = (
            (f"a clamp of {layout.clamp}, by its header",) if layout.clamp and not clamp else ()
        )
        error = str(companions.get(self.error_input) or "").replace("+/-", "").lstrip("±").strip()
        if not error:
            return Read(value, notes=(TAKEN_AS_EXACT, *by_head))
        percent, amount = _error(error, self.kinds[names[0]], layout, overview.last_digit)
        low = value._replace(scale=1 - percent, shift=-amount)
        high = value._replace(scale=1 + percent, shift=amount)
        return Read(value, low, high, notes=(f"each ±{error}", *by_head))


def _error(error: str, kind: Reading, layout: Layout, count: float | None) -> tuple[float, float]:
    """Return the meter's error as a share of the reading and an amount in the declared unit."""
    factor, head = layout.factors[1], layout.heads[0]
    unit, dimension = kind.unit, kind.dimension
    if layout.clamp is not None:
        unit, dimension = volts_in(head) or layout.clamp.unit, "voltage"
        if re.search(r"\d\s*m?A\)?$", error):  # said in A, as its current is
            unit, dimension, factor = kind.unit, kind.dimension, 1.0
    elif has_unit(head):
        unit = unit_of(head, kind)[1]
    if count is None and re.search(r"\+\s*\d+\s*\)$", error):
        raise BadText(
            f"±{error} counts digits, and a Parquet file has none", "such as ±(2%+0.05 A)"
        )
    nothing, one = (error_amount(error, Number(v, count), dimension, unit) for v in (0.0, 1.0))
    return one - nothing, nothing * factor

"""A file of readings as an input: a CSV whose columns are declared like inputs.

    readings: Annotated[
        FileColumns | None,
        ReadingsFile({"force": Reading("lbf", ...)}, text="CSV of pull forces",
                     error_input="force_error", comma_input="decimal_comma"),
    ] = None

The core finds the delimiter, drops a byte-order mark, converts units and checks every value. The
unit stands in the header (`force_lbf`, `force (N)`) or in every cell. A column that is not
declared is kept as words. The meter's error is one input for the column.
"""

from __future__ import annotations

import csv
import math
import os
from collections.abc import Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple, TypeVar

from ..base.errors import BadText, did_you_mean
from ..base.text_files import turned
from ..typed.kinds import TAKEN_AS_EXACT, Kind, Read
from ..typed.quantities import Number, error_amount, read_quantity
from ..typed.quantity_kinds import Reading
from ..typed.units import converter, read_unit

T = TypeVar("T")
_SHOWN = 5  # bad lines named in one complaint
_DELIMITERS = ";\t,"


class FileColumns(NamedTuple):
    """What was read: numbers in the declared units, and the other columns as words."""

    name: str
    numbers: Mapping[str, Sequence[float]]
    words: Mapping[str, Sequence[str]]
    rows: int

    def __str__(self) -> str:
        return f"{self.name}, {self.rows} rows"


class ReadingsFile(Kind):
    """A CSV of readings. `columns` maps the name of a column to what its cells are."""

    of = FileColumns
    of_file = True

    def __init__(
        self,
        columns: Mapping[str, Reading],
        *,
        text: str,
        error_input: str = "",
        comma_input: str = "",
        typical: str = "readings.csv",
        sample: str = "",
    ) -> None:
        self.columns, self.text, self._example = dict(columns), text, typical
        self.sample = sample
        self.error_input, self.comma_input = error_input, comma_input
        self.companions = tuple(n for n in (error_input, comma_input) if n)

    @property
    def example(self) -> str:
        """A text that may be typed."""
        return self._example

    @property
    def span(self) -> str:
        """What may be typed, in words."""
        wanted = ", ".join(f"{name}_{kind.unit}" for name, kind in self.columns.items())
        return f"a CSV file with the column {wanted}" if wanted else "a CSV file"

    @property
    def schema(self) -> dict[str, Any]:
        """JSON schema of the given value."""
        return {"type": "string", "description": self.text, "examples": [self.example]}

    def read(self, given: object) -> Read:
        """Read the file as it stands, without a meter's error."""
        return self.read_with(given, {})

    def read_with(self, given: object, companions: Mapping[str, object]) -> Read:
        """Read the file; the companions say the meter's error and whether commas are decimal."""
        if not isinstance(given, str):
            raise BadText(f"{given!r} is not the name of a file", f'such as "{self.example}"')
        comma = str(companions.get(self.comma_input)).casefold() in ("yes", "y", "true")
        error = str(companions.get(self.error_input) or "").replace("+/-", "").lstrip("±").strip()
        header, lines = _read_lines(Path(given))
        numbers: dict[str, list[float]] = {}
        offs: dict[str, list[float]] = {}
        taken = set()
        for name, kind in self.columns.items():
            at, unit = _find(name, kind, header)
            taken.add(at)
            cells = [line[at].strip() for line in lines]
            if comma:
                cells = [c.replace(",", ".") for c in cells]
            numbers[name] = _numbers(name, kind, cells, unit)
            if error:
                offs[name] = _offs(error, kind, cells, numbers[name], unit)
        words = {
            head.strip(): [line[i].strip() for line in lines]
            for i, head in enumerate(header)
            if i not in taken
        }
        value = FileColumns(Path(given).name, _frozen(numbers), _frozen(words), len(lines))
        if not error:
            return Read(value, notes=(TAKEN_AS_EXACT,) if self.columns else ())
        low = {n: [v - o for v, o in zip(numbers[n], offs[n], strict=True)] for n in numbers}
        high = {n: [v + o for v, o in zip(numbers[n], offs[n], strict=True)] for n in numbers}
        return Read(
            value,
            value._replace(numbers=_frozen(low)),
            value._replace(numbers=_frozen(high)),
            notes=(f"each ±{error}",),
        )


def _frozen(columns: Mapping[str, Sequence[T]]) -> Mapping[str, tuple[T, ...]]:
    """Give columns that nobody can change: all runs, house rules and charts share them."""
    return MappingProxyType({name: tuple(values) for name, values in columns.items()})


def delimiter_of(line: str) -> str:
    """Return what parts the cells of a file, from its first line."""
    return max(_DELIMITERS, key=line.count)


def unit_behind(name: str, head: str) -> str | None:
    """Return the unit that a header says behind a name, empty for none; None for another name.

    >>> unit_behind("force", "Force (N)"), unit_behind("force", "force"), unit_behind("a", "force")
    ('N', '', None)
    """
    head = head.strip()
    before, behind = head[: len(name)].casefold(), head[len(name) :]
    if before != name or (behind and behind[0] not in " _(["):
        return None
    return behind.strip(" _()[]")


def unreadable(path: Path, error: Exception) -> BadText:
    """Return the complaint about a file that cannot be opened or is no text."""
    if isinstance(error, FileNotFoundError):
        return BadText(f"there is no file {str(path)!r}", turned(path) or "check the name")
    why = getattr(error, "strerror", None) or error
    return BadText(f"{str(path)!r} cannot be read ({why})", "save it as CSV, UTF-8")


def refuse_pipe(path: Path) -> None:
    """Raise BadText for a pipe or a device: readings are read twice, and a pipe may never end."""
    if os.path.exists(path) and not (os.path.isfile(path) or os.path.isdir(path)):  # noqa: PTH110, PTH112, PTH113 (these never raise)
        raise BadText(f"{str(path)!r} is no plain file", "save it as one first")


def _read_lines(path: Path) -> tuple[list[str], list[list[str]]]:
    refuse_pipe(path)
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            first = file.readline()
            delimiter = delimiter_of(first)
            file.seek(0)
            lines = [line for line in csv.reader(file, delimiter=delimiter) if any(line)]
    except (OSError, UnicodeDecodeError, csv.Error, ValueError) as error:
        raise unreadable(path, error) from None
    if len(lines) < 2:
        raise BadText(f"{str(path)!r} holds no readings", "write a header line and a row a reading")
    header = [head.lstrip("\ufeff") for head in lines[0]]
    ragged = [i for i, line in enumerate(lines[1:], start=2) if len(line) != len(header)]
    if ragged:
        named = ", ".join(map(str, ragged[:_SHOWN]))
        raise BadText(
            f"{str(path)!r} has {len(header)} columns, and other counts in row {named}",
            "every row needs as many cells as the header",
        )
    return header, lines[1:]


def _find(name: str, kind: Reading, header: Sequence[str]) -> tuple[int, str | None]:
    """Return where a column is, and the unit in its header (None: the cells carry it)."""
    for at, head in enumerate(header):
        unit = unit_behind(name, head)
        if unit is not None:
            return at, read_unit(unit, kind.dimension) if unit else None
    raise BadText(
        f"the file has no column {name}",
        did_you_mean(name, header) or f"write {name}_{kind.unit} in the header",
    )


def _numbers(name: str, kind: Reading, cells: Sequence[str], unit: str | None) -> list[float]:
    if unit is None:
        values = [_cell(name, kind, cell, i) for i, cell in enumerate(cells, start=2)]
    else:
        to = converter(unit, kind.unit, kind.dimension)
        values = [to(_plain(name, cell, i)) for i, cell in enumerate(cells, start=2)]
    outside = [i for i, value in enumerate(values, start=2) if not kind.inside(value)]
    if outside:
        named = ", ".join(map(str, outside[:_SHOWN]))
        raise BadText(f"column {name}, row {named}: outside {kind.span}", "check the unit")
    return values


def _plain(name: str, cell: str, row: int) -> float:
    try:
        value = float(cell)
    except ValueError:
        value = math.nan
    if not math.isfinite(value) or "_" in cell:
        hint = "write a point, or say that commas are decimal" if "," in cell else "write a number"
        raise BadText(f"column {name}, row {row}: {cell[:20]!r} is no number", hint)
    return value


def _cell(name: str, kind: Reading, cell: str, row: int) -> float:
    try:
        return read_quantity(cell, kind.dimension, kind.unit).value
    except BadText as error:
        raise BadText(
            f"column {name}, row {row}: {error.wrong}",
            f"write {name}_{kind.unit} in the header, or a unit in each cell",
        ) from None


def _offs(
    error: str, kind: Reading, cells: Sequence[str], values: Sequence[float], unit: str | None
) -> list[float]:
    """Return the meter's error of each cell, in the declared unit."""
    percent = error[:-1].strip()
    if error.endswith("%") and percent.replace(".", "", 1).isdigit():
        return [abs(v) * float(percent) / 100 for v in values]
    typed = unit or kind.unit
    scale = converter(typed, kind.unit, kind.dimension)
    found = []
    for cell in cells:
        if unit is None:
            quantity = read_quantity(f"{cell} ±{error}", kind.dimension, kind.unit)
            found.append((quantity.high or quantity.value) - quantity.value)
        else:
            number = Number(float(cell), 10.0 ** -len(cell.partition(".")[2]))
            found.append(scale(error_amount(error, number, kind.dimension, typed)))
    return found

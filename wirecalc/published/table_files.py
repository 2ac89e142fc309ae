"""A table of published values as it stands in its two files: its records, and reading them."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple, TypeVar

from ..base.errors import BadText, TableError
from .sidecar import read_sidecar
from .sources import Confidence, Source, read_off
from .table_lines import read_lines, read_number

Cell = str | float | int | None
Made = TypeVar("Made")
TAIL = ("source", "confidence", "copies", "note")  # the last columns of every table


class Column(NamedTuple):
    """What one column of a table holds."""

    name: str
    type: str
    text: str = ""
    unit: str = ""
    required: bool = True
    stricter: str = ""
    source: str = ""
    confidence: str = ""


class Row(NamedTuple):
    """One row of a table: its cells, its source, and a note if the printed value needs one.

    `printed` holds the cells as they stand in the file: digits are evidence. Nobody can change
    either: all that run in a process share them.
    """

    table: str
    cells: Mapping[str, Cell]
    printed: Mapping[str, str]
    source: Source
    note: str = ""

    def number(self, column: str) -> float:
        """Return a number; raises TableError where the cell is empty or holds text."""
        value = self.cells[column]
        if type(value) is float:
            return value
        if isinstance(value, int):
            return float(value)
        raise TableError(f"table {self.table}: column {column} holds no number in this row")

    def text(self, column: str) -> str:
        """Return a cell as it is printed, empty where nothing stands in it."""
        return self.printed[column]


@dataclass(frozen=True)
class Table:
    """A table of published values, checked when it was loaded."""

    name: str
    title: str
    purpose: str
    not_for: str
    checked: str
    key: tuple[str, ...]
    columns: tuple[Column, ...]
    sources: Mapping[str, Source]
    rows: tuple[Row, ...]
    folder: str = ""
    _index: dict[tuple[Cell, ...], Row] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    _by: dict[tuple[str, ...], dict[tuple[Cell, ...], list[Row]]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )
    _made: dict[tuple[Hashable, ...], Any] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def made(self, make: Callable[..., Made], *key: Hashable) -> Made:
        """Return what `make(table, *key)` makes of this table; it is made once and kept with it.

        So a look-up costs nothing the second time, and ends with its table: a shop's own is
        another table. What is made must not be changed by anyone.
        """
        asked = (make, *key)
        if asked not in self._made:
            self._made[asked] = make(self, *key)
        found: Made = self._made[asked]
        return found

    def find(self, **key: Cell) -> Row | None:
        """Return the row with this key, or None. The whole key must be given."""
        if not self._index:
            self._index.update({tuple(r.cells[k] for k in self.key): r for r in self.rows})
        return self._index.get(tuple(key[k] for k in self.key))

    def row(self, **key: Cell) -> Row:
        """Return the row with this key; raises TableError where there is none."""
        found = self.find(**key)
        if found is None:
            asked = ", ".join(f"{k} {v}" for k, v in key.items())
            raise TableError(f"table {self.name} has no row for {asked}")
        return found

    def where(self, **cells: Cell) -> Iterator[Row]:
        """Yield the rows that hold these cells, in the order of the table."""
        names = tuple(cells)
        if names not in self._by:
            self._by[names] = {}
            for row in self.rows:
                self._by[names].setdefault(tuple(row.cells[k] for k in names), []).append(row)
        return iter(self._by[names].get(tuple(cells.values()), ()))

    def column_source(self, row: Row, column: str) -> Source:
        """Return where the value in one column of a row comes from.

        A column may have a source or a confidence of its own, set in the sidecar; else the
        row's confidence and copies hold for it.
        """
        return self.made(_column_source, column, row.source)


def _column_source(table: Table, column: str, source: Source) -> Source:
    own = next(c for c in table.columns if c.name == column)
    if own.source:
        named = table.sources[own.source]
        source = named._replace(confidence=source.confidence, copies=source.copies)
    if not own.confidence:
        return source
    confidence = Confidence(own.confidence)
    seen = source.copies if confidence is Confidence.CONFIRMED else 0
    return source._replace(confidence=confidence, copies=seen)


def read_file(folder: Path, name: str) -> tuple[Table, Sequence[Any]]:
    """Read one table as it stands in its files, with the rules that it is checked by.

    Raises TableError where a file cannot be read or a cell does not hold what its column says.
    """
    sidecar = read_sidecar(folder, name)
    columns = tuple(_column(name, c, about) for c, about in sidecar["columns"].items())
    sources = {k: _source(name, k, about) for k, about in sidecar["sources"].items()}
    table = Table(
        name=name,
        title=sidecar["title"],
        purpose=sidecar["purpose"],
        not_for=sidecar["not_for"],
        checked=sidecar["checked"],
        key=tuple(sidecar["key"]),
        columns=columns,
        sources=MappingProxyType(sources),
        rows=tuple(_rows(folder / f"{name}.csv", name, columns, sources)),
        folder=str(folder),
    )
    return table, sidecar.get("rules", [])


def _column(table: str, name: str, about: dict[str, Any]) -> Column:
    try:
        column = Column(name=name, **about)
    except TypeError as error:
        raise TableError(f"table {table}: column {name} is described wrongly ({error})") from None
    for key, value in about.items():
        if not isinstance(value, bool if key == "required" else str):
            raise TableError(f"table {table}: {key} of column {name} is {value!r}")
    return column


def _source(table: str, key: str, about: Any) -> Source:
    if not isinstance(about, dict) or not about.get("title"):
        raise TableError(f"table {table}: source {key} has no title")
    said = [about.get(part, "") for part in ("title", "edition", "where")]
    off = about.get("off", "")
    if not all(isinstance(text, str) for text in (*said, off)):
        raise TableError(f"table {table}: source {key} is not in words")
    if off and read_off(off) is None:
        raise TableError(f'table {table}: source {key} may be off by {off!r}; such as "25 %"')
    title, edition, where = said
    return Source(key, title, edition, where, off=off)


def _rows(
    path: Path, name: str, columns: Sequence[Column], sources: Mapping[str, Source]
) -> Iterator[Row]:
    header = [c.name for c in columns] + list(TAIL)
    for number, line in read_lines(path, name, header):
        printed = dict(zip(header, line, strict=True))
        cells = {c.name: _cell(name, number, c, printed[c.name]) for c in columns}
        source = _row_source(name, number, sources, *line[-4:-1])
        yield Row(name, MappingProxyType(cells), MappingProxyType(printed), source, line[-1])


def _cell(table: str, line: int, column: Column, text: str) -> Cell:
    if not text:
        if column.required:
            would_do = f"write required = false under [columns.{column.name}] in {table}.toml"
            raise TableError(
                f"table {table}, line {line}: column {column.name} is empty; fill it, or {would_do}"
            )
        return None
    if column.type not in ("number", "integer"):
        return text
    try:
        return read_number(text, column.type)
    except BadText as error:
        where = f"table {table}, line {line}: {text[:40]!r} in column {column.name}"
        raise TableError(f"{where} {error}") from None


def _row_source(
    table: str, line: int, sources: Mapping[str, Source], key: str, confidence: str, copies: str
) -> Source:
    if key not in sources:
        raise TableError(f"table {table}, line {line}: source {key!r} is not in the sidecar")
    if copies and not (len(copies) < 4 and copies.isascii() and copies.isdigit()):
        raise TableError(f"table {table}, line {line}: copies are a number, and not {copies!r}")
    try:
        return sources[key]._replace(confidence=Confidence(confidence), copies=int(copies or 0))
    except ValueError as error:
        raise TableError(f"table {table}, line {line}: {error}") from None

"""The flat tables of a shop's records as CSV, for a spreadsheet, and as Parquet."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import IO, Any

from ..jobs.record_rows import Row
from ..jobs.record_tables import INTEGER, NUMBER, Column
from .rows import guarded

_AT_ONCE = 50_000  # rows that are held in memory


def write_csv(file: IO[bytes], columns: Iterable[Column], rows: Iterable[Row]) -> None:
    """Write a table as CSV in UTF-8.

    A text that a spreadsheet would take for a formula has an apostrophe before it.
    """
    text = io.TextIOWrapper(file, encoding="utf-8", errors="replace", newline="")
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow([c.name for c in columns])
    known: dict[str, str] = {"": ""}  # the same words stand in many rows
    for row in rows:
        writer.writerow([_cell(cell, known) for cell in row])
    text.detach()  # whose file stays open


def _cell(cell: str | float | int | None, known: dict[str, str]) -> str | float | int | None:
    if not isinstance(cell, str):
        return cell
    found = known.get(cell)
    if found is None:
        found = guarded(cell)
        if len(known) < _AT_ONCE:
            known[cell] = found
    return found


def has_parquet() -> bool:
    """Whether the library is installed that Parquet needs."""
    import importlib.util

    return importlib.util.find_spec("pyarrow") is not None


def write_parquet(file: IO[bytes], columns: Iterable[Column], rows: Iterable[Row]) -> None:
    """Write a table as Parquet, a piece at a time."""
    import pyarrow as pa
    from pyarrow import parquet

    types: dict[str, Any] = {NUMBER: pa.float64(), INTEGER: pa.int64()}
    schema = pa.schema([pa.field(c.name, types.get(c.type, pa.string())) for c in columns])
    with parquet.ParquetWriter(file, schema, compression="zstd") as writer:
        for piece in _pieces(rows):
            by_column = zip(zip(*piece, strict=True), schema, strict=True)
            made = [pa.array(cells, field.type) for cells, field in by_column]
            writer.write_batch(pa.record_batch(made, schema))


def _pieces(rows: Iterable[Row]) -> Iterator[list[Row]]:
    at = iter(rows)
    while piece := list(islice(at, _AT_ONCE)):
        yield piece

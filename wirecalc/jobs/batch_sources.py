"""The rows of a batch out of a CSV, JSON lines or Parquet, by the ending of the name."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Protocol, TextIO

from ..base.errors import BadText
from ..recorded.files import unreadable
from .batch_rows import LONGEST, RawRow, RowsFile
from .row_cells import cell_text

JSON_LINES, PARQUET = (".jsonl", ".ndjson"), (".parquet",)
ENDINGS = (".csv", *JSON_LINES, *PARQUET)


class Rows(Protocol):
    """A file of rows, opened, with its header read; `rows` yields the others once."""

    name: str
    header: list[str]

    def rows(self) -> Iterator[RawRow]:
        """Yield the rows one at a time; the file is closed at the end."""

    def close(self) -> None:
        """Close the file."""


def open_rows(name: str) -> Rows:
    """Open a file of rows; raises BadText where it cannot be read or has no columns."""
    if name.casefold().endswith(JSON_LINES):
        return JsonLines(name)
    if name.casefold().endswith(PARQUET):
        return Parquet(name)
    return RowsFile(name)


def _opened(name: str) -> TextIO:
    return Path(name).open(encoding="utf-8-sig", errors="surrogateescape")


class JsonLines:
    """A JSON object a line: its keys are the columns, those of the first line are all there are."""

    def __init__(self, name: str) -> None:
        self.name = name
        try:
            self._file = _opened(name)
            first = self._object(self._file.readline(LONGEST))
            self._file.seek(0)
        except (OSError, ValueError) as error:
            raise unreadable(Path(name), error) from None
        if isinstance(first, str):
            self.close()
            raise BadText(f"its first line {first}", "write an object a line")
        self.header = list(first)

    def close(self) -> None:
        """Close the file."""
        self._file.close()

    def rows(self) -> Iterator[RawRow]:
        """Yield a row a line, blank ones left out; the file is closed at the end."""
        with self._file:
            number = 0
            while line := self._file.readline(LONGEST):
                number += 1
                if line.strip():
                    yield self._row(number, line)

    def _row(self, number: int, line: str) -> RawRow:
        told = self._object(line)
        if isinstance(told, str):
            return RawRow(number, [], f"the line {told}")
        if odd := [key for key in told if key not in self.header]:
            return RawRow(number, [], f"the first line has no {', '.join(odd)}")
        return RawRow(number, [cell_text(told.get(key)) for key in self.header])

    def _object(self, line: str) -> dict[str, Any] | str:
        """Return the object of a line, or what the line is instead."""
        if len(line) >= LONGEST:
            return f"is longer than {LONGEST} characters"
        try:
            told = json.loads(
                line, parse_float=str, parse_int=str, parse_constant=str
            )  # digits as they were written
        except (ValueError, RecursionError):
            return "is no JSON"
        nested = isinstance(told, dict) and any(isinstance(v, dict) for v in told.values())
        return told if isinstance(told, dict) and not nested else "is no object of plain values"


class Parquet:
    """A Parquet file, read a part at a time; its rows are numbered from 1."""

    def __init__(self, name: str) -> None:
        self.name = name
        try:
            import pyarrow
            import pyarrow.parquet as parquet
        except ImportError:
            would_do = "pip install 'wirecalc[analysis]', or save it as CSV"
            raise BadText("reading Parquet needs pyarrow", would_do) from None
        self._wrong = pyarrow.ArrowException
        try:
            self._file = parquet.ParquetFile(name)
        except (OSError, ValueError) as error:
            raise unreadable(Path(name), error) from None
        self.header = list(self._file.schema_arrow.names)

    def close(self) -> None:
        """Close the file."""
        self._file.close()

    def rows(self) -> Iterator[RawRow]:
        """Yield the rows one at a time; the file is closed at the end."""
        number = 0
        try:
            for part in self._file.iter_batches(4_096):
                for values in zip(*(c.to_pylist() for c in part.columns), strict=True):
                    number += 1
                    yield RawRow(number, list(map(cell_text, values)))
        except (OSError, self._wrong) as error:
            raise unreadable(Path(self.name), error) from None
        finally:
            self.close()

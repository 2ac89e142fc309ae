"""The rows of a batch file, one at a time: a header, then a line a row, of any number.

A row is one line: a quote that is not closed spoils its own row and no other. What is wrong with
a row stands in it, and the rest goes on.
"""

from __future__ import annotations

import csv
import io
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple, TextIO

from ..base.errors import BadText
from ..recorded.files import delimiter_of, unreadable

LONGEST = 100_000  # characters of a line; a file without line ends takes no memory either
STDIN = "-"


class RawRow(NamedTuple):
    """A row as it stands in the file: its line, its cells, and why it cannot be used, if so."""

    number: int
    cells: list[str]
    wrong: str = ""


class RowsFile:
    """A file of rows, opened, with its `header` read; `rows()` yields the others once.

    `name` is a path, or `-` for stdin. Raises BadText where it cannot be opened or has no header.
    """

    def __init__(self, name: str) -> None:
        self.name = name
        try:
            self._file = _opened(name)
        except (OSError, ValueError) as error:
            raise unreadable(Path(name), error) from None
        self._lines = self._numbered()
        try:
            self.delimiter, self.header = self._head()
        except BadText:
            self.close()
            raise

    def close(self) -> None:
        """Close the file."""
        self._file.close()

    def rows(self) -> Iterator[RawRow]:
        """Yield the rows below the header, blank ones left out; the file is closed at the end."""
        with self._file:
            for number, line in self._lines:
                row = self._row(number, line)
                if row.wrong or any(row.cells):
                    yield row

    def _row(self, number: int, line: str | None) -> RawRow:
        if line is None:
            return RawRow(number, [], f"the row is longer than {LONGEST} characters")
        if not _is_text(line):
            line = line.encode("utf-8", "surrogateescape").decode("utf-8", "replace")
            return RawRow(number, self._loose(line), "the row is no text; save the file as UTF-8")
        try:
            cells = self._cells(line)
        except csv.Error as error:
            wrong = f"its cells cannot be parted ({error}); a row is one line, its quotes closed"
            return RawRow(number, self._loose(line), wrong)
        if len(cells) != len(self.header) and any(cells):
            wrong = f"the row has {len(cells)} cells, and the header {len(self.header)}"
            return RawRow(
                number, cells, f"{wrong}; put a cell that holds {self.delimiter} in quotes"
            )
        return RawRow(number, cells)

    def _loose(self, line: str) -> list[str]:
        return [cell.strip() for cell in line.split(self.delimiter)]

    def _cells(self, line: str) -> list[str]:
        if '"' in line:
            return [
                c.strip() for c in next(csv.reader([line], delimiter=self.delimiter, strict=True))
            ]
        return [cell.strip() for cell in line.split(self.delimiter)]

    def _head(self) -> tuple[str, list[str]]:
        for _, line in self._lines:
            if line is None or not _is_text(line) or "\0" in line:
                raise BadText("the header is no text", "save the file as CSV, UTF-8")
            if line.strip():
                self.delimiter = delimiter_of(line)
                try:
                    return self.delimiter, self._cells(line)
                except csv.Error as error:
                    wrong = f"the cells of the header cannot be parted ({error})"
                    raise BadText(wrong, "close its quotes") from None
        raise BadText("is empty", "write a header line, and below it a row a run")

    def _numbered(self) -> Iterator[tuple[int, str | None]]:
        """Yield each line with its number; None for one that is too long to be read."""
        number = 0
        try:
            while line := self._file.readline(LONGEST):
                number += 1
                if _ends(line):
                    yield number, line.rstrip("\r\n")
                    continue
                yield number, None
                while (more := self._file.readline(LONGEST)) and not _ends(more):
                    pass
        except OSError as error:
            raise unreadable(Path(self.name), error) from None


def _ends(line: str) -> bool:
    return len(line) < LONGEST or line[-1] in "\r\n"


def _is_text(line: str) -> bool:
    """Whether all bytes of a line were text: others were taken for lone surrogates."""
    return line.isascii() or not any("\udc80" <= sign <= "\udcff" for sign in line)


def _opened(name: str) -> TextIO:
    how = {"encoding": "utf-8-sig", "errors": "surrogateescape", "newline": ""}
    if name != STDIN:
        return Path(name).open(**how)  # type: ignore[call-overload,no-any-return]
    if sys.stdin is None:
        raise OSError("stdin is closed")
    return io.TextIOWrapper(sys.stdin.buffer, **how)  # type: ignore[arg-type]

"""The flat tables of a shop's records in one SQLite file, which most tools read.

A record is added once, by what it is known by, and its rows go when its folder has gone.
"""

from __future__ import annotations

import contextlib
import sqlite3
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from operator import itemgetter
from pathlib import Path

from ..base.errors import BadInput, Problem
from .record_rows import Row
from .record_tables import INTEGER, NUMBER, RECORDS, TABLES, FlatTable

MADE_BY = 0x77697265  # what SQLite keeps in the file's head: "wire"
VERSION = 1  # of the columns; another is made anew
_TYPES = {NUMBER: "REAL", INTEGER: "INTEGER"}


class Database:
    """A database that is filled; it is another's private copy until it is whole."""

    def __init__(self, path: Path, *, with_names: bool) -> None:
        self.with_names = with_names
        self._file = sqlite3.connect(path, isolation_level=None)
        for setting in ("journal_mode = OFF", "synchronous = OFF", "secure_delete = ON"):
            self._file.execute(f"PRAGMA {setting}")
        self._made_of = {t.name: _columns_of(t, with_names=with_names) for t in TABLES}
        if not _says(self._file):
            self._make()
        self._file.execute("BEGIN")

    def _make(self) -> None:
        for table in TABLES:
            shown = table.shown(with_names=self.with_names)
            columns = ", ".join(f"{c.name} {_TYPES.get(c.type, 'TEXT')}" for c in shown)
            key = ", PRIMARY KEY (record)" if table is RECORDS else ""
            self._file.execute(f"CREATE TABLE {table.name} ({columns}{key})")
        self._file.execute("CREATE TABLE columns (of_table TEXT, name TEXT, holds TEXT)")
        held = (
            (t.name, c.name, c.text) for t in TABLES for c in t.shown(with_names=self.with_names)
        )
        self._file.executemany("INSERT INTO columns VALUES (?, ?, ?)", held)
        self._file.execute(f"PRAGMA application_id = {MADE_BY}")
        self._file.execute(f"PRAGMA user_version = {_version(with_names=self.with_names)}")

    def known(self) -> set[str]:
        """Return what the records in it are known by."""
        return {known_by for (known_by,) in self._file.execute("SELECT record FROM records")}

    def add(self, rows: Mapping[str, Sequence[Row]]) -> None:
        """Add the rows of a record."""
        for table, found in rows.items():
            if found:
                picked, marks = self._made_of[table]
                made = map(picked, found)
                self._file.executemany(f"INSERT INTO {table} VALUES ({marks})", made)

    def remove(self, gone: Collection[str]) -> None:
        """Remove all that is said of some records; nothing of it stays in the file."""
        for table in TABLES if gone else ():
            of_record = f"DELETE FROM {table.name} WHERE record = ?"
            self._file.executemany(of_record, ((known_by,) for known_by in sorted(gone)))

    def finish(self) -> None:
        """Write what is still open, with what makes questions quick."""
        for table in TABLES:
            if table is not RECORDS:
                name = f"{table.name}_of_record"
                self._file.execute(f"CREATE INDEX IF NOT EXISTS {name} ON {table.name} (record)")
        self._file.execute("COMMIT")

    def rows(self, table: FlatTable) -> Iterator[Row]:
        """Yield the rows of a table, by record, in the order of its sheet."""
        yield from self._file.execute(f"SELECT * FROM {table.name} ORDER BY record, rowid")

    def close(self) -> None:
        """Leave the file."""
        self._file.close()


def _columns_of(table: FlatTable, *, with_names: bool) -> tuple[Callable[[Row], Row], str]:
    """Return what takes the columns that are shown out of a row, and a mark for each."""
    shown = set(table.shown(with_names=with_names))
    places = [at for at, column in enumerate(table.columns) if column in shown]
    return itemgetter(*places), ", ".join("?" * len(places))


def _version(*, with_names: bool) -> int:
    return 2 * VERSION + with_names


def _says(file: sqlite3.Connection) -> tuple[int, int] | None:
    """Return who made a database and its version; None for one that is empty."""
    if not file.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]:
        return None
    made_by, version = (
        file.execute(f"PRAGMA {p}").fetchone()[0] for p in ("application_id", "user_version")
    )
    return made_by, version


def known_in(path: Path, *, with_names: bool) -> set[str] | None:
    """Return what the records in a database are known by; None where it is to be made anew.

    Raises BadInput, naming the file, for one that something else has made.
    """
    if not path.exists():
        return None
    wrong = "is no database of records"
    try:
        with contextlib.closing(
            sqlite3.connect(f"{path.absolute().as_uri()}?mode=ro", uri=True)
        ) as file:
            says = _says(file)
            if says is None or says[0] == MADE_BY:
                if says != (MADE_BY, _version(with_names=with_names)):
                    return None
                return {one for (one,) in file.execute("SELECT record FROM records")}
    except sqlite3.Error as error:
        wrong = f"cannot be read ({error})"
    raise BadInput([Problem(str(path), wrong, "move it away, or name another folder")])

"""Published values: a CSV a table, with a sidecar that says where each value comes from.

`load("pull-crimp")` reads `tables/pull-crimp.csv` and `.toml` once (see tablefile.py), checks them
(see tablecheck.py) and refuses a damaged one. Nothing is read before it is asked for.
"""

from __future__ import annotations

import contextlib
import functools
import importlib.util
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from ..base.errors import DamagedTable, TableError, did_you_mean
from .sidecar import read_sidecar
from .table_checks import check
from .table_files import Cell, Column, Row, Table, read_file

__all__ = [
    "Cell",
    "Column",
    "LeftOver",
    "Row",
    "Table",
    "Unused",
    "bundled_folder",
    "folders",
    "forget",
    "instead",
    "load",
    "names",
    "read",
    "read_sidecar",
    "sidecars",
    "unused",
    "use_folders",
    "watched",
]


class Unused(NamedTuple):
    """What a shop meant and what is not used: its file, why, and whom it could concern.

    `tables` are the published tables that it may be meant for. Where nobody knows there are none,
    and it could concern every calculation.
    """

    file: str
    why: str
    tables: tuple[str, ...] = ()

    def __str__(self) -> str:
        return f"{self.file}: {self.why}"


class LeftOver(NamedTuple):
    """What is not used of a folder that a shop names: what was meant, and what is only named.

    `named` has what it is and why it is not used.
    """

    meant: list[Unused]
    named: list[tuple[str, str]]

    def add(self, other: LeftOver) -> None:
        """Add what is left over of another."""
        self.meant.extend(other.meant)
        self.named.extend(other.named)


_added_folders: list[Path] = []
_unused: list[Unused] = []


def use_folders(added: Sequence[Path], unused: Sequence[Unused] = ()) -> None:
    """Look for tables in these folders too, behind the bundled one, and in no others.

    `unused` is what a shop meant and what is not used; it leaves what reads it in doubt.
    """
    _unused[:] = unused
    if list(added) != _added_folders:
        _added_folders[:] = added
        _load.cache_clear()


def in_use(added: Sequence[Path], unused: Sequence[Unused]) -> bool:
    """Whether these are the folders that are looked in, and this what is not used."""
    return _added_folders == added and _unused == unused


def shop_is_there() -> bool:
    """Whether there are tables beside the bundled ones, or something that was meant for one."""
    return bool(_added_folders or _unused)


def unused() -> Sequence[Unused]:
    """Return what a shop meant and what is not used."""
    return tuple(_unused)


@functools.cache
def bundled_folder() -> Path:
    """Return the folder of the tables that come with wirecalc."""
    spec = importlib.util.find_spec("wirecalc_tables")
    if spec is None or not spec.submodule_search_locations:
        raise TableError("the tables of wirecalc are not installed; install the package again")
    return Path(next(iter(spec.submodule_search_locations)))


def folders() -> Sequence[Path]:
    """Return the folders in which tables are looked for, the bundled one first."""
    return (bundled_folder(), *_added_folders)


def sidecars(folder: Path) -> list[Path]:
    """Return the sidecars in a folder, sorted; not what one system leaves on the disks of another.

    (A file whose name begins with `._` is one of those.)
    """
    return sorted(path for path in folder.glob("*.toml") if not path.name.startswith("._"))


def names() -> list[str]:
    """Return the names of all tables, sorted."""
    added = {path.stem for folder in _added_folders for path in sidecars(folder)}
    return sorted(added.union(_bundled_names()))


@functools.cache
def _bundled_names() -> Sequence[str]:
    """Return the names of the tables that come with wirecalc, looked for once."""
    return tuple(path.stem for path in sidecars(bundled_folder()))


def forget() -> None:
    """Read tables anew: those of a shop may have been changed."""
    _load.cache_clear()


_readers: list[set[str]] = []  # who wants to know which tables are asked for
_instead: dict[str, Table] = {}  # tables that are given in place of others


@contextlib.contextmanager
def watched() -> Iterator[set[str]]:
    """Within this, gather the names of the tables that are asked for."""
    asked: set[str] = set()
    _readers.append(asked)
    try:
        yield asked
    finally:
        _readers.pop()


@contextlib.contextmanager
def instead(given: Iterable[Table]) -> Iterator[None]:
    """Within this, give these tables in place of those of the same names."""
    before = dict(_instead)  # one calculation may run another
    _instead.update({table.name: table for table in given})
    try:
        yield
    finally:
        _instead.clear()
        _instead.update(before)


def load(name: str) -> Table:
    """Return a table by its name, read and checked once.

    Raises TableError for an unknown name or a damaged table.
    """
    for asked in _readers:
        asked.add(name)
    return _instead.get(name) or _load(name)


@functools.cache
def _load(name: str) -> Table:
    for folder in folders():
        if (folder / f"{name}.toml").is_file():
            return read(folder, name)
    would_do = did_you_mean(name, names()) or "`wirecalc tables` lists them"
    raise TableError(f"there is no table {name}; {would_do}")


def read(folder: Path, name: str) -> Table:
    """Read one table from a folder and check it; raises TableError, saying what is damaged.

    Of a table that does not come with wirecalc it is a DamagedTable, which names the file.
    """
    try:
        table, rules = read_file(folder, name)
        check(table, rules)
        if folder != bundled_folder():
            _check_twins(table)
        return table
    except TableError as error:
        if folder == bundled_folder():
            raise
        raise DamagedTable(str(folder), name, str(error)) from None


def _check_twins(table: Table) -> None:
    """Raise TableError where one quantity in two units is not the same in both."""
    from .twin_columns import differing  # dear: it loads what converts units

    if wrong := [f"table {table.name}, {said}" for said in differing(table)]:
        raise TableError("\n".join(wrong))

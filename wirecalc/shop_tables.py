"""A shop's table that adds to a published one or is stricter: its sidecar says

    stricter_than = "pull-crimp"

It has the key columns of the published table and those columns in which it differs. A row is used
if each value is as strict as the published one or stricter, by the `stricter` of the column;
else it is not used, and the reason is kept to be shown. The published rows stay as they are:
`overlaid` makes a second table, by which a calculation is run a second time.
"""

from __future__ import annotations

import contextlib
import functools
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from . import tables
from .errors import DamagedTable, TableError, did_you_mean
from .tables import Cell, Column, Row, Table

_TYPES_OF_AMOUNTS = ("number", "integer")


class Overlaid(NamedTuple):
    """A published table with a shop's rows in it, where they come from, and what was not used.

    `rows` are the shop's rows in use. `broken` says why a shop's table cannot be read at all.
    """

    table: Table
    by: tuple[str, ...] = ()
    rows: tuple[Row, ...] = ()
    not_used: tuple[str, ...] = ()
    broken: tuple[str, ...] = ()


def refuse_folder(folder: Path) -> None:
    """Raise TableError where a folder is not there, or would replace a published table."""
    try:
        there = folder.is_dir()
    except OSError:  # a name that no folder can have
        there = False
    if not there:
        raise TableError(f"{folder.name[:100]} is no folder of tables")
    taken = sorted(_published() & {path.stem for path in folder.glob("*.toml")})
    if taken:
        raise TableError(f"{taken[0]} is a bundled table; add one under another name")


def check_folder(folder: Path) -> None:
    """Raise TableError where a table is meant for a published one, and it is not plain which."""
    for path in sorted(folder.glob("*.toml")):
        over = _meant_for(path)
        if over is not None and over not in _published():
            would_do = did_you_mean(over, sorted(_published()))
            raise TableError(f"table {path.stem}: there is no published table {over!r}; {would_do}")


def check_tables(folder: Path) -> list[str]:
    """Say what is wrong with a folder of tables, as docs/tables.md describes them.

    Every table in it is read, and rows of a stricter one that are not used are named.
    """
    names = {path.stem for path in folder.glob("*.toml")}
    wrong = [] if names else [f"{folder} holds no table: a table is NAME.csv and NAME.toml"]
    alone = sorted({path.stem for path in folder.glob("*.csv")} - names)
    wrong += [f"table {name}: it has no {name}.toml beside it" for name in alone]
    for name in sorted(names):
        if (tables.bundled_folder() / f"{name}.toml").is_file():
            wrong.append(f"table {name}: a bundled table has this name; take another")
        try:
            tables.read(folder, name)
        except DamagedTable as error:
            wrong.append(error.said)
        except TableError as error:
            wrong += str(error).splitlines()
    return wrong + [why for over in _all((folder,)).values() for why in over.not_used]


def hidden(folder: Path, before: Iterable[Path]) -> Iterator[str]:
    """Say which tables of a folder are never read, because one before has a table of the name.

    Stricter ones are read wherever they stand.
    """
    for path in sorted(folder.glob("*.toml")):
        other = next((f for f in before if (f / path.name).is_file()), None)
        if other is not None and _meant_for(path) is None:
            yield f"its table {path.stem} is not used: {other} has one of that name"


def _published() -> set[str]:
    return {path.stem for path in tables.bundled_folder().glob("*.toml")}


def over(names: Iterable[str]) -> list[Overlaid]:
    """Return what shops' tables make of some published tables, of those that they touch."""
    touched = _all(tuple(tables.folders()[1:]))
    return [touched[name] for name in sorted(set(names) & set(touched))]


@functools.lru_cache(maxsize=8)
def _all(folders: tuple[Path, ...]) -> Mapping[str, Overlaid]:
    found: dict[str, Overlaid] = {}
    for path in (p for folder in folders for p in sorted(folder.glob("*.toml"))):
        try:
            target = _meant_for(path)
        except TableError:  # said already of the plugin or the file that brought the folder
            continue
        if target in _published():
            before = found.get(target) or Overlaid(tables.read(tables.bundled_folder(), target))
            found[target] = _add(before, path.parent, path.stem)
    return found


def _meant_for(path: Path) -> str | None:
    """Return the published table that a table is meant for; raises TableError for a bad sidecar."""
    with contextlib.suppress(OSError):  # said below
        if "stricter_than" not in path.read_text(encoding="utf-8", errors="replace"):
            return None  # most tables stand alone, and are read when they are asked for
    meant = tables.read_sidecar(path.parent, path.stem).get("stricter_than")
    return None if meant is None else str(meant)


def _add(before: Overlaid, folder: Path, name: str) -> Overlaid:
    published = before.table
    try:
        shop = tables.read(folder, name)
        columns = _shared(published, shop)
    except TableError as error:
        said = error.said if isinstance(error, DamagedTable) else str(error)
        return before._replace(broken=(*before.broken, said))
    rows = {tuple(r.cells[k] for k in published.key): r for r in published.rows}
    used: list[Row] = []
    not_used: list[str] = []
    for own in shop.rows:
        key = tuple(own.cells[k] for k in published.key)
        old = rows.get(key)
        wrong = [*_conflicts(published, columns, old, own)]
        if wrong:
            not_used += [f"{name}, row {_key_text(published, own)}: {why}" for why in wrong]
        else:
            rows[key] = _merged(published, columns, old, own)
            used.append(rows[key])
    made = Table(
        **{f: getattr(published, f) for f in ("name", "title", "purpose", "not_for", "checked")},
        key=published.key,
        columns=published.columns,
        sources=published.sources,
        rows=tuple(rows.values()),
        folder=published.folder,
    )
    return Overlaid(
        made,
        (*before.by, name),
        (*before.rows, *used),
        (*before.not_used, *not_used),
        before.broken,
    )


def _shared(published: Table, shop: Table) -> list[Column]:
    """Return the published value columns that a shop's table gives; raises TableError."""
    theirs = {c.name: c for c in published.columns}
    for key in published.key:
        if key not in {c.name for c in shop.columns}:
            raise TableError(f"table {shop.name} lacks the key column {key} of {published.name}")
    for own in shop.columns:
        known = theirs.get(own.name)
        if known is None:
            would_do = did_you_mean(own.name, list(theirs))
            raise TableError(
                f"table {shop.name}: {published.name} has no column {own.name}; {would_do}"
            )
        if (own.type, own.unit) != (known.type, known.unit):
            raise TableError(
                f"table {shop.name}: column {own.name} is {known.type} {known.unit} in "
                f"{published.name}".rstrip()
            )
    return [theirs[c.name] for c in shop.columns if c.name not in published.key]


def _conflicts(published: Table, columns: list[Column], old: Row | None, own: Row) -> Iterator[str]:
    """Say why a row of a shop cannot be used."""
    if old is None:
        given = {c.name for c in columns if own.cells[c.name] is not None} | set(published.key)
        missing = [c.name for c in published.columns if c.required and c.name not in given]
        if missing:
            nearest = _key_text(published, _nearest(published, own))
            none = f"{published.name} has no such row, the nearest is {nearest}"
            yield f"{none}; a new row needs {', '.join(missing)}"
        return
    for column in columns:
        mine, theirs = own.cells[column.name], old.cells[column.name]
        if mine is None or theirs is None or mine == theirs:
            continue
        if not _stricter(column, mine, theirs):
            shown = f"{column.name} {own.text(column.name)}"
            than = f"{old.text(column.name)} of {published.name}"
            milder = "is milder than" if column.stricter else "is in conflict with"
            yield f"{shown} {milder} {than}"
        elif twins := [*_twins(published, column, old, own)]:
            yield f"{column.name} needs {', '.join(twins)} beside it, the same in another unit"


def _key_text(published: Table, row: Row) -> str:
    return " ".join(row.text(k) for k in published.key if row.text(k))


def _nearest(published: Table, own: Row) -> Row:
    """Return the published row whose key is most like that of a shop's row."""
    from difflib import SequenceMatcher  # only where a row is not used

    def likeness(row: Row) -> tuple[int, float]:
        same = sum(row.cells[k] == own.cells[k] for k in published.key)
        texts = _key_text(published, row), _key_text(published, own)
        return same, SequenceMatcher(None, *texts).ratio()

    return max(published.rows, key=likeness)


def _stricter(column: Column, mine: Cell, theirs: Cell) -> bool:
    if not isinstance(mine, int | float) or not isinstance(theirs, int | float):
        return False
    return {"higher": mine > theirs, "lower": mine < theirs}.get(column.stricter, False)


def _twins(published: Table, column: Column, old: Row, own: Row) -> Iterator[str]:
    """Yield the columns that hold the same quantity in another unit, and that the row lacks."""
    quantity = column.name.rpartition("_")[0]
    for other in published.columns:
        same = other.name.rpartition("_")[0] == quantity and other.unit != column.unit
        amount = other.type in _TYPES_OF_AMOUNTS and old.cells[other.name] is not None
        if quantity and same and amount and own.cells.get(other.name) is None:
            yield other.name


def _merged(published: Table, columns: list[Column], old: Row | None, own: Row) -> Row:
    cells: dict[str, Cell] = dict.fromkeys((c.name for c in published.columns), None)
    printed = dict.fromkeys((c.name for c in published.columns), "")
    if old is not None:
        cells, printed = dict(old.cells), dict(old.printed)
    for name in (*published.key, *(c.name for c in columns)):
        if own.cells[name] is not None:
            cells[name], printed[name] = own.cells[name], own.printed[name]
    proxies = MappingProxyType(cells), MappingProxyType(printed)
    return Row(published.name, *proxies, own.source, own.note)

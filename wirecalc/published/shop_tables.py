"""A shop's table that adds to a published one or is stricter: its sidecar says

    stricter_than = "pull-crimp"

It has the key columns of the published table and those columns in which it differs. A row is used
if each value is as strict as the published one or stricter, by the `stricter` of the column. A
milder one is not used, and shown; any other that cannot be used leaves in doubt what reads the
table, since a limit of the shop is lost with it. The published rows stay as they are:
`overlaid` makes a second table, by which a calculation is run a second time.
"""

from __future__ import annotations

import functools
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from ..base.errors import DamagedTable, TableError, did_you_mean, nearest
from . import tables
from .tables import Cell, Column, Row, Table
from .twin_columns import twins

_NEARLY = 0.8  # how like that of a published table a name is that was meant for it


class Overlaid(NamedTuple):
    """A published table with a shop's rows in it, where they come from, and what was not used.

    `rows` are the shop's rows in use, `milder` those that the published ones outdo. `lost` says
    which rows, or whole tables, cannot be used though they may be stricter.
    """

    table: Table
    by: tuple[str, ...] = ()
    rows: tuple[Row, ...] = ()
    milder: tuple[str, ...] = ()
    lost: tuple[str, ...] = ()


def published() -> set[str]:
    """Return the names of the published tables."""
    return {path.stem for path in tables.bundled_folder().glob("*.toml")}


def table_named(name: str) -> str:
    """Return the published table of nearly a name; empty where there is none."""
    return nearest(name, sorted(published()), _NEARLY)


def with_columns(columns: Set[str]) -> list[str]:
    """Return the published tables whose key, and a value of which, is among some columns."""
    found = []
    for name in sorted(published()) if columns else ():
        about = tables.read_sidecar(tables.bundled_folder(), name)
        key = set(about["key"])
        if key <= columns and (about["columns"].keys() - key) & columns:
            found.append(name)
    return found


def over(names: Iterable[str]) -> list[Overlaid]:
    """Return what shops' tables make of some published tables, of those that they touch."""
    touched = _all(tuple(tables.folders()[1:]))
    return [touched[name] for name in sorted(set(names) & set(touched))]


def lost(folders: Sequence[Path]) -> list[str]:
    """Say what of the stricter tables in some folders was meant and is not used."""
    return [why for shop in _all(tuple(folders)).values() for why in shop.lost]


def not_used(folder: Path) -> list[str]:
    """Say what of the stricter tables in a folder is not used, milder rows too."""
    return [why for shop in _all((folder,)).values() for why in (*shop.lost, *shop.milder)]


def forget() -> None:
    """Read the tables of a shop anew: they may have been changed."""
    _all.cache_clear()
    tables.forget()


@functools.lru_cache(maxsize=8)
def _all(folders: tuple[Path, ...]) -> Mapping[str, Overlaid]:
    found: dict[str, Overlaid] = {}
    names = published()
    for path in (p for folder in folders for p in tables.sidecars(folder)):
        try:
            target = meant_for(path)
        except TableError:  # said of the folder
            continue
        if target in names:
            before = found.get(target) or Overlaid(tables.read(tables.bundled_folder(), target))
            found[target] = _add(before, path.parent, path.stem)
    return found


def meant_for(path: Path) -> str | None:
    """Return the published table that a sidecar names; raises TableError for a bad sidecar."""
    meant: str | None = tables.read_sidecar(path.parent, path.stem).get("stricter_than")
    return meant


def _add(before: Overlaid, folder: Path, name: str) -> Overlaid:
    published = before.table
    try:
        shop = tables.read(folder, name)
        columns = _shared(published, shop)
    except TableError as error:
        said = str(error).replace(f"table {name}", f"{folder.name}/{name}.toml", 1)
        said = error.said if isinstance(error, DamagedTable) else said
        return before._replace(lost=(*before.lost, said))
    rows = {tuple(r.cells[k] for k in published.key): r for r in published.rows}
    used: list[Row] = []
    milder: list[str] = []
    lost: list[str] = []
    for own in shop.rows:
        key = tuple(own.cells[k] for k in published.key)
        old = rows.get(key)
        wrong = [*_conflicts(published, columns, old, own)]
        if wrong:
            said = f"{folder.name}/{name}.csv, row {_key_text(published, own)}: {'; '.join(wrong)}"
            (milder if _outdone(columns, old, own) else lost).append(said)
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
        (*before.milder, *milder),
        (*before.lost, *lost),
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


def _outdone(columns: list[Column], old: Row | None, own: Row) -> bool:
    """Whether the published row is as strict in every column: then nothing is lost."""
    if old is None:
        return False
    pairs = ((c, own.cells[c.name], old.cells[c.name]) for c in columns)
    return all(mine in (None, theirs) or _stricter(c, theirs, mine) for c, mine, theirs in pairs)


def _twins(published: Table, column: Column, old: Row, own: Row) -> Iterator[str]:
    """Yield the columns that hold the same quantity in another unit, and that the row lacks."""
    for other in published.columns:
        lacks = old.cells[other.name] is not None and own.cells.get(other.name) is None
        if lacks and twins(column, other):
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

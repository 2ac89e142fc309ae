"""A shop's folder of tables: whether it can be used, and what in it is not used.

A shop that writes a stricter table wants it to hold. So whatever in such a folder looks as if it
were meant, and is not used, is said: it leaves the calculations that it could concern in doubt.
"""

from __future__ import annotations

import contextlib
import re
from collections.abc import Collection, Iterable, Iterator, Sequence
from pathlib import Path

from ..base.errors import DamagedTable, TableError, did_you_mean, nearest
from ..base.text_files import read_head, turned
from ..published import shop_tables, tables
from ..published.table_files import TAIL
from ..published.tables import LeftOver, Unused
from .requirements import TABLE_OF_KINDS, lists_kinds

ENDINGS = (".toml", ".csv", ".py")
_LIKE = 0.75  # how like one of these an ending is that was meant for it
_DEMO = "-demo"  # ends the name of a published table in whose place a shop has its own


def refuse_folder(folder: Path) -> None:
    """Raise TableError where a folder is not there, or would replace a published table."""
    try:
        there = folder.is_dir()
    except OSError:  # a name that no folder can have
        there = False
    if not there:
        hint = turned(folder)
        name = repr(folder.name[:100]) if hint else folder.name[:100]
        raise TableError(f"{name} is no folder of tables" + (f"; {hint}" if hint else ""))
    taken = sorted(shop_tables.published() & {path.stem for path in tables.sidecars(folder)})
    if taken:
        raise TableError(f"{taken[0]} is a bundled table; add one under another name")


def check_tables(folder: Path, others: Collection[Path] = ()) -> list[str]:
    """Say what is wrong with a folder of tables, as docs/tables.md describes them.

    Every table in it is read, and rows of a stricter one that are not used are named. `others` are
    files that have a use of their own.
    """
    names = {path.stem for path in tables.sidecars(folder) if not _among(path, others)}
    wrong = [] if names else [f"{folder} holds no table: a table is NAME.csv and NAME.toml"]
    alone = [p for p in sorted(folder.glob("*.csv")) if p.name[0] != "." and p.stem not in names]
    wrong += [f"{folder.name}/{p.name}: has no {p.stem}.toml beside it" for p in alone]
    for name in sorted(names):
        if (tables.bundled_folder() / f"{name}.toml").is_file():
            wrong.append(f"table {name}: a bundled table has this name; take another")
        try:
            tables.read(folder, name)
        except DamagedTable as error:
            wrong.append(error.said)
        except TableError as error:
            wrong += str(error).splitlines()
    return wrong + [why for why in shop_tables.not_used(folder) if why not in wrong]


def hidden(folder: Path, before: Iterable[Path]) -> Iterator[str]:
    """Say which tables of a folder are never read, because one before has a table of the name.

    Stricter ones are read wherever they stand.
    """
    for path in tables.sidecars(folder):
        other = next((f for f in before if (f / path.name).is_file()), None)
        with contextlib.suppress(TableError):  # said of the folder
            if other is not None and shop_tables.meant_for(path) is None:
                yield f"its table {path.stem} is not used: {other} has one of that name"


def damaged(folder: Path) -> list[Unused]:
    """Return the sidecars of a folder by which nobody knows what a table is for."""
    shop_tables.forget()  # they may have been changed
    found = ((path, _about_sidecar(path)) for path in tables.sidecars(folder))
    return [_unused(path, why) for path, why in found if why]


def not_used(folder: Path, others: Collection[Path]) -> LeftOver:
    """Return what was meant in a folder of tables that a shop names and is not used, and the rest.

    `others` are files and folders that have a use of their own, such as the rules file.
    """
    shop_tables.forget()
    meant: list[Unused] = []
    only_named: list[str] = []
    for path in sorted(folder.iterdir()):
        if _among(path, others):
            continue
        why = _about(path)
        if why:
            meant.append(_unused(path, why))
        elif path.suffix not in ENDINGS[:2] and path.name[0] != ".":
            only_named.append(path.name)
    if not meant and all(_among(path, others) for path in tables.sidecars(folder)):
        meant.append(Unused(folder.name, "holds no table; one is NAME.csv and NAME.toml"))
    return LeftOver(meant, other_files(folder, only_named))


def other_files(folder: Path, names: Sequence[str]) -> list[tuple[str, str]]:
    """Name the files of a folder that nobody could have meant."""
    return [(f"other files of {folder.name}", f"not read: {', '.join(names)}")] if names else []


def _among(path: Path, others: Collection[Path]) -> bool:
    return path.exists() and any(path.samefile(other) for other in others if other.exists())


def _about(path: Path) -> str:
    """Say why a file or a folder that was meant as a table is none; nothing where it is one."""
    if path.name.startswith("._"):  # no sidecar, by tables.sidecars
        return ""
    if path.is_dir():
        return _about_folder(path)
    if path.suffix == ".toml":
        return _about_sidecar(path) or _about_use(path)
    if path.suffix == ".csv":
        return "" if path.with_suffix(".toml").is_file() else f"has no {path.stem}.toml beside it"
    if meant := meant_name(path):
        return f"was it to be {meant}? It is not read as it is called"
    if path.suffix == ".py":
        return "a plugin is not looked for here; it stands in the plugin_folder of the settings"
    named = {shop_tables.table_named(path.stem)} - {""}
    return f"is no table: one is {path.stem}.csv and {path.stem}.toml" if named else ""


def meant_name(path: Path) -> str:
    """Return the name that a file should have had, by its ending, where none of that name is."""
    for ending in [s.casefold() for s in path.suffixes if path.name[0] != "."]:
        near = nearest(ending, ENDINGS, _LIKE)
        name = f"{path.name.partition('.')[0]}{near}"
        if near and name != path.name:
            return "" if path.with_name(name).exists() else name
    return ""


def _about_folder(path: Path) -> str:
    inside = (p for p in path.rglob("*") if p.suffix.casefold() in ENDINGS[:2])
    first = next(inside, None)
    return f"holds {first.name}; nothing is looked for in folders of a folder" if first else ""


def _about_sidecar(path: Path) -> str:
    """Say what is wrong with a sidecar; a table of a known name is refused where it is read."""
    try:
        meant = shop_tables.meant_for(path)
    except TableError as error:
        return "" if _read_by_name(path.stem) else str(error).replace(f"table {path.stem}: ", "")
    published = shop_tables.published()
    if meant is None:
        return ""
    if meant not in published:
        return f"there is no published table {meant!r}; {did_you_mean(meant, sorted(published))}"
    theirs = tables.read_sidecar(tables.bundled_folder(), meant)
    ours = tables.read_sidecar(path.parent, path.stem)["columns"].keys()
    fits = set(theirs["key"]) <= ours <= theirs["columns"].keys()
    return "" if fits else f"its columns are not those of {meant}; is it meant for that?"


def _about_use(path: Path) -> str:
    """Say that nobody reads a table, where it does not say itself for whom it is."""
    if _read_by_name(path.stem):
        return ""
    sidecar = tables.read_sidecar(path.parent, path.stem)
    if sidecar.get("stricter_than") or sidecar.get("stands_alone"):
        return ""
    return 'does not say for whom it is; write stricter_than = "...", or stands_alone = true'


def _read_by_name(name: str) -> bool:
    """Whether a table of a shop is read because of its name alone."""
    return lists_kinds(name) or f"{name}{_DEMO}" in shop_tables.published()


def _unused(path: Path, why: str) -> Unused:
    """Return what is not used with the published tables that it may be meant for."""
    said = "; ".join(" ".join(line.split()) for line in why.splitlines())
    return Unused(f"{path.parent.name}/{path.name}", said, _for_whom(path))


def _for_whom(path: Path) -> tuple[str, ...]:
    """Return the published tables that have the columns of a file, or else its name."""
    columns: set[str] = set()
    with contextlib.suppress(OSError, ValueError):
        head = read_head(path.with_name(f"{path.name.partition('.')[0]}.csv"))
        columns = {c.strip('" ') for c in re.split("[,;\t]", head)} - set(TAIL)
    demo = f"{path.stem}{_DEMO}"
    named = demo if demo in shop_tables.published() else shop_tables.table_named(path.stem)
    found = shop_tables.with_columns(columns) or ([named] if named else [])
    return () if TABLE_OF_KINDS in found else tuple(found)

"""`wirecalc job --export FOLDER`: a shop's records as flat tables, for spreadsheets and for SQL."""

from __future__ import annotations

import contextlib
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import IO, Any, NamedTuple

from ..base.errors import BadInput, BadText, Problem
from ..base.files import whole, whole_by_name
from ..jobs import record
from ..jobs.record_database import Database, known_in
from ..jobs.record_rows import id_of, rows_of
from ..jobs.record_tables import TABLES
from ..output import record_export
from ..output.layout import wrap
from .job_record import shown
from .options import Options
from .result import CANNOT_TELL, PASS, Result

DATABASE = "records.sqlite"
_OF_TABLES = "-tables"  # what the folder of the tables is called behind that of the records
Writer = Callable[[IO[bytes], Any, Any], None]


class Work(NamedTuple):
    """What an export has to do: the folders of new records, and what is known of the others."""

    new: dict[str, str]  # what a record is known by -> name of its folder
    gone: set[str]
    before: set[str] | None  # None where all is made anew
    not_read: list[tuple[str, str]]


def export(options: Options) -> Result:
    """Write the records of a folder as tables; what was written before only gets what is new."""
    wrong = [Problem(repr(w), "--export takes no sheet") for w in options.words]
    wrong += options.form_refused("--export", ("text",))
    if not options.own["export"]:
        wrong.append(Problem("--export", "is empty", "name a folder of records"))
    if wrong:
        raise BadInput(wrong)
    folder = Path(options.own["export"])
    names = list(record.entries(folder))
    to = options.output or folder.resolve().with_name(f"{folder.resolve().name}{_OF_TABLES}")
    _refuse_inside(to, folder)
    with_names = "with-names" in options.own
    work = _planned(names, known_in(to / DATABASE, with_names=with_names))
    written = _all(to)
    if work.new or work.gone or work.before is None or not all(p.is_file() for p in written):
        record.make_folder(to)
        added = _write(folder, to, work, with_names=with_names)
    else:
        added = 0
    text = "\n".join(_said(to, work, added, written))
    return Result(text, CANNOT_TELL if work.not_read else PASS)


def _refuse_inside(to: Path, folder: Path) -> None:
    """Raise BadInput where the tables would stand among the records."""
    if to.resolve() == folder.resolve() or folder.resolve() in to.resolve().parents:
        wrong = "is the folder of the records, or in it"
        raise BadInput([Problem("--output", wrong, "name another folder")])


def _planned(names: list[str], before: set[str] | None) -> Work:
    """Return what there is to do: a record is known by its content, so none is read twice."""
    there: dict[str, str] = {}
    not_read: list[tuple[str, str]] = []
    for name in sorted(names):
        known_by = id_of(name)
        if not known_by:
            not_read.append((name, "is not named as a record is"))
        elif known_by in there:
            not_read.append((name, f"is {there[known_by]} once more"))
        else:
            there[known_by] = name
    known = before or set()
    new = {known_by: name for known_by, name in there.items() if known_by not in known}
    return Work(new, known - set(there), before, not_read)


def _all(to: Path) -> list[Path]:
    """Return the files of an export."""
    endings = ["csv", *(["parquet"] if record_export.has_parquet() else [])]
    return [to / DATABASE, *(to / f"{t.name}.{ending}" for t in TABLES for ending in endings)]


def _write(folder: Path, to: Path, work: Work, *, with_names: bool) -> int:
    """Write all files, the database last: an export that was broken off is done again."""
    with whole_by_name(to / DATABASE) as copy:
        if work.before is not None:
            shutil.copyfile(to / DATABASE, copy)
        with contextlib.closing(Database(copy, with_names=with_names)) as database:
            added = _add(database, folder, work, with_names=with_names)
            for path in _all(to)[1:]:
                _write_table(path, database, with_names=with_names)
    return added


def _add(database: Database, folder: Path, work: Work, *, with_names: bool) -> int:
    """Take away what is gone, and add what is new; return how many records that are."""
    database.remove(work.gone)
    added = 0
    for name in shown(work.new.values(), len(work.new)):
        try:
            job = record.read(folder / name)
            database.add(rows_of(name, job, with_names=with_names))
            added += 1
        except BadText as error:
            work.not_read.append((name, str(error)))
    database.finish()
    return added


def _write_table(path: Path, database: Database, *, with_names: bool) -> None:
    table = next(t for t in TABLES if t.name == path.stem)
    parquet = path.suffix == ".parquet"
    write: Writer = record_export.write_parquet if parquet else record_export.write_csv
    with whole(path) as file:
        write(file, table.shown(with_names=with_names), database.rows(table))


def _said(to: Path, work: Work, added: int, written: list[Path]) -> Iterator[str]:
    counts = [f"{added} new", *([f"{len(work.gone)} taken away"] if work.gone else [])]
    if work.before is not None:
        counts.append(f"{len(work.before - work.gone)} as before")
    yield ", ".join(counts)
    yield from wrap(f"in {to}")
    for path in written:
        yield f"  {path.name}"
    for name, why in sorted(work.not_read):
        yield from wrap(f"not read: {name}: {why}")

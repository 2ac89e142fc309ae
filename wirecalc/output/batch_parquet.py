"""A batch as a Parquet file. It grows as part files in a folder of its own: NAME.part.

Each part file is whole or not there, so a run that was broken off goes on behind the last of them.
At the end they become one file, in their order.
"""

from __future__ import annotations

import contextlib
import itertools
import os
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from ..base import left_over
from ..base.errors import BadInput, Problem
from ..base.extras import install
from ..base.files import is_special, mode_of, unwritten
from ..base.unfinished import part_of
from ..jobs.batch_row import RowResult
from .frames import NUMBERS, cells_of, plain
from .rows import ROW

if TYPE_CHECKING:
    import pyarrow as pa

PART_ROWS = 16_384
_LOCK, _BEGUN = "in-use", "begun.parquet"
_OTHERWISE = "the rows, the options and the tables have to be those of then; or take it away"
_ELSEWHERE = "choose another place with --output"


class Parts(NamedTuple):
    """The columns, and what a run that was broken off had written: whole parts.

    `row` is the last row of them, which is worked out again; `words` say what all came to.
    """

    columns: pa.Schema
    files: tuple[Path, ...] = ()
    row: int = 0
    last: tuple[object, ...] = ()
    words: frozenset[str] = frozenset()


def schema(label: bool, kept: Sequence[str]) -> pa.Schema:
    """Return the columns: row, label and what is kept, and behind them those of a line a row.

    Raises BadInput where pyarrow is not installed.
    """
    try:
        import pyarrow as pa
    except ImportError:
        wrong = "parquet needs pyarrow"
        raise BadInput([Problem("--format", wrong, install("analysis"))]) from None
    texts = (*(["label"] if label else []), *kept)
    if odd := [head for head in kept if head in ("row", "label", *ROW)]:
        wrong = "would stand there twice, kept and as what a row comes to"
        raise BadInput([Problem(f"column {head}", wrong, "call it something else") for head in odd])
    kinds = [(head, pa.float64() if head in NUMBERS else pa.string()) for head in ROW]
    return pa.schema([("row", pa.int64()), *((head, pa.string()) for head in texts), *kinds])


def read_parts(path: Path, columns: pa.Schema) -> Parts:
    """Read what a run had written; raises BadInput where that is not what such a run writes."""
    import pyarrow as pa
    import pyarrow.parquet as parquet

    folder = part_of(path)
    files: list[Path] = []
    words: set[str] = set()
    last: tuple[object, ...] = ()
    try:
        while (file := folder / f"{len(files) + 1:06}.parquet").is_file():
            table = parquet.read_table(file, partitioning=None)
            if not table.schema.equals(columns) or not 0 < table.num_rows <= PART_ROWS:
                raise _not_ours(folder, f"has other columns or rows in {file.name}")
            if table.num_rows < PART_ROWS:
                break  # the end of the file: its rows are few
            files.append(file)
            words |= set(table.column("verdict").unique().to_pylist())
            last = tuple(table.slice(PART_ROWS - 1).to_pylist()[0].values())
    except pa.ArrowException:
        raise _not_ours(folder, f"has something else in {file.name}") from None
    except OSError as error:
        raise unwritten(path, error, _ELSEWHERE) from None
    return Parts(columns, tuple(files), int(str(last[0])) if last else 0, last, frozenset(words))


def written(results: Iterable[RowResult], path: Path, before: Parts) -> Iterator[str]:
    """Write rows behind those of the parts, and give the file its name; yield no line.

    The first of `results` is the last row of the parts, if there are any. Raises BadInput where it
    came to something else, or the file cannot be written.
    """
    import pyarrow as pa

    columns, labels = before.columns, before.columns.names[1] == "label"
    rows = (_cells(row, labels) for row in results)
    folder = part_of(path)
    if before.files and next(rows, None) != before.last:
        raise _not_ours(folder, f"came to something else in row {before.row}")
    try:
        with _held(folder):
            files = [*before.files]
            while some := list(itertools.islice(rows, PART_ROWS)):
                arrays = map(pa.array, zip(*some, strict=True), columns.types)
                table = pa.Table.from_arrays(list(arrays), schema=columns)
                files.append(_write(folder, len(files) + 1, table))
            _merge(folder, files, path, columns)
    except OSError as error:
        raise unwritten(path, error, _ELSEWHERE) from None
    yield from ()


@contextlib.contextmanager
def _held(folder: Path) -> Iterator[None]:
    """Hold the folder of the parts against other runs; take it away where nothing is in it."""
    folder.mkdir(exist_ok=True)
    with (folder / _LOCK).open("wb") as file:
        if not left_over.lock(file.fileno()):
            raise BadInput([Problem(str(folder), "is written by another run", _ELSEWHERE)])
        try:
            yield
        finally:
            for name in (_BEGUN, _LOCK):
                (folder / name).unlink(missing_ok=True)
            with contextlib.suppress(OSError):  # parts are in it
                folder.rmdir()


def _write(folder: Path, number: int, table: pa.Table) -> Path:
    import pyarrow.parquet as parquet

    begun, file = folder / _BEGUN, folder / f"{number:06}.parquet"
    parquet.write_table(table, begun)
    _flush(begun)
    return begun.replace(file)


def _merge(folder: Path, files: Sequence[Path], path: Path, columns: pa.Schema) -> None:
    """Make one file of the parts, a row group each, and take them away."""
    import pyarrow.parquet as parquet

    begun = folder / _BEGUN
    with parquet.ParquetWriter(begun, columns) as writer:
        for file in files:
            writer.write_table(parquet.read_table(file, partitioning=None))
    os.chmod(begun, mode_of(path))  # noqa: PTH101
    _flush(begun)
    begun.replace(folder.with_name(folder.name.removesuffix(".part")))
    for file in files:
        file.unlink()


def _flush(path: Path) -> None:
    with path.open("rb") as file:
        os.fsync(file.fileno())


def _cells(row: RowResult, labels: bool) -> tuple[object, ...]:
    texts = [*([row.label] if labels else []), *row.kept.values()]
    return (row.row, *map(_text, texts), *map(_text, map(plain, cells_of(row.found))))


def _text(cell: str | float | None) -> str | float | None:
    """Return a text without signs that UTF-8 has no bytes for; a number as it is."""
    return cell.encode(errors="replace").decode() if isinstance(cell, str) else cell


def refuse_special(path: Path) -> None:
    """Raise BadInput where a pipe or a device is to be written: it keeps no parts."""
    if is_special(path):
        raise BadInput([Problem(str(path), "is no file", "write parquet to a file")])


def _not_ours(folder: Path, wrong: str) -> BadInput:
    return BadInput([Problem(str(folder), wrong, _OTHERWISE)])

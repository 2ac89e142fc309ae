"""A data frame with what each of its rows comes to beside it, by way of Arrow."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from ..base.errors import BadInput, Problem
from ..jobs.batch import Worker
from ..jobs.batch_columns import plan
from ..jobs.batch_row import Found
from ..jobs.row_cells import cell_text
from ..plugging.host import Catalogue
from .rows import DEFECT, ROW, Cells, empty_row, row_cells

if TYPE_CHECKING:
    import pyarrow as pa

REFUSED = "refused"
NUMBERS = ("actual", "limit", "margin")


def evaluated(
    loaded: Catalogue, frame: object, name: str, shared: Mapping[str, object], keep: Sequence[str]
) -> pa.Table:
    """Return a frame as an Arrow table, with the columns of ROW behind its own.

    Raises BadInput with everything that is wrong with its columns.
    """
    try:
        import pyarrow as pa
    except ImportError:
        would_do = "pip install 'wirecalc[analysis]'"
        raise BadInput([Problem("a data frame", "needs pyarrow", would_do)]) from None
    table = _as_table(pa, frame)
    if odd := [head for head in table.column_names if head in ROW]:
        wrong = "would stand there twice, in the frame and in what it comes to"
        raise BadInput([Problem(f"column {head}", wrong, "call it something else") for head in odd])
    planned = plan(loaded.find(name).calculation, table.column_names, shared, keep=keep)
    worker = Worker(loaded.outcomes(name, origin="sheet"), planned, row_cells)
    columns = [_texts(table.column(column.at)) for column in planned.columns]
    known: dict[tuple[str, ...], int] = {}
    rows = range(table.num_rows)
    cells = zip(*columns, strict=True) if columns else (() for _ in rows)
    if planned.reads_files:  # each time: it may have changed
        found, at = [worker.work(one) for one in cells], list(rows)
    else:
        at = [known.setdefault(one, len(known)) for one in cells]
        found = [worker.work(one) for one in known]
    results = [cells_of(one) for one in found]
    for number, head in enumerate(ROW):
        kind = pa.float64() if head in NUMBERS else pa.string()
        each = pa.array([plain(result[number]) for result in results], kind)
        table = table.append_column(head, each.take(pa.array(at, pa.int64())))
    return table


def _as_table(pa: Any, frame: object) -> pa.Table:
    if isinstance(frame, pa.Table):
        return frame
    try:
        if type(frame).__module__.partition(".")[0] == "pandas":  # its index is no column
            return pa.Table.from_pandas(frame, preserve_index=False)
        return pa.table(frame)
    except (TypeError, ValueError, AttributeError, pa.ArrowException):
        wrong = f"{type(frame).__name__} is no data frame that Arrow can read"
        would_do = "give one of pandas, polars or Arrow"
        raise BadInput([Problem("", wrong, would_do)]) from None


def _texts(column: Any) -> list[str]:
    """Return a column as texts; what stands there often is written once."""
    coded = column.dictionary_encode().combine_chunks()
    if not hasattr(coded, "dictionary"):  # the parts of a column have a dictionary each
        return list(map(cell_text, column.to_pylist()))
    texts = [*map(cell_text, coded.dictionary.to_pylist()), ""]
    return [texts[-1 if code is None else code] for code in coded.indices.to_pylist()]


def cells_of(found: Found) -> Cells:
    """Return the cells of ROW; those of a row that came to nothing say why."""
    if found.score is not None:
        made: Cells = found.made
        return made
    if found.defect:
        return empty_row(DEFECT, found.defect)
    return empty_row(REFUSED, ". ".join(map(str, found.problems)))


def plain(cell: str | float | None) -> str | float | None:
    """Return a cell as Arrow takes it: a word as a plain text."""
    return str(cell) if isinstance(cell, str) else cell

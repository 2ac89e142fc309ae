"""A recording as a Parquet file: named columns of numbers, stamps as numbers or points of time.

Needs pyarrow (the extra `analysis`).
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ..base.errors import BadText
from ..base.extras import install
from .files import refuse_pipe
from .rows import SHOWN, Layout, named

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

_BEGINS = b"PAR1"
_ROWS = 1 << 16  # read at once
_DAY = 86400


def is_parquet(path: Path) -> bool:
    """Whether a file begins as a Parquet file does."""
    refuse_pipe(path)
    try:
        with path.open("rb") as file:
            return file.read(len(_BEGINS)) == _BEGINS
    except (OSError, ValueError):
        return False  # whoever reads it as text says what is wrong


def head_of(path: Path) -> tuple[list[str], list[bool]]:
    """Return the names of the columns, and which of them are points of time."""
    import pyarrow as pa

    schema = _opened(path).schema_arrow
    return list(schema.names), [pa.types.is_timestamp(kind) for kind in schema.types]


def parquet_rows(path: Path, layout: Layout) -> Iterator[tuple[Numbers, int]]:
    """Yield arrays of stamps and columns, each with the number of its first row, from 1.

    Raises BadText that names the rows with no number or one outside the span of its column.
    """
    import numpy as np

    file = _opened(path)
    names = [file.schema_arrow.names[i] for i in (layout.stamps[0], *layout.columns)]
    row, midnight = 1, None
    for batch in file.iter_batches(batch_size=_ROWS, columns=list(dict.fromkeys(names))):
        columns = np.empty((len(names), batch.num_rows))
        for i, name in enumerate(names):
            column = batch.column(name)
            if column.null_count:
                empty = np.flatnonzero(column.is_null())[:SHOWN] + row
                raise BadText(f"row {named(empty.tolist())}: column {name} is empty", "mend it")
            columns[i] = _seconds(column) if layout.clock and i == 0 else _plain(column, name)
        if layout.clock:
            midnight = columns[0, 0] // _DAY * _DAY if midnight is None else midnight
            columns[0] -= midnight
        columns *= np.array(layout.factors)[:, None]
        _check(columns, layout, row)
        if batch.num_rows:
            yield columns, row
        row += batch.num_rows


def _opened(path: Path) -> Any:
    try:
        import pyarrow as pa
        from pyarrow import parquet
    except ImportError:
        do = install("analysis")
        raise BadText("reading a Parquet file needs pyarrow", do) from None
    try:
        return parquet.ParquetFile(path)
    except (pa.ArrowInvalid, OSError) as error:
        why = str(error).partition("\n")[0]
        raise BadText(f"{str(path)!r} is a damaged Parquet file ({why})", "save it again") from None


def _seconds(column: Any) -> Any:
    import numpy as np
    import pyarrow as pa

    return np.asarray(column.cast(pa.timestamp("ns")).cast(pa.int64())) / 1e9


def _plain(column: Any, name: str) -> Any:
    import numpy as np
    import pyarrow as pa

    kind = column.type
    if not (pa.types.is_floating(kind) or pa.types.is_integer(kind) or pa.types.is_decimal(kind)):
        raise BadText(f"column {name}: {kind} is no number", "save it as numbers")
    return np.asarray(column.cast(pa.float64(), safe=False))


def _check(columns: Numbers, layout: Layout, row: int) -> None:
    import numpy as np

    heads = ("of time", *layout.heads)
    for i, head in enumerate(heads):
        kind = layout.kinds[i - 1] if i else None
        bad = ~np.isfinite(columns[i])
        if bad.any():
            where = named((np.flatnonzero(bad)[:SHOWN] + row).tolist())
            raise BadText(f"row {where}: column {head}: no number", "mend the row")
        ends = (columns[i].min(initial=0.0), columns[i].max(initial=0.0))
        if kind is not None and not all(kind.inside(end) for end in ends):
            outside = [
                n for n, v in enumerate(columns[i].tolist(), start=row) if not kind.inside(v)
            ]
            raise BadText(
                f"row {named(outside[:SHOWN])}: column {head}: outside {kind.span}",
                "check the unit",
            )

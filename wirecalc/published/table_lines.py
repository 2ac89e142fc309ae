"""The lines of a table's CSV, as an editor or a spreadsheet writes them, and its numbers."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator, Sequence
from pathlib import Path

from ..base.errors import BadText, TableError, did_you_mean
from ..base.text_files import read_text
from ..typed.quantities import comma

_MARKS = ",;\t"  # what may part cells
_FORMS = {  # of a cell, by the type of its column
    "number": re.compile(r"-?(?:\d+(?:\.\d+)?|\.\d+)(?:e-\d{1,2})?", re.ASCII),
    "integer": re.compile(r"-?\d{1,15}", re.ASCII),
}


def read_lines(path: Path, name: str, header: Sequence[str]) -> Iterator[tuple[int, list[str]]]:
    """Yield the rows of a table's CSV with their numbers; the first must be its header.

    Cells are parted by comma, semicolon or tab, the spaces around one are none of it, and
    rows at the end in which nothing stands are none. Raises TableError for a file that cannot be
    read.
    """
    try:
        text = read_text(path)
        mark = max(_MARKS, key=text.partition("\n")[0].count)
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True))
    except (OSError, BadText, csv.Error) as error:
        why = getattr(error, "strerror", None) or error
        raise TableError(f"table {name}: its CSV cannot be read ({why})") from error
    first = [cell.strip() for cell in rows[0]] if rows else []
    if first != list(header):
        raise TableError(f"table {name}: the header {_differs(first, header)}")
    while len(rows) > 1 and not any(map(str.strip, rows[-1])):
        rows.pop()
    for number, row in enumerate(rows[1:], start=2):
        cells = [cell.strip() for cell in row]
        if len(cells) != len(header) or not any(cells):
            wrong = f"{len(cells)} cells in place of {len(header)}"
            wrong = wrong if any(cells) else "nothing stands in it; take the row out"
            raise TableError(f"table {name}, line {number}: {wrong}")
        yield number, cells


def _differs(found: Sequence[str], header: Sequence[str]) -> str:
    """Say in what a header differs from what it is to be."""
    if len(found) < 2:
        return f"is not {','.join(header)}; cells are parted by comma, semicolon or tab"
    for at, cell in enumerate(found):
        if cell not in header:
            missing = [h for h in header if h not in found]
            guess = did_you_mean(cell, missing)
            would_do = f"; {guess}" if guess else ""
            return f"has {cell[:40]!r}, and its sidecar no such column{would_do}"
        if cell in found[:at]:
            return f"has {cell} twice"
    lacking = [h for h in header if h not in found]
    if lacking:
        return f"lacks {', '.join(lacking)}; it is {','.join(header)}"
    cell, wanted = next((f, h) for f, h in zip(found, header, strict=True) if f != h)
    return f"has {cell} where {wanted} belongs; its order is {','.join(header)}"


def read_number(text: str, of_type: str) -> float | int:
    """Read a number or an integer as strictly as a reading is; raises BadText."""
    if not _FORMS[of_type].fullmatch(text):
        wrong = comma(text) if of_type == "number" else None
        raise BadText(f"is no {of_type}", wrong.would_do if wrong else "")
    return float(text) if of_type == "number" else int(text)

"""Going on with a batch that was broken off: which rows were written, and what they came to.

The last row may be there in part, so it is worked out again, and has to come to the same lines:
else another file, other options or other tables stand behind what was written.
"""

from __future__ import annotations

import csv
import itertools
import json
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from ..base.errors import BadInput, Problem
from .batch_rows import RawRow

_OTHERWISE = "the rows, the options and the tables have to be those of then; or take it away"


class Written(NamedTuple):
    """What a run that was broken off had written.

    `keep` bytes stay as they are, `row` is the row that comes next and was the last, with `lines`
    as far as they were written whole, and `words` say what the rows before it came to.
    """

    keep: int = 0
    row: int = 0
    lines: tuple[str, ...] = ()
    words: frozenset[str] = frozenset()


def read_written(part: Path, form: str, head: str) -> Written:
    """Read what was written as `csv` (below a head) or `json`; nothing where no file is.

    Raises BadInput where it is not what such a run writes.
    """
    columns = next(csv.reader([head])) if head else []
    at_verdict = columns.index("verdict") if columns else 0
    keep = offset = row = 0
    lines: list[str] = []
    words: set[str] = set()
    pending: set[str] = set()
    for number, line in enumerate(_whole_lines(part)):
        text = line.decode().rstrip("\n")
        if head and number == 0:
            if text != head:
                raise _not_ours(part, "begins with other columns")
            keep = offset = len(line)
            continue
        try:
            of_row, word = _of_json(text) if not head else _of_csv(text, at_verdict)
        except (ValueError, IndexError, KeyError, TypeError, csv.Error):
            raise _not_ours(part, f"has a line {number + 1} that is none of a batch") from None
        if of_row != row:
            row, keep, lines = of_row, offset, []
            words |= pending
            pending = set()
        offset += len(line)
        lines.append(text)
        pending.add(word)
    return Written(keep, row, tuple(lines), frozenset(words))


def from_row(rows: Iterable[RawRow], number: int) -> Iterator[RawRow]:
    """Yield the rows from that of a number on."""
    return itertools.dropwhile(lambda row: row.number < number, rows)


def going_on(lines: Iterator[str], written: Written, part: Path) -> Iterator[str]:
    """Return the lines that are to be written, once the first of them are those of then."""
    again = tuple(itertools.islice(lines, len(written.lines)))
    if again != written.lines:
        raise _not_ours(part, f"came to something else in row {written.row}")
    return itertools.chain(again, lines)


def _not_ours(part: Path, wrong: str) -> BadInput:
    return BadInput([Problem(str(part), wrong, _OTHERWISE)])


def _whole_lines(part: Path) -> Iterator[bytes]:
    try:
        with part.open("rb") as file:
            yield from (line for line in file if line.endswith(b"\n"))
    except FileNotFoundError:
        return
    except OSError as error:
        why = error.strerror or error
        raise BadInput([Problem(str(part), f"cannot be read ({why})", "take it away")]) from None


def _of_csv(line: str, at_verdict: int) -> tuple[int, str]:
    (cells,) = csv.reader([line], strict=True)
    return int(cells[0]), cells[at_verdict]


def _of_json(line: str) -> tuple[int, str]:
    told = json.loads(line)
    if told["schema"] == "wirecalc.refused/1":
        return int(told["row"]), "defect" if told["defect"] else "refused"
    return int(told["row"]), told["verdict"] or ""

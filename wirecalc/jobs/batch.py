"""A batch: each row of a file is one run of a calculation, and comes to a finding of its own.

Columns are inputs by name, as in a job sheet; a header may say the unit (`force [lbf]`). Rows are
taken one at a time and none is kept, so that a file may be of any length.
"""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from ..base.errors import BadInput, BadText, PluginDefect, Problem
from ..engine.one_input import UNKNOWN
from ..said.findings import Finding
from .batch_columns import Plan
from .batch_row import RowFinding
from .batch_rows import RawRow

MOST_ROWS = 4_000  # distinct rows whose findings are remembered
Runner = Callable[[Mapping[str, object]], Finding]


def findings(run: Runner, planned: Plan, rows: Iterable[RawRow]) -> Iterator[RowFinding]:
    """Yield what each row comes to; a bad row carries its reason, and the rest goes on.

    Rows that give the same texts come to the same finding, which is worked out once: readings
    have few digits, so in a long file most rows were there before. A file is read each time.
    """
    worked_out: Callable[[tuple[str, ...]], Finding] = functools.partial(_run, run, planned)
    if not planned.reads_files:
        worked_out = functools.lru_cache(MOST_ROWS)(worked_out)
    for row in rows:
        found = RowFinding(row.number, *_about(planned, row))
        if row.wrong:
            yield found._replace(problems=(Problem("", row.wrong),))
            continue
        try:
            finding = worked_out(tuple(row.cells[c.at] for c in planned.columns))
            yield found._replace(finding=finding)
        except BadInput as error:
            yield found._replace(problems=error.problems)
        except PluginDefect as error:
            yield found._replace(defect=str(error))


def _about(planned: Plan, row: RawRow) -> tuple[str, Mapping[str, str]]:
    """Return the label and the kept cells of a row, empty where a ragged row has none."""
    cells, there = row.cells, len(row.cells)
    at = planned.label
    label = cells[at] if at is not None and at < there else ""
    return label, {head: cells[i] if i < there else "" for head, i in planned.kept.items()}


def _run(run: Runner, planned: Plan, cells: Sequence[str]) -> Finding:
    """Run on the cells of the columns that are inputs; raises BadInput with all that is wrong."""
    given = dict(planned.fixed)
    problems: list[Problem] = []
    for (name, _, of_cell), cell in zip(planned.columns, cells, strict=True):
        if cell:  # an empty one is an input that was left out
            try:
                given[name] = of_cell(cell)
            except BadText as error:
                problems.append(error.about(name))
                given[name] = UNKNOWN  # so that the others are read, and all is said at once
    try:
        finding = run(given)
    except BadInput as error:
        problems += error.problems
    if problems:
        raise BadInput(problems)
    return finding

"""A batch: each row of a file is one run of a calculation, and comes to lines of its own.

Columns are inputs by name, as in a job sheet; a header may say the unit (`force [lbf]`). Rows are
taken one at a time and none is kept, so that a file may be of any length.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from operator import itemgetter
from typing import Any, Generic, TypeVar

from ..base.errors import BadInput, BadText, PluginDefect, Problem
from ..engine.one_input import UNKNOWN
from .batch_columns import Plan
from .batch_row import NOTHING, CameTo, Common, Found, RowResult, score_of
from .batch_rows import RawRow

MOST_ROWS = 65_536  # distinct rows of which it is remembered what they came to
MOST_COMMON = 1_000  # of each kind of what is said of many rows alike
C = TypeVar("C", bound=CameTo)
Cells = tuple[str, ...]


class Worker(Generic[C]):
    """Works out what the cells of the columns that are inputs come to.

    `make` makes of a run what is wanted of its row. Where it is to `gather`, what is said of many
    rows alike is handed over with the first of them.
    """

    def __init__(
        self,
        run: Callable[[Mapping[str, object]], C],
        planned: Plan,
        make: Callable[[C], Any],
        *,
        gather: bool = False,
        most: int = MOST_ROWS,
    ) -> None:
        self.planned, self.most = planned, most
        self._run, self._make = run, make
        self._gathered: set[Any] | None = set() if gather else None

    def work(self, cells: Cells) -> Found:
        """Return what a row with these cells comes to; a bad one carries its reason."""
        try:
            came_to = self._came_to(cells)
        except BadInput as error:
            return Found(problems=error.problems)
        except PluginDefect as error:
            return Found(defect=str(error))
        common = NOTHING if self._gathered is None else self._new_in(came_to, self._gathered)
        return Found(self._make(came_to), score_of(came_to), common=common)

    def _came_to(self, cells: Cells) -> C:
        """Run on the cells; raises BadInput with all that is wrong."""
        given = dict(self.planned.fixed)
        problems: list[Problem] = []
        for (name, _, of_cell), cell in zip(self.planned.columns, cells, strict=True):
            if cell:  # an empty one is an input that was left out
                try:
                    given[name] = of_cell(cell)
                except BadText as error:
                    problems.append(error.about(name))
                    given[name] = UNKNOWN  # so that the others are read, and all is said at once
        try:
            came_to = self._run(given)
        except BadInput as error:
            problems += error.problems
        if problems:
            raise BadInput(problems)
        return came_to

    def _new_in(self, came_to: C, seen: set[Any]) -> Common:
        decided = came_to.decided_by
        limit = decided.criterion.source if decided else None
        said: tuple[Sequence[Any], ...] = (
            came_to.cautions,
            came_to.not_checked,
            list(came_to.sources.values()),
            [] if limit is None else [("limit", limit)],
        )
        new = [[one for one in of_kind if one not in seen] for of_kind in said]
        if not any(new) or len(seen) >= len(said) * MOST_COMMON:
            return NOTHING
        seen.update(one for of_kind in new for one in of_kind)
        cautions, not_checked, sources, limits = new
        return Common(
            tuple(cautions),
            tuple(not_checked),
            tuple(source.cite() for source in sources),
            tuple(source.cite() for _, source in limits),
        )


def picker(planned: Plan) -> Callable[[Sequence[str]], Cells]:
    """Return what takes the cells of the columns that are inputs out of a row."""
    at = [column.at for column in planned.columns]
    if len(at) > 1:
        return itemgetter(*at)
    return lambda cells: tuple(cells[i] for i in at)


def results(worker: Worker[C], rows: Iterable[RawRow]) -> Iterator[RowResult]:
    """Yield what each row comes to; a bad row carries its reason, and the rest goes on.

    What rows that give the same texts come to is worked out once: readings have few digits, so in
    a long file most rows were there before. A file is read each time.
    """
    planned, pick = worker.planned, picker(worker.planned)
    known: dict[Cells, Found] = {}
    for row in rows:
        if row.wrong:
            yield result(planned, row, Found(problems=(Problem("", row.wrong),)))
            continue
        cells = pick(row.cells)
        found = known.get(cells)
        if found is None:
            found = worker.work(cells)
            remember(known, cells, found, worker)
        yield result(planned, row, found)


def remember(known: dict[Cells, Found], cells: Cells, found: Found, worker: Worker[C]) -> None:
    """Keep what some cells came to, in bounded memory; not where a file was read for it."""
    if worker.planned.reads_files:
        return
    if len(known) >= worker.most:
        known.clear()
    known[cells] = found if found.common is NOTHING else found._replace(common=NOTHING)


def result(planned: Plan, row: RawRow, found: Found) -> RowResult:
    """Return a row with what it came to, its label and the kept cells, empty where it has none."""
    if planned.label is None and not planned.kept:
        return RowResult(row.number, "", {}, found)
    cells, there = row.cells, len(row.cells)
    at = planned.label
    label = cells[at] if at is not None and at < there else ""
    kept = {head: cells[i] if i < there else "" for head, i in planned.kept.items()}
    return RowResult(row.number, label, kept, found)

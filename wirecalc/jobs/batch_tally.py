"""What the rows of a batch came to together: counts, what decided, the closest, the refused."""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

from ..said.verdicts import Verdict
from .batch_row import Level, RowResult, Score

MOST_CLOSE = 10


class Close(NamedTuple):
    """A row whose deciding value lies near its limit."""

    row: int
    label: str
    criterion: str
    verdict: Verdict
    level: Level


class Refused(NamedTuple):
    """How many rows were refused for one input, and the first of them with what was said."""

    rows: int
    first: int
    said: str


@dataclass
class Tally:
    """What the rows came to so far. It takes no more memory with more rows."""

    rows: int = 0
    verdicts: dict[Verdict | None, int] = field(default_factory=dict)
    refused: int = 0
    defects: int = 0
    decided: dict[str, dict[Verdict, int]] = field(default_factory=dict)
    refusals: dict[str, Refused] = field(default_factory=dict)  # by input
    _close: list[tuple[float, int, Close]] = field(default_factory=list)  # the farthest first

    @property
    def closest(self) -> list[Close]:
        """The rows closest to their limits, on either side, the closest first."""
        return [close for _, _, close in sorted(self._close, reverse=True)]

    def watch(self, results: Iterable[RowResult]) -> Iterator[RowResult]:
        """Count rows as they go by."""
        for row in results:
            self.rows += 1
            found = row.found
            if found.score is not None:
                self._count(row, found.score)
            else:
                self._refuse(row)
            yield row

    def _refuse(self, row: RowResult) -> None:
        self.defects += bool(row.found.defect)
        self.refused += bool(row.found.problems)
        for name, said in {p.name: str(p) for p in reversed(row.found.problems)}.items():
            before = self.refusals.get(name, Refused(0, row.row, said))
            self.refusals[name] = before._replace(rows=before.rows + 1)

    def _count(self, row: RowResult, score: Score) -> None:
        verdict, criterion, level = score
        self.verdicts[verdict] = self.verdicts.get(verdict, 0) + 1
        if verdict is None:
            return
        by = self.decided.setdefault(criterion, {})
        by[verdict] = by.get(verdict, 0) + 1
        if level is None:
            return
        nearness = (-abs(level.share), -row.row)
        if len(self._close) < MOST_CLOSE:
            heapq.heappush(
                self._close, (*nearness, Close(row.row, row.label, criterion, verdict, level))
            )
        elif nearness > self._close[0][:2]:
            close = Close(row.row, row.label, criterion, verdict, level)
            heapq.heapreplace(self._close, (*nearness, close))

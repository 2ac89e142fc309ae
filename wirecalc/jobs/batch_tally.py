"""What the rows of a batch came to together: counts, what decided, the closest, the refused."""

from __future__ import annotations

import heapq
import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

from ..said.findings import Judged
from ..said.verdicts import Verdict
from .batch_row import RowFinding

MOST_CLOSE = 10


class Close(NamedTuple):
    """A row whose deciding value lies near its limit; `share` is its margin over the limit.

    It is 0 where the meter's band reaches across the limit.
    """

    row: int
    label: str
    judged: Judged
    share: float


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

    def watch(self, found: Iterable[RowFinding]) -> Iterator[RowFinding]:
        """Count rows as they go by."""
        for row in found:
            self.rows += 1
            if row.finding is not None:
                self._count(row)
            self.defects += bool(row.defect)
            self.refused += bool(row.problems)
            for name, said in {p.name: str(p) for p in reversed(row.problems)}.items():
                before = self.refusals.get(name, Refused(0, row.row, said))
                self.refusals[name] = before._replace(rows=before.rows + 1)
            yield row

    def _count(self, row: RowFinding) -> None:
        assert row.finding is not None
        verdict, decided = row.finding.verdict, row.finding.decided_by
        self.verdicts[verdict] = self.verdicts.get(verdict, 0) + 1
        if decided is None:
            return
        by = self.decided.setdefault(decided.criterion.name, {})
        by[decided.verdict] = by.get(decided.verdict, 0) + 1
        margin, limit = decided.criterion.margin, decided.criterion.limit
        if margin is None or not limit:
            return
        low, high = decided.low, decided.high
        across = low is not None and high is not None and low <= limit <= high
        share = 0.0 if across else margin / abs(limit)
        if math.isfinite(share):
            close = Close(row.row, row.label, decided, share)
            keep = heapq.heappushpop if len(self._close) >= MOST_CLOSE else heapq.heappush
            keep(self._close, (-abs(share), -row.row, close))

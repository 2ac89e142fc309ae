"""What one row of a batch came to, as far as its lines and the summary need it."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple, Protocol

from ..base.errors import Problem
from ..published.sources import Source
from ..said.findings import Judged
from ..said.items import Caution, NotChecked
from ..said.verdicts import Verdict


class CameTo(Protocol):
    """What a run came to: a finding, or an outcome whose words are put off."""

    @property
    def verdict(self) -> Verdict | None:
        """The worst of the criteria."""

    @property
    def decided_by(self) -> Judged | None:
        """The criterion that decided."""

    @property
    def cautions(self) -> Sequence[Caution]:
        """What to take care of."""

    @property
    def not_checked(self) -> Sequence[NotChecked]:
        """What was not checked, and why."""

    @property
    def sources(self) -> Mapping[str, Source]:
        """Where its numbers come from."""


class Level(NamedTuple):
    """A value that decided, and its limit; `share` is the margin over the limit.

    It is 0 where the meter's band reaches across the limit.
    """

    actual: float
    limit: float
    unit: str
    low: float | None
    high: float | None
    margin: float
    share: float


class Score(NamedTuple):
    """What is counted of a row: its verdict, and the criterion that decided it."""

    verdict: Verdict | None = None
    criterion: str = ""
    level: Level | None = None


class Common(NamedTuple):
    """What is said of many rows alike; `limits` cites the sources of what decided."""

    cautions: tuple[Caution, ...] = ()
    not_checked: tuple[NotChecked, ...] = ()
    sources: tuple[str, ...] = ()
    limits: tuple[str, ...] = ()


NOTHING = Common()


class Found(NamedTuple):
    """What the texts of a row come to: what was `made` of it, or why it came to nothing.

    `common` has what no row before it said.
    """

    made: Any = None
    score: Score | None = None
    problems: Sequence[Problem] = ()
    defect: str = ""
    common: Common = NOTHING


class RowResult(NamedTuple):
    """A row of a file and what it came to."""

    row: int
    label: str
    kept: Mapping[str, str]
    found: Found


def score_of(came_to: CameTo) -> Score:
    """Return what is counted of a row."""
    decided = came_to.decided_by
    if decided is None:
        return Score(came_to.verdict)
    return Score(decided.verdict, decided.criterion.name, _level(decided))


def _level(decided: Judged) -> Level | None:
    criterion, low, high = decided.criterion, decided.low, decided.high
    actual, limit = criterion.actual, criterion.limit
    if actual is None or not limit:
        return None
    margin = actual - limit if criterion.sense == "at least" else limit - actual
    across = low is not None and high is not None and low <= limit <= high
    share = 0.0 if across else margin / abs(limit)
    if not math.isfinite(share):
        return None
    return Level(actual, limit, criterion.unit, low, high, margin, share)

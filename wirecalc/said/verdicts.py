"""Verdicts, their order, and comparing a value with its level."""

from __future__ import annotations

import operator
from collections.abc import Iterable
from enum import StrEnum

from ..base.rounding import SAME


class Verdict(StrEnum):
    """The four verdicts, best to worst."""

    PASS = "pass"
    MARGINAL = "marginal"
    CANNOT_TELL = "cannot tell"
    FAIL = "fail"

    rank: int
    """How bad it is: 0 for a pass, 3 for a fail."""


for _rank, _verdict in enumerate(Verdict):
    _verdict.rank = _rank


def at_or_below(value: float, level: float) -> bool:
    """Whether a value keeps to a level from above, as every criterion judges it.

    Two numbers within 1e-9 of each other, relatively, are one number typed in two ways. A
    calculation that branches at a limit asks here, so that it never contradicts its criterion.
    """
    return value <= level + SAME * abs(level)


def at_or_above(value: float, level: float) -> bool:
    """Whether a value keeps to a level from below, as every criterion judges it."""
    return value >= level - SAME * abs(level)


def worst(verdicts: Iterable[Verdict]) -> Verdict | None:
    """Return the worst of some verdicts, None where there are none."""
    return max(verdicts, key=_rank_of, default=None)


_rank_of = operator.attrgetter("rank")

"""Pulls of one and the same wire, over again: how much is there from one pull to the next.

One-way analysis of variance with random groups, its components by equating mean squares, for
unequal counts too. Distributions come from scipy (the extra `analysis`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

SURE = 0.95  # of the interval of a standard deviation


class Repeated(NamedTuple):
    """Standard deviations in lbf, within and between occasions, and how sure they are.

    `within` has `low` and `high` of its 95 % interval; `between` is 0 where the occasions scatter
    no more than their pulls explain, and None, as `chance`, where there is one occasion only.
    `freedom` are the degrees of `one_pull`, the deviation of a pull on any occasion. `weight` is
    the size of an occasion that counts, and `squares` are the two mean squares in lbf^2.
    """

    mean: float
    within: float
    low: float
    high: float
    between: float | None
    chance: float | None
    one_pull: float
    freedom: float
    weight: float
    squares: tuple[float | None, float]

    @property
    def half(self) -> float:
        """Half the width in lbf within which 95 % of such pulls lie about their mean."""
        from scipy import special

        return self.one_pull * float(special.stdtrit(self.freedom, (1 + SURE) / 2))


def repeated(groups: Sequence[Sequence[float]]) -> Repeated | None:
    """Return what groups of pulls say of their scatter; None where no group has two."""
    from scipy import special

    sizes = [len(group) for group in groups]
    count = sum(sizes)
    left = count - len(groups)
    if left < 1:
        return None
    means = [math.fsum(group) / len(group) for group in groups]
    grand = math.fsum(math.fsum(group) for group in groups) / count
    inside = math.fsum((v - m) ** 2 for group, m in zip(groups, means, strict=True) for v in group)
    ms_within = inside / left
    low, high = (
        math.sqrt(inside / float(special.chdtri(left, share)))
        for share in ((1 - SURE) / 2, (1 + SURE) / 2)
    )
    within = math.sqrt(ms_within)
    if len(groups) < 2:
        squares = (None, ms_within)
        return Repeated(grand, within, low, high, None, None, within, left, count, squares)
    free = len(groups) - 1
    ms_between = math.fsum(n * (m - grand) ** 2 for n, m in zip(sizes, means, strict=True)) / free
    weight = (count - sum(n * n for n in sizes) / count) / free
    chance = 0.0 if ms_within == 0 else float(special.fdtrc(free, left, ms_between / ms_within))
    between = max(ms_between - ms_within, 0.0) / weight
    both = (ms_between / weight, (1 - 1 / weight) * ms_within)  # their sum: between and within
    freedom = sum(both) ** 2 / (both[0] ** 2 / free + both[1] ** 2 / left) if between else left
    one_pull = math.sqrt(between + ms_within)
    return Repeated(
        *(grand, within, low, high, math.sqrt(between), chance, one_pull, freedom, weight),
        (ms_between, ms_within),
    )

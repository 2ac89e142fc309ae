"""An additive layout of pulls: each level of a factor against the others, the rest accounted for.

Least squares over every level of every factor. A difference that the layout does not determine (a
learner who alone had a tool) is not estimable, and is never given. Numbers come from numpy and
scipy (the extra `analysis`).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

SIGNIFICANT = 0.05  # probability below which a difference is said to be there
SURE = 0.95  # of the interval beside a difference
_FAR = 8.0  # standard errors; beyond them the other side has no chance, and scipy no number
POWER = 0.80  # chance to show a difference that is there; common practice


class Difference(NamedTuple):
    """A level less the mean of others: lbf, its interval, its probability by chance alone.

    `error` is the standard error and `freedom` its degrees, spreads taken as alike.
    """

    by: float
    low: float
    high: float
    probability: float
    error: float
    freedom: int


class Layout:
    """Pulls by the levels of their factors, and what follows for differences between levels."""

    def __init__(self, values: Sequence[float], factors: Mapping[str, Sequence[str]]) -> None:
        import numpy as np

        self.y = np.asarray(values, dtype=float)
        self.columns = {
            (name, level): at
            for at, (name, level) in enumerate(
                (n, level) for n, cells in factors.items() for level in sorted(set(cells))
            )
        }
        design = np.zeros((len(values), len(self.columns)))
        for name, cells in factors.items():
            for row, level in enumerate(cells):
                design[row, self.columns[name, level]] = 1.0
        self.solve = np.linalg.pinv(design)
        self.known = self.solve @ design  # projection on what the layout determines
        fit = design @ (self.solve @ self.y)
        self.freedom = len(values) - round(float(np.trace(self.known)))
        self.residual = float(((self.y - fit) ** 2).sum())
        self.sets = _sets(list(zip(*factors.values(), strict=True)))
        self.unlike = unlike([[float(v) for v in self.y[m]] for m in self.sets])

    def together(self, factor: str, levels: Sequence[str]) -> list[list[str]]:
        """Return the levels in groups within which each difference is determined."""
        import numpy as np

        groups: list[list[str]] = []
        loose = self.known - np.eye(len(self.columns))
        for level in levels:
            mine = loose[self.columns[factor, level]]
            for group in groups:
                if np.allclose(mine, loose[self.columns[factor, group[0]]], atol=1e-8):
                    group.append(level)
                    break
            else:
                groups.append([level])
        return groups

    def difference(self, factor: str, level: str, others: Sequence[str]) -> Difference | None:
        """Return a level less the unweighted mean of others; None where nothing is left over.

        Its probability is by t with the spread of all sets taken as alike. Where they are not
        (Bartlett's test, 5 %) it is the greater of that and the one by Welch and Satterthwaite
        with each set's own spread.
        """
        import numpy as np
        from scipy import special

        if self.freedom < 1 or self.residual <= 0:
            return None
        contrast = np.zeros(len(self.columns))
        contrast[self.columns[factor, level]] = 1.0
        for other in others:
            contrast[self.columns[factor, other]] -= 1 / len(others)
        weights = contrast @ self.solve
        by = float(weights @ self.y)
        error = math.sqrt(self.residual / self.freedom * float(weights @ weights))
        spreads = [(error, float(self.freedom)), *(self._welch(weights) if self.unlike else ())]
        half = max(s * float(special.stdtrit(f, (1 + SURE) / 2)) for s, f in spreads)
        chance = max(2 * float(special.stdtr(f, -abs(by) / s)) for s, f in spreads)
        return Difference(by, by - half, by + half, chance, error, self.freedom)

    def _welch(self, weights: Any) -> list[tuple[float, float]]:
        """Return the standard error and degrees with each set's own spread; none where unknown."""
        parts = []
        for members in self.sets:
            share = float((weights[members] ** 2).sum())
            if share < 1e-12:
                continue
            if len(members) < 2:
                return []
            parts.append((share * float(self.y[members].var(ddof=1)), len(members) - 1))
        whole = sum(part for part, _ in parts)
        if whole <= 0:
            return []
        return [(math.sqrt(whole), whole**2 / sum(part**2 / free for part, free in parts))]

    def depends(self) -> float | None:
        """Return the probability that what one factor does hangs on the other by chance alone.

        F test of the sets' own means against the additive layout; None where nothing is left over.
        """
        from scipy import special

        inside = sum(
            float(((self.y[m] - self.y[m].mean()) ** 2).sum()) for m in self.sets if len(m)
        )
        left = len(self.y) - len(self.sets)
        freedom = self.freedom - left
        if freedom < 1 or left < 1 or inside <= 0:
            return None
        ratio = (self.residual - inside) / freedom / (inside / left)
        return float(special.fdtrc(freedom, left, max(ratio, 0.0)))


def _sets(cells: Sequence[tuple[str, ...]]) -> list[list[int]]:
    found: dict[tuple[str, ...], list[int]] = {}
    for at, cell in enumerate(cells):
        found.setdefault(cell, []).append(at)
    return list(found.values())


def unlike(sets: Sequence[Sequence[float]]) -> bool:
    """Whether the spreads of sets differ by Bartlett's test (5 %); a set of one pull says nothing.

    Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.7.
    """
    import numpy as np
    from scipy import special

    free = np.array([len(values) - 1 for values in sets if len(values) > 1], dtype=float)
    spread = np.array([np.var(values, ddof=1) for values in sets if len(values) > 1])
    if len(spread) < 2 or not spread.any():
        return False
    if not spread.all():
        return True
    whole = free.sum()
    shared = float((free * spread).sum() / whole)
    ratio = whole * math.log(shared) - float((free * np.log(spread)).sum())
    ratio /= 1 + (float((1 / free).sum()) - 1 / whole) / (3 * (len(free) - 1))
    return float(special.chdtrc(len(free) - 1, ratio)) < SIGNIFICANT


def apart(values: Sequence[float], sets: Sequence[Sequence[int]]) -> list[int]:
    """Return the positions of values that stand apart from their own set's mean.

    One after another the value with the greatest deleted residual: t against the scatter of all
    sets without it, 5 % over the number of values (Bonferroni).
    """
    import numpy as np
    from scipy import special

    y = np.asarray(values, dtype=float)
    found: list[int] = []
    while True:
        kept = [[i for i in members if i not in found] for members in sets]
        kept = [members for members in kept if len(members) > 1]
        rows = [i for members in kept for i in members]
        free = len(rows) - len(kept) - 1
        if free < 1:
            return found
        off = {i: (y[i] - y[m].mean()) / math.sqrt(1 - 1 / len(m)) for m in kept for i in m}
        squares = sum(float(((y[m] - y[m].mean()) ** 2).sum()) for m in kept)
        worst = max(rows, key=lambda i: abs(off[i]))
        rest = max(squares - off[worst] ** 2, 0.0) / free
        t = math.inf if rest <= 0 else abs(off[worst]) / math.sqrt(rest)
        if off[worst] == 0 or 2 * float(special.stdtr(free, -t)) * len(rows) >= SIGNIFICANT:
            return found
        found.append(worst)


def power(away: float, freedom: float, chance: float) -> float:
    """Return how often a difference of so many standard errors is shown by a two-sided t test."""
    from scipy import special

    most = float(special.stdtrit(freedom, 1 - chance / 2))
    shown = 1 - float(special.nctdtr(freedom, away, most))
    if away > _FAR:
        return shown
    return shown + float(special.nctdtr(freedom, away, -most))


def errors_shown(freedom: float, chance: float) -> float:
    """Return the difference, in standard errors, that is shown with the power asked for."""
    low, high = 0.0, 100.0
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if power(middle, freedom, chance) < POWER else (low, middle)
    return high


def pulls_needed(away: float, freedom: int, rows: int, chance: float, most: int) -> int | None:
    """Return how many pulls in all, shared as these are, show a difference with the power.

    `away` is that difference in the standard errors of the `rows` pulls that there are, taken for
    the true one. None where it takes more than `most` pulls in all.
    """

    def enough(count: int) -> bool:
        return power(away * math.sqrt(count / rows), freedom + count - rows, chance) >= POWER

    if not enough(most):
        return None
    low, high = rows - 1, most  # as if one fewer had not been enough
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return high

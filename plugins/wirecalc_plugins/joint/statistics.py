"""Statistics of small samples: scatter, tolerance bound, outliers, and which factor differs.

Distributions come from scipy (the extra `analysis`); what needs it gives None without.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any, NamedTuple

SIGNIFICANT = 0.05  # probability below which a difference is said to be there


class Summary(NamedTuple):
    """Size, lowest, mean and standard deviation (n - 1) of a sample; 0 for a single value."""

    size: int
    lowest: float
    mean: float
    deviation: float


class Effect(NamedTuple):
    """An F test: the factor, its probability by chance alone, and the degrees of freedom."""

    factor: str
    probability: float
    freedom: int
    residual_freedom: int


def missing_library() -> bool:
    """Whether scipy is not installed."""
    return _special() is None


def summary(values: Sequence[float]) -> Summary:
    """Return count, lowest, mean and standard deviation.

    >>> summary([24.1, 22.6, 25.0, 19.2, 23.4])[:2]
    (5, 19.2)
    """
    count = len(values)
    mean = math.fsum(values) / count
    if count < 2:
        return Summary(count, min(values), mean, 0.0)
    squares = math.fsum((v - mean) ** 2 for v in values)
    return Summary(count, min(values), mean, math.sqrt(squares / (count - 1)))


def tolerance_factor(count: int, population: float, confidence: float) -> float | None:
    """Return k so that mean - k s bounds a share of a normal population with a confidence.

    One-sided: k is the quantile of the noncentral t distribution with count - 1 degrees of
    freedom and noncentrality z(population) sqrt(count), over sqrt(count). None without scipy or
    for fewer than two values.
    """
    special = _special()
    if special is None or count < 2:
        return None
    away = float(special.ndtri(population)) * math.sqrt(count)
    return float(special.nctdtrit(count - 1, away, confidence)) / math.sqrt(count)


def tolerance_bound(values: Sequence[float], population: float, confidence: float) -> float | None:
    """Return mean - k s, the lower tolerance bound of a normal sample; None without scipy."""
    factor = tolerance_factor(len(values), population, confidence)
    if factor is None:
        return None
    found = summary(values)
    return found.mean - factor * found.deviation


def outliers(values: Sequence[float]) -> list[int]:
    """Return the position of the value that stands apart by Grubbs' test (ASTM E178, 5 %).

    Two-sided, one value at most; empty without scipy, for fewer than three values or no scatter.
    """
    special, found = _special(), summary(values)
    if special is None or found.size < 3 or found.deviation == 0:
        return []
    n = found.size
    farthest = max(range(n), key=lambda i: abs(values[i] - found.mean))
    t = float(special.stdtrit(n - 2, 1 - SIGNIFICANT / (2 * n)))
    limit = (n - 1) / math.sqrt(n) * math.sqrt(t * t / (n - 2 + t * t))
    return [farthest] if abs(values[farthest] - found.mean) / found.deviation > limit else []


def effects(values: Sequence[float], factors: dict[str, Sequence[str]]) -> list[Effect] | None:
    """Test each factor with the others accounted for, in an additive layout.

    The rise of the residual sum of squares when a factor is dropped is compared with what is left
    over (F test, type II). None where the data do not allow it: a factor with one level, factors
    that cannot be told apart (each learner has a tool of his own), nothing left over, or no scipy.
    """
    special = _special()
    if special is None:
        return None
    import numpy as np

    y = np.asarray(values, dtype=float)
    blocks = {name: _dummies(levels) for name, levels in factors.items()}
    whole, rank = _residual(y, list(blocks.values()))
    wanted = 1 + sum(block.shape[1] for block in blocks.values())
    left = len(y) - rank
    if rank < wanted or left < 1 or any(block.shape[1] == 0 for block in blocks.values()):
        return None
    found = []
    for name, block in blocks.items():
        others = [b for n, b in blocks.items() if n != name]
        without, _ = _residual(y, others)
        freedom = block.shape[1]
        ratio = math.inf if whole == 0 else (without - whole) / freedom / (whole / left)
        found.append(Effect(name, float(special.fdtrc(freedom, left, ratio)), freedom, left))
    return found


def _dummies(levels: Sequence[str]) -> Any:
    """Return a column for every level but the first."""
    import numpy as np

    names = sorted(set(levels))
    return np.array([[float(level == name) for name in names[1:]] for level in levels]).reshape(
        len(levels), len(names) - 1
    )


def _residual(y: Any, blocks: Sequence[Any]) -> tuple[float, int]:
    """Return residual sum of squares and rank of a least-squares fit with a common mean."""
    import numpy as np

    design = np.hstack([np.ones((len(y), 1)), *blocks])
    fit, _, rank, _ = np.linalg.lstsq(design, y, rcond=None)
    return float(((y - design @ fit) ** 2).sum()), int(rank)


def _special() -> Any:
    try:
        from scipy import special
    except ImportError:
        return None
    return special

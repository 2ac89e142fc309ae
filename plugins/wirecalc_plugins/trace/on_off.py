"""On and off, parted by the two-level structure of a recording. Needs numpy."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

RISE = 2.0  # levels that differ less are one; practice
_FLOOR = 0.002  # share of the highest level below which all is one: nothing
_QUARTER, _RARE = 0.25, 0.05  # of the usual level, and of the time that it is on; practice
_BINS, _LEAST, _MOST = 50, -6, 7  # classes a decade of the levels, and their decades


class Switch(NamedTuple):
    """On from `up`, off from `down`; `low` and `high` are the usual levels of the two."""

    up: float
    down: float
    low: float
    high: float


ALWAYS = Switch(0.0, -1.0, 0.0, 0.0)  # one level: it never changes between on and off


class Histogram:
    """How often which level stands, in classes of equal ratio."""

    def __init__(self) -> None:
        import numpy as np

        self.counts = np.zeros((_MOST - _LEAST) * _BINS)

    def add(self, levels: Numbers) -> None:
        """Count levels."""
        import numpy as np

        exponents = np.log10(np.maximum(levels, 10.0**_LEAST))
        classes = np.minimum(((exponents - _LEAST) * _BINS).astype(int), len(self.counts) - 1)
        self.counts += np.bincount(classes, minlength=len(self.counts))

    def switch(self, *, log: bool) -> Switch:
        """Part on from off where the two classes of levels differ most (Otsu, of logarithms).

        Levels under 0.2 % of the highest count as nothing, and levels over the median of the rest
        as that median, so that a start of ten times the running current is no class of its own.
        In a log, a level that is rare and under a quarter of the usual (a lamp) is off too.
        """
        import numpy as np

        seen = np.flatnonzero(self.counts)
        if not seen.size:
            return ALWAYS
        centres = _LEAST + (seen + 0.5) / _BINS
        counts = self.counts[seen]
        floor = centres[-1] + math.log10(_FLOOR)
        some = centres > floor
        cap = _median(centres[some], counts[some])
        logs = np.clip(centres, floor, cap)
        below, above = np.cumsum(counts)[:-1], np.cumsum(counts[::-1])[::-1][1:]
        if not below.size:
            return ALWAYS
        lows = np.cumsum(counts * logs)[:-1] / below
        highs = np.cumsum((counts * logs)[::-1])[::-1][1:] / above
        best = int(np.argmax(below * above * (highs - lows) ** 2))
        low, high = 10 ** float(lows[best]), 10 ** float(highs[best])
        if high < RISE * low:
            return ALWAYS
        middle = math.sqrt(low * high)
        slack = min(1.2, (high / low) ** 0.2)
        up, down = middle * slack, middle / slack
        usual_low = _level(_median(centres[: best + 1], counts[: best + 1]))
        usual = _level(_median(centres[best + 1 :], counts[best + 1 :]))
        quarter = usual_low + _QUARTER * (usual - usual_low)
        if log and quarter > up:
            over = 10**centres >= middle
            rare = counts[over & (10**centres < quarter)].sum() <= _RARE * counts[over].sum()
            up, down = (quarter, quarter / slack) if rare else (up, down)
        return Switch(up, down, usual_low, usual)


def _median(values: Numbers, counts: Numbers) -> float:
    import numpy as np

    total = np.cumsum(counts)
    return float(values[np.searchsorted(total, total[-1] / 2)])


def _level(exponent: float) -> float:
    """Return the level of a class; the lowest class is nothing."""
    return 0.0 if exponent < _LEAST + 1 / _BINS else 10**exponent

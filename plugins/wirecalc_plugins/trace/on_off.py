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
_EMPTY, _FEWEST = 4.0, 2  # ratio without any level between off and on, readings of off; practice
_STANDBY = 0.1  # share of the higher level under which the lower one is a standby; practice
_BINS, _LEAST, _MOST = 50, -6, 7  # classes a decade of the levels, and their decades


class Switch(NamedTuple):
    """On from `up`, off from `down`; `low` and `high` are the usual levels of the two."""

    up: float
    down: float
    low: float
    high: float


ALWAYS = Switch(0.0, -1.0, 0.0, 0.0)  # one level: it never changes between on and off


class Histogram:
    """How often which level stands, in classes of equal ratio, and is passed upward."""

    def __init__(self) -> None:
        import numpy as np

        self.counts = np.zeros((_MOST - _LEAST) * _BINS)
        self.begun, self.ended = np.zeros((2, len(self.counts)))  # rises from and to each class
        self.last: int | None = None

    def add(self, levels: Numbers) -> None:
        """Count levels."""
        import numpy as np

        if not len(levels):
            return
        exponents = np.log10(np.maximum(levels, 10.0**_LEAST))
        size = len(self.counts)
        classes = np.minimum(((exponents - _LEAST) * _BINS).astype(int), size - 1)
        self.counts += np.bincount(classes, minlength=size)
        before = np.concatenate(([classes[0] if self.last is None else self.last], classes[:-1]))
        rises = classes > before
        self.begun += np.bincount(before[rises], minlength=size)
        self.ended += np.bincount(classes[rises], minlength=size)
        self.last = int(classes[-1])

    def switch(self, *, log: bool) -> Switch:
        """Part on from off where the two classes of levels differ most (Otsu, of logarithms).

        Levels under 0.2 % of the highest count as nothing, and levels over the median of the rest
        as that median, so that a start of ten times the running current is no class of its own.
        Off may be rare: a level far below both classes is off, and both are on, unless the lower
        of them is but a standby. In a log, a level that is rare and under a quarter of the usual (a
        lamp) is off too.
        """
        import numpy as np

        seen = np.flatnonzero(self.counts)
        if not seen.size:
            return ALWAYS
        centres = _LEAST + (seen + 0.5) / _BINS
        counts = self.counts[seen]
        floor = centres[-1] + math.log10(_FLOOR)
        logs = np.maximum(centres, floor)
        cap = _median(*(x[centres > floor] for x in (centres, counts)))
        best = _most_apart(np.minimum(logs, cap), counts)
        rare = _rarely_off(np.minimum(logs, cap), counts)
        if rare is not None and (best is None or rare < best):
            low, high = _means(logs, counts, rare if best is None else best)
            best = rare if best is None or low > high + math.log10(_STANDBY) else best
        if log:
            best = self._over_standby(seen, logs, best)
        if best is None:
            return ALWAYS
        cap = max(cap, _median(centres[best + 1 :], counts[best + 1 :]))
        return _switch(np.minimum(logs, cap), centres, counts, best, log=log)

    def _over_standby(self, seen: NDArray[np.int_], logs: Numbers, best: int | None) -> int | None:
        """Return the split above a standby that was passed more often than the one that is best."""
        import numpy as np

        counts = self.counts[seen]
        first = 0 if best is None else best + 1
        upper = _most_apart(logs[first:], counts[first:])
        if upper is None:
            return best
        low, high = _means(logs[first:], counts[first:], upper)
        upward = np.cumsum(self.begun - self.ended)[seen]
        often = upward[first + upper] > (1 if best is None else upward[best])
        common = counts[first + upper + 1 :].sum() > _RARE * counts.sum()
        return first + upper if low < high + math.log10(_STANDBY) and often and common else best


def _means(logs: Numbers, counts: Numbers, split: int) -> tuple[float, float]:
    """Return the mean of the classes up to a split, and of those above."""
    import numpy as np

    halves = slice(None, split + 1), slice(split + 1, None)
    low, high = (float(np.average(logs[half], weights=counts[half])) for half in halves)
    return low, high


def _most_apart(logs: Numbers, counts: Numbers) -> int | None:
    """Return the last class below the best split; None where the two differ by less than twice."""
    import numpy as np

    if len(logs) < 2:
        return None
    below, above = np.cumsum(counts)[:-1], np.cumsum(counts[::-1])[::-1][1:]
    lows = np.cumsum(counts * logs)[:-1] / below
    highs = np.cumsum((counts * logs)[::-1])[::-1][1:] / above
    best = int(np.argmax(below * above * (highs - lows) ** 2))
    return best if 10 ** float(highs[best]) >= RISE * 10 ** float(lows[best]) else None


def _switch(logs: Numbers, centres: Numbers, counts: Numbers, best: int, *, log: bool) -> Switch:
    """Return where to switch between the classes up to the best one and those above."""
    low, high = (10**mean for mean in _means(logs, counts, best))
    middle = math.sqrt(low * high)
    slack = min(1.2, (high / low) ** 0.2)
    up, down = middle * slack, middle / slack
    usual_low = _level(_median(centres[: best + 1], counts[: best + 1]))
    usual = _level(_median(centres[best + 1 :], counts[best + 1 :]))
    quarter = usual_low + _QUARTER * (usual - usual_low)
    if log and quarter > up:
        over = 10**centres >= middle
        lamp = counts[over & (10**centres < quarter)].sum() <= _RARE * counts[over].sum()
        up, down = (quarter, quarter / slack) if lamp else (up, down)
    return Switch(up, down, usual_low, usual)


def _rarely_off(logs: Numbers, counts: Numbers) -> int | None:
    """Return the last class below the widest empty span, if it is wide and more than a slip."""
    import numpy as np

    gaps = np.diff(logs)
    if not gaps.size:
        return None
    at = int(np.argmax(gaps))
    wide = gaps[at] >= math.log10(_EMPTY) and counts[: at + 1].sum() >= _FEWEST
    return at if wide else None


def _median(values: Numbers, counts: Numbers) -> float:
    import numpy as np

    total = np.cumsum(counts)
    return float(values[np.searchsorted(total, total[-1] / 2)])


def _level(exponent: float) -> float:
    """Return the level of a class; the lowest class is nothing."""
    return 0.0 if exponent < _LEAST + 1 / _BINS else 10**exponent

"""The time stamps of a waveform: the mean step, how they jitter, what is missing. Needs numpy.

A recorder samples evenly, and its stamps come late, come rounded or are lost. The step is the mean
over the stretches without a hole; stamps of a clock that is coarser than the samples are spread
evenly over them.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple
from weakref import WeakKeyDictionary

from wirecalc import RecordedColumns

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

_HOLE = 1.9  # steps that are no longer one; practice
_JITTERS = 0.02  # share of a step under which stamps are even
_KNOWN: WeakKeyDictionary[object, Clock] = WeakKeyDictionary()  # of the recordings in use
_FEWEST_TICKS = 20  # of a coarse clock, that say how fast it was sampled; practice


class Clock(NamedTuple):
    """How a waveform was sampled.

    `step` in s; `hole` in s, between two stamps, beyond which some are missing; `jitter` is the
    standard deviation of a stamp as a share of the step; `missing` readings in `holes` holes,
    a share `lost` of all;
    `coarse`: the clock ticks slower than the readings come.
    """

    step: float
    hole: float
    jitter: float
    holes: int
    missing: int
    coarse: bool
    ticks: int
    lost: float = 0.0

    @property
    def vague(self) -> bool:
        """Whether too few ticks of a coarse clock were seen to tell the rate."""
        return self.coarse and self.ticks < _FEWEST_TICKS

    def lacking(self, gaps: Numbers) -> NDArray[np.int_]:
        """Return how many readings are missing between two stamps that lie so far apart, in s."""
        import numpy as np

        known = self.hole / _HOLE if self.coarse else self.step
        return np.maximum(np.round((gaps - known) / self.step), 1).astype(int)

    def even(self, t: Numbers) -> Numbers:
        """Return the times of some rows without a hole, spread evenly if the clock is coarse."""
        import numpy as np

        return t[0] + np.arange(len(t)) * self.step if self.coarse else t


def clock_of(recording: RecordedColumns) -> Clock:
    """Return how a recording was sampled; its stamps are gone through once."""
    known = _KNOWN.get(recording.store)
    if known is None:
        known = _KNOWN[recording.store] = _counted(recording)
    return known


def _counted(recording: RecordedColumns) -> Clock:
    import numpy as np

    hole = _HOLE * recording.overview.step
    coarse = recording.overview.repeats > 0
    count, ticks, total, squares = 0, 0, 0.0, 0.0
    long: list[Numbers] = []
    last: float | None = None
    waiting, seen = 0, False  # readings since the last tick, and whether one came since a hole
    for block in recording.blocks():
        steps = np.diff(block.t) if last is None else np.diff(block.t, prepend=last)
        last = float(block.t[-1])
        long.append(steps[steps > hole])
        if not coarse:
            mine = steps[steps <= hole]
            count, total = count + len(mine), total + float(mine.sum())
            squares += float((mine * mine).sum())
            continue
        for part in np.split(steps, np.flatnonzero(steps > hole)):
            if part.size and part[0] > hole:
                waiting, seen, part = 0, False, part[1:]
            at = np.flatnonzero(part > 0)
            if not at.size:
                waiting += len(part)
                continue
            # from tick to tick: what comes before the first and after the last is a part of one
            first = 0 if seen else int(at[0]) + 1
            count += (waiting if seen else 0) + int(at[-1]) + 1 - first
            total += float(part[first : at[-1] + 1].sum())
            ticks += len(at) - (not seen)
            waiting, seen = len(part) - int(at[-1]) - 1, True
    step = total / count if count and total > 0 else recording.overview.step
    jitter = 0.0
    if count and not coarse:
        jitter = math.sqrt(max(squares / count - step**2, 0.0) / 2) / step
    gaps = np.concatenate([np.zeros(0), *long])
    jitter = jitter if jitter > _JITTERS else 0.0
    found = Clock(step, hole, jitter, len(gaps), 0, coarse, ticks)
    missing = int(found.lacking(gaps).sum())
    return found._replace(missing=missing, lost=missing / (missing + recording.overview.rows))


def filled(
    t: Numbers, values: tuple[Numbers, ...], clock: Clock
) -> tuple[Numbers, tuple[Numbers, ...], Numbers]:
    """Fill the short holes of some rows with straight lines.

    The third is, a row, how many readings in a row stand in its hole; 0 where it was recorded.
    """
    import numpy as np

    steps = np.diff(t)
    at = np.flatnonzero(steps > clock.hole)
    if not at.size:
        return t, values, np.zeros(len(t))
    lacking = clock.lacking(steps[at])
    places = np.arange(len(t))
    places[1:] += np.cumsum(np.bincount(at, lacking, minlength=len(t))[:-1].astype(int))
    whole = np.arange(places[-1] + 1)
    made = np.zeros(len(whole))
    for place, lacks in zip(places[at].tolist(), lacking.tolist(), strict=True):
        made[place + 1 : place + 1 + lacks] = lacks
    columns = tuple(np.interp(whole, places, v) for v in values)
    return np.interp(whole, places, t), columns, made

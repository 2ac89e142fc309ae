"""Levels of a recording: one-cycle rms of a waveform with the crest around it, or a log's readings.

Rms over exactly one cycle, which is seldom a whole number of samples: the squares are joined by
straight lines and integrated, and the integral a cycle ago is taken between two samples. Needs
numpy (the extra `analysis`).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from wirecalc import RecordedColumns

from .frames import SURGE_S, Waveform, frames
from .stamps import filled

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

BRIDGED = 0.13  # share of a cycle over which a straight line replaces what lacks; practice
_PER_CYCLE = 4  # levels a cycle that are kept


class LevelPoints(NamedTuple):
    """Levels (rms or power) with their times, and the crest around each.

    `highest` is the highest one-cycle rms of all samples; `samples` are those around the levels.
    """

    t: Numbers
    level: Numbers
    crest: Numbers | None
    volts: Numbers | None
    highest: float
    fresh: bool
    samples: Samples | None = None


class Samples(NamedTuple):
    """Samples of a waveform, offset taken off, with the integral of their squares by sample.

    `lost` counts those that fill a hole that is too long to be bridged.
    """

    t: Numbers
    x: Numbers
    total: Numbers
    lost: Numbers
    step: float

    def first_over(self, begin: float, end: float, level: float) -> float | None:
        """Return when the current first exceeds a level in a span of time."""
        import numpy as np

        low, high = np.searchsorted(self.t, (begin, end))
        over = np.flatnonzero(np.abs(self.x[low : high + 1]) > level)
        return float(self.t[low + over[0]]) if over.size else None

    def rms(self, begin: float, seconds: float) -> float | None:
        """Return the rms over a span; None where the samples do not reach that far, or lack."""
        if begin < self.t[0] or begin + seconds > self.t[-1] + self.step / 2:
            return None
        (first, since), (last, until) = self._until(begin), self._until(begin + seconds)
        if self.lost[min(int(last) + 1, len(self.lost) - 1)] > self.lost[int(first)]:
            return None
        return math.sqrt(max((until - since) / (last - first), 0.0))

    def _until(self, when: float) -> tuple[float, float]:
        """Return the place of a time among the samples, and the integral up to it."""
        import numpy as np

        i = min(max(int(np.searchsorted(self.t, when, side="right")) - 1, 0), len(self.t) - 2)
        part = min((when - float(self.t[i])) / float(self.t[i + 1] - self.t[i]), 1.0)
        one, two = float(self.x[i]), float(self.x[i + 1])
        within = one * one * part + (two * two - one * one) * part * part / 2
        return i + part, float(self.total[i] + within)


def cycles(recording: RecordedColumns, wave: Waveform) -> Iterator[LevelPoints]:
    """Go through the one-cycle rms of a waveform, four levels a cycle, centred in their window.

    Short holes are bridged by a straight line; what a longer one touches has no level.
    """
    import numpy as np

    envelope = _Envelope(wave)
    last: list[Numbers] = []
    volts = recording.place("voltage")
    taken = [0] if volts is None else [0, volts]
    for frame in frames(recording, wave.clock):
        if frame.fresh:
            yield from envelope.rest()
            envelope, last = _Envelope(wave), []
        rows = [frame.t, *(frame.values[i] for i in taken)]
        whole = [np.concatenate(pair) for pair in zip(last, rows, strict=True)] if last else rows
        t, values, made = filled(whole[0], tuple(whole[1:]), wave.clock)
        first = len(last and last[0])
        yield from envelope.add([column[first:] for column in (t, *values, made)])
        last = [column[-1:] for column in rows]
    yield from envelope.rest()


class _Envelope:
    """The samples of one stretch without a gap that are still needed, turned into levels.

    A level is worked out when the samples of the 100 ms after it have come, so that whoever gets
    it can ask for their rms.
    """

    def __init__(self, wave: Waveform) -> None:
        self.wave, self.step = wave, wave.clock.step
        self.behind = math.ceil(wave.per_cycle - 1e-9)
        self.hop = max(1, int(wave.per_cycle / _PER_CYCLE))
        self.wide = self.behind // self.hop + 2  # groups of samples that the crest is taken from
        self.ahead = math.ceil(SURGE_S / self.step) + self.behind + 2
        self.held: list[Numbers] = []
        self.base = self.done = 0  # samples dropped; of the held ones, those that are worked out
        self.fresh = True
        self.origin: float | None = None  # of the times, where the clock is coarse
        self.count = 0

    def add(self, new: list[Numbers]) -> Iterator[LevelPoints]:
        """Take samples (times, current, perhaps volts, the holes that they fill).

        Yields the levels for which enough samples have come.
        """
        import numpy as np

        if self.wave.clock.coarse:
            self.origin = float(new[0][0]) if self.origin is None else self.origin
            places = np.arange(self.count, self.count + len(new[0]), dtype=np.float64)
            new[0] = self.origin + places * self.step
            self.count += len(new[0])
        wide = (new[-1] > 0) & (new[-1] + 1 > BRIDGED * self.wave.per_cycle)
        new[-1] = wide.astype(np.float64)
        if self.held:
            new = [np.concatenate(pair) for pair in zip(self.held, new, strict=True)]
        self.held = new
        end = len(new[0]) - self.ahead
        if end > self.done:
            yield from self._work(end)
            drop = max(0, end - self.behind - (self.wide + 1) * self.hop)
            self.held = [column[drop:] for column in new]
            self.base, self.done = self.base + drop, end - drop

    def rest(self) -> Iterator[LevelPoints]:
        """Yield the levels of the last samples."""
        if self.held:
            yield from self._work(len(self.held[0]))

    def _work(self, end: int) -> Iterator[LevelPoints]:
        import numpy as np

        length = self.wave.per_cycle
        first = max(self.done, self.behind)
        if end <= first:
            return
        t, x = self.held[0], self.held[1] - self.wave.zero(self.held[0])
        total, square = _running(x)
        mean = _means(total, square, first, end, self.behind, length)
        marks = np.arange(-self.base % self.hop, end, self.hop)
        mine, lost = marks[marks >= first], np.cumsum(self.held[-1])
        if lost[-1]:
            since = np.maximum(np.arange(first, end) - self.behind - 1, 0)
            whole = lost[first:end] == lost[since]
            mine = mine[whole[mine - first]]
        if not mine.size:
            return
        volts = None
        if len(self.held) > 3:
            mean_volts = _means(*_running(self.held[2]), first, end, self.behind, length)
            volts = np.sqrt(mean_volts[mine - first])
        yield LevelPoints(
            t[mine] - length * self.step / 2,
            np.sqrt(mean[mine - first]),
            _crests(np.abs(x), marks, self.wide)[np.searchsorted(marks, mine)],
            volts,
            math.sqrt(float((mean[whole] if lost[-1] else mean).max())),
            self.fresh,
            Samples(t, x, total, lost, self.step),
        )
        self.fresh = False


def readings(recording: RecordedColumns) -> Iterator[LevelPoints]:
    """Go through a log of rms current or power; what is below zero counts as nothing."""
    import numpy as np

    places = recording.place("peak"), recording.place("voltage")
    for frame in frames(recording, None):
        level = np.maximum(frame.values[0], 0.0)
        peak, volts = (None if at is None else frame.values[at] for at in places)
        peak = None if peak is None else np.abs(peak)
        yield LevelPoints(frame.t, level, peak, volts, float(level.max()), frame.fresh)


def _running(x: Numbers) -> tuple[Numbers, Numbers]:
    """Return the integral of the squares up to each sample, and the squares."""
    import numpy as np

    square = x * x
    total = np.zeros(len(x))
    np.cumsum((square[1:] + square[:-1]) / 2, out=total[1:])
    return total, square


def _means(
    total: Numbers, square: Numbers, first: int, end: int, behind: int, length: float
) -> Numbers:
    """Return the mean square over the `length` samples before each sample from first to end."""
    import numpy as np

    begin, part = slice(first - behind, end - behind), behind - length
    following = square[first - behind + 1 : end - behind + 1]
    before = total[begin] + square[begin] * part + (following - square[begin]) * part**2 / 2
    return np.maximum((total[first:end] - before) / length, 0.0)


def _crests(size: Numbers, marks: NDArray[np.int_], wide: int) -> Numbers:
    """Return the highest of `size` over the last groups of samples that end at each mark."""
    import numpy as np

    if not marks.size:
        return np.zeros(0)
    starts = np.concatenate(([0], marks[:-1] + 1))
    groups = np.maximum.reduceat(size[: marks[-1] + 1], starts)
    padded = np.concatenate((np.zeros(wide - 1), groups))
    return np.asarray(np.lib.stride_tricks.sliding_window_view(padded, wide).max(axis=1))

"""Recordings: frames without gaps, the frequency and direct part of a waveform, flat tops.

Frames of a fixed number of rows make the results the same whatever pieces the file is read in,
and keep the memory small. Needs numpy (the extra `analysis`).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from wirecalc import RecordedColumns

from .stamps import Clock

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

SURGE_S = 0.1  # window of a meter's inrush function: from memory
MAINS_HZ = ((15.0, 18.0), (45.0, 66.0), (380.0, 420.0))  # railway, mains, aircraft; practice
_FRAME = 1 << 16  # rows worked on at once
BRIDGE_S = 0.05  # a hole of a waveform that is longer parts it in two; practice
_GAP_LOG = 10.0  # usual steps of a log that are no longer one; practice
_WINDOW_S, _LEAST_SAMPLES, _LEAST_PERIODS = 0.25, 64, 4
_ENOUGH = 40  # windows with a clear frequency
_QUIET = 0.02  # share of the span within which nothing runs


class Waveform(NamedTuple):
    """What a waveform is: `frequency` in Hz is None where none is clear; a window in samples.

    `offset` in A is the direct part; `from_off` says that it was seen while nothing ran.
    """

    clock: Clock
    frequency: float | None
    per_cycle: float
    offset: float
    from_off: bool
    apparent: float | None = None  # a clear frequency, mains or not
    scatter: float = 0.0  # standard error of the frequency, as a share

    @property
    def doubt(self) -> float:
        """By what share the stamps may move an rms value.

        The angle of each reading is off by 2 pi jitter / per_cycle; over n readings the root of the
        mean square moves by that over the root of 2 n, and three times that is taken. A straight
        line over one reading that lacks is off by 1 - cos(2 pi / per_cycle) at a crest: three such
        in a cycle.
        """
        clock, n = self.clock, self.per_cycle
        angle = 2 * math.pi / n
        share = 3 * angle * clock.jitter / math.sqrt(2 * n)
        if clock.holes:
            share += 3 * (1 - math.cos(angle)) / n
        if clock.holes and clock.jitter:  # a third of the holes is hidden by it
            share += 1.5 * math.sqrt(n * clock.lost / 3) / n
        return share

    @property
    def begins(self) -> float:
        """By what share 100 ms from a start may be off: it lies between two readings."""
        return self.trapezoids + self.clock.step / (2 * SURGE_S)

    @property
    def trapezoids(self) -> float:
        """By what share the rms of a current that grows or falls may be off: joined by lines."""
        return (2 * math.pi / self.per_cycle) ** 2 / 24


class Frame(NamedTuple):
    """Some rows without a gap; `fresh` where they begin the recording or follow a gap."""

    t: Numbers
    values: tuple[Numbers, ...]
    fresh: bool


def frames(recording: RecordedColumns, clock: Clock | None) -> Iterator[Frame]:
    """Go through a recording in frames of a fixed number of rows, cut at gaps.

    `clock` is that of a waveform; None for a log.
    """
    import numpy as np

    gap = _GAP_LOG * recording.overview.step if clock is None else max(BRIDGE_S, clock.hole)
    held: list[tuple[Numbers, ...]] = []
    count, last = 0, -math.inf
    for block in recording.blocks():
        rows = (block.t, *block.values)
        at = 0
        while at < len(block.t):
            take = min(_FRAME - count, len(block.t) - at)
            held.append(tuple(column[at : at + take] for column in rows))
            at, count = at + take, count + take
            if count == _FRAME:
                whole = [np.concatenate(columns) for columns in zip(*held, strict=True)]
                yield from _cut(whole, last, gap)
                held, count, last = [], 0, float(whole[0][-1])
    if held:
        yield from _cut([np.concatenate(c) for c in zip(*held, strict=True)], last, gap)


def _cut(columns: list[Numbers], last: float, gap: float) -> Iterator[Frame]:
    import numpy as np

    t, *values = columns
    after = np.flatnonzero(np.diff(t, prepend=last) > gap)
    edges = sorted({0, *after.tolist(), len(t)})
    breaks = set(after.tolist())
    for begin, end in pairwise(edges):
        yield Frame(t[begin:end], tuple(v[begin:end] for v in values), begin in breaks)


def waveform(recording: RecordedColumns, clock: Clock) -> Waveform:
    """Find the frequency and the direct part of a waveform from its first clear windows.

    In windows of 0.25 s the upward crossings are counted, with hysteresis of 0.3 rms; a window
    whose periods scatter is left out; the median of up to 40 windows counts.
    """
    import numpy as np

    step = clock.step
    size = max(_LEAST_SAMPLES, round(_WINDOW_S / step))
    span = recording.overview.high[0] - recording.overview.low[0]
    found, means, quiet = [], [], []
    for frame in frames(recording, clock):
        t, x = clock.even(frame.t), frame.values[0]
        for begin in range(0, len(x), size):
            window = x[begin : begin + size]
            if len(window) < min(size, len(x)) / 2 or len(window) < 8:
                continue
            seen = _periods(t[begin : begin + size], window)
            if seen is not None:
                found.append(1 / seen[0])
                means.append(seen[1])
            elif window.std() < _QUIET * span:
                quiet.append(float(window.mean()))
        if len(found) >= _ENOUGH:
            break
    apparent = float(np.median(found)) if found else None
    mains = apparent is not None and any(low <= apparent <= high for low, high in MAINS_HZ)
    frequency = apparent if mains else None
    per_cycle = 1 / (frequency * step) if frequency is not None else SURGE_S / step
    offset = float(np.median(quiet or means or [0.0]))
    scatter = 0.0
    if apparent is not None and clock.jitter:
        scatter = float(np.std(found)) / apparent / math.sqrt(len(found))
    return Waveform(clock, frequency, per_cycle, offset, bool(quiet), apparent, scatter)


def _periods(t: Numbers, window: Numbers) -> tuple[float, float] | None:
    """Return the mean period in s and the mean over whole periods; None where not clear."""
    import numpy as np

    x = window - (window.max() + window.min()) / 2
    edge = 0.3 * float(x.std())
    if edge == 0:
        return None
    side = np.where(x > edge, 1, np.where(x < -edge, -1, 0))
    known = np.flatnonzero(side)
    up = np.flatnonzero((side[known[1:]] > 0) & (side[known[:-1]] < 0))
    at = known[1:][up]  # the first sample over the upper edge
    if len(at) <= _LEAST_PERIODS:
        return None
    when = t[at] - (x[at] - edge) / (x[at] - x[at - 1]) * (t[at] - t[at - 1])
    lengths = np.diff(when)
    if lengths.std() > 0.1 * lengths.mean():
        return None
    return float(lengths.mean()), float(window[at[0] : at[-1]].mean())


def flat_top(recording: RecordedColumns, wave: Waveform) -> int:
    """Return how many samples in a row stand at the very highest or lowest value, if clipped.

    0 where the row is no longer than the last digit makes of any crest. An end that lies near the
    middle, as the pause of a half-wave load does, is no top.
    """
    import numpy as np

    ends = (recording.overview.low[0], recording.overview.high[0])
    digit, longest, carry = math.inf, [0, 0], [0, 0]
    for frame in frames(recording, wave.clock):
        x = frame.values[0]
        steps = np.abs(np.diff(x))
        digit = min(digit, float(steps[steps > 0].min(initial=math.inf)))
        for side, end in enumerate(ends):
            at = np.flatnonzero(x != end)
            edges = np.concatenate(([-1 - (0 if frame.fresh else carry[side])], at, [len(x)]))
            rows = np.diff(edges) - 1
            longest[side] = max(longest[side], int(rows.max()))
            carry[side] = int(rows[-1])
    height = max((ends[1] - ends[0]) / 2, 1e-300)
    natural = math.acos(max(-1.0, 1 - digit / height)) / math.pi if digit < math.inf else 1.0
    far = [abs(end - wave.offset) for end in ends]
    row = max(n for n, size in zip(longest, far, strict=True) if size > max(far) / 2)
    return row if row >= 3 and row > 2 * natural * wave.per_cycle + 2 else 0

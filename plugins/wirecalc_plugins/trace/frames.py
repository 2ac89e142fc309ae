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
_FRAME = 1 << 16  # rows worked on at once
SEEN_S = 0.0005  # after which a start at the voltage zero is seen; practice
BRIDGE_S = 0.05  # a hole of a waveform that is longer parts it in two; practice
_GAP_LOG = 10.0  # usual steps of a log that are no longer one; practice


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
    noise: float = 0.0  # rms in A of what stands there while nothing runs
    rectified: bool = False  # one side of zero only, or the size of each reading
    drift: tuple[tuple[float, ...], tuple[float, ...]] = ((), ())  # times in s, direct parts in A

    def zero(self, t: Numbers) -> Numbers | float:
        """Return the direct part in A at some times: that of a clamp may drift."""
        import numpy as np

        return np.interp(t, *self.drift) if self.drift[0] else self.offset

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
        """By what share 100 ms from a start may be off: a current at the zero grows slowly."""
        return self.trapezoids + (self.clock.step + SEEN_S) / (2 * SURGE_S)

    def blur(self, seconds: float) -> float:
        """Return by how many A noise may move an rms over some time; three standard errors."""
        return 3 * self.noise / math.sqrt(max(seconds / self.clock.step, 1.0))

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

    gap = gap_of(recording, clock)
    unbroken = recording.overview.longest <= gap
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
                yield from _cut(whole, last, gap, whole=unbroken)
                held, count, last = [], 0, float(whole[0][-1])
    if held:
        rest = [np.concatenate(c) for c in zip(*held, strict=True)]
        yield from _cut(rest, last, gap, whole=unbroken)


def gap_of(recording: RecordedColumns, clock: Clock | None) -> float:
    """Return the time in s between two stamps beyond which a recording is parted."""
    return _GAP_LOG * recording.overview.step if clock is None else max(BRIDGE_S, clock.hole)


def _cut(columns: list[Numbers], last: float, gap: float, *, whole: bool) -> Iterator[Frame]:
    import numpy as np

    t, *values = columns
    if whole:
        yield Frame(t, tuple(values), last == -math.inf)
        return
    after = np.flatnonzero(np.diff(t, prepend=last) > gap)
    edges = sorted({0, *after.tolist(), len(t)})
    breaks = set(after.tolist())
    for begin, end in pairwise(edges):
        yield Frame(t[begin:end], tuple(v[begin:end] for v in values), begin in breaks)


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
        here = x.min() == ends[0], x.max() == ends[1]
        if any(here):  # the least step is one near a top
            steps = np.abs(np.diff(x))
            digit = min(digit, float(steps[steps > 0].min(initial=math.inf)))
        for side, end in enumerate(ends):
            if not here[side]:
                carry[side] = 0
                continue
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

"""One time during which the machine is on: its start, its middle thinned, where it settles."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from .on_off import RISE
from .rms_levels import LevelPoints
from .surge import FEWEST, Calm, Span, calm_stretches, end_of_surge, since_start

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]
SETTLED = 0.1  # share of the settled level within which a level has settled; practice
STEADY = 0.9  # share of the last part of a run that must be within it
DRIFT = 0.04  # by which a level of less than a minute may drift and be settled; practice
LONG_S = 60.0  # beyond that it is warming up, not starting; practice
_LAG, _LAG_LOG = 12, 4  # levels over which a steady level is compared
_HEAD, _TAIL = 4096, 8192  # levels of a run that are kept as they are, and thinned


class MachineRun(NamedTuple):
    """A time during which the machine is on. Times in s, levels in the unit of the recording.

    `cut_start` and `cut_end`: the recording, or a part of it before a gap, begins or ends within
    the run. `first` is the first level. `settle` is when the surge was over, and `steady` from when
    it stays within 10 % of the settled level, each in s from the start with least and most; `calm`
    are the stretches that hold or drift; `volts` the lowest of the run, and the usual one of its
    last half.
    """

    start: float
    end: float
    cut_start: bool
    cut_end: bool
    rise: bool
    gap_before: bool
    first: float
    highest: float
    crest: float | None
    surge: float | None
    settled: float | None
    settle: Span | None
    volts: tuple[float, float] | None
    steady: Span | None = None
    calm: tuple[Calm, ...] = ()


class OpenRun:
    """A run that has not ended yet."""

    def __init__(
        self,
        start: float,
        before: float | None,
        cut: bool,
        rise: bool,
        gap: bool,
        surge: float | None,
        *,
        waveform: bool,
        noise: float = 0.0,
    ) -> None:
        self.start, self.before, self.cut, self.rise, self.gap = start, before, cut, rise, gap
        self.surge, self.lag = surge, _LAG if waveform else _LAG_LOG
        self.noise = noise
        self.head: list[Numbers] = []
        self.tail: list[Numbers] = []
        self.kept = self.thinned = 0

    def rises(self, levels: Numbers) -> int | None:
        """Return where a steady level at least doubles, if it does: another load starts."""
        import numpy as np

        lag = self.lag
        pieces = [piece[1] for piece in (*self.head[-3:], *self.tail[-3:])]
        recent = np.concatenate([np.zeros(0), *pieces])[-2 * lag :]
        whole = np.concatenate((recent, levels))
        if len(whole) <= 2 * lag:
            return None
        now, then, earlier = whole[2 * lag :], whole[lag:-lag], whole[: -2 * lag]
        steady = np.abs(then - earlier) <= SETTLED * earlier
        at = np.flatnonzero(steady & (now >= RISE * then))
        found = int(at[0]) + 2 * lag - len(recent) if at.size else None
        return found if found is not None and found >= 0 else None

    def add(self, points: LevelPoints, begin: int, end: int) -> None:
        """Take the levels of a piece of the run."""
        import numpy as np

        if begin == end:
            return
        nothing = np.full(end - begin, np.nan)
        level = points.level[begin:end]
        if self.noise:
            level = np.sqrt(np.maximum(level**2 - self.noise**2, 0.0))
        crest = nothing if points.crest is None else points.crest[begin:end]
        volts = nothing if points.volts is None else points.volts[begin:end]
        # time, level, its least and most, crest, volts
        piece = np.array([points.t[begin:end], level, level, level, crest, volts])
        room = max(0, _HEAD - self.kept)
        if room:
            self.head.append(piece[:, :room])
            self.kept += self.head[-1].shape[1]
        if piece.shape[1] > room:
            self.tail.append(piece[:, room:])
            self.thinned += piece.shape[1] - room
            if self.thinned > 2 * _TAIL:
                self._thin()

    def _thin(self) -> None:
        import numpy as np

        whole = np.concatenate(self.tail, axis=1)
        while whole.shape[1] > _TAIL:
            even = whole[:, : whole.shape[1] // 2 * 2]
            one, two = even[:, 0::2], even[:, 1::2]
            both = np.array(
                [
                    one[0],
                    (one[1] + two[1]) / 2,
                    np.minimum(one[2], two[2]),
                    np.maximum(one[3], two[3]),
                    np.maximum(one[4], two[4]),
                    np.minimum(one[5], two[5]),
                ]
            )
            whole = np.concatenate((both, whole[:, even.shape[1] :]), axis=1)
        self.tail, self.thinned = [whole], whole.shape[1]

    def record(
        self,
        cut_end: bool,
        when: float | None,
        width: float,
        waveform: bool,
        doubt: float,
        blur: float,
    ) -> MachineRun:
        """Close the run."""
        import numpy as np

        all_ = np.concatenate([*self.head, *self.tail], axis=1)
        t, level, crest, volts = all_[0], all_[1], all_[4], all_[5]
        end = float(t[-1]) + (width / 2 if waveform else 0.0) if when is None else when
        inner = all_
        if waveform:  # a window that reaches beyond the run says nothing of it
            first = -math.inf if self.cut else self.start + width / 2
            last = math.inf if cut_end else end - width
            inner = all_[:, (t >= first) & (t <= last)]
        elif not cut_end:
            inner = all_[:, :-1]
        settled = _settled(inner, self.start)
        begun = self.start, self.before
        off = {"doubt": doubt, "blur": blur}
        calm = calm_stretches(inner, *begun, width, waveform=waveform, **off)
        settle = end_of_surge(calm, float(all_[3].max()), settled)
        steady = None if settled is None else self._steady(inner, settled, width, waveform)
        until = math.inf if settle is None else self.start + settle[2] + width
        mine = t <= until
        return MachineRun(
            self.start,
            end,
            self.cut,
            cut_end,
            self.rise,
            self.gap,
            float(level[0]),
            float(all_[3][mine].max()),
            None if np.isnan(crest[0]) else float(crest[mine].max()),
            self.surge if waveform else None,
            settled,
            settle,
            None
            if np.isnan(volts[0])
            else (float(volts.min()), float(np.median(volts[len(volts) // 2 :]))),
            steady,
            calm,
        )

    def _steady(self, inner: Numbers, settled: float, width: float, waveform: bool) -> Span | None:
        """Return the time after which the level stays within 10 % of the settled, and its span."""
        import numpy as np

        t, _, least, most = inner[:4]
        out = (least < (1 - SETTLED) * settled) | (most > (1 + SETTLED) * settled)
        part = not waveform and bool(out[0]) and least[0] < settled  # it covers a part of the start
        last = np.flatnonzero(out[1:] if part else out) + part
        at = int(last[-1]) + 1 if last.size else 0
        if at >= len(t):
            return None
        return since_start(t, at, self.start, self.before, width, waveform=waveform)


def _settled(inner: Numbers, start: float) -> float | None:
    """Return the median of the last half of a run, or else of its last quarter, if steady."""
    import numpy as np

    if inner.shape[1] < FEWEST:
        return None
    t = inner[0]
    begin, end = max(start, float(t[0])), float(t[-1])
    for part in (0.5, 0.25):
        last = inner[:, t >= end - part * (end - begin)]
        middle = float(np.median(last[1]))
        inside = (last[2] >= (1 - SETTLED) * middle) & (last[3] <= (1 + SETTLED) * middle)
        if last.shape[1] < FEWEST // 2 or middle == 0 or inside.mean() < STEADY:
            continue
        one, two = (float(np.median(half)) for half in np.array_split(last[1], 2))
        if abs(two - one) <= DRIFT * middle or part * (end - begin) > LONG_S:
            return middle
    return None

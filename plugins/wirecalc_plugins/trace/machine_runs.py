"""Runs of a machine in a series of levels: when it is on, how it starts, where it settles.

A run is closed with a record of its start and of its settled level; its middle is thinned, so
that a long run takes no more memory than a short one. Needs numpy (the extra `analysis`).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

from .frames import SURGE_S, Waveform
from .machine_run import MachineRun, OpenRun
from .on_off import RISE, Switch
from .rms_levels import LevelPoints

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

SHORT_S = 3.0  # within it a start may still be going on; practice
_NOISE = 6.0  # times the rms of nothing that noise does not reach; practice


class Finder:
    """Finds the runs in a series of levels. `width` is the time in s that one level covers.

    `rises`: whether a steady level that doubles begins a further run; `doubt`: the share by which
    each level may be off.
    """

    def __init__(
        self,
        switch: Switch,
        width: float,
        *,
        waveform: bool,
        rises: bool = True,
        doubt: float = 0.0,
        wave: Waveform | None = None,
    ) -> None:
        self.switch, self.width, self.waveform, self.rises = switch, width, waveform, rises
        self.doubt = doubt
        self.noise = 0.0 if wave is None else wave.noise
        self.blur = 0.0 if wave is None else wave.blur(width)
        self.run: OpenRun | None = None
        self.last: float | None = None  # time of the level before
        self.gap = False

    def add(self, points: LevelPoints) -> Iterator[MachineRun]:
        """Take levels; yield the runs that end within them."""
        import numpy as np

        if points.fresh:
            yield from self.close(cut=True, gap=True)
            self.gap = self.gap or self.last is not None
            self.last = None
        if not len(points.t):
            return
        side = np.where(
            points.level >= self.switch.up, 1, np.where(points.level <= self.switch.down, -1, 0)
        )
        side = np.concatenate(([1 if self.run is not None else -1], side))
        known = np.maximum.accumulate(np.where(side != 0, np.arange(len(side)), 0))
        on = side[known] > 0
        edges = [0, *(np.flatnonzero(on[2:] != on[1:-1]) + 1).tolist(), len(points.t)]
        for begin, end in pairwise(edges):
            if on[begin + 1]:
                yield from self._on(points, begin, end)
            elif self.run is not None:
                yield from self.close(cut=False, when=float(points.t[begin]))
            self.last = float(points.t[end - 1])

    def close(
        self, *, cut: bool, when: float | None = None, gap: bool = False
    ) -> Iterator[MachineRun]:
        """Yield the run that is open, if one is; a `gap` may cut it short while it still starts."""
        if self.run is not None:
            run = self.run.record(cut, when, self.width, self.waveform, self.doubt, self.blur)
            starting = gap and not run.cut_start and run.end - run.start < SHORT_S
            if starting and run.settled and run.settled * RISE > run.highest:
                run = run._replace(settled=None, settle=None, steady=None)
            yield run
            self.run = None

    def _on(self, points: LevelPoints, begin: int, end: int) -> Iterator[MachineRun]:
        while begin < end:
            if self.run is None:
                self._begin(points, begin, rise=False)
            assert self.run is not None
            at = self.run.rises(points.level[begin:end]) if self.rises else None
            stop = end if at is None else begin + at
            self.run.add(points, begin, stop)
            if at is not None:
                yield from self.close(cut=False, when=float(points.t[stop]))
                self._begin(points, stop, rise=True)
                # `rises` needs levels before it compares again, so this ends
                self.run.add(points, stop, stop + 1)
                stop += 1
            begin = stop

    def _begin(self, points: LevelPoints, at: int, *, rise: bool) -> None:
        before = self.last if at == 0 else float(points.t[at - 1])
        cut = before is None
        start = float(points.t[at])
        if cut and self.waveform:  # its first level covers the first cycle
            start -= self.width / 2
        surge = None
        if points.samples is not None and not cut:
            # the first sample that is not noise: a closing circuit begins slowly
            level = min(self.switch.up, max(_NOISE * self.switch.low, self.switch.up / 20))
            level = max(level, _NOISE * self.noise)
            if rise and points.crest is not None and at > 0:
                level = 1.1 * float(points.crest[max(0, at - 8)])
            found = points.samples.first_over(start - self.width, start + self.width, level)
            start = start if found is None else found
            surge = points.samples.rms(start, SURGE_S)
            surge = None if surge is None else math.sqrt(max(surge**2 - self.noise**2, 0.0))
        again = self.gap and not rise
        self.run = OpenRun(
            *(start, before, cut, rise, again, surge), waveform=self.waveform, noise=self.noise
        )
        self.gap = False

"""Many starts at once: what tolerances of parts, loads and supplies do to a start.

All cases go through one fixed-step Runge-Kutta method of order 4 in numpy, side by side, with the
equations of `wirecalc_plugins.start_curve.model`; a check compares it with the adaptive solver of
`wirecalc_plugins.start_curve.starting`. A start that changes no more is taken out of the work.
Needs numpy (the extra `analysis`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from .model import HEAT, SPEED, Branch, Constants, branches, opens_at, slopes
from .model import constants as constants_of
from .start_case import AIR, OPEN_AT, SimulatedStart
from .starting import STEADY

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]

STEPS = 64  # a cycle, at least: with a parabola through the highest three a crest is exact to 1e-4
CHUNK = 6  # cycles between two looks whether anything still changes
_STABLE = 2.4  # step times the fastest rate that the method bears with room (2.78 is its end)
_WORTH = 0.1  # share of the starts at rest from which taking them out is worth the copying

_Values = TypeVar("_Values", Constants, Branch)


class Courses(NamedTuple):
    """The course of each start: A and rad/s, one column a start.

    `peak` is the highest instantaneous line current. `rms` and `speed` are those of each whole
    cycle from closing, a row each. `opened` is when the start device took out what it takes out,
    in s, infinite where it did not; `waits` says that a start has a device that would.
    """

    frequency: float
    synchronous: Samples
    peak: Samples
    rms: Samples
    speed: Samples
    opened: Samples
    waits: Samples


def courses(cases: Sequence[SimulatedStart], duration: float) -> Courses:
    """Simulate starts of one frequency for so many seconds each, all at once.

    Raises ValueError for no case, or for cases of different frequency.
    """
    import numpy as np

    if len({case.machine.frequency for case in cases}) != 1:
        raise ValueError("the cases of a spread have one frequency")
    frequency, count = cases[0].machine.frequency, len(cases)
    cycles = max(1, math.floor(duration * frequency + 1e-9))
    rms, speed = np.zeros((cycles, count)), np.zeros((cycles, count))
    peak, opened = np.zeros(count), np.full(count, math.inf)
    lanes = _Lanes(np, cases)
    here = np.arange(count)  # the starts that are still worked out
    for cycle in range(cycles):
        crest, rms[cycle, here], speed[cycle, here] = lanes.cycle(cycle)
        peak[here] = np.maximum(peak[here], crest)
        opened[here] = lanes.opened
        if (cycle + 1) % CHUNK or cycle + 1 < 2 * CHUNK:
            continue
        rests = lanes.rests(rms[: cycle + 1, here], speed[: cycle + 1, here])
        if rests.mean() >= _WORTH:
            still = here[rests]
            for of in (rms, speed):
                of[cycle + 1 :, still] = of[cycle + 1 - CHUNK : cycle + 1, still].mean(axis=0)
            here = here[~rests]
            lanes.keep(~rests)
        if not here.size:
            break
    waits = np.array([opens_at(case) is not None for case in cases])
    synchronous = np.array([case.machine.synchronous for case in cases])
    return Courses(frequency, synchronous, peak, rms, speed, opened, waits)


class _Lanes:
    """The starts that are still worked out: their states, and the branch of each."""

    def __init__(self, np: Any, cases: Sequence[SimulatedStart]) -> None:
        self.np, self.frequency, self.steps = np, cases[0].machine.frequency, _steps(cases)
        self.constants = _stacked(np, Constants, [constants_of(case) for case in cases])
        pairs = [branches(case) for case in cases]
        self.branch, self.after = (_stacked(np, Branch, side) for side in zip(*pairs, strict=True))
        opening = [opens_at(case) or (SPEED, math.inf) for case in cases]
        self.waits, self.levels = (np.array(column) for column in zip(*opening, strict=True))
        self.opened = np.full(len(cases), math.inf)
        self.reached = np.zeros(len(cases), dtype=bool)
        self.y: Samples = np.zeros((8, len(cases)))
        self.y[HEAT] = AIR
        self.line = np.zeros((self.steps + 2, len(cases)))  # of a cycle, and two steps before
        self.start = np.zeros(len(cases))
        self._connect()

    def _connect(self) -> None:
        np = self.np
        self.f = slopes(self.constants, self.branch, np.sin, np.tanh, np.exp, np.minimum)
        self.k = np.empty((4, *self.y.shape))
        self.column = np.arange(self.y.shape[1])

    def keep(self, mine: Samples) -> None:
        """Go on with some of the starts alone."""
        self.constants = _of(Constants, self.constants, mine)
        self.branch, self.after = (_of(Branch, b, mine) for b in (self.branch, self.after))
        for name in ("waits", "levels", "opened", "reached", "start"):
            setattr(self, name, getattr(self, name)[mine])
        self.y, self.line = self.y[:, mine].copy(), self.line[:, mine].copy()
        self._connect()

    def cycle(self, number: int) -> tuple[Samples, Samples, Samples]:
        """Work out a cycle; return crest, rms and mean speed of each start."""
        np, c, h = self.np, self.constants, 1 / (self.frequency * self.steps)
        turned = np.zeros(self.y.shape[1])
        self.line[:2] = self.line[-2:]
        for step in range(self.steps):
            t = (number * self.steps + step) * h
            y = self._step(t, h)
            start = self.branch.g1 * y[1] - self.branch.g2 * y[3]
            self.line[step + 2] = c.k1 * y[0] - c.k2 * y[2] + start
            turned += y[SPEED]
            opens = self.reached & (start * self.start <= 0) & np.isinf(self.opened)
            self.reached |= y[self.waits, self.column] >= self.levels
            self.start = start
            if opens.any():
                self._open(opens, t + h)
        square = self.line[1:] ** 2
        rms = np.sqrt((square.sum(axis=0) - (square[0] + square[-1]) / 2) / self.steps)
        return _crest(np, self.line), rms, turned / self.steps

    def _open(self, opens: Samples, t: float) -> None:
        np = self.np
        self.opened = np.where(opens, t, self.opened)
        pairs = zip(self.after, self.branch, strict=True)
        self.branch = Branch(*(_either(np, opens, new, old) for new, old in pairs))
        self._connect()

    def _step(self, t: float, h: float) -> Samples:
        y, k = self.y, self.k
        for stage, (before, share) in enumerate(((0, 0.0), (0, h / 2), (1, h / 2), (2, h))):
            at = y + share * k[before] if share else y
            for row, slope in zip(k[stage], self.f(t + share, at), strict=True):
                row[...] = slope
        k[1] += k[2]
        k[1] *= 2
        k[0] += k[1]
        k[0] += k[3]
        k[0] *= h / 6
        y += k[0]
        return y

    def rests(self, rms: Samples, speed: Samples) -> Samples:
        """Whether current and speed of each start stay as they were, and no PTC is heating up."""
        np = self.np
        (amps, now), (turns, turns_now) = (
            (of[-2 * CHUNK : -CHUNK].mean(axis=0), of[-CHUNK:].mean(axis=0)) for of in (rms, speed)
        )
        heats = (self.waits == HEAT) & np.isinf(self.opened)
        fastest = self.constants.omega / self.constants.pairs
        same = np.abs(now - amps) <= STEADY * amps
        rests: Samples = same & (np.abs(turns_now - turns) <= STEADY * fastest) & ~heats
        return rests


def _stacked(np: Any, kind: type[_Values], values: Sequence[_Values]) -> _Values:
    """Put the values of all cases side by side; what is zero for all of them is the number 0."""
    columns = [np.array(column, dtype=float) for column in zip(*values, strict=True)]
    return kind(*(column if column.any() else 0.0 for column in columns))


def _of(kind: type[_Values], values: _Values, mine: Samples) -> _Values:
    return kind(*(v if isinstance(v, float) else v[mine] for v in values))


def _either(np: Any, opens: Samples, new: Any, old: Any) -> Any:
    same = isinstance(old, float) and isinstance(new, float) and new == old
    return old if same else np.where(opens, new, old)


def _steps(cases: Sequence[SimulatedStart]) -> int:
    """Return the steps a cycle that keep the fastest case stable: a PTC beside or in a winding."""
    rates = [0.0]
    for case in cases:
        branch, ptc = branches(case)[0], case.device.ptc
        own = case.machine.start.resistance if case.machine.start else 0.0
        hot = branch.cold * (1.2 * OPEN_AT if ptc else 1.0)
        rates += [branch.g1 * (own + branch.series * hot), branch.leak * branch.elastance]
        rates[-1] /= branch.cold
    return max(STEPS, math.ceil(max(rates) / (_STABLE * cases[0].machine.frequency)))


def _crest(np: Any, line: Samples) -> Samples:
    """Return the highest of each column, by the parabola through the three samples around it."""
    size = np.abs(line)
    at = np.clip(size.argmax(axis=0), 1, len(line) - 2)
    before, top, after = (size[at + i, np.arange(line.shape[1])] for i in (-1, 0, 1))
    bend = 2 * top - before - after
    inside = (top >= before) & (top >= after) & (bend > 0)
    higher = np.where(inside, (before - after) ** 2 / np.where(inside, 8 * bend, 1.0), 0.0)
    highest: Samples = np.maximum(size.max(axis=0), top + higher)
    return highest

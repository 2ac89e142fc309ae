"""Many starts at once: what tolerances of parts, loads and supplies do to a start.

All cases go through one fixed-step Runge-Kutta method of order 4 in numpy, side by side, with the
equations of `wirecalc_plugins.start_curve.model`; a check compares it with the adaptive solver of
`wirecalc_plugins.start_curve.starting`. Needs numpy (the extra `analysis`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from .meter_readings import AT_SPEED, SETTLED
from .model import HEAT, SPEED, Branch, Constants, branches, opens_at, slopes
from .model import constants as constants_of
from .start_case import AIR, OPEN_AT, SimulatedStart

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]

STEPS = 100  # a cycle, at least
_LEAST_CYCLES = 24  # a shorter time cannot show that anything has settled
_STABLE = 2.4  # step times the fastest rate that the method bears with room (2.78 is its end)


class Spread(NamedTuple):
    """What the meters show of each start: A, s and rpm, an array each.

    `cycle` and `settle_time` go by whole cycles from closing; `settle_time` is infinite where the
    motor does not come to speed and settle in the time given.
    """

    peak: Samples
    cycle: Samples
    settled: Samples
    settle_time: Samples
    rpm: Samples


def spread(cases: Sequence[SimulatedStart], duration: float) -> Spread:
    """Simulate starts of one frequency for so many seconds each, all at once.

    Raises ValueError for no case, or for cases of different frequency.
    """
    import numpy as np

    if len({case.machine.frequency for case in cases}) != 1:
        raise ValueError("the cases of a spread have one frequency")
    c, before, after, waits, levels = _stacked(np, cases)
    steps = _steps(cases)
    cycles = max(_LEAST_CYCLES, math.floor(duration * cases[0].machine.frequency))
    h = 1 / (cases[0].machine.frequency * steps)
    y = np.zeros((8, len(cases)))
    y[HEAT] = AIR
    branch, stage = before, np.where(np.isfinite(levels), 0, 2)
    f = slopes(c, branch, np.sin, np.tanh, np.exp, np.minimum)
    peak, last = np.zeros(len(cases)), np.zeros(len(cases))
    rms, speeds = np.zeros((cycles, len(cases))), np.zeros((cycles, len(cases)))
    for cycle in range(cycles):
        squares, turned = np.zeros(len(cases)), np.zeros(len(cases))
        for step in range(steps):
            y = _stepped(np, f, (cycle * steps + step) * h, y, h)
            start = branch.g1 * y[1] - branch.g2 * y[3]
            line = c.k1 * y[0] - c.k2 * y[2] + start
            squares += line * line
            turned += y[SPEED]
            np.maximum(peak, np.abs(line), out=peak)
            opens = (stage == 1) & (start * last <= 0)
            stage = np.where((stage == 0) & (y[waits, range(len(cases))] >= levels), 1, stage)
            last = start
            if opens.any():
                stage = np.where(opens, 2, stage)
                branch = Branch(
                    *(np.where(opens, new, old) for new, old in zip(after, branch, strict=True))
                )
                f = slopes(c, branch, np.sin, np.tanh, np.exp, np.minimum)
        rms[cycle], speeds[cycle] = np.sqrt(squares / steps), turned / steps
    return _read(np, cases, peak, rms, speeds)


def _stacked(
    np: Any, cases: Sequence[SimulatedStart]
) -> tuple[Constants, Branch, Branch, list[int], Samples]:
    """Put the values of all cases side by side."""
    c = Constants(*(np.array(column) for column in zip(*map(constants_of, cases), strict=True)))
    pairs = [branches(case) for case in cases]
    before, after = (
        Branch(*(np.array(column, dtype=float) for column in zip(*side, strict=True)))
        for side in zip(*pairs, strict=True)
    )
    opening = [opens_at(case) or (SPEED, math.inf) for case in cases]
    return c, before, after, [o[0] for o in opening], np.array([o[1] for o in opening])


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


def _stepped(np: Any, f: Any, t: float, y: Samples, h: float) -> Samples:
    k1 = np.stack(f(t, y))
    k2 = np.stack(f(t + h / 2, y + h / 2 * k1))
    k3 = np.stack(f(t + h / 2, y + h / 2 * k2))
    k4 = np.stack(f(t + h, y + h * k3))
    moved: Samples = y + h / 6 * (k1 + 2 * (k2 + k3) + k4)
    return moved


def _read(
    np: Any, cases: Sequence[SimulatedStart], peak: Samples, rms: Samples, speeds: Samples
) -> Spread:
    frequency = cases[0].machine.frequency
    settled = rms[-min(6, len(rms)) :].mean(axis=0)
    off = np.abs(rms - settled) > SETTLED * settled
    last = len(rms) - np.argmax(off[::-1], axis=0)  # cycles up to the last one that is off
    last = np.where(off.any(axis=0), last, 1)
    synchronous = np.array([case.machine.synchronous for case in cases])
    faster = np.abs(speeds[-6:].mean(axis=0) - speeds[-12:-6].mean(axis=0))
    rests = (last <= len(rms) - 12) & (faster <= 0.005 * synchronous)
    runs = (speeds[-1] >= AT_SPEED * synchronous) & rests
    return Spread(
        peak=peak,
        cycle=rms.max(axis=0),
        settled=settled,
        settle_time=np.where(runs, last / frequency, np.inf),
        rpm=speeds[-1] * 30 / math.pi,
    )

"""Simulating a start, and what the meters show of it.

Needs numpy and scipy (the extra `analysis`), imported when a start is simulated. The equations
are in `wirecalc_plugins.start_curve.model`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from wirecalc import BadInput, Problem

from .model import HEAT, LA, LD, SPEED, Branch, Constants, branches, constants, opens_at, slopes
from .start_case import AIR, SimulatedStart

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]

SAMPLES = 128  # a cycle: a crest is found to 0.03 %
RTOL = 1e-5
CHUNK_SAMPLES = 6 * SAMPLES  # between two looks whether anything still changes
LAST_TWO = ((-2 * CHUNK_SAMPLES, -CHUNK_SAMPLES), (-CHUNK_SAMPLES, None))
_FIRST_STEP = 1e-5  # s; near a zero of the volts the solver's own guess is far too long
STEADY = 0.0005  # relative change over a chunk that counts as none
_SCALES = (0.5, 0.5, 0.5, 0.5, 100.0, 100.0, 1e3, 100.0)  # of the states, for the tolerance


class Curve(NamedTuple):
    """A simulated start, sampled: s, A, V at the motor, N m, and the states of the model.

    `opened` is when the start device took out what it takes out, None if it did not. `steady` says
    that the rest up to the asked duration was left out because nothing changed any more.
    """

    time: Samples
    main: Samples
    start: Samples
    volts: Samples
    torque: Samples
    states: Samples
    opened: float | None
    steady: bool
    case: SimulatedStart

    @property
    def line(self) -> Samples:
        """Line current in A: both windings together."""
        return self.main + self.start

    @property
    def speed(self) -> Samples:
        """Speed of the shaft in rad/s."""
        speed: Samples = self.states[SPEED]
        return speed


def simulate(
    case: SimulatedStart,
    duration: float,
    *,
    speed: float = 0.0,
    rtol: float = RTOL,
    to_the_end: bool = False,
) -> Curve:
    """Simulate a start of so many seconds; it ends early where nothing changes any more.

    `speed` in rad/s is that of the shaft at closing. DOP853 (an explicit Runge-Kutta method of
    order 8 with step control) between switching events. Raises BadInput without scipy.
    """
    np, solve = tools()
    frequency = case.machine.frequency
    c, (branch, after), waits = constants(case), branches(case), opens_at(case)
    grid = np.arange(math.floor(duration * frequency * SAMPLES) + 1) / (frequency * SAMPLES)
    y = np.zeros(len(_SCALES))
    y[SPEED], y[HEAT] = speed, AIR
    opened: float | None = None
    if waits is not None and y[waits[0]] >= waits[1]:
        branch, waits, opened = after, None, 0.0
    pieces = [_piece(np, c, branch, grid[:1], y[:, None])]
    marks: list[tuple[float, float]] = []
    kept, t, at_level = 1, 0.0, False
    while kept < len(grid):
        end = min(kept - kept % CHUNK_SAMPLES + CHUNK_SAMPLES, len(grid) - 1)
        f = slopes(c, branch)
        solved = solve(
            lambda t, y, f=f: f(t, y.tolist()),
            (t, grid[end]),
            y,
            method="DOP853",
            t_eval=grid[kept : end + 1],
            events=_zero_of_start_current(branch) if at_level else None,
            rtol=rtol,
            atol=[rtol * 0.01 * scale for scale in _SCALES],
            first_step=min(_FIRST_STEP, 0.5 * (grid[end] - t)),
            max_step=0.25 / frequency,
        )
        if not solved.success:
            raise ArithmeticError(f"the start cannot be simulated: {solved.message}")
        upto = _reached(solved, waits) if not at_level else None
        count = len(solved.t) if upto is None else upto + 1
        if count:
            pieces.append(_piece(np, c, branch, solved.t[:count], solved.y[:, :count]))
        kept += count
        if upto is not None:
            t, y, at_level = float(solved.t[upto]), solved.y[:, upto], True
            continue
        if solved.status == 0:
            t, y = float(grid[end]), solved.y[:, -1]
            marks.append(_mark(np, pieces))
            if not to_the_end and _unchanging(marks, case, waits):
                break
            continue
        t, y = float(solved.t_events[0][0]), solved.y_events[0][0]
        branch, waits, opened, at_level = after, None, t, False  # the contact opens at the zero
        marks.clear()
    time, main, start, volts, torque, states = (
        np.concatenate([piece[i] for piece in pieces], axis=-1) for i in range(6)
    )
    return Curve(time, main, start, volts, torque, states, opened, kept < len(grid), case)


def tools() -> tuple[Any, Any]:
    """Return numpy and the solver of scipy; without them BadInput says what to install."""
    try:
        import numpy as np
        from scipy.integrate import solve_ivp
    except ImportError:
        do = "install it with: pip install 'wirecalc[analysis]'"
        raise BadInput([Problem("", "simulating a start needs scipy", do)]) from None
    return np, solve_ivp


def _reached(solved: Any, waits: tuple[int, float] | None) -> int | None:
    """Return the first sample at which the device's level is reached, if it is."""
    if waits is None or not len(solved.t):
        return None
    over = solved.y[waits[0]] >= waits[1]
    return int(over.argmax()) if over.any() else None


def _zero_of_start_current(branch: Branch) -> Any:
    """Return what ends a piece once the device is to open: the start winding's current is zero."""

    def current(t: float, y: Samples) -> float:
        return float(branch.g1 * y[LA] - branch.g2 * y[LD])

    current.terminal = True  # type: ignore[attr-defined]
    return current


def _piece(np: Any, c: Constants, b: Branch, time: Samples, y: Samples) -> tuple[Samples, ...]:
    """Return time, currents, volts at the motor, torque and states of a piece."""
    lm, la, lq, ld = y[:4]
    main, iq = c.k1 * lm - c.k2 * lq, c.k3 * lq - c.k2 * lm
    start, i_d = b.g1 * la - b.g2 * ld, b.g3 * ld - b.g2 * la
    volts = c.peak * np.sin(c.omega * time + c.phase) - c.rs * (main + start)
    return time, main, start, volts, c.pairs * (lq * i_d - ld * iq), y


def _mark(np: Any, pieces: Sequence[tuple[Samples, ...]]) -> tuple[float, float]:
    """Return rms line current and mean speed of the last chunk."""
    _, main, start, _, _, y = pieces[-1]
    return float(np.sqrt(np.mean((main + start) ** 2))), float(np.mean(y[SPEED]))


def _unchanging(
    marks: Sequence[tuple[float, float]], case: SimulatedStart, waits: tuple[int, float] | None
) -> bool:
    """Whether current and speed stay as they were and no PTC is heating up."""
    if len(marks) < 2 or (waits is not None and waits[0] == HEAT):
        return False
    (amps, speed), (amps_now, speed_now) = marks[-2:]
    allowed = STEADY * case.machine.synchronous
    return abs(amps_now - amps) <= STEADY * amps and abs(speed_now - speed) <= allowed


def sliding_rms(samples: Samples) -> Samples:
    """Return the rms of each whole cycle: the first value is that of the first cycle."""
    np, _ = tools()
    total = np.concatenate(([0.0], np.cumsum(samples**2)))
    rms: Samples = np.sqrt(np.maximum(total[SAMPLES:] - total[:-SAMPLES], 0.0) / SAMPLES)
    return rms

"""What the meters show of a simulated start."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any, NamedTuple

from .model import opens_at

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]
from .starting import CHUNK_SAMPLES, LAST_TWO, SAMPLES, Curve, sliding_rms, tools

AT_SPEED = 0.8  # share of synchronous speed from which a motor counts as running; common practice
AT_REST = 0.005  # of synchronous speed by which it may still change at rest
SETTLED = 0.1  # a current within this share of its last value has settled; common practice
INRUSH_S = 0.1  # window of a clamp meter's inrush function
REFRESH_S = (0.25, 0.5)  # between two readings of an ordinary meter; common practice
PHASES = 25  # instants at which its readings may part a start


class MeterReadings(NamedTuple):
    """What a clamp meter and a voltmeter show of a start.

    A: highest instantaneous, highest one-cycle rms, rms of the first 100 ms, settled rms; V:
    lowest one-cycle rms at the motor; s: until the current settled, until 80 % of synchronous
    speed, each None where it does not come to that; rpm at the end; J into the start winding's
    copper until it settled, else up to the duration that was asked for.
    """

    peak: float
    cycle: float
    inrush: float
    settled: float
    volts: float
    settle_time: float | None
    speed_time: float | None
    rpm: float
    start_heat: float


def read_meters(curve: Curve, duration: float) -> MeterReadings:
    """Return what the meters show of a start that lasts so many seconds."""
    np, _ = tools()
    case, dt = curve.case, float(curve.time[1])
    line = sliding_rms(curve.line)
    settled = float(line[-CHUNK_SAMPLES:].mean())
    volts = sliding_rms(curve.volts)
    off = np.flatnonzero(np.abs(line - settled) > SETTLED * settled)
    last = int(off[-1]) + SAMPLES if len(off) else SAMPLES
    fast = np.flatnonzero(curve.speed >= AT_SPEED * case.machine.synchronous)
    runs = curve.speed[-SAMPLES:].mean() >= AT_SPEED * case.machine.synchronous
    waiting = curve.opened is None and opens_at(case) is not None  # the start device is still in
    still = curve.steady or _settles(curve, last)
    done = bool(runs) and last < len(curve.time) and still and not waiting
    watts = curve.start**2 * (case.machine.start.resistance if case.machine.start else 0.0)
    heat = float(watts[: last + 1].sum() * dt if done else watts.sum() * dt)
    if not done and curve.steady:
        heat += float(watts[-SAMPLES:].mean()) * (duration - float(curve.time[-1]))
    window = curve.line[: round(INRUSH_S / dt) + 1]
    return MeterReadings(
        peak=float(np.abs(curve.line).max()),
        cycle=float(line.max()),
        inrush=float(np.sqrt(np.mean(window**2))),
        settled=settled,
        volts=float(volts.min()),
        settle_time=float(curve.time[last]) if done else None,
        speed_time=float(curve.time[fast[0]]) if runs else None,
        rpm=float(curve.speed[-SAMPLES:].mean()) * 30 / math.pi,
        start_heat=heat,
    )


def max_hold(curve: Curve) -> tuple[float, float]:
    """Return what a slow max-hold shows of a start at least and at most, in A.

    Such a meter shows one rms value after another, each of the time between two of its readings;
    the least is that of the slow meter whose readings part the start most unluckily.
    """
    np, _ = tools()
    rate = 1 / float(curve.time[1])
    after = np.full(round(REFRESH_S[1] * rate), float(np.mean(curve.line[-CHUNK_SAMPLES:] ** 2)))
    before = np.zeros(round(REFRESH_S[1] * rate))
    total = np.concatenate(([0.0], np.cumsum(np.concatenate((before, curve.line**2, after)))))
    shown = []
    for refresh in REFRESH_S:
        span = round(refresh * rate)
        for phase in range(PHASES):
            ends = total[phase * span // PHASES :: span]
            shown.append(float(np.sqrt(np.diff(ends).max() / span)))
    return min(shown), max(shown)


def _settles(curve: Curve, last: int) -> bool:
    """Whether a start that was cut at its duration had come to rest: current and speed stay."""
    if last > len(curve.time) - 2 * CHUNK_SAMPLES:
        return False
    before, after = (curve.speed[a:b].mean() for a, b in LAST_TWO)
    return bool(abs(after - before) <= AT_REST * curve.case.machine.synchronous)

"""What the meters show of many starts that are simulated at once. Needs numpy."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from .courses import CHUNK, Courses, courses
from .meter_readings import AT_REST, AT_SPEED, INRUSH_S, REFRESH_S, SETTLED
from .start_case import SimulatedStart

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]


LEAST_CYCLES = 4 * CHUNK  # a shorter time cannot show that anything has settled


class Spread(NamedTuple):
    """What the meters show of each start: A, s and rpm, an array each.

    `cycle` and `settle_time` go by whole cycles from closing; a time is infinite
    where the motor does not come to speed, or does not settle, in the time given. `held_least` and
    `held_most` are what a slow max-hold shows, `inrush` the rms of the first 100 ms.
    """

    peak: Samples
    cycle: Samples
    inrush: Samples
    held_least: Samples
    held_most: Samples
    settled: Samples
    settle_time: Samples
    speed_time: Samples
    rpm: Samples


def spread(cases: Sequence[SimulatedStart], duration: float) -> Spread:
    """Simulate starts of one frequency for so many seconds each, all at once.

    Raises ValueError for no case, or for cases of different frequency.
    """
    return simulated(cases, duration)[1]


def simulated(cases: Sequence[SimulatedStart], duration: float) -> tuple[Courses, Spread]:
    """Simulate starts all at once, long enough to be read: their courses, and what meters show."""
    frequency = max(case.machine.frequency for case in cases)
    found = courses(cases, max(duration, LEAST_CYCLES / frequency))
    return found, read(found)


def read(found: Courses) -> Spread:
    """Return what the meters show of starts that are simulated."""
    import numpy as np

    rms, speed, frequency = found.rms, found.speed, found.frequency
    settled = rms[-CHUNK:].mean(axis=0)
    off = np.abs(rms - settled) > SETTLED * settled
    last = len(rms) - np.argmax(off[::-1], axis=0)  # cycles up to the last one that is off
    last = np.where(off.any(axis=0), last, 1)
    faster = np.abs(speed[-CHUNK:].mean(axis=0) - speed[-2 * CHUNK : -CHUNK].mean(axis=0))
    rests = (last <= len(rms) - 2 * CHUNK) & (faster <= AT_REST * found.synchronous)
    fast = speed >= AT_SPEED * found.synchronous
    runs = fast[-1] & rests & ~(found.waits & np.isinf(found.opened))
    least, most = _held(np, rms, settled, frequency)
    return Spread(
        peak=found.peak,
        cycle=rms.max(axis=0),
        inrush=first_100_ms(found),
        held_least=least,
        held_most=most,
        settled=settled,
        settle_time=np.where(runs, last / frequency, math.inf),
        speed_time=np.where(fast[-1], _at_speed(np, found), math.inf),
        rpm=speed[-1] * 30 / math.pi,
    )


def first_100_ms(found: Courses) -> Samples:
    """Return the rms of the first 100 ms, as a meter's inrush function shows it."""
    first: Samples = found.rms[: max(1, round(INRUSH_S * found.frequency))]
    rms: Samples = (first**2).mean(axis=0) ** 0.5
    return rms


def _at_speed(np: Any, found: Courses) -> Samples:
    """Return when the mean speed of a cycle first comes to 80 %, between the cycles' middles."""
    limit = AT_SPEED * found.synchronous
    first, lane = np.argmax(found.speed >= limit, axis=0), np.arange(found.speed.shape[1])
    now = found.speed[first, lane]
    before = np.where(first > 0, found.speed[np.maximum(first - 1, 0), lane], 0.0)
    part = (limit - before) / np.where(now > before, now - before, 1.0)
    when: Samples = (first - 0.5 + part) / found.frequency
    return when


def _held(np: Any, rms: Samples, settled: Samples, frequency: float) -> tuple[Samples, Samples]:
    """Return what a slow max-hold shows at least and at most, its readings a whole cycle long."""
    width = round(REFRESH_S[1] * frequency)
    square = np.concatenate(
        (np.zeros((width, rms.shape[1])), rms**2, np.tile(settled**2, (width, 1)))
    )
    total = np.concatenate((np.zeros((1, rms.shape[1])), np.cumsum(square, axis=0)))
    shown = []
    for refresh in REFRESH_S:
        span = round(refresh * frequency)
        for phase in range(span):
            ends = total[phase::span]
            shown.append(np.sqrt((ends[1:] - ends[:-1]).max(axis=0) / span))
    return np.min(shown, axis=0), np.max(shown, axis=0)

"""A course of current against what a device holds and trips at."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import NamedTuple

from .current_over_time import (
    After,
    Course,
    Element,
    Stretch,
    constant_of,
    from_level,
    past_level,
    stretches,
)
from .overcurrent import HOUR, NOTHING, OvercurrentDevice, TripPoint


class Reached(NamedTuple):
    """How much of a time limit a course used: above or at which multiple, whose limit."""

    stretch: Stretch
    limit: TripPoint


class Measured(NamedTuple):
    """The worst of a course against the timed points; None where the device has none."""

    held: Reached | None
    trips: Reached | None
    instant: Reached | None


def measure(device: OvercurrentDevice, course: Course) -> Measured:
    """Return how much of its times a course uses: those held, those that trip, those in 0.1 s."""
    levels: list[tuple[float, float, str, TripPoint]] = []
    for limit, above in pairwise((NOTHING, *device.holds)):
        longest = max((h for h in device.holds if h.multiple >= above.multiple), key=_seconds)
        if above.multiple > limit.multiple and math.isfinite(longest.seconds):
            level = past_level(limit.multiple * device.rating)
            levels.append((level, longest.seconds, "held", longest))
    for trip in device.trips:
        level = from_level(trip.multiple * device.rating)
        levels.append((level, trip.seconds, "trips" if trip.thermal else "instant", trip))
        if trip.after:
            first = trip._replace(multiple=trip.after[0], seconds=math.inf, after=None)
            levels.append((from_level(first.multiple * device.rating), math.inf, "", first))
    levels.sort(key=lambda entry: entry[0])
    after = {}
    for j, (_, seconds, _, limit) in enumerate(levels):
        if limit.after:
            lower = next(i for i, entry in enumerate(levels) if entry[0] >= _level(device, limit))
            after[j] = After(lower, limit.after[1], seconds)
    found = stretches(course, [e[0] for e in levels], [e[1] for e in levels], after)
    worst: dict[str, Reached] = {}
    for (_, _, kind, limit), stretch in zip(levels, found, strict=True):
        if kind and (kind not in worst or stretch.share > worst[kind].stretch.share):
            worst[kind] = Reached(stretch, limit)
    return Measured(worst.get("held"), worst.get("trips"), worst.get("instant"))


def _seconds(limit: TripPoint) -> float:
    return limit.seconds


def _level(device: OvercurrentDevice, limit: TripPoint) -> float:
    return from_level((limit.after or (0.0, 0.0))[0] * device.rating)


def elements(device: OvercurrentDevice) -> list[Element]:
    """Return the most sensitive thermal elements that still hold what the device holds.

    Of each pick-up between what is held for an hour and what must trip, the least time constant
    that holds every shorter point; the two ends are returned. None without a shorter point.
    """
    steady = max((h.multiple for h in device.holds if h.seconds >= HOUR), default=0.0)
    short = [h for h in device.holds if h.seconds < HOUR and h.multiple > steady > 0]
    if not short:
        return []
    ends = [t.multiple for t in device.trips if t.thermal and t.multiple > steady]
    end = min([*ends, *(0.999 * h.multiple for h in short)])
    return [
        Element(
            pickup * device.rating,
            max(constant_of(pickup, h.multiple, h.seconds) for h in short),
        )
        for pickup in dict.fromkeys((steady, max(steady, end)))
    ]

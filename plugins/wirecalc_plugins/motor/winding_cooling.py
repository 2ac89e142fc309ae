"""The temperature of a winding carried back to the moment when it was switched off."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from wirecalc import Bands

SOON_S = 30.0  # one reading this soon counts as taken at switch-off; IEC 60034-1, from memory


class Read(NamedTuple):
    """What was read: resistances in ohm with the leads in them, temperatures in C, times in s."""

    cold: float
    cold_temperature: float
    hot: Sequence[float]
    times: Sequence[float] | None
    room: float
    leads: float


class Point(NamedTuple):
    """The winding's temperature at one reading, and low and high of it, in C."""

    time: float | None
    at: float
    low: float
    high: float


class Result(NamedTuple):
    """A temperature, low and high of it, and whether it is that at switch-off."""

    at: float
    low: float
    high: float
    known: bool


def at_switch_off(points: Sequence[Point], read: Read, ends: Bands) -> Result | None:
    """Return the temperature at switch-off and its band, None where the readings give none."""
    hottest = max(points, key=lambda p: p.at)
    if read.times is None or len(points) == 1:
        latest = ends.get("hot_time", (read.times, read.times))[1]
        known = latest is not None and latest[0] <= SOON_S
        return Result(hottest.at, hottest.low, hottest.high, known)
    room = ends.get("room_temperature", (read.room, read.room))
    times = ends.get("hot_time", (read.times, read.times))
    first, last = min(times[1]), max(times[1])
    if min(p.low for p in points) <= room[1] or first > last - first:
        return None
    if not _in_one_order((*times, read.times)):
        return None
    for each in ([p.at for p in points], [p.low for p in points], [p.high for p in points]):
        if _slope(read.times, [math.log(t - read.room) for t in each]) >= 0:
            return None
    centre = _carried_back(read.times, [p.at for p in points], read.room)
    found = [centre]
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        at = room[0] + share * (room[1] - room[0])
        for clock in (times[0], read.times, times[1]):
            weights = _weights(clock)
            pairs = list(zip(weights, points, strict=True))
            found.append(_carried_back(clock, [p.high if w > 0 else p.low for w, p in pairs], at))
            found.append(_carried_back(clock, [p.low if w > 0 else p.high for w, p in pairs], at))
    return Result(centre, min(found), max(found), True)


def _in_one_order(clocks: Sequence[Sequence[float]]) -> bool:
    """Whether the readings came in one order whatever the error of the clock."""
    orders = [sorted(range(len(clock)), key=clock.__getitem__) for clock in clocks]
    return all(o == orders[0] for o in orders) and all(len({*c}) == len(c) for c in clocks)


def _weights(times: Sequence[float]) -> list[float]:
    """Return how much each reading counts in the straight line's value at time 0."""
    mean = sum(times) / len(times)
    spread = sum((t - mean) ** 2 for t in times)
    return [1 / len(times) - mean * (t - mean) / spread for t in times]


def _slope(times: Sequence[float], values: Sequence[float]) -> float:
    mean = sum(times) / len(times)
    spread = sum((t - mean) ** 2 for t in times)
    return sum((t - mean) * v for t, v in zip(times, values, strict=True)) / spread


def _carried_back(times: Sequence[float], temperatures: Sequence[float], room: float) -> float:
    weighted = zip(_weights(times), temperatures, strict=True)
    return room + math.exp(sum(w * math.log(t - room) for w, t in weighted))

"""A temperature that falls towards an end: which falls fit its readings, and when they arrive.

Every exponential T = end + fall x exp(-t / constant) that keeps within the error of all readings is
a course that it may take. For one time constant those are straight lines over x = exp(-t /
constant): how near the best of them comes follows from three readings at a time, the least and most
at any x from two.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import combinations
from typing import NamedTuple

TRIED, WITHIN, HALVINGS = 25, 9, 24
SHORT, LONG = 0.1, 30.0  # time constants that are tried, of the span of the readings
FEW = 12  # readings that are used of a longer log, evenly spread
FAR_H = 1000.0  # a course that is not there by then never arrives
SCATTER = 1.5  # times the best course's worst miss, counted where it is more than the error
BUMP_K = 1.0  # a best course that misses by more is none; common practice


class Course(NamedTuple):
    """What the readings allow: the end temperature, and hours until the target, each low to high.

    `latest` is infinite where a course that fits never arrives, `earliest` where none does.
    """

    end_low: float
    end_high: float
    earliest: float
    latest: float


class Readings(NamedTuple):
    """Hours since the start, temperatures in C, and how far off each may be in K."""

    hours: Sequence[float]
    celsius: Sequence[float]
    off: float

    def thinned(self) -> Readings:
        """Return some of a long log, its ends with them."""
        last = len(self.hours) - 1
        if last < FEW:
            return self
        at = sorted({round(i * last / (FEW - 1)) for i in range(FEW)})
        return Readings([self.hours[i] for i in at], [self.celsius[i] for i in at], self.off)


def course_of(readings: Readings, target: float) -> Course | None:
    """Return what the readings allow; None where even the best course misses one by over 1 K."""
    few = readings.thinned()
    span = few.hours[-1] - few.hours[0]
    tried = [span * SHORT * (LONG / SHORT) ** (n / (TRIED - 1)) for n in range(TRIED)]
    best = _least(lambda constant: _Line(few, constant).miss(), tried)
    miss = _Line(few, best).miss()
    if miss > BUMP_K:
        return None
    off = max(few.off, SCATTER * miss, 1e-6)

    def fits(constant: float) -> bool:
        return _Line(few, constant).miss() <= off

    low, high = _border(fits, best, tried[0]), _border(fits, best, tried[-1])
    ends, arrivals = [], []
    for n in range(WITHIN):
        constant = low * (high / low) ** (n / (WITHIN - 1))
        line = _Line(few, constant)
        ends.append(line.at(0.0, off))
        arrivals.append([_arrives(line, constant, target, off, end) for end in (0, 1)])
    return Course(
        min(one[0] for one in ends),
        max(one[1] for one in ends),
        min(one[0] for one in arrivals),
        max(one[1] for one in arrivals),
    )


class _Line:
    """The lines over x = exp(-t / constant) that keep near the readings."""

    def __init__(self, readings: Readings, constant: float) -> None:
        self.start = readings.hours[0]
        self.x = [math.exp(-(h - self.start) / constant) for h in readings.hours]
        self.celsius = readings.celsius

    def miss(self) -> float:
        """Return by how much in K the best line misses the reading that it misses most."""
        points = list(zip(self.x, self.celsius, strict=True))
        return max(
            abs(y2 - y1 - (y3 - y1) * (x2 - x1) / (x3 - x1)) / 2
            for (x1, y1), (x2, y2), (x3, y3) in combinations(points, 3)
        )

    def at(self, x: float, off: float) -> tuple[float, float]:
        """Return the least and most value at an x left of all readings, each within `off` K."""
        points = [(each - x, y) for each, y in zip(self.x, self.celsius, strict=True)]
        least, most = -math.inf, math.inf
        for (far, y_far), (near, y_near) in combinations(points, 2):
            middle = (y_near * far - y_far * near) / (far - near)
            spread = off * (far + near) / (far - near)
            least, most = max(least, middle - spread), min(most, middle + spread)
        return (least, most) if least <= most else ((least + most) / 2,) * 2


def _least(of: Callable[[float], float], tried: Sequence[float]) -> float:
    """Return where a function of a time constant is least, near the best that was tried."""
    values = [of(t) for t in tried]
    at = values.index(min(values))
    low = math.log(tried[max(at - 1, 0)])
    high = math.log(tried[min(at + 1, len(tried) - 1)])
    for _ in range(HALVINGS):
        third = (high - low) / 3
        if of(math.exp(low + third)) <= of(math.exp(high - third)):
            high -= third
        else:
            low += third
    return math.exp((low + high) / 2)


def _border(fits: Callable[[float], bool], good: float, end: float) -> float:
    """Return the last time constant that fits between a good one and the end of those tried."""
    if fits(end):
        return end
    inside, outside = good, end
    for _ in range(HALVINGS):
        middle = math.sqrt(inside * outside)
        inside, outside = (middle, outside) if fits(middle) else (inside, middle)
    return inside


def _arrives(line: _Line, constant: float, target: float, off: float, end: int) -> float:
    """Return the hours until the lowest (0) or highest (1) line is at the target, or infinity."""
    last = -math.log(line.x[-1]) * constant

    def there(hours: float) -> bool:
        return line.at(math.exp(-hours / constant), off)[end] <= target

    if there(last * (1 + 1e-9)):
        return line.start + last
    if not there(FAR_H):
        return math.inf
    low, high = last, FAR_H
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if there(middle) else (middle, high)
    return line.start + high

"""Currents over time: how long they stay at a level, and what heat a thermal element keeps.

A course holds each value from its time stamp to the next; the last stamp ends it. Splitting a
step into two never changes an answer.
"""

from __future__ import annotations

import math
from array import array
from bisect import bisect_right
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ..base.rounding import SAME

KEPT = 12  # excursions whose heat is kept apart; the highest is always known


class Course(NamedTuple):
    """Stamps in s, one more than there are currents in A (rms)."""

    times: Sequence[float]
    currents: Sequence[float]

    @property
    def highest(self) -> float:
        """The highest current in A."""
        return max(self.currents, default=0.0)


class After(NamedTuple):
    """A level that counts only after the stretch at a lower one: both limits in s."""

    lower: int
    lower_time: float
    time: float


class Stretch(NamedTuple):
    """A time without a break, and the limit that it is held against, both in s."""

    time: float
    limit: float

    @property
    def share(self) -> float:
        """The time as a share of its limit."""
        return self.time / self.limit


def steps(parts: Sequence[tuple[float, float]]) -> Course:
    """Return a course of (current in A, time in s) one after the other.

    >>> steps([(14.2, 0.4), (1.2, 600.0)])
    Course(times=[0.0, 0.4, 600.4], currents=[14.2, 1.2])
    """
    times = [0.0]
    for _, seconds in parts:
        times.append(times[-1] + seconds)
    return Course(times, [current for current, _ in parts])


def raised(course: Course, by: float) -> Course:
    """Return a course with so many A more all the time."""
    return course._replace(currents=[current + by for current in course.currents])


def from_level(level: float) -> float:
    """Return the least number that counts as at or above a level, as every criterion judges."""
    return level * (1 - SAME)


def past_level(level: float) -> float:
    """Return the least number that counts as above a level."""
    return math.nextafter(level * (1 + SAME), math.inf)


def longest(course: Course, levels: Sequence[float]) -> list[float]:
    """Return for each of the rising levels the longest time in s without a break at or above it."""
    return [s.time for s in stretches(course, levels, [1.0] * len(levels), {})]


def stretches(
    course: Course,
    levels: Sequence[float],
    limits: Sequence[float],
    after: Mapping[int, After],
) -> list[Stretch]:
    """Return for each of the rising levels the stretch at or above it that is most of its limit.

    A level in `after` counts in full only after so long at the lower one; from cold the two
    times together are its limit. One pass, and the memory does not grow with the course.
    """
    found = [Stretch(0.0, limit) for limit in limits]
    since = [0.0] * len(levels)
    reached, low, high = 0, -math.inf, levels[0] if levels else math.inf

    def close(moment: float, down_to: int) -> None:
        for j in range(down_to, reached):
            stretch = Stretch(moment - since[j], limits[j])
            if j in after:
                rule = after[j]
                both = Stretch(moment - since[rule.lower], rule.lower_time + rule.time)
                stretch = min(stretch, both, key=lambda s: s.share)
            if stretch.share > found[j].share:
                found[j] = stretch

    for moment, current in zip(course.times, course.currents, strict=False):
        if low <= current < high:
            continue
        now = bisect_right(levels, current)
        close(moment, now)
        for j in range(reached, now):
            since[j] = moment
        reached = now
        low = levels[now - 1] if now else -math.inf
        high = levels[now] if now < len(levels) else math.inf
    close(course.times[-1], 0)
    return found


class Element(NamedTuple):
    """A thermal element of the first order: `pickup` in A, `constant` in s.

    Its heat is 1 where it trips: dh/dt = ((i / pickup)^2 - h) / constant.
    """

    pickup: float
    constant: float


class Excursion(NamedTuple):
    """A stretch above a level: when it began in s, heat before it and highest heat in it."""

    start: float
    before: float
    after: float


class Heat(NamedTuple):
    """The highest heat, how many excursions there were, and the first of them."""

    highest: float
    excursions: int
    first: tuple[Excursion, ...]


def constant_of(pickup: float, current: float, seconds: float) -> float:
    """Return the time constant in s of an element that trips in so long from cold.

    >>> round(constant_of(1.13, 2.55, 1.0), 3)
    4.574
    """
    return -seconds / math.log1p(-((pickup / current) ** 2))


def heat(course: Course, element: Element, level: float) -> Heat:
    """Return the heat of an element from cold; excursions are above `level` in A.

    Each step is exact: h becomes target + (h - target) exp(-t / constant).
    """
    square, constant = element.pickup**2, element.constant
    above = past_level(level)
    now = highest = before = start = top = 0.0
    inside, count, last, factor = False, 0, -1.0, 1.0
    kept: list[Excursion] = []
    moments = iter(course.times)
    moment = next(moments)
    for following, current in zip(moments, course.currents, strict=False):
        if (current >= above) is not inside:
            if inside and len(kept) < KEPT:
                kept.append(Excursion(start, before, top))
            inside = not inside
            if inside:
                start, before, top, count = moment, now, now, count + 1
        seconds = following - moment
        if seconds != last:
            last, factor = seconds, math.exp(-seconds / constant)
        target = current * current / square
        now = target + (now - target) * factor
        if now > highest:
            highest = now
        if inside and now > top:
            top = now
        moment = following
    if inside and len(kept) < KEPT:
        kept.append(Excursion(start, before, top))
    return Heat(highest, count, tuple(kept))


def running_rms(times: Sequence[float], values: Sequence[float], period: float) -> Course:
    """Return the rms over the period in s that ends at each stamp, from instantaneous samples.

    Before the first full period the current is taken as zero before the record.
    """
    energy = array("d", [0.0])
    for i in range(len(times) - 1):
        energy.append(energy[-1] + values[i] * values[i] * (times[i + 1] - times[i]))
    rms = array("d")
    tail = 0
    for i, moment in enumerate(times):
        begin = moment - period
        while tail < i and times[tail + 1] <= begin:
            tail += 1
        part = values[tail] ** 2 * max(begin - times[tail], 0.0) if begin > times[0] else 0.0
        rms.append(math.sqrt(max(energy[i] - energy[tail] - part, 0.0) / period))
    return Course(times, rms[1:])

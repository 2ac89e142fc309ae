"""What a breaker or fuse is put to: one current, starts one after the other, or a recording."""

from __future__ import annotations

import itertools
import math
from typing import NamedTuple

from wirecalc import FileColumns, put
from wirecalc.trade import current_over_time, motors, overcurrent, trip_curves

MOST_LEVELS = 50  # distinct currents of a course at which a maker's curve is read exactly


class TimedCurrent(NamedTuple):
    """A course, and what is known beside it.

    `crest` is the highest instantaneous current over sqrt2, in A; `level` the one current in A
    and `elapsed` its time in s, where there is only one; `known` is the part of the course whose
    times are known, where they are not all.
    """

    course: current_over_time.Course
    crest: float
    crest_says: str
    level: float | None = None
    elapsed: float | None = None
    known: current_over_time.Course | None = None
    ignored: tuple[tuple[str, str], ...] = ()

    @classmethod
    def steady(cls, current: float, seconds: float | None, endless: float) -> TimedCurrent:
        """Return the run of one current; without a time it is taken to go on."""
        course = current_over_time.steps([(current, endless if seconds is None else seconds)])
        known = current_over_time.steps([]) if seconds is None else None
        return cls(course, *crest_of(current), current, seconds, known)

    def beside(self, other: float) -> TimedCurrent:
        """Return the run with other loads in A on the same device all the time."""
        course = current_over_time.raised(self.course, other)
        known = None if self.known is None else current_over_time.raised(self.known, other)
        level = None if self.level is None else self.level + other
        crest, _, note = self.crest_says.partition(";")
        says = f"{crest} + {put(other, 'A')};{note}, with the other loads"
        return self._replace(
            course=course, known=known, crest=self.crest + other, crest_says=says, level=level
        )

    def without(self, what: str, why: str) -> TimedCurrent:
        """Return the run, saying what is left out of it."""
        return self._replace(ignored=(*self.ignored, (what, why)))

    def levels(self, rating: float) -> list[float] | None:
        """Return the multiples at which a curve is to be read; None for too many."""
        distinct = set(self.course.currents)
        return None if len(distinct) > MOST_LEVELS else sorted(c / rating for c in distinct)


def crest_of(rms: float) -> tuple[float, str]:
    """Return the crest over sqrt2 in A of the worst start of so much rms, and how it was found."""
    factor = motors.offset_crest(overcurrent.PF_LOW) / math.sqrt(2)
    return (
        rms * factor,
        f"{put(rms, 'A')} x {put(factor)}; offset crest over sqrt2, pf {overcurrent.PF_LOW}",
    )


def course_of_starts(
    locked: float,
    settle_time: float | None,
    settled: float | None,
    on_time: float | None,
    off_time: float | None,
    starts: int | None,
    endless: float,
) -> TimedCurrent:
    """Return the run of starts: locked rotor, then the settled current, then a pause."""
    if settled is None and (starts or 1) == 1:
        return TimedCurrent.steady(locked, settle_time, endless)
    once = [(locked, settle_time)]
    if settled is not None:
        once.append((settled, on_time))
    if off_time is not None:
        once.append((0.0, off_time))
    parts = once * (starts or 1)
    course = current_over_time.steps([(a, endless if s is None else s) for a, s in parts])
    timed = [(a, s or 0.0) for a, s in itertools.takewhile(lambda p: p[1] is not None, parts)]
    known = current_over_time.steps(timed) if len(timed) < len(parts) else None
    return TimedCurrent(course, *crest_of(locked), known=known)


def curve_of(file: FileColumns) -> list[trip_curves.CurvePoint]:
    """Return the points of a maker's curve."""
    names = ("multiple", "hold_time", "trip_time")
    rows = zip(*(file.numbers[n] for n in names), strict=True)
    return [trip_curves.CurvePoint(m / 100, hold, trip) for m, hold, trip in rows]

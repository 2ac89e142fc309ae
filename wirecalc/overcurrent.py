"""Breakers and fuses: what their standard guarantees, and nothing else.

A device has points that it holds (so many times its rating for so long, from cold) and points by
which it has tripped. Everything between is `may trip`: no curve is drawn through the points of a
standard. What they say of other currents follows by monotony alone: less current for less time is
held too, more current for more time trips too. A value that is only remembered is kept apart.

- A rated current is carried without end. IEC 60898-1 states 1.13 times for one hour (two over
  63 A), so beyond the hour such a current may trip.
- IEC test b (1.45 times) starts right after test a: from cold the two times together are its
  limit, and a course that was at 1.13 times before counts that.
- UL 489 sets no least time above 100 %: any current above the rating may trip.
- The instantaneous trip sees the crest: see `Instantaneous`.
- Starts that follow each other: no standard states a warm element. The elements of the first
  order that hold just what the standard holds are followed through the course (`elements`); they
  can only turn `holds` into `may trip`.
- No ambient factor is known: hotter than the reference it may trip sooner, colder it may hold.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from itertools import pairwise
from typing import NamedTuple

from .courses import (
    After,
    Course,
    Element,
    Stretch,
    constant_of,
    from_level,
    past_level,
    stretches,
)
from .criteria import at_or_below
from .sources import PRACTICE, Confidence, Source, confirmed
from .tables import Row, load

INSTANT_LOW, INSTANT_HIGH = 5.0, 10.0  # instantaneous trip of a house breaker; practice
PF_LOW = 0.5  # least locked-rotor power factor of a small single-phase motor; practice
HOUR = 3600.0
FASTEST_THERMAL = 0.1  # s; what trips sooner is the instantaneous part (IEC 60898-1, tests d and e)
CURVE = Source("curve", "the maker's curve", confidence=Confidence.TYPED)

_IEC_AMBIENT = confirmed("iec-60898-30", "IEC 60898-1", "reference ambient 30 C", copies=1)
_TYPES = ("b", "c", "d")
_BREAKERS = ("ul-489", *(f"iec-60898-{t}" for t in _TYPES))


class Limit(NamedTuple):
    """A point: `multiple` of the rating is held for `seconds`, or trips within them.

    `after` (multiple, seconds) is a stretch that must come first; a point that is not `thermal`
    does not depend on the ambient. Endless is infinite.
    """

    multiple: float
    seconds: float
    source: Source
    thermal: bool = True
    after: tuple[float, float] | None = None

    @property
    def from_cold(self) -> float:
        """The time in s from cold."""
        return self.seconds + (self.after[1] if self.after else 0.0)


class Instantaneous(NamedTuple):
    """Multiples of the rating against crest / sqrt2; `high` is None where the standard has it."""

    low: float
    high: float | None
    source: Source


class Ambient(NamedTuple):
    """The temperatures in C at which the device holds and trips as stated."""

    hold: float
    trip: float
    source: Source


class Device(NamedTuple):
    """A breaker or fuse of one rating in A; `recalled` is what is only remembered."""

    name: str
    rating: float
    holds: tuple[Limit, ...]
    trips: tuple[Limit, ...]
    recalled: tuple[tuple[str, Limit], ...] = ()
    instantaneous: Instantaneous | None = None
    ambient: Ambient | None = None

    @property
    def most(self) -> float:
        """The largest multiple that it holds for any time."""
        return max((h.multiple for h in self.holds), default=0.0)

    def held_for(self, multiple: float) -> float:
        """Return for how long in s it surely holds a multiple from cold."""
        fits = (h.seconds for h in self.holds if at_or_below(multiple, h.multiple))
        return max(fits, default=0.0)

    def tripped_in(self, multiple: float) -> float:
        """Return within what time in s it has surely tripped, from any state; else infinite."""
        fits = (t.from_cold for t in self.trips if at_or_below(t.multiple, multiple))
        return min(fits, default=math.inf)


_NOTHING = Limit(0.0, math.inf, PRACTICE)  # where the levels begin


def devices() -> list[str]:
    """Return the names of all devices."""
    fuses = dict.fromkeys(row.text("device") for row in load("fuses-ul248").rows)
    return [*_BREAKERS, *fuses]


def device(name: str, rating: float) -> Device:
    """Return a device of a rating in A, with the points that its standard states for it."""
    if name == "ul-489":
        rows = [r for r in load("breaker-ul489").rows if _fits(r, rating, "rating_from_A")]
        volts = [r for r in rows if r.text("volts") in ("", "250 or less")]
        ambient = Ambient(40.0, 25.0, rows[0].source)  # 100 % at 40 C, the others at 25 C
        practice = Instantaneous(INSTANT_LOW, INSTANT_HIGH, PRACTICE)
        return _built(name, rating, volts, practice, ambient)
    if name.startswith("iec-60898-"):
        letter = name[-1].upper()
        rows = [
            r
            for r in load("breaker-iec60898").rows
            if r.text("type") in ("all", letter) and _fits(r, rating, "rating_over_A")
        ]
        lower = next(r for r in rows if r.text("test") == "d")
        magnetic = Instantaneous(lower.number("multiple"), None, lower.source)
        return _built(name, rating, rows, magnetic, Ambient(30.0, 30.0, _IEC_AMBIENT))
    rows = [
        r
        for r in load("fuses-ul248").rows
        if r.text("device") == name and _fits(r, rating, "rating_from_A")
    ]
    return _built(name, rating, rows, None, None)


def _fits(row: Row, rating: float, start: str) -> bool:
    first, last = row.cells[start], row.cells["rating_to_A"]
    if first is None or (last is not None and rating > row.number("rating_to_A")):
        return False
    least = row.number(start)
    return rating > least if start == "rating_over_A" else rating >= least


def _built(
    name: str,
    rating: float,
    rows: Iterable[Row],
    instantaneous: Instantaneous | None,
    ambient: Ambient | None,
) -> Device:
    holds, trips, recalled = [], [], []
    first: tuple[float, float] | None = None
    for row in rows:
        holding = row.text("hold_or_trip") == "holds"
        if not row.cells["time_s"] and not holding:
            continue
        seconds = row.number("time_s") if row.cells["time_s"] else math.inf
        limit = Limit(row.number("multiple"), seconds, row.source)
        if row.printed.get("start") == "right after a":
            limit = limit._replace(after=first)
        if row.printed.get("test") == "a":
            first = (limit.multiple, limit.seconds)
        editions = row.printed.get("edition", "all") != "all"
        if row.source.confidence is Confidence.MEMORY or editions:
            recalled.append((row.text("hold_or_trip"), limit))
        elif holding:
            holds.append(limit)
        else:
            trips.append(limit._replace(thermal=seconds > FASTEST_THERMAL))
    return Device(
        name,
        rating,
        tuple(sorted(holds, key=lambda h: h.multiple)),
        tuple(sorted(trips, key=lambda t: t.multiple)),
        tuple(recalled),
        instantaneous,
        ambient,
    )


class Reached(NamedTuple):
    """How much of a time limit a course used: above or at which multiple, whose limit."""

    stretch: Stretch
    limit: Limit


class Measured(NamedTuple):
    """The worst of a course against the timed points; None where the device has none."""

    held: Reached | None
    trips: Reached | None
    instant: Reached | None


def measure(device: Device, course: Course) -> Measured:
    """Return how much of its times a course uses: those held, those that trip, those in 0.1 s."""
    levels: list[tuple[float, float, str, Limit]] = []
    for limit, above in pairwise((_NOTHING, *device.holds)):
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


def _seconds(limit: Limit) -> float:
    return limit.seconds


def _level(device: Device, limit: Limit) -> float:
    return from_level((limit.after or (0.0, 0.0))[0] * device.rating)


def elements(device: Device) -> list[Element]:
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

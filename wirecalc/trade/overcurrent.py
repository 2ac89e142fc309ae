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
from typing import NamedTuple

from ..published.sources import PRACTICE, Confidence, Source, confirmed
from ..published.tables import Row, load
from ..said.verdicts import at_or_below

INSTANT_LOW, INSTANT_HIGH = 5.0, 10.0  # instantaneous trip of a house breaker; practice
PF_LOW = 0.5  # least locked-rotor power factor of a small single-phase motor; practice
HOUR = 3600.0
FASTEST_THERMAL = 0.1  # s; what trips sooner is the instantaneous part (IEC 60898-1, tests d and e)
CURVE = Source("curve", "the maker's curve", confidence=Confidence.TYPED)

_IEC_AMBIENT = confirmed("iec-60898-30", "IEC 60898-1", "reference ambient 30 C", copies=1)
_TYPES = ("b", "c", "d")
_BREAKERS = ("ul-489", *(f"iec-60898-{t}" for t in _TYPES))


class TripPoint(NamedTuple):
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


class OvercurrentDevice(NamedTuple):
    """A breaker or fuse of one rating in A; `recalled` is what is only remembered."""

    name: str
    rating: float
    holds: tuple[TripPoint, ...]
    trips: tuple[TripPoint, ...]
    recalled: tuple[tuple[str, TripPoint], ...] = ()
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


NOTHING = TripPoint(0.0, math.inf, PRACTICE)  # where the levels begin


def devices() -> list[str]:
    """Return the names of all devices."""
    fuses = dict.fromkeys(row.text("device") for row in load("fuses-ul248").rows)
    return [*_BREAKERS, *fuses]


def device(name: str, rating: float) -> OvercurrentDevice:
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
) -> OvercurrentDevice:
    holds, trips, recalled = [], [], []
    first: tuple[float, float] | None = None
    for row in rows:
        holding = row.text("hold_or_trip") == "holds"
        if not row.cells["time_s"] and not holding:
            continue
        seconds = row.number("time_s") if row.cells["time_s"] else math.inf
        limit = TripPoint(row.number("multiple"), seconds, row.source)
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
    return OvercurrentDevice(
        name,
        rating,
        tuple(sorted(holds, key=lambda h: h.multiple)),
        tuple(sorted(trips, key=lambda t: t.multiple)),
        tuple(recalled),
        instantaneous,
        ambient,
    )

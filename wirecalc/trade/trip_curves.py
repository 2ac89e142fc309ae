"""A maker's curve of a breaker or fuse beside its standard: the tighter of the two counts."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from .overcurrent import CURVE, FASTEST_THERMAL, Instantaneous, OvercurrentDevice, TripPoint

GRID = 24  # levels between two points of a maker's curve, for a recorded course


class CurvePoint(NamedTuple):
    """A point of a maker's curve: multiple of the rating, least and most trip time in s."""

    multiple: float
    hold: float
    trip: float


def wrong_curve(
    points: Sequence[CurvePoint], device: OvercurrentDevice
) -> Iterator[tuple[int, str]]:
    """Yield what is wrong with a curve: the number of the point, and why."""
    for i, point in enumerate(points):
        if point.hold >= point.trip:
            yield i, f"trips after {point.hold:g} s at the least and {point.trip:g} s at the most"
        elif point.hold >= device.tripped_in(point.multiple):
            must = device.tripped_in(point.multiple)
            yield i, f"holds {point.hold:g} s where the standard has it tripped in {must:g} s"
    for i, (one, two) in enumerate(pairwise(points), start=1):
        if two.multiple <= one.multiple:
            yield i, "its multiple is not above that of the row before"
        elif two.hold > one.hold or two.trip > one.trip:
            yield i, "more current takes longer than in the row before"


def with_curve(
    device: OvercurrentDevice, points: Sequence[CurvePoint], levels: Sequence[float] | None
) -> OvercurrentDevice:
    """Return a device with a maker's curve beside its standard: the tighter of the two counts.

    Between two points time over current is straight on a log-log scale, taken at `levels`
    (multiples) or, without any, at a grid. Outside of its points the curve says nothing.
    """
    found = list(points)
    for one, two in pairwise(points):
        found += [_between(one, two, m) for m in _inside(one.multiple, two.multiple, levels)]
    found.sort()
    holds = [TripPoint(p.multiple, p.hold, CURVE) for p in found]
    trips = [TripPoint(p.multiple, p.trip, CURVE, thermal=p.trip > FASTEST_THERMAL) for p in found]
    slow = _slow_end(points)
    magnetic = device.instantaneous
    if magnetic is not None and slow > magnetic.low:
        magnetic = Instantaneous(slow, magnetic.high and max(magnetic.high, slow), CURVE)
    return device._replace(
        holds=tuple(sorted([*device.holds, *holds], key=lambda h: h.multiple)),
        trips=tuple(sorted([*device.trips, *trips], key=lambda t: t.multiple)),
        instantaneous=magnetic,
    )


def _slow_end(points: Sequence[CurvePoint]) -> float:
    """Return up to what multiple a curve holds so long that the instantaneous part rests."""
    slow = [p for p in points if p.hold >= FASTEST_THERMAL]
    if not slow or len(slow) == len(points):
        return slow[-1].multiple if slow else 0.0
    one, two = slow[-1], points[len(slow)]
    share = math.log(FASTEST_THERMAL / one.hold) / math.log(two.hold / one.hold)
    return one.multiple * math.exp(share * math.log(two.multiple / one.multiple))


def _inside(low: float, high: float, levels: Sequence[float] | None) -> list[float]:
    if levels is None:
        return [low * (high / low) ** (i / GRID) for i in range(1, GRID)]
    return [m for m in dict.fromkeys(levels) if low < m < high]


def _between(one: CurvePoint, two: CurvePoint, multiple: float) -> CurvePoint:
    share = math.log(multiple / one.multiple) / math.log(two.multiple / one.multiple)
    hold = one.hold * (two.hold / one.hold) ** share
    return CurvePoint(multiple, hold, one.trip * (two.trip / one.trip) ** share)

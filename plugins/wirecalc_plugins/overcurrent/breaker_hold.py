"""Whether a house breaker holds while a motor starts and runs (UL 489, common practice)."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    answer,
    at_most,
    at_or_below,
    cannot_tell,
    motors,
    overcurrent,
)
from wirecalc.overcurrent import INSTANT_HIGH, INSTANT_LOW, Limit
from wirecalc.sources import confirmed

_CURVE = "read the breaker maker's curve; never fit a larger breaker"
_STEADY = confirmed("nec-210-20", "NEC", "210.19(A)(1) and 210.20(A)", copies=2)
PF_LOW = overcurrent.PF_LOW


def breaker_hold(
    rating: float,
    expected: float,
    measured: float | None,
    settled: float | None,
    settle_time: float | None,
) -> Iterator[Item]:
    """Compare rms heating, first crest and settled current with what is known of a breaker.

    `rating`, `expected` and `measured` start current and `settled` current in A, all rms; 0 or
    None where unknown. `settle_time` in s.
    """
    rms = max(measured or 0.0, expected)
    device = overcurrent.device("ul-489", rating)
    bounds = sorted(device.trips, key=lambda trip: trip.seconds)  # soonest first
    if rms > 0:
        yield from _start(device, rms, [b for b in bounds if (settle_time or 0.0) >= b.seconds])
    else:
        yield cannot_tell(
            "start current within the breaker's rating",
            "no start current to compare with",
            measure="read LRA on the plate, or measure the start with the inrush function",
        )
    if settled is not None:
        yield _running(rating, settled, bounds)


def _start(device: overcurrent.Device, rms: float, reached: Sequence[Limit]) -> Iterator[Item]:
    """Judge the start; `reached` are the bounds within which it has not yet settled."""
    rating, held = device.rating, device.holds[0]  # it holds 100 %
    crest = rms * motors.offset_crest(PF_LOW) / math.sqrt(2)
    yield at_most(
        "start current within the breaker's rating",
        rms,
        rating,
        "A",
        source=held.source,
        advisory=True,
        says="above its rating a breaker may trip; the standard sets no least time",
        action=_CURVE,
    )
    for bound in reached[-1:]:
        yield at_most(
            "start current held for so long",
            rms,
            bound.multiple * rating,
            "A",
            source=bound.source,
            says="a breaker must have tripped by then",
            action=_CURVE,
        )
    yield at_most(
        "first crest against the breaker",
        crest,
        INSTANT_HIGH * rating,
        "A",
        caution=INSTANT_LOW * rating,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="the instantaneous trip of a house breaker is not standardised",
        action=_CURVE,
    )
    holds = at_or_below(rms, rating) and at_or_below(crest, INSTANT_LOW * rating)
    trips = not at_or_below(crest, INSTANT_HIGH * rating) or any(
        not at_or_below(rms, bound.multiple * rating) for bound in reached
    )
    yield answer("breaker at the start", "holds" if holds else "trips" if trips else "may trip")


def _running(rating: float, settled: float, bounds: Sequence[Limit]) -> Item:
    """Judge the settled current: a steady load is at most the breaker's rating."""
    sure = [b for b in bounds if not at_or_below(settled, b.multiple * rating)]
    return at_most(
        "settled current against the breaker",
        settled,
        rating,
        "A",
        source=_STEADY,
        says=f"the breaker trips within {sure[-1].seconds / 60:.0f} min" if sure else "",
        action="find out what else it draws; never fit a larger breaker",
    )

"""Whether a house breaker holds while a motor starts and runs (UL 489, common practice)."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Confidence,
    Item,
    Origin,
    Source,
    answer,
    at_most,
    at_or_below,
    cannot_tell,
    motors,
    tables,
)
from wirecalc.sources import confirmed

INSTANT_LOW, INSTANT_HIGH = 5.0, 10.0  # instantaneous trip, times the rating; practice
_CURVE = "read the breaker maker's curve; never fit a larger breaker"
_STEADY = confirmed("nec-210-20", "NEC", "210.19(A)(1) and 210.20(A)", copies=2)
PF_LOW = 0.5  # least locked-rotor power factor of a small single-phase motor; practice


class _Bound(NamedTuple):
    """A time in s within which a breaker must trip at a multiple of its rating."""

    seconds: float
    multiple: float
    source: Source


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
    bounds = _bounds(rating)
    if rms > 0:
        yield from _start(rating, rms, [b for b in bounds if (settle_time or 0.0) >= b.seconds])
    else:
        yield cannot_tell(
            "start current within the breaker's rating",
            "no start current to compare with",
            measure="read LRA on the plate, or measure the start with the inrush function",
        )
    if settled is not None:
        yield _running(rating, settled, bounds)


def _start(rating: float, rms: float, reached: Sequence[_Bound]) -> Iterator[Item]:
    """Judge the start; `reached` are the bounds within which it has not yet settled."""
    crest = rms * motors.offset_crest(PF_LOW) / math.sqrt(2)
    yield at_most(
        "start current within the breaker's rating",
        rms,
        rating,
        "A",
        source=tables.load("breaker-ul489").rows[0].source,  # holds 100 %
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


def _running(rating: float, settled: float, bounds: Sequence[_Bound]) -> Item:
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


def _bounds(rating: float) -> list[_Bound]:
    """Return when a UL 489 breaker must have tripped, soonest first.

    Only the confirmed calibration points bound it; the recalled field times do not.
    """
    found = []
    for row in tables.load("breaker-ul489").rows:
        first, last = row.cells["rating_from_A"], row.cells["rating_to_A"]
        fits = first is not None and row.number("rating_from_A") <= rating
        fits = fits and (last is None or rating <= row.number("rating_to_A"))
        if fits and row.cells["time_s"] and row.source.confidence is Confidence.CONFIRMED:
            found.append(_Bound(row.number("time_s"), row.number("multiple"), row.source))
    return sorted(found)

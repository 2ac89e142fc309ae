"""Whether a house breaker holds while a motor starts and runs (UL 489, common practice)."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Confidence,
    Item,
    Origin,
    Source,
    answer,
    at_most,
    cannot_tell,
    motors,
    tables,
)

INSTANT_LOW, INSTANT_HIGH = 5.0, 10.0  # instantaneous trip, times the rating; practice
PF_LOW = 0.5  # least locked-rotor power factor of a small single-phase motor; practice


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
    if rms == 0:
        yield cannot_tell(
            "start current within the breaker's rating",
            "no start current to compare with",
            measure="read LRA on the plate, or measure the start with the inrush function",
        )
        return
    crest = rms * motors.offset_crest(PF_LOW) / math.sqrt(2)
    trips = [b for b in _bounds(rating) if settle_time is not None and settle_time >= b[0]]
    yield at_most(
        "start current within the breaker's rating",
        rms,
        rating,
        "A",
        source=tables.load("breaker-ul489").rows[0].source,  # holds 100 %
        advisory=True,
        says="above its rating a breaker may trip; the standard sets no least time",
        action="read the breaker maker's curve; never fit a larger breaker",
    )
    for _, multiple, source in trips[:1]:
        yield at_most(
            "start current held for so long",
            rms,
            multiple * rating,
            "A",
            source=source,
            says="a breaker must have tripped by then",
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
        action="read the breaker maker's curve; never fit a larger breaker",
    )
    last = _bounds(rating)[-1:]
    if settled is not None and not last:
        yield cannot_tell(
            "settled current against the breaker",
            f"no confirmed trip time of a {rating:g} A breaker",
            measure="read the breaker maker's curve",
        )
    for _, multiple, source in last if settled is not None else ():
        yield at_most(
            "settled current against the breaker",
            settled or 0.0,
            multiple * rating,
            "A",
            caution=rating,
            source=source,
            says="the breaker trips within the hour",
            action="find out what else it draws; never fit a larger breaker",
        )
    holds = rms <= rating and crest <= INSTANT_LOW * rating and (settled or 0.0) <= rating
    must = crest > INSTANT_HIGH * rating or any(rms > b[1] * rating for b in trips)
    must = must or any((settled or 0.0) > b[1] * rating for b in last)
    yield answer("breaker", "holds" if holds else "trips" if must else "may trip")


def _bounds(rating: float) -> list[tuple[float, float, Source]]:
    """Return when a UL 489 breaker must have tripped: seconds, multiple of its rating, source.

    Only the confirmed calibration points bound it, soonest first; the recalled field times do
    not.
    """
    found = []
    for row in tables.load("breaker-ul489").rows:
        first, last = row.cells["rating_from_A"], row.cells["rating_to_A"]
        fits = first is not None and row.number("rating_from_A") <= rating
        fits = fits and (last is None or rating <= row.number("rating_to_A"))
        if fits and row.cells["time_s"] and row.source.confidence is Confidence.CONFIRMED:
            found.append((row.number("time_s"), row.number("multiple"), row.source))
    return sorted(found, key=lambda bound: bound[0])

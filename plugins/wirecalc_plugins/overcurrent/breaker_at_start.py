"""Whether a breaker holds while a motor starts, by its standard and common practice."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Source,
    answer,
    at_most,
    at_or_below,
    cannot_tell,
    from_memory,
    not_checked,
)
from wirecalc.trade import motors, overcurrent

_CURVE = "read the breaker maker's curve; never fit a larger breaker"
_SEE_TRIP = "wirecalc trip"
PF_LOW = overcurrent.PF_LOW
SHORT_TIMES, SHORT_S = 3.0, 1.0  # times its rating that a house breaker's thermal part holds, and s
_SHORT = from_memory(
    "ul-489-short", "makers' curves of UL 489 breakers", "three times the rating for a second"
)


def breaker_at_start(
    name: str,
    rating: float,
    expected: float,
    measured: float | None,
    settled: float | None,
    settle_time: float | None,
) -> Iterator[Item]:
    """Compare rms heating, first crest and settled current with what is known of a breaker.

    `name` is the device's, as `trip` has it; `rating`, `expected` and `measured` start current
    and `settled` current in A, all rms; 0 or None where unknown. `settle_time` in s.
    """
    device = overcurrent.device(name, rating)
    if not device.holds:
        yield cannot_tell(
            "start current within the breaker's rating",
            f"no confirmed limit of a {name} of {rating:g} A was seen",
            measure=f"give its maker's curve to {_SEE_TRIP}",
        )
        return
    rms = max(measured or 0.0, expected)
    if rms > 0:
        yield from _start(device, rms, settle_time)
    else:
        yield cannot_tell(
            "start current within the breaker's rating",
            "no start current to compare with",
            measure="read LRA on the plate, or measure the start with the inrush function",
        )
    if settled is not None:
        yield _running(device, settled)


def _held(device: overcurrent.OvercurrentDevice, lasts: float) -> tuple[float, Source]:
    """Return the multiple of the rating that a device holds for so many seconds, and its source."""
    held = max((h for h in device.holds if h.seconds >= lasts), key=lambda h: h.multiple)
    if device.name == "ul-489" and lasts <= SHORT_S and held.multiple < SHORT_TIMES:
        return SHORT_TIMES, _SHORT
    return held.multiple, held.source


def _start(
    device: overcurrent.OvercurrentDevice, rms: float, settle_time: float | None
) -> Iterator[Item]:
    """Judge the start by what is held for so long, and by what has tripped before it settled."""
    rating = device.rating
    lasts = math.inf if settle_time is None else settle_time
    multiple, source = _held(device, lasts)
    reached = [b for b in device.trips if (settle_time or 0.0) >= b.from_cold]
    must = min(reached, key=lambda b: b.multiple, default=None)
    yield at_most(
        "start current within the breaker's rating",
        rms,
        multiple * rating,
        "A",
        source=source,
        advisory=True,
        behind="what must have tripped the breaker by then, and the first crest",
        says="above what it carries for so long a breaker may trip",
        action=_CURVE,
    )
    if must is not None:
        yield at_most(
            "start current held for so long",
            rms,
            must.multiple * rating,
            "A",
            source=must.source,
            says="a breaker must have tripped by then",
            action=_CURVE,
        )
    crest = rms * motors.offset_crest(PF_LOW) / math.sqrt(2)
    part = device.instantaneous
    if part is not None:
        yield _crest(device, part, crest)
    low = math.inf if part is None else part.low * rating
    high = math.inf if part is None or part.high is None else part.high * rating
    holds = at_or_below(rms, multiple * rating) and at_or_below(crest, low)
    trips = not at_or_below(crest, high)
    trips = trips or (must is not None and not at_or_below(rms, must.multiple * rating))
    yield answer("breaker at the start", "holds" if holds else "trips" if trips else "may trip")


def _crest(
    device: overcurrent.OvercurrentDevice, part: overcurrent.Instantaneous, crest: float
) -> Item:
    """Judge the first crest over sqrt2; a standard's instantaneous part has its end in 0.1 s."""
    name, rating = "first crest over sqrt2 against the breaker", device.rating
    if part.high is None:
        return at_most(
            name,
            crest,
            part.low * rating,
            "A",
            source=part.source,
            advisory=True,
            behind="what must have tripped the breaker by then",
            says="the instantaneous part sees the crest, not the rms value",
            action=_CURVE,
        )
    return at_most(
        name,
        crest,
        part.high * rating,
        "A",
        caution=part.low * rating,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="the instantaneous trip of a house breaker is not standardised",
        action=_CURVE,
    )


def _running(device: overcurrent.OvercurrentDevice, settled: float) -> Item:
    """Judge a settled current that the breaker does not carry; what it may carry is no start."""
    rating, carried = device.rating, device.holds[0]
    if at_or_below(settled, rating):
        return not_checked("settled current on this circuit", "see wirecalc breaker")
    sure = [b for b in device.trips if not at_or_below(settled, b.multiple * rating)]
    soon = min((b.from_cold for b in sure), default=None)
    return at_most(
        "settled current against the breaker",
        settled,
        rating,
        "A",
        source=carried.source,
        says="" if soon is None else f"the breaker trips within {max(soon / 60, 0.1):.2g} min",
        action="find out what else it draws; never fit a larger breaker",
    )

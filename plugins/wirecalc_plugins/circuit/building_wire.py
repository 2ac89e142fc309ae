"""The wire of a branch circuit: what it carries, and the breaker that it allows (NEC)."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, Wire, at_most, at_or_below, cannot_tell, caution, figure, put, tables
from wirecalc.trade import conductors, nec_ampacity

from .standard_ratings import rating_at_least
from .unlisted_wire import too_hot, unlisted_breaker, unlisted_in_heat, unlisted_load
from .wire_names import (
    ALLOWED,
    BREAKER,
    CORRECTED,
    ELECTRICIAN,
    LOAD,
    class_first,
    counts_as,
    on_conditions,
)
from .wire_place import CONTINUOUS, Ampacity, WirePlace, corrected


def load_on_wire(
    current: float, factor: float | None, breaker: float | None, wire: Wire, place: WirePlace
) -> Iterator[Item]:
    """Judge breaker and load on a building wire, before and after correction.

    `current` and `breaker` in A; `factor` is 1.25 for a load of 3 hours or more, 1 for a shorter
    one, None where that is not known. Without a breaker only the load is judged, as on a motor
    circuit, whose device other rules set.
    """
    if wire.metal != "copper":
        yield caution("alu-01")
    own = nec_ampacity.ampacity(wire, place.wire_class)
    at_terminal = nec_ampacity.ampacity(wire, min(place.wire_class, place.termination))
    if own is None or at_terminal is None:
        if breaker is not None:
            yield unlisted_breaker(breaker, wire)
        yield unlisted_load(current * (factor or 1.0), wire, place.wire_class)
        yield from unlisted_in_heat(current, wire, place)
        return
    yield from counts_as(wire, own)
    yield _load(current, factor, at_terminal)
    heat = (
        None
        if place.ambient is None
        else nec_ampacity.ambient_factor(place.wire_class, place.ambient)
    )
    if place.ambient is not None and heat is None:
        yield too_hot(place)
        return
    after = None if place.missing else corrected(own, at_terminal, place, heat)
    if breaker is not None:
        yield _breaker(breaker, wire, at_terminal, after, place)
    yield from _corrected_load(current, after, own, place, heat)


def _load(current: float, factor: float | None, at_terminal: tables.Row) -> Item:
    """Judge the load on the wire before correction, 125 % of it where it runs 3 h or more."""
    amps = at_terminal.number("ampacity_A")
    long = current * CONTINUOUS
    if factor is None and at_or_below(current, amps) and not at_or_below(long, amps):
        return cannot_tell(
            LOAD,
            f"{current:.4g} A on {amps:g} A: from 3 h on the load counts 125 %",
            measure="find out how long it runs at most",
            needs=("run_time",),
            source=at_terminal.source,
        )
    counted = current * (factor or (CONTINUOUS if at_or_below(current, amps) else 1.0))
    return at_most(
        LOAD,
        counted,
        amps,
        "A",
        source=at_terminal.source,
        says="a load of 3 h or more counts 125 %" if counted > current else "",
        action=ELECTRICIAN,
    )


def _breaker(
    rating: float,
    wire: Wire,
    at_terminal: tables.Row,
    after: Ampacity | None,
    place: WirePlace,
) -> Item:
    """Judge the breaker on this wire: NEC 240.4(D) for small wire, and the corrected ampacity."""
    small = nec_ampacity.small_conductor_breaker(wire)
    if small is not None and not at_or_below(rating, small.number("breaker_A")):
        return at_most(
            BREAKER, rating, small.number("breaker_A"), "A", source=small.source, action=ALLOWED
        )
    if small is not None and small.number("breaker_A") < 15:
        return on_conditions(small)
    amps, source = after or Ampacity(at_terminal.number("ampacity_A"), at_terminal.source)
    if not at_or_below(rating, rating_at_least(amps)):
        return at_most(BREAKER, rating, amps, "A", source=source, action=ALLOWED)
    if after is None:
        return cannot_tell(
            BREAKER,
            f"{' and '.join(place.missing)} not given: heat around the wire lowers what it carries",
            measure="measure the hottest air around the wire; count the wires in the cable",
            needs=place.missing,
            source=source,
        )
    if at_or_below(rating, amps):
        return at_most(BREAKER, rating, amps, "A", source=source)
    return cannot_tell(
        BREAKER,
        f"the breaker is over the wire's {amps:.4g} A; NEC 240.4(B) allows the next standard "
        "rating on some circuits (from memory)",
        measure=class_first(place) + "have an electrician read the code for this circuit",
        source=source,
    )


def _corrected_load(
    current: float,
    after: Ampacity | None,
    own: tables.Row,
    place: WirePlace,
    heat: conductors.Factor | None,
) -> Iterator[Item]:
    if after is None or heat is None or place.together is None:
        yield cannot_tell(
            CORRECTED,
            f"{' and '.join(place.missing)} not given: heat around the wire lowers what it carries",
            measure="measure the hottest air around the wire; count the wires in the cable",
            needs=place.missing,
        )
        return
    amps, source = after
    bundle = nec_ampacity.count_factor(place.together)
    yield figure(
        "corrected ampacity",
        amps,
        "A",
        source=source,
        working=lambda: (
            f"{put(own.number('ampacity_A'))} A x {put(heat.value)} x {put(bundle.value)}; at "
            f"{put(place.ambient or 0.0)} C, {place.together} wires"
            if at_or_below(own.number("ampacity_A") * heat.value * bundle.value, amps)
            else "the termination's column, which is less than the corrected ampacity"
        ),
        toward="down",
    )
    yield at_most(CORRECTED, current, amps, "A", source=source, action=ELECTRICIAN)

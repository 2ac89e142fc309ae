"""A building wire that the NEC's table does not list: what still rules it out."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, Wire, at_most, at_or_below, cannot_tell, requires
from wirecalc.trade import nec_ampacity

from .wire_names import ALLOWED, BREAKER, CORRECTED, ELECTRICIAN, LOAD, on_conditions
from .wire_place import WirePlace, corrected


def unlisted_breaker(rating: float, wire: Wire) -> Item:
    """Judge the breaker in A on a wire without an ampacity: 240.4(D) may still rule it out."""
    small = nec_ampacity.small_conductor_breaker(wire) or nec_ampacity.thinnest_breaker(wire)
    if small is not None and not at_or_below(rating, small.number("breaker_A")):
        return at_most(
            BREAKER, rating, small.number("breaker_A"), "A", source=small.source, action=ALLOWED
        )
    if small is not None and small.number("breaker_A") < 15:
        return on_conditions(small)
    return cannot_tell(
        BREAKER,
        f"no ampacity of {wire} was found to compare with the breaker",
        measure="use the table of the code that this wire was installed by",
    )


def unlisted_load(load: float, wire: Wire, wire_class: int) -> Item:
    """Judge a load in A: a wire thinner than all that are listed carries no more than the last."""
    last = nec_ampacity.thinnest_ampacity(wire, wire_class)
    if last is not None and not at_or_below(load, last.number("ampacity_A")):
        return at_most(
            LOAD,
            load,
            last.number("ampacity_A"),
            "A",
            source=last.source,
            says=f"{wire} is thinner than the thinnest size listed",
            action=ELECTRICIAN,
        )
    return cannot_tell(
        LOAD,
        f"NEC Table 310.16 has no ampacity for {wire} at {wire_class} C",
        measure="use the table of the code that this wire was installed by",
    )


def unlisted_in_heat(current: float, wire: Wire, place: WirePlace) -> Iterator[Item]:
    """Rule out in heat what would rule out the thinnest size listed: thinner carries no more."""
    own = nec_ampacity.thinnest_ampacity(wire, place.wire_class)
    at_terminal = nec_ampacity.thinnest_ampacity(wire, min(place.wire_class, place.termination))
    if own is None or at_terminal is None or place.ambient is None:
        return
    heat = nec_ampacity.ambient_factor(place.wire_class, place.ambient)
    if heat is None:
        yield too_hot(place)
    elif place.together is not None:
        most = corrected(own, at_terminal, place, heat)
        if not at_or_below(current, most.amps):
            says = f"{wire} is thinner than the thinnest size listed"
            yield at_most(
                CORRECTED,
                current,
                most.amps,
                "A",
                source=most.source,
                says=says,
                action=ELECTRICIAN,
            )


def too_hot(place: WirePlace) -> Item:
    """Rule out a place past the end of the ambient table, which may be a slip of the unit."""
    last, hot = nec_ampacity.hottest_factor(place.wire_class), f"{place.ambient:g}"
    return requires(
        CORRECTED,
        False,
        says=f"the table of {place.wire_class} C wire ends below {hot} C; is it {hot} F?",
        source=last.source,
        action=f"look at the thermometer's unit: {hot} C, or {hot} F? If C, this wire is "
        "not for so hot a place: a job for an electrician",
    )

"""The wire of a branch circuit: what it carries, and the breaker that it allows (NEC)."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    Item,
    Problem,
    Source,
    Wire,
    at_most,
    at_or_below,
    cannot_tell,
    caution,
    conductors,
    figure,
    put,
    requires,
    tables,
)
from wirecalc.sources import confirmed

from .standard_ratings import rating_at_least

RATINGS = (60, 75, 90)  # columns of the ampacity table, C
CONTINUOUS = 1.25  # NEC 210.19(A)(1), 210.20(A): a load of 3 hours or more
_TERMINATION = confirmed("nec-110-14", "NEC", "110.14(C)(1)", copies=2)
_ELECTRICIAN = "put the load on a circuit that carries it: a job for an electrician"
_CLASS = "read the class printed on the wire (60 C was taken): --insulation-class; if it is 60 C, "
_ALLOWED = "have an electrician fit the breaker that the wire allows"
_BREAKER, _LOAD, _CORRECTED = (
    "breaker on this wire",
    "load on the wire",
    "load on the wire, corrected",
)


class Place(NamedTuple):
    """How a building wire lies: classes and ambient in C, current-carrying wires together."""

    wire_class: int
    termination: int
    ambient: float | None
    together: int | None

    @property
    def missing(self) -> tuple[str, ...]:
        """Names of the inputs without which the wire cannot be corrected."""
        values = (("ambient", self.ambient), ("conductors", self.together))
        return tuple(name for name, value in values if value is None)


class _Ampacity(NamedTuple):
    amps: float
    source: Source


class Ampacities(NamedTuple):
    """Ampacity in A before correction, at most the termination's; corrected, None if unknown."""

    before: float
    corrected: float | None


def wrong_columns(**columns: float) -> Iterator[Problem]:
    """Refuse a temperature class that is no column of the ampacity table."""
    for name, value in columns.items():
        if value not in RATINGS:
            yield Problem(
                name, f"{value:g} C is no column of the ampacity table", "write 60 C, 75 C or 90 C"
            )


def ampacities(wire: Wire, place: Place) -> Ampacities | None:
    """Return what a building wire carries there; None for a size that the table does not list.

    Past the end of the ambient table it carries nothing.
    """
    own = conductors.ampacity(wire, place.wire_class)
    at_terminal = conductors.ampacity(wire, min(place.wire_class, place.termination))
    if own is None or at_terminal is None:
        return None
    before = at_terminal.number("ampacity_A")
    if place.ambient is None:
        return Ampacities(before, None)
    heat = conductors.ambient_factor(place.wire_class, place.ambient)
    if heat is None:
        return Ampacities(before, 0.0)
    if place.together is None:
        return Ampacities(before, None)
    return Ampacities(before, _corrected(own, at_terminal, place, heat).amps)


def building_wire(
    current: float, factor: float | None, breaker: float | None, wire: Wire, place: Place
) -> Iterator[Item]:
    """Judge breaker and load on a building wire, before and after correction.

    `current` and `breaker` in A; `factor` is 1.25 for a load of 3 hours or more, 1 for a shorter
    one, None where that is not known. Without a breaker only the load is judged, as on a motor
    circuit, whose device other rules set.
    """
    if wire.metal != "copper":
        yield caution("alu-01")
    own = conductors.ampacity(wire, place.wire_class)
    at_terminal = conductors.ampacity(wire, min(place.wire_class, place.termination))
    if own is None or at_terminal is None:
        if breaker is not None:
            yield _unlisted_breaker(breaker, wire)
        yield _unlisted_load(current * (factor or 1.0), wire, place.wire_class)
        yield from _unlisted_in_heat(current, wire, place)
        return
    yield _load(current, factor, at_terminal)
    heat = (
        None
        if place.ambient is None
        else conductors.ambient_factor(place.wire_class, place.ambient)
    )
    if place.ambient is not None and heat is None:
        yield _too_hot(place)
        return
    corrected = None if place.missing else _corrected(own, at_terminal, place, heat)
    if breaker is not None:
        yield _breaker(breaker, wire, at_terminal, corrected, place)
    yield from _corrected_load(current, corrected, own, place, heat)


def _load(current: float, factor: float | None, at_terminal: tables.Row) -> Item:
    """Judge the load on the wire before correction, 125 % of it where it runs 3 h or more."""
    amps = at_terminal.number("ampacity_A")
    long = current * CONTINUOUS
    if factor is None and at_or_below(current, amps) and not at_or_below(long, amps):
        return cannot_tell(
            _LOAD,
            f"{current:.4g} A on {amps:g} A: from 3 h on the load counts 125 %",
            measure="find out how long it runs at most",
            needs=("run_time",),
            source=at_terminal.source,
        )
    counted = current * (factor or (CONTINUOUS if at_or_below(current, amps) else 1.0))
    return at_most(
        _LOAD,
        counted,
        amps,
        "A",
        source=at_terminal.source,
        says="a load of 3 h or more counts 125 %" if counted > current else "",
        action=_ELECTRICIAN,
    )


def _corrected(
    own: tables.Row, at_terminal: tables.Row, place: Place, heat: conductors.Factor | None
) -> _Ampacity:
    """Return the ampacity after correction, and the source of what lowers it most."""
    bundle = conductors.count_factor(place.together or 1)
    warm = heat or bundle
    amps = own.number("ampacity_A") * warm.value * bundle.value
    cap = at_terminal.number("ampacity_A")
    if amps >= cap:
        same = place.wire_class <= place.termination
        return _Ampacity(cap, own.source if same else _TERMINATION)
    return _Ampacity(amps, bundle.source if bundle.value < warm.value else warm.source)


def _breaker(
    rating: float,
    wire: Wire,
    at_terminal: tables.Row,
    corrected: _Ampacity | None,
    place: Place,
) -> Item:
    """Judge the breaker on this wire: NEC 240.4(D) for small wire, and the corrected ampacity."""
    small = conductors.small_conductor_breaker(wire)
    if small is not None and not at_or_below(rating, small.number("breaker_A")):
        return at_most(
            _BREAKER, rating, small.number("breaker_A"), "A", source=small.source, action=_ALLOWED
        )
    if small is not None and small.number("breaker_A") < 15:
        return _on_conditions(small)
    amps, source = corrected or _Ampacity(at_terminal.number("ampacity_A"), at_terminal.source)
    if not at_or_below(rating, rating_at_least(amps)):
        return at_most(_BREAKER, rating, amps, "A", source=source, action=_ALLOWED)
    if corrected is None:
        return cannot_tell(
            _BREAKER,
            f"{' and '.join(place.missing)} not given: heat around the wire lowers what it carries",
            measure="measure the hottest air around the wire; count the wires in the cable",
            needs=place.missing,
            source=source,
        )
    if at_or_below(rating, amps):
        return at_most(_BREAKER, rating, amps, "A", source=source)
    return cannot_tell(
        _BREAKER,
        f"the breaker is over the wire's {amps:.4g} A; NEC 240.4(B) allows the next standard "
        "rating on some circuits (from memory)",
        measure=_class_first(place) + "have an electrician read the code for this circuit",
        source=source,
    )


def _class_first(place: Place) -> str:
    """Ask for the class of the wire before anything else, where it is the lowest."""
    return _CLASS if place.wire_class == RATINGS[0] else ""


def _on_conditions(small: tables.Row) -> Item:
    return cannot_tell(
        _BREAKER,
        f"NEC 240.4(D) allows {small.number('breaker_A'):g} A here {small.text('condition')}",
        measure="read the breaker's marking and the code in force",
        source=small.source,
    )


def _unlisted_breaker(rating: float, wire: Wire) -> Item:
    """Judge the breaker on a wire without an ampacity here: 240.4(D) may still rule it out."""
    small = conductors.small_conductor_breaker(wire) or conductors.thinnest_breaker(wire)
    if small is not None and not at_or_below(rating, small.number("breaker_A")):
        return at_most(
            _BREAKER, rating, small.number("breaker_A"), "A", source=small.source, action=_ALLOWED
        )
    if small is not None and small.number("breaker_A") < 15:
        return _on_conditions(small)
    return cannot_tell(
        _BREAKER,
        f"no ampacity of {wire} was found to compare with the breaker",
        measure="use the table of the code that this wire was installed by",
    )


def _unlisted_load(load: float, wire: Wire, wire_class: int) -> Item:
    """Judge a wire that the table does not list: thinner than all carries no more than the last."""
    last = conductors.thinnest_ampacity(wire, wire_class)
    if last is not None and not at_or_below(load, last.number("ampacity_A")):
        return at_most(
            _LOAD,
            load,
            last.number("ampacity_A"),
            "A",
            source=last.source,
            says=f"{wire} is thinner than the thinnest size listed",
            action=_ELECTRICIAN,
        )
    return cannot_tell(
        _LOAD,
        f"NEC Table 310.16 has no ampacity for {wire} at {wire_class} C",
        measure="use the table of the code that this wire was installed by",
    )


def _unlisted_in_heat(current: float, wire: Wire, place: Place) -> Iterator[Item]:
    """Rule out in heat what would rule out the thinnest size listed: thinner carries no more."""
    own = conductors.thinnest_ampacity(wire, place.wire_class)
    at_terminal = conductors.thinnest_ampacity(wire, min(place.wire_class, place.termination))
    if own is None or at_terminal is None or place.ambient is None:
        return
    heat = conductors.ambient_factor(place.wire_class, place.ambient)
    if heat is None:
        yield _too_hot(place)
    elif place.together is not None:
        most = _corrected(own, at_terminal, place, heat)
        if not at_or_below(current, most.amps):
            says = f"{wire} is thinner than the thinnest size listed"
            yield at_most(
                _CORRECTED,
                current,
                most.amps,
                "A",
                source=most.source,
                says=says,
                action=_ELECTRICIAN,
            )


def _too_hot(place: Place) -> Item:
    last, hot = conductors.hottest_factor(place.wire_class), f"{place.ambient:g}"
    return requires(
        _CORRECTED,
        False,
        says=f"the table of {place.wire_class} C wire ends below {hot} C; is it {hot} F?",
        source=last.source,
        action=f"look at the thermometer's unit: {hot} C, or {hot} F? If C, {_class_first(place)}"
        "this wire is not for so hot a place: a job for an electrician",
    )


def _corrected_load(
    current: float,
    corrected: _Ampacity | None,
    own: tables.Row,
    place: Place,
    heat: conductors.Factor | None,
) -> Iterator[Item]:
    if corrected is None or heat is None or place.together is None:
        yield cannot_tell(
            _CORRECTED,
            f"{' and '.join(place.missing)} not given: heat around the wire lowers what it carries",
            measure="measure the hottest air around the wire; count the wires in the cable",
            needs=place.missing,
        )
        return
    amps, source = corrected
    bundle = conductors.count_factor(place.together)
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
    yield at_most(_CORRECTED, current, amps, "A", source=source, action=_ELECTRICIAN)

"""A building wire under IEC rules: what it carries however it is laid, and what it never does."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import Criterion, Item, Verdict, Wire, at_most, at_or_below, cannot_tell, tables

from .building_wire import load_on_wire
from .wire_names import BREAKER, ELECTRICIAN, LOAD
from .wire_place import Ampacity, WirePlace

_FIT = "have an electrician fit the breaker that the wire allows"
_LAID = "look it up in the table of the rules in force, by the way the wire is laid"
ONE_CIRCUIT = 3  # loaded wires that one cable of one circuit may have
_PVC, _XLPE, _BASE = 70.0, 90.0, 30.0  # classes of the two ways of laying and the table's air, C


def iec_wire(load: float, breaker: float, wire: Wire, place: WirePlace) -> Iterator[Item]:
    """Judge load and breaker in A on a building wire by IEC 60364: load, breaker, wire in order.

    A metric copper wire by the ways of laying that allow the least and the most; any other by what
    the NEC's table allows it, which is a pass and never a fail.
    """
    least, most = (_carries(laid, wire, place) for laid in ("least", "most"))
    if least is not None and most is not None:
        for name, amps, action in ((LOAD, load, ELECTRICIAN), (BREAKER, breaker, _FIT)):
            yield _between(name, amps, least, most, place, action)
        return
    for item in load_on_wire(load, 1.0, breaker, wire, place):
        if isinstance(item, Criterion) and item.verdict is Verdict.FAIL:
            yield cannot_tell(
                item.name,
                f"{item.reason}, by the NEC's table; IEC 60364-5-52 may allow more",
                measure=_LAID,
                source=item.source,
            )
        else:
            yield item


def _carries(laid: str, wire: Wire, place: WirePlace) -> Ampacity | None:
    """Return the least or most that a metric copper wire carries there; None where not listed."""
    area = wire.nominal_mm2
    if area is None or wire.metal != "copper":
        return None
    rows = tables.load("iec-ampacity").where(laying=laid)
    row = next((r for r in rows if r.number("area_mm2") == area), None)
    if row is None:
        return None
    ambient = _BASE if place.ambient is None else place.ambient
    wire_class = _PVC if laid == "least" else _XLPE
    factor = math.sqrt(max(0.0, wire_class - ambient) / (wire_class - _BASE))
    if laid == "least":
        factor = min(1.0, factor) * bunched(place.together or 1)
    return Ampacity(row.number("ampacity_A") * factor, row.source)


def bunched(wires: int) -> float:
    """Return what is left of the current where so many loaded wires lie together.

    Two wires are a circuit; three may be one with a neutral. Between the listed numbers, and above
    the last, the next smaller factor that is listed holds.
    """
    circuits = 1 if wires <= ONE_CIRCUIT else math.ceil(wires / 2)
    rows = tables.load("iec-grouping").rows
    factors = [r.number("factor") for r in rows if r.number("circuits") >= circuits]
    return max(factors, default=min(r.number("factor") for r in rows))


def _between(
    name: str, amps: float, least: Ampacity, most: Ampacity, place: WirePlace, action: str
) -> Item:
    """Judge A by the least that any way of laying allows, and by the most."""
    if not at_or_below(amps, most.amps):
        return at_most(
            name,
            amps,
            most.amps,
            "A",
            source=most.source,
            says="however it is laid",
            action=action,
        )
    if place.missing:
        return cannot_tell(
            name,
            f"{' and '.join(place.missing)} not given: heat around the wire lowers what it carries",
            measure="measure the hottest air around the wire; count the wires in the cable",
            needs=place.missing,
            source=least.source,
        )
    if at_or_below(amps, least.amps):
        return at_most(name, amps, least.amps, "A", source=least.source, action=action)
    return cannot_tell(
        name,
        f"over {least.amps:.3g} A, which it carries however it is laid, and within "
        f"{most.amps:.3g} A, which it carries at the best",
        measure=_LAID,
        source=least.source,
    )

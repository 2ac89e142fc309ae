"""The criteria on a building wire: their names, and what to do about them."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, Wire, cannot_tell, not_checked, tables
from wirecalc.trade import conductors

from .wire_place import RATINGS, WirePlace

BREAKER, LOAD, CORRECTED = (
    "breaker on this wire",
    "load on the wire",
    "load on the wire, corrected",
)
ELECTRICIAN = "put the load on a circuit that carries it: a job for an electrician"
ALLOWED = "have an electrician fit the breaker that the wire allows"
_CLASS = "read the class printed on the wire (60 C counted): --insulation-class; if it is 60 C, "


def class_first(place: WirePlace) -> str:
    """Ask for the class of the wire before anything else, where it is the lowest."""
    return _CLASS if place.wire_class == RATINGS[0] else ""


def on_conditions(small: tables.Row) -> Item:
    """Say that 240.4(D) allows the breaker on this thin wire under conditions only."""
    return cannot_tell(
        BREAKER,
        f"NEC 240.4(D) allows {small.number('breaker_A'):g} A here {small.text('condition')}",
        measure="read the breaker's marking and the code in force",
        source=small.source,
    )


def counts_as(wire: Wire, row: tables.Row) -> Iterator[Item]:
    """Say that a size which the table does not list counts as the next thinner one."""
    if conductors.known_gauge(wire) != row.text("awg"):
        text = f"not listed, so it counts as {row.text('awg')} AWG, the next thinner"
        yield not_checked(f"{wire} itself", text)

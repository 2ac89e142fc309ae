"""What a crimped connector may carry: by what UL 486 assigns to it, else by its wire."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import Item, Wire, at_most, at_or_below, cannot_tell, not_checked, tables
from wirecalc.trade import conductors

from .joint_current import GreatestCurrent, carried, judged_as, row_of, thinnest

STATIC_CARE = 0.5  # share of a static heating current; UL 310 cycles at twice its continuous one
_IN_CONNECTOR = "current in the connector"
_THICKER = "use a thicker wire and its connector, or the maker's own rating"


def in_connector(wires: Sequence[Wire], amps: float) -> Iterator[Item]:
    """Judge a current by what UL 486 assigns to a connector of one wire, else by the wire."""
    gauge = conductors.counted_gauge(thinnest(wires))
    row = row_of(tables.load("joint-currents").rows, gauge)
    if row is None:
        yield cannot_tell(
            _IN_CONNECTOR,
            f"UL 486 has no current for {thinnest(wires)}",
            measure="take the current from the connector maker's sheet",
        )
        return
    yield from judged_as(wires, row)
    if row.cells["assigned_A"] is None:
        yield from _by_wire(row, thinnest(wires), amps)
    else:
        yield from _assigned(row, len(wires), amps)


def _by_wire(row: tables.Row, wire: Wire, amps: float) -> Iterator[Item]:
    """Judge by the wire where UL 486 assigns no current, and by its heating current."""
    heating = GreatestCurrent(row.number("static_heating_A"), row.source)
    own = carried(wire, amps)
    limit = heating if own is None else min(heating, own)
    yield at_most(
        _IN_CONNECTOR,
        amps,
        limit.amps,
        "A",
        caution=None if own is not None else STATIC_CARE * heating.amps,
        source=limit.source,
        says="UL 486 assigns no current to a connector of this size",
        action=_THICKER,
    )


def _assigned(row: tables.Row, wires: int, amps: float) -> Iterator[Item]:
    assigned = row.number("assigned_A")
    most = row.number("higher_assigned_A") if row.cells["higher_assigned_A"] else assigned
    if at_or_below(amps, assigned) and wires > 1:
        yield not_checked(_IN_CONNECTOR, f"UL 486 assigns its {assigned:g} A to one wire")
    elif at_or_below(amps, most) and not at_or_below(amps, assigned):
        yield cannot_tell(
            _IN_CONNECTOR,
            f"UL 486 assigns {most:g} A to some connectors only, else {assigned:g} A",
            measure="take the current from the connector maker's sheet",
            source=row.source,
        )
    else:
        limit = assigned if at_or_below(amps, assigned) else most
        yield at_most(_IN_CONNECTOR, amps, limit, "A", source=row.source, action=_THICKER)

"""Whose rules a circuit is wired by: those of the NEC, or those of IEC 60364."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Criterion,
    Item,
    OneOf,
    Verdict,
    Wire,
    assumed,
    at_most,
    cannot_tell,
    tables,
)
from wirecalc.sources import from_memory

from .building_wire import building_wire
from .place import Place

NEC, IEC = "nec", "iec"
_RATINGS = from_memory("iec-60898-ratings", "IEC 60898-1", "preferred rated currents")
WIRING_RULES = OneOf((NEC, IEC), text="rules by which the building is wired")
# ratings of IEC 60898-1 that are not among those of NEC 240.6(A)
RULES_LEFT_OUT = assumed("iec", source=_RATINGS, when="breaker=6|10|13|16|32|63")
ASK_RULES = "find out by which rules the building is wired: --wiring-rules"


def on_iec_breaker(name: str, load: float, breaker: float, action: str) -> Item:
    """Judge a load in A on a breaker by IEC: it carries its rated current without end.

    So nothing is added for a load that runs long (IEC 60364-4-43: load, rating, wire in order).
    """
    held = next(r for r in tables.load("breaker-iec60898").rows if r.text("test") == "rated")
    return at_most(name, load, breaker, "A", source=held.source, action=action)


def iec_wire(load: float, breaker: float, wire: Wire, place: Place) -> Iterator[Item]:
    """Judge load and breaker in A on a building wire under IEC rules.

    The tables of IEC 60364-5-52, by the way a wire is laid, are not here. What the NEC's table
    allows for 60 C wire of the next thinner gauge is less than any of them: within it, it passes.
    """
    for item in building_wire(load, 1.0, breaker, wire, place):
        if isinstance(item, Criterion) and item.verdict is Verdict.FAIL:
            yield cannot_tell(
                item.name,
                f"{item.reason}, by the NEC's table; IEC 60364-5-52 may allow more, by the way the "
                "wire is laid, and its tables are not here",
                measure="look it up in the table of the rules in force, or ask an electrician",
                source=item.source,
            )
        else:
            yield item

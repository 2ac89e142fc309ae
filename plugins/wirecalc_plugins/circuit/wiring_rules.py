"""Whose rules a circuit is wired by: those of the NEC, or those of IEC 60364."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wirecalc import (
    Criterion,
    Item,
    OneOf,
    Verdict,
    Wire,
    assumed,
    at_most,
    cannot_tell,
    from_memory,
    tables,
)

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


def of_metric(wire: Wire, items: Iterable[Item]) -> Iterator[Item]:
    """Pass on what was judged by the NEC's table; a metric wire is no wire of the NEC.

    By the next thinner gauge it may pass, but what fails so may be right by IEC rules.
    """
    if wire.nominal_mm2 is None:
        yield from items
        return
    for item in items:
        if isinstance(item, Criterion) and item.verdict is Verdict.FAIL:
            yield cannot_tell(
                item.name,
                f"{item.reason}, by the NEC's next thinner gauge; metric wire is of IEC rules",
                measure=ASK_RULES,
                needs=("wiring_rules",),
                source=item.source,
            )
        else:
            yield item

"""The best part of the stock, or what to buy."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import (
    Item,
    Origin,
    Source,
    Verdict,
    answer,
    cannot_tell,
    requires,
)

from .joint_ratings import ROOM_K
from .stock import DEMO
from .stock_judged import JudgedPart, Wanted

_ORIGIN = Origin.PRACTICE


def best_of(judged: Sequence[JudgedPart], wanted: Wanted, source: Source) -> Iterator[Item]:
    """Yield the best part and how well it fits, or what to buy."""
    name = "something in stock fits"
    best = judged[0] if judged else None
    if source is DEMO:
        yield cannot_tell(
            name,
            "the list is invented and only shows how this works",
            measure="give --stock, or have the shop's plugin add a table named stock",
            needs=("stock",),
            source=source,
        )
        return
    if best is not None and best.verdict in (Verdict.PASS, Verdict.MARGINAL):
        yield answer("best part", best.part, because=[best.why] if best.why else [])
        in_full = best.verdict is Verdict.PASS
        says = f"{best.part} fits with care; {best.why}"
        yield requires(
            name,
            in_full,
            says=says,
            source=source,
            origin=_ORIGIN,
            advisory=True,
            behind="a part that fails in itself is never offered",
        )
        return
    buy = _to_buy(wanted)
    yield answer("buy", buy)
    unread = sum(j.unread for j in judged)
    if best is not None and best.unread:
        why = f"{unread} of {len(judged)} {wanted.connector} parts cannot be read, no other fits"
        yield cannot_tell(name, why, measure=f"mend the list; else buy: {buy}", source=source)
    elif best is not None and best.verdict is Verdict.CANNOT_TELL:
        yield cannot_tell(name, f"{best.part}: {best.why}", measure=f"look at it; else buy: {buy}")
    else:
        why = f"of {len(judged)} {wanted.connector} parts none fits"
        why = why if judged else f"the list has no {wanted.connector} part"
        yield requires(name, False, says=why, source=source, origin=_ORIGIN, action=f"buy: {buy}")


def _to_buy(wanted: Wanted) -> str:
    """Say by its properties what would do."""
    total = math.fsum(w.area_cmil for w in wanted.wires)
    words = [f"{wanted.connector} connector whose barrel takes {total:.0f} cmil"]
    if len(wanted.wires) > 1 or not all(w.stranded for w in wanted.wires):
        words.append("listed for " + " with ".join(w.text for w in wanted.wires))
    if wanted.tab_width is not None:
        words.append(f"for a {wanted.tab_width:.3f} in tab")
    if wanted.place_temperature is not None:
        words.append(f"rated {wanted.place_temperature + ROOM_K:.0f} C or more")
    if wanted.voltage is not None:
        words.append(f"marked {wanted.voltage:g} V or more")
    return ", ".join(words)

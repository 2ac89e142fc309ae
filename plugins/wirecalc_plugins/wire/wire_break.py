"""The force that breaks a wire itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Item,
    Source,
    Wire,
    answer,
    calculation,
    cannot_tell,
    figure,
    from_memory,
    not_checked,
    put,
    show,
)
from wirecalc.trade import conductors as trade
from wirecalc.trade import crimps

from ..inputs import WIRE

NASA_SHARE = 0.6
_NASA = from_memory("nasa-8739-4-13-7", "NASA-STD-8739.4, 13.7", "60 % of the strength of the wire")


@calculation(
    part="wire and joint",
    words=(
        "breaking strength; break force; breaking force; breaking load; wire breaks; wire broke",
        "wire snapped; snap; snapped; tensile strength; tensile; strength of wire; wire strength",
        "strain; tension; broke before the crimp; wire pulled apart; strand strength; how strong",
        "stretched wire; torn wire; tore; breaks at; weight a wire can hold; pull apart",
        "break load; snapped conductor; ultimate strength; copper strength",
        "pull on bare wire; wire breaking; wire itself; before it breaks; copper breaks",
        "strength of copper; kg to break; lbs to break; hang; tension on wire",
    ),
    cautions=("pull-01",),
    not_checked=(
        "hard-drawn and alloy wire, which is stronger",
        "what a crimp on it holds, which is less: see `pull`",
    ),
)
def wire_break(
    wire: Annotated[Wire, WIRE],
) -> Iterator[Item]:
    """At what force does this wire itself break?

    Area times 31 to 40 ksi, the strength of soft copper (the least that a conductor maker prints
    for its strands; the most from memory); a stranded wire counts with the sum of its strands. No
    pull on a crimp goes above the higher force: one that does, or that tears the wire beside the
    crimp, says nothing more of the crimp.

    For one wire of soft copper, not for spring or steel-cored ones.
    Input: wire. Yields both forces in lbf and N, 60 % of the lower one (NASA-STD-8739.4), and the
    share that UL 486A asks of a crimp. Can't tell for other metal than copper.
    Source: table wire-break holds the same by gauge; table pull-crimp for the minimum.
    """
    if wire.metal != "copper":
        yield cannot_tell(
            "breaking force",
            f"no strength of {wire.metal} is known here",
            measure="pull a piece of the wire itself until it breaks",
        )
        return
    low, high = crimps.breaking_force(wire)
    span = f"{show(low, digits=3)} to {show(high, 'lbf', digits=3, toward='up')}"
    yield answer(
        "breaking force",
        f"{span}: no crimp on it goes higher",
        because=["the strength of soft copper, 31 to 40 ksi"],
    )
    yield _force("wire breaks from", low, 31, wire, crimps.SOFT_COPPER_FROM)
    yield _force("wire broken by: no crimp goes higher", high, 40, wire, crimps.SOFT_COPPER_TO)
    yield figure(
        "60 % of the lower force (NASA)",
        NASA_SHARE * low,
        "lbf",
        source=_NASA,
        also=[(NASA_SHARE * low * crimps.NEWTONS_PER_LBF, "N")],
        working=lambda: f"0.6 x {put(low)} lbf",
        toward="up",
    )
    minimum = crimps.pull_minimum(wire, "ul-486a")
    if minimum is None or minimum.above is not None:
        yield not_checked("the share that UL 486A asks for", f"it lists no {wire}")
        return
    yield figure(
        "UL 486A minimum of a crimp", minimum.lbf, "lbf", source=minimum.source, toward="up"
    )
    yield figure(
        "share that UL 486A asks for",
        100 * minimum.lbf / low,
        "%",
        source=crimps.SOFT_COPPER_FROM,
        working=lambda: f"100 x {put(minimum.lbf)} lbf / {put(low)} lbf",
    )


def _force(name: str, lbf: float, ksi: int, wire: Wire, source: Source) -> Item:
    return figure(
        name,
        lbf,
        "lbf",
        source=source,
        also=[(lbf * crimps.NEWTONS_PER_LBF, "N")],
        working=lambda: f"{1000 * ksi} psi x {put(trade.square_inches(wire.area_cmil))} in2",
    )

"""What a flexible cord carries (NEC Table 400.5(A)(1))."""

from __future__ import annotations

from wirecalc import (
    Item,
    Wire,
    at_most,
    at_or_below,
    cannot_tell,
    conductors,
)


def cord_load(current: float, cord: Wire, live: int | None, ambient: float | None) -> Item:
    """Judge a load in A on a flexible cord (NEC Table 400.5(A)(1)).

    `live` counts its current-carrying wires, `ambient` is the air around it in C; None where not
    known. The table is for 30 C and two or three live wires.
    """
    name = "load on the cord"
    rows = [conductors.cord_ampacity(cord, n) for n in ((2, 3) if live is None else (live,))]
    found = [row for row in rows if row is not None]
    if not found:
        return cannot_tell(
            name,
            f"NEC Table 400.5(A)(1) has no {cord}",
            measure="take the cord's current from its marking or its maker",
        )
    most = max(found, key=lambda r: r.number("ampacity_A"))
    least = min(found, key=lambda r: r.number("ampacity_A"))
    if at_or_below(current, most.number("ampacity_A")):
        if ambient is None:
            return cannot_tell(
                name,
                f"the cord table is for {most.number('ambient_C'):g} C, and the air was not given",
                measure="measure the air around the cord",
                needs=("ambient",),
                source=most.source,
            )
        if ambient > most.number("ambient_C"):
            return cannot_tell(
                name,
                f"the cord table is for {most.number('ambient_C'):g} C, and here it is {ambient:g}",
                measure="take the cord's current from its maker",
                source=most.source,
            )
        if not at_or_below(current, least.number("ampacity_A")):
            return cannot_tell(
                name,
                f"{most.number('ampacity_A'):g} A with two live wires, "
                f"{least.number('ampacity_A'):g} A with three",
                measure="count the wires of the cord that carry current",
                needs=("cord_conductors",),
                source=most.source,
            )
        most = least
    return at_most(
        name,
        current,
        most.number("ampacity_A"),
        "A",
        source=most.source,
        action="fit a cord with thicker wire, of the same type",
    )

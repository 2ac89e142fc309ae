"""What a flexible cord carries (NEC Table 400.5(A)(1))."""

from __future__ import annotations

from wirecalc import (
    Criterion,
    OneOf,
    Verdict,
    Wire,
    at_most,
    at_or_below,
    cannot_tell,
    confirmed,
    from_memory,
    tables,
)
from wirecalc.trade import nec_ampacity

GENERAL, HEATER = "general", "heater"
CORD_TYPE = OneOf(
    (GENERAL, HEATER),
    text="heater cord (HPD, HPN, HSJ printed on it), or any other",
)
CORDS = confirmed("nec-400-5-types", "NEC", "Table 400.5(A)(1)", copies=1)
_CORRECTION = from_memory("nec-400-5-a", "NEC", "400.5(A), ambient correction of cords")
_COOLEST, _HOTTEST = 60, 90  # classes of cord, C: the least there is, and the hottest column


def cord_row(cord: Wire, live: int, cord_type: str) -> tables.Row | None:
    """Return the row of a cord with 2 or 3 live wires; a heater cord has rows for two only."""
    if cord_type == HEATER and live == 2:
        rows = tables.load("cords").where(use="heater cord, two current-carrying")
        return nec_ampacity.listed_size(rows, cord) if cord.metal == "copper" else None
    return nec_ampacity.cord_ampacity(cord, live)


def cord_load(
    current: float,
    cord: Wire,
    live: int | None,
    ambient: float | None,
    cord_type: str = GENERAL,
    *,
    name: str = "load on the cord",
    action: str = "fit a cord with thicker wire, of the same type",
    air: str = "ambient",
) -> Criterion:
    """Judge a load in A on a flexible cord (NEC Table 400.5(A)(1)).

    `live` counts its current-carrying wires, None where not known; `ambient` is the air around it
    in C, of the input `air`. The table is for 30 C; above it the factors of building wire apply
    (400.5(A)).
    """
    rows = [cord_row(cord, n, cord_type) for n in ((live,) if live == 2 else (2, 3))]
    found = [row for row in rows if row is not None]
    if not found:
        return cannot_tell(
            name,
            f"NEC Table 400.5(A)(1) has no {cord}",
            measure="take the cord's current from its marking or its maker",
        )
    judged = [judge_cord(name, current, row, ambient, action, air) for row in found]
    if len({c.verdict is Verdict.FAIL for c in judged}) > 1:
        return _which(name, found, live)
    return max(judged, key=lambda c: (c.verdict.rank, -c.closeness))


def _which(name: str, found: list[tables.Row], live: int | None) -> Criterion:
    """Ask which column counts: three live wires are rare where there is a neutral."""
    two, three = (row.number("ampacity_A") for row in found)
    why = "" if live is None else ": the neutral of a dryer or range is none of them"
    return cannot_tell(
        name,
        f"{two:g} A with two live wires, {three:g} A with three, at 30 C{why}",
        measure="count the wires of the cord that carry current; the neutral of a machine on 120 "
        "and 240 V does not count",
        needs=("cord_conductors",) if live is None else (),
        source=found[0].source,
    )


def judge_cord(
    name: str,
    current: float,
    row: tables.Row,
    ambient: float | None,
    action: str,
    air: str = "ambient",
) -> Criterion:
    """Judge a current in A by a row of the cord table, corrected above its 30 C."""
    amps, warmest = row.number("ampacity_A"), row.number("ambient_C")
    if not at_or_below(current, amps):
        return at_most(name, current, amps, "A", source=row.source, action=action)
    if ambient is None:
        return cannot_tell(
            name,
            f"the cord table is for {warmest:g} C, and the air was not given",
            measure="measure the hottest air around the cord",
            needs=(air,),
            source=row.source,
        )
    if at_or_below(ambient, warmest):
        return at_most(name, current, amps, "A", source=row.source, action=action)
    return _in_heat(name, current, amps, ambient, action)


def _in_heat(name: str, current: float, amps: float, ambient: float, action: str) -> Criterion:
    """Judge a cord above 30 C: by the coolest class it holds in any, by the hottest in none."""
    least, most = (_corrected(amps, c, ambient) for c in (_COOLEST, _HOTTEST))
    if at_or_below(current, least) or not at_or_below(current, most):
        limit = least if at_or_below(current, least) else most
        return at_most(name, current, limit, "A", source=_CORRECTION, action=action)
    return cannot_tell(
        name,
        f"at {ambient:g} C it carries {least:.3g} A as a cord of {_COOLEST} C and {most:.3g} A as "
        f"one of {_HOTTEST} C or more",
        measure="read the temperature printed on the cord, and take its current from its maker",
        source=_CORRECTION,
    )


def _corrected(amps: float, cord_class: int, ambient: float) -> float:
    factor = nec_ampacity.ambient_factor(cord_class, ambient)
    return 0.0 if factor is None else amps * factor.value

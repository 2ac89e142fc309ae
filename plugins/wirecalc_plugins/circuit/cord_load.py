"""What a flexible cord carries (NEC Table 400.5(A)(1))."""

from __future__ import annotations

from wirecalc import (
    Criterion,
    OneOf,
    Source,
    Wire,
    at_most,
    at_or_below,
    cannot_tell,
    conductors,
    tables,
)
from wirecalc.sources import confirmed, from_memory

GENERAL, HEATER = "general", "heater"
CORD_TYPE = OneOf(
    (GENERAL, HEATER),
    text="heater cord (HPD, HPN, HSJ printed on it), or any other",
)
CORDS = confirmed("nec-400-5-types", "NEC", "Table 400.5(A)(1)", copies=1)
_CORRECTION = from_memory("nec-400-5-a", "NEC", "400.5(A), ambient correction of cords")
_COOLEST, _HOTTEST = 60, 90  # classes of cord, C: the least there is, and the hottest column
_NAME = "load on the cord"
_THICKER = "fit a cord with thicker wire, of the same type"


def cord_row(cord: Wire, live: int, cord_type: str) -> tables.Row | None:
    """Return the row of a cord with 2 or 3 live wires; a heater cord has rows for two only."""
    if cord_type == HEATER and live == 2:
        rows = tables.load("cords").where(use="heater cord, two current-carrying")
        return conductors.listed_size(rows, cord) if cord.metal == "copper" else None
    return conductors.cord_ampacity(cord, live)


def cord_load(
    current: float,
    cord: Wire,
    live: int | None,
    ambient: float | None,
    cord_type: str = GENERAL,
) -> Criterion:
    """Judge a load in A on a flexible cord (NEC Table 400.5(A)(1)).

    `live` counts its current-carrying wires, None where not known; `ambient` is the air around it
    in C. The table is for 30 C; above it the factors of building wire apply (400.5(A)).
    """
    row = cord_row(cord, live or 3, cord_type)
    if row is None:
        return cannot_tell(
            _NAME,
            f"NEC Table 400.5(A)(1) has no {cord}",
            measure="take the cord's current from its marking or its maker",
        )
    return judge_cord(
        _NAME, current, row, ambient, "fit a cord with thicker wire, of the same type"
    )


def judge_cord(
    name: str, current: float, row: tables.Row, ambient: float | None, action: str
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
            needs=("ambient",),
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
    factor = conductors.ambient_factor(cord_class, ambient)
    return 0.0 if factor is None else amps * factor.value


def correction_source() -> Source:
    """Return where it stands that a cord is corrected for heat."""
    return _CORRECTION

"""The limits of a winding's insulation class, for a temperature that is an average."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, answer, at_most, at_or_below, cannot_tell, figure, show, tables

from ..lead_resistance import LEADS_OHM
from .winding_cooling import CoolingReadings, WindingTemperature

NAME = "winding temperature at switch-off"
_LETTERS = ("A", "E", "B", "F", "H")
SEEN_BY_NOBODY = 250.0  # C; no enamel stands it, and solder is long gone; practice
_IMPOSSIBLE = "no winding stands it: were it the same pins, on the same range?"
_ACTION = "find out why: low volts, a stuck load, no cooling air, a weak capacitor"


def judge(
    winding_class: str, found: WindingTemperature, leads_known: bool, ohm: float
) -> Iterator[Item]:
    """Judge a winding by its class; `ohm` is how well each resistance would have to be known."""
    rows = _rows(winding_class)
    for row in rows:
        name = f"{winding_class}, {row.text('said_by')}, {row.text('reads')}"
        yield figure(name, row.number("limit_C"), "C", source=row.source)
    row = binding(winding_class)
    limit = row.number("limit_C")
    advised = [r.number("limit_C") for r in rows if r is not row and r.number("limit_C") < limit]
    within = at_or_below(found.low, limit)
    needs: tuple[str, ...] = ()
    why = measure = ""
    if not found.known and within:
        why = f"{found.at:.0f} C when it was read, and it had cooled since switch-off"
        measure = "read it within 30 s, or several times with the seconds since switch-off"
        needs = ("hot_time",)
    elif not leads_known and within and not at_or_below(found.high, limit):
        why = f"{found.low:.0f} to {found.high:.0f} C with test leads of 0 to {LEADS_OHM:g} ohm, "
        why += f"against {limit:g} C"
        measure = "touch the test leads together and read them"
        needs = ("lead_resistance",)
    if why:
        yield cannot_tell(NAME, why, measure=measure, needs=needs, source=row.source)
        return
    yield at_most(
        NAME,
        found.at,
        limit,
        "C",
        caution=min(advised, default=None),
        source=row.source,
        says=row.note if at_or_below(found.at, SEEN_BY_NOBODY) else _IMPOSSIBLE,
        action=_ACTION,
        band=(found.low, found.high),
        better=f"a four-wire ohmmeter: cold and hot each to ±{show(ohm, 'ohm', toward='down')}",
    )


def ohms_of(
    found: WindingTemperature, winding_class: str, k: float, read: CoolingReadings
) -> float:
    """Return how well in ohm cold and hot resistance must each be known to settle it.

    Half the distance to the limit each: a hot reading off by dR moves the temperature by
    (k + t1) / R1 dR, a cold one by (k + t2) / R1 dR, the larger of the two.
    """
    away = abs(found.at - binding(winding_class).number("limit_C"))
    return away / 2 * (read.cold - read.leads) / (k + found.at)


def stood_by(found: WindingTemperature) -> Item:
    """Say which class is the least that stands the temperature, at the high end of its band."""
    stands = next(
        (c for c in _LETTERS if at_or_below(found.high, binding(c).number("limit_C"))), None
    )
    return answer("least class that stands it", "none up to H" if stands is None else stands)


def binding(winding_class: str) -> tables.Row:
    """Return the lowest of the limits that judge: which family an edition has was not seen."""
    judges = (r for r in _rows(winding_class) if r.text("binding") == "yes")
    return min(judges, key=lambda r: r.number("limit_C"))


def _rows(winding_class: str) -> list[tables.Row]:
    return list(tables.load("winding-limits").where(winding_class=winding_class))

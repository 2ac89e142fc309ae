"""Ohms less the test leads, and limits on them where the leads were not read."""

from __future__ import annotations

from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Source,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    cannot_tell,
    figure,
    put,
    show,
)

LEADS_OHM = 0.3  # most that test leads have that were not read; practice, 0.1 to 0.3
LEADS_COUNT = "leads that were not read count as 0 to 0.3 ohm, and are asked for where that decides"


class Ohms(NamedTuple):
    """A resistance in ohm: one value, or a span where the leads were not read."""

    low: float
    high: float


def less_leads(reading: float, leads: float | None) -> Ohms:
    """Return a reading less its leads, in ohm; leads that were not read are 0 to 0.3 ohm."""
    if leads is None:
        return Ohms(reading - LEADS_OHM, reading)
    return Ohms(reading - leads, reading - leads)


def without_leads(name: str, ohms: Ohms, reading: float, leads: float) -> Item:
    """Show a reading in ohm less its leads; no less than nothing."""
    return figure(
        name,
        ohms.high,
        "ohm",
        source=PRACTICE,
        working=lambda: (
            f"{put(reading, 'ohm')} - {put(leads, 'ohm')}"
            if reading >= leads
            else "nothing: the leads read as much as the whole"
        ),
    )


def ohms_at_most(
    name: str,
    ohms: Ohms,
    limit: float,
    *,
    source: Source,
    caution: float | None = None,
    origin: Origin = Origin.STANDARD,
    says: str = "",
    action: str = "",
) -> Item:
    """Judge a resistance against a largest one; it can't be told where the leads decide."""
    if at_or_below(ohms.low, limit) and not at_or_below(ohms.high, limit):
        return _leads_decide(name, ohms, show(limit, "ohm", toward="down"), source)
    actual = ohms.high if at_or_below(ohms.high, limit) else ohms.low
    return at_most(
        name,
        actual,
        limit,
        "ohm",
        caution=caution,
        source=source,
        origin=origin,
        says=says,
        action=action,
    )


def ohms_at_least(
    name: str,
    ohms: Ohms,
    limit: float,
    *,
    source: Source,
    origin: Origin = Origin.STANDARD,
    says: str = "",
    action: str = "",
) -> Item:
    """Judge a resistance against a least one; it can't be told where the leads decide."""
    reaches_low, reaches_high = (at_or_above(ohm, limit) for ohm in ohms)
    if reaches_high and not reaches_low:
        return _leads_decide(name, ohms, show(limit, "ohm", toward="up"), source)
    actual = ohms.low if reaches_low else ohms.high
    return at_least(
        name, actual, limit, "ohm", source=source, origin=origin, says=says, action=action
    )


def _leads_decide(name: str, ohms: Ohms, limit: str, source: Source) -> Item:
    return cannot_tell(
        name,
        f"{ohms.low:.4g} to {ohms.high:.4g} ohm against {limit}: test leads that were not "
        f"read have up to {LEADS_OHM:g} ohm",
        measure="touch the leads together, read them, and give it",
        needs=("lead_resistance",),
        source=source,
    )

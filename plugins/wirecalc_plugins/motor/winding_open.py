"""Pairs of pins that read open, or were not read."""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import PRACTICE, Item, Origin, cannot_tell, confirmed, requires

PAIRS = ("1-2", "1-3", "2-3")

_OVERLOAD = confirmed(
    "line-break-overload", "one room air-conditioner service manual", "internal overload", copies=1
)


def not_read(missing: Sequence[str]) -> Item:
    """Say which pairs were not read."""
    return cannot_tell(
        "no winding is open",
        f"not read: {', '.join(missing)}; one pair alone is never open, a pin is",
        measure="read all three pairs; where a pin reads OL to both others, say so with open_pin",
        needs=tuple(f"reading_{p.replace('-', '_')}" for p in missing),
    )


def judge_open(pin: str, common: str | None, read: int) -> Item:
    """Judge open readings: a common pin that is open may be no more than an open overload."""
    name = "no winding is open"
    if pin != "all" and common is not None and common != pin:
        return requires(
            name,
            False,
            says=f"pin {pin} is not common and reads open to both others: its winding, or the lead "
            "to it, is open",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action="look for a loose or burnt lead first; a winding open inside ends the motor",
        )
    if pin == "all":
        why = "no pair reads at all: more than one break, the wrong pins, or the meter's leads"
        return cannot_tell(
            name, why, measure="touch the leads together, clean the pins, read again"
        )
    other = "the other two " + ("are joined" if read else "were not read against each other")
    needs = (
        ()
        if read
        else tuple(f"reading_{p.replace('-', '_')}" for p in PAIRS if pin not in p.split("-"))
    )
    return cannot_tell(
        name,
        f"pin {pin} reads open to both others; {other}. If {pin} is common, an internal overload "
        "may be open, and it closes when cool; if not, a winding or its lead is open",
        measure="let it cool, up to an hour, and read again; find common by the marking",
        needs=needs + (() if common else ("common_pin",)),
        source=_OVERLOAD,
    )

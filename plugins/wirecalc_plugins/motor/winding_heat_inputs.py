"""The inputs of `winding-heat`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    OneOf,
    Problem,
    Reading,
    asked,
    assumed,
    extra,
    tables,
)

from ..inputs import LEADS
from ..lead_resistance import LEADS_COUNT


def _metals() -> list[str]:
    return list(dict.fromkeys(r.text("metal") for r in tables.load("winding-constants").rows))


def _classes() -> list[str]:
    rows = tables.load("winding-limits").rows
    return list(dict.fromkeys(r.text("winding_class") for r in rows))


ColdResistance = Annotated[
    float,
    Reading(
        "ohm",
        above=0,
        high=1000,
        typical="4.50 ohm",
        text="winding cold, as read; lead_resistance is taken off",
    ),
]
ColdTemperature = Annotated[
    float,
    Reading("C", low=-40, high=60, typical="22 C", text="temperature of the cold winding"),
]
HotResistance = Annotated[
    list[float],
    Reading("ohm", above=0, high=2000, typical="5.90 ohm", text="the same winding, hot"),
]
RoomTemperature = Annotated[
    float,
    Reading("C", low=-40, high=60, typical="24 C", text="air around the machine, at the end"),
]
HotTime = Annotated[
    list[float] | None,
    Reading("s", low=0, high=3600, typical="20 s", text="time of each since switch-off"),
    asked("a winding that has cooled was hotter"),
]
LeadResistance = Annotated[float | None, LEADS, extra(LEADS_COUNT)]
WindingMetal = Annotated[
    str,
    OneOf(_metals, text="metal of the winding wire"),
    assumed("aluminium", source=PRACTICE, why="copper gives the higher temperature"),
]
WindingClass = Annotated[
    str | None,
    OneOf(_classes, text="insulation class of the winding", on_plate=True),
    asked("without it a temperature is neither good nor bad"),
]


def refuse(
    cold_resistance: float,
    hot_resistance: list[float],
    hot_time: list[float] | None = None,
    lead_resistance: float | None = None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    leads = lead_resistance or 0.0
    if cold_resistance <= leads:
        yield Problem(
            "cold_resistance",
            f"{cold_resistance:g} ohm is no more than the {leads:g} ohm of the leads",
            "type the reading with the leads in it; they are subtracted here",
        )
    for hot in hot_resistance:
        if hot < cold_resistance:
            yield Problem(
                "hot_resistance",
                f"{hot:g} ohm hot is below {cold_resistance:g} ohm cold",
                "a warm winding reads more: same pins, same range? the two swapped?",
            )
            break
    if hot_time is not None and len(hot_time) != len(hot_resistance):
        yield Problem(
            "hot_time",
            f"{len(hot_time)} times for {len(hot_resistance)} resistances",
            "give a time for each, in the same order",
        )
    elif hot_time is not None and len(set(hot_time)) < len(hot_time):
        yield Problem("hot_time", "two readings have the same time", "give each its own time")

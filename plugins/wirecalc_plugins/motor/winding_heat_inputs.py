"""The inputs of `winding-heat`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    OneOf,
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

"""The inputs of `circuit`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Wire,
    asked,
    assumed,
    confirmed,
    extra,
)

from ..inputs import BREAKER, BUILDING_WIRE, FEEDS_OTHERS, RECEPTACLE
from .listed_loads import load_input, none
from .not_seen import RECEPTACLE_NOT_SEEN

_SHARED = confirmed("nec-210-23-a", "NEC", "210.23(A)", copies=2)

Breaker = Annotated[float, BREAKER]
PlugLoads = Annotated[
    list[float] | None,
    load_input("plugged in, runs under 3 h at a time"),
    none("plug-in loads"),
]
LongPlugLoads = Annotated[
    list[float] | None,
    load_input("plugged in, runs 3 h or more"),
    none("plug-in loads of 3 h or more"),
]
FastenedLoads = Annotated[
    list[float] | None,
    load_input("built in or wired in, runs under 3 h at a time"),
    none("fastened loads of under 3 h"),
]
LongFastenedLoads = Annotated[
    list[float] | None,
    load_input("built in or wired in, runs 3 h or more"),
    none("fastened loads of 3 h or more"),
]
LightLoads = Annotated[
    list[float] | None, load_input("lights, counted as running 3 h or more"), none("lights")
]
FeedsOthers = Annotated[
    bool | None,
    FEEDS_OTHERS,
    assumed("yes", "no", source=_SHARED, why="either way"),
]
Receptacle = Annotated[float | None, RECEPTACLE, extra(RECEPTACLE_NOT_SEEN)]
BuildingWire = Annotated[Wire | None, BUILDING_WIRE, asked("the breaker is there to protect it")]

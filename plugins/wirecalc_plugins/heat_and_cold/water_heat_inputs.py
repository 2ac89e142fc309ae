"""The inputs of `water-heat`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    Problem,
    Reading,
    asked,
    at_or_below,
    extra,
    instead_of,
    may_be_absent,
)

WaterBefore = Annotated[
    float, Reading("C", low=0, high=99, typical="15 C", text="water before, or going in")
]
WaterAfter = Annotated[
    float, Reading("C", low=0, high=100, typical="55 C", text="water after, or coming out")
]
WaterVolume = Annotated[
    float | None,
    Reading("L", above=0, high=2000, typical="4 L", text="water that was heated"),
    asked("heat is so much a litre and kelvin", when="not water_flow"),
]
WaterFlow = Annotated[
    float | None,
    Reading("L/min", above=0, high=100, typical="4 L/min", text="water that runs through"),
    instead_of("water_volume"),
]
HeatingTime = Annotated[
    float | None,
    Reading("min", above=0, high=2880, typical="8 min", text="how long it heated"),
    may_be_absent("it is worked out where watts and volume are known"),
]
HeatingPower = Annotated[
    float | None,
    Reading(
        "W",
        above=0,
        high=50_000,
        typical="1500 W",
        text="watts that the heater takes, by meter or by ohms and volts",
    ),
    may_be_absent("it is worked out where time or flow is known"),
]
LeastShare = Annotated[
    float | None,
    Nameplate(
        "%",
        above=0,
        high=100,
        typical="85 %",
        text="least share of the watts that must reach the water",
    ),
    extra("without a maker's share none is too little"),
]


def refuse(
    water_before: float,
    water_after: float,
    water_volume: float | None,
    water_flow: float | None,
    heating_time: float | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if at_or_below(water_after, water_before):
        yield Problem(
            "water_after",
            f"{water_after:g} C is no warmer than the {water_before:g} C before",
            "give them in order; water that does not warm tells of no heat at all",
        )
    if water_volume is not None and water_flow is not None:
        yield Problem(
            "water_flow",
            "a volume and a flow were given",
            "give the volume, or the flow through it",
        )
    elif water_flow is not None and heating_time is not None:
        yield Problem(
            "heating_time",
            "water that flows through has no time; its flow says it",
            "give water_volume with a time, or water_flow alone",
        )

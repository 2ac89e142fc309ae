"""The inputs of `overload`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Reading,
    YesNo,
    asked,
    extra,
    instead_of,
)

from ..inputs import LEADS, NAMEPLATE_VOLTAGE
from ..lead_resistance import LEADS_COUNT

OverloadResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        low=0,
        high=10_000,
        typical="0.4 ohm",
        text="across the overload, off it",
        if_open="leave it out and give overload_open yes",
    ),
    instead_of("overload_open", when="overload_open=yes"),
    asked("it is what tells a good one"),
]
LeadResistance = Annotated[float | None, LEADS, extra(LEADS_COUNT)]
OverloadOpen = Annotated[
    bool | None, YesNo("the overload reads open"), instead_of("overload_resistance")
]
OverloadCold = Annotated[
    bool | None,
    YesNo("it and the motor it sits on are as cold as the room"),
    extra("it counts where it reads high or open, and is asked for there"),
]
NameplateVoltage = Annotated[
    float | None,
    NAMEPLATE_VOLTAGE,
    extra("it counts where it reads over 1 ohm, and is asked for there"),
]
TripTemperature = Annotated[
    float | None,
    Reading("C", low=40, high=200, typical="110 C", text="temperature at which it opened"),
    extra("few shops heat one: what it reads cold is judged without"),
]
ResetTemperature = Annotated[
    float | None,
    Reading("C", low=20, high=180, typical="68 C", text="temperature at which it closed again"),
    extra("few shops heat one: what it reads cold is judged without"),
]

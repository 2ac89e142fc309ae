"""The inputs of `overload`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Problem,
    Reading,
    YesNo,
    asked,
    at_or_below,
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


def refuse(
    overload_resistance: float | None = None,
    lead_resistance: float | None = None,
    overload_open: bool | None = None,
    trip_temperature: float | None = None,
    reset_temperature: float | None = None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if overload_open and overload_resistance is not None:
        yield Problem(
            "overload_open",
            f"an overload that reads {overload_resistance:g} ohm is not open",
            "give the resistance, or overload_open yes",
        )
    if (
        overload_resistance is not None
        and lead_resistance is not None
        and not at_or_below(lead_resistance, overload_resistance)
    ):
        yield Problem(
            "overload_resistance",
            f"{overload_resistance:g} ohm is less than the leads of {lead_resistance:g} ohm",
            "give the reading with the leads in it, and the leads touched together",
        )
    if trip_temperature is None or reset_temperature is None:
        return
    if at_or_below(trip_temperature, reset_temperature):
        yield Problem(
            "reset_temperature",
            f"{reset_temperature:g} C is not below the {trip_temperature:g} C at which it opens",
            "an overload closes again cooler than it opens",
        )

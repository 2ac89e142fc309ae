"""The inputs of `locked`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Count,
    Reading,
    asked,
    extra,
)

from ..inputs import NAMEPLATE_VOLTAGE, SETTLED, SLIP_A
from ..inputs_motor import INVERTER, LOCKED_ROTOR_CURRENT, MOTOR_KIND, RATED_LOAD_CURRENT
from .plate import ASKS_VOLTS, PLUG_VOLTS

HighTime = Annotated[
    float,
    Reading(
        "s",
        low=0,
        high=180,
        typical="6 s",
        text="how long the current of a start stays high",
    ),
]
HighCurrent = Annotated[
    float | None,
    Reading(
        "A",
        low=0,
        high=400,
        typical="11.1 A",
        text="current while it stays high",
        slip_under=SLIP_A,
    ),
    extra("a start of up to 3 s is judged without it; over that it is asked for"),
]
LockedRotorCurrent = Annotated[
    float | None,
    LOCKED_ROTOR_CURRENT,
    extra("a start of up to 3 s is judged without it; over that it is asked for"),
]
RatedLoadCurrent = Annotated[
    float | None,
    RATED_LOAD_CURRENT,
    asked("a motor that runs overloaded trips its overload later"),
]
NameplateVoltage = Annotated[float | None, NAMEPLATE_VOLTAGE, asked(ASKS_VOLTS)]
Voltage = Annotated[float | None, PLUG_VOLTS, asked(ASKS_VOLTS)]
Settled = Annotated[
    float | None, SETTLED, asked("a motor that runs overloaded trips its overload later")
]
OverloadTrips = Annotated[
    int | None,
    Count("times that the overload opened in an hour", low=0, high=100),
    asked("the overload is half the question"),
]
ResetTime = Annotated[
    float | None,
    Reading("min", above=0, high=240, typical="3 min", text="time until the overload closed again"),
    extra("an overload that opens has failed already; it tells what opens"),
]
MotorKind = Annotated[
    str | None,
    MOTOR_KIND,
    extra("over 1.1 times the rated current, or where LRA is under 3 times it, it is asked for"),
]
Inverter = Annotated[
    bool | None, INVERTER, extra("a current that stays high and far from LRA asks for it")
]

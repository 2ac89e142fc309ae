"""The inputs of `dip`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Nameplate,
    Wire,
    asked,
    assumed,
    extra,
    may_be_absent,
)

from ..inputs import (
    ALIVE,
    BUILDING_WIRE,
    CONDUCTOR_TEMPERATURE,
    CORD,
    CORD_LENGTH,
    NAMEPLATE_VOLTAGE,
    OTHER_CURRENT,
    RUN_LENGTH,
    VOLTAGE_AT_REST,
    VOLTAGE_AT_START,
)
from ..inputs_motor import LOCKED_ROTOR_CURRENT

_MEASURED = "the measured volts decide, and arithmetic asks whether the meter was quick enough"

LockedRotorCurrent = Annotated[float, LOCKED_ROTOR_CURRENT.but(typical="14.2 A")]
NameplateVoltage = Annotated[float, NAMEPLATE_VOLTAGE]
VoltageAtRest = Annotated[float, VOLTAGE_AT_REST.but(not_zero=ALIVE)]
RatedLoadCurrent = Annotated[
    float | None,
    Nameplate("A", above=0, high=60, typical="1.6 A", text="RLA on the plate"),
    extra("an LRA above what a plug carries is no rated current; below that, RLA is asked for"),
]
BuildingWire = Annotated[
    Wire | None,
    BUILDING_WIRE,
    asked("it takes its part of the volts", when="not voltage_at_start"),
    extra(_MEASURED),
]
RunLength = Annotated[
    float | None, RUN_LENGTH, asked(when="not voltage_at_start"), extra(_MEASURED)
]
Cord = Annotated[Wire | None, CORD, may_be_absent("no cord")]
CordLength = Annotated[
    float | None, CORD_LENGTH, asked(when="not voltage_at_start"), extra(_MEASURED)
]
OtherCurrent = Annotated[
    float | None, OTHER_CURRENT, may_be_absent("nothing else runs on this wire")
]
VoltageAtStart = Annotated[
    float | None,
    VOLTAGE_AT_START.but(not_zero=ALIVE),
    extra("all that arithmetic allows is tried, and where that does not tell it is asked for"),
]
StartPowerFactor = Annotated[
    float | None,
    Nameplate("%", low=10, high=100, typical="65 %", text="power factor of the locked rotor"),
    extra("0.5, 0.65 and 0.8 are all tried"),
]
ConductorTemperature = Annotated[float, CONDUCTOR_TEMPERATURE, assumed("20 C", source=PRACTICE)]

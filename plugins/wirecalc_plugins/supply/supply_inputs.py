"""The inputs of `supply`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    asked,
    extra,
    may_be_absent,
)

from ..inputs import (
    LOAD_ON_A_RUN,
    NAMEPLATE_VOLTAGE,
    NOMINAL_VOLTAGE,
    VOLTAGE_AT_REST,
    VOLTAGE_AT_START,
    VOLTAGE_RUNNING,
)

NameplateVoltage = Annotated[float, NAMEPLATE_VOLTAGE]
VoltageRunning = Annotated[float | None, VOLTAGE_RUNNING, asked()]
VoltageAtRest = Annotated[
    float | None,
    VOLTAGE_AT_REST.but(typical="119.4 V"),
    extra("the volts that the load has are judged; what is lost on the way stays unseen"),
]
VoltageAtStart = Annotated[
    float | None,
    VOLTAGE_AT_START.but(typical="109 V"),
    extra("the volts of a load that runs are judged; dip asks for those of a start"),
]
NameplateVoltageLow = Annotated[
    float | None,
    Nameplate(
        "V",
        low=12,
        high=600,
        typical="208 V",
        text="lower volts of a 208/240 V plate",
        goes_with="nameplate_voltage",
    ),
    may_be_absent("the plate has one voltage"),
]
NominalVoltage = Annotated[
    float | None,
    NOMINAL_VOLTAGE.but(typical="120 V"),
    extra("the service is taken from the plate, and its range is advice; the plate binds"),
]
Current = Annotated[
    float | None,
    LOAD_ON_A_RUN,
    extra("a loss of over 1 % of the volts at rest asks for it"),
]

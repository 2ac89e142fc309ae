"""The inputs of `thermocouple`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    OneOf,
    Problem,
    Reading,
    asked,
    instead_of,
    tables,
)

from .sensor_inputs import (
    TEMPERATURE,
    TOLERANCE,
    refuse_reading,
)


def _types() -> list[str]:
    rows = tables.load("thermocouple-functions").rows
    return list(dict.fromkeys(r.text("thermocouple_type") for r in rows))


ThermocoupleType = Annotated[
    str, OneOf(_types, text="letter of the thermocouple, by its plug or colour")
]
ThermocoupleVoltage = Annotated[
    float | None,
    Reading(
        "mV",
        low=-20,
        high=100,
        typical="3.10 mV",
        text="millivolts of the thermocouple, plus lead to plus wire",
        if_open="give sensor_open yes",
    ),
    asked("its millivolts say what it is", when="sensor_open!=yes"),
]
ColdJunction = Annotated[
    float | None,
    Reading(
        "C",
        low=-40,
        high=100,
        typical="25 C",
        text="temperature where its wires meet the copper of the meter",
    ),
    asked("millivolts tell only how much hotter the tip is", when="thermocouple_voltage"),
]
SensorTemperature = Annotated[
    float | None,
    TEMPERATURE,
    asked("millivolts are judged against it", when="thermocouple_voltage and in_ice_water!=yes"),
]
ToleranceClass = Annotated[
    str | None,
    OneOf(("class-1", "class-2"), text="class of IEC 60584-1 on its sheet", on_plate=True),
    asked("near is no measure", when="thermocouple_voltage and not temperature_tolerance"),
]
TemperatureTolerance = Annotated[float | None, TOLERANCE, instead_of("tolerance_class")]


def refuse(
    thermocouple_voltage: float | None,
    sensor_temperature: float | None,
    in_ice_water: bool | None,
    sensor_open: bool | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    yield from refuse_reading(
        "the millivolts", thermocouple_voltage, "mV", sensor_temperature, in_ice_water, sensor_open
    )

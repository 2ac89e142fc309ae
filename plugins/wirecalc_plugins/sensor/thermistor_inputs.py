"""The inputs of `thermistor`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    FileColumns,
    Nameplate,
    Problem,
    Reading,
    ReadingsFile,
    YesNo,
    asked,
    at_or_below,
    extra,
    instead_of,
)

from ..inputs import LEADS
from ..lead_resistance import LEADS_COUNT
from .sensor_curve import refuse_points

SENSOR_C = {"low": -60.0, "high": 350.0}
_OHM = {"above": 0.0, "high": 2_000_000.0}

SensorResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        **_OHM,
        typical="5060 ohm",
        text="ohms of the sensor, unplugged from its board",
        if_open="give sensor_open yes",
    ),
    asked("its ohms say what it is", when="sensor_open!=yes"),
]
SensorTemperature = Annotated[
    float | None,
    Reading("C", **SENSOR_C, typical="25 C", text="temperature of the sensor by a thermometer"),
    asked("ohms mean nothing without it", when="sensor_resistance and in_ice_water!=yes"),
]
InIceWater = Annotated[
    bool | None,
    YesNo("it hung in stirred water full of crushed ice for three minutes: 0 C"),
    instead_of("sensor_temperature"),
]
SensorOpen = Annotated[
    bool | None,
    YesNo("the sensor reads open (OL)"),
    extra("ohms that were read say that it conducts"),
]
SheetResistance = Annotated[
    list[float] | None,
    Nameplate("ohm", **_OHM, typical="5000 ohm", text="ohms on the maker's sheet, a point each"),
    asked("without its sheet no ohms are wrong", when="sensor_resistance and not sheet"),
]
SheetTemperature = Annotated[
    list[float] | None,
    Nameplate("C", **SENSOR_C, typical="25 C", text="temperature of each point of that sheet"),
    asked("a point has its temperature", when="sheet_resistance"),
]
BValue = Annotated[
    float | None,
    Nameplate(
        "K",
        low=500,
        high=10_000,
        typical="3977 K",
        text="B value of an NTC on its sheet, with its ohms at one temperature",
        goes_with="sheet_resistance",
    ),
    extra("two points of the sheet say as much"),
]
Sheet = Annotated[
    FileColumns | None,
    ReadingsFile(
        {"temperature": Reading("C", **SENSOR_C, text="C"),
         "resistance": Reading("ohm", **_OHM, text="ohm")},
        text="CSV of the maker's table: temperature and resistance",
        typical="sensor.csv",
    ),
    instead_of("sheet_resistance"),
]  # fmt: skip
SensorTolerance = Annotated[
    float | None,
    Nameplate("%", above=0, high=50, typical="5 %", text="tolerance of its ohms on the sheet"),
    asked("near is no measure", when="sensor_resistance and not temperature_tolerance"),
]
TemperatureTolerance = Annotated[
    float | None,
    Nameplate("K", above=0, high=20, typical="1 K", text="tolerance of its temperature"),
    instead_of("sensor_tolerance"),
]
WarmedResistance = Annotated[
    float | None,
    Reading("ohm", **_OHM, typical="3900 ohm", text="ohms of the same sensor, warmed by hand"),
    extra("its sheet says which way its ohms go"),
]
LeadResistance = Annotated[float | None, LEADS, extra(LEADS_COUNT, when="sensor_resistance")]


def points_of(
    sheet: FileColumns | None, ohms: list[float] | None, celsius: list[float] | None
) -> tuple[list[float] | None, list[float] | None]:
    """Return temperatures and ohms of the sheet, from the file or as typed."""
    if sheet is not None:
        return list(sheet.numbers["temperature"]), list(sheet.numbers["resistance"])
    return celsius, ohms


def refuse(
    sensor_resistance: float | None,
    sensor_temperature: float | None,
    in_ice_water: bool | None,
    sensor_open: bool | None,
    sheet_resistance: list[float] | None,
    sheet_temperature: list[float] | None,
    b_value: float | None,
    sheet: FileColumns | None,
    lead_resistance: float | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if sensor_open and sensor_resistance is not None:
        yield Problem(
            "sensor_open",
            f"a sensor that reads {sensor_resistance:g} ohm is not open",
            "give the resistance, or sensor_open yes",
        )
    if in_ice_water and sensor_temperature is not None:
        yield Problem(
            "in_ice_water",
            "ice water is the temperature, and another was given",
            "give one of both",
        )
    if sheet is not None and (sheet_resistance or sheet_temperature):
        yield Problem("sheet", "the points were given in a file and typed", "give them one way")
    elif sheet is not None or (sheet_resistance and sheet_temperature):
        points = points_of(sheet, sheet_resistance, sheet_temperature)
        yield from refuse_points(*points, b_value)
    if sensor_resistance is not None and at_or_below(sensor_resistance, lead_resistance or 0.0):
        yield Problem(
            "sensor_resistance",
            f"{sensor_resistance:g} ohm is no more than the {lead_resistance:g} ohm of the leads",
            "type the reading with the leads in it; they are subtracted here",
        )

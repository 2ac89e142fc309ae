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
    asked,
    extra,
    instead_of,
)

from .sensor_curve import refuse_points
from .sensor_inputs import (
    COLDEST_C,
    HOTTEST_C,
    MOST_OHM,
    RESISTANCE,
    TEMPERATURE,
    TOLERANCE,
    refuse_leads,
    refuse_reading,
)

SensorResistance = Annotated[
    float | None,
    RESISTANCE,
    asked("its ohms say what it is", when="sensor_open!=yes"),
]
SensorTemperature = Annotated[
    float | None,
    TEMPERATURE,
    asked("ohms mean nothing without it", when="sensor_resistance and in_ice_water!=yes"),
]
SheetResistance = Annotated[
    list[float] | None,
    Nameplate(
        "ohm",
        above=0,
        high=MOST_OHM,
        typical="5000 ohm",
        text="ohms on the maker's sheet, a point each",
    ),
    asked("without its sheet no ohms are wrong", when="sensor_resistance and not sheet"),
]
SheetTemperature = Annotated[
    list[float] | None,
    Nameplate(
        "C",
        low=COLDEST_C,
        high=HOTTEST_C,
        typical="25 C",
        text="temperature of each point of that sheet",
        either_scale=True,
    ),
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
        dimension="temperature difference",
    ),
    extra("two points of the sheet say as much"),
]
Sheet = Annotated[
    FileColumns | None,
    ReadingsFile(
        {
            "temperature": Reading("C", low=COLDEST_C, high=HOTTEST_C, text="C"),
            "resistance": Reading("ohm", above=0, high=MOST_OHM, text="ohm"),
        },
        text="CSV of the maker's table: temperature and resistance",
        typical="sensor.csv",
    ),
    instead_of("sheet_resistance"),
]
SensorTolerance = Annotated[
    float | None,
    Nameplate("%", above=0, high=50, typical="5 %", text="tolerance of its ohms on the sheet"),
    asked("near is no measure", when="sensor_resistance and not temperature_tolerance"),
]
TemperatureTolerance = Annotated[
    float | None,
    TOLERANCE,
    instead_of("sensor_tolerance"),
]
WarmedResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        above=0,
        high=MOST_OHM,
        typical="3900 ohm",
        text="ohms of the same sensor, warmed by hand",
    ),
    extra("its sheet says which way its ohms go"),
]


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
    yield from refuse_reading(
        "the resistance",
        sensor_resistance,
        "ohm",
        sensor_temperature,
        in_ice_water,
        sensor_open,
    )
    if sheet is not None and (sheet_resistance or sheet_temperature):
        yield Problem("sheet", "the points were given in a file and typed", "give them one way")
    elif sheet is not None or (sheet_resistance and sheet_temperature):
        points = points_of(sheet, sheet_resistance, sheet_temperature)
        yield from refuse_points(*points, b_value)
    yield from refuse_leads(sensor_resistance, lead_resistance)

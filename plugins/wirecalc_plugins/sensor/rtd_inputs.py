"""The inputs of `rtd`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Problem,
    Reading,
    asked,
    at_or_below,
    extra,
    instead_of,
)

from .sensor_inputs import (
    RESISTANCE,
    TEMPERATURE,
    TOLERANCE,
    refuse_leads,
    refuse_reading,
)

IceResistance = Annotated[
    float,
    Nameplate(
        "ohm",
        low=10,
        high=10_000,
        typical="1000 ohm",
        text="ohms at 0 C: 100 of a Pt100, 1000 of a Pt1000",
        steps=("100 ohm", "200 ohm", "500 ohm", "1000 ohm"),
    ),
]
SensorResistance = Annotated[
    float | None, RESISTANCE, asked("its ohms say what it is", when="sensor_open!=yes")
]
SensorTemperature = Annotated[
    float | None,
    TEMPERATURE,
    asked("ohms are judged against it", when="sensor_resistance and in_ice_water!=yes"),
]
RtdClass = Annotated[
    str | None,
    OneOf(("AA", "A", "B", "C"), text="class of IEC 60751 marked on it", on_plate=True),
    asked("near is no measure", when="sensor_resistance and not temperature_tolerance"),
]
RtdBuild = Annotated[
    str | None,
    OneOf(("wire-wound", "film"), text="build of the platinum resistor"),
    extra("it is asked for where the class ends sooner for one of them"),
]
TemperatureTolerance = Annotated[float | None, TOLERANCE, instead_of("rtd_class")]
PairResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        low=0,
        high=100,
        typical="0.6 ohm",
        text="between the two wires of one colour, by the same leads",
    ),
    instead_of("lead_resistance"),
]


def refuse(
    sensor_resistance: float | None,
    sensor_temperature: float | None,
    in_ice_water: bool | None,
    sensor_open: bool | None,
    lead_resistance: float | None,
    pair_resistance: float | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    yield from refuse_reading(
        "the resistance", sensor_resistance, "ohm", sensor_temperature, in_ice_water, sensor_open
    )
    yield from refuse_leads(sensor_resistance, lead_resistance)
    if pair_resistance is None:
        return
    if lead_resistance is not None:
        yield Problem(
            "pair_resistance",
            "the leads are in both readings and cancel, and lead_resistance was given too",
            "give one of both",
        )
    if sensor_resistance is not None and at_or_below(sensor_resistance, pair_resistance):
        yield Problem(
            "pair_resistance",
            f"{pair_resistance:g} ohm between the pair is no less than the reading",
            "the pair are the two wires of one colour; the reading is across to the third",
        )

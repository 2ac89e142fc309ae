"""The inputs of `drop`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Nameplate,
    OneOf,
    Reading,
    Wire,
    asked,
    assumed,
    extra,
    instead_of,
    may_be_absent,
    setting,
)

from ..inputs import (
    ALIVE,
    BUILDING_WIRE,
    CONDUCTOR_TEMPERATURE,
    CORD,
    CORD_LENGTH,
    LOAD_ON_A_RUN,
    NAMEPLATE_VOLTAGE,
    OTHER_CURRENT,
    RUN_LENGTH,
    SLIP_A,
    VOLTAGE_AT_REST,
)
from ..inputs_conductor import (
    CONDUCTOR_METAL,
    KNOWN_AT,
    KNOWN_AT_20,
    RESISTANCE_PER_LENGTH,
    RESISTIVITY,
    RISES,
)

SYSTEMS = ("two-wire", "three-wire")

Current = Annotated[float, LOAD_ON_A_RUN]
NameplateVoltage = Annotated[float, NAMEPLATE_VOLTAGE]
BuildingWire = Annotated[
    Wire | None,
    BUILDING_WIRE,
    asked("it takes its part of the volts before the cord", when="not resistance_per_length"),
]
ResistancePerLength = Annotated[float | None, RESISTANCE_PER_LENGTH, instead_of("building_wire")]
Resistivity = Annotated[
    float | None,
    RESISTIVITY.but(goes_with="building_wire"),
    setting("tables give the ohms of its size"),
]
KnownAt = Annotated[
    float | None,
    KNOWN_AT,
    setting(KNOWN_AT_20, when="resistance_per_length"),
    setting(KNOWN_AT_20, when="resistivity"),
]
ConductorMetal = Annotated[
    str | None,
    CONDUCTOR_METAL,
    asked(RISES, when="resistance_per_length"),
]
RunLength = Annotated[
    float | None,
    RUN_LENGTH.but(goes_with=""),
    asked("ohms go with the length", when="building_wire"),
    asked("ohms go with the length", when="resistance_per_length"),
]
Cord = Annotated[Wire | None, CORD, may_be_absent("no cord")]
CordLength = Annotated[float | None, CORD_LENGTH, asked()]
OtherCurrent = Annotated[
    float | None, OTHER_CURRENT, may_be_absent("nothing else runs on this wire")
]
OtherLegCurrent = Annotated[
    float | None,
    Reading(
        "A",
        low=0,
        high=200,
        typical="5 A",
        text="current of the other leg, which shares the neutral of the building wire",
        slip_under=SLIP_A,
    ),
    may_be_absent("the neutral carries all of this load"),
]
System = Annotated[
    str | None,
    OneOf(SYSTEMS, text="two-wire: line and neutral, or leg to leg"),
    setting("a current of the other leg says three-wire"),
]
PowerFactor = Annotated[
    float | None,
    Nameplate("%", low=10, high=100, typical="80 %", text="power factor of the load, lagging"),
    assumed("80 %", source=PRACTICE, why="resistance alone, as of a heater"),
]
ConductorTemperature = Annotated[float, CONDUCTOR_TEMPERATURE, assumed("20 C", source=PRACTICE)]
VoltageAtRest = Annotated[
    float | None,
    VOLTAGE_AT_REST.but(not_zero=ALIVE),
    extra("a run that takes over 10 % of the plate's volts asks for it"),
]

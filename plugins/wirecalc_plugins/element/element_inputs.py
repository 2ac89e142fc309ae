"""The inputs of `element`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Nameplate,
    OneOf,
    Reading,
    YesNo,
    asked,
    assumed,
    extra,
    instead_of,
    may_be_absent,
)

from ..inputs import (
    ALIVE,
    LEADS,
    NAMEPLATE_POWER,
    NAMEPLATE_VOLTAGE,
    NOMINAL_VOLTAGE,
    VOLTAGE_AT_REST,
)
from ..maker_range import upper_end

WIRE = "wire"

ElementResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        low=0,
        high=10_000,
        typical="22.6 ohm",
        text="across the element, wires off",
        if_open="leave it out and give element_open yes",
    ),
    asked("or element_open", when="not element_open"),
    instead_of("element_open"),
]
LeadResistance = Annotated[
    float | None, LEADS, assumed("0 ohm", "0.3 ohm", source=PRACTICE, why="0 to 0.3 ohm")
]
ElementOpen = Annotated[
    bool | None,
    YesNo("the element reads open, wires off"),
    instead_of("element_resistance"),
]
ElementKind = Annotated[
    str | None,
    OneOf(
        (WIRE, "lamp", "ptc"),
        text="wire: sheathed, open coil or ribbon; lamp: halogen, quartz; ptc: a block heater",
    ),
    may_be_absent("an element of resistance wire: no lamp, no PTC heater"),
]
MakerElement = Annotated[
    float | None,
    Nameplate("ohm", above=0, high=10_000, typical="21.5 ohm", text="its cold ohms by its maker"),
    extra("where the plate cannot settle a low reading, it is asked for"),
]
MakerElementHigh = Annotated[
    float | None,
    upper_end("maker_element", "25 ohm", 10_000),
    may_be_absent("its maker prints one value, no range"),
]
NameplatePower = Annotated[
    float | None,
    NAMEPLATE_POWER,
    asked("the reading is held against the plate", when="not maker_element and not element_open"),
    extra("the maker's ohms are judged by"),
]
NameplateVoltage = Annotated[
    float | None,
    NAMEPLATE_VOLTAGE.but(typical="240 V"),
    asked("the reading is held against the plate", when="not maker_element and not element_open"),
    asked("the volts are held against it", when="element_voltage"),
    extra("the maker's ohms are judged by"),
]
ElementVoltage = Annotated[
    float | None,
    Reading("V", low=1, high=700, typical="232 V", text="volts across it while it heats"),
    extra("whether it is good its ohms say; what it heats at its volts is a second question"),
]
NominalVoltage = Annotated[
    float | None,
    NOMINAL_VOLTAGE,
    extra("asked for where the volts are under 90 % of the plate's", when="element_voltage"),
]
VoltageAtRest = Annotated[
    float | None,
    VOLTAGE_AT_REST.but(not_zero=ALIVE),
    extra("asked for where the volts are under 90 % of the plate's", when="element_voltage"),
]

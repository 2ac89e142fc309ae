"""The inputs of `wire-ohms`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Problem,
    Reading,
    Wire,
    asked,
    at_or_below,
    extra,
    instead_of,
    setting,
)

from ..inputs import CONDUCTOR_TEMPERATURE, LEADS, WIRE
from ..inputs_conductor import (
    CONDUCTOR_METAL,
    KNOWN_AT,
    KNOWN_AT_20,
    RESISTANCE_PER_LENGTH,
    RESISTIVITY,
    RISES,
)
from ..lead_resistance import LEADS_COUNT

ONE_WAY, LOOP = WAYS = ("one-way", "loop")

TheWire = Annotated[
    Wire | None,
    WIRE,
    asked("its size and metal give the ohms", when="not resistance_per_length"),
]
ResistancePerLength = Annotated[
    float | None,
    RESISTANCE_PER_LENGTH,
    instead_of("wire"),
]
Resistivity = Annotated[
    float | None,
    RESISTIVITY.but(goes_with="wire"),
    extra("the metal of the wire says it; of an alloy it is printed"),
]
KnownAt = Annotated[
    float,
    KNOWN_AT,
    setting(KNOWN_AT_20),
]
ConductorMetal = Annotated[
    str | None,
    CONDUCTOR_METAL,
    asked(
        RISES,
        when="resistance_per_length and conductor_temperature",
    ),
    asked(
        RISES,
        when="resistivity and conductor_temperature",
    ),
]
ConductorLength = Annotated[
    float | None,
    Reading(
        "ft",
        above=0,
        high=100_000,
        typical="100 ft",
        text="length of one conductor, end to end",
    ),
    asked("ohms go with the length", when="not measured_resistance"),
    asked("a limit is one of a length", when="greatest_per_length"),
]
ConductorTemperature = Annotated[
    float | None,
    CONDUCTOR_TEMPERATURE,
    asked("copper has 4 % more ohms for 10 K", when="measured_resistance and not conductor_length"),
    asked("the limit holds at 20 C", when="greatest_per_length"),
]
MeasuredResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        above=0,
        high=1_000_000,
        typical="0.72 ohm",
        text="ohms of the conductor as read; lead_resistance is taken off",
        slip_under=0.0001,  # a few feet of building wire have milliohms
    ),
    asked("the limit judges what was read", when="greatest_per_length"),
]
MeasuredWay = Annotated[
    str | None,
    OneOf(WAYS, text="one-way: one conductor, end to end; loop: there and back by a second one"),
    asked("a loop has twice the ohms", when="measured_resistance"),
]
LeadResistance = Annotated[float | None, LEADS, extra(LEADS_COUNT, when="measured_resistance")]
GreatestPerLength = Annotated[
    float | None,
    Nameplate(
        "ohm/kft",
        above=0,
        high=1_000_000,
        typical="2.7 ohm/kft",
        text="most that a maker or a standard lets a length of one conductor have at 20 C",
    ),
    extra("without a maker's or a standard's most no resistance is too high"),
]


def refuse(
    wire: Wire | None,
    resistance_per_length: float | None,
    resistivity: float | None,
    conductor_metal: str | None,
    measured_resistance: float | None,
    lead_resistance: float | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if resistance_per_length is not None and wire is not None:
        yield Problem(
            "resistance_per_length",
            "it stands in place of the wire, and both were given",
            "give wire alone, or resistance_per_length alone",
        )
    if conductor_metal is not None and resistance_per_length is None and resistivity is None:
        yield Problem(
            "conductor_metal",
            "it goes with a printed resistance, and a wire says its own metal",
            "write it with the wire: 12 AWG aluminum",
        )
    if measured_resistance is not None and at_or_below(measured_resistance, lead_resistance or 0.0):
        yield Problem(
            "measured_resistance",
            f"{measured_resistance:g} ohm is no more than the {lead_resistance:g} ohm of the leads",
            "type the reading with the leads in it; they are subtracted here",
        )

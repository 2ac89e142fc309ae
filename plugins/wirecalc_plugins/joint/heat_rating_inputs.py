"""The inputs of `heat-rating`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    OneOf,
    YesNo,
    asked,
    extra,
    instead_of,
    may_be_absent,
)

from ..inputs_joint import PLACE, SLEEVE_RATING, TERMINAL_RATING, WIRE_RATING
from .part_ratings import sleeves, terminals

PlaceTemperature = Annotated[
    float | None,
    PLACE,
    asked("a rating is good for a place and not by itself"),
]
NearHeater = Annotated[
    bool | None,
    YesNo("the place is beside a heater"),
    extra("the measured place decides; beside a heater it is not believed where it reads cold"),
]
WireTemperature = Annotated[float | None, WIRE_RATING, asked("the weakest rating decides")]
TerminalTemperature = Annotated[
    float | None,
    TERMINAL_RATING,
    instead_of("terminal_material", when="terminal_material"),
    asked("the weakest rating decides; without a mark, give its make"),
]
TerminalMaterial = Annotated[
    str | None,
    OneOf(terminals, text="make of a terminal that carries no rating"),
    instead_of("terminal_temperature"),
]
SleeveTemperature = Annotated[
    float | None,
    SLEEVE_RATING,
    instead_of("sleeve_material", when="sleeve_material"),
    may_be_absent("no sleeve over the joint"),
]
SleeveMaterial = Annotated[
    str | None,
    OneOf(sleeves, text="make of a sleeve that carries no rating"),
    instead_of("sleeve_temperature"),
]

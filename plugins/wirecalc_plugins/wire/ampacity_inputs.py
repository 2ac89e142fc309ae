"""The inputs of `ampacity`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    OneOf,
    Wire,
    asked,
    assumed,
    extra,
)

from ..circuit.cord_load import CORD_TYPE, CORDS
from ..circuit.wire_place import TERMINATION as _TERMINATION
from ..inputs import (
    AROUND_WIRE,
    CORD_CONDUCTORS,
    CURRENT,
    TERMINATION,
    TOGETHER,
    WIRE,
    WIRE_CLASS,
)
from ..inputs_joint import PLACE, WIRE_RATING

USES = ("building", "cord", "fixture", "appliance")

Use = Annotated[str, OneOf(USES, text="where the wire serves")]
WireInput = Annotated[Wire, WIRE]
InsulationClass = Annotated[
    float | None,
    WIRE_CLASS,
    asked("its table has a column a class", when="use=building"),
]
TerminationTemperature = Annotated[
    float,
    TERMINATION,
    assumed("75 C", source=_TERMINATION, when="use=building"),
]
Conductors = Annotated[
    int | None,
    TOGETHER,
    asked("wires that lie together warm each other", when="use=building"),
]
CordConductors = Annotated[
    int | None,
    CORD_CONDUCTORS,
    asked("three live wires carry less than two", when="use=cord"),
]
CordType = Annotated[str, CORD_TYPE, assumed("heater", source=CORDS, when="use=cord")]
WireTemperature = Annotated[
    float | None,
    WIRE_RATING,
    asked("what it carries turns on it", when="use=appliance"),
]
PlaceTemperature = Annotated[
    float | None,
    PLACE,
    asked("what it carries turns on it", when="use=appliance"),
]
Ambient = Annotated[
    float | None,
    AROUND_WIRE,
    asked("heat lowers what it carries", when="use=building|cord|fixture"),
]
Current = Annotated[
    float | None,
    CURRENT,
    extra("without it the table's value is shown and nothing is judged"),
]

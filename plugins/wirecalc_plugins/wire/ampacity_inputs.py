"""The inputs of `ampacity`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Count,
    Nameplate,
    OneOf,
    Reading,
    Wire,
    asked,
    assumed,
    extra,
)

from ..circuit.cord_load import CORD_TYPE, CORDS
from ..circuit.place import TERMINATION as _TERMINATION
from ..inputs import SLIP_A
from ..inputs_joint import PLACE, WIRE_RATING

USES = ("building", "cord", "fixture", "appliance")

Use = Annotated[str, OneOf(USES, text="where the wire serves")]
WireInput = Annotated[Wire, "wire that carries the current"]
InsulationClass = Annotated[
    float | None,
    Nameplate("C", low=0, high=300, typical="60 C", text="insulation class of the building wire"),
    asked("its table has a column a class", when="use=building"),
]
TerminationTemperature = Annotated[
    float,
    Nameplate(
        "C",
        low=0,
        high=300,
        typical="60 C",
        text="rating marked on the terminations of the building wire",
    ),
    assumed("75 C", source=_TERMINATION, when="use=building"),
]
Conductors = Annotated[
    int | None,
    Count("current-carrying wires in the cable or raceway of the building", low=1, high=100),
    asked("wires that lie together warm each other", when="use=building"),
]
CordConductors = Annotated[
    int | None,
    Count(
        "wires of the cord that carry current, without the ground and without the neutral of "
        "a dryer or range",
        low=2,
        high=3,
    ),
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
    Reading("C", low=-40, high=90, typical="25 C", text="air around building wire or cord"),
    asked("heat lowers what it carries", when="use=building|cord|fixture"),
]
Current = Annotated[
    float | None,
    Reading(
        "A",
        low=0,
        high=400,
        typical="8.7 A",
        text="current to judge, if any",
        slip_under=SLIP_A,
    ),
    extra("without it the table's value is shown and nothing is judged"),
]

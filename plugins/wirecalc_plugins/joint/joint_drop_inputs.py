"""The inputs of `joint-drop`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Reading,
    Wire,
)

from ..inputs import WIRE

Drop = Annotated[
    float,
    Reading("V", above=0, high=10, typical="30 mV", text="voltage across the loaded joint"),
]
JointCurrent = Annotated[
    float,
    Reading(
        "A",
        above=0,
        high=100,
        typical="8.7 A",
        text="current through the joint at the same moment",
    ),
]
WireInput = Annotated[Wire, WIRE]
JointLength = Annotated[
    float,
    Reading("mm", above=0, high=305, typical="150 mm", text="length between the probes"),
]

"""The inputs that say how a building wire lies, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import asked, assumed, confirmed

from ..inputs import AROUND_WIRE, TERMINATION, TOGETHER, WIRE_CLASS
from .wire_place import TERMINATION as BY_TERMINATION
from .wiring_rules import RULES_LEFT_OUT, WIRING_RULES

_COLUMNS = confirmed("nec-310-16-columns", "NEC", "Table 310.16, its three columns", copies=2)
_HEAT = "heat around it lowers what it carries"

InsulationClass = Annotated[
    float, WIRE_CLASS, assumed("75 C", "90 C", source=_COLUMNS, when="building_wire")
]
TerminationTemperature = Annotated[
    float, TERMINATION, assumed("75 C", source=BY_TERMINATION, when="building_wire")
]
AroundWire = Annotated[float | None, AROUND_WIRE, asked(_HEAT, when="building_wire")]
AroundWireOrCord = Annotated[
    float | None, AROUND_WIRE, asked(_HEAT, when="building_wire"), asked(_HEAT, when="cord")
]
Together = Annotated[
    int | None, TOGETHER, asked("wires that lie together warm each other", when="building_wire")
]
WiringRules = Annotated[str, WIRING_RULES, RULES_LEFT_OUT]

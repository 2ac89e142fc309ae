"""The inputs of `splice`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Count,
    Nameplate,
    Problem,
    Reading,
    SizeRange,
    Wire,
    asked,
    assumed,
    extra,
)

from ..inputs import CIRCUIT_VOLTAGE, CURRENT, WIRE
from ..inputs_joint import CONNECTOR, LISTED_FOR, PLACE, TAB_WIDTH, TERMINAL_RATING, WIRE_RATING

WireInput = Annotated[list[Wire], WIRE]
Barrel = Annotated[SizeRange, "range of the barrel, as stamped or as on the bag"]
Connector = Annotated[
    str | None,
    CONNECTOR,
    extra("barrel, wires and ratings are judged alike; what one kind alone asks for is not"),
]
ListedFor = Annotated[
    str | None,
    LISTED_FOR,
    extra("stranded wire by itself needs no listing of its own; of other wire it is asked"),
]
WireLimit = Annotated[
    int | None,
    Count("most wires that the maker lists for one barrel", low=1, high=12),
    extra("one wire is always within it; of several in a barrel it is asked"),
]
WireTemperature = Annotated[
    float | None, WIRE_RATING, asked("the weakest rating decides where it may sit")
]
TerminalTemperature = Annotated[
    float | None, TERMINAL_RATING, asked("the weakest rating decides where it may sit")
]
PlaceTemperature = Annotated[
    float | None, PLACE, asked("a rating is good for a place and not by itself")
]
Current = Annotated[
    float | None,
    CURRENT,
    extra("a connector for the wire's gauge carries what its wire does; for a tab see `tab`"),
]
TabWidth = Annotated[
    float | None,
    TAB_WIDTH,
    extra("it counts for the current of a push-on, and is asked where the width decides"),
]
CircuitVoltage = Annotated[
    float | None,
    CIRCUIT_VOLTAGE,
    extra("connectors are marked 300 V or 600 V, an ordinary appliance has up to 240 V"),
]
InsulationDiameter = Annotated[
    float | None,
    Reading("mm", above=0, high=30, typical="2.4 mm", text="diameter over the insulation"),
    extra("insulation that is too thick does not go in: it is seen"),
]
InsulationLimit = Annotated[
    float | None,
    Nameplate(
        "mm",
        above=0,
        high=30,
        typical="3.4 mm",
        text="largest insulation that the maker lists",
    ),
    extra("insulation that is too thick does not go in: it is seen"),
]
TerminalVoltage = Annotated[
    float | None,
    Nameplate(
        "V",
        low=1,
        high=35000,
        typical="300 V",
        text="voltage marked on the connector",
    ),
    assumed(
        "600 V",
        source=PRACTICE,
        why="300 V, the lower of the usual markings",
        when="circuit_voltage",
    ),
    extra("connectors are marked 300 V or 600 V, an ordinary appliance has up to 240 V"),
]


def refuse(wire: list[Wire], insulation_diameter: float | None = None) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    copper = max(2 * math.sqrt(w.area_mm2 / math.pi) for w in wire)  # of a solid one, the least
    if insulation_diameter is not None and insulation_diameter < copper:
        yield Problem(
            "insulation_diameter",
            f"{insulation_diameter:g} mm is thinner than the metal in it, {copper:.3g} mm or more",
            "measure over the insulation",
        )

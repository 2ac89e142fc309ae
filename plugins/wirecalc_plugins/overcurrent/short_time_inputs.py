"""The inputs of `short-time`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    OneOf,
    Reading,
    Wire,
    assumed,
    extra,
    may_be_absent,
    setting,
)

from ..inputs import OVERCURRENT, OVERCURRENT_TIME, WIRE
from ..inputs_joint import CUT_STRANDS, STRANDS
from .adiabatic import STRONGEST, insulations

WireInput = Annotated[Wire, WIRE]
Overcurrent = Annotated[float, OVERCURRENT]
OvercurrentTime = Annotated[
    float | None,
    OVERCURRENT_TIME,
    extra("the time that the wire stands is shown, and nothing is judged"),
]
Insulation = Annotated[
    str,
    OneOf(insulations, text="insulation of the wire and its highest running temperature, C"),
    assumed(STRONGEST, source=PRACTICE),
]
TemperatureBefore = Annotated[
    float | None,
    Reading(
        "C",
        low=-40,
        high=150,
        typical="30 C",
        text="temperature of the wire before the overcurrent",
    ),
    assumed("30 C", source=PRACTICE, why="as hot as at full load"),
]
CutStrands = Annotated[
    int | None,
    CUT_STRANDS.but(goes_with="wire"),
    may_be_absent("no strand is cut"),
]
Strands = Annotated[
    int | None,
    STRANDS,
    extra(
        "a wire written as 26x30 AWG says its own; of another it is asked for",
        when="cut_strands",
    ),
    setting("no strand is cut"),
]

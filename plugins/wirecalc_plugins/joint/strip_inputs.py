"""The inputs of `strip`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    OneOf,
    Reading,
    Wire,
    asked,
    extra,
    setting,
)

from ..inputs import WIRE

STYLES = ("closed", "closed-insulated", "open", "stop", "ferrule", "twist-on")

WireInput = Annotated[list[Wire], WIRE]
Style = Annotated[str, OneOf(STYLES, text="how the wire sits in the connector")]
BarrelLength = Annotated[
    float | None,
    Reading(
        "mm",
        above=0,
        high=60,
        typical="6.5 mm",
        text="length of the wire barrel, or depth to the stop",
    ),
    asked("every barrel is stripped by its length", when="style!=twist-on"),
    setting("a twist-on goes by its own instruction"),
]
WindowLength = Annotated[
    float | None,
    Reading(
        "mm",
        low=0,
        high=20,
        typical="2 mm",
        text="gap between wire crimp and insulation crimp of an open barrel",
    ),
    asked("how far the strip may reach depends on it", when="style=open"),
    setting("only an open barrel has one"),
]
Stripped = Annotated[
    float | None,
    Reading("mm", above=0, high=100, typical="8 mm", text="strip length as measured"),
    extra("without it nothing is judged: the answer is the length to strip to"),
]

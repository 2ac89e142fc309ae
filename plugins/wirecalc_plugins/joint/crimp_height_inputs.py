"""The inputs of `crimp-height`: what leaving each out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Reading,
    Wire,
    asked,
    extra,
)

from ..inputs import WIRE

HEXAGON, ROUND, ROLLED = SHAPES = ("hexagon", "round", "rolled")


def _read(text: str, typical: str) -> Reading:
    return Reading("mm", above=0, high=50, typical=typical, text=text)


def _sheet(text: str, typical: str) -> Nameplate:
    return Nameplate("mm", above=0, high=50, typical=typical, text=text)


CrimpHeight = Annotated[float, _read("height of the wire crimp", "1.42 mm")]
NominalHeight = Annotated[
    float | None,
    _sheet("crimp height on the sheet for this wire", "1.40 mm"),
    asked("the sheet of terminal, wire and tool has it"),
]
HeightTolerance = Annotated[
    float | None,
    _sheet("tolerance of that height, each way", "0.05 mm"),
    asked("near is no measure", when="nominal_height"),
]
CrimpWidth = Annotated[
    float | None,
    _read("width of the wire crimp", "2.05 mm"),
    asked("its sheet has it", when="nominal_width"),
    extra("the die makes the width; the height is what the press sets"),
]
NominalWidth = Annotated[
    float | None,
    _sheet("crimp width on the sheet", "2.03 mm"),
    extra("the die makes the width; the height is what the press sets"),
]
WidthTolerance = Annotated[
    float | None,
    _sheet("tolerance of that width, each way", "0.10 mm"),
    asked("near is no measure", when="nominal_width"),
]
TheWires = Annotated[
    list[Wire] | None, WIRE, extra("height and width are judged without the copper")
]
CrimpShape = Annotated[
    str | None,
    OneOf(SHAPES, text="rolled: open barrel, two rolls over a base; hexagon; round"),
    extra("height and width are judged without the shape"),
]
BarrelMetal = Annotated[
    float | None,
    Nameplate(
        "mm2",
        above=0,
        high=500,
        typical="2.6 mm2",
        text="metal of the barrel across: sheet thickness x its unrolled width",
    ),
    extra("height and width are judged without the metal"),
]

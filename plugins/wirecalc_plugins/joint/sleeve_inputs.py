"""The inputs of `sleeve`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Problem,
    Reading,
    YesNo,
    asked,
    extra,
    instead_of,
)

from ..inputs import CIRCUIT_VOLTAGE
from ..inputs_joint import CONNECTOR, PLACE, SLEEVE_RATING


def _mm(text: str, typical: str) -> Nameplate:
    return Nameplate("mm", above=0, high=100, typical=typical, text=text)


def _thick(text: str, typical: str, high: float = 100) -> Reading:
    return Reading("mm", above=0, high=high, typical=typical, text=text)


SuppliedDiameter = Annotated[float, _mm("inside diameter as supplied", "6.4 mm")]
LargestDiameter = Annotated[
    float, _thick("thickest that it must slip over: terminal, joint, insulation", "5.0 mm")
]
SmallestDiameter = Annotated[
    float, _thick("thinnest that it must grip, mostly the insulation of the wire", "3.6 mm")
]
RecoveredDiameter = Annotated[
    float | None,
    _mm("inside diameter fully recovered", "3.2 mm"),
    asked("it grips only what is thicker", when="not shrink_ratio"),
]
ShrinkRatio = Annotated[
    str | None,
    OneOf(("2:1", "3:1", "4:1"), text="ratio on the reel: supplied to recovered"),
    instead_of("recovered_diameter"),
]
Connector = Annotated[
    str | None, CONNECTOR, extra("a joint has a sleeve; closed ends and caps need none")
]
SleeveTemperature = Annotated[
    float | None,
    SLEEVE_RATING,
    asked("the weakest rating of a joint decides"),
]
PlaceTemperature = Annotated[
    float | None, PLACE, asked("a rating is good for a place and not by itself")
]
SleeveVoltage = Annotated[
    float | None,
    Nameplate("V", low=1, high=35_000, typical="600 V", text="volts printed on the sleeve"),
    asked("it is the insulation of the joint"),
]
CircuitVoltage = Annotated[
    float | None, CIRCUIT_VOLTAGE, asked("the sleeve insulates against them")
]
CoveredLength = Annotated[
    float | None,
    _thick("bare metal to cover, end to end", "20 mm", 1000),
    asked("bare metal must not look out"),
]
SleeveLength = Annotated[
    float | None,
    _thick("length of the sleeve as cut", "40 mm", 1000),
    asked("bare metal must not look out"),
]
LengthwiseShrink = Annotated[
    float | None,
    Nameplate("%", low=0, high=50, typical="10 %", text="how much shorter its sheet has it get"),
    extra("without its sheet 15 % count"),
]
Slides = Annotated[
    bool | None,
    YesNo("recovered and cold, fingers can slide or turn it"),
    extra("its diameters say whether it grips; the hand proves it"),
]


def refuse(
    supplied_diameter: float,
    recovered_diameter: float | None,
    shrink_ratio: str | None,
    largest_diameter: float,
    smallest_diameter: float,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if recovered_diameter is not None and shrink_ratio is not None:
        yield Problem(
            "shrink_ratio", "the recovered diameter was given, and the ratio says it", "give one"
        )
    if recovered_diameter is not None and recovered_diameter >= supplied_diameter:
        yield Problem(
            "recovered_diameter",
            f"{recovered_diameter:g} mm is not below the {supplied_diameter:g} mm as supplied",
            "the sheet prints both, inside: as supplied, and fully recovered",
        )
    if smallest_diameter > largest_diameter:
        yield Problem(
            "smallest_diameter",
            f"{smallest_diameter:g} mm is more than the largest, {largest_diameter:g} mm",
            "the thinnest that it must grip, and the thickest that it must slip over",
        )

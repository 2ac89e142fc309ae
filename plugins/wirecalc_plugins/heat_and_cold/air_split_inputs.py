"""The inputs of `air-split`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Problem,
    Reading,
    asked,
    extra,
    instead_of,
)

AirDoes = Annotated[str, OneOf(("cools", "warms"), text="what the air should do on its way across")]
AirIn = Annotated[
    float,
    Reading("C", low=-40, high=200, typical="25 C", text="air where it goes in"),
]
AirOut = Annotated[
    float,
    Reading("C", low=-40, high=300, typical="14 C", text="air where it comes out"),
]
LeastSplit = Annotated[
    float | None,
    Nameplate(
        "K",
        above=0,
        high=200,
        typical="8 K",
        text="least difference by the maker's sheet",
        dimension="temperature difference",
    ),
    asked("without the maker's span no difference is wrong"),
]
MostSplit = Annotated[
    float | None,
    Nameplate(
        "K",
        above=0,
        high=200,
        typical="12 K",
        text="greatest difference by the maker's sheet",
        dimension="temperature difference",
    ),
    extra("a sheet may print the least alone; more tells of little air"),
]
AirFlow = Annotated[
    float | None,
    Reading("m3/h", above=0, high=20_000, typical="350 m3/h", text="air that goes in"),
    extra("the difference is judged without; with it the heat is told"),
]
AirHeat = Annotated[
    float | None,
    Reading("W", above=0, high=100_000, typical="5000 W", text="heat that is put in or taken out"),
    instead_of("air_flow"),
]


def refuse(
    air_in: float, air_out: float, air_flow: float | None, air_heat: float | None
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if air_heat is not None and air_flow is not None:
        yield Problem(
            "air_heat", "heat and air flow were given, and each follows from the other", "give one"
        )
    elif air_heat is not None and air_in == air_out:
        yield Problem(
            "air_out",
            f"{air_out:g} C in and out: no air flow follows from no difference",
            "read both again, or leave air_heat out",
        )

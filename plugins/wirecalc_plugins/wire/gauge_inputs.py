"""The inputs of `gauge`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    OneOf,
    Reading,
    asked,
    extra,
    setting,
)

from ..inputs_joint import STRANDS

METALS = (
    "copper",
    "tinned copper",
    "nickel-plated copper",
    "aluminium",
    "copper-clad aluminium",
)

Strands = Annotated[
    int | None,
    STRANDS,
    asked("the copper is counted strand by strand"),
]
StrandDiameter = Annotated[
    float | None,
    Reading(
        "mm",
        above=0,
        high=5,
        typical="0.254 mm",
        text="diameter of one strand, bare of lacquer",
    ),
    asked("the copper is counted strand by strand"),
]
Metal = Annotated[
    str,
    OneOf(METALS, text="metal of a strand, scraped: copper is red through"),
    extra("the size is the same for any metal; that it is copper is printed as assumed"),
]
OutsideDiameter = Annotated[
    float | None,
    Reading(
        "mm",
        above=0,
        high=30,
        typical="3 mm",
        text="diameter over the insulation, shown beside the wire",
    ),
    setting("insulation is of any thickness: no gauge is in it"),
]

"""The inputs of `gauge`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    OneOf,
    Reading,
    asked,
    extra,
    instead_of,
    setting,
)

from ..inputs_conductor import KNOWN_AT, KNOWN_AT_20, RESISTANCE_PER_LENGTH
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
    asked("the copper is counted strand by strand", when="not resistance_per_length"),
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
    asked("the copper is counted strand by strand", when="not resistance_per_length"),
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
ResistancePerLength = Annotated[
    float | None, RESISTANCE_PER_LENGTH, instead_of("strands", "strand_diameter")
]
KnownAt = Annotated[
    float | None,
    KNOWN_AT,
    setting(KNOWN_AT_20, when="resistance_per_length"),
]

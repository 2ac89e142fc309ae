"""The inputs of `ring`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Count,
    OneOf,
    Reading,
    Wire,
    asked,
    may_be_absent,
    tables,
)

from ..inputs import WIRE


def _studs() -> list[str]:
    return [r.text("stud") for r in tables.load("ring-holes").rows]


Stud = Annotated[str, OneOf(_studs, text="stud or screw, as on the ring")]
WireInput = Annotated[Wire, WIRE]
Hole = Annotated[
    float | None,
    Reading("mm", above=0, high=30, typical="3.2 mm", text="hole of the ring, as measured"),
    asked("a ring for a larger stud has nothing to sit on"),
]
StudTerminals = Annotated[
    int | None,
    Count("terminals on this one stud, this ring too", low=1, high=20),
    may_be_absent("no other terminal on the stud"),
]

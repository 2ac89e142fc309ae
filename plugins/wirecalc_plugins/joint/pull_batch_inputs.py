"""The inputs of `pull-batch`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    FileColumns,
    Nameplate,
    OneOf,
    ReadingsFile,
    Wire,
    Words,
    YesNo,
    extra,
    instead_of,
    may_be_absent,
    setting,
)

from ..inputs_joint import FORCE, PULL_STANDARD, TERMINAL
from .batch_judge import CONFIDENCES

_FORCE = FORCE.but(error_input="force_error")


WireInput = Annotated[Wire, "wire crimped into the terminals"]
Terminal = Annotated[str, TERMINAL]
Readings = Annotated[
    FileColumns | None,
    ReadingsFile(
        {"force": _FORCE},
        text="CSV with a column of forces, 5 or more, and any others",
        error_input="force_error",
        comma_input="decimal_comma",
        typical="class.csv",
    ),
    instead_of("force"),
]
Force = Annotated[list[float] | None, _FORCE, instead_of("readings")]
ForceError = Annotated[
    str | None,
    Words("tester's error of every force that has none of its own, such as 1%"),
    extra("such forces are taken as exact"),
]
DecimalComma = Annotated[
    bool, YesNo("the numbers of the file have decimal commas", goes_with="readings"), setting()
]
By = Annotated[
    list[str] | None,
    "column to group by, such as learner; repeat it for two",
    extra("every pull is judged by itself all the same; the batch is one set"),
]
PullStandard = Annotated[
    list[str] | None,
    PULL_STANDARD,
    extra("the terminal's own judges; another is a stricter second line"),
]
ShopMinimum = Annotated[
    float | None,
    Nameplate("lbf", above=0, high=7000, typical="25 lbf", text="the shop's own least force"),
    may_be_absent("no minimum of the shop's own"),
]
Confidence = Annotated[
    str,
    OneOf(tuple(CONFIDENCES), text="confidence / population of the tolerance bound"),
    setting("the batch is judged at 95/90; another bound is shown beside it"),
]

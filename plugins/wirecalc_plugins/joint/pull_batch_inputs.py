"""The inputs of `pull-batch`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    FileColumns,
    Nameplate,
    OneOf,
    Problem,
    ReadingsFile,
    Wire,
    Words,
    YesNo,
    extra,
    instead_of,
    may_be_absent,
    setting,
)
from wirecalc.trade import crimps

from ..inputs import WIRE
from ..inputs_joint import FORCE, PULL_STANDARD, TERMINAL
from .batch_judge import CONFIDENCES
from .pull_inputs import TOO_STRONG_PSI, other_family

_FORCE = FORCE.but(error_input="force_error")


WireInput = Annotated[Wire, WIRE]
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
    Words("tester's error of every force that has none of its own", typical="1%"),
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

Names = Annotated[bool, YesNo("names in place of numbers", goes_with="by"), setting()]


def refuse(
    wire: Wire,
    terminal: str,
    readings: FileColumns | None,
    force: list[float] | None,
    by: list[str] | None,
    pull_standard: list[str] | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if terminal == "clamp":
        yield Problem(
            "terminal",
            "a batch is of crimps, and a clamp terminal is none",
            "judge each pull of a clamp terminal by `pull`",
        )
    for standard in pull_standard or ():
        yield from other_family(terminal, standard)
    yield from of_file(readings, force, by)
    forces = force if force is not None else list(readings.numbers["force"]) if readings else []
    where = "readings" if force is None else "force"
    most = crimps.breaking_force(wire)[0] * TOO_STRONG_PSI / crimps.SOFT_COPPER_PSI[0]
    if forces and max(forces) > most:
        yield Problem(
            where,
            f"{max(forces):g} lbf is more than {wire} can bear",
            "check the unit (lbf, N, kgf) and the gauge",
        )


def of_file(
    readings: FileColumns | None, force: list[float] | None, by: list[str] | None
) -> Iterator[Problem]:
    """Yield what is wrong with where the forces come from, and how they are grouped."""
    if (force is None) == (readings is None):
        yield Problem("readings", "give a file of readings or --force for each pull", "one of them")
        return
    if readings is not None:
        yield from _columns(readings, by)
    elif by:
        yield Problem("by", "groups the rows of a file, and none was given", "give --readings")
    forces = force if force is not None else list(readings.numbers["force"]) if readings else []
    if len(forces) > 1 and min(forces) == max(forces):
        yield Problem(
            "readings" if force is None else "force",
            f"all {len(forces)} forces are {forces[0]:g} lbf",
            "real pulls scatter: check the record",
        )


def _columns(file: FileColumns, by: list[str] | None) -> Iterator[Problem]:
    for column in ("wire", "gauge"):
        if len(set(file.words.get(column, ()))) > 1:
            yield Problem(
                "readings",
                f"the column {column} names several wires",
                "one batch is one wire, terminal and standard: split the file",
            )
    for name in by or ():
        if name not in file.words:
            known = ", ".join(file.words) or "none"
            yield Problem("by", f"the file has no column {name!r}", f"its columns: {known}")

"""Exercises in the size of an unmarked wire, with the slips that are made in them."""

from __future__ import annotations

import math

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_BUILDS = [  # strands, mm each: 18 to 12 AWG of 30 AWG strands, and 0.75 to 2.5 mm2
    *[("16", 0.25), ("26", 0.25), ("41", 0.25), ("65", 0.25)],
    *[("24", 0.20), ("32", 0.20), ("30", 0.25), ("50", 0.25)],
]
_MM_PER_MIL = 0.0254


def _draw(luck: Luck) -> Drawn:
    strands, diameter = luck.pick(_BUILDS)
    given = {
        "strands": strands,
        "strand_diameter": luck.reading(diameter - 0.01, diameter + 0.02, "0.01", "mm"),
    }
    return Drawn(given)


def _area(case: Case) -> float:
    return case.figure("area")


def _cmil(case: Case) -> float:
    return case.figure("circular mils")


def _strands(case: Case) -> float:
    return float(str(case.drawn.given["strands"]))


_WIRE = (
    "The end of a wire without a print has {strands} strands of bare copper; the calliper shows "
    "{strand_diameter} for one of them."
)
_ONE = "one strand for all", "This is one strand; the wire has all of them."

EXERCISES = (
    Exercise(
        _WIRE,
        "What cross-section has the wire?",
        _draw,
        _area,
        "mm2",
        "0.01",
        (
            Slip(
                "diameter for radius",
                "You put the diameter where the radius belongs: that is four times too much.",
                lambda case: 4 * _area(case),
            ),
            Slip(
                "square for circle",
                "You squared the diameter and left out pi/4: a strand is round.",
                lambda case: 4 / math.pi * _area(case),
            ),
            Slip(*_ONE, lambda case: _area(case) / _strands(case)),
            Slip(
                "square left out",
                "You took pi/4 of the diameter itself; the area goes with its square.",
                lambda case: _area(case) / case.value("strand_diameter"),
            ),
        ),
    ),
    Exercise(
        _WIRE,
        "How many circular mils has the wire?",
        _draw,
        _cmil,
        "cmil",
        "10",
        (
            Slip(
                "pi/4 put in",
                "A circular mil is a round one already: strands times mil squared, without pi.",
                lambda case: math.pi / 4 * _cmil(case),
            ),
            Slip(*_ONE, lambda case: _cmil(case) / _strands(case)),
            Slip(
                "square left out",
                "You took the diameter in mil itself; circular mils go with its square.",
                lambda case: _strands(case) * case.value("strand_diameter") / _MM_PER_MIL,
            ),
            Slip(
                "diameter for radius",
                "You put the diameter where the radius belongs: that is four times too much.",
                lambda case: math.pi * _cmil(case),
            ),
        ),
    ),
)

"""Exercises in volt drop, with the slips that are made in it."""

from __future__ import annotations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_MOST = {"14 AWG": 12, "12 AWG": 16, "10 AWG": 24}  # A that a breaker of its size carries for long
_NEXT = {"14 AWG": "12 AWG", "12 AWG": "10 AWG", "10 AWG": "12 AWG"}  # the row beside it


def _draw(luck: Luck) -> Drawn:
    wire = luck.pick(list(_MOST))
    given = {
        "current": luck.reading(4, _MOST[wire], "0.1", "A"),
        "nameplate_voltage": luck.pick(["115 V", "120 V"]),
        "building_wire": wire,
        "run_length": luck.reading(30, 180, "5", "ft"),
    }
    return Drawn(given)


def _drop(case: Case) -> float:
    return case.figure("drop")


def _share(case: Case) -> float:
    return case.figure("drop share")


def _next_row(case: Case) -> Case:
    return case.but(building_wire=_NEXT[str(case.drawn.given["building_wire"])])


def _in_metres(case: Case) -> Case:
    return case.but(run_length=str(case.drawn.given["run_length"]).replace("ft", "m"))


_ONE_WAY = (
    "loop not doubled",
    "You counted the wire one way; the current comes back through it too.",
)
_ROW = "wrong row", "You read the resistance of the size beside it in the table."
_METRES = "m for ft", "You took the length for metres; the plan gives feet."
_LOAD = (
    "A heater whose plate says {nameplate_voltage} takes {current} at the end of {run_length} of "
    "{building_wire} copper, measured one way; the wire is at 75 C (NEC chapter 9, table 8)."
)

EXERCISES = (
    Exercise(
        _LOAD,
        "How many volts does the wire take?",
        _draw,
        _drop,
        "V",
        "0.01",
        (
            Slip(*_ONE_WAY, lambda case: _drop(case) / 2),
            Slip(*_ROW, lambda case: _drop(_next_row(case))),
            Slip(*_METRES, lambda case: _drop(_in_metres(case))),
            Slip("percent for volts", "This is the share of the plate's volts in %.", _share),
        ),
        judged="drop while running",
        meter={"current": "±(2%+5)"},
    ),
    Exercise(
        _LOAD,
        "What share of the plate's volts does the wire take?",
        _draw,
        _share,
        "%",
        "0.01",
        (
            Slip(*_ONE_WAY, lambda case: _share(case) / 2),
            Slip(*_ROW, lambda case: _share(_next_row(case))),
            Slip(*_METRES, lambda case: _share(_in_metres(case))),
            Slip(
                "volts for percent", "These are the volts lost; put them over the plate's.", _drop
            ),
        ),
        judged="drop while running",
        meter={"current": "±(2%+5)"},
    ),
)

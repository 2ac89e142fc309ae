"""Exercises in the windings of a compressor, with the slips that are made in them."""

from __future__ import annotations

from collections.abc import Callable
from itertools import permutations

from wirecalc import Case, Drawn, Exercise, Luck, Slip

_PAIRS = ("reading_1_2", "reading_1_3", "reading_2_3")


def _draw(luck: Luck) -> Drawn:
    run = float(luck.reading(1.5, 6.0, "0.1", "").strip())
    start = round(run * float(luck.pick(["2.2", "2.6", "3.0", "3.4"])), 1)
    leads = float(luck.reading(0.2, 0.6, "0.1", "").strip())
    ohms = luck.pick(list(permutations((run, start, run + start))))
    given = {
        **{n: f"{ohm + leads:.1f} ohm" for n, ohm in zip(_PAIRS, ohms, strict=True)},
        "lead_resistance": f"{leads:.1f} ohm",
        "case_resistance": ">40 Mohm",
        "motor_kind": "compressor",
    }
    return Drawn(given)


def _ohms(case: Case) -> list[float]:
    """Return run winding, start winding and both: the fewest ohms first."""
    return sorted(case.figure(f"{pins} less leads") for pins in ("1-2", "1-3", "2-3"))


def _run(case: Case) -> float:
    return _ohms(case)[0]


def _start(case: Case) -> float:
    return _ohms(case)[1]


def _both(case: Case) -> float:
    return _ohms(case)[2]


def _left_in(case: Case, of: Callable[[Case], float]) -> float:
    return of(case) + case.value("lead_resistance")


def _ratio(case: Case) -> float:
    return case.figure("ratio")


_PINS = (
    "A compressor reads {reading_1_2} between pins 1 and 2, {reading_2_3} between 2 and 3, "
    "{reading_1_3} between 1 and 3. The test leads held together read {lead_resistance}. "
    "Nothing conducts to the case."
)
_LEFT_IN = "lead resistance left in", "You left the resistance of the test leads in."
_ALL = "both windings for one", "The most ohms are those of both windings, one behind the other."

EXERCISES = (
    Exercise(
        _PINS,
        "How many ohms has the start winding?",
        _draw,
        _start,
        "ohm",
        "0.1",
        (
            Slip(*_LEFT_IN, lambda case: _left_in(case, _start)),
            Slip(
                "lead resistance taken off twice",
                "The leads held together read both of them at once: take that off once.",
                lambda case: _start(case) - case.value("lead_resistance"),
            ),
            Slip(*_ALL, _both),
            Slip(
                "run winding for start winding",
                "The run winding has the fewest ohms, the start winding more.",
                _run,
            ),
        ),
    ),
    Exercise(
        _PINS,
        "How many times the run winding's ohms are the start winding's?",
        _draw,
        _ratio,
        "",
        "0.01",
        (
            Slip(*_LEFT_IN, lambda case: _left_in(case, _start) / _left_in(case, _run)),
            Slip("upside down", "You put run over start.", lambda case: 1 / _ratio(case)),
            Slip(*_ALL, lambda case: _both(case) / _run(case)),
        ),
    ),
)

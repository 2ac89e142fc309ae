"""Exercises of a calculation that declares none: its worked example with other readings.

What is printed on a plate, and what is chosen, stays as in the example: other values may not be
sold. Readings are drawn near the example's, with its decimals, volts of a line and temperatures
nearer than the rest; a wire is of a size beside.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Any

from ..base.errors import BadInput, BadText, PluginDefect, Problem
from ..engine.declaration import Calculation
from ..engine.exercises import Case, Drawn, Exercise, Given, Luck
from ..published.sources import Confidence
from ..recorded.files import ReadingsFile
from ..recorded.stream import ReadingsStream
from ..said.criteria import Criterion
from ..said.findings import Finding
from ..typed.quantities import read_number
from ..typed.quantity_kinds import QuantityKind, Reading
from .common_slips import common_slips, in_place_of, sizes_beside

LEAST, SPAN = 0.5, 2.0  # of the example's value: what is drawn lies from 0.5 to 2.5 times it
LINE_V = 90.0  # volts from which on they are those of a line
LINE_LEAST, LINE_SPAN = 0.88, 0.22  # of the example's volts, for those
COOLER, WARMER = 10.0, 15.0  # kelvin about the example's temperature
METER = "±2%"  # the error of the reading that a verdict is asked of
DIGITS = 3  # of a figure that is asked for
FEWEST_STEPS = 20  # of a display, in what is drawn from
TRIED = 5  # draws that tell which figures move with the readings

Run = Callable[[Given], Finding]


def exercises_of(calc: Calculation[Any], run: Run) -> tuple[Exercise, ...]:
    """Return an exercise of each figure that moves with the readings of the worked example.

    Raises BadInput for a calculation whose example reads a file, or cannot be run.
    """
    example = calc.example_inputs
    if any(isinstance(calc.input(n).kind, ReadingsFile | ReadingsStream) for n in example):
        wrong = f"{calc.name} reads a file, and a sheet has none"
        raise BadInput([Problem("drill", wrong, "choose another calculation")])
    plain = {n: t for n, t in example.items() if isinstance(t, str)}
    numbers = {n: t for n, t in plain.items() if _is_number(calc, n, t)}
    read = {n: t for n, t in numbers.items() if isinstance(calc.input(n).kind, Reading)}
    wires = {n: found for n, t in plain.items() if (found := sizes_beside(t))}

    def draw(luck: Luck) -> Drawn:
        drawn = {n: _other(luck, t) for n, t in read.items()}
        return Drawn({**example, **drawn, **{n: luck.pick(sizes) for n, sizes in wires.items()}})

    worked = run(example)
    cases = list(_cases(draw, run))
    told = " ".join([calc.question, *(_told(calc, n) for n in example)])
    met = next((n for n in read if not read[n].endswith((" C", " F"))), "")  # no share of a warmth
    judged = next((j.criterion.name for j in worked.criteria if _asked(j.criterion, cases)), "")
    judged = judged if met else ""
    given = {i.value for i in worked.inputs}
    figures = [f.figure for f in worked.figures if f.figure.value]
    moving = [f for f in figures if f.value not in given and _moves(f.name, f.value, cases)]

    def exercise(name: str, asks: str, unit: str, step: str) -> Exercise:
        def answer(case: Case) -> float:
            return case.figure(name)

        declared = {n: (calc.input(n), t) for n, t in numbers.items()}
        slips = (
            *common_slips(declared, wires, answer),
            *(in_place_of(f.name) for f in figures if f.unit == unit and f.name != name),
        )
        meter = {met: METER} if met else {}
        return Exercise(told, asks, draw, answer, unit, step, slips, judged, meter)

    asked = [exercise(f.name, f"How much is: {f.name}?", f.unit, _step(f.value)) for f in moving]
    return tuple(asked) if asked or not judged else (exercise("", "", "", "1"),)


def _told(calc: Calculation[Any], name: str) -> str:
    """Return how a sheet tells what is given for an input: a choice by its name alone."""
    kind = calc.input(name).kind
    about = kind.text if isinstance(kind, QuantityKind) else name.replace("_", " ")
    return f"{about[:1].upper()}{about[1:]}: {{{name}}}."


def _is_number(calc: Calculation[Any], name: str, text: str) -> bool:
    """Return whether an input of the example is one plain quantity."""
    if not isinstance(calc.input(name).kind, QuantityKind):
        return False
    try:
        number, unit = read_number(text)
    except BadText:
        return False
    return bool(unit) and "±" not in unit and number.step is not None and number.value > 0


def _other(luck: Luck, text: str) -> str:
    """Return another reading of as many decimals as the example's, or one more where few differ."""
    number, unit = read_number(text)
    decimals = len(text.split()[0].partition(".")[2])
    lowest, highest = _about(number.value, unit)
    if (highest - lowest) * 10**decimals < FEWEST_STEPS:
        decimals += 1
    step = f"{10.0**-decimals:.{decimals}f}"
    least = max(round(lowest / float(step)), 1) * float(step)
    return luck.reading(least, max(highest, least), step, unit)


def _about(value: float, unit: str) -> tuple[float, float]:
    """Return from where to where a reading is drawn, so that somebody could have read it."""
    if unit in ("C", "F"):
        degree = 1.8 if unit == "F" else 1.0
        return value - COOLER * degree, value + WARMER * degree
    if unit == "V" and value >= LINE_V:
        return LINE_LEAST * value, (LINE_LEAST + LINE_SPAN) * value
    return LEAST * value, (LEAST + SPAN) * value


def _cases(draw: Callable[[Luck], Drawn], run: Run) -> Iterator[Case]:
    for attempt in range(TRIED):
        drawn = draw(Luck(f"which figures move/{attempt}"))
        try:
            yield Case(drawn, run(drawn.given), run)
        except (BadInput, PluginDefect):
            continue


def _moves(name: str, value: float, cases: list[Case]) -> bool:
    """Return whether a figure, or what a criterion judges, has another value in a case."""
    for case in cases:
        finding = case.finding
        found = [f.figure.value for f in finding.figures if f.figure.name == name]
        found += [j.criterion.actual or 0.0 for j in finding.criteria if j.criterion.name == name]
        if any(not math.isclose(one, value, rel_tol=1e-6) for one in found):
            return True
    return False


def _asked(criterion: Criterion, cases: list[Case]) -> bool:
    """Return whether a verdict moves with the readings, and can be told from the limit alone."""
    source = criterion.source
    remembered = source is not None and source.confidence is Confidence.MEMORY
    if criterion.limit is None or criterion.actual is None or remembered:
        return False
    return _moves(criterion.name, criterion.actual, cases)


def _step(value: float) -> str:
    """Return the last digit to which a figure is asked for.

    >>> _step(0.1181), _step(27.9), _step(2403.0)
    ('0.001', '0.1', '10')
    """
    last = math.floor(math.log10(abs(value))) - DIGITS + 1
    return str(10**last) if last >= 0 else f"{10.0**last:.{-last}f}"

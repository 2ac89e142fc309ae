"""From what was given to the values that a calculation runs with.

Everything is read before anything is computed, and everything that is wrong is reported at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from ..base.errors import BadInput, BadText, Problem, did_you_mean
from ..instruments.readings import named
from .declaration import Calculation
from .left_out import option_of
from .one_input import METER, called, is_known, put_aside, take_input, take_plain, under_its_name
from .prepared_inputs import Prepared, leave_out
from .remembered import MOST_SHAPES, Remembered, Shape, ToTake, shape_of
from .trade_names import candidates, under_names

MOST_BANDS = 6  # readings with an error in one run


def prepare(
    calc: Calculation[Any],
    given: Mapping[str, object],
    origin: str,
    *,
    missing_is_unknown: bool,
    remembered: Remembered | None = None,
) -> Prepared:
    """Read every input; raises BadInput with all that is wrong.

    A required input that was left out is refused, or, with `missing_is_unknown` (a job sheet),
    is taken as one that is said to be unknown. `remembered` holds what was read before, of this
    calculation and origin: a batch reads each distinct text once.
    """
    remembered = Remembered() if remembered is None else remembered
    given, shape, problems = _shaped(calc, given, origin, remembered)
    prepared = Prepared(dict(shape.values))
    for step in shape.in_turn:
        if not isinstance(step, ToTake):
            prepared.records.append(step)
        elif step.alone and not is_known(given.get(step.declared.name)):
            continue  # it says nothing of what is not there
        else:
            try:
                if take_plain(step, given, origin, prepared, remembered):
                    continue
                take_input(step.declared, given, origin, prepared, missing_is_unknown, remembered)
                put_aside(calc, step, prepared)
            except BadText as error:
                problems.append(error.about(called(step.declared, origin)))
    if len(prepared.bands) > MOST_BANDS and not calc.own_band:
        problems.append(_too_many(prepared))
    if not problems:
        leave_out(calc, shape, prepared, remembered)
        if prepared.runs:
            problems = _refused(calc, given, prepared)
    if problems:
        raise BadInput([under_its_name(calc, p, origin) for p in problems])
    return prepared


def _too_many(prepared: Prepared) -> Problem:
    names = ", ".join(prepared.bands)
    wrong = f"{len(prepared.bands)} readings have an error ({names})"
    return Problem("", wrong, f"at most {MOST_BANDS} may; leave the smallest out")


def _shaped(
    calc: Calculation[Any], given: Mapping[str, object], origin: str, remembered: Remembered
) -> tuple[Mapping[str, object], Shape, list[Problem]]:
    """Return what is given under the names of its inputs, its shape, and what is wrong so far.

    The shape of names that are all known is kept.
    """
    key = tuple([(name, value is None) for name, value in given.items()])
    known = remembered.shapes.get(key)
    if known is not None:
        return given, known, []
    named = under_names(given, [i.name for i in calc.inputs])
    problems = [*_unknown_names(calc, named, origin), *_unknown_meter(named, origin)]
    shape = shape_of(calc, named)
    if not problems and METER not in given and list(named) == list(given):
        if len(remembered.shapes) >= MOST_SHAPES:
            remembered.shapes.clear()
        remembered.shapes[key] = shape
    return named, shape, problems


def _refused(
    calc: Calculation[Any], given: Mapping[str, object], prepared: Prepared
) -> list[Problem]:
    """Return what its refusal yields; raises TypeError where that is no Problem."""
    found: list[Problem] = []
    for problem in calc.refused(prepared.values):
        if not isinstance(problem, Problem):
            raise TypeError(f"its refusal yields {problem!r}, which is no Problem")
        found.append(problem)
    if not prepared.unknown:
        return found
    there = [p for p in found if is_known(given.get(p.name))]  # the unknown is not missing
    prepared.runs = len(there) == len(found)
    return there


def _unknown_meter(given: Mapping[str, object], origin: str) -> Iterator[Problem]:
    if given.get(METER):
        try:
            named(str(given[METER]))
        except BadText as error:
            yield error.about(option_of(METER) if origin == "typed" else METER)


def _unknown_names(
    calc: Calculation[Any], given: Mapping[str, object], origin: str
) -> Iterator[Problem]:
    known = [i.name for i in calc.inputs]
    typed = origin == "typed"
    for name in given:
        if now := calc.name_now(name, option=typed):
            yield Problem(option_of(name) if typed else name, now)
        elif name not in known and name != METER:
            meant = [n for n in candidates(name, known) if n not in given]
            would_do = f"did you mean {' or '.join(meant)}?" if meant else did_you_mean(name, known)
            yield Problem(name, f"{calc.name} has no such input", would_do)

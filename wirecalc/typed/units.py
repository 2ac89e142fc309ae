"""Units: what people write for them, and turning one into another.

A unit belongs to a *dimension* ("force", "temperature"), and a spelling is looked up inside the
dimension that is wanted. So F is a temperature where a temperature is asked for and a
capacitance where a capacitance is; m is never minutes. Text is looked up in this closed list
and never evaluated. pint does the arithmetic of a conversion, and is loaded only when the
typed unit differs from the declared one.
"""

from __future__ import annotations

import functools
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

from ..base.errors import BadText, DeclarationError, nearest
from .unit_names import DEGREES, FACTORS, HINTS, PINT_NAMES, SPELLINGS


def dimension_of(unit: str) -> str:
    """Return the dimension that a unit of ours belongs to.

    >>> dimension_of("lbf")
    'force'

    K is a temperature here; a difference of temperatures is asked for by name.
    Raises LookupError for a unit that is not in the list.
    """
    for dimension, units in SPELLINGS.items():
        if unit in units:
            return dimension
    raise LookupError(f"{unit!r} is not a unit of wirecalc")


def dimension_declared(unit: str, dimension: str = "") -> str:
    """Return the dimension of the unit in which an input is declared: the one said, or its own.

    Raises DeclarationError, with what there is, for a unit that is none, or none of it.
    """
    known = SPELLINGS.get(dimension, {}) if dimension else _all_units()
    if unit in known:
        return dimension or dimension_of(unit)
    if dimension and dimension not in SPELLINGS:
        raise DeclarationError(f"{dimension!r} is no dimension; there are {', '.join(SPELLINGS)}")
    spelled = {s: name for name, others in known.items() for s in (name, *others)}
    near = unit if unit in spelled else nearest(str(unit), list(spelled), alike=0.8)
    of = f" of {dimension}" if dimension else ""
    wrong = f"{unit!r} is no unit{of} that wirecalc knows"
    would_do = f"did you mean {near}, which is {spelled[near]}? Or declare" if near else "declare"
    raise DeclarationError(
        f"{wrong}; {would_do} one of your own with declare_unit; there are {', '.join(known)}"
    )


def _all_units() -> dict[str, tuple[str, ...]]:
    return {name: more for units in SPELLINGS.values() for name, more in units.items()}


@functools.cache
def read_unit(text: str, dimension: str) -> str:
    """Return our name of the unit that somebody typed, within the dimension wanted.

    >>> read_unit("MFD", "capacitance")
    'uF'
    >>> read_unit("volts", "voltage")
    'V'

    Raises BadText, saying what would do, for a unit of another kind or an unknown one.
    """
    units = SPELLINGS[dimension]
    exact = {name for name, others in units.items() if text == name or text in others}
    if len(exact) == 1:
        return exact.pop()
    folded = text.casefold()
    alike = sorted(
        name for name, others in units.items() if folded in {s.casefold() for s in (name, *others)}
    )
    if len(alike) == 1:
        return alike[0]
    if len(alike) > 1:
        raise BadText(f"unit {text!r} could be {' or '.join(alike)}", "the case of a letter counts")
    raise _unknown_unit(text, dimension)


def _unknown_unit(text: str, dimension: str) -> BadText:
    units = SPELLINGS[dimension]
    do = "write it in " + ", ".join(units)
    folded = text.casefold()
    for (wanted, unit), hint in HINTS.items():
        if wanted == dimension and unit.casefold() == folded:
            return BadText(f"{text!r} does not fit here ({hint})", do)
    for other, theirs in SPELLINGS.items():
        spelled = {s for name, more in theirs.items() for s in (name, *more)}
        if text in spelled or (len(text) > 1 and folded in {s.casefold() for s in spelled}):
            return BadText(f"{text!r} is a unit of {other}, and {_one(dimension)} is wanted", do)
    known = [s for name, others in units.items() for s in (name, *others)]
    slip = next((s for s in known if len(s) > 2 and sorted(s) == sorted(folded)), "")  # omh, amsp
    slip = slip or next((s for s in known if s.casefold() in _rates(folded)), "")
    guess = slip or (nearest(text, known, start=3) if len(text) > 2 else "")
    guess = guess or (nearest(text, [s for s in known if len(s) > 6]) if len(text) > 6 else "")
    return BadText(f"unit {text!r} is not known here", f"did you mean {guess}?" if guess else do)


def _rates(folded: str) -> set[str]:
    """Return spellings of a rate that is written out: litres a minute is L/min."""
    said = re.sub(r"\s*(?:\bper\b|\ba\b|/)\s*", "/", folded)
    for short, words in (("l", "lit(?:re|er)s?"), ("gal", "gallons?"), ("min", "minutes?")):
        said = re.sub(rf"\b{words}\b", short, said)
    return {said, re.sub(r"\bhours?\b|\bhr\b", "h", said)}


def _one(dimension: str) -> str:
    return f"{'an' if dimension[0] in 'aeio' else 'a'} {dimension}"


def converter(unit: str, to: str, dimension: str) -> Callable[[float], float]:
    """Return the function that turns a number in one unit into another of the same dimension."""
    if unit == to:
        return float
    if dimension == "temperature":
        return lambda value: float(_registry().Quantity(value, DEGREES[unit]).to(DEGREES[to]).m)
    factor = _factor(unit, to, dimension)
    return lambda value: value * factor


def convert(value: float, unit: str, to: str) -> float:
    """Turn a number in one unit into another.

    >>> round(convert(1, "in", "mm"), 6)
    25.4
    >>> round(convert(212, "F", "C"), 6)
    100.0

    Raises LookupError for an unknown unit, ValueError for units of different dimensions.
    """
    dimension = dimension_of(unit)
    if to not in SPELLINGS[dimension]:
        raise ValueError(f"{unit} and {to} measure different things")
    return converter(unit, to, dimension)(value)


@functools.cache
def _factor(unit: str, to: str, dimension: str) -> float:
    if dimension == "temperature difference":
        return {("K", "F"): 1.8, ("F", "K"): 1 / 1.8}[unit, to]
    if unit in FACTORS:  # of a plugin, as all units of its dimension are
        return FACTORS[unit] / FACTORS[to]
    return float(_registry().Quantity(1.0, _pint(unit)).to(_pint(to)).magnitude)


def _pint(unit: str) -> str:
    return PINT_NAMES.get(unit, unit)


@functools.cache
def _registry() -> Any:
    import pint  # dear to import: only when a typed unit differs from the declared one

    return pint.UnitRegistry(str(Path(__file__).with_name("units.txt")))

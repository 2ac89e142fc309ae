"""A unit that was typed in place of another: mA for A, nF for uF, F for C, inches for millimetres.

A value outside its span is refused, with the other unit where it fits. One inside its span is asked
about where the unit alone makes it odd: next to nothing beside what is usual of this input, or a
rating in the other scale. Either way it can be written in the usual unit, and is taken then.
"""

from __future__ import annotations

import functools
import math
import re
from typing import TYPE_CHECKING

from ..base.errors import BadText
from ..base.rounding import show
from .quantities import Quantity, read_number, split_error
from .unit_names import SPELLINGS
from .units import convert, read_unit

if TYPE_CHECKING:
    from .quantity_kinds import QuantityKind

# units that are typed in place of another (common practice, no source); offered when the number
# fits the span in the other. No prefix is guessed: a thousandth of 2100 V is another danger.
_SLIPS = {"C": "F", "F": "C", "mm": "in", "in": "mm", "lbf": "kgf", "kgf": "lbf", "ft": "m"}
_SLIPS |= {"mohm": "Mohm", "Mohm": "mohm"}  # by the case of a letter: asked, and not offered
_BY_CASE = "mohm is a thousandth of an ohm, Mohm a million: which was meant?"
_THOUSANDS = (  # units of one name -> the power of ten of each
    *({"uA": -6, "mA": -3, "A": 0}, {"mV": -3, "V": 0, "kV": 3}, {"mW": -3, "W": 0, "kW": 3}),
    *({"mohm": -3, "ohm": 0, "kohm": 3, "Mohm": 6}, {"pF": -12, "nF": -9, "uF": -6, "F": 0}),
    *({"ms": -3, "s": 0}, {"um": -6, "mm": -3, "m": 0}, {"Hz": 0, "kHz": 3}),
)
# C; what ratings of parts are printed with (common practice, no source)
_PRINTED_C = (60, 70, 75, 80, 85, 90, 105, 110, 115, 120, 125, 130, 150, 155, 180, 200, 220, 250)


def other_unit(kind: QuantityKind, typed: str, value: float) -> str:
    """Return what would do in place of a value outside the span of an input."""
    number, word = read_number(split_error(typed)[0])
    unit = read_unit(word, kind.dimension)
    other = _SLIPS.get(unit, "")
    if kind.dimension == "capacitance" and unit == "F":
        other = "uF"
    fits = other in SPELLINGS[kind.dimension] and kind.inside(
        convert(number.value, other, kind.unit)
    )
    if not fits:
        less = kind.high is not None and value > kind.high
        if less and read_number(kind.example)[0].value == number.value:
            return "check the number and its unit"  # 14 V, and the example is 14 mV
        return f"such as {kind.example}"
    return _BY_CASE if "ohm" in unit else f"did you mean {show(number.value)} {other}?"


def refuse_slip(kind: QuantityKind, typed: str, quantity: Quantity, *, printed: bool) -> None:
    """Raise BadText for a value inside its span that a slip of its unit makes odd."""
    value = quantity.value
    if kind.slip_under:
        if 0 < abs(value) < kind.slip_under:
            _refuse(kind, typed, value, kind.unit)
    elif value and kind.typical:
        usual, unit = _usual(kind.typical, kind.dimension)
        if kind.dimension == "temperature":
            if printed and not kind.either_scale and _is_odd_rating(kind, quantity):
                _refuse(kind, typed, value, unit)
        elif quantity.unit != unit and _is_little(kind, quantity, usual, unit):
            _refuse(kind, typed, value, unit)


@functools.lru_cache(maxsize=512)
def _usual(typical: str, dimension: str) -> tuple[float, str]:
    number, word = read_number(split_error(typical)[0])
    return number.value, read_unit(word, dimension)


def _is_little(kind: QuantityKind, quantity: Quantity, usual: float, unit: str) -> bool:
    """Whether a value is next to nothing beside what is usual, and near it in the usual unit."""
    number, word = quantity.number, quantity.unit
    tens = next((row for row in _THOUSANDS if {word, unit, kind.unit} <= row.keys()), {})
    if not tens or not usual or tens[word] >= tens[unit]:
        return False
    times = abs(number / usual)  # what is usual, in its unit
    share = times * 10.0 ** (tens[word] - tens[unit])
    could_be = kind.inside(number * 10.0 ** (tens[unit] - tens[kind.unit]))
    return could_be and abs(math.log(times)) < -math.log(share)


def _is_odd_rating(kind: QuantityKind, quantity: Quantity) -> bool:
    """Whether a rating is none that is printed in C, and its number would be one."""
    number, word = quantity.number, quantity.unit
    if word != "F" or number not in _PRINTED_C or not kind.inside(number):
        return False
    celsius = convert(quantity.value, kind.unit, "C")
    return not any(abs(celsius - printed) <= 1.0 for printed in _PRINTED_C)


def _refuse(kind: QuantityKind, typed: str, value: float, usual_unit: str) -> None:
    """Refuse a value that its unit makes odd; in the usual unit it is meant."""
    number, word = read_number(split_error(typed)[0])
    if (unit := read_unit(word, kind.dimension)) == usual_unit:
        return
    other, meant = f"{show(number.value)} {usual_unit}", convert(value, kind.unit, usual_unit)
    same = f"{show(meant)} {usual_unit}"
    wrong, what, so = f"{typed!r} is next to nothing", "unit", "so little"
    if kind.dimension == "temperature":
        wrong, what, so = f"{typed!r} is {same}, as no rating is printed", "scale", "that"
    if _is_short(word, unit, usual_unit) or what == "scale":
        raise BadText(wrong, f"which {what} was meant? write {other}, or {same} if it is {so}")
    raise BadText(wrong, f"is it {same}? Write {same} if it is {so}, or {other}")


def _is_short(typed: str, unit: str, usual_unit: str) -> bool:
    """Whether one letter may be what a unit has wrong, as in mA for A; none is in milliamps."""
    spelled_out = re.match("(?:milli|micro|nano|pico|kilo|mega?)[a-z]", typed, re.IGNORECASE)
    alike = any({unit, usual_unit} <= row.keys() for row in _THOUSANDS)
    return alike and not spelled_out

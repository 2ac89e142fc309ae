"""Quantities as people type them: number, unit and the instrument's error, read strictly.

    24 lbf      1/4 in      1 1/2 in      -18 C      1.30 A ±(2%+5)      8.70 A +/-0.05 A

The grammar is closed: a number (decimal, fraction or mixed), a unit, and after ± (or +/-) an
error: percent, an amount, or a meter's own form, percent of reading plus counts of the last
digit typed or plus an amount. Nothing is evaluated. A fraction is less than one and in a unit that
is divided so, in, ft or hp: elsewhere a slash stands between two values, as in 35/5 uF.
"""

from __future__ import annotations

import math
import re
from typing import NamedTuple

from ..base.errors import BadText
from .unit_names import SPELLINGS
from .units import converter, read_unit

NO_NUMBER = "write a number and a unit"
LONGEST = 80  # characters; nobody types a longer quantity, and nothing longer is read

_SIGN = r"(?P<sign>[-+−]?)"
_NUMBER = re.compile(
    _SIGN + r"(?:(?P<whole>\d+)(?:\s+|-)(?P<n>\d+)/(?P<d>\d+)|(?P<fn>\d+)/(?P<fd>\d+)"
    r"|(?P<decimal>\d+(?:\.\d*)?|\.\d+))",
    re.ASCII,
)
FRACTIONS = {"length": ("in", "ft"), "power": ("hp",)}  # the units in which one may be typed
_USUAL = re.compile(r"(\d+(?:\.(\d*))?) ([a-zA-Z]+)", re.ASCII)  # 23.4 lbf, as most are typed
_RANGE = re.compile(r"(?:[a-zA-Zµμ%]+\s*)?(?:-|–|—|\bto\b)\s*\d")  # the rest of 88-108 uF
_COMMA = re.compile(r"\d,\d", re.ASCII)
_MORE = re.compile(r"[\d.*/^+]|[eE](?!(?i:[a-z]))")  # behind a number that is not over
_METER_FORM = re.compile(r"\(\s*(?P<pct>[^%+()]+)%\s*\+\s*(?P<more>[^()]+)\)")


class Number(NamedTuple):
    """A number as typed: its value, and the worth of one count of its last digit."""

    value: float
    step: float | None  # None for a fraction, which has no last digit


class Quantity(NamedTuple):
    """A typed quantity in the unit that was asked for, with the band of its instrument.

    `low` and `high` are None when no error was typed. `number` and `unit` are what was typed.
    """

    value: float
    low: float | None = None
    high: float | None = None
    error: str = ""
    number: float = 0.0
    unit: str = ""


def read_number(text: str) -> tuple[Number, str]:
    """Read the number at the start of a text; return it and the rest of the text.

    Raises BadText where the text does not start with a plain number.
    """
    if len(text) > LONGEST:
        raise BadText(f"{text[:20]!r}... is longer than any quantity", NO_NUMBER)
    if usual := _USUAL.fullmatch(text):
        digits, places, unit = usual.groups("")
        return Number(float(digits), 10.0 ** -len(places)), unit
    if "," in text and (wrong := comma(text)):
        raise wrong
    text = text.strip()
    match = _NUMBER.match(text)
    if match is None:
        raise BadText(f"{text!r} does not start with a number", NO_NUMBER)
    rest = text[match.end() :]
    if _MORE.match(rest):
        raise BadText(f"{text!r} is not a plain number", "write it out, such as 0.25 or 1/4")
    return _value(match, text), rest.strip()


def comma(text: str) -> BadText | None:
    """Return what is wrong with a text that has a comma in a number; None where it has none.

    A point is suggested where the comma can be nothing else: before three digits it may part
    thousands.
    """
    if not _COMMA.search(text):
        return None
    (number, *more) = re.findall(r"[\d.,]*\d,[\d.,]*", text)
    whole, _, places = number.partition(",")
    would_do = "write one number, with a point and no comma"
    if not more and "," not in places and "." not in number:
        point, none = text.replace(",", "."), text.replace(number, whole + places)
        thousands = len(places) == 3 and whole.strip("0")
        would_do = f"write {point} or {none}" if thousands else f"write a point: {point}"
    return BadText(f"{text!r} has a comma in its number", would_do)


def _value(match: re.Match[str], text: str) -> Number:
    sign = -1.0 if match["sign"] in ("-", "−") else 1.0
    decimal = match["decimal"]
    if decimal is not None:
        places = len(decimal.partition(".")[2])
        number = Number(sign * float(decimal), 10.0**-places)
    else:
        top, bottom = match["n"] or match["fn"], match["d"] or match["fd"]
        if int(bottom) == 0:
            raise BadText(f"{text!r} divides by zero", NO_NUMBER)
        if int(top) >= int(bottom):
            wrong = f"{text!r} has a slash, and a fraction is less than one"
            raise BadText(wrong, "write one of the two numbers, or a fraction such as 1 1/4 in")
        number = Number(sign * (int(match["whole"] or 0) + int(top) / int(bottom)), None)
    if not math.isfinite(number.value):
        raise BadText(f"{text!r} is not a finite number", NO_NUMBER)
    return number


def read_quantity(text: str, dimension: str, unit: str, example: str = "") -> Quantity:
    """Read a quantity of the wanted dimension and return it in the wanted unit.

    >>> read_quantity("1/4 in", "length", "in").value
    0.25
    >>> q = read_quantity("1.30 A ±(2%+5)", "current", "A")
    >>> round(q.low, 4), round(q.high, 4)
    (1.224, 1.376)

    Raises BadText, saying what would do.
    """
    if len(text) > LONGEST:
        raise BadText(f"{text[:20]!r}... is longer than any quantity", NO_NUMBER)
    main, error = split_error(text)
    number, typed = read_number(main)
    if not typed:
        raise _no_unit(text, main, number, dimension, unit)
    if _RANGE.match(typed):
        raise BadText(
            f"{text!r} is a range, and this is one value",
            "where a range may be printed, low and high end are an input each: see the help",
        )
    typed_unit = read_unit(typed, dimension)
    if number.step is None:
        _refuse_fraction(text, typed_unit, dimension)
    to = converter(typed_unit, unit, dimension)
    if not error:
        return Quantity(to(number.value), number=number.value, unit=typed_unit)
    off = error_amount(error, number, dimension, typed_unit)
    low, high = sorted((to(number.value - off), to(number.value + off)))
    return Quantity(to(number.value), low, high, error, number.value, typed_unit)


def _no_unit(text: str, main: str, number: Number, dimension: str, unit: str) -> BadText:
    fraction = number.step is None  # an inch is divided so before a foot is
    units = FRACTIONS.get(dimension, ())[:1] if fraction else (unit, *SPELLINGS[dimension])
    if not units:
        return BadText(f"{text!r} has no unit", "write it as a decimal with its unit")
    first, *others = dict.fromkeys(units)
    also = f" (or {', '.join(others)})" if others else ""
    error = split_error(text)[1]
    behind = f" ±{error}" if error else ""
    return BadText(f"{text!r} has no unit", f"write {main} {first}{behind}{also}")


def _refuse_fraction(text: str, unit: str, dimension: str) -> None:
    if unit not in FRACTIONS.get(dimension, ()):
        where = ", ".join(u for units in FRACTIONS.values() for u in units)
        raise BadText(f"{text!r}: fractions are for {where}", "write one value, as a decimal")


def split_error(text: str) -> tuple[str, str]:
    """Split a text at ± or +/- into the quantity and the instrument's error."""
    if "±" not in text and "+" not in text:
        return text.strip(), ""
    main, mark, error = text.replace("+/-", "±").replace("+-", "±").partition("±")
    if mark and not error.strip():
        raise BadText(f"{text!r} says ± and no error", "write ±3%, ±0.05 A or ±(2%+5)")
    return main.strip(), error.strip()


def error_amount(error: str, number: Number, dimension: str, unit: str) -> float:
    """Return the instrument's error as an amount in the typed unit."""
    form = _METER_FORM.fullmatch(error)
    if form is None:
        _refuse_brackets(error)
        if error.endswith("%"):
            return _percent(error[:-1], number)
        return _amount(error, dimension, unit)
    more, rest = read_number(form["more"])
    off = _percent(form["pct"], number)
    if rest:
        return off + _amount(form["more"], dimension, unit)
    if number.step is None:
        raise BadText(
            f"±{error} counts digits, and a fraction has none", "write the reading as a decimal"
        )
    if more.value < 0 or more.value != int(more.value):
        raise BadText(f"±{error} has {form['more']} counts", "write whole counts, as in ±(2%+5)")
    return off + more.value * number.step


def _refuse_brackets(error: str) -> None:
    """Say what is wrong with the brackets of a meter's error that is not read as it stands."""
    inside = error.strip("() ")
    opened, closed = error.startswith("("), error.endswith(")")
    if (opened or closed) and "+" not in inside:
        would_do = f"write ±{inside or '3%'}"
        raise BadText(f"±{error} has brackets and not two errors in them", would_do)
    if opened and not closed:
        raise BadText(f"±{error} has a bracket that is not closed", f"write ±{error})")
    if closed and not opened:
        raise BadText(f"±{error} has a bracket that was never opened", f"write ±({error}")
    if not opened and re.search(r"%\s*\+", error):
        raise BadText(f"±{error} needs its brackets", f"write ±({error})")


def _percent(text: str, number: Number) -> float:
    percent, rest = read_number(text)
    if percent.step is None or rest or not 0 <= percent.value < 100:
        raise BadText(f"{text!r} % is not an error", "write a percentage from 0 to under 100")
    return abs(number.value) * percent.value / 100


def _amount(text: str, dimension: str, unit: str) -> float:
    amount, typed = read_number(text)
    if not typed:
        raise BadText(
            f"±{text} does not say of what", f"write ±{text} {unit}, ±{text}% or ±(2%+{text})"
        )
    if amount.value < 0:
        raise BadText(f"±{text} is negative", "write the error without a sign")
    if amount.step is None:
        _refuse_fraction(f"±{text}", read_unit(typed, dimension), dimension)
    if dimension == "temperature":  # an error of a temperature is a difference
        dimension, unit = "temperature difference", "F" if unit == "F" else "K"
    return converter(read_unit(typed, dimension), unit, dimension)(amount.value)

"""Numbers as they are shown: four digits that matter, limits rounded toward safety.

Rounding is for showing only; every comparison is made with the unrounded numbers.
"""

from __future__ import annotations

import functools
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Context, Decimal

DIGITS = 4
PUT_DIGITS = 8  # of a number in a working: as many as a pocket calculator takes
SAME = 1e-9  # numbers this near, relatively, are one number typed in two ways (1/4 in, 6.35 mm)
WIDE = 15  # digits before the point; from here on a number is shown with a power of ten
_EXACT = Context(prec=400)  # more digits than any float has


def show(value: float, unit: str = "", *, toward: str = "", digits: int = DIGITS) -> str:
    """Return a number as it is printed, with its unit.

    `toward` is "up", "down" or empty (nearest): a least value is shown rounded up, a largest
    value rounded down, so that keeping to the printed number keeps to the limit.

    >>> show(20.0, "lbf"), show(6689.47, "cmil"), show(88.9644, "N", toward="up")
    ('20 lbf', '6689 cmil', '88.97 N')
    """
    text = _digits(value, digits, toward)
    return f"{text} {unit}" if unit else text


def put(value: float, unit: str = "") -> str:
    """Return a number as it is put into a working, with its unit.

    It has eight digits: what was typed stands there whole, and a number that was worked out on
    the way has enough of them that a pocket calculator comes to the result that is shown.

    >>> put(119.84, "V"), put(0.8230214, "mm2"), put(20000.0, "ohm"), put(2 / 3)
    ('119.84 V', '0.8230214 mm2', '20000 ohm', '0.66666667')
    """
    return show(value, unit, digits=PUT_DIGITS)


def show_pair(one: float, two: float, unit: str, toward: str) -> tuple[str, str]:
    """Show an actual value and its limit with enough digits to tell them apart.

    The limit is rounded `toward` its safe side ("up" for a least value, "down" for a largest),
    the actual value to the nearest; digits are added until the two stand as they are.

    >>> show_pair(19.99996, 20.0, "lbf", "up"), show_pair(20.00004, 20.0, "lbf", "up")
    (('19.99996 lbf', '20 lbf'), ('20.00004 lbf', '20 lbf'))
    """
    if abs(one - two) <= SAME * abs(two):
        return show(two, unit), show(two, unit)
    for digits in range(DIGITS, 11):
        left, right = _digits(one, digits, ""), _digits(two, digits, toward)
        if left != right and (float(left) < float(right)) == (one < two):
            break
    return (f"{left} {unit}", f"{right} {unit}") if unit else (left, right)


def show_band(low: float, high: float, unit: str = "") -> str:
    """Show both ends of a band, each rounded outward.

    >>> show_band(8.476, 8.924, "A")
    '8.476 to 8.924 A'
    """
    ends = f"{show(low, toward='down')} to {show(high, toward='up')}"
    return f"{ends} {unit}" if unit else ends


@functools.lru_cache(4096)  # limits come again and again
def _digits(value: float, digits: int, toward: str) -> str:
    exact = Decimal(f"{value:.12g}")  # drops the noise of binary arithmetic, 20.000000000000004
    if exact == 0:
        return "0"
    last = exact.adjusted() - digits + 1
    step = Decimal((0, (1,), last if exact.adjusted() >= WIDE else min(last, 0)))
    how = {"up": ROUND_CEILING, "down": ROUND_FLOOR}.get(toward, ROUND_HALF_EVEN)
    rounded = exact.quantize(step, rounding=how, context=_EXACT)
    if exact.adjusted() >= WIDE:
        return str(rounded)
    text = f"{rounded:f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text

"""A number without its unit: in which units it could be meant, the likeliest first."""

from __future__ import annotations

import re
from collections.abc import Callable

from ..base.errors import BadText
from .quantities import read_number, split_error
from .unit_names import SPELLINGS
from .units import convert, read_unit

_FAR = 300.0  # times what is usual: so far off the number is of another unit more likely
_LIKELY, _NEAR = 30.0, 10.0
_SCALES = ("C", "F")


def bare_number(
    text: str, dimension: str, unit: str, typical: str, fits: Callable[[str], bool], error: BadText
) -> BadText:
    """Return the refusal of a bare number, with the units in which it can be read.

    `fits` says whether a text is read where it was typed; `error` is what is said where none is.
    """
    if dimension == "ratio" and (share := _share(text, unit, typical, fits)):
        return BadText(f"{text!r} has no unit", share)
    units = (
        _SCALES
        if dimension == "temperature"
        else tuple(dict.fromkeys([unit, *SPELLINGS[dimension]]))
    )
    read = [u for u in units if fits(f"{text} {u}")]
    if not read:
        return error
    if dimension == "temperature":
        return BadText(f"{text!r} has no unit", f"write {' or '.join(f'{text} {u}' for u in read)}")
    off = {u: _off(text, u, unit, typical) for u in read}
    if off[read[0]] > _FAR and min(off.values()) < _NEAR:
        read.sort(key=lambda u: off[u])
    others = [u for u in read[1:] if off[u] <= _LIKELY or u == unit or len(read) == 2]
    also = f" (or {', '.join(others)})" if others else ""
    return BadText(f"{text!r} has no unit", f"write {text} {read[0]}{also}")


def _share(text: str, unit: str, typical: str, fits: Callable[[str], bool]) -> str:
    """Return what would do for a share of one where percent are asked for."""
    number = read_number(text)[0].value
    percent = f"{100 * number:.6g} {unit}"
    if unit != "%" or not 0 < number <= 1 or not fits(percent):
        return ""
    less = f"{text} {unit}"
    if not fits(less) or _off(text, unit, unit, typical) > _LIKELY:
        return f"a share is given in percent: write {percent}"
    return f"write {less}; for a share of one {percent}"


def _off(text: str, typed: str, unit: str, typical: str) -> float:
    """Return how many times larger or smaller than what is usual a number in a unit is."""
    if not typical:
        return 1.0
    number, word = read_number(split_error(typical)[0])
    dimension_unit = read_unit(word, _of(unit)) if word else unit
    usual = abs(convert(number.value, dimension_unit, unit))
    meant = abs(convert(read_number(text)[0].value, typed, unit))
    return max(usual / meant, meant / usual) if usual and meant else 1.0


def _of(unit: str) -> str:
    return next(dimension for dimension, units in SPELLINGS.items() if unit in units)


def is_bare(text: str) -> bool:
    """Whether a text is a number alone."""
    return re.fullmatch(r"[-+−]?(?:\d+\.?\d*|\.\d+)\s*", text) is not None

"""Units that a plugin declares, beside those of wirecalc and never in their place.

A dimension of wirecalc is closed: what its calculations read, and as how much, is no plugin's to
change, since a wrong factor would loosen a limit. So a plugin's unit is of a dimension of its own.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Collection, Sequence
from typing import NamedTuple

from ..base.errors import BadText, DeclarationError
from .quantities import read_quantity
from .unit_names import FACTORS, SPELLINGS
from .units import read_unit

_CLOSED = frozenset(SPELLINGS)
LONGEST = 24  # characters of a spelling


class OwnUnit(NamedTuple):
    """A unit as a plugin declared it, and the plugin's package."""

    symbol: str
    dimension: str
    factor: float
    spellings: tuple[str, ...]
    by: str

    def __str__(self) -> str:
        also = f", also {', '.join(self.spellings)}" if self.spellings else ""
        return f"{self.symbol} of {self.dimension}, {self.factor:g} in SI{also}"


_declared: dict[str, OwnUnit] = {}


def declare_unit(
    symbol: str, *, dimension: str, factor: float, spellings: Sequence[str] = ()
) -> str:
    """Declare a unit that wirecalc lacks; return its `symbol`, for the kinds that are read in it.

        GRAM = declare_unit("g", dimension="mass", factor=0.001, spellings=("gram", "grams"))
        Reading(GRAM, low=0, high=5000, text="frost that was scraped off")

    `dimension` is what it measures, and none of wirecalc's own; `factor` is how much one of it is
    in the SI unit of that (a gram is 0.001 kg, a bar 100000 Pa); `spellings` are other ways to
    type it. Units of one dimension are read in place of one another. The same unit may be declared
    by several plugins, if they mean the same by it.

    Raises DeclarationError for a spelling that is taken, by name, for one that could not be typed
    behind a number, and for a dimension of wirecalc's own.
    """
    by = str(sys._getframe(1).f_globals.get("__name__", "")).partition(".")[0]
    if isinstance(spellings, str):
        raise DeclarationError(f"unit {symbol!r}: its spellings are one text; write them as a list")
    own = OwnUnit(symbol, dimension, factor, tuple(spellings), by)
    before = _declared.get(symbol)
    if before is not None and before[:4] == own[:4]:
        return symbol
    _refuse(own, before)
    units = SPELLINGS.setdefault(dimension, {})
    units[symbol] = own.spellings
    FACTORS[symbol] = float(factor)
    _declared[symbol] = own
    try:
        _read_back(own)
    except DeclarationError:
        _forget(own)
        raise
    return symbol


def declared_units() -> list[OwnUnit]:
    """Return the units that plugins declared in this process."""
    return list(_declared.values())


def forget_units(packages: Collection[str]) -> None:
    """Forget what some packages declared, whose modules are forgotten too: for tests."""
    for own in [own for own in _declared.values() if own.by in packages]:
        _forget(own)


def _forget(own: OwnUnit) -> None:
    del _declared[own.symbol], FACTORS[own.symbol], SPELLINGS[own.dimension][own.symbol]
    if not SPELLINGS[own.dimension]:
        del SPELLINGS[own.dimension]
    read_unit.cache_clear()


def _refuse(own: OwnUnit, before: OwnUnit | None) -> None:
    """Raise DeclarationError for a unit that cannot stand beside those that there are."""
    what = f"unit {own.symbol!r}"
    if not isinstance(own.dimension, str) or not own.dimension.strip():
        raise DeclarationError(
            f"{what}: its dimension is {own.dimension!r}; write what it measures"
        )
    if own.dimension in _CLOSED:
        there = ", ".join(SPELLINGS[own.dimension])
        wrong = f"{own.dimension} is a dimension of wirecalc's own, and takes no other units"
        raise DeclarationError(f"{what}: {wrong}; there are {there}")
    number = isinstance(own.factor, int | float) and not isinstance(own.factor, bool)
    if not number or not (0 < own.factor < math.inf):
        would_do = "write how much one of it is in the SI unit, such as 0.001"
        raise DeclarationError(f"{what}: its factor is {own.factor!r}; {would_do}")
    if before is not None:
        said = f"{before.by or 'another plugin'} declared it already, as {before}"
        raise DeclarationError(f"{what}: {said}; here it is {own}: give yours a name of its own")
    for text in (own.symbol, *own.spellings):
        if not isinstance(text, str) or not text or len(text) > LONGEST:
            would_do = f"write a text of 1 to {LONGEST} characters"
            raise DeclarationError(f"{what}: a spelling of it is {text!r}; {would_do}")
        if taken := _taken(text, own.dimension):
            raise DeclarationError(
                f"{what}: {text!r} is a spelling of {taken} already; take another"
            )


def _taken(text: str, dimension: str) -> str:
    """Return whose spelling a text is; within its dimension the case of a letter does not count."""
    for other, units in SPELLINGS.items():
        for name, more in units.items():
            spelled = (name, *more)
            alike = other == dimension and text.casefold() in {s.casefold() for s in spelled}
            if text in spelled or alike:
                return f"{name} ({other})"
    return ""


def _read_back(own: OwnUnit) -> None:
    """Raise DeclarationError for a spelling that is not read as this unit behind a number."""
    for text in (own.symbol, *own.spellings):
        for typed in (f"10 {text}", f"10{text}", f"1.5 {text} ±0.5 {text}"):
            try:
                value = read_quantity(typed, own.dimension, own.symbol).value
            except BadText as error:
                wrong = f"{typed!r} would be refused ({error})"
                raise DeclarationError(f"unit {own.symbol!r}: {wrong}; take letters") from None
            if value not in (10.0, 1.5):
                wrong = f"{typed!r} would be {value:g}"
                raise DeclarationError(f"unit {own.symbol!r}: {wrong}; take letters")

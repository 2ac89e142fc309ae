"""Ohms of a thermistor against its temperature: a B value, or points of its maker's sheet."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from wirecalc import Problem

ZERO_C = 273.15
_HOTTEST_K = 2000.0  # where a law runs away: no sensor lives there
_LEAST_OHM = 1e-3  # for a logarithm: a short
NTC, PTC = "NTC", "PTC"


class Curve(NamedTuple):
    """Points of a sheet, coldest first, in C and ohm; `b` in K where one point and B are given."""

    celsius: tuple[float, ...]
    ohms: tuple[float, ...]
    b: float | None = None

    @property
    def kind(self) -> str:
        """NTC where ohms fall as it warms, else PTC."""
        return NTC if self.b is not None or self.ohms[-1] < self.ohms[0] else PTC

    def reaches(self, celsius: float) -> bool:
        """Whether its points lie on both sides of a temperature; a B value reaches on."""
        return self.b is not None or self.celsius[0] <= celsius <= self.celsius[-1]

    def ohms_at(self, celsius: float) -> float:
        """Return the ohms at a temperature in C."""
        if self.kind == PTC:
            (c1, c2), (r1, r2) = self._beside(celsius)
            return r1 + (r2 - r1) * (celsius - c1) / (c2 - c1)
        c1, r1, b = self._law(celsius)
        return r1 * math.exp(b * (1 / (celsius + ZERO_C) - 1 / (c1 + ZERO_C)))

    def celsius_at(self, ohms: float) -> float:
        """Return the temperature in C that ohms mean; past the ends along the last piece."""
        ohm = max(ohms, _LEAST_OHM)
        if self.kind == PTC:
            (c1, c2), (r1, r2) = self._beside(ohm, self.ohms)
            return max(c1 + (c2 - c1) * (ohm - r1) / (r2 - r1), -ZERO_C)
        c1, r1, b = self._law(-ohm, tuple(-r for r in self.ohms))
        inverse = 1 / (c1 + ZERO_C) + math.log(ohm / r1) / b
        return 1 / max(inverse, 1 / _HOTTEST_K) - ZERO_C

    def b_between(self) -> float:
        """Return the B value in K of the two end points of an NTC."""
        return _b_of(self.celsius[0], self.ohms[0], self.celsius[-1], self.ohms[-1])

    def _law(self, value: float, of: tuple[float, ...] | None = None) -> tuple[float, float, float]:
        """Return a point in C and ohm and the B value of the piece that a value lies in."""
        if self.b is not None:
            return self.celsius[0], self.ohms[0], self.b
        (c1, c2), (r1, r2) = self._beside(value, of)
        return c1, r1, _b_of(c1, r1, c2, r2)

    def _beside(
        self, value: float, of: tuple[float, ...] | None = None
    ) -> tuple[tuple[float, float], tuple[float, float]]:
        """Return C and ohm of the piece that a value lies in, by a rising column."""
        column = of or self.celsius
        last = len(column) - 2
        at = next((i for i, (_, high) in enumerate(pairwise(column)) if value <= high), last)
        return (self.celsius[at], self.celsius[at + 1]), (self.ohms[at], self.ohms[at + 1])


def _b_of(c1: float, r1: float, c2: float, r2: float) -> float:
    return math.log(r1 / r2) / (1 / (c1 + ZERO_C) - 1 / (c2 + ZERO_C))


def curve_of(
    celsius: Sequence[float] | None, ohms: Sequence[float] | None, b_value: float | None
) -> Curve | None:
    """Return the curve of points in any order; None where there are too few."""
    if not celsius or not ohms or (b_value is None and len(celsius) < 2):
        return None
    points = sorted(zip(celsius, ohms, strict=True))
    return Curve(tuple(c for c, _ in points), tuple(r for _, r in points), b_value)


def refuse_points(
    celsius: Sequence[float] | None, ohms: Sequence[float] | None, b_value: float | None
) -> Iterator[Problem]:
    """Yield what is wrong with the points of a sheet."""
    given, of = len(celsius or ()), len(ohms or ())
    if given != of:
        yield Problem(
            "sheet_temperature",
            f"{of} resistances for {given} temperatures",
            "give a sheet_temperature for each, in the same order",
        )
        return
    if b_value is not None and given != 1:
        yield Problem(
            "b_value",
            f"a B value goes with one point of the sheet, and {given} were given",
            "give the ohms at 25 C, or the points alone",
        )
    points = sorted(zip(celsius or (), ohms or (), strict=True))
    if any(a[0] == b[0] for a, b in pairwise(points)):
        yield Problem("sheet_temperature", "one of them stands twice", "give each point once")
        return
    turns = {(b[1] > a[1]) - (b[1] < a[1]) for a, b in pairwise(points)}
    if 0 in turns or len(turns) > 1:
        yield Problem(
            "sheet_resistance",
            "the ohms neither fall all the way nor rise all the way as it warms",
            "look for a slip of kohm and ohm, or give the part of the sheet where they do",
        )

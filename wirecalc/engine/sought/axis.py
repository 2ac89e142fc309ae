"""The values that can be tried, in a row: three digits of a number, or a ladder of texts.

Numbers have three digits, or are the multiples of a display's last digit; so two that stand next to
each other are what a person would write next to each other, and an edge lies between them.
"""

from __future__ import annotations

import math
from abc import ABC, abstractmethod
from collections.abc import Iterable
from decimal import ROUND_FLOOR, Decimal

from ...typed.trials import Ladder, Scale

_DIGITS = 3
_FIRST = 100  # the least number of three digits
_STEPS = 900  # numbers of three digits in a decade
_DECADES = 6  # that are tried below the end of a span which begins at nothing
_BELOW = 1000  # times below the least that was given beside it


class Axis(ABC):
    """Values in a row, by their place from 0 to `last`."""

    unit = ""
    last: int
    ordered = True
    all_tried = False  # whether each of them is run

    @abstractmethod
    def text(self, place: int) -> str:
        """Return the value at a place as it is given to the calculation."""

    @abstractmethod
    def shown(self, place: int) -> str:
        """Return it as it is printed: without the meter's error, which is the same for all."""

    def value(self, place: int) -> float | None:
        """Return it as a number in the unit; None where it is none."""
        del place
        return None

    def near(self, value: float) -> Iterable[int]:
        """Return the places at and on both sides of a number; none where it lies outside."""
        del value
        return ()

    def spread(self, count: int) -> Iterable[int]:
        """Return so many places, spread evenly over all of them."""
        return {round(self.last * i / max(count - 1, 1)) for i in range(count)}


class Rungs(Axis):
    """A ladder: each of its texts is tried."""

    all_tried = True

    def __init__(self, ladder: Ladder) -> None:
        self.texts, self.ordered = ladder.texts, ladder.ordered
        self.last = len(ladder.texts) - 1

    def text(self, place: int) -> str:
        return self.texts[place]

    shown = text


class Numbers(Axis):
    """Numbers of three digits, or multiples of a step, within a span.

    Where it begins at nothing, `beside`, the least that was given in its unit, says how fine.
    """

    def __init__(self, scale: Scale, beside: float = math.inf) -> None:
        self.unit, self.behind = scale.unit, scale.behind
        self._step = None if scale.step is None else Decimal(f"{scale.step:.12g}")
        largest = max(abs(scale.low), abs(scale.high))
        floor = abs(scale.low) if scale.low > 0 else min(largest / 10**_DECADES, beside / _BELOW)
        self._least = math.floor(math.log10(max(floor, largest / 10 ** (2 * _DECADES))))
        self._first = 0
        first, last = (self._index(v) for v in (scale.low, scale.high))
        first += self._number(first) < Decimal(f"{scale.low:.12g}")
        first += scale.above and float(self._number(first)) <= scale.low
        self._first, self.last = first, last - first

    def text(self, place: int) -> str:
        number = f"{self._number(place + self._first):f}"
        return " ".join(filter(None, (number, self.unit, self.behind)))

    def shown(self, place: int) -> str:
        number = self._number(place + self._first)
        if self._step is None:  # no display has shown its last digits
            number = number.normalize()
        return f"{number:f} {self.unit}".strip()

    def value(self, place: int) -> float:
        return float(self._number(place + self._first))

    def near(self, value: float) -> Iterable[int]:
        if not math.isfinite(value):
            return ()
        at = self._index(value) - self._first
        return (p for p in (at - 1, at, at + 1) if 0 <= p <= self.last)

    def spread(self, count: int) -> Iterable[int]:
        """Some of them evenly by place, some by value and some by ratio."""
        low, high = self.value(0), self.value(self.last)
        values = [low + (high - low) * i / count for i in range(1, count)]
        if self._step is not None and high > 0:
            least = max(low, float(self._step))
            values += [least * (high / least) ** (i / count) for i in range(count)]
        return {*super().spread(count), *(p for v in values for p in list(self.near(v))[1:2])}

    def _index(self, value: float) -> int:
        """Return the index of the largest number at or below a value."""
        exact = Decimal(f"{value:.12g}")
        if self._step is not None:
            return int((exact / self._step).to_integral_value(ROUND_FLOOR))
        if exact < 0:
            above = -self._index(-value)
            return above if self._number(above) <= exact else above - 1
        if not exact or exact.adjusted() < self._least:
            return 0
        digits = int(exact.scaleb(_DIGITS - 1 - exact.adjusted()))
        return (exact.adjusted() - self._least) * _STEPS + digits - _FIRST + 1

    def _number(self, index: int) -> Decimal:
        if self._step is not None:
            return self._step * index
        if index < 0:
            return -self._number(-index)
        if index == 0:
            return Decimal(0)
        decade, digits = divmod(index - 1, _STEPS)
        number = Decimal(digits + _FIRST)
        return number.scaleb(decade + self._least - _DIGITS + 1)


def axis_of(trials: Ladder | Scale, beside: float = math.inf) -> Axis:
    """Return the axis of what a kind says can be tried; `beside` as for `Numbers`."""
    return Rungs(trials) if isinstance(trials, Ladder) else Numbers(trials, beside)

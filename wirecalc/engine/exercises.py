"""Exercises of a calculation: what to draw, what to ask, and the slips that people make in it.

They stand in a module beside the calculation, which names it: `@calculation(...,
exercises=".drop_exercises")`, with `EXERCISES` in it. A slip is the calculation run again, or its
arithmetic, with the slip in it; the right answer is always that of the calculation itself.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping, Sequence
from decimal import Decimal
from types import MappingProxyType
from typing import NamedTuple, TypeVar

from ..said.criteria import Criterion
from ..said.findings import Finding

T = TypeVar("T")
Given = Mapping[str, "str | list[str]"]


class Luck:
    """Numbers drawn for one question: the same for the same name, on any machine.

    >>> Luck("drop/1").reading(2, 15, "0.1", "A") == Luck("drop/1").reading(2, 15, "0.1", "A")
    True
    """

    def __init__(self, name: str) -> None:
        self._random = random.Random(name).random  # the one method that never changes its sequence

    def pick(self, among: Sequence[T]) -> T:
        """Return one of several."""
        return among[int(self._random() * len(among))]

    def reading(self, low: float, high: float, step: str, unit: str) -> str:
        """Return a reading between two values, with the decimals of the display that `step` has."""
        steps = int((high - low) / float(step) + 0.5) + 1
        return shown(low + int(self._random() * steps) * float(step), step, unit)


def shown(value: float, step: str, unit: str = "") -> str:
    """Return a value as a display with the last digit `step` shows it.

    >>> shown(2.034, "0.01", "A"), shown(118, "5", "ft")
    ('2.03 A', '120 ft')
    """
    last = Decimal(step)
    text = f"{(Decimal(repr(value)) / last).quantize(Decimal(1)) * last:f}"
    return f"{text} {unit}" if unit else text


class Drawn(NamedTuple):
    """What a learner is told: inputs as they would be typed, and `beside` what tells of a slip."""

    given: Given
    beside: Mapping[str, str] = MappingProxyType({})


class Case:
    """One run of the calculation, with what was given."""

    def __init__(self, drawn: Drawn, finding: Finding, again: Callable[[Given], Finding]) -> None:
        self.drawn = drawn
        self.finding = finding
        self._again = again

    def figure(self, name: str) -> float:
        """Return the value of a figure; raises KeyError where the run has none."""
        return self.finding.figure(name).figure.value

    def criterion(self, name: str) -> Criterion:
        """Return a criterion of the calculation itself; raises KeyError where the run has none."""
        return self.finding.criterion(name).criterion

    def limit(self, name: str) -> float:
        """Return the limit of a criterion; raises KeyError where there is none."""
        limit = self.criterion(name).limit
        if limit is None:
            raise KeyError(name)
        return limit

    def value(self, name: str) -> float:
        """Return an input in its declared unit; raises KeyError for one that is no number."""
        value = {i.name: i.value for i in self.finding.inputs}[name]
        if not isinstance(value, int | float):
            raise KeyError(name)
        return float(value)

    def beside(self, name: str) -> float:
        """Return the number of what was told beside the inputs."""
        return float(self.drawn.beside[name].split()[0])

    def but(self, **changed: str | list[str]) -> Case:
        """Return the run with some inputs given otherwise; raises BadInput where it is refused."""
        drawn = self.drawn._replace(given={**self.drawn.given, **changed})
        return Case(drawn, self._again(drawn.given), self._again)


class Slip(NamedTuple):
    """A slip: its name, the sentence that says which it was, and what comes of it.

    `wrong` may raise KeyError or BadInput: then this slip comes to nothing here.
    """

    name: str
    sentence: str
    wrong: Callable[[Case], float]


class Exercise(NamedTuple):
    """One kind of question.

    `text` has inputs and what is told beside them in braces, `asks` the question itself, `answer`
    what the calculation says, in `unit`, to be rounded to `step`. `judged` is the criterion whose
    verdict may be asked, and `meter` the error of each reading for that.
    """

    text: str
    asks: str
    draw: Callable[[Luck], Drawn]
    answer: Callable[[Case], float]
    unit: str
    step: str
    slips: tuple[Slip, ...]
    judged: str = ""
    meter: Mapping[str, str] = MappingProxyType({})

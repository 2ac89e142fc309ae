"""The answers of a person to the questions of one calculation, in the order in which they came."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ..engine.declaration import Calculation
from .answers import Answer
from .order import in_order


class Answers:
    """What was answered, what was left out, and former answers that are offered again.

    `given` is there already, `left` has names of inputs that were left out.
    """

    def __init__(
        self, calc: Calculation[Any], given: Mapping[str, object], left: Sequence[str]
    ) -> None:
        self.calc = calc
        self.answers: dict[str, object] = dict(given)
        self.left = list(left)
        self.former: dict[str, Answer] = {}
        self._asked: list[str] = []  # what was answered or left out, in that order

    def given(self) -> dict[str, object]:
        """Return what is answered; what goes with something that is left out is left out too."""
        kept: dict[str, object] = {}
        for declared in in_order(self.calc.inputs):
            answer = self.answers.get(declared.name)
            if answer is not None and declared.kind.goes_with in ("", *kept):
                kept[declared.name] = answer
        return {i.name: kept[i.name] for i in self.calc.inputs if i.name in kept}

    def answer(self, name: str, answer: Answer) -> None:
        """Take an answer; None leaves the input out."""
        self.answers.pop(name, None)
        self.left = [n for n in self.left if n != name]
        if answer is None:
            self.left.append(name)
        else:
            self.answers[name] = answer
        self.former.pop(name, None)
        self._asked = [n for n in self._asked if n != name] + [name]

    def reopen(self, name: str) -> None:
        """Take an answer back, to ask for it again; it is offered then."""
        former = self.answers.pop(name, None)
        self.left = [n for n in self.left if n != name]
        self._asked = [n for n in self._asked if n != name]
        if isinstance(former, str | list):
            self.former[name] = former

    def go_back(self) -> bool:
        """Reopen what was answered last; False where nothing was."""
        if not self._asked:
            return False
        self.reopen(self._asked[-1])
        return True

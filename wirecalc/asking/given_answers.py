"""The answers of a person to the questions of one calculation, in the order in which they came."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ..base.errors import BadInput, Problem
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..engine.left_out import LeftOut, Word
from ..engine.one_input import is_known
from ..engine.reading_inputs import prepare
from .answers import Answer
from .order import bearing, in_order


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

    def _words(self) -> dict[Input, LeftOut]:
        """Return the inputs that have a bearing on this run, with what leaving each out means."""
        given, values = self.given(), self._values()
        found = {i: bearing(i, given, values) for i in self.calc.inputs}
        return {i: word for i, word in found.items() if word is not None}

    def _values(self) -> dict[str, Any]:
        try:
            return prepare(self.calc, self.given(), "sheet", missing_is_unknown=True).values
        except BadInput:
            return {}

    def _refused(self) -> tuple[Problem, ...]:
        try:
            prepare(self.calc, self.given(), "sheet", missing_is_unknown=True)
        except BadInput as error:
            return error.problems
        return ()

    def _unknown(self, declared: Input) -> bool:
        return not is_known(self.answers.get(declared.name))

    def why(self, declared: Input) -> str:
        """Say why an input is asked, where the calculation says so."""
        word = bearing(declared, self.given(), self._values())
        why = word.why if word is not None and word.word is Word.ASKED else ""
        return "" if why.startswith("or ") else why

    def absent(self, declared: Input) -> str:
        """Say what leaving an input out means, where it then is taken for not there."""
        word = bearing(declared, self.given(), self._values())
        return word.why if word is not None and word.word is Word.MAY_BE_ABSENT else ""

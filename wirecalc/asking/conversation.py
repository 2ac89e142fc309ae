"""The questions of one calculation: what is needed next, when the verdict is settled, what then.

After each answer the calculation is run on what is there; what it cannot tell without, is asked.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from typing import Any

from ..base.errors import BadInput, PluginDefect, Problem
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..engine.left_out import LeftOut, Word
from ..engine.one_input import is_known
from ..engine.reading_inputs import prepare
from ..said.findings import Finding
from ..said.verdicts import Verdict
from .given_answers import Answers
from .order import bearing, follows, in_order, replaced
from .tried import Open, changes, tried_texts

Run = Callable[[Mapping[str, object]], Finding]


class Conversation(Answers):
    """The answers so far to the questions of one calculation.

    `run` computes its finding from some of the answers, as of a sheet: what is missing is unknown
    there. It raises BadInput for answers that contradict each other. `given` are answers that are
    there already, `left` names of inputs that the person left out.
    """

    def __init__(
        self,
        calc: Calculation[Any],
        run: Run,
        given: Mapping[str, object] | None = None,
        left: Sequence[str] = (),
    ) -> None:
        super().__init__(calc, given or {}, left)
        self._run = run
        self._reopened_for: tuple[Problem, ...] = ()
        self._known: dict[str, Finding | tuple[Problem, ...]] = {}

    def reopen_contradictions(self) -> tuple[Problem, ...]:
        """Reopen the answers that cannot be used together, and return why they cannot.

        Nothing is reopened for what is only missing, nor twice for the same: then another answer
        is to be changed.
        """
        problems = self.contradictions()
        names = {p.name for p in problems} & set(self.given())
        if not names or problems == self._reopened_for:
            return ()
        self._reopened_for = problems
        for name in names:
            self.reopen(name)
        return problems

    def contradictions(self) -> tuple[Problem, ...]:
        """Return why the answers cannot be used together; nothing where they can."""
        if self.calc.own_band and self._by_words():  # a run is dear: not before it has all
            return self._refused()
        found = self._found()
        return found if isinstance(found, tuple) else ()

    @property
    def finding(self) -> Finding | None:
        """What the answers come to so far; None where they contradict each other."""
        found = self._found()
        return None if isinstance(found, tuple) else found

    def next(self) -> Input | None:
        """Return what is asked next; None where the verdict is settled or nothing is needed."""
        reopened = [i for i in self.calc.inputs if i.name in self.former]
        waiting = list(self._waiting()) or list(self._not_yet_said())
        if reopened:
            return in_order(reopened)[0]
        if not waiting or self._settled_by_a_fail(waiting):
            return None
        return waiting[0]

    def is_open(self) -> bool:
        """Whether it cannot tell before more is answered."""
        waiting = list(self._waiting())
        return bool(waiting) and not self._settled_by_a_fail(waiting)

    def is_needed(self, declared: Input) -> bool:
        """Whether it cannot tell without an input, as far as the answers go."""
        needs = self._by_words() if self.calc.own_band else self._needs(self.finding)
        return declared.required or declared.name in needs

    def why(self, declared: Input) -> str:
        """Say why an input is asked, where the calculation says so."""
        word = bearing(declared, self.given(), self._values())
        why = word.why if word is not None and word.word is Word.ASKED else ""
        return "" if why.startswith("or ") else why

    def absent(self, declared: Input) -> str:
        """Say what leaving an input out means, where it then is taken for not there."""
        word = bearing(declared, self.given(), self._values())
        return word.why if word is not None and word.word is Word.MAY_BE_ABSENT else ""

    def offers(self) -> list[Open]:
        """Return what is not answered and may be: what may change the verdict stands first."""
        finding, given = self.finding, self.given()
        found: list[Open] = []
        words = self._words()
        for declared in in_order(words):
            if declared.name not in given:
                to = self._changes(declared, finding.verdict) if finding else ()
                found.append(Open(declared, words[declared], to))
        return sorted(found, key=lambda one: not one.to)

    def _waiting(self) -> Iterator[Input]:
        """Yield what is needed and has no answer: what is required, then what cannot do without."""
        done = {*self.answers, *self.left}
        given = self.given()
        needed = [i for i in self.calc.inputs if i.required and i.name not in done]
        if not needed and not any(self._unknown(i) for i in self.calc.inputs if i.required):
            needed = [i for i in self._wanted() if i.name not in done]
        for declared in in_order(needed):
            if declared.kind.goes_with in ("", *given):
                yield declared

    def _not_yet_said(self) -> Iterator[Input]:
        """Yield what nobody spoke of and the verdict hangs on.

        That is what would be taken for not there, where it could change the verdict, and what was
        assumed unkindly, where another value makes a marginal one a pass.
        """
        finding = None if self.calc.own_band else self.finding
        if finding is None or finding.verdict not in (Verdict.PASS, Verdict.MARGINAL):
            return
        done = {*self.answers, *self.left}
        for declared in in_order(words := self._words()):
            word = words[declared].word
            if declared.name in done or word not in (Word.MAY_BE_ABSENT, Word.ASSUMED):
                continue
            to = self._changes(declared, finding.verdict)
            if Verdict.PASS in to or (to and word is Word.MAY_BE_ABSENT):
                yield declared

    def _unknown(self, declared: Input) -> bool:
        return not is_known(self.answers.get(declared.name))

    def _wanted(self) -> list[Input]:
        """Return what the run asks for; of what may stand in for another, once that is not had."""
        names = self._by_words() if self.calc.own_band else set()
        if not names:
            names = {p.name for p in self.contradictions()} or self._needs(self.finding)
        not_had = {*self.left, *(n for n in self.answers if not is_known(self.answers[n]))}
        words, given, values = self._words(), self.given(), self._values()
        wanted: list[Input] = []
        for declared in (i for i in self.calc.inputs if not replaced(i, given, values)):
            word = words.get(declared)
            others = names & set(word.others) if word and word.word is Word.INSTEAD_OF else set()
            had = declared.name in names and not others
            if had or (others and others <= not_had and self._helps(declared, others)):
                wanted.append(declared)
        return wanted

    def _by_words(self) -> set[str]:
        """Return what is asked for by its declaration, without a run, where a run is dear."""
        words = self._words().items()
        asked = {i.name for i, word in words if word.word is Word.ASKED}
        return asked - {*self.answers, *self.left}

    def instead_of(self, declared: Input) -> list[Input]:
        """Return what may be answered in place of an input that is asked."""
        return [
            other
            for other, word in self._words().items()
            if word.word is Word.INSTEAD_OF
            and declared.name in word.others
            and other.name not in self.answers
            and self._helps(other, {declared.name})
        ]

    def _words(self) -> dict[Input, LeftOut]:
        """Return the inputs that have a bearing on this run, with what leaving each out means."""
        given, values = self.given(), self._values()
        found = {i: bearing(i, given, values) for i in self.calc.inputs}
        return {i: word for i, word in found.items() if word is not None}

    def _helps(self, declared: Input, others: Collection[str]) -> bool:
        """Whether an input does away with the need for others: so it says, or some answer to it."""
        if self.calc.own_band:
            return True  # each run of it is dear
        if declared.name in self._needs(self.finding) and not follows(declared):
            return True
        given = {k: v for k, v in self.given().items() if k not in others}
        for text in tried_texts(declared):
            found = self._tried({**given, declared.name: [text] if declared.many else text})
            if found is not None and not self._needs(found) & set(others):
                return True
        return declared.kind.of_file

    @staticmethod
    def _needs(finding: Finding | None) -> set[str]:
        return {n for c in finding.criteria for n in c.criterion.needs} if finding else set()

    def _settled_by_a_fail(self, waiting: Sequence[Input]) -> bool:
        """Whether it fails whatever else is answered, as far as that can be tried."""
        finding = None if self.calc.own_band else self.finding
        if finding is None or finding.verdict is not Verdict.FAIL:
            return False
        return not any(self._changes(i, Verdict.FAIL) for i in waiting)

    def _changes(self, declared: Input, now: Verdict | None) -> tuple[Verdict, ...]:
        if self.calc.own_band:
            return ()
        return changes(self._tried, self.given(), declared, now)

    def _tried(self, given: Mapping[str, object]) -> Finding | None:
        try:
            return self._run({k: v for k, v in given.items() if v is not None})
        except (BadInput, PluginDefect):
            return None

    def _refused(self) -> tuple[Problem, ...]:
        try:
            prepare(self.calc, self.given(), "sheet", missing_is_unknown=True)
        except BadInput as error:
            return error.problems
        return ()

    def _values(self) -> dict[str, Any]:
        try:
            return prepare(self.calc, self.given(), "sheet", missing_is_unknown=True).values
        except BadInput:
            return {}

    def _found(self) -> Finding | tuple[Problem, ...]:
        """Run it on what is answered, once for the same answers."""
        key = repr(self.given())
        if key not in self._known:
            try:
                self._known = {key: self._run(self.given())}
            except BadInput as error:
                self._known = {key: error.problems}
        return self._known[key]

"""The questions of one calculation: what is needed next, when the verdict is settled, what then.

After each answer the calculation is run on what is there; what it cannot tell without, is asked.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from typing import Any

from ..base.errors import BadInput, Problem
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..engine.left_out import LeftOut, Word
from ..engine.one_input import is_known
from ..said.findings import Finding
from ..said.verdicts import Verdict
from .given_answers import Answers
from .order import follows, in_order, replaced
from .tried import Open, Tries

Run = Callable[[Mapping[str, object]], Finding]


class Conversation(Answers):
    """The answers so far to the questions of one calculation.

    `run` computes its finding from some of the answers, as of a sheet: what is missing is unknown
    there. It raises BadInput for answers that contradict each other. `given` are answers that are
    there already, `left` names of inputs that the person left out. `refuses` says of answers that
    this machine cannot have them, `reads` names the reading to ask for where several would do.
    """

    def __init__(
        self,
        calc: Calculation[Any],
        run: Run,
        given: Mapping[str, object] | None = None,
        left: Sequence[str] = (),
        *,
        refuses: Callable[[Mapping[str, object]], bool] | None = None,
        reads: str = "",
    ) -> None:
        super().__init__(calc, given or {}, left)
        self._run, self._reads = run, reads
        self._tries = Tries(run, refuses)
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

    def offers(self) -> list[Open]:
        """Return what is not answered and may be: what may change the verdict stands first."""
        finding, given = self.finding, self.given()
        found: list[Open] = []
        words = self._words()
        for declared in in_order(words):
            if declared.name not in given and self._may_be_there(declared, words[declared]):
                to = self._changes(declared, finding.verdict) if finding else ()
                found.append(Open(declared, words[declared], to))
        return sorted(found, key=lambda one: not one.to)

    def _waiting(self) -> Iterator[Input]:
        """Yield what is needed and has no answer: what is required, then what cannot do without.

        What makes a reading right or harmless comes before it.
        """
        done = {*self.answers, *self.left}
        given = self.given()
        needed = [i for i in self.calc.inputs if i.required and i.name not in done]
        if not needed and not any(self._unknown(i) for i in self.calc.inputs if i.required):
            needed = [i for i in self._wanted() if i.name not in done]
        guards = [i for i in self._guards(needed) if i not in needed]
        for declared in in_order([*guards, *needed]):
            if declared.kind.goes_with in ("", *given):
                yield declared

    def _guards(self, needed: Sequence[Input]) -> Iterator[Input]:
        """Yield what is to be so before a reading that is needed, and nobody spoke of."""
        readings = {i.name: i for i in needed}
        words = self._words() if readings else {}
        for declared in words:
            reading = readings.get(declared.kind.before)
            if reading is None or declared.name in {*self.answers, *self.left}:
                continue
            missing = {i.name: i.kind.example for i in needed if i.required}
            read = {**self.given(), **missing, reading.name: reading.kind.example}
            if words[declared].word is Word.ASKED or self._tries.matters(read, declared):
                yield declared

    def _may_be_there(self, declared: Input, word: LeftOut) -> bool:
        """Whether what would be taken for not there could be there, as far as that can be tried."""
        if word.word is not Word.MAY_BE_ABSENT or self.calc.own_band:
            return True
        return self._tries.matters(self.given(), declared)

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
            instead = others <= not_had or declared.name == self._reads not in not_had
            if had or (others and instead and self._helps(declared, others)):
                wanted.append(declared)
        return self._as_read(wanted, words)

    def _as_read(self, wanted: list[Input], words: Mapping[Input, LeftOut]) -> list[Input]:
        """Return what is wanted without what the reading of this step stands in for."""
        first = next((i for i in wanted if i.name == self._reads), None)
        word = words.get(first) if first else None
        others = word.others if word and word.word is Word.INSTEAD_OF else ()
        return [i for i in wanted if i.name not in others]

    def _by_words(self) -> set[str]:
        """Return what is asked for by its declaration, without a run, where a run is dear."""
        words = self._words().items()
        asked = {i.name for i, word in words if word.word is Word.ASKED}
        return asked - {*self.answers, *self.left}

    def stays(self, declared: Input) -> Verdict | None:
        """Return the verdict that stays where what is assumed is not said, if another could be."""
        finding = None if self.calc.own_band else self.finding
        word = self._words().get(declared)
        if finding is None or word is None or word.word is not Word.ASSUMED:
            return None
        better = declared.assumed and Verdict.PASS in self._changes(declared, finding.verdict)
        return finding.verdict if better and finding.verdict is Verdict.MARGINAL else None

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

    def _helps(self, declared: Input, others: Collection[str]) -> bool:
        """Whether an input does away with the need for others: so it says, or some answer to it."""
        if self.calc.own_band:
            return True  # each run of it is dear
        if declared.name in self._needs(self.finding) and not follows(declared):
            return True
        given = {k: v for k, v in self.given().items() if k not in others}
        tried = self._tries.on(given, declared)
        return declared.kind.of_file or any(not self._needs(f) & set(others) for f in tried)

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
        return self._tries.changes(self.given(), declared, now)

    def _found(self) -> Finding | tuple[Problem, ...]:
        """Run it on what is answered, once for the same answers."""
        key = repr(self.given())
        if key not in self._known:
            try:
                self._known = {key: self._run(self.given())}
            except BadInput as error:
                self._known = {key: error.problems}
        return self._known[key]

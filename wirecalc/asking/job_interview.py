"""A job by questions: what is asked next, what each answer does to the sheet, and one step back.

The sheet is at any time one that can be evaluated: an answer that it would be refused for is not
taken. Nothing is read or written here: `text` is what the caller keeps.
"""

from __future__ import annotations

import copy
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from ..base.errors import BadInput, BadText, PluginDefect, Problem
from ..jobs import sheet as jobsheet
from ..jobs.job import Job
from ..jobs.sheet import confirmed
from ..jobs.sheet.plan import Check, plan
from ..jobs.sheet.written import sheet_text
from ..plugging.host import Catalogue
from . import job_end, job_head, job_work
from .conversation import Conversation
from .job_evaluation import of_complete, runner
from .job_question import Question, chosen
from .job_state import HEAD, OTHERS, WORDS, State
from .plates import Offered, of_the_machine, offered


class OfCheck(NamedTuple):
    """The questions of one check of the sheet; what other checks were given is offered for it."""

    at: int
    check: Check
    talk: Conversation
    offered: Mapping[str, Offered]


class Interview:
    """A job sheet, and the questions that lead through it.

    `sheet` may be empty. `folder` is the one that it stands in, `today` the day to offer, if any.
    Raises BadInput for a sheet that is refused, or that is of several machines.
    """

    def __init__(
        self, sheet: Mapping[str, Any], catalogue: Catalogue, folder: Path, today: str = ""
    ) -> None:
        self._catalogue, self._folder, self._today = catalogue, folder, today
        self._state = State(copy.deepcopy(dict(sheet)))
        self._before: list[State] = []
        self._talks: dict[int, tuple[str, Conversation]] = {}
        if sheet.get("machine"):
            wrong = "questions lead through a sheet of one machine, without [[machine]]"
            raise BadInput([Problem("machine", wrong, "write a sheet for each, or edit it")])
        if problems := self._refused():
            raise BadInput(problems)

    @property
    def sheet(self) -> Mapping[str, Any]:
        """The sheet as it stands."""
        return self._state.sheet

    @property
    def kind(self) -> str:
        """The kind of job."""
        return self._state.kind

    @property
    def stops(self) -> list[str]:
        """What is to be known of such a machine before anything else."""
        return confirmed.stops(self._state.kind, self._state.facts)

    def text(self, head: str = "") -> str:
        """Return the sheet as TOML, below some words."""
        kept = {k: v for k, v in self._state.sheet.items() if v or k == "job"}
        return sheet_text(kept, head)

    def job(self) -> Job | None:
        """Return what the sheet comes to; None where nothing of it can be evaluated yet."""
        try:
            return of_complete(self._state.sheet, self._catalogue, self._folder)
        except BadInput:
            return None

    def evaluated(self) -> Job:
        """Return what all of the sheet comes to; raises BadInput for what is only begun."""
        kept = {k: v for k, v in self._state.sheet.items() if v}
        return jobsheet.evaluate(kept, self._catalogue, self._folder)

    def next(self) -> Question | OfCheck | None:
        """Return what is asked next; None where all was."""
        state = self._state
        first = next(job_head.questions(state, self._catalogue, self._today), None)
        if first is not None:
            return first
        state.mark(HEAD)
        for index in range(len(state.checks)):
            if (asked := self._of_check(index)) is not None:
                return asked
        found: Question | None = next(job_work.questions(state, self._catalogue), None)
        if found is None or found.step in job_work.WITH_POWER:  # a new part is tried before that
            dead = next(job_end.again(state, self.job(), job_work.DEAD), None)
            found = dead or found or next(job_end.questions(state, self.job()), None)
        if found is None:
            state.mark(WORDS)
        return found

    def answer(self, question: Question, typed: str) -> tuple[Problem, ...]:
        """Take the answer to a question; what is wrong with it comes back, and changes nothing."""
        self._before.append(copy.deepcopy(self._state))
        try:
            self._take(question, chosen(question, typed))
            problems = self._refused()
        except BadText as error:
            problems = (Problem("", error.wrong, error.would_do),)
        if problems:
            self._state = self._before.pop()
        return problems

    def took(self, asked: OfCheck, *, ended: bool = False) -> tuple[Problem, ...]:
        """Take over what was answered to a check, or that nothing more is answered to it."""
        self._before.append(copy.deepcopy(self._state))
        self._take_over(asked)
        if ended:
            self._state.closed.add(asked.at)
        problems = self._refused()
        if problems:
            self._state = self._before.pop()
            self._talks.pop(asked.at, None)
        return problems

    def later(self, asked: OfCheck) -> None:
        """Leave a check as it stands, until the sheet is taken up again."""
        self._before.append(copy.deepcopy(self._state))
        self._state.closed.add(asked.at)

    def drop(self, asked: OfCheck) -> None:
        """Take a check out of the sheet again."""
        self._before.append(copy.deepcopy(self._state))
        self._state.drop(asked.at)
        self._talks.clear()

    def back(self) -> bool:
        """Take the last answer back; False where there is none."""
        if not self._before:
            return False
        self._state = self._before.pop()
        self._talks.clear()
        return True

    def _take(self, question: Question, values: Sequence[str]) -> None:
        if job_head.is_of_head(question):
            job_head.take(self._state, self._catalogue, question, values)
        elif job_work.is_of_work(question):
            job_work.take(self._state, self._catalogue, question, values)
        else:
            job_end.take(self._state, self._catalogue, question, values)

    def _of_check(self, index: int) -> OfCheck | None:
        """Return a check that is not done: it was just begun, or it cannot tell without more."""
        state = self._state
        if index in state.closed:
            return None
        planned = self._planned()
        check = planned[index]
        talk = self._talk(index, check)
        if not self._is_open(index, talk):
            state.closed.add(index)
            return None
        state.started.add(index)
        others = [other for n, other in enumerate(planned) if n != index]
        return OfCheck(index, check, talk, offered(check, others))

    def _is_open(self, index: int, talk: Conversation) -> bool:
        """Whether a check was begun, or one of a sheet that was taken up waits for an answer.

        Of the one that may have been left in its middle, what would be taken for not there too.
        """
        last = index == len(self._state.checks) - 1 and not self._state.is_past(OTHERS)
        try:
            waits = talk.next() is not None if last else talk.is_open()
            return waits or index in self._state.started
        except PluginDefect:  # nothing can be asked; the job says so of the check
            return False

    def _planned(self) -> list[Check]:
        return plan(self._state.sheet, self._catalogue, [], [])

    def _talk(self, index: int, check: Check) -> Conversation:
        """Return the conversation of a check; a new one where its answers are no longer those."""
        given = dict(check.given)
        key = repr((check.calculation.name, given))
        there = self._talks.get(index)
        if there is None or there[0] != key:
            run = runner(check, self._catalogue, self._folder)
            talk = Conversation(check.calculation, run, given, self._state.left.get(index, ()))
            self._talks[index] = there = (key, talk)
        return there[1]

    def _take_over(self, asked: OfCheck) -> None:
        """Write the answers of a check where they belong: on the machine's plate, or in it."""
        entry = self._state.checks[asked.at]
        answers = asked.talk.given()
        for name in (i.name for i in asked.check.calculation.inputs):
            new = answers.get(name)
            if new == asked.check.given.get(name):
                continue
            plate = self._state.sheet.get("nameplate", {})
            if not of_the_machine(asked.check, name):
                plate = {}
            elif new is not None:
                plate = self._state.sheet.setdefault("nameplate", {})
            entry.pop(name, None)
            plate.pop(name, None)
            if new is not None:
                (plate if of_the_machine(asked.check, name) else entry)[name] = new
        self._state.left[asked.at] = list(asked.talk.left)
        key = repr((asked.check.calculation.name, dict(self._planned()[asked.at].given)))
        self._talks[asked.at] = (key, asked.talk)

    def _refused(self) -> tuple[Problem, ...]:
        """Return what the sheet would be refused for, save what is only missing yet."""
        if not self._state.job:
            return ()
        try:
            of_complete(self._state.sheet, self._catalogue, self._folder)
        except BadInput as error:
            return error.problems
        return ()

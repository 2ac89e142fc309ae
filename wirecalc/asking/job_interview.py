"""A job by questions: what is asked next, what each answer does to the sheet, and one step back.

The sheet is at any time one that can be evaluated: an answer that it would be refused for is not
taken. Nothing is read or written here: `text` is what the caller keeps.
"""

from __future__ import annotations

import copy
from collections.abc import Mapping, Sequence
from itertools import chain
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, BadText, PluginDefect, Problem
from ..jobs import sheet as jobsheet
from ..jobs.checks import STEPS
from ..jobs.job import Job
from ..jobs.sheet.kinds import UsualCheck
from ..jobs.sheet.machine_facts import Subject
from ..jobs.sheet.plan import Check, plan
from ..jobs.sheet.written import sheet_text
from ..plugging.host import Catalogue
from . import against_power, job_confirm, job_end, job_head, job_work
from .conversation import Conversation
from .job_check import OfCheck
from .job_evaluation import contradicted, of_complete, runner
from .job_question import Question, chosen
from .job_state import HEAD, OTHERS, WORDS, State
from .plates import offered, write_answers


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
        self._known: dict[str, Job | tuple[Problem, ...] | None] = {}
        if sheet.get("machine"):
            wrong = "questions lead through a sheet of one machine, without [[machine]]"
            raise BadInput([Problem("machine", wrong, "write a sheet for each, or edit it")])
        if problems := self._refused():
            raise BadInput(problems)
        self._state.keep_answered()

    @property
    def sheet(self) -> Mapping[str, Any]:
        """The sheet as it stands."""
        return self._state.sheet

    @property
    def kind(self) -> str:
        """The kind of job."""
        return self._state.kind

    @property
    def is_taken_up(self) -> bool:
        """Whether the work was begun when the sheet was left, and its questions go on."""
        return self._state.is_past(HEAD) and not self._state.is_past(WORDS)

    def text(self, head: str = "") -> str:
        """Return the sheet as TOML, below some words."""
        return sheet_text({k: v for k, v in self._state.sheet.items() if v or k == "job"}, head)

    def job(self) -> Job | None:
        """Return what the sheet comes to; None where nothing of it can be evaluated yet."""
        found = self._found()
        return None if isinstance(found, tuple) else found

    def evaluated(self) -> Job:
        """Return what all of the sheet comes to; raises BadInput for what is only begun."""
        kept = {k: v for k, v in self._state.sheet.items() if v}
        return jobsheet.evaluate(kept, self._catalogue, self._folder)

    def next(self) -> Question | OfCheck | None:
        """Return what is asked next; None where all was, or the person leaves the job."""
        state = self._state
        if state.is_left:
            return None
        first = next(job_head.questions(state, self._catalogue, self._today), None)
        if first:
            return first
        state.mark(HEAD)
        if state.pending:
            return next(chain(job_work.reason(state, self._catalogue), job_end.pending(state)))
        rows = job_work.rows_of(state, self._catalogue)
        for step in ("", *STEPS, job_work.NO_STEP):  # first what names no step
            if (asked := self._at(step, rows)) is not None:
                return against_power.guarded(asked, state, self.job)
        ends = job_end.lacking(state, self._lacks), job_end.questions(state, self.job())
        if (found := next(chain.from_iterable(ends), None)) is None:
            state.mark(WORDS)
        return found

    def _at(self, step: str, rows: Sequence[UsualCheck]) -> Question | OfCheck | None:
        """Return what is asked next at a step of the work; what comes before it is done."""
        state = self._state
        again = {  # what failed is measured again before the machine is closed, and before power
            "before power": job_end.again(state, self.job(), job_end.DEAD),
            against_power.POWER: against_power.questions(state, self.job()),
        }
        if (first := next(again.get(step, iter(())), None)) is not None:
            return first
        work = job_work.questions(state, rows, step, self.job) if step else iter(())
        asked = [job_confirm.questions(state, step), work] if step else []
        if step != "isolate":  # there what is confirmed protects the hands in the work
            asked.reverse()
        question = next(chain.from_iterable(asked), None)
        if question and job_work.goes_before(question):
            return question
        here = [n for n, entry in enumerate(state.checks) if entry.get("step", "") == step]
        for index in sorted(here, key=lambda n: not job_work.is_first(state.checks[n])):
            if (check := self._of_check(index)) is not None:
                return check
        return question

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
        self._state.closed |= {asked.at} if ended else set()
        if problems := self._refused():
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
        elif job_confirm.is_of_these(question):
            job_confirm.take(self._state, question, values)
        elif job_work.is_of_work(question):
            job_work.take(self._state, self._catalogue, question, values)
        elif question.key == against_power.KEY:
            against_power.take(self._state, self._catalogue, self.job(), values)
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

    def _lacks(self, index: int) -> bool:
        return self._talk(index, self._planned()[index]).is_open()

    def _planned(self) -> list[Check]:
        return plan(self._state.sheet, self._catalogue, [], [])

    def _talk(self, index: int, check: Check) -> Conversation:
        """Return the conversation of a check; a new one where its answers are no longer those."""
        given = dict(check.given)
        key, there = repr((check.calculation.name, given)), self._talks.get(index)
        if there is None or there[0] != key:
            state = self._state
            run = runner(check, self._catalogue, self._folder)
            left = state.left.get(index, ())
            reads = job_work.reads(state, self._catalogue, state.checks[index])
            subject = Subject("", state.kind, state.facts)
            refuses = contradicted(state.sheet, self._planned(), index, subject)
            talk = Conversation(check.calculation, run, given, left, refuses=refuses, reads=reads)
            self._talks[index] = there = (key, talk)
        return there[1]

    def _take_over(self, asked: OfCheck) -> None:
        """Write the answers of a check where they belong: on the machine's plate, or in it."""
        write_answers(self._state, asked.at, asked.check, asked.talk.given())
        self._state.left[asked.at] = list(asked.talk.left)
        key = repr((asked.check.calculation.name, dict(self._planned()[asked.at].given)))
        self._talks[asked.at] = (key, asked.talk)

    def _refused(self) -> tuple[Problem, ...]:
        """Return what the sheet would be refused for, save what is only missing yet."""
        if not self._state.job:
            return ()
        found = self._found()
        return found if isinstance(found, tuple) else ()

    def _found(self) -> Job | tuple[Problem, ...] | None:
        """Return what the sheet comes to, or what it would be refused for; once for the same."""
        key = repr(self._state.sheet)
        if key not in self._known:
            try:
                self._known = {key: of_complete(self._state.sheet, self._catalogue, self._folder)}
            except BadInput as error:
                self._known = {key: error.problems}
        return self._known[key]

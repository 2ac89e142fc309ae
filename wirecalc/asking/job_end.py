"""What is asked at the end of a job: other checks, second readings, what is confirmed, words."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from ..base.errors import BadText
from ..engine.found_by_words import of_calculations
from ..jobs.checks import AS_FOUND, AS_LEFT, NO, NOT_APPLICABLE, STEPS, YES, JobCheck
from ..jobs.job import AGAIN, BENCH, Job
from ..jobs.sheet.confirmed import NEVER, WITH_A_REASON, lines_of
from ..plugging.host import Catalogue
from .job_question import Question
from .job_state import OTHERS, WORDS, State, is_check
from .job_work import LATER

_MEASURE, _AWAY = "measure it again now", "it was taken away altogether"
_MOST = 6  # calculations that words may mean
_WORDS = {
    "work": "What was done, in words for the customer?",
    "hand_over": "What was the customer told?",
    "circuit": "What is to be known of cord and circuit, in words for the customer?",
}


def questions(state: State, job: Job | None) -> Iterator[Question]:
    """Yield what is to be asked once all steps of the work were; `job` is what it comes to."""
    yield from _other(state)
    for counted in job.counted if job else ():
        if counted.why == AGAIN and counted.check is not None:
            yield from _again(
                state, counted.check, counted.judged.because if counted.judged else ""
            )
    yield from _confirmed(state, job)
    if state.is_past(WORDS):
        return
    for key, says in _WORDS.items() if state.kind != BENCH else ():
        if key not in state.job and key not in state.passed:
            yield Question(key, says, enter="leaves it out", step="hand over")


def take(state: State, catalogue: Catalogue, question: Question, values: Sequence[str]) -> None:
    """Take an answer; raises BadText for words that fit no calculation."""
    of, _, what = question.key.partition(" ")
    if question.key in _WORDS:
        if values:
            state.job[question.key] = values[0]
        else:
            state.passed.add(question.key)
    elif of == "confirmed":
        if values:
            state.sheet.setdefault("confirmed", {})[what] = values[0]
        else:
            state.passed.add(question.key)
    elif of == "other":
        _take_other(state, catalogue, values)
    elif of == "which":
        state.pending = ("stage", values[0]) if values else ()
    elif of == "stage":
        state.pending = ()
        state.start(what, state.free_name(what, values[0]), "", values[0], {})
    else:
        _take_again(state, question, values)


def again(state: State, job: Job | None, steps: Collection[str]) -> Iterator[Question]:
    """Yield what is to be asked of checks that failed as found, at some steps of the work."""
    for counted in job.counted if job else ():
        check, judged = counted.check, counted.judged
        if counted.why == AGAIN and check is not None and (check.step or STEPS[-1]) in steps:
            yield from _again(state, check, judged.because if judged else "")


def _other(state: State) -> Iterator[Question]:
    if state.pending[:1] == ("which",):
        fits = state.pending[1:]
        yield Question("which", "Which of these do you mean?", choices=fits, enter="none of them")
    elif state.pending[:1] == ("stage",):
        name = state.pending[1]
        says = f"{name}: as it is left, or as it was found?"
        yield Question(f"stage {name}", says, (), (AS_LEFT, AS_FOUND), f"takes {AS_LEFT}", AS_LEFT)
    elif not state.is_past(OTHERS):
        says = "Did you measure anything else? Its name, or words for it."
        yield Question("other", says, enter="no, that is all", step="other checks")


def _take_other(state: State, catalogue: Catalogue, values: Sequence[str]) -> None:
    if not values or values[0].casefold() in ("no", "none", "nothing"):
        state.mark(OTHERS)
        return
    typed = values[0]
    if typed in catalogue.calculations:
        state.pending = ("stage", typed)
        return
    catalogue.load_all()
    every = (p.calculation for p in catalogue.calculations.values())
    found = of_calculations(every).find(typed)
    if not found.names:
        raise BadText(f"nothing here speaks of {typed!r}", "other words, or Enter for no")
    state.pending = ("which", *found.names[:_MOST])


def _again(state: State, check: JobCheck, because: str) -> Iterator[Question]:
    key = f"again {check.name}, {check.calculation}"
    if state.pending[:1] == ("removed",):
        yield Question("removed", "What is gone, and how?", ("such as: cut off; cord unplugged",))
    elif key not in state.passed:
        says = f"{check.name} failed as found ({because}). What is it now?"
        yield Question(key, says, (), (_MEASURE, _AWAY, LATER), LATER, LATER, "measured again")


def _take_again(state: State, question: Question, values: Sequence[str]) -> None:
    if question.key == "removed":
        index = int(state.pending[1])
        state.pending = ()
        state.checks[index]["removed"] = values[0]
        return
    name, _, calculation = question.key.removeprefix("again ").rpartition(", ")
    index, entry = next(
        (n, c) for n, c in enumerate(state.checks) if is_check(c, calculation, name, AS_FOUND)
    )
    if values[0] == _MEASURE:
        state.start(calculation, name, str(entry.get("step", "")), AS_LEFT, {})
    elif values[0] == _AWAY:
        state.pending = ("removed", str(index))
    else:
        state.passed.add(question.key)


def _confirmed(state: State, job: Job | None) -> Iterator[Question]:
    lines = {line.key: line for line in lines_of(state.kind)}
    for said in job.confirmed if job else ():
        line, key = lines.get(said.key), f"confirmed {said.key}"
        if said.answer or key in state.passed or line is None:
            continue
        reasons = [f"{NOT_APPLICABLE}: {reason}" for reason in line.reasons]
        if line.may_not_apply == NEVER:
            reasons = []
        elif line.may_not_apply != WITH_A_REASON:
            reasons = [*reasons, NOT_APPLICABLE]
        notes = (line.why,) if line.why else ()
        yield Question(
            key, f"{line.says}?", notes, [YES, NO, *reasons], LATER, "", "confirm", free=True
        )

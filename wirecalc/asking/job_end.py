"""What is asked at the end of a job: other checks, second readings, words for the customer."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence

from ..base.errors import BadText, PluginDefect
from ..engine.found_by_words import of_calculations
from ..jobs.checks import AS_FOUND, AS_LEFT, STEPS
from ..jobs.job import AGAIN, BENCH, Job
from ..plugging.host import Catalogue
from . import job_confirm
from .job_question import Question
from .job_state import OTHERS, WORDS, State, is_check, name_of, stage_of
from .job_work import LATER

_MEASURE, _AWAY = "mended or replaced: measure it now", "gone: nothing is left to measure"
_ALSO = {  # what people say of it -> the choice
    **dict.fromkeys(
        ("replaced", "new", "changed", "swapped", "repaired", "fixed", "mended", "cleaned"),
        _MEASURE,
    ),
    **dict.fromkeys(("tightened", "crimped", "measure", "measured", "again"), _MEASURE),
    **dict.fromkeys(("removed", "unplugged", "cut", "away", "taken"), _AWAY),
}
DEAD = STEPS[STEPS.index("isolate") : STEPS.index("live readings")]
_MOST = 6  # calculations that words may mean
_WORDS = {
    "work": "What was done, in words for the customer?",
    "hand_over": "What was the customer told?",
    "circuit": "What is to be known of cord and circuit, in words for the customer?",
}


def questions(state: State, job: Job | None) -> Iterator[Question]:
    """Yield what is to be asked once all steps of the work were; `job` is what it comes to."""
    if not state.is_past(OTHERS):
        says = "Did you measure anything else? Its name, or words for it."
        yield Question("other", says, enter="no, that is all", step="other checks")
    yield from again(state, job, STEPS)
    yield from job_confirm.questions(state, "")
    if state.is_past(WORDS):
        return
    for key, says in _WORDS.items() if state.kind != BENCH else ():
        if key not in state.job and key not in state.passed:
            yield Question(key, says, enter="leaves it out", step="hand over")


def lacking(state: State, is_open: Callable[[int], bool]) -> Iterator[Question]:
    """Yield the question which checks, answered before the sheet was taken up, go on."""

    def lacks(index: int) -> bool:
        try:
            return index in state.closed and is_open(index)
        except PluginDefect:
            return False

    found = [] if "open" in state.passed else [n for n in sorted(state.kept) if lacks(n)]
    names = [f"{name_of(c)}, {stage_of(c)}" for c in (state.checks[n] for n in found)]
    if found:
        says = "These could not tell when the sheet was left. Which do you answer now?"
        key = f"open {' '.join(map(str, found))}"
        yield Question(key, says, (), names, "none of them", "", "still open", several=True)


def take(state: State, catalogue: Catalogue, question: Question, values: Sequence[str]) -> None:
    """Take an answer; raises BadText for words that fit no calculation."""
    of, _, what = question.key.partition(" ")
    if question.key in _WORDS:
        if values:
            state.job[question.key] = values[0]
        else:
            state.passed.add(question.key)
    elif of == "open":
        state.passed.add(of)
        for index, name in zip(what.split(), question.choices, strict=True):
            if name in values:
                state.go_on_with(int(index))
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
            key = f"again {check.name}, {check.calculation}"
            because = judged.because if judged else ""
            says = f"{check.name} failed as found ({because}). What is it now?"
            choices = (_MEASURE, _AWAY, LATER)
            if key not in state.passed:
                yield Question(key, says, (), choices, LATER, LATER, "measured again", also=_ALSO)


def pending(state: State) -> Iterator[Question]:
    """Yield what the last answer asks for: which check, at which stage, how something went."""
    if state.pending[:1] == ("which",):
        fits = state.pending[1:]
        yield Question("which", "Which of these do you mean?", choices=fits, enter="none of them")
    elif state.pending[:1] == ("stage",):
        name = state.pending[1]
        says = f"{name}: as it is left, or as it was found?"
        yield Question(f"stage {name}", says, (), (AS_LEFT, AS_FOUND), f"takes {AS_LEFT}", AS_LEFT)
    elif state.pending[:1] == ("removed",):
        yield Question("removed", "What is gone, and how?", ("such as: cut off; cord unplugged",))


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

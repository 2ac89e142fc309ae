"""What is asked of a job before any check: its kind, what is wrong, what decides what it needs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..base.errors import BadText, nearest
from ..jobs.job import BENCH
from ..jobs.sheet.kinds import as_listed, known_kinds, resembles
from ..jobs.sheet.machine_facts import FACTS
from ..jobs.sheet.template_lines import deciding_facts
from ..plugging.host import Catalogue
from .job_question import Question
from .job_state import HEAD, State, asked_of_kind

_OUT = "leaves it out"
_FACTS = {
    "connection": "How is it connected?",
    "energy": "What heats it?",
    "compressor": "What drives its compressor?",
    "refrigerant": "Which refrigerant is in it, by its plate?",
}
_ALSO = {  # what people say of a connection
    **dict.fromkeys(("plug", "plugged", "cord", "plugin"), "cord-connected"),
    **dict.fromkeys(("wired", "hardwired", "fixed"), "hard-wired"),
}
_NOT_KNOWN = "not known: then all is asked for"


def questions(state: State, catalogue: Catalogue, today: str) -> Iterator[Question]:
    """Yield what is to be asked of the job itself and has no answer."""
    if state.is_past(HEAD):
        return
    for question in _all(state, catalogue, today):
        if question.key not in state.job and question.key not in state.passed:
            yield question


def take(state: State, catalogue: Catalogue, question: Question, values: Sequence[str]) -> None:
    """Take an answer; raises BadText for a kind that there is not."""
    if not values:
        state.passed.add(question.key)
    elif question.key == "kind":
        state.job["kind"] = _kind(values[0], catalogue)
    else:
        state.job[question.key] = values[0]


def is_of_head(question: Question) -> bool:
    """Whether a question is one of these."""
    return question.key in ("kind", "title", "machine", "technician", "date", *FACTS)


def _all(state: State, catalogue: Catalogue, today: str) -> Iterator[Question]:
    kinds = asked_of_kind(catalogue)
    yield Question("kind", "What kind of machine is it?", choices=kinds, free=True)
    yield Question("title", "What is wrong, in a few words?")
    if state.kind != BENCH:
        yield Question("machine", "Which machine: make, type, volts?", enter=_OUT)
    yield Question("technician", "Who does the work?", enter=_OUT)
    if today:
        yield Question("date", "On which day?", enter=f"takes {today}", default=today)
    for key in deciding_facts(state.kind) if state.kind != BENCH else ():
        said = _FACTS[key]
        free = key == "refrigerant"
        also = _ALSO if key == "connection" else {}
        notes = ("or as the plate has it, such as R-134a",) if free else ()
        yield Question(key, said, notes, FACTS[key], enter=_NOT_KNOWN, free=free, also=also)


def _kind(said: str, catalogue: Catalogue) -> str:
    known = known_kinds(catalogue)
    kind = as_listed(said, known)
    if kind in known:
        return kind
    near = resembles(said) or nearest(said, known)
    would_do = f"did you mean {near}? Else type other" if near else "type other"
    raise BadText(f"there is no kind {said!r}", would_do)

"""What a person confirms, each line at the step of the work before what it protects."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..jobs.checks import AS_LEFT, NO, NOT_APPLICABLE, STEPS, YES
from ..jobs.sheet.confirmed import NEVER, is_answered, lines_of, reasons_left
from ..jobs.sheet.machine_facts import Subject, holds
from .job_question import Question
from .job_state import State, stage_of
from .job_work import LATER

_OF = "confirmed "


def questions(state: State, step: str) -> Iterator[Question]:
    """Yield the lines that are confirmed at a step of the work; at the end, all that are open."""
    made = [str(c.get("calculation")) for c in state.checks]
    left = [str(c.get("calculation")) for c in state.checks if stage_of(c) == AS_LEFT]
    said = state.sheet.get("confirmed", {})
    for line in lines_of(state.kind):
        own = line.step if line.step in STEPS else ""
        if step not in ("", own) or not holds(line.when, state.facts):
            continue
        reasons = reasons_left(line, Subject("", state.kind, state.facts), made, left)
        if not line.reasons and line.may_not_apply != NEVER:
            reasons = [NOT_APPLICABLE]
        question = Question(
            f"{_OF}{line.key}",
            f"{line.says}?",
            (line.why,) if line.why else (),
            [YES, NO, *reasons],
            LATER,
            step=step or "confirm",
            free=True,
        )
        if not is_answered(said.get(line.key, "")) and _passed(question) not in state.passed:
            yield question


def is_of_these(question: Question) -> bool:
    """Whether a question is one of these."""
    return question.key.startswith(_OF)


def take(state: State, question: Question, values: Sequence[str]) -> None:
    """Take an answer; what is left for later is asked again at the end."""
    if not values or values[0].casefold() == LATER:
        state.passed.add(_passed(question))
        return
    bare = (YES, NO, NOT_APPLICABLE)
    listed = values[0] in question.choices and values[0] not in bare
    said = f"{NOT_APPLICABLE}: {values[0]}" if listed else values[0]
    state.sheet.setdefault("confirmed", {})[question.key.removeprefix(_OF)] = said


def _passed(question: Question) -> str:
    return f"{question.key}, {question.step}"

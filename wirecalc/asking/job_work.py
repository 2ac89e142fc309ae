"""What is asked of a job in the order of the work: which checks were made, and why one was not."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from ..jobs.checks import AS_FOUND, AS_LEFT
from ..jobs.job import Job
from ..jobs.sheet.kinds import UsualCheck, expected, required_of_all
from ..jobs.sheet.machine_facts import deciding, holds
from ..plugging.host import Catalogue
from ..said.verdicts import Verdict
from .job_question import Question
from .job_state import State, is_check, stage_of

NOW, LATER, NOT_TESTED, NOT_HERE = "do it now", "later", "not tested", "does not apply"
AS_IT_WAS = "as it was found: nothing was changed"
NO_STEP = "at no step"
_OUTLET = "outlet"  # it is read before the plug goes in
_NONE = "none of them"


def questions(
    state: State, rows: Sequence[UsualCheck], step: str, job: Callable[[], Job | None]
) -> Iterator[Question]:
    """Yield what is to be asked of a step: what must be checked, and what else was.

    `job` returns what the sheet comes to.
    """
    groups = _groups(state, rows)
    for key, group in groups.items():
        if (group[0].step or NO_STEP) == step and _is_open(state, key, group):
            yield _needed(state, key, group, job)
    left = list(_optional(state, rows, groups, step)) if not state.is_past(step) else []
    if left:
        labels = [_label(row) for row in left]
        says = "Which of these do you check, or did?"
        about = tuple(f"{label}: {row.why}" for label, row in zip(labels, left, strict=True))
        yield Question(f"step {step}", says, about, labels, _NONE, "", step, several=True)


def is_first(entry: Mapping[str, Any]) -> bool:
    """Whether a check comes before any other of its step."""
    return bool(entry.get("calculation") == _OUTLET)


def goes_before(question: Question) -> bool:
    """Whether a question is of such a check, and comes before those of others that were begun."""
    return question.key.startswith("needed ") and question.key.endswith(f", {_OUTLET}")


def reason(state: State, catalogue: Catalogue) -> Iterator[Question]:
    """Yield the question for a reason that the last answer asks for."""
    if state.pending[:1] in ((NOT_TESTED,), (NOT_HERE,)):
        yield from _reason(state, catalogue)


def reads(state: State, catalogue: Catalogue, entry: Mapping[str, Any]) -> str:
    """Return the reading to ask for first in a check, of several that would do."""
    rows = [r for r in rows_of(state, catalogue) if is_check(entry, r.calculation, r.name, r.stage)]
    return rows[0].reads if rows else ""


def own_of(state: State, catalogue: Catalogue, entry: Mapping[str, Any]) -> Mapping[str, str]:
    """Return the inputs with which the kind of job has a check made."""
    rows = rows_of(state, catalogue)
    same = [row for row in rows if is_check(entry, row.calculation, row.name, stage_of(entry))]
    return next((own for row in same if (own := _own(row))), {})


def is_of_work(question: Question) -> bool:
    """Whether a question is one of these."""
    return question.key.startswith(("step ", "needed ", "why "))


def take(state: State, catalogue: Catalogue, question: Question, values: Sequence[str]) -> None:
    """Take an answer to one of these questions."""
    of, _, what = question.key.partition(" ")
    rows = rows_of(state, catalogue)
    if of == "step":
        for row in rows:
            if (row.step or NO_STEP) == what and _label(row) in values:
                _start(state, row)
        state.mark(what)
        return
    group = _groups(state, rows)[what if of == "needed" else state.pending[1]]
    if of == "why":
        _write_reason(state, group, values[0])
    elif values[0] == LATER:
        state.passed.add(what)
    elif values[0] in (NOT_TESTED, NOT_HERE):
        state.pending = (values[0], what)
    elif values[0] == AS_IT_WAS:
        _found(state, group[0])[0].pop("stage")
    else:
        named = [row for row in group if row.name == values[0]]
        _start(state, (named or group)[0])


def rows_of(state: State, catalogue: Catalogue) -> list[UsualCheck]:
    """Return the checks that this job has: what it must have by what is known of the machine."""
    there = catalogue.calculations
    return [
        row
        for row in expected(state.kind, catalogue)
        if row.calculation in there and (not row.required or holds(row.when, state.facts))
    ]


def _groups(state: State, rows: Sequence[UsualCheck]) -> Mapping[str, list[UsualCheck]]:
    """Return the required checks; of those in one list one is enough."""
    gone = {e.get("calculation") for e in state.entries("does_not_apply")}
    groups: dict[str, list[UsualCheck]] = {}
    for row in rows:
        if row.required and row.calculation not in gone:
            groups.setdefault(row.one_of or f"{row.name}, {row.calculation}", []).append(row)
    of_all = required_of_all()  # last: a start is seen before the volts of the run

    def at(group: tuple[str, list[UsualCheck]]) -> tuple[bool, bool]:
        calculation = group[1][0].calculation
        return calculation != _OUTLET, calculation in of_all

    return dict(sorted(groups.items(), key=at))


def _is_open(state: State, key: str, group: Sequence[UsualCheck]) -> bool:
    """Whether none of a group is on the sheet, nor why it was not made."""
    calculations = {row.calculation for row in group}
    left = [c for c in state.checks if c.get("stage", AS_LEFT) == AS_LEFT]
    said = [*left, *state.entries("not_tested")]
    return key not in state.passed and not calculations & {e.get("calculation") for e in said}


def _optional(
    state: State,
    rows: Sequence[UsualCheck],
    groups: Mapping[str, list[UsualCheck]],
    step: str,
) -> Iterator[UsualCheck]:
    needed = [row for group in groups.values() for row in group]
    for row in rows:
        there = any(is_check(c, row.calculation, row.name, row.stage) for c in state.checks)
        if (row.step or NO_STEP) == step and row not in needed and not there:
            yield row


def _needed(
    state: State, key: str, group: Sequence[UsualCheck], job: Callable[[], Job | None]
) -> Question:
    first = group[0]
    step = first.step or NO_STEP
    if len(group) > 1:
        about = (*(f"{row.name}: {row.why}" for row in group), LATER, NOT_TESTED)
        choices = [*(row.name for row in group), LATER, NOT_TESTED]
        says = f"{key}: one is needed. Which do you do?"
        return Question(f"needed {key}", says, about, choices, LATER, LATER, step)
    decided = deciding(first.when) in state.facts
    about = (f"not needed where the sheet says {first.unless}",) if not decided else ()
    about = about if first.unless else ()
    found = [AS_IT_WAS] if _found(state, first) and _was_good(first, job()) else []
    choices = [NOW, *found, LATER, NOT_TESTED]
    choices += [NOT_HERE] if first.reasons and not decided else []
    says = f"{first.name} is needed: {first.why}."
    return Question(f"needed {key}", says, about, choices, NOW, NOW, step)


def _was_good(row: UsualCheck, job: Job | None) -> bool:
    """Whether a check was kept as found, so that it may stand for how the machine is left."""
    checks = [c for c in job.checks if c.stage == AS_FOUND] if job else []
    same = [c for c in checks if (c.calculation, c.name) == (row.calculation, row.name)]
    return any(c.verdict in (Verdict.PASS, Verdict.MARGINAL) for c in same)


def _found(state: State, row: UsualCheck) -> list[dict[str, Any]]:
    """Return the entry of the same check as found, if it is there."""
    return [c for c in state.checks if is_check(c, row.calculation, row.name, AS_FOUND)]


def _reason(state: State, catalogue: Catalogue) -> Iterator[Question]:
    what, key = state.pending
    group = _groups(state, rows_of(state, catalogue)).get(key)
    if group is None:
        return
    if what == NOT_TESTED:
        says = f"Why was it not tested ({group[0].one_of or group[0].name})?"
        yield Question("why not tested", says, ("The job then stays cannot tell.",))
    else:
        says = f"Why does {group[0].name} not apply? No time and no meter are no such reasons."
        yield Question("why it does not apply", says, (), group[0].reasons, free=True)


def _write_reason(state: State, group: Sequence[UsualCheck], why: str) -> None:
    first, what = group[0], state.pending[0]
    state.pending = ()
    if what == NOT_TESTED:
        entry = {"name": first.one_of or first.name, "calculation": first.calculation}
        entry |= {"step": first.step} if first.step else {}
        state.sheet.setdefault("not_tested", []).append(entry | {"reason": why})
    else:
        entry = {"calculation": first.calculation, "reason": why}
        state.sheet.setdefault("does_not_apply", []).append(entry)


def _start(state: State, row: UsualCheck) -> None:
    state.start(row.calculation, row.name, row.step, row.stage, _own(row))


def _own(row: UsualCheck) -> Mapping[str, str]:
    name, _, value = row.holds_with.partition("=")
    return {name: value} if value and row.required else {}


def _label(row: UsualCheck) -> str:
    return f"{row.name} (as found)" if row.stage == AS_FOUND else row.name

"""What a person confirms when the work is done: the lines of a kind of job, and their answers.

A shop adds lines with a table of its own whose name starts with `job-confirmed-`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ...base.errors import Problem, did_you_mean
from ...engine.one_input import says_unknown
from ...published import tables
from ...rules.requirements import ANY_KIND
from ...said.items import library_caution
from ..checks import ANSWERS, NOT_APPLICABLE, Confirmation
from ..job import BENCH
from .kinds import OTHER, resembles, table_kinds
from .listed_reasons import choice, listed
from .machine_facts import Subject, deciding, holds, unless
from .shape import words_of

TABLE = "job-confirmed"
_RANKS = ("yes", "with a reason", "no")  # of the column may_not_apply, the strictest last
_, WITH_A_REASON, NEVER = _RANKS


class ConfirmationLine(NamedTuple):
    """A line to answer: its kind of job, its key, what a yes says, and when it may not apply."""

    kind: str
    key: str
    says: str
    may_not_apply: str
    reasons: tuple[str, ...]
    applies_with: tuple[str, ...]
    when: str
    why: str
    table: str = TABLE
    step: str = ""

    def stricter_than(self, other: ConfirmationLine) -> bool:
        """Whether fewer machines get round it."""
        return _RANKS.index(self.may_not_apply) > _RANKS.index(other.may_not_apply)


def lines_of(kind: str) -> list[ConfirmationLine]:
    """Return the lines of a kind of job: its own come before those of every machine."""
    if kind == BENCH:
        return []
    own = kind if kind in table_kinds() else resembles(kind)
    order = [ANY_KIND, *([] if own == kind else [OTHER]), own or OTHER]
    ours = [line for line in _all_lines() if line.kind in order]
    ours.sort(key=lambda line: (line.table != TABLE, order.index(line.kind)))
    found: dict[str, ConfirmationLine] = {}
    for line in ours:
        if line.table == TABLE or line.key not in found:
            found[line.key] = line
        elif line.stricter_than(found[line.key]):  # a shop only tightens
            found[line.key] = found[line.key]._replace(may_not_apply=line.may_not_apply)
    return list(found.values())


def stops(kind: str, facts: Mapping[str, str]) -> list[str]:
    """Return what is to be known of a machine of this kind before anything else."""
    first = [line.why for line in lines_of(kind) if line.why.startswith("STOP")]
    for row in tables.load("job-stops").where(kind=kind):
        caution = library_caution(row.text("caution"))
        if caution is not None and holds(row.text("when"), facts):
            first.append(f"STOP: {caution.when}: {caution.text}")
    return first


def read(
    said: Mapping[str, Any], subject: Subject, tested: Iterable[str], problems: list[Problem]
) -> Iterator[Confirmation]:
    """Yield each line of a machine with its answer; what is wrong goes to `problems`.

    `tested` are the calculations of its checks: after some of them a line always applies.
    """
    lines = lines_of(subject.kind)
    known = {line.key: line for line in (*_all_lines(), *lines)}
    of = f"machine {subject.machine}: confirmed" if subject.machine else "confirmed"
    for key in said:
        if key not in known:
            wrong = "nothing of that name is confirmed"
            problems.append(Problem(f"{of}: {key}", wrong, did_you_mean(key, sorted(known))))
    asked = [x.key for x in lines if holds(x.when, subject.facts)]
    for key in dict.fromkeys([*asked, *(k for k in said if k in known)]):
        line = known[key]
        answer, reason = _answer(said.get(key, ""))
        refused = _wrong(said.get(key, ""), (answer, reason), line, _applies(line, subject, tested))
        if refused is not None:
            problems.append(refused._replace(name=f"{of}: {key}"))
        yield Confirmation(key, line.says, answer, reason, subject.machine, line.why)


def is_answered(said: object) -> bool:
    """Whether what a sheet says of a line is an answer."""
    return bool(_answer(said)[0])


def reasons_left(
    line: ConfirmationLine, subject: Subject, made: Iterable[str], left: Iterable[str]
) -> Sequence[str]:
    """Return the reasons for which a line may not apply to a machine, as far as its sheet goes.

    `made` are the calculations of its checks, `left` those of them as it is left. Where one of
    them takes it open, "not opened" is no reason.
    """
    if line.may_not_apply == NEVER or _applies(line, subject, left):
        return ()
    opening = {
        c for one in lines_of(subject.kind) if _closed(one.reasons) for c in one.applies_with
    }
    closed = _closed(line.reasons) if opening & set(made) else ()
    return [reason for reason in line.reasons if reason not in closed]


def _closed(reasons: Sequence[str]) -> Sequence[str]:
    return [reason for reason in reasons if "not opened" in reason]


def _answer(said: object) -> tuple[str, str]:
    """Return an answer and its reason; no answer for what is none."""
    words = words_of(said)
    head, _, reason = (part.strip() for part in words.partition(":"))
    answer = " ".join(head.casefold().split())
    return (answer, reason) if answer in ANSWERS else ("", "")


def _applies(line: ConfirmationLine, subject: Subject, tested: Iterable[str]) -> str:
    """Say what on the sheet a line applies by; empty where nothing there says so."""
    if because := sorted(set(tested) & set(line.applies_with)):
        return f"by the sheet's own check: {', '.join(because)}"
    fact = deciding(line.when)
    if fact in subject.facts and holds(line.when, subject.facts):
        return f"the sheet says {fact} = {subject.facts[fact]}"
    return ""


def _wrong(
    said: object, answered: tuple[str, str], line: ConfirmationLine, applies: str
) -> Problem | None:
    """Return what is wrong with an answer; `applies` says by what the line applies."""
    answer, reason = answered
    if not answer:
        if words_of(said) == "" or says_unknown(said):
            return None
        return Problem("", f"{words_of(said)!r} is no answer", f"write {_choices(line)}")
    if answer != NOT_APPLICABLE:
        return None
    if line.may_not_apply == NEVER:
        return Problem("", f"it always applies: {line.why}", "write yes or no")
    if applies:
        return Problem("", f"it applies, {applies}", "write yes or no")
    if (line.may_not_apply == WITH_A_REASON or reason) and not listed(reason, line.reasons):
        wrong = f"{reason!r} is no reason for it" if reason else "it says no reason"
        return Problem("", wrong, f"write {_choices(line)}, more behind a comma")
    return None


def choices(key: str, kind: str) -> str:
    """Say what may be answered to a line of a kind of job."""
    line = next((line for line in lines_of(kind) if line.key == key), None)
    if line is None:
        return "yes or no"
    asked_of = unless(line.when)
    return (
        f"{_choices(line)}; not asked where the sheet says {asked_of}"
        if asked_of
        else _choices(line)
    )


def _choices(line: ConfirmationLine) -> str:
    if line.may_not_apply == NEVER:
        return "yes or no"
    bare = [] if line.may_not_apply == WITH_A_REASON else [NOT_APPLICABLE]
    return f"yes, no or {choice([*bare, *(f'{NOT_APPLICABLE}: {r}' for r in line.reasons)])}"


def _all_lines() -> Iterator[ConfirmationLine]:
    named = (n for n in tables.names() if n == TABLE or n.startswith(f"{TABLE}-"))
    for row in (row for name in named for row in tables.load(name).rows):
        may = row.text("may_not_apply")
        reasons = tuple(filter(None, row.printed.get("reasons", "").split("; ")))
        if may not in _RANKS or (may == WITH_A_REASON and not reasons):
            may = NEVER
        yield ConfirmationLine(
            row.text("kind"),
            row.text("confirmation"),
            row.text("says"),
            may,
            reasons,
            tuple(row.text("applies_with").split()),
            row.text("when"),
            row.text("why"),
            row.table,
            row.printed.get("step", ""),
        )

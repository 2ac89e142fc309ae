"""What does not apply to a machine: said on the sheet with a reason, or by what it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ...base.errors import Problem, did_you_mean
from ...engine.reserved import DOES_NOT_APPLY_KEYS
from ...plugging.host import Catalogue
from ..checks import AS_LEFT, DoesNotApply, NotTested
from .kinds import UsualCheck, usual
from .listed_reasons import choice, listed, no_reason
from .machine_facts import Subject, deciding, holds
from .plan import Check
from .shape import place_of, words_of

_INSTEAD = "write it under [[not_tested]] with that reason: the job then stays open"


class Sheet(NamedTuple):
    """What an entry is held against."""

    subjects: Sequence[Subject]
    planned: Sequence[Check]
    not_tested: Sequence[NotTested]
    catalogue: Catalogue


def read(
    entries: Sequence[Mapping[str, Any]], sheet: Sheet, problems: list[Problem]
) -> list[DoesNotApply]:
    """Read the entries of a sheet; what is wrong goes to `problems`."""
    found: list[DoesNotApply] = []
    for number, raw in enumerate(entries, start=1):
        named, reason = (words_of(raw.get(key, "")) for key in ("calculation", "reason"))
        label = f"does_not_apply {named or number}"
        before = len(problems)
        problems += [
            Problem(
                f"{label}: {k}", "an entry has no such key", did_you_mean(k, DOES_NOT_APPLY_KEYS)
            )
            for k in raw
            if k not in DOES_NOT_APPLY_KEYS
        ]
        if named not in sheet.catalogue.calculations:
            wrong = f"there is no calculation {named!r}" if named else "names no calculation"
            problems.append(Problem(label, wrong, sheet.catalogue.would_do(named)))
        if not reason:
            would_do = "write reason: what the machine is, or is without"
            problems.append(Problem(f"{label}: reason", "it says no reason", would_do))
        names = [s.machine for s in sheet.subjects if s.machine]
        place = place_of({"machine": raw.get("machine", "")}, label, names, problems)
        if any((e.calculation, e.machine) == (named, place.machine) for e in found):
            problems.append(Problem(label, "stands there twice", "take one out"))
        if len(problems) == before:
            entry = DoesNotApply(named, named, reason, place.machine)
            problems += _against(entry, label, sheet)
            found.append(_named(entry, sheet.subjects))
    return found


def by_facts(subject: Subject) -> Iterator[DoesNotApply]:
    """Yield the required checks that a machine need not have, since it is not of that kind."""
    for check in usual(subject.kind):
        if check.required and not holds(check.when, subject.facts):
            fact = deciding(check.when)
            reason = f"the sheet says {fact} = {subject.facts[fact]}"
            yield DoesNotApply(check.name, check.calculation, reason, subject.machine)


def _against(entry: DoesNotApply, label: str, sheet: Sheet) -> Iterator[Problem]:
    """Yield what on a sheet says that it does apply."""
    of_machine = [c for c in sheet.planned if c.place.machine == entry.machine]
    ours = [s for s in sheet.subjects if s.machine == entry.machine]
    binding = [(s, row) for s in ours for row in _rows(s, entry) if row.required]
    for subject, row in binding:
        if wrong := _no_reason_for(row, entry.reason, subject):
            yield Problem(f"{label}{wrong.name}", wrong.wrong, wrong.would_do)
            return
        for check in of_machine:
            if said := _says_so(check, row.applies_where):
                yield Problem(label, f"check {check.name} says {said}: it applies", _INSTEAD)
                return
    if not binding and (words := no_reason(entry.reason)):
        yield Problem(f"{label}: reason", words, _INSTEAD)
    if any(c.calculation.name == entry.calculation for c in of_machine):
        yield Problem(label, "the sheet has a check of it", "take one of them out")
    if any(
        (n.calculation, n.machine) == (entry.calculation, entry.machine) for n in sheet.not_tested
    ):
        yield Problem(label, "it stands under [[not_tested]] too", "take one of them out")


def _no_reason_for(row: UsualCheck, said: str, subject: Subject) -> Problem | None:
    """Return what is wrong with a reason for a check that a machine must have."""
    if not holds(row.when, subject.facts):
        return None
    fact = deciding(row.when)
    if fact in subject.facts:
        wrong = f"it applies: the sheet says {fact} = {subject.facts[fact]}"
        return Problem("", wrong, _INSTEAD)
    if not row.reasons and row.unless:
        return Problem("", "which machine it is decides", f"write {row.unless} in its section")
    if not row.reasons:
        instead = f"leave it out: {row.one_of} will do" if row.one_of else _INSTEAD
        return Problem("", "every machine has it", instead)
    if listed(said, row.reasons):
        return None
    may = choice(row.reasons) + (f", or {row.unless} in its section" if row.unless else "")
    would_do = f"the reasons are {may}, more behind a comma; else {_INSTEAD}"
    return Problem(": reason", f"{said!r} is no reason why it does not apply", would_do)


def _rows(subject: Subject, entry: DoesNotApply) -> list[UsualCheck]:
    """Return the rows of a machine's kind that are of a calculation, as left."""
    return [
        c for c in usual(subject.kind) if (c.calculation, c.stage) == (entry.calculation, AS_LEFT)
    ]


def _says_so(check: Check, applies_where: str) -> str:
    """Return the input of a check that says that something applies."""
    for pair in applies_where.split("; "):
        name, _, value = pair.partition("=")
        if value and words_of(check.given.get(name, "")).casefold() == value:
            return f"{name} {value}"
    return ""


def _named(entry: DoesNotApply, subjects: Sequence[Subject]) -> DoesNotApply:
    """Give an entry the name that its check has in the table of kinds."""
    rows = [r for s in subjects if s.machine == entry.machine for r in _rows(s, entry)]
    return entry._replace(name=rows[0].name) if rows else entry

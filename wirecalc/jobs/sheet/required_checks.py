"""What a kind of job must have: by its own table, by the shop's rules, and what of it is not there.

Neither waits for a word of the sheet: what is required and stands nowhere, or under
`[[not_tested]]`, keeps the job open.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from ...rules.requirements import ProvidedRequirement
from ..checks import AS_LEFT, DoesNotApply, JobCheck, NotTested
from .kinds import UsualCheck, table_kinds, usual
from .machine_facts import Subject, holds


def with_required(
    subjects: Sequence[Subject],
    checks: Iterable[JobCheck],
    not_tested: Sequence[NotTested],
    rules: Iterable[ProvidedRequirement],
    known: Iterable[str],
) -> tuple[NotTested, ...]:
    """Return what was not tested with what the rules ask for and is not there; it only tightens.

    `known` are the names of all calculations. An entry of the sheet for such a calculation becomes
    required.
    """
    made = (c for c in checks if not any(_other_part(c, row) for row in _rows_of(c, subjects)))
    left, asking = _left(made), list(rules)
    kinds = {k.casefold() for k in (*table_kinds(), *(k for r in asking for k in r.rule.kinds))}
    found = list(not_tested)
    for subject in subjects:
        for rule in asking:
            if subject.kind.casefold() in kinds or rule.asks(subject.kind):
                missing = _missing(subject, rule, left, set(known))
            else:
                missing = iter([_by_kind(subject, rule)])
            for entry in missing:
                _take(found, entry)
    return tuple(found)


def with_kind(
    subjects: Sequence[Subject],
    checks: Iterable[JobCheck],
    not_tested: Sequence[NotTested],
    waived: Sequence[DoesNotApply],
) -> tuple[NotTested, ...]:
    """Return what was not tested with what the kind of each machine requires and is not there.

    An entry of the sheet for it becomes required. `waived` is what does not apply.
    """
    made = [c for c in checks if c.stage == AS_LEFT]
    found = list(not_tested)
    for subject in subjects:
        gone = {w.calculation for w in waived if w.machine == subject.machine}
        ours = [c for c in made if c.machine == subject.machine]
        for group in _groups(subject, gone):
            lacks = [
                _lacks(c, row) for row in group for c in ours if c.calculation == row.calculation
            ]
            if "" in lacks:
                continue
            of_group = [i for i, n in enumerate(found) if _answers(n, subject.machine, group)]
            for i in of_group:
                instead = tuple(
                    c.calculation for c in group if c.calculation != found[i].calculation
                )
                found[i] = found[i]._replace(required=True, instead=instead)
            if not of_group:
                found.append(_nowhere(subject, group, lacks[0] if lacks else "not on the sheet"))
    return tuple(found)


def _left(checks: Iterable[JobCheck]) -> set[tuple[str, str]]:
    """Return what was judged as left, by machine and calculation; figures alone judge nothing."""
    left = (c for c in checks if c.stage == AS_LEFT)
    return {(c.machine, c.calculation) for c in left if c.finding is None or c.verdict is not None}


def _groups(subject: Subject, gone: set[str]) -> list[list[UsualCheck]]:
    """Return the required checks of a machine; of those in one list one is enough."""
    groups: dict[str, list[UsualCheck]] = {}
    for check in usual(subject.kind):
        if check.required and holds(check.when, subject.facts) and check.calculation not in gone:
            groups.setdefault(check.one_of or f"{check.name}, {check.calculation}", []).append(
                check
            )
    return list(groups.values())


def _answers(entry: NotTested, machine: str, group: Sequence[UsualCheck]) -> bool:
    """Whether an entry of a sheet is of one of these checks: by calculation, or else by name."""
    if entry.machine != machine:
        return False
    if entry.calculation:
        return entry.calculation in {c.calculation for c in group}
    return entry.name.casefold() in {c.name.casefold() for c in group}


def _lacks(check: JobCheck, row: UsualCheck) -> str:
    """Say why a check as left is not the one that a row asks for; empty where it is."""
    if check.finding is None:  # a plugin failed: that counts by itself
        return ""
    if check.verdict is None:
        return "on the sheet it comes to figures only"
    return _other_part(check, row)


def _other_part(check: JobCheck, row: UsualCheck) -> str:
    """Say with what a check was made where that is not with what a row asks; else nothing."""
    name, _, wanted = row.holds_with.partition("=")
    if not wanted or check.finding is None:
        return ""
    said = next((str(i.value) for i in check.finding.inputs if i.name == name), "unknown")
    if said == wanted:
        return ""
    return f'on the sheet it is made with {name} = "{said}" and not "{wanted}"'


def _rows_of(check: JobCheck, subjects: Sequence[Subject]) -> Iterator[UsualCheck]:
    """Yield the required rows that ask a machine for the calculation of a check."""
    for subject in (s for s in subjects if s.machine == check.machine):
        rows = usual(subject.kind)
        yield from (r for r in rows if r.required and r.calculation == check.calculation)


def _nowhere(subject: Subject, group: Sequence[UsualCheck], lacks: str) -> NotTested:
    """Return the entry for what stands nowhere on the sheet, or `lacks` what is asked."""
    first = group[0]
    of = f"job of kind {subject.kind}" if subject.kind in table_kinds() else "machine"
    reason = f"{lacks}, and every {of} needs it: {first.why}"
    if first.unless:
        reason += f"; not needed where the sheet says {first.unless}"
    return NotTested(
        first.one_of or first.name,
        True,
        reason,
        first.step,
        subject.machine,
        first.calculation,
        usual=True,
        instead=tuple(c.calculation for c in group[1:]),
    )


def _by_kind(subject: Subject, rule: ProvidedRequirement) -> NotTested:
    """Return the entry for what a rule might ask of a machine whose kind is not known."""
    none = f"{subject.kind!r} is no kind that is known" if subject.kind else "the sheet names none"
    asked = ", ".join(rule.rule.kinds)
    reason = f"it asks by the kind of job ({asked}), and {none}: write kind"
    name = f"what {rule.said} asks for"
    return NotTested(name, True, reason, machine=subject.machine, rule=rule.said)


def _missing(
    subject: Subject, rule: ProvidedRequirement, left: set[tuple[str, str]], known: set[str]
) -> Iterator[NotTested]:
    machine, kind = subject.machine, subject.kind
    for name in rule.rule.calculations if rule.asks(kind) else ():
        if (machine, name) not in left:
            reason = f"{rule.said} asks for it"
            reason += f" in every job of kind {kind}" if rule.names(kind) else " in every job"
            if name not in known:
                reason += "; no calculation of that name is here"
            yield NotTested(name, True, reason, "", machine, name, rule.said)


def _take(found: list[NotTested], entry: NotTested) -> None:
    """Take an entry in; what the sheet says of the same calculation becomes required."""
    same = [
        i
        for i, n in enumerate(found)
        if entry.calculation and (n.machine, n.calculation) == (entry.machine, entry.calculation)
    ]
    for i in same:
        said = f"{found[i].rule}; {entry.rule}" if found[i].rule else entry.rule
        found[i] = found[i]._replace(required=True, rule=said)
    if not same:
        found.append(entry)

"""What a kind of job must have: what the shop's rules ask for, what is usual for it, and what the
sheet does not test.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from ..checks import AS_LEFT, JobCheck, NotTested
from ..requirements import ANY_KIND, ProvidedRequirement
from .kinds import usual


def with_required(
    kinds: Sequence[tuple[str, str]],
    checks: Iterable[JobCheck],
    not_tested: Sequence[NotTested],
    rules: Iterable[ProvidedRequirement],
    known: Iterable[str],
) -> tuple[NotTested, ...]:
    """Return what was not tested with what the rules ask for and is not there; it only tightens.

    `kinds` has each machine (empty for the job as a whole) with its kind, `known` the names of
    all calculations. An entry of the sheet for such a calculation becomes required.
    """
    left = {(c.machine, c.calculation) for c in checks if c.stage == AS_LEFT}
    found = list(not_tested)
    for machine, kind in kinds:
        for rule in rules:
            for entry in _missing(machine, kind, rule, left, set(known)):
                _take(found, entry)
    return tuple(found)


def with_usual(
    kinds: Sequence[tuple[str, str]],
    checks: Iterable[JobCheck],
    not_tested: Sequence[NotTested],
) -> tuple[NotTested, ...]:
    """Return what was not tested with what every job of the kind has and stands nowhere yet.

    It is named, so that nobody takes it for tested, and is no condition.
    """
    there = {(c.machine, c.calculation) for c in checks if c.stage == AS_LEFT}
    there |= {(n.machine, n.calculation) for n in not_tested}
    found = [
        NotTested(
            check.name,
            False,
            f"usual for a job of kind {kind}, and not on the sheet: {check.why}",
            check.step,
            machine,
            check.calculation,
            usual=True,
        )
        for machine, kind in kinds
        for check in (usual(kind) if kind else ())
        if check.required and (machine, check.calculation) not in there
    ]
    return (*not_tested, *found)


def _missing(
    machine: str,
    kind: str,
    rule: ProvidedRequirement,
    left: set[tuple[str, str]],
    known: set[str],
) -> Iterator[NotTested]:
    if not kind and ANY_KIND not in rule.rule.kinds:
        yield NotTested(
            f"what {rule.said} asks for",
            True,
            f"it asks by the kind of job ({', '.join(rule.rule.kinds)}), and the sheet names "
            "none: write kind",
            machine=machine,
            rule=rule.said,
        )
        return
    if not rule.asks(kind):
        return
    for name in rule.rule.calculations:
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

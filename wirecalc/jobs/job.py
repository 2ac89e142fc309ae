"""A job as it was evaluated: what counts toward its verdict, before and after, the verdicts."""

from __future__ import annotations

import functools
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from ..said.findings import Judged, weakest
from ..said.verdicts import Verdict, worst
from .checks import (
    AS_FOUND,
    AS_LEFT,
    NO,
    NOT_APPLICABLE,
    PROTECTS,
    YES,
    Confirmation,
    DoesNotApply,
    JobCheck,
    Machine,
    NotTested,
)


class Counted(NamedTuple):
    """One thing that counts toward the verdict of a job, and why it has its verdict.

    `check` is the check it comes from, `judged` the criterion that decided; None for one that was
    not tested.
    """

    name: str
    verdict: Verdict
    why: str
    check: JobCheck | None = None
    machine: str = ""
    reason: str = ""  # why it was not tested
    judged: Judged | None = None
    instead: tuple[str, ...] = ()  # what may be tested in its place
    missing: str = ""  # the calculation of what was not tested

    @property
    def protects(self) -> bool:
        """Whether it is of a check that protects a person from a shock."""
        return (self.check.calculation if self.check else self.missing) in PROTECTS

    @property
    def action(self) -> str:
        """What to do next; empty where nothing is known to do, or nothing is to be done."""
        if self.why == MISSING:
            return "test what is missing"
        if self.why == NOTHING:
            return "measure after the work"
        if self.why == UNCONFIRMED:
            return "see to it, and answer it under [confirmed] of the sheet"
        if self.why == DENIED:
            return "put it right before anybody uses the machine"
        if self.judged is None or self.verdict is Verdict.PASS:
            return ""
        if self.why == AGAIN:
            first = f"{self.judged.action}; after that, " if self.judged.action else ""
            return f"{first}check “{self.name}” again, as left, with the same reading"
        return self.judged.action


class BeforeAfter(NamedTuple):
    """The same check as found and as left."""

    found: JobCheck
    left: JobCheck

    @property
    def then(self) -> Judged | None:
        """What decided it as found."""
        return self.found.decided_by

    @property
    def now(self) -> tuple[Judged, ...]:
        """The same criterion as it is left, if it is there, and what decided it as left."""
        left = self.left.finding
        decided = self.left.decided_by
        if left is None or decided is None:
            return ()
        same = [
            c
            for c in left.criteria
            if self.then and (c.criterion.name, c.provider) == _identity(self.then)
        ]
        return tuple(same) if decided in same else (*same, decided)


def _identity(judged: Judged) -> tuple[str, str]:
    return judged.criterion.name, judged.provider


def _folded(words: str) -> str:
    return " ".join(words.casefold().split())


AGAIN = "failed as found, not measured again"
MISSING = "not tested, and required"
NOTHING = "nothing was checked as left"
UNCONFIRMED = "not confirmed"
DENIED = "answered no"
BENCH = "bench"  # the kind of job of which no machine goes back


@dataclass(frozen=True)
class Job:
    """One repair, evaluated as a whole.

    The verdict is that of the checks `as left`, of required checks that were not tested, and of
    what is to be confirmed: a no fails, and what nobody answered can't be told. A
    criterion that failed `as found` and that `as left` neither the same check judges, nor another
    calculation on the same named part, can't be told: it was not measured again; unless what
    failed was removed. Options are shown and never counted, and so is what does not apply. A
    machine has the verdict of what counts of it; the job takes the worst. `remarks` are notes on
    how the sheet was read.
    """

    title: str
    about: Mapping[str, str] = field(default_factory=dict)
    checks: tuple[JobCheck, ...] = ()
    not_tested: tuple[NotTested, ...] = ()
    kind: str = ""
    machines: tuple[Machine, ...] = ()
    confirmed: tuple[Confirmation, ...] = ()
    does_not_apply: tuple[DoesNotApply, ...] = ()
    remarks: tuple[str, ...] = ()

    @functools.cached_property
    def verdict(self) -> Verdict:
        """The verdict of the job."""
        return worst(c.verdict for c in self.counted) or Verdict.CANNOT_TELL

    def verdict_of(self, machine: str) -> Verdict:
        """Return the verdict of one machine, by its name; an only one has the job's."""
        if len(self.machines) == 1:
            return self.verdict
        return worst(c.verdict for c in self.counted_of(machine)) or Verdict.CANNOT_TELL

    @functools.cached_property
    def decided_by(self) -> tuple[Counted, ...]:
        """What decided the verdict, as bad as the worst: what protects a person first."""
        decided = (c for c in self.counted if c.verdict is self.verdict)
        return tuple(sorted(decided, key=lambda c: not c.protects))

    @property
    def reasons(self) -> tuple[str, ...]:
        """What decided the verdict, in words; nothing for a pass."""
        if not self.counted:
            return (NOTHING,)
        if self.verdict is Verdict.PASS:
            return ()
        return tuple(f"{c.name}: {c.why}" for c in self.decided_by)

    @property
    def of_machine(self) -> bool:
        """Whether it is of a machine that somebody will use, and not of a bench or a class."""
        return self.kind != BENCH and bool(self.kind or self.machines or self.about.get("machine"))

    @property
    def has_defect(self) -> bool:
        """Whether a plugin failed on one of the checks."""
        return any(c.defect for c in self.checks)

    @functools.cached_property
    def before_and_after(self) -> tuple[BeforeAfter, ...]:
        """The checks that were made as found and as left."""
        left = {c.same_as: c for c in self.checks if c.stage == AS_LEFT}
        return tuple(
            BeforeAfter(c, left[c.same_as])
            for c in self.checks
            if c.stage == AS_FOUND and c.same_as in left
        )

    @functools.cached_property
    def counted(self) -> tuple[Counted, ...]:
        """Everything that counts toward the verdict."""
        return tuple(self._counted())

    def counted_of(self, machine: str) -> tuple[Counted, ...]:
        """Return what counts toward the verdict of one machine, by its name."""
        if len(self.machines) == 1:
            return self.counted
        return tuple(c for c in self.counted if c.machine == machine)

    def _counted(self) -> Iterator[Counted]:
        for check in self.checks:
            title, of, decided = check.title, check.machine, check.decided_by
            if check.stage == AS_LEFT and check.finding is None:
                yield Counted(title, Verdict.CANNOT_TELL, check.defect, check, of)
            elif check.stage == AS_LEFT and check.verdict is not None:
                why = decided.reason if decided else ""
                yield Counted(title, check.verdict, why, check, of, judged=decided)
            elif check.stage == AS_FOUND and (failed := self._not_again(check)):
                yield Counted(title, Verdict.CANNOT_TELL, AGAIN, check, of, judged=failed)
        for missing in self.not_tested:
            if missing.required:
                of, why, test = missing.machine, missing.reason, missing.calculation
                title, instead = missing.title, missing.instead
                untold = Verdict.CANNOT_TELL
                yield Counted(title, untold, MISSING, None, of, why, None, instead, test)
        yield from self._answered()
        for machine in self.machines if len(self.machines) > 1 else ():
            if not any(c.machine == machine.name and c.verdict for c in self._left()):
                yield Counted(machine.name, Verdict.CANNOT_TELL, NOTHING, None, machine.name)

    def _answered(self) -> Iterator[Counted]:
        for said in self.confirmed:
            if said.answer == NO:
                yield Counted(said.title, Verdict.FAIL, DENIED, machine=said.machine)
            elif said.answer not in (YES, NOT_APPLICABLE):
                yield Counted(said.title, Verdict.CANNOT_TELL, UNCONFIRMED, machine=said.machine)

    def _left(self) -> Iterator[JobCheck]:
        return (c for c in self.checks if c.stage == AS_LEFT)

    @functools.cached_property
    def _judged_as_left(self) -> dict[tuple[str, str, str], set[tuple[str, str]]]:
        """What each check as left judges."""
        found: dict[tuple[str, str, str], set[tuple[str, str]]] = {}
        for check in self._left():
            judged = check.finding.criteria if check.finding else ()
            found.setdefault(check.same_as, set()).update(map(_identity, judged))
        return found

    def _judged_elsewhere(self, found: JobCheck) -> Iterator[tuple[str, str]]:
        """Yield what other calculations judge, as left, on the part that a check as found names."""
        if part := _folded(found.part):
            for check in self._left():
                same = (check.machine, _folded(check.part)) == (found.machine, part)
                if same and check.calculation != found.calculation and check.finding:
                    yield from map(_identity, check.finding.criteria)

    def _not_again(self, found: JobCheck) -> Judged | None:
        """Return the worst of what failed as found and was not judged as left."""
        if found.finding is None or found.removed:
            return None
        again = {*self._judged_as_left.get(found.same_as, ()), *self._judged_elsewhere(found)}
        criteria = found.finding.criteria
        failed = [c for c in criteria if c.verdict is Verdict.FAIL and _identity(c) not in again]
        return weakest(failed)

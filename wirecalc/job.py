"""A job as it was evaluated: checks with their stage and finding, and the verdicts."""

from __future__ import annotations

import functools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from .criteria import Verdict, worst
from .findings import Finding, Judged, weakest

AS_FOUND, OPTION, AS_LEFT = STAGES = ("as found", "option", "as left")
STEPS = (  # of a repair, in the order of the work
    "before leaving",
    "arrival",
    "live readings",
    "isolate",
    "dead tests",
    "parts",
    "wire",
    "joint",
    "prove the joint",
    "power up",
    "return to service",
    "hand over",
    "afterwards",
)


class JobCheck(NamedTuple):
    """One check of a job: its finding, or the defect that kept it from one.

    `machine` is empty for a check of the job as a whole, and in a job of one machine. `tool` and
    `part` say with what and of what it was made.
    """

    name: str
    stage: str
    calculation: str
    finding: Finding | None
    defect: str = ""
    note: str = ""
    step: str = ""
    machine: str = ""
    tool: str = ""
    part: str = ""

    @property
    def verdict(self) -> Verdict | None:
        """The verdict of its finding."""
        return self.finding.verdict if self.finding else None

    @property
    def decided_by(self) -> Judged | None:
        """The criterion that decided its verdict."""
        return self.finding.decided_by if self.finding else None

    @property
    def same_as(self) -> tuple[str, str, str]:
        """What makes two checks the same one: name, calculation and machine."""
        return self.name, self.calculation, self.machine

    @property
    def title(self) -> str:
        """Its name, with its machine where it has one."""
        return f"{self.machine}: {self.name}" if self.machine else self.name


class NotTested(NamedTuple):
    """A check that was not made, and why. `rule` is the house rule that asks for it, if one does.

    One that stands in no sheet, and that only a rule asks for or is usual for the kind of job, has
    no `reason` of a person's; `usual` says that it is the latter.
    """

    name: str
    required: bool
    reason: str
    step: str = ""
    machine: str = ""
    calculation: str = ""
    rule: str = ""
    usual: bool = False

    @property
    def title(self) -> str:
        """Its name, with its machine where it has one."""
        return f"{self.machine}: {self.name}" if self.machine else self.name


class Machine(NamedTuple):
    """One appliance of a job: its name, its kind, and what else the sheet says of it."""

    name: str
    kind: str = ""
    about: Mapping[str, str] = {}


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

    @property
    def action(self) -> str:
        """What to do next; empty where nothing is known to do, or nothing is to be done."""
        if self.why == MISSING:
            return "test what is missing"
        if self.why == NOTHING:
            return "measure after the work"
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


AGAIN = "failed as found, not measured again"
MISSING = "not tested, and required"
NOTHING = "nothing was checked as left"


@dataclass(frozen=True)
class Job:
    """One repair, evaluated as a whole.

    The verdict is that of the checks `as left` and of required checks that were not tested. A
    criterion that failed `as found` and that the same check `as left` does not judge can't be
    told: it was not measured again. Options are shown and never counted. A machine has the
    verdict of what counts of it; the job takes the worst.
    """

    title: str
    about: Mapping[str, str] = field(default_factory=dict)
    checks: tuple[JobCheck, ...] = ()
    not_tested: tuple[NotTested, ...] = ()
    kind: str = ""
    machines: tuple[Machine, ...] = ()

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
        """What decided the verdict: everything that is as bad as the worst."""
        return tuple(c for c in self.counted if c.verdict is self.verdict)

    @property
    def reasons(self) -> tuple[str, ...]:
        """What decided the verdict, in words; nothing for a pass."""
        if not self.counted:
            return (NOTHING,)
        if self.verdict is Verdict.PASS:
            return ()
        return tuple(f"{c.name}: {c.why}" for c in self.decided_by)

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
                yield Counted(
                    missing.title,
                    Verdict.CANNOT_TELL,
                    MISSING,
                    None,
                    missing.machine,
                    missing.reason,
                )
        for machine in self.machines if len(self.machines) > 1 else ():
            if not any(c.machine == machine.name and c.verdict for c in self._left()):
                yield Counted(machine.name, Verdict.CANNOT_TELL, NOTHING, None, machine.name)

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

    def _not_again(self, found: JobCheck) -> Judged | None:
        """Return the worst of what failed as found and was not judged as left."""
        again = self._judged_as_left.get(found.same_as, ())
        failed = [
            judged
            for judged in (found.finding.criteria if found.finding else ())
            if judged.verdict is Verdict.FAIL and _identity(judged) not in again
        ]
        return weakest(failed)


def by_step(checks: Sequence[JobCheck]) -> list[tuple[str, list[JobCheck]]]:
    """Gather checks by the step of the repair, in its order; what names none comes last."""
    there = [s for s in (*STEPS, "") if any(c.step == s for c in checks)]
    return [(s, [c for c in checks if c.step == s]) for s in there]

"""A job as it was evaluated: checks with their stage and finding, and the job's verdict."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from .criteria import Verdict, worst
from .findings import Finding

AS_FOUND, OPTION, AS_LEFT = STAGES = ("as found", "option", "as left")


class JobCheck(NamedTuple):
    """One check of a job: its finding, or the defect that kept it from one."""

    name: str
    stage: str
    calculation: str
    finding: Finding | None
    defect: str = ""
    note: str = ""

    @property
    def verdict(self) -> Verdict | None:
        """The verdict of its finding."""
        return self.finding.verdict if self.finding else None


class NotTested(NamedTuple):
    """A check that was not made, and why."""

    name: str
    required: bool
    reason: str


class Counted(NamedTuple):
    """One thing that counts toward the verdict of a job, and why it has its verdict.

    `check` is the check it comes from; None for one that was not tested.
    """

    name: str
    verdict: Verdict
    why: str
    check: JobCheck | None = None


AGAIN = "failed as found, not measured again"
MISSING = "not tested, and required"


@dataclass(frozen=True)
class Job:
    """One repair, evaluated as a whole.

    The verdict is that of the checks `as left` and of required checks that were not tested. A
    fail `as found` without a reading `as left` of the same check can't be told: it was not
    measured again. Options are shown and never counted.
    """

    title: str
    about: Mapping[str, str] = field(default_factory=dict)
    checks: tuple[JobCheck, ...] = ()
    not_tested: tuple[NotTested, ...] = ()

    @property
    def verdict(self) -> Verdict:
        """The verdict of the job."""
        return worst(c.verdict for c in self.counted) or Verdict.CANNOT_TELL

    @property
    def decided_by(self) -> tuple[Counted, ...]:
        """What decided the verdict: everything that is as bad as the worst."""
        return tuple(c for c in self.counted if c.verdict is self.verdict)

    @property
    def reasons(self) -> tuple[str, ...]:
        """What decided the verdict, in words; nothing for a pass."""
        if not self.counted:
            return ("nothing was checked as left",)
        if self.verdict is Verdict.PASS:
            return ()
        return tuple(f"{c.name}: {c.why}" for c in self.decided_by)

    @property
    def has_defect(self) -> bool:
        """Whether a plugin failed on one of the checks."""
        return any(c.defect for c in self.checks)

    @property
    def counted(self) -> tuple[Counted, ...]:
        """Everything that counts toward the verdict."""
        return tuple(self._counted())

    def _counted(self) -> Iterator[Counted]:
        again = {(c.name, c.calculation) for c in self.checks if c.stage == AS_LEFT and c.verdict}
        for check in self.checks:
            if check.stage == AS_LEFT and check.finding is None:
                yield Counted(check.name, Verdict.CANNOT_TELL, check.defect, check)
            elif check.stage == AS_LEFT and check.verdict is not None and check.finding:
                decided = check.finding.decided_by
                yield Counted(check.name, check.verdict, decided.reason if decided else "", check)
            elif self._failed_once(check, again):
                yield Counted(check.name, Verdict.CANNOT_TELL, AGAIN, check)
        for missing in self.not_tested:
            if missing.required:
                yield Counted(missing.name, Verdict.CANNOT_TELL, MISSING)

    @staticmethod
    def _failed_once(check: JobCheck, again: set[tuple[str, str]]) -> bool:
        failed = check.stage == AS_FOUND and check.verdict is Verdict.FAIL
        return failed and (check.name, check.calculation) not in again

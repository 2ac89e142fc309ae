"""What a job is made of: machines, checks with stage and step, what was not tested or confirmed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ..said.findings import Finding, Judged
from ..said.verdicts import Verdict

AS_FOUND, OPTION, AS_LEFT = STAGES = ("as found", "option", "as left")
YES, NO, NOT_APPLICABLE = ANSWERS = ("yes", "no", "does not apply")  # to what is confirmed
STEPS = (  # of a repair, in the order of the work
    "before leaving",
    "arrival",
    "isolate",
    "dead tests",
    "live readings",
    "parts",
    "wire",
    "joint",
    "prove the joint",
    "before power",
    "power up",
    "return to service",
    "hand over",
    "afterwards",
)


PROTECTS = ("ground", "insulation", "leakage", "screening", "outlet", "discharge")  # from a shock


class JobCheck(NamedTuple):
    """One check of a job: its finding, or the defect that kept it from one.

    `machine` is empty for a check of the job as a whole, and in a job of one machine. `tool` and
    `part` say with what and of what it was made; `removed` says how what was found was taken away
    altogether, so that nothing of it is left to measure.
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
    removed: str = ""

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

    @property
    def heading(self) -> str:
        """Its title, with its stage unless it is as left."""
        if self.stage == OPTION:
            return f"{self.title}, {self.stage}, not counted"
        if self.stage == AS_FOUND:
            return f"{self.title}, {self.stage}{', removed since' if self.removed else ''}"
        return self.title


class NotTested(NamedTuple):
    """A check that was not made, and why. `rule` is the house rule that asks for it, if one does.

    One that stands in no sheet, and that only a rule or the kind of job asks for, has no `reason`
    of a person's; `usual` says that it is the latter. `instead` are calculations that would do
    too.
    """

    name: str
    required: bool
    reason: str
    step: str = ""
    machine: str = ""
    calculation: str = ""
    rule: str = ""
    usual: bool = False
    instead: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """Its name, with its machine where it has one."""
        return f"{self.machine}: {self.name}" if self.machine else self.name


class DoesNotApply(NamedTuple):
    """A check that a machine cannot have, and why: it is shown, and does not count."""

    name: str
    calculation: str
    reason: str
    machine: str = ""

    @property
    def title(self) -> str:
        """Its name, with its machine where it has one."""
        return f"{self.machine}: {self.name}" if self.machine else self.name


class Confirmation(NamedTuple):
    """What a person answers for when the work is done; `answer` is empty where nobody did."""

    key: str
    says: str
    answer: str = ""
    reason: str = ""
    machine: str = ""
    why: str = ""

    @property
    def title(self) -> str:
        """What it says, with its machine where it has one."""
        return f"{self.machine}: {self.says}" if self.machine else self.says

    @property
    def said(self) -> str:
        """The answer in words."""
        said = self.answer or "not confirmed"
        return f"{said}: {self.reason}" if self.reason else said


class Machine(NamedTuple):
    """One appliance of a job: its name, its kind, and what else the sheet says of it."""

    name: str
    kind: str = ""
    about: Mapping[str, str] = {}


def by_step(checks: Sequence[JobCheck]) -> list[tuple[str, list[JobCheck]]]:
    """Gather checks by the step of the repair, in its order; what names none comes last."""
    there = [s for s in (*STEPS, "") if any(c.step == s for c in checks)]
    return [(s, [c for c in checks if c.step == s]) for s in there]


def house_rules(checks: Sequence[JobCheck]) -> tuple[str, ...]:
    """Return the rules files, plugins and tables of the shop by whose rules any was judged."""
    return tuple(sorted({n for c in checks if c.finding for n in c.finding.house_rules}))

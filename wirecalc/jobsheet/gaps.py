"""What is missing on a job sheet: readings, checks, and what failed and was not measured again."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

from ..job import AGAIN, AS_LEFT, NOTHING, Job, JobCheck
from .shape import as_toml


class MissingReading(NamedTuple):
    """A reading that a check needs: the sheet leaves it out, or says that it is unknown.

    `counts` is False for one as found or of an option: the verdict does not wait for it.
    """

    check: JobCheck
    input: str
    said_unknown: bool
    measure: str

    @property
    def counts(self) -> bool:
        """Whether the verdict of the job waits for it."""
        return self.check.stage == AS_LEFT


class MissingCheck(NamedTuple):
    """A check that is not made: asked for by a rule, usual for the kind, or said to be required."""

    name: str
    why: str
    required: bool
    calculation: str = ""  # that would answer it, where one is known
    machine: str = ""

    @property
    def lines(self) -> tuple[str, ...]:
        """The lines of a sheet that add it; none where no calculation is known."""
        if not self.calculation:
            return ()
        keys = {"calculation": self.calculation, "machine": self.machine}
        return ("[[check]]", *(f"{k} = {as_toml(v)}" for k, v in keys.items() if v))


class Gaps(NamedTuple):
    """What is missing on a sheet; `counts` says whether anything of it keeps the job open."""

    readings: tuple[MissingReading, ...]
    checks: tuple[MissingCheck, ...]
    again: tuple[JobCheck, ...]

    @property
    def counts(self) -> bool:
        """Whether the sheet is not complete."""
        return bool(
            self.again
            or any(r.counts for r in self.readings)
            or any(c.required for c in self.checks)
        )


def readings_missing(check: JobCheck) -> Iterator[MissingReading]:
    """Yield the readings that a check needs and does not have."""
    if check.finding is None:
        return
    said = {i.name for i in check.finding.inputs if i.origin == "unknown" and i.given is not None}
    seen: set[str] = set()
    for judged in check.finding.criteria:
        for name in judged.criterion.needs:
            if name not in seen:
                seen.add(name)
                yield MissingReading(check, name, name in said, judged.action)


def gaps(job: Job) -> Gaps:
    """Return what is missing for a job to be judged: readings, checks, and second readings."""
    readings = tuple(r for c in job.checks for r in readings_missing(c))
    again = tuple(c.check for c in job.counted if c.why == AGAIN and c.check is not None)
    checks = [
        MissingCheck(
            n.title,
            f"{n.calculation}, {n.reason}" if n.usual else n.reason,
            n.usual or n.required,
            n.calculation,
            n.machine,
        )
        for n in job.not_tested
    ]
    checks += [MissingCheck(c.name, NOTHING, True) for c in job.counted if c.why == NOTHING]
    checks += [
        MissingCheck(c.title, c.defect, True) for c in job.checks if c.defect and c.stage == AS_LEFT
    ]
    if not job.counted:
        checks.append(MissingCheck("the work", NOTHING, True))
    return Gaps(readings, tuple(checks), again)


def reading_object(reading: MissingReading) -> dict[str, Any]:
    """Return a missing reading as a JSON object."""
    check = reading.check
    return {
        "check": check.name,
        "machine": check.machine,
        "stage": check.stage,
        "step": check.step,
        "calculation": check.calculation,
        "input": reading.input,
        "said_unknown": reading.said_unknown,
        "counts": reading.counts,
        "measure": reading.measure,
    }

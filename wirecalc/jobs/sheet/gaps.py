"""What is missing on a job sheet: readings, checks, and what failed and was not measured again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from ...plugging.host import Catalogue
from ...typed.kinds import Kind
from ..checks import AS_LEFT, Confirmation, JobCheck, NotTested
from ..job import AGAIN, NOTHING, Job
from .confirmed import choices
from .missing_inputs import asked, asked_later, runner
from .plan import Check, on_plate, plan
from .shape import as_toml


class MissingReading(NamedTuple):
    """A reading that a check needs: the sheet leaves it out, or says that it is unknown.

    `counts` is False for one as found or of an option: the verdict does not wait for it.
    """

    check: JobCheck
    input: str
    said_unknown: bool
    measure: str
    what: str = ""  # the input's own text and span
    where: str = ""  # on the sheet it is written
    later: bool = False  # asked for once what is asked for now is there

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


class MissingAnswer(NamedTuple):
    """A line that nobody has answered, and what may be answered, under which heading."""

    line: Confirmation
    choices: str
    heading: str


class Gaps(NamedTuple):
    """What is missing on a sheet; `counts` says whether anything of it keeps the job open."""

    readings: tuple[MissingReading, ...]
    checks: tuple[MissingCheck, ...]
    again: tuple[JobCheck, ...]
    confirmations: tuple[MissingAnswer, ...] = ()

    @property
    def counts(self) -> bool:
        """Whether the sheet is not complete."""
        return bool(
            self.again
            or self.confirmations
            or any(r.counts for r in self.readings)
            or any(c.required for c in self.checks)
        )


def readings_missing(check: JobCheck) -> Iterator[MissingReading]:
    """Yield the readings that a check needs and does not have."""
    if check.finding is None:
        return
    said = {i.name for i in check.finding.inputs if i.origin == "unknown" and i.given is not None}
    for name, how in asked(check.finding).items():
        yield MissingReading(check, name, name in said, how)


def gaps(job: Job, sheet: Mapping[str, Any], catalogue: Catalogue, folder: Path = Path()) -> Gaps:
    """Return what is missing for a job to be judged: readings, checks, and second readings.

    `sheet` is what the job was evaluated from, in a folder, with a catalogue.
    """
    planned = plan(sheet, catalogue, [m.name for m in job.machines], [])
    readings = tuple(
        found
        for check, of_sheet in zip(job.checks, planned, strict=True)
        for found in _to_take(check, of_sheet, sheet, catalogue, folder)
    )
    again = tuple(c.check for c in job.counted if c.why == AGAIN and c.check is not None)
    checks = [
        MissingCheck(
            n.title,
            _why(n),
            n.usual or n.required,
            n.calculation if n.calculation in catalogue.calculations else "",
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
    return Gaps(readings, tuple(checks), again, tuple(_answers_missing(job)))


def _why(entry: NotTested) -> str:
    """Say why a check is missing, and what would do in its place."""
    why = f"{entry.calculation}, {entry.reason}" if entry.usual else entry.reason
    return f"{why}; {' or '.join(entry.instead)} will do too" if entry.instead else why


def _answers_missing(job: Job) -> Iterator[MissingAnswer]:
    kinds = {m.name: m.kind for m in job.machines}
    heading = "[machine.confirmed]" if len(job.machines) > 1 else "[confirmed]"
    only = job.machines[0].kind if len(job.machines) == 1 else job.kind
    for line in job.confirmed:
        if not line.answer:
            kind = kinds.get(line.machine, only)
            yield MissingAnswer(line, choices(line.key, kind), heading)


def _to_take(
    check: JobCheck, planned: Check, sheet: Mapping[str, Any], catalogue: Catalogue, folder: Path
) -> Iterator[MissingReading]:
    """Yield the readings that a check needs, and those that it will ask for after them."""
    calc = planned.calculation
    found = list(readings_missing(check))
    given = {**planned.given, **planned.files(folder)}
    later = asked_later(calc, runner(catalogue, calc), given) if found else ()
    found += [MissingReading(check, name, False, how, later=True) for name, how in later]
    kinds = {i.name: i.kind for i in calc.inputs}
    for reading in found:
        kind = kinds.get(reading.input)
        if kind is None:  # a plugin asks for what is no input
            yield reading
            continue
        where = 'in place of "unknown"' if reading.said_unknown else _where(kind, planned, sheet)
        yield reading._replace(what=f"{kind.text} ({kind.span})", where=where)


def _where(kind: Kind, planned: Check, sheet: Mapping[str, Any]) -> str:
    """Say where on the sheet an input of a check is to be written."""
    machines = sheet.get("machine", [])
    if on_plate(kind) and len(machines) <= 1:
        own = any(machine.get("nameplate") for machine in machines)
        return "in [machine.nameplate]" if own else "in [nameplate]"
    if on_plate(kind) and planned.place.machine:
        return f"in [machine.nameplate] of {planned.place.machine}"
    return f"in [readings.{planned.uses}]" if planned.uses else "in the check"


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

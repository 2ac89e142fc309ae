"""What is missing on a job sheet, as text or as one JSON object ("wirecalc.job-gaps/1")."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from ..jobs.checks import JobCheck
from ..jobs.job import Job
from ..jobs.sheet.gaps import Gaps, MissingCheck, MissingReading, reading_object
from .layout import block, visible, wrap

_AGAIN = (
    'it failed as found; check it again, as left, or write removed = "..." in it if what failed '
    "was taken away"
)


def gaps_text(job: Job, found: Gaps) -> str:
    """Return what is missing on a job sheet as text; no verdict of a check stands in it."""
    word = "MISSING" if found.counts else "NOTHING MISSING"
    parts = wrap(f"SHEET: {word}  {job.title}", indent="     ")
    now = [r for r in found.readings if r.counts]
    parts += block("Readings to take", _readings(now))
    needed = [c for c in found.checks if c.required]
    again = [f"{c.title}: {_AGAIN}" for c in found.again]
    parts += block("Checks to make", (*_listed(again), *_to_make(needed)))
    answers = (
        f"{a.line.title}: in {a.heading}, {a.line.key} = {a.choices}" for a in found.confirmations
    )
    parts += block("Lines to answer when the work is done", _listed(list(answers)))
    rest = (f"{c.name}: {c.why}" for c in found.checks if not c.required)
    parts += block("Not tested, and not required", _listed(list(rest)))
    later = [r for r in found.readings if not r.counts]
    parts += block("Not known as found, or of an option: nothing waits for it", _readings(later))
    return "\n".join(parts)


def _listed(texts: list[str]) -> Iterator[str]:
    for text in texts:
        yield from wrap(f"- {text}", indent="  ")


def _to_make(checks: list[MissingCheck]) -> Iterator[str]:
    """Yield the checks that are not made, each with the lines that add it to the sheet."""
    for check in checks:
        yield from _listed([f"{check.name}: {check.why}{'; write' if check.lines else ''}"])
        yield from (f"      {visible(line)}" for line in check.lines)


def _readings(readings: list[MissingReading]) -> Iterator[str]:
    checks = dict.fromkeys(_where(r.check) for r in readings)
    for where in checks:
        yield from wrap(where)
        of_check = [r for r in readings if _where(r.check) == where]
        for (measure, later), group in groupby(of_check, lambda r: (r.measure, r.later)):
            yield from _how(measure, "then " if later else "", list(group))


def _how(measure: str, then: str, readings: list[MissingReading]) -> Iterator[str]:
    """Yield one reading with how it is taken; of several that are found so, each what it is."""
    if len(readings) > 1:
        yield from wrap(f"- {then}{measure}:", "  ", "    ")
    for reading in readings:
        said = "said to be unknown" if reading.said_unknown else "not given"
        start = f"- {then}" if len(readings) == 1 else "- "
        how = measure if len(readings) == 1 else reading.what
        indent = "  " if len(readings) == 1 else "    "
        yield from wrap(
            f"{start}{reading.input}, {said}: {how}{'; ' + reading.where if reading.where else ''}",
            indent,
            f"{indent}  ",
        )


def _where(check: JobCheck) -> str:
    where = f"{check.step}, {check.stage}" if check.step else check.stage
    return f"{check.title} ({where})"


def gaps_object(job: Job, found: Gaps) -> dict[str, Any]:
    """Return what is missing on a job sheet as a JSON object."""
    return {
        "schema": "wirecalc.job-gaps/1",
        "title": job.title,
        "complete": not found.counts,
        "readings": [
            {**reading_object(r), "where": r.where, "later": r.later} for r in found.readings
        ],
        "checks": [
            {
                "name": c.name,
                "required": c.required,
                "reason": c.why,
                "calculation": c.calculation,
                "machine": c.machine,
            }
            for c in found.checks
        ],
        "confirmations": [
            {
                "name": a.line.key,
                "says": a.line.says,
                "machine": a.line.machine,
                "choices": a.choices,
            }
            for a in found.confirmations
        ],
        "not_measured_again": [
            {"name": c.name, "machine": c.machine, "calculation": c.calculation}
            for c in found.again
        ],
    }

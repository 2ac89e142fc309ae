"""A job in a screen: what decided it, what to do, what is not known, the stops. `--full` has all.

It begins with the same lines as the whole text, each number with its source behind it.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..jobs.checks import JobCheck
from ..jobs.job import Job
from ..said.items import Caution
from ..said.verdicts import Verdict
from . import summary
from .job import cautions_of, head
from .layout import wrap
from .short import closing, stops

_INDENT = " " * 6
_MOST_DECIDED = 3  # checks that are told in full
_REST = "All of it, with the sources: `wirecalc job` with this sheet and --full"


def job_short(job: Job, *, says_rest: bool = True) -> str:
    """Return what a person at a terminal acts on; `says_rest`: and where all of it is."""
    parts = [
        *head(job),
        *wrap(summary.says(job), "  "),
        *_lines(job),
        *(line for note in _notes(job) for line in wrap(note, "  ", _INDENT)),
        *stops(_stops(job)),
        *closing(cautions_of(job.checks), _REST if says_rest else ""),
    ]
    return "\n".join(parts)


def _lines(job: Job) -> Iterator[str]:
    """Yield what decided and what to do, of many the first; of the rest only what it is."""
    for line in summary.lines(job, _MOST_DECIDED):
        said = f"{line.said} [{line.source.short}]" if line.source else line.said
        if line.label == "Marginal" and job.verdict is Verdict.FAIL:
            said = "; ".join(c.name for c in job.counted if c.verdict is Verdict.MARGINAL)
        yield from wrap(f"{line.label}  {said}", "  ", _INDENT)


def _notes(job: Job) -> Iterator[str]:
    """Yield what goes with the lines; a stop stands in a line of its own."""
    told = [c.text for c in _remarked(job)]
    for note in summary.notes(job):
        if note != summary.METER and not any(text in note for text in told):
            yield note


def _stops(job: Job) -> list[Caution]:
    """Return the cautions of what somebody works on next, those of the machine itself first."""
    return list(dict.fromkeys([*_remarked(job), *cautions_of(_to_act_on(job))]))


def _remarked(job: Job) -> list[Caution]:
    """Return the cautions that hold for the machine, whatever is done to it."""
    found = cautions_of(job.checks)
    return [c for c in found if any(c.text in remark for remark in job.remarks)]


def _to_act_on(job: Job) -> list[JobCheck]:
    """Return the checks that somebody works on next: what decided, unless that is a pass."""
    if job.verdict is Verdict.PASS:
        return []
    return [c.check for c in job.decided_by if c.check]

"""A job as plain text: the verdict and what to do, the checks in the order of the work, sources."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..jobs.checks import JobCheck, by_step, house_rules
from ..jobs.job import BeforeAfter, Job
from ..said.items import Caution
from ..said.verdicts import Verdict
from . import summary
from .citations import Citations
from .layout import block, labelled, rule, table, wrap
from .text import (
    caution_lines,
    evidence,
    headline,
    house_block,
    not_checked_lines,
    sources_block,
    word,
)

_NO_STEP = "at no step"
_LABEL = 16  # room for what a line of the summary is


def job_text(job: Job, *, working: bool = False) -> str:
    """Return a job as text: a summary, each finding, sources and cautions once, the gaps."""
    steps = by_step(job.checks)
    sources = Citations(c.finding for _, checks in steps for c in checks if c.finding)
    parts = [*head(job), *_summary(job, sources)]
    about = (wrap(f"{label}: {said}", indent="  ") for label, said in summary.about(job))
    parts += block("About", (line for lines in about for line in lines))
    parts += block("Machines", _machines(job))
    parts += block("Checks", _overview(job))
    parts += block("Before and after", _before_and_after(job))
    parts += block("Not tested", _not_tested(job))
    parts += block("Does not apply", _listed(f"{d.title}: {d.reason}" for d in job.does_not_apply))
    parts += block("Confirmed as left", _confirmed(job))
    for _, checks in steps:
        for check in checks:
            parts += _evidence(check, sources, working)
    last = sorted(cautions_of(job.checks), key=lambda c: c.severity == "note")
    parts += [
        "",
        rule(),
        *sources_block(sources)[1:],
        *house_block(house_rules(job.checks)),
        *block("Take care", caution_lines(last)),
    ]
    return "\n".join(parts)


def short_text(job: Job) -> str:
    """Return the verdict of a job, the first number that decided it and what to do next."""
    parts = [*head(job), *wrap(summary.says(job), "  ")]
    for line in summary.lines(job):
        parts += _line(line)
        if line.label == "Next":
            break
    return "\n".join(parts)


def head(job: Job) -> list[str]:
    """Return the first line: the verdict of a job and its title."""
    return wrap(f"JOB: {word(job.verdict)}  {job.title}", indent="     ")


def cautions_of(checks: Iterable[JobCheck]) -> list[Caution]:
    """Return the cautions of some checks, each once."""
    once: dict[str, Caution] = {}
    for check in checks:
        for caution in check.finding.cautions if check.finding else ():
            once.setdefault(caution.key, caution)
    return list(once.values())


def _summary(job: Job, sources: Citations) -> Iterator[str]:
    """Yield what the verdict means, what decided it with its number, and what to do."""
    yield from wrap(summary.says(job), "  ")
    for line in summary.lines(job):
        yield from _line(line, sources.mark(line.source))
    for note in summary.notes(job):
        yield from wrap(note, "  ")


def _line(line: summary.SummaryLine, mark: str = "") -> list[str]:
    return labelled(f"  {line.label}", f"{line.said} {mark}".rstrip(), _LABEL + 2)


def _machines(job: Job) -> list[str]:
    rows = []
    for machine in job.machines:
        verdict = job.verdict_of(machine.name)
        worst = [c for c in job.counted_of(machine.name) if c.verdict is verdict]
        of = worst if verdict is not Verdict.PASS else []
        why = next((summary.decided(c).said for c in of), "")
        said = "; ".join(f"{k} {v}" for k, v in machine.about.items())
        rows.append((machine.name, word(verdict), why or said))
    return table(rows)


def _overview(job: Job) -> Iterator[str]:
    """Yield each check with what decided it; by the step of the repair where steps are given."""
    groups = by_step(job.checks)
    for step, checks in groups:
        if any(named for named, _ in groups):
            yield (step or _NO_STEP).upper()
        for check in checks:
            yield from labelled(f"  {_verdict(check)}", check.heading, 15)
            yield from labelled("    ", _why(check), 15)


def _why(check: JobCheck) -> str:
    return check.decided_by.because if check.decided_by else check.defect or "figures only"


def _before_and_after(job: Job) -> Iterator[str]:
    for pair in job.before_and_after:
        yield from wrap(pair.found.title)
        yield from _pair(pair)


def _pair(pair: BeforeAfter) -> Iterator[str]:
    indent = " " * 21
    found = pair.then.because if pair.then else pair.found.defect or "figures only"
    yield from wrap(f"  found  {_verdict(pair.found):<12}{found}", indent=indent)
    now = [f"{word(j.verdict):<12}{j.because}" for j in pair.now]
    for line in now or [f"{_verdict(pair.left):<12}{pair.left.defect or 'figures only'}"]:
        yield from wrap(f"  left   {line}", indent=indent)


def _verdict(check: JobCheck) -> str:
    return "DEFECT" if check.defect else word(check.verdict)


def _not_tested(job: Job) -> Iterator[str]:
    for missing in job.not_tested:
        required = " (required)" if missing.required else ""
        rule = f" [{missing.rule}]" if missing.rule and missing.rule not in missing.reason else ""
        yield from _listed([f"{missing.title}{required}: {missing.reason}{rule}"])


def _listed(texts: Iterable[str]) -> Iterator[str]:
    for text in texts:
        yield from wrap(f"- {text}", indent="  ")


def _confirmed(job: Job) -> Iterator[str]:
    for line in job.confirmed:
        yield from wrap(f"{line.title}: {line.said}", indent="  ")


def _evidence(check: JobCheck, sources: Citations, working: bool) -> Iterator[str]:
    where = f"{check.step}, {check.stage}" if check.step else check.stage
    yield from ("", rule())
    yield from wrap(f"{check.title} ({where})")
    yield from wrap(check.note)
    for key, said in (("tool", check.tool), ("part", check.part), ("removed", check.removed)):
        yield from wrap(said, f"{key}: ", "      ")
    if check.finding is None:
        yield from wrap(check.defect, "  ")
    else:
        yield from headline(check.finding, sources.mark)
        yield from evidence(check.finding, sources.mark, working=working)
        yield from block("Not checked", not_checked_lines(check.finding.not_checked))

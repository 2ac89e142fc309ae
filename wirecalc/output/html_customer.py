"""The customer's part of a report: machines, before and after, every check on a line, the gaps."""

from __future__ import annotations

from ..jobs.checks import AS_FOUND, AS_LEFT, OPTION, JobCheck, by_step
from ..jobs.job import NOTHING, Job
from ..said.plain_words import told
from .html_building import Element, badge, cell, el, items, table
from .summary import decided

_STAGES = {
    AS_FOUND: "As found, before the work",
    OPTION: "Options, looked at and not counted",
    AS_LEFT: "As left, after the work",
}


def machines(job: Job) -> Element | None:
    """Return each machine with its verdict and what decided it."""
    rows = []
    for machine in job.machines:
        verdict = job.verdict_of(machine.name)
        worst = [c for c in job.counted_of(machine.name) if c.verdict is verdict]
        said = "; ".join(f"{k.replace('_', ' ')} {v}" for k, v in machine.about.items())
        why = next((decided(c).told for c in worst if c.check or c.why), NOTHING)
        rows.append((machine.name, badge(verdict), why, said))
    heads = ("Machine", "Verdict", "Decided by", "What it is")
    return table("Each machine of the job", heads, rows, "machines")


def before_and_after(job: Job) -> Element | None:
    """Return the same check as found and as left, side by side."""
    rows = []
    for pair in job.before_and_after:
        found = told(pair.then) if pair.then else pair.found.defect or "figures only"
        now = [told(judged) for judged in pair.now] or [pair.left.defect or "figures only"]
        rows.append(
            (
                pair.found.title,
                el("span", _badge(pair.found), " ", found),
                el("span", _badge(pair.left), " ", "; ".join(now)),
            )
        )
    heads = ("Check", "As found", "As left")
    return table("The same check before the work and after it", heads, rows, "pairs")


def overview(job: Job) -> Element | None:
    """Return the checks: name, verdict and the number that decided it.

    They stand by the step of the repair where the sheet gives steps, else by stage.
    """
    number = {id(c): n for n, c in enumerate(job.checks, start=1)}
    steps = [(s or "Other checks", found) for s, found in by_step(job.checks)]
    staged = all(not c.step for c in job.checks)
    if staged:
        steps = [(t, [c for c in job.checks if c.stage == s]) for s, t in _STAGES.items()]
    groups = []
    for text, checks in steps:
        rows = [_row(c, number[id(c)]) for c in checks]
        if rows:
            head = el("tr", el("th", text[:1].upper() + text[1:], scope="rowgroup", colspan="3"))
            groups.append(el("tbody", head, *rows))
    if not groups:
        return None
    heads = el("tr", *(el("th", t, scope="col") for t in ("Check", "Verdict", "Decided by")))
    name = "overview" if staged else "overview steps"
    return el("table", el("thead", heads), *groups, class_=name)


def _row(check: JobCheck, number: int) -> Element:
    judged = check.decided_by
    why = told(judged) if judged else check.defect or "figures only"
    link = el("a", check.title, href=f"#check-{number}")
    head = el("th", link, check.heading.removeprefix(check.title), scope="row")
    return el("tr", head, el("td", _badge(check)), cell("td", why))


def _badge(check: JobCheck) -> Element:
    return badge(check.verdict, "DEFECT" if check.defect else "NO VERDICT")


def not_tested(job: Job) -> Element | None:
    """Return what was not tested and why, with the house rule that asks for it."""
    return items(
        f"{n.title}{' (required)' if n.required else ''}: {n.reason}"
        + (f" [{n.rule}]" if n.rule and n.rule not in n.reason else "")
        for n in job.not_tested
    )


def does_not_apply(job: Job) -> Element | None:
    """Return what does not apply to the machine, and why."""
    return items(f"{d.title}: {d.reason}" for d in job.does_not_apply)


def confirmed(job: Job) -> Element | None:
    """Return what a person answered for, line by line."""
    return items(f"{c.title}: {c.said}" for c in job.confirmed)

"""A finding or a job as one page to hand over: a customer's summary, then the evidence.

The first screen holds the verdict, the number that decided it and what to do next. The page is
one file without script; it prints, and it reads on a phone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..jobs.checks import AS_LEFT, JobCheck, by_step, house_rules
from ..jobs.job import Job
from ..said.findings import Finding
from ..said.items import Caution
from ..said.verdicts import Verdict
from ..version import VERSION
from . import html_customer, passed, summary
from .citations import Citations
from .html_building import Element, Inside, badge, el, page, pairs, section
from .html_technician import (
    ReportGaps,
    caution_items,
    check_section,
    cited,
    gathered,
    sources_section,
)
from .layout import begun
from .text import exact

_FINDING_SAYS = {
    Verdict.MARGINAL: "Within every limit that binds, but something here calls for attention.",
    Verdict.CANNOT_TELL: "Neither a pass nor a fail: something is not known well enough.",
    Verdict.FAIL: "Past a limit that binds.",
    None: "Figures only: nothing was given to judge.",
}
_CIRCUIT = ("cord-", "brk-", "gfci-")  # keys of cautions about cord, receptacle and circuit
_EXACT = "A reading given without its meter's error is taken as exact."
_PAPER = (
    "On paper: of a check that passed, its readings, limits and what was not checked; of an "
    "option, its line under What was checked. The rest stands in the file."
)


def finding_page(finding: Finding, question: str, *, working: bool = False) -> str:
    """Return a finding as a page."""
    check = JobCheck(finding.calculation, AS_LEFT, finding.calculation, finding)
    sources = Citations([finding])
    decided = finding.decided_by
    lines = [summary.SummaryLine(begun(a.name), a.text) for a in finding.answers]
    if decided is not None:
        lines = summary.of_finding(decided)
        if decided.verdict is Verdict.PASS and finding.exact:
            lines.append(summary.SummaryLine("Exact", exact(finding.exact, finding.holds)))
    good = finding.verdict is Verdict.PASS
    says = passed.checked([finding]) if good else _FINDING_SAYS[finding.verdict]
    box = _box(finding.verdict, says, lines, sources)
    said = passed.WITHIN if good else (finding.verdict or "no verdict").upper()
    return page(
        f"{question} {said}",
        el("main", el("h1", question), box, *_rest([check], sources, (), working, one=True)),
    )


def job_page(job: Job, *, working: bool = False) -> str:
    """Return a job as a page."""
    sources = Citations(c.finding for c in job.checks if c.finding)
    about = [(label, said) for label, said in summary.about(job) if label != summary.CIRCUIT]
    note = " ".join(summary.notes(job))
    good = job.verdict is Verdict.PASS
    says, lines = summary.says(job), summary.lines(job)
    if good:  # what was not checked stands in the heading
        says = passed.checked_of(job)
        lines = [line for line in lines if line.label != summary.NOT_TESTED]
    top = (
        el("h1", job.title),
        _box(job.verdict, says, lines, sources, note),
        pairs(about, "about"),
        section("Machines", html_customer.machines(job)) if len(job.machines) > 1 else None,
        section("Before and after", html_customer.before_and_after(job)),
        section("What was checked", html_customer.overview(job)),
        section("Not tested", html_customer.not_tested(job), name="untested"),
        section("Does not apply", html_customer.does_not_apply(job), name="untested"),
        section("Confirmed as left", html_customer.confirmed(job), name="confirmed"),
    )
    told = [job.about["circuit"]] if job.about.get("circuit") else []
    rest = _rest(job.checks, sources, told, working, of_machine=job.of_machine)
    return page(
        f"{passed.WITHIN if good else job.verdict.upper()}: {job.title}",
        el("main", *top, *rest),
    )


def _box(
    verdict: Verdict | None,
    says: str,
    lines: Sequence[summary.SummaryLine],
    sources: Citations,
    note: str = "",
) -> Element:
    head = el("p", badge(verdict), " ", says, class_="says")
    said: list[tuple[str, Inside]] = [
        (line.label, el("span", line.told, " ", cited(sources, line.source))) for line in lines
    ]
    last = el("p", note, class_="note") if note else None
    return el("div", head, pairs(said, "decided"), last, class_="box")


def _rest(
    checks: Sequence[JobCheck],
    sources: Citations,
    told: Sequence[str],
    working: bool,
    *,
    one: bool = False,
    of_machine: bool = False,
) -> Iterator[Inside]:
    """Return what every page has below its own summary."""
    cautions = gathered(checks)
    circuit = [c for c in cautions if c.key.startswith(_CIRCUIT)]
    rest = [c for c in cautions if c not in circuit and c.severity != "note"]
    told_first = [el("p", text) for text in told]
    yield section(summary.CIRCUIT, *told_first, caution_items(circuit), name="circuit")
    numbered = {id(c): n for n, c in enumerate(checks, start=1)}
    gaps = ReportGaps()
    parts = [
        check_section(check, numbered[id(check)], sources, gaps, working=working, titled=not one)
        for _, found in by_step(checks)
        for check in found
    ]
    heading = "Evidence, for the technician" if of_machine else "Evidence"
    yield section(heading, el("div", *parts, class_="checks"), name="evidence")
    yield section("Take care", caution_items(rest), name="care")
    yield sources_section(sources)
    rules = house_rules(checks)
    yield section("House rules", el("p", ", ".join(rules)) if rules else None, name="house")
    yield _limits([c for c in cautions if c.severity == "note"], of_job=not one)


def _limits(notes: Sequence[Caution], *, of_job: bool) -> Element | None:
    made = el("p", f"Worked out by wirecalc {VERSION}.", class_="note")
    exact = el("p", _EXACT)
    paper = el("p", _PAPER, class_="paper") if of_job else None
    return section("Limits of this answer", caution_items(notes), exact, paper, made, name="limits")

"""A finding or a job as one page to hand over: a customer's summary, then the evidence.

The first screen holds the verdict, the number that decided it and what to do next. The page is
one file without script; it prints, and it reads on a phone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from importlib.metadata import version

from ..criteria import Verdict
from ..findings import Finding, Judged
from ..items import Caution
from ..job import (
    AGAIN,
    AS_FOUND,
    AS_LEFT,
    MISSING,
    NOTHING,
    OPTION,
    Counted,
    Job,
    JobCheck,
    by_step,
)
from .html_evidence import Gaps, Sources, because, caution_items, check_section, gathered
from .html_parts import Element, Inside, badge, cell, el, items, page, pairs, section, table

_FINDING_SAYS = {
    Verdict.PASS: "Within the limits that were checked.",
    Verdict.MARGINAL: "Within every limit that binds, but something here calls for attention.",
    Verdict.CANNOT_TELL: "Neither a pass nor a fail: something is not known well enough.",
    Verdict.FAIL: "Past a limit that binds.",
    None: "Figures only: nothing was given to judge.",
}
_JOB_SAYS = {
    Verdict.PASS: "What was checked after the work is within the limits.",
    Verdict.MARGINAL: "What was checked after the work is within every limit that binds, but "
    "something calls for attention.",
    Verdict.CANNOT_TELL: "The work cannot be called good or bad yet: something that this takes "
    "was not measured, or not well enough.",
    Verdict.FAIL: "Something that was checked after the work is past a limit that binds.",
}
_STAGES = {
    AS_FOUND: "As found, before the work",
    OPTION: "Options, looked at and not counted",
    AS_LEFT: "As left, after the work",
}
_TOLD = ("work", "hand_over", "machine", "circuit")  # of what the sheet says, for the customer
_CIRCUIT = ("cord-", "brk-", "gfci-")  # keys of cautions about cord, receptacle and circuit
_EXACT = "A reading given without its meter's error is taken as exact."
_PAPER = (
    "On paper: of a check that passed, its readings, limits and what was not checked; of an "
    "option, its line under What was checked. The rest stands in the file."
)
_LOOK = "see the evidence below"
_NOTHING_TO_DO = "nothing that these checks ask for"


def finding_page(finding: Finding, question: str, *, working: bool = False) -> str:
    """Return a finding as a page."""
    check = JobCheck(finding.calculation, AS_LEFT, finding.calculation, finding)
    decided = finding.decided_by
    if decided is not None:
        said = [("Decided by", because(decided)), ("Next", _next(decided))]
    else:
        said = [(a.name.capitalize(), a.text) for a in finding.answers]
    box = _box(finding.verdict, _FINDING_SAYS[finding.verdict], said)
    return page(
        f"{question} {(finding.verdict or 'no verdict').upper()}",
        el("main", el("h1", question), box, *_rest([check], (), working, one=True)),
    )


def job_page(job: Job, *, working: bool = False) -> str:
    """Return a job as a page."""
    about = [(k.replace("_", " ").capitalize(), v) for k, v in _ordered(job) if k != "circuit"]
    summary = (
        el("h1", job.title),
        _box(job.verdict, _JOB_SAYS[job.verdict], [p for c in _shown(job) for p in c]),
        pairs(about, "about"),
        section("Machines", _machines(job)) if len(job.machines) > 1 else None,
        section("Before and after", _before_and_after(job)),
        section("What was checked", _overview(job)),
        section("Not tested", _not_tested(job), name="untested"),
    )
    told = job.about.get("circuit", "")
    return page(
        f"{job.verdict.upper()}: {job.title}",
        el("main", *summary, *_rest(job.checks, (told,) if told else (), working)),
    )


def _box(verdict: Verdict | None, says: str, said: Sequence[tuple[str, str]]) -> Element:
    head = el("p", badge(verdict), " ", says, class_="says")
    return el("div", head, pairs(said, "decided"), class_="box")


def _rest(
    checks: Sequence[JobCheck], told: Sequence[str], working: bool, *, one: bool = False
) -> Iterator[Inside]:
    """Return what every page has below its own summary."""
    cautions = gathered(checks)
    circuit = [c for c in cautions if c.key.startswith(_CIRCUIT)]
    rest = [c for c in cautions if c not in circuit and c.severity != "note"]
    sources = Sources(c.finding for c in checks if c.finding)
    told_first = [el("p", text) for text in told]
    yield section("Cord and circuit", *told_first, caution_items(circuit), name="circuit")
    numbered = {id(c): n for n, c in enumerate(checks, start=1)}
    gaps = Gaps()
    parts = [
        check_section(check, numbered[id(check)], sources, gaps, working=working, titled=not one)
        for _, found in by_step(checks)
        for check in found
    ]
    heading = "Evidence" if one else "Evidence, for the technician"
    yield section(heading, el("div", *parts, class_="checks"), name="evidence")
    yield section("Take care", caution_items(rest), name="care")
    yield sources.section()
    yield _limits([c for c in cautions if c.severity == "note"], of_job=not one)


def _limits(notes: Sequence[Caution], *, of_job: bool) -> Element | None:
    made = el("p", f"Worked out by wirecalc {version('wirecalc')}.", class_="note")
    exact = el("p", _EXACT)
    paper = el("p", _PAPER, class_="paper") if of_job else None
    return section("Limits of this answer", caution_items(notes), exact, paper, made, name="limits")


def _next(judged: Judged) -> str:
    if judged.verdict is Verdict.PASS:
        return _NOTHING_TO_DO
    return judged.action or _LOOK


def _ordered(job: Job) -> list[tuple[str, str]]:
    first = [(k, job.about[k]) for k in _TOLD if k in job.about]
    first += [("kind", job.kind)] if job.kind else []
    return first + [(k, v) for k, v in job.about.items() if k not in _TOLD]


def _shown(job: Job) -> Iterator[list[tuple[str, str]]]:
    """Return what decided a job with what to do about each; for a pass, what came closest."""
    decided = [c for c in job.decided_by if c.check is not None]
    if job.verdict is Verdict.PASS:
        later = "; what was not tested stands below" if job.not_tested else ""
        for pair in job.before_and_after:
            if pair.found.verdict is Verdict.FAIL and pair.then and pair.now:
                was = f"{pair.found.title}: {because(pair.then)}"
                yield [("Was", was), ("Is now", because(pair.now[0]))]
        yield [*_closest(decided), ("Next", _NOTHING_TO_DO + later)]
        return
    for counted in decided:
        yield [("Decided by", _number(counted)), ("Next", counted.action or _LOOK)]
    missing = [f"{c.name} ({c.reason})" for c in job.decided_by if c.why == MISSING]
    if missing:
        yield [("Needed, and not tested", "; ".join(missing)), ("Next", "test what is missing")]
    bare = [c.name for c in job.decided_by if c.why == NOTHING]
    if bare or not job.counted:
        of = f" of {', '.join(bare)}" if bare else ""
        yield [("Decided by", f"{NOTHING}{of}"), ("Next", "measure after the work")]


def _closest(counted: Sequence[Counted]) -> Iterator[tuple[str, str]]:
    """Yield what came closest to its limit: of what a meter with an error read, if anything was.

    A plate's figure may well stand at its limit, and says less than a reading that is near it.
    """
    judged = [(c.name, j) for c in counted if c.check and c.check.finding
              for j in c.check.finding.criteria]  # fmt: skip
    read = [(name, j) for name, j in judged if j.low is not None]
    name, nearest = min(read or judged, key=lambda n: n[1].criterion.closeness, default=("", None))
    if nearest is not None:
        yield "Closest reading" if read else "Closest to its limit", f"{name}: {because(nearest)}"


def _number(counted: Counted) -> str:
    """Return the number that decided, with the name of its check."""
    finding = counted.check.finding if counted.check else None
    decided = finding.decided_by if finding else None
    if decided is None:
        return f"{counted.name}: {counted.why}"
    stage = ", as found" if counted.why == AGAIN else ""
    return f"{counted.name}{stage}: {because(decided)}"


def _machines(job: Job) -> Element | None:
    """Return each machine with its verdict and what decided it."""
    rows = []
    for machine in job.machines:
        verdict = job.verdict_of(machine.name)
        worst = [c for c in job.counted_of(machine.name) if c.verdict is verdict]
        said = "; ".join(f"{k.replace('_', ' ')} {v}" for k, v in machine.about.items())
        why = next((_number(c) for c in worst if c.check or c.why), NOTHING)
        rows.append((machine.name, badge(verdict), why, said))
    heads = ("Machine", "Verdict", "Decided by", "What it is")
    return table("Each machine of the job", heads, rows, "machines")


def _before_and_after(job: Job) -> Element | None:
    """Return the same check as found and as left, side by side."""
    rows = []
    for pair in job.before_and_after:
        found = because(pair.then) if pair.then else pair.found.defect or "figures only"
        now = [because(judged) for judged in pair.now] or [pair.left.defect or "figures only"]
        rows.append(
            (
                pair.found.title,
                el("span", _badge(pair.found), " ", found),
                el("span", _badge(pair.left), " ", "; ".join(now)),
            )
        )
    heads = ("Check", "As found", "As left")
    return table("The same check before the work and after it", heads, rows, "pairs")


def _overview(job: Job) -> Element | None:
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
        rows = [_row(c, number[id(c)], staged=staged) for c in checks]
        if rows:
            head = el("tr", el("th", text[:1].upper() + text[1:], scope="rowgroup", colspan="3"))
            groups.append(el("tbody", head, *rows))
    if not groups:
        return None
    heads = el("tr", *(el("th", t, scope="col") for t in ("Check", "Verdict", "Decided by")))
    name = "overview" if staged else "overview steps"
    return el("table", el("thead", heads), *groups, class_=name)


def _row(check: JobCheck, number: int, *, staged: bool) -> Element:
    decided = check.decided_by
    why = because(decided) if decided else check.defect or "figures only"
    link = el("a", check.title, href=f"#check-{number}")
    stage = "" if staged or check.stage == AS_LEFT else f", {check.stage}"
    head = el("th", link, stage, scope="row")
    return el("tr", head, el("td", _badge(check)), cell("td", why))


def _badge(check: JobCheck) -> Element:
    return badge(check.verdict, "DEFECT" if check.defect else "NO VERDICT")


def _not_tested(job: Job) -> Element | None:
    return items(
        f"{n.title}{' (required)' if n.required else ''}: {n.reason}"
        + (f" [{n.rule}]" if n.rule and n.rule not in n.reason else "")
        for n in job.not_tested
    )

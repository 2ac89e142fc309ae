"""What a job comes to in a few lines: what decided it, with its number, and what to do next.

The text and the page of a job begin with the same lines.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import zip_longest
from typing import NamedTuple

from ..jobs.checks import AS_LEFT
from ..jobs.job import AGAIN, DENIED, MISSING, NOTHING, UNCONFIRMED, BeforeAfter, Counted, Job
from ..published.sources import Source
from ..said.findings import Judged
from ..said.plain_words import told
from ..said.verdicts import Verdict

METER = (
    "A reading is shown with its meter's error against it, a fail with that error in its favour."
)
DOER = "What is next is for a technician, unless it names somebody else."
NOT_FOR_USE = "Not for use until that is put right."
NOTHING_TO_DO = "nothing that these checks ask for"
NOT_TESTED = "Not tested"
CIRCUIT = "Cord and circuit"  # what the sheet says of them
_LOOK = "see the evidence below"
_LABELS = {
    "hand_over": "Said at hand-over",
    "work": "Work done",
    "circuit": CIRCUIT,
}
_MOST = 4  # names in one line


class SummaryLine(NamedTuple):
    """One line of a summary: what it is, what it says, and where a number in it comes from.

    `judged` is the criterion that it tells of, for words in place of its name.
    """

    label: str
    said: str
    source: Source | None = None
    judged: Judged | None = None

    @property
    def told(self) -> str:
        """What it says, in words that a customer reads."""
        if self.judged is None:
            return self.said
        return f"{self.said.removesuffix(self.judged.because)}{told(self.judged)}"


def says(job: Job) -> str:
    """Say in one sentence what the verdict of a job means."""
    n = sum(c.check is not None or c.why == DENIED for c in job.decided_by)
    many = "1 check" if n == 1 else f"{n} checks"
    if job.verdict is Verdict.PASS:
        return "At the end of the work, what was checked is within the limits."
    if job.verdict is Verdict.MARGINAL:
        return f"Nothing fails, and {many} {'is' if n == 1 else 'are'} to be looked at."
    if job.verdict is Verdict.FAIL:
        said = [f"{many} {'fails' if n == 1 else 'fail'} at the end of the work."]
        said += [NOT_FOR_USE] if job.of_machine else []
        return " ".join(said)
    why = {_open(c): None for c in job.decided_by} or {_open(None): None}
    return f"Nothing is passed yet: {', and '.join(why)}."


def _open(counted: Counted | None) -> str:
    """Say what kept a job from a verdict."""
    if counted is None or counted.why == NOTHING:
        return NOTHING
    if counted.why == AGAIN:
        return "what failed was not measured again"
    if counted.why == UNCONFIRMED:
        return "what is to be confirmed was not"
    return "a needed test was not made" if counted.why == MISSING else "a check cannot tell"


def lines(job: Job, most: int | None = None) -> list[SummaryLine]:
    """Return what decided a job and what to do about each; for a pass, what came closest.

    Beyond the first `most` checks that decided, or one less that were mended, they are named. What
    does not apply to the machine stands last, whatever the verdict.
    """
    found = _passed(job, most) if job.verdict is Verdict.PASS else _deciding(job, most)
    return [
        *found,
        *(SummaryLine("Does not apply", f"{d.title}: {d.reason}") for d in job.does_not_apply),
    ]


def _passed(job: Job, most: int | None) -> list[SummaryLine]:
    mended = list(_mended(job))
    if most is not None and len(mended) > 2 * most - 2:  # two lines of each
        names = [line.said.partition(": ")[0] for line in mended[2 * most - 2 :: 2]]
        mended = [*mended[: 2 * most - 2], SummaryLine("Mended too", "; ".join(names))]
    untested = [n.title for n in job.not_tested]
    nothing = SummaryLine("Next", NOTHING_TO_DO)
    return [*mended, *_closest(job), nothing, *_named(NOT_TESTED, untested)]


def _deciding(job: Job, most: int | None) -> list[SummaryLine]:
    found: list[SummaryLine] = []
    checked = [c for c in job.decided_by if c.check is not None or c.why == DENIED]
    for counted, then in zip_longest(checked[:most], checked[1:most]):
        found.append(decided(counted))
        if then is None or then.action != counted.action:  # the same for several stands once
            found.append(SummaryLine("Next", counted.action or _LOOK))
    if most is not None and len(checked) > most:
        found.append(SummaryLine("And by", "; ".join(c.name for c in checked[most:])))
    missing = [c for c in job.decided_by if c.why == MISSING]
    untested = [SummaryLine(NOT_TESTED, f"{c.name}, which is needed: {c.reason}") for c in missing]
    if missing:
        untested.append(SummaryLine("Next", f"test it: {'; '.join(map(_to_test, missing))}"))
    protects_first = missing and missing[0].protects and not (checked and checked[0].protects)
    found = [*untested, *found] if protects_first else [*found, *untested]
    unconfirmed = [c for c in job.decided_by if c.why == UNCONFIRMED]
    if unconfirmed:
        found += _named("Not confirmed", [c.name for c in unconfirmed])
        found.append(SummaryLine("Next", unconfirmed[0].action))
    bare = [c.name for c in job.decided_by if c.why == NOTHING]
    if bare or not job.counted:
        of = f" of {', '.join(bare)}" if bare else ""
        found += [
            SummaryLine("Decided by", f"{NOTHING}{of}"),
            SummaryLine("Next", "measure after the work"),
        ]
    return [*found, *_besides(job)]


def _to_test(counted: Counted) -> str:
    """Name what is to be tested, with what would do in its place."""
    instead = f" (or {', '.join(counted.instead)})" if counted.instead else ""
    return f"{counted.name}{instead}"


def _besides(job: Job) -> Iterator[SummaryLine]:
    """Yield what is better than the verdict of the job, and no pass: it stays so after that."""
    untold = [c.name for c in job.counted if c.verdict is Verdict.CANNOT_TELL]
    if job.verdict is Verdict.FAIL:
        yield from _named("Cannot tell", untold)
    if job.verdict is not Verdict.MARGINAL:
        marginal = [c for c in job.counted if c.verdict is Verdict.MARGINAL]
        yield from _named("Marginal", [f"{c.name}: {c.why}" for c in marginal])


def about(job: Job) -> list[tuple[str, str]]:
    """Return what the sheet says of a job, what the customer is told first."""
    told = {k: job.about[k] for k in ("hand_over", "work", "machine", "circuit") if k in job.about}
    kind = {"kind": job.kind} if job.kind else {}
    said = {**told, **kind, **job.about}
    return [(_LABELS.get(k) or k.replace("_", " ").capitalize(), v) for k, v in said.items()]


def of_finding(judged: Judged) -> list[SummaryLine]:
    """Return what decided one finding, and what to do about it."""
    next_one = NOTHING_TO_DO if judged.verdict is Verdict.PASS else judged.action or _LOOK
    return [
        _of("Decided by", judged),
        SummaryLine("Next", next_one),
    ]


def notes(job: Job) -> list[str]:
    """Return what goes with the lines: how the sheet and its readings are taken, and who acts."""
    meter = any(c.judged is not None and c.judged.low is not None for c in job.decided_by)
    doer = job.of_machine and job.verdict is not Verdict.PASS
    return [*job.remarks, *([METER] if meter else []), *_exact(job), *([DOER] if doer else [])]


def _exact(job: Job) -> Iterator[str]:
    """Say of a pass how many of its readings were taken as exact."""
    if job.verdict is Verdict.PASS:
        findings = [c.finding for c in job.checks if c.stage == AS_LEFT and c.finding]
        many = sum(len(f.exact) for f in findings)
        if many:
            said = "1 reading was" if many == 1 else f"{many} readings were"
            yield f"{said} taken as exact: no error of a meter was given."


def decided(counted: Counted) -> SummaryLine:
    """Return the number that decided one thing that counts, with the name of its check."""
    judged = counted.judged
    if judged is None:
        return SummaryLine("Decided by", f"{counted.name}: {counted.why}")
    stage = ", as found" if counted.why == AGAIN else ""
    return _of("Decided by", judged, f"{counted.name}{stage}: ")


def _of(label: str, judged: Judged, before: str = "") -> SummaryLine:
    """Return the line of one criterion, with what stands before it."""
    return SummaryLine(label, f"{before}{judged.because}", judged.criterion.source, judged)


def _mended(job: Job) -> Iterator[SummaryLine]:
    """Yield what failed before the work and what it is now."""
    for pair in job.before_and_after:
        if _failed(pair) and pair.then and pair.now:
            was, now = pair.then, pair.now[0]
            yield _of("Was", was, f"{pair.found.title}: ")
            yield _of("Is now", now)
    for found in (c for c in job.checks if c.removed and c.verdict is Verdict.FAIL):
        if found.decided_by:
            was = found.decided_by
            yield _of("Was", was, f"{found.title}: ")
            yield SummaryLine("Is now", f"removed, not measured: {found.removed}")


def _failed(pair: BeforeAfter) -> bool:
    return pair.found.verdict is Verdict.FAIL


def _closest(job: Job) -> Iterator[SummaryLine]:
    """Yield what came closest to its limit: of what a meter with an error read, if anything was.

    A plate's figure may well stand at its limit, and says less than a reading that is near it. A
    check that was mended is told already.
    """
    judged = [
        (c.check, j)
        for c in job.decided_by
        if c.check and c.check.finding
        for j in c.check.finding.criteria
    ]
    read = [(check, j) for check, j in judged if j.low is not None]
    among = read or judged
    if not among:
        return
    check, nearest = min(among, key=lambda n: n[1].criterion.closeness)
    if not any(check is pair.left for pair in job.before_and_after if _failed(pair)):
        label = "Closest reading" if read else "Closest"
        yield _of(label, nearest, f"{check.title}: ")


def _named(label: str, names: Sequence[str]) -> Iterator[SummaryLine]:
    """Name some things in one line, the first of many; nothing where there are none."""
    more = [f"{len(names) - _MOST} more"] if len(names) > _MOST else []
    if names:
        yield SummaryLine(label, "; ".join([*names[:_MOST], *more]))

"""Plain text for a terminal 80 columns wide: the verdict and what to do first, then the rest."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from ..criteria import Verdict
from ..findings import BandFigure, Finding, InputRecord, Judged
from ..items import Caution, NotChecked
from ..job import Job, JobCheck
from ..rounding import show, show_band
from ..sources import Source
from .layout import WIDTH, block, table, wrap


def finding_text(finding: Finding, question: str, *, working: bool = False) -> str:
    """Return a finding as text: the first lines hold verdict, deciding number and next action."""
    parts = [
        *_headline(finding),
        "",
        *wrap(f"{finding.calculation}: {question}"),
        *_body(finding, working),
        *block("Take care", _cautions(finding.cautions)),
    ]
    return "\n".join(parts)


def job_text(job: Job) -> str:
    """Return a job as text: a summary, each finding, cautions once, and what was not tested."""
    parts = wrap(f"JOB: {_word(job.verdict)}  {job.title}", indent="     ")
    for reason in job.reasons:
        parts += wrap(f"- {reason}", "  ", "    ")
    about = [wrap(f"{k}: {v}", indent="  ") for k, v in job.about.items()]
    parts += block("About", (line for lines in about for line in lines))
    parts += ["", *table([("check", "stage", "verdict", "decided by"), *map(_row, job.checks)])]
    parts += block("Not tested", _not_tested(job))
    for check in job.checks:
        parts += ["", "-" * WIDTH, f"{check.name} ({check.stage})"]
        parts += wrap(check.note) if check.note else []
        if check.finding is None:
            parts += wrap(check.defect, "  ")
            continue
        parts += [*_headline(check.finding), *_body(check.finding, working=False)]
    once: dict[str, Caution] = {}
    for check in job.checks:
        for caution in check.finding.cautions if check.finding else ():
            once.setdefault(caution.key, caution)
    last = sorted(once.values(), key=lambda c: c.severity == "note")
    parts += ["", "-" * WIDTH, *block("Take care", _cautions(last))[1:]]
    return "\n".join(parts)


def _not_tested(job: Job) -> Iterator[str]:
    for missing in job.not_tested:
        required = " (required)" if missing.required else ""
        yield from wrap(f"- {missing.name}{required}: {missing.reason}", indent="  ")


def _row(check: JobCheck) -> tuple[str, str, str, str]:
    if check.finding is None:
        return check.name, check.stage, "DEFECT", check.defect
    decided = check.finding.decided_by
    why = _because(decided) if decided else "figures only"
    return check.name, check.stage, _word(check.finding.verdict), why


def _word(verdict: Verdict | None) -> str:
    return verdict.upper() if verdict else "NO VERDICT"


def _because(judged: Judged) -> str:
    name = judged.criterion.name
    return f"{name}: {judged.reason}" if judged.reason else name


def _headline(finding: Finding) -> Iterator[str]:
    decided = finding.decided_by
    if decided is None:
        yield "NO VERDICT  figures only"
        yield from _short_answers(finding)
        return
    word = f"{_word(finding.verdict)}  "
    yield from wrap(word + _because(decided), indent=" " * 6)
    if decided.criterion.source is not None:
        yield from wrap(decided.criterion.source.cite(), "      ")
    if decided.action and decided.verdict is not Verdict.PASS:
        yield from wrap("Next  " + decided.action, indent=" " * 6)
    first = finding.cautions[0] if finding.cautions else None
    if first is not None and first.severity != "note":
        stop = "STOP: " if first.severity == "stop" else ""
        yield from wrap(f"Care  {stop}{_when(first)}{first.text}", indent=" " * 6)
    yield from _short_answers(finding)


def _short_answers(finding: Finding) -> Iterator[str]:
    for answer in finding.answers:
        yield from wrap(f"{answer.name.capitalize()}: {answer.text}", indent=" " * 6)


def _body(finding: Finding, working: bool) -> Iterator[str]:
    number = {key: f"[{i}]" for i, key in enumerate(finding.sources, start=1)}

    def mark(source: Source | None) -> str:
        return number.get(finding.source_key(source) or "", "")

    yield from block("Given", table([_given(i) for i in finding.inputs]))
    yield from _answers(finding)
    rows = [(f.figure.name, _figure(f), mark(f.figure.source)) for f in finding.figures]
    yield from block("Worked out", table(rows))
    if working:
        yield from block("Working", _working(finding))
    yield from block("Checked", table(_checked(finding, mark)))
    for listing in finding.listings:
        cells = [tuple("" if c is None else str(c) for c in row) for row in listing.rows]
        yield from block(listing.title, table([listing.columns, *cells]))
    yield from block("Not checked", _not_checked(finding.not_checked))
    cited = [wrap(f"{number[k]} {s.cite()}", indent="    ") for k, s in finding.sources.items()]
    yield from block("Sources", (line for lines in cited for line in lines))


def _answers(finding: Finding) -> Iterator[str]:
    for answer in finding.answers:
        if not (answer.evidence_for or answer.evidence_against):
            continue
        yield from block(answer.name.capitalize(), wrap(answer.text))
        yield from wrap("; ".join(answer.evidence_for), "    for: ")
        yield from wrap("; ".join(answer.evidence_against), "    against: ")


def _working(finding: Finding) -> Iterator[str]:
    for banded in finding.figures:
        if banded.figure.working is not None:
            yield from wrap(f"{banded.figure.name}: {banded.figure.working()}", indent="  ")


def _checked(finding: Finding, mark: Callable[[Source | None], str]) -> list[tuple[str, str, str]]:
    return [
        (
            _word(c.verdict),
            _house(c.criterion.origin) + _because(c),
            mark(c.criterion.source),
        )
        for c in finding.criteria
    ]


def _house(origin: str) -> str:
    return "house rule, " if origin == "house" else ""


def _given(record: InputRecord) -> tuple[str, str, str]:
    given = record.given if record.given is not None else ""
    if record.origin == "assumed":
        return record.name, record.notes[0], "assumed"
    if record.origin == "unknown":
        return record.name, "unknown", "; ".join(record.notes)
    notes = list(record.notes)
    if record.low is not None and record.high is not None:
        notes.insert(0, show_band(record.low, record.high, record.unit))
    return record.name, given, ", ".join(notes)


def _figure(banded: BandFigure) -> str:
    figure = banded.figure
    text = show(figure.value, figure.unit, toward=figure.toward)
    if figure.also:
        text += f" ({', '.join(show(v, u, toward=figure.toward) for v, u in figure.also)})"
    if banded.low is not None and banded.high is not None:
        text += f", {show_band(banded.low, banded.high)}"
    return text


def _cautions(cautions: Iterable[Caution]) -> Iterator[str]:
    for caution in cautions:
        stop = "STOP: " if caution.severity == "stop" else ""
        to = f" ({caution.defers_to})" if caution.defers_to.strip("-") else ""
        yield from wrap(f"- {stop}{_when(caution)}{caution.text}{to}", indent="  ")


def _when(caution: Caution) -> str:
    return f"{caution.when}: " if caution.when not in ("", "always") else ""


def _not_checked(found: Sequence[NotChecked]) -> Iterator[str]:
    for item in found:
        yield from wrap(f"- {item.what}{': ' + item.why if item.why else ''}", indent="  ")

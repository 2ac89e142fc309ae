"""CSV and Markdown: one line a criterion, of a finding, a job or a batch.

Where there is no criterion there is a line a figure and a line an answer, with "no verdict", so
that nothing is without a line. Numbers are plain numbers in the unit of their column.
"""

from __future__ import annotations

import csv
import functools
import re
from collections.abc import Iterable, Iterator, Sequence

from ..engine.merged_finding import Outcome
from ..jobs.checks import NOT_APPLICABLE, YES, JobCheck
from ..jobs.job import Job
from ..said.findings import Finding, Judged
from ..said.items import Answer, Figure
from ..said.verdicts import Verdict
from .layout import visible

FORMATS = ("csv", "markdown")
NO_VERDICT, DEFECT, NOT_TESTED = "no verdict", "defect", "not tested"
CONFIRMED, NOT_CONFIRMED = "confirmed", "not confirmed"
RESULT = (  # the columns of what was judged
    *("calculation", "criterion", "verdict", "actual", "limit", "caution_limit", "unit"),
    *("margin", "origin", "provider", "reason", "source"),
)
ROW = ("verdict", "criterion", "actual", "limit", "unit", "margin", "reason", "next")
_CHECK = ("machine", "step", "check", "stage", "tool", "part")  # before them, in a job
_FORMULA = re.compile(r"\s*[=+\-@＝＋－＠]")  # what a spreadsheet takes for a formula
_NUMBER = re.compile(r"\s*[-+]?(\d+(\.\d*)?|\.\d+)(e[-+]?\d+)?\s*", re.ASCII | re.IGNORECASE)
_MARKS = re.compile(r"([\\`*_\[\]<>|~&])")  # what Markdown takes for a sign of its own

Cells = Sequence[str | float | None]


class _AsItIs:
    """A file that gives back what is written to it, and so does what writes to it."""

    def write(self, text: str) -> str:
        return text


_csv = csv.writer(_AsItIs(), lineterminator="")


def finding_rows(finding: Finding, form: str) -> str:
    """Return a finding as CSV or Markdown, its head first."""
    return "\n".join(render(RESULT, result_cells(finding), form))


def job_rows(job: Job, form: str) -> str:
    """Return a job as CSV or Markdown: its checks, what was not tested, what is confirmed."""
    rows = [row for check in job.checks for row in _check(check)]
    for missing in job.not_tested:
        why = missing.reason or missing.rule
        reason = f"required: {why}" if missing.required else why
        about = (missing.machine, missing.step, missing.name, "", "", "")
        rows.append((*about, *empty_cells(missing.calculation, NOT_TESTED, reason)))
    for gone in job.does_not_apply:
        cells = empty_cells(gone.calculation, NOT_APPLICABLE, gone.reason)
        rows.append((gone.machine, "", gone.name, "", "", "", *cells))
    for said in job.confirmed:
        verdict = {YES: CONFIRMED, NOT_APPLICABLE: NOT_APPLICABLE}.get(said.answer, NOT_CONFIRMED)
        cells = empty_cells("", verdict, said.said)
        rows.append((said.machine, "", said.says, "", "", "", *cells))
    return "\n".join(render((*_CHECK, *RESULT), rows, form))


def render(head: Sequence[str], rows: Iterable[Cells], form: str) -> Iterator[str]:
    """Yield the lines of a table, its head first, as they come: nothing is gathered."""
    yield from head_lines(head, form)
    yield from (line(row, form) for row in rows)


def head_lines(head: Sequence[str], form: str) -> Iterator[str]:
    """Yield the lines above the rows of a table."""
    yield line(head, form)
    if form == "markdown":
        yield line(["---"] * len(head), form)


def line(cells: Cells, form: str) -> str:
    """Return one row of a table."""
    if form == "markdown":
        return "| " + " | ".join(_MARKS.sub(r"\\\1", _plain(c)) for c in cells) + " |"
    return str(_csv.writerow([_plain(c, guard=True) for c in cells]))


def beside(left: str, right: str, form: str) -> str:
    """Return the row that two rows make, one beside the other.

    >>> beside("| a |", "| b |", "markdown"), beside("a", "b", "csv")
    ('| a | b |', 'a,b')
    """
    return left[:-1] + right if form == "markdown" else f"{left},{right}"


def result_cells(finding: Finding) -> Iterator[Cells]:
    """Yield what was judged, a row of RESULT each; figures and answers where nothing was."""
    for judged in finding.criteria:
        yield _judged(finding, judged)
    if finding.criteria:
        return
    for banded in finding.figures:
        yield _figure(finding, banded.figure)
    for answer in finding.answers:
        yield _answer(finding, answer)
    if not (finding.figures or finding.answers):
        yield empty_cells(finding.calculation, NO_VERDICT, "nothing was given to judge")


def row_cells(outcome: Outcome) -> Cells:
    """Return the one row of ROW of an outcome: what decided, and what to do about it."""
    decided = outcome.decided_by
    if decided is None:
        return empty_row(NO_VERDICT, undecided(outcome))
    c = decided.criterion
    numbers = (c.actual, c.limit, c.unit, c.margin)
    to_do = "" if decided.verdict is Verdict.PASS else decided.action
    return (decided.verdict, c.name, *numbers, decided.reason, to_do)


def undecided(outcome: Outcome) -> str:
    """Say what an outcome without a verdict comes to."""
    return "; ".join(f"{a.name}: {a.text}" for a in outcome.answers) or "figures only"


def empty_row(verdict: str, reason: str) -> Cells:
    """Return the row of ROW of something that came to no verdict."""
    return (verdict, "", None, None, "", None, reason, "")


def empty_cells(calculation: str, verdict: str, reason: str) -> Cells:
    """Return the row of RESULT of something that came to no finding."""
    return (calculation, "", verdict, None, None, None, "", None, "", "", reason, "")


def _check(check: JobCheck) -> Iterator[Cells]:
    if check.finding is None:
        rows: Iterable[Cells] = [empty_cells(check.calculation, DEFECT, check.defect)]
    else:
        rows = result_cells(check.finding)
    for row in rows:
        yield (check.machine, check.step, check.name, check.stage, check.tool, check.part, *row)


def _judged(finding: Finding, judged: Judged) -> Cells:
    criterion = judged.criterion
    return (
        *(finding.calculation, criterion.name, judged.verdict),
        *(criterion.actual, criterion.limit, criterion.caution_limit, criterion.unit),
        criterion.margin,
        *(criterion.origin, judged.provider, judged.reason),
        criterion.source.cite() if criterion.source else "",
    )


def _figure(finding: Finding, figure: Figure) -> Cells:
    source = figure.source.cite() if figure.source else ""
    about = (finding.calculation, figure.name, NO_VERDICT)
    return (*about, figure.value, None, None, figure.unit, None, "", finding.plugin, "", source)


def _answer(finding: Finding, answer: Answer) -> Cells:
    about = (finding.calculation, answer.name, NO_VERDICT)
    return (*about, None, None, None, "", None, "", finding.plugin, answer.text, "")


def _plain(cell: str | float | None, *, guard: bool = False) -> str:
    """Write a cell on one line: a number without the noise of binary arithmetic.

    With `guard` a text that a spreadsheet would take for a formula gets an apostrophe before it;
    one that is a number is left as it is.
    """
    if isinstance(cell, str):
        return guarded(cell) if guard else visible(" ".join(cell.split()))
    return "" if cell is None else f"{cell:.12g}"


@functools.lru_cache(4_096)  # most cells of a long file were there before
def guarded(cell: str) -> str:
    """Return a text on one line, with an apostrophe before what looks like a formula.

    >>> guarded("=1+1"), guarded("-18"), guarded("18 AWG")
    ("'=1+1", '-18', '18 AWG')
    """
    text = visible(" ".join(cell.split()))
    return f"'{text}" if _FORMULA.match(text) and not _NUMBER.fullmatch(text) else text

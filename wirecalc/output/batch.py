"""A batch as lines, printed row by row: text, JSON lines, CSV or Markdown."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TypeVar

from ..jobs.batch import MOST_ROWS
from ..jobs.batch_row import RowFinding
from ..jobs.batch_tally import Tally
from ..said.findings import Finding
from ..said.items import Caution, NotChecked
from ..said.verdicts import Verdict
from . import terminal_width
from .batch_summary import summary_lines
from .json import finding_object
from .layout import block, narrow, visible, wrap
from .rows import (
    DEFECT,
    NO_VERDICT,
    RESULT,
    ROW,
    Cells,
    beside,
    empty_cells,
    empty_row,
    head_lines,
    line,
    result_cells,
    row_cells,
    undecided,
)
from .short import closing, not_checked, stops
from .text import caution_lines, not_checked_lines
from .text import word as verdict_word

REFUSED = "refused"
_LABEL = 14  # columns of a row's name in text
_MOST_NOTES = 40  # of each kind below the rows; the rest stands in the other formats
_Notes = dict[str, dict[str, list[str]]]
_Said = tuple[str, str, bool]  # the word of a row, what decided it, whether to read that whole
T = TypeVar("T")


def text_lines(
    found: Iterable[RowFinding], tally: Tally, *, labels: bool, short: bool = False
) -> Iterator[str]:
    """Yield a line a row, then how many came to which verdict, and what holds for all of them.

    A row that passes is cut to the width; what is to be acted on is wrapped below it. A `short`
    text says what holds for all of them as the short text of a finding does.
    """
    notes: _Notes = {"Not checked": {}, "Sources": {}, "Take care": {}}
    cautions: dict[str, Caution] = {}
    left: dict[str, NotChecked] = {}

    def told(finding: Finding) -> _Said:
        if not short:
            _note(notes, finding)
        cautions.update((c.key, c) for c in finding.cautions if len(cautions) < _MOST_NOTES)
        left.update((n.what, n) for n in finding.not_checked if len(left) < _MOST_NOTES)
        return _told(finding)

    said = _once_each(told)
    for row in found:
        yield from _row(row, _refusal(row) if row.finding is None else said(row.finding), labels)
    yield ""
    yield from wrap(summary(tally), indent="  ")
    yield from summary_lines(tally)
    if short:
        yield from stops(cautions.values())
        yield from not_checked(list(left.values()))
        yield from closing(cautions.values())
        return
    for title, by_text in notes.items():
        yield from block(title, (text for lines in by_text.values() for text in lines))


def json_lines(
    found: Iterable[RowFinding], calculation: str, *, working: bool = False
) -> Iterator[str]:
    """Yield one JSON object a line: a finding with its row, or a row that came to none."""
    written = _once_each(lambda f: _json(finding_object(f, working=working)))
    for row in found:
        about = _json({"row": row.row, "label": row.label, "kept": dict(row.kept)})
        if row.finding is not None:
            made = written(row.finding)
        else:
            refused = {
                "schema": "wirecalc.refused/1",
                "calculation": calculation,
                "problems": [p._asdict() for p in row.problems],
                "defect": row.defect or None,
            }
            made = _json(refused)
        yield f"{made[:-1]}, {about[1:]}"  # one object of the two


def table_lines(
    found: Iterable[RowFinding],
    calculation: str,
    form: str,
    *,
    kept: Sequence[str],
    labels: bool,
    criteria: bool = False,
) -> Iterator[str]:
    """Yield CSV or Markdown: one line a row, behind its number and what is kept of it.

    It says what decided; with `criteria` there is a line a criterion, and its source.
    """
    cells: Callable[[Finding], Iterable[Cells]] = result_cells if criteria else row_cells
    written = _once_each(lambda f: [line(cells_of_one, form) for cells_of_one in cells(f)])
    head = RESULT if criteria else ROW
    yield from head_lines(("row", *(["label"] if labels else []), *kept, *head), form)
    for row in found:
        before = line((row.row, *([row.label] if labels else []), *row.kept.values()), form)
        if row.finding is not None:
            results = written(row.finding)
        else:
            word, why, _ = _refusal(row)
            word = word.casefold()
            empty = empty_cells(calculation, word, why) if criteria else empty_row(word, why)
            results = [line(empty, form)]
        for result in results:
            yield beside(before, result, form)


def _once_each(make: Callable[[Finding], T]) -> Callable[[Finding], T]:
    """Return a function that makes something of a finding once, for rows that share one."""
    made: dict[int, tuple[Finding, T]] = {}

    def of(finding: Finding) -> T:
        known = made.get(id(finding))
        if known is None or known[0] is not finding:
            if len(made) >= MOST_ROWS:
                made.clear()
            known = made[id(finding)] = finding, make(finding)
        return known[1]

    return of


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def summary(tally: Tally) -> str:
    """Say how many rows came to which verdict.

    >>> summary(Tally(3, {Verdict.PASS: 2}, refused=1))
    '3 rows: 2 pass, 1 refused'
    """
    counts = [(str(v), tally.verdicts.get(v, 0)) for v in Verdict]
    counts += [("without a verdict", tally.verdicts.get(None, 0))]
    counts += [(REFUSED, tally.refused), (f"{DEFECT} of a plugin", tally.defects)]
    said = ", ".join(f"{number} {word}" for word, number in counts if number)
    return f"{tally.rows} {'row' if tally.rows == 1 else 'rows'}: {said}"


def _row(row: RowFinding, said: _Said, labels: bool) -> Iterator[str]:
    start = f"{row.row:>5}  "
    if labels:
        start += f"{_cut(visible(' '.join(row.label.split())), _LABEL):<{_LABEL}}  "
    word, why, whole = said
    if narrow():
        yield (start + word).rstrip()
        start, whole = " " * 7, True
    else:
        start += f"{word:<11}  "
    if whole:
        yield from wrap(why or "-", start, " " * len(start))
    else:
        yield start + _cut(why, terminal_width.width() - len(start))


def _refusal(row: RowFinding) -> _Said:
    if row.defect:
        return DEFECT.upper(), row.defect, True
    return REFUSED.upper(), ". ".join(map(str, row.problems)), True


def _told(finding: Finding) -> _Said:
    decided = finding.decided_by
    if decided is None:
        return NO_VERDICT.upper(), undecided(finding), False
    passed = decided.verdict is Verdict.PASS
    return verdict_word(decided.verdict), decided.because, not passed


def _cut(text: str, width: int) -> str:
    return textwrap.shorten(text, width, placeholder="...") if len(text) > width else text


def _note(notes: _Notes, finding: Finding) -> None:
    """Gather what is said of a row and holds for others too, each once."""
    _once(notes["Not checked"], finding.not_checked, lambda n: n.what, not_checked_lines)
    decided = finding.decided_by
    source = decided.criterion.source if decided else None
    cited = [source.cite()] if source else []
    _once(notes["Sources"], cited, str, lambda c: wrap(f"- {c[0]}", indent="  "))
    cautions = sorted(finding.cautions, key=lambda c: c.severity == "note")
    _once(notes["Take care"], cautions, lambda c: c.key, caution_lines)


def _once(
    gathered: dict[str, list[str]],
    items: Sequence[T],
    key: Callable[[T], str],
    lines: Callable[[Sequence[T]], Iterable[str]],
) -> None:
    """Gather the lines of what was not met before."""
    for item in items:
        if key(item) not in gathered and len(gathered) < _MOST_NOTES:
            gathered[key(item)] = list(lines([item]))

"""A batch as lines, printed row by row: text, JSON lines, CSV or Markdown."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Iterable, Iterator, Sequence
from typing import Any, NamedTuple

from ..engine.merged_finding import Outcome
from ..jobs.batch import MOST_ROWS
from ..jobs.batch_row import Found, RowResult
from ..jobs.batch_tally import Tally
from ..said.verdicts import Verdict
from . import terminal_width
from .batch_summary import InCommon, summary_lines
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
_MOST_IN_JSON = 4_000  # rows that are remembered: a finding in JSON is long
_Said = tuple[str, str, bool]  # the word of a row, what decided it, whether to read that whole


class Form(NamedTuple):
    """How a batch is printed: its format, and what of a finding is wanted."""

    format: str
    criteria: bool = False
    working: bool = False

    @property
    def most(self) -> int:
        """How many rows are remembered as they are printed."""
        return _MOST_IN_JSON if self.format == "json" else MOST_ROWS

    def make(self, outcome: Outcome) -> Any:
        """Make what is printed of one row out of what it came to."""
        if self.format == "text":
            return _told(outcome)
        if self.format == "json":
            return _json(finding_object(outcome.finding(), working=self.working))
        if self.format == "parquet":
            return row_cells(outcome)
        cells = result_cells(outcome.finding()) if self.criteria else [row_cells(outcome)]
        return [line(one, self.format) for one in cells]


def text_lines(
    results: Iterable[RowResult], tally: Tally, *, labels: bool, short: bool = False
) -> Iterator[str]:
    """Yield a line a row, then how many came to which verdict, and what holds for all of them.

    A row that passes is cut to the width; what is to be acted on is wrapped below it. A `short`
    text says what holds for all of them as the short text of a finding does.
    """
    common = InCommon(_MOST_NOTES)
    for row in common.watch(results):
        said = _refusal(row.found) if row.found.score is None else row.found.made
        yield from _row(row, said, labels)
    yield ""
    yield from wrap(summary(tally), indent="  ")
    yield from summary_lines(tally)
    cautions, left = list(common.cautions.values()), list(common.not_checked.values())
    if short:
        yield from stops(cautions)
        yield from not_checked(left)
        yield from closing(cautions)
        return
    yield from block("Not checked", not_checked_lines(left))
    cited = (text for source in common.limits for text in wrap(f"- {source}", indent="  "))
    yield from block("Sources", cited)
    yield from block(
        "Take care", caution_lines(sorted(cautions, key=lambda c: c.severity == "note"))
    )


def json_lines(results: Iterable[RowResult], calculation: str) -> Iterator[str]:
    """Yield one JSON object a line: a finding with its row, or a row that came to none."""
    for row in results:
        about = _json({"row": row.row, "label": row.label, "kept": dict(row.kept)})
        found = row.found
        if found.score is not None:
            made = found.made
        else:
            refused = {
                "schema": "wirecalc.refused/1",
                "calculation": calculation,
                "problems": [p._asdict() for p in found.problems],
                "defect": found.defect or None,
            }
            made = _json(refused)
        yield f"{made[:-1]}, {about[1:]}"  # one object of the two


def table_lines(
    results: Iterable[RowResult],
    calculation: str,
    form: Form,
    *,
    kept: Sequence[str],
    labels: bool,
) -> Iterator[str]:
    """Yield CSV or Markdown: one line a row, behind its number and what is kept of it.

    It says what decided; with `criteria` there is a line a criterion, and its source.
    """
    head = RESULT if form.criteria else ROW
    yield from head_lines(("row", *(["label"] if labels else []), *kept, *head), form.format)
    for row in results:
        about: Cells = (row.row, *([row.label] if labels else []), *row.kept.values())
        before = line(about, form.format)
        made = row.found.made
        if row.found.score is None:
            word, why, _ = _refusal(row.found)
            word = word.casefold()
            empty = empty_cells(calculation, word, why) if form.criteria else empty_row(word, why)
            made = [line(empty, form.format)]
        for one in made:
            yield beside(before, one, form.format)


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


def _row(row: RowResult, said: _Said, labels: bool) -> Iterator[str]:
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


def _refusal(found: Found) -> _Said:
    if found.defect:
        return DEFECT.upper(), found.defect, True
    return REFUSED.upper(), ". ".join(map(str, found.problems)), True


def _told(outcome: Outcome) -> _Said:
    decided = outcome.decided_by
    if decided is None:
        return NO_VERDICT.upper(), undecided(outcome), False
    passed = decided.verdict is Verdict.PASS
    return verdict_word(decided.verdict), decided.because, not passed


def _cut(text: str, width: int) -> str:
    return textwrap.shorten(text, width, placeholder="...") if len(text) > width else text

"""`wirecalc batch NAME FILE`: run a calculation on each row of a CSV, row by row."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import chain
from pathlib import Path

from ..base.errors import BadInput, BadText, Problem
from ..base.files import write_whole
from ..base.unfinished import part_of, refuse_unfinished
from ..jobs.batch_columns import Plan
from ..jobs.batch_resumed import Written, from_row, going_on, read_written
from ..jobs.batch_row import RowResult
from ..jobs.batch_rows import RawRow
from ..jobs.batch_sources import ENDINGS, Rows, open_rows
from ..jobs.batch_tally import Tally
from ..output import batch as output
from ..output.batch_summary import InCommon, summary_json
from ..said.verdicts import Verdict
from . import COMMANDS, batch_work
from .load_plugins import catalogue, find, leading, warnings
from .options import Options, split
from .result import Result, Stream, refuse_onto, status_of

_USAGE = "such as batch pull pulls.csv --terminal ring"
_GROWING = ("csv", "json")  # a line or a few a row, and nothing below them


def run(words: Sequence[str]) -> Result:
    """Run a calculation on each row of a file; what is printed comes row by row."""
    if not words or words[0].startswith("-") or words[0].casefold().endswith(ENDINGS):
        raise BadInput([Problem("batch", "needs the name of a calculation, and a file", _USAGE)])
    loaded = catalogue(words)
    name = words[0]
    if name not in loaded.calculations:  # words for it, and perhaps the file
        name = " ".join(word for word in leading(words) if not word.endswith(ENDINGS))
    calc = find(loaded, name, asked_by="batch")
    options = split(words[1:], COMMANDS["batch"], calc, most_words=1)
    summary = _checked(options)
    jobs = batch_work.processes(options)
    file = _opened(options.words[0])
    try:
        planned = batch_work.planned(calc, file.header, options)
        rows = _not_empty(file)
        head = _head(planned, options)
        written = _written(options, head)
    except BaseException:
        file.close()
        raise
    tally, common = Tally(), InCommon()
    worker = batch_work.worker_in(loaded, calc.name, planned, options)
    asked = batch_work.Asked(words, calc.name, file.header)
    after = from_row(rows, written.row) if written else rows
    found = tally.watch(batch_work.results(worker, _watched(after, options), asked, jobs))
    if summary is not None:
        found = common.watch(found)
    lines = _lines(found, calc.name, planned, options, tally)
    if written is not None and options.output is not None:
        if head and written.keep:
            next(lines)  # it stands there
        lines = going_on(lines, written, part_of(options.output))
    if summary is not None:
        lines = _and_then(
            lines, lambda: write_whole(summary, summary_json(calc.name, tally, common))
        )
    return Result(
        Stream(lines, lambda: _status(tally, written, options)),
        output=options.output,
        warnings=warnings(loaded),
        grows_behind=written.keep if written else None,
    )


def _checked(options: Options) -> Path | None:
    """Return where the summary goes, if it is asked for; raises BadInput with what is wrong."""
    if not options.words:
        options.problems.append(Problem("batch", "needs a file", _USAGE))
    options.refuse()
    refuse_onto(options.output, options.words)
    if options.own.get("summary") == "":
        raise BadInput([Problem("--summary", "is empty", "name a file")])
    summary = Path(options.own["summary"]) if "summary" in options.own else None
    refuse_onto(summary, [*options.words, *([str(options.output)] if options.output else [])])
    if summary is not None and summary == options.output:
        raise BadInput([Problem("--summary", "is the file of --output", "name another")])
    if "resume" in options.own:
        _check_resume(options)
    return summary


def _check_resume(options: Options) -> None:
    wrong = would_do = ""
    if options.output is None:
        wrong, would_do = "goes on with the file of --output", "name it"
    elif options.format not in _GROWING:
        wrong, would_do = "goes on with lines of rows alone", "write --format csv or json"
    elif "summary" in options.own:
        wrong = "knows nothing of the rows before, and a summary is of all rows"
        would_do = "leave one of the two"
    if wrong:
        raise BadInput([Problem("--resume", wrong, would_do)])


def _written(options: Options, head: str) -> Written | None:
    """Return what is there of an output that grows; None where it does not grow."""
    if options.output is None or options.format not in _GROWING:
        return None
    if "resume" in options.own:
        return read_written(part_of(options.output), options.format, head)
    refuse_unfinished(options.output, "add --resume to go on with it, or take it away")
    return Written()


def _head(planned: Plan, options: Options) -> str:
    """Return the head that stands above the lines of a CSV."""
    if options.format != "csv":
        return ""
    return next(_lines((), "", planned, options, Tally()))


def _status(tally: Tally, written: Written | None, options: Options) -> int:
    words = written.words if written else frozenset()
    return status_of(
        [*tally.verdicts, *(v for v in Verdict if v in words)],
        defect=bool(tally.defects) or "defect" in words,
        refused=bool(tally.refused) or "refused" in words,
        no_marginal=options.no_marginal,
    )


def _opened(name: str) -> Rows:
    try:
        return open_rows(name)
    except BadText as error:
        raise BadInput([error.about(name)]) from None


def _not_empty(file: Rows) -> Iterator[RawRow]:
    rows = file.rows()
    first = next(rows, None)
    if first is None:
        wrong = "has a header and no rows"
        raise BadInput([Problem(file.name, wrong, "write a row a run below it")])
    return chain([first], rows)


def _lines(
    found: Iterable[RowResult], name: str, planned: Plan, options: Options, tally: Tally
) -> Iterator[str]:
    form, labels = batch_work.form_of(options), planned.label is not None
    if form.format == "json":
        return output.json_lines(found, name)
    if form.format == "text":
        return output.text_lines(found, tally, labels=labels, short=options.short)
    return output.table_lines(found, name, form, kept=list(planned.kept), labels=labels)


def _and_then(lines: Iterator[str], done: Callable[[], None]) -> Iterator[str]:
    yield from lines
    done()


def _watched(rows: Iterable[RawRow], options: Options) -> Iterable[RawRow]:
    """Show on a terminal how far it has come, where the lines go to a file; tqdm is an extra."""
    if options.output is None or sys.stderr is None or not sys.stderr.isatty():
        return rows
    try:
        from tqdm import tqdm
    except ImportError:
        return rows
    bar: Iterable[RawRow] = tqdm(rows, unit=" rows", leave=False, file=sys.stderr)
    return bar

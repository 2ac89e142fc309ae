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
from ..output import batch_parquet
from ..output.batch_parquet import Parts
from ..output.batch_summary import InCommon, summary_json
from ..said.verdicts import Verdict
from . import COMMANDS, batch_work
from .load_plugins import catalogue, find, leading, warnings
from .options import Options, split
from .result import Result, Stream, refuse_onto, status_of
from .usage import PARQUET

_USAGE = "such as batch pull pulls.csv --terminal ring"
_GROWING = ("csv", "json", PARQUET)  # rows, and nothing below them


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
        before = _before(planned, options)
    except BaseException:
        file.close()
        raise
    tally, common = Tally(), InCommon()
    worker = batch_work.worker_in(loaded, calc.name, planned, options)
    asked = batch_work.Asked(words, calc.name, file.header)
    after = from_row(rows, before.row) if before else rows
    found = tally.watch(batch_work.results(worker, _watched(after, options), asked, jobs))
    if summary is not None:
        found = common.watch(found)
    if isinstance(before, Parts) and options.output is not None:
        lines = batch_parquet.written(found, options.output, before)
    else:
        lines = _lines(found, calc.name, planned, options, tally)
        if isinstance(before, Written) and options.output is not None:
            if _head(planned, options) and before.keep:
                next(lines)  # it stands there
            lines = going_on(lines, before, part_of(options.output))
    if summary is not None:
        lines = _and_then(
            lines, lambda: write_whole(summary, summary_json(calc.name, tally, common))
        )
    return Result(
        Stream(_and_close(lines, file), lambda: _status(tally, before, options)),
        output=None if isinstance(before, Parts) else options.output,
        warnings=warnings(loaded),
        grows_behind=before.keep if isinstance(before, Written) else None,
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
    _check_parquet(options)
    if "resume" in options.own:
        _check_resume(options)
    return summary


def _check_parquet(options: Options) -> None:
    output = options.output
    named = output is not None and output.suffix.casefold() == f".{PARQUET}"
    if options.format == PARQUET:
        if output is None:
            raise BadInput([Problem("--format", "parquet is no text", "name a file with --output")])
        batch_parquet.refuse_special(output)
    elif named:
        wrong = f"is named as a Parquet file, and is to be {options.format}"
        raise BadInput([Problem(str(output), wrong, "add --format parquet")])


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


def _before(planned: Plan, options: Options) -> Written | Parts | None:
    """Return what is there of an output that grows; None where it does not grow."""
    if options.output is None or options.format not in _GROWING:
        return None
    resume = "resume" in options.own
    if not resume:
        refuse_unfinished(options.output, "add --resume to go on with it, or take it away")
    if options.format == PARQUET:
        columns = batch_parquet.schema(planned.label is not None, list(planned.kept))
        return batch_parquet.read_parts(options.output, columns) if resume else Parts(columns)
    if resume:
        head = _head(planned, options)
        return read_written(part_of(options.output), options.format, head)
    return Written()


def _head(planned: Plan, options: Options) -> str:
    """Return the head that stands above the lines of a CSV."""
    if options.format != "csv":
        return ""
    return next(_lines((), "", planned, options, Tally()))


def _status(tally: Tally, before: Written | Parts | None, options: Options) -> int:
    words = before.words if before else frozenset()
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


def _and_close(lines: Iterator[str], file: Rows) -> Iterator[str]:
    try:
        yield from lines
    finally:
        file.close()


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

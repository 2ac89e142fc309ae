"""`wirecalc batch NAME FILE`: run a calculation on each row of a CSV, row by row."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import chain
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, BadText, Problem
from ..base.files import write_whole
from ..engine.declaration import Calculation
from ..engine.merged_finding import Outcome
from ..jobs import batch, batch_columns
from ..jobs.batch_row import RowResult
from ..jobs.batch_rows import RawRow, RowsFile
from ..jobs.batch_tally import Tally
from ..output import batch as output
from ..output.batch_summary import InCommon, summary_json
from ..plugging.host import Catalogue
from . import COMMANDS
from .load_plugins import catalogue, find, leading, warnings
from .options import Options, split
from .result import Result, Stream, refuse_onto, status_of
from .usage import with_meter

MOST_JOBS = 64  # processes
_USAGE = "such as batch pull pulls.csv --terminal ring"


def run(words: Sequence[str]) -> Result:
    """Run a calculation on each row of a file; what is printed comes row by row."""
    if not words or words[0].startswith("-") or words[0].casefold().endswith(".csv"):
        raise BadInput([Problem("batch", "needs the name of a calculation, and a file", _USAGE)])
    loaded = catalogue(words)
    name = words[0]
    if name not in loaded.calculations:  # words for it, and perhaps the file
        name = " ".join(word for word in leading(words) if not word.endswith(".csv"))
    calc = find(loaded, name, asked_by="batch")
    options = split(words[1:], COMMANDS["batch"], calc, most_words=1)
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
    jobs = _jobs(options)
    file = _opened(options.words[0])
    try:
        planned = _planned(calc, file.header, options)
        rows = _not_empty(file)
    except BaseException:
        file.close()
        raise
    tally, form = Tally(), _form(options)
    worker = _worker(loaded, calc.name, planned, options)
    found = tally.watch(
        _results(worker, _watched(rows, options), calc.name, file.header, words, jobs)
    )

    def status() -> int:
        return status_of(
            tally.verdicts,
            defect=bool(tally.defects),
            refused=bool(tally.refused),
            no_marginal=options.no_marginal,
        )

    common = InCommon()
    if summary is not None:
        found = common.watch(found)
    lines = _lines(found, calc.name, planned, form, options, tally)
    if summary is not None:
        lines = _and_then(
            lines, lambda: write_whole(summary, summary_json(calc.name, tally, common))
        )
    return Result(Stream(lines, status), output=options.output, warnings=warnings(loaded))


def _worker(
    loaded: Catalogue, name: str, planned: batch_columns.Plan, options: Options
) -> batch.Worker[Outcome]:
    form = _form(options)
    run_one = loaded.outcomes(name, origin="sheet")
    gather = "summary" in options.own or form.format == "text"
    return batch.Worker(run_one, planned, form.make, gather=gather, most=form.most)


def worker_of(words: Sequence[str], name: str, header: Sequence[str]) -> batch.Worker[Outcome]:
    """Return what works out the rows of a batch in another process, from the words of its line."""
    loaded = catalogue(words)
    calc = loaded.find(name).calculation
    options = split(words[1:], COMMANDS["batch"], calc, most_words=1)
    return _worker(loaded, name, _planned(calc, header, options), options)


def _results(
    worker: batch.Worker[Outcome],
    rows: Iterable[RawRow],
    name: str,
    header: Sequence[str],
    words: Sequence[str],
    jobs: int,
) -> Iterator[RowResult]:
    if jobs == 1 or worker.planned.reads_files:
        return batch.results(worker, rows)
    from ..jobs.batch_processes import results_of

    return results_of(jobs, worker_of, (words, name, header), worker, rows)


def _jobs(options: Options) -> int:
    """Return how many processes are asked for; raises BadInput."""
    text = options.own.get("jobs", "1")
    if not (text.isascii() and text.isdigit() and 1 <= int(text) <= MOST_JOBS):
        would_do = f"write a whole number from 1 to {MOST_JOBS}"
        raise BadInput([Problem("--jobs", f"{text!r} is no number of processes", would_do)])
    return int(text)


def _opened(name: str) -> RowsFile:
    try:
        return RowsFile(name)
    except BadText as error:
        raise BadInput([error.about(name)]) from None


def _planned(calc: Calculation[Any], header: Sequence[str], options: Options) -> batch_columns.Plan:
    own = options.own
    return batch_columns.plan(
        calc,
        header,
        with_meter(options.given, own),
        label=own.get("label", ""),
        keep=[name.strip() for name in own.get("keep", "").split(";") if name.strip()],
        decimal_comma="cells-decimal-comma" in own,
    )


def _not_empty(file: RowsFile) -> Iterator[RawRow]:
    rows = file.rows()
    first = next(rows, None)
    if first is None:
        wrong = "has a header and no rows"
        raise BadInput([Problem(file.name, wrong, "write a row a run below it")])
    return chain([first], rows)


def _form(options: Options) -> output.Form:
    return output.Form(options.format, "criteria" in options.own, options.working)


def _lines(
    found: Iterable[RowResult],
    name: str,
    planned: batch_columns.Plan,
    form: output.Form,
    options: Options,
    tally: Tally,
) -> Iterator[str]:
    labels = planned.label is not None
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

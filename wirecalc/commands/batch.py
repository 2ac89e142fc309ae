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
from ..jobs import batch, batch_columns
from ..jobs.batch_row import RowResult
from ..jobs.batch_rows import RawRow, RowsFile
from ..jobs.batch_tally import Tally
from ..output import batch as output
from ..output.batch_summary import InCommon, summary_json
from . import COMMANDS
from .load_plugins import catalogue, find, leading, warnings
from .options import Options, split
from .result import Result, Stream, refuse_onto, status_of
from .usage import with_meter

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
    file = _opened(options.words[0])
    try:
        planned = _planned(calc, file, options)
        rows = _not_empty(file)
    except BaseException:
        file.close()
        raise
    tally, form = Tally(), _form(options)
    run_one = loaded.outcomes(calc.name, origin="sheet")
    gather = summary is not None or form.format == "text"
    worker = batch.Worker(run_one, planned, form.make, gather=gather, most=form.most)
    found = tally.watch(batch.results(worker, _watched(rows, options)))

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


def _opened(name: str) -> RowsFile:
    try:
        return RowsFile(name)
    except BadText as error:
        raise BadInput([error.about(name)]) from None


def _planned(calc: Calculation[Any], file: RowsFile, options: Options) -> batch_columns.Plan:
    own = options.own
    return batch_columns.plan(
        calc,
        file.header,
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

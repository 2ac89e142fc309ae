"""What works out the rows of `wirecalc batch`, in this process or in several."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Any, NamedTuple

from ..base.errors import BadInput, Problem
from ..engine.declaration import Calculation
from ..engine.merged_finding import Outcome
from ..jobs import batch, batch_columns
from ..jobs.batch_row import RowResult
from ..jobs.batch_rows import RawRow
from ..output.batch import Form
from ..plugging.host import Catalogue
from . import COMMANDS
from .load_plugins import catalogue
from .options import Options, split
from .usage import with_meter

MOST_JOBS = 64  # processes


class Asked(NamedTuple):
    """A batch as it is asked for: the words of its line, the calculation, the file's header."""

    words: Sequence[str]
    name: str
    header: Sequence[str]


def results(
    worker: batch.Worker[Outcome], rows: Iterable[RawRow], asked: Asked, processes: int
) -> Iterator[RowResult]:
    """Yield what each row comes to, in the order of the file."""
    if processes == 1 or worker.planned.reads_files:
        return batch.results(worker, rows)
    from ..jobs.batch_processes import results_of

    return results_of(processes, worker_of, asked, worker, rows)


def worker_of(words: Sequence[str], name: str, header: Sequence[str]) -> batch.Worker[Outcome]:
    """Return what works out the rows of a batch in another process, from the words of its line."""
    loaded = catalogue(words)
    calc = loaded.find(name).calculation
    options = split(words[1:], COMMANDS["batch"], calc, most_words=1)
    return worker_in(loaded, name, planned(calc, header, options), options)


def worker_in(
    loaded: Catalogue, name: str, columns: batch_columns.Plan, options: Options
) -> batch.Worker[Outcome]:
    """Return what works out the rows of a batch with these plugins."""
    form = form_of(options)
    run_one = loaded.outcomes(name, origin="sheet")
    gather = "summary" in options.own or form.format == "text"
    return batch.Worker(run_one, columns, form.make, gather=gather, most=form.most)


def form_of(options: Options) -> Form:
    """Return how the batch is to be printed."""
    return Form(options.format, "criteria" in options.own, options.working)


def planned(calc: Calculation[Any], header: Sequence[str], options: Options) -> batch_columns.Plan:
    """Say what each column is; raises BadInput with everything that is wrong with them."""
    own = options.own
    return batch_columns.plan(
        calc,
        header,
        with_meter(options.given, own),
        label=own.get("label", ""),
        keep=[name.strip() for name in own.get("keep", "").split(";") if name.strip()],
        decimal_comma="cells-decimal-comma" in own,
    )


def processes(options: Options) -> int:
    """Return how many processes are asked for; raises BadInput."""
    text = options.own.get("jobs", "1")
    if not (text.isascii() and text.isdigit() and 1 <= int(text) <= MOST_JOBS):
        would_do = f"write a whole number from 1 to {MOST_JOBS}"
        raise BadInput([Problem("--jobs", f"{text!r} is no number of processes", would_do)])
    return int(text)

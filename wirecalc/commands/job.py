"""`wirecalc job FILE`: evaluate a job sheet."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from .. import jobsheet
from ..errors import BadInput, Problem
from ..job import Job
from ..options import REPORTS, Options, split
from ..output import text as text_output
from .loaded import catalogue, warnings
from .result import Result, status_of


def run(words: Sequence[str]) -> Result:
    """Evaluate a job sheet."""
    options = split(words, formats=REPORTS, most_words=1)
    options.refuse()
    if not options.words:
        raise BadInput([Problem("job", "needs a job sheet", "such as job repair.toml")])
    loaded = catalogue(words)
    done = jobsheet.evaluate(jobsheet.read(Path(options.words[0])), loaded)
    status = status_of([done.verdict], defect=done.has_defect, no_marginal=options.no_marginal)
    return Result(_rendered(done, options), status, options.output, warnings(loaded))


def _rendered(done: Job, options: Options) -> str:
    if options.format == "json":
        from ..output.json import dump, job_object

        return dump(job_object(done))
    if options.format == "html":
        from ..output.html import job_page

        return job_page(done, working=options.working)
    return text_output.job_text(done)

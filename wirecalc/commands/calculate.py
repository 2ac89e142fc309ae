"""`wirecalc NAME ...`: run a calculation, or show its help."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, Problem
from ..engine.declaration import Calculation
from ..output import text as text_output
from ..plugging import host
from ..said.charts import Chart
from ..said.findings import Finding
from ..said.items import Listing
from ..said.verdicts import Verdict
from ..typed.trials import sought_in
from .load_plugins import catalogue, find, leading, warnings
from .options import Options, split
from .result import Result, refuse_onto, status_of
from .usage import Command, with_meter


def run(name: str, words: Sequence[str], commands: Mapping[str, Command]) -> Result:
    """Run a calculation; `commands` are the other words that may have been meant."""
    loaded = catalogue(words)
    said = " ".join([name, *leading(words)])
    calc = find(loaded, said if name not in loaded.calculations else name, commands)
    options = split(words, calc=calc)
    options.given = with_meter(options.given, options.own)
    if said != name and not options.given:  # no values: words that say what is wanted
        find(loaded, said, commands)
    if sought_in(options.given):
        from .seek import run_sought

        return run_sought(loaded, name, options)
    _refuse_target(options)
    _refuse_all(loaded, name, options)
    return report(loaded, _computed(loaded, calc, options), calc, options)


def _computed(loaded: host.Catalogue, calc: Calculation[Any], options: Options) -> Finding:
    """Run it; who gave no input at all is told too what is related."""
    try:
        return with_more(loaded, calc, loaded.run(calc.name, options.given), options.given)
    except BadInput as error:
        if options.given:
            raise
        from .suggestions import related

        raise BadInput([*error.problems, *related(loaded, calc)]) from None


def with_more(
    loaded: host.Catalogue,
    calc: Calculation[Any],
    finding: Finding,
    given: Mapping[str, object],
) -> Finding:
    """Add up to which error of what was taken as exact a pass holds; what would pass after a fail.

    Both are found by running it again, so that a calculation that is dear and one that reads a
    file say neither.
    """
    if calc.own_band or any(i.kind.of_file and i.name in given for i in calc.inputs):
        return finding
    if finding.verdict is Verdict.PASS and finding.exact:
        from ..engine.which_meter import holds_to

        return replace(finding, holds=holds_to(finding, given, loaded.runner(calc.name)))
    if finding.verdict is Verdict.FAIL and calc.chosen:
        from ..engine.sought.would_pass import would_pass

        return replace(finding, would_pass=would_pass(loaded.seeker(calc.name), finding, given))
    return finding


def report(
    loaded: host.Catalogue, finding: Finding, calc: Calculation[Any], options: Options
) -> Result:
    """Put a finding into the form that was asked for, and draw its chart if one was."""
    files = {i.name for i in calc.inputs if i.kind.of_file}
    read = [i.given for i in finding.inputs if i.name in files and i.given]
    for path in (options.output, options.chart, *(path for path, _ in _apart(finding, options))):
        refuse_onto(path, read)
    drawn = _draw(finding, options.chart) if options.chart else []
    text = _rendered(finding, calc.question, options, drawn)
    status = status_of([finding.verdict], no_marginal=options.no_marginal)
    again = text_output.short_text(finding) if options.format == "text" else ""
    closing = "\n".join(_write_apart(finding, options))
    return Result(text, status, options.output, warnings(loaded), closing, again)


def _apart(finding: Finding, options: Options) -> Iterator[tuple[Path, Listing]]:
    """Yield the file beside the chart, or else the page, for each listing that is kept apart."""
    beside = options.chart or options.output
    if beside is not None and (beside.is_file() or not beside.exists()):  # no pipe, no device
        for listing in finding.apart:
            name = f"{beside.stem}-{listing.title.casefold().replace(' ', '-')}.csv"
            yield beside.with_name(name), listing


def _write_apart(finding: Finding, options: Options) -> Iterator[str]:
    """Write each listing that is kept apart into its file, and say which it is."""
    import csv
    import io

    from ..base.files import write_whole

    for path, listing in _apart(finding, options):
        rows = io.StringIO()
        csv.writer(rows, lineterminator="\n").writerows([listing.columns, *listing.rows])
        write_whole(path, rows.getvalue())
        yield f"{listing.title}: {path}, to be kept apart"


def _rendered(
    finding: Finding, question: str, options: Options, drawn: Sequence[tuple[Chart, str]]
) -> str:
    if options.format == "json":
        from ..output.json import dump, finding_object

        return dump(finding_object(finding, working=options.working, drawn=drawn))
    if options.format in ("csv", "markdown"):
        from ..output.rows import finding_rows

        return finding_rows(finding, options.format)
    if options.format == "html":
        from ..output.html import finding_page

        return finding_page(finding, question, working=options.working)
    if options.short:
        from ..output.short import finding_short

        return finding_short(finding)
    return text_output.finding_text(finding, question, working=options.working)


def check_chart(options: Options) -> None:
    """Refuse a chart's file whose kind is not known; raises BadInput."""
    if options.chart:
        from ..output.drawing import check_name

        check_name(options.chart)


def _draw(finding: Finding, path: Path) -> list[tuple[Chart, str]]:
    """Draw the chart of a finding into a file; refuse where there is none to draw."""
    from ..base.files import write_bytes
    from ..output.drawing import check_name, draw

    check_name(path)
    if not finding.charts:
        wrong = f"{finding.calculation} has no chart to draw"
        raise BadInput([Problem("--chart", wrong, "leave it out")])
    chart = finding.charts[0]()
    write_bytes(path, draw(chart, path.suffix.casefold()))
    return [(chart, str(path))]


def _refuse_target(options: Options) -> None:
    """Add what is wrong with a target where nothing is sought."""
    named = [f"--{name}" for name in ("target", "target-alone") if name in options.own]
    if named:
        do = "write sought in place of a value"
        options.problems.append(Problem(named[0], "nothing is sought", do))


def _refuse_all(loaded: host.Catalogue, name: str, options: Options) -> None:
    """Report wrong options together with inputs that cannot be read."""
    if not options.problems:
        return
    problems = list(options.problems)
    try:
        loaded.run(name, options.given)
    except BadInput as error:
        said = {p.name for p in problems}
        problems += [p for p in error.problems if p.name not in said]
    raise BadInput(problems)

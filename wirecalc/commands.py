"""The commands: each takes the words behind its name and returns text and exit status."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from importlib.metadata import version
from pathlib import Path
from typing import Any, NamedTuple

from . import host, tables
from .charts import Chart
from .criteria import Verdict
from .declaration import Calculation
from .errors import BadInput, Problem, TableError, did_you_mean
from .findings import Finding
from .options import REPORTS, Options, split
from .output import help as help_text
from .output import text as text_output

PASS, FAIL, CANNOT_TELL, DEFECT = 0, 1, 3, 4
SCHEMAS = ("finding", "job")


class Result(NamedTuple):
    """What a command came to: a text, where it goes, and the exit status."""

    text: str
    status: int = PASS
    output: Path | None = None
    warnings: Sequence[str] = ()


def status_of(
    verdicts: Iterable[Verdict | None], *, defect: bool = False, no_marginal: bool = False
) -> int:
    """Return the exit status of some verdicts: a fail first, then a defect, then cannot tell."""
    found = set(verdicts)
    if Verdict.FAIL in found:
        return FAIL
    if defect:
        return DEFECT
    if Verdict.CANNOT_TELL in found or (no_marginal and Verdict.MARGINAL in found):
        return CANNOT_TELL
    return PASS


def list_all(words: Sequence[str]) -> Result:
    """List all calculations by part of the trade."""
    catalogue = _catalogue(words)
    return Result(help_text.listing(catalogue, version("wirecalc")), warnings=_warnings(catalogue))


def calculate(name: str, words: Sequence[str]) -> Result:
    """Run a calculation, or show its help."""
    if "--help" in words or "-h" in words:
        return show_help([name])
    catalogue = _catalogue(words)
    calc = _find(catalogue, name)
    options = split(words, calc, formats=REPORTS)
    _refuse_all(catalogue, name, options)
    finding = catalogue.run(name, options.given)
    drawn = _draw(finding, options.chart) if options.chart else []
    if options.format == "json":
        from .output.json import dump, finding_object

        text = dump(finding_object(finding, working=options.working, drawn=drawn))
    elif options.format == "html":
        from .output.html import finding_page

        text = finding_page(finding, calc.question, working=options.working)
    else:
        text = text_output.finding_text(finding, calc.question, working=options.working)
    status = status_of([finding.verdict], no_marginal=options.no_marginal)
    return Result(text, status, options.output, _warnings(catalogue))


def _draw(finding: Finding, path: Path) -> list[tuple[Chart, str]]:
    """Draw the chart of a finding into a file; refuse where there is none to draw."""
    from .files import write_bytes
    from .output.drawing import check_name, draw

    check_name(path)
    if not finding.charts:
        wrong = f"{finding.calculation} has no chart to draw"
        raise BadInput([Problem("--chart", wrong, "leave it out")])
    chart = finding.charts[0]()
    write_bytes(path, draw(chart, path.suffix.casefold()))
    return [(chart, str(path))]


def _find(catalogue: host.Catalogue, name: str) -> Calculation[Any]:
    if name in catalogue.calculations:
        return catalogue.calculations[name].calculation
    known = sorted([*catalogue.calculations, *COMMANDS])
    would_do = did_you_mean(name, known) or "`wirecalc` lists them"
    raise BadInput([Problem("", f"there is no calculation or command {name!r}", would_do)])


def _refuse_all(catalogue: host.Catalogue, name: str, options: Options) -> None:
    """Report wrong options together with inputs that cannot be read."""
    if not options.problems:
        return
    problems = list(options.problems)
    try:
        catalogue.run(name, options.given)
    except BadInput as error:
        said = {p.name for p in problems}
        problems += [p for p in error.problems if p.name not in said]
    raise BadInput(problems)


def show_help(words: Sequence[str]) -> Result:
    """Show a calculation's help, or list all; a bundled one loads no outside plugin."""
    if not words:
        return list_all([])
    name = words[0]
    if name in COMMANDS:
        return Result(help_text.command_help(name))
    return Result(help_text.calculation_help(_find(_catalogue_with(name), name)))


def _catalogue_with(name: str) -> host.Catalogue:
    bundled = host.build(bundled_only=True)
    return bundled if name in bundled.calculations else host.build()


def explain(words: Sequence[str]) -> Result:
    """Explain a calculation, or print what it declares as JSON."""
    options = split(words, most_words=1)
    options.refuse()
    if not options.words:
        raise BadInput(
            [Problem("explain", "needs the name of a calculation", "such as explain pull")]
        )
    name = options.words[0]
    calc = _find(_catalogue_with(name), name)
    if options.format == "json":
        from .output.json import declaration_object, dump

        return Result(dump(declaration_object(calc)), output=options.output)
    return Result(help_text.explanation(calc), output=options.output)


def job(words: Sequence[str]) -> Result:
    """Evaluate a job sheet."""
    from . import jobsheet

    options = split(words, formats=REPORTS, most_words=1)
    options.refuse()
    if not options.words:
        raise BadInput([Problem("job", "needs a job sheet", "such as job repair.toml")])
    catalogue = _catalogue(words)
    done = jobsheet.evaluate(jobsheet.read(Path(options.words[0])), catalogue)
    if options.format == "json":
        from .output.json import dump, job_object

        text = dump(job_object(done))
    elif options.format == "html":
        from .output.html import job_page

        text = job_page(done, working=options.working)
    else:
        text = text_output.job_text(done)
    status = status_of([done.verdict], defect=done.has_defect, no_marginal=options.no_marginal)
    return Result(text, status, options.output, _warnings(catalogue))


def show_tables(words: Sequence[str]) -> Result:
    """List the published tables, or print one."""
    from .output import tables as table_output

    options = split(words, formats=table_output.FORMATS, most_words=1)
    options.refuse()
    catalogue = _catalogue(words)  # plugins may add tables
    try:
        if options.words:
            text = table_output.render(tables.load(options.words[0]), options.format)
        elif options.format == "json":
            from .output.json import dump

            loaded = [tables.load(n) for n in tables.names()]
            text = dump(table_output.overview_object(loaded))
        else:
            text = table_output.overview([tables.load(n) for n in tables.names()])
    except TableError as error:
        if options.words and options.words[0] not in tables.names():
            raise BadInput([Problem("", str(error))]) from None
        raise
    return Result(text, output=options.output, warnings=_warnings(catalogue))


def plugins(words: Sequence[str]) -> Result:
    """List the plugins with their state."""
    options = split(words)
    options.refuse()
    catalogue = _catalogue(words)
    catalogue.load_all()
    if options.format == "json":
        from dataclasses import asdict

        from .output.json import dump

        return Result(dump([asdict(p) for p in catalogue.plugins]), output=options.output)
    return Result(help_text.plugin_table(catalogue.plugins), output=options.output)


def schema(words: Sequence[str]) -> Result:
    """Print a published JSON schema."""
    options = split(words, most_words=1)
    options.refuse()
    name = options.words[0] if options.words else ""
    if name not in SCHEMAS:
        wrong = f"there is no schema {name!r}" if name else "needs a name"
        raise BadInput([Problem("schema", wrong, f"write {' or '.join(SCHEMAS)}")])
    path = Path(__file__).with_name("schemas") / f"{name}.json"
    return Result(path.read_text(encoding="utf-8").rstrip("\n"), output=options.output)


def _catalogue(words: Sequence[str]) -> host.Catalogue:
    return host.build(bundled_only="--bundled-only" in words)


def _warnings(catalogue: host.Catalogue) -> list[str]:
    said = {"failed": "was not loaded", "in part": "was loaded in part"}
    return [f"plugin {p} {said[p.state]}: {p.reason}" for p in catalogue.plugins if p.state in said]


COMMANDS: dict[str, Callable[[Sequence[str]], Result]] = {
    "explain": explain,
    "job": job,
    "plugins": plugins,
    "schema": schema,
    "tables": show_tables,
}

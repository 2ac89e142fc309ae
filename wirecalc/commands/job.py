"""`wirecalc job`: evaluate a job sheet, say what is missing on one, or write a new one."""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator, Sequence
from pathlib import Path

from ..base.errors import BadInput, Problem
from ..jobs import sheet as jobsheet
from ..jobs.job import Job
from ..jobs.sheet.gaps import Gaps, gaps
from ..output.layout import command, wrap
from ..plugging.host import Catalogue
from . import COMMANDS
from .load_plugins import catalogue, warnings
from .options import Options, split
from .result import CANNOT_TELL, PASS, Result, refuse_onto, status_of

_IN_PLACE = {"chart": "a job's pictures stand in --format html"}


def run(words: Sequence[str]) -> Result:
    """Evaluate a job sheet, or what its options ask for in place of that."""
    options = split(words, COMMANDS["job"], most_words=1)
    if any(p.name == "--new" for p in options.problems) and not options.words:
        return _kinds(words)
    _refuse_mixed(options)
    if "history" in options.own:
        from .job_record import history

        return history(options)
    if "export" in options.own:
        from .job_export import export

        return export(options)
    if "new" in options.own:
        return _new(words, options)
    if not options.words:
        raise BadInput([Problem("job", "needs a job sheet", "such as job repair.toml")])
    refuse_onto(options.output, options.words)
    loaded = catalogue(words)
    path = Path(options.words[0])
    content = jobsheet.content(path)
    sheet = jobsheet.parse(content, str(path))
    refuse_onto(options.output, (str(path.parent / said) for said in _texts(sheet)))
    done = jobsheet.evaluate(sheet, loaded, path.parent)
    if "check-only" in options.own:
        return _missing(gaps(done, sheet, loaded, path.parent), done, options, loaded)
    result = finished(done, options, loaded)
    if "record" in options.own:
        from .job_record import keep

        result = result._replace(warnings=[*result.warnings, keep(content, sheet, done, options)])
    return result


def finished(done: Job, options: Options, loaded: Catalogue, *, says_rest: bool = True) -> Result:
    """Put an evaluated job into the form that was asked for; `says_rest`: where all of it is."""
    status = status_of([done.verdict], defect=done.has_defect, no_marginal=options.no_marginal)
    again = _again(done, options) if options.format == "text" else ""
    said = warnings(loaded)
    return Result(
        _rendered(done, options, says_rest=says_rest), status, options.output, said, again=again
    )


def _texts(said: object) -> Iterator[str]:
    """Yield all texts of a sheet: any of them may be the name of a file that is read for it."""
    if isinstance(said, str):
        yield said
    elif isinstance(said, dict | list):
        for part in said.values() if isinstance(said, dict) else said:
            yield from _texts(part)


def _refuse_mixed(options: Options) -> None:
    """Raise BadInput for what is wrong so far, and for options that mean nothing together."""
    order = ("history", "export", "record", "new", "check-only")
    mine, *others = sorted(set(options.own) & set(order), key=order.index) or [""]
    options.problems += [
        Problem(f"--{other}", f"means nothing beside --{mine}", "leave one of them out")
        for other in others
    ]
    needs = {"chart": "history", "tool": "chart", "with-names": "export"}
    options.problems += [
        Problem(f"--{own}", f"means nothing without --{other}", _IN_PLACE.get(own, ""))
        for own, other in needs.items()
        if own in options.own and other not in options.own
    ]
    options.refuse()


def _rendered(done: Job, options: Options, *, says_rest: bool) -> str:
    if options.format == "json":
        from ..output.json import dump, job_object

        return dump(job_object(done, working=options.working))
    if options.format in ("csv", "markdown"):
        from ..output.rows import job_rows

        return job_rows(done, options.format)
    if options.format == "html":
        from ..output.html import job_page

        return job_page(done, working=options.working)
    if options.short:
        from ..output.job_short import job_short

        return job_short(done, says_rest=says_rest)
    from ..output.job import job_text

    return job_text(done, working=options.working)


def _again(done: Job, options: Options) -> str:
    """Return what stands below a text that ran off the screen: of a short one its first line."""
    from ..output.job import head, short_text

    return "\n".join(head(done)) if options.short else short_text(done)


def _missing(found: Gaps, done: Job, options: Options, loaded: Catalogue) -> Result:
    """Say what is missing on a sheet: exit 0 where nothing is, else 3."""
    from ..output.gaps import gaps_object, gaps_text

    if refused := options.form_refused("--check-only"):
        raise BadInput(refused)
    if options.format == "json":
        from ..output.json import dump

        text = dump(gaps_object(done, found))
    else:
        text = gaps_text(done, found)
    status = CANNOT_TELL if found.counts else PASS
    return Result(text, status, options.output, warnings(loaded))


def _kinds(words: Sequence[str]) -> Result:
    """Say which kinds of job a new sheet can be written for."""
    from ..jobs.sheet.kinds import expected, known_kinds

    loaded = catalogue(words)
    lines = [f"  {kind:<16} {len(expected(kind, loaded))} checks" for kind in known_kinds(loaded)]
    text = "\n".join([*wrap("wirecalc job --new KIND writes a sheet for one of"), *lines])
    return Result(text, warnings=warnings(loaded))


def _new(words: Sequence[str], options: Options) -> Result:
    """Write a new job sheet; a file that is there stays as it is."""
    from ..base.files import write_new
    from ..jobs.sheet.template import new_sheet

    wrong = [Problem(repr(w), "was not expected beside --new") for w in options.words]
    wrong += options.form_refused("--new", ("text",))
    if wrong:
        raise BadInput(wrong)
    loaded = catalogue(words)
    kind = options.own["new"]
    path = options.output or Path(f"{re.sub(r'[^a-z0-9]+', '-', kind.casefold())}.toml")
    write_new(path, new_sheet(kind, path.name, loaded))
    then = f"wirecalc job {shlex.quote(str(path))}"
    text = "\n".join([*wrap(f"wrote {path}; fill it in, then:"), *command(then)])
    return Result(text, warnings=warnings(loaded))

"""`wirecalc job FILE --record FOLDER` and `wirecalc job --history FOLDER`."""

from __future__ import annotations

import datetime
import sys
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, BadText, Problem
from ..base.files import write_bytes
from ..jobs import record, tool_pulls
from ..jobs.history import History, facts
from ..jobs.job import Job
from ..output import history as history_output
from ..output.drawing import check_name, draw
from ..output.html import job_page
from ..output.json import dump, job_object
from .options import Options
from .result import CANNOT_TELL, PASS, Result


def keep(content: bytes, sheet: Mapping[str, Any], done: Job, options: Options) -> str:
    """Record a job that was evaluated from a sheet, and return the line that says where.

    `content` is what stood in the file of the sheet. Raises BadInput where it cannot be written.
    """
    date = record.date_of(sheet["job"].get("date")) or datetime.date.today()
    job = dump(job_object(done)) + "\n"
    made = record.Record(date, done.title, content, job, job_page(done) + "\n")
    where, new = record.store(made, _folder(options, "record"))
    return f"recorded in {where}" if new else f"recorded before, and nothing is new: {where}"


def history(options: Options) -> Result:
    """Tell what the records of a folder tell together."""
    wrong = [Problem(repr(w), "--history takes no sheet") for w in options.words]
    wrong += options.form_refused("--history")
    if wrong:
        raise BadInput(wrong)
    folder = _folder(options, "history")
    if options.chart:
        check_name(options.chart)
    gathered: list[tool_pulls.Pull] = []
    found = count(
        folder, shown(record.entries(folder), sum(1 for _ in record.entries(folder))), gathered
    )
    if options.chart:
        chart = tool_pulls.chart(_of_one_tool(gathered, options.own.get("tool", "")))
        write_bytes(options.chart, draw(chart, options.chart.suffix.casefold()))
    if options.format == "json":
        text = dump(history_output.history_object(found))
    else:
        text = history_output.history_text(found)
    return Result(text, CANNOT_TELL if found.not_read else PASS, options.output)


def _folder(options: Options, name: str) -> Path:
    if not options.own[name]:
        raise BadInput([Problem(f"--{name}", "is empty", "name a folder")])
    return Path(options.own[name])


def _of_one_tool(found: Sequence[tool_pulls.Pull], wanted: str) -> list[tool_pulls.Pull]:
    """Return the pulls of the tool that is named, or of the only one; raises BadInput."""
    tools = {tool_pulls.same(p.tool): p.tool for p in reversed(found)}
    one = tool_pulls.same(wanted) or (next(iter(tools)) if len(tools) == 1 else "")
    if not tools:
        wrong, do = "there is no pull of a named tool in the records", 'write tool = "..." at pulls'
        raise BadInput([Problem("--chart", wrong, do)])
    if one not in tools:
        wrong = f"{wanted!r} pulled nothing there" if wanted else "the records have several tools"
        raise BadInput(
            [Problem("--tool", wrong, f"name one of {', '.join(sorted(tools.values()))}")]
        )
    return [p for p in found if tool_pulls.same(p.tool) == one]


def count(
    folder: Path, names: Iterable[str], gathered: list[tool_pulls.Pull] | None = None
) -> History:
    """Count the records of some names in a folder; none of them is kept, but the pulls gathered."""

    def date_of(said: str) -> datetime.date | None:
        day = record.named_date(said)
        return record.date_of(said) if day is None or not (folder / said).is_dir() else day

    found = History()
    for name in names:
        try:
            job = record.read(folder / name)
            told, day = facts(job), record.named_date(name)
            if gathered is not None and day is not None:
                gathered += tool_pulls.pulls(day, job)
        except BadText as error:
            found.refuse(name, str(error))
            continue
        if day is not None:  # what has no date in its name was refused
            found.add(day, told, date_of)
    return found


def shown(names: Iterable[str], total: int) -> Iterable[str]:
    """Show on a terminal how far it is, where tqdm is installed."""
    if sys.stderr is None or not sys.stderr.isatty():
        return names
    try:
        from tqdm import tqdm
    except ImportError:
        return names
    watched: Iterable[str] = tqdm(names, total=total, unit="record", leave=False, file=sys.stderr)
    return watched

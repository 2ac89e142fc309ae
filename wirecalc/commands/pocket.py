"""`wirecalc pocket`: all of it as one file for a browser, which fetches nothing."""

from __future__ import annotations

import datetime
import shutil
from collections.abc import Iterator, Sequence
from pathlib import Path

from ..base.errors import Problem
from ..base.files import write_whole
from ..output.layout import command, wrap
from ..plugging.host import Catalogue, build
from ..plugging.settings import Settings, read
from ..pocket import building, runtime
from ..pocket.fields import calculation_object
from ..pocket.web import files_beside
from . import COMMANDS
from .load_plugins import warnings
from .options import Options, split
from .result import Result

_A_DAY = "such as 2027-06-30"
_SLOWER = (
    "Its first result takes twice as long as it could: node, which comes with npm, was not there "
    "to make bytecode, or could not."
)


def run(words: Sequence[str]) -> Result:
    """Write the file; a plugin or a shop's file that cannot go into it is refused by name."""
    options = split(words, COMMANDS["pocket"], most_words=0)
    last_day = _last_day(options)
    options.problems += _lacking(options)
    options.refuse()
    assert options.output is not None
    files = runtime.read(Path(options.own["runtime"]))
    settings = read(words)
    loaded = build(settings)
    loaded.load_all()
    stock = Path(options.own["stock"]) if "stock" in options.own else None
    today, node = datetime.date.today().isoformat(), shutil.which("node") or ""
    asked = building.Asked(last_day, today, stock, node)
    known = [calculation_object(p.calculation) for p in loaded.calculations.values()]
    page, compiled = building.build(files, settings, known, _about(loaded, settings), asked)
    names = _write(options.output, page, web="serve-worker" in options.own)
    lines = wrap(f"Wrote {' and '.join(names)}, {len(page.encode()) / 1e6:.1f} MB.")
    lines += [*wrap("Open it in a browser; it needs no network:"), *command(names[0])]
    if not compiled:
        lines += wrap(_SLOWER)
    return Result("\n".join(lines), warnings=warnings(loaded))


def _lacking(options: Options) -> Iterator[Problem]:
    """Yield what is missing of file and runtime, and a name that another file gets."""
    web = "serve-worker" in options.own
    if options.output is None:
        wrong = "is needed: the file to write"
        yield Problem("--output", wrong, "such as --output wirecalc.html")
    elif web and options.output.name in dict(files_beside("")):
        wrong = f"{options.output.name} is written beside it for a web address"
        yield Problem("--output", wrong, "another name, such as --output wirecalc.html")
    if "runtime" not in options.own:
        wrong = "is needed: Python for a browser"
        how = f"{runtime.GET} gets it, then --runtime pyodide-{runtime.VERSION}.tgz"
        yield Problem("--runtime", wrong, how)


def _last_day(options: Options) -> str:
    """Return the last day as it was typed, or nothing; what is wrong with it goes to the rest."""
    if "last-day" not in options.own:
        return ""
    typed = options.own["last-day"]
    try:
        day = datetime.date.fromisoformat(typed)
    except ValueError:
        options.problems.append(Problem("--last-day", f"{typed!r} is no date", _A_DAY))
        return ""
    if day < datetime.date.today():
        wrong = f"{typed} is past: the file would compute nothing"
        options.problems.append(Problem("--last-day", wrong, _A_DAY))
    return day.isoformat()


def _about(loaded: Catalogue, settings: Settings) -> dict[str, list[str]]:
    """Say of the file what the shop put into it."""
    return {
        "rules": [path.name for path in settings.rules_files],
        "plugins": [str(p) for p in loaded.plugins if not p.bundled and not p.broken],
        "instruments": [i.name for i in loaded.instruments.instruments],
    }


def _write(path: Path, page: str, *, web: bool) -> list[str]:
    """Write the page, and beside it what a web address needs; return the names."""
    write_whole(path, page)
    names = [str(path)]
    for name, text in files_beside(path.name) if web else ():
        write_whole(path.with_name(name), text)
        names.append(str(path.with_name(name)))
    return names

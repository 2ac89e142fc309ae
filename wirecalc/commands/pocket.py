"""`wirecalc pocket`: all of it as one file for a browser, which fetches nothing."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from pathlib import Path

from ..base.errors import BadInput, Problem
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


def run(words: Sequence[str]) -> Result:
    """Write the file; a plugin or a shop's file that cannot go into it is refused by name."""
    options = split(words, COMMANDS["pocket"], most_words=0)
    options.refuse()
    if options.output is None:
        wrong = "is needed: the file to write"
        raise BadInput([Problem("--output", wrong, "such as --output wirecalc.html")])
    if "runtime" not in options.own:
        wrong = "is needed: Python for a browser"
        how = f"{runtime.GET} gets it, then --runtime pyodide-{runtime.VERSION}.tgz"
        raise BadInput([Problem("--runtime", wrong, how)])
    files = runtime.read(Path(options.own["runtime"]))
    settings = read(words)
    loaded = build(settings)
    loaded.load_all()
    stock = Path(options.own["stock"]) if "stock" in options.own else None
    asked = building.Asked(_last_day(options), datetime.date.today().isoformat(), stock)
    known = [calculation_object(p.calculation) for p in loaded.calculations.values()]
    page = building.build(files, settings, known, _about(loaded, settings), asked)
    names = _write(options.output, page, web="serve-worker" in options.own)
    lines = wrap(f"Wrote {' and '.join(names)}, {len(page.encode()) / 1e6:.1f} MB.")
    lines += [*wrap("Open it in a browser; it needs no network:"), *command(names[0])]
    return Result("\n".join(lines), warnings=warnings(loaded))


def _last_day(options: Options) -> str:
    typed = options.own.get("last-day", "")
    try:
        return datetime.date.fromisoformat(typed).isoformat() if typed else ""
    except ValueError:
        wrong = f"{typed!r} is no date"
        raise BadInput([Problem("--last-day", wrong, "such as 2027-06-30")]) from None


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

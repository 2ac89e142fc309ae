"""`wirecalc NAME ... --INPUT sought`: what the input would have to be."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

from ..base.errors import BadInput, Problem
from ..engine.sought.seeking import Seeker, Sought, SoughtTable
from ..plugging.host import Catalogue
from .load_plugins import warnings
from .options import Options
from .result import Result


def run_sought(loaded: Catalogue, name: str, options: Options) -> Result:
    """Find the spans by verdict of what is sought, in the form that was asked for."""
    problems = list(options.problems)
    alone = "target-alone" in options.own
    if alone and "target" not in options.own:
        problems.append(Problem("--target-alone", "there is no --target", "give one, or leave it"))
    if problems:
        raise BadInput(problems)
    ticked, done = _progress(loaded.find(name).calculation.own_band)
    target = options.own.get("target", "")
    seeker: Seeker = loaded.seeker(name, target=target, criteria=not alone, ticked=ticked)
    try:
        found = seeker.seek(options.given)
    finally:
        done()
    if options.chart:
        _draw(found, options.chart)
    return Result(_rendered(found, options), 0, options.output, warnings(loaded))


def _progress(dear: bool) -> tuple[Callable[[], object], Callable[[], object]]:
    """Return what shows the progress of a dear calculation on a terminal, and what ends it."""
    if dear and sys.stderr.isatty():
        try:
            from tqdm import tqdm
        except ImportError:
            pass
        else:
            bar = tqdm(unit="run", leave=False, file=sys.stderr)
            return bar.update, bar.close
    return (lambda: None), (lambda: None)


def _rendered(found: Sought | SoughtTable, options: Options) -> str:
    form = options.format
    if form == "json":
        from ..output.json import dump
        from ..output.sought_json import sought_object

        return dump(sought_object(found))
    if form == "html":
        from ..output.html_sought import sought_page

        return sought_page(found)
    from ..output.sought import sought_rows, sought_short, sought_text

    if form in ("csv", "markdown"):
        return sought_rows(found, form)
    return sought_short(found) if options.short else sought_text(found)


def _draw(found: Sought | SoughtTable, path: Path) -> None:
    from ..base.files import write_bytes
    from ..output.drawing import check_name, draw
    from ..output.sought_chart import sought_chart

    check_name(path)
    write_bytes(path, draw(sought_chart(found), path.suffix.casefold()))

"""`wirecalc new-plugin NAME`: write a package with a shop's first plugin, to change."""

from __future__ import annotations

import shlex
from collections.abc import Sequence
from pathlib import Path

from .. import new_plugin
from ..base.errors import BadInput, Problem
from ..output.layout import command, wrap
from ..plugging import host
from . import COMMANDS
from .options import split
from .result import Result


def run(words: Sequence[str]) -> Result:
    """Write a package with a plugin into a folder of its name, or into that of --output."""
    options = split(words, COMMANDS["new-plugin"], most_words=1)
    options.refuse()
    if not options.words:
        raise BadInput([Problem("new-plugin", "needs a name", "such as new-plugin shop-bench")])
    bundled = host.build(bundled_only=True)
    names = new_plugin.names_for(options.words[0], bundled.calculations)
    folder = options.output or Path(names.name)
    written = new_plugin.write(names, folder)
    where = shlex.quote(str(folder))
    lines = wrap(f"Wrote {folder}, with invented numbers:")
    lines += [line for name in written for line in wrap(name, "  ", "    ")]
    lines += ["", *wrap("Install it beside wirecalc, try it, and run its tests:")]
    for typed in (
        f"pip install --editable {shlex.quote(f'{folder}[test]')}",
        f'wirecalc {names.calculation} --seal-gap "0.4 mm"',
        f"python -m pytest {where}",
    ):
        lines += command(typed)
    lines += ["", *wrap(f"Then change {names.module}/__init__.py in it.")]
    return Result("\n".join(lines))

"""`wirecalc plugins`: the plugins with their state."""

from __future__ import annotations

from collections.abc import Sequence

from ..plugging import host
from ..plugging.settings import read
from . import COMMANDS, help_texts
from .options import split
from .result import DEFECT, PASS, Result


def run(words: Sequence[str]) -> Result:
    """List the plugins with their state; strictly, a broken one makes the exit status 4."""
    options = split(words, COMMANDS["plugins"])
    options.refuse()
    settings = read(words)
    loaded = host.build(settings._replace(strict=False))  # to name the broken ones
    loaded.load_all()
    strictly = settings.strict and any(p.broken for p in loaded.plugins)
    status = DEFECT if strictly else PASS
    if options.format == "json":
        from dataclasses import asdict

        from ..output.json import dump

        found = {"schema": "wirecalc.plugins/1", "plugins": [asdict(p) for p in loaded.plugins]}
        return Result(dump(found), status, options.output)
    return Result(help_texts.plugin_table(loaded.plugins), status, options.output)

"""`wirecalc plugins`: the plugins with their state."""

from __future__ import annotations

from collections.abc import Sequence

from ..options import split
from ..output import help as help_text
from .loaded import catalogue
from .result import Result


def run(words: Sequence[str]) -> Result:
    """List the plugins with their state."""
    options = split(words)
    options.refuse()
    loaded = catalogue(words)
    loaded.load_all()
    if options.format == "json":
        from dataclasses import asdict

        from ..output.json import dump

        return Result(dump([asdict(p) for p in loaded.plugins]), output=options.output)
    return Result(help_text.plugin_table(loaded.plugins), output=options.output)

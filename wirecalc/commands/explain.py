"""`wirecalc explain NAME`: how a calculation works, or what it declares as JSON."""

from __future__ import annotations

from collections.abc import Sequence

from ..errors import BadInput, Problem
from ..options import split
from ..output import help as help_text
from .loaded import catalogue_with, find
from .result import Result


def run(words: Sequence[str]) -> Result:
    """Explain a calculation."""
    options = split(words, most_words=1)
    options.refuse()
    if not options.words:
        raise BadInput(
            [Problem("explain", "needs the name of a calculation", "such as explain pull")]
        )
    name = options.words[0]
    calc = find(catalogue_with(name), name)
    if options.format == "json":
        from ..output.json import declaration_object, dump

        return Result(dump(declaration_object(calc)), output=options.output)
    return Result(help_text.explanation(calc), output=options.output)

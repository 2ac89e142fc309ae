"""`wirecalc explain NAME`: how a calculation works, with an example, or its declaration as JSON."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ..base.errors import BadInput, Problem
from ..engine.declaration import Calculation
from ..output.rules import ListedRule, listed
from ..plugging.worked_examples import example_files, worked_example
from ..said.findings import Finding
from . import COMMANDS
from .load_plugins import catalogue, find, warnings
from .options import MOST_WORDS, split
from .result import Result


def run(words: Sequence[str]) -> Result:
    """Explain a calculation, and work its example with the house rules in force."""
    options = split(words, COMMANDS["explain"], most_words=MOST_WORDS)
    options.refuse()
    if not options.words:
        raise BadInput(
            [Problem("explain", "needs the name of a calculation", "such as explain pull")]
        )
    name = " ".join(options.words)
    loaded = catalogue(words)
    calc = find(loaded, name, asked_by="explain")
    files, rules = example_files(calc), listed(loaded, name)
    example = worked_example(loaded, calc)
    if options.format == "json":
        text = _as_json(calc, example, files, rules)
    else:
        from ..output.explanation import explanation

        text = explanation(calc, example, files, rules, loaded.not_loaded)
    return Result(text, output=options.output, warnings=warnings(loaded))


def _as_json(
    calc: Calculation[Any],
    example: Finding | str,
    files: Mapping[str, str],
    rules: Sequence[ListedRule],
) -> str:
    """Return the declaration with the worked example, or why there is none, and house rules."""
    from ..output.json import dump, finding_object
    from ..output.json_declaration import declaration_object

    more = {
        "worked_example": finding_object(example, working=True)
        if isinstance(example, Finding)
        else None,
        "not_worked": example if isinstance(example, str) else None,
        "example_files": dict(files),
        "house_rules": [rule._asdict() for rule in rules],
    }
    return dump(declaration_object(calc) | more)

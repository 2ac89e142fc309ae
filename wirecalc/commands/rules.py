"""`wirecalc rules [FILE]`: the house rules in force, or a rules file checked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from .. import host, rules_file, rules_tried
from ..errors import BadInput, Problem
from ..options import split
from ..output.rules import listed, rules_text
from ..settings import RULES
from .loaded import catalogue, warnings
from .result import Result

NONE = (
    "No house rules are in force. A plugin gives some, or a rules file that "
    f"the settings or {RULES} name; `wirecalc rules FILE` checks one."
)


def run(words: Sequence[str]) -> Result:
    """List the house rules in force; with a file, check that one and list its rules."""
    options = split(words, most_words=1)
    options.refuse()
    loaded = catalogue(words)
    said = warnings(loaded)
    if options.words:
        loaded, notes = _only(Path(options.words[0]), loaded)
        said = [*said, *notes]
    rows = listed(loaded)
    if options.format == "json":
        from ..output.json import dump

        found = {"schema": "wirecalc.rules/1", "rules": [r._asdict() for r in rows]}
        return Result(dump(found), output=options.output, warnings=said)
    none = "This file has no rules." if options.words else NONE
    return Result("\n".join(rules_text(rows, none)), output=options.output, warnings=said)


def _only(path: Path, loaded: host.Catalogue) -> tuple[host.Catalogue, list[str]]:
    """Return a catalogue with the rules of one file; raises BadInput with all that is wrong."""
    beside = rules_file.Beside(loaded.folders, loaded.required)
    wrong = rules_file.check(path, loaded.calculations, beside)
    if wrong:
        where = [f"{path.name}, line {w.line}" if w.line else path.name for w in wrong]
        raise BadInput(Problem(at, w.wrong, w.would_do) for at, w in zip(where, wrong, strict=True))
    found = rules_file.load([path], loaded.calculations, beside)
    only = replace(loaded, rules=found.rules, required=found.required)
    notes: list[str] = []
    failed = [*rules_tried.tried(path, only, notes)]
    if failed:
        raise BadInput(failed)
    return only, [*notes, *rules_tried.hints(path, only)]

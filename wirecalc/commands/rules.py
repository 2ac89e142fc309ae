"""`wirecalc rules [FILE]`: the house rules in force, or a rules file checked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from .. import host, rules_file
from ..errors import BadInput, PluginDefect, Problem
from ..findings import Finding
from ..options import split
from ..output.rules import listed, rules_table
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
    return Result("\n".join(rules_table(rows, none)), output=options.output, warnings=said)


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
    failed = [*_tried(only, notes)]
    if failed:
        raise BadInput(failed)
    return only, notes


def _tried(loaded: host.Catalogue, notes: list[str]) -> Iterator[Problem]:
    """Try each rule on the example of its calculation: yield what fails, note what has no say.

    Names of criteria, their units and senses are known only from a run.
    """
    findings: dict[str, Finding | None] = {}
    for provided in loaded.rules:
        name = provided.rule.calculations[0]
        if name not in findings:
            findings[name] = _example(loaded, name)
        finding = findings[name]
        for judged in finding.criteria if finding else ():
            said = judged.criterion.name if judged.provider == provided.plugin else ""
            if said == f"house rule {provided.rule.name}":
                why = judged.reason.removeprefix(f"{said} of {provided.plugin} failed: ")
                line, colon, said = why.partition(": ")
                placed = colon and line.startswith("line ")
                where = line if placed else provided.version
                yield Problem(f"{provided.plugin}, {where}", said if placed else why)
            elif said == provided.rule.name and judged.criterion.sense == "cannot tell":
                notes.append(f"{said}, on the example of {name}: {judged.reason}")


def _example(loaded: host.Catalogue, name: str) -> Finding | None:
    """Run the example of a calculation; None where it cannot be run, as for want of a file."""
    try:
        calc = loaded.calculations[name].calculation
        return loaded.run(name, calc.example_inputs)
    except (BadInput, PluginDefect):
        return None

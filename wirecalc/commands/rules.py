"""`wirecalc rules [FILE]`: the house rules in force, or a rules file checked."""

from __future__ import annotations

import contextlib
import inspect
import sys
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from .. import host, rules_file
from ..declaration import Calculation
from ..errors import BadInput, PluginDefect, Problem, did_you_mean, nearest
from ..examples import tried
from ..findings import Finding
from ..options import split
from ..output.rules import listed, rules_table
from ..rules_text import Entry, read
from ..settings import RULES
from .loaded import catalogue, warnings
from .result import Result

SLIP = 0.8  # how like another a name must be to be taken for it, mistyped
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
    failed = [*_tried(path, only, notes)]
    if failed:
        raise BadInput(failed)
    return only, notes


def _tried(path: Path, loaded: host.Catalogue, notes: list[str]) -> Iterator[Problem]:
    """Try each rule on the examples of its calculations: yield what fails, note what has no say.

    Names of criteria, their units and senses are known only from a run.
    """
    for entry in read(path).entries:
        for name in entry.calculations if entry.section == "rule" else ():
            with contextlib.suppress(PluginDefect):
                yield from _try(entry, path.name, loaded, name, notes)


def _try(
    entry: Entry, file: str, loaded: host.Catalogue, name: str, notes: list[str]
) -> Iterator[Problem]:
    """Run a rule on the first example of a calculation in which it has a say."""
    calc = loaded.calculations[name].calculation
    what = next((key for key in ("criterion", "figure") if key in entry.given), "")
    wanted = entry.given.get(what, "")
    seen: dict[str, None] = {}
    for finding in tried(loaded, calc):
        names = _names(finding, what)
        seen.update(dict.fromkeys(names))
        said = [c for c in finding.criteria if c.provider == file and entry.name in c.because]
        if (what and wanted not in names) or not said:
            continue
        for judged in said:
            if judged.criterion.name == f"house rule {entry.name}":
                why = judged.reason.removeprefix(f"{judged.criterion.name} of {file} failed: ")
                line, _, wrong = why.partition(": ")
                yield Problem(f"{file}, {line}", wrong)
            elif judged.criterion.sense == "cannot tell":
                where = f"{file}, line {entry.line}"
                notes.append(f"{where}: {entry.name}, on an example of {name}: {judged.reason}")
        return
    if what and wanted not in seen:
        wrong = f"no example of {name} has a {what} {wanted!r}"
        where = f"{file}, line {entry.line_of(what)}"
        if nearest(wanted, list(seen), alike=SLIP) and not _in_source(wanted, calc):
            yield Problem(where, wrong, did_you_mean(wanted, list(seen)))
        else:
            near = did_you_mean(wanted, list(seen)) or f"known: {', '.join(seen)}"
            notes.append(str(Problem(where, wrong, near)))


def _names(finding: Finding, what: str) -> list[str]:
    if what == "figure":
        return [f.figure.name for f in finding.figures]
    return [c.criterion.name for c in finding.criteria if c.provider == finding.plugin]


def _in_source(name: str, calc: Calculation[Any]) -> bool:
    """Whether a text stands in the module of a calculation; a slip stands nowhere there."""
    try:
        return name in inspect.getsource(sys.modules[calc.function.__module__])
    except (KeyError, OSError, TypeError):
        return True  # nobody can say

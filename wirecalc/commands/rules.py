"""`wirecalc rules [FILE]`: the house rules in force, or a rules file checked."""

from __future__ import annotations

import contextlib
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from ..base.errors import BadInput, Problem
from ..output.layout import wrap
from ..output.rules import listed, rules_text
from ..plugging import host
from ..plugging.settings import RULES, looked_at, read
from ..rules import files as rules_file
from . import COMMANDS, rules_tried
from .load_plugins import catalogue, warnings
from .options import split
from .result import Result

NONE = (
    "No house rules are in force. A plugin gives some, or a rules file that "
    f"the settings or {RULES} name; `wirecalc rules FILE` checks one."
)


def run(words: Sequence[str]) -> Result:
    """List the house rules in force; with a file, check that one and list its rules."""
    options = split(words, COMMANDS["rules"], most_words=1)
    options.refuse()
    loaded = catalogue(words)
    said = warnings(loaded)
    if options.words:
        loaded, notes = _only(Path(options.words[0]), loaded)
        said = [*said, *notes]
    else:
        said = [*said, *_refuse_wrong(loaded, read(words).rules_files)]
    rows = listed(loaded)
    changed = [*rules_tried.changes(loaded)] if options.words else []
    file = Path(options.words[0]) if options.words else None
    in_force = file is not None and _among(file, read(words).rules_files)
    if options.format == "json":
        from ..output.json import dump

        found = {"schema": "wirecalc.rules/1", "rules": [r._asdict() for r in rows]}
        of_file = {"in_force": in_force, "examples": [c._asdict() for c in changed]}
        text = dump(found | ({} if file is None else of_file))
        return Result(text, output=options.output, warnings=said)
    lines = [*rules_text(rows, "This file has no rules." if file else NONE)]
    if file is None:
        lines += [] if rows else wrap(_settings())
    else:
        is_not = f"is not in force: neither the settings, {looked_at()}, nor {RULES} name it"
        lines += _examples(changed)
        lines += ["", *wrap(f"This file {'is in force' if in_force else is_not}.")]
    return Result("\n".join(lines), output=options.output, warnings=said)


def _examples(changed: Sequence[rules_tried.Changed]) -> list[str]:
    """Return the lines on what a file changes on the examples of its calculations."""
    if not changed:
        return []
    rows = [
        (
            name,
            f"{before.upper()}, now {after.upper()}" if because else f"{after.upper()} as before",
        )
        for name, before, after, because in changed
    ]
    lines = ["", "On the example of each"]
    for (name, said), (*_, because) in zip(rows, changed, strict=True):
        lines += wrap(f"{name}: {said}" + (f" ({because})" if because else ""), "  ", "    ")
    return lines


def _refuse_wrong(loaded: host.Catalogue, files: Sequence[Path]) -> list[str]:
    """Raise BadInput with what was meant to be in force and is not; return what may have no say."""
    problems = [problem for path in files for problem in _problems(path, loaded)]
    notes: list[str] = []
    if not problems:
        problems = [p for path in files for p in rules_tried.tried(path, loaded, notes)]
    said = [str(problem) for problem in problems]
    others = [why for why in loaded.not_in_force() if not any(why in one for one in said)]
    if problems or others:
        raise BadInput([*problems, *(Problem("", why) for why in others)])
    return notes


def _problems(path: Path, loaded: host.Catalogue) -> list[Problem]:
    beside = rules_file.Beside(loaded.folders, loaded.required, loaded.used)
    wrong = rules_file.check(path, loaded.calculations, beside)
    where = [f"{path.name}, line {w.line}" if w.line else path.name for w in wrong]
    return [Problem(at, w.wrong, w.would_do) for at, w in zip(where, wrong, strict=True)]


def _settings() -> str:
    path = looked_at()
    if path.is_file():
        return f"The settings are those of {path}."
    return f"Settings are looked for in {path}, which is not there."


def _among(file: Path, files: Sequence[Path]) -> bool:
    with contextlib.suppress(OSError):
        return any(other.exists() and other.samefile(file) for other in files)
    return False


def _only(path: Path, loaded: host.Catalogue) -> tuple[host.Catalogue, list[str]]:
    """Return a catalogue with the rules of one file; raises BadInput with all that is wrong."""
    if problems := _problems(path, loaded):
        raise BadInput(problems)
    beside = rules_file.Beside(loaded.folders, loaded.required, loaded.used)
    found = rules_file.load([path], loaded.calculations, beside)
    only = replace(loaded, rules=found.rules, required=found.required)
    notes: list[str] = []
    failed = [*rules_tried.tried(path, only, notes)]
    if failed:
        raise BadInput(failed)
    return only, [*notes, *rules_tried.hints(path, only)]

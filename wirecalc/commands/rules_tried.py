"""A rules file tried on examples: names of criteria, units and senses are known only from a run."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import NamedTuple

from ..base.errors import PluginDefect, Problem, did_you_mean
from ..base.rounding import show
from ..plugging import worked_examples
from ..plugging.host import Catalogue
from ..rules.entries import Entry
from ..rules.misspelt import meant_by
from ..rules.reading_toml import read
from ..said.criteria import Criterion, Origin
from ..said.findings import Finding


def hints(path: Path, loaded: Catalogue) -> Iterator[str]:
    """Say which calculations judge by the limit of a rule's criterion, and have no rule here.

    A shop that asks more of one would be gone round by the other. Compared are limits of the
    examples, with their sources; what is dear to run, or reads a file, is left out.
    """
    rules = [e for e in read(path).entries if e.section == "rule"]
    wanted = [(e, name) for e in rules for name in e.calculations if "criterion" in e.given]
    ruled = {name for e in rules for name in e.calculations}
    if not wanted:
        return
    limits = {name: [*_limits(loaded, name)] for name in loaded.calculations}
    for entry, name in wanted:
        own = {_limit(c) for c in limits[name] if c.name == entry.given["criterion"]}
        for other, criteria in limits.items():
            for same in (c for c in criteria if other not in ruled and _limit(c) in own):
                where = f"{path.name}, line {entry.line}"
                said = f"{other} judges {same.name!r} by the same limit"
                yield f"{where}: {said}, and no rule here is for it"


def _limits(loaded: Catalogue, name: str) -> Iterator[Criterion]:
    """Yield the criteria of the example of a calculation that have a limit and a citation."""
    with contextlib.suppress(PluginDefect):
        calc = loaded.calculations[name].calculation
        if calc.own_band or any(calc.input(i).kind.of_file for i in calc.example_inputs):
            return
        finding = worked_examples.worked_example(loaded, calc)
        for judged in finding.criteria if isinstance(finding, Finding) else ():
            criterion = judged.criterion
            cited = criterion.source is not None and criterion.source.where
            if criterion.origin is not Origin.HOUSE and criterion.limit is not None and cited:
                yield criterion


def _limit(criterion: Criterion) -> tuple[object, ...]:
    source = criterion.source
    cited = source and (source.title, source.edition, source.where)
    return cited, criterion.sense, criterion.limit, criterion.unit


def tried(path: Path, loaded: Catalogue, notes: list[str]) -> Iterator[Problem]:
    """Try each rule on the examples of its calculations: yield what fails, note what has no say."""
    for entry in read(path).entries:
        for name in entry.calculations if entry.section == "rule" else ():
            with contextlib.suppress(PluginDefect):
                yield from _try(entry, path.name, loaded, name, notes)


def _try(
    entry: Entry, file: str, loaded: Catalogue, name: str, notes: list[str]
) -> Iterator[Problem]:
    """Run a rule on the first example of a calculation in which it has a say."""
    calc = loaded.calculations[name].calculation
    what = next((key for key in ("criterion", "figure") if key in entry.given), "")
    wanted = entry.given.get(what, "")
    seen: dict[str, None] = {}
    for finding in worked_examples.tried(loaded, calc):
        names = _names(finding, what)
        seen.update(dict.fromkeys(names))
        said = [c for c in finding.criteria if c.provider == file and entry.name in c.because]
        if (what and wanted not in names) or not said:
            continue
        for judged in said:
            if judged.criterion.name == f"house rule {entry.name}":
                line, _, wrong = judged.reason.partition(": ")
                yield Problem(line, wrong)
                continue
            without = judged.reason if judged.criterion.sense == "cannot tell" else ""
            without = without or _no_effect(judged.criterion, wanted, finding)
            if without:
                where = f"{file}, line {entry.line}"
                notes.append(f"{where}: {entry.name}, on an example of {name}: {without}")
        return
    if what and wanted not in seen:
        wrong = f"no example of {name} has a {what} {wanted!r}"
        where = f"{file}, line {entry.line_of(what)}"
        if meant_by(wanted, list(seen), calc):
            yield Problem(where, wrong, did_you_mean(wanted, list(seen)))
        else:
            near = did_you_mean(wanted, list(seen)) or f"known: {', '.join(seen)}"
            notes.append(str(Problem(where, wrong, near)))


def _no_effect(rule: Criterion, wanted: str, finding: Finding) -> str:
    """Say that a limit of the shop is milder than the one that it is to tighten; "" if it is not.

    Behind an advised limit a milder one that binds has its effect.
    """
    for judged in finding.criteria:
        own = judged.criterion
        if own.name != wanted or judged.provider != finding.plugin:
            continue
        if own.limit is None or rule.limit is None or (own.advisory and not rule.advisory):
            return ""
        least = own.sense == "at least"
        if rule.limit != own.limit and (rule.limit < own.limit) is not least:
            return ""
        is_it = "the same as" if rule.limit == own.limit else "milder than"
        limits = show(rule.limit, rule.unit), show(own.limit, own.unit)
        return f"{limits[0]} is {is_it} the {limits[1]} of {wanted!r}, so it changes nothing"
    return ""


class Changed(NamedTuple):
    """What a rules file makes of the example of a calculation: the verdicts, and what decides."""

    calculation: str
    before: str
    after: str
    because: str


def changes(only: Catalogue) -> Iterator[Changed]:
    """Yield what the rules of one file change on the example of each calculation that they name."""
    alone = replace(only, rules=[])
    for name in sorted({n for r in only.rules for n in r.rule.calculations} & {*only.calculations}):
        with contextlib.suppress(PluginDefect):
            calc = only.calculations[name].calculation
            before, after = (worked_examples.worked_example(c, calc) for c in (alone, only))
            if isinstance(before, Finding) and isinstance(after, Finding):
                was, now = (str(f.verdict or "no verdict") for f in (before, after))
                decided = after.decided_by if now != was else None
                yield Changed(name, was, now, decided.because if decided else "")


def _names(finding: Finding, what: str) -> list[str]:
    if what == "figure":
        return [f.figure.name for f in finding.figures]
    return [c.criterion.name for c in finding.criteria if c.provider == finding.plugin]

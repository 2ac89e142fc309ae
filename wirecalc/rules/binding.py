"""A rule of a rules file bound to a calculation: what it adds to each run."""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from ..base.errors import BadText
from ..engine.declaration import Calculation
from ..engine.from_plugins import RunValues
from ..published.sources import Confidence, Source
from ..said.criteria import Criterion, cannot_tell
from ..said.items import Caution, Item, NotChecked
from ..said.verdicts import Verdict
from .entries import Entry, at_key
from .misspelt import meant_by, names_of
from .rule_criteria import condition, declared, judge


def bind(entry: Entry, calc: Calculation[Any], file: str) -> Callable[..., Iterable[Item]]:
    """Return the body of the house rule of one calculation; raises WrongEntry if it is none."""
    said = entry.given.get("source", "")
    source = Source("house", f"rule {entry.name!r}", said, file, Confidence.HOUSE)
    of_whom = {"criterion", "figure", "input", "forbid"} & set(entry.given)
    judged = judge(entry, calc, source) if of_whom else None
    with at_key(entry, "when"):
        given = [(declared(calc, n), w) for n, w in entry.given.get("when", {}).items()]
        when = [(of.name, condition(of, wanted)) for of, wanted in given]

    @functools.cache
    def slip() -> str:
        what = next((key for key in ("criterion", "figure") if key in entry.given), "")
        return meant_by(entry.given[what], names_of(calc, what), calc) if what else ""

    def body(values: Mapping[str, Any], items: Sequence[Item]) -> Iterator[Item]:
        failing = [name for name, holds in when if values[name] is None or not holds(values[name])]
        unknown = [name for name in failing if values[name] is None or _is_left_out(name, values)]
        if len(failing) > len(unknown):
            return
        if "caution" in entry.given:
            yield _caution(entry, file)
        if judged is not None:
            with at_key(entry, entry.asked):
                criterion = _settled(entry, judged(values, items), unknown)
                if criterion.sense != "cannot tell" or not entry.given.get("optional"):
                    yield criterion
                elif meant := slip():
                    raise BadText(
                        f"no example has that name: {criterion.says}", f"{meant} is meant"
                    )
                else:
                    yield NotChecked(f"house rule {entry.name}", criterion.says)

    return body


def _is_left_out(name: str, values: Mapping[str, Any]) -> bool:
    """Whether nobody gave an input: a default may be a word that stands for another."""
    return isinstance(values, RunValues) and name in values.left_out


def _settled(entry: Entry, criterion: Criterion, unknown: Sequence[str]) -> Criterion:
    """Return what a criterion comes to where its condition may not be known."""
    if not unknown or criterion.verdict is Verdict.PASS:
        return criterion
    names = ", ".join(unknown)
    return cannot_tell(
        entry.name,
        f"it depends on {names}, which was not given; if it holds: {criterion.reason}",
        measure=f"give {names}",
        needs=unknown,
        source=criterion.source,
    )


def _caution(entry: Entry, file: str) -> Caution:
    severity = entry.given.get("severity", "caution")
    key = f"{file}: {entry.name}"
    return Caution(key, entry.given["caution"], f"house rule, {file}", severity)

"""Checking what a calculation says of the inputs that are left out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from ..base.errors import BadInput, BadText, PluginDefect
from ..engine.declaration import Calculation
from ..engine.example_variants import choices
from ..engine.inputs import Input
from ..engine.left_out import Word
from ..said.findings import Finding

Run = Callable[[Mapping[str, object]], Finding]


def check_left_out(calc: Calculation[Any], typed: Mapping[str, object], run: Run) -> Iterator[str]:
    """Yield where the words of its optional inputs do not hold.

    Each has a word; the values that are tried in place of an assumed one can be read and are
    others than it; a setting has no bearing on the verdict; and, with each left out of `typed`,
    what is asked is never better than what is said to be unknown.
    """
    for declared in calc.inputs:
        if declared.required:
            continue
        if not declared.words:
            yield f"{declared.name} may be left out, and no word says what that means"
            continue
        yield from _others(declared)
        try:
            yield from _asked(declared, typed, run)
            yield from _setting(declared, typed, run)
        except (BadInput, PluginDefect):
            continue  # refused with the other inputs as they are; defects are found elsewhere


def _others(declared: Input) -> Iterator[str]:
    for word in declared.words:
        if word.word is not Word.ASSUMED:
            continue
        if not word.others:
            yield f"{declared.name} is assumed, and nothing else is tried"
        for text in word.others:
            try:
                read = declared.kind.read(text).value
            except BadText as error:
                yield f"{declared.name}: {text} cannot be tried: {error}"
                continue
            if read == declared.default:
                yield f"{declared.name}: {text} is what is assumed"


def _asked(declared: Input, typed: Mapping[str, object], run: Run) -> Iterator[str]:
    rest = {name: value for name, value in typed.items() if name != declared.name}
    left_out = run(rest)
    if not any(n == declared.name for c in left_out.criteria for n in c.criterion.needs):
        return
    unknown = run({**rest, declared.name: "unknown"})
    if _rank(left_out) < _rank(unknown):
        yield f"{declared.name}: left out is {left_out.verdict}, unknown is {unknown.verdict}"


def _setting(declared: Input, typed: Mapping[str, object], run: Run) -> Iterator[str]:
    if not all(word.word is Word.SETTING for word in declared.words) or declared.kind.of_file:
        return
    rest = {name: value for name, value in typed.items() if name != declared.name}
    texts = choices(declared) or declared.kind.example.split("; ")[:1]
    plain = run(rest).verdict
    for text in texts:
        one: object = [text] if declared.many else text
        if run({**rest, declared.name: one}).verdict is not plain:
            yield f"{declared.name} is a setting, and with {text} the verdict is another"


def _rank(finding: Finding) -> int:
    return -1 if finding.verdict is None else finding.verdict.rank

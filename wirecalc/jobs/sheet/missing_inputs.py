"""What a calculation asks for where it is left out: at once, and when that is there.

It is found by running it, on what is given and on examples of what is not: whatever names an
input in a *cannot tell* asks for it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from ...base.errors import BadInput, PluginDefect
from ...engine.declaration import Calculation
from ...engine.inputs import Input
from ...plugging.host import Catalogue
from ...said.findings import Finding

Given = Mapping[str, object]
Runner = Callable[[Given], Finding | None]


def runner(catalogue: Catalogue, calc: Calculation[Any]) -> Runner:
    """Return what runs a calculation as a sheet does; None where that is not possible."""
    run = catalogue.runner(calc.name, origin="sheet", missing_is_unknown=True)

    def once(given: Given) -> Finding | None:
        try:
            return run(given)
        except (BadInput, PluginDefect):
            return None

    return once


def asked(finding: Finding | None) -> dict[str, str]:
    """Return the inputs that a finding asks for, each with how it is found out."""
    found: dict[str, str] = {}
    for judged in finding.criteria if finding else ():
        for name in judged.criterion.needs:
            found.setdefault(name, judged.action)
    return found


def example(declared: Input) -> object:
    """Return the example of an input, as a sheet has it."""
    return [declared.kind.example] if declared.many else declared.kind.example


def asked_later(calc: Calculation[Any], run: Runner, given: Given) -> Iterator[tuple[str, str]]:
    """Yield what is asked for once examples of what is asked for now are there, and so on."""
    tried = dict(given)
    now = asked(run(tried))
    inputs = {i.name for i in calc.inputs}  # a plugin may ask for what is none
    known, filled = set(now), set[str]()
    while waiting := [name for name in now if name in inputs - filled]:
        filled.add(waiting[0])
        more = {**tried, waiting[0]: example(calc.input(waiting[0]))}
        if (finding := run(more)) is None:
            continue  # it does not go with the rest
        tried, now = more, asked(finding)
        yield from ((name, now[name]) for name in now if name in inputs - known)
        known |= set(now)


def cannot_do_without(
    calc: Calculation[Any], run: Runner, given: Given
) -> tuple[set[str], set[str]]:
    """Return the inputs without which it cannot tell, and those that others may stand in for.

    `given` has the examples that go together. The first are asked for where all others of them are
    there; the second where only the required ones are, and after what is asked for then.
    """
    required = {i.name for i in calc.inputs if i.required}
    least = {name: value for name, value in given.items() if name in required}
    alone = {*asked(run(least)), *(name for name, _ in asked_later(calc, run, least))}
    strictly = {name for name in given if name in asked(run(_without(calc, given, name)))}
    return strictly - required, alone - strictly - required


def _without(calc: Calculation[Any], given: Given, name: str) -> Given:
    """Return what is given without an input and what goes with it."""
    left = {k: v for k, v in given.items() if k != name}
    for declared in calc.inputs:
        if declared.kind.goes_with == name:
            left = dict(_without(calc, left, declared.name))
    return left

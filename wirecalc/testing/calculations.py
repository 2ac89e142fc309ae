"""Checking one calculation: what it declares, its example, and how its criteria behave."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby, islice
from typing import Any, NamedTuple

from ..base.errors import BadInput, BadText, DeclarationError, PluginDefect
from ..base.rounding import show
from ..engine.declaration import Calculation
from ..engine.deferred_calculation import Deferred
from ..engine.example_variants import variants
from ..engine.from_plugins import HouseRule, ProvidedCalculation, ProvidedRule
from ..engine.inputs import Input
from ..engine.running import run
from ..said.findings import Finding
from ..said.verdicts import Verdict
from ..typed.quantity_kinds import Reading
from .left_out import check_left_out

PLUGIN, VERSION = "shop", "under test"
_IN_WORDS = {"V": ("volts",), "A": ("amperes",), "%": ("percent",)}  # a unit written out
SAMPLES = 24  # points of a reading's span, and as many near the example's value

Given = Mapping[str, object]


class _Point(NamedTuple):
    """A finding, and the value of the reading that it was made with."""

    value: float
    finding: Finding


def finding_of(
    calc: Calculation[Any], given: Given | None = None, *, rules: Sequence[HouseRule] = ()
) -> Finding:
    """Run a calculation by itself on texts, on its own example where none are given.

    `rules` are house rules to run beside it. Raises BadInput with everything that is wrong with
    the inputs, and PluginDefect where the calculation fails.
    """
    provided = ProvidedCalculation(PLUGIN, VERSION, calc)
    with_rules = [ProvidedRule(PLUGIN, VERSION, rule) for rule in rules]
    return run(provided, calc.example_inputs if given is None else given, rules=with_rules)


def check_calculation(
    offered: Calculation[Any] | Deferred, given: Given | None = None, *, samples: int = SAMPLES
) -> list[str]:
    """Say where a calculation breaks the contract; nothing where it keeps to it.

    Its docstring begins with a question and names the unit of every input; every input is
    declared; it runs on its example, or on `given` where the example cannot run (a file), with
    each word of a choice, with yes and no, and with each input that may be left out; each of
    these has its word, which holds (`check_left_out`); and, as
    each reading goes over its span and near the example, nothing fails or is no number, the
    names of criteria stay the same, and no criterion passes, fails and passes again.

    A calculation with a caution that its own plugin brings along is checked inside `plugin_set`.
    """
    try:
        calc = offered if isinstance(offered, Calculation) else offered.load()
        wrong = [*_docstring(calc), *_behaviour(calc, given, samples)]
    except DeclarationError as error:
        wrong = [str(error)]
    return [w if w.startswith(offered.name) else f"{offered.name}: {w}" for w in wrong]


def _docstring(calc: Calculation[Any]) -> Iterator[str]:
    if not calc.question.endswith("?"):
        yield f"the first line of its docstring is no question: {calc.question!r}"
    for declared in calc.inputs:
        unit = declared.kind.unit
        said = "|".join(re.escape(word) for word in (unit, *_IN_WORDS.get(unit, ())))
        if unit and not re.search(rf"(?<![A-Za-z])({said})(?![A-Za-z])", calc.doc):
            yield f"its docstring does not say that {declared.name} is in {unit}"


def _behaviour(calc: Calculation[Any], given: Given | None, samples: int) -> Iterator[str]:
    typed = dict(calc.example_inputs if given is None else given)
    try:
        finding_of(calc, typed)
    except BadInput as error:
        hint = "" if given else "; pass `given` where an example cannot run"
        yield f"its example is refused: {error}{hint}"
        return
    except PluginDefect as error:
        yield str(error)
        return
    yield from _own_examples(calc, typed)
    yield from _variants(calc, typed)
    yield from check_left_out(calc, typed, lambda texts: finding_of(calc, texts))
    for declared in calc.inputs:
        if isinstance(declared.kind, Reading) and isinstance(typed.get(declared.name), str):
            yield from _over(calc, typed, declared, samples)


def _own_examples(calc: Calculation[Any], typed: Given) -> Iterator[str]:
    """Read the examples of the other inputs; help texts and refusals show them."""
    for declared in (i for i in calc.inputs if i.name not in typed):
        text = declared.kind.example
        try:
            for one in text.split("; ") if declared.many else [text]:
                if not declared.kind.of_file:
                    declared.kind.read(one)
        except BadText as error:
            wrong = f"the example of {declared.name} is refused: {error.wrong}"
            yield f"{wrong}; say what is typical"


def _variants(calc: Calculation[Any], typed: Given) -> Iterator[str]:
    """Run with each word of a choice, yes and no, and with what may be left out: nothing fails."""
    said: set[str] = set()
    for given in islice(variants(calc, typed), 1, None):
        try:
            finding_of(calc, given)
        except BadInput:
            continue  # it may refuse what contradicts the other inputs
        except PluginDefect as error:
            other = [f"{n} {value}" for n, value in given.items() if typed.get(n) != value]
            if str(error) not in said:
                said.add(str(error))
                yield f"with {', '.join(other)}: {error}"


def _over(calc: Calculation[Any], typed: Given, declared: Input, samples: int) -> Iterator[str]:
    """Check one reading: run over its span, and near the value that the example has."""
    kind = declared.kind
    assert isinstance(kind, Reading)
    points: list[_Point] = []
    for value in _values(kind, kind.read(typed[declared.name]).value, samples):
        try:
            text = f"{value:.9f} {kind.unit}"
            points.append(_Point(value, finding_of(calc, {**typed, declared.name: text})))
        except BadInput:
            continue  # it may refuse what contradicts the other inputs
        except PluginDefect as error:
            yield f"at {declared.name} {show(value, kind.unit)}: {error}"
            return
    yield from _renamed(points, declared)
    if calc.own_band:  # it sees to the ends of its band itself
        return
    names = dict.fromkeys(c.criterion.name for p in points for c in p.finding.criteria)
    for name in names:
        yield from _turns(name, points, declared)


def _values(kind: Reading, centre: float, samples: int) -> list[float]:
    low = kind.above if kind.above is not None else kind.low
    low = min(0.0, 2 * centre) if low is None else low
    high = max(2 * centre, low + 1) if kind.high is None else kind.high
    steps = [i / samples for i in range(samples + 1)]
    found = {low + share * (high - low) for share in steps}
    found |= {centre * (0.5 + share) for share in steps}
    return sorted(v for v in (round(f, 9) for f in found) if kind.inside(v))


def _renamed(points: Sequence[_Point], declared: Input) -> Iterator[str]:
    """Find names of criteria that carry a number, so that no two runs have the same."""
    seen: dict[str, str] = {}
    for point in points:
        for judged in point.finding.criteria:
            name = judged.criterion.name
            first = seen.setdefault(re.sub(r"\d+(\.\d+)?", "#", name), name)
            if first != name:
                yield (
                    f"a criterion is called {first!r}, and {name!r} where {declared.name} is "
                    "another: its name must be constant text"
                )
                return


_RANKED = (Verdict.PASS, Verdict.MARGINAL, Verdict.FAIL)


def _turns(name: str, points: Sequence[_Point], declared: Input) -> Iterator[str]:
    """Find a criterion that gets better and worse as the reading rises."""
    judged = [
        (c.verdict, point.value)
        for point in points
        for c in point.finding.criteria
        if c.criterion.name == name and c.verdict in _RANKED
    ]
    steps = [next(group) for _, group in groupby(judged, key=lambda j: j[0])]
    for three in zip(steps, steps[1:], steps[2:], strict=False):
        one, two, last = (verdict.rank for verdict, _ in three)
        if (one < two) != (two < last):
            course = ", ".join(f"{v} at {show(x, declared.kind.unit)}" for v, x in three)
            yield (
                f"{name!r} turns as {declared.name} rises ({course}): "
                "a limit with two sides is two criteria"
            )
            return

"""Checking one calculation: what it declares, its example, and how its criteria behave."""

from __future__ import annotations

import contextlib
import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby, islice
from typing import Any

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
from ..typed.quantities import split_error
from ..typed.quantity_kinds import Reading
from ..typed.unit_names import SPELLINGS
from .left_out import check_left_out
from .made_runs import ERROR, Made, check_band, check_runs, check_unit

PLUGIN, VERSION = "shop", "under test"
_IN_WORDS = {"V": ("volts",), "A": ("amperes",), "%": ("percent",)}  # a unit written out
SAMPLES = 24  # points of a reading's span, and as many near the example's value

Given = Mapping[str, object]


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

    Its docstring begins with a question and names the unit of every input, and no text another;
    words lead to it; every input is declared; it runs on its example, or on `given` where the
    example cannot run (a file), with each word of a choice, with yes and no, and with each input
    that may be left out; each of these has its word, which holds (`check_left_out`); as each
    reading goes over its span and near the example, nothing fails or is no number, and no criterion
    passes, fails and passes again; a reading with an error is judged as the points inside it are,
    and nothing shows it in another unit. No run ends without an answer, no caution level is past
    its limit, and names of criteria stay the same.

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
    if not calc.words:
        yield "no words but its name lead to it; write words=(...) with what people call it"
    for declared in calc.inputs:
        yield from _other_units(calc, declared)
        unit = declared.kind.unit
        said = "|".join(re.escape(word) for word in (unit, *_IN_WORDS.get(unit, ())))
        if unit and not re.search(rf"(?<![A-Za-z])({said})(?![A-Za-z])", calc.doc):
            yield f"its docstring does not say that {declared.name} is in {unit}"


def _other_units(calc: Calculation[Any], declared: Input) -> Iterator[str]:
    """Find a text that has an input in another unit of its dimension than the declared one."""
    units = SPELLINGS.get(getattr(declared.kind, "dimension", ""), {})
    own = declared.kind.unit
    others = {s for name, more in units.items() if name != own for s in (name, *more)}
    others -= {own, *units.get(own, ())}
    spelled = "|".join(sorted(map(re.escape, others), key=len, reverse=True)) or "(?!)"
    said = rf"(?:\bin ({spelled})(?!\w)|\(({spelled})\))"
    for place, text in (("text", declared.kind.text), ("docstring", calc.doc)):
        before = rf"\b{declared.name} " if place == "docstring" else ""
        if found := re.search(before + said, text):
            yield f"{declared.name} is in {own}, and its {place} says in {found[1] or found[2]}"


def _behaviour(calc: Calculation[Any], given: Given | None, samples: int) -> Iterator[str]:
    typed = dict(calc.example_inputs if given is None else given)
    try:
        runs = [Made(typed, finding_of(calc, typed))]
    except BadInput as error:
        hint = "" if given else "; pass `given` where an example cannot run"
        yield f"its example is refused: {error}{hint}"
        return
    except PluginDefect as error:
        yield str(error)
        return
    yield from _own_examples(calc, typed)
    yield from _variants(calc, typed, runs)
    yield from check_left_out(calc, typed, lambda texts: finding_of(calc, texts))
    for declared in calc.inputs:
        if isinstance(declared.kind, Reading) and isinstance(typed.get(declared.name), str):
            points: list[Made] = []
            yield from _over(calc, typed, declared, samples, points)
            runs += points
    yield from check_runs(typed, runs)


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


def _variants(calc: Calculation[Any], typed: Given, runs: list[Made]) -> Iterator[str]:
    """Run with each word of a choice, yes and no, and with what may be left out: nothing fails.

    What they come to is added to the `runs`.
    """
    said: set[str] = set()
    for given in islice(variants(calc, typed), 1, None):
        try:
            runs.append(Made(given, finding_of(calc, given)))
        except BadInput:
            continue  # it may refuse what contradicts the other inputs
        except PluginDefect as error:
            other = [f"{n} {value}" for n, value in given.items() if typed.get(n) != value]
            if str(error) not in said:
                said.add(str(error))
                yield f"with {', '.join(other)}: {error}"


def _over(
    calc: Calculation[Any], typed: Given, declared: Input, samples: int, points: list[Made]
) -> Iterator[str]:
    """Check one reading: run over its span, and near the value that the example has.

    What the runs come to is added to the `points`.
    """
    kind = declared.kind
    assert isinstance(kind, Reading)
    for value in _values(kind, kind.read(typed[declared.name]).value, samples):
        given = {**typed, declared.name: f"{value:.9f} {kind.unit}"}
        try:
            points.append(Made(given, finding_of(calc, given), value))
        except BadInput:
            continue  # it may refuse what contradicts the other inputs
        except PluginDefect as error:
            yield f"at {declared.name} {show(value, kind.unit)}: {error}"
            return
    yield from check_unit(declared, points)
    yield from _banded(calc, typed, declared, points)
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


def _banded(
    calc: Calculation[Any], typed: Given, declared: Input, points: Sequence[Made]
) -> Iterator[str]:
    """Check how a reading is judged that has an error."""
    plain = split_error(str(typed[declared.name]))[0]
    if plain[:1] in "<>":
        return
    text = f"{plain} ±{ERROR}%"
    with contextlib.suppress(BadInput, PluginDefect):  # defects are found elsewhere
        banded = finding_of(calc, {**typed, declared.name: text})
        yield from check_band(calc, declared, f"{declared.name} {text}", banded, points)


_RANKED = (Verdict.PASS, Verdict.MARGINAL, Verdict.FAIL)


def _turns(name: str, points: Sequence[Made], declared: Input) -> Iterator[str]:
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

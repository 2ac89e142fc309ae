"""Properties that hold for every calculation and house rule, for hypothesis to try on a plugin.

    import pytest
    from wirecalc.testing.properties import PROPERTIES

    import my_shop

    @pytest.mark.parametrize("holds", PROPERTIES)
    def test_property(holds):
        holds(my_shop)

Each takes a plugin and raises AssertionError with the inputs that break it. Needs hypothesis.
"""

from __future__ import annotations

import contextlib
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from typing import Any

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from ..base.errors import BadInput
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..plugging.discovery import Plugin
from ..plugging.host import Catalogue
from ..said.findings import Finding
from ..said.verdicts import Verdict
from ..typed.quantity_kinds import Reading
from .sets import name_of, plugin_set
from .strategies import texts, typed

__all__ = [
    "PROPERTIES",
    "any_text_is_read_or_refused",
    "left_out_is_no_better_than_unknown",
    "rules_only_tighten",
    "the_band_is_judged_as_its_points",
]

EXAMPLES = 40  # of each calculation
PARTS = 8  # of a band, at whose ends it is tried
PASSES = (Verdict.PASS, Verdict.MARGINAL)
BOUNDED = settings(
    deadline=None,
    max_examples=EXAMPLES,
    report_multiple_bugs=False,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)


def any_text_is_read_or_refused(plugin: object) -> None:
    """Whatever is typed for an input is read, or refused in words: nothing fails."""
    for calc, loaded in _own(plugin):
        _any_text(loaded, calc)


def _any_text(loaded: Catalogue, calc: Calculation[Any]) -> None:
    @BOUNDED
    @given(st.sampled_from([i.name for i in calc.inputs]), texts(), typed(calc))
    def check(name: str, text: str, drawn: dict[str, Any]) -> None:
        with contextlib.suppress(BadInput):
            loaded.run(calc.name, {**drawn, name: text})

    check()


def the_band_is_judged_as_its_points(plugin: object) -> None:
    """What passes with a meter's error fails nowhere within it, and what fails passes nowhere."""
    for calc, loaded in _own(plugin):
        for declared in calc.inputs:
            if isinstance(declared.kind, Reading) and not declared.many:
                _band(loaded, calc, declared)


def _band(loaded: Catalogue, calc: Calculation[Any], declared: Input) -> None:
    @BOUNDED
    @given(typed(calc, declared.name), st.integers(1, 60))
    def check(drawn: dict[str, Any], percent: int) -> None:
        assume(declared.name in drawn)
        text = f"{drawn[declared.name]} ±{percent}%"
        banded = _run(loaded, calc, {**drawn, declared.name: text})
        (record,) = (r for r in banded.inputs if r.name == declared.name)
        low, high = record.low, record.high
        if low is None or high is None:
            return
        for part in range(PARTS + 1):
            value = Decimal(repr(min(low + part / PARTS * (high - low), high)))
            there = f"{value:f} {declared.kind.unit}"
            with contextlib.suppress(BadInput):  # an end that the input cannot have
                point = loaded.run(calc.name, {**drawn, declared.name: there})
                _compare(banded, point, f"{declared.name} {text}", there)

    check()


def _compare(banded: Finding, point: Finding, text: str, there: str) -> None:
    judged = {(c.provider, c.criterion.name): c.verdict for c in banded.criteria}
    for c in point.criteria:
        over = judged.get((c.provider, c.criterion.name))
        said = f"{c.criterion.name!r} is {over} for {text}, and {c.verdict} at {there}"
        assert not (over in PASSES and c.verdict is Verdict.FAIL), said
        assert not (over is Verdict.FAIL and c.verdict in PASSES), said


def left_out_is_no_better_than_unknown(plugin: object) -> None:
    """What is asked for and left out is judged no milder than what is said to be unknown."""
    for calc, loaded in _own(plugin):
        optional = [i.name for i in calc.inputs if not i.required and not i.kind.of_file]
        if optional:
            _left_out(loaded, calc, optional)


def _left_out(loaded: Catalogue, calc: Calculation[Any], optional: Sequence[str]) -> None:
    @BOUNDED
    @given(st.sampled_from(optional), typed(calc))
    def check(name: str, drawn: dict[str, Any]) -> None:
        rest = {n: v for n, v in drawn.items() if n != name}
        left_out = _run(loaded, calc, rest)
        unknown = _run(loaded, calc, rest | {name: "unknown"})
        if any(name in c.criterion.needs for c in left_out.criteria):
            said = f"{name} left out is {left_out.verdict}, unknown is {unknown.verdict}"
            assert _rank(left_out) >= _rank(unknown), said

    check()


def rules_only_tighten(plugin: object) -> None:
    """No finding gets better by the plugin's house rules, and none of its criteria is changed."""
    with plugin_set() as alone, plugin_set(plugin) as ruled:
        _whole(plugin, ruled)
        for name in sorted({n for r in ruled.rules for n in r.rule.calculations}):
            calc = alone.calculations[name].calculation if name in alone.calculations else None
            if calc is not None and not any(
                calc.input(i).kind.of_file for i in calc.example_inputs
            ):
                _ratchet(alone, ruled, calc)


def _ratchet(alone: Catalogue, ruled: Catalogue, calc: Calculation[Any]) -> None:
    @BOUNDED
    @given(typed(calc))
    def check(drawn: dict[str, Any]) -> None:
        before, after = _run(alone, calc, drawn), _run(ruled, calc, drawn)
        said = f"{calc.name} is {before.verdict}, and with the rules {after.verdict}"
        assert _rank(after) >= _rank(before), said
        kept = [c for c in after.criteria if c.provider == after.plugin]
        assert kept == list(before.criteria), f"the criteria of {calc.name} are others"

    check()


PROPERTIES = (
    any_text_is_read_or_refused,
    the_band_is_judged_as_its_points,
    left_out_is_no_better_than_unknown,
    rules_only_tighten,
)


def _own(plugin: object) -> Iterator[tuple[Calculation[Any], Catalogue]]:
    """Yield the calculations of a plugin, each with a catalogue that has only this plugin."""
    with plugin_set(plugin) as loaded:
        for name in _whole(plugin, loaded).calculations:
            yield loaded.calculations[name].calculation, loaded


def _whole(plugin: object, loaded: Catalogue) -> Plugin:
    """Return what became of a plugin; raises AssertionError where not all of it was loaded."""
    (own,) = (p for p in loaded.plugins if p.name == name_of(plugin) and not p.bundled)
    assert not own.broken, f"it is {own.state}: {own.reason}"
    return own


def _run(loaded: Catalogue, calc: Calculation[Any], drawn: Mapping[str, Any]) -> Finding:
    """Run on drawn inputs; what is refused, as it contradicts itself, is drawn anew."""
    try:
        return loaded.run(calc.name, drawn)
    except BadInput:
        assume(False)
        raise


def _rank(finding: Finding) -> int:
    return -1 if finding.verdict is None else finding.verdict.rank

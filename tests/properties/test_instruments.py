"""An instrument says what the typed error says; a worse one never gives a better answer."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import BadInput, Finding, Reading, Verdict, show
from wirecalc.instruments.declared import read
from wirecalc.typed.quantities import read_number, split_error

CATALOGUE = wirecalc.build(bundled_only=True)
DEAR = {"start-curve", "trace", "pull-batch", "trip"}
READINGS = [
    (name, declared.name)
    for name, provided in sorted(CATALOGUE.calculations.items())
    if name not in DEAR
    for declared in provided.calculation.inputs
    if isinstance(declared.kind, Reading)
    and declared.name in provided.calculation.example_inputs
    and not str(provided.calculation.example_inputs[declared.name]).startswith(("0 ", "-"))
    and not declared.many
]
FEW = settings(deadline=None, max_examples=2, suppress_health_check=list(HealthCheck))


def by(kind: Reading, text: str, share: Decimal, counts: int) -> wirecalc.Catalogue:
    """A catalogue with one instrument, of which the display shows as many decimals as the text."""
    number, unit = read_number(text)
    assert number.step is not None
    places = max(0, -Decimal(str(number.step)).adjusted())
    top = f"{max(10 * abs(number.value), 1.0):.{places}f} {unit}"
    error = f"{share}% + {counts}"
    ranges = [{"reads": kind.dimension, "from": f"0 {unit}", "to": top, "error": error}]
    declared, problems = read([{"name": "m", "range": ranges}], {}, "tests")
    assert not problems
    catalogue = wirecalc.build(bundled_only=True)
    catalogue.instruments = declared
    return catalogue


def drawn(name: str, reading: str, data: st.DataObject) -> tuple[Reading, dict[str, Any], str]:
    calc = CATALOGUE.calculations[name].calculation
    kind = calc.input(reading).kind
    assert isinstance(kind, Reading)
    typed = dict(calc.example_inputs)
    text = str(typed[reading])
    number, unit = read_number(split_error(text.lstrip("<>"))[0])
    assume(number.step is not None and number.value > 0)
    times = data.draw(st.sampled_from(["1", "0.9", "1.1", "0.5", "2"]))
    places = max(0, -Decimal(str(number.step)).adjusted())
    value = Decimal(str(number.value)) * Decimal(times)
    return kind, typed, f"{value:.{places}f} {unit}"


def comparable(finding: Finding) -> list[tuple[Any, ...]]:
    """What a finding says, with numbers to nine digits: an error has rounding of its own."""
    criteria = [(j.criterion.name, j.verdict, j.reason) for j in finding.criteria]
    figures = [(f.figure.name, _shown(f.low), _shown(f.high)) for f in finding.figures]
    return [*criteria, *figures]


def _shown(value: float | None) -> str:
    return "" if value is None else show(value, digits=9)


@pytest.mark.parametrize(("name", "reading"), READINGS)
@FEW
@given(data=st.data())
def test_an_instrument_says_what_the_typed_error_says(
    name: str, reading: str, data: st.DataObject
) -> None:
    kind, typed, text = drawn(name, reading, data)
    share, counts = data.draw(st.sampled_from(["0.5", "1", "2", "5"])), data.draw(st.integers(0, 9))
    catalogue = by(kind, text, Decimal(share), counts)
    try:
        plain = CATALOGUE.run(name, {**typed, reading: f"{text} ±({share}%+{counts})"})
    except BadInput:
        with pytest.raises(BadInput):
            catalogue.run(name, {**typed, reading: f"{text} by m"})
        return
    found = catalogue.run(name, {**typed, reading: f"{text} by m"})
    assert found.verdict is plain.verdict
    assert comparable(found) == comparable(plain)


@pytest.mark.parametrize(("name", "reading"), READINGS)
@FEW
@given(data=st.data())
def test_a_worse_instrument_makes_nothing_milder(
    name: str, reading: str, data: st.DataObject
) -> None:
    kind, typed, text = drawn(name, reading, data)
    one, two = sorted(data.draw(st.lists(st.integers(1, 40), min_size=2, max_size=2)))
    try:
        better = by(kind, text, Decimal(one), 0).run(name, {**typed, reading: f"{text} by m"})
        worse = by(kind, text, Decimal(two), 0).run(name, {**typed, reading: f"{text} by m"})
    except BadInput:
        return
    if worse.verdict is Verdict.PASS:
        assert better.verdict is Verdict.PASS
    if worse.verdict is Verdict.MARGINAL:
        assert better.verdict in (Verdict.PASS, Verdict.MARGINAL)

"""The spans of what is sought hold for values between those that were run."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import BadInput
from wirecalc.engine.inputs import Input
from wirecalc.engine.sought.seeking import Seeker, Sought
from wirecalc.engine.sought.spans import spans
from wirecalc.engine.sought.states import key_of

CATALOGUE = wirecalc.build(bundled_only=True)
DEAR = {"start-curve", "trace", "pull-batch", "choose"}  # simulations and files
NAMES = sorted(set(CATALOGUE.calculations) - DEAR)
POINTS = 6  # of an example; the nightly profile has twenty times the examples


def question(name: str, declared: Input) -> dict[str, Any]:
    """The worked example of a calculation, with one input sought."""
    calc = CATALOGUE.calculations[name].calculation
    typed: dict[str, Any] = dict(calc.example_inputs)
    lead = declared.kind.goes_with
    if lead and lead not in typed:
        typed[lead] = calc.input(lead).kind.example
    before = typed.get(declared.name)
    typed[declared.name] = [*(before or [])[:1], "sought"] if declared.many else "sought"
    return typed


@pytest.mark.parametrize("name", NAMES)
@settings(deadline=None, max_examples=1, suppress_health_check=list(HealthCheck))
@given(data=st.data())
def test_a_value_between_is_judged_as_its_span(name: str, data: st.DataObject) -> None:
    calc = CATALOGUE.calculations[name].calculation
    declared = data.draw(st.sampled_from(calc.inputs))
    typed = question(name, declared)
    seeker = CATALOGUE.seeker(name)
    try:
        found = seeker.seek(typed)
    except BadInput as error:
        assert str(error)
        return
    assert isinstance(found, Sought)
    axis = seeker._axis(declared, typed)
    aside = [key_of(j) for j in found.aside]
    for _ in range(POINTS):
        place = data.draw(st.integers(0, axis.last))
        with_it = {**typed, declared.name: put(typed[declared.name], axis.text(place))}
        (point,) = spans(axis, {place: Seeker._state(seeker, with_it)}, aside)
        (span,) = [s for s in found.spans if s.first.place <= place <= s.last.place] or [point]
        assert point.word == span.word, f"{declared.name} = {axis.shown(place)}"


def put(given: Any, text: str) -> Any:
    return [text if g == "sought" else g for g in given] if isinstance(given, list) else text

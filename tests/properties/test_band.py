"""The instrument counts: a worse meter never gives a better verdict, and no point of the band
is judged otherwise than the band.

Readings are found by introspection, and complete, plausible inputs are drawn as the trial of each
calculation says.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, event, given, settings
from hypothesis import strategies as st

from tests.calculations.trials import CATALOGUE, TRIALS
from wirecalc import BadInput, Finding, Reading, Verdict

BOUNDED = settings(
    deadline=None,
    max_examples=12,
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
)

NAMES = [name for name, trial in TRIALS.items() if not trial.drawn_in]
PASSES = (Verdict.PASS, Verdict.MARGINAL)


def inputs_of(name: str) -> dict[str, Any]:
    """Every input but a file, which is another way to say what the rest says, what goes with it,
    and but a list of readings (leakage: test_monotone_service.py).
    """
    inputs = CATALOGUE.calculations[name].calculation.inputs
    single = (i for i in inputs if not (i.many and isinstance(i.kind, Reading)))
    files = {i.name for i in inputs if i.kind.of_file}
    return {i.name: i.kind for i in single if not files & {i.name, i.kind.goes_with}}


READINGS = [
    (name, reading)
    for name in NAMES
    for reading, kind in inputs_of(name).items()
    if isinstance(kind, Reading)
]


def exact(number: float) -> str:
    """Write a float so that it reads back as the very same float, without an exponent."""
    return f"{Decimal(repr(number)):f}"


def plausible(name: str, must: str) -> st.SearchStrategy[dict[str, Any]]:
    required, optional = dict(TRIALS[name].always), dict(TRIALS[name].sometimes)
    kinds = inputs_of(name)
    for wanted in (must, kinds[must].goes_with):
        if wanted in optional:
            required[wanted] = optional.pop(wanted)
    return st.fixed_dictionaries(required, optional=optional).map(lambda d: complete(kinds, d))


def complete(kinds: Mapping[str, Any], drawn: dict[str, Any]) -> dict[str, Any]:
    """Drop what means nothing without an input that was not drawn."""
    return {n: v for n, v in drawn.items() if not kinds[n].goes_with or kinds[n].goes_with in drawn}


def run(name: str, drawn: Mapping[str, Any], errors: Mapping[str, float | None]) -> Finding | None:
    """Run on drawn inputs, each reading with its error; None where they contradict each other."""
    given_ = dict(drawn)
    for reading, kind in inputs_of(name).items():
        if reading in drawn and isinstance(kind, Reading):
            error = errors.get(reading)
            unit = "K" if kind.unit == "C" else kind.unit
            bare = " ±0 ohm" if name == "ground" and unit == "ohm" else ""  # it asks for an error
            more = bare if error is None else f" ±{exact(error)} {unit}"
            given_[reading] = f"{exact(drawn[reading])} {kind.unit}{more}"
    try:
        return CATALOGUE.run(name, given_)
    except BadInput:
        return None


def shares() -> st.SearchStrategy[float]:
    return st.sampled_from([0.001, 0.02, 0.05, 0.2, 0.6]) | st.floats(0.0001, 1.2)


def rounded(share: float, value: float) -> float:
    return float(f"{share * abs(value):.6f}")


def test_every_calculation_and_reading_has_a_strategy() -> None:
    for name in NAMES:
        trial = TRIALS[name]
        drawn = {*trial.always, *trial.sometimes}
        assert drawn | set(trial.apart) >= set(inputs_of(name)) >= drawn, name
    assert len(READINGS) >= 12


@pytest.mark.parametrize(("name", "reading"), READINGS)
def test_a_worse_meter_never_gives_a_better_verdict(name: str, reading: str) -> None:
    @BOUNDED
    @given(plausible(name, reading), shares(), shares(), shares(), three_places())
    def check(
        drawn: dict[str, Any], one: float, two: float, rest: float, places: list[int]
    ) -> None:
        small, large = sorted((one, two))
        others = {n: rounded(rest, v) for n, v in beside(reading, drawn, places)}
        value = drawn[reading]
        findings = [
            run(name, drawn, others | {reading: error})
            for error in (None, rounded(small, value), rounded(large, value))
        ]
        assume(None not in findings)
        verdicts = [f.verdict for f in findings if f is not None]
        event(" then ".join(str(v) for v in verdicts))
        for better, worse in pairwise(verdicts):
            if better is None:  # figures only
                continue
            assert worse is not None
            if better.rank >= Verdict.CANNOT_TELL.rank:
                assert worse not in PASSES
            elif better is Verdict.MARGINAL:
                assert worse is not Verdict.PASS

    check()


def three_places() -> st.SearchStrategy[list[int]]:
    """Where the other readings stand that have an error too, none to three of them.

    A run has three points for each, so that a fourth and fifth would be most of what tests take.
    """
    return st.lists(st.integers(0, 11), max_size=3)


def beside(reading: str, drawn: Mapping[str, Any], places: list[int]) -> list[tuple[str, float]]:
    """Some of the other readings that were drawn, with their values."""
    others = [(n, v) for n, v in drawn.items() if isinstance(v, float) and n != reading]
    return list(dict.fromkeys(others[p % len(others)] for p in places)) if others else []


@pytest.mark.parametrize(("name", "reading"), READINGS)
def test_no_point_inside_the_band_is_judged_against_the_band(name: str, reading: str) -> None:
    @BOUNDED
    @given(plausible(name, reading), shares(), shares(), three_places(), st.data())
    def check(
        drawn: dict[str, Any], own: float, rest: float, places: list[int], data: st.DataObject
    ) -> None:
        others = {n: rounded(rest, v) for n, v in beside(reading, drawn, places)}
        errors = others | {reading: rounded(own, drawn[reading])}
        banded = run(name, drawn, errors)
        assume(banded is not None)
        records = {i.name: i for i in banded.inputs if i.low is not None}
        assert set(records) >= set(errors)
        for _ in range(4):
            inside = {}
            for n, record in records.items():
                where = data.draw(st.floats(0, 1) | st.sampled_from([0.0, 0.5, 1.0]), label=n)
                inside[n] = min(record.low + where * (record.high - record.low), record.high)
            point = run(name, drawn | inside, {})
            if point is None:  # refused, such as a zero that the input excludes
                continue
            compare(banded, point)

    check()


def compare(banded: Finding, point: Finding) -> None:
    if point.verdict is Verdict.FAIL:
        assert banded.verdict not in PASSES
    judged = {(c.provider, c.criterion.name): c.verdict for c in banded.criteria}
    for c in point.criteria:
        verdict = judged.get((c.provider, c.criterion.name))
        event(f"{verdict} over the band, {c.verdict} inside")
        if verdict in PASSES:
            assert c.verdict in PASSES, c.criterion.name
        if verdict is Verdict.FAIL:
            assert c.verdict is Verdict.FAIL, c.criterion.name


@pytest.mark.parametrize(
    ("name", "reading"), [(n, r) for n, r in READINGS if inputs_of(n)[r].above is not None]
)
def test_a_meter_that_cannot_tell_a_reading_from_zero_passes_nothing(
    name: str, reading: str
) -> None:
    @BOUNDED
    @given(plausible(name, reading))
    def check(drawn: dict[str, Any]) -> None:
        kind, value = inputs_of(name)[reading], drawn[reading]
        assert kind.excludes(kind.above)
        banded = run(name, drawn, {reading: rounded(1, value - kind.above) + 0.1})
        assume(banded is not None)
        assert banded.verdict in (Verdict.CANNOT_TELL, Verdict.FAIL)

    check()

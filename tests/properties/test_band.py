"""The instrument counts: a worse meter never gives a better verdict, and no point of the band
is judged otherwise than the band.

Readings are found by introspection. A calculation that is new needs a strategy of complete,
plausible inputs in `PLAUSIBLE`; a test says so.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, event, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import BadInput, Finding, Reading, Verdict

BOUNDED = settings(
    deadline=None,
    max_examples=70,
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
)

CATALOGUE = wirecalc.build(bundled_only=True)
NAMES = [name for plugin in CATALOGUE.plugins if plugin.bundled for name in plugin.calculations]
PASSES = (Verdict.PASS, Verdict.MARGINAL)


def inputs_of(name: str) -> dict[str, Any]:
    return {i.name: i.kind for i in CATALOGUE.calculations[name].calculation.inputs}


READINGS = [
    (name, reading)
    for name in NAMES
    for reading, kind in inputs_of(name).items()
    if isinstance(kind, Reading)
]


def near(*limits: float, low: float = 0.0, high: float) -> st.SearchStrategy[float]:
    """Values at, next to and away from the limits that decide."""
    edges = [e for v in limits for e in (v, v * 0.97, v * 1.03, v * (1 + 1e-10)) if low < e <= high]
    return st.sampled_from(edges) | st.floats(low, high, exclude_min=True)


texts = st.sampled_from
# calculation -> input -> strategy; a reading's is a number in its declared unit
REQUIRED: dict[str, dict[str, st.SearchStrategy[Any]]] = {
    "breaker": {
        "current": near(5.6, 7, 10, 12, 15, 16, 20, 24, high=45),
        "breaker": texts(["7 A", "15 A", "20 A", "30 A", "50 A"]),
    },
    "inrush": {},
    "pull": {
        "wire": texts(["22 AWG", "18 AWG", "17 AWG", "14 AWG", "3 mm2", "0.75 mm2", "0.1 mm2"]),
        "force": near(6.75, 9, 13, 20, 30, 50, high=60),
        "terminal": texts(["ring", "push-on", "butt", "clamp"]),
    },
    "splice": {
        "wire": st.lists(texts(["18 AWG", "14 AWG solid", "12 AWG", "2.5 mm2"]), max_size=3).map(
            lambda more: ["16 AWG", *more]
        ),
        "barrel": texts(["18-14 AWG", "16-10 AWG", "2050-5180 cmil", "1.5-6 mm2"]),
    },
    "strip": {
        "wire": st.lists(texts(["22 AWG", "18 AWG", "1.5 mm2"]), min_size=1, max_size=3),
        "style": texts(["closed", "closed-insulated", "open", "stop", "ferrule", "twist-on"]),
    },
}
OPTIONAL: dict[str, dict[str, st.SearchStrategy[Any]]] = {
    "breaker": {
        "wire": texts(["18 AWG", "16 AWG", "14 AWG", "12 AWG", "8 AWG aluminum", "2.5 mm2"]),
        "insulation_class": texts(["60 C", "75 C", "90 C"]),
        "termination_temperature": texts(["60 C", "75 C", "90 C"]),
        "run_time": near(3, high=30),
        "receptacle": texts(["15 A", "20 A", "30 A", "50 A"]),
        "only_receptacle": texts(["yes", "no"]),
        "cord": texts(["18 AWG", "17 AWG", "14 AWG", "12 AWG"]),
        "cord_conductors": texts(["2", "3"]),
        "ambient": near(10, 30, 40, 55, 70, 85, low=-40, high=90),
        "conductors": texts(["2", "4", "10"]),
    },
    "inrush": {
        "rated_load_current": texts(["1.6 A"]),
        "locked_rotor_current": texts(["12 A"]),
        "code_letter": texts(["A", "G", "V"]),
        "horsepower": texts(["1/4 hp"]),
        "nameplate_voltage": texts(["115 V"]),
        "frequency": texts(["50 Hz"]),
        "voltage": near(103.5, 115, 126.5, high=140),
        "peak": near(7.56, 8.4, 12, 13.44, 30, 75, 150, high=200),
        "settled": near(0.08, 0.48, 1.6, 1.76, high=3),
        "settle_time": near(1, 3, 50, 120, high=150),
        "meter_mode": texts(["inrush", "peak-hold", "max-hold"]),
        "breaker": texts(["5 A", "15 A", "20 A"]),
    },
    "pull": {"standard": texts(["own", "ul-486a", "as7928", "nasa-8739-4", "iec-60352-2"])},
    "splice": {
        "connector": texts(["butt", "closed-end", "push-on"]),
        "listed_for": texts(["stranded", "either", "combination"]),
        "wire_limit": texts(["1", "3"]),
        "wire_temperature": texts(["80 C", "105 C"]),
        "terminal_temperature": texts(["75 C", "105 C"]),
        "place_temperature": near(55, 60, 75, 80, 85, 105, low=-40, high=130),
        "current": near(15, 20, 30, high=40),
        "voltage": near(300, 600, high=700),
        "terminal_voltage": texts(["300 V", "600 V"]),
    },
    "strip": {
        "barrel_length": near(6.5, high=12),
        "window_length": near(2, high=6),
        "stripped": near(6.5, 6.6, 7, 7.8, 8.5, 10, 12.7, high=20),
    },
}


def exact(number: float) -> str:
    """Write a float so that it reads back as the very same float, without an exponent."""
    return f"{Decimal(repr(number)):f}"


def plausible(name: str, must: str) -> st.SearchStrategy[dict[str, Any]]:
    required, optional = dict(REQUIRED[name]), dict(OPTIONAL[name])
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
            more = "" if error is None else f" ±{exact(error)} {unit}"
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
        assert set(REQUIRED[name]) | set(OPTIONAL[name]) == set(inputs_of(name))
    assert len(READINGS) >= 12


@pytest.mark.parametrize(("name", "reading"), READINGS)
def test_a_worse_meter_never_gives_a_better_verdict(name: str, reading: str) -> None:
    @BOUNDED
    @given(plausible(name, reading), shares(), shares(), shares(), st.booleans())
    def check(drawn: dict[str, Any], one: float, two: float, rest: float, alone: bool) -> None:
        small, large = sorted((one, two))
        others = {} if alone else {n: rounded(rest, v) for n, v in numbers(drawn).items()}
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


def numbers(drawn: Mapping[str, Any]) -> dict[str, float]:
    return {n: v for n, v in drawn.items() if isinstance(v, float)}


@pytest.mark.parametrize(("name", "reading"), READINGS)
def test_no_point_inside_the_band_is_judged_against_the_band(name: str, reading: str) -> None:
    @BOUNDED
    @given(plausible(name, reading), st.lists(shares(), min_size=4, max_size=4), st.data())
    def check(drawn: dict[str, Any], each: list[float], data: st.DataObject) -> None:
        values = numbers(drawn)
        errors = {n: rounded(s, v) for s, (n, v) in zip(each, values.items(), strict=False)}
        banded = run(name, drawn, errors)
        assume(banded is not None)
        records = {i.name: i for i in banded.inputs if i.low is not None}
        assert set(records) == set(errors)
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

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
from wirecalc import BadInput, Finding, Reading, ReadingsFile, Verdict

BOUNDED = settings(
    deadline=None,
    max_examples=70,
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
)

CATALOGUE = wirecalc.build(bundled_only=True)
LISTS = ("pull-batch",)  # its readings are a list: tests/properties/test_batch.py
DEAR = ("start-curve",)  # each run simulates starts: tests/properties/test_start_curve.py
NAMES = [
    name
    for plugin in CATALOGUE.plugins
    if plugin.bundled
    for name in plugin.calculations
    if name not in (*LISTS, *DEAR)
]
PASSES = (Verdict.PASS, Verdict.MARGINAL)


def inputs_of(name: str) -> dict[str, Any]:
    """Every input but a file, which is another way to say what the rest says."""
    inputs = CATALOGUE.calculations[name].calculation.inputs
    return {i.name: i.kind for i in inputs if not isinstance(i.kind, ReadingsFile)}


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
    "ampacity": {
        "use": texts(["building", "cord", "fixture", "appliance"]),
        "wire": texts(["30 AWG", "18 AWG", "15 AWG", "12 AWG aluminum", "4 AWG", "1 mm2"]),
    },
    "choose": {
        "wire": texts([["18 AWG"], ["14 AWG"], ["14 AWG solid", "16 AWG"], ["2.5 mm2"]]),
        "connector": texts(["push-on", "closed-end", "ring"]),
    },
    "equivalent": {"wire": texts(["0.75 mm2", "14 AWG", "26x30 AWG", "120 mm2", "2 AWG"])},
    "gauge": {},
    "strands": {
        "wire": texts(["26x30 AWG", "19x29 AWG", "18 AWG", "14 AWG solid", "8 AWG aluminum"]),
        "cut_strands": texts(["0", "1", "3"]),
        "nicked_strands": texts(["0", "1", "2"]),
    },
    "substitute": {
        "old_wire": texts(["16 AWG tinned", "14 AWG solid", "1.5 mm2", "19x29 AWG"]),
        "new_wire": texts(["18 AWG", "16 AWG tinned", "14 AWG solid", "12 AWG aluminum"]),
    },
    "wire-break": {"wire": texts(["18 AWG", "17 AWG", "2.5 mm2", "40 AWG", "12 AWG aluminum"])},
    "joint-drop": {
        # 16 AWG: 3 and 10 times the wire at 8.7 A over 150 mm are 53 and 175 mV; 1 W is 115 mV
        "drop": near(0.0526, 0.115, 0.1754, high=1),
        "current": near(1, 8.7, high=20),
        "wire": texts(["16 AWG", "14 AWG solid", "1.5 mm2", "12 AWG aluminum", "12 AWG cca"]),
        "joint_length": near(15, 150, high=305),
    },
    "tab": {
        "tab_width": texts(["0.110 in", "4.8 mm", "6.3 mm", "0.375 in"]),
        "wire": texts(["18 AWG", "17 AWG", "14 AWG", "1.5 mm2", "14 AWG aluminum"]),
        "current": near(3.2, 4, 5.6, 7, 12, 15, high=25),
    },
    "ring": {
        "stud": texts(["No.6", "No.8", "No.10", "1/4", "M4", "M5", "M10"]),
        "wire": texts(["18 AWG", "10 AWG", "6 AWG", "2.5 mm2", "12 AWG aluminum"]),
    },
    "heat-rating": {},
}
OPTIONAL: dict[str, dict[str, st.SearchStrategy[Any]]] = {
    "breaker": {
        "wire": texts(["18 AWG", "16 AWG", "14 AWG", "12 AWG", "8 AWG aluminum", "2.5 mm2"]),
        "insulation_class": texts(["60 C", "75 C", "90 C"]),
        "termination_temperature": texts(["60 C", "75 C", "90 C"]),
        "run_time": near(3, high=30),
        "receptacle": texts(["15 A", "20 A", "30 A", "50 A"]),
        "only_receptacle": texts(["yes", "no"]),
        "fastened_in_place": texts(["yes", "no"]),
        "feeds_others": texts(["yes", "no"]),
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
        "tab_width": texts(["0.110 in", "0.187 in", "0.250 in"]),
        "insulation_diameter": near(3.4, high=6),
        "insulation_limit": texts(["3.4 mm"]),
    },
    "choose": {
        "tab_width": texts(["0.187 in", "0.250 in"]),
        "wire_temperature": texts(["105 C", "250 C"]),
        "place_temperature": near(60, 85, 105, 230, low=-40, high=260),
        "current": near(4, 7, 15, high=30),
        "voltage": near(300, 600, high=700),
    },
    "strip": {
        "barrel_length": near(6.5, high=12),
        "window_length": near(2, high=6),
        "stripped": near(6.5, 6.6, 7, 7.8, 8.5, 10, 12.7, high=20),
    },
    "ampacity": {
        "insulation_class": texts(["60 C", "75 C", "90 C"]),
        "termination_temperature": texts(["60 C", "75 C", "90 C"]),
        "conductors": texts(["2", "4", "10"]),
        "cord_conductors": texts(["2", "3"]),
        "wire_temperature": texts(["80 C", "105 C", "150 C", "250 C"]),
        "place_temperature": near(30, 40, 70, 90, 125, 150, low=-40, high=260),
        "ambient": near(10, 30, 40, 55, 70, 85, low=-40, high=90),
        "current": near(0.7, 6, 7, 8, 10, 13, 16, 18, 20, 25, 30, 68, high=120),
    },
    "equivalent": {},
    "gauge": {
        "strands": texts(["1", "16", "19", "26", "41", "65"]),
        "strand_diameter": near(0.127, 0.16, 0.2, 0.254, 0.287, 0.36, 0.455, high=0.8),
        "metal": texts(["copper", "tinned copper", "aluminium"]),
        "outside_diameter": near(2, 3, 6, high=12),
    },
    "strands": {
        "strands": texts(["1", "7", "26", "65", "168"]),
        "standard": texts(
            ["none", "ipc-a-620-class-2", "ipc-a-620-class-3", "faa-ac-43-13", "nasa-8739-4"]
        ),
    },
    "substitute": {
        "old_wire_temperature": texts(["80 C", "105 C"]),
        "new_wire_temperature": texts(["80 C", "200 C"]),
        "old_wire_voltage": texts(["300 V", "600 V"]),
        "new_wire_voltage": texts(["300 V", "600 V"]),
        "old_oil_resistant": texts(["yes", "no"]),
        "new_oil_resistant": texts(["yes", "no"]),
        "old_flame_rated": texts(["yes", "no"]),
        "new_flame_rated": texts(["yes", "no"]),
    },
    "wire-break": {},
    "joint-drop": {},
    "tab": {
        "terminal_width": texts(["2.8 mm", "0.187 in", "0.250 in"]),
        "tab_thickness": texts(["0.5 mm", "0.032 in", "1 mm"]),
        "terminal_thickness": texts(["0.020 in", "0.8 mm"]),
    },
    "ring": {
        "hole": near(3.5052, 4, 4.09, 4.1656, 4.68, 4.77, 4.826, 5, 5.41, 6.35, high=12),
        "stud_terminals": texts(["1", "4", "5"]),
    },
    "heat-rating": {
        "place_temperature": near(55, 85, 105, 151, 155, 180, 230, low=-40, high=300),
        "near_heater": texts(["yes", "no"]),
        "wire_temperature": texts(["105 C", "200 C", "250 C"]),
        "terminal_temperature": texts(["105 C", "250 C"]),
        "terminal_material": texts(["vinyl", "nylon", "tin-plated copper", "nickel-plated steel"]),
        "sleeve_temperature": texts(["125 C", "250 C"]),
        "sleeve_material": texts(["polyolefin tubing", "PVC tubing"]),
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

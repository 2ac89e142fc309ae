"""More load, more heat, thinner wire or less pull never makes a verdict better."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import Verdict
from wirecalc.trade import crimps, nec_ampacity
from wirecalc.typed.wires import GAUGES, gauge_number, read_wire

BOUNDED = settings(
    deadline=None, max_examples=80, suppress_health_check=[HealthCheck.filter_too_much]
)

RATINGS = (60, 75, 90)
METALS = ("copper", "aluminium")
BUILDING = ("1/0", "1", "2", "3", "4", "6", "8", "10", "12", "14")  # sizes that the code lists
CORDS = ("18", "16", "14", "12", "10")  # confirmed rows of the cord table, two and three live
NEAR = (1.0, 1 - 1e-10, 1 + 1e-10, 0.999, 1.001, 0.8, 1.25)  # round a limit, and 125 % of it

temperatures = st.floats(-40, 90) | st.integers(-40, 90)


def rank(finding: wirecalc.Finding) -> int:
    assert finding.verdict is not None
    return finding.verdict.rank


def typed(number: float) -> str:
    """Write a number in full, so that it is read as the very same float."""
    return f"{number:.17f}" if abs(number) < 1e3 else repr(number)


def around(*limits: float) -> st.SearchStrategy[float]:
    edge = st.tuples(st.sampled_from(limits), st.sampled_from(NEAR)).map(lambda p: p[0] * p[1])
    return edge | st.floats(min(limits) / 4, max(limits) * 1.5)


# what the tables say


@pytest.mark.parametrize("rating", RATINGS)
@pytest.mark.parametrize("metal", METALS)
def test_a_thicker_gauge_never_has_less_ampacity(metal: str, rating: int) -> None:
    rows = [nec_ampacity.ampacity(read_wire(f"{g} AWG {metal}"), rating) for g in GAUGES]
    listed = [row.number("ampacity_A") for row in rows if row is not None]  # thick to thin
    assert len(listed) >= 12
    assert listed == sorted(listed, reverse=True)


@pytest.mark.parametrize("metal", METALS)
def test_a_hotter_insulation_class_never_has_less_ampacity(metal: str) -> None:
    for gauge in GAUGES:
        rows = [nec_ampacity.ampacity(read_wire(f"{gauge} AWG {metal}"), r) for r in RATINGS]
        listed = [row.number("ampacity_A") for row in rows if row is not None]
        assert listed == sorted(listed)


@pytest.mark.parametrize("metal", [*METALS, "copper-clad"])
def test_a_thicker_gauge_never_has_a_lower_largest_breaker(metal: str) -> None:
    rows = [nec_ampacity.small_conductor_breaker(read_wire(f"{g} AWG {metal}")) for g in GAUGES]
    listed = [row.number("breaker_A") for row in rows if row is not None]
    assert len(listed) >= 2
    assert listed == sorted(listed, reverse=True)


@pytest.mark.parametrize("live", [2, 3])
def test_a_thicker_cord_never_has_less_ampacity(live: int) -> None:
    rows = [nec_ampacity.cord_ampacity(read_wire(f"{g} AWG"), live) for g in GAUGES]
    listed = [row.number("ampacity_A") for row in rows if row is not None]
    assert len(listed) >= 5
    assert listed == sorted(listed, reverse=True)


@BOUNDED
@given(st.sampled_from(RATINGS), temperatures, temperatures)
def test_a_hotter_ambient_never_gives_a_higher_factor(rating: int, one: float, two: float) -> None:
    cool, hot = sorted((one, two))
    at_cool, at_hot = (nec_ampacity.ambient_factor(rating, t) for t in (cool, hot))
    if at_cool is None:
        assert at_hot is None  # past the end of the table, and still past it
    elif at_hot is not None:
        assert at_hot.value <= at_cool.value


def test_more_conductors_never_give_a_higher_factor() -> None:
    factors = [nec_ampacity.count_factor(n).value for n in range(1, 101)]
    assert factors == sorted(factors, reverse=True)
    assert all(0 < f <= 1 for f in factors)


@pytest.mark.parametrize("metal", METALS)
@pytest.mark.parametrize("standard", crimps.pull_standards())
def test_a_thicker_wire_never_has_a_lower_pull_minimum(standard: str, metal: str) -> None:
    by_gauge = [read_wire(f"{g} AWG {metal}") for g in reversed(GAUGES)]
    by_area = [read_wire(f"{area / 100:.2f} mm2 {metal}") for area in range(5, 15_000, 7)]
    for wires in (by_gauge, by_area):
        found = [crimps.pull_minimum(w, standard) for w in wires]
        minima = [m for m in found if m is not None]
        for thin, thick in pairwise(minima):
            assert thin.lbf <= thick.lbf
            assert (thin.above or thin.lbf) <= (thick.above or thick.lbf)
        assert all(m.above is None or m.above >= m.lbf for m in minima)


@BOUNDED
@given(
    st.sampled_from(RATINGS),
    st.tuples(st.integers(7, 300), st.integers(8, 49)),  # fewer or thicker ones are wires
    st.tuples(st.integers(7, 300), st.integers(8, 49)),
)
def test_of_two_strandings_the_thicker_never_has_less_ampacity(
    rating: int, one: tuple[int, int], two: tuple[int, int]
) -> None:
    assume(all(0.01 < n * (d / 100) ** 2 < 120 for n, d in (one, two)))
    wires = [read_wire(f"{n}x{d / 100:.2f} mm") for n, d in (one, two)]
    thin, thick = sorted(wires, key=lambda w: w.area_cmil)
    rows = [nec_ampacity.ampacity(w, rating) for w in (thin, thick)]
    assume(rows[0] is not None and rows[1] is not None)
    assert rows[0].number("ampacity_A") <= rows[1].number("ampacity_A")


# what the calculations say

circuits = st.fixed_dictionaries(
    {
        "current": around(7, 10, 12, 15, 16, 20, 30),
        "breaker": st.sampled_from([15, 20, 30, 40, 50]),
        "run_time": st.sampled_from([0.0, 1.0, 2.999, 3.0, 24.0]),
    },
    optional={
        "building_wire": st.sampled_from(BUILDING),
        "receptacle": st.sampled_from([15, 20, 30]),
        "cord": st.sampled_from(CORDS),
        "ambient": temperatures,
        "conductors": st.integers(1, 40),
        "insulation_class": st.sampled_from(RATINGS),
        "termination_temperature": st.sampled_from(RATINGS),
        "only_receptacle": st.booleans(),
        "cord_conductors": st.sampled_from([2, 3]),
        "metal": st.sampled_from(["copper", "aluminum"]),
    },
)
GOES_WITH = {
    "building_wire": ("insulation_class", "termination_temperature", "conductors"),
    "receptacle": ("only_receptacle",),
    "cord": ("cord_conductors",),
}
UNITS = {"current": "A", "breaker": "A", "receptacle": "A", "run_time": "h", "ambient": "C"}
UNITS |= {"insulation_class": "C", "termination_temperature": "C"}


def judge(circuit: dict[str, object]) -> int:
    given = dict(circuit)
    metal = given.pop("metal", "copper")
    for whole, parts in GOES_WITH.items():
        for part in parts:
            if whole not in given:
                given.pop(part, None)
    for name, unit in UNITS.items():
        if name in given:
            given[name] = f"{typed(given[name])} {unit}"
    if "building_wire" in given:
        given["building_wire"] = f"{given['building_wire']} AWG {metal}"
    if "cord" in given:
        given["cord"] = f"{given['cord']} AWG"
    return rank(wirecalc.run("breaker", **given))


@BOUNDED
@given(circuits, around(7, 10, 12, 15, 16, 20, 30))
def test_more_current_never_improves_the_circuit(circuit: dict[str, object], other: float) -> None:
    low, high = sorted((circuit["current"], other))
    assert judge(circuit | {"current": high}) >= judge(circuit | {"current": low})


@pytest.mark.parametrize(
    "part",
    [
        {"receptacle": "15 A"},
        {"cord": "14 AWG", "ambient": "35 C"},
    ],
    ids=["receptacle, other outlets not said", "cord in the heat"],
)
def test_a_hair_more_current_never_improves_the_circuit(part: dict[str, str]) -> None:
    at, over = (
        rank(wirecalc.run("breaker", current=f"{a} A", breaker="20 A", run_time="1 h", **part))
        for a in ("15", "15.0000000015")
    )
    assert over >= at


@BOUNDED
@given(circuits, st.sampled_from([0.0, 1.0, 2.9999999999, 3.0, 3.1, 100.0]))
def test_a_longer_run_never_improves_the_circuit(circuit: dict[str, object], other: float) -> None:
    short, long = sorted((circuit["run_time"], other))
    assert judge(circuit | {"run_time": long}) >= judge(circuit | {"run_time": short})


@BOUNDED
@given(circuits, temperatures, temperatures)
def test_a_hotter_ambient_never_improves_the_circuit(
    circuit: dict[str, object], one: float, two: float
) -> None:
    cool, hot = sorted((one, two))
    assert judge(circuit | {"ambient": hot}) >= judge(circuit | {"ambient": cool})


@BOUNDED
@given(circuits, st.integers(1, 100), st.integers(1, 100))
def test_more_wires_in_the_cable_never_improve_the_circuit(
    circuit: dict[str, object], one: int, two: int
) -> None:
    few, many = sorted((one, two))
    wired = {"building_wire": "12", "ambient": 25.0} | circuit
    assert judge(wired | {"conductors": many}) >= judge(wired | {"conductors": few})


@BOUNDED
@given(circuits, st.sampled_from(METALS), st.data())
def test_a_thinner_wire_never_improves_the_circuit(
    circuit: dict[str, object], metal: str, data: st.DataObject
) -> None:
    listed = [g for g in BUILDING if metal == "copper" or gauge_number(g) <= 12]
    thick, thin = sorted(
        data.draw(st.tuples(st.sampled_from(listed), st.sampled_from(listed))), key=gauge_number
    )
    hot = {"ambient": 30.0, "conductors": 3} | circuit | {"metal": metal}
    # without insulation_class every listed gauge has a row in the 60 C column
    assert judge(hot | {"building_wire": thin}) >= judge(hot | {"building_wire": thick})


@BOUNDED
@given(circuits, st.sampled_from(GAUGES), st.sampled_from(GAUGES))
def test_a_thinner_wire_never_passes_where_a_thicker_one_fails(
    circuit: dict[str, object], one: str, two: str
) -> None:
    thick, thin = sorted((one, two), key=gauge_number)
    if judge(circuit | {"building_wire": thick}) == Verdict.FAIL.rank:
        assert judge(circuit | {"building_wire": thin}) >= Verdict.CANNOT_TELL.rank


@pytest.mark.parametrize(("thick", "thin"), [("14", "16"), ("16", "18")])
@pytest.mark.parametrize("breaker", [7, 10, 15])
@pytest.mark.parametrize("current", [1.0, 5.0, 6.9, 9.0])
def test_small_wire_that_is_thinner_never_improves_the_circuit(
    thick: str, thin: str, breaker: int, current: float
) -> None:
    circuit = {"current": current, "breaker": breaker, "run_time": 1.0, "ambient": 25.0}
    circuit |= {"conductors": 2, "insulation_class": 90, "termination_temperature": 90}
    assert judge(circuit | {"building_wire": thin}) >= judge(circuit | {"building_wire": thick})


@BOUNDED
@given(circuits, st.sampled_from(CORDS), st.sampled_from(CORDS))
def test_a_thinner_cord_never_improves_the_circuit(
    circuit: dict[str, object], one: str, two: str
) -> None:
    thick, thin = sorted((one, two), key=gauge_number)
    assert judge(circuit | {"cord": thin}) >= judge(circuit | {"cord": thick})

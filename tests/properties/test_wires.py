"""Wires: the gauge law, the order of the sizes, and texts that read back as the same wire."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from wirecalc import BadText
from wirecalc.trade.conductors import equivalent_gauge, gauge_for_current, resistance
from wirecalc.typed.size_ranges import read_size_range
from wirecalc.typed.wires import (
    CMIL_PER_MM2,
    GAUGES,
    gauge_cmil,
    gauge_name,
    gauge_number,
    read_wire,
)

BOUNDED = settings(deadline=None, max_examples=150)

gauges = st.sampled_from(GAUGES)
builds = st.sampled_from(["", "solid", "stranded"])
metals = st.sampled_from(["", "copper", "cu", "aluminum", "aluminium", "al", "copper-clad", "CCA"])
coatings = st.sampled_from(["", "bare", "tinned", "nickel-plated", "silver plated"])


def test_a_thicker_gauge_has_the_larger_area_and_the_lower_resistance() -> None:
    wires = [read_wire(f"{gauge} AWG") for gauge in GAUGES]  # thick to thin
    for thick, thin in pairwise(wires):
        assert thick.area_cmil > thin.area_cmil
        assert thick.area_mm2 > thin.area_mm2
        assert resistance(thick) < resistance(thin)


@pytest.mark.parametrize("gauge", GAUGES)
def test_a_gauge_follows_the_law_of_the_american_wire_gauge(gauge: str) -> None:
    number = -gauge.count("/") * (int(gauge[0]) - 1) if "/" in gauge else int(gauge)
    mils = 5 * 92 ** ((36 - number) / 39)  # ASTM B258: 5 mil at 36 AWG, 460 mil at 4/0, 39 steps
    assert gauge_number(gauge) == number
    assert gauge_name(number) == gauge
    assert math.isclose(read_wire(f"{gauge} AWG").area_cmil, mils**2, rel_tol=1e-12)
    assert math.isclose(
        read_wire(f"{gauge} AWG").area_mm2, math.pi / 4 * (mils * 0.0254) ** 2, rel_tol=1e-12
    )


@BOUNDED
@given(st.integers(-3, 37))
def test_three_gauges_thinner_is_about_half_the_area(number: int) -> None:
    ratio = gauge_cmil(number) / gauge_cmil(number + 3)
    assert math.isclose(ratio, 92 ** (3 / 19.5), rel_tol=1e-12)
    assert math.isclose(ratio, 2, rel_tol=0.003)


@BOUNDED
@given(gauges, builds, metals, coatings, st.permutations(range(4)), st.sampled_from([" ", ", "]))
def test_the_words_beside_a_gauge_may_stand_in_any_order(
    gauge: str, build: str, metal: str, coating: str, order: list[int], between: str
) -> None:
    parts = [f"{gauge} AWG", build, metal, coating]
    text = between.join(parts[i] for i in order if parts[i])
    wire = read_wire(text)
    known = {"": "copper", "cu": "copper", "al": "aluminium", "aluminum": "aluminium"}
    known |= {"copper-clad": "copper-clad aluminium", "CCA": "copper-clad aluminium"}
    assert wire.gauge == gauge
    assert wire.stranded == (build != "solid")
    assert wire.metal == known.get(metal, metal)
    assert wire.coating == (coating.replace(" ", "-") or "bare")
    assert ("stranded" in wire.assumed) == (not build)
    assert ("copper" in wire.assumed) == (not metal)


@BOUNDED
@given(
    st.one_of(
        gauges.map(lambda g: f"{g} AWG"),
        st.decimals("0.01", 300, places=2).map(lambda a: f"{a} mm2"),
        st.tuples(st.integers(1, 99), st.integers(10, 40)).map(lambda p: f"{p[0]}x{p[1]} AWG"),
        st.tuples(st.integers(1, 99), st.decimals("0.06", 3, places=2)).map(
            lambda p: f"{p[0]}x{p[1]} mm"
        ),
    ),
    metals,
)
def test_the_text_of_a_wire_reads_back_as_the_same_wire(size: str, metal: str) -> None:
    try:
        wire = read_wire(f"{size} {metal}".strip())
    except BadText:
        assume(False)
    assert read_wire(str(wire)) == wire
    assert read_wire(f"  {wire} ".replace(" ", "  ")).area_cmil == wire.area_cmil
    again = read_wire(wire.name).area_cmil
    assert math.isclose(again, wire.area_cmil, rel_tol=1e-5)


@BOUNDED
@given(st.integers(7, 999), st.integers(23, 40))
def test_strands_of_a_gauge_add_up(count: int, strand: int) -> None:
    area = count * (5 * 92 ** ((36 - strand) / 39)) ** 2
    assume(5 <= area <= 600_000)
    wire = read_wire(f"{count}x{strand} AWG")
    assert math.isclose(wire.area_cmil, area, rel_tol=1e-12)
    assert wire.stranded


@BOUNDED
@given(st.decimals("0.06", 19, places=3))
def test_one_solid_wire_is_the_same_by_diameter_in_mm_in_mil_and_by_its_area(diameter) -> None:
    by_mm = read_wire(f"{diameter} mm solid")
    by_mil = read_wire(f"{float(diameter) / 0.0254:.12f} mil solid")
    by_area = read_wire(f"{math.pi / 4 * float(diameter) ** 2:.12f} mm2")
    assert math.isclose(by_mm.area_cmil, by_mil.area_cmil, rel_tol=1e-9)
    assert math.isclose(by_mm.area_cmil, by_area.area_cmil, rel_tol=1e-9)
    assert math.isclose(by_mm.area_mm2 * CMIL_PER_MM2, by_area.area_cmil, rel_tol=1e-9)


@BOUNDED
@given(st.floats(5, 211_600), st.floats(5, 211_600))
def test_the_gauge_chosen_for_an_area_holds_it_and_grows_with_it(one: float, two: float) -> None:
    small, large = sorted((one, two))
    chosen = [gauge_number(equivalent_gauge(area)) for area in (small, large)]
    assert gauge_cmil(chosen[0]) >= small * (1 - 1e-9)
    assert chosen[0] >= chosen[1]


@BOUNDED
@given(st.integers(7, 200), st.decimals("0.08", "0.499", places=3))
def test_a_stranding_is_judged_by_a_gauge_at_most_that_much_thicker(count: int, diameter) -> None:
    wire = read_wire(f"{count}x{diameter} mm")
    gauge = gauge_for_current(wire)
    assume(gauge is not None and wire.area_cmil < gauge_cmil(-3))
    # a standard stranding of machine-tool wire lacks at most 7 % (19x25 for 12 AWG)
    assert gauge_cmil(gauge_number(gauge)) <= wire.area_cmil / 0.92


@BOUNDED
@given(gauges, gauges)
def test_a_range_of_gauges_reads_thin_first_and_is_refused_the_other_way_round(
    one: str, two: str
) -> None:
    thick, thin = sorted((one, two), key=gauge_number)
    size = read_size_range(f"{thin}-{thick} AWG")
    assert (size.thinnest, size.thickest) == (thin, thick)
    assert size.low_cmil == gauge_cmil(gauge_number(thin))
    assert size.high_cmil == gauge_cmil(gauge_number(thick))
    assert read_size_range(str(size)) == size
    if thick != thin:
        with pytest.raises(BadText, match="wrong way round"):
            read_size_range(f"{thick}-{thin} AWG")


@BOUNDED
@given(
    st.decimals("0.1", 100, places=2),
    st.decimals("0.1", 100, places=2),
    st.sampled_from(["-", " - ", " to ", "–"]),
    st.sampled_from([("mm2", CMIL_PER_MM2), ("kcmil", 1000.0)]),
)
def test_a_range_of_areas_reads_small_first(one, two, between: str, unit) -> None:
    word, factor = unit
    low, high = sorted((one, two))
    size = read_size_range(f"{low}{between}{high} {word}")
    assert math.isclose(size.low_cmil, float(low) * factor, rel_tol=1e-12)
    assert math.isclose(size.high_cmil, float(high) * factor, rel_tol=1e-12)
    assert read_size_range(str(size)) == size
    if low < high:
        with pytest.raises(BadText, match="wrong way round"):
            read_size_range(f"{high}{between}{low} {word}")

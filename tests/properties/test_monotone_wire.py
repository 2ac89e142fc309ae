"""Wire by itself: more damage, more current, more heat or thinner wire never improve a verdict."""

from __future__ import annotations

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

import wirecalc
from tests.properties.runs import full
from tests.properties.runs import rank_of as rank
from wirecalc import BadInput, Verdict
from wirecalc.typed.wires import GAUGES, gauge_number, read_wire

BOUNDED = settings(
    deadline=None, max_examples=60, suppress_health_check=[HealthCheck.filter_too_much]
)
EVEN = [g for g in GAUGES if gauge_number(g) % 2 == 0 and 0 <= gauge_number(g) <= 28]
AREAS = (0.3, 0.5, 0.75, 0.8, 1.0, 1.25, 1.3, 1.5, 2.0, 2.05, 2.5, 4.0, 6.0, 10.0)
SIZES = [f"{g} AWG" for g in GAUGES if gauge_number(g) <= 30] + [f"{a} mm2" for a in AREAS]
STANDARDS = ("none", "ipc-a-620-class-2", "ipc-a-620-class-3", "faa-ac-43-13", "nasa-8739-4")
NEAR = (1.0, 1 - 1e-10, 1 + 1e-10, 0.98, 1.02)


ratings = st.sampled_from([60, 80, 105, 150, 200, 250])
volts = st.sampled_from([150, 300, 600, 1000])
marks = st.sampled_from(["yes", "no", None])


@BOUNDED
@given(
    st.sampled_from(SIZES),
    st.sampled_from(SIZES),
    st.sampled_from(SIZES),
    st.fixed_dictionaries({"old_flame_rated": marks, "new_flame_rated": marks}),
)
def test_a_thinner_new_wire_never_improves_a_substitute(
    old: str, one: str, two: str, more: dict[str, str | None]
) -> None:
    thin, thick = sorted((one, two), key=lambda w: read_wire(w).area_cmil)
    asked = {"old_wire": old} | {n: v for n, v in more.items() if v}
    kinder = wirecalc.run("substitute", **asked, new_wire=thick)
    harder = wirecalc.run("substitute", **asked, new_wire=thin)
    sizes = [f.criterion("size of the wire").verdict.rank for f in (kinder, harder)]
    assert sizes[1] >= sizes[0]
    assert harder.verdict is not None
    assert kinder.verdict is not None
    assert harder.verdict.rank >= kinder.verdict.rank


@BOUNDED
@given(ratings, ratings, ratings, volts, volts, volts)
def test_lower_ratings_never_improve_a_substitute(
    old: int, one: int, two: int, old_volts: int, volts_one: int, volts_two: int
) -> None:
    ranks = [
        rank(
            "substitute",
            **{"old_wire": "16 AWG", "new_wire": "16 AWG"},
            **{"old_oil_resistant": "no", "old_flame_rated": "no"},
            **{"old_wire_temperature": f"{old} C", "new_wire_temperature": f"{new} C"},
            **{"old_wire_voltage": f"{old_volts} V", "new_wire_voltage": f"{new_volts} V"},
        )
        for new, new_volts in (
            (max(one, two), max(volts_one, volts_two)),
            (min(one, two), min(volts_one, volts_two)),
        )
    ]
    assert ranks[1] >= ranks[0]


@BOUNDED
@given(
    st.sampled_from(["16 AWG", "12 AWG", "8 AWG", "14 AWG aluminum", "16 AWG solid"]),
    st.sampled_from(STANDARDS),
    st.integers(1, 900),
    st.tuples(st.integers(0, 60), st.integers(0, 60)),
    st.tuples(st.integers(0, 60), st.integers(0, 60)),
)
def test_more_damaged_strands_never_improve(
    wire: str, standard: str, total: int, one: tuple[int, int], two: tuple[int, int]
) -> None:
    count = 1 if "solid" in wire else total
    few = [min(pair) for pair in zip(one, two, strict=True)]
    many = [max(pair) for pair in zip(one, two, strict=True)]
    assume(sum(many) <= count)
    ranks = [
        rank(
            "strands",
            wire=wire,
            strand_standard=standard,
            strands=str(count),
            cut_strands=str(cut),
            nicked_strands=str(nicked),
        )
        for cut, nicked in (few, many)
    ]
    assert ranks[1] >= ranks[0]


@BOUNDED
@given(st.sampled_from(STANDARDS), st.integers(2, 200), st.integers(0, 12))
def test_the_makers_rule_is_never_the_kinder_one(standard: str, total: int, damaged: int) -> None:
    assume(damaged <= total)
    asked = {"wire": "16 AWG", "strand_standard": standard, "cut_strands": "0"}
    few = rank("strands", **asked, strands=str(total), nicked_strands=str(damaged))
    makers = rank(
        "strands",
        **asked | {"strand_standard": "none"},
        strands=str(total),
        nicked_strands=str(damaged),
    )
    assert makers >= few or few == Verdict.CANNOT_TELL.rank  # a standard without a row can't tell


uses = st.sampled_from(["building", "cord", "fixture", "appliance"])
GIVEN = {"insulation_class": "75 C", "termination_temperature": "75 C", "conductors": "3"}
GIVEN |= {"cord_conductors": "2", "wire_temperature": "150 C"}


@BOUNDED
@given(
    uses,
    st.sampled_from(["18 AWG", "14 AWG", "12 AWG", "10 AWG", "12 AWG aluminum"]),
    st.sampled_from([6.0, 7, 9, 10, 13, 14, 15, 18, 20, 22, 23, 25, 26, 30, 35, 40, 45]),
    st.tuples(st.sampled_from(NEAR), st.sampled_from(NEAR)),
    st.tuples(st.integers(-40, 90), st.integers(-40, 90)),
)
def test_more_current_or_heat_never_improves_an_ampacity(
    use: str, wire: str, amps: float, by: tuple[float, float], heat: tuple[int, int]
) -> None:
    asked = GIVEN | {"use": use, "wire": wire}
    ranks = [
        rank(
            "ampacity",
            **asked,
            current=full(amps * share, "A"),
            ambient=f"{warm} C",
            place_temperature=f"{2 * warm} C" if warm > 0 else "0 C",
        )
        for share, warm in ((min(by), min(heat)), (max(by), max(heat)))
    ]
    assert ranks[1] >= ranks[0]


@BOUNDED
@given(uses, st.sampled_from(EVEN), st.sampled_from(EVEN), st.sampled_from([0.5, 5.0, 9.0, 17.0]))
def test_a_thinner_wire_never_passes_where_a_thicker_one_fails(
    use: str, one: str, two: str, amps: float
) -> None:
    thick, thin = sorted((one, two), key=gauge_number)
    asked = GIVEN | {"use": use, "current": f"{amps} A", "ambient": "30 C"}
    asked |= {"place_temperature": "40 C"}
    kinder = rank("ampacity", **asked, wire=f"{thick} AWG")
    harder = rank("ampacity", **asked, wire=f"{thin} AWG")
    if kinder == Verdict.FAIL.rank:
        assert harder >= Verdict.CANNOT_TELL.rank
    if use == "building" and gauge_number(thin) <= 14:  # every size is listed
        assert harder >= kinder


@BOUNDED
@given(
    st.integers(1, 168),
    st.floats(0.05, 3.5).map(lambda d: round(d, 4)),
    st.floats(0.05, 3.5).map(lambda d: round(d, 4)),
)
def test_thicker_strands_are_never_judged_by_a_thinner_gauge(
    count: int, one: float, two: float
) -> None:
    found = []
    for diameter in sorted((one, two)):
        try:
            finding = wirecalc.run("gauge", strands=str(count), strand_diameter=f"{diameter} mm")
        except BadInput:
            assume(False)
        texts = {a.name: a.text for a in finding.answers}
        metric = [w for w in texts["replace with"].replace(",", "").split(" or ") if "mm2" in w]
        by = gauge_number(texts["judge its current as"].removesuffix(" AWG"))
        found.append((by, float(metric[0].removesuffix(" mm2"))))
    (thin_by, thin_metric), (thick_by, thick_metric) = found
    assert thick_by <= thin_by
    assert thick_metric >= thin_metric


@BOUNDED
@given(st.floats(0.1, 24).map(lambda a: round(a, 3)))
def test_an_equivalent_never_has_less_copper(area: float) -> None:
    finding = wirecalc.run("equivalent", wire=f"{area} mm2")
    assert finding.figure("surplus copper of the gauge").figure.value >= -1e-6
    there = next(a.text for a in finding.answers if a.name == "gauge to use")
    back = wirecalc.run("equivalent", wire=there)
    if any(a.name == "metric size to use" for a in back.answers):
        assert back.figure("surplus copper of the metric size").figure.value >= -1e-6

"""A wire in an overcurrent: k factors, ICEA P-32-382, Onderdonk, and the heating integrated."""

from __future__ import annotations

import math

import pytest
from scipy.integrate import solve_ivp

import wirecalc
from wirecalc import tables

from .records import independent, memory, source
from .seen import ADIABATIC_BY_HAND, ADIABATIC_CONSTANTS, K_FACTORS_43A, PVC_TO_150_C

STANDS = "time that the insulation stands"
NAME = "time to the limit of the insulation"
# IEC 60364-5-54 Table A.54.1, recalled: beta in C, Qc in J/(K mm3), rho at 20 C in ohm mm
CONSTANTS = {
    "copper": (234.5, 3.45e-3, 17.241e-6),
    "aluminium": (228, 2.5e-3, 28.264e-6),
    "steel": (202, 3.8e-3, 138e-6),
}
# metal, from, to, k
PUBLISHED = [
    *(("copper", *v) for v in ((70, 160, 115), (70, 140, 103), (90, 160, 100), (90, 140, 86))),
    *(("copper", *v) for v in ((60, 200, 141), (90, 250, 143), (85, 220, 134), (30, 160, 143))),
    *(("copper", *v) for v in ((30, 140, 133), (30, 220, 166), (30, 250, 176), (30, 500, 228))),
    *(("copper", *v) for v in ((30, 200, 159), (30, 150, 138))),
    *(("aluminium", *v) for v in ((70, 160, 76), (90, 250, 94), (85, 220, 89), (30, 160, 95))),
    *(("aluminium", *v) for v in ((30, 250, 116), (30, 300, 125), (30, 200, 105))),
    *(("steel", *v) for v in ((30, 160, 52), (30, 250, 64), (30, 500, 82), (30, 200, 58))),
]


def k_of(metal, start, end):
    beta, heat, rho = CONSTANTS[metal]
    return math.sqrt(heat * (beta + 20) / rho * math.log((beta + end) / (beta + start)))


# what IEC 60364 has no row of: PVC of 105 C, from full load to 160 C, by its own formula
COMPUTED = [("copper", 105, 160, 87.4), ("copper", 105, 140, 70.7)]


def short_time(wire="1.5 mm2", amps=172.5, insulation="pvc-70", **given):
    """Run on a wire as hot as at full load, unless it is said otherwise."""
    typed = {} if insulation is None else {"insulation": insulation}
    return wirecalc.run("short-time", wire=wire, overcurrent=f"{amps:.9f} A", **typed, **given)


def value(finding, name):
    return finding.figure(name).figure.value


@K_FACTORS_43A
@source(
    "IEC 60364-5-54",
    "edition not stated",
    "Tables A.54.2 to A.54.6, k factors",
    seen="a BS 7671 pocket guide and a NEN 1010 page, some rows in one of them",
)
@ADIABATIC_BY_HAND
@ADIABATIC_CONSTANTS
def test_the_table_holds_what_was_printed():
    rows = tables.load("adiabatic-k").rows
    found = [
        (r.text("metal"), int(r.number("initial_C")), int(r.number("final_C")), r.number("k"))
        for r in rows
    ]
    assert sorted(found) == sorted(PUBLISHED + COMPUTED)


@K_FACTORS_43A
@source(
    "IEC 60364-5-54",
    "edition not stated",
    "Tables A.54.2 to A.54.6, k factors",
    seen="a BS 7671 pocket guide and a NEN 1010 page, some rows in one of them",
)
@ADIABATIC_BY_HAND
@ADIABATIC_CONSTANTS
@pytest.mark.parametrize(("metal", "start", "end", "k"), PUBLISHED + COMPUTED)
def test_published_k_is_the_formulas_within_the_rounding_of_the_print(metal, start, end, k):
    within = 0.0068 if (metal, start, end, k) in PUBLISHED else 0.0006
    assert k == pytest.approx(k_of(metal, start, end), rel=within)
    beta, heat, rho = CONSTANTS[metal]
    table = tables.load("adiabatic-constants")
    for item, constant in (
        ("zero_resistance", beta),
        ("heat_capacity", heat),
        ("resistivity_20C", rho),
    ):
        row = table.row(law="iec", metal=metal, item=item)
        assert row.number("value") == pytest.approx(constant)


@K_FACTORS_43A
@source(
    "IEC 60364-4-43",
    "edition not stated",
    "434.5.2, t = (k S / I)^2",
    seen="a BS 7671 pocket guide",
)
@pytest.mark.parametrize(
    ("insulation", "k"),
    [
        ("pvc-70", 115),
        ("pvc-90", 100),
        ("rubber-60", 141),
        ("xlpe-epr-90", 143),
        ("butyl-85", 134),
    ],
)
def test_one_second_is_k_times_area(insulation, k):
    # PVC copper 1.5 mm2: 115 x 1.5 = 172.5 A for 1 s
    found = short_time(amps=k * 1.5, insulation=insulation)
    assert value(found, STANDS) == pytest.approx(1)
    half = short_time(amps=k * 1.5 * math.sqrt(2), insulation=insulation)
    assert value(half, STANDS) == pytest.approx(0.5)


@source(
    "IEC 60364-4-43",
    "edition not stated",
    "Table 43A, k of PVC over 300 mm2",
    seen="a NEN 1010 page",
)
@source(
    "IEC 60364-4-43",
    "edition not stated",
    "434.5.2, t = (k S / I)^2",
    seen="a BS 7671 pocket guide",
)
@independent("area of 600 kcmil from the definition of the circular mil")
def test_over_300_mm2_pvc_stands_less():
    mm2 = 600e3 * math.pi / 4 * 0.0254**2
    for insulation, k in (("pvc-70", 103), ("pvc-90", 86)):
        found = short_time("600 kcmil", amps=20_000, insulation=insulation)
        assert value(found, STANDS) == pytest.approx((k * mm2 / 20_000) ** 2)


@K_FACTORS_43A
@source(
    "IEC 60364-4-43",
    "edition not stated",
    "434.5.2, t = (k S / I)^2",
    seen="a BS 7671 pocket guide",
)
@ADIABATIC_BY_HAND
@ADIABATIC_CONSTANTS
@PVC_TO_150_C
@pytest.mark.parametrize(
    ("seconds", "word"),
    # from 30 C the formula has k 142.7 and (142.7/115)^2 = 1.54 s: a fail there is sure
    [(0.88, "pass"), (0.9, "marginal"), (1.01, "cannot tell"), (1.56, "fail")],
)
def test_pvc_passes_within_both_laws(seconds, word):
    # ICEA P-32-382 to 150 C (from memory) allows (0.0297 log10(384/304)) / (115 / 1973.5)^2 = 0.887
    found = short_time(overcurrent_time=f"{seconds} s")
    assert found.verdict == word
    if word == "cannot tell":
        assert found.criterion(NAME).criterion.needs == ("temperature_before",)
        hot = short_time(overcurrent_time=f"{seconds} s", temperature_before="70 C")
        assert hot.verdict == "fail"


@K_FACTORS_43A
@source(
    "ICEA P-32-382",
    "2007",
    "equation of copper, (I/A)^2 t = 0.0297 log10((T2 + 234) / (T1 + 234))",
    seen="a cable maker's specification sheet, a question page and a forum post",
)
@pytest.mark.parametrize(("seconds", "word"), [(0.98, "pass"), (0.995, "fail"), (1.01, "fail")])
def test_the_stricter_of_two_confirmed_laws_rules(seconds, word):
    # XLPE, 90 to 250 C: IEC k 143; ICEA 0.0297 log10(484/324) is 142.0 in the same unit, 0.986 s
    given = {"insulation": "xlpe-epr-90", "temperature_before": "90 C"}
    found = short_time(amps=143 * 1.5, overcurrent_time=f"{seconds} s", **given)
    assert found.verdict == word


@source(
    "ICEA P-32-382",
    "2007",
    "factors of aluminium to 250 C, I = factor x A / sqrt(t)",
    seen="the short-circuit table of a cable maker's sheet of medium-voltage cable",
)
@source(
    "NEC (NFPA 70)",
    "2011",
    "Chapter 9 Table 8, areas in cmil",
    seen="two copies, one without its edition",
)
@pytest.mark.parametrize(("start", "printed"), [(90, "0.0470"), (105, "0.044")])
def test_icea_factor_of_aluminium_as_a_cable_maker_prints_it(start, printed, half_a_digit):
    found = short_time(
        "4 AWG aluminum",
        amps=1000,
        insulation="xlpe-epr-90",
        temperature_before=f"{start} C",
    )
    cmil = 41_740  # 4 AWG
    factor = 1000 * math.sqrt(value(found, "time by ICEA P-32-382")) / cmil
    assert factor == pytest.approx(float(printed), abs=half_a_digit(printed) + 1e-5)


@source(
    "ICEA P-32-382",
    "2007",
    "equation of copper, (I/A)^2 t = 0.0297 log10((T2 + 234) / (T1 + 234))",
    seen="a cable maker's specification sheet, a question page and a forum post",
)
@source(
    "NEC (NFPA 70)",
    "2011",
    "Chapter 9 Table 8, areas in cmil",
    seen="two copies, one without its edition",
)
def test_icea_of_copper():
    found = short_time("10 AWG", amps=1000, insulation="xlpe-epr-90")
    expected = 0.0297 * math.log10((250 + 234) / (90 + 234)) * (10_380 / 1000) ** 2
    assert value(found, "time by ICEA P-32-382") == pytest.approx(expected, rel=1e-3)


@source(
    "Onderdonk's equation",
    "undated",
    "33 (I/A)^2 t = log10((Tm - Ta) / (234 + Ta) + 1)",
    seen="documentation of an open-source electronics library",
)
@memory("copper melts at 1083 C")
@source(
    "NEC (NFPA 70)",
    "2011",
    "Chapter 9 Table 8, areas in cmil",
    seen="two copies, one without its edition",
)
def test_onderdonk():
    found = short_time("10 AWG", amps=1000, temperature_before="40 C")
    expected = math.log10((1083 - 40) / (234 + 40) + 1) / 33 * (10_380 / 1000) ** 2
    assert value(found, "copper melts after") == pytest.approx(expected, rel=1e-3)


def heated(amps, mm2, start, seconds, metal="copper"):
    """Integrate dT/dt = I^2 rho(T) / (A^2 Qc) step by step, which the formula never does."""
    beta, heat, rho = CONSTANTS[metal]

    def rate(_, t):
        return [amps**2 * rho * (beta + t[0]) / (beta + 20) / (mm2**2 * heat)]

    return solve_ivp(rate, (0, seconds), [start], rtol=1e-9, atol=1e-9).y[0][-1]


@independent("dT/dt = I^2 rho(T) / (A^2 Qc) integrated in time")
@ADIABATIC_CONSTANTS
@pytest.mark.parametrize(
    ("wire", "metal", "mm2", "amps", "start", "seconds"),
    [
        ("1.5 mm2", "copper", 1.5, 172.5, 30, 1.0),
        ("2.5 mm2", "copper", 2.5, 150, 70, 2.0),
        ("4 mm2 aluminum", "aluminium", 4, 300, 20, 0.7),
    ],
)
def test_the_temperature_is_that_of_the_heating_integrated(wire, metal, mm2, amps, start, seconds):
    found = short_time(wire, amps, temperature_before=f"{start} C", overcurrent_time=f"{seconds} s")
    reached = heated(amps, mm2, start, seconds, metal)
    assert value(found, "temperature then") == pytest.approx(reached, abs=0.01)
    # and the time to 160 C is when the integration gets there
    stands = value(found, STANDS)
    assert heated(amps, mm2, start, stands, metal) == pytest.approx(160, abs=0.01)


@K_FACTORS_43A
@ADIABATIC_BY_HAND
@ADIABATIC_CONSTANTS
@PVC_TO_150_C
def test_a_cooler_start_stands_longer():
    # from 30 C the formula gives k 142.7 (IEC prints 143 for 30 to 160 C)
    cool = {"temperature_before": "30 C"}
    assert value(short_time(**cool), STANDS) == pytest.approx((142.7 / 115) ** 2, rel=2e-3)
    assert short_time(overcurrent_time="0.99 s", **cool).verdict == "pass"  # by k 115 already
    # ICEA from 30 C, from memory: 0.0297 log10(384/264) / (115 / 1973.5)^2 is 1.42 s
    assert short_time(overcurrent_time="1.3 s", **cool).verdict == "pass"
    assert short_time(overcurrent_time="1.45 s", **cool).verdict == "marginal"
    assert short_time(overcurrent_time="1.6 s", **cool).verdict == "fail"
    # from 100 C: k 91.7, 0.636 s, ICEA 0.530 s; the formula's constants from memory reproduce all
    # published k, 2 % off
    hot = {"temperature_before": "100 C"}
    for seconds, word in (("0.52 s", "pass"), ("0.54 s", "marginal"), ("0.64 s", "fail")):
        assert short_time(overcurrent_time=seconds, **hot).verdict == word


@ADIABATIC_BY_HAND
@ADIABATIC_CONSTANTS
@source(
    "ICEA P-32-382",
    "2007",
    "equation of copper, (I/A)^2 t = 0.0297 log10((T2 + 234) / (T1 + 234))",
    seen="a cable maker's specification sheet, a question page and a forum post",
)
@PVC_TO_150_C
@pytest.mark.parametrize(
    ("seconds", "word"),
    # 18 AWG, 100 A, as hot as at full load: PVC 105 C to 160 C k 87.4, 0.518 s; its end is 20 K off
    # at the most, 0.337 s (k 70.7); ICEA from memory 0.424 s. XLPE 142.0: 1.366 s, and from 30 C
    # k 175.6, ICEA 0.0297 log10(484/264) (1624/100)^2 = 2.06 s
    [
        (0.336, "pass"),
        (0.337, "marginal"),
        (0.5, "marginal"),
        (0.53, "cannot tell"),
        (1.3, "cannot tell"),
        (2, "cannot tell"),
        (2.1, "fail"),
    ],
)
def test_insulation_that_was_not_said_fails_only_by_the_strongest(seconds, word):
    found = short_time("18 AWG", 100, None, overcurrent_time=f"{seconds} s")
    assert found.verdict == word
    if word == "cannot tell":
        assert {"insulation", "temperature_before"} & {*found.criterion(NAME).criterion.needs}


@K_FACTORS_43A
@ADIABATIC_BY_HAND
@ADIABATIC_CONSTANTS
@memory("PVC of 105 C ends at 160 C as other PVC does, at 140 C at the least")
def test_appliance_wire_of_105_c_pvc_stands_the_least():
    # (87.4 x 0.823 / 45)^2 = 2.56 s; PVC 90 C has k 100 and 3.345 s
    untold = short_time("18 AWG", 45, None, overcurrent_time="2.8 s")
    assert untold.verdict == "cannot tell"
    hot = {"temperature_before": "105 C"}
    assert short_time("18 AWG", 45, "pvc-105", overcurrent_time="2.8 s", **hot).verdict == "fail"
    assert short_time("18 AWG", 45, "pvc-90", overcurrent_time="2.8 s").verdict == "pass"
    assert value(short_time("18 AWG", 45, None), STANDS) == pytest.approx(2.558, abs=0.004)
    # a cooler start does not settle where this insulation ends: 160 C, 140 at the least, 35 % off
    cool = {"temperature_before": "104 C", "overcurrent_time": "2.2 s"}
    assert short_time("18 AWG", 45, "pvc-105", **cool).verdict == "marginal"
    assert short_time("18 AWG", 45, "pvc-105", **cool | {"overcurrent_time": "1.6 s"}).verdict == (
        "pass"
    )


@ADIABATIC_BY_HAND
@ADIABATIC_CONSTANTS
@pytest.mark.parametrize(("share", "word"), [(0.979, "pass"), (0.981, "marginal"), (1.001, "fail")])
def test_a_time_by_the_formula_is_2_percent_off_at_the_most(share, word):
    seconds = k_of("copper", 30, 200) ** 2 / 141**2  # rubber, of which ICEA says nothing
    found = short_time(
        amps=141 * 1.5,
        insulation="rubber-60",
        temperature_before="30 C",
        overcurrent_time=f"{share * seconds:.9f} s",
    )
    assert found.verdict == word


@K_FACTORS_43A
@source(
    "IEC 60364-4-43",
    "edition not stated",
    "434.5.2, t = (k S / I)^2",
    seen="a BS 7671 pocket guide",
)
@memory("IEC 60364-4-43, 434.5.2: the formula is for times up to 5 s")
def test_over_5_s_more_cannot_be_told():
    # 5 s: IEC 60364-4-43, from memory; 1.5 mm2 PVC at 60 A stands (172.5/60)^2 = 8.27 s
    assert short_time(amps=60, overcurrent_time="7 s").verdict == "pass"
    assert short_time(amps=60, overcurrent_time="9 s").verdict == "cannot tell"
    # 77 A 5.02 s, 77.3 A 4.98 s
    full = {"temperature_before": "70 C", "overcurrent_time": "9 s"}
    assert short_time(amps=77, **full).verdict == "cannot tell"
    assert short_time(amps=77.3, **full).verdict == "fail"
    # at 80 A 4.65 s: past it within 5 s, so it is past it
    full = {"temperature_before": "70 C"}
    assert short_time(amps=80, overcurrent_time="9 s", **full).verdict == "fail"


@K_FACTORS_43A
@source(
    "ICEA P-32-382",
    "2007",
    "equation of copper, (I/A)^2 t = 0.0297 log10((T2 + 234) / (T1 + 234))",
    seen="a cable maker's specification sheet, a question page and a forum post",
)
@PVC_TO_150_C
@pytest.mark.parametrize(("amps", "word"), [(180, "fail"), (40, "cannot tell"), (15, "pass")])
def test_minutes_are_no_slip(amps, word):
    # XLPE 14 AWG, ICEA 142.0 A s^0.5/mm2: 2.69 s at 180 A, 54.6 s at 40 A; PVC 90 C 192 s at 15 A,
    # of which ICEA (from memory) leaves 164 s
    kind = "pvc-90" if word == "pass" else None
    found = short_time("14 AWG", amps, kind, overcurrent_time="2 min")
    assert found.verdict == word
    if word == "cannot tell":
        assert "ampacity" in found.criterion(NAME).action


@K_FACTORS_43A
@source(
    "IEC 60364-4-43",
    "edition not stated",
    "434.5.2, t = (k S / I)^2",
    seen="a BS 7671 pocket guide",
)
@PVC_TO_150_C
def test_a_level_from_memory_is_shown_as_one():
    # 18 AWG, 100 A: IEC 0.677 s (confirmed), ICEA to 150 C 0.578 s (from memory)
    kept = short_time("18 AWG", 100, "pvc-90", overcurrent_time="0.57 s").criterion(NAME)
    assert kept.criterion.limit == pytest.approx(0.677, abs=5e-4)
    assert kept.criterion.source.confidence == "confirmed"
    past = short_time("18 AWG", 100, "pvc-90", overcurrent_time="0.6 s").criterion(NAME)
    assert (past.verdict, past.criterion.source.confidence) == ("marginal", "memory")
    assert past.criterion.limit == pytest.approx(0.578, abs=5e-4)


@independent("the time goes with the square of the area: half the strands, a quarter of the time")
def test_cut_strands_leave_less_area():
    whole = short_time("26x30 AWG", 100)
    cut = short_time("26x30 AWG", 100, cut_strands="13")
    said = short_time("26x30 AWG", 100, cut_strands="13", strands="26")
    assert value(cut, "area") == pytest.approx(value(whole, "area") / 2)
    assert value(cut, STANDS) == pytest.approx(value(whole, STANDS) / 4)
    assert value(said, STANDS) == value(cut, STANDS)
    assert value(cut, "copper melts after") == pytest.approx(value(whole, "copper melts after") / 4)


@ADIABATIC_BY_HAND
@ADIABATIC_CONSTANTS
@PVC_TO_150_C
def test_what_was_never_seen_is_not_made_up():
    assert short_time("12 AWG cca", 100, overcurrent_time="1 s").verdict == "cannot tell"
    # no k of aluminium under PVC 90 C was seen: by the formula, from memory
    # k = 148 sqrt(ln(388 / 318)) = 66.0 and 21.15 mm2: 1.949 s, 2 % off; ICEA from memory 1.634 s
    full = {"temperature_before": "90 C"}
    for seconds, verdict in ((1.63, "pass"), (1.64, "marginal"), (1.9, "marginal"), (2.0, "fail")):
        given = full | {"overcurrent_time": f"{seconds} s"}
        found = short_time("4 AWG aluminum", 1000, "pvc-90", **given)
        assert found.verdict == verdict


@source(
    "IEC 60364-4-43",
    "edition not stated",
    "Table 43A, PVC over 300 mm2 ends at 140 C",
    seen="a NEN 1010 page",
)
@PVC_TO_150_C
def test_the_kinder_of_two_laws_is_no_caution_level():
    # over 300 mm2 IEC ends at 140 C, ICEA (from memory) at 150 C
    found = short_time("600 kcmil", 20_000, "pvc-70", overcurrent_time="1 s")
    assert value(found, "time by ICEA P-32-382") > value(found, STANDS)
    assert found.criterion(NAME).criterion.caution_limit is None
    assert found.verdict == "pass"

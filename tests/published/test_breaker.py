"""The branch circuit against rows of the NEC, worked by hand."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import tables

from .loads import LOAD, OWN_CIRCUIT, PROTECTION, READ, WIRE, breaker, verdict
from .records import independent, memory, practice, source
from .seen import (
    AMBIENT_310_15_B,
    BUNDLED_310_15_C,
    CORD_400_5_A,
    FASTENED_210_23_A_2,
    LOADS_210_20_A,
    OWN_CIRCUIT_210_22,
    PLUGGED_IN_210_23_A_1,
    RATINGS_240_6_A,
    RECEPTACLE_210_21_B_2,
    RECEPTACLES_210_21_B_3,
    SMALL_WIRE_240_4_D,
    TERMINATIONS_110_14_C,
    WIRE_310_16,
)

RECEPTACLE, CORD = "load on the receptacle", "load on the cord"
CORRECTED = "load on the wire, corrected"


@RECEPTACLE_210_21_B_2
@OWN_CIRCUIT_210_22
@pytest.mark.parametrize(
    ("circuit", "receptacle", "most"),
    [
        # circuit with two or more receptacles: 80 % of the receptacle
        (15, 15, 12),
        (20, 15, 12),
        (20, 20, 16),
        (30, 30, 24),
    ],
)
def test_receptacle_against_nec_table_210_21_b_2(circuit, receptacle, most):
    given = {"breaker": f"{circuit} A", "receptacle": f"{receptacle} A"}
    over = {**given, "current": f"{most + 0.1} A"}
    for known in ({}, {"only_receptacle": "no"}, {"only_receptacle": "yes"}):
        assert verdict(RECEPTACLE, current=f"{most} A", **given, **known) == "pass"
    assert verdict(RECEPTACLE, **over, only_receptacle="no") == "fail"
    assert verdict(RECEPTACLE, **over, only_receptacle="yes") == "pass"  # NEC 210.22
    assert verdict(RECEPTACLE, **over) == "cannot tell"


@source("NEC (NFPA 70)", "2017", "240.4(D): 14 AWG copper, 15 A", seen="three copies")
def test_a_wire_that_nobody_looked_at_carries_what_the_thinnest_does():
    given = {"receptacle": "20 A", "only_receptacle": "yes", "run_time": "1 h"}
    assert breaker(current="15 A", breaker="20 A", **given).verdict == "pass"
    assert verdict("load on the wire", current="15.1 A", breaker="20 A", **given) == "cannot tell"
    assert verdict("load on the wire", current="15 A", breaker="21 A", **given) == "cannot tell"


@RECEPTACLE_210_21_B_2
def test_a_receptacle_that_nobody_looked_at_gives_12_a():
    given = {"only_receptacle": "yes", "run_time": "1 h", "fastened_in_place": "no"}
    assert breaker(current="12 A", breaker="20 A", **given).verdict == "pass"
    assert verdict(RECEPTACLE, current="12.1 A", breaker="20 A", **given) == "cannot tell"
    assert verdict(RECEPTACLE, current="12 A", breaker="21 A", **given) == "cannot tell"


@practice("a receptacle gives the amps that are printed on it")
@pytest.mark.parametrize("only", ["yes", "no"])
def test_no_receptacle_carries_more_than_its_rating(only):
    given = {"breaker": "20 A", "receptacle": "15 A", "only_receptacle": only}
    assert verdict(RECEPTACLE, current="15.1 A", **given) == "fail"


@source(
    "NEC (NFPA 70)", "not stated in the copies", "210.21(B)(1)", seen="a trade column and a forum"
)
@RECEPTACLES_210_21_B_3
@pytest.mark.parametrize(
    ("breaker", "receptacle", "only", "expected"),
    [
        # NEC 210.21(B)(1): a single receptacle has at least the rating of its circuit;
        # Table 210.21(B)(3): several have the ratings listed for it
        ("15 A", "30 A", None, "cannot tell"),
        ("15 A", "30 A", "no", "fail"),
        ("15 A", "30 A", "yes", "pass"),
        ("20 A", "15 A", "no", "pass"),
        ("20 A", "15 A", "yes", "fail"),
        ("30 A", "15 A", None, "fail"),
    ],
)
def test_receptacle_on_its_circuit(breaker, receptacle, only, expected):
    given = {"current": "5 A", "breaker": breaker, "receptacle": receptacle}
    if only:
        given["only_receptacle"] = only
    assert verdict("receptacle on this circuit", **given) == expected


@SMALL_WIRE_240_4_D
@pytest.mark.parametrize(
    ("wire", "largest", "over"),
    [
        ("14 AWG", 15, 20),
        ("12 AWG", 20, 25),
        ("10 AWG", 30, 35),
        ("12 AWG aluminum", 15, 20),
        ("10 AWG aluminum", 25, 30),
    ],
)
def test_breaker_on_small_wire_against_nec_240_4_d(wire, largest, over):
    given = {"current": "5 A", "building_wire": wire, "insulation_class": "90 C"}
    given["termination_temperature"] = "90 C"  # its ampacity would allow more; the rule does not
    given |= {"ambient": "30 C", "conductors": "3"}
    assert verdict(PROTECTION, breaker=f"{largest} A", **given) == "pass"
    assert verdict(PROTECTION, breaker=f"{over} A", **given) == "fail"


@LOADS_210_20_A
@pytest.mark.parametrize(
    ("current", "run_time", "expected"),
    [
        # NEC 210.19(A)(1), 210.20(A), article 100: 3 hours or more counts 125 %, 12 A becomes 15 A
        ("12 A", "3 h", "pass"),
        ("12.01 A", "3 h", "fail"),
        ("12.01 A", "2.9 h", "pass"),
        ("15 A", "2.9 h", "pass"),
        ("15.01 A", "2.9 h", "fail"),
    ],
)
def test_a_continuous_load_counts_125_percent(current, run_time, expected):
    assert verdict(LOAD, current=current, breaker="15 A", run_time=run_time) == expected


@LOADS_210_20_A
@pytest.mark.parametrize(
    ("current", "expected"),
    [
        # 12 A x 1.25 = 15 A holds however long it runs; 12.5 A turns on it; 15.1 A never holds
        ("12 A", "pass"),
        ("12.5 A", "cannot tell"),
        ("15 A", "cannot tell"),
        ("15.1 A", "fail"),
    ],
)
def test_a_load_of_unknown_duration_is_judged_both_ways(current, expected):
    given = {"current": current, "breaker": "15 A", "receptacle": "15 A", **OWN_CIRCUIT}
    assert wirecalc.run("breaker", **given).verdict == expected


@WIRE_310_16
@BUNDLED_310_15_C
@RATINGS_240_6_A
@memory("NEC 240.4(B): the next standard rating over its ampacity may protect a wire")
@pytest.mark.parametrize(
    ("breaker", "ambient", "count", "expected"),
    [
        # 10 AWG copper, 60 C: 30 A x 0.80 for 6 wires (Table 310.15(C)(1)) = 24 A, next standard
        # rating 25 A (240.6(A)); 8 AWG: 40 A x 0.71 at 45 C x 0.80 = 22.7 A, next 25 A
        ("20 A", "30 C", 6, "pass"),
        ("25 A", "30 C", 6, "cannot tell"),
        ("30 A", "30 C", 6, "fail"),
    ],
)
def test_breaker_protects_the_corrected_ampacity(breaker, ambient, count, expected):
    given = {"building_wire": "10 AWG", "ambient": ambient, "conductors": count}
    assert verdict(PROTECTION, current="5 A", breaker=breaker, **given) == expected


@WIRE_310_16
@source(
    "NEC (NFPA 70)",
    "2008 to 2023",
    "240.4(D), 18 AWG",
    seen="one copy, that does not quote the code",
)
@memory("NEC 240.4(D): 10 A on 16 AWG")
def test_breaker_far_over_the_wire_fails_without_its_surroundings():
    # NEC Table 310.16: 8 AWG copper carries at most 55 A in any column; 60 A is the next rating
    assert verdict(PROTECTION, current="5 A", breaker="100 A", building_wire="8 AWG") == "fail"
    # 240.4(D): 7 A for 18 AWG and 10 A for 16 AWG, though the 60 C column lists neither
    assert verdict(PROTECTION, current="5 A", breaker="20 A", building_wire="18 AWG") == "fail"
    assert verdict(PROTECTION, current="5 A", breaker="20 A", building_wire="16 AWG") == "fail"


@WIRE_310_16
@AMBIENT_310_15_B
@BUNDLED_310_15_C
@TERMINATIONS_110_14_C
@pytest.mark.parametrize(
    ("wire", "wire_class", "termination", "ambient", "count", "amps"),
    [
        # by hand: NEC Table 310.16 x Table 310.15(B)(1)(1) x Table 310.15(C)(1), at most the
        # column of the termination, 110.14(C)(1)
        ("14 AWG", 60, 60, 40, 2, 12.3),  # 15 x 0.82
        ("14 AWG", 75, 75, 40, 3, 17.6),  # 20 x 0.88
        ("14 AWG", 75, 60, 40, 3, 15.0),  # 17.6, and 15 in the 60 C column
        ("14 AWG", 90, 60, 40, 3, 15.0),  # 25 x 0.91 = 22.75, and 15 in the 60 C column
        ("14 AWG", 60, 60, 40, 4, 9.84),  # 15 x 0.82 x 0.80
        ("14 AWG", 60, 60, 30, 4, 12.0),  # 15 x 0.80
        ("14 AWG", 60, 60, 30, 6, 12.0),  # still 80 %
        ("14 AWG", 60, 60, 30, 7, 10.5),  # 15 x 0.70
        ("12 AWG", 90, 60, 50, 6, 19.68),  # 30 x 0.82 x 0.80, under the 20 of the 60 C column
        ("12 AWG", 60, 60, 20, 3, 20.0),  # 20 x 1.15 = 23, and 20 at the termination
        ("12 AWG aluminum", 75, 75, 45, 3, 16.4),  # 20 x 0.82
    ],
)
def test_corrected_ampacity_by_hand(wire, wire_class, termination, ambient, count, amps):
    given = {
        "breaker": "15 A",
        "building_wire": wire,
        "insulation_class": f"{wire_class} C",
        "termination_temperature": f"{termination} C",
        "ambient": f"{ambient} C",
        "conductors": count,
    }
    figure = breaker(current="5 A", **given).figure("corrected ampacity").figure
    assert figure.value == pytest.approx(amps, rel=1e-9)
    assert verdict(CORRECTED, current=f"{amps - 0.01:.2f} A", **given) == "pass"
    assert verdict(CORRECTED, current=f"{amps + 0.01:.2f} A", **given) == "fail"


@practice("what a wire carries is not told without the heat and the wires around it")
def test_ambient_and_count_left_out_cannot_be_told():
    finding = breaker(current="8 A", breaker="15 A", building_wire="14 AWG")
    assert finding.criterion(CORRECTED).verdict == "cannot tell"
    assert finding.verdict == "cannot tell"


@independent("heat goes with the square of the current: sqrt((class - ambient) / (class - 30))")
def test_60_c_wire_in_60_c_carries_nothing():
    given = {"building_wire": "14 AWG", "ambient": "60 C", "conductors": 2}
    assert verdict(CORRECTED, current="0.1 A", breaker="15 A", **given) == "fail"


@WIRE_310_16
@pytest.mark.parametrize(
    ("current", "expected"), [("15 A", "pass"), ("12.01 A", "pass"), ("15.01 A", "fail")]
)
def test_wire_before_correction_carries_the_load(current, expected):
    assert verdict(WIRE, current=current, breaker="20 A", building_wire="14 AWG") == expected


@LOADS_210_20_A
@WIRE_310_16
def test_wire_before_correction_carries_125_percent_of_a_long_load():
    # NEC 210.19(A)(1): 12.01 A x 1.25 = 15.01 A, over the 15 A of 14 AWG
    given = {"breaker": "20 A", "building_wire": "14 AWG", "run_time": "3 h"}
    assert verdict(WIRE, current="12 A", **given) == "pass"
    assert verdict(WIRE, current="12.01 A", **given) == "fail"


@CORD_400_5_A
@pytest.mark.parametrize(
    ("cord", "live", "most"),
    [
        # column B, then A
        ("18 AWG", 2, 10),
        ("16 AWG", 2, 13),
        ("14 AWG", 2, 18),
        ("16 AWG", 3, 10),
        ("14 AWG", 3, 15),
    ],
)
def test_cord_against_nec_table_400_5_a_1(cord, live, most):
    given = {"breaker": "20 A", "cord": cord, "cord_conductors": live, "cord_type": "general"}
    assert verdict(CORD, current=f"{most} A", **given) == "cannot tell"  # the air was not given
    given["ambient"] = "30 C"
    assert verdict(CORD, current=f"{most} A", **given) == "pass"
    over = "fail" if live == 2 else "cannot tell"  # was the neutral counted?
    assert verdict(CORD, current=f"{most + 0.1} A", **given) == over
    assert verdict(CORD, current=f"{most + 0.1} A", **{**given, "ambient": "31 C"}) == over


@source("NEC (NFPA 70)", "2011 to 2023", "Table 400.5(A)(1), 10 AWG", seen="a cord maker's reprint")
@memory("NEC 400.5: a neutral that carries what two legs do not share is not counted")
@pytest.mark.parametrize(
    ("live", "current", "expected"),
    # a dryer's cord of 10 AWG, NEC Table 400.5(A)(1): 30 A with two live wires, 25 A with three;
    # the neutral of a 120/240 V machine carries what the two do not share and is not counted
    [(2, "26 A", "pass"), (3, "26 A", "cannot tell"), (3, "25 A", "pass"), (3, "30.1 A", "fail")],
)
def test_the_neutral_of_a_dryer_is_not_counted(live, current, expected):
    given = {"breaker": "40 A", "cord": "10 AWG", "cord_conductors": live, "cord_type": "general"}
    judged = breaker(current=current, ambient="25 C", **given).criterion(CORD)
    assert judged.verdict == expected
    assert ("neutral" in judged.action) is (expected == "cannot tell")


@CORD_400_5_A
@pytest.mark.parametrize(
    ("current", "expected"), [("10 A", "pass"), ("10.1 A", "cannot tell"), ("13.1 A", "fail")]
)
def test_a_cord_of_unknown_live_wires_is_judged_by_both_columns(current, expected):
    # NEC Table 400.5(A)(1), 16 AWG: 13 A with two live wires, 10 A with three
    given = {"breaker": "20 A", "cord": "16 AWG", "ambient": "25 C", "cord_type": "general"}
    assert verdict(CORD, current=current, **given) == expected


@CORD_400_5_A
@source(
    "NEC (NFPA 70)", "2011 to 2023", "Table 400.5(A)(1), heater cord", seen="a cord maker's reprint"
)
@pytest.mark.parametrize(
    ("cord_type", "current", "expected"),
    [
        # NEC Table 400.5(A)(1), two live wires of 16 AWG: 13 A, as heater cord 15 A
        ("general", "13.1 A", "fail"),
        ("heater", "13.1 A", "pass"),
        ("heater", "15 A", "pass"),
        ("heater", "15.1 A", "fail"),
        (None, "13 A", "pass"),
        (None, "14 A", "cannot tell"),
        (None, "15.1 A", "fail"),
    ],
)
def test_a_heater_cord_carries_more(cord_type, current, expected):
    given = {"breaker": "20 A", "cord": "16 AWG", "cord_conductors": 2, "ambient": "25 C"}
    if cord_type:
        given["cord_type"] = cord_type
    assert verdict(CORD, current=current, **given) == expected


@CORD_400_5_A
@AMBIENT_310_15_B
@memory("NEC 400.5(A): the ambient factors of building wire apply to cords")
@pytest.mark.parametrize(
    ("current", "ambient", "expected"),
    [
        # 16 AWG, 13 A at 30 C; NEC 400.5(A) with the factors of 60 and 90 C wire: at 33 C 0.91 and
        # 0.96, 11.83 and 12.48 A; at 50 C 0.58 and 0.82, 7.54 and 10.66 A; 60 C ends at 55 C
        ("8 A", "33 C", {"pass", "marginal"}),
        ("11.8 A", "33 C", {"pass", "marginal"}),
        ("11.9 A", "33 C", {"cannot tell"}),
        ("12.4 A", "33 C", {"cannot tell"}),
        ("12.5 A", "33 C", {"cannot tell", "fail"}),
        ("7.6 A", "50 C", {"cannot tell"}),
        ("10.7 A", "50 C", {"cannot tell", "fail"}),
        ("1 A", "56 C", {"cannot tell"}),
    ],
)
def test_a_cord_in_heat(current, ambient, expected):
    # the factors are the NEC's; that they apply to cords is from memory, so a limit of them is
    # marginal or a pass that says so
    given = {"breaker": "20 A", "cord": "16 AWG", "cord_conductors": 2, "cord_type": "general"}
    assert verdict(CORD, current=current, ambient=ambient, **given) in expected


SHARED = "plug-in load on a shared circuit"


@PLUGGED_IN_210_23_A_1
@pytest.mark.parametrize(
    ("circuit", "most"),
    [(15, 12), (20, 16)],  # 80 % of the circuit
)
def test_one_plug_in_load_on_a_shared_circuit(circuit, most):
    given = {"breaker": f"{circuit} A"}
    over = given | {"current": f"{most + 0.1} A"}
    assert verdict(SHARED, current=f"{most} A", **given) == "pass"
    assert verdict(SHARED, **over) == "cannot tell"
    assert verdict(SHARED, **over, only_receptacle="no") == "cannot tell"
    assert verdict(SHARED, **over, only_receptacle="no", fastened_in_place="no") == "fail"
    assert verdict(SHARED, **over, only_receptacle="no", receptacle="20 A") == "fail"


@PLUGGED_IN_210_23_A_1
@OWN_CIRCUIT_210_22
@pytest.mark.parametrize(
    "given",
    [
        {"only_receptacle": "yes"},  # NEC 210.22: an individual circuit carries its rating
        {"fastened_in_place": "yes"},  # the rule is for what is plugged in
        {"breaker": "30 A"},  # and for 15 and 20 A
    ],
)
def test_where_the_80_percent_rule_does_not_hold(given):
    finding = breaker(**({"current": "14 A", "breaker": "15 A"} | given))
    assert SHARED not in {c.criterion.name for c in finding.criteria}


@FASTENED_210_23_A_2
def test_half_of_the_circuit_is_for_15_and_20_a():
    # NEC 210.23(A)(2) stands under 15- and 20-ampere branch circuits
    given = {"current": "16 A", "fastened_in_place": "yes", "feeds_others": "yes"}
    names = [
        {c.criterion.name for c in breaker(breaker=b, **given).criteria} for b in ("20 A", "30 A")
    ]
    assert ["load fastened in place" in n for n in names] == [True, False]


@source("NEC (NFPA 70)", "as answered in 2020", "422.11(E)", seen="a trade answer and a forum")
@RATINGS_240_6_A
@pytest.mark.parametrize(
    ("plate", "largest", "over"),
    [
        # NEC 422.11(E): 20 A up to 13.3 A; else 150 %, next standard rating: 13.4 x 1.5 = 20.1 A,
        # 16 x 1.5 = 24 A, 20 x 1.5 = 30 A
        ("5 A", 20, 25),
        ("13.3 A", 20, 25),
        ("13.4 A", 25, 30),
        ("16 A", 25, 30),
        ("20 A", 30, 35),
    ],
)
def test_breaker_of_a_single_appliance_against_nec_422_11_e(plate, largest, over):
    name = "breaker for this appliance"
    given = {"current": "4 A", "nameplate_current": plate, "only_receptacle": "yes"}
    for motor, above in (("no", "fail"), (None, "cannot tell")):
        known = given | ({"has_motor": motor} if motor else {})
        assert verdict(name, breaker=f"{largest} A", **known) == "pass"
        assert verdict(name, breaker=f"{over} A", **known) == above
    motor = breaker(breaker=f"{over} A", has_motor="yes", **given)
    assert name not in {c.criterion.name for c in motor.criteria}
    shared = breaker(breaker=f"{over} A", has_motor="no", **given | {"only_receptacle": "no"})
    assert name not in {c.criterion.name for c in shared.criteria}


@practice("the largest breaker on the plate rules")
def test_the_plates_largest_breaker_rules():
    given = {
        "current": "4 A",
        "nameplate_current": "20 A",
        "has_motor": "no",
        "only_receptacle": "yes",
    }
    given["maximum_breaker"] = "20 A"
    assert verdict("breaker against the plate", breaker="20 A", **given) == "pass"
    assert verdict("breaker against the plate", breaker="25 A", **given) == "fail"
    names = {c.criterion.name for c in breaker(breaker="25 A", **given).criteria}
    assert "breaker for this appliance" not in names


@source("NEC (NFPA 70)", "not stated in the copy", "422.13", seen="a code forum")
def test_a_storage_water_heater_counts_125_percent_however_long_it_runs():
    # NEC 422.13: 4500 W at 240 V is 18.75 A, x 1.25 = 23.4 A: not on 20 A, on 25 A
    heater = {"current": "18.75 A", "storage_water_heater": "yes"}
    assert verdict(LOAD, breaker="20 A", **heater) == "fail"
    assert verdict(LOAD, breaker="25 A", **heater) == "pass"
    assert verdict(LOAD, breaker="20 A", current="18.75 A", storage_water_heater="no") == "pass"


NEEDED, OWN = "circuit that carries it", "breaker for a circuit of its own"
LARGEST = "largest breaker on this wire"


@LOADS_210_20_A
@WIRE_310_16
@SMALL_WIRE_240_4_D
@RATINGS_240_6_A
@pytest.mark.parametrize(
    ("current", "run_time", "rating", "gauge"),
    [
        # NEC 240.6(A), 240.4(D) and the 60 C column of Table 310.16, by hand
        ("15.1 A", "1 h", 20, 12),
        ("15.1 A", "3 h", 20, 12),  # 18.9 A
        ("16.1 A", "3 h", 25, 10),  # 20.1 A
        ("24.1 A", "3 h", 35, 8),  # 30.1 A
        ("33 A", "3 h", 45, 6),  # 41.3 A
        ("56 A", "1 h", 60, 4),
    ],
)
def test_the_circuit_that_a_load_needs(current, run_time, rating, gauge):
    finding = breaker(current=current, breaker="15 A", building_wire="14 AWG", run_time=run_time)
    (needed,) = (a for a in finding.answers if a.name == NEEDED)
    assert needed.text == f"{rating} A on {gauge} AWG copper: a job for an electrician"
    assert OWN not in {f.figure.name for f in finding.figures}  # the answer names it, with wire


@WIRE_310_16
@AMBIENT_310_15_B
@RATINGS_240_6_A
def test_the_circuit_that_a_load_needs_in_the_heat():
    # 20 A: 12 AWG has 20 x 0.71 at 45 C = 14.2 A, 10 AWG 30 x 0.71 = 21.3 A
    place = {"building_wire": "14 AWG", "ambient": "45 C", "conductors": 2}
    finding = breaker(current="15.1 A", breaker="15 A", **place)
    (needed,) = (a for a in finding.answers if a.name == NEEDED)
    assert needed.text.startswith("20 A on 10 AWG copper")
    # 14 AWG has 15 x 0.71 = 10.65 A, and no standard rating is so small
    assert LARGEST not in {f.figure.name for f in finding.figures}


@WIRE_310_16
@BUNDLED_310_15_C
@SMALL_WIRE_240_4_D
@RATINGS_240_6_A
@pytest.mark.parametrize(
    ("wire", "count", "largest"),
    # 240.4(D); 10 AWG: 30 x 0.80 = 24 A for 6 wires, 20 A is the standard rating within it
    [("14 AWG", 2, 15), ("12 AWG", 2, 20), ("10 AWG", 2, 30), ("10 AWG", 6, 20), ("8 AWG", 2, 40)],
)
def test_the_largest_breaker_that_a_wire_allows(wire, count, largest):
    given = {"current": "5 A", "building_wire": wire, "ambient": "30 C", "conductors": count}
    assert breaker(breaker="45 A", **given).figure(LARGEST).figure.value == largest
    kept = breaker(breaker=f"{largest} A", **given)  # nothing to change, so nothing to fit
    assert LARGEST not in {f.figure.name for f in kept.figures}


@LOADS_210_20_A
@practice("a breaker smaller than its wire allows may have a reason, and is left")
@pytest.mark.parametrize(
    ("breaker_", "wire", "current"),
    [
        # 125 % of 14 A is 17.5 A, 20 A on 12 AWG: that wire is there; the 15 A may have a reason
        ("15 A", "12 AWG", "14 A"),
        ("15 A", "10 AWG", "14 A"),
        ("15 A", "10 AWG aluminum", "14 A"),  # 25 A
        ("20 A", "8 AWG", "17 A"),  # 21.25 A
    ],
)
def test_no_larger_breaker_is_named_for_the_wire_that_is_there(breaker_, wire, current):
    given = {"building_wire": wire, "run_time": "4 h", "ambient": "25 C", "conductors": 2}
    finding = breaker(current=current, breaker=breaker_, **given)
    assert finding.criterion(LOAD).verdict == "fail"
    (needed,) = finding.answers
    assert needed.text == "a circuit of its own: a job for an electrician"
    assert not {LARGEST, OWN} & {f.figure.name for f in finding.figures}


@RECEPTACLES_210_21_B_3
def test_a_receptacle_that_does_not_belong_on_the_circuit_is_pointed_out():
    # NEC Table 210.21(B)(3): 15 and 20 A receptacles on circuits to 20 A
    (needed,) = breaker(current="22 A", breaker="20 A", building_wire="12 AWG").answers
    assert any("receptacle" in said for said in needed.evidence_against)
    (needed,) = breaker(current="16 A", breaker="15 A", building_wire="14 AWG").answers
    assert not any("receptacle" in said for said in needed.evidence_against)


@AMBIENT_310_15_B
@practice("75 around a wire is more often Fahrenheit than Celsius")
@pytest.mark.parametrize(("typed", "meant"), [("75 C", "75 F"), ("61 C", "61 F")])
def test_heat_past_the_table_may_be_fahrenheit(typed, meant):
    given = {"building_wire": "14 AWG", "ambient": typed, "conductors": 2}
    judged = breaker(current="8 A", breaker="15 A", **given).criterion(CORRECTED)
    assert judged.verdict == "fail"
    assert f"{meant}?" in judged.reason


@WIRE_310_16
@AMBIENT_310_15_B
@TERMINATIONS_110_14_C
def test_the_class_of_the_wire_is_asked_for_where_it_decides():
    # 14 AWG, 60 C: 15 x 0.91 at 35 C = 13.65 A, under the 15 A breaker; of 75 C and ended at 60 C
    # 20 x 0.94 = 18.8, so 15 A
    given = {"building_wire": "14 AWG", "ambient": "95 F", "conductors": 2, **OWN_CIRCUIT}
    finding = breaker(current="8 A", breaker="15 A", **given)
    assert "read the class printed on the wire" in finding.decided_by.action
    assert breaker(
        current="8 A", breaker="15 A", **given | {"insulation_class": "75 C"}
    ).verdict == ("pass")


@WIRE_310_16
@AMBIENT_310_15_B
@TERMINATIONS_110_14_C
@pytest.mark.parametrize(
    ("wire", "ambient", "load", "limit"),
    # a storage water heater of 4500 W and an attic: nothing was read on wire or terminals
    [("10 AWG solid", "40 C", "18.75 A", "30 A"), ("12 AWG", "45 C", "15 A", "20 A")],
)
def test_a_class_that_was_only_assumed_does_not_condemn(wire, ambient, load, limit):
    given = {
        "building_wire": wire,
        "ambient": ambient,
        "conductors": 2,
        **OWN_CIRCUIT,
        "run_time": "1 h",
    }
    given |= {"current": load, "breaker": limit}
    finding = wirecalc.run("breaker", **given)
    assert finding.verdict == "cannot tell"
    assert finding.decided_by.criterion.needs[0] in READ
    assert wirecalc.run("breaker", **given, **READ).verdict == "fail"
    warm = {"insulation_class": "90 C", "termination_temperature": "60 C", "receptacle": limit}
    assert wirecalc.run("breaker", **given, **warm).verdict == "pass"


@LOADS_210_20_A
@WIRE_310_16
def test_no_circuit_is_named_where_this_one_carries_the_load():
    finding = breaker(current="12 A", breaker="15 A", building_wire="14 AWG", run_time="3 h")
    assert not finding.answers


@CORD_400_5_A
@RECEPTACLE_210_21_B_2
@PLUGGED_IN_210_23_A_1
@independent("the share of each link: 9 A over its amps")
def test_the_weakest_link_stands_first():
    given = {"breaker": "20 A", "receptacle": "15 A", "only_receptacle": "no", "cord": "18 AWG"}
    given |= {"cord_conductors": 2, "ambient": "25 C"}
    (links,) = breaker(current="9 A", **given).listings
    # 9 of the 10 A of the cord, of 12 A of the receptacle, 16 A of the circuit, 20 A
    assert [(row[0], row[2], row[3]) for row in links.rows] == [
        ("load on the cord", "10", "90"),
        ("load on the receptacle", "12", "75"),
        ("plug-in load on a shared circuit", "16", "56"),
        ("load on the breaker", "20", "45"),
    ]


@source(
    "NEC (NFPA 70)", "2011 to 2023", "Table 400.5(A)(1), heater cord", seen="a cord maker's reprint"
)
@memory("NEC Table 400.5(A)(1), heater cord of 17 and 15 AWG")
@pytest.mark.parametrize(
    ("gauge", "most"),
    # two live wires; 10 AWG in an exam school's worked example too
    [("18", 10), ("17", 13), ("16", 15), ("15", 17), ("14", 20), ("12", 30), ("10", 35)],
)
def test_heater_cord_against_nec_table_400_5_a_1(gauge, most):
    rows = tables.load("cords").where(use="heater cord, two current-carrying")
    assert next(r for r in rows if r.text("awg") == gauge).number("ampacity_A") == most


@source(
    "NEC (NFPA 70)",
    "to 2020",
    "240.6(A)",
    seen="several copies, and a code answer on the 2017 edition",
)
@pytest.mark.parametrize(
    ("fuse", "ratings"),
    # the ratings of all devices and, in the same clause, those of fuses alone
    [(False, [15, 20, 25, 30, 35, 40, 45, 50, 60]), (True, [1, 3, 6, 10, 15, 20, 25, 30, 35])],
)
def test_standard_ratings_against_nec_240_6_a(fuse, ratings):
    of = ("any", "fuse") if fuse else ("any",)
    rows = tables.load("standard-ratings").rows
    assert [r.number("rating_A") for r in rows if r.text("of") in of][:9] == ratings

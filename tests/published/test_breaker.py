"""The branch circuit against rows of the NEC, worked by hand."""

from __future__ import annotations

import pytest

import wirecalc

LOAD, RECEPTACLE, CORD = "load on the breaker", "load on the receptacle", "load on the cord"
WIRE, CORRECTED = "load on the wire", "load on the wire, corrected"
PROTECTION = "breaker on this wire"


def breaker(**given):
    return wirecalc.run("breaker", **({"run_time": "1 h"} | given))


def verdict(criterion, **given):
    return breaker(**given).criterion(criterion).verdict


@pytest.mark.parametrize(
    ("circuit", "receptacle", "most"),
    [
        # NEC Table 210.21(B)(2), circuit with two or more receptacles: 80 % of the receptacle;
        # two copies
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


@pytest.mark.parametrize("only", ["yes", "no"])
def test_no_receptacle_carries_more_than_its_rating(only):
    given = {"breaker": "20 A", "receptacle": "15 A", "only_receptacle": only}
    assert verdict(RECEPTACLE, current="15.1 A", **given) == "fail"


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


@pytest.mark.parametrize(
    ("wire", "largest", "over"),
    [
        # NEC 240.4(D): three copies for copper, two for aluminium
        ("14 AWG", 15, 20),
        ("12 AWG", 20, 25),
        ("10 AWG", 30, 35),
        ("12 AWG aluminum", 15, 20),
        ("10 AWG aluminum", 25, 30),
    ],
)
def test_breaker_on_small_wire_against_nec_240_4_d(wire, largest, over):
    given = {"current": "5 A", "wire": wire, "insulation_class": "90 C"}
    given["termination_temperature"] = "90 C"  # its ampacity would allow more; the rule does not
    given |= {"ambient": "30 C", "conductors": "3"}
    assert verdict(PROTECTION, breaker=f"{largest} A", **given) == "pass"
    assert verdict(PROTECTION, breaker=f"{over} A", **given) == "fail"


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
    assert wirecalc.run("breaker", current=current, breaker="15 A").verdict == expected


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
    given = {"wire": "10 AWG", "ambient": ambient, "conductors": count}
    assert verdict(PROTECTION, current="5 A", breaker=breaker, **given) == expected


def test_breaker_far_over_the_wire_fails_without_its_surroundings():
    # NEC Table 310.16: 8 AWG copper carries at most 55 A in any column; 50 A is the next rating
    assert verdict(PROTECTION, current="5 A", breaker="100 A", wire="8 AWG") == "fail"
    # 240.4(D): 7 A for 18 AWG and 10 A for 16 AWG, though the 60 C column lists neither
    assert verdict(PROTECTION, current="5 A", breaker="20 A", wire="18 AWG") == "fail"
    assert verdict(PROTECTION, current="5 A", breaker="20 A", wire="16 AWG") == "fail"


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
        "wire": wire,
        "insulation_class": f"{wire_class} C",
        "termination_temperature": f"{termination} C",
        "ambient": f"{ambient} C",
        "conductors": count,
    }
    figure = breaker(current="5 A", **given).figure("corrected ampacity").figure
    assert figure.value == pytest.approx(amps, rel=1e-9)
    assert verdict(CORRECTED, current=f"{amps - 0.01:.2f} A", **given) == "pass"
    assert verdict(CORRECTED, current=f"{amps + 0.01:.2f} A", **given) == "fail"


def test_ambient_and_count_left_out_cannot_be_told():
    finding = breaker(current="8 A", breaker="15 A", wire="14 AWG")
    assert finding.criterion(CORRECTED).verdict == "cannot tell"
    assert finding.verdict == "cannot tell"


def test_60_c_wire_in_60_c_carries_nothing():
    given = {"wire": "14 AWG", "ambient": "60 C", "conductors": 2}
    assert verdict(CORRECTED, current="0.1 A", breaker="15 A", **given) == "fail"


@pytest.mark.parametrize(
    ("current", "expected"), [("15 A", "pass"), ("12.01 A", "pass"), ("15.01 A", "fail")]
)
def test_wire_before_correction_carries_the_load(current, expected):
    assert verdict(WIRE, current=current, breaker="20 A", wire="14 AWG") == expected


def test_wire_before_correction_carries_125_percent_of_a_long_load():
    # NEC 210.19(A)(1): 12.01 A x 1.25 = 15.01 A, over the 15 A of 14 AWG
    given = {"breaker": "20 A", "wire": "14 AWG", "run_time": "3 h"}
    assert verdict(WIRE, current="12 A", **given) == "pass"
    assert verdict(WIRE, current="12.01 A", **given) == "fail"


@pytest.mark.parametrize(
    ("cord", "live", "most"),
    [
        # NEC Table 400.5(A)(1), columns B and A
        ("18 AWG", 2, 10),
        ("16 AWG", 2, 13),
        ("14 AWG", 2, 18),
        ("16 AWG", 3, 10),
        ("14 AWG", 3, 15),
    ],
)
def test_cord_against_nec_table_400_5_a_1(cord, live, most):
    given = {"breaker": "20 A", "cord": cord, "cord_conductors": live}
    assert verdict(CORD, current=f"{most} A", **given) == "cannot tell"  # the air was not given
    given["ambient"] = "30 C"
    assert verdict(CORD, current=f"{most} A", **given) == "pass"
    assert verdict(CORD, current=f"{most + 0.1} A", **given) == "fail"
    hot = {**given, "ambient": "31 C"}  # the table is for 30 C
    assert verdict(CORD, current=f"{most} A", **hot) == "cannot tell"
    assert verdict(CORD, current=f"{most + 0.1} A", **hot) == "fail"


@pytest.mark.parametrize(
    ("current", "expected"), [("10 A", "pass"), ("10.1 A", "cannot tell"), ("13.1 A", "fail")]
)
def test_a_cord_of_unknown_live_wires_is_judged_by_both_columns(current, expected):
    # NEC Table 400.5(A)(1), 16 AWG: 13 A with two live wires, 10 A with three
    given = {"breaker": "20 A", "cord": "16 AWG", "ambient": "25 C"}
    assert verdict(CORD, current=current, **given) == expected

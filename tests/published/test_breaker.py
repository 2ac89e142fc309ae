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


def test_a_30_a_receptacle_on_a_15_a_circuit_is_in_no_row():
    # NEC Table 210.21(B)(3) lists 15 A only
    assert verdict(RECEPTACLE, current="5 A", breaker="15 A", receptacle="30 A") == "cannot tell"


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
    given = {"current": "5 A", "wire": wire, "wire_temperature": "90 C"}
    given["termination_temperature"] = "90 C"  # its ampacity would allow more; the rule does not
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


def test_a_load_counts_as_continuous_unless_said_otherwise():
    # the unkind assumption: 12.5 A x 1.25 = 15.6 A
    finding = wirecalc.run("breaker", current="12.5 A", breaker="15 A")
    assert finding.criterion(LOAD).criterion.actual == pytest.approx(15.625)
    assert finding.verdict == "fail"


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
        "wire_temperature": f"{wire_class} C",
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
    assert verdict(CORD, current=f"{most} A", **given) == "pass"
    assert verdict(CORD, current=f"{most + 0.1} A", **given) == "fail"
    hot = {**given, "ambient": "31 C"}  # the table is for 30 C
    assert verdict(CORD, current=f"{most} A", **hot) == "cannot tell"
    assert verdict(CORD, current=f"{most + 0.1} A", **hot) == "fail"


def test_a_cord_is_taken_as_three_live_wires_unless_said_otherwise():
    # the unkind column: 10 A for 16 AWG
    assert verdict(CORD, current="10.1 A", breaker="20 A", cord="16 AWG") == "fail"

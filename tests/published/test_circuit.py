"""Everything on one branch circuit against the NEC, worked by hand."""

from __future__ import annotations

import pytest

import wirecalc

from .loads import READ
from .records import independent, memory, practice
from .seen import (
    AMBIENT_310_15_B,
    FASTENED_210_23_A_2,
    LOADS_210_20_A,
    OWN_CIRCUIT_210_22,
    PLUGGED_IN_210_23_A_1,
    RATINGS_240_6_A,
    RECEPTACLE_210_21_B_2,
    SMALL_WIRE_240_4_D,
    TERMINATIONS_110_14_C,
    WIRE_310_16,
)

SUM, FASTENED = "all loads on the breaker", "loads fastened in place"
PLUGGED = "plug-in load on a shared circuit"


WIRED = {"building_wire": "14 AWG", "ambient": "25 C", "conductors": 2}


def circuit(**given):
    read = READ if "building_wire" in given else {}
    return wirecalc.run("circuit", **({"breaker": "15 A"} | read | given))


def verdict(criterion, **given):
    return circuit(**given).criterion(criterion).verdict


def names(**given):
    return {c.criterion.name for c in circuit(**given).criteria}


@LOADS_210_20_A
@pytest.mark.parametrize(
    ("given", "counted", "expected"),
    [
        # NEC 210.20(A): what runs under 3 h as it is, with 125 % of what runs 3 h or more
        ({"plug_loads": ["6.2 A", "1.6 A"]}, 7.8, "pass"),
        ({"long_plug_loads": ["6.2 A", "1.6 A"]}, 9.75, "pass"),
        (
            {"plug_loads": ["5 A"], "long_fastened_loads": ["4 A"], "light_loads": ["4 A"]},
            15,
            "pass",
        ),
        ({"plug_loads": ["5 A"], "light_loads": ["8.01 A"]}, 15.0125, "fail"),
        ({"plug_loads": ["5.01 A"], "fastened_loads": ["10 A"]}, 15.01, "fail"),
        ({"plug_loads": ["12 A"], "long_plug_loads": ["2.4 A"]}, 15, "pass"),
    ],
)
def test_the_sum_on_the_breaker(given, counted, expected):
    finding = circuit(**given)
    assert finding.figure("sum as it counts").figure.value == pytest.approx(counted, rel=1e-12)
    assert finding.criterion(SUM).verdict == expected


@FASTENED_210_23_A_2
@independent("2 % of 8.70 A and 5 digits of 0.01 A are 0.224 A of band")
def test_a_dishwasher_fastened_in_place_and_a_bank_of_receptacles():
    # 8.70 A on 15 A: half is 7.5 A, over by 1.2 A (NEC 210.23(A)(2)); all of 8.48 to 8.92 A over
    finding = circuit(fastened_loads=["8.70 A ±(2%+5)"], feeds_others="yes")
    assert finding.verdict == "fail"
    assert finding.criterion(FASTENED).criterion.limit == 7.5
    over = finding.figure("load over half of the circuit")
    assert over.figure.value == pytest.approx(1.2)
    assert (round(over.low, 2), round(over.high, 2)) == (0.98, 1.42)
    assert finding.criterion(SUM).verdict == "pass"


@independent("6.2 + 1.6 = 7.8 A, and 15 - 7.8 = 7.2 A")
@WIRE_310_16
def test_a_freezer_and_a_dehumidifier_on_one_circuit():
    loads = {"plug_loads": ["6.2 A", "1.6 A"]}  # 7.8 A
    finding = circuit(**loads, **WIRED)
    assert finding.verdict == "pass"
    unseen = circuit(**loads)  # nobody looked at the wire
    assert unseen.verdict == "cannot tell"
    assert unseen.decided_by.criterion.needs == ("building_wire",)
    assert finding.figure("room left on the breaker").figure.value == pytest.approx(7.2)


@FASTENED_210_23_A_2
@pytest.mark.parametrize(
    ("given", "expected"),
    [
        ({"fastened_loads": ["7.5 A"]}, "pass"),
        ({"fastened_loads": ["4 A", "3.6 A"]}, "cannot tell"),  # 7.6 A, and what else is fed?
        ({"fastened_loads": ["4 A", "3.6 A"], "feeds_others": "yes"}, "fail"),
        (
            {"fastened_loads": ["4 A"], "long_fastened_loads": ["3.6 A"], "plug_loads": ["1 A"]},
            "fail",
        ),
        ({"fastened_loads": ["7.6 A"], "light_loads": ["1 A"]}, "fail"),
        ({"fastened_loads": ["7 A"], "light_loads": ["4 A"]}, "pass"),  # lights do not count
    ],
)
def test_what_is_fastened_takes_half_if_anything_else_is_fed(given, expected):
    assert verdict(FASTENED, **given) == expected


@FASTENED_210_23_A_2
@OWN_CIRCUIT_210_22
def test_what_is_fastened_may_take_all_of_a_circuit_of_its_own():
    assert FASTENED not in names(fastened_loads=["14 A"], feeds_others="no")  # NEC 210.22
    assert FASTENED not in names(breaker="30 A", fastened_loads=["16 A"], plug_loads=["1 A"])


@PLUGGED_IN_210_23_A_1
@pytest.mark.parametrize(
    ("given", "expected"),
    [
        # NEC 210.23(A)(1): 80 % of 15 A is 12 A, for each plug-in load and not for the sum
        ({"plug_loads": ["12 A", "2 A"]}, "pass"),
        ({"plug_loads": ["12.1 A", "2 A"]}, "fail"),
        ({"plug_loads": ["12.1 A"], "light_loads": ["1 A"]}, "fail"),
        ({"plug_loads": ["12.1 A"], "feeds_others": "yes"}, "fail"),
        ({"plug_loads": ["12.1 A"]}, "cannot tell"),
        ({"plug_loads": ["7 A", "6 A"]}, "pass"),
    ],
)
def test_the_largest_plug_in_load(given, expected):
    assert verdict(PLUGGED, **given) == expected


@OWN_CIRCUIT_210_22
def test_one_plug_in_load_may_take_all_of_a_circuit_of_its_own():
    assert PLUGGED not in names(plug_loads=["14 A"], feeds_others="no")


@RECEPTACLE_210_21_B_2
def test_the_receptacle_of_the_largest_plug_in_load():
    # NEC Table 210.21(B)(2): a 15 A receptacle on a shared 20 A circuit gives 12 A
    given = {"breaker": "20 A", "receptacle": "15 A"}
    assert verdict("load on the receptacle", plug_loads=["12 A", "3 A"], **given) == "pass"
    assert verdict("load on the receptacle", plug_loads=["12.1 A", "3 A"], **given) == "fail"
    assert verdict("load on the receptacle", plug_loads=["12.1 A"], **given) == "cannot tell"


@WIRE_310_16
@AMBIENT_310_15_B
@SMALL_WIRE_240_4_D
@LOADS_210_20_A
def test_the_sum_on_the_wire_before_and_after_correction():
    # 14 AWG, 60 C: 15 A; at 40 C x 0.82 = 12.3 A (NEC Tables 310.16, 310.15(B)(1)(1))
    given = {"breaker": "20 A", "building_wire": "14 AWG", "ambient": "40 C", "conductors": 2}
    for loads, before, after in (
        (["6 A", "6.3 A"], "pass", "pass"),
        (["6 A", "6.4 A"], "pass", "fail"),
        (["6 A", "9.1 A"], "fail", "fail"),
    ):
        finding = circuit(plug_loads=loads, **given)
        assert finding.criterion("load on the wire").verdict == before
        assert finding.criterion("load on the wire, corrected").verdict == after
        assert finding.criterion("breaker on this wire").verdict == "fail"  # 240.4(D): 15 A
    # 125 % of 12.1 A is 15.1 A
    assert verdict("load on the wire", long_plug_loads=["12.1 A"], **given) == "fail"


@LOADS_210_20_A
@practice("two loads of the same amps on a list may be one, listed twice")
def test_the_loads_are_listed_as_counted_and_equal_ones_pointed_out():
    finding = circuit(plug_loads=["6.2 A", "1.6 A", "6.2 A"], light_loads=["0.8 A"])
    loads = finding.listings[-1]
    assert [row[4] for row in loads.rows] == ["6.2", "1.6", "6.2", "1"]
    assert [row[5] for row in loads.rows] == ["", "", "as line 1", ""]
    assert "loads of the same amps" in {n.what for n in finding.not_checked}
    once = circuit(plug_loads=["6.2 A", "1.6 A"])
    assert "loads of the same amps" not in {n.what for n in once.not_checked}


GO = "loads that have to go"


@LOADS_210_20_A
@WIRE_310_16
@AMBIENT_310_15_B
@independent("the sum as it counts less what the circuit carries, in the comments")
@pytest.mark.parametrize(
    ("given", "amps"),
    [
        # 7 + 7 + 1.25 x 3 = 17.75 A on 15 A
        (
            {
                "plug_loads": ["7 A", "7 A"],
                "long_fastened_loads": ["3 A"],
                "building_wire": "14 AWG",
            },
            2.75,
        ),
        # 12.5 + 8 + 6 + 1.25 x (1.6 + 1) = 29.75 A on 20 A, and on 12 AWG 20 A
        (
            {
                "breaker": "20 A",
                "plug_loads": ["12.5 A", "8 A"],
                "fastened_loads": ["6 A"],
                "long_plug_loads": ["1.6 A"],
                "light_loads": ["1 A"],
                "building_wire": "12 AWG",
                "receptacle": "15 A",
            },
            9.75,
        ),
        # 16 A on 20 A holds; 14 AWG in 40 C has 15 x 0.82 = 12.3 A
        (
            {
                "breaker": "20 A",
                "plug_loads": ["8 A", "8 A"],
                "building_wire": "14 AWG",
                "ambient": "40 C",
                "conductors": 2,
            },
            3.7,
        ),
    ],
)
def test_loads_that_have_to_go(given, amps):
    finding = circuit(**given)
    assert finding.figure(GO).figure.value == pytest.approx(amps)
    (answer,) = finding.answers
    assert "second circuit" in answer.text
    said = " ".join((answer.text, finding.decided_by.action, *answer.evidence_for))
    assert f"{amps} A" in said
    for larger in ("20 A on", "25 A on", "30 A on"):
        assert larger not in said
    carries = [f for f in finding.figures if f.figure.name == "breaker that carries the sum"]
    assert all(f.figure.value <= float(given.get("breaker", "15 A")[:2]) for f in carries)


@independent("9 A less 5 % and 9 A are 17.55 A, over 15 A at the least")
def test_the_band_of_the_loads_does_not_unsettle_what_to_do():
    finding = circuit(plug_loads=["9 A ±5%", "9 A"])
    (answer,) = finding.answers
    assert not answer.text.startswith("cannot tell")


@RATINGS_240_6_A
@WIRE_310_16
@SMALL_WIRE_240_4_D
def test_one_load_alone_needs_a_circuit_that_carries_it():
    # 17.75 A: 20 A (NEC 240.6(A)) on 12 AWG
    (answer,) = circuit(plug_loads=["17.75 A"], building_wire="14 AWG").answers
    assert answer.text == "20 A on 12 AWG copper: a job for an electrician"


@independent("7 + 8 = 15 A, on 15 A")
def test_nothing_has_to_go_where_all_is_carried():
    assert not circuit(plug_loads=["7 A", "8 A"]).answers
    assert GO not in {f.figure.name for f in circuit(plug_loads=["7 A", "8 A"]).figures}


@practice("a clamp that reads 0 A is not around one wire of a load that runs")
def test_a_listed_load_of_nothing_is_an_answer():
    finding = circuit(plug_loads=["6.2 A", "0 A"], **WIRED)
    assert finding.verdict == "cannot tell"
    assert "clamp" in finding.decided_by.action


@memory("IEC 60898-1: its rated current a breaker carries without end")
@LOADS_210_20_A
@pytest.mark.parametrize(
    ("rules", "expected"), [("iec", "pass"), ("nec", "fail"), (None, "cannot tell")]
)
def test_long_loads_count_by_the_rules_of_the_building(rules, expected):
    # 13.5 A for hours on 16 A: IEC 60898-1, its rated current; NEC 210.20(A), 16.9 A
    given = {"breaker": "16 A", "long_plug_loads": ["9 A", "4.5 A"]}
    given |= {"wiring_rules": rules} if rules else {}
    assert verdict(SUM, **given) == expected


@WIRE_310_16
@AMBIENT_310_15_B
@TERMINATIONS_110_14_C
@pytest.mark.parametrize(
    ("insulation", "expected"), [(None, "cannot tell"), ("60 C", "fail"), ("90 C", "pass")]
)
def test_the_print_on_the_cable_decides_in_an_attic(insulation, expected):
    # 12 AWG at 45 C: 20 x 0.71 = 14.2 A; of 90 C 30 x 0.87 = 26.1 A, 20 A at its ends
    given = {
        "breaker": "20 A",
        "plug_loads": ["9 A", "9 A"],
        "building_wire": "12 AWG",
        "ambient": "45 C",
    }
    given |= {"conductors": 2, "receptacle": "20 A"}
    given |= {"insulation_class": insulation} if insulation else {}
    assert wirecalc.run("circuit", **given).verdict == expected

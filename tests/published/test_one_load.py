"""One load on its circuit: IEC rules, ranges, plates, what else runs, what is asked for."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import tables

from .loads import LOAD, OWN_CIRCUIT, PROTECTION, READ, WIRE, breaker, verdict
from .records import independent, memory, practice, source
from .seen import (
    AMBIENT_310_15_B,
    BUNDLED_310_15_C,
    LOADS_210_20_A,
    RECEPTACLE_210_21_B_2,
    RECEPTACLES_210_21_B_3,
    SMALL_WIRE_240_4_D,
    TERMINATIONS_110_14_C,
    WIRE_310_16,
)

IEC = {"wiring_rules": "iec", "ambient": "30 C", "conductors": 2, "run_time": "6 h"}


@memory(
    "IEC 60364-5-52 (2009), Tables B.52.2 way A2 and B.52.12 way E, two loaded copper conductors"
)
@pytest.mark.parametrize(
    ("wire", "rating", "expected"),
    [
        # the least by way A2 of PVC 14, 18.5, 25, 32 A, the most by way E of 90 C 26, 36, 49, 63 A
        ("1.5 mm2", "10 A", "pass"),
        ("1.5 mm2", "16 A", "cannot tell"),
        ("1.5 mm2", "32 A", "fail"),
        ("2.5 mm2", "16 A", "pass"),
        ("2.5 mm2", "20 A", "cannot tell"),
        ("2.5 mm2", "40 A", "fail"),
        ("4 mm2", "20 A", "pass"),
        ("6 mm2", "25 A", "pass"),
        ("6 mm2", "63 A", "cannot tell"),
        ("6 mm2", "80 A", "fail"),
    ],
)
def test_a_breaker_on_metric_wire_by_iec_rules(wire, rating, expected):
    given = {"current": "5 A", "breaker": rating, "building_wire": wire, **IEC}
    assert breaker(**given).criterion(PROTECTION).verdict == expected


@memory(
    "IEC 60364-5-52 (2009), Tables B.52.2 way A2 and B.52.12 way E, two loaded copper conductors"
)
@independent("heat goes with the square of the current: sqrt((class - ambient) / (class - 30))")
@BUNDLED_310_15_C
@pytest.mark.parametrize(
    ("ambient", "count", "expected"),
    # 2.5 mm2 of PVC, 18.5 A at 30 C: at 50 C x sqrt(20 / 40) = 13.1 A, with six wires x 0.8 14.8 A;
    # of 90 C at the best 36 x sqrt(40 / 60) = 29.4 A at 50 C, 0 at 90 C
    [
        ("30 C", 2, "pass"),
        ("50 C", 2, "cannot tell"),
        ("30 C", 6, "cannot tell"),
        ("90 C", 2, "fail"),
    ],
)
def test_heat_around_metric_wire_by_iec_rules(ambient, count, expected):
    given = {
        "current": "16 A",
        "breaker": "16 A",
        "building_wire": "2.5 mm2",
        "wiring_rules": "iec",
    }
    judged = breaker(**given, ambient=ambient, conductors=count).criterion(PROTECTION)
    assert judged.verdict == expected


@memory(
    "IEC 60364-5-52 (2009), Tables B.52.2 way A2 and B.52.12 way E, two loaded copper conductors"
)
@independent("heat goes with the square of the current: sqrt((class - ambient) / (class - 30))")
@pytest.mark.parametrize(
    ("load", "ambient", "expected"),
    [
        # 2.5 mm2 of PVC at 40 C: 18.5 x sqrt(30 / 40) = 16.02 A; of 90 C at 50 C: 36 x sqrt(40 /
        # 60) = 29.39 A
        ("16 A", "40 C", "marginal"),
        ("16.05 A", "40 C", "cannot tell"),
        ("29.3 A", "50 C", "cannot tell"),
        ("29.5 A", "50 C", "fail"),
    ],
)
def test_heat_counts_by_the_class_of_the_wire_under_iec_rules(load, ambient, expected):
    given = {"current": load, "breaker": "32 A", "building_wire": "2.5 mm2", "wiring_rules": "iec"}
    assert verdict(WIRE, **given, ambient=ambient, conductors=2) == expected


# ways A2 (PVC) and E (90 C) at 30 C: mm2, A
IEC_ROWS = {
    "least": {1: 11, 1.5: 14, 2.5: 18.5, 4: 25, 6: 32, 10: 43, 16: 57},
    "most": {1.5: 26, 2.5: 36, 4: 49, 6: 63, 10: 86, 16: 115},
}


@memory(
    "IEC 60364-5-52 (2009), Tables B.52.2 way A2 and B.52.12 way E, two loaded copper conductors"
)
@memory("IEC 60364-5-52, annex D: the current goes with a power of the area, about 0.61")
@pytest.mark.parametrize("laid", IEC_ROWS)
def test_least_and_most_of_metric_wire(laid):
    rows = tables.load("iec-ampacity").where(laying=laid)
    assert {r.number("area_mm2"): r.number("ampacity_A") for r in rows} == IEC_ROWS[laid]
    # 0.61 fits both columns, to the rounding of the print and the shapes of the cables
    at = IEC_ROWS[laid][2.5]
    for area, amps in IEC_ROWS[laid].items():
        assert amps == pytest.approx(at * (area / 2.5) ** 0.61, rel=0.041)


@practice("an IEC breaker of up to 16 A has wire of 1.5 mm2 or more")
@pytest.mark.parametrize(("rating", "asked"), [("16 A", False), ("20 A", True), ("32 A", True)])
def test_the_wire_behind_a_larger_iec_breaker_is_asked(rating, asked):
    finding = breaker(current="5 A", breaker=rating, wiring_rules="iec", **OWN_CIRCUIT)
    needs = {n for c in finding.criteria for n in c.criterion.needs}
    assert ("building_wire" in needs) is asked


@practice("a receptacle gives the amps that are printed on it")
@pytest.mark.parametrize(("current", "expected"), [("13 A", "pass"), ("13.1 A", "fail")])
def test_a_receptacle_gives_its_rating_by_iec_rules(current, expected):
    given = {"breaker": "32 A", "receptacle": "13 A", "wiring_rules": "iec"}
    assert verdict("load on the receptacle", current=current, **given) == expected


@memory("IEC 60898-1: its rated current a breaker carries without end")
@LOADS_210_20_A
def test_by_iec_rules_a_breaker_carries_its_rating_without_end():
    # IEC 60898-1: the rated current; the NEC counts 125 % of 13 A, 16.25 A
    heater = {"current": "13 A", "breaker": "16 A", "run_time": "4 h", **OWN_CIRCUIT}
    assert verdict(LOAD, **heater, wiring_rules="iec") == "pass"
    assert verdict(LOAD, **heater, wiring_rules="nec") == "fail"
    assert verdict(LOAD, **heater) == "cannot tell"
    assert verdict(LOAD, **heater | {"current": "16.1 A"}, wiring_rules="iec") == "fail"
    # 12 A of 15 A is an American rating, and nothing is asked
    american = {"current": "12.1 A", "breaker": "15 A", "run_time": "4 h", **OWN_CIRCUIT}
    assert verdict(LOAD, **american) == "fail"


@SMALL_WIRE_240_4_D
def test_metric_wire_is_not_condemned_by_a_rule_for_gauges():
    given = {"current": "2 A", "breaker": "20 A", "building_wire": "2.5 mm2", "ambient": "25 C"}
    judged = breaker(**given, conductors=2).criterion(PROTECTION)
    assert judged.verdict == "cannot tell"
    assert judged.criterion.needs == ("wiring_rules",)
    assert (
        breaker(**given | {"building_wire": "14 AWG"}, conductors=2).criterion(PROTECTION).verdict
        == "fail"
    )


@memory("NEC Table 220.55, column C with notes 1 and 4, and its columns A and B")
@pytest.mark.parametrize(
    ("rating", "volts", "amps"),
    [
        # 8 kW for one range of up to 12 kW, 5 % more for each kW or major part of one above; 80 %
        # under 8.75 kW. At 240 V 33.3 A, at 208 V 38.5 A
        (12, 240, 33.333),
        (12, 208, 38.462),
        (9, 240, 33.333),
        (8, 240, 26.667),
        (8.75, 240, 33.333),
        (8.74, 240, 29.133),
        (14, 240, 36.667),
        (12.4, 240, 33.333),
        (12.5, 240, 35),
        (16, 240, 40),
    ],
)
def test_the_load_of_a_household_range(rating, volts, amps):
    given = {"current": "20 A", "breaker": "50 A", "range_rating": f"{rating} kW"}
    finding = breaker(**given, nameplate_voltage=f"{volts} V")
    counted = finding.figure("load of the range as it counts").figure.value
    assert counted == pytest.approx(amps, abs=0.001)
    judged = finding.criterion(LOAD).criterion
    assert judged.actual == counted
    assert judged.source.confidence == "memory"  # it says so where it is judged


@practice("40 and 50 A are the circuits of household ranges")
@pytest.mark.parametrize(
    ("current", "rating", "pointed_out"),
    [
        ("45 A", "40 A", True),
        ("51 A", "50 A", True),
        ("39 A", "40 A", False),
        ("39.5 A", "39 A", False),
        ("36 A", "35 A", False),
        ("61 A", "60 A", False),
    ],
)
def test_a_load_over_the_breaker_of_a_range_may_be_one(current, rating, pointed_out):
    finding = breaker(current=current, breaker=rating)
    assert any(n.what == "a household range" for n in finding.not_checked) is pointed_out


@memory("NEC Table 220.55, column C with notes 1 and 4, and its columns A and B")
@WIRE_310_16
@SMALL_WIRE_240_4_D
def test_a_range_on_the_circuit_that_is_ordinary_for_it():
    # 12 kW with everything on draws 50 A; 33.3 A counts: on 40 A and 8 AWG, not on 30 A and 10 AWG
    given = {"current": "49 A", "range_rating": "12 kW", "nameplate_voltage": "240 V"}
    given |= {"ambient": "25 C", "conductors": 2, "receptacle": "50 A", **OWN_CIRCUIT}
    assert breaker(**given, breaker="40 A", building_wire="8 AWG").verdict == "pass"
    assert breaker(**given, breaker="30 A", building_wire="10 AWG").verdict == "fail"
    # without its rating it is a load like any other, and one of more than its plate is questioned
    plain = {k: v for k, v in given.items() if k not in ("range_rating", "nameplate_voltage")}
    assert breaker(**plain, breaker="40 A", building_wire="8 AWG").verdict == "fail"
    more = given | {"current": "70 A"}
    assert breaker(**more, breaker="40 A", building_wire="8 AWG").verdict == "cannot tell"


@practice("a heater draws half of its plate at least, no machine more than 125 % of it")
@pytest.mark.parametrize(
    ("current", "plate", "has_motor", "questioned"),
    [
        # a heater of 18.75 A: 1.87 A is a slipped point, 9 A is half of it; 23.4 A is 125 %
        ("1.87 A", "18.75 A", "no", True),
        ("9.3 A", "18.75 A", "no", True),
        ("9.4 A", "18.75 A", "no", False),
        ("18.5 A", "18.75 A", "no", False),
        ("23.4 A", "18.75 A", "no", False),
        ("23.5 A", "18.75 A", "no", True),
        # a refrigerator has its defrost heater on the plate
        ("0.6 A", "6.5 A", "yes", False),
        ("0.82 A", "6.5 A", None, False),
        ("0.8 A", "6.5 A", None, True),
    ],
)
def test_a_reading_that_its_plate_contradicts_is_questioned(current, plate, has_motor, questioned):
    given = {"current": current, "breaker": "30 A", "nameplate_current": plate}
    if has_motor:
        given["has_motor"] = has_motor
    finding = breaker(**given)
    names = {c.criterion.name for c in finding.criteria}
    assert ("current beside the plate" in names) is questioned


@source("NEC (NFPA 70)", "not stated in the copy", "422.13", seen="a code forum")
def test_the_greater_of_reading_and_plate_counts():
    # NEC 422.13: the rating of a water heater, 18.75 A x 1.25 = 23.4 A, whatever was measured
    heater = {"storage_water_heater": "yes", "nameplate_current": "18.75 A"}
    assert verdict(LOAD, current="17 A", breaker="20 A", **heater) == "fail"
    assert verdict(LOAD, current="17 A", breaker="25 A", **heater) == "pass"


@LOADS_210_20_A
@pytest.mark.parametrize(
    ("run_time", "others", "breaker_", "expected"),
    [
        # 8 A and 6 A on 15 A: 14 A; how long the others run is not known, 8 + 1.25 x 6 = 15.5 A
        ("1 h", "6 A", "15 A", "cannot tell"),
        ("1 h", "5.6 A", "15 A", "pass"),  # 15 A
        ("1 h", "7.1 A", "15 A", "fail"),
        ("4 h", "4 A", "15 A", "pass"),  # 10 A and 5 A
        ("4 h", "4.1 A", "15 A", "cannot tell"),  # 10 A and 4.1 to 5.1 A
        ("4 h", "5.1 A", "15 A", "fail"),
    ],
)
def test_what_else_runs_on_the_circuit_counts(run_time, others, breaker_, expected):
    given = {"current": "8 A", "breaker": breaker_, "run_time": run_time, "only_receptacle": "no"}
    assert verdict(LOAD, **given, other_current=others) == expected


@LOADS_210_20_A
def test_what_the_others_count_is_shown():
    # NEC 210.20(A): 8 A for 1 h, and 6 A of others that may run 3 h or more: 8 + 1.25 x 6 = 15.5 A
    given = {"current": "8 A", "breaker": "20 A", "only_receptacle": "no", "other_current": "6 A"}
    assert breaker(**given).figure("load as it counts at the most").figure.value == 15.5


@practice("what a careful shop asks before it judges a circuit")
@pytest.mark.parametrize(
    ("left_out", "needs"),
    [
        ({}, ()),
        ({"only_receptacle"}, "only_receptacle"),
        ({"ambient"}, "ambient"),
        ({"conductors"}, "conductors"),
        ({"receptacle"}, ()),  # 8.7 A: any receptacle serves
        ({"building_wire", "ambient", "conductors", *READ}, ()),  # 8.7 A on 15 A: 14 AWG would do
    ],
)
def test_what_a_careful_person_asks(left_out, needs):
    given = {"current": "8.7 A", "breaker": "15 A", "building_wire": "14 AWG", "ambient": "25 C"}
    given |= {"conductors": 2, "receptacle": "15 A", "run_time": "1 h", **OWN_CIRCUIT, **READ}
    kept = {k: v for k, v in given.items() if k not in left_out}
    finding = wirecalc.run("breaker", **kept)
    assert finding.verdict == ("cannot tell" if needs else "pass")
    if needs:
        asked = {n for c in finding.criteria for n in c.criterion.needs}
        assert needs in asked


@SMALL_WIRE_240_4_D
@RECEPTACLE_210_21_B_2
@RECEPTACLES_210_21_B_3
@pytest.mark.parametrize(
    ("current", "breaker_", "asked"),
    [
        # 240.4(D): 14 AWG, the thinnest of a branch circuit, has 15 A; 20 A is the largest breaker
        # of ordinary receptacles, and 12 A what each of them gives (Table 210.21(B)(2))
        ("12 A", "20 A", set()),
        ("12.1 A", "20 A", {"receptacle"}),
        ("15.1 A", "20 A", {"building_wire", "receptacle"}),
        ("5 A", "25 A", {"building_wire", "receptacle"}),
    ],
)
def test_wire_and_receptacle_are_asked_where_they_decide(current, breaker_, asked):
    given = {"current": current, "breaker": breaker_, "run_time": "1 h", **OWN_CIRCUIT}
    finding = wirecalc.run("breaker", **given)
    assert {n for c in finding.criteria for n in c.criterion.needs} == asked


@WIRE_310_16
@practice("wire of a class between two columns carries what the lower one says")
def test_a_class_between_two_columns_is_taken_as_the_one_below():
    # 14 AWG of 70 C: by the 60 C column 15 A, and the answer says so
    given = {"current": "12 A", "breaker": "15 A", "building_wire": "14 AWG", "ambient": "25 C"}
    given |= {"conductors": 2, "insulation_class": "70 C", **OWN_CIRCUIT}
    finding = breaker(**given)
    assert finding.criterion(WIRE).criterion.limit == 15
    assert any("60 C column was taken" in n.why for n in finding.not_checked)


@practice("a clamp that reads 0 A is not around one wire of a load that runs")
def test_a_clamp_that_reads_nothing_is_an_answer():
    finding = breaker(current="0 A", breaker="15 A", **OWN_CIRCUIT)
    assert finding.verdict == "cannot tell"
    assert "clamp" in finding.decided_by.action


@WIRE_310_16
@AMBIENT_310_15_B
@TERMINATIONS_110_14_C
@pytest.mark.parametrize(
    ("given", "rescued"),
    [
        # 12 AWG at 55 C: of 60 C 20 x 0.41 = 8.2 A, of 75 C 25 x 0.67 = 16.75 A, of 90 C 30 x
        # 0.76 = 22.8 A, 20 A at its ends
        (
            {"current": "18 A", "breaker": "20 A", "building_wire": "12 AWG", "ambient": "55 C"},
            "90 C",
        ),
        (
            {"current": "12 A", "breaker": "20 A", "building_wire": "12 AWG", "ambient": "55 C"},
            "75 C",
        ),
    ],
)
def test_every_class_of_the_table_is_tried(given, rescued):
    finding = wirecalc.run("breaker", **given, conductors=2, run_time="1 h", **OWN_CIRCUIT)
    judged = finding.criterion("load on the wire, corrected")
    assert judged.verdict == "cannot tell"
    assert f"with insulation_class {rescued} pass" in judged.reason


@WIRE_310_16
@TERMINATIONS_110_14_C
@source("NEC (NFPA 70)", "not stated in the copy", "110.14(C)(1)(a)(3)", seen="one copy")
@pytest.mark.parametrize(
    ("ends", "expected"), [(None, "cannot tell"), ("60 C", "fail"), ("75 C", "pass")]
)
def test_ends_of_75_c_are_tried(ends, expected):
    # 8 AWG of 90 C: 40 A by ends of 60 C, 50 A by ends of 75 C (NEC 110.14(C)(1))
    given = {"current": "45 A", "breaker": "50 A", "building_wire": "8 AWG", "ambient": "25 C"}
    given |= {"conductors": 2, "run_time": "1 h", "insulation_class": "90 C", **OWN_CIRCUIT}
    given |= {"termination_temperature": ends} if ends else {}
    assert wirecalc.run("breaker", **given).criterion(WIRE).verdict == expected


@practice("what can hurt at a breaker, a cord, a hard-wired machine, aluminium wire")
@pytest.mark.parametrize(
    ("name", "given", "keys"),
    [
        ("breaker", {"current": "6 A", "breaker": "15 A"}, {"brk-01", "cord-04", "live-01"}),
        ("circuit", {"plug_loads": ["6 A"], "breaker": "15 A"}, {"brk-01", "cord-04", "live-01"}),
        (
            "motor-circuit",
            {"motor_kind": "motor", "fastened_in_place": "yes"},
            {"brk-01", "dead-03", "live-01"},
        ),
        ("ampacity", {"use": "building", "wire": "14 AWG"}, {"brk-01"}),
        ("ampacity", {"use": "appliance", "wire": "14 AWG"}, {"heat-01"}),
        (
            "breaker",
            {"current": "6 A", "breaker": "15 A", "building_wire": "12 AWG aluminum"},
            {"alu-01", "brk-01"},
        ),
    ],
)
def test_what_to_take_care_of_on_a_circuit(name, given, keys):
    # larger breakers, both legs of a hard-wired machine, live readings, cords, hot leads, aluminium
    assert keys <= {c.key for c in wirecalc.run(name, **given).cautions}


@memory("IEC 60364-5-52 (2009), Table B.52.17 item 1: 1, 0.80, 0.70, 0.65 for one to four circuits")
@pytest.mark.parametrize(
    ("wires", "least"),
    # 2.5 mm2, way A2 at 30 C: 18.5 A; three wires are one circuit, six are three
    [(2, 18.5), (3, 18.5), (4, 14.8), (6, 12.95), (8, 12.025), (20, 8.325), (60, 7.03)],
)
def test_circuits_side_by_side_leave_less_by_iec_rules(wires, least):
    given = {
        "breaker": "16 A",
        "building_wire": "2.5 mm2",
        "wiring_rules": "iec",
        "ambient": "30 C",
    }
    for amps, over in ((least - 0.01, False), (least + 0.01, True)):
        finding = breaker(current=f"{amps} A", **given, conductors=wires, **OWN_CIRCUIT)
        judged = finding.criterion(WIRE)
        assert (judged.verdict == "cannot tell") is over, (wires, amps)

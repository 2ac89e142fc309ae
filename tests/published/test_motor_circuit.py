"""Motor and compressor circuits against NEC 430 and 440: tables, published examples, by hand."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import BadInput, tables

from .loads import READ
from .records import independent, memory, practice, source
from .seen import (
    AMBIENT_310_15_B,
    DEVICE_430_52,
    DEVICE_440_22_A,
    FULL_LOAD_430_248,
    FUSE_430_52_C,
    MOTORS_240_4_G,
    NEXT_RATING_430_52_C,
    PLATE_440_22_C,
    RATINGS_240_6_A,
    SMALL_WIRE_240_4_D,
    TABLE_OR_PLATE_430_6_A,
    WIRE_310_16,
    WIRE_430_22,
    WIRE_440_32,
)

DEVICE, WIRE = "device on this motor circuit", "load on the wire"
LARGEST = "largest device by the rule"
FLC, LRC = tables.load("nec-motor-full-load"), tables.load("nec-motor-locked-rotor")


COOL = {"ambient": "25 C", "conductors": 2}
ALL = {"building_wire": "10 AWG", **COOL}


def motor(**given):
    first = {"motor_kind": "motor", "fastened_in_place": "yes"}
    read = READ if "building_wire" in given else {}
    return wirecalc.run("motor-circuit", **(first | read | given))


def hermetic(amps, **given):
    return motor(motor_kind="compressor", rated_load_current=f"{amps} A", **given)


def value(finding, name):
    return finding.figure(name).figure.value


@FULL_LOAD_430_248
@pytest.mark.parametrize(
    ("hp", "volts", "amps"),
    [
        ("1/6", 115, 4.4),
        ("1/4", 230, 2.9),
        ("1/3", 115, 7.2),
        ("1/2", 115, 9.8),
        ("1/2", 208, 5.4),
        ("3/4", 115, 13.8),
        ("1", 230, 8.0),
        ("1 1/2", 200, 11.5),
        ("2", 115, 24),
        ("3", 230, 17),
        ("5", 230, 28),
        ("7.5", 208, 44),
        ("10", 230, 50),
        ("1/2", 120, 9.8),  # system ranges 110 to 120 V and 220 to 240 V
        ("1/2", 110, 9.8),
        ("1/2", 240, 4.9),
    ],
)
def test_current_against_nec_table_430_248(hp, volts, amps):
    finding = motor(horsepower=f"{hp} hp", nameplate_voltage=f"{volts} V")
    assert value(finding, "current that sizes the circuit") == amps


@independent("the same power at half the volts takes twice the amps")
@pytest.mark.parametrize("row", FLC.rows, ids=lambda r: r.text("hp"))
def test_full_load_current_goes_with_the_volts(row):
    # 200 and 208 V to 0.1 A of print
    at_230 = row.number("at_230V_A")
    assert row.number("at_115V_A") == pytest.approx(2 * at_230)
    for volts in (200, 208):
        assert row.number(f"at_{volts}V_A") == pytest.approx(at_230 * 230 / volts, rel=0.014)
    hp = sum(fraction(part) for part in row.text("hp").split("-"))
    assert row.number("hp_decimal") == pytest.approx(hp, rel=3e-4)


def fraction(text):
    top, _, bottom = text.partition("/")
    return int(top) / int(bottom or 1)


# Table 430.251(A), largest locked-rotor amperes of single-phase motors, as remembered from print:
# hp, then 115, 208 and 230 V
TABLE_430_251_A = """
1/2    58.8 32.5 29.4
3/4    82.8 45.8 41.4
1      96   53   48
1-1/2  120  66   60
2      144  80   72
3      204  113  102
5      336  186  168
7-1/2  480  265  240
10     600  332  300
"""


def table_430_251_a():
    for line in TABLE_430_251_A.strip().splitlines():
        hp, *amps = line.split()
        yield from (
            pytest.param(hp, volts, float(a), id=f"{hp} hp {volts} V")
            for volts, a in zip((115, 208, 230), amps, strict=True)
        )


@source(
    "NEC (NFPA 70)", "2008", "Table 430.251(A)", seen="one copy, its fractions of hp unreadable"
)
@memory("NEC 2008 Table 430.251(A), the horsepower of each line and, again, its amps")
@pytest.mark.parametrize(("hp", "volts", "printed"), list(table_430_251_a()))
def test_locked_rotor_current_against_nec_table_430_251_a(hp, volts, printed):
    assert LRC.row(hp=hp).number(f"at_{volts}V_A") == printed


@source(
    "NEC (NFPA 70)", "2008", "Table 430.251(A)", seen="one copy, its fractions of hp unreadable"
)
@memory("NEC 2008 Table 430.251(A), the horsepower of each line and, again, its amps")
def test_no_locked_rotor_current_under_half_a_horsepower():
    small = motor(horsepower="1/3 hp", nameplate_voltage="115 V")
    assert "locked-rotor current for the disconnect" not in {f.figure.name for f in small.figures}
    half = motor(horsepower="1/2 hp", nameplate_voltage="115 V")
    assert value(half, "locked-rotor current for the disconnect") == 58.8


@FULL_LOAD_430_248
@pytest.mark.parametrize(
    ("hp", "volts"),
    [("1/8 hp", "115 V"), ("0.6 hp", "115 V"), ("1/2 hp", "277 V"), ("1/2 hp", "150 V")],
)
def test_a_motor_without_a_row_cannot_be_told(hp, volts):
    finding = motor(
        horsepower=hp, nameplate_voltage=volts, breaker="15 A", building_wire="14 AWG", **COOL
    )
    assert finding.verdict == "cannot tell"
    assert {c.criterion.name for c in finding.criteria} == {"current that sizes the circuit"}


@source("NEC (NFPA 70)", "not stated in the copy", "440.6(B)", seen="a code forum")
@memory("NEC 430.6(A)(1), exceptions: a shaded-pole or PSC fan counts by its plate")
@FULL_LOAD_430_248
def test_a_fan_is_sized_by_its_plate():
    # NEC 430.6(A)(1) exceptions, 440.6(B): 1.2 A x 1.25 = 1.5 A
    given = {"full_load_current": "1.2 A", "horsepower": "1/6 hp", "nameplate_voltage": "115 V"}
    assert value(motor(**given, plate_governs="yes"), "current that the wire must carry") == 1.5
    assert value(motor(**given), "current that sizes the circuit") == 4.4


@FULL_LOAD_430_248
@DEVICE_430_52
@NEXT_RATING_430_52_C
@RATINGS_240_6_A
@pytest.mark.parametrize(
    ("hp", "volts", "device", "largest"),
    [
        # NEC Table 430.52 and exception 1 (next standard rating): 13.8 A x 2.5 = 34.5 A, 35 A
        ("3/4", 115, "inverse-time breaker", 35),
        ("1/2", 115, "inverse-time breaker", 25),  # 24.5 A
        ("2", 115, "inverse-time breaker", 60),  # 60 A is a standard rating
        ("3/4", 115, "time-delay fuse", 25),  # 24.15 A
        ("3/4", 115, "nontime-delay fuse", 45),  # 41.4 A
        ("1/3", 115, "instantaneous breaker", 57.6),  # 800 % of 7.2 A
        ("1/6", 230, "inverse-time breaker", 15),  # 5.5 A
    ],
)
def test_largest_device_of_a_motor_against_nec_430_52(hp, volts, device, largest):
    given = {"horsepower": f"{hp} hp", "nameplate_voltage": f"{volts} V", "motor_device": device}
    found = value(motor(breaker="100 A", **given), LARGEST)
    assert found == pytest.approx(largest)


@DEVICE_430_52
@pytest.mark.parametrize(
    ("device", "listed", "verdict"),
    [
        ("instantaneous breaker", None, "cannot tell"),
        ("instantaneous breaker", "no", "fail"),
        ("instantaneous breaker", "yes", "pass"),
        ("inverse-time breaker", None, "pass"),
    ],
)
def test_an_instantaneous_breaker_by_itself_guards_no_motor(device, listed, verdict):
    given = {"horsepower": "1/2 hp", "nameplate_voltage": "115 V", "building_wire": "14 AWG"}
    given |= {"breaker": "25 A", "motor_device": device, "ambient": "25 C", "conductors": "2"}
    if listed is not None:
        given["listed_combination"] = listed
    assert motor(**given, full_load_current="8.6 A", plate_governs="no").verdict == verdict
    unit = {"motor_kind": "compressor", "fastened_in_place": "yes", "minimum_ampacity": "9 A"}
    unit |= {n: given[n] for n in ("building_wire", "motor_device", "ambient", "conductors")}
    unit |= {"breaker": "15 A", "maximum_breaker": "15 A"}
    if listed is not None:
        unit["listed_combination"] = listed
    assert wirecalc.run("motor-circuit", **unit).verdict == verdict


@FULL_LOAD_430_248
@DEVICE_430_52
@NEXT_RATING_430_52_C
def test_the_largest_device_is_no_invitation_to_fit_it():
    # 1/2 hp 115 V: 25 A at most; who has 15 A keeps it, who has 30 A has too much
    given = {"horsepower": "1/2 hp", "nameplate_voltage": "115 V", "building_wire": "14 AWG"}
    for breaker, shown in (("15 A", False), ("25 A", False), ("30 A", True)):
        finding = motor(breaker=breaker, **given)
        assert (LARGEST in {f.figure.name for f in finding.figures}) is shown
        assert "25 A" not in " ".join(a.text for a in finding.answers)


@FULL_LOAD_430_248
@DEVICE_430_52
@NEXT_RATING_430_52_C
@source(
    "NEC (NFPA 70)",
    "2008",
    "430.52(C)(1) exception 2, breakers",
    seen="a page that reproduces it, a maker's answers",
)
@pytest.mark.parametrize(
    ("breaker", "will_not_start", "expected"),
    [
        # 3/4 hp 115 V: 35 A; where it will not start 400 % = 55.2 A (430.52(C)(1) exception 2)
        ("35 A", None, "pass"),
        ("40 A", None, "cannot tell"),
        ("40 A", "no", "fail"),
        ("40 A", "yes", "pass"),
        ("50 A", "yes", "pass"),
        ("60 A", "yes", "fail"),
        ("60 A", None, "fail"),
    ],
)
def test_breaker_of_a_motor_that_will_not_start(breaker, will_not_start, expected):
    given = {"horsepower": "3/4 hp", "nameplate_voltage": "115 V", "breaker": breaker}
    if will_not_start:
        given["will_not_start"] = will_not_start
    assert motor(**given).criterion(DEVICE).verdict == expected


@FULL_LOAD_430_248
@DEVICE_430_52
@NEXT_RATING_430_52_C
@FUSE_430_52_C
def test_a_time_delay_fuse_of_a_motor_that_will_not_start():
    # 225 % of 13.8 A is 31.05 A; 175 % is 24.15 A, the next rating 25 A
    given = {"horsepower": "3/4 hp", "nameplate_voltage": "115 V", "will_not_start": "yes"}
    given["motor_device"] = "time-delay fuse"
    assert motor(breaker="30 A", **given).criterion(DEVICE).verdict == "pass"
    assert motor(breaker="35 A", **given).criterion(DEVICE).verdict == "fail"


@FULL_LOAD_430_248
@DEVICE_430_52
@source(
    "NEC (NFPA 70)", "to 2020", "240.6(A)", seen="the text, and a code answer on the 2017 edition"
)
@pytest.mark.parametrize(
    ("device", "most"),
    # NEC 240.6(A): fuses have 1, 3, 6 and 10 A too. 1/6 hp at 230 V, 2.2 A: 3.85, 6.6, 5.5 A
    [("time-delay fuse", 6), ("nontime-delay fuse", 10), ("inverse-time breaker", 15)],
)
def test_a_fuse_has_smaller_standard_ratings(device, most):
    given = {"horsepower": "1/6 hp", "nameplate_voltage": "230 V", "motor_device": device}
    assert value(motor(**given, breaker="100 A"), LARGEST) == most


@source(
    "NEC (NFPA 70)",
    "2001 to 2005 and 2011",
    "440.22(A), rounded down",
    seen="two worked examples of trade pages",
)
@pytest.mark.parametrize(
    ("amps", "largest"),
    [
        # the published examples: 37.5 A becomes 35 A, 47.5 A becomes 45 A
        (37.5 / 1.75, 35),
        (47.5 / 1.75, 45),
        (20, 35),  # 35 A is a standard rating
        (9, 15),  # 15.75 A
    ],
)
def test_largest_device_of_a_compressor_rounds_down(amps, largest):
    assert value(hermetic(f"{amps:.10f}"), LARGEST) == largest


@DEVICE_440_22_A
@RATINGS_240_6_A
@pytest.mark.parametrize(
    ("breaker", "will_not_start", "expected"),
    [
        # RLA 20 A: 175 % = 35 A, 225 % = 45 A
        ("35 A", None, "pass"),
        ("40 A", None, "cannot tell"),
        ("40 A", "yes", "pass"),
        ("45 A", "yes", "pass"),
        ("40 A", "no", "fail"),
        ("50 A", "yes", "fail"),
        ("50 A", None, "fail"),
    ],
)
def test_device_of_a_compressor_that_will_not_start(breaker, will_not_start, expected):
    given = {"breaker": breaker}
    if will_not_start:
        given["will_not_start"] = will_not_start
    assert hermetic(20, **given).criterion(DEVICE).verdict == expected


@RATINGS_240_6_A
@memory("NEC 440.22(A), exception: no device need be under 15 A")
def test_a_device_of_15_a_may_always_serve_a_compressor():
    # 1.6 A x 1.75 = 2.8 A, and NEC 240.6(A) has no breaker under 15 A
    assert hermetic(1.6, breaker="15 A").criterion(DEVICE).verdict == "pass"
    assert hermetic(1.6, breaker="20 A").criterion(DEVICE).verdict == "fail"


@DEVICE_440_22_A
@WIRE_440_32
@source("NEC (NFPA 70)", "not stated in the copy", "440.2", seen="a text reproduction")
def test_the_greater_of_rla_and_selection_current_counts():
    # 175 % of 20 A is 35 A, 125 % of it 25 A
    finding = hermetic(18, branch_selection_current="20 A")
    assert value(finding, LARGEST) == 35
    assert value(finding, "current that the wire must carry") == 25


@source("NEC (NFPA 70)", "2001", "440.22(B)", seen="a trade quiz")
@WIRE_440_32
@source("NEC (NFPA 70)", "as in a calculation text of 2002", "430.24", seen="that text")
def test_a_unit_with_other_loads():
    # NEC 440.22(B): 175 % of 20 A and 6 A are 41 A, 40 A; 440.32/430.24: 25 A and 6 A
    finding = hermetic(20, other_current="6 A", breaker="40 A")
    assert value(finding, "current that the wire must carry") == 31
    assert value(hermetic(20, other_current="6 A"), LARGEST) == 40
    assert finding.criterion(DEVICE).verdict == "pass"


@practice(
    "what rules several motors behind one device, NEC 430.53, was not seen, and is not guessed"
)
def test_several_motors_behind_one_device_cannot_be_told():
    given = {"horsepower": "3/4 hp", "nameplate_voltage": "115 V", "breaker": "15 A"}
    finding = motor(**given, other_current="3 A")  # NEC 430.53 was not seen
    assert finding.criterion(DEVICE).verdict == "cannot tell"


@PLATE_440_22_C
@DEVICE_440_22_A
@DEVICE_430_52
def test_the_plates_largest_device_rules_on_a_compressor():
    # NEC 440.22(C): above the 15 A of 175 % the plate may allow more, and below less
    assert hermetic(9, breaker="25 A", maximum_breaker="25 A", **ALL).verdict == "pass"
    assert hermetic(20, breaker="35 A", maximum_breaker="30 A", **ALL).verdict == "fail"
    given = {"horsepower": "1/2 hp", "nameplate_voltage": "115 V", "maximum_breaker": "30 A", **ALL}
    assert motor(breaker="30 A", will_not_start="no", **given).verdict == "fail"  # 430.52: 25 A


@FULL_LOAD_430_248
@WIRE_430_22
@pytest.mark.parametrize(
    ("hp", "volts", "needs"),
    [
        # NEC 430.22: 125 % of the table's current
        ("1/2", 230, 6.125),
        ("3/4", 115, 17.25),
        ("1/2", 115, 12.25),
    ],
)
def test_current_of_the_wire(hp, volts, needs):
    finding = motor(horsepower=f"{hp} hp", nameplate_voltage=f"{volts} V")
    assert value(finding, "current that the wire must carry") == pytest.approx(needs)


@FULL_LOAD_430_248
@WIRE_430_22
@WIRE_310_16
@AMBIENT_310_15_B
@pytest.mark.parametrize(
    ("wire", "ambient", "before", "after"),
    [
        # 17.25 A: 14 AWG 15 A, 12 AWG 20 A (60 C); at 45 C x 0.71 14.2 A, 10 AWG 21.3 A
        ("14 AWG", "30 C", "fail", "fail"),
        ("12 AWG", "30 C", "pass", "pass"),
        ("12 AWG", "45 C", "pass", "fail"),
        ("10 AWG", "45 C", "pass", "pass"),
    ],
)
def test_wire_of_a_motor(wire, ambient, before, after):
    given = {"horsepower": "3/4 hp", "nameplate_voltage": "115 V", "building_wire": wire}
    finding = motor(**given, ambient=ambient, conductors=2)
    assert finding.criterion(WIRE).verdict == before
    assert finding.criterion(f"{WIRE}, corrected").verdict == after


@WIRE_310_16
@WIRE_440_32
@practice("what a unit's plate asks for counts where it is more than the rule")
def test_the_plates_least_ampacity_counts_where_it_is_greater():
    given = {"building_wire": "12 AWG", "ambient": "30 C", "conductors": 2}  # 20 A
    assert hermetic(9, minimum_ampacity="20 A", **given).criterion(WIRE).verdict == "pass"
    assert hermetic(9, minimum_ampacity="20.1 A", **given).criterion(WIRE).verdict == "fail"
    doubt = hermetic(17, minimum_ampacity="12 A", **given)  # 21.3 A by the rule: one is misread
    assert doubt.criterion("plate values together").verdict == "cannot tell"
    assert doubt.verdict == "cannot tell"


@SMALL_WIRE_240_4_D
@MOTORS_240_4_G
@DEVICE_430_52
def test_a_larger_breaker_on_small_wire_is_explained_and_not_mended():
    # 1/2 hp 115 V: 25 A on 14 AWG holds; NEC 240.4(D) with its 15 A does not bind (240.4(G))
    given = {"horsepower": "1/2 hp", "nameplate_voltage": "115 V", "building_wire": "14 AWG"}
    given |= {"ambient": "30 C", "conductors": 2, "motor_device": "inverse-time breaker"}
    finding = motor(breaker="25 A", **given)
    assert finding.verdict == "pass"
    (said,) = finding.answers
    assert "240.4(G)" in said.text
    assert not motor(breaker="15 A", **given).answers


THIN = "device on wire this thin"


@source("NEC (NFPA 70)", "2017", "Table 310.15(B)(16), 14 AWG, 60 C", seen="two copies")
@source("NEC (NFPA 70)", "2017", "Table 430.248, 3/4 HP", seen="two copies")
def test_a_thin_wire_that_only_the_tables_current_is_too_much_for():
    # 13.8 A x 1.25 = 17.3 A is above the 15 A of 14 AWG, 4 A x 1.25 = 5 A is not
    plate = {"horsepower": "3/4 hp", "nameplate_voltage": "115 V", "full_load_current": "4 A"}
    there = {"building_wire": "18 AWG", "ambient": "55 C", "conductors": 3, **READ}
    found = motor(**plate, **there)
    for name in (WIRE, "load on the wire, corrected"):
        assert found.criterion(name).verdict == "cannot tell"
        assert "if it goes by" in found.criterion(name).criterion.reason


@source(
    "NEC (NFPA 70)",
    "2008 to 2023",
    "240.4(D), 18 AWG",
    seen="one copy, that does not quote the code",
)
@memory("NEC 240.4(D): 10 A on 16 AWG")
@MOTORS_240_4_G
@DEVICE_430_52
@pytest.mark.parametrize("wire", ["18 AWG", "16 AWG", "17 AWG", "20 AWG"])
@pytest.mark.parametrize("breaker", [None, "10 A", "15 A", "20 A"])
def test_wire_thinner_than_14_awg_cannot_be_told(wire, breaker):
    # NEC 240.4(D): 7 A for 18 AWG, 10 A for 16 AWG; the exemption of 240.4(G) was seen for 14, 12
    # and 10 AWG copper only
    place = {"insulation_class": "90 C", "termination_temperature": "90 C"}
    place |= {"ambient": "25 C", "conductors": 2, "building_wire": wire}
    given = place | ({"breaker": breaker} if breaker else {})
    compressor = hermetic(9, minimum_ampacity="12 A", maximum_breaker="20 A", **given)
    small = motor(horsepower="1/6 hp", nameplate_voltage="230 V", **given)
    assert compressor.verdict == "cannot tell"
    assert small.verdict == ("fail" if breaker == "20 A" else "cannot tell")  # 430.52: 15 A
    for finding in (compressor, small):
        assert finding.criterion(THIN).verdict == "cannot tell"
        assert not any("240.4(G)" in a.text for a in finding.answers)


@MOTORS_240_4_G
@pytest.mark.parametrize("wire", ["14 AWG", "12 AWG", "10 AWG", "8 AWG", "12 AWG aluminum"])
def test_wire_that_240_4_g_is_for(wire):
    given = {"building_wire": wire, "ambient": "30 C", "conductors": 2, "breaker": "15 A"}
    assert THIN not in {c.criterion.name for c in hermetic(4, **given).criteria}


HALF = {"horsepower": "1/2 hp", "nameplate_voltage": "115 V"}  # Table 430.248: 9.8 A


@TABLE_OR_PLATE_430_6_A
@FULL_LOAD_430_248
@WIRE_430_22
@WIRE_310_16
@practice("where a plate has more amps than the table, a careful shop asks which counts")
@pytest.mark.parametrize(
    ("plate", "governs", "wire", "expected"),
    [
        # 14 AWG 15 A: 9.8 x 1.25 = 12.25 A by the table, 14 x 1.25 = 17.5 A by the plate
        ("14 A", None, "14 AWG", "cannot tell"),
        ("14 A", "no", "14 AWG", "cannot tell"),
        ("14 A", "yes", "14 AWG", "fail"),
        ("14 A", None, "12 AWG", "pass"),  # 20 A either way
        ("12 A", None, "14 AWG", "pass"),  # 15 A
        ("12.01 A", None, "14 AWG", "cannot tell"),
        ("8 A", None, "14 AWG", "pass"),
    ],
)
def test_wire_where_the_plate_has_more_than_the_table(plate, governs, wire, expected):
    given = {**HALF, **COOL, "full_load_current": plate, "building_wire": wire}
    if governs:
        given["plate_governs"] = governs
    finding = motor(**given)
    assert finding.criterion(WIRE).verdict == expected
    assert finding.criterion(f"{WIRE}, corrected").verdict == expected


@TABLE_OR_PLATE_430_6_A
@FULL_LOAD_430_248
@DEVICE_430_52
@NEXT_RATING_430_52_C
@practice("where a plate has more amps than the table, a careful shop asks which counts")
@pytest.mark.parametrize(
    ("plate", "governs", "breaker", "expected"),
    [
        # 250 %, next standard rating: by the table 25 A, by 14 A 35 A, by 5 A 15 A
        ("14 A", None, "25 A", "pass"),
        ("14 A", None, "30 A", "cannot tell"),
        ("14 A", "no", "35 A", "cannot tell"),
        ("14 A", "yes", "35 A", "pass"),
        ("5 A", None, "15 A", "pass"),
        ("5 A", None, "20 A", "cannot tell"),
        ("5 A", "no", "20 A", "pass"),
        ("5 A", "yes", "20 A", "fail"),
        ("14 A", None, "60 A", "fail"),
    ],
)
def test_device_where_plate_and_table_differ(plate, governs, breaker, expected):
    given = {**HALF, "full_load_current": plate, "breaker": breaker, "will_not_start": "no"}
    if governs:
        given["plate_governs"] = governs
    assert motor(**given).criterion(DEVICE).verdict == expected


@TABLE_OR_PLATE_430_6_A
@WIRE_430_22
@WIRE_310_16
@MOTORS_240_4_G
@practice("where a plate has more amps than the table, a careful shop asks which counts")
def test_a_wire_that_the_table_allows_is_not_replaced():
    given = {**HALF, **COOL, "full_load_current": "14 A", "breaker": "25 A"}
    assert not motor(**given, building_wire="14 AWG").answers  # by the plate it would be too thin
    (said,) = motor(**given, building_wire="12 AWG").answers  # 17.5 A either way: 240.4(G)
    assert "240.4(G)" in said.text


@PLATE_440_22_C
@DEVICE_440_22_A
def test_the_rule_is_not_shown_where_the_plate_rules():
    # RLA 9 A: 175 % is 15 A, and the plate's 20 A counts (NEC 440.22(C))
    finding = hermetic(9, breaker="20 A", maximum_breaker="20 A")
    assert LARGEST not in {f.figure.name for f in finding.figures}


@FULL_LOAD_430_248
@WIRE_430_22
@practice("where a plate has more amps than the table, a careful shop asks which counts")
def test_a_plate_far_over_the_table_does_not_pass():
    # 1/4 hp at 115 V: 5.8 A in the table, 20 A typed; 14 AWG carries 15 A
    given = {"horsepower": "1/4 hp", "nameplate_voltage": "115 V", "full_load_current": "20 A"}
    given |= {"plate_governs": "no", "building_wire": "14 AWG", "breaker": "15 A", **COOL}
    assert motor(**given).verdict == "cannot tell"
    assert value(motor(**given), "current that the wire must carry") == 25


@FULL_LOAD_430_248
@WIRE_430_22
@WIRE_310_16
@DEVICE_430_52
@NEXT_RATING_430_52_C
@pytest.mark.parametrize(
    ("hp", "volts", "gauge", "device"),
    [
        # 125 % of the table's current in the 60 C column (14, 12, 10, 8 AWG: 15, 20, 30, 40 A)
        ("1/2", 115, 14, 25),  # 12.25 A
        ("3/4", 115, 12, 35),  # 17.25 A
        ("1", 115, 12, 40),  # 20 A
        ("1 1/2", 115, 10, 50),  # 25 A
        ("3", 115, 6, 90),  # 42.5 A; 85 A, next 90 A
    ],
)
def test_wire_and_device_that_a_motor_needs(hp, volts, gauge, device):
    finding = motor(horsepower=f"{hp} hp", nameplate_voltage=f"{volts} V")
    (needed,) = finding.answers
    assert needed.text == (
        f"{gauge} AWG copper or thicker; inverse-time breaker of at most {device} A"
    )


@DEVICE_440_22_A
@WIRE_440_32
@PLATE_440_22_C
@WIRE_310_16
@AMBIENT_310_15_B
def test_wire_and_device_that_a_compressor_needs():
    # 20 A: 25 A on 10 AWG; 175 % = 35 A; the plate's 30 A rules
    (needed,) = hermetic(20).answers
    assert needed.text == "10 AWG copper or thicker; breaker or fuse of at most 35 A"
    (needed,) = hermetic(20, maximum_breaker="30 A").answers
    assert needed.text == "10 AWG copper or thicker; breaker or fuse of at most 30 A"
    # in 45 C with 2 wires 10 AWG has 30 x 0.71 = 21.3 A, 8 AWG 28.4 A
    hot = {"ambient": "45 C", "conductors": 2, "building_wire": "14 AWG", "breaker": "15 A"}
    (needed,) = hermetic(20, **hot).answers
    assert needed.text == "8 AWG copper or thicker"


@TABLE_OR_PLATE_430_6_A
@FULL_LOAD_430_248
@WIRE_430_22
@WIRE_310_16
@DEVICE_430_52
@NEXT_RATING_430_52_C
@practice("where a plate has more amps than the table, a careful shop asks which counts")
def test_what_a_motor_needs_holds_for_table_and_plate():
    # wire by the plate's 14 A (17.5 A: 12 AWG), device by the table's 9.8 A (25 A)
    (needed,) = motor(**HALF, full_load_current="14 A").answers
    assert needed.text == "12 AWG copper or thicker; inverse-time breaker of at most 25 A"


@source("NEC (NFPA 70)", "2008", "430.32(A)(1)", seen="the text and trade summaries")
@pytest.mark.parametrize(
    ("cool", "largest"),
    [("yes", 10.75), ("no", 9.89), (None, 9.89)],  # NEC 430.32(A)(1): 125 or 115 % of 8.6 A
)
def test_overload_setting_by_the_plate(cool, largest):
    given = {"horsepower": "1/2 hp", "nameplate_voltage": "115 V", "full_load_current": "8.6 A"}
    if cool:
        given["cool_running"] = cool
    assert value(motor(**given), "largest overload setting") == pytest.approx(largest)


@source("NEC (NFPA 70)", "2008", "430.32(A)(1)", seen="the text and trade summaries")
@source("NEC (NFPA 70)", "2014", "430.32(C): 140 and 130 %", seen="a trade quiz of 2015")
@pytest.mark.parametrize(
    ("setting", "cool", "too_low", "expected"),
    [
        # 8.6 A on the plate: 9.89 (115 %), 10.75 (125 %), 11.18 (130 %), 12.04 A (140 %)
        ("9.89 A", None, None, "pass"),
        ("9.9 A", None, None, "cannot tell"),
        ("9.9 A", "no", "no", "fail"),
        ("10.75 A", "yes", "no", "pass"),
        ("10.76 A", "yes", "no", "fail"),
        ("10.76 A", "yes", None, "cannot tell"),
        ("11.18 A", "no", "yes", "pass"),
        ("11.19 A", "no", "yes", "fail"),
        ("12.04 A", "yes", "yes", "pass"),
        ("12.04 A", None, "yes", "cannot tell"),
        ("12.05 A", None, None, "fail"),
    ],
)
def test_overload_that_is_fitted(setting, cool, too_low, expected):
    given = {"horsepower": "1/2 hp", "nameplate_voltage": "115 V", "full_load_current": "8.6 A"}
    known = {"cool_running": cool, "overload_too_low": too_low}
    known = {name: said for name, said in known.items() if said}
    finding = motor(**given, **known, overload_setting=setting)
    assert finding.criterion("overload setting").verdict == expected


@memory("NEC 440.52(A)(1): an overload relay of a compressor, 140 % of its rated-load current")
def test_overload_relay_of_a_compressor():
    def verdict_of(setting):
        given = {"motor_kind": "compressor", "fastened_in_place": "yes"}
        given |= {"rated_load_current": "10 A", "overload_setting": setting}
        return wirecalc.run("motor-circuit", **given).criterion("overload setting").verdict

    # 14 A; 25 % less is kept however far that may be off
    said = [verdict_of(s) for s in ("10.5 A", "10.6 A", "14 A", "14.1 A")]
    assert said == ["pass", "marginal", "marginal", "fail"]


@source("NEC (NFPA 70)", "2008", "430.32(A)(2)", seen="the text and trade summaries")
@FULL_LOAD_430_248
@pytest.mark.parametrize(
    ("hp", "volts", "most"),
    [
        # NEC 430.32(A)(2): 170 % to 9 A, 156 % to 20 A, 140 % above, of the table's current
        ("1/3", 115, 12.24),
        ("1", 208, 14.96),
        ("1/2", 115, 15.288),
        ("1 1/2", 115, 31.2),
        ("2", 115, 33.6),
    ],
)
def test_trip_of_a_thermal_protector(hp, volts, most):
    finding = motor(horsepower=f"{hp} hp", nameplate_voltage=f"{volts} V")
    assert value(finding, "largest trip of a thermal protector") == pytest.approx(most)


@AMBIENT_310_15_B
def test_wire_too_thin_for_the_table_is_ruled_out_by_heat_as_the_thinnest_listed_is():
    # NEC ambient table, 60 C column: it ends at 55 C, whatever the size
    asked = {"motor_kind": "compressor", "rated_load_current": "1.6 A", "conductors": "3"}
    for gauge in ("14", "16", "18"):
        found = wirecalc.run(
            "motor-circuit",
            **asked,
            fastened_in_place="yes",
            building_wire=f"{gauge} AWG",
            insulation_class="60 C",
            ambient="56 C",
        )
        assert found.verdict == "fail", gauge


@FULL_LOAD_430_248
@DEVICE_430_52
@FUSE_430_52_C
@source(
    "NEC (NFPA 70)",
    "to 2020",
    "240.6(A), ratings of fuses",
    seen="the text, and a code answer on the 2017 edition",
)
@pytest.mark.parametrize(
    ("breaker", "expected", "limit"),
    [
        # NEC 430.52(C)(1), time-delay fuse: by the plate's 4 A 175 % is 7 A, the next rating of
        # fuses 10 A, and 225 %, 9 A, is less than that; by the table's 9.8 A 17.15, 20 A, and
        # 22.05 A where it will not start. 10 A is within both, 25 A past both; between, it turns
        # on whether the plate governs.
        ("10 A", "pass", 10),
        ("15 A", "cannot tell", None),
        ("20 A", "cannot tell", None),
        ("25 A", "fail", 10),
    ],
)
def test_the_limit_of_a_fuse_does_not_depend_on_the_fuse(breaker, expected, limit):
    given = {**HALF, "full_load_current": "4 A", "motor_device": "time-delay fuse"}
    judged = motor(breaker=breaker, will_not_start="yes", **given).criterion(DEVICE)
    assert judged.verdict == expected
    assert judged.criterion.limit == limit


@FULL_LOAD_430_248
@DEVICE_430_52
@FUSE_430_52_C
@source(
    "NEC (NFPA 70)",
    "to 2020",
    "240.6(A), ratings of fuses",
    seen="the text, and a code answer on the 2017 edition",
)
@pytest.mark.parametrize(
    ("governs", "breaker", "expected"),
    # the same motor where it is known: by the table 22.05 A, by the plate 10 A
    [
        ("no", "20 A", "pass"),
        ("no", "25 A", "fail"),
        ("yes", "10 A", "pass"),
        ("yes", "15 A", "fail"),
    ],
)
def test_the_limit_of_a_fuse_where_it_is_known_which_current_counts(governs, breaker, expected):
    given = {**HALF, "full_load_current": "4 A", "motor_device": "time-delay fuse"}
    given |= {"plate_governs": governs, "will_not_start": "yes"}
    assert motor(breaker=breaker, **given).criterion(DEVICE).verdict == expected


UNIT = {"minimum_ampacity": "18.4 A", "maximum_breaker": "30 A", "motor_kind": "compressor"}
RUNS = "device carries the running current"


@PLATE_440_22_C
@memory("NEC 440.4(B): a unit's plate has its least ampacity and its largest device")
@WIRE_310_16
@pytest.mark.parametrize(
    ("wire", "breaker", "expected"),
    [
        # NEC 440.4(B), 440.22(C): the unit's plate has worked it out; 12 AWG 20 A, 14 AWG 15 A
        ("12 AWG", "30 A", "pass"),
        ("12 AWG", "35 A", "fail"),
        ("14 AWG", "30 A", "fail"),
        ("12 AWG", None, "cannot tell"),
        (None, "30 A", "cannot tell"),
        ("16 AWG", "30 A", "fail"),
    ],
)
def test_a_unit_by_its_plate_alone(wire, breaker, expected):
    given = {**UNIT, **({"building_wire": wire, **COOL} if wire else {})}
    given |= {"breaker": breaker} if breaker else {}
    assert motor(**given).verdict == expected


@memory("NEC 440.4(B): a unit's plate has its least ampacity and its largest device")
def test_a_unit_whose_plate_has_no_largest_device_is_asked_for_it():
    given = {**UNIT, "building_wire": "12 AWG", "breaker": "30 A", **COOL}
    del given["maximum_breaker"]
    finding = motor(**given)
    assert finding.verdict == "cannot tell"
    assert finding.decided_by.criterion.needs == ("maximum_breaker",)


@WIRE_440_32
@practice("a plate's least ampacity is rounded, by no more than 5 %")
@pytest.mark.parametrize(
    ("rla", "ampacity", "largest", "questioned"),
    [
        # NEC 440.32: 125 % of the RLA, 18 A of 14.4; 95 % of that is for the rounding of a plate
        ("14.4 A", "18 A", "30 A", False),
        ("14.4 A", "17.2 A", "30 A", False),
        ("14.4 A", "17 A", "30 A", True),
        ("48 A", "13 A", "80 A", True),
    ],
)
def test_plate_values_that_contradict_each_other(rla, ampacity, largest, questioned):
    given = {"motor_kind": "compressor", "rated_load_current": rla, "minimum_ampacity": ampacity}
    finding = motor(**given, maximum_breaker=largest)
    names = {c.criterion.name for c in finding.criteria}
    assert ("plate values together" in names) is questioned


@practice("what two values of a plate that cannot stand together both fail is sure, no more")
@pytest.mark.parametrize(
    ("wire", "breaker", "expected"),
    [
        # 16 A by the least ampacity, 60 A by an RLA of 48 A: 12 AWG carries 20 A, 14 AWG 15 A
        ("12 AWG", "20 A", "cannot tell"),
        ("14 AWG", "20 A", "fail"),
        ("12 AWG", "25 A", "fail"),  # over the largest device, whatever the amps
    ],
)
def test_a_wire_is_not_condemned_by_one_of_two_plate_values(wire, breaker, expected):
    plate = {"rated_load_current": "48 A", "minimum_ampacity": "16 A", "maximum_breaker": "20 A"}
    finding = motor(motor_kind="compressor", **plate, building_wire=wire, breaker=breaker, **COOL)
    assert finding.verdict == expected
    if expected == "cannot tell":
        assert finding.decided_by.criterion.name == "plate values together"
        assert finding.decided_by.criterion.needs == ("minimum_ampacity", "rated_load_current")
    alike = plate | {"rated_load_current": "12.8 A"}
    good = motor(motor_kind="compressor", **alike, building_wire="12 AWG", breaker="20 A", **COOL)
    assert good.verdict == "pass"


@FULL_LOAD_430_248
def test_the_table_sizes_a_motor_whatever_a_units_plate_says():
    # Table 430.248: 9.8 A for 1/2 hp at 115 V, 125 % of it 12.25 A
    finding = motor(**HALF, minimum_ampacity="9 A", building_wire="14 AWG", **COOL)
    assert "plate values together" not in {c.criterion.name for c in finding.criteria}
    carried = finding.figure("current that the wire must carry").figure.value
    assert carried == pytest.approx(12.25)


@memory("NEC 440.4(B): a unit's plate has its least ampacity and its largest device")
def test_a_largest_device_below_the_least_ampacity_is_refused():
    # NEC 440.4(B): a plate's device is no smaller than the ampacity of its wire; they are exchanged
    given = {"motor_kind": "compressor", "minimum_ampacity": "30 A"}
    with pytest.raises(BadInput, match="18 A is below the least circuit ampacity of 30 A"):
        motor(**given, maximum_breaker="18 A")
    assert motor(**given, maximum_breaker="30 A").verdict


@FULL_LOAD_430_248
@practice("a plate under a quarter of the table's amps was read wrong")
@pytest.mark.parametrize(
    ("plate", "questioned"), [("0.86 A", True), ("2.4 A", True), ("2.5 A", False)]
)
def test_a_plate_far_under_the_table_is_questioned(plate, questioned):
    # Table 430.248: 9.8 A for 1/2 hp at 115 V, a quarter of it 2.45 A
    finding = motor(**HALF, full_load_current=plate, plate_governs="no")
    names = {c.criterion.name for c in finding.criteria}
    assert ("plate's amps beside the table" in names) is questioned


@FULL_LOAD_430_248
@practice("a breaker under the running current trips")
@pytest.mark.parametrize(
    ("breaker", "governs", "expected"),
    [
        # 2 hp at 115 V runs on 24 A by the table, on 18 A by its plate
        ("20 A", "no", "fail"),
        ("20 A", "yes", "pass"),
        ("20 A", None, "cannot tell"),
        ("15 A", None, "fail"),
        ("25 A", "no", "pass"),
    ],
)
def test_a_device_under_the_running_current_trips(breaker, governs, expected):
    given = {"horsepower": "2 hp", "nameplate_voltage": "115 V", "full_load_current": "18 A"}
    given |= {"plate_governs": governs} if governs else {}
    assert motor(**given, breaker=breaker).criterion(RUNS).verdict == expected


@practice(
    "a plate value that does not count is a note, one that is missing makes the stricter count"
)
def test_plate_volts_beside_rla_are_a_note():
    finding = hermetic(9, nameplate_voltage="230 V", breaker="15 A", building_wire="14 AWG", **COOL)
    assert finding.verdict == "pass"
    assert any("they size motors" in n.why for n in finding.not_checked)


@practice(
    "a plate value that does not count is a note, one that is missing makes the stricter count"
)
def test_what_the_plate_did_not_say_is_named_where_the_stricter_counts():
    finding = motor(**HALF, full_load_current="14 A")
    assert any("115 % counts" in n.why for n in finding.not_checked)
    (needed,) = finding.answers
    assert any("the greater current" in said for said in needed.evidence_against)
    told = motor(**HALF, full_load_current="14 A", plate_governs="no", cool_running="yes")
    assert not any("115 % counts" in n.why for n in told.not_checked)
    assert not any("the greater current" in s for a in told.answers for s in a.evidence_against)


@FULL_LOAD_430_248
@DEVICE_430_52
@NEXT_RATING_430_52_C
@FUSE_430_52_C
def test_a_rating_on_a_handle_is_that_of_a_breaker():
    # 9.8 A: 250 % is 24.5 A, 25 A; of a time-delay fuse 175 % is 17.15 A, 20 A
    given = {**HALF, "building_wire": "14 AWG", **COOL, "breaker": "25 A"}
    finding = motor(**given)
    assert finding.verdict == "pass"
    assert any(n.what == "motor_device" for n in finding.not_checked)
    assert motor(**given, motor_device="time-delay fuse").verdict == "fail"  # 225 % is 22.05 A


@source("NEC (NFPA 70)", "not stated in the copy", "440.6(B)", seen="a code forum")
@memory("NEC 430.6(A)(1), exceptions: a shaded-pole or PSC fan counts by its plate")
@WIRE_310_16
def test_a_small_fan_motor_on_an_ordinary_circuit():
    # a PSC blower of 5.2 A by its plate, on 15 A and 14 AWG
    given = {"horsepower": "1/3 hp", "nameplate_voltage": "115 V", "full_load_current": "5.2 A"}
    given |= {"plate_governs": "yes", "breaker": "15 A", "building_wire": "14 AWG", **COOL}
    assert motor(**given).verdict == "pass"


@source("NEC (NFPA 70)", "2008", "440.52(B)(2)", seen="a page that reproduces the text")
def test_protective_system_of_a_compressor():
    # 156 % of 10 A
    assert value(hermetic(10), "most that its protector may let run on") == pytest.approx(15.6)


@FULL_LOAD_430_248
@practice("a motor's circuit is not judged without its wire, its device and the motor's plate")
@pytest.mark.parametrize(
    "left_out", ["breaker", "building_wire", "horsepower", "nameplate_voltage"]
)
def test_what_a_motor_circuit_cannot_be_told_without(left_out):
    given = {**HALF, "breaker": "15 A", "building_wire": "14 AWG", **COOL}
    assert motor(**given).verdict == "pass"
    rest = {k: v for k, v in given.items() if k != left_out}
    if left_out == "building_wire":
        rest = {k: v for k, v in rest.items() if k not in COOL}
    assert motor(**rest).verdict == "cannot tell"

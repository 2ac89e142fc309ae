"""Currents of building wire and cord, against rows of the NEC as they are printed."""

from __future__ import annotations

import math

import pytest

import wirecalc
from wirecalc import tables
from wirecalc.trade import conductors, nec_ampacity
from wirecalc.typed.wires import read_wire

from .records import independent, memory, practice, source

# in A at 30 C and up to three live conductors: size, copper 60, 75, 90 C, aluminium 60, 75, 90 C
TABLE_310_16 = """
18  -   -   14  -   -   -
16  -   -   18  -   -   -
14  15  20  25  -   -   -
12  20  25  30  15  20  25
10  30  35  40  25  30  35
8   40  50  55  35  40  45
6   55  65  75  40  50  55
4   70  85  95  55  65  75
3   85  100 115 65  75  85
2   95  115 130 75  90  100
1   110 130 145 85  100 115
1/0 125 150 170 100 120 135
2/0 145 175 195 115 135 150
3/0 165 200 225 130 155 175
4/0 195 230 260 150 180 205
"""


def table_310_16():
    for line in TABLE_310_16.strip().splitlines():
        gauge, *values = line.split()
        columns = [(metal, c) for metal in ("copper", "aluminum") for c in (60, 75, 90)]
        for (metal, rating), printed in zip(columns, values, strict=True):
            expected = None if printed == "-" else float(printed)
            yield pytest.param(
                f"{gauge} AWG {metal}", rating, expected, id=f"{gauge} AWG {metal} {rating} C"
            )


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.16 (2020, 2023), 310.15(B)(16) from 2011 to 2017",
    seen="two copies, 18 and 16 AWG one",
)
@pytest.mark.parametrize(("wire", "rating", "printed"), list(table_310_16()))
def test_ampacity_against_nec_table_310_16(wire, rating, printed):
    row = nec_ampacity.ampacity(read_wire(wire), rating)
    assert (None if row is None else row.number("ampacity_A")) == printed


@source(
    "ASTM B258",
    "edition not stated",
    "law and areas of the gauge",
    seen="two tables and three tutorial texts",
)
@pytest.mark.parametrize(
    ("metric", "gauge"),
    # 16 AWG has 1.31 mm2, 14 AWG 2.08, 12 AWG 3.31, 10 AWG 5.26, 8 AWG 8.37, 6 AWG 13.3
    [("1.5 mm2", "16"), ("2.5 mm2", "14"), ("4 mm2", "12"), ("6 mm2", "10"), ("10 mm2", "8")],
)
def test_metric_wire_counts_as_the_next_thinner_gauge(metric, gauge):
    wire = read_wire(metric)
    for rating in (60, 90):
        as_gauge = nec_ampacity.ampacity(read_wire(f"{gauge} AWG"), rating)
        assert nec_ampacity.ampacity(wire, rating) == as_gauge


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.16 (2020, 2023), 310.15(B)(16) from 2011 to 2017",
    seen="two copies, 18 and 16 AWG one",
)
@source(
    "ASTM B258",
    "edition not stated",
    "law and areas of the gauge",
    seen="two tables and three tutorial texts",
)
def test_a_metric_wire_thinner_than_the_table_has_no_ampacity():
    assert nec_ampacity.ampacity(read_wire("1 mm2"), 60) is None  # 18 AWG has none at 60 C


# for 30 C: greatest temperature of the band, then the factor of wire of 60, 75 and 90 C
AMBIENT_30 = """
10 1.29 1.20 1.15
15 1.22 1.15 1.12
20 1.15 1.11 1.08
25 1.08 1.05 1.04
30 1.00 1.00 1.00
35 0.91 0.94 0.96
40 0.82 0.88 0.91
45 0.71 0.82 0.87
50 0.58 0.75 0.82
55 0.41 0.67 0.76
60 -    0.58 0.71
65 -    0.47 0.65
70 -    0.33 0.58
75 -    -    0.50
80 -    -    0.41
85 -    -    0.29
"""


def ambient_30():
    for line in AMBIENT_30.strip().splitlines():
        last, *factors = line.split()
        for rating, printed in zip((60, 75, 90), factors, strict=True):
            expected = None if printed == "-" else float(printed)
            yield pytest.param(float(last), rating, expected, id=f"{rating} C wire in {last} C")


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.15(B)(1)(1) (2023, number from memory), 310.15(B)(2)(a) from 2011 to "
    "2017, base 30 C",
    seen="two copies",
)
@pytest.mark.parametrize(("ambient", "rating", "printed"), list(ambient_30()))
def test_ambient_factor_against_the_nec(ambient, rating, printed):
    found = nec_ampacity.ambient_factor(rating, ambient)
    assert (None if found is None else found.value) == printed
    start = nec_ampacity.ambient_factor(rating, ambient - 4)  # 36 to 40 C is one band
    assert (None if start is None else start.value) == printed


@independent(
    "sqrt((rating - ambient) / (rating - base)) at the upper end of a band, within "
    "the printed digits"
)
@pytest.mark.parametrize(("ambient", "rating", "printed"), list(ambient_30()))
def test_ambient_factor_follows_the_square_root_law(ambient, rating, printed):
    if printed is None:
        assert ambient >= rating - 4  # no wire carries anything at its own temperature
        return
    law = math.sqrt((rating - ambient) / (rating - 30))
    found = nec_ampacity.ambient_factor(rating, ambient)
    assert found is not None
    assert abs(found.value - law) <= 0.005  # two digits are printed


@independent(
    "sqrt((rating - ambient) / (rating - base)) at the upper end of a band, within "
    "the printed digits"
)
def test_every_row_of_both_bases_follows_the_square_root_law():
    rows = tables.load("nec-ambient").rows
    assert {row.number("basis_C") for row in rows} == {30, 40}
    wrong = []
    for row in rows:
        top, base, rating = row.number("to_C"), row.number("basis_C"), row.number("rating_C")
        law = math.sqrt((rating - top) / (rating - base))
        if abs(row.number("factor") - law) > 0.005:
            wrong.append((dict(row.cells), law))
    assert not wrong


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.15(B)(1)(1) (2023, number from memory), 310.15(B)(2)(a) from 2011 to "
    "2017, base 30 C",
    seen="two copies",
)
@practice("between two bands of whole degrees the hotter one counts")
@pytest.mark.parametrize(
    ("ambient", "printed"), [(30.5, 0.91), (40.5, 0.71), (55.0, 0.41), (-18.0, 1.29)]
)
def test_between_two_bands_the_hotter_one_counts(ambient, printed):
    found = nec_ampacity.ambient_factor(60, ambient)
    assert found is not None
    assert found.value == printed


COUNTS = [(1, 1.0), (3, 1.0), (4, 0.8), (6, 0.8), (7, 0.7), (9, 0.7), (10, 0.5), (20, 0.5)]
COUNTS += [(21, 0.45), (30, 0.45), (31, 0.4), (40, 0.4), (41, 0.35), (100, 0.35)]


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.15(C)(1) (2020, 2023), 310.15(B)(3)(a) from 2011 to 2017",
    seen="two copies",
)
@pytest.mark.parametrize(("count", "printed"), COUNTS)
def test_count_factor_against_nec_table_310_15_c_1(count, printed):
    assert nec_ampacity.count_factor(count).value == printed


# largest breaker in A
SMALL = [("18 AWG", 7), ("16 AWG", 10), ("14 AWG", 15), ("12 AWG", 20), ("10 AWG", 30)]
SMALL += [("12 AWG aluminum", 15), ("10 AWG aluminum", 25), ("10 AWG copper-clad aluminum", 25)]


@source(
    "NEC (NFPA 70)",
    "2008 to 2023",
    "240.4(D)",
    seen="three copies for copper, two for aluminium, one for 18 AWG",
)
@memory("240.4(D) of the NEC: 10 A of 16 AWG")
@pytest.mark.parametrize(("wire", "breaker"), SMALL)
def test_small_conductor_breaker_against_nec_240_4_d(wire, breaker):
    row = nec_ampacity.small_conductor_breaker(read_wire(wire))
    assert row is not None
    assert row.number("breaker_A") == breaker


@source(
    "NEC (NFPA 70)",
    "2008 to 2023",
    "240.4(D)",
    seen="three copies for copper, two for aluminium, one for 18 AWG",
)
@pytest.mark.parametrize("wire", ["8 AWG", "14 AWG aluminum", "10 mm2"])
def test_nec_240_4_d_says_nothing_of_other_wire(wire):
    assert nec_ampacity.small_conductor_breaker(read_wire(wire)) is None


@memory("240.4(D) of the NEC: 10 A of 16 AWG")
def test_the_recalled_16_awg_breaker_is_marked_as_recalled():
    row = nec_ampacity.small_conductor_breaker(read_wire("16 AWG"))
    assert row is not None
    assert row.source.confidence == "memory"


# size, two live wires (column B), three live wires (column A)
CORDS = [("18", 10, 7), ("17", 12, 9), ("16", 13, 10), ("15", 16, 12), ("14", 18, 15)]
CORDS += [("13", 21, 17), ("12", 25, 20), ("10", 30, 25), ("8", 40, 35), ("6", 55, 45)]


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 400.5(A)(1), flexible cord at 30 C",
    seen=("a cord maker's reprint; 18 to 12 AWG of column B also in a UL standard's excerpt"),
)
@memory("15 and 13 AWG, and 17 AWG of column A, of NEC Table 400.5(A)(1)")
@pytest.mark.parametrize(("gauge", "two", "three"), CORDS, ids=[f"{c[0]} AWG" for c in CORDS])
def test_cord_against_nec_table_400_5_a_1(gauge, two, three):
    for live, printed in ((2, two), (3, three)):
        row = nec_ampacity.cord_ampacity(read_wire(f"{gauge} AWG"), live)
        assert row is not None
        assert row.number("ampacity_A") == printed
        assert row.number("ambient_C") == 30


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 400.5(A)(1), flexible cord at 30 C",
    seen=("a cord maker's reprint; 18 to 12 AWG of column B also in a UL standard's excerpt"),
)
@memory("15 and 13 AWG, and 17 AWG of column A, of NEC Table 400.5(A)(1)")
@pytest.mark.parametrize(
    ("gauge", "live", "confidence"),
    [("16", 2, "confirmed"), ("17", 2, "confirmed"), ("17", 3, "memory"), ("15", 2, "memory")],
)
def test_recalled_cord_sizes_are_marked_as_recalled(gauge, live, confidence):
    row = nec_ampacity.cord_ampacity(read_wire(f"{gauge} AWG"), live)
    assert row is not None
    assert row.source.confidence == confidence


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 400.5(A)(1), flexible cord at 30 C",
    seen=("a cord maker's reprint; 18 to 12 AWG of column B also in a UL standard's excerpt"),
)
@pytest.mark.parametrize(
    ("wire", "live"), [("20 AWG", 2), ("16 AWG", 4), ("16 AWG aluminum", 2), ("0.5 mm2", 2)]
)
def test_what_the_cord_table_does_not_hold_is_not_guessed(wire, live):
    assert nec_ampacity.cord_ampacity(read_wire(wire), live) is None


@source("stranding charts of two wire makers", "undated", "19/29 is 16 AWG", seen="two copies")
@source("a chart of ASTM stranding classes", "undated", "class K, 41/30 is 14 AWG", seen="one copy")
@source(
    "ASTM B258",
    "edition not stated",
    "law and areas of the gauge",
    seen="two tables and three tutorial texts",
)
@pytest.mark.parametrize(
    ("wire", "same_as"),
    [
        # 16 AWG as 19/29 has 6 % less copper
        ("19x29 AWG", "16"),
        # class K of 14 AWG is 41/30
        ("41x30 AWG", "14"),
        ("41x0.254 mm", "14"),
        # by hand: 30 strands of 100.5 cmil are 3015, between the 2583 of 16 AWG and the 3257 of 15
        ("30x30 AWG", "16"),
    ],
)
def test_a_stranded_wire_is_judged_by_its_gauge_or_the_next_thinner(wire, same_as):
    assert conductors.gauge_for_current(read_wire(wire)) == same_as


OF_60 = {"insulation_class": "60 C", "termination_temperature": "60 C", "conductors": 2}
LOAD, PLACE = "load on the wire", "place against the wire's rating"
LARGEST = "load against the largest published value"


def lead(**given):
    return wirecalc.run("ampacity", use="appliance", wire="18 AWG", **given)


@practice("the temperature printed on a wire is that of its metal, with the current's heat")
@pytest.mark.parametrize(("place", "expected"), [("105 C", "pass"), ("106 C", "fail")])
def test_a_lead_is_for_places_up_to_its_print(place, expected):
    finding = lead(wire_temperature="105 C", place_temperature=place, current="1 A")
    assert finding.criterion(PLACE).verdict == expected
    if expected == "fail":
        assert finding.verdict == "fail"


@source(
    "a wire maker's technical page, currents suggested for appliance lead wire",
    "undated",
    "one conductor, 30 C, and factors for the air",
    seen="one copy",
)
@pytest.mark.parametrize(
    ("current", "expected"),
    # 18 AWG has 29 A at most, as 250 C wire
    [("29 A", "pass"), ("29.1 A", "fail")],
)
def test_the_most_that_any_lead_of_a_size_is_given_binds(current, expected):
    finding = lead(wire_temperature="105 C", place_temperature="30 C", current=current)
    assert finding.criterion(LARGEST).verdict == expected


@source(
    "FAA AC 43.13-1B",
    "change 1, 2001",
    "Table 11-9, wires in bundles",
    seen="two mirrors of one document",
)
@source(
    "a wire maker's technical page, currents suggested for appliance lead wire",
    "undated",
    "one conductor, 30 C, and factors for the air",
    seen="one copy",
)
@pytest.mark.parametrize(
    ("current", "expected"),
    # 105 C at 60 C: aircraft bundle 6 A, wire maker 18 x 0.73 = 13.1 A, any 18 AWG 29 A
    [("6 A", "pass"), ("13 A", "marginal"), ("13.2 A", "cannot tell"), ("30 A", "fail")],
)
def test_what_binds_behind_the_advice_on_a_lead(current, expected):
    finding = lead(wire_temperature="105 C", place_temperature="60 C", current=current)
    assert finding.verdict == expected


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.16 (2020, 2023), 310.15(B)(16) from 2011 to 2017",
    seen="two copies, 18 and 16 AWG one",
)
@pytest.mark.parametrize(
    ("printed", "column"), [("70 C", 15), ("75 C", 20), ("85 C", 20), ("105 C", 25)]
)
def test_a_class_that_is_no_column_is_taken_as_the_one_below(printed, column):
    # 14 AWG copper: 15, 20, 25 A
    given = {"use": "building", "wire": "14 AWG", **OF_60, "insulation_class": printed}
    finding = wirecalc.run("ampacity", **given, ambient="30 C")
    assert finding.figure("ampacity of the table").figure.value == column


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.16 (2020, 2023), 310.15(B)(16) from 2011 to 2017",
    seen="two copies, 18 and 16 AWG one",
)
@source("NEC (NFPA 70)", "edition not stated", "110.14(C), ends of 60 and 75 C", seen="two copies")
@pytest.mark.parametrize(
    ("termination", "current", "expected"),
    [
        # 14 AWG of 90 C: 15 A by ends of 60 C, 20 A by ends of 75 C
        ("60 C", "15.1 A", "fail"),
        ("75 C", "15.1 A", "pass"),
        (None, "15.1 A", "cannot tell"),
        (None, "20.1 A", "fail"),
    ],
)
def test_ends_that_were_not_read_do_not_condemn(termination, current, expected):
    given = {"use": "building", "wire": "14 AWG", **OF_60, "insulation_class": "90 C"}
    given["termination_temperature"] = termination
    asked = {k: v for k, v in given.items() if v is not None}
    finding = wirecalc.run("ampacity", **asked, ambient="30 C", current=current)
    assert finding.criterion(LOAD).verdict == expected


@practice("an ampacity holds for a class, an ambient and a count of live wires: each is asked for")
@pytest.mark.parametrize(
    ("given", "needs"),
    [
        ({"use": "building", "ambient": "25 C", "conductors": 2}, "insulation_class"),
        ({"use": "building", **OF_60}, "ambient"),
        ({"use": "cord", "ambient": "25 C"}, "cord_conductors"),
        ({"use": "cord", "cord_conductors": 2}, "ambient"),
        ({"use": "fixture"}, "ambient"),
        ({"use": "appliance", "place_temperature": "60 C"}, "wire_temperature"),
        ({"use": "appliance", "wire_temperature": "105 C"}, "place_temperature"),
    ],
)
def test_what_an_ampacity_cannot_be_told_without(given, needs):
    finding = wirecalc.run("ampacity", wire="14 AWG", current="2 A", **given)
    assert finding.verdict == "cannot tell"
    assert needs in {n for c in finding.criteria for n in c.criterion.needs}


@source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 400.5(A)(1), flexible cord at 30 C",
    seen=("a cord maker's reprint; 18 to 12 AWG of column B also in a UL standard's excerpt"),
)
@source(
    "ASTM B258",
    "edition not stated",
    "law and areas of the gauge",
    seen="two tables and three tutorial texts",
)
def test_a_metric_cord_says_what_it_counts_as():
    given = {"use": "cord", "wire": "1.5 mm2", "cord_conductors": 2, "ambient": "25 C"}
    finding = wirecalc.run("ampacity", **given, current="13 A")
    assert finding.verdict == "pass"
    assert any("counts as 16 AWG" in n.why for n in finding.not_checked)
    assert wirecalc.run("ampacity", **given, current="15.1 A").verdict == "fail"


@source(
    "IEC 60228",
    "2004",
    "Table 3, class 5, plain copper, greatest resistance at 20 C",
    seen="two copies, 0.75 mm2 one",
)
@source(
    "ASTM B258",
    "edition not stated",
    "law and areas of the gauge",
    seen="two tables and three tutorial texts",
)
@independent("17.241 nohm m over the limit of the resistance against the area of the gauge")
@practice("2 % of lay")
@pytest.mark.parametrize(
    ("metric", "ohm_per_km", "gauge"),
    [
        # most at 20 C, beside the gauge that it counts as
        ("0.75 mm2", 26.0, "19"),
        ("1 mm2", 19.5, "18"),
        ("1.5 mm2", 13.3, "16"),
        ("2.5 mm2", 7.98, "14"),
        ("4 mm2", 4.95, "12"),
        ("6 mm2", 3.30, "10"),
        ("10 mm2", 1.91, "8"),
    ],
)
def test_a_metric_wire_has_the_copper_of_the_gauge_it_counts_as(metric, ohm_per_km, gauge):
    assert conductors.counted_gauge(read_wire(metric)) == gauge
    by_resistance = 17.241 / ohm_per_km
    by_gauge = math.pi / 4 * (0.127 * 92 ** ((36 - int(gauge)) / 39)) ** 2
    assert by_resistance >= by_gauge / 1.02

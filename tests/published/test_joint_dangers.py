"""Joints that an expert would not let go, and the same joints with the danger removed.

A check that was left out is no pass; behind advice stands a limit that binds. Each danger has its
twin: the same readings without it, which pass.
"""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc import Verdict

from .records import independent, memory, practice, source
from .seen import CORD_400_5_A_COLUMN_B, ROOM_OF_20_K, TEMPERATURE_TEST_UL_310

PRACTICE = "common practice, no source"
# strands past the barrel and bare wire behind it, mm: 2 + 1 to 6 mm2, 2 + 2 from 10 mm2, 3 + 3
# from 50, 4 + 4 from 120
JEM = "JEM-TR 162:2006, guide for crimp terminals, in a ship wiring handbook (one copy)"
# at a stop: bare behind it 3.05 mm to 10 AWG
AIRFRAME = "airframe maintenance manual, terminal lugs without insulation grip (one copy)"
UL_310 = "UL 310, 7th edition, temperature test (two documents, 14 to 10 AWG one)"
CORD = "NEC 2011 to 2023, Table 400.5(A)(1), column B (a cord maker's page)"
RATED = {"wire_temperature": "105 C", "terminal_temperature": "105 C"}
IN_PLACE = RATED | {"place_temperature": "60 C"}
BUTT = {"wire": ["16 AWG"], "barrel": "16-14 AWG", "connector": "butt"} | IN_PLACE
TAB = {"tab_width": "0.250 in", "terminal_width": "0.250 in", "wire": "16 AWG"}
SOLID = {"wire": "16 AWG solid"}
STRIP = {"wire": ["18 AWG"], "style": "closed", "barrel_length": "6.5 mm"}
RING = {"stud": "M6", "wire": "14 AWG", "hole": "6.5 mm"}
PULL = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}


def verdict(name, given, **changed):
    typed = {n: v for n, v in (given | changed).items() if v is not None}
    return wirecalc.run(name, **typed).verdict


# what is left out: the twin is the whole set of readings, which passes
WHOLE = {
    "splice": BUTT,
    "tab": TAB | {"current": "7 A"},
    "heat-rating": IN_PLACE,
    "strip": STRIP | {"stripped": "7.5 mm"},
    "ring": RING,
    "pull": PULL,
}
ASKED = [
    ("splice", "place_temperature"),
    ("splice", "wire_temperature"),
    ("splice", "terminal_temperature"),
    ("tab", "terminal_width"),
    ("heat-rating", "place_temperature"),
    ("heat-rating", "wire_temperature"),
    ("heat-rating", "terminal_temperature"),
    ("strip", "barrel_length"),
    ("ring", "hole"),
]


@ROOM_OF_20_K
@TEMPERATURE_TEST_UL_310
@source(
    "UL 486A, wire connectors for copper conductors",
    "8th edition, 1991/1995",
    "section 12, pull-out test values",
    seen="three independent reprints from 26 to 10 AWG",
)
@pytest.mark.parametrize("name", WHOLE)
def test_the_whole_set_of_readings_passes(name):
    assert verdict(name, WHOLE[name]) == "pass"


@practice("what a careful technician does not let a joint go without")
@pytest.mark.parametrize(("name", "left_out"), ASKED)
def test_a_check_of_every_such_job_that_was_left_out_cannot_be_told(name, left_out):
    finding = wirecalc.run(name, **{n: v for n, v in WHOLE[name].items() if n != left_out})
    assert finding.verdict == "cannot tell"
    assert any(left_out in c.criterion.needs for c in finding.criteria)
    assert verdict(name, WHOLE[name] | {left_out: "unknown"}) == "cannot tell"


@CORD_400_5_A_COLUMN_B
@TEMPERATURE_TEST_UL_310
@source(
    "IEC 61210, flat quick-connect terminations",
    "2010, as JIS C 2809:2014",
    "clause 4",
    seen="two copies, the 9.5 mm tab one",
)
@practice("the maker's listing of a connector decides")
@source("JEM-TR 162", "2006", "L1 and L2 of a closed barrel", seen="one copy in a handbook")
@practice("200 C beside a heater that was not measured, 40 C as a warm room")
@practice("a hole to one and a half times the stud")
@pytest.mark.parametrize(
    ("about", "name", "given", "expected", "source"),
    [
        ("a strip of 60 mm", "strip", STRIP | {"stripped": "60 mm"}, "fail", JEM),
        # 6.5 + 2 + 1 = 9.5
        ("strands 3 mm out", "strip", STRIP | {"stripped": "10 mm"}, "fail", JEM),
        (
            "a strip of 60 mm for a twist-on",
            "strip",
            {"wire": ["14 AWG"] * 2, "style": "twist-on", "stripped": "60 mm"},
            "fail",
            "how-to text on twist-on connectors (one copy): 25.4 mm at most",
        ),
        (
            "1.0 mm2 on a tab at 60 A",
            "tab",
            TAB | {"wire": "1.0 mm2", "current": "60 A"},
            "fail",
            CORD,
        ),
        (
            "24 AWG on a tab at 30 A",
            "tab",
            TAB | {"wire": "24 AWG", "current": "30 A"},
            "fail",
            UL_310,
        ),
        (
            "35 A on a wide tab without a published current",
            "tab",
            TAB
            | {"tab_width": "0.375 in", "terminal_width": "0.375 in"}
            | {"wire": "10 AWG", "current": "35 A"},
            "fail",
            CORD,
        ),
        (
            "solid wire in a push-on",
            "tab",
            TAB | SOLID | {"current": "7 A"},
            "cannot tell",
            PRACTICE,
        ),
        ("solid wire on a stud", "ring", RING | {"wire": "14 AWG solid"}, "cannot tell", PRACTICE),
        (
            "a female for a thickness that no tab of the width has",
            "tab",
            TAB | {"current": "7 A", "terminal_thickness": "0.5 mm"},
            "cannot tell",
            "IEC 61210:2010, as JIS C 2809:2014, clause 4",
        ),
        ("solid wire in a ring", "pull", PULL | {"wire": "18 AWG solid"}, "cannot tell", PRACTICE),
        (
            "solid wire in a ring for stranded",
            "pull",
            PULL | {"wire": "18 AWG solid", "listed_for": "stranded"},
            "fail",
            "the maker's listing",
        ),
        (
            "a heated place that was not measured",
            "heat-rating",
            {"near_heater": "yes", "wire_temperature": "250 C", "terminal_temperature": "250 C"},
            "cannot tell",
            PRACTICE,
        ),
        (
            "a place beside a heater, read cold",
            "heat-rating",
            IN_PLACE | {"near_heater": "yes", "place_temperature": "20 C"},
            "cannot tell",
            PRACTICE,
        ),
        (
            "a ring for a stud two sizes larger",
            "ring",
            RING | {"stud": "M4", "hole": "6.5 mm"},
            "fail",
            PRACTICE,
        ),
        (
            "a tab thinner than any published one of its width",
            "tab",
            TAB | {"current": "7 A", "tab_thickness": "0.5 mm"},
            "cannot tell",
            "IEC 61210:2010, as JIS C 2809:2014, clause 4",
        ),
    ],
    ids=lambda v: v if isinstance(v, str) and " " in v else "",
)
def test_a_danger_is_not_let_go(about, name, given, expected, source):
    assert verdict(name, given) == expected, (about, source)


@source("NASA-STD-8739.4", "Change 6, 2011", "10.1.7 b, insulation clearance", seen="two copies")
@TEMPERATURE_TEST_UL_310
@source(
    "UL 486A, wire connectors for copper conductors",
    "8th edition, 1991/1995",
    "section 12, pull-out test values",
    seen="three independent reprints from 26 to 10 AWG",
)
@source("UL 486E", "as reprinted 2015", "Table 22", seen="one reprint")
@practice("the maker's listing of a connector decides")
@ROOM_OF_20_K
@pytest.mark.parametrize(
    ("about", "name", "given", "source"),
    [
        ("a strip of 8.5 mm", "strip", STRIP | {"stripped": "8.5 mm"}, "NASA-STD-8739.4, 10.1.7 b"),
        ("1.0 mm2 at 5 A", "tab", TAB | {"wire": "1.0 mm2", "current": "5 A"}, UL_310),
        ("stranded wire in a ring", "pull", PULL, "UL 486A, 8th edition"),
        (
            "solid wire in a ring that is listed for it",
            "pull",
            PULL | {"wire": "18 AWG solid", "listed_for": "solid"},
            "the maker's listing",
        ),
        (
            "solid wire in a clamp",
            "pull",
            PULL | {"terminal": "clamp", "wire": "18 AWG solid"},
            "UL 486E",
        ),
        (
            "a heated place that was measured",
            "heat-rating",
            {"near_heater": "yes", "place_temperature": "180 C"}
            | {"wire_temperature": "250 C", "terminal_temperature": "250 C"},
            PRACTICE,
        ),
        (
            "a tab of the published thickness",
            "tab",
            TAB | {"current": "7 A", "tab_thickness": "0.8 mm"},
            "IEC 61210",
        ),
        (
            "an odd tab and the female that is made for it",
            "tab",
            TAB | {"current": "7 A", "tab_thickness": "0.5 mm", "terminal_thickness": "0.5 mm"},
            "the maker's marking",
        ),
    ],
    ids=lambda v: v if isinstance(v, str) and " " in v else "",
)
def test_the_twin_without_the_danger_passes(about, name, given, source):
    assert verdict(name, given) == "pass", (about, source)


# Giving what lies inside its limits: an optional reading never lowers a pass
MORE = [
    ("splice", {"current": "8 A"}),  # no current is assigned to 16 AWG; its cord carries 13 A
    ("splice", {"circuit_voltage": "120 V"}),
    ("splice", {"circuit_voltage": "240 V", "terminal_voltage": "300 V"}),
    ("splice", {"insulation_diameter": "2.4 mm"}),
    ("splice", {"insulation_diameter": "2.4 mm", "insulation_limit": "3.4 mm"}),
    ("splice", {"wire_limit": "2"}),
    ("splice", {"listed_for": "either"}),
    ("splice", {"tab_width": "0.250 in"}),
    ("splice", {"connector": "push-on", "tab_width": "0.250 in", "current": "8 A"}),
    ("splice", {"connector": "ring", "current": "8 A"}),
    ("splice", {"terminal_voltage": "300 V"}),
    ("splice", {"insulation_limit": "3.4 mm"}),
    ("tab", {"terminal_thickness": "0.8 mm"}),
    ("tab", {"listed_for": "stranded"}),
    ("ring", {"listed_for": "stranded"}),
    ("tab", {"tab_thickness": "0.032 in"}),
    ("tab", {"tab_thickness": "0.8 mm", "terminal_thickness": "0.8 mm"}),
    ("heat-rating", {"near_heater": "yes"}),
    ("heat-rating", {"near_heater": "no"}),
    ("heat-rating", {"terminal_material": "vinyl"}),
    ("heat-rating", {"sleeve_temperature": "125 C"}),
    ("heat-rating", {"sleeve_material": "PVC tubing"}),
    ("strip", {"window_length": "2 mm"}),
    ("ring", {"stud_terminals": "4"}),
    ("pull", {"listed_for": "stranded"}),
    ("pull", {"pull_standard": "ul-486a"}),
]


@CORD_400_5_A_COLUMN_B
@TEMPERATURE_TEST_UL_310
@ROOM_OF_20_K
@pytest.mark.parametrize(("name", "more"), MORE, ids=str)
def test_knowing_more_never_lowers_a_pass(name, more):
    assert verdict(name, WHOLE[name] | more) == "pass"


@CORD_400_5_A_COLUMN_B
@pytest.mark.parametrize(
    ("amps", "expected"),
    # NEC Table 400.5(A)(1), column B: 16 AWG carries 13 A; UL 486 assigns a 16 AWG connector none
    [("13 A", "pass"), ("13.1 A", "fail")],
)
def test_a_current_above_that_of_the_wire_fails_where_none_is_assigned(amps, expected):
    assert verdict("splice", BUTT, current=amps) == expected


@TEMPERATURE_TEST_UL_310
@CORD_400_5_A_COLUMN_B
@memory("IEC 60335-1, Table 11, least cross-section of supply cords")
@pytest.mark.parametrize(
    ("wire", "amps", "expected"),
    [
        # UL 310 test current of 16 AWG on 6.3 mm: 10 A; its cord carries 13 A (NEC 400.5)
        ("16 AWG", "8 A", "pass"),
        ("16 AWG", "8.1 A", "marginal"),  # over 80 %: common practice, no source
        ("16 AWG", "10.1 A", "marginal"),
        ("16 AWG", "13 A", "marginal"),
        ("16 AWG", "13.1 A", "fail"),
        # 10 AWG: 24 A is the greatest of the width, though a cord of 10 AWG carries 30 A
        ("10 AWG", "24 A", "marginal"),
        ("10 AWG", "24.1 A", "fail"),
        # metric wire counts as the next thinner gauge: 1.5 mm2 is more than 16 AWG (1.31 mm2)
        ("1.5 mm2", "8 A", "pass"),
        ("1.5 mm2", "16.1 A", "fail"),  # IEC 60335-1 Table 11, from memory: 1.5 mm2 to 16 A
        ("17 AWG", "5.6 A", "pass"),  # as 18 AWG, 80 % of 7 A
        ("17 AWG", "12.1 A", "fail"),  # a cord of 17 AWG carries 12 A
        # 20 AWG has no current in the table of cords: its cycling current in UL 310, 8 A
        ("20 AWG", "8 A", "marginal"),
        ("20 AWG", "8.1 A", "fail"),
    ],
)
def test_above_the_test_current_of_a_tab(wire, amps, expected):
    assert verdict("tab", TAB, wire=wire, current=amps) == expected


@TEMPERATURE_TEST_UL_310
@CORD_400_5_A_COLUMN_B
def test_a_fail_on_a_tab_speaks_of_the_limit_and_not_of_care():
    finding = wirecalc.run("tab", **TAB, current="14 A")
    assert "80 %" not in (finding.decided_by.because or "")
    between = wirecalc.run("tab", **TAB, current="12 A")
    assert "maker's sheet" in between.decided_by.action
    assert between.verdict is Verdict.MARGINAL


@independent("the law of ASTM B258, 5 mil x 92^((36 - n) / 39), by hand")
def test_a_metric_wire_says_as_which_gauge_it_was_taken():
    for name, given in (("tab", TAB), ("splice", BUTT | {"barrel": "16-14 AWG"})):
        wire = "1.5 mm2" if name == "tab" else ["1.5 mm2"]
        finding = wirecalc.run(name, **given | {"wire": wire, "current": "8 A"})
        said = {a.name: a.text for a in finding.answers}
        assert said["current judged as"] == "16 AWG"


@source(
    "Crimp inspection sheets of terminal makers",
    "two makers, undated",
    "no strand nicked or missing",
    seen="two copies",
)
def test_strands_that_pass_are_not_told_to_be_cut_back():
    whole = wirecalc.run("strands", wire="26x30 AWG", cut_strands="0", nicked_strands="0")
    assert whole.verdict == "pass"
    assert "crimp-02" not in {c.key for c in whole.cautions}
    nicked = wirecalc.run("strands", wire="26x30 AWG", cut_strands="0", nicked_strands="1")
    assert nicked.verdict == "fail"
    assert "crimp-02" in {c.key for c in nicked.cautions}


@ROOM_OF_20_K
def test_a_part_of_the_stock_is_not_blamed_for_the_wire(tmp_path):
    # common practice, no source: 20 K above the place; a 105 C wire in a place of 150 C
    stock = tmp_path / "stock.csv"
    stock.write_text("part,connector,barrel,temperature_C\nhot,ring,16-14 AWG,250\n")
    given = {"wire": ["14 AWG"], "connector": "ring", "place_temperature": "150 C"}
    cold = wirecalc.run("choose", **given, wire_temperature="105 C", stock=str(stock))
    assert cold.verdict == "fail"
    assert cold.decided_by.criterion.name == "temperature rating of the wire"
    assert "wire" in cold.decided_by.action
    assert cold.criterion("something in stock fits").verdict == "pass"
    assert not [a for a in cold.answers if a.name == "buy"]
    hot = wirecalc.run("choose", **given, wire_temperature="200 C", stock=str(stock))
    assert hot.verdict == "pass"


@ROOM_OF_20_K
def test_the_part_that_fails_is_the_part_that_next_names():
    # 20 K above the place: common practice, no source
    given = {"place_temperature": "150 C", "terminal_temperature": "250 C"}
    wire = wirecalc.run("heat-rating", **given, wire_temperature="105 C")
    assert wire.decided_by.action == "use a wire rated for the place and 20 K more"
    given["sleeve_temperature"] = "105 C"
    sleeve = wirecalc.run("heat-rating", **given, wire_temperature="200 C")
    assert sleeve.decided_by.action == "use a sleeve rated for the place and 20 K more"


@CORD_400_5_A_COLUMN_B
def test_no_part_is_bought_for_a_current_that_the_wire_does_not_carry(tmp_path):
    # NEC Table 400.5(A)(1), column B: a cord of 18 AWG carries 10 A
    stock = tmp_path / "stock.csv"
    stock.write_text("part,connector,barrel,tab_in,temperature_C\np,push-on,22-18 AWG,0.250,105\n")
    given = {"wire": ["18 AWG"], "connector": "push-on", "tab_width": "0.250 in"}
    given |= {"wire_temperature": "105 C", "place_temperature": "40 C", "stock": str(stock)}
    over = wirecalc.run("choose", **given, current="10.1 A")
    assert over.verdict == "fail"
    assert over.decided_by.criterion.name == "current of the wire"
    assert "thicker wire" in over.decided_by.action
    assert not [a for a in over.answers if a.name == "buy"]
    assert wirecalc.run("choose", **given, current="5.6 A").verdict == "pass"


@practice("nothing of a wire that replaces another may be lower")
def test_a_wire_that_is_no_lower_is_not_told_to_be_left():
    given = {f"{who}_wire_temperature": "105 C" for who in ("old", "new")}
    given |= {f"{who}_wire_voltage": "600 V" for who in ("old", "new")}
    given |= {"old_oil_resistant": "no", "old_flame_rated": "no", "old_wire": "16 AWG"}
    same = wirecalc.run("substitute", **given, new_wire="16 AWG")
    thinner = wirecalc.run("substitute", **given, new_wire="18 AWG")
    assert (same.verdict, thinner.verdict) == ("pass", "fail")
    assert "sub-01" not in {c.key for c in same.cautions}
    assert "sub-01" in {c.key for c in thinner.cautions}


@practice("connectors are marked 300 V or 600 V")
@pytest.mark.parametrize(
    ("volts", "expected"),
    # unmarked connectors: 300 V and 600 V are the usual markings, common practice, no source
    [("300 V", "pass"), ("301 V", "cannot tell"), ("600 V", "cannot tell"), ("601 V", "fail")],
)
def test_an_unmarked_connector_is_good_for_the_usual_volts(volts, expected):
    assert verdict("splice", BUTT, circuit_voltage=volts) == expected


@ROOM_OF_20_K
def test_what_fails_in_a_splice_is_named_for_the_place():
    # 20 K above the place: common practice, no source
    finding = wirecalc.run("splice", **BUTT | {"wire_temperature": "75 C"})
    assert finding.decided_by.action == "use a wire rated for the place and 20 K more"


@source("An airframe maker's standard wiring practices", "2015", "20-30-11 step 6", seen="one copy")
@pytest.mark.parametrize(("stripped", "expected"), [("11.0 mm", "marginal"), ("11.1 mm", "fail")])
def test_at_a_stop_all_bare_wire_lies_behind_the_barrel(stripped, expected):
    # 8 mm deep and 3.05 mm bare behind it
    given = {"wire": ["14 AWG"], "style": "stop", "barrel_length": "8 mm", "stripped": stripped}
    assert verdict("strip", given) == expected, AIRFRAME


@source("JEM-TR 162", "2006", "L1 and L2 of a closed barrel", seen="one copy in a handbook")
@independent("barrel + strands past it + bare wire behind it, by hand")
@pytest.mark.parametrize(
    ("wire", "style", "most"),
    [
        ("22 AWG", "closed", 9.5),  # 6.5 + 2 + 1; thinner than 1.5 mm2 has no more room
        ("18 AWG", "closed-insulated", 9.5),
        ("18 AWG", "ferrule", 9.5),
        ("6 mm2", "closed", 9.5),
        ("8 AWG", "closed", 9.5),  # 8.4 mm2, between two rows
        ("10 mm2", "closed", 10.5),  # 6.5 + 2 + 2
        ("35 mm2", "closed", 10.5),
        ("50 mm2", "closed", 12.5),  # 6.5 + 3 + 3
        ("120 mm2", "closed", 14.5),  # 6.5 + 4 + 4
        ("18 AWG", "open", 10.0),  # 6.5 + 2 + the window of 1.5 mm
    ],
)
def test_bare_wire_that_no_crimp_leaves(wire, style, most):
    given = {"wire": [wire], "style": style, "barrel_length": "6.5 mm"}
    given |= {"window_length": "1.5 mm"} if style == "open" else {}
    assert verdict("strip", given, stripped=f"{most - 0.05} mm") == "marginal", JEM
    assert verdict("strip", given, stripped=f"{most + 0.05} mm") == "fail", JEM

"""Another wire in place of the old one: equal or better on every line (common practice)."""

from __future__ import annotations

import pytest

import wirecalc

from .records import independent, practice, source

SAME = {
    "old_wire": "16 AWG",
    "new_wire": "16 AWG",
    "old_wire_temperature": "105 C",
    "new_wire_temperature": "105 C",
    "old_wire_voltage": "600 V",
    "new_wire_voltage": "600 V",
    "old_oil_resistant": "yes",
    "new_oil_resistant": "yes",
    "old_flame_rated": "yes",
    "new_flame_rated": "yes",
}


def verdicts(**changed):
    given = {k: v for k, v in (SAME | changed).items() if v is not None}
    finding = wirecalc.run("substitute", **given)
    return finding.verdict, {c.criterion.name: c.verdict for c in finding.criteria}


def not_passed(**changed):
    verdict, lines = verdicts(**changed)
    bad = {name: str(v) for name, v in lines.items() if v != "pass"}
    assert (verdict == "pass") == (not bad)
    return bad


@practice("a wire is replaced by one that is equal or better on every line")
def test_the_same_wire_passes():
    assert not_passed() == {}


@practice("a wire is replaced by one that is equal or better on every line")
@independent("areas by ASTM B258's law: 16 AWG 1.309 mm2, under 1.5 and over 1 mm2")
@pytest.mark.parametrize(
    ("changed", "line"),
    [
        ({"new_wire": "18 AWG"}, "size of the wire"),
        ({"new_wire": "1 mm2"}, "size of the wire"),  # 1.309 mm2 is 16 AWG (ASTM B258)
        ({"old_wire": "1.5 mm2"}, "size of the wire"),  # 16 AWG has 13 % less
        ({"new_wire": "16 AWG solid"}, "strands of the wire"),
        ({"new_wire": "12 AWG aluminum"}, "metal of the wire"),
        ({"new_wire": "12 AWG copper-clad"}, "metal of the wire"),
        ({"old_wire": "16 AWG tinned"}, "coating of the wire"),
        ({"old_wire": "16 AWG nickel-plated", "new_wire": "16 AWG tinned"}, "coating of the wire"),
        ({"new_wire_temperature": "90 C"}, "temperature rating"),
        ({"new_wire_voltage": "300 V"}, "voltage rating"),
        ({"new_oil_resistant": "no"}, "oil and chemicals"),
        ({"new_flame_rated": "no"}, "flame rating"),
    ],
)
def test_one_lower_line_fails_alone(changed, line):
    assert not_passed(**changed) == {line: "fail"}


@practice("a wire is replaced by one that is equal or better on every line")
@independent("65 strands of 6.3 mil are 2580 cmil, of the 2583 of 16 AWG")
@pytest.mark.parametrize(
    "changed",
    [
        {"new_wire": "14 AWG"},
        {"new_wire": "1.5 mm2"},
        {"old_wire": "16 AWG solid"},
        {"old_wire": "16 AWG solid", "new_wire": "16 AWG solid"},
        {"new_wire": "16 AWG tinned"},
        {"old_wire": "16 AWG tinned", "new_wire": "16 AWG nickel-plated"},
        {"old_wire": "16 AWG", "new_wire": "26x30 AWG"},  # a standard build of 16 AWG
        {"old_wire": "16 AWG", "new_wire": "65x34 AWG"},  # 2580 of 2583 cmil
        {"new_wire_temperature": "200 C", "new_wire_voltage": "1000 V"},
        {"old_oil_resistant": "no", "new_oil_resistant": "no"},
        {"old_oil_resistant": None},  # the new one has it, whatever the old one had
        {"old_flame_rated": "no", "new_flame_rated": None},
    ],
)
def test_equal_or_better_passes(changed):
    assert not_passed(**changed) == {}


@practice("what is not known of either wire is looked up, not guessed")
@pytest.mark.parametrize(
    ("changed", "line", "needs"),
    [
        ({"old_wire_temperature": None}, "temperature rating", ("old_wire_temperature",)),
        ({"new_wire_voltage": None}, "voltage rating", ("new_wire_voltage",)),
        (
            {"old_wire_voltage": None, "new_wire_voltage": None},
            "voltage rating",
            ("old_wire_voltage", "new_wire_voltage"),
        ),
        ({"new_oil_resistant": None}, "oil and chemicals", ("new_oil_resistant",)),
        (
            {"old_flame_rated": None, "new_flame_rated": "no"},
            "flame rating",
            ("old_flame_rated",),
        ),
    ],
)
def test_what_is_not_known_cannot_be_told(changed, line, needs):
    assert not_passed(**changed) == {line: "cannot tell"}
    given = {k: v for k, v in (SAME | changed).items() if v is not None}
    assert wirecalc.run("substitute", **given).criterion(line).criterion.needs == needs


@source(
    "Stranded-wire charts of wire makers",
    "undated",
    "16 AWG as 7/24, 2828 cmil, and as 19/29, 2426 cmil",
    seen="two or three compared",
)
@practice("another build of the gauge that has less metal is advised against")
def test_another_build_of_the_gauge_with_less_metal_is_marginal():
    changed = {"old_wire": "7x24 AWG", "new_wire": "19x29 AWG"}
    assert not_passed(**changed) == {"area of the same gauge": "marginal"}


@independent("law of the gauge: the diameter falls with the number")
def test_a_larger_awg_number_is_named_as_thinner():
    _, lines = verdicts(new_wire="18 AWG")
    assert lines["size of the wire"] == "fail"
    finding = wirecalc.run("substitute", **SAME | {"new_wire": "18 AWG"})
    assert "larger AWG number is a thinner wire" in finding.criterion("size of the wire").reason


@practice("a wire is replaced by one that is equal or better on every line")
def test_the_lines_are_listed_and_nothing_is_lost():
    finding = wirecalc.run("substitute", old_wire="16 AWG", new_wire="18 AWG")
    (lines,) = finding.listings
    assert [row[0] for row in lines.rows] == [
        *("size", "strands", "metal", "coating", "temperature rating", "voltage rating"),
        *("oil and chemicals", "flame rating"),
    ]
    assert [row[3] for row in lines.rows] == ["LOWER", *["not lower"] * 3, *["not known"] * 4]
    assert finding.verdict == "fail"


# C and V
STYLES = {"1007": (80, 300), "1015": (105, 600), "3173": (125, 600), "3321": (150, 600)}
STYLES |= {"1331": (150, 600), "3135": (200, 600), "3122": (200, 300), "10313": (200, 600)}
# which may stand for which by both numbers, read off by hand: a row is the style that was there
MAY = {
    "1007": "1007 1015 3173 3321 1331 3135 3122 10313",
    "1015": "1015 3173 3321 1331 3135 10313",
    "3173": "3173 3321 1331 3135 10313",
    "3321": "3321 1331 3135 10313",
    "1331": "3321 1331 3135 10313",
    "3135": "3135 10313",
    "3122": "3135 3122 10313",
    "10313": "3135 10313",
}


@source(
    "UL 758, styles 1007, 1015, 1331, 3122, 3135, 3173, 3321, 10313",
    "edition not stated",
    "wire makers' style pages and selection guides: C and V",
    seen="one copy each",
)
@practice("a wire is replaced by one that is equal or better on every line")
@independent("rows read off by hand: both numbers no lower")
@pytest.mark.parametrize("old", STYLES)
@pytest.mark.parametrize("new", STYLES)
def test_styles_of_appliance_wire_in_place_of_each_other(old, new):
    ratings = {}
    for who, style in (("old", old), ("new", new)):
        celsius, volts = STYLES[style]
        ratings |= {f"{who}_wire_temperature": f"{celsius} C", f"{who}_wire_voltage": f"{volts} V"}
    verdict, _ = verdicts(**ratings)
    assert verdict == ("pass" if new in MAY[old].split() else "fail")

"""Wires in a barrel: circular-mil sums, standard strandings, temperature and current."""

from __future__ import annotations

import pint
import pytest

import wirecalc
from wirecalc import tables
from wirecalc.trade import conductors
from wirecalc.typed.wires import CMIL_PER_MM2, read_wire

from .records import independent, memory, practice, source
from .seen import CORD_400_5_A_COLUMN_B, ROOM_OF_20_K, TEMPERATURE_TEST_UL_310

GUIDE = "a component maker's circular-mil guide, undated, worked strandings (one copy)"
SUMS = f"{GUIDE}; NASA-STD-8739.4 Change 6, 19.11; magnet-wire splice sheets, undated (one copy)"
CHARTS_OF_MAKERS = "wire makers' stranded-wire charts, undated; a chart of ASTM classes K and M"
UL_486 = "UL 486 series, assigned current of a one-wire connector (one engineering guide, undated)"
UL_310 = "UL 310, 7th edition, temperature test (22 to 16 AWG two documents, thicker one)"
CORD = "NEC 2011 to 2023, Table 400.5(A)(1), column B (a cord maker's page)"
OWN_GAUGE = "a barrel named by gauges takes those gauges: the maker's marking; ASTM B258 for areas"

# a place and ratings that are good: 20 K of room, common practice, no source
COOL = {"wire_temperature": "105 C", "terminal_temperature": "105 C", "place_temperature": "60 C"}


def law_mils(gauge):
    """Return the diameter of ASTM B258 in mils, with no help of the program."""
    return 5.0 * 92 ** ((36 - int(gauge)) / 39)


@source(
    "A component maker's circular-mil guide",
    "undated",
    "worked strandings and sums",
    seen="one copy",
)
@pytest.mark.parametrize(
    ("wire", "cmil"),
    [
        # a component maker's circular-mil guide: strands x (diameter in mils) squared
        pytest.param("16x10 mil", 1600, id="18 AWG of 16 strands of 10 mil"),
        pytest.param("19x11.3 mil", 2426, id="16 AWG of 19 strands of 11.3 mil"),
        pytest.param("16x0.010 in", 1600, id="the same in inches"),
        pytest.param("16x0.254 mm", 1600, id="the same in mm"),
    ],
)
def test_circular_mils_of_counted_strands(wire, cmil):
    assert round(read_wire(wire).area_cmil) == cmil, GUIDE


@source(
    "A component maker's circular-mil guide",
    "undated",
    "worked strandings and sums",
    seen="one copy",
)
@source("NASA-STD-8739.4", "Change 6, 2011", "19.11, sum of circular mils", seen="one copy")
@pytest.mark.parametrize(
    ("wires", "total"),
    [
        # printed sums: component maker's circular-mil guide, NASA-STD-8739.4 19.11 (Change 6),
        # magnet-wire splice sheets
        (["16x10 mil", "19x11.3 mil"], 4026),
        (["642 cmil", "1020 cmil"], 1662),
        (["1620 cmil", "1620 cmil"], 3240),
        (["64x10 mil", "40x10 mil"], 10400),
        (["240x10 mil", "160x10 mil"], 40000),
    ],
    ids=lambda v: str(v) if isinstance(v, int) else None,
)
def test_sum_of_circular_mils(wires, total):
    finding = wirecalc.run("splice", wire=wires, barrel="400-60000 cmil")
    figure = finding.figure("copper in the barrel").figure
    assert figure.unit == "cmil"
    assert round(figure.value) == total, SUMS
    metric = {unit: value for value, unit in figure.also}["mm2"]
    assert metric == pytest.approx(total * 5.067075e-4, rel=3e-4)  # pi/4 x (0.0254 mm)^2


@source(
    "NEC (NFPA 70), Chapter 9",
    "edition not stated",
    "Table 8, areas and diameters",
    seen="a reprint",
)
@pytest.mark.parametrize(
    ("wires", "total", "slack"),
    [
        # the same sums by gauge; NEC Chapter 9 Table 8 rounds each area to 10 cmil
        (["18 AWG", "18 AWG"], 3240, 10),
        (["14 AWG solid", "16 AWG stranded"], 6690, 10),
        (["22 AWG", "20 AWG"], 1662, 0.5 + 5),
    ],
    ids=lambda v: None if isinstance(v, list) else str(v),
)
def test_sum_of_gauges_against_sums_of_printed_areas(wires, total, slack):
    finding = wirecalc.run("splice", wire=wires, barrel="400-60000 cmil")
    assert abs(finding.figure("copper in the barrel").figure.value - total) <= slack


@independent("the pint library's own registry")
def test_a_circular_mil_against_the_pint_library():
    theirs = pint.UnitRegistry().Quantity(1, "mm**2").to("circular_mil").magnitude
    assert theirs == pytest.approx(CMIL_PER_MM2, rel=1e-9)


# Standard strandings whose copper leaves their own gauge by more than 8 %: seven strands hold
# 9.5 % more, nineteen up to 17.6 % more, and 37 of 26 AWG 9.4 % less than 10 AWG
OUTSIDE_8_PERCENT = {("24", "7/32"), ("22", "7/30"), ("20", "7/28"), ("18", "7/26"), ("16", "7/24")}
OUTSIDE_8_PERCENT |= {("14", "7/22"), ("12", "7/20"), ("10", "7/18"), ("24", "19/36")}
OUTSIDE_8_PERCENT |= {("22", "19/34"), ("20", "19/32"), ("18", "19/30"), ("10", "37/26")}

# Wire makers' stranding charts, ASTM classes K and M: gauge, then strands/strand gauge
CHARTS = """
24 7/32 10/34 19/36 41/40
22 7/30 16/34 19/34 26/36
20 7/28 10/30 19/32 26/34 41/36
18 7/26 16/30 19/30 41/34 65/36
16 7/24 19/29 26/30 65/34
14 7/22 19/27 41/30 104/34
12 7/20 19/25 65/30 168/34
10 7/18 19/23 37/26 49/27 104/30 105/30 259/34
"""
STRANDINGS = [
    (line.split()[0], build) for line in CHARTS.strip().splitlines() for build in line.split()[1:]
]
every_stranding = pytest.mark.parametrize(("gauge", "build"), STRANDINGS)


def share_of_gauge(gauge, build, strand_mils):
    """Return strands x strand diameter squared over the area of the gauge."""
    count, strand = build.split("/")
    return int(count) * strand_mils(strand) ** 2 / law_mils(gauge) ** 2


def rounded_mils(gauge):
    """Return the strand diameter as the charts print it, to 0.1 mil."""
    return round(law_mils(gauge), 1)


def written(count, strand):
    """Write a wire by its strands; 22 AWG and thicker, which may be wires, by their diameter."""
    return f"{count}x{strand} AWG" if int(strand) > 22 else f"{count}x{law_mils(strand):.12g} mil"


@source(
    "Wire makers' stranded-wire charts",
    "undated",
    "builds of 24 to 10 AWG",
    seen="two or three charts compared",
)
def test_the_charts_are_held_whole():
    held = {(r.text("awg"), r.text("construction")) for r in tables.load("strandings").rows}
    assert held == set(STRANDINGS), CHARTS_OF_MAKERS
    assert len(STRANDINGS) == 37


@source(
    "Wire makers' stranded-wire charts",
    "undated",
    "builds of 24 to 10 AWG",
    seen="two or three charts compared",
)
@independent("the law of ASTM B258, 5 mil x 92^((36 - n) / 39), by hand")
@every_stranding
def test_copper_of_a_standard_stranding_against_its_gauge(gauge, build):
    off = abs(share_of_gauge(gauge, build, law_mils) - 1)
    assert (off > 0.08) == ((gauge, build) in OUTSIDE_8_PERCENT), CHARTS_OF_MAKERS
    assert off < 0.18
    row = tables.load("strandings").row(awg=gauge, construction=build)
    count, strand = build.split("/")
    area = int(count) * rounded_mils(strand) ** 2
    assert row.number("area_cmil") == pytest.approx(area, rel=5e-5)
    wire = read_wire(written(count, strand))
    assert wire.area_cmil == pytest.approx(int(count) * law_mils(strand) ** 2, rel=1e-9)


@source(
    "Wire makers' stranded-wire charts",
    "undated",
    "builds of 24 to 10 AWG",
    seen="two or three charts compared",
)
@every_stranding
def test_a_standard_stranding_fits_the_barrel_of_its_own_gauge(gauge, build):
    wire = f"{written(*build.split('/'))} copper"
    assert conductors.known_gauge(read_wire(wire)) == gauge
    for barrel in (f"{gauge} AWG", f"{int(gauge) + 2}-{gauge} AWG", f"{gauge}-{gauge} AWG"):
        finding = wirecalc.run("splice", wire=[wire], barrel=barrel, **COOL)
        assert finding.verdict == "pass", (barrel, CHARTS_OF_MAKERS)


@source(
    "Wire makers' stranded-wire charts",
    "undated",
    "builds of 24 to 10 AWG",
    seen="two or three charts compared",
)
@independent("a range that is typed binds as typed; edges by hand")
@pytest.mark.parametrize(
    ("wire", "barrel", "criterion"),
    [
        ("10 AWG", "16-14 AWG", "area in the barrel, upper limit"),
        ("22 AWG", "16-14 AWG", "area in the barrel, lower limit"),
        ("19x29 AWG", "22-18 AWG", "area in the barrel, upper limit"),  # it is 16 AWG
        ("7x26 AWG", "16-14 AWG", "area in the barrel, lower limit"),  # it is 18 AWG
    ],
)
def test_a_wire_of_another_gauge_does_not_fit(wire, barrel, criterion):
    finding = wirecalc.run("splice", wire=[wire], barrel=barrel, **COOL)
    assert finding.verdict == "fail", OWN_GAUGE
    assert finding.criterion(criterion).verdict == "fail"


@independent("a range that is typed binds as typed; edges by hand")
@practice("5 % of a range at either end calls for care")
@pytest.mark.parametrize(
    ("total", "verdict"),
    [
        # 2050-5180 cmil as a maker prints it; the 5 % of the span at either end (156.5 cmil) call
        # for care: common practice, no source
        ("2049 cmil", "fail"),
        ("2050 cmil", "marginal"),
        ("2206 cmil", "marginal"),
        ("2207 cmil", "pass"),
        ("5023 cmil", "pass"),
        ("5024 cmil", "marginal"),
        ("5180 cmil", "marginal"),
        ("5181 cmil", "fail"),
    ],
)
def test_a_range_typed_as_areas_binds_as_typed(total, verdict):
    finding = wirecalc.run("splice", wire=[total], barrel="2050-5180 cmil", **COOL)
    assert finding.verdict == verdict


# UL 486, assigned current of a single-conductor connector, one engineering guide
ASSIGNED = [("14", 15), ("12", 20), ("10", 30), ("8", 50), ("6", 65), ("4", 85)]


@source(
    "UL 486 series",
    "edition not stated",
    "assigned and static heating currents",
    seen="one engineering guide",
)
@pytest.mark.parametrize(("gauge", "amps"), ASSIGNED)
def test_current_against_ul_486_assigned_currents(gauge, amps):
    given = {"wire": [f"{gauge} AWG"], "barrel": f"{gauge} AWG"} | COOL
    assert wirecalc.run("splice", **given, current=f"{amps} A").verdict == "pass", UL_486
    # a higher current is assigned to some connectors of 14 to 10 AWG (bracketed in the guide)
    over = {"14": 20, "12": 25, "10": 40}.get(gauge, amps)
    if over > amps:
        between = wirecalc.run("splice", **given, current=f"{amps + 0.1} A")
        assert between.verdict == "cannot tell"
    assert wirecalc.run("splice", **given, current=f"{over + 0.1} A").verdict == "fail"


@TEMPERATURE_TEST_UL_310
@CORD_400_5_A_COLUMN_B
@pytest.mark.parametrize(
    ("tab", "current", "expected"),
    [
        # UL 310 test currents of 18 AWG, 7th edition, two copies: 7 A on 0.250 in, 4 A on 0.110 in
        # 80 % of it calls for care: common practice, no source. A cord of 18 AWG carries 10 A (NEC
        # Table 400.5(A)(1), column B), and 5 A is the greatest test current of 0.110 in.
        ("0.250 in", "5.6 A", "pass"),
        ("0.250 in", "7 A", "marginal"),
        ("6.3 mm", "7 A", "marginal"),
        ("0.250 in", "7.1 A", "marginal"),
        ("0.250 in", "10.1 A", "fail"),
        ("0.110 in", "4.1 A", "marginal"),
        ("0.110 in", "5.1 A", "fail"),
        (None, "3.2 A", "pass"),
        (None, "3.3 A", "cannot tell"),
        (None, "10 A", "cannot tell"),
        (None, "10.1 A", "fail"),
    ],
)
def test_current_of_a_push_on_terminal_against_ul_310(tab, current, expected):
    given = {"wire": ["18 AWG"], "barrel": "22-18 AWG", "connector": "push-on"} | COOL
    if tab:
        given["tab_width"] = tab
    assert wirecalc.run("splice", **given, current=current).verdict == expected, (UL_310, CORD)


@source(
    "UL 486 series",
    "edition not stated",
    "assigned and static heating currents",
    seen="one engineering guide",
)
@CORD_400_5_A_COLUMN_B
@memory("IEC 60335-1, Table 11, least cross-section of supply cords")
@practice("half of a static heating current calls for care")
@pytest.mark.parametrize(
    ("wire", "amps", "verdict"),
    [
        # UL 486 assigns no current below 14 AWG (one engineering guide); a cord of 18 AWG carries
        # 10 A, of 16 AWG 13 A (NEC Table 400.5(A)(1), column B)
        ("18 AWG", 10, "pass"),
        ("18 AWG", 10.1, "fail"),
        ("16 AWG", 13, "pass"),
        ("16 AWG", 13.1, "fail"),
        ("1.5 mm2", 13, "pass"),  # as 16 AWG
        # IEC 60335-1, Table 11, from memory to a quarter: 1.5 mm2 to 16 A
        ("1.5 mm2", 13.1, "marginal"),
        ("1.5 mm2", 16.1, "fail"),
        # 20 AWG stands in no table of cords: its static heating current is 12 A, a test current;
        # half of it calls for care (common practice, no source)
        ("20 AWG", 6, "pass"),
        ("20 AWG", 6.1, "marginal"),
        ("20 AWG", 12, "marginal"),
        ("20 AWG", 12.1, "fail"),
        # thicker than 4 AWG there is none
        ("2 AWG", 1, "cannot tell"),
    ],
)
def test_current_where_ul_486_assigns_none(wire, amps, verdict):
    given = {"wire": [wire], "barrel": "400-70000 cmil", "connector": "butt"} | COOL
    finding = wirecalc.run("splice", **given, current=f"{amps} A")
    assert finding.criterion("current in the connector").verdict == verdict, (UL_486, CORD)


@source(
    "UL 486 series",
    "edition not stated",
    "assigned and static heating currents",
    seen="one engineering guide",
)
def test_the_current_of_two_wires_is_a_note_up_to_what_one_may_carry():
    given = {"wire": ["14 AWG"] * 2, "barrel": "400-20000 cmil", "wire_limit": "3"} | COOL
    assert wirecalc.run("splice", **given, current="15 A").verdict == "pass"
    assert wirecalc.run("splice", **given, current="15.1 A").verdict == "cannot tell"
    assert wirecalc.run("splice", **given, current="20.1 A").verdict == "fail"


@source(
    "UL 310, electrical quick-connect terminals",
    "9th edition, 2014",
    "scope 1.2 and 1.3",
    seen="two documents",
)
@pytest.mark.parametrize(
    ("count", "verdict"),
    # UL 310 scope 1.2: one or two conductors, in combinations that the maker lists
    [(1, "pass"), (2, "cannot tell"), (3, "fail")],
)
def test_a_push_on_terminal_takes_two_wires_at_most(count, verdict):
    finding = wirecalc.run(
        "splice", wire=["1000 cmil"] * count, barrel="500-6000 cmil", connector="push-on", **COOL
    )
    assert finding.verdict == verdict


@ROOM_OF_20_K
@pytest.mark.parametrize(
    ("rating", "verdict"),
    [
        # 20 K above the place: common practice, no source
        ("89 C", "fail"),
        ("109 C", "fail"),
        ("110 C", "pass"),
    ],
)
def test_the_weakest_rating_decides_in_a_place_of_90_c(rating, verdict):
    for wire, terminal in ((rating, "200 C"), ("200 C", rating)):
        finding = wirecalc.run(
            "splice",
            wire=["16 AWG"],
            barrel="16-14 AWG",
            place_temperature="90 C",
            wire_temperature=wire,
            terminal_temperature=terminal,
        )
        assert finding.verdict == verdict


@source("CPSC Publication 516", "June 2011", "aluminium wire and its repair", seen="three copies")
@source(
    "UL 310, electrical quick-connect terminals",
    "9th edition, 2014",
    "scope 1.2 and 1.3",
    seen="two documents",
)
@pytest.mark.parametrize("metal", ["aluminum", "copper-clad aluminum"])
def test_aluminium_is_refused(metal):
    # CPSC Publication 516 (June 2011); UL 310 scope 1.3
    finding = wirecalc.run("splice", wire=["12 AWG", f"12 AWG {metal}"], barrel="5000-14000 cmil")
    assert finding.criterion("copper only").verdict == "fail"
    assert finding.verdict == "fail"


# UL 486 series, static heating test current of a one-wire connector, A (one engineering guide)
STATIC = {"24": 7, "22": 9, "20": 12, "18": 17, "16": 18, "14": 30, "12": 35, "10": 50}
STATIC |= {"8": 70, "6": 95, "4": 125}


@source(
    "UL 486 series",
    "edition not stated",
    "assigned and static heating currents",
    seen="one engineering guide",
)
def test_static_heating_currents_as_the_guide_has_them():
    held = {r.text("awg"): r.number("static_heating_A") for r in tables.load("joint-currents").rows}
    assert held == STATIC

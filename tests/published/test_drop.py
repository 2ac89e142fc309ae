"""Drop of a run: NEC Chapter 9 Tables 8 and 9, the AWG law, and circuits solved otherwise."""

from __future__ import annotations

import math

import numpy as np
import pytest

import wirecalc
from wirecalc import BadInput, Verdict, tables
from wirecalc.trade import wire_runs
from wirecalc.typed.wires import gauge_number, read_wire

from .records import independent, memory, practice, source
from .seen import (
    ADVICE_210_19_A,
    LOOP_BY_OHM,
    REACTANCE_TABLE_9,
    STRANDED_TABLE_8,
    VOLTS_AT_THE_LOAD,
)

# three single conductors in conduit: size, reactance in PVC or aluminium conduit, copper in PVC
# conduit, aluminium in PVC conduit
CHAPTER_9_TABLE_9 = """
14  0.058 3.1   -
12  0.054 2.0   3.2
10  0.050 1.2   2.0
8   0.052 0.78  1.3
6   0.051 0.49  0.81
4   0.048 0.31  0.51
3   0.047 0.25  0.40
2   0.045 0.19  0.32
1   0.046 0.15  0.25
1/0 0.044 0.12  0.20
2/0 0.043 0.10  0.16
3/0 0.042 0.077 0.13
4/0 0.041 0.062 0.10
"""
TABLE_9 = [line.split() for line in CHAPTER_9_TABLE_9.strip().splitlines()]
table_9 = pytest.mark.parametrize(("gauge", "x", "copper", "aluminium"), TABLE_9)
GAUGES_8 = [r.text("awg") for r in tables.load("nec-ch9-table8").where(stranding="stranded")]


def drop(**given):
    typed = {"current": "1.6 A", "nameplate_voltage": "115 V", "building_wire": "14 AWG"}
    typed |= {"run_length": "60 ft"} | given
    return wirecalc.run("drop", **{n: v for n, v in typed.items() if v is not None})


def value(finding, name):
    return finding.figure(name).figure.value


@source(
    "NEC (NFPA 70)",
    "edition not stated",
    "Chapter 9 Table 9, ac resistance and reactance in PVC conduit, 75 C, 60 Hz",
    seen="three copies",
)
@table_9
def test_table_9_is_held_as_printed(gauge, x, copper, aluminium):
    row = tables.load("nec-ch9-table9").row(awg=gauge)
    assert row.number("reactance_ohm_per_kft") == float(x)
    assert row.number("copper_pvc_ohm_per_kft") == float(copper)
    if aluminium != "-":
        assert row.number("aluminium_pvc_ohm_per_kft") == float(aluminium)


@source(
    "NEC (NFPA 70)",
    "edition not stated",
    "Chapter 9 Table 9, ac resistance and reactance in PVC conduit, 75 C, 60 Hz",
    seen="three copies",
)
@STRANDED_TABLE_8
@source(
    "NEC (NFPA 70)",
    "2011",
    "Chapter 9 Table 8, stranded aluminium, 75 C",
    seen="two copies, one without its edition",
)
@table_9
def test_table_9_against_table_8(gauge, x, copper, aluminium, half_a_digit):
    # ac resistance lies within the rounding of its two digits of dc, and 2 % above at the thick end
    row = tables.load("nec-ch9-table8").row(awg=gauge, stranding="stranded")
    pairs = {"copper_uncoated_ohm_per_kft": copper, "aluminium_ohm_per_kft": aluminium}
    for column, printed in pairs.items():
        if printed != "-":
            dc, slack = row.number(column), half_a_digit(printed)
            assert dc - slack <= float(printed) <= dc * 1.02 + slack


def awg_law(gauge, temperature, metal):
    """Return ohm/kft by ASTM B258 and the zero-resistance temperature, with none of the program.

    IACS copper 1/58 ohm mm2/m and 234.5 C; aluminium 61 % of it and 228.1 C; 2 % lay.
    """
    diameter = 0.127 * 92 ** ((36 - gauge_number(gauge)) / 39)
    zero, share = {"copper": (234.5, 1.0), "aluminium": (228.1, 0.61)}[metal]
    at_20 = 1 / 58 / share / (math.pi / 4 * diameter**2) * 304.8 * 1.02
    return at_20 * (zero + temperature) / (zero + 20)


@independent(
    "law of the gauge, copper and aluminium of the standards and 2 % of lay, with "
    "none of the program"
)
@source(
    "ASTM B258",
    "edition not stated",
    "law and areas of the gauge",
    seen="two tables and three tutorial texts",
)
@source(
    "International Annealed Copper Standard",
    "IEC 60028, edition not stated",
    "1/58 ohm mm2/m, 0.00393 per K and zero resistance at -234.5 C",
    seen="a handbook and a property table",
)
@source(
    "aluminium 1350 (ASTM B233)",
    "edition not stated",
    "61 % of copper, 0.00403 per K",
    seen="an industrial power handbook",
)
@practice("2 % of lay of a stranded wire")
@pytest.mark.parametrize("gauge", GAUGES_8)
@pytest.mark.parametrize("temperature", [20.0, 75.0])
@pytest.mark.parametrize("metal", ["copper", "aluminium"])
def test_resistance_against_the_awg_law(gauge, temperature, metal):
    wire = read_wire(f"{gauge} AWG stranded {metal}")
    ours = wire_runs.resistance_per_length(wire, temperature).ohm_per_kft
    assert ours == pytest.approx(awg_law(gauge, temperature, metal), rel=0.006)


@source(
    "wire table of solid copper at 20 C, four digits",
    "undated",
    "12, 14, 16 and 18 AWG",
    seen="three copies, of one origin likely",
)
@memory("NBS Handbook 100, 1966: 1.59, 2.52, 4.02 and 6.39 ohm/kft")
@pytest.mark.parametrize(
    ("gauge", "ohm_per_kft"), [("12", 1.588), ("14", 2.525), ("16", 4.016), ("18", 6.385)]
)
def test_resistance_at_20_c_against_a_wire_table(gauge, ohm_per_kft):
    # ours come from the three digits of NEC Chapter 9 Table 8 at 75 C
    ours = wire_runs.resistance_per_length(read_wire(f"{gauge} AWG solid"), 20.0).ohm_per_kft
    assert ours == pytest.approx(ohm_per_kft, rel=0.003)


@source(
    "International Annealed Copper Standard",
    "IEC 60028, edition not stated",
    "1/58 ohm mm2/m, 0.00393 per K and zero resistance at -234.5 C",
    seen="a handbook and a property table",
)
@source(
    "aluminium 1350 (ASTM B233)",
    "edition not stated",
    "61 % of copper, 0.00403 per K",
    seen="an industrial power handbook",
)
@independent("alpha / (1 + 55 alpha)")
def test_temperature_coefficient_is_that_of_20_c_seen_from_75_c():
    for metal, alpha in (("copper", 0.00393), ("aluminium", 0.00403)):
        assert wire_runs.ALPHA_75[metal] == pytest.approx(alpha / (1 + 55 * alpha), abs=5e-6)


@source("NEC (NFPA 70)", "edition not stated", "Chapter 9 Table 8, coated copper", seen="one copy")
def test_tinned_wire_has_the_coated_column():
    assert wire_runs.resistance_per_length(read_wire("14 AWG tinned")).ohm_per_kft == 3.26
    assert wire_runs.resistance_per_length(read_wire("14 AWG tinned")).source.copies == 1


@source(
    "ASTM B258",
    "edition not stated",
    "law and areas of the gauge",
    seen="two tables and three tutorial texts",
)
@source(
    "International Annealed Copper Standard",
    "IEC 60028, edition not stated",
    "1/58 ohm mm2/m, 0.00393 per K and zero resistance at -234.5 C",
    seen="a handbook and a property table",
)
@practice("2 % of lay of a stranded wire")
@independent("resistivity over the area, by hand")
@pytest.mark.parametrize("wire", ["13 AWG", "6 AWG solid", "41x0.254 mm"])
def test_what_table_8_does_not_list_is_computed_and_says_so(wire):
    found = wire_runs.resistance_per_length(read_wire(wire))
    assert found.source.confidence == "computed" or wire == "41x0.254 mm"  # 41 x 30 AWG is 14 AWG
    # areas of 13 and 6 AWG, and 41 wires of 0.254 mm
    area = {"13 AWG": 2.624, "6 AWG solid": 13.30}.get(wire, 41 * math.pi / 4 * 0.254**2)
    lay = 1.0 if "solid" in wire else 1.02
    by_hand = 17.241 / area * (1 + 0.00393 * 55) * 0.3048 * lay  # ohm/km and ft
    assert found.ohm_per_kft == pytest.approx(by_hand, rel=0.01)


# ohm/km: class 1 and 2 of 1.5 mm2 12.1 (tinned 12.2), class 5 13.3 (tinned 13.7); aluminium 16 mm2
# 1.91
@source(
    "IEC 60228",
    "2004",
    "Tables 1 to 3, greatest resistance at 20 C",
    seen="class 1 and 2 four copies, class 5 two, its 0.5 mm2 one",
)
@source(
    "International Annealed Copper Standard",
    "IEC 60028, edition not stated",
    "1/58 ohm mm2/m, 0.00393 per K and zero resistance at -234.5 C",
    seen="a handbook and a property table",
)
@source(
    "aluminium 1350 (ASTM B233)",
    "edition not stated",
    "61 % of copper, 0.00403 per K",
    seen="an industrial power handbook",
)
@pytest.mark.parametrize(
    ("wire", "most"),
    [
        ("1.5 mm2 solid", 12.1),
        ("1.5 mm2", 13.3),  # class 2 or 5: not said
        ("1.5 mm2 tinned", 13.7),
        ("2.5 mm2 solid", 7.41),
        ("16 mm2 aluminum", 1.91),
        ("3 mm2", 7.98 * 2.5 / 3),  # no such size: that of 2.5 mm2 by area
        ("0.4 mm2", 39.0 * 0.5 / 0.4),
        ("50 mm2", 0.780 * 25 / 50),
    ],
)
def test_a_metric_wire_has_the_most_that_iec_60228_lets_it_have(wire, most):
    for temperature in (20, 75):
        found = wire_runs.resistance_per_length(read_wire(wire), temperature)
        alpha = 0.00403 if "aluminum" in wire else 0.00393
        by_hand = most * 0.3048 * (1 + alpha * (temperature - 20))
        assert found.ohm_per_kft == pytest.approx(by_hand)
        assert "IEC 60228" in found.source.title
    assert wire_runs.least_resistance_per_length(read_wire(wire), 20).ohm_per_kft < most * 0.3048


@source(
    "IEC 60228",
    "2004",
    "Tables 1 to 3, greatest resistance at 20 C",
    seen="class 1 and 2 four copies, class 5 two, its 0.5 mm2 one",
)
@ADVICE_210_19_A
@LOOP_BY_OHM
def test_a_metric_run_passes_at_the_limit_of_its_resistance():
    # 26 m of 1.5 mm2: 2 x 0.026 x 13.3 ohm at 20 C; 3 % of 230 V is 6.9 V, 9.98 A
    metric = {"building_wire": "1.5 mm2", "run_length": "26 m", "nameplate_voltage": "230 V"}
    for current, verdict in (("9.97 A", "pass"), ("9.99 A", "marginal")):
        assert drop(**metric, current=current, conductor_temperature="20 C").verdict == verdict


@REACTANCE_TABLE_9
def test_reactance_under_14_awg_is_left_out_and_a_size_between_has_the_thinner_ones():
    # the table begins at 14 AWG, 0.058 ohm/kft; 12 AWG 0.054
    assert wire_runs.reactance_per_length(read_wire("16 AWG")) is None
    assert wire_runs.reactance_per_length(read_wire("13 AWG")).ohm_per_kft == 0.058
    assert (
        wire_runs.reactance_per_length(read_wire("4 mm2")).ohm_per_kft == 0.054
    )  # over 12 AWG, 3.31


# 2 x 60 ft x 3.14 ohm/kft and 2 x 50 ft x 4.99
@STRANDED_TABLE_8
@LOOP_BY_OHM
@pytest.mark.parametrize("length", ["60 ft", "18.288 m"])
def test_loop_is_twice_the_length_in_feet_or_metres(length):
    found = drop(run_length=length, cord="16 AWG", cord_length="15.24 m")
    assert value(found, "loop resistance of the wire") == pytest.approx(0.3768, rel=1e-9)
    assert value(found, "loop resistance of the cord") == pytest.approx(0.4990, rel=1e-9)
    assert value(found, "loop resistance") == pytest.approx(0.8758, rel=1e-9)
    shown = found.figure("length of the wire").figure
    assert (shown.value, shown.unit) == (pytest.approx(60), "ft one way")
    assert shown.also == ((pytest.approx(120), "ft loop"),)


@source(
    "NEC (NFPA 70)", "edition not stated", "Chapter 9 Table 8, solid copper, 75 C", seen="one copy"
)
@STRANDED_TABLE_8
@LOOP_BY_OHM
def test_solid_wire_of_the_same_gauge():
    # solid 14 AWG has 3.07 ohm/kft: 0.867 ohm with the cord
    found = drop(building_wire="14 AWG solid", cord="16 AWG", cord_length="50 ft")
    assert value(found, "loop resistance") == pytest.approx(0.867, abs=0.0005)


# 115 V, 0.3768 ohm: 3 % is 9.156 A
@STRANDED_TABLE_8
@ADVICE_210_19_A
@VOLTS_AT_THE_LOAD
@LOOP_BY_OHM
@pytest.mark.parametrize(
    ("current", "verdict"),
    [
        ("9.15 A", Verdict.PASS),
        ("9.16 A", Verdict.MARGINAL),
        ("15.25 A", Verdict.MARGINAL),
        ("15.27 A", Verdict.MARGINAL),
        ("20 A", Verdict.MARGINAL),  # 7.5 V of 115: a panel at the plate's volts leaves 90 %
    ],
)
def test_advice_alone_is_never_a_fail(current, verdict):
    found = drop(current=current)
    assert found.verdict is verdict
    said = found.criterion("drop while running").reason
    assert ("the advised limit" in said) == (float(current.split()[0]) > 15.26)


@STRANDED_TABLE_8
@ADVICE_210_19_A
@LOOP_BY_OHM
def test_longest_run_loses_just_3_percent():
    found = drop(current="12 A")
    longest = value(found, "longest wire for 3 %")
    assert longest == pytest.approx(0.03 * 115 / (12 * 2 * 3.14 / 1000))
    assert value(drop(current="12 A", run_length=f"{longest:.9f} ft"), "drop share") == (
        pytest.approx(3.0)
    )


@STRANDED_TABLE_8
@source(
    "NEC (NFPA 70)", "edition not stated", "Chapter 9 Table 8, solid copper, 75 C", seen="one copy"
)
@source(
    "NEC (NFPA 70)",
    "2011",
    "Chapter 9 Table 8, stranded aluminium, 75 C",
    seen="two copies, one without its edition",
)
@ADVICE_210_19_A
@LOOP_BY_OHM
@pytest.mark.parametrize(
    ("wire", "current", "smallest"),
    [
        # 200 ft, 10 A, 3.45 V: 0.8625 ohm/kft; Table 8: 10 AWG 1.24, 8 AWG 0.778
        ("14 AWG", "10 A", "8 AWG"),
        # solid: 0.764; aluminium 8 AWG 1.28, 6 AWG 0.808
        ("14 AWG solid", "10 A", "8 AWG solid"),
        ("12 AWG aluminum", "10 A", "6 AWG aluminium"),
        # 45 A: 0.1917 ohm/kft; 2 AWG 0.194, 1 AWG 0.154
        ("14 AWG", "30 A", "3 AWG"),
    ],
)
def test_smallest_wire_for_the_advice(wire, current, smallest):
    found = drop(building_wire=wire, current=current, run_length="200 ft")
    (listing,) = found.listings
    assert listing.rows[0][0] == smallest


@STRANDED_TABLE_8
@ADVICE_210_19_A
@LOOP_BY_OHM
def test_no_wire_is_named_where_none_will_do():
    found = drop(current="60 A", cord="16 AWG", cord_length="30 ft")  # the cord alone takes 18 V
    assert found.listings == ()
    with pytest.raises(KeyError):
        found.figure("longest wire for 3 %")


@STRANDED_TABLE_8
@LOOP_BY_OHM
@practice("over half of the plate's volts lost is a slip of length, current or volts")
@pytest.mark.parametrize(
    ("given", "words"),
    [
        # 12 A x 2 x 800 ft x 3.14 ohm/kft is 60.3 V, over half of 115 V
        ({"current": "12 A", "run_length": "800 ft"}, "run-length: 60.29 V would be lost"),
        ({"current": "12 A", "cord": "16 AWG", "cord_length": "500 ft"}, "cord-length: 64.4 V"),
        ({"building_wire": None, "run_length": None}, "neither a building wire nor a cord"),
        ({"other_leg_current": "5 A", "system": "two-wire"}, "no other leg"),
    ],
)
def test_what_cannot_be_is_refused(given, words):
    with pytest.raises(BadInput, match=words):
        drop(**given)


@practice("aluminium wants terminations of its own")
@source(
    "makers' installation sheets of refrigerators and washers",
    "undated",
    "sections on extension cords",
    seen="four copies",
)
def test_aluminium_in_the_wall_and_a_cord_have_their_cautions():
    keys = {c.key for c in drop(building_wire="12 AWG aluminum").cautions}
    assert "alu-01" in keys
    assert "cord-03" not in keys
    assert "cord-03" in {c.key for c in drop(cord="16 AWG", cord_length="10 ft").cautions}


# ---- circuits: the loads are currents, in phase with their volts, by nodal analysis and ngspice

TWO_WIRE = [(1.6, 6.2, 60, 50), (12.0, 0.0, 150, 0.001), (8.7, 3.3, 33, 25)]


def nodal(branches, currents, nodes):
    """Solve G v = i: branches (a, b, ohm), currents into (node), node 0 is the reference."""
    g = np.zeros((nodes + 1, nodes + 1))
    for a, b, ohm in branches:
        g[a, a] += 1 / ohm
        g[b, b] += 1 / ohm
        g[a, b] -= 1 / ohm
        g[b, a] -= 1 / ohm
    i = np.zeros(nodes + 1)
    for node, amps in currents:
        i[node] += amps
    return np.concatenate([[0.0], np.linalg.solve(g[1:, 1:], i[1:])])


@STRANDED_TABLE_8
@independent("nodal analysis, a linear system")
@pytest.mark.parametrize(("load", "other", "feet", "cord_feet"), TWO_WIRE)
def test_two_wire_drop_against_nodal_analysis(load, other, feet, cord_feet):
    wire, cord = 3.14 * feet / 1000, 4.99 * cord_feet / 1000  # one way, Table 8
    # nodes: 0 panel (the supply's volts are taken off), 1, 2 receptacle line, neutral; 3, 4 plug
    branches = [(0, 1, wire), (0, 2, wire), (1, 3, cord), (2, 4, cord)]
    v = nodal(branches, [(1, -other), (2, other), (3, -load), (4, load)], 4)
    found = drop(
        current=f"{load} A",
        other_current=f"{other} A",
        run_length=f"{feet} ft",
        cord="16 AWG",
        cord_length=f"{cord_feet} ft",
    )
    assert value(found, "drop") == pytest.approx(v[4] - v[3], rel=1e-9)
    assert value(found, "drop in the wire") == pytest.approx(v[2] - v[1], rel=1e-9)


@STRANDED_TABLE_8
@independent("ngspice, analysis of small signals")
@pytest.mark.parametrize(("load", "other", "feet", "cord_feet"), TWO_WIRE)
def test_two_wire_drop_against_ngspice(spice, load, other, feet, cord_feet):
    wire, cord = 3.14 * feet / 1000, 4.99 * cord_feet / 1000
    solved = spice(
        "V1 1 0 AC 115",
        *(f"Rl 1 2 {wire}", f"Rn 3 0 {wire}", f"Rcl 2 4 {cord}", f"Rcn 5 3 {cord}"),
        *(f"I1 4 5 AC {load}", f"I2 2 3 AC {other}"),
    )
    found = drop(
        current=f"{load} A",
        other_current=f"{other} A",
        run_length=f"{feet} ft",
        cord="16 AWG",
        cord_length=f"{cord_feet} ft",
    )
    left = abs(solved["v(4)"] - solved["v(5)"])
    assert value(found, "drop") == pytest.approx(115 - left, rel=1e-6)


THREE_WIRE = [(10.0, 0.0), (10.0, 4.0), (10.0, 10.0), (4.0, 10.0), (2.0, 16.0)]


@STRANDED_TABLE_8
@independent("nodal analysis, a linear system")
@pytest.mark.parametrize(("here", "there"), THREE_WIRE)
def test_three_wire_drop_against_nodal_analysis(here, there):
    wire = 1.98 * 100 / 1000  # 100 ft of 12 AWG one way, Table 8
    # nodes: 1 leg, 2 neutral, 3 other leg at the receptacle; legs' volts are opposite in phase
    v = nodal(
        [(0, 1, wire), (0, 2, wire), (0, 3, wire)],
        [(1, -here), (2, here - there), (3, there)],
        3,
    )
    found = drop(
        current=f"{here} A",
        other_leg_current=f"{there} A",
        system="three-wire",
        building_wire="12 AWG",
        run_length="100 ft",
    )
    assert value(found, "drop") == pytest.approx(v[2] - v[1], abs=1e-9)
    assert value(found, "drop of the other leg") == pytest.approx(v[3] - v[2], abs=1e-9)
    assert value(found, "current of the neutral") == pytest.approx(here - there)
    # of 2 and 16 A the lighter leg rises: 2 x 0.198 - 14 x 0.198 V
    assert (value(found, "drop") < 0) == (there > 2 * here)


@STRANDED_TABLE_8
@independent("ngspice, analysis of small signals")
@pytest.mark.parametrize(("here", "there"), THREE_WIRE)
def test_three_wire_drop_against_ngspice(spice, here, there):
    wire = 1.98 * 100 / 1000
    solved = spice(
        *("V1 1 0 AC 120", "V2 2 0 AC 120 180"),
        *(f"Ra 1 3 {wire}", f"Rn 4 0 {wire}", f"Rb 2 5 {wire}"),
        *(f"I1 3 4 AC {here}", f"I2 5 4 AC {there} 180"),
    )
    found = drop(
        current=f"{here} A",
        other_leg_current=f"{there} A",
        system="three-wire",
        nameplate_voltage="120 V",
        building_wire="12 AWG",
        run_length="100 ft",
    )
    left = abs(solved["v(3)"] - solved["v(4)"])
    other_leg_left = abs(solved["v(5)"] - solved["v(4)"])
    assert value(found, "drop") == pytest.approx(120 - left, abs=1e-6)
    assert value(found, "drop of the other leg") == pytest.approx(120 - other_leg_left, abs=1e-6)


@STRANDED_TABLE_8
@LOOP_BY_OHM
def test_leg_to_leg_is_the_same_as_two_wire():
    # 0.3768 ohm are 2 x 60 ft of 3.14 ohm/kft
    leg_to_leg = drop(system="three-wire", nameplate_voltage="240 V", current="20 A")
    assert value(leg_to_leg, "drop") == pytest.approx(20 * 0.3768)


@STRANDED_TABLE_8
@independent("Kirchhoff's law of the neutral, by hand")
@ADVICE_210_19_A
def test_a_load_leg_to_leg_is_not_judged_by_a_share_of_the_neutral():
    # 24 A x 400 ft x 1.24 ohm/kft (Table 8) is 11.9 V of 240: 4.96 %
    dryer = {"current": "24 A", "nameplate_voltage": "240 V", "building_wire": "10 AWG"}
    dryer |= {"run_length": "200 ft", "system": "three-wire"}
    found = drop(**dryer)
    both = drop(**dryer, other_leg_current="24 A")
    assert value(both, "drop share") == pytest.approx(value(found, "drop share"))
    assert value(found, "drop share") == pytest.approx(100 * 24 * 0.4 * 1.24 / 240)
    assert found.verdict is Verdict.MARGINAL
    # 24 A in one leg and 30 in the other (a motor from leg to neutral beside the heater), each
    # through its own 200 ft: by Kirchhoff's law (24 + 30) x 0.2 x 1.24 V
    more = drop(**dryer, other_leg_current="30 A")
    assert value(more, "drop") == pytest.approx(54 * 0.2 * 1.24)


@STRANDED_TABLE_8
@independent("Kirchhoff's law of the neutral, by hand")
@ADVICE_210_19_A
@pytest.mark.parametrize(
    ("there", "verdict"),
    # (2 x I2 - 10) A x 100 ft x 1.98 ohm/kft (Table 8) of 120 V: 3 % is 14.09 A
    [("14 A", Verdict.PASS), ("14.2 A", Verdict.MARGINAL), ("24 A", Verdict.MARGINAL)],
)
def test_the_other_leg_is_judged_too(there, verdict):
    three = {"system": "three-wire", "nameplate_voltage": "120 V", "building_wire": "12 AWG"}
    found = drop(**three, run_length="100 ft", current="10 A", other_leg_current=there)
    judged = found.criterion("drop of the other leg")
    assert judged.verdict is found.verdict is verdict
    ohm = 0.198
    share = 100 * (2 * float(there.split()[0]) - 10) * ohm / 120
    assert judged.criterion.actual == pytest.approx(share)


@STRANDED_TABLE_8
@independent("Kirchhoff's law of the neutral, by hand")
def test_a_current_of_the_other_leg_says_three_wire():
    # 10 A out, 6 A back through the neutral
    found = drop(current="10 A", other_leg_current="4 A")
    assert value(found, "drop") == pytest.approx((10 + 6) * 0.3768 / 2)


@STRANDED_TABLE_8
@independent("Kirchhoff's law of the neutral, by hand")
def test_equal_legs_leave_only_the_leg_itself():
    # equal legs leave no current in the neutral
    equal = drop(system="three-wire", current="10 A", other_leg_current="10 A")
    assert value(equal, "drop") == pytest.approx(10 * 0.3768 / 2)


@STRANDED_TABLE_8
@REACTANCE_TABLE_9
@independent("|V + I Z| - |V| in complex numbers")
@pytest.mark.parametrize("power_factor", [0.5, 0.8, 0.95, 1.0])
@pytest.mark.parametrize(
    ("gauge", "r", "x"), [("14", 3.14, 0.058), ("2", 0.194, 0.045), ("4/0", 0.0608, 0.041)]
)
def test_power_factor_against_the_phasor(gauge, r, x, power_factor):
    # |Vload + I Z| - |Vload|, I lagging; R x pf + X x sin leaves out what is across it
    z = 2 * complex(r, x) * 0.1  # 100 ft
    current = 15 * np.exp(-1j * np.arccos(power_factor))
    exact = abs(115 + current * z) - 115
    across = abs((current * z).imag)
    found = drop(
        building_wire=f"{gauge} AWG",
        run_length="100 ft",
        current="15 A",
        power_factor=f"{100 * power_factor:g} %",
    )
    assert value(found, "drop") <= exact + 1e-9
    assert value(found, "drop") == pytest.approx(exact, abs=across**2 / (2 * 115) + 1e-9)


@STRANDED_TABLE_8
@REACTANCE_TABLE_9
@practice("reactance over a fifth of the resistance matters")
def test_reactance_that_is_left_out_is_named_where_it_matters():
    # 2/0 AWG 0.043 of 0.0967 ohm/kft
    said = [n.what for n in drop(building_wire="2/0 AWG", run_length="300 ft").not_checked]
    assert "reactance of 2/0 AWG" in said
    assert not any("reactance" in n.what for n in drop().not_checked)

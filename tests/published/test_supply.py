"""The supply at the plug, and what is lost on the way to it."""

from __future__ import annotations

import math

import numpy as np
import pytest

import wirecalc
from wirecalc import BadInput, tables

from .records import independent, memory, practice, source
from .seen import (
    ADVICE_210_19_A,
    BAND_BY_ARITHMETIC,
    COPPER_WITH_HEAT,
    KIRCHHOFF,
    ONE_AND_FIVE_WATTS,
    REACTANCE_TABLE_9,
    START_AT_80,
    STRANDED_TABLE_8,
    VOLTS_AT_THE_LOAD,
)


def supply(plate="115 V", **given):
    return wirecalc.run("supply", nameplate_voltage=plate, **given)


def verdict(finding, name):
    return str(finding.criterion(name).verdict)


@VOLTS_AT_THE_LOAD
@pytest.mark.parametrize(
    ("plate", "least", "most"),
    [
        (115, 103.5, 126.5),
        (120, 108, 132),
        (208, 187.2, 228.8),
        (240, 216, 264),
    ],
)
def test_running_volts_within_a_tenth_of_the_plate(plate, least, most):
    for volts, word in ((least, "pass"), (least - 0.1, "fail"), (most, "pass")):
        found = supply(f"{plate} V", voltage_running=f"{volts:.1f} V")
        assert found.verdict == word, volts
    assert supply(f"{plate} V", voltage_running=f"{most + 0.1:.1f} V").verdict == "fail"


@VOLTS_AT_THE_LOAD
@independent("a load of plain resistance takes power with the square of the volts")
@practice("a 240 V machine on a 208 V service is no match: its plate does not name it")
def test_a_240_v_plate_on_208_v_is_no_match_and_no_part_is_at_fault():
    found = supply("240 V", voltage_running="208 V", nominal_voltage="208 V")
    assert verdict(found, "service for the plate, lower limit") == "fail"
    assert verdict(found, "running volts, lower limit") == "fail"
    (fault,) = (a for a in found.answers if a.name == "part at fault")
    assert fault.text == "none: on 208 V a resistive load gives 75 % of its plate power"
    power = found.figure("power of a resistive load").figure.value
    assert power == pytest.approx(100 * 208**2 / 240**2)  # 75.1 %
    # at the top of a 208 V service the load may be within 90 %, the service still is no match
    high = supply("240 V", voltage_running="217 V", nominal_voltage="208 V")
    assert verdict(high, "running volts, lower limit") == "pass"
    assert high.verdict == "fail"


@VOLTS_AT_THE_LOAD
def test_a_208_240_v_plate_takes_both_services():
    # from 90 % of 208 V to 110 % of 240 V
    for nominal, volts in (("208 V", "205 V"), ("240 V", "238 V")):
        found = supply(
            "240 V",
            nameplate_voltage_low="208 V",
            voltage_running=volts,
            voltage_at_rest=volts,
            nominal_voltage=nominal,
        )
        assert found.verdict == "pass"
    low = supply("240 V", nameplate_voltage_low="208 V", voltage_running="187.1 V")
    assert low.verdict == "fail"  # 90 % of 208 V is 187.2 V


@ADVICE_210_19_A
@BAND_BY_ARITHMETIC
def test_the_errors_of_two_readings_are_independent_and_the_way_out_is_said():
    lost = "volts lost with the load, of those at rest"
    # ±(1 % + 0.3 V): at worst 120.49 V at rest and 115.728 V running, 3.952 % apart
    both = supply(
        voltage_at_rest="119.0 V ±(1%+3)", voltage_running="117.2 V ±(1%+3)", current="12 A"
    )
    assert verdict(both, lost) == "marginal"
    assert both.criterion(lost).criterion.actual == pytest.approx(3.952, abs=0.001)
    assert "one meter in one range" in both.criterion(lost).action
    # a gain error common to both cancels in 1 - running / rest: the counts alone, 2.01 % at worst
    counts = supply(
        voltage_at_rest="119.0 V ±0.3 V", voltage_running="117.2 V ±0.3 V", current="12 A"
    )
    assert verdict(counts, lost) == "pass"


@VOLTS_AT_THE_LOAD
@pytest.mark.parametrize("what", ["voltage_running", "voltage_at_rest"])
def test_240_v_on_a_120_v_item_fails(what):
    assert supply("120 V", **{what: "240 V"}).verdict == "fail"


@practice("no volts at an outlet: it is dead")
@VOLTS_AT_THE_LOAD
@pytest.mark.parametrize(
    "given",
    [
        {"voltage_at_rest": "0 V"},
        {"voltage_running": "0 V"},
        {"voltage_at_rest": "121 V", "voltage_running": "0 V"},
    ],
)
def test_a_dead_outlet_fails(given):
    assert supply(**given).verdict == "fail"


@VOLTS_AT_THE_LOAD
def test_volts_at_rest_alone_pass_nothing():
    # 103.5 V are 90 % of 115 V
    good = supply(voltage_at_rest="120 V")
    assert good.verdict == "cannot tell"
    assert "voltage_running" in {
        n for c in good.criteria if c.verdict == "cannot tell" for n in c.criterion.needs
    }
    # a load only lowers them: too low at rest is too low
    assert supply(voltage_at_rest="103.4 V").verdict == "fail"
    assert supply().verdict == "cannot tell"


@source(
    "83 Ill. Adm. Code",
    "edition not stated",
    "section 410.300, 113 to 127 V of a 120 V service",
    seen="two copies",
)
@memory("ANSI C84.1 range A, 5 % off the nominal volts")
@pytest.mark.parametrize(("service", "nominal"), [("120 V", 120), ("208 V", 208), ("240 V", 240)])
@pytest.mark.parametrize(
    ("volts_of_120", "low", "high"),
    [
        # the state's rule 113 to 127 V, range A 114 to 126 V
        (114, "pass", "pass"),
        (113.5, "marginal", "pass"),
        (112.5, "marginal", "pass"),  # advice, one state's rule
        (126, "pass", "pass"),
        (126.5, "pass", "marginal"),
        (127.5, "pass", "marginal"),
    ],
)
def test_volts_of_the_service(service, nominal, volts_of_120, low, high):
    found = supply(
        f"{nominal} V",
        voltage_running=f"{volts_of_120 * nominal / 120:.6f} V",
        voltage_at_rest=f"{volts_of_120 * nominal / 120:.6f} V",
        nominal_voltage=service,
    )
    assert verdict(found, "service volts, lower limit") == low
    assert verdict(found, "service volts, upper limit") == high
    assert found.verdict in ("pass", "marginal")


@practice("plates of 220 to 230 V are of a 230 V service, in North America of 240 V")
@memory("ANSI C84.1 range A, 5 % off the nominal volts")
@pytest.mark.parametrize(
    ("plate", "service"),
    [("115 V", 120), ("208 V", 208), ("240 V", 240), ("230 V", 230), ("220 V", 230)],
)
def test_the_plate_names_the_service(plate, service):
    found = supply(plate, voltage_running=plate, voltage_at_rest=plate)
    assert f"taken as {service} V" in found.answers[0].text
    if service != 230:
        low = found.figure("ANSI C84.1 range A, low").figure.value
        assert low == pytest.approx(0.95 * service)


@VOLTS_AT_THE_LOAD
@practice("100 V is a service of Japan, 127 V of Latin America")
@pytest.mark.parametrize(("plate", "volts"), [("100 V", "101 V"), ("127 V", "128 V")])
def test_a_service_of_another_country_is_not_held_to_a_range_of_its_own(plate, volts):
    # no range of theirs was seen; the plate binds
    found = supply(plate, voltage_running=volts, voltage_at_rest=volts)
    assert found.verdict == "pass"
    assert any(n.what == "the service's own range" for n in found.not_checked)


@VOLTS_AT_THE_LOAD
def test_a_plate_whose_lower_volts_are_its_volts_has_one():
    same = supply("208 V", nameplate_voltage_low="208 V", voltage_running="205 V")
    assert same.verdict == supply("208 V", voltage_running="205 V").verdict == "pass"


@memory("IEC 60038: 230 V plus and minus 10 %")
@VOLTS_AT_THE_LOAD
@practice("a limit from memory is kept 5 V away from")
@pytest.mark.parametrize(
    ("volts", "word"),
    # 207 to 253 V, from memory, and so 5 V inside of it
    [
        *((206.9, "fail"), (211.9, "marginal"), (212, "pass"), (221, "pass"), (248, "pass")),
        *((248.1, "marginal"), (253.1, "fail")),
    ],
)
def test_a_230_v_service(volts, word):
    given = {"voltage_at_rest": f"{volts} V", "voltage_running": f"{volts} V"}
    assert supply("230 V", **given).verdict == word
    assert supply("230 V", **given, nominal_voltage="230 V").verdict == word


@VOLTS_AT_THE_LOAD
@practice("110 and 220 V are older names of 115 and 230 V")
@pytest.mark.parametrize(
    ("plate", "volts", "word"),
    # 110 % of the plate, and of the newer name that binds: 121 and 126.5 V, 242 and 253 V
    [
        *((110, 121, "pass"), (110, 122, "marginal"), (110, 126.5, "marginal")),
        *((110, 126.6, "fail"), (220, 242, "pass"), (220, 245, "marginal")),
        *((220, 253, "marginal"), (220, 253.1, "fail"), (100, 110.1, "fail")),
        *((112, 123.3, "fail"), (127, 139.8, "fail")),
    ],
)
def test_an_older_name_of_the_same_volts_is_no_other_service(plate, volts, word):
    found = supply(f"{plate} V", voltage_running=f"{volts} V")
    assert found.verdict == word


@VOLTS_AT_THE_LOAD
@START_AT_80
@pytest.mark.parametrize(
    ("volts", "word"),
    # 90 % of the plate, for a machine that runs; 80 %, 92 V
    [("103.5 V", "pass"), ("103.4 V", "marginal"), ("92 V", "marginal"), ("91.9 V", "fail")],
)
def test_the_volts_of_a_start_are_judged_as_in_dip(volts, word):
    found = supply(voltage_running="115 V", voltage_at_start=volts)
    assert found.verdict == word


LOSS = "volts lost at a full outlet, 12 A or more"


@source(
    "NEC (NFPA 70)",
    "edition not stated",
    "210.23(A)(1), 80 % of the circuit for one load with a plug",
    seen="two copies",
)
@ADVICE_210_19_A
@VOLTS_AT_THE_LOAD
@independent("Ohm's law: the loss goes with the current")
@pytest.mark.parametrize(
    ("running", "amps", "word"),
    # 119 V at rest, 115 V plate. R = loss / current; at 12 A, 80 % of a 15 A outlet, 5 % of 119 V
    # are 5.95 V (advice), and 119 - 103.5 V leave just 90 % of the plate
    [
        (115.6, None, "cannot tell"),  # 2.9 %: wire under 12 A, a bad joint under 0.9 A
        (115.6, 0.9, "fail"),  # 3.8 ohm, 45.3 V at 12 A
        (115.6, 2.6, "fail"),  # 15.7 V
        (115.6, 2.7, "marginal"),  # 15.1 V
        (115.6, 6.8, "marginal"),  # 6 V
        (115.6, 6.9, "pass"),  # 5.91 V
        (115.6, 12, "pass"),
        (117.9, None, "pass"),  # 0.92 %
        (117.7, None, "cannot tell"),  # 1.09 %
    ],
)
def test_what_a_loss_means_goes_by_the_current(running, amps, word):
    given = {} if amps is None else {"current": f"{amps} A"}
    found = supply(voltage_at_rest="119 V", voltage_running=f"{running} V", **given)
    assert found.verdict == word
    if word == "cannot tell":
        assert found.decided_by.criterion.needs == ("current",)
    elif amps is not None:
        volts = (119 - running) / amps * 12
        assert found.criterion(LOSS).criterion.actual == pytest.approx(max(volts, 0))


@ADVICE_210_19_A
@independent("volts lost times the current, by hand")
def test_a_great_loss_is_heat_somewhere_and_use_stops():
    # 48 V at 18 A: 864 W
    given = {"voltage_at_rest": "240 V", "voltage_running": "192 V"}
    found = supply("240 V", **given, current="18 A")
    assert found.verdict == "fail"
    assert found.figure("heat on the way to the outlet").figure.value == pytest.approx(48 * 18)
    assert any("STOP" in c.text.upper() for c in found.cautions if c.key == "loss-stop")
    assert not any("208" in a.text for a in found.answers)
    assert "208" not in found.decided_by.action


@practice("use stops where over 5 % are lost on the way; nothing flows at a dead outlet")
@pytest.mark.parametrize(("running", "stop"), [(228.1, False), (227.9, True), (0, False)])
def test_use_stops_where_over_5_percent_are_lost_on_the_way(running, stop):
    # 5 % of 240 V are 12 V
    given = {"voltage_at_rest": "240 V", "voltage_running": f"{running} V", "current": "18 A"}
    found = supply("240 V", **given)
    assert any(c.key == "loss-stop" for c in found.cautions) == stop


@memory("ANSI C84.1 range A, 5 % off the nominal volts")
@pytest.mark.parametrize(
    ("at_rest", "named"),
    # 208 V and 5 % on either side
    [("208 V", True), ("198 V", True), ("218 V", True), ("197.5 V", False), ("218.5 V", False)],
)
def test_a_208_v_service_is_named(at_rest, named):
    found = supply("240 V", voltage_at_rest=at_rest, voltage_running=at_rest)
    said = [a.text for a in found.answers if a.name == "service"]
    assert ("208 V" in said[0]) == named


@practice("volts that no house has are read again: over 300 V")
@pytest.mark.parametrize("name", ["voltage_at_rest", "voltage_running"])
def test_volts_that_no_house_has_are_read_again(name):
    # 240 V on a 120 V outlet is a wrong connection
    for volts in ("600 V", "300.1 V"):
        with pytest.raises(BadInput, match="range"):
            supply("120 V", **{name: volts})
    assert supply("120 V", **{name: "300 V"}).verdict == "fail"
    assert supply("480 V", **{name: "480 V"}).verdict != "fail"  # a plate of a shop's machine


@VOLTS_AT_THE_LOAD
@BAND_BY_ARITHMETIC
def test_the_meter_counts():
    # 103.5 V are 90 % of 115 V
    # 104.5 V ±(1%+3): 103.155 to 105.845 V reaches across 103.5 V
    assert supply(voltage_running="104.5 V ±(1%+3)").verdict == "cannot tell"
    assert supply(voltage_running="105.0 V ±(1%+3)").verdict == "pass"  # from 103.65 V


@VOLTS_AT_THE_LOAD
@source(
    "data sheet of a household compressor",
    "undated",
    "operating voltage range, 198 to 244 V",
    seen="one copy",
)
@source("ANSI C84.1", "1982", "range A, 5 % under", seen="one copy of a secondary text")
@source(
    "83 Ill. Adm. Code",
    "edition not stated",
    "section 410.300, 113 to 127 V of a 120 V service",
    seen="two copies",
)
@memory("ANSI C84.1 range B, 110 to 127 V")
def test_the_ranges_of_the_table_are_those_of_their_percentages():
    rows = {r.text("range"): r for r in tables.load("supply-ranges").rows}
    assert rows["compressor-115"].number("low") == pytest.approx(0.9 * 115)
    assert rows["compressor-115"].number("high") == pytest.approx(1.1 * 115)
    assert rows["compressor-220-230"].number("low") == pytest.approx(0.9 * 220)
    assert rows["ansi-a"].number("low") == pytest.approx(0.95 * 120)
    # the state's rule begins and ends outside of range A, and inside of range B
    for end, sign in (("low", 1), ("high", -1)):
        a, state, b = (sign * rows[r].number(end) for r in ("ansi-a", "state-code", "ansi-b"))
        assert b <= state <= a


# ---- upstream

# ohm per ft of 14 AWG at 20 C
FT_14_AT_20 = 3.14e-3 * (1 - 0.00323 * 55)


def upstream(rest, running, amps, **given):
    """Run on a heater and a wire at 20 C, unless it is said otherwise (None: left out)."""
    asked = {"load_kind": "heater", "conductor_temperature": "20 C"} | given
    return wirecalc.run(
        "upstream",
        voltage_at_rest=f"{rest:.9f} V",
        voltage_running=f"{running:.9f} V",
        current=f"{amps:.9f} A",
        **{n: v for n, v in asked.items() if v is not None},
    )


HEAT = "heat beyond the wiring"
FULL = "heat beyond the wiring at 12 A"
RUN = {"building_wire": "14 AWG", "run_length": "40 ft"}
PANEL = {"panel_at_rest": "120 V", "panel_running": "120 V"}  # nothing lost ahead of it


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
@pytest.mark.parametrize(
    ("watts", "word"),
    [(0, "pass"), (0.99, "pass"), (1.01, "marginal"), (4.99, "marginal"), (5.01, "fail")],
)
def test_heat_in_a_joint_behind_the_panel(watts, word):
    amps, loop = 12.0, 80 * FT_14_AT_20
    joint = watts / amps**2
    found = upstream(120, 120 - amps * (loop + joint), amps, **RUN, **PANEL)
    assert found.figure(f"{HEAT} at this current").figure.value == pytest.approx(watts, abs=1e-6)
    assert found.verdict == word
    assert found.figure("resistance of all upstream").figure.value == pytest.approx(loop + joint)


@source(
    "wire table of solid copper at 20 C, four digits",
    "undated",
    "14 AWG, 2.525 ohm/kft",
    seen="three copies, of one origin likely",
)
@memory("NBS Handbook 100, 1966: 2.52 ohm/kft of 14 AWG")
def test_the_wire_counts_as_cold():
    found = upstream(120, 118, 8, building_wire="14 AWG solid", run_length="40 ft")
    (loop,) = (f.figure.value for f in found.figures if "there and back" in f.figure.name)
    assert loop == pytest.approx(0.080 * 2.525, rel=1e-3)


@source(
    "NEC (NFPA 70)", "edition not stated", "Chapter 9 Table 8, solid copper, 75 C", seen="one copy"
)
@COPPER_WITH_HEAT
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
@pytest.mark.parametrize(
    ("watts", "temperature", "word"),
    # 12 A, 75 ft of 14 AWG solid, 3.07 ohm/kft: 0.379 ohm at 20 C, 0.4605 at 75 C
    [
        (6.4, None, "cannot tell"),
        (6.4, "20 C", "fail"),
        (6.4, "50 C", "pass"),
        (0.9, None, "pass"),
        (16.6, None, "cannot tell"),
        (16.9, None, "fail"),  # 11.8 W of it are the wire at 75 C
    ],
)
def test_a_wire_whose_temperature_was_not_given_is_at_20_to_75_c(watts, temperature, word):
    loop = 0.15 * 3.07 * (1 - 0.00323 * 55)
    given = {
        "building_wire": "14 AWG solid",
        "run_length": "75 ft",
        "conductor_temperature": temperature,
    }
    found = upstream(120, 120 - 12 * (loop + watts / 144), 12, **given, **PANEL)
    assert found.verdict == word
    if word == "cannot tell":
        assert "conductor_temperature" in found.criterion(HEAT).criterion.needs


@source("IEC 60228", "2004", "Table 1, class 1, greatest resistance at 20 C", seen="four copies")
@source(
    "International Annealed Copper Standard",
    "IEC 60028, edition not stated",
    "17.241 ohm mm2/km at 20 C",
    seen="a handbook and a property table",
)
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
@pytest.mark.parametrize(
    ("ohm_per_km", "word"),
    # 2.5 mm2 solid at 20 C, 60 m there and back, 16 A: IEC 60228 lets it have 7.41 ohm/km; the
    # whole area has 17.241 / 2.5 = 6.90. 1 W is 0.065 ohm/km, 5 W 0.326
    [
        (6.95, "pass"),
        (7.0, "marginal"),
        (7.2, "marginal"),
        (7.41, "cannot tell"),
        (7.72, "cannot tell"),
        (7.75, "fail"),
    ],
)
def test_a_metric_wire_fails_only_beyond_its_limit(ohm_per_km, word):
    found = upstream(
        230,
        230 - 16 * 0.06 * ohm_per_km,
        16,
        building_wire="2.5 mm2 solid",
        run_length="30 m",
        panel_at_rest="230 V",
        panel_running="230 V",
    )
    assert found.verdict == word


def at_a_plug(rest, amps, impedance, power_factor):
    """Return the volts that are left of a source behind an impedance, its current lagging."""
    # |V + I Z| = rest, the current I at an angle of -acos(pf) to V; by halving
    drop = amps * complex(power_factor, -math.sqrt(1 - power_factor**2)) * impedance
    low, high = 0.0, rest + abs(drop)
    for _ in range(100):
        middle = (low + high) / 2
        low, high = (low, middle) if abs(middle + drop) > rest else (middle, high)
    return low


@STRANDED_TABLE_8
@REACTANCE_TABLE_9
@COPPER_WITH_HEAT
@ONE_AND_FIVE_WATTS
@independent("|V + I Z| = |V at rest| solved by halving")
@pytest.mark.parametrize("power_factor", [0.3, 0.5, 0.8, 0.95])
@pytest.mark.parametrize(("joint", "word"), [(0.01, "pass"), (0.03, "marginal"), (0.15, "fail")])
def test_a_joint_behind_a_motor_is_found_by_its_power_factor(power_factor, joint, word):
    # 8 A; 40 ft of 14 AWG has 0.058 ohm/kft of reactance
    loop = complex(80 * FT_14_AT_20, 0.08 * 0.058)
    running = at_a_plug(120, 8, loop + joint, power_factor)
    motor = {"load_kind": "motor", "power_factor": f"{100 * power_factor:g} %"}
    found = upstream(120, running, 8, **RUN, **PANEL, **motor)
    watts = found.figure(f"{HEAT} at this current").figure.value
    assert watts == pytest.approx(64 * joint, rel=1e-6)
    assert found.verdict == word


@STRANDED_TABLE_8
@REACTANCE_TABLE_9
@COPPER_WITH_HEAT
@ONE_AND_FIVE_WATTS
@practice("volts behind a motor or a supply of electronics say nothing without its power factor")
@independent("|V + I Z| = |V at rest| solved by halving")
@pytest.mark.parametrize("kind", [None, "motor", "electronic"])
def test_without_power_factor_nothing_passes(kind):
    # 0.15 ohm makes 9.6 W, and at a power factor of 0.5 the volts of less than the wire alone
    running = at_a_plug(120, 8, complex(80 * FT_14_AT_20 + 0.15, 0.08 * 0.058), 0.5)
    found = upstream(120, running, 8, **RUN, **PANEL, load_kind=kind)
    assert found.verdict == "cannot tell"
    assert "power_factor" in found.criterion(HEAT).criterion.needs
    assert upstream(120, 120, 8, **RUN, load_kind=kind).verdict == "cannot tell"


@STRANDED_TABLE_8
@REACTANCE_TABLE_9
@COPPER_WITH_HEAT
@ONE_AND_FIVE_WATTS
@independent("|V + I Z| = |V at rest| solved by halving")
@pytest.mark.parametrize("power_factor", [0.2, 0.5, 0.8, 0.95, 1.0])
@pytest.mark.parametrize(("joint", "fails"), [(0.03, False), (0.3, True)])
def test_a_fail_without_power_factor_holds_at_every_one(power_factor, joint, fails):
    # 100 ft of 2/0 AWG (Table 8 0.0967 ohm/kft, Table 9 0.043): the volts of a joint of 8 A
    loop = 0.2 * complex(0.0967 * (1 - 0.00323 * 55), 0.043)
    running = at_a_plug(120, 8, loop + joint, power_factor)
    found = upstream(
        120, running, 8, building_wire="2/0 AWG", run_length="100 ft", **PANEL, load_kind="motor"
    )
    assert found.verdict in (("fail", "cannot tell") if fails else ("cannot tell",))
    if fails and power_factor > 0.5:
        assert found.verdict == "fail"


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@independent("Ohm's law by hand")
def test_what_is_lost_is_told_where_the_wire_is_not_known():
    # 8 of 121 V at 10 A; 14 AWG at 20 C (Table 8): 0.8 ohm is 155 ft one way
    found = upstream(121, 113, 10, load_kind=None, conductor_temperature=None)
    assert found.figure("volts lost").figure.value == pytest.approx(8)
    assert found.figure("volts lost of those at rest").figure.value == pytest.approx(800 / 121)
    length = found.figure("14 AWG copper at 20 C that takes as much").figure.value
    assert length == pytest.approx(0.8 / 2 / FT_14_AT_20, rel=1e-6)


@practice("aluminium wants terminations of its own")
def test_aluminium_in_the_wall_is_an_electricians():
    found = upstream(120, 118, 10, building_wire="10 AWG aluminum", run_length="40 ft")
    assert "alu-01" in {c.key for c in found.cautions}
    assert "alu-01" not in {c.key for c in upstream(120, 118, 10, **RUN).cautions}


@practice("a second leg that rises by 2 % tells of the neutral")
@BAND_BY_ARITHMETIC
@pytest.mark.parametrize(
    ("second", "error", "said"),
    # 124 V ±(1%+3) may be 122.5 V, and 120 V 121.5
    [(124, "", True), (122.3, "", False), (124, " ±(1%+3)", False), (132, " ±(1%+3)", True)],
)
def test_legs_that_move_apart_are_told_at_the_top(second, error, said):
    found = wirecalc.run(
        "upstream",
        voltage_at_rest="120.0 V" + error,
        voltage_running="110.0 V" + error,
        current="22 A",
        second_leg_at_rest="120.0 V" + error,
        second_leg_running=f"{second:.1f} V" + error,
        second_leg_current="22 A",
    )
    assert [a.name for a in found.answers] == (["neutral"] if said else [])


@ADVICE_210_19_A
def test_volts_lost_with_the_load_are_judged_by_the_advice():
    # of 121 V 3.63 and 6.05 V
    name = "volts lost with the load, of those at rest"
    for running, word in ((117.4, "pass"), (117.3, "marginal"), (113, "marginal")):
        given = {"voltage_at_rest": "121 V", "voltage_running": f"{running} V", "current": "20 A"}
        found = supply("120 V", **given)
        assert verdict(found, name) == found.verdict == word
    assert "upstream" in found.criterion(name).action
    assert supply(voltage_at_rest="0 V", voltage_running="0 V").verdict == "fail"


@practice("half of 240 V is one open leg, 208 V another service, 0 V a dead outlet")
@pytest.mark.parametrize(
    ("volts", "word"), [("120 V", "one leg is open"), ("208 V", "208 V service"), ("0 V", "dead")]
)
def test_what_to_do_about_too_few_volts_goes_by_how_many(volts, word):
    for what in ("voltage_at_rest", "voltage_running"):
        action = supply("240 V", **{what: volts}).decided_by.criterion.action
        assert word in action
        assert ("208" in action) == (volts == "208 V")
    assert "one leg" not in supply("120 V", voltage_running="60 V").decided_by.criterion.action


@source(
    "83 Ill. Adm. Code",
    "edition not stated",
    "section 410.300, 113 to 127 V of a 120 V service",
    seen="two copies",
)
@memory("ANSI C84.1 range A, 5 % off the nominal volts")
@pytest.mark.parametrize(
    ("volts", "limit", "confidence"),
    # the state's rule 113 V, confirmed; range A 114 V, from memory
    [(119.4, 113, "confirmed"), (113.5, 114, "memory"), (112.5, 113, "confirmed")],
)
def test_a_remembered_level_of_the_service_is_shown_as_one(volts, limit, confidence):
    found = supply("120 V", voltage_running=f"{volts} V", voltage_at_rest=f"{volts} V")
    judged = found.criterion("service volts, lower limit").criterion
    assert (judged.limit, judged.source.confidence) == (limit, confidence)
    assert judged.caution_limit is None


@independent("Kirchhoff's laws as a linear system")
@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@ONE_AND_FIVE_WATTS
@practice("service and transformer may add 0.1 ohm ahead of the panel")
def test_a_loss_is_found_by_solving_the_circuit():
    # 120 V behind 0.03 ohm to the panel, 60 ft of 14 AWG, a 0.2 ohm joint, a 13.2 ohm heater:
    # Kirchhoff's laws in matrix form, apart from the program
    ahead, wire, joint, heater = 0.03, 120 * FT_14_AT_20, 0.2, 13.2
    system = np.array(
        [
            [1 / ahead + 1 / (wire + joint), -1 / (wire + joint)],
            [-1 / (wire + joint), 1 / (wire + joint) + 1 / heater],
        ]
    )
    panel, plug = np.linalg.solve(system, [120 / ahead, 0])
    amps = plug / heater
    given = {"building_wire": "14 AWG", "run_length": "60 ft"}
    sure = upstream(120, plug, amps, **given, panel_at_rest="120 V", panel_running=f"{panel:.9f} V")
    assert sure.figure("resistance beyond the wiring").figure.value == pytest.approx(0.2, rel=1e-6)
    heat = sure.figure(f"{HEAT} at this current").figure.value
    assert heat == pytest.approx(amps**2 * joint, rel=1e-6)
    assert sure.verdict == "fail"
    # without the panel, what lies ahead of it counts too, and 0.1 ohm of it explains nothing here
    blind = upstream(120, plug, amps, **given)
    beyond = blind.figure("resistance beyond the wiring").figure.value
    assert beyond == pytest.approx(ahead + joint, rel=1e-6)
    assert blind.verdict == "fail"


@memory("IEC 60725, reference impedance of a 230 V supply: 0.4 + j0.25 ohm, phase and neutral")
@source("IEC 60228", "2004", "Table 1, class 1, 7.41 ohm/km of 2.5 mm2 at 20 C", seen="four copies")
@practice("service and transformer of 120 and 240 V may add 0.1 ohm ahead of the panel")
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
@pytest.mark.parametrize(
    ("running", "wire", "panel", "word"),
    # 12.6 A; 20 m of 2.5 mm2 have 0.308 ohm at 30 C: 3.88 V, and 0.4 ohm ahead takes 5.04 V
    [
        (224.5, "2.5 mm2 solid", None, "cannot tell"),  # 0.21 ohm, 33 W: service or joint
        (224.5, "2.5 mm2 solid", "228.1 V", "pass"),  # it is the service's
        (224.5, "2.5 mm2 solid", "230.9 V", "fail"),  # it is a joint's
        (221.75, "2.5 mm2 solid", None, "cannot tell"),  # 4 W more than all of these
        (221.6, "2.5 mm2 solid", None, "fail"),  # 6 W more
        (216, "2.5 mm2 solid", None, "fail"),
        (226.5, "14 AWG", None, "fail"),  # of 240 V: 65 ft of AWG, and 0.1 ohm
    ],
)
def test_a_230_v_supply_has_ohms_of_its_own(running, wire, panel, word):
    given = {"building_wire": wire, "run_length": "20 m", "conductor_temperature": "30 C"}
    if wire == "14 AWG":
        given["run_length"] = "20 ft"
    if panel is not None:
        given |= {"panel_at_rest": "231.0 V", "panel_running": panel}
    found = upstream(231, running, 12.6, **given)
    assert found.verdict == word
    if word == "cannot tell":
        judged = found.decided_by
        assert set(judged.criterion.needs) >= {"panel_at_rest", "panel_running"}
        assert "0.4 ohm ahead of the panel" in judged.because
        assert "another receptacle of this panel" in judged.action


@memory("IEC 60725, reference impedance of a 230 V supply: 0.4 + j0.25 ohm, phase and neutral")
@practice("service and transformer of 120 and 240 V may add 0.1 ohm ahead of the panel")
@pytest.mark.parametrize(
    ("volts", "wire", "ohm"),
    [
        (127, "2.5 mm2", 0.1),
        (199, "2.5 mm2", 0.1),
        (200, "2.5 mm2", 0.4),
        (230, "2.5 mm2", 0.4),
        (240, "14 AWG", 0.1),
    ],
)
def test_the_ohms_ahead_of_the_panel_go_by_volts_and_wire(volts, wire, ohm):
    # 10 A; 20 ft are 0.1 ohm, and 0.06 more are service or joint
    given = {"building_wire": wire, "run_length": "20 ft", "conductor_temperature": "20 C"}
    loop = 0.103 if wire == "14 AWG" else 12.192e-3 * 7.41
    judged = upstream(volts, volts - 10 * (loop + 0.08), 10, **given).criterion(HEAT)
    assert judged.verdict == "cannot tell"
    assert f"{ohm:g} ohm ahead of the panel" in judged.reason


@STRANDED_TABLE_8
@practice("service and transformer may add 0.1 ohm ahead of the panel")
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
def test_a_fail_shows_the_heat_that_is_sure():
    # 6.8 V at 12 A; 40 ft of 14 AWG have 0.2512 ohm hot; 0.1 ohm lies ahead
    found = upstream(119.8, 113.0, 12, **RUN, conductor_temperature=None)
    sure = 12**2 * (6.8 / 12 - 80 * 3.14e-3 - 0.1)
    judged = found.criterion(HEAT)
    assert (judged.verdict, judged.criterion.actual) == ("fail", pytest.approx(sure))
    assert judged.reason.startswith("at least 31")
    small = upstream(119.8, 119.0, 1, **RUN, conductor_temperature=None).criterion(FULL)
    assert small.criterion.actual == pytest.approx(144 * (0.8 - 80 * 3.14e-3 - 0.1))


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@practice("service and transformer may add 0.1 ohm ahead of the panel")
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
def test_what_is_not_known_is_not_blamed():
    amps, loop = 10.0, 80 * FT_14_AT_20
    sag = 0.09  # ohm: 9 W, of a joint or of the service
    untold = upstream(120, 120 - amps * (loop + sag), amps, **RUN)
    assert untold.verdict == "cannot tell"
    for judged in (untold.criterion(HEAT), untold.criterion(FULL)):
        assert judged.criterion.needs[:2] == ("panel_at_rest", "panel_running")
    running = f"{120 - amps * sag:.6f} V"
    good = upstream(
        120, 120 - amps * (loop + sag), amps, **RUN, panel_at_rest="120 V", panel_running=running
    )
    assert good.verdict == "pass"


@ONE_AND_FIVE_WATTS
@independent("volts lost times the current")
@pytest.mark.parametrize(("volts", "word"), [(0.099, "pass"), (0.101, "cannot tell"), (4, None)])
def test_without_the_wire_only_a_watt_in_all_passes(volts, word):
    # 1 W is 0.1 V at 10 A
    found = upstream(120, 120 - volts, 10)
    assert found.verdict == (word or "cannot tell")
    if word != "pass":
        assert found.criteria[0].criterion.needs == ("building_wire", "run_length")


@practice(
    "without the length, or with a metal of unknown resistance, the wire's part cannot be told"
)
@pytest.mark.parametrize(
    "given",
    [
        {"building_wire": "14 AWG"},  # no length
        {"building_wire": "14 AWG", "run_length": "40 ft", "extension_cord": "16 AWG"},
        {"building_wire": "12 AWG cca", "run_length": "40 ft"},
        {"extension_cord": "16 AWG", "extension_length": "25 ft"},
    ],
)
def test_wiring_that_is_known_in_part_passes_and_fails_nothing(given):
    assert upstream(120, 110, 10, **given).verdict == "cannot tell"


@STRANDED_TABLE_8
@practice("under four fifths of the wire's own volts a size or a length is wrong")
@KIRCHHOFF
def test_a_run_that_takes_more_than_was_lost_is_no_pass():
    # 120 ft take 10 A x 0.62 ohm = 6.2 V; 2 V were lost
    found = upstream(120, 118, 10, building_wire="14 AWG", run_length="120 ft")
    assert found.verdict == "cannot tell"
    assert "a size or length is wrong" in found.criteria[0].reason


@STRANDED_TABLE_8
@BAND_BY_ARITHMETIC
@practice("the millivolt drop across a joint finds what two readings of a plug cannot")
def test_two_one_percent_readings_settle_nothing():
    found = wirecalc.run(
        "upstream",
        voltage_at_rest="119.8 V ±(1%+3)",
        voltage_running="116.6 V ±(1%+3)",
        current="8.7 A ±(2%+5)",
        load_kind="heater",
        **RUN,
    )
    assert found.verdict == "cannot tell"
    assert "millivolt drop" in found.criteria[0].action


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@independent("the most of I U - I^2 R lies at U / 2R")
def test_the_heat_over_the_meters_band_has_its_most_inside():
    # 8.00 A ±50 %: I x 4 V - I^2 x R has its most at 4 V / 2R, not at an end
    ohm = 80 * FT_14_AT_20
    found = wirecalc.run(
        "upstream",
        voltage_at_rest="120 V",
        voltage_running="116 V",
        current="8.00 A ±50%",
        load_kind="heater",
        **RUN,
    )
    band = found.figure(f"{HEAT} at this current")
    assert 4 < 4 / (2 * ohm) < 12
    assert band.high == pytest.approx(4**2 / (4 * ohm))
    assert band.low == pytest.approx(4 * 4 - 16 * ohm)


def three_wire(neutral, leg=0.05, one=12.0, two=60.0):
    """Return the volts of both legs by Kirchhoff's current law at the neutral point of the load."""
    # currents of the legs flow in at 120 V each through leg + load, back through the neutral
    a, b = 1 / (leg + one), 1 / (leg + two)
    point = 120 * (a - b) / (a + b + 1 / neutral)
    first, second = (120 - point) * a, (120 + point) * b
    return first * one, second * two, first


@independent("Kirchhoff's current law at the neutral point of the load")
@practice("a second leg that rises by 2 % asks for care, by 5 % stops the use")
@pytest.mark.parametrize(
    ("neutral", "word"), [(0.05, "pass"), (0.4, "marginal"), (1.5, "fail"), (1e6, "fail")]
)
def test_a_weak_neutral_moves_the_legs_apart(neutral, word):
    # nothing runs at rest; then 12 ohm on the first leg and 60 ohm on the second
    after = three_wire(neutral)
    found = upstream(
        120,
        after[0],
        after[2],
        building_wire="10 AWG",
        run_length="40 ft",
        second_leg_at_rest="120 V",
        second_leg_running=f"{after[1]:.9f} V",
    )
    rise = 100 * (after[1] / 120 - 1)
    assert found.criterion("rise of the second leg").criterion.actual == pytest.approx(rise)
    assert verdict(found, "rise of the second leg") == word


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
def test_legs_are_judged_apart():
    # 10 A through both legs of 40 ft of 10 AWG (1.24 ohm/kft at 75 C); 0.3 ohm more in the second
    one_way = 40 * 1.24e-3 * (1 - 0.00323 * 55)
    found = upstream(
        120,
        120 - 10 * one_way,
        10,
        building_wire="10 AWG",
        run_length="40 ft",
        second_leg_at_rest="120 V",
        second_leg_running=f"{120 - 10 * (one_way + 0.3):.9f} V",
        second_leg_current="10 A",
    )
    assert verdict(found, HEAT) == "pass"
    assert verdict(found, f"{HEAT}, second leg") == "fail"
    watts = found.figure(f"{HEAT} at this current, second leg").figure.value
    assert watts == pytest.approx(10**2 * 0.3)
    assert math.isclose(found.figure("the same at 12 A, second leg").figure.value, 144 * 0.3)


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@practice("service and transformer may add 0.1 ohm ahead of the panel")
@ONE_AND_FIVE_WATTS
@pytest.mark.parametrize(("ohm", "word"), [(0.134, "cannot tell"), (0.135, "fail")])
@pytest.mark.parametrize("amps", [1, 10, 12])
def test_a_tenth_of_an_ohm_may_lie_ahead_of_the_panel(ohm, word, amps):
    # 12 A and 0.0347 ohm more than 0.1 ohm make 5 W
    assert upstream(120, 120 - amps * (80 * FT_14_AT_20 + ohm), amps, **RUN).verdict == word


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@practice("under four fifths of the wire's own volts a size or a length is wrong")
@pytest.mark.parametrize(("share", "word"), [(0.79, "cannot tell"), (0.81, "pass")])
def test_less_than_four_fifths_of_the_wire_is_no_reading_of_it(share, word):
    # lengths are paced, and no wire is colder than a fifth of that
    running = 120 - share * 10 * 80 * FT_14_AT_20
    assert upstream(120, running, 10, **RUN, **PANEL).verdict == word


@practice("a second leg that rises by 2 % asks for care, by 5 % stops the use")
@pytest.mark.parametrize(
    ("rise", "word"),
    [(-3, "pass"), (1.9, "pass"), (2.1, "marginal"), (4.9, "marginal"), (5.1, "fail")],
)
def test_rise_of_the_second_leg(rise, word):
    legs = {"second_leg_at_rest": "120 V", "second_leg_running": f"{120 + 1.2 * rise:.6f} V"}
    assert verdict(upstream(120, 119.99, 1, **legs), "rise of the second leg") == word


@practice(
    "volts drift by 3 %; under a quarter of the plate it is no supply; two pairs of "
    "readings differ by half a percent"
)
def test_what_readings_may_differ_by():
    assert supply(voltage_at_rest="110 V", voltage_running="113.2 V").verdict is not None
    with pytest.raises(BadInput, match="exchanged"):
        supply(voltage_at_rest="110 V", voltage_running="113.4 V")
    assert supply(voltage_running="29 V").verdict == "fail"
    with pytest.raises(BadInput, match="neither a supply"):
        supply(voltage_running="28 V")
    panel = {"panel_at_rest": "120 V", "panel_running": "118 V"}
    assert upstream(120, 118.5, 10, **RUN, **panel).verdict is not None
    with pytest.raises(BadInput, match="same leg"):
        upstream(120, 118.7, 10, **RUN, **panel)


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@independent("ends of the length's band by arithmetic")
def test_the_error_of_a_length_counts():
    # 40 ft ±10 %, exact volts: 10 A x (4 V - 10 A x R), R of 44 and of 36 ft
    found = wirecalc.run(
        "upstream",
        voltage_at_rest="120 V",
        voltage_running="116 V",
        current="10 A",
        building_wire="14 AWG",
        run_length="40 ft ±10%",
    )
    band = found.figure(f"{HEAT} at this current")
    assert band.low == pytest.approx(10 * (4 - 10 * 88 * FT_14_AT_20))
    assert band.high == pytest.approx(10 * (4 - 10 * 72 * FT_14_AT_20))


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@source(
    "NEC (NFPA 70)",
    "edition not stated",
    "210.23(A)(1), 80 % of the circuit for one load with a plug",
    seen="two copies",
)
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
def test_each_leg_has_its_own_current():
    # 40 ft of 10 AWG (1.24 ohm/kft at 75 C); 0.3 ohm more in the second leg, which has 4 A
    one_way = 40 * 1.24e-3 * (1 - 0.00323 * 55)
    legs = {"second_leg_at_rest": "120 V"}
    legs |= {"second_leg_running": f"{120 - 4 * (one_way + 0.3):.9f} V"}
    given = {"building_wire": "10 AWG", "run_length": "40 ft"} | legs
    found = upstream(120, 120 - 12 * one_way, 12, **given, second_leg_current="4 A")
    watts = found.figure(f"{HEAT} at this current, second leg").figure.value
    assert watts == pytest.approx(4**2 * 0.3)
    assert verdict(found, f"{FULL}, second leg") == "fail"
    untold = upstream(120, 120 - 12 * one_way, 12, **given)
    assert untold.verdict == "cannot tell"
    assert untold.criterion("second_leg_current").criterion.needs == ("second_leg_current",)


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@source(
    "NEC (NFPA 70)",
    "edition not stated",
    "210.23(A)(1), 80 % of the circuit for one load with a plug",
    seen="two copies",
)
@ONE_AND_FIVE_WATTS
@KIRCHHOFF
@pytest.mark.parametrize(
    ("ohm", "amps", "word"),
    # 5 W at 12 A, 80 % of a 15 A outlet: 34.7 mohm
    [
        (0.0347, 0.6, "pass"),
        (0.0348, 0.6, "fail"),
        (0.126, 0.6, "fail"),  # 0.2 V with the wire's: 0.05 W now, 18 W at 12 A
        (0.0348, 11.9, "fail"),
        (0.0340, 12, "marginal"),  # 4.9 W now
    ],
)
def test_a_small_current_does_not_hide_a_bad_joint(ohm, amps, word):
    running = 120 - amps * (80 * FT_14_AT_20 + ohm)
    assert upstream(120, running, amps, **RUN, **PANEL).verdict == word


@ONE_AND_FIVE_WATTS
@independent("volts lost times the current")
def test_a_small_current_on_an_unknown_wire_is_not_told():
    found = upstream(120, 119.8, 0.6)
    assert found.verdict == "cannot tell"
    assert found.criterion(FULL).criterion.needs == ("building_wire", "run_length")
    assert verdict(found, HEAT) == "pass"  # 0.12 W in all


@STRANDED_TABLE_8
@COPPER_WITH_HEAT
@KIRCHHOFF
def test_the_panel_was_read_on_the_first_leg_only():
    legs = {"second_leg_at_rest": "120 V", "second_leg_running": "118 V"}
    legs |= {"second_leg_current": "10 A"}
    panel = {"panel_at_rest": "120 V", "panel_running": "118.5 V"}
    found = upstream(120, 118, 10, building_wire="10 AWG", run_length="40 ft", **legs, **panel)
    one_way = 40 * 1.24e-3 * (1 - 0.00323 * 55)
    first = found.figure("resistance beyond the wiring").figure.value
    second = found.figure("resistance beyond the wiring, second leg").figure.value
    assert first == pytest.approx(0.05 - one_way)
    assert second == pytest.approx(0.2 - one_way)


@STRANDED_TABLE_8
@ONE_AND_FIVE_WATTS
@practice("service and transformer may add 0.1 ohm ahead of the panel")
@KIRCHHOFF
def test_power_factor_pairs_the_most_volts_lost_with_the_least_left():
    # 113 V +-75 %: at 118.3 V of 120 V only 1.7 V are lost, so a fail cannot be certain
    given = {"voltage_at_rest": "120 V", "current": "12 A", "power_factor": "95 %"}
    given |= {"building_wire": "14 AWG", "run_length": "38.8 ft"}
    assert wirecalc.run("upstream", **given, voltage_running="118.3 V").verdict != "fail"
    banded = wirecalc.run("upstream", **given, voltage_running="113 V ±84.75 V")
    assert banded.criterion("heat beyond the wiring").verdict == "cannot tell"

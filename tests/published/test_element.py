"""Heating elements against their plate, and thermal cut-offs against the one they replace."""

from __future__ import annotations

import math

import pytest

import wirecalc

# one maker's manual of a dishwasher: its heater is 28.8 ohm at 500 W; one maker's manual of a
# refrigerator: defrost heater 20 to 23 ohm, 550 to 600 W in all; dryers of 5.0 to 5.6 kW at 240 V
# have 10.3 to 11.5 ohm (V^2/P, common practice)
ELEMENTS = [
    ("28.8 ohm", "500 W", "120 V"),
    ("11.5 ohm", "5.0 kW", "240 V"),
    ("10.3 ohm", "5.6 kW", "240 V"),
    ("22 ohm", "600 W", "115 V"),
]


def verdicts(finding: wirecalc.Finding) -> dict[str, str]:
    return {c.criterion.name: str(c.verdict) for c in finding.criteria}


def element(**given: object) -> wirecalc.Finding:
    plate = {"nameplate_power": "2585 W", "nameplate_voltage": "240 V", "lead_resistance": "0 ohm"}
    return wirecalc.run("element", **(plate | given))


def heat(finding: wirecalc.Finding) -> str:
    return next(a.text for a in finding.answers if a.name == "heat at these volts")


@pytest.mark.parametrize(("ohms", "power", "volts"), ELEMENTS)
def test_elements_of_service_manuals_fit_their_plates(ohms, power, volts):
    given = {"element_resistance": ohms, "nameplate_power": power, "nameplate_voltage": volts}
    assert element(**given).verdict == "pass"


@pytest.mark.parametrize(
    ("ohms", "low", "high"),
    [
        # 240^2 / 2585 = 22.2824 ohm; 10 % more 24.5106, 10 % less 20.0542 (one service text)
        ("24.51 ohm", "pass", "pass"),
        ("24.52 ohm", "fail", "pass"),
        ("20.06 ohm", "pass", "pass"),
        ("20.05 ohm", "pass", "fail"),
        ("5.57 ohm", "pass", "fail"),  # the plate of a 120 V element of these watts
    ],
)
def test_ten_percent_of_the_plate_on_either_side(ohms, low, high):
    found = verdicts(element(element_resistance=ohms))
    assert (found["resistance, upper limit"], found["resistance, lower limit"]) == (low, high)


@pytest.mark.parametrize(
    ("ohms", "verdict"),
    [
        # leads that were not read have up to 0.3 ohm (common practice): 24.6 may be 24.3 to 24.6
        ("24.6 ohm", "cannot tell"),
        ("24.9 ohm", "fail"),  # 24.6 at least
        ("20.2 ohm", "cannot tell"),  # 19.9 at least
        ("22.6 ohm", "pass"),
    ],
)
def test_leads_that_were_not_read_may_decide(ohms, verdict):
    given = {"nameplate_power": "2585 W", "nameplate_voltage": "240 V", "element_resistance": ohms}
    assert wirecalc.run("element", **given).verdict == verdict


@pytest.mark.parametrize(
    ("volts", "says", "verdict"),
    [
        ("240 V", "about the watts", "pass"),
        ("208 V", "no part at fault", "pass"),  # 86.7 % of the volts, 75 % of the watts
        ("188 V", "no part at fault", "pass"),  # 208 V less 10 % is 187.2 V
        ("186 V", "far fewer watts", "marginal"),
        ("120 V", "a quarter of the watts", "marginal"),  # half the volts
        ("60 V", "hardly any heat", "marginal"),
        ("264 V", "about the watts", "pass"),  # makers' sheets: 110 % of the plate
        ("265 V", "too high", "fail"),
    ],
)
def test_volts_at_the_element(volts, says, verdict):
    finding = element(element_resistance="22.4 ohm", voltage=volts)
    assert says in heat(finding)
    assert finding.verdict == verdict


def test_a_quarter_of_the_watts_at_half_the_volts_by_the_plate_alone():
    # Ohm's law: P goes with V^2; 2585 W / 4 = 646.25 W, 5.3854 A
    finding = element(voltage="120 V")
    assert finding.figure("share of the plate's power").figure.value == pytest.approx(25)
    assert finding.figure("power at these volts").figure.value == pytest.approx(646.25)
    assert finding.figure("current at these volts").figure.value == pytest.approx(646.25 / 120)
    assert finding.verdict == "cannot tell"  # the element was not read


def test_an_open_element_fails_and_draws_nothing():
    finding = wirecalc.run("element", element_open="yes", voltage="240 V")
    assert finding.verdict == "fail"
    assert not [f for f in finding.figures if "volts" in f.figure.name]


def test_a_limit_is_rounded_toward_safety_wherever_it_is_shown():
    # 240 V and 3397 W: 0.9 x 57600 / 3397 = 15.2605 and 1.1 x that / 0.9 = 18.6518 ohm
    given = {"nameplate_power": "3397 W", "nameplate_voltage": "240 V"}
    for reading, shown in (("15.3 ohm", "15.27 ohm"), ("18.8 ohm", "18.65 ohm")):
        for leads in ({}, {"lead_resistance": "0 ohm"}):
            finding = wirecalc.run("element", element_resistance=reading, **given, **leads)
            assert any(shown in c.reason for c in finding.criteria), leads


def test_a_reading_that_may_be_all_leads_gives_no_current():
    finding = element(
        element_resistance="0.5 ohm ±0.3 ohm", lead_resistance="0.4 ohm", voltage="240 V"
    )
    assert verdicts(finding)["current at these volts"] == "cannot tell"


def test_insulation_of_the_element_is_named_as_not_checked():
    finding = element(element_resistance="22.4 ohm")
    assert any("insulation" in n.what for n in finding.not_checked)


@pytest.mark.parametrize(
    "spoiled",
    [
        {"element_open": "yes"},
        {"element_resistance": "0.2 ohm", "lead_resistance": "0.2 ohm"},
        {"nameplate_power": "2.585 W"},
        {"nameplate_power": "19 kW", "nameplate_voltage": "12 V"},
    ],
)
def test_what_cannot_be_is_refused(spoiled):
    with pytest.raises(wirecalc.BadInput):
        element(**({"element_resistance": "22.4 ohm"} | spoiled))


CUTOFF = {
    "old_functioning_temperature": "130 C",
    "new_functioning_temperature": "130 C",
    "old_cutoff_current": "15 A",
    "new_cutoff_current": "15 A",
    "old_cutoff_voltage": "250 V",
    "new_cutoff_voltage": "250 V",
    "holding_temperature": "100 C",
    "place_temperature": "80 C",
    "cause_found": "yes",
}


def cutoff(**given: object) -> wirecalc.Finding:
    return wirecalc.run("cutoff", **(CUTOFF | given))


@pytest.mark.parametrize(
    ("given", "verdict"),
    [
        # component makers' texts on IEC 60691: +0/-10 C (two), +0/-5 C (one): the stricter rules
        ({}, "pass"),
        ({"new_functioning_temperature": "131 C"}, "fail"),
        ({"new_functioning_temperature": "140 C"}, "fail"),  # a later sheet of one dryer maker
        ({"new_functioning_temperature": "129 C"}, "marginal"),
        ({"new_functioning_temperature": "125 C"}, "marginal"),
        ({"new_functioning_temperature": "124 C"}, "fail"),
        ({"new_functioning_temperature": "266 F"}, "pass"),  # 130 C
        # the same texts: no fewer amps and volts, holding temperature above the place
        ({"new_cutoff_current": "10 A"}, "fail"),
        ({"new_cutoff_current": "16 A"}, "pass"),
        ({"new_cutoff_voltage": "125 V"}, "fail"),
        ({"place_temperature": "100 C"}, "fail"),
        ({"place_temperature": "99 C"}, "pass"),
        ({"place_temperature": "99 C ±2 C"}, "cannot tell"),
        ({"cause_found": "no"}, "fail"),
    ],
)
def test_a_cutoff_is_replaced_by_the_same(given, verdict):
    assert cutoff(**given).verdict == verdict


@pytest.mark.parametrize("missing", [n for n in CUTOFF if "functioning" not in n])
def test_what_is_not_known_of_a_cutoff_counts_as_lower(missing):
    given = {n: v for n, v in CUTOFF.items() if n != missing}
    assert wirecalc.run("cutoff", **given).verdict == "cannot tell"


def test_both_spans_are_shown():
    finding = cutoff()
    assert finding.figure("lowest mark by one text").figure.value == 125
    assert finding.figure("lowest mark by two texts").figure.value == 120
    assert {"heat-02", "heat-03"} <= {c.key for c in finding.cautions}


def test_the_plates_ohms_are_volts_squared_over_watts():
    finding = element(element_resistance="22.4 ohm")
    found = finding.figure("resistance by the plate, hot").figure.value
    assert math.isclose(found, 240 / (2585 / 240))

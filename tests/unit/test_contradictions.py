"""Readings that cannot be together, or that nothing of the kind gives, pass nothing.

Each danger has its twin with the danger removed, which passes.
"""

from __future__ import annotations

from typing import Any

import pytest

import wirecalc
from wirecalc import BadInput

PIN = {"ground_point": "plug-pin", "cord": "18 AWG", "cord_length": "6 ft"}
BY_CURRENT = {**PIN, "test_current": "2.00 A ±2%"}  # 6 ft of 18 AWG: 0.0392 ohm at 20 C, 78 mV
OHMS = {**PIN, "lead_resistance": "0 ohm"}
COOL = OHMS | {"conductor_temperature": "20 C"}
LEG = {
    **{"voltage_at_rest": "119.8 V", "current": "12 A", "building_wire": "14 AWG"},
    **{"run_length": "100 ft", "load_kind": "heater"},  # 2.58 mohm/ft: 6.2 V of its own
}
RING = {"wire": "18 AWG", "terminal": "ring"}
RUN = {"marked_capacitance": "30 uF", "capacitor_duty": "run", "measured_capacitance": "29 uF"}
HEAT = {"place_temperature": "80 C", "wire_temperature": "150 C", "terminal_material": "vinyl"}
DIP = {
    **{"locked_rotor_current": "12 A", "nameplate_voltage": "115 V", "rated_load_current": "1.6 A"},
    **{"building_wire": "14 AWG", "run_length": "40 ft"},
}
PLUG = {
    **{"nameplate_voltage": "115 V", "voltage_at_rest": "119.4 V", "voltage_running": "117.2 V"},
}
HEATED = {
    **{"voltage_at_rest": "119.8 V", "current": "8.7 A", "run_length": "40 ft"},
    **{"load_kind": "heater", "conductor_temperature": "20 C"},
}
RUNS = {
    **{"nameplate_voltage": "115 V", "current": "5 A", "power_factor": "100 %"},
    **{"building_wire": "14 AWG", "run_length": "40 ft", "conductor_temperature": "75 C"},
}
UNIT = {
    **{"motor_kind": "compressor", "fastened_in_place": "yes", "minimum_ampacity": "9 A"},
    **{"breaker": "15 A", "building_wire": "14 AWG", "ambient": "25 C", "conductors": "2"},
}
ELEMENT = {
    **{"element_resistance": "22.6 ohm", "lead_resistance": "0.2 ohm"},
    **{"nameplate_power": "2585 W", "nameplate_voltage": "240 V"},
}
LEAD = {
    **{"use": "appliance", "wire": "8 AWG", "wire_temperature": "105 C"},
    **{"place_temperature": "60 C"},
}
PINS = {"reading_1_3": "12.3 ohm", "reading_2_3": "12 ohm", "lead_resistance": "0 ohm"}
COLD = {
    **{"cold_resistance": "4.50 ohm", "cold_temperature": "22 C", "hot_time": ["20 s"]},
    **{"room_temperature": "24 C", "lead_resistance": "0.2 ohm"},
}
STUCK = {
    **{"locked_rotor_current": "12 A", "high_time": "0.4 s", "rated_load_current": "1.6 A"},
    **{"settled": "1.2 A", "nameplate_voltage": "115 V", "voltage": "117 V"},
    **{"overload_trips": "0"},
}


def criteria(name: str, given: dict[str, Any]) -> dict[str, str]:
    return {c.criterion.name: str(c.verdict) for c in wirecalc.run(name, **given).criteria}


@pytest.mark.parametrize(
    ("name", "danger", "twin", "criterion", "verdict"),
    [
        # less than the cord's own wire; without a cord less than any
        ("ground", BY_CURRENT | {"path_drop": "1 mV ±0.1 mV"},
         BY_CURRENT | {"path_drop": "90 mV ±1 mV"}, "path against its cord", "cannot tell"),
        ("ground", {"ground_point": "plug-pin", "test_current": "2 A", "path_drop": "1.9 mV"},
         {"ground_point": "plug-pin", "test_current": "2 A", "path_drop": "2.1 mV"},
         "path against its cord", "cannot tell"),
        ("ground", OHMS | {"ground_resistance": "0.03 ohm ±0.005 ohm"},
         OHMS | {"ground_resistance": "0.04 ohm ±0.005 ohm"},
         "path against its cord", "cannot tell"),
        # nine tenths of 7.95 ohm/kft (NEC Table 8, 75 C) x (1 - 0.00323 x 55) x 6 ft: 0.0353 ohm
        ("ground", COOL | {"ground_resistance": "0.0341 ohm ±0.001 ohm"},
         COOL | {"ground_resistance": "0.0345 ohm ±0.001 ohm"},
         "path against its cord", "cannot tell"),
        # no volts lost in a wire that takes six
        ("upstream", LEG | {"voltage_running": "119.8 V"}, LEG | {"voltage_running": "113.6 V"},
         "heat beyond the wiring", "cannot tell"),
        # 60 N typed as 60 lbf: soft copper of 18 AWG breaks at 51 lbf at the most (40 ksi)
        ("pull", RING | {"force": "52 lbf"}, RING | {"force": "50 lbf"},
         "force against the wire's own", "cannot tell"),
        ("capacitor", RUN | {"tolerance": "15.1 %"}, RUN | {"tolerance": "15 %"},
         "tolerance", "cannot tell"),
        ("heat-rating", HEAT | {"terminal_temperature": "106 C"},
         HEAT | {"terminal_temperature": "105 C"}, "make of the terminal", "cannot tell"),
        # 90 % of 115 V: 103.5 V
        ("dip", DIP | {"voltage_at_rest": "103.4 V"}, DIP | {"voltage_at_rest": "103.5 V"},
         "volts at rest", "fail"),
        ("windings", PINS | {"reading_1_2": "0.3 ohm"},
         {"reading_1_3": "14 ohm", "reading_2_3": "12 ohm", "reading_1_2": "2 ohm",
          "lead_resistance": "0 ohm"}, "start over run winding, upper limit", "cannot tell"),
        ("winding-heat", COLD | {"hot_resistance": ["4.53 ohm"]},
         COLD | {"hot_resistance": ["4.6 ohm"]}, "warmer than the room", "cannot tell"),
        # 2.83 times 12 A x 117 / 115 is 34.5 A
        ("locked", STUCK | {"high_current": "111 A"}, STUCK | {"high_current": "11.1 A"},
         "high current", "cannot tell"),
        # an outlet of a house carries 60 A at the most
        ("supply", PLUG | {"current": "60.1 A"}, PLUG | {"current": "60 A"},
         "volts lost at a full outlet, 12 A or more", "cannot tell"),
        # 2.7 V in 40 ft of 18 AWG, which is no building wire; of 14 AWG there and back 1.1 V
        ("upstream", HEATED | {"building_wire": "16 AWG", "voltage_running": "117.1 V"},
         HEATED | {"building_wire": "14 AWG", "voltage_running": "117.9 V"},
         "gauge of the building wire", "cannot tell"),
        # 110 % of 115 V is 126.5 V; 1.3 V are lost
        ("drop", RUNS | {"voltage_at_rest": "128 V"}, RUNS | {"voltage_at_rest": "127.7 V"},
         "volts at the load, upper limit", "fail"),
        ("dip", DIP | {"voltage_at_rest": "126.6 V"}, DIP | {"voltage_at_rest": "126.5 V"},
         "volts at rest", "cannot tell"),
        ("dip", DIP | {"voltage_at_rest": "118 V", "other_current": "19 A"},
         DIP | {"voltage_at_rest": "118 V", "other_current": "18 A"},
         "current of the wire", "cannot tell"),
        # 225 % over 125 % of 11.1 A is 19.98 A, next 20 A; of 11.2 A 20.16 A, next 25 A
        ("motor-circuit", UNIT | {"minimum_ampacity": "11.1 A", "maximum_breaker": "25 A"},
         UNIT | {"minimum_ampacity": "11.2 A", "maximum_breaker": "25 A"},
         "largest device beside the least ampacity", "cannot tell"),
        ("motor-circuit", UNIT | {"minimum_ampacity": "4 A", "maximum_breaker": "20 A"},
         UNIT | {"minimum_ampacity": "4 A", "maximum_breaker": "15 A"},
         "largest device beside the least ampacity", "cannot tell"),
        # a lamp or a block heater with the ohms of its plate, cold
        ("element", ELEMENT | {"element_kind": "lamp"}, ELEMENT | {"element_kind": "wire"},
         "resistance, lower limit", "cannot tell"),
        ("element", ELEMENT | {"element_kind": "ptc"},
         ELEMENT | {"element_kind": "ptc", "maker_element": "22 ohm"},
         "resistance, lower limit", "cannot tell"),
        # thicker than 10 AWG there is the aircraft value alone: 38 A of 105 C, 71 A of 200 C
        ("ampacity", LEAD | {"current": "39 A"}, LEAD | {"current": "38 A"},
         "load against the wire maker's value", "cannot tell"),
        ("ampacity", LEAD | {"current": "72 A"}, LEAD | {"current": "38 A"},
         "load against the largest published value", "fail"),
    ],
)  # fmt: skip
def test_what_cannot_be_passes_nothing(
    name: str, danger: dict[str, Any], twin: dict[str, Any], criterion: str, verdict: str
) -> None:
    assert criteria(name, danger)[criterion] == verdict
    assert wirecalc.run(name, **danger).verdict in ("cannot tell", "fail")
    assert criteria(name, twin).get(criterion, "pass") == "pass"


def test_solid_wire_is_no_extension_cord() -> None:
    given = {"extension_length": "25 ft", "current": "1.6 A"}
    with pytest.raises(BadInput, match="solid wire is that of a building"):
        wirecalc.run("extension", extension_cord="14 AWG solid", **given)
    assert wirecalc.run("extension", extension_cord="14 AWG", **given).verdict


def test_a_rating_under_that_of_any_wire_is_no_old_one_to_match() -> None:
    """105 C with a slipped point would let any wire take its place."""
    given = {
        **{"old_wire": "18 AWG", "new_wire": "18 AWG", "new_wire_temperature": "80 C"},
        **{"old_wire_voltage": "300 V", "new_wire_voltage": "300 V"},
    }
    for slipped in ("10.5 C", "59 C"):
        with pytest.raises(BadInput, match="no rating of a wire"):
            wirecalc.run("substitute", old_wire_temperature=slipped, **given)
    judged = criteria("substitute", given | {"old_wire_temperature": "60 C"})
    assert judged["temperature rating"] == "pass"

"""What one call costs inside a process: bare functions, whole runs, units, tables.

Compared in groups: the bare function of each bundled calculation on plain floats (budget: 3 to
20 us) beside a whole run of it from texts in the declared units and in other units; a quantity
read without and with a conversion, beside pint itself; a table read and a table looked up.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pint
import pytest

import wirecalc
from wirecalc import tables
from wirecalc.typed.quantities import read_quantity
from wirecalc.typed.size_ranges import read_size_range
from wirecalc.typed.wires import read_wire

LIGHT = {"max_time": 0.2, "min_rounds": 5}
CATALOGUE = wirecalc.build(bundled_only=True)

FORCES = [27.9, 28.6, 27.2, 28.3, 27.5]
# calculation -> (texts in the declared units, the same in other units, plain values)
CASES: dict[str, tuple[dict[str, Any], dict[str, Any], dict[str, Any]]] = {
    "breaker": (
        {"current": "8.7 A", "breaker": "15 A", "building_wire": "14 AWG", "ambient": "25 C"},
        {"current": "8700 mA", "breaker": "15 A", "building_wire": "14 AWG", "ambient": "77 F"},
        {"current": 8.7, "breaker": 15.0, "building_wire": read_wire("14 AWG"), "ambient": 25.0},
    ),
    "circuit": (
        {"breaker": "15 A", "plug_loads": ["6.2 A", "1.6 A"], "building_wire": "14 AWG"},
        {"breaker": "15 A", "plug_loads": ["6200 mA", "1600 mA"], "building_wire": "14 AWG"},
        {"breaker": 15.0, "plug_loads": [6.2, 1.6], "building_wire": read_wire("14 AWG")},
    ),
    "motor-circuit": (
        {
            "motor_kind": "motor",
            "fastened_in_place": "yes",
            "horsepower": "0.5 hp",
            "nameplate_voltage": "115 V",
            "breaker": "25 A",
        },
        {
            "motor_kind": "motor",
            "fastened_in_place": "yes",
            "horsepower": "372.85 W",
            "nameplate_voltage": "115000 mV",
            "breaker": "25 A",
        },
        {
            "motor_kind": "motor",
            "fastened_in_place": True,
            "horsepower": 0.5,
            "nameplate_voltage": 115.0,
            "breaker": 25.0,
        },
    ),
    "inrush": (
        {
            "rated_load_current": "1.6 A",
            "locked_rotor_current": "12 A",
            "peak": "11 A",
            "settled": "1.2 A",
            "settle_time": "0.4 s",
        },
        {
            "rated_load_current": "1600 mA",
            "locked_rotor_current": "12 A",
            "peak": "11 A",
            "settled": "1200 mA",
            "settle_time": "400 ms",
        },
        {
            "rated_load_current": 1.6,
            "locked_rotor_current": 12.0,
            "peak": 11.0,
            "settled": 1.2,
            "settle_time": 0.4,
        },
    ),
    "ampacity": (
        {"use": "cord", "wire": "16 AWG", "cord_conductors": 2, "current": "8.7 A"},
        {"use": "cord", "wire": "16 AWG", "cord_conductors": 2, "current": "8700 mA"},
        {"use": "cord", "wire": read_wire("16 AWG"), "cord_conductors": 2, "current": 8.7},
    ),
    "choose": (
        {"wire": ["14 AWG"], "connector": "push-on", "current": "8.7 A"},
        {"wire": ["14 AWG"], "connector": "push-on", "current": "8700 mA"},
        {"wire": [read_wire("14 AWG")], "connector": "push-on", "current": 8.7},
    ),
    "dip": (
        {
            "locked_rotor_current": "14.2 A",
            "nameplate_voltage": "115 V",
            "voltage_at_rest": "117.5 V",
            "building_wire": "14 AWG",
            "run_length": "60 ft",
        },
        {
            "locked_rotor_current": "14.2 A",
            "nameplate_voltage": "115 V",
            "voltage_at_rest": "117500 mV",
            "building_wire": "14 AWG",
            "run_length": "18.3 m",
        },
        {
            "locked_rotor_current": 14.2,
            "nameplate_voltage": 115.0,
            "voltage_at_rest": 117.5,
            "building_wire": read_wire("14 AWG"),
            "run_length": 60.0,
        },
    ),
    "drop": (
        {
            "current": "1.6 A",
            "nameplate_voltage": "115 V",
            "building_wire": "14 AWG",
            "run_length": "60 ft",
        },
        {
            "current": "1600 mA",
            "nameplate_voltage": "115 V",
            "building_wire": "14 AWG",
            "run_length": "18.3 m",
        },
        {
            "current": 1.6,
            "nameplate_voltage": 115.0,
            "building_wire": read_wire("14 AWG"),
            "run_length": 60.0,
        },
    ),
    "extension": (
        {
            "extension_cord": "16 AWG",
            "extension_length": "50 ft",
            "current": "1.6 A",
            "maker_allows": "no",
        },
        {
            "extension_cord": "16 AWG",
            "extension_length": "15 m",
            "current": "1600 mA",
            "maker_allows": "no",
        },
        {
            "extension_cord": read_wire("16 AWG"),
            "extension_length": 50.0,
            "current": 1.6,
            "maker_allows": "no",
        },
    ),
    "equivalent": (
        {"wire": "1.5 mm2"},
        {"wire": "1.5 mm2"},
        {"wire": read_wire("1.5 mm2")},
    ),
    "capacitor": (
        {"capacitor_current": "2.05 A", "capacitor_voltage": "214 V", "frequency": "60 Hz"}
        | {"marked_capacitance": "30 uF", "tolerance": "5 %"},
        {"capacitor_current": "2050 mA", "capacitor_voltage": "0.214 kV", "frequency": "60 Hz"}
        | {"marked_capacitance": "30000 nF", "tolerance": "5 %"},
        {"capacitor_current": 2.05, "capacitor_voltage": 214.0, "frequency": 60.0}
        | {"marked_capacitance": 30.0, "tolerance": 5.0},
    ),
    "capacitor-swap": (
        {"old_capacitor": "30 uF", "new_capacitor": "30 uF", "old_capacitor_voltage": "250 V"}
        | {"new_capacitor_voltage": "370 V", "old_capacitor_duty": "run"}
        | {"new_capacitor_duty": "run"},
        {"old_capacitor": "30000 nF", "new_capacitor": "30 uF", "old_capacitor_voltage": "250 V"}
        | {"new_capacitor_voltage": "0.37 kV", "old_capacitor_duty": "run"}
        | {"new_capacitor_duty": "run"},
        {"old_capacitor": 30.0, "new_capacitor": 30.0, "old_capacitor_voltage": 250.0}
        | {"new_capacitor_voltage": 370.0, "old_capacitor_duty": "run"}
        | {"new_capacitor_duty": "run"},
    ),
    "discharge": (
        {"marked_capacitance": "30 uF", "resistor": "20000 ohm", "capacitor_voltage": "214 V"},
        {"marked_capacitance": "30 uF", "resistor": "20 kohm", "capacitor_voltage": "0.214 kV"},
        {"marked_capacitance": 30.0, "resistor": 20000.0, "capacitor_voltage": 214.0},
    ),
    "winding-heat": (
        {"cold_resistance": "4.5 ohm", "cold_temperature": "22 C", "room_temperature": "24 C"}
        | {"hot_resistance": ["5.9 ohm", "5.8 ohm"], "hot_time": ["20 s", "50 s"]},
        {"cold_resistance": "4500 mohm", "cold_temperature": "72 F", "room_temperature": "75 F"}
        | {"hot_resistance": ["5900 mohm", "5.8 ohm"], "hot_time": ["20 s", "1 min"]},
        {"cold_resistance": 4.5, "cold_temperature": 22.0, "room_temperature": 24.0}
        | {"hot_resistance": [5.9, 5.8], "hot_time": [20.0, 50.0]},
    ),
    "windings": (
        {"reading_1_2": "4.1 ohm", "reading_1_3": "16.2 ohm", "reading_2_3": "12.2 ohm"},
        {"reading_1_2": "4100 mohm", "reading_1_3": "16.2 ohm", "reading_2_3": "0.0122 kohm"},
        {"reading_1_2": 4.1, "reading_1_3": 16.2, "reading_2_3": 12.2},
    ),
    "gauge": (
        {"strands": 41, "strand_diameter": "0.254 mm"},
        {"strands": 41, "strand_diameter": "10 mil"},
        {"strands": 41, "strand_diameter": 0.254},
    ),
    "start-curve": (
        {
            "textbook_motor": "capacitor-start-110V",
            "start_method": "none",
            "voltage_at_rest": "110 V",
        },
        {
            "textbook_motor": "capacitor-start-110V",
            "start_method": "none",
            "voltage_at_rest": "110000 mV",
        },
        {
            "textbook_motor": "capacitor-start-110V",
            "start_method": "none",
            "voltage_at_rest": 110.0,
        },
    ),
    "heat-rating": (
        {"place_temperature": "60 C", "wire_temperature": "105 C", "terminal_temperature": "105 C"},
        {
            "place_temperature": "140 F",
            "wire_temperature": "105 C",
            "terminal_temperature": "105 C",
        },
        {"place_temperature": 60.0, "wire_temperature": 105.0, "terminal_temperature": 105.0},
    ),
    "element": (
        {"element_resistance": "22.6 ohm", "nameplate_power": "2585 W"},
        {"element_resistance": "22600 mohm", "nameplate_power": "2.585 kW"},
        {"element_resistance": 22.6, "nameplate_power": 2585.0},
    ),
    "insulation": (
        {"insulation_resistance": "50 Mohm", "protection": "class-i", "tested_part": "heater"},
        {"insulation_resistance": "50000 kohm", "protection": "class-i", "tested_part": "heater"},
        {"insulation_resistance": 50.0, "protection": "class-i", "tested_part": "heater"},
    ),
    "leakage": (
        {"leakage_current": "0.3 mA", "machine_kind": "stationary", "switched_on": True},
        {"leakage_current": "300 uA", "machine_kind": "stationary", "switched_on": True},
        {"leakage_current": 0.3, "machine_kind": "stationary", "switched_on": True},
    ),
    "screening": (
        {"over_range": True, "ohm_range": "20 Mohm", "trip_current": "6 mA"},
        {"over_range": True, "ohm_range": "20000 kohm", "trip_current": "6000 uA"},
        {"over_range": True, "ohm_range": 20.0, "trip_current": 6.0},
    ),
    "ground": (
        {"ground_point": "plug-pin", "ground_resistance": "0.08 ohm", "lead_resistance": "0 ohm"},
        {"ground_point": "plug-pin", "ground_resistance": "80 mohm", "lead_resistance": "0 ohm"},
        {"ground_point": "plug-pin", "ground_resistance": 0.08, "lead_resistance": 0.0},
    ),
    "cutoff": (
        {"old_functioning_temperature": "130 C", "new_functioning_temperature": "130 C"},
        {"old_functioning_temperature": "266 F", "new_functioning_temperature": "266 F"},
        {"old_functioning_temperature": 130.0, "new_functioning_temperature": 130.0},
    ),
    "duty": (
        {"on_times": ["18 min", "17 min"], "off_times": ["22 min", "23 min"]},
        {"on_times": ["0.3 h", "17 min"], "off_times": ["22 min", "0.4 h"]},
        {"on_times": [18.0, 17.0], "off_times": [22.0, 23.0]},
    ),
    "start-device": (
        {"start_device": "ptc", "device_resistance": "6.8 ohm", "by_itself": True},
        {"start_device": "ptc", "device_resistance": "6800 mohm", "by_itself": True},
        {"start_device": "ptc", "device_resistance": 6.8, "by_itself": True},
    ),
    "overload": (
        {"overload_resistance": "0.4 ohm", "trip_temperature": "110 C"},
        {"overload_resistance": "400 mohm", "trip_temperature": "230 F"},
        {"overload_resistance": 0.4, "trip_temperature": 110.0},
    ),
    "locked": (
        {"high_time": "6 s", "high_current": "11 A", "locked_rotor_current": "12 A"},
        {"high_time": "6000 ms", "high_current": "11 A", "locked_rotor_current": "12 A"},
        {"high_time": 6.0, "high_current": 11.0, "locked_rotor_current": 12.0},
    ),
    "joint-drop": (
        {"drop": "0.014 V", "joint_current": "8.7 A", "wire": "16 AWG", "joint_length": "150 mm"},
        {"drop": "24 mV", "joint_current": "8.7 A", "wire": "16 AWG", "joint_length": "6 in"},
        {"drop": 0.014, "joint_current": 8.7, "wire": read_wire("16 AWG"), "joint_length": 150.0},
    ),
    "pull-batch": (
        {"wire": "18 AWG", "terminal": "ring", "force": [f"{f} lbf" for f in FORCES]},
        {"wire": "18 AWG", "terminal": "ring", "force": [f"{f * 4.45:.1f} N" for f in FORCES]},
        {"wire": read_wire("18 AWG"), "terminal": "ring", "force": FORCES},
    ),
    "ring": (
        {"stud": "No.8", "wire": "16 AWG", "hole": "4.4 mm"},
        {"stud": "No.8", "wire": "16 AWG", "hole": "0.173 in"},
        {"stud": "No.8", "wire": read_wire("16 AWG"), "hole": 4.4},
    ),
    "strands": (
        {"wire": "26x30 AWG", "cut_strands": 1, "nicked_strands": 0},
        {"wire": "26x30 AWG", "cut_strands": 1, "nicked_strands": 0},
        {"wire": read_wire("26x30 AWG"), "cut_strands": 1, "nicked_strands": 0},
    ),
    "short-time": (
        {"wire": "18 AWG", "overcurrent": "180 A", "overcurrent_time": "0.1 s"},
        {"wire": "18 AWG", "overcurrent": "180000 mA", "overcurrent_time": "100 ms"},
        {"wire": read_wire("18 AWG"), "overcurrent": 180.0, "overcurrent_time": 0.1},
    ),
    "substitute": (
        {"old_wire": "16 AWG", "new_wire": "14 AWG"},
        {"old_wire": "16 AWG", "new_wire": "14 AWG"},
        {"old_wire": read_wire("16 AWG"), "new_wire": read_wire("14 AWG")},
    ),
    "supply": (
        {"nameplate_voltage": "115 V", "voltage_running": "117 V", "voltage_at_rest": "119 V"},
        {"nameplate_voltage": "115 V", "voltage_running": "0.117 kV", "voltage_at_rest": "119 V"},
        {"nameplate_voltage": 115.0, "voltage_running": 117.0, "voltage_at_rest": 119.0},
    ),
    "upstream": (
        {"voltage_at_rest": "119.8 V", "voltage_running": "116.6 V", "current": "8.7 A"}
        | {"building_wire": "14 AWG", "run_length": "40 ft"},
        {"voltage_at_rest": "119.8 V", "voltage_running": "116.6 V", "current": "8700 mA"}
        | {"building_wire": "14 AWG", "run_length": "12.2 m"},
        {"voltage_at_rest": 119.8, "voltage_running": 116.6, "current": 8.7}
        | {"building_wire": read_wire("14 AWG"), "run_length": 40.0},
    ),
    "tab": (
        {"tab_width": "0.25 in", "wire": "14 AWG", "current": "10.8 A"},
        {"tab_width": "6.35 mm", "wire": "14 AWG", "current": "10.8 A"},
        {"tab_width": 0.25, "wire": read_wire("14 AWG"), "current": 10.8},
    ),
    "trip": (
        {"device": "iec-60898-b", "breaker": "10 A", "overcurrent": "14.2 A"}
        | {"overcurrent_time": "0.4 s", "device_ambient": "25 C"},
        {"device": "iec-60898-b", "breaker": "10 A", "overcurrent": "14200 mA"}
        | {"overcurrent_time": "400 ms", "device_ambient": "77 F"},
        {"device": "iec-60898-b", "breaker": 10.0, "overcurrent": 14.2}
        | {"overcurrent_time": 0.4, "device_ambient": 25.0},
    ),
    "wire-break": (
        {"wire": "18 AWG"},
        {"wire": "18 AWG"},
        {"wire": read_wire("18 AWG")},
    ),
    "pull": (
        {"wire": "18 AWG", "force": "24 lbf", "terminal": "ring"},
        {"wire": "18 AWG", "force": "107 N", "terminal": "ring"},
        {"wire": read_wire("18 AWG"), "force": 24.0, "terminal": "ring"},
    ),
    "splice": (
        {"wire": ["16 AWG", "16 AWG"], "barrel": "16-10 AWG", "place_temperature": "60 C"},
        {"wire": ["16 AWG", "16 AWG"], "barrel": "16-10 AWG", "place_temperature": "140 F"},
        {
            "wire": [read_wire("16 AWG"), read_wire("16 AWG")],
            "barrel": read_size_range("16-10 AWG"),
            "place_temperature": 60.0,
        },
    ),
    "strip": (
        {"wire": ["18 AWG"], "style": "closed", "barrel_length": "6.5 mm", "stripped": "8 mm"},
        {"wire": ["18 AWG"], "style": "closed", "barrel_length": "1/4 in", "stripped": "5/16 in"},
        {"wire": [read_wire("18 AWG")], "style": "closed", "barrel_length": 6.5, "stripped": 8.0},
    ),
}

names = pytest.mark.parametrize("name", sorted(CASES))
Benchmark = Callable[..., Any]


def test_every_bundled_calculation_is_measured() -> None:
    bundled = {n for p in CATALOGUE.plugins if p.bundled for n in p.calculations}
    assert {*CASES, "trace"} == bundled  # a recording: test_trace.py


@names
@pytest.mark.benchmark(group="one call: bare function on floats", **LIGHT)
def test_bare_function(benchmark: Benchmark, name: str) -> None:
    calc, values = CATALOGUE.calculations[name].calculation, CASES[name][2]
    assert benchmark(lambda: list(calc(**values)))


@names
@pytest.mark.benchmark(group="one call: run from texts in the declared units", **LIGHT)
def test_run_in_declared_units(benchmark: Benchmark, name: str) -> None:
    finding = benchmark(CATALOGUE.run, name, CASES[name][0])
    assert finding.criteria or finding.figures


@names
@pytest.mark.benchmark(group="one call: run from texts in other units", **LIGHT)
def test_run_in_other_units(benchmark: Benchmark, name: str) -> None:
    finding = benchmark(CATALOGUE.run, name, CASES[name][1])
    assert finding.criteria or finding.figures


@pytest.mark.parametrize("error", ["", " ±(2%+5)"], ids=["exact", "with the meter's error"])
@pytest.mark.benchmark(group="one call: three runs for a reading with an error", **LIGHT)
def test_run_over_a_band(benchmark: Benchmark, error: str) -> None:
    given = CASES["pull"][0] | {"force": f"24.0 lbf{error}"}
    finding = benchmark(CATALOGUE.run, "pull", given)
    assert finding.verdict is not None


@pytest.mark.parametrize("text", ["23.4 lbf", "104 N", "23.4 lbf ±(2%+5)", "104 N ±2 N"])
@pytest.mark.benchmark(group="reading a quantity in lbf", **LIGHT)
def test_read_quantity(benchmark: Benchmark, text: str) -> None:
    assert 23 < benchmark(read_quantity, text, "force", "lbf").value < 24


@pytest.mark.benchmark(group="reading a quantity in lbf", **LIGHT)
def test_pint_reads_the_same_quantity(benchmark: Benchmark) -> None:
    registry = pint.UnitRegistry()
    value = benchmark(lambda: registry.Quantity("104 newton").to("force_pound").magnitude)
    assert 23 < value < 24


@pytest.mark.parametrize("name", ["awg", "cautions", "nec-ampacity"])
@pytest.mark.benchmark(group="a table read from its files", **LIGHT)
def test_table_read(benchmark: Benchmark, name: str) -> None:
    assert benchmark(tables.read, tables.bundled_folder(), name).rows


@pytest.mark.benchmark(group="a table that is loaded", **LIGHT)
def test_table_load_again(benchmark: Benchmark) -> None:
    assert benchmark(tables.load, "nec-ampacity").rows


@pytest.mark.benchmark(group="a table that is loaded", **LIGHT)
def test_table_row(benchmark: Benchmark) -> None:
    assert benchmark(tables.load("code-letters").row, letter="V").cells["letter"] == "V"


@pytest.mark.benchmark(group="plugins found and loaded again", **LIGHT)
def test_build_the_catalogue(benchmark: Benchmark) -> None:
    assert benchmark(wirecalc.build, bundled_only=True).calculations

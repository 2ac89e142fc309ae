"""Inputs that must be refused, each with what the refusal has to show and what would do."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

# one good run of each calculation, with all inputs that a case below spoils
GOOD: dict[str, dict[str, str]] = {
    "pull": {"wire": "18 AWG", "force": "24 lbf", "terminal": "ring"},
    "strip": {"wire": "18 AWG", "style": "open", "barrel_length": "6.5 mm"}
    | {"window_length": "2 mm", "stripped": "8 mm"},
    "splice": {"wire": "16 AWG", "barrel": "16-14 AWG", "current": "8.7 A"}
    | {"circuit_voltage": "120 V"}
    | {"wire_temperature": "105 C", "terminal_temperature": "105 C", "place_temperature": "60 C"}
    | {"terminal_voltage": "300 V", "wire_limit": "2", "listed_for": "stranded"},
    "breaker": {"current": "8.7 A", "breaker": "15 A", "building_wire": "14 AWG", "run_time": "1 h"}
    | {"insulation_class": "60 C", "termination_temperature": "60 C", "receptacle": "15 A"}
    | {"only_receptacle": "yes", "cord": "16 AWG", "cord_conductors": "2", "ambient": "25 C"}
    | {"conductors": "2", "maximum_breaker": "20 A", "plate_current": "9 A", "has_motor": "no"},
    "inrush": {"rated_load_current": "1.6 A", "locked_rotor_current": "12 A", "voltage": "117 V"}
    | {"nameplate_voltage": "115 V", "frequency": "60 Hz", "peak": "11 A", "settled": "1.2 A"}
    | {"horsepower": "1/4 hp", "code_letter": "L", "settle_time": "0.4 s", "breaker": "15 A"}
    | {"nameplate_current": "6.5 A", "nameplate_load": "appliance"},
    "circuit": {"breaker": "15 A", "plug_loads": "6.2 A", "long_plug_loads": "1.6 A"}
    | {"fastened_loads": "3 A", "long_fastened_loads": "2 A", "light_loads": "1 A"}
    | {
        "receptacle": "15 A",
        "building_wire": "14 AWG",
        "insulation_class": "60 C",
        "ambient": "25 C",
    }
    | {"termination_temperature": "60 C", "conductors": "2", "feeds_others": "yes"},
    "motor-circuit": {"motor_kind": "motor", "fastened_in_place": "yes", "horsepower": "1/2 hp"}
    | {"nameplate_voltage": "115 V", "full_load_current": "8.6 A", "rated_load_current": "6 A"}
    | {"branch_selection_current": "7 A", "minimum_ampacity": "9 A", "maximum_breaker": "25 A"}
    | {"breaker": "25 A", "other_current": "3 A", "building_wire": "14 AWG", "ambient": "25 C"}
    | {"motor_device": "inverse-time breaker", "plate_governs": "no"},
    "ampacity": {"use": "building", "wire": "14 AWG", "insulation_class": "60 C"}
    | {"termination_temperature": "60 C", "conductors": "2", "cord_conductors": "2"}
    | {"wire_temperature": "105 C", "place_temperature": "60 C", "ambient": "25 C"}
    | {"current": "8.7 A"},
    "equivalent": {"wire": "14 AWG"},
    "gauge": {"strands": "41", "strand_diameter": "0.254 mm", "outside_diameter": "3 mm"}
    | {"metal": "copper"},
    "strands": {"wire": "16 AWG", "cut_strands": "0", "nicked_strands": "1", "strands": "26"}
    | {"strand_standard": "none"},
    "substitute": {"old_wire": "18 AWG", "new_wire": "16 AWG", "old_wire_temperature": "80 C"}
    | {"new_wire_temperature": "105 C", "old_wire_voltage": "300 V", "new_wire_voltage": "600 V"}
    | {"old_oil_resistant": "no", "new_oil_resistant": "no", "old_flame_rated": "yes"}
    | {"new_flame_rated": "yes"},
    "wire-break": {"wire": "18 AWG"},
    "joint-drop": {"drop": "0.36 V", "joint_current": "8.7 A", "wire": "16 AWG"}
    | {"joint_length": "150 mm"},
    "tab": {"tab_width": "0.250 in", "wire": "14 AWG", "current": "10.8 A"}
    | {"terminal_width": "0.250 in", "tab_thickness": "0.032 in"}
    | {"terminal_thickness": "0.032 in"},
    "ring": {"stud": "No.8", "wire": "14 AWG", "hole": "4.4 mm", "stud_terminals": "2"},
    "heat-rating": {"place_temperature": "60 C", "near_heater": "yes", "wire_temperature": "105 C"}
    | {"terminal_temperature": "105 C", "terminal_material": "nylon"}
    | {"sleeve_temperature": "125 C", "sleeve_material": "PVC tubing"},
    "supply": {"nameplate_voltage": "240 V", "nameplate_voltage_low": "208 V"}
    | {"voltage_at_rest": "236 V", "voltage_running": "232 V", "voltage_at_start": "225 V"}
    | {"nominal_voltage": "240 V", "current": "18 A"},
    "upstream": {"voltage_at_rest": "119.8 V", "voltage_running": "116.6 V", "current": "8.7 A"}
    | {
        "building_wire": "14 AWG",
        "run_length": "40 ft",
        "extension_cord": "16 AWG",
        "extension_length": "6 ft",
    }
    | {"conductor_temperature": "20 C", "panel_at_rest": "120.1 V", "panel_running": "119.6 V"}
    | {"load_kind": "motor", "power_factor": "80 %"}
    | {"second_leg_at_rest": "119.9 V", "second_leg_running": "118.2 V"}
    | {"second_leg_current": "8.7 A"},
    "short-time": {"wire": "16 AWG", "overcurrent": "180 A", "overcurrent_time": "0.5 s"}
    | {"insulation": "pvc-70", "temperature_before": "30 C", "cut_strands": "2"}
    | {"strands": "26"},
    "trip": {"device": "ul-489", "breaker": "15 A", "locked_rotor_current": "40 A"}
    | {"settle_time": "0.4 s", "settled": "5 A", "on_time": "60 s", "off_time": "20 s"}
    | {"starts": "3", "device_ambient": "30 C", "other_current": "6.2 A"},
    "drop": {"current": "1.6 A", "nameplate_voltage": "115 V", "building_wire": "14 AWG"}
    | {"run_length": "60 ft", "cord": "16 AWG", "cord_length": "50 ft", "other_current": "6.2 A"}
    | {"other_leg_current": "5 A", "system": "three-wire", "power_factor": "80 %"}
    | {"conductor_temperature": "60 C", "voltage_at_rest": "117.5 V"},
    "dip": {"locked_rotor_current": "14.2 A", "nameplate_voltage": "115 V"}
    | {"voltage_at_rest": "117.5 V", "rated_load_current": "1.6 A", "building_wire": "14 AWG"}
    | {"run_length": "60 ft", "cord": "16 AWG", "cord_length": "50 ft", "other_current": "6.2 A"}
    | {"voltage_at_start": "104 V", "start_power_factor": "65 %", "conductor_temperature": "60 C"},
    "extension": {"extension_cord": "16 AWG", "extension_length": "50 ft", "current": "1.6 A"}
    | {"maker_allows": "no", "grounding": "yes", "cord_rating": "15 A", "cord_conductors": "2"}
    | {"cord_ambient": "25 C", "nameplate_voltage": "115 V", "locked_rotor_current": "14.2 A"}
    | {"voltage_at_rest": "117.5 V", "voltage_at_start": "104 V", "building_wire": "14 AWG"}
    | {"run_length": "60 ft", "other_current": "6.2 A", "conductor_temperature": "60 C"}
    | {"has_motor": "yes", "motor_start": "direct", "protection": "class-i"},
    "element": {"maker_element": "22 ohm"}
    | {"element_resistance": "22.6 ohm", "lead_resistance": "0.2 ohm"}
    | {"nameplate_power": "2585 W", "nameplate_voltage": "240 V", "element_voltage": "232 V"},
    "cutoff": {"old_functioning_temperature": "130 C", "new_functioning_temperature": "130 C"}
    | {"old_cutoff_current": "15 A", "new_cutoff_current": "15 A", "old_cutoff_voltage": "250 V"}
    | {"new_cutoff_voltage": "250 V", "holding_temperature": "100 C", "place_temperature": "80 C"}
    | {"cause_found": "yes"},
    "duty": {"on_times": "18 min", "off_times": "22 min", "running_power": "120 W"}
    | {"after_restock": "no"},
    "start-device": {"start_device": "ptc", "device_resistance": "6.8 ohm"}
    | {"lead_resistance": "0.2 ohm"}
    | {"by_itself": "yes", "device_cold": "yes", "maker_resistance": "6.8 ohm"}
    | {"maker_tolerance": "25 %", "nameplate_voltage": "115 V"},
    "overload": {"overload_resistance": "0.6 ohm", "lead_resistance": "0.2 ohm"}
    | {"overload_cold": "yes", "trip_temperature": "110 C", "reset_temperature": "68 C"},
    "locked": {"high_time": "6 s", "high_current": "11 A", "locked_rotor_current": "12 A"}
    | {"rated_load_current": "1.6 A", "nameplate_voltage": "115 V", "voltage": "117 V"}
    | {"settled": "1.2 A", "overload_trips": "3", "reset_time": "3 min"},
    "windings": {"reading_1_2": "4.1 ohm", "reading_1_3": "16.2 ohm", "reading_2_3": "12.2 ohm"}
    | {"lead_resistance": "0.1 ohm", "open_pin": "none", "common_pin": "2", "maker_run": "4 ohm"}
    | {"maker_start": "12 ohm", "winding_temperature": "24 C", "case_resistance": "20 Mohm"}
    | {"maker_each": "6.2 ohm"},
    "winding-heat": {"cold_resistance": "4.5 ohm", "cold_temperature": "22 C"}
    | {"hot_resistance": "5.9 ohm", "hot_time": "20 s", "room_temperature": "24 C"}
    | {"lead_resistance": "0.1 ohm", "winding_metal": "copper", "winding_class": "B"},
    "capacitor": {"capacitor_current": "2.05 A", "capacitor_voltage": "214 V"}
    | {"frequency": "60 Hz", "marked_capacitance": "30 uF"}
    | {"tolerance": "5 %", "capacitor_rating": "250 V", "voltage": "120 V"},
    "capacitor-swap": {"old_capacitor": "30 uF", "new_capacitor": "30 uF"}
    | {"old_capacitor_voltage": "250 V", "new_capacitor_voltage": "370 V"}
    | {"old_capacitor_duty": "run", "new_capacitor_duty": "run"}
    | {"old_capacitor_temperature": "70 C", "new_capacitor_temperature": "85 C"}
    | {"cutoff_voltage": "280 V"},
    "discharge": {"marked_capacitance": "30 uF", "resistor": "20000 ohm"}
    | {"capacitor_voltage": "214 V", "left_voltage": "300 V", "resistor_power": "2 W"},
    "start-curve": {"nameplate_voltage": "115 V", "frequency": "60 Hz", "horsepower": "1/4 hp"}
    | {"locked_rotor_current": "20 A", "rated_load_current": "4.4 A", "poles": "4"}
    | {"main_winding": "2 ohm", "start_winding": "7 ohm", "voltage_at_rest": "117 V"}
    | {"duration": "1 s", "start_method": "ptc", "ptc_resistance": "6.8 ohm"}
    | {"inertia": "0.001 kg m2", "load_torque": "30 %"},
    "insulation": {"insulation_resistance": "50 Mohm", "protection": "class-i"}
    | {"tested_part": "heater", "test_voltage": "500 V", "switched_on": "yes"}
    | {"electronics_unplugged": "yes", "dried": "no", "nameplate_power": "2585 W"}
    | {"nameplate_voltage": "240 V"},
    "leakage": {
        "leakage_current": "0.3 mA",
        "machine_kind": "stationary",
        "leakage_standard": "ul-101",
    }
    | {"connection": "plug", "neutral_strap": "no-strap"}
    | {"switched_on": "yes", "nameplate_power": "2585 W", "on_gfci": "yes"}
    | {"other_leakage": "0.5 mA"},
    "screening": {"over_range": "yes", "ohm_range": "20 Mohm", "switched_on": "yes"}
    | {"device_held": "yes", "test_button_trips": "yes", "trip_current": "6 mA"},
    "ground": {"ground_point": "plug-pin", "ground_resistance": "0.25 ohm", "ground_open": "no"}
    | {"lead_resistance": "0.2 ohm", "ground_standard": "iec-60335-1", "cord": "16 AWG"}
    | {"cord_length": "6 ft", "conductor_temperature": "20 C"},
}
ZERO_MEANS_SOMETHING = {
    "left_voltage",
    *("conductor_temperature", "other_leg_current", "other_current of drop"),
    *("other_current of dip", "other_current of extension"),
    *("on_time", "off_time", "device_ambient"),
    *("voltage_at_rest of supply", "voltage_running of supply", "voltage_at_start of supply"),
    "second_leg_running",
    *("current of breaker", "other_current of breaker", "current of ampacity"),
    *("plug_loads", "long_plug_loads", "fastened_loads", "long_fastened_loads", "light_loads"),
    *("force", "window_length", "peak", "settled", "settle_time", "place_temperature", "ambient"),
    *("cord_ambient", "temperature_before"),
    *("run_time", "circuit_voltage", "current of splice", "other_current of motor-circuit"),
    *("other_current of trip", "device_resistance", "overload_resistance"),
    *("lead_resistance", "off_times", "high_time", "load_torque"),
    *("reading_1_2", "reading_1_3", "reading_2_3", "lead_resistance", "case_resistance"),
    *("winding_temperature", "cold_temperature", "room_temperature", "hot_time"),
    *("measured_capacitance", "tolerance"),
    *("insulation_resistance", "leakage_current", "other_leakage", "ground_resistance"),
    *("element_resistance", "capacitor_current", "path_drop"),
}
PRINTED = {
    *("power_factor", "start_power_factor", "cord_rating"),
    *("nameplate_voltage_low", "nominal_voltage"),
    *("wire_temperature", "terminal_temperature", "terminal_voltage", "termination_temperature"),
    "insulation_class",
    "nameplate_current",
    *("breaker", "receptacle", "rated_load_current", "locked_rotor_current", "horsepower"),
    *("nameplate_voltage", "frequency", "duration"),
    *("full_load_current", "branch_selection_current", "minimum_ampacity", "maximum_breaker"),
    *("plate_current", "range_rating"),
    *("old_wire_temperature", "new_wire_temperature", "old_wire_voltage", "new_wire_voltage"),
    *("tab_width", "terminal_width", "tab_thickness", "terminal_thickness", "sleeve_temperature"),
    *("nameplate_power", "holding_temperature", "maker_resistance", "maker_tolerance"),
    *("maker_resistance_high", "maker_element_high", "maker_each", "maker_each_high"),
    *("maker_run_high", "maker_start_high"),
    *("old_functioning_temperature", "new_functioning_temperature"),
    *("old_cutoff_current", "new_cutoff_current", "old_cutoff_voltage", "new_cutoff_voltage"),
    *("maker_run", "maker_start", "marked_capacitance", "tolerance", "capacitor_rating"),
    *(f"{w}_capacitor{a}" for w in ("old", "new") for a in ("", "_voltage", "_temperature")),
    *("resistor", "resistor_power", "test_voltage", "ohm_range", "trip_current"),
}
UNITS = (
    *("lbf", "mm", "A", "V", "C", "h", "Hz", "hp", "s", "in", "ft", "ohm", "Mohm", "uF", "%", "W"),
    *("min", "mA"),
)


@dataclass(frozen=True)
class Bad:
    """One spoiled input: what is given, what of it the refusal shows, and what would do."""

    calculation: str
    input: str
    given: str | list[str] | bytes  # bytes: TOML, for a sheet only
    shows: str
    would_do: str

    def __str__(self) -> str:
        return f"{self.calculation}-{self.input}-{ascii(self.given)[:40]}"

    def refused_by(self, name: str, line: str) -> bool:
        """Whether a line names the input, shows what was given and says what would do."""
        return f"{name}: " in line and self.shows in line and self.would_do in line


def _every(wanted: Callable[[str], bool]) -> Iterator[tuple[str, str, str]]:
    for calculation, inputs in GOOD.items():
        for name, given in inputs.items():
            if wanted(given):
                yield calculation, name, given


def _is_quantity(given: str) -> bool:
    return given.split()[-1] in UNITS


def _is_wire(given: str) -> bool:
    return given.endswith("AWG") and "-" not in given


def quantities() -> Iterator[Bad]:
    """Every quantity: its dimension, unit, span and number."""
    for calc, name, given in _every(_is_quantity):
        number, unit = given.rsplit(" ", 1)
        yield Bad(calc, name, "3 J", "'J'", unit)
        yield Bad(calc, name, number, f"'{number}'", f"{number} {unit}")
        yield Bad(calc, name, b"7", "7 has no unit", f'"7 {unit}"')
        yield Bad(calc, name, f"2,5 {unit}", f"'2,5 {unit}'", f"2.5 {unit}")
        yield Bad(calc, name, f"1e9 {unit}", f"'1e9 {unit}'", "write it out")
        yield Bad(calc, name, f"10000000 {unit}", f"'10000000 {unit}'", unit)
        yield Bad(calc, name, f"-300 {unit}", f"'-300 {unit}'", unit)
        for text in ("9**9**9", "2*3", "5+5", "8/0", "3.2.1"):
            yield Bad(calc, name, f"{text} {unit}", f"'{text} {unit}'", "write")
        for text in ("nan", "NaN", "inf", "-inf", "infinity", "abs(5)", "(5)", "٥", "５"):
            yield Bad(calc, name, f"{text} {unit}", f"'{text} {unit}'", "a number and a unit")
        for text in ("", "   ", unit):
            yield Bad(calc, name, text, f"'{text.strip()}'", "a number and a unit")
        if not {name, f"{name} of {calc}"} & ZERO_MEANS_SOMETHING:
            yield Bad(calc, name, f"0 {unit}", "0 ", unit)


def meter_errors() -> Iterator[Bad]:
    """The meter's error: none on a printed value, no digits in a fraction, one that is read."""
    for calc, name, given in _every(_is_quantity):
        unit = given.rsplit(" ", 1)[1]
        if name in PRINTED:
            for error in ("±3%", f"+/-0.1 {unit}"):
                yield Bad(calc, name, f"{given} {error}", f"'{given} {error}'", "drop the ±")
            continue
        yield Bad(calc, name, f"1/4 {unit} ±(2%+5)", "±(2%+5)", "as a decimal")
        yield Bad(calc, name, f"{given} ±", f"'{given} ±'", "±3%")
        yield Bad(calc, name, f"{given} ±-3%", "-3", "percentage")
        yield Bad(calc, name, f"{given} ±nan%", "'nan'", "a number")
        yield Bad(calc, name, f"{given} ±5", "±5", f"±5 {unit}")
        yield Bad(calc, name, f"{given} ±(2%+1.5)", "1.5 counts", "whole counts")
        yield Bad(calc, name, f"{given} ±1 J", "'J'", "write it in")


SLIPS = [  # a unit in place of another, where the span or the other inputs show it
    Bad("pull", "force", "6000 kgf", "'6000 kgf'", "6000 lbf"),
    Bad("pull", "force", "60 kgf", "132.3 lbf", "kgf"),  # more than 18 AWG bears
    Bad("pull", "force", "24 lb", "'lb'", "lbf"),
    Bad("pull", "force", "24 pounds", "'pounds'", "lbf"),
    Bad("pull", "force", "11 kg", "'kg'", "kgf"),
    Bad("strip", "barrel_length", "6.5 in", "'6.5 in'", "6.5 mm"),
    Bad("strip", "stripped", '8"', "'8\"'", "8 mm"),
    Bad("strip", "window_length", "2 in", "'2 in'", "2 mm"),
    Bad("splice", "place_temperature", "700 C", "'700 C'", "700 F"),
    Bad("splice", "wire_temperature", "90 F", "'90 F'", "90 C"),
    Bad("breaker", "ambient", "100 C", "'100 C'", "100 F"),
    Bad("breaker", "insulation_class", "400 C", "'400 C'", "400 F"),
    Bad("breaker", "breaker", "15 mA", "'15 mA'", "15 A"),
    Bad("breaker", "current", "8700 A", "'8700 A'", "such as 8.7 A"),
    Bad("breaker", "current", "1000 W", "'W'", "divide by the voltage"),
    Bad("breaker", "run_time", "30 m", "'m'", "min"),
    Bad("inrush", "settle_time", "2 m", "'m'", "min"),
    Bad("inrush", "settle_time", "400 min", "'400 min'", "such as 0.4 s"),
    Bad("inrush", "nameplate_voltage", "115 mV", "'115 mV'", "115 V"),
    Bad("inrush", "nameplate_current", "6500 A", "'6500 A'", "such as 6.5 A"),
    Bad("inrush", "nameplate_load", "fan", "'fan'", "appliance"),
    Bad("inrush", "locked_rotor_current", "1.2 A", "1.2 A", "look at the plate"),  # below RLA
]


def wires() -> Iterator[Bad]:
    """Every wire: its unit, its span, its number and the words beside it."""
    for calc, name, _ in _every(_is_wire):
        yield Bad(calc, name, "18", "'18'", "18 AWG")
        yield Bad(calc, name, "#18", "'#18'", "18 AWG")
        yield Bad(calc, name, "50 AWG", "50 AWG", "4/0 to 40 AWG")
        yield Bad(calc, name, "18.5 AWG", "18.5 AWG", "mm2")
        yield Bad(calc, name, "1,5 mm2", "'1,5 mm2'", "1.5 mm2")
        yield Bad(calc, name, "2,050 cmil", "'2,050 cmil'", "write 2.050 cmil or 2050 cmil")
        yield Bad(calc, name, "0 mm2", "'0 mm2'", "check mm")
        yield Bad(calc, name, "5000 mm2", "'5000 mm2'", "check mm")
        yield Bad(calc, name, "0x30 AWG", "'0x30 AWG'", "count the strands")
        yield Bad(calc, name, "18 AWG solid stranded", "'18 AWG solid stranded'", "one wire")
        yield Bad(calc, name, "18 AWG stranted", "'stranted'", "stranded")
        yield Bad(calc, name, "-18 AWG", "'-18 AWG'", "a wire may be")
        yield Bad(calc, name, "9**9 mm2", "'9**9 mm2'", "the one size of one wire")
        for text in ("2.5 mm", "0.5 mm stranded", "2.05mm copper"):
            yield Bad(calc, name, text, "an area or a diameter", f"{text.split(' ')[0][:3]}")
        for text in ("", "nan mm2", "١٨ AWG", "blue", "3 J"):
            yield Bad(calc, name, text, f"'{text}'", "write 18 AWG")
        yield Bad(calc, name, b"18", "18", '"18 AWG"')


RANGES = [
    Bad("splice", "barrel", "14-16 AWG", "'14-16 AWG'", "16-14 AWG"),
    Bad("splice", "barrel", "2/0-10 AWG", "'2/0-10 AWG'", "10-2/0 AWG"),
    Bad("splice", "barrel", "5180-2050 cmil", "'5180-2050 cmil'", "2050-5180 cmil"),
    Bad("splice", "barrel", "16-14", "'16-14'", "16-14 AWG"),
    Bad("splice", "barrel", "16 AWG-2.5 mm2", "'16 AWG-2.5 mm2'", "one unit"),
    Bad("splice", "barrel", "1,5-2,5 mm2", "'1,5-2,5 mm2'", "1.5-2.5 mm2"),
    Bad("splice", "barrel", "16-14-12 AWG", "'16-14-12 AWG'", "16-14 AWG"),
    Bad("splice", "barrel", "16-50 AWG", "50 AWG", "4/0 to 40 AWG"),
    Bad("splice", "barrel", "0-2.5 mm2", "'0-2.5 mm2'", "check mm"),
    Bad("splice", "barrel", "nan-2 mm2", "'nan-2 mm2'", "2.5 mm2"),
    Bad("splice", "barrel", "1-9**9 mm2", "**9", "mm2"),
    Bad("splice", "barrel", "1-2.5 mm", "'mm'", "mm2"),
    Bad("splice", "barrel", "١٦-١٤ AWG", "'١٦-١٤ AWG'", "16-14 AWG"),
    Bad("splice", "barrel", "１.５-２.５ mm2", "１.５", "write"),
    Bad("splice", "barrel", "", "''", "16-14 AWG"),
    Bad("splice", "barrel", b"16", "16", '"22-18 AWG"'),
]
CHOICES = [
    Bad("pull", "terminal", "rnig", "'rnig'", "did you mean ring?"),
    Bad("pull", "pull_standard", "ul-486", "'ul-486'", "did you mean ul-486"),
    Bad("pull", "pull_standard", "ul-486e", "ul-486e", "ul-486a"),  # a clamp's table on a ring
    Bad("strip", "style", "ferule", "'ferule'", "did you mean ferrule?"),
    Bad("splice", "connector", "but", "'but'", "did you mean butt?"),
    Bad("splice", "listed_for", "stranted", "'stranted'", "did you mean stranded?"),
    Bad("inrush", "code_letter", "O", "'O'", "N, P"),
    Bad("inrush", "meter_mode", "peakhold", "'peakhold'", "did you mean peak-hold?"),
    Bad("pull", "terminal", "", "''", "ring"),
    Bad("pull", "terminal", b"3", "3", '"ring"'),
    Bad("breaker", "only_receptacle", "maybe", "'maybe'", "yes or no"),
    Bad("breaker", "only_receptacle", "", "''", "yes or no"),
    Bad("breaker", "only_receptacle", b"1", "1", "yes or no"),
    Bad("pull", "terminal", ["ring", "fork"], "2 times", "once"),
    Bad("pull", "force", ["24 lbf", "25 lbf"], "2 times", "once"),
]


def counts() -> Iterator[Bad]:
    """Every count: whole, in ASCII digits, within its span."""
    for calc, name in (
        ("breaker", "conductors"),
        ("breaker", "cord_conductors"),
        ("splice", "wire_limit"),
        ("ampacity", "conductors"),
        ("ampacity", "cord_conductors"),
        ("ring", "stud_terminals"),
        ("circuit", "conductors"),
    ):
        for text in ("2.5", "2.0", "two", "", "1e1", "２", "0x2", "1/1", "2 wires", "nan"):
            yield Bad(calc, name, text, f"'{text}'", "whole number")
        for text in ("0", "-1", "101"):
            yield Bad(calc, name, text, text, "whole number")
        for toml in (b"2.5", b"2.0", b"nan", b"-1"):
            yield Bad(calc, name, toml, toml.decode(), "whole number")
        yield Bad(calc, name, b"true", "", "whole number")


SHEET_ONLY = [
    Bad("pull", "force", b"nan", "nan", "24 lbf"),
    Bad("pull", "force", b"inf", "inf", "24 lbf"),
    Bad("pull", "force", b"true", "", '"24 lbf"'),
    Bad("pull", "force", b"{ value = 24 }", "24", '"24 lbf"'),
    Bad("pull", "wire", b"[]", "empty list", "18 AWG"),
    Bad("splice", "wire", b"[18, 16]", "18", '"18 AWG"'),
    Bad("splice", "wire", b'[["18 AWG"], "16 AWG"]', "18 AWG", '"18 AWG"'),
]

WIRE_ITSELF = [  # strands, sizes and ratings that contradict each other or the trade
    Bad("gauge", "strand_diameter", "0.010 mm", "41 x 0.01 mm", "0.01 in"),  # inches typed as mm
    Bad("gauge", "strand_diameter", "2.5 mm", "41 x 2.5 mm", "one strand"),  # the bundle
    Bad("gauge", "strand_diameter", "0.03 mm", "41 x 0.03 mm", "check mm"),
    Bad("gauge", "strand_diameter", "25 mm", "'25 mm'", "0.254 mm"),
    Bad("gauge", "strands", "0", "0 is outside", "whole number"),
    Bad("gauge", "outside_diameter", "1.2 mm", "1.2 mm", "check the count"),
    Bad("gauge", "outside_diameter", "3 in", "'3 in'", "3 mm"),
    Bad("gauge", "metal", "aluminum", "'aluminum'", "did you mean aluminium?"),
    Bad("ampacity", "use", "bilding", "'bilding'", "did you mean building?"),
    Bad("ampacity", "insulation_class", "50 C", "50 C", "60 C, 75 C or 90 C"),
    Bad("ampacity", "termination_temperature", "40 C", "40 C", "60 C, 75 C or 90 C"),
    Bad("ampacity", "ambient", "110 C", "'110 C'", "110 F"),
    Bad("ampacity", "current", "8700 A", "'8700 A'", "such as 8.7 A"),
    Bad("strands", "cut_strands", "26", "26 cut and 1 nicked", "count each damaged strand once"),
    Bad("strands", "cut_strands", "-1", "'-1'", "whole number"),
    Bad("strands", "nicked_strands", "1.5", "'1.5'", "whole number"),
    Bad("strands", "nicked_strands", "one", "'one'", "whole number"),
    Bad("strands", "strands", "0", "0 is outside", "whole number"),
    Bad("strands", "strand_standard", "ipc-a-620", "'ipc-a-620'", "did you mean ipc-a-620-class-"),
    Bad("substitute", "old_wire_temperature", "900 C", "'900 C'", "900 F"),
    Bad("substitute", "new_wire_voltage", "6000 V", "'6000 V'", "such as 600 V"),
    *(
        Bad("substitute", f"{whose}_{what}", "maybe", "'maybe'", "yes or no")
        for whose in ("old", "new")
        for what in ("oil_resistant", "flame_rated")
    ),
]

JOINTS = [  # drop, tab, ring and heat: slips of a unit, wrong words, what cannot be
    Bad("joint-drop", "drop", "14 V", "'14 V'", "30 mV"),
    Bad("joint-drop", "drop", "0 mV", "'0 mV'", "30 mV"),
    Bad("joint-drop", "drop", "-14 mV", "'-14 mV'", "30 mV"),
    Bad("joint-drop", "drop", "14 mohm", "'mohm'", "mV"),
    Bad("joint-drop", "joint_current", "0 A ±0.05 A", "0 A", "8.7 A"),
    Bad("joint-drop", "joint_current", "1044 W", "'W'", "divide by the voltage"),
    Bad("joint-drop", "joint_length", "150 in", "'150 in'", "150 mm"),
    Bad("tab", "tab_width", "6.3 in", "'6.3 in'", "6.3 mm"),
    Bad("tab", "tab_width", "0.25 mm", "'0.25 mm'", "0.25 in"),
    Bad("tab", "tab_width", "0.300 in", "0.3 in", "0.250"),
    Bad("tab", "terminal_width", "5.6 mm", "0.2205 in", "0.205"),
    Bad("tab", "tab_thickness", "0.8 in", "'0.8 in'", "0.8 mm"),
    Bad("ring", "stud", "#8", "'#8'", "No.8"),
    Bad("ring", "stud", "M45", "'M45'", "such as No."),
    Bad("ring", "hole", "5.1 in", "'5.1 in'", "5.1 mm"),
    Bad("heat-rating", "place_temperature", "900 C", "'900 C'", "900 F"),
    Bad("heat-rating", "wire_temperature", "600 C", "'600 C'", "600 F"),
    Bad("heat-rating", "sleeve_temperature", "39 C", "'39 C'", "125 C"),
    Bad("heat-rating", "near_heater", "maybe", "'maybe'", "yes or no"),
    Bad("heat-rating", "terminal_material", "vynil", "'vynil'", "did you mean vinyl?"),
    Bad("heat-rating", "sleeve_material", "nylon", "'nylon'", "polyolefin tubing"),
    Bad("start-curve", "inertia", "-0.001 kg m2", "'-0.001 kg m2'", "0.005 kg m2"),
    Bad("start-curve", "inertia", "0 kg m2", "'0 kg m2'", "0.005 kg m2"),
    Bad("start-curve", "inertia", "0.001 kg", "'kg'", "write it in kg m2"),
    Bad("start-curve", "poles", "3", "3 is odd", "poles come in pairs"),
    Bad("start-curve", "poles", "1725", "1725 is outside 2 to 24", "whole number"),
    Bad("start-curve", "rated_speed", "1725 rpm", "'1725 rpm'", "whole number"),
    Bad("start-curve", "rated_speed", "50", "50 is outside 100 to 24000", "whole number"),
    Bad("start-curve", "frequency", "60 rpm", "'rpm'", "Hz"),
    Bad("start-curve", "start_capacitor", "189 uF", "no place in this start", "start-capacitor"),
    Bad("start-curve", "start_method", "capacitor", "'capacitor'", "start-capacitor"),
    Bad("start-curve", "variants", ["healthy", "lockd-rotor"], "'lockd-rotor'", "locked-rotor?"),
    Bad("start-curve", "variants", ["healthy", "healthy"], "stands there twice", "name it once"),
    Bad("start-curve", "variants", ["weak-capacitor"], "this start has none", "leave it out"),
    Bad(
        "start-curve", "textbook_motor", "capacitor-start-110V", "was given too", "motor or a plate"
    ),
    Bad("start-curve", "locked_rotor_current", "4 A", "4 A is not above", "the plate again"),
    Bad("start-curve", "main_winding", "7 ohm", "7 ohm alone", "measure it again"),
    Bad("start-curve", "main_winding", "0 ohm", "'0 ohm'", "2 ohm"),
    Bad("start-curve", "start_winding", "700 ohm", "700 ohm is over 30 times", "1.2 to 5 times"),
    Bad("start-curve", "ptc_resistance", "15 kohm", "'15 kohm'", "such as 6.8 ohm"),
    Bad("start-curve", "ptc_resistance", "6.8 V", "'V'", "ohm"),
    Bad("start-curve", "load_torque", "-5 %", "'-5 %'", "50 %"),
    Bad("start-curve", "load_torque", "0.5 N", "'N'", "%"),
]

CIRCUITS = [  # one load, all loads, a motor: volts for amps, contradictions, wrong words
    Bad("breaker", "breaker", "115 A", "'115 A'", "15 A"),
    Bad("breaker", "breaker", "115 V", "'V'", "A"),
    Bad("breaker", "current", "1.5 kW", "'kW'", "divide by the voltage"),
    Bad("circuit", "breaker", "115 A", "'115 A'", "15 A"),
    Bad("circuit", "plug_loads", "1500 W", "'W'", "divide by the voltage"),
    Bad("circuit", "plug_loads", ["1.20 mA"], "next to nothing", "write 1.2 A, or 0.0012 A"),
    Bad("breaker", "current", "8.7 mA", "next to nothing", "write 8.7 A, or 0.0087 A"),
    Bad(
        "drop", "current", "8.7 mA ±2%", "next to nothing", "which unit was meant? write 8.7 A, or"
    ),
    Bad(
        "inrush", "settled", "90 mA", "next to nothing", "write 90 A, or 0.09 A if it is so little"
    ),
    Bad("circuit", "light_loads", "6200 A", "'6200 A'", "such as 6.2 A"),
    Bad("circuit", "feeds_others", "maybe", "'maybe'", "yes or no"),
    Bad("circuit", "insulation_class", "50 C", "50 C", "60 C, 75 C or 90 C"),
    Bad("breaker", "wiring_rules", "ice", "'ice'", "did you mean iec?"),
    Bad("breaker", "range_rating", "12000 kW", "'12000 kW'", "such as 12 kW"),
    Bad("breaker", "other_current", "8.7 mA", "next to nothing", "write 8.7 A, or 0.0087 A"),
    Bad("motor-circuit", "motor_kind", "compresor", "'compresor'", "did you mean compressor?"),
    Bad("motor-circuit", "motor_device", "time delay fuse", "'time delay fuse'", "time-delay fuse"),
    Bad("motor-circuit", "fastened_in_place", "no", "plugged in", "ask breaker"),
    Bad("motor-circuit", "plate_governs", "maybe", "'maybe'", "yes or no"),
    Bad("motor-circuit", "listed_combination", "perhaps", "'perhaps'", "yes or no"),
    Bad("breaker", "has_motor", "maybe", "'maybe'", "yes or no"),
    Bad("motor-circuit", "branch_selection_current", "5 A", "5 A", "look at the plate"),
    Bad("motor-circuit", "horsepower", "115 V", "'V'", "hp"),
]
TRIP = [  # watts, minutes, volts for a rating, a start and a current at once, a start below its run
    Bad("trip", "device", "ul-498", "'ul-498'", "did you mean ul-489?"),
    Bad("trip", "breaker", "115 A", "'115 A'", "15 A"),
    Bad("trip", "breaker", "0 A", "'0 A'", "15 A"),
    Bad("trip", "settled", "1200 W", "'W'", "divide by the voltage"),
    Bad("trip", "settle_time", "2 m", "'m'", "min"),
    Bad("trip", "settle_time", "400 min", "'400 min'", "such as 0.4 s"),
    Bad("trip", "settled", "41 A", "41 A is above the start current", "LRA"),
    Bad("trip", "device_ambient", "104 C", "'104 C'", "104 F"),
    Bad("trip", "starts", "1001", "1001 is outside", "whole number"),
    Bad("trip", "starts", "2.5", "'2.5'", "whole number"),
    Bad("trip", "curve", "no-such-file.csv", "no-such-file.csv", "check the name"),
]

RUNS = [  # feet, metres, inches; volts of another plug; watts; what no path to a load does
    Bad("drop", "run_length", "-60 ft", "'-60 ft'", "60 ft"),
    Bad("drop", "run_length", "2001 ft", "'2001 ft'", "60 ft"),
    Bad("drop", "run_length", "700 m", "'700 m'", "60 ft"),
    Bad("drop", "cord_length", "0 m", "'0 m'", "50 ft"),
    Bad("drop", "cord_length", "700 m", "'700 m'", "50 ft"),
    Bad("drop", "current", "184 W", "'W'", "divide by the voltage"),
    Bad("drop", "current", "0 A", "'0 A'", "1.6 A"),
    Bad("drop", "system", "two-wire", "no other leg", "three-wire"),
    Bad("drop", "system", "2-wire", "'2-wire'", "two-wire"),
    Bad("drop", "power_factor", "0.8", "'0.8'", "0.8 %"),
    Bad("drop", "power_factor", "0.8 %", "'0.8 %'", "80 %"),
    Bad("drop", "conductor_temperature", "167 C", "'167 C'", "167 F"),
    Bad("drop", "nameplate_voltage", "115 mV", "'115 mV'", "115 V"),
    Bad("dip", "voltage_at_rest", "236 V", "240 V outlet for a 115 V plate?", "read plate"),
    Bad("dip", "voltage_at_rest", "12 V", "12 V", "115 V plate"),
    Bad("dip", "voltage_at_rest", "117.5 mV", "0.1175 V", "read plate"),
    Bad("dip", "locked_rotor_current", "1.2 A", "1.2 A", "look at the plate"),
    Bad("dip", "locked_rotor_current", "1633 W", "'W'", "divide by the voltage"),
    Bad("dip", "voltage_at_start", "125 V", "125 V", "lowest reading"),
    Bad("dip", "conductor_temperature", "-60 C", "'-60 C'", "75 C"),
    Bad("dip", "run_length", "1500 ft", "would be lost on the way", "check ft and m"),
    Bad("drop", "voltage_at_rest", "236 V", "240 V outlet for a 115 V plate?", "read plate"),
    Bad("extension", "voltage_at_start", "600 V", "600 V during the start", "range and unit"),
    Bad("extension", "protection", "class 2", "'class 2'", "class-i, class-ii"),
    Bad("extension", "motor_start", "soft", "'soft'", "direct, inverter"),
    Bad("extension", "maker_allows", "maybe", "'maybe'", "no, three-wire grounding, yes"),
    Bad("extension", "grounding", "three", "'three'", "yes or no"),
    Bad("extension", "cord_conductors", "4", "4 is outside", "whole number, 2 to 3"),
    Bad("extension", "cord_rating", "1875 W", "'W'", "divide by the voltage"),
    Bad("extension", "extension_length", "-50 ft", "'-50 ft'", "50 ft"),
    Bad("extension", "locked_rotor_current", "1.5 A", "1.5 A", "look at the plate"),
    Bad("extension", "cord_ambient", "104 C", "'104 C'", "104 F"),
    Bad("extension", "has_motor", "no", "an LRA on the plate", "look at the plate"),
]

SUPPLY = [  # supply, upstream and short-time
    Bad("supply", "voltage_running", "23.2 V", "23.2 V is neither", "check the unit"),
    Bad("supply", "voltage_running", "232 mV", "0.232 V is neither", "check the unit"),
    Bad("supply", "voltage_running", "244 V", "244 V is over the 236 V", "exchanged"),
    Bad("supply", "voltage_at_start", "240 V", "240 V is over the 232 V", "exchanged"),
    Bad("supply", "voltage_at_rest", "2320 V", "'2320 V'", "such as 119.4 V"),
    Bad("supply", "nominal_voltage", "220 V", "220 V", "120 V, 208 V, 230 V or 240 V"),
    Bad("supply", "voltage_at_rest", "400 V", "400 V is no line of a house", "range and unit"),
    Bad("supply", "current", "4320 W", "'W'", "divide by the voltage"),
    Bad("supply", "nameplate_voltage", "240 W", "'W'", "V"),
    Bad("supply", "nameplate_voltage_low", "120 V", "120/240 V", "leave it out"),
    Bad("supply", "nameplate_voltage_low", "250 V", "250 V is not below", "exchange them"),
    Bad("upstream", "voltage_running", "120.6 V", "120.6 V with the load on", "exchanged"),
    Bad("upstream", "voltage_running", "116.6 mV", "0.1166 V is no supply", "range and unit"),
    Bad("upstream", "voltage_running", "21 V", "21 V are left of 119.8 V", "check the unit"),
    Bad("upstream", "voltage_at_rest", "19.9 V", "19.9 V is no supply", "range and unit"),
    Bad("upstream", "voltage_at_rest", "0 V", "a dead outlet", "119.8 V"),
    Bad("upstream", "voltage_at_rest", "600 V", "600 V is no line of a house", "range and unit"),
    Bad("upstream", "second_leg_current", "0.2 A", "'0.2 A'", "8.7 A"),
    Bad("upstream", "current", "0.49 A", "0.49 A is too little", "0.5 A or more"),
    Bad("upstream", "current", "8.7 mA", "'8.7 mA'", "8.7 A"),
    Bad("upstream", "current", "1044 W", "'W'", "divide by the voltage"),
    Bad("upstream", "run_length", "2000 ft", "half of the volts", "check ft and m"),
    Bad("upstream", "extension_length", "700 m", "'700 m'", "50 ft"),
    Bad("upstream", "conductor_temperature", "167 C", "'167 C'", "167 F"),
    Bad("upstream", "panel_running", "120.6 V", "120.6 V with the load on", "exchanged"),
    Bad("upstream", "panel_running", "114 V", "6.1 V lost at the panel", "the same load"),
    Bad("upstream", "load_kind", "heater", "a heater has 100 %", "is a motor"),
    Bad("upstream", "load_kind", "toaster", "'toaster'", "heater"),
    Bad("upstream", "power_factor", "0.8", "'0.8'", "0.8 %"),
    Bad("upstream", "second_leg_at_rest", "239 V", "239 V", "each leg to neutral"),
    Bad("short-time", "overcurrent_time", "25 h", "'25 h'", "such as 0.5 s"),
    Bad("short-time", "overcurrent_time", "86401 s", "'86401 s'", "such as 0.5 s"),
    Bad("short-time", "overcurrent", "0 A", "'0 A'", "180 A"),
    Bad("short-time", "overcurrent", "-180 A", "'-180 A'", "180 A"),
    Bad("short-time", "insulation", "pvc-80", "'pvc-80'", "such as pvc-70"),
    Bad("short-time", "insulation", "wool", "'wool'", "pvc-70"),
    Bad("short-time", "temperature_before", "158 C", "'158 C'", "158 F"),
    Bad("short-time", "cut_strands", "26", "26 of 26", "count again"),
    Bad("short-time", "cut_strands", "-1", "'-1'", "whole number"),
    Bad("short-time", "strands", "0", "0 is outside", "whole number"),
]

ELEMENTS_AND_STARTS = [  # element, cut-off, duty, start device, overload, locked rotor
    Bad("element", "nameplate_power", "2585 kW", "'2585 kW'", "check the number and its unit"),
    Bad("element", "nameplate_power", "2.585 W", "2.585 W", "check W and kW"),
    Bad("element", "nameplate_power", "10.8 A", "'A'", "W"),
    Bad("element", "element_resistance", "-1 ohm", "'-1 ohm'", "22.6 ohm"),
    Bad("element", "element_resistance", "22.4 kohm", "'22.4 kohm'", "such as 22.6 ohm"),
    Bad("element", "element_resistance", "0.15 ohm", "0.15 ohm", "touched together"),  # the leads
    Bad("element", "lead_resistance", "20 ohm", "'20 ohm'", "0.2 ohm"),
    Bad("element", "element_voltage", "232 mV", "'232 mV'", "232 V"),
    Bad("cutoff", "new_functioning_temperature", "500 C", "'500 C'", "500 F"),
    Bad("cutoff", "old_functioning_temperature", "120 F", "'120 F'", "120 C"),
    Bad("cutoff", "holding_temperature", "130 C", "130 C", "the lower of the two"),
    Bad("cutoff", "new_cutoff_current", "1500 W", "'W'", "divide by the voltage"),
    Bad("cutoff", "cause_found", "perhaps", "'perhaps'", "yes or no"),
    Bad("duty", "on_times", "1800 min", "'1800 min'", "such as 18 min"),
    Bad("duty", "on_times", "18 m", "'m'", "min"),
    Bad("duty", "on_times", "0 min", "'0 min'", "18 min"),  # it must have run
    Bad("duty", "on_times", ["18 min", "19 min", "18 min"], "3 times on and 1 off", "take turns"),
    Bad("duty", "running_power", "120 kW", "'120 kW'", "check the number and its unit"),
    Bad("duty", "running_power", "1.2 A", "'A'", "W"),
    Bad("start-device", "start_device", "PTCs", "'PTCs'", "ptc"),
    Bad("start-device", "device_resistance", "6.8 Mohm", "'6.8 Mohm'", "which was meant?"),
    Bad("start-device", "maker_tolerance", "80 %", "'80 %'", "25 %"),
    Bad("start-device", "maker_resistance_high", "6.8 ohm", "not above 6.8 ohm", "low to high"),
    Bad("start-device", "maker_resistance", "15-28 ohm", "is a range", "an input each"),
    Bad("windings", "maker_run_high", "3.9 ohm", "not above 4 ohm", "low to high"),
    Bad("windings", "maker_start_high", "11 ohm", "not above 12 ohm", "low to high"),
    Bad("windings", "maker_each_high", "5 kohm", "'5 kohm'", "6.8 ohm"),
    Bad("element", "maker_element_high", "500 kohm", "'500 kohm'", "25 ohm"),
    Bad("start-device", "by_itself", "off", "'off'", "yes or no"),
    Bad("start-device", "device_cold", "cold", "'cold'", "yes or no"),
    Bad("duty", "after_restock", "maybe", "'maybe'", "yes or no"),
    Bad("overload", "trip_temperature", "230 C", "'230 C'", "230 F"),
    Bad("overload", "reset_temperature", "115 C", "115 C", "cooler than it opens"),
    Bad("overload", "overload_cold", "tepid", "'tepid'", "yes or no"),
    Bad("locked", "high_time", "6 min", "'6 min'", "check the number and its unit"),
    Bad("locked", "reset_time", "300 min", "'300 min'", "such as 3 min"),
    Bad("locked", "high_current", "1 A", "1 A", "while it stays high"),  # below the settled one
    Bad("locked", "locked_rotor_current", "1.2 A", "1.2 A", "look at the plate"),
    Bad("locked", "overload_trips", "0", "never opened", "count its clicks"),
    Bad("locked", "overload_trips", "2.5", "'2.5'", "whole number"),
]

MOTOR = [  # windings and capacitors: slips of a unit, wrong words, what cannot be
    Bad("windings", "reading_1_2", "4.6 kohm", "'4.6 kohm'", "check the number and its unit"),
    Bad("windings", "reading_1_3", "OL", "past the meter's range", "is open_pin"),
    Bad("windings", "reading_2_3", "-0.1 ohm", "'-0.1 ohm'", "up to 1000 ohm"),
    Bad("windings", "reading_1_2", "4.6 W", "'W'", "write it in ohm"),
    Bad("windings", "lead_resistance", "4.6 ohm", "'4.6 ohm'", "up to 2 ohm"),
    Bad("windings", "open_pin", "4", "'4'", "such as none"),
    Bad("windings", "open_pin", "OL", "'OL'", "such as none"),
    Bad("windings", "common_pin", "C", "'C'", "such as 1"),
    Bad("windings", "winding_temperature", "200 C", "'200 C'", "200 F"),
    Bad("windings", "case_resistance", "20 megs", "'megs'", "did you mean"),
    Bad("winding-heat", "hot_resistance", "4.4 ohm", "4.4 ohm hot is below", "swapped"),
    Bad("winding-heat", "hot_time", ["20 s", "50 s"], "2 times for 1", "a time for each"),
    Bad("winding-heat", "hot_time", "2 m", "'m'", "min"),
    Bad(
        "winding-heat", "cold_resistance", "0.1 ohm", "no more than the 0.1 ohm", "subtracted here"
    ),
    Bad("winding-heat", "cold_temperature", "72 C", "'72 C'", "72 F"),
    Bad("winding-heat", "winding_metal", "aluminum", "'aluminum'", "did you mean aluminium?"),
    Bad("winding-heat", "winding_class", "G", "'G'", "A, E, B, F, H"),
    Bad("capacitor", "capacitor_current", "439 W", "'W'", "divide by the voltage"),
    Bad("capacitor", "capacitor_current", "2050 A", "'2050 A'", "such as 2.05 A"),
    Bad("capacitor", "capacitor_voltage", "0 V", "'0 V'", "214 V"),
    Bad("capacitor", "capacitor_voltage", "2100 V", "high-voltage", "can kill unplugged"),
    Bad("capacitor", "marked_capacitance", "30 mF", "'mF'", "is uF"),
    Bad("capacitor", "marked_capacitance", "30000 uF", "'30000 uF'", "such as 30 uF"),
    Bad("capacitor", "marked_capacitance", "30 V", "'V'", "write it in uF"),
    Bad("capacitor", "tolerance", "5", "'5'", "5 %"),
    Bad("capacitor", "tolerance", "±5 %", "''", "a number and a unit"),
    Bad("capacitor", "tolerance", "60 %", "'60 %'", "up to 50 %"),
    Bad("capacitor", "measured_capacitance", "26 uF", "one check judges one", "leave one way out"),
    Bad("capacitor", "marked_high", "25 uF", "25 uF is not above 30 uF", "low to high"),
    Bad("capacitor-swap", "old_capacitor_duty", "strat", "'strat'", "did you mean start?"),
    Bad("capacitor-swap", "new_capacitor_duty", "motor run", "'motor run'", "run"),
    Bad("capacitor-swap", "new_capacitor_high", "36 uF", "one size", "a start part?"),
    Bad("capacitor-swap", "new_capacitor_voltage", "370 mV", "'370 mV'", "370 V"),
    Bad("discharge", "resistor", "R 20", "'R 20'", "a number and a unit"),
    Bad("discharge", "resistor", "20 Mohm", "'20 Mohm'", "up to"),
    Bad("discharge", "resistor_power", "2 A", "'A'", "write it in W"),
]

RETURN_TO_SERVICE = [  # insulation, leakage, ground path
    Bad(
        "insulation",
        "insulation_resistance",
        "20 mohm",
        "20 mohm",
        "which unit was meant? write 20 Mohm, or 0.00000002 Mohm",
    ),
    Bad("insulation", "insulation_resistance", "-1 Mohm", "'-1 Mohm'", "50 Mohm"),
    Bad("insulation", "protection", "grounded", "'grounded'", "class-i"),
    Bad("insulation", "protection", "class-1", "'class-1'", "did you mean class-i"),
    Bad("insulation", "tested_part", "heaters", "'heaters'", "did you mean heater?"),
    Bad("insulation", "test_voltage", "500 mA", "'mA'", "write it in V"),
    Bad("insulation", "test_voltage", "5000 V", "'5000 V'", "such as 500 V"),
    Bad("insulation", "switched_on", "on", "'on'", "yes or no"),
    Bad("insulation", "electronics_unplugged", "partly", "'partly'", "yes or no"),
    Bad("insulation", "dried", "damp", "'damp'", "yes or no"),
    Bad("insulation", "nameplate_voltage", "5 V", "'5 V'", "such as 115 V"),
    Bad("insulation", "nameplate_power", "2585 kW", "'2585 kW'", "check the number and its unit"),
    Bad("leakage", "leakage_current", "300 mA", "'300 mA'", "such as 0.3 mA"),
    Bad("leakage", "leakage_current", "0.3 A", "'0.3 A'", "check the number and its unit"),
    Bad("leakage", "leakage_current", "0.3 uA", "0.3 uA", "write 0.3 mA, or 0.0003 mA"),
    Bad("leakage", "leakage_current", "0.3 V", "'V'", "mA, uA"),
    Bad("leakage", "other_leakage", "500 mA", "'500 mA'", "such as 0.5 mA"),
    Bad("leakage", "other_leakage", ["1 mA", "0.5 uA"], "0.5 uA", "write 0.5 mA, or 0.0005 mA"),
    Bad("leakage", "connection", "socket", "'socket'", "plug"),
    Bad("leakage", "neutral_strap", "loose", "'loose'", "fitted"),
    Bad("leakage", "machine_kind", "fridge", "'fridge'", "refrigerator"),
    Bad("leakage", "leakage_standard", "ul-102", "'ul-102'", "such as ul-101"),
    Bad("leakage", "switched_on", "half", "'half'", "yes or no"),
    Bad("leakage", "on_gfci", "no", "leakage of other machines", "leave other_leakage out"),
    Bad("leakage", "nameplate_power", "0 W", "'0 W'", "2585 W"),
    Bad("screening", "over_range", "OL", "'OL'", "yes or no"),
    Bad("screening", "ohm_range", "20 mohm", "'20 mohm'", "which unit was meant?"),
    Bad("screening", "ohm_range", "0 Mohm", "'0 Mohm'", "20 Mohm"),
    Bad("screening", "switched_on", "half", "'half'", "yes or no"),
    Bad("screening", "device_held", "tripped", "'tripped'", "yes or no"),
    Bad("screening", "test_button_trips", "maybe", "'maybe'", "yes or no"),
    Bad("screening", "trip_current", "6 A", "'6 A'", "check the number and its unit"),
    Bad("screening", "trip_current", "0.6 mA", "'0.6 mA'", "such as 6 mA"),
    Bad("screening", "trip_current", "30 ohm", "'ohm'", "mA"),
    Bad("ground", "ground_point", "pin", "'pin'", "plug-pin"),
    Bad("ground", "ground_resistance", "0.25 Mohm", "'0.25 Mohm'", "which was meant?"),
    Bad("insulation", "insulation_resistance", "OL", "past the meter's range", "with >, such as"),
    Bad("insulation", "insulation_resistance", "<3 Mohm", "no one number", "50 Mohm"),
    Bad("insulation", "insulation_resistance", ">9 Mohm ±5%", "a side and an error", "drop the ±"),
    Bad("insulation", "insulation_resistance", ">2000000 Mohm", "outside", "which was meant?"),
    Bad("ground", "ground_resistance", "OL", "past the meter's range", "give ground_open yes"),
    Bad("ground", "ground_resistance", ">10 ohm", "no one number", "or unknown"),
    Bad("element", "element_resistance", "O.L. ohm", "past the meter's", "element_open yes"),
    Bad("overload", "overload_resistance", "OL", "past the meter's range", "overload_open yes"),
    Bad("start-device", "device_resistance", "OL", "past the meter's range", "device_open yes"),
    Bad("pull", "force", "OL", "past the meter's range", "or write unknown"),
    Bad("ground", "ground_open", "yes", "0.25 ohm is not open", "give the resistance"),
    Bad("ground", "lead_resistance", "0.3 ohm", "0.3 ohm in a reading of 0.25 ohm", "zeroed"),
    Bad("ground", "ground_standard", "iec-60335", "'iec-60335'", "did you mean iec-60335-1?"),
    Bad("ground", "cord", "16", "'16'", "16 AWG"),
    Bad("ground", "cord_length", "200 ft", "more than was read", "ft and m"),
    Bad("ground", "cord_length", "301 ft", "no machine has a cord of 301 ft", "ft and m"),
    Bad("ground", "cord_length", "6 lbf", "'lbf'", "ft"),
    Bad("ground", "conductor_temperature", "200 C", "'200 C'", "200 F"),
]

CASES = [*quantities(), *meter_errors(), *SLIPS, *wires(), *RANGES, *CHOICES, *counts()]
CASES += [*WIRE_ITSELF, *JOINTS, *SUPPLY, *RUNS, *TRIP, *CIRCUITS, *ELEMENTS_AND_STARTS, *MOTOR]
CASES += RETURN_TO_SERVICE

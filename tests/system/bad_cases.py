"""Inputs that must be refused, each with what the refusal has to show and what would do."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

# one good run of each calculation, with all inputs that a case below spoils
GOOD: dict[str, dict[str, str]] = {
    "pull": {"wire": "18 AWG", "force": "24 lbf", "terminal": "ring"},
    "strip": {"wire": "18 AWG", "style": "open", "barrel_length": "6.5 mm"}
    | {"window_length": "2 mm", "stripped": "8 mm"},
    "splice": {"wire": "16 AWG", "barrel": "16-14 AWG", "current": "8.7 A", "voltage": "120 V"}
    | {"wire_temperature": "105 C", "terminal_temperature": "105 C", "place_temperature": "60 C"}
    | {"terminal_voltage": "300 V", "wire_limit": "2", "listed_for": "stranded"},
    "breaker": {"current": "8.7 A", "breaker": "15 A", "wire": "14 AWG", "run_time": "1 h"}
    | {"insulation_class": "60 C", "termination_temperature": "60 C", "receptacle": "15 A"}
    | {"only_receptacle": "yes", "cord": "16 AWG", "cord_conductors": "2", "ambient": "25 C"}
    | {"conductors": "2"},
    "inrush": {"rated_load_current": "1.6 A", "locked_rotor_current": "12 A", "voltage": "117 V"}
    | {"nameplate_voltage": "115 V", "frequency": "60 Hz", "peak": "11 A", "settled": "1.2 A"}
    | {"horsepower": "1/4 hp", "code_letter": "L", "settle_time": "0.4 s", "breaker": "15 A"},
    "ampacity": {"use": "building", "wire": "14 AWG", "insulation_class": "60 C"}
    | {"termination_temperature": "60 C", "conductors": "2", "cord_conductors": "2"}
    | {"wire_temperature": "105 C", "place_temperature": "60 C", "ambient": "25 C"}
    | {"current": "8.7 A"},
    "equivalent": {"wire": "14 AWG"},
    "gauge": {"strands": "41", "strand_diameter": "0.254 mm", "outside_diameter": "3 mm"}
    | {"metal": "copper"},
    "strands": {"wire": "16 AWG", "cut_strands": "0", "nicked_strands": "1", "strands": "26"}
    | {"standard": "none"},
    "substitute": {"old_wire": "18 AWG", "new_wire": "16 AWG", "old_wire_temperature": "80 C"}
    | {"new_wire_temperature": "105 C", "old_wire_voltage": "300 V", "new_wire_voltage": "600 V"}
    | {"old_oil_resistant": "no", "new_oil_resistant": "no", "old_flame_rated": "yes"}
    | {"new_flame_rated": "yes"},
    "wire-break": {"wire": "18 AWG"},
    "joint-drop": {"drop": "0.36 V", "current": "8.7 A", "wire": "16 AWG"}
    | {"joint_length": "150 mm"},
    "tab": {"tab_width": "0.250 in", "wire": "14 AWG", "current": "10.8 A"}
    | {"terminal_width": "0.250 in", "tab_thickness": "0.032 in"}
    | {"terminal_thickness": "0.032 in"},
    "ring": {"stud": "No.8", "wire": "14 AWG", "hole": "4.4 mm", "stud_terminals": "2"},
    "heat-rating": {"place_temperature": "60 C", "near_heater": "yes", "wire_temperature": "105 C"}
    | {"terminal_temperature": "105 C", "terminal_material": "nylon"}
    | {"sleeve_temperature": "125 C", "sleeve_material": "PVC tubing"},
    "start-curve": {"nameplate_voltage": "115 V", "frequency": "60 Hz", "horsepower": "1/4 hp"}
    | {"locked_rotor_current": "20 A", "rated_load_current": "4.4 A", "poles": "4"}
    | {"main_winding": "2 ohm", "start_winding": "7 ohm", "voltage": "117 V", "duration": "1 s"}
    | {"start_method": "ptc", "ptc_resistance": "6.8 ohm", "inertia": "0.001 kg m2"}
    | {"load_torque": "30 %"},
}
ZERO_MEANS_SOMETHING = {
    *("force", "window_length", "peak", "settled", "settle_time", "place_temperature", "ambient"),
    *("run_time", "voltage of splice", "current of splice"),
}
PRINTED = {
    *("wire_temperature", "terminal_temperature", "terminal_voltage", "termination_temperature"),
    "insulation_class",
    *("breaker", "receptacle", "rated_load_current", "locked_rotor_current", "horsepower"),
    *("nameplate_voltage", "frequency", "duration"),
    *("old_wire_temperature", "new_wire_temperature", "old_wire_voltage", "new_wire_voltage"),
    *("tab_width", "terminal_width", "tab_thickness", "terminal_thickness", "sleeve_temperature"),
}
UNITS = ("lbf", "mm", "A", "V", "C", "h", "Hz", "hp", "s", "in")


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
    Bad("breaker", "current", "8700 A", "'8700 A'", "8700 mA"),
    Bad("breaker", "current", "1000 W", "'W'", "divide by the voltage"),
    Bad("breaker", "run_time", "30 m", "'m'", "min"),
    Bad("inrush", "settle_time", "2 m", "'m'", "min"),
    Bad("inrush", "settle_time", "400 min", "'400 min'", "400 s"),
    Bad("inrush", "nameplate_voltage", "115 mV", "'115 mV'", "115 V"),
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
        yield Bad(calc, name, "0 mm2", "'0 mm2'", "check mm")
        yield Bad(calc, name, "5000 mm2", "'5000 mm2'", "check mm")
        yield Bad(calc, name, "0x30 AWG", "'0x30 AWG'", "count the strands")
        yield Bad(calc, name, "18 AWG solid stranded", "'18 AWG solid stranded'", "one wire")
        yield Bad(calc, name, "18 AWG stranted", "'stranted'", "stranded")
        yield Bad(calc, name, "-18 AWG", "'-18 AWG'", "a wire may be")
        yield Bad(calc, name, "9**9 mm2", "'9**9 mm2'", "a wire may be")
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
    Bad("pull", "standard", "ul-486", "'ul-486'", "did you mean ul-486"),
    Bad("pull", "standard", "ul-486e", "ul-486e", "ul-486a"),  # a clamp's table on a ring
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
    Bad("ampacity", "insulation_class", "105 C", "105 C", "60 C, 75 C or 90 C"),
    Bad("ampacity", "termination_temperature", "80 C", "80 C", "60 C, 75 C or 90 C"),
    Bad("ampacity", "ambient", "110 C", "'110 C'", "110 F"),
    Bad("ampacity", "current", "8700 A", "'8700 A'", "8700 mA"),
    Bad("strands", "cut_strands", "26", "26 cut and 1 nicked", "count each damaged strand once"),
    Bad("strands", "cut_strands", "-1", "'-1'", "whole number"),
    Bad("strands", "nicked_strands", "1.5", "'1.5'", "whole number"),
    Bad("strands", "nicked_strands", "one", "'one'", "whole number"),
    Bad("strands", "strands", "0", "0 is outside", "whole number"),
    Bad("strands", "standard", "ipc-a-620", "'ipc-a-620'", "did you mean ipc-a-620-class-"),
    Bad("substitute", "old_wire_temperature", "900 C", "'900 C'", "900 F"),
    Bad("substitute", "new_wire_voltage", "6000 V", "'6000 V'", "6000 mV"),
    *(
        Bad("substitute", f"{whose}_{what}", "maybe", "'maybe'", "yes or no")
        for whose in ("old", "new")
        for what in ("oil_resistant", "flame_rated")
    ),
]

JOINTS = [  # drop, tab, ring and heat: slips of a unit, wrong words, what cannot be
    Bad("joint-drop", "drop", "14 V", "'14 V'", "14 mV"),
    Bad("joint-drop", "drop", "0 mV", "'0 mV'", "14 mV"),
    Bad("joint-drop", "drop", "-14 mV", "'-14 mV'", "14 mV"),
    Bad("joint-drop", "drop", "14 mohm", "'mohm'", "mV"),
    Bad("joint-drop", "current", "0 A ±0.05 A", "0 A", "8.7 A"),
    Bad("joint-drop", "current", "1044 W", "'W'", "divide by the voltage"),
    Bad("joint-drop", "joint_length", "150 in", "'150 in'", "150 mm"),
    Bad("tab", "tab_width", "6.3 in", "'6.3 in'", "6.3 mm"),
    Bad("tab", "tab_width", "0.25 mm", "'0.25 mm'", "0.25 in"),
    Bad("tab", "tab_width", "0.300 in", "0.3 in", "0.250"),
    Bad("tab", "terminal_width", "5.6 mm", "0.2205 in", "0.205"),
    Bad("tab", "tab_thickness", "0.8 in", "'0.8 in'", "0.8 mm"),
    Bad("ring", "stud", "#8", "'#8'", "No.8"),
    Bad("ring", "stud", "M45", "'M45'", "did you mean M"),
    Bad("ring", "hole", "5.1 in", "'5.1 in'", "5.1 mm"),
    Bad("heat-rating", "place_temperature", "900 C", "'900 C'", "900 F"),
    Bad("heat-rating", "wire_temperature", "600 C", "'600 C'", "600 F"),
    Bad("heat-rating", "sleeve_temperature", "39 C", "'39 C'", "125 C"),
    Bad("heat-rating", "near_heater", "maybe", "'maybe'", "yes or no"),
    Bad("heat-rating", "terminal_material", "vynil", "'vynil'", "did you mean vinyl?"),
    Bad("heat-rating", "sleeve_material", "nylon", "'nylon'", "polyolefin tubing"),
    Bad("start-curve", "inertia", "-0.001 kg m2", "'-0.001 kg m2'", "0.005 kg m2"),
    Bad("start-curve", "inertia", "0 kg m2", "'0 kg m2'", "0.005 kg m2"),
    Bad("start-curve", "inertia", "0.001 kg", "'kg'", "did you mean kg"),
    Bad("start-curve", "poles", "3", "3 is odd", "poles come in pairs"),
    Bad("start-curve", "poles", "1725", "1725 is outside 2 to 24", "whole number"),
    Bad("start-curve", "frequency", "60 rpm", "'rpm'", "Hz"),
    Bad("start-curve", "start_capacitor", "189 uF", "no place in this start", "start-capacitor"),
    Bad("start-curve", "start_method", "capacitor", "'capacitor'", "start-capacitor"),
    Bad("start-curve", "variants", ["healthy", "lockd-rotor"], "'lockd-rotor'", "locked-rotor?"),
    Bad("start-curve", "variants", ["healthy", "healthy"], "stands there twice", "name it once"),
    Bad("start-curve", "variants", ["weak-capacitor"], "this start has none", "leave it out"),
    Bad("start-curve", "machine", "capacitor-start-110V", "was given too", "machine or a plate"),
    Bad("start-curve", "locked_rotor_current", "4 A", "4 A is not above", "the plate again"),
    Bad("start-curve", "main_winding", "7 ohm", "7 ohm alone", "measure it again"),
    Bad("start-curve", "main_winding", "0 ohm", "'0 ohm'", "2 ohm"),
    Bad("start-curve", "start_winding", "700 ohm", "700 ohm is over 30 times", "1.2 to 5 times"),
    Bad("start-curve", "ptc_resistance", "15 kohm", "'15 kohm'", "6.8 ohm"),
    Bad("start-curve", "ptc_resistance", "6.8 V", "'V'", "ohm"),
    Bad("start-curve", "load_torque", "-5 %", "'-5 %'", "50 %"),
    Bad("start-curve", "load_torque", "0.5 N", "'N'", "%"),
]

CASES = [*quantities(), *meter_errors(), *SLIPS, *wires(), *RANGES, *CHOICES, *counts()]
CASES += [*WIRE_ITSELF, *JOINTS]

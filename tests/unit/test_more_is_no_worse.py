"""A further reading inside its limits never makes a pass worse: nobody is punished for knowing."""

from __future__ import annotations

import pytest

import wirecalc

PASSES = {
    "ground": {
        "ground_point": "plug-pin",
        "ground_resistance": "0.066 ohm ±0.005 ohm",
        "lead_resistance": "0 ohm",
    },
    "insulation": {
        "insulation_resistance": "50 Mohm",
        "protection": "class-i",
        "tested_part": "machine",
        "test_voltage": "500 V",
        "switched_on": "yes",
        "electronics_unplugged": "yes",
    },
    "leakage": {"leakage_current": "0.2 mA", "switched_on": "yes"},
    "element": {
        "element_resistance": "22.6 ohm",
        "lead_resistance": "0.2 ohm",
        "nameplate_power": "2585 W",
        "nameplate_voltage": "240 V",
    },
    "cutoff": {
        **{f"{w}_functioning_temperature": "130 C" for w in ("old", "new")},
        **{f"{w}_cutoff_current": "15 A" for w in ("old", "new")},
        **{f"{w}_cutoff_voltage": "250 V" for w in ("old", "new")},
        "holding_temperature": "100 C",
        "place_temperature": "80 C",
        "cause_found": "yes",
    },
    "capacitor": {
        "capacitor_current": "2.42 A",
        "capacitor_voltage": "214 V",
        "frequency": "60 Hz",
        "marked_capacitance": "30 uF",
        "voltage": "120 V",
    },
    "capacitor-swap": {
        **{f"{w}_capacitor": "30 uF" for w in ("old", "new")},
        **{f"{w}_capacitor_voltage": "370 V" for w in ("old", "new")},
        **{f"{w}_capacitor_duty": "run" for w in ("old", "new")},
        **{f"{w}_capacitor_temperature": "70 C" for w in ("old", "new")},
    },
    "discharge": {
        "marked_capacitance": "30 uF",
        "resistor": "20 kohm",
        "capacitor_voltage": "214 V",
        "resistor_power": "2 W",
    },
}
MORE = [
    ("ground", {"cord": "16 AWG"}),
    ("ground", {"cord": "16 AWG", "cord_length": "6 ft"}),
    ("ground", {"cord": "16 AWG cca", "cord_length": "6 ft"}),
    ("ground", {"ground_open": "no"}),
    ("ground", {"ground_standard": "ul-507"}),
    ("ground", {"ground_standard": "vde-0701-0702"}),
    ("ground", {"neutral_strap": "no-strap", "neutral_open": "yes"}),
    ("ground", {"conductor_temperature": "35 C"}),
    ("ground", {"test_current": "2 A", "path_drop": "120 mV"}),
    ("ground", {"cord_ground_closed": "yes"}),
    ("insulation", {"dried": "no"}),
    ("insulation", {"nameplate_power": "5 kW"}),
    ("insulation", {"nameplate_voltage": "240 V"}),
    ("insulation", {"neutral_strap": "no-strap"}),
    ("leakage", {"machine_kind": "portable"}),
    ("leakage", {"leakage_standard": "iec-60335-1", "nameplate_power": "900 W"}),
    ("leakage", {"connection": "plug", "neutral_strap": "no-strap"}),
    ("leakage", {"on_gfci": "yes", "other_leakage": ["1 mA"]}),
    ("leakage", {"rcd_rating": "30 mA"}),
    ("element", {"element_open": "no"}),
    ("element", {"element_kind": "wire"}),
    ("element", {"maker_element": "21.8 ohm"}),
    ("element", {"maker_element": "20 ohm", "maker_element_high": "25 ohm"}),
    ("element", {"element_voltage": "238 V"}),
    ("element", {"element_voltage": "232 V", "nominal_voltage": "240 V"}),
    ("element", {"element_voltage": "206 V", "nominal_voltage": "208 V"}),
    ("element", {"element_voltage": "232 V", "voltage_at_rest": "239 V"}),
    ("cutoff", {"paired_part": "no-pair"}),
    ("cutoff", {"paired_part": "both-new"}),
    ("capacitor", {"tolerance": "10 %"}),
    ("capacitor", {"tolerance": "5 %", "tolerance_above": "10 %"}),
    ("capacitor", {"capacitor_rating": "370 V"}),
    ("capacitor", {"capacitor_duty": "run"}),
    ("capacitor", {"probes_on_capacitor": "yes"}),
    ("capacitor-swap", {f"{w}_capacitor_protection": "s3" for w in ("old", "new")}),
    ("capacitor-swap", {"new_capacitor_protection": "protected"}),
    ("capacitor-swap", {f"{w}_capacitor_life": "b" for w in ("old", "new")}),
    ("capacitor-swap", {"old_capacitor_life": "b"}),
    ("capacitor-swap", {"cutoff_voltage": "280 V"}),
    ("discharge", {"left_voltage": "250 V"}),
    ("discharge", {"marked_high": "36 uF"}),
    ("discharge", {"resistor_voltage": "500 V", "pulse_energy": "5 J"}),
    ("discharge", {"bled_for": "5 s", "volts_after": "0.6 V"}),
]


@pytest.mark.parametrize("name", PASSES)
def test_the_plain_reading_passes(name: str) -> None:
    assert wirecalc.run(name, **PASSES[name]).verdict == "pass"


@pytest.mark.parametrize(("name", "more"), MORE)
def test_more_that_is_good_stays_a_pass(name: str, more: dict[str, object]) -> None:
    finding = wirecalc.run(name, **(PASSES[name] | more))
    assert finding.verdict == "pass", finding.decided_by.because if finding.decided_by else ""


@pytest.mark.parametrize("name", PASSES)
def test_every_optional_input_is_tried_or_stands_in_the_plain_reading(name: str) -> None:
    tried = set(PASSES[name]).union(*(more for n, more in MORE if n == name))
    calc = wirecalc.build(bundled_only=True).calculations[name].calculation
    left = {i.name for i in calc.inputs if not i.required} - tried
    assert left <= {"same_range", "meter_resolution", "measured_capacitance"} | (
        {"old_capacitor_high", "new_capacitor_high", "marked_high"} - tried
    )

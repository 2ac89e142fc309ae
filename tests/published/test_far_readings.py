"""Where a reading is too far from what such a thing can have: just inside, and just past it."""

from __future__ import annotations

import pytest

import wirecalc

from .records import practice

RANGE = {"measured_capacitance": "100 uF", "marked_capacitance": "80 uF", "capacitor_duty": "start"}
BLEED = {"marked_capacitance": "30 uF", "resistor": "20000 ohm", "resistor_power": "2 W"}
HEAT = {
    "cold_resistance": "4.5 ohm",
    "hot_resistance": ["5.9 ohm"],
    "hot_time": ["20 s"],
    "lead_resistance": "0 ohm",
    "room_temperature": "24 C",
    "winding_class": "compressor",
}
PATH = {"ground_point": "wired-in", "test_current": "10 A ±0 A"}
LOCKED = {
    "high_time": "0.5 s",
    "rated_load_current": "1.6 A",
    "nameplate_voltage": "115 V",
    "voltage": "117 V",
    "settled": "1.2 A",
    "overload_trips": "0",
}


@practice("ranges, sizes, volts, temperatures, ohms and starts beyond which a reading is another's")
@pytest.mark.parametrize(
    ("name", "given", "reading", "inside", "past"),
    [
        ("capacitor", RANGE, "marked_high", "120 uF", "121 uF"),  # 1.5 times 80
        (
            "capacitor",
            {"measured_capacitance": "150 uF", "capacitor_duty": "run", "tolerance": "6 %"},
            "marked_capacitance",
            "150 uF",
            "151 uF",
        ),
        ("discharge", BLEED, "capacitor_voltage", "50 V", "49 V"),
        ("winding-heat", HEAT, "cold_temperature", "14 C", "13 C"),  # 10 K from the room
        ("winding-heat", HEAT, "cold_temperature", "34 C", "35 C"),
        ("ground", PATH, "path_drop", "1 mV ±0 mV", "0.9 mV ±0 mV"),  # 0.1 mohm x 10 A
        ("locked", LOCKED, "high_current", "40 A", "41 A"),  # 25 times 1.6 A
    ],
)
def test_a_reading_past_what_there_is_cannot_be_told(name, given, reading, inside, past):
    def verdict(value):
        return wirecalc.run(name, **given, **{reading: value}).verdict

    assert verdict(inside) in ("pass", "marginal")
    assert verdict(past) == "cannot tell"

"""Saying more of a motor, with all of it inside its limits, never lowers a pass."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import Verdict

BOUNDED = settings(deadline=None, max_examples=60)
Texts = st.SearchStrategy[Any]
Whole = tuple[str, dict[str, Any], dict[str, Texts]]


def between(low: float, high: float, unit: str) -> Texts:
    return st.floats(low, high).map(lambda value: f"{value:.6f} {unit}")


def one_of(*texts: str) -> Texts:
    return st.sampled_from(texts)


VOLTS = {"nameplate_voltage": "115 V", "voltage": "117 V"}
PLATE = {"rated_load_current": "1.6 A", **VOLTS}
WHOLE: list[Whole] = [
    (
        "inrush",
        {"locked_rotor_current": "12 A", "peak": "11 A", "meter_mode": "inrush", **PLATE}
        | {"settled": "1.2 A", "settle_time": "0.4 s"},
        {
            "frequency": one_of("50 Hz", "60 Hz"),
            "breaker": between(15, 30, "A"),
            "device": one_of("ul-489", "iec-60898-b", "iec-60898-c"),
            "code_letter": one_of("A", "N"),
            "horsepower": one_of("1/4 hp"),
            "nameplate_current": between(1.3, 8, "A"),
            "nameplate_load": one_of("appliance", "heater", "motor"),
            "motor_kind": one_of("motor", "compressor"),
            "service_factor_current": between(1.6, 2.2, "A"),
            "inverter": one_of("no"),
        },
    ),
    (
        "locked",
        {"high_time": "0.4 s", "settled": "1.2 A", "overload_trips": "0", **PLATE},
        {
            "high_current": between(8.6, 13.5, "A"),
            "locked_rotor_current": one_of("12 A"),
            "motor_kind": one_of("motor", "compressor"),
            "inverter": one_of("no"),
        },
    ),
    (
        "duty",
        {"on_times": ["18 min", "20 min"], "off_times": ["22 min", "21 min"]},
        {
            "running_power": between(1, 400, "W"),
            "after_restock": one_of("yes", "no"),
            "inverter": one_of("yes", "no"),
        },
    ),
    (
        "overload",
        {"overload_resistance": "0.4 ohm"},
        {
            "lead_resistance": between(0, 0.3, "ohm"),
            "overload_open": one_of("no"),
            "overload_cold": one_of("yes", "no"),
            "nameplate_voltage": one_of("115 V", "230 V"),
            "trip_temperature": between(107.3, 121, "C"),
            "reset_temperature": between(65.6, 71.1, "C"),
        },
    ),
    (
        "start-device",
        {"start_device": "ptc", "device_resistance": "6.5 ohm", "by_itself": "yes"}
        | {"device_cold": "yes", "browned_or_rattling": "no", "nameplate_voltage": "115 V"},
        {
            "lead_resistance": between(0, 0.3, "ohm"),
            "device_open": one_of("no"),
            "maker_resistance": one_of("6.8 ohm", "7 ohm"),
            "maker_tolerance": one_of("20 %", "25 %"),
        },
    ),
    (
        "windings",
        {"reading_1_2": "4.1 ohm", "reading_1_3": "12.2 ohm", "reading_2_3": "16.2 ohm"}
        | {"case_resistance": "40 Mohm"},
        {
            "lead_resistance": between(0, 0.15, "ohm"),
            "open_pin": one_of("none"),
            "common_pin": one_of("1"),
            "winding_temperature": between(22, 28, "C"),
            "motor_kind": one_of("compressor", "motor"),
        },
    ),
    (
        "windings",
        {"reading_1_2": "4.1 ohm", "reading_1_3": "12.2 ohm", "reading_2_3": "16.2 ohm"}
        | {
            "case_resistance": "40 Mohm",
            "winding_temperature": "24 C",
            "lead_resistance": "0.1 ohm",
        },
        {
            "maker_run": between(3.8, 4.2, "ohm"),
            "maker_start": between(11.5, 12.7, "ohm"),
            "common_pin": one_of("1"),
        },
    ),
    (
        "start-device",
        {"start_device": "ptc", "device_resistance": "6.5 ohm", "by_itself": "yes"}
        | {"device_cold": "yes", "browned_or_rattling": "no", "nameplate_voltage": "115 V"},
        {
            "maker_resistance": between(5.5, 6, "ohm"),
            "maker_resistance_high": between(6.6, 9, "ohm"),
            "lead_resistance": between(0, 0.3, "ohm"),
        },
    ),
    (
        "windings",
        {"reading_1_2": "4.1 ohm", "reading_1_3": "12.2 ohm", "reading_2_3": "16.2 ohm"}
        | {
            "case_resistance": "40 Mohm",
            "winding_temperature": "24 C",
            "lead_resistance": "0.1 ohm",
        },
        {
            "maker_run": between(3.8, 3.95, "ohm"),
            "maker_run_high": between(4.1, 5, "ohm"),
            "maker_start": between(11.5, 12, "ohm"),
            "maker_start_high": between(12.4, 14, "ohm"),
        },
    ),
    (
        "winding-heat",
        {"cold_resistance": "4.5 ohm", "cold_temperature": "22 C", "hot_resistance": ["5.6 ohm"]}
        | {"hot_time": ["10 s"], "room_temperature": "24 C", "winding_class": "B"},
        {
            "lead_resistance": between(0, 0.3, "ohm"),
            "winding_metal": one_of("copper", "aluminium"),
        },
    ),
]
CASES = [pytest.param(whole, id=f"{whole[0]}-{n}") for n, whole in enumerate(WHOLE)]
TOGETHER = {"device": "breaker", "nameplate_load": "nameplate_current"}
TOGETHER |= {"maker_tolerance": "maker_resistance", "maker_resistance_high": "maker_resistance"}
TOGETHER |= {"maker_run_high": "maker_run", "maker_start_high": "maker_start"}


@pytest.mark.parametrize("whole", CASES)
def test_the_whole_of_an_honest_run_passes(whole: Whole) -> None:
    name, typed, _ = whole
    assert wirecalc.run(name, **typed).verdict is Verdict.PASS


@pytest.mark.parametrize("whole", CASES)
@BOUNDED
@given(st.data())
def test_more_that_is_good_never_lowers_it(whole: Whole, data: st.DataObject) -> None:
    name, typed, more = whole
    chosen = sorted(data.draw(st.sets(st.sampled_from(sorted(more)), min_size=1)))
    said = {n: data.draw(more[n], label=n) for n in chosen}
    said = {n: v for n, v in said.items() if TOGETHER.get(n, n) in said}
    finding = wirecalc.run(name, **typed | said)
    decided = finding.decided_by
    assert finding.verdict is Verdict.PASS, (said, decided and decided.because)

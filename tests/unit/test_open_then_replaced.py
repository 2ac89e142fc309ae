"""A part that was found open, and replaced by one that reads, leaves nothing to be measured again.

Parts and readings are invented.
"""

from __future__ import annotations

import pytest

from wirecalc import build
from wirecalc.jobs import sheet as jobsheet

CATALOGUE = build(bundled_only=True)
START_DEVICE = {
    "start_device": "ptc",
    "by_itself": "yes",
    "device_cold": "yes",
    "browned_or_rattling": "no",
}
NTC = {
    "sheet_resistance": ["16.3 kohm", "5.00 kohm"],
    "sheet_temperature": ["0 C", "25 C"],
    "sensor_tolerance": "5 %",
}
MARKS = {
    "marked_opening": "60 C",
    "opening_tolerance": "3 K",
    "marked_closing": "45 C",
    "closing_tolerance": "4 K",
}
BOTH = {"opening_temperature": "59 C", "closing_temperature": "46 C"}
REPLACED = {  # what both have; how the old one was found, what the new one reads
    "start-device": (
        START_DEVICE | {"nameplate_voltage": "115 V", "lead_resistance": "0.1 ohm"},
        {"device_open": "yes"},
        {"device_resistance": "5.1 ohm"},
    ),
    "overload": (
        {"lead_resistance": "0.1 ohm", "overload_cold": "yes"},
        {"overload_open": "yes"},
        {"overload_resistance": "0.3 ohm"},
    ),
    "element": (
        {"nameplate_power": "2585 W", "nameplate_voltage": "240 V"},
        {"element_open": "yes"},
        {"element_resistance": "22.4 ohm"},
    ),
    "thermistor": (
        NTC,
        {"sensor_open": "yes"},
        {"in_ice_water": "yes", "sensor_resistance": "16.4 kohm"},
    ),
    "rtd": (
        {
            "ice_resistance": "1000 ohm",
            "temperature_tolerance": "3 K",
            "lead_resistance": "0.1 ohm",
        },
        {"sensor_open": "yes"},
        {"in_ice_water": "yes", "sensor_resistance": "1000 ohm"},
    ),
    "thermocouple": (
        {"thermocouple_type": "K", "temperature_tolerance": "5 K"},
        {"sensor_open": "yes"},
        {
            "thermocouple_voltage": "3.096 mV",
            "cold_junction": "25 C",
            "sensor_temperature": "100 C",
        },
    ),
    "thermostat, welded": (MARKS, {"never_opened": "yes"}, BOTH),
    "thermostat, open": (MARKS, {"never_closed": "yes"}, BOTH),
    "ground": (
        {"ground_point": "plug-pin", "lead_resistance": "0 ohm"},
        {"ground_open": "yes"},
        {"ground_resistance": "0.062 ohm ±(1%+2)"},
    ),
}


@pytest.mark.parametrize("part", REPLACED)
def test_one_that_reads_settles_the_one_that_was_open(part: str) -> None:
    calculation = part.partition(",")[0]
    both, old, new = REPLACED[part]
    checks = [
        {"calculation": calculation, "stage": stage, **both, **readings}
        for stage, readings in (("as found", old), ("as left", new))
    ]
    job = jobsheet.evaluate({"job": {"title": "t"}, "check": checks}, CATALOGUE)
    assert [str(check.verdict) for check in job.checks] == ["fail", "pass"]
    assert not [c for c in job.decided_by if "as found" in c.why]


@pytest.mark.parametrize("part", REPLACED)
def test_that_it_is_not_open_may_be_said_beside_its_reading(part: str) -> None:
    both, old, new = REPLACED[part]
    finding = CATALOGUE.run(part.partition(",")[0], {**both, **new, **dict.fromkeys(old, "no")})
    assert str(finding.verdict) == "pass"

"""The extension cord is judged by the same drop and dip as their own calculations."""

from __future__ import annotations

from typing import Any

import wirecalc

GOOD = {
    "extension_cord": "16 AWG",
    "extension_length": "50 ft",
    "current": "1.6 A",
    "grounding": "yes",
}
GOOD |= {"cord_rating": "15 A", "cord_ambient": "25 C", "maker_allows": "yes", "has_motor": "yes"}
GOOD |= {"cord_conductors": "2"}


def run(name: str, **given: Any) -> wirecalc.Finding:
    return wirecalc.run(name, **given)


def test_drop_and_dip_are_those_of_their_own_calculations() -> None:
    more = {"nameplate_voltage": "115 V", "building_wire": "14 AWG", "run_length": "60 ft"}
    more |= {"other_current": "6.2 A", "conductor_temperature": "60 C"}
    start = {"voltage_at_rest": "117.5 V", "locked_rotor_current": "14.2 A"}
    found = run("extension", **GOOD | more | start)
    cord = {"cord": "16 AWG", "cord_length": "50 ft"}
    drop = run("drop", **more, **cord, current="1.6 A", voltage_at_rest="117.5 V")
    dip = run("dip", **more, **cord, **start, rated_load_current="1.6 A")
    for own in (drop, dip):
        for c in own.criteria:
            assert found.criterion(c.criterion.name).verdict is c.verdict
            assert found.criterion(c.criterion.name).reason == c.reason
    for name in ("drop", "lowest volts at start", "loop resistance"):
        source = dip if name == "lowest volts at start" else drop
        assert found.figure(name).figure.value == source.figure(name).figure.value

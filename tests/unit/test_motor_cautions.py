"""Which hazards go with which check of a motor, by the hands that do it."""

import pytest

import wirecalc

LIVE = {"live-02", "meter-01"}  # a clamp on a live wire
DEAD = {"dead-01", "cap-01"}  # hands on terminals: prove dead, bleed the capacitor
STARTS = {"start-01", "pin-01", "flam-01"}
FLAMMABLE = {"flam-01", "flam-02"}  # sparks beside a flammable refrigerant
HAZARDS = {
    "inrush": {*LIVE, *STARTS},  # no second start before it is cold; venting pins
    "locked": {*LIVE, *STARTS, "heat-03"},
    "duty": LIVE,
    "start-curve": {*LIVE, *STARTS},
    "trace": {"live-01", "meter-01", *STARTS},
    "start-device": {*DEAD, *FLAMMABLE, "sub-01"},
    "overload": {"dead-01", "hot-01", "heat-03", *FLAMMABLE, "pin-01"},
    "windings": {*DEAD, "pin-01", "ins-01"},
    "winding-heat": {*DEAD, "hot-01", "pin-01"},
}


@pytest.mark.parametrize("name", HAZARDS)
def test_each_check_comes_with_its_hazards(name: str) -> None:
    calculation = wirecalc.build(bundled_only=True).calculations[name].calculation
    assert set(calculation.cautions) >= HAZARDS[name]

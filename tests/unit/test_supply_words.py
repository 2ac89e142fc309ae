"""What the checks of volts say of a limit: the number that is to be kept."""

from __future__ import annotations

import wirecalc


def test_a_start_that_arithmetic_leaves_open_names_the_volts_that_it_needs() -> None:
    """80 % of 120 V are 96 V (common practice)."""
    found = wirecalc.run(
        "dip",
        locked_rotor_current="40 A",
        nameplate_voltage="120 V",
        voltage_at_rest="120 V",
        building_wire="14 AWG",
        run_length="100 ft",
    ).criterion("least volts at start")
    assert found.verdict == "cannot tell"
    assert "by arithmetic" in found.reason
    assert found.reason.endswith("and the least is 96 V")

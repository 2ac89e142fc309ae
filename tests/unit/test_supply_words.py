"""What the checks of volts say of a limit: the number that is to be kept."""

from __future__ import annotations

import pytest

import wirecalc
from wirecalc_plugins.element import element_volts


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


def test_a_machine_of_double_insulation_asks_for_no_ground_in_its_cord() -> None:
    """It has none itself (IEC 61140, class II); a machine with a ground has it carried on."""
    given = wirecalc.build(bundled_only=True).calculations["extension"].calculation.example_inputs
    typed = dict(given) | {"maker_allows": "yes", "grounding": "no"}
    said = wirecalc.run("extension", **typed | {"protection": "class-ii"})
    assert "ground of the cord" in [n.what for n in said.not_checked]
    assert "three-wire grounding cord" not in [c.criterion.name for c in said.criteria]
    grounded = wirecalc.run("extension", **typed | {"protection": "class-i"})
    assert grounded.criterion("three-wire grounding cord").verdict == "fail"
    assert "ground of the cord" not in [n.what for n in grounded.not_checked]


@pytest.mark.parametrize("alone", ["panel_at_rest", "panel_running"])
def test_one_reading_of_a_panel_is_no_loss(alone: str) -> None:
    """Nothing is worked out from one: the checks are those without it."""
    calculation = wirecalc.build(bundled_only=True).calculations["upstream"].calculation
    typed = dict(calculation.example_inputs)
    without = wirecalc.run("upstream", **typed)
    found = wirecalc.run("upstream", **typed, **{alone: "121 V"})
    assert [c.because for c in found.criteria] == [c.because for c in without.criteria]


@pytest.mark.parametrize(
    ("typed", "practice"), [({}, True), ({"start_power_factor": "65 %"}, False)]
)
def test_a_power_factor_that_nobody_gave_is_practice(typed: dict[str, str], practice: bool) -> None:
    found = wirecalc.run(
        "dip",
        locked_rotor_current="20 A",
        nameplate_voltage="120 V",
        voltage_at_rest="120 V",
        building_wire="14 AWG",
        run_length="50 ft",
        **typed,
    )
    source = found.figure("volts at start, power factor 0.65").figure.source
    assert (source == wirecalc.PRACTICE) is practice


@pytest.mark.parametrize(("volts", "may_be"), [(187.2, True), (187.1, False)])
def test_few_volts_of_a_heater_may_be_those_of_a_208_v_service(volts: float, may_be: bool) -> None:
    """A service may be 10 % low (makers' sheets): 208 V less 20.8 V, at a plate of 240 V."""
    said = element_volts._says(element_volts.ElementSupply(volts, 240.0, None, None, None))
    assert ("208 V service" in said) is may_be

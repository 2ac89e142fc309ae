"""The loads of a start: how their torque goes with speed and with the turn of the shaft."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from wirecalc_plugins.start_curve import estimate
from wirecalc_plugins.start_curve.members import main_winding_alone
from wirecalc_plugins.start_curve.meter_readings import read_meters
from wirecalc_plugins.start_curve.motors import motors, torque_of_its_kind
from wirecalc_plugins.start_curve.setup import Setup, case
from wirecalc_plugins.start_curve.start_case import ShaftLoad
from wirecalc_plugins.start_curve.starting import simulate

PLATE: dict[str, Any] = {
    "nameplate_voltage": 115.0,
    "frequency": 60.0,
    "locked_rotor_current": 20.0,
    "rated_load_current": 4.4,
    "horsepower": 0.25,
    "poles": 4,
    "main_winding": 2.0,
    "start_winding": 7.0,
    "start_method": "start-capacitor",
    "start_capacitor": 189.0,
    "load_torque": 50.0,
    "inertia": 0.002,
    "closing_angle": 0.0,
    "duration": 4.0,
}


def _load(curve: str) -> tuple[ShaftLoad, float]:
    """Return the load and the speed at rated load, as a share of synchronous speed."""
    nothing: Any = dict.fromkeys(Setup._fields)
    setup = Setup(**nothing)._replace(**PLATE, load_curve=curve)
    own = motors(setup)[0]
    return case(setup, own).load, 1 - own.machine.slip


def test_a_compressor_takes_its_torque_in_pulses() -> None:
    """One cylinder: 80 % up and down about the mean, once a turn (common practice, no source)."""
    load, _ = _load("compressor")
    assert (load.pulsation, load.quadratic) == (0.8, 0.0)


def test_a_load_that_is_constant_has_half_the_torque_that_a_fan_has_at_speed() -> None:
    """A quarter horse at some 1725 turns a minute is 1.03 N m, and half of it is asked for."""
    constant, speed = _load("constant")
    fan, _ = _load("fan")
    assert constant.constant == pytest.approx(0.5 * 186.4 / (188.5 * speed), rel=1e-3)
    assert (constant.pulsation, constant.quadratic) == (0.0, 0.0)
    assert (fan.pulsation, fan.constant) == (0.0, 0.0)
    assert fan.quadratic * speed**2 == pytest.approx(constant.constant)


def test_the_members_of_a_main_winding_have_a_rotor_and_a_friction() -> None:
    """Rotor shares of nine textbook machines, 0.47 to 0.66, with room; friction up to 25 %."""
    written = [(0.58, 0.12), (0.45, 0.0), (0.68, 0.25)]
    assert [(m.rho, m.loss) for m in main_winding_alone().members] == written


def test_a_shaft_drives_nothing_but_what_is_said() -> None:
    assert ShaftLoad(0.003) == ShaftLoad(0.003, 0.0, 0.0, 0.0, locked=False)


def test_a_start_winding_that_stays_in_heats_as_long_as_it_is_in() -> None:
    """The rotor is held: two seconds heat twice as much as one."""
    nothing: Any = dict.fromkeys(Setup._fields)
    setup = Setup(**nothing)._replace(**PLATE, load_curve="constant")
    stalled = case(setup, motors(setup)[0])._replace(load=ShaftLoad(0.002, locked=True))
    one, two = (read_meters(simulate(stalled, seconds), seconds) for seconds in (1.0, 2.0))
    assert one.settle_time is None
    assert two.start_heat == pytest.approx(2 * one.start_heat, rel=0.02)


def test_no_winding_leaks_less_than_nothing() -> None:
    """2 ohm that draw 18 A from 115 V, magnetised by 5 ohm: its leakage would be under zero."""
    plate: Any = SimpleNamespace(main_resistance=2.0, voltage=115.0)
    assert estimate._locked_main(plate, 0.58, 18.0, 5.0) is None
    assert estimate._locked_main(plate, 0.58, 12.0, 20.0) is not None


def test_nothing_is_said_of_a_torque_of_which_no_motor_of_the_kind_tells() -> None:
    """Of run capacitors three machines have 0.013 to 0.091 of kappa: that is no band to lie in."""
    nothing: Any = dict.fromkeys(Setup._fields)
    alone = {"start_method": "run-capacitor", "start_capacitor": None, "run_capacitor": 15.0}
    setup = Setup(**nothing)._replace(**PLATE | alone, load_curve="constant")
    assert torque_of_its_kind(setup, motors(setup)[0]) == 1.0

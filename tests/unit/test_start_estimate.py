"""What is done with an estimate: both ends of what is not known, room, and what does not fit."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc_plugins.start_curve import estimate, motors, not_known
from wirecalc_plugins.start_curve.healthy_starts import HealthyStarts, Start
from wirecalc_plugins.start_curve.members import (
    Kind,
    capacitor_start,
    resistance_start,
    run_capacitor,
)
from wirecalc_plugins.start_curve.meter_readings import MeterReadings
from wirecalc_plugins.start_curve.motor_plate import MotorPlate
from wirecalc_plugins.start_curve.setup import Motor, Setup
from wirecalc_plugins.start_curve.start_case import Ptc

PLATE: dict[str, Any] = {
    "nameplate_voltage": "115 V",
    "frequency": "60 Hz",
    "locked_rotor_current": "20 A",
    "rated_load_current": "4.4 A",
    "horsepower": "1/4 hp",
    "poles": 4,
    "main_winding": "2 ohm",
    "start_winding": "7 ohm",
    "voltage_at_rest": "115 V",
    "source_resistance": "0 ohm",
}
SETUP = Setup(
    None, 115, 60, 20, 4.4, 0.25, 4, None, 2, 7, "start-capacitor", 189, None, None, None,
    "constant", None, None, None, None, None, 0.0, 4.0, None,
)  # fmt: skip


def read(settle: float | None, settled: float) -> MeterReadings:
    return MeterReadings(30, 20, 19, settled, 110, settle, settle, 1700, 100)


def starts(motor: Motor, *readings: MeterReadings) -> HealthyStarts:
    not_looked_at: Any = None
    found = [Start(not_looked_at, one) for one in readings]
    return HealthyStarts(motor, found, (68.0, 149.0), (25.0, 100.0), ())


def test_a_load_and_an_inertia_not_given_are_run_at_both_ends() -> None:
    # a quarter-horse motor at 1800 rpm: twice 0.05 s x 186.4 W over 188.5 rad/s squared is the
    # rotor alone, 0.000525 kg m2; the textbook motor of that power with its load has 0.0146
    finding = wirecalc.run(
        "start-curve", **PLATE, start_method="start-capacitor", start_capacitor="189 uF"
    )
    load = finding.figure("load torque at speed, assumed")
    rated = finding.figure("rated torque of the motor").figure.value
    assert load.low == pytest.approx(0.25 * rated, rel=1e-3)
    assert load.high == pytest.approx(rated, rel=1e-3)
    inertia = finding.figure("moment of inertia, assumed")
    rotor = 2 * 0.05 * 186.4 / (4 * math.pi * 60 / 4) ** 2
    assert inertia.low == pytest.approx(rotor, rel=0.01)
    assert inertia.high == pytest.approx(0.0146, rel=0.001)


def test_what_is_remembered_of_a_ptc_is_marked_and_has_a_band() -> None:
    given = PLATE | {"start_method": "ptc", "ptc_resistance": "6.8 ohm", "load_torque": "10 %"}
    finding = wirecalc.run("start-curve", **given, inertia="0.0005 kg m2", duration="0.5 s")
    for name, span in (
        ("heat capacity of the PTC, assumed", (0.6, 1.0, 1.6)),
        ("switching temperature of the PTC, assumed", (100, 120, 140)),
        ("warming in which the PTC rises tenfold, assumed", (10, 15, 20)),
    ):
        found = finding.figure(name)
        assert (found.low, found.figure.value, found.high) == pytest.approx(span)
        assert found.figure.source is not None
        assert found.figure.source.confidence == "memory"


def test_the_ends_of_a_ptc_are_those_that_open_soonest_and_latest() -> None:
    typed = Ptc(6.8)
    soonest, latest = not_known.ptc_ends(typed)
    assert (soonest.cold, latest.cold) == (6.8, 6.8)
    assert (soonest.heat_capacity, latest.heat_capacity) == (0.6, 1.6)
    assert (soonest.switches_at, latest.switches_at) == (100, 140)
    assert (soonest.rise, latest.rise) == pytest.approx((math.log(10) / 10, math.log(10) / 20))


@pytest.mark.parametrize(
    ("field", "share"),
    [
        ("inrush", 0.02), ("cycle", 0.03), ("peak", 0.03), ("settled", 0.08),
        ("settle_time", 0.12), ("speed_time", 0.12), ("start_heat", 0.15), ("volts", 0.0),
    ],
)  # fmt: skip
def test_an_estimate_has_room_for_what_it_leaves_out(field: str, share: float) -> None:
    estimated = motors.motors(SETUP)[0]
    one = read(0.5, 4.0)
    low, high = starts(estimated, one).band(field)
    value = getattr(one, field)
    assert (low, high) == pytest.approx((value * (1 - share), value * (1 + share)))
    known = starts(estimated._replace(estimated=False), one)
    assert known.band(field) == (value, value)
    # a max-hold lies between the first 100 ms and the settled current
    assert starts(estimated, one).wider((10.0, 20.0), "held") == pytest.approx((9.2, 21.6))
    assert known.wider((10.0, 20.0), "held") == (10.0, 20.0)


def test_what_it_settles_at_is_that_of_the_starts_that_settle() -> None:
    motor = motors.motors(SETUP)[0]._replace(estimated=False)
    some = starts(motor, read(None, 20.0), read(0.4, 4.0), read(0.5, 4.5))
    assert not some.sure and not some.never
    assert some.band("settled", settled_only=True) == (4.0, 4.5)
    assert starts(motor, read(None, 20.0)).never
    assert starts(motor, read(0.4, 4.0)).sure


@pytest.mark.parametrize(
    ("share", "said"), [(0.79, 0.79), (0.81, 1.0), (1.0, 1.0), (1.19, 1.0), (1.21, 1.21)]
)
def test_a_torque_a_fifth_off_is_that_of_another_way_of_starting(
    share: float, said: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    nominal = motors.motors(SETUP)[0]
    monkeypatch.setattr(motors, "kappa", lambda machine, series: share * 0.325)
    assert motors.torque_of_its_kind(SETUP, nominal) == pytest.approx(said)


@pytest.mark.parametrize(
    ("times", "fits"), [(0.84, False), (0.86, True), (1.14, True), (1.16, False)]
)
def test_a_slip_15_percent_off_is_that_of_another_motor(times: float, fits: bool) -> None:
    # 1728 of 1800 turns a minute: a slip of 0.04
    setup = SETUP._replace(rated_speed=1728)
    nominal = motors.motors(SETUP)[0]
    nominal = nominal._replace(machine=nominal.machine._replace(slip=times * 0.04))
    assert motors.speed_fits(setup, nominal) is fits
    assert motors.speed_fits(SETUP, nominal)
    assert motors.speed_fits(setup._replace(start_method="relay"), nominal)


PAGE = Path(__file__).parents[2] / "docs" / "start-estimate.md"


@pytest.mark.parametrize(
    ("start", "kind"), [("relay, PTC", resistance_start), ("start capacitor", capacitor_start)]
)
def test_the_members_are_those_of_the_page(start: str, kind: Callable[[], Kind]) -> None:
    (row,) = (r for r in PAGE.read_text().splitlines() if r.startswith(f"| {start} | 0"))
    written = [
        tuple(float(value) for value in member.split())
        for member in row.split("|")[2].strip().split("; ")
    ]
    assert written == [(m.rho, m.kappa, m.loss) for m in kind().members]


def test_the_members_of_a_run_capacitor_are_those_of_the_page() -> None:
    assert "turns 1.45, 1.2, 1.75, 1.2, 1.75 in place" in PAGE.read_text()
    assert [m.turns for m in run_capacitor().members] == [1.45, 1.2, 1.75, 1.2, 1.75]


def test_no_main_winding_has_a_power_factor_or_a_rotor_that_none_has() -> None:
    # 5 ohm of its own and as much of the rotor are 10 ohm; by V / I that is the power factor
    plate = MotorPlate(115, 60, 4, 20, 4.4, 186.4, 5.0, 7.0)
    assert estimate._locked_main(plate, 0.5, 115 * 0.919 / 10, None) is not None
    assert estimate._locked_main(plate, 0.5, 115 * 0.921 / 10, None) is None
    # at a power factor of 0.30 at least, 0.28 of the resistance must be the winding's own
    at_most = 115 * 0.30 * 0.28 / 5.0  # A: 0.30 V / I is 5 / 0.28 ohm
    assert estimate._locked_main(plate, 0.2, 1.01 * at_most, None) is not None
    assert estimate._locked_main(plate, 0.2, 0.99 * at_most, None) is None

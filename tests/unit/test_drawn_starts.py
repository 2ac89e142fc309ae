"""Starts drawn from what is not known: within the ends, even, the same on every run, and shown."""

from __future__ import annotations

import math
from typing import Any

import pytest

import wirecalc
from wirecalc_plugins.start_curve import drawn_starts, motors, starting
from wirecalc_plugins.start_curve.drawn_starts import cases
from wirecalc_plugins.start_curve.fan import drawn_show, fan_chart, said_of_drawn
from wirecalc_plugins.start_curve.healthy_starts import HealthyStarts, Start
from wirecalc_plugins.start_curve.meter_readings import read_meters
from wirecalc_plugins.start_curve.setup import Setup, rated_torque

PLATE = Setup(
    None, 115, 60, 20, 4.4, 0.25, 4, None, 2, 7, "ptc", None, None, 6.8, None,
    "constant", None, 117.0, 0.4, None, None, 90.0, 1.0, None,
)  # fmt: skip
QUICK = {
    "textbook_motor": "capacitor-start-110V", "inertia": "0.002 kg m2", "duration": "0.6 s",
    "load_torque": "50 %",
}  # fmt: skip


def test_each_draw_lies_within_the_ends() -> None:
    own = motors.motors(PLATE)
    drawn = cases(PLATE, own, {"voltage_at_rest": (112.0, 122.0)}, 60)
    rated = {id(m.machine): rated_torque(m) for m in own}
    assert {id(one.machine) for one in drawn} == set(rated)
    spans: dict[str, list[float]] = {
        "load": [one.load.constant / rated[id(one.machine)] for one in drawn],
        "inertia": [math.log(one.load.inertia) for one in drawn],
        "angle": [one.supply.closing_angle for one in drawn],
        "volts": [one.supply.voltage for one in drawn],
        "heat": [one.device.ptc.heat_capacity for one in drawn if one.device.ptc],
        "switches": [one.device.ptc.switches_at for one in drawn if one.device.ptc],
    }
    # a rotor alone has 0.05 s at full power, its heavy load 1.39 s
    rotor = 2 * 0.05 * 186.425 / (4 * math.pi * 60 / 4) ** 2
    ends = {
        "load": (0.25, 1.0), "inertia": (math.log(rotor), math.log(0.0146)), "angle": (0, 180),
        "volts": (112, 122), "heat": (0.6, 1.6), "switches": (100, 140),
    }  # fmt: skip
    for name, (low, high) in ends.items():
        found, room = sorted(spans[name]), 0.01 * (high - low)
        assert low - room <= found[0] <= found[-1] <= high + room, name
        # even: each quarter of the span has its share of 60, give or take a few
        for quarter in range(4):
            begin = low + quarter * (high - low) / 4
            inside = [v for v in found if begin <= v <= begin + (high - low) / 4]
            assert 11 <= len(inside) <= 19, (name, quarter, len(inside))


def test_what_was_given_is_not_drawn() -> None:
    given = PLATE._replace(load_torque=40.0, inertia=0.004)
    own = motors.motors(given)
    for one in cases(given, own[:1], {}, 20):
        assert one.load.inertia == 0.004
        assert one.load.constant == pytest.approx(0.4 * rated_torque(own[0]))
        assert (one.supply.voltage, one.supply.resistance) == (117.0, 0.4)


def test_an_error_of_a_winding_draws_the_motors_of_both_ends() -> None:
    own = motors.motors(PLATE)
    drawn = cases(PLATE, own, {"main_winding": (1.9, 2.1)}, 36)
    assert {one.machine.r1 for one in drawn} == {1.9, 2.0, 2.1}


@pytest.fixture(scope="module")
def finding() -> wirecalc.Finding:
    return wirecalc.run("start-curve", **QUICK, spread=24)


def test_the_bands_hold_the_drawn_starts(finding: wirecalc.Finding) -> None:
    (rows,) = (found.rows for found in finding.listings if "24 starts drawn" in found.title)
    shown = {str(row[0]): [float(str(cell)) for cell in row[1:]] for row in rows}
    for name, figure in (
        ("crest", "highest instantaneous current"),
        ("first 100 ms", "inrush reading, first 100 ms"),
        ("settled, if it settles", "settled current"),
    ):
        found = finding.figure(figure)
        assert found.low is not None and found.high is not None
        assert shown[name] == sorted(shown[name])
        assert found.low * 0.995 <= shown[name][0] <= shown[name][-1] <= found.high * 1.005
    assert shown["crest"][-1] > 1.05 * shown["crest"][0]  # the instant of closing
    answers = {a.name: a.text for a in finding.answers}
    assert answers["drawn starts"].startswith("24 of 24 come to speed")
    assert "no likelihood" in answers["drawn starts"]


def drawn_ones(*settle_times: float) -> drawn_starts.DrawnStarts:
    import numpy as np

    from wirecalc_plugins.start_curve.courses import Courses
    from wirecalc_plugins.start_curve.spread import Spread

    number = len(settle_times)
    rms = np.linspace(20, 4, 60)[:, None] * np.linspace(1, 1.2, number)
    none = np.ones(number)
    courses = Courses(60.0, none * 188, none * 30, rms, rms, none * 0.3, none > 0)
    times = np.array(settle_times)
    read = Spread(
        none * 30, none * 20, none * 19, none * 9, none * 18, none * 4, times, times, none
    )
    return drawn_starts.DrawnStarts(courses, read)


def test_one_drawn_start_that_does_not_settle_leaves_it_open() -> None:
    case = cases(PLATE._replace(start_method="none"), motors.motors(PLATE)[:1], {}, 20)[0]
    curve = starting.simulate(case, 0.1)
    one = Start(curve, read_meters(curve, 0.1)._replace(settle_time=0.4, speed_time=0.3))
    motor = motors.motors(PLATE)[0]._replace(estimated=False)
    healthy = HealthyStarts(motor, [one], (68.0, 149.0), (25.0, 100.0), ())
    assert healthy.sure
    both = healthy._replace(drawn=drawn_ones(0.5, math.inf))
    assert not both.sure and not both.never
    assert both.band("settle_time") == (0.4, 0.5)
    never = Start(curve, one.meters._replace(settle_time=None))
    assert healthy._replace(starts=[never], drawn=drawn_ones(math.inf)).never
    assert not healthy._replace(starts=[never], drawn=drawn_ones(0.5, math.inf)).never


def test_a_fan_of_starts_that_may_not_settle_has_no_middle() -> None:
    sure, open_ = drawn_ones(0.5, 0.6), drawn_ones(0.5, math.inf)
    assert [line.name for line in fan_chart(sure).lines if line.strong] == ["middle of all"]
    assert not [line for line in fan_chart(open_).lines if line.strong]
    assert "1 of 2 come to speed" in said_of_drawn(open_)
    rows: Any = drawn_show(drawn_ones(math.inf))
    assert not [row for row in rows.rows if "settle" in str(row[0])]


def test_a_fan_holds_every_single_start() -> None:
    fan = fan_chart(drawn_ones(0.3, 0.6, 0.7))
    (band,) = fan.bands
    for line in fan.lines:
        assert all(
            low <= y <= high for low, y, high in zip(band.low, line.y, band.high, strict=True)
        )
    assert band.x[0] == pytest.approx(0.5 / 60)
    assert band.x[-1] == pytest.approx(1.25 * 0.7, abs=1 / 60)  # a quarter more than the last one

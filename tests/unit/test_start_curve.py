"""The simulated start: what it asks for, refuses and shows, and its two solvers side by side."""

from __future__ import annotations

import math
import re

import numpy as np
import pytest

import wirecalc
from wirecalc import tables
from wirecalc_plugins.start_curve import meter_readings, starting
from wirecalc_plugins.start_curve.courses import courses
from wirecalc_plugins.start_curve.machines import MotorModel, StartWinding
from wirecalc_plugins.start_curve.spread import spread
from wirecalc_plugins.start_curve.start_case import (
    Ptc,
    ShaftLoad,
    SimulatedStart,
    StartDevice,
    StartSupply,
)

F2 = MotorModel(
    110, 60, 4, 2.02, 2.79, 4.12, 2.12, 66.8, 24, 13, 0.05, StartWinding(7.14, 3.22, 1.18)
)
LIGHT = ShaftLoad(inertia=0.003, constant=0.4)  # comes to speed within a quarter of a second
OPEN = StartDevice(connected=False)
CASES = [
    SimulatedStart(F2, StartDevice(capacitor=183e-6, resistance=3.0), LIGHT, StartSupply(110)),
    SimulatedStart(
        F2, StartDevice(run_capacitor=183e-6, cut_out=None), LIGHT, StartSupply(110, 0.9, 40)
    ),
    SimulatedStart(F2, StartDevice(ptc=Ptc(6.8)), LIGHT, StartSupply(120)),
    SimulatedStart(F2, StartDevice(ptc=Ptc(6.8), run_capacitor=15e-6), LIGHT, StartSupply(110)),
    SimulatedStart(F2, OPEN, LIGHT, StartSupply(110)),
    SimulatedStart(
        F2,
        StartDevice(capacitor=183e-6, resistance=3.0),
        LIGHT._replace(locked=True),
        StartSupply(90),
    ),
]
PLATE = {
    "nameplate_voltage": "115 V",
    "locked_rotor_current": "20 A",
    "rated_load_current": "4.4 A",
    "horsepower": "1/4 hp",
    "poles": 4,
    "main_winding": "2 ohm",
    "start_winding": "7 ohm",
}
BOOK = {"textbook_motor": "capacitor-start-110V", "load_torque": "50 %", "inertia": "0.003 kg m2"}


def run(**given):
    return wirecalc.run("start-curve", **given)


def value(finding, name):
    return finding.figure(name).figure.value


def test_many_at_once_are_what_one_at_a_time_is() -> None:
    many = spread(CASES, 0.8)
    for i, case in enumerate(CASES):
        one = meter_readings.read_meters(starting.simulate(case, 0.8, to_the_end=True), 0.8)
        assert many.peak[i] == pytest.approx(one.peak, rel=1e-3)
        assert many.cycle[i] == pytest.approx(one.cycle, rel=0.03)  # whole cycles, not sliding
        assert many.inrush[i] == pytest.approx(one.inrush, rel=2e-3)
        assert many.settled[i] == pytest.approx(one.settled, rel=5e-3)
        assert many.rpm[i] == pytest.approx(one.rpm, abs=10)
        if one.settle_time is None:
            assert math.isinf(many.settle_time[i])
        else:
            assert many.settle_time[i] == pytest.approx(one.settle_time, abs=2 / 60)


def test_a_start_at_rest_goes_on_as_it_was_while_others_are_worked_out() -> None:
    heavy = CASES[0]._replace(load=LIGHT._replace(inertia=0.005))
    alone, both = courses([heavy], 0.5), courses([CASES[5], heavy], 0.5)
    assert both.rms[:, 1] == pytest.approx(alone.rms[:, 0], rel=1e-9)
    assert both.opened[1] == alone.opened[0]
    assert both.rms[-1, 0] == both.rms[-10, 0]  # the locked one was taken out before
    assert both.rms[-1, 0] == pytest.approx(both.rms[6, 0], rel=2e-3)


def test_a_spread_has_one_frequency() -> None:
    with pytest.raises(ValueError, match="one frequency"):
        spread(
            [CASES[0], SimulatedStart(F2._replace(frequency=50), OPEN, LIGHT, StartSupply(230))],
            0.1,
        )


def test_readings_with_an_error_have_a_band_from_both_ends() -> None:
    finding = run(**BOOK | {"voltage_at_rest": "110 V ±5 V"})
    low, high = (run(**BOOK | {"voltage_at_rest": f"{v} V"}) for v in (105, 115))
    for name in ("highest instantaneous current", "settled current"):
        banded = finding.figure(name)
        ends = sorted(value(f, name) for f in (low, high))
        assert [banded.low, banded.high] == pytest.approx(ends)
    assert finding.verdict == "pass"
    wide = run(**BOOK | {"source_resistance": "0.8 ohm ±0.4 ohm"})
    assert wide.criterion("volts at the motor while it starts").low < 99


def test_methods_differ_as_they_should() -> None:
    def cycle(**more):
        return value(run(**BOOK | more), "highest one-cycle rms current")

    both = cycle()
    assert cycle(start_method="none") < both  # the main winding alone draws least
    resistance = run(**BOOK | {"start_method": "relay"})
    assert resistance.verdict in ("pass", "marginal", "fail")
    weak = run(**BOOK | {"start_method": "start-capacitor", "start_capacitor": "60 uF"})
    strong = run(**BOOK | {"start_method": "start-capacitor", "start_capacitor": "183 uF"})
    slow, fast = (f.criterion("time to settle").criterion.actual for f in (weak, strong))
    assert slow > fast
    # the textbook's capacitor and its 3 ohm, typed or taken
    assert cycle(start_method="start-capacitor", start_capacitor="183 uF") == pytest.approx(both)


def test_every_machine_on_offer_has_a_start_winding() -> None:
    motors_ = {row.text("motor") for row in tables.load("textbook-motors").rows}
    assert {r.text("motor") for r in tables.load("textbook-start-windings").rows} <= motors_


def test_without_scipy_it_cannot_tell_and_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None)
    finding = run(**BOOK)
    assert finding.verdict == "cannot tell"
    assert "wirecalc[analysis]" in finding.criteria[0].action


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({}, "nameplate_voltage, locked_rotor_current"),
        ({**PLATE, "start_method": "relay", "ptc_resistance": "7 ohm"}, "goes with ptc"),
        ({**PLATE, "start_method": "ptc"}, "ptc_resistance: is needed"),
        ({**PLATE, "start_method": "start-capacitor"}, "start_capacitor: is needed"),
        ({k: v for k, v in PLATE.items() if k != "start_winding"}, "start_winding: was not given"),
        ({k: v for k, v in PLATE.items() if k != "horsepower"}, "horsepower: is needed"),
        ({**BOOK, "variants": ["swapped-leads"], "start_method": "none"}, "no start winding"),
        ({**BOOK, "ptc_resistance": "7 ohm"}, "start_method, which was not given"),
    ],
)
def test_what_does_not_fit_together_is_refused(given, said) -> None:
    with pytest.raises(wirecalc.BadInput) as caught:
        run(**given)
    told = re.sub(r"--([a-z-]+)", lambda of: of[1].replace("-", "_"), str(caught.value))
    assert said in told


def test_a_slow_max_hold_shows_the_start_between_its_luckiest_and_unluckiest_readings() -> None:
    # 10 A for 0.4 s, then 2 A. Every 0.25 s, luckily: all of a reading in the start, 10 A. Every
    # 0.5 s, unluckily: parted evenly, 0.2 s in one reading and 0.2 s with 0.3 s of 2 A in the next
    rate = 60 * starting.SAMPLES
    time = np.arange(2 * rate) / rate
    line = np.where(time < 0.4, 10.0, 2.0) * math.sqrt(2) * np.sin(2 * math.pi * 60 * time)
    still = np.zeros((8, len(time)))
    none = np.zeros(len(time))
    curve = starting.Curve(time, line, none, none, none, still, None, True, CASES[0])
    least, most = meter_readings.max_hold(curve)
    assert most == pytest.approx(10.0, rel=2e-3)
    parted = min(
        max(
            math.sqrt((100 * a) / 0.5),
            math.sqrt((100 * (0.4 - a) + 4 * (0.1 + a)) / 0.5),
        )
        for a in (x / 1000 for x in range(401))
    )
    assert least == pytest.approx(parted, rel=0.02)


@pytest.mark.parametrize("angle", ["0 deg", "60 deg"])
def test_each_meter_shows_what_it_is_for(angle: str) -> None:
    finding = run(**BOOK, closing_angle=angle)
    (found,) = (shown for shown in finding.listings if "kind of meter" in shown.title)
    inrush, crest, held = (tuple(float(cell) for cell in row[1:]) for row in found.rows)
    assert inrush[0] <= value(finding, "inrush reading, first 100 ms") * 1.01
    # whatever the instant of closing, the crest lies between that without an offset and twice it
    cycle = value(finding, "highest one-cycle rms current")
    assert crest[0] < crest[1] < 2 * math.sqrt(2) * cycle
    at_typed = value(finding, "highest instantaneous current")
    assert crest[0] * 0.995 <= at_typed <= crest[1] * 1.005
    assert held[0] < held[1] < cycle * 1.01


@pytest.mark.parametrize(
    ("beside", "said"),
    [({"textbook_motor": "capacitor-start-110V"}, "known already"), ({"spread": 100}, "its own")],
)
def test_a_recording_stands_beside_a_plate_alone(beside: dict[str, object], said: str) -> None:
    from wirecalc_plugins.start_curve.refusals import refuse

    assert any(said in p.wrong for p in refuse({"fit": "start.csv", **beside}))
    assert not any(said in p.wrong for p in refuse({"fit": "start.csv"}))


@pytest.mark.parametrize(
    ("speed", "poles", "fits"),
    [
        # 4 poles at 60 Hz turn at 1800 without load; a fifth of that is more slip than any has
        (1725, 4, True),
        (1440, 4, True),
        (1439, 4, False),
        (1800, 4, False),
        (1725, 2, False),
        (3450, 2, True),
        (3450, 4, False),
    ],
)
def test_a_speed_goes_with_its_poles(speed: int, poles: int, fits: bool) -> None:
    from wirecalc_plugins.start_curve.refusals import refuse

    given = {n: float(str(v).split()[0]) for n, v in PLATE.items() if n not in ("horsepower",)}
    given |= {"horsepower": 0.25, "poles": poles, "rated_speed": speed, "frequency": 60.0}
    found = [p for p in refuse(given) if p.name == "rated_speed"]
    assert not found if fits else "without load" in found[0].wrong

"""Simulated starts: less volts and more inertia are never faster, a tighter tolerance changes
nothing, and the band of the calculation holds what lies inside it.

Few examples: each one simulates starts.
"""

from __future__ import annotations

import math
from collections import defaultdict

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import Finding, Reading, Verdict
from wirecalc_plugins.start_curve import meter_readings, starting
from wirecalc_plugins.start_curve.machines import MotorModel, StartWinding
from wirecalc_plugins.start_curve.start_case import (
    Ptc,
    ShaftLoad,
    SimulatedStart,
    StartDevice,
    StartSupply,
)

FEW = settings(deadline=None, max_examples=8)
FEWEST = settings(deadline=None, max_examples=1)  # of each reading, beside the named one
MACHINE = MotorModel(
    110, 60, 4, 2.02, 2.79, 4.12, 2.12, 66.8, 24, 13, 0.05, StartWinding(7.14, 3.22, 1.18)
)
DEVICES = (
    StartDevice(capacitor=183e-6, resistance=3.0),
    StartDevice(),
    StartDevice(run_capacitor=60e-6, cut_out=None),
    StartDevice(ptc=Ptc(6.8)),
)
ONE_CYCLE = 1 / 60  # a contact opens at a zero, and rms is that of a cycle

devices = st.sampled_from(DEVICES)
loads = st.builds(
    ShaftLoad,
    inertia=st.floats(0.001, 0.006),
    constant=st.floats(0, 0.5),
    quadratic=st.floats(0, 0.4),
    pulsation=st.just(0.0),
    locked=st.just(False),
)
supplies = st.builds(
    StartSupply,
    voltage=st.floats(95, 125),
    resistance=st.floats(0, 1),
    closing_angle=st.floats(0, 180),
)


def meters(case: SimulatedStart, rtol: float = starting.RTOL) -> meter_readings.MeterReadings:
    return meter_readings.read_meters(starting.simulate(case, 1.2, rtol=rtol), 1.2)


def late(seconds: float | None) -> float:
    return math.inf if seconds is None else seconds


@FEW
@given(devices, loads, supplies, st.floats(0.7, 0.97))
def test_lower_volts_never_start_it_faster(
    device: StartDevice, load: ShaftLoad, supply: StartSupply, share: float
) -> None:
    high = meters(SimulatedStart(MACHINE, device, load, supply))
    low = meters(
        SimulatedStart(MACHINE, device, load, supply._replace(voltage=share * supply.voltage))
    )
    assert late(low.speed_time) >= late(high.speed_time) - ONE_CYCLE
    assert low.peak < high.peak


@FEW
@given(devices, loads, supplies, st.floats(1.1, 3))
def test_more_inertia_never_settles_sooner(
    device: StartDevice, load: ShaftLoad, supply: StartSupply, factor: float
) -> None:
    light = meters(SimulatedStart(MACHINE, device, load, supply))
    heavy = meters(
        SimulatedStart(MACHINE, device, load._replace(inertia=factor * load.inertia), supply)
    )
    assert late(heavy.speed_time) >= late(light.speed_time) - ONE_CYCLE
    assert late(heavy.settle_time) >= late(light.settle_time) - 2 * ONE_CYCLE


SLOW_TO_SWITCH = StartDevice(ptc=Ptc(6.8, 120.0, 0.15350567286626973, 1.0, 0.0264), cut_out=0.75)
LIGHT = ShaftLoad(0.005630699108169696, 0.0078125, 0.01953125)


@FEW
@given(devices, loads, supplies)
@example(SLOW_TO_SWITCH, LIGHT, StartSupply(117.5, 0.453125, 1.4375))
def test_a_tenth_of_the_tolerance_changes_the_figures_by_less_than_half_a_percent(
    device: StartDevice, load: ShaftLoad, supply: StartSupply
) -> None:
    case = SimulatedStart(MACHINE, device, load, supply)
    usual, tight = meters(case), meters(case, starting.RTOL / 10)
    for name in ("peak", "cycle", "inrush", "settled", "volts", "start_heat"):
        assert getattr(usual, name) == pytest.approx(getattr(tight, name), rel=5e-3), name

    assert (usual.speed_time is None) == (tight.speed_time is None)
    if usual.settle_time is not None and tight.settle_time is not None:
        assert usual.settle_time == pytest.approx(tight.settle_time, abs=ONE_CYCLE)


@FEW
@given(devices, loads, supplies)
def test_no_current_is_over_the_offset_limit_and_no_volts_over_the_supply(
    device: StartDevice, load: ShaftLoad, supply: StartSupply
) -> None:
    found = meters(SimulatedStart(MACHINE, device, load, supply))
    assert found.peak <= 2 * math.sqrt(2) * found.cycle
    assert found.volts <= supply.voltage * (1 + 1e-6)
    assert found.settled <= found.cycle * (1 + 1e-6)
    assert found.start_heat >= 0


# the band of the calculation

START = wirecalc.build(bundled_only=True).calculations["start-curve"].calculation
READINGS = {i.name: i.kind.unit for i in START.inputs if isinstance(i.kind, Reading)}
LIGHTLY = {"load_torque": "20 %", "inertia": "0.0005 kg m2", "duration": "0.8 s", "cord": "16 AWG"}
PLATE = {
    "nameplate_voltage": "115 V",
    "frequency": "60 Hz",  # left out, each run would be made again at 50 Hz
    "locked_rotor_current": "20 A",
    "rated_load_current": "4.4 A",
    "horsepower": "1/4 hp",
    "poles": 4,
    "start_method": "relay",
}
BOOK = {
    "textbook_motor": "capacitor-start-110V",
    "start_method": "ptc",
}  # one machine: fewer starts
WINDINGS = ("main_winding", "start_winding")
CENTRES = {
    "main_winding": 2.0,
    "start_winding": 7.0,
    "ptc_resistance": 6.8,
    "voltage_at_rest": 117.0,
    "source_resistance": 0.3,
    "cord_length": 30.0,
}


def run(name: str, moved: dict[str, float], errors: dict[str, float]) -> Finding:
    estimated = name in WINDINGS
    off = ("ptc_resistance",) if estimated else WINDINGS
    values = {n: v for n, v in (CENTRES | moved).items() if n not in off}
    texts = {n: f"{v:.6f} {READINGS[n]}" for n, v in values.items()}
    texts |= {n: f"{texts[n]} ±{e:.6f} {READINGS[n]}" for n, e in errors.items()}
    return wirecalc.run("start-curve", **(PLATE if estimated else BOOK), **LIGHTLY, **texts)


def verdicts(finding: Finding) -> dict[str, Verdict]:
    """The verdict of each criterion; one that is yielded only when it is missed passes else."""
    return defaultdict(
        lambda: Verdict.PASS, {c.criterion.name: c.verdict for c in finding.criteria}
    )


def test_every_reading_has_a_centre() -> None:
    assert set(CENTRES) == set(READINGS)


@pytest.mark.parametrize("name", CENTRES)
def test_the_band_holds_what_lies_inside_it(name: str) -> None:
    @FEWEST
    @example(0.3, -0.5)  # at low volts the PTC takes longer than the time that is simulated
    @given(st.sampled_from([0.02, 0.08, 0.3]), st.floats(-1, 1))
    def check(share: float, where: float) -> None:
        error = round(share * CENTRES[name], 6)
        banded = run(name, {}, {name: error})
        inside = run(name, {name: CENTRES[name] + where * error}, {})
        over_the_band, at_a_point = verdicts(banded), verdicts(inside)
        for criterion in {*over_the_band, *at_a_point}:
            if over_the_band[criterion] in (Verdict.PASS, Verdict.MARGINAL):
                assert at_a_point[criterion] in (Verdict.PASS, Verdict.MARGINAL)
            elif over_the_band[criterion] is Verdict.FAIL:
                assert at_a_point[criterion] is Verdict.FAIL
        for figure in ("highest instantaneous current", "lowest volts at the motor"):
            outer, inner = banded.figure(figure), inside.figure(figure)
            assert outer.low is not None and outer.high is not None
            room = 0.01 * outer.high  # the ends of one reading, not every point between them
            assert outer.low - room <= inner.figure.value <= outer.high + room

    check()

"""A recording of this very machine: what is read off it, and what is learnt of a known machine.

The recorded starts are those of two textbook machines as four coupled coils (coils.py), with noise,
written to a file and read as any recording is; neither machine is one of those that are tried. What
was put in is the truth: the plate's amps, the load, the inertia, when the contact opened.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import pytest

import wirecalc
from wirecalc_plugins.start_curve.fitted_starts import FittedStarts, fitted_starts
from wirecalc_plugins.start_curve.recorded_start import RecordedStart, recorded_start
from wirecalc_plugins.start_curve.setup import Setup
from wirecalc_plugins.start_curve.start_case import (
    ShaftLoad,
    SimulatedStart,
    StartDevice,
    StartSupply,
)
from wirecalc_plugins.trace.trace_inputs import Recording

from .coils import OPENS, by_coils
from .records import independent, practice, source
from .test_start_estimate import ALL, of_circuit, plate_of

DATA = Path(__file__).parents[1] / "data" / "traces"
RATE, BEFORE_S, NOISE = 4000, 0.2, 0.01  # readings a second; s with nothing on; share of LRA
LOAD = 0.4  # of rated torque
STREAM = Recording.__metadata__[0]


class Known(NamedTuple):
    """A machine whose start was recorded: what was typed of it, and the truth."""

    setup: Setup
    file: Path
    inrush: float
    settled: float
    truth: dict[str, float]


def recorded(name: str, inertia: float, folder: Path) -> Known:
    machine = next(m for m in ALL if m.id == name)
    plate, _ = plate_of(machine)
    m, external = machine.model, machine.external
    farads = -1 / (2 * math.pi * m.frequency * external.imag) if external.imag else None
    synchronous = 4 * math.pi * m.frequency / m.poles
    rated = plate.power / ((1 - m.slip) * synchronous)
    model = m._replace(rotational_loss=m.rotational_loss + m.core_loss, core_loss=0.0)
    case = SimulatedStart(
        model,
        StartDevice(capacitor=farads, resistance=external.real),
        ShaftLoad(inertia, constant=LOAD * rated),
        StartSupply(m.voltage, 0.0, 37.0),
    )
    coils = by_coils(case, 1.0)  # what goes on then is its last cycle again and again
    coils = coils._replace(line=np.concatenate((coils.line, np.tile(coils.line[-128:], 48))))
    own = np.arange(len(coils.line)) / (128 * m.frequency)
    t = np.arange(0, BEFORE_S + own[-1], 1 / RATE)
    line = np.interp(t - BEFORE_S, own, coils.line, left=0.0)
    line += np.random.default_rng(7).normal(0, NOISE * plate.locked_rotor_current, len(t))
    file = folder / f"{name}.csv"
    rows = [f"{a:.5f},{b:.3f}" for a, b in zip(t, line, strict=True)]
    file.write_text("\n".join(["t_s,current_A", *rows]), encoding="utf-8")
    setup = Setup(
        None, m.voltage, m.frequency, 1.06 * plate.locked_rotor_current, plate.rated_load_current,
        plate.power / 745.7, m.poles, None, m.r1, m.start.resistance if m.start else None,
        "start-capacitor" if farads else "relay", farads and farads * 1e6, None, None, None,
        "constant", None, m.voltage, 0.0, None, None, 0.0, 4.0, None,
    )  # fmt: skip
    torque = of_circuit(m, 1.0, external).torque
    truth = {
        "locked": plate.locked_rotor_current, "torque": 100 * torque / rated, "load": 100 * LOAD,
        "inertia": inertia, "speed_time": float(own[np.argmax(coils.speed >= 0.8 * synchronous)]),
        "opened": float(own[np.argmax(coils.speed >= OPENS * synchronous)]),
    }  # fmt: skip
    first, last = coils.line[own <= 0.1], coils.line[own >= own[-1] - 0.1]
    inrush, settled = (float(np.sqrt(np.mean(part**2))) for part in (first, last))
    return Known(setup, file, inrush, settled, truth)


@pytest.fixture(scope="module", params=[("m05", 0.0065), ("m03_cs", 0.008)], ids=["relay", "cap"])
def known(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Known:
    return recorded(*request.param, tmp_path_factory.mktemp("recorded"))


def read(file: Path, frequency: float = 60.0) -> RecordedStart | str:
    stream = STREAM.read(str(file)).value
    return recorded_start(stream, stream, stream, frequency)


COILS = independent("four coupled coils and a turning mass, integrated with scipy (coils.py)")
BOOKS = source(
    "fractional-horsepower motors of textbooks",
    "rows m05 and m03_cs of tests/data/start-machines.csv",
    "locked impedances of both windings",
    seen="as each row says",
)


@COILS
@BOOKS
def test_what_is_read_off_a_recorded_start_is_what_was_recorded(known: Known) -> None:
    found = read(known.file)
    assert isinstance(found, RecordedStart)
    for band, truth in ((found.inrush_band, known.inrush), (found.settled_band, known.settled)):
        assert 0.99 * band[0] <= truth <= 1.01 * band[1]
        assert band[1] < 1.06 * band[0]
    # the current falls as the contact opens at 75 % of speed, the last of it after
    early, middle, late = found.falls
    assert early < middle < late < found.surge_over + 0.2
    assert early == pytest.approx(known.truth["opened"], rel=0.15)


@COILS
@BOOKS
def test_the_truth_lies_in_what_is_learnt(known: Known) -> None:
    start = read(known.file)
    assert isinstance(start, RecordedStart)
    load, inertia = known.truth["load"], known.truth["inertia"]
    fitted = fitted_starts(known.setup._replace(load_torque=load, inertia=inertia), start, {})
    assert isinstance(fitted, FittedStarts)
    for field, truth in known.truth.items():
        low, high = fitted.band(field)
        assert low <= truth <= high, field
        assert high < 2 * low
    # LRA typed 6 % too high: the recording knows better
    assert fitted.band("locked")[1] < 1.06 * known.truth["locked"]


@practice("a waveform from before the start on shows a run-up; a log or a running motor does not")
@pytest.mark.parametrize(
    ("file", "why"),
    [
        ("motor_running_1khz.csv", "it begins while the machine runs"),
        ("vacuum_current_1hz.csv", "one reading in 1 s shows no run-up"),
    ],
)
def test_measured_recordings_without_a_run_up_tell_nothing(file: str, why: str) -> None:
    found = read(DATA / file)
    assert isinstance(found, str)
    assert why in found


def changed(known: Known, folder: Path, change: Callable[[Any, Any], Any]) -> Path:
    t, x = np.loadtxt(known.file, delimiter=",", skiprows=1, unpack=True)
    file = folder / "changed.csv"
    np.savetxt(file, np.column_stack((t, change(t, x))), "%.5f", ",", header="t_s,current_A",
               comments="")  # fmt: skip
    return file


@practice("a start that stays high, is clipped, or of another mains is none to fit a motor to")
def test_a_recording_that_shows_no_such_start_is_not_fitted(known: Known, tmp_path: Path) -> None:
    found = read(known.file, 50.0)
    assert isinstance(found, str) and "Hz, and the motor is one for 50 Hz" in found
    clipped = read(changed(known, tmp_path, lambda t, x: np.clip(x, -25, 25)))
    assert isinstance(clipped, str) and "crests are cut off" in clipped
    steady = 30 * math.sqrt(2)
    stalled = read(
        changed(known, tmp_path, lambda t, x: (t > 0.2) * steady * np.sin(120 * math.pi * t))
    )
    assert isinstance(stalled, str) and "does not come down" in stalled


@COILS
@practice("a plate whose LRA is a third off is that of another motor")
def test_a_recording_of_another_motor_is_said_so(known: Known) -> None:
    start = read(known.file)
    assert isinstance(start, RecordedStart)
    other = known.setup._replace(locked_rotor_current=1.45 * known.truth["locked"])
    said = fitted_starts(other, start, {})
    assert isinstance(said, str)
    assert "no motor of this plate draws" in said


@COILS
@BOOKS
def test_the_finding_says_what_it_learnt_and_what_not(tmp_path: Path) -> None:
    known = recorded("m05", 0.0065, tmp_path)
    typed = known.setup
    given = {
        "nameplate_voltage": f"{typed.nameplate_voltage} V", "frequency": "60 Hz",
        "locked_rotor_current": f"{typed.locked_rotor_current} A", "poles": "4",
        "rated_load_current": f"{typed.rated_load_current} A",
        "horsepower": f"{typed.horsepower} hp",
        "main_winding": f"{typed.main_winding} ohm", "start_winding": f"{typed.start_winding} ohm",
        "start_method": "relay", "voltage_at_rest": f"{typed.voltage_at_rest} V",
        "source_resistance": "0 ohm", "fit": str(known.file), "current_error": "1%",
    }  # fmt: skip
    finding = wirecalc.run("start-curve", **given)
    for name, field in (
        ("locked-rotor current, learnt", "locked"),
        ("time to 80 % of speed, learnt", "speed_time"),
        ("start winding out, learnt", "opened"),
        ("moment of inertia, learnt", "inertia"),
    ):
        found = finding.figure(name)
        assert found.low is not None and found.high is not None
        assert found.low <= known.truth[field] <= found.high
    answers = {a.name: a.text for a in finding.answers}
    assert "reproduce it" in answers["recorded start"]
    assert "twice the torque with twice the inertia" in answers["torque at standstill, learnt"]
    settle = finding.criterion("time to settle")
    # of load and inertia not given the plate alone leaves it open; the recording does not
    assert finding.verdict in ("pass", "marginal")
    assert settle.low is not None and settle.high is not None
    assert settle.low > known.truth["opened"] and settle.high < 1.2

"""A recorded current: measured logs, starts in closed form, and a circuit solved by ngspice.

What the logs hold is worked out here with plain numpy, another way than the program's: fixed
levels read off each appliance, loops, sine fits and dense integrals.
"""

from __future__ import annotations

import math
import os
import shutil
import subprocess
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import curve_fit

import wirecalc
from wirecalc.trade import motors

from .records import independent, source

ROOT = Path(__file__).parents[2]
DATA = ROOT / "tests" / "data" / "traces"
OUTSIDE = Path(os.environ.get("WIRECALC_REFERENCE", ROOT.parent / "shared/reference/traces"))
NOT_HERE = "logs under the Open Database License are kept outside the repository"


def outside(name):
    if not (OUTSIDE / name).exists():
        pytest.skip(f"{name}: {NOT_HERE} (set WIRECALC_REFERENCE to their folder)")
    return OUTSIDE / name


def trace(path, **given):
    return wirecalc.run("trace", recording=str(path), **given)


def value(finding, name):
    return finding.figure(name).figure.value


def said(finding):
    return next(a.text for a in finding.answers if a.name == "recording")


def rows(finding):
    (listing,) = (x for x in finding.listings if x.title.startswith("On"))
    return [dict(zip(listing.columns, row, strict=True)) for row in listing.rows]


def number(cell):
    """Read the first number of a cell, minutes as seconds."""
    first, unit = cell.split()[:2]
    return float(first) * {"min": 60, "h": 3600}.get(unit, 1)


def columns(path, *names):
    table = np.genfromtxt(path, delimiter=",", names=True)
    return [table[n] for n in names]


def on_off(t, x, level):
    """Return (on, off) of every time above a level, by a loop; gaps are not looked at."""
    found, since = [], None
    for when, what in zip(t, x, strict=True):
        if what > level and since is None:
            since = when
        elif what <= level and since is not None:
            found.append((since, when))
            since = None
    return found if since is None else [*found, (since, t[-1])]


# Logs: the level is far from what the appliance draws either way: off 0 to 2 W, lamp 15 to 17 W.
REFRIGERATORS = [("refrigerator_1", 40), ("refrigerator_2", 40), ("refrigerator_3", 40)]


@source(
    "tracebase, power of household appliances",
    "recordings of 2012, Open Database License 1.0",
    "refrigerators and kettle, 1 s column",
    seen="parts, kept outside the repository",
)
@independent("levels read off each appliance, a loop and numpy over its readings")
@pytest.mark.parametrize(("name", "level"), [*REFRIGERATORS, ("kettle_1", 500)])
def test_times_on_and_off_of_a_power_log(name, level):
    path = outside(f"{name}_power.csv")
    t, x = columns(path, "t_s", "power_1s_W")
    expected = on_off(t, x, level)
    steps = np.diff(t)
    gap = 10 * np.median(steps[steps > 0])  # stated: ten usual steps
    unbroken = [
        (on, off)
        for on, off in expected
        if np.diff(t[(t >= on - 10) & (t <= off + 10)]).max() <= gap
    ]
    found = [r for r in rows(trace(path)) if not r[""].startswith("begins")]
    assert len(found) == len(unbroken) > 0
    for (on, off), row in zip(unbroken, found, strict=True):
        step = 2 * np.diff(t).mean()  # its level has hysteresis: a reading's difference
        assert number(row["from"]) == pytest.approx(on, abs=step)
        assert number(row["until"]) == pytest.approx(off, abs=step)
        inside = x[(t >= (on + off) / 2) & (t < off - step)]
        assert number(row["settled"]) == pytest.approx(np.median(inside), rel=0.02)
        assert number(row["highest"]) == x[(t >= on) & (t <= on + (off - on) / 2)].max()


@source(
    "tracebase, power of household appliances",
    "recordings of 2012, Open Database License 1.0",
    "refrigerator D32131, 2012-05-15",
    seen="parts, kept outside the repository",
)
@independent("levels read off each appliance, a loop and numpy over its readings")
def test_duty_of_a_refrigerator():
    path = outside("refrigerator_1_power.csv")
    t, x = columns(path, "t_s", "power_1s_W")
    runs = on_off(t, x, 40)
    on = sum(b - a for a, b in runs[:-1])
    period = runs[-1][0] - runs[0][0]
    finding = trace(path)
    assert value(finding, "whole cycles") == len(runs) - 1 == 3
    assert value(finding, "duty of the whole cycles") == pytest.approx(100 * on / period, abs=0.2)
    assert value(finding, "cycles an hour") == pytest.approx(3600 * 3 / period, rel=0.002)


@source(
    "tracebase, power of household appliances",
    "recordings of 2012, Open Database License 1.0",
    "refrigerators, washing machine, kettle",
    seen="parts, kept outside the repository",
)
@independent("trapezoids over the readings, gaps left out, by numpy")
@pytest.mark.parametrize(
    "name", ["refrigerator_1", "refrigerator_2", "refrigerator_3", "washing_machine_1", "kettle_1"]
)
def test_energy_of_a_power_log(name):
    path = outside(f"{name}_power.csv")
    t, x = columns(path, "t_s", "power_1s_W")
    steps = np.diff(t)
    bridged = steps <= 10 * np.median(steps[steps > 0])
    kwh = float(np.sum(((x[1:] + x[:-1]) / 2 * steps)[bridged])) / 3.6e6
    finding = trace(path)
    assert value(finding, "energy recorded") == pytest.approx(kwh, rel=0.005)
    assert value(finding, "highest reading") == x.max()
    assert finding.verdict is None
    plate = {"locked_rotor_current": "8 A"}
    assert trace(path, **plate).criterion("current of the start").verdict == "cannot tell"


@source(
    "tracebase, power of household appliances",
    "recordings of 2012, Open Database License 1.0",
    "refrigerators, 1 s column over 230 V and a power factor of 0.6",
    seen="parts, kept outside the repository",
)
@independent(
    "what one who reads the curve would say; a plate that fits, common practice, no source"
)
@pytest.mark.parametrize(("name", "rated", "locked"), [(1, 0.7, 7), (2, 1.1, 9), (3, 0.7, 7)])
def test_refrigerators_that_run_do_not_fail(record, tmp_path, name, rated, locked):
    """They ran for years: a log of a reading a second shows no start, and how they run."""
    t, x = columns(outside(f"refrigerator_{name}_power.csv"), "t_s", "power_1s_W")
    plate = {
        "rated_load_current": f"{rated} A",
        "locked_rotor_current": f"{locked} A",
        "nameplate_voltage": "230 V",
        "voltage": "230 V",
        "motor_kind": "compressor",
    }
    path = record(tmp_path / "log.csv", t, x / 230 / 0.6, "t_s,current_rms_A")
    finding = trace(path, **plate)
    assert finding.verdict == "cannot tell"
    assert not [c for c in finding.criteria if c.verdict == "fail"]
    assert finding.criterion("settled current, upper limit").verdict == "pass"


@source(
    "tracebase, power of household appliances",
    "recordings of 2012, Open Database License 1.0",
    "refrigerator D32131, 2012-05-15, 8 s column",
    seen="parts, kept outside the repository",
)
@independent("greatest reading of the column, by numpy")
def test_the_8_s_column_of_a_power_log():
    path = outside("refrigerator_1_power.csv")
    _, x = columns(path, "t_s", "power_8s_W")
    assert value(trace(path, column="power_8s_W"), "highest reading") == x.max()


@source(
    "tracebase, power of household appliances",
    "recordings of 2012, Open Database License 1.0",
    "washing machine D31FFD, 2012-06-12",
    seen="parts, kept outside the repository",
)
@independent("levels read off each appliance, a loop and numpy over its readings")
def test_a_washing_machine_heats_and_turns():
    path = outside("washing_machine_1_power.csv")
    t, x = columns(path, "t_s", "power_1s_W")
    finding = trace(path)
    heating = [r for r in rows(finding) if number(r["highest"]) > 1500]
    first = [(on, off) for on, off in on_off(t, x, 60) if x[(t >= on) & (t < off)].max() > 1500]
    assert [number(r["from"]) for r in heating[:2]] == pytest.approx(
        [on for on, _ in first[:2]], abs=2
    )
    share = sum(off - on for on, off in on_off(t, x, 60)) / (t[-1] - t[0])
    assert value(finding, "on, of the recorded time") == pytest.approx(100 * share, rel=0.03)


@source(
    "Custom appliance recordings of the nilmtk-ukdale repository",
    "November 2022",
    "Custom_Dataset_1, train_data/vacuum.csv",
    seen="part in tests/data/traces",
)
@independent("levels read off each appliance, a loop and numpy over its readings")
def test_a_current_log_of_one_reading_a_second():
    path = DATA / "vacuum_current_1hz.csv"
    t, x = columns(path, "t_s", "current_A")
    expected = on_off(t, x, 1.0)
    finding = trace(path)
    found = rows(finding)
    assert [(number(r["from"]), number(r["until"])) for r in found] == expected
    for (on, off), row in zip(expected, found, strict=True):
        inside = x[(t >= (on + off) / 2) & (t < off - 1)]
        assert number(row["settled"]) == pytest.approx(np.median(inside), rel=0.01)
        assert number(row["highest"]) == x[(t >= on) & (t < off)].max()
    ons = [off - on for on, off in expected[:-1]]
    period = expected[-1][0] - expected[0][0]
    assert value(finding, "duty of the whole cycles") == pytest.approx(100 * sum(ons) / period)


@source(
    "Custom appliance recordings of the nilmtk-ukdale repository",
    "November 2022",
    "Custom_Dataset_1, train_data/vacuum.csv",
    seen="part in tests/data/traces",
)
def test_a_log_of_one_reading_a_second_cannot_show_the_crest(tmp_path):
    """The recorder of this log wrote the largest instantaneous current of each second beside."""
    path = DATA / "vacuum_current_1hz.csv"
    rms, crest = columns(path, "current_A", "current_peak_A")
    told = trace(path, breaker="16 A", device="iec-60898-b")
    assert value(told, "highest instantaneous current") == crest.max() > rms.max()
    assert [number(r["peak"]) for r in rows(told)] == [
        crest[round(number(r["from"])) : round(number(r["until"]))].max() for r in rows(told)
    ]
    assert "highest instantaneous current" not in {c.criterion.name for c in told.criteria}
    alone = tmp_path / "rms.csv"
    lines = path.read_text(encoding="utf-8").splitlines()
    alone.write_text("\n".join(",".join(x.split(",")[:2]) for x in lines), encoding="utf-8")
    (untold,) = (n for n in trace(alone).not_checked if n.what == "highest instantaneous current")
    assert f"at least {rms.max():.2f} A" in untold.why
    judged = trace(alone, breaker="16 A").criterion("highest instantaneous current")
    assert (judged.verdict, judged.reason) == ("cannot tell", untold.why)


@source(
    "Classification of inter-turn short-circuit faults by quaternion analysis",
    "Measurement 222 (2023) 113680",
    "data of the healthy motor, repetition 1, phase A",
    seen="part in tests/data/traces",
)
@independent("sine fitted by scipy, rms of three cycles by numpy")
def test_a_running_waveform_of_1_khz():
    path = DATA / "motor_running_1khz.csv"
    t, x = columns(path, "t_s", "current_A")

    def sine(t, size, frequency, phase, offset):
        return size * np.sin(2 * np.pi * frequency * t + phase) + offset

    (size, frequency, _, offset), _ = curve_fit(sine, t, x, p0=(2.8, 60.0, 0.0, 0.0))
    three_cycles = [math.sqrt(np.mean(x[i : i + 50] ** 2)) for i in range(len(x) - 50)]
    finding = trace(path)
    assert value(finding, "mains frequency") == pytest.approx(frequency, abs=0.05)
    assert value(finding, "settled level") == pytest.approx(np.median(three_cycles), rel=0.002)
    assert value(finding, "settled level") == pytest.approx(abs(size) / math.sqrt(2), rel=0.01)
    assert value(finding, "direct part, taken off") == pytest.approx(offset, abs=0.005)
    crest = finding.figure("highest instantaneous current")
    assert crest.figure.value == pytest.approx(np.abs(x).max(), abs=0.001)
    assert crest.high == pytest.approx(crest.figure.value / math.cos(math.pi * 60 / 1000), rel=1e-3)
    assert "no start" in said(finding)


def dense(start):
    """Return crest, highest one-cycle rms, 100 ms rms, end of the surge, from 1 us steps."""
    step = 1e-6
    t = np.arange(start.begin, start.end, step)
    x = start.at(t)
    total = np.concatenate(([0.0], np.cumsum(x * x))) * step
    cycle = round(1 / start.frequency / step)
    rms = np.sqrt((total[cycle:] - total[:-cycle]) / (cycle * step))
    outside_ = np.flatnonzero(np.abs(rms - start.settled) > 0.15 * start.settled)
    settle = (outside_[-1] + cycle / 2) * step
    surge = math.sqrt(total[round(0.1 / step)] / 0.1)
    return np.abs(x).max(), rms.max(), surge, settle


@independent("start of an R-L circuit in closed form, integrated densely by numpy")
@pytest.mark.parametrize(("rate", "near"), [(1000, 0.02), (5000, 0.005), (50_000, 0.001)])
@pytest.mark.parametrize("frequency", [50.0, 60.0])
@pytest.mark.parametrize("power_factor", [0.35, 0.6, 0.8])
def test_a_start_in_closed_form(start, record, tmp_path, rate, near, frequency, power_factor):
    one = start(frequency=frequency, power_factor=power_factor)
    finding = trace(record(tmp_path / "start.csv", *one.sampled(rate)))
    crest, cycle, surge, settle = dense(one)
    assert value(finding, "mains frequency") == pytest.approx(frequency, rel=1e-3)
    found = finding.figure("highest instantaneous current")
    assert found.figure.value <= crest * (1 + 1e-4)
    assert found.high >= crest * (1 - 2e-3)
    assert found.figure.value == pytest.approx(crest, rel=max(near, 1e-3))
    assert value(finding, "highest one-cycle rms") == pytest.approx(cycle, rel=near)
    assert value(finding, "highest 100 ms rms from a start") == pytest.approx(surge, rel=near)
    assert value(finding, "settled level") == pytest.approx(one.settled, rel=near)
    times = finding.figure("end of the surge")
    assert times.low <= settle <= times.high
    (row,) = rows(finding)
    assert number(row["from"]) == pytest.approx(one.begin, abs=2e-3)


@independent(
    "start of an R-L circuit in closed form, integrated densely by numpy; 0.4 A and noise added"
)
@pytest.mark.parametrize("rate", [1000, 50_000])
def test_noise_and_the_direct_part_of_a_clamp(start, record, tmp_path, rate):
    one = start()
    t, x = one.sampled(rate)
    x = x + 0.4 + np.random.default_rng(5).normal(0, 0.02, len(x))
    finding = trace(record(tmp_path / "start.csv", t, x))
    _, cycle, surge, _ = dense(one)
    assert value(finding, "direct part, taken off") == pytest.approx(0.4, abs=0.005)
    assert value(finding, "highest one-cycle rms") == pytest.approx(cycle, rel=0.02)
    assert value(finding, "highest 100 ms rms from a start") == pytest.approx(surge, rel=0.02)
    assert value(finding, "settled level") == pytest.approx(1.2, rel=0.02)


@independent("start of an R-L circuit in closed form, integrated densely by numpy, cut off at 10 A")
@pytest.mark.parametrize("rate", [1000, 5000, 50_000])
def test_a_clipped_start_cannot_be_told(start, record, tmp_path, rate):
    t, x = start().sampled(rate)
    finding = trace(record(tmp_path / "start.csv", t, np.clip(x, -10, 10)))
    judged = finding.criterion("highest instantaneous current")
    assert (judged.verdict, "cut off at 10 A" in judged.reason) == ("cannot tell", True)
    whole = trace(record(tmp_path / "whole.csv", t, x))
    assert all(c.criterion.name != "highest instantaneous current" for c in whole.criteria)


@independent(
    "start of an R-L circuit in closed form, integrated densely by numpy, rounded to steps of 0.2 A"
)
def test_an_eight_bit_recorder_is_not_taken_for_clipped(start, record, tmp_path):
    t, x = start().sampled(50_000)
    coarse = np.round(x / 0.2) * 0.2  # crests stand for many samples at one step
    finding = trace(record(tmp_path / "start.csv", t, coarse))
    assert all(c.criterion.name != "highest instantaneous current" for c in finding.criteria)


@independent("rms of a half-wave sine is half of its crest, 8 A")
def test_the_pauses_of_a_half_wave_load_are_no_clipped_tops(record, tmp_path):
    t = np.arange(10_000) / 5000
    x = np.where(t > 0.5, np.maximum(8 * np.sin(2 * np.pi * 60 * t), 0), 0) - 0.001
    finding = trace(record(tmp_path / "start.csv", t, x))
    assert all(c.criterion.name != "highest instantaneous current" for c in finding.criteria)
    assert value(finding, "settled level") == pytest.approx(4.0, rel=0.002)  # half of the crest


@independent("400 readings a second over 60 Hz are 6.67 a cycle")
def test_few_readings_a_cycle_show_no_crest(start, record, tmp_path):
    one = start()
    t, x = one.sampled(400)
    judged = trace(record(tmp_path / "start.csv", t, x)).criterion("highest instantaneous current")
    assert judged.verdict == "cannot tell"
    assert "6.67 readings a cycle" in judged.reason


@independent("starts laid 4 s apart, on for 3.00 - 0.35 s of each 4 s")
def test_several_starts_and_duty(start, record, tmp_path):
    rate, period = 2000, 4.0
    t = np.arange(round(12 * rate)) / rate
    one = start(end=3.0)
    x = np.where(t % period < 3.0, one.at(t % period), 0.0)
    finding = trace(record(tmp_path / "start.csv", t, x))
    assert [number(r["from"]) for r in rows(finding)] == pytest.approx(
        [0.35, 4.35, 8.35], abs=0.002
    )
    assert value(finding, "whole cycles") == 2
    on = 3.0 - 0.35
    assert value(finding, "duty of the whole cycles") == pytest.approx(100 * on / period, abs=0.5)


@independent(
    "start of an R-L circuit in closed form, integrated densely by numpy, a steady 0.5 A beside it"
)
def test_a_start_beside_a_load_that_runs(start, record, tmp_path):
    """A lamp of 0.5 A burns all the time: the step from it is the start."""
    one = start()
    t, x = one.sampled(5000)
    x = x + 0.5 * math.sqrt(2) * np.sin(2 * np.pi * 60 * (t - one.begin))
    finding = trace(record(tmp_path / "start.csv", t, x))
    assert said(finding).endswith("; 1 start")
    (row,) = (r for r in rows(finding) if not r[""].startswith("begins"))
    assert number(row["from"]) == pytest.approx(one.begin, abs=0.01)


NETLIST = """start of an R-L circuit, closed at the voltage zero
V1 in 0 SIN(0 {peak} {frequency} {begin})
R1 in mid {r}
L1 mid out {l}
Vsense out 0 0
.control
tran {step} {end} 0 {step}
linearize i(Vsense)
wrdata {file} i(Vsense)
quit 0
.endc
.end
"""


@independent("circuit simulator ngspice")
@pytest.mark.skipif(shutil.which("ngspice") is None, reason="ngspice is not installed")
@pytest.mark.parametrize("r_over_x", [0.3, 0.7, 1.0])
def test_first_crest_of_a_circuit_solved_by_ngspice(record, tmp_path, r_over_x):
    frequency, locked, volts, step = 60.0, 12.0, 115.0, 2e-5
    impedance = volts / locked
    x = impedance / math.hypot(1.0, r_over_x)
    deck = NETLIST.format(
        peak=volts * math.sqrt(2),
        frequency=frequency,
        begin=0.3,
        r=x * r_over_x,
        l=x / (2 * math.pi * frequency),
        step=step,
        end=1.5,
        file=tmp_path / "out.txt",
    )
    (tmp_path / "start.cir").write_text(deck)
    subprocess.run(
        ["ngspice", "-b", "start.cir"], cwd=tmp_path, check=True, capture_output=True, timeout=120
    )
    t, current = np.loadtxt(tmp_path / "out.txt").T
    finding = trace(record(tmp_path / "start.csv", t, current))
    power_factor = r_over_x / math.hypot(1.0, r_over_x)
    crest = locked * motors.offset_crest(power_factor)
    assert value(finding, "highest instantaneous current") == pytest.approx(crest, rel=0.003)
    assert value(finding, "settled level") == pytest.approx(locked, rel=0.003)
    assert value(finding, "mains frequency") == pytest.approx(frequency, rel=1e-3)

"""Recordings of which all is known, as clamps and recorders give them: in mV, with a zero that
drifts, with a peak beside the rms, two starts in one file, cut off.

The truth lies within the band of every figure. The starts are in closed form.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

import wirecalc
from wirecalc import BadInput

from .recorded import recorded
from .records import independent, practice
from .spoiled import spoiled
from .test_trace import dense
from .test_trace_stamps import PLATE, within

MILLIVOLTS = "t_s,probe_mV (100 mV/A)"


def all_true(finding, truths):
    for name, truth in truths.items():
        inside, said = within(finding, name, truth)
        assert inside, said


def truths_of(one):
    crest, cycle, surge, settle = dense(one)
    return {
        "mains frequency": one.frequency,
        "highest instantaneous current": crest,
        "highest one-cycle rms": cycle,
        "highest 100 ms rms from a start": surge,
        "end of the surge": settle,
        "settled level": one.settled,
    }


@independent("start of an R-L circuit in closed form, integrated densely by numpy; 0.1 V an ampere")
@pytest.mark.parametrize(
    ("how", "rate", "frequency", "seed"),
    [("stamps", 5000, 60, 91), ("noise 0.01", 5000, 50, 92), ("jitter and holes", 2000, 60, 93)],
)
def test_the_truth_of_a_clamp_in_millivolts(start, record, tmp_path, how, rate, frequency, seed):
    one = start(end=4.0, frequency=float(frequency))
    t, x = spoiled(one, rate, how, seed)
    path = record(tmp_path / "start.csv", t, 100 * x, head=MILLIVOLTS)
    finding = wirecalc.run("trace", recording=str(path), **PLATE)
    all_true(finding, truths_of(one))
    plain = record(tmp_path / "plain.csv", t, 100 * x, head="t_s,probe_mV")
    typed = wirecalc.run("trace", recording=str(plain), clamp="10 A/V", **PLATE)
    assert [f.figure.value for f in typed.figures] == [f.figure.value for f in finding.figures]
    with pytest.raises(BadInput, match="how many an ampere"):
        wirecalc.run("trace", recording=str(plain), **PLATE)


def drifting(t, how):
    """Return the zero of a clamp in A: it warms up, swings, or stands and is off by a little."""
    if how == "warms up":
        return 0.9 * (1 - np.exp(-t / 25))
    if how == "swings":
        return 0.3 + 0.4 * np.sin(2 * np.pi * t / 90)
    return 0.01 * t


@independent("start of an R-L circuit in closed form, integrated densely by numpy; a zero is added")
@pytest.mark.parametrize("how", ["warms up", "swings", "goes away"])
@pytest.mark.parametrize(("rate", "noise"), [(1000, 0), (2000, 0.05)])
def test_the_truth_beside_a_zero_that_drifts(start, record, tmp_path, how, rate, noise):
    short = start(begin=12.0, end=15.0)
    t, x = short._replace(end=70.0).sampled(rate)
    x = x + drifting(t, how) + np.random.default_rng(94).normal(0, noise, len(t))
    path = record(tmp_path / "start.csv", t, x)
    finding = wirecalc.run("trace", recording=str(path), **PLATE)
    all_true(finding, truths_of(short))
    zero = finding.figure("direct part, taken off")
    ends = drifting(t, how)
    assert zero.low == pytest.approx(ends.min(), abs=0.08)
    assert zero.high == pytest.approx(ends.max(), abs=0.08)
    (said,) = (a.evidence_for for a in finding.answers if a.name == "recording")
    assert any("its zero drifts" in text for text in said)


@independent("rms of a half-wave sine is half of its crest, 8 A; a zero that drifts is added")
def test_the_direct_part_of_a_load_is_not_taken_for_a_zero_that_drifts(record, tmp_path):
    t = np.arange(60_000) / 1000
    on = (t > 15) & (t < 45)
    x = np.where(on, np.maximum(8 * np.sin(2 * np.pi * 60 * t), 0), 0) + 0.01 * t
    finding = wirecalc.run("trace", recording=str(record(tmp_path / "start.csv", t, x)))
    assert finding.figure("settled level").figure.value == pytest.approx(4.0, rel=0.01)


@independent("start of an R-L circuit in closed form, integrated densely by numpy; 30 A are added")
@pytest.mark.parametrize(("rate", "frequency"), [(1000, 60), (5000, 50)])
def test_a_waveform_that_never_falls_below_zero_is_no_log(start, record, tmp_path, rate, frequency):
    one = start(end=4.0, frequency=float(frequency))
    t, x = one.sampled(rate)
    finding = wirecalc.run("trace", recording=str(record(tmp_path / "s.csv", t, x + 30)), **PLATE)
    all_true(finding, {k: v for k, v in truths_of(one).items() if k != "mains frequency"})
    assert finding.figure("mains frequency").figure.value == pytest.approx(frequency, rel=1e-3)
    assert finding.figure("direct part, taken off").figure.value == pytest.approx(30, abs=0.01)


@independent("root of 2.4^2 + 0.5^2 is 2.4515; a zero that drifts is added")
def test_a_small_direct_part_of_a_load_stays_its_own(record, tmp_path):
    t = np.arange(60_000) / 1000
    on = (t > 15) & (t < 45)
    load = 2.4 * math.sqrt(2) * np.sin(2 * np.pi * 60 * t) + 0.5
    x = np.where(on, load, 0) + 0.01 * t
    finding = wirecalc.run("trace", recording=str(record(tmp_path / "start.csv", t, x)))
    assert finding.figure("settled level").figure.value == pytest.approx(2.4515, rel=0.004)


@independent("starts in closed form, 2 and 9 s into the record, the second of 10 A locked")
@pytest.mark.parametrize("cut", [math.inf, 9.0])
def test_two_starts_in_one_waveform(start, record, tmp_path, cut):
    rate = 2000
    one = start(begin=2.0, end=6.0)
    two = start(begin=9.0, end=13.0, locked=10.0)
    t = np.arange(15 * rate) / rate
    x = np.where(t < 6, one.at(t), 0) + np.where((t >= 9) & (t < 13), two.at(t), 0)
    path = record(tmp_path / "start.csv", t, np.clip(x, -cut, cut))
    finding = wirecalc.run("trace", recording=str(path), **PLATE)
    truths = truths_of(one)
    if cut < math.inf:
        judged = finding.criterion("highest instantaneous current")
        assert (judged.verdict, "cut off at 9 A" in judged.reason) == ("cannot tell", True)
        for name in ("highest one-cycle rms", "highest 100 ms rms from a start"):
            assert finding.figure(name).low <= truths[name]
        truths = {"mains frequency": 60.0, "settled level, highest start": 1.2}
    else:
        truths = {k: v for k, v in truths.items() if k != "end of the surge"}
    all_true(finding, truths | {"whole cycles": 1})
    for name, truth in (("mean time on", 4.0), ("mean time off", 3.0)):
        assert finding.figure(name).figure.value == pytest.approx(truth, abs=0.03)


def with_peaks(levels, rate, factor):
    """Return a log of rms with the recorder's own peak of each reading beside it."""
    head, *lines = recorded(levels, rate).splitlines()
    peaks = [f"{line},{factor * float(line.partition(',')[2]):.3f}" for line in lines]
    return "\n".join([f"{head},current_peak_A", *peaks, ""])


@independent("the recording was made so: crests of 1.6 times the rms")
@pytest.mark.parametrize("rate", [1, 10])
def test_the_truth_of_an_rms_with_the_recorders_own_peak(tmp_path, rate):
    path = tmp_path / "log.csv"
    levels = [[0, 60], [11, 0.4 if rate > 1 else 1], [1.3, 300], [0, 60]]
    path.write_text(with_peaks(levels, rate, 1.6), encoding="utf-8")
    finding = wirecalc.run("trace", recording=str(path), **PLATE, breaker="15 A")
    truths = {"highest instantaneous current": 17.6, "highest reading": 11, "settled level": 1.3}
    all_true(finding, truths)
    assert finding.verdict == ("pass" if rate > 1 else "cannot tell")  # 0 to 2 s at one a second
    peak = finding.criterion("start peak, lower limit")
    assert peak.criterion.actual == pytest.approx(17.6)
    (lines,) = (x.rows for x in finding.listings if x.title.startswith("Go on with the readings"))
    text = " ".join(str(row[0]) for row in lines)
    assert '--peak "17.6 A"' in text and "--meter-mode peak-hold" in text


@independent("a crest is at least the rms, and 1.41 times that of a sine")
@pytest.mark.parametrize(("factor", "told"), [(1.0, False), (1.19, False), (1.21, True)])
def test_a_peak_that_is_none_is_doubted(tmp_path, factor, told):
    path = tmp_path / "log.csv"
    text = with_peaks([[0, 60], [11, 0.4], [1.3, 300], [0, 60]], 10, factor)
    path.write_text(text, encoding="utf-8")
    finding = wirecalc.run("trace", recording=str(path))
    names = [c.criterion.name for c in finding.criteria if c.verdict == "cannot tell"]
    assert ("highest instantaneous current" not in names) is told


@practice("currents ten times as high or low as the plate's: a slipped point, or the wrong scale")
@pytest.mark.parametrize(
    ("scale", "means"), [("10 mV/A", "100 mV/A"), ("1 V/A", "100 mV/A"), ("100 mV/A", None)]
)
def test_currents_that_are_not_of_this_world_for_the_plate(tmp_path, scale, means):
    path = tmp_path / "log.csv"
    text = recorded([[0, 60], [1.1, 0.4], [0.13, 300], [0, 60]], 10)
    path.write_text(text.replace("current_rms_A", "probe_rms_V"), encoding="utf-8")
    finding = wirecalc.run("trace", recording=str(path), clamp=scale, **PLATE)
    doubts = [c for c in finding.criteria if c.criterion.name == "scale of the recording"]
    if means is None:
        assert (finding.verdict, doubts) == ("pass", [])
        return
    (doubt,) = doubts
    assert doubt.verdict == "cannot tell"
    assert f"a clamp of {means}" in doubt.reason
    assert finding.verdict != "pass"

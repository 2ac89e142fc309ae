"""Recordings of which all is known: the truth lies within the band of every figure.

Starts in closed form, spoiled as recorders do it, and logs that are invented from a few numbers.
"""

from __future__ import annotations

import pytest

import wirecalc

from .recorded import recorded
from .records import independent
from .spoiled import spoiled
from .test_trace import dense
from .test_trace_stamps import PLATE, within

# what was done to it, readings a second, Hz, seed, and the start
WAVEFORMS = [
    ("holes", 1000, 60, 11, {}),
    ("holes", 5000, 50, 12, {"settled": 0.9, "locked": 9.0}),
    ("holes", 20_000, 60, 13, {"tau": 0.2}),
    ("jitter", 1000, 50, 21, {}),
    ("jitter", 5000, 60, 22, {"power_factor": 0.8}),
    ("jitter and holes", 2000, 60, 23, {}),
    ("jitter and holes", 10_000, 50, 24, {"tau": 0.3}),
    ("stamps", 1000, 60, 31, {}),
    ("stamps", 5000, 50, 32, {"settled": 2.0}),
    ("coarse clock", 1000, 60, 41, {}),
    ("coarse clock", 10_000, 50, 42, {}),
    ("noise 0.01", 1000, 60, 51, {}),
    ("noise 0.01", 5000, 50, 52, {"tau": 0.25}),
    ("noise 0.03", 5000, 60, 53, {}),
    ("noise 0.03", 20_000, 50, 54, {"settled": 1.5}),
    ("direct part", 1000, 60, 61, {}),
    ("direct part", 5000, 50, 62, {}),
    ("cut off", 5000, 60, 71, {}),
    ("cut off", 20_000, 50, 72, {"power_factor": 0.5}),
    ("rectified", 1000, 50, 81, {}),
    ("rectified", 5000, 60, 82, {"tau": 0.2}),
]


@independent("start of an R-L circuit in closed form, integrated densely by numpy")
@pytest.mark.parametrize(("how", "rate", "frequency", "seed", "which"), WAVEFORMS)
def test_the_truth_of_a_waveform(start, record, tmp_path, how, rate, frequency, seed, which):
    one = start(**{"end": 4.0, "frequency": float(frequency), **which})
    path = record(tmp_path / "start.csv", *spoiled(one, rate, how, seed))
    finding = wirecalc.run("trace", recording=str(path), **PLATE)
    crest, cycle, surge, settle = dense(one)
    truths = {"end of the surge": settle, "settled level": one.settled}
    if how != "rectified":
        truths["mains frequency"] = one.frequency
    if how not in ("rectified", "cut off"):
        truths["highest instantaneous current"] = crest
    if how != "cut off":
        truths |= {"highest one-cycle rms": cycle, "highest 100 ms rms from a start": surge}
    for name, truth in truths.items():
        inside, said = within(finding, name, truth)
        assert inside, said
    told = {f.figure.name for f in finding.figures}
    if how == "rectified":
        assert not told & {"mains frequency", "highest instantaneous current"}
        assert "rectified" in finding.criterion("mains frequency").reason
    if how == "cut off":
        assert finding.criterion("highest instantaneous current").verdict == "cannot tell"
        assert within(finding, "highest one-cycle rms", cycle)[1][3] <= cycle  # no more than it was
    assert finding.verdict != "fail" or one.settled > 1.6


SURGE = [[0, 60], [11, 0.4]]
LOGS = {  # levels, readings a second, and what is true of it
    "warms up": (
        [*SURGE, [1.9, 1.3, 600], [1.3, 900], [0, 60]],
        10,
        {"end of the surge": 0.4, "settled level": 1.3, "highest reading": 11},
    ),
    "two starts": (
        [*SURGE, [1.3, 200], [0, 300], [11, 0.6], [1.3, 200], [0, 60]],
        20,
        {"whole cycles": 1, "mean time on": 200.4, "mean time off": 300},
    ),
    "stall at minute five": ([*SURGE, [1.3, 300], [11, 9], [0, 60]], 10, {"settled level": 1.3}),
    "slow start": (
        [[0, 20], [10.8, 4.3], [1.3, 60], [0, 20]],
        10,
        {"end of the surge": 4.3, "settled level": 1.3},
    ),
    "locked cycling, 20 a second": (
        [[0, 30], *([[11, 8], [0, 120]] * 10)],
        20,
        {"mean time on": 8, "mean time off": 120, "cycles an hour": 28.125},
    ),
    "locked cycling, one a second": (
        [[0, 30], *([[11, 8.3], [0, 119.7]] * 10)],
        1,
        {"mean time on": 8.3, "mean time off": 119.7, "cycles an hour": 28.125},
    ),
    "locked cycling, one in ten seconds": (
        [[0, 30], *([[11, 8.3], [0, 119.7]] * 40)],
        0.1,
        {"duty of the whole cycles": 100 * 8.3 / 128},
    ),
    "defrost after it": (
        [*SURGE, [1.3, 600], [0, 30], [3.7, 600], [0, 60]],
        20,
        {"end of the surge": 0.4, "settled level": 1.3},
    ),
    "ten hours": (
        [[0, 600], *([[1.5, 1.2, 300], [1.2, 1137], [0, 1709]] * 11)],
        1 / 30,
        {"mean time on": 1437, "mean time off": 1709, "cycles an hour": 3600 / 3146},
    ),
}


@independent("the recording was made so")
@pytest.mark.parametrize("name", LOGS)
def test_the_truth_of_a_log(tmp_path, name):
    levels, rate, truths = LOGS[name]
    path = tmp_path / "invented.csv"
    path.write_text(recorded(levels, rate), encoding="utf-8")
    finding = wirecalc.run("trace", recording=str(path), **PLATE)
    for what, truth in truths.items():
        inside, said = within(finding, what, truth)
        assert inside, said
    bad = ("stall", "slow", "locked")
    assert (finding.verdict == "fail") == name.startswith(bad), finding.decided_by

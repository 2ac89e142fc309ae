"""Seven measured recordings, each with a plate that may have stood on it: the verdict of one who
reads the curve. The plates are invented; those of the machines were not recorded.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

import wirecalc
from wirecalc import Finding

from .records import independent, practice, source
from .test_trace import DATA, columns, outside, value

COMPRESSOR = {
    "rated_load_current": "0.8 A",
    "locked_rotor_current": "7 A",
    "nameplate_voltage": "230 V",
    "voltage": "230 V",
    "motor_kind": "compressor",
}
HEATER = {"breaker": "16 A", "device": "iec-60898-b"}
MOTOR = {
    "rated_load_current": "3 A",
    "locked_rotor_current": "18 A",
    "nameplate_voltage": "220 V",
    "voltage": "220 V",
    "motor_kind": "motor",
}


def cannot_tell(finding: Finding) -> set[str]:
    return {c.criterion.name for c in finding.criteria if c.verdict == "cannot tell"}


@source(
    "tracebase, power of household appliances",
    "recordings of 2012, Open Database License 1.0",
    "refrigerators, washing machine, kettle",
    seen="parts, kept outside the repository",
)
@practice(
    "a log of watts shows when it ran and what it took, and neither its start nor its amperes"
)
@pytest.mark.parametrize(
    ("name", "plate"),
    [
        ("refrigerator_1", COMPRESSOR),
        ("refrigerator_2", COMPRESSOR),
        ("refrigerator_3", COMPRESSOR),
        ("washing_machine_1", {**MOTOR, "breaker": "16 A"}),
        ("kettle_1", HEATER),
    ],
)
def test_a_power_log_informs_and_cannot_tell_a_start(name: str, plate: dict[str, str]) -> None:
    path = outside(f"{name}_power.csv")
    assert wirecalc.run("trace", recording=str(path)).verdict is None
    finding = wirecalc.run("trace", recording=str(path), **plate)
    assert finding.verdict == "cannot tell"
    assert cannot_tell(finding) == {"current of the start", "start against the plate"}
    assert value(finding, "energy recorded") > 0


@source(
    "tracebase, power of household appliances",
    "recordings of 2012, Open Database License 1.0",
    "washing machine, kettle",
    seen="parts, kept outside the repository",
)
@independent("levels read off each curve with numpy: one time above 1500 W, longer than a minute")
@pytest.mark.parametrize("name", ["washing_machine_1", "kettle_1"])
def test_a_heater_is_on_once_at_one_level(name: str) -> None:
    path = outside(f"{name}_power.csv")
    t, x = columns(path, "t_s", "power_1s_W")
    hot = t[x > 1500]
    assert 60 < np.ptp(hot) < 1800
    finding = wirecalc.run("trace", recording=str(path))
    share = value(finding, "on, of the recorded time")
    assert share >= 100 * np.ptp(hot) / (t[-1] - t[0]) - 1


@source(
    "Custom appliance recordings of the nilmtk-ukdale repository",
    "November 2022",
    "Custom_Dataset_1, train_data/vacuum.csv",
    seen="part in tests/data/traces",
)
@practice("a universal motor that runs up in a second or two, with a crest of 17 A, on 16 A")
def test_a_vacuum_cleaner_that_runs_well() -> None:
    path = DATA / "vacuum_current_1hz.csv"
    _, rms, crest = columns(path, "t_s", "current_A", "current_peak_A")
    finding = wirecalc.run("trace", recording=str(path), **HEATER)
    assert finding.verdict == "marginal"  # one reading a second: it settled within 1 to 3 s
    worst = [c.criterion.name for c in finding.criteria if c.verdict != "pass"]
    assert worst == ["time to settle"]
    assert value(finding, "highest instantaneous current") == crest.max()
    assert value(finding, "highest reading") == rms.max()


@source(
    "Classification of inter-turn short-circuit faults by quaternion analysis",
    "Measurement 222 (2023) 113680",
    "data of the healthy motor, repetition 1, phase A",
    seen="part in tests/data/traces",
)
@practice("it runs, at two thirds of its plate; its start was not recorded")
@pytest.mark.parametrize(("rated", "verdict"), [("3 A", "pass"), ("1.3 A", "fail")])
def test_a_motor_that_was_recorded_while_it_ran(rated: str, verdict: str) -> None:
    path: Path = DATA / "motor_running_1khz.csv"
    _, x = columns(path, "t_s", "current_A")
    plate = {**MOTOR, "rated_load_current": rated}
    finding = wirecalc.run("trace", recording=str(path), **plate)
    judged = finding.criterion("settled current, upper limit")
    assert (judged.criterion.actual or 0) == pytest.approx(np.sqrt(np.mean(x**2)), rel=0.01)
    assert judged.verdict == verdict
    assert "start against the plate" in cannot_tell(finding)
    assert finding.verdict == ("fail" if verdict == "fail" else "cannot tell")

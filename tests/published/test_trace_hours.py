"""Logs of hours: cycles, duty, energy, a motor that only tries, and where they lead on to.

The recordings are invented from a few numbers, so that what is in them is known.
"""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest

import wirecalc
from wirecalc import Finding

from .recorded import recorded
from .records import independent

PLATE = {
    "rated_load_current": "1.6 A",
    "locked_rotor_current": "12 A",
    "nameplate_voltage": "115 V",
    "voltage": "116 V",
    "motor_kind": "compressor",
}
TRIES: list[list[float]] = [[0, 30], *([[11, 8], [0, 120]] * 20)]
HOURS: list[list[float]] = [
    [0, 600],
    *([[1.5, 1.2, 300], [1.2, 900], [0, 1500]] * 4),
]


def trace(tmp_path: Path, levels: list[list[float]], rate: float, **given: str) -> Finding:
    path = tmp_path / "invented.csv"
    path.write_text(recorded(levels, rate), encoding="utf-8")
    return wirecalc.run("trace", recording=str(path), **given)


def commands(finding: Finding) -> list[str]:
    rows = [str(r[0]) for x in finding.listings if x.title.startswith("Go on") for r in x.rows]
    text = "\n".join(rows).replace("\\\n", " ")
    return [line for line in text.splitlines() if line.startswith("wirecalc")]


def going_on(line: str) -> Finding:
    """Run a command line that it gives, in Python."""
    _, name, *words = shlex.split(line)
    given: dict[str, list[str]] = {}
    for option, value in zip(words[::2], words[1::2], strict=True):
        given.setdefault(option[2:].replace("-", "_"), []).append(value)
    return wirecalc.run(name, **{k: v if len(v) > 1 else v[0] for k, v in given.items()})


@independent("8 s on and 120 s off: 3600 / 128 = 28.1 an hour, 6.25 % of the time")
@pytest.mark.parametrize("rate", [20, 2, 1, 0.2, 0.1])
def test_a_motor_that_only_tries_fails(tmp_path: Path, rate: float) -> None:
    finding = trace(tmp_path, TRIES, rate, **PLATE)
    assert finding.verdict == "fail"
    assert finding.criterion("runs after a start").verdict == "fail"
    assert any("its overload opens and closes" in a.text for a in finding.answers)
    duty = finding.figure("duty of the whole cycles")
    assert duty.low <= 6.25 <= duty.high
    for line in commands(finding):
        if line.startswith("wirecalc locked"):
            assert going_on(line).verdict in (("fail",) if rate > 0.5 else ("fail", "cannot tell"))
    assert any(line.startswith("wirecalc locked") for line in commands(finding))


@independent("8 s on and 120 s off, as a waveform of 60 Hz")
def test_tries_in_a_waveform_lead_on_to_locked(tmp_path: Path) -> None:
    path = tmp_path / "invented.csv"
    tries: list[list[float]] = [[0, 5], *([[11, 8], [0, 120]] * 3)]
    path.write_text(recorded(tries, 500, 60), encoding="utf-8")
    finding = wirecalc.run("trace", recording=str(path), **PLATE)
    assert finding.verdict == "fail"
    (line,) = (c for c in commands(finding) if c.startswith("wirecalc locked"))
    on = going_on(line)
    assert on.verdict == "fail"
    assert "--overload-trips 28" in line and '--reset-time "2 min"' in line
    assert not any(c.startswith("wirecalc duty") for c in commands(finding))


@independent("two readings of a start may be two that were switched off again")
@pytest.mark.parametrize(("tries", "verdict"), [(2, "cannot tell"), (3, "fail")])
def test_two_tries_of_a_slow_log_prove_nothing(tmp_path: Path, tries: int, verdict: str) -> None:
    levels: list[list[float]] = [[0, 30], *([[11, 5], [0, 120]] * tries)]
    assert trace(tmp_path, levels, 0.2, **PLATE).verdict == verdict


@independent("8 s on and 120 s off: 3600 / 128 = 28.1 an hour")
def test_cycles_that_may_lie_between_readings_are_not_counted(tmp_path: Path) -> None:
    fast, slow = (trace(tmp_path, TRIES, rate) for rate in (1, 1 / 30))
    found = fast.figure("cycles an hour")
    assert found.low <= 28.125 <= found.high
    assert fast.figure("mean time on").low <= 8 <= fast.figure("mean time on").high
    names = {f.figure.name for f in slow.figures}
    assert "cycles an hour" not in names
    assert slow.figure("whole cycles, at least").figure.value < 20
    assert any("between two readings" in n.what for n in slow.not_checked)


@independent("1200 s on and 1500 s off: 44.4 %, 1.333 an hour")
@pytest.mark.parametrize("rate", [1, 0.1, 1 / 60])
def test_a_log_of_hours_leads_on_to_its_duty(tmp_path: Path, rate: float) -> None:
    finding = trace(tmp_path, HOURS, rate)
    assert finding.verdict is None
    for name, truth in (
        ("duty of the whole cycles", 100 * 1200 / 2700),
        ("cycles an hour", 3600 / 2700),
        ("mean time on", 1200),
        ("mean time off", 1500),
    ):
        found = finding.figure(name)
        assert found.low <= truth <= found.high, name
        assert found.high - found.low <= 0.11 * truth
    (line,) = (c for c in commands(finding) if c.startswith("wirecalc duty"))
    assert going_on(line).figure("duty").figure.value == pytest.approx(44.4, abs=1)
    first = next(f.figure.name for f in finding.figures)
    assert first == "whole cycles"


@independent("the start of a machine that runs well is not in a log of one reading a minute")
@pytest.mark.parametrize("rate", [1, 0.1, 1 / 60])
def test_no_stop_for_a_start_that_a_slow_log_cannot_show(tmp_path: Path, rate: float) -> None:
    finding = trace(tmp_path, HOURS, rate, **PLATE)
    assert finding.verdict == "cannot tell"
    assert not [c for c in finding.criteria if c.verdict == "fail"]
    assert finding.criterion("settled current, upper limit").verdict == "pass"


@independent("100 W for 1200 of every 2700 s are 1.067 kWh a day")
def test_a_power_log_without_a_plate_informs(tmp_path: Path) -> None:
    levels = [[0, 2700], *([[100, 1200], [0, 1500]] * 4)]
    path = tmp_path / "power.csv"
    text = recorded(levels, 0.1).replace("current_rms_A", "power_W")
    path.write_text(text, encoding="utf-8")
    finding = wirecalc.run("trace", recording=str(path))
    assert finding.verdict is None
    joules = 4 * 100 * 1200
    assert finding.figure("energy recorded").figure.value == pytest.approx(joules / 3.6e6, rel=0.01)


RARE: list[list[float]] = [[0.02, 2], [11, 0.4], [1.3, 600], [5, 1800], [1.3, 600]]


@independent("the recording was made so: off for a few s of an hour")
@pytest.mark.parametrize("off", [0, 0.02, 0.1])
@pytest.mark.parametrize(
    ("levels", "times_on"),
    [
        ([[0, 2], [11, 0.4], [3, 1.2, 3600]], [3600.4]),
        (RARE, [3000.4]),
        ([*RARE, [0, 5], *RARE[1:]], [3000.4, 3000.4]),
        ([[0, 2], [9, 0.4], [1.3, 600], [8, 2000], [0, 3]], [2600.4]),
    ],
)
def test_off_is_off_however_rare_it_is(
    tmp_path: Path, levels: list[list[float]], times_on: list[float], off: float
) -> None:
    made = [[off if x == 0 else x for x in level] for level in levels]
    finding = trace(tmp_path, made, 2)
    (on,) = (x for x in finding.listings if x.title.startswith("On"))
    surges = [row for row in on.rows if str(row[3]) in ("11 A", "9 A")]
    assert len(surges) == len(times_on), on.rows
    share = finding.figure("on, of the recorded time").figure.value
    whole = sum(level[-1] for level in made)
    assert share == pytest.approx(100 * sum(times_on) / whole, abs=0.1)


@independent("the recording was made so: 0.1 A always, and 1.3 A for 1200 of every 2700 s")
@pytest.mark.parametrize("unplugged", [[], [[0, 20], [0.1, 600]]])
def test_a_standby_is_off(tmp_path: Path, unplugged: list[list[float]]) -> None:
    cycles: list[list[float]] = [[0.1, 1500], [11, 1], [1.3, 1199]] * 2
    made = [*cycles, [0.1, 600], *unplugged, *cycles, [0.1, 600]]
    finding = trace(tmp_path, made, 0.5)
    (on,) = (x for x in finding.listings if x.title.startswith("On"))
    assert len(on.rows) == 4
    share = finding.figure("on, of the recorded time").figure.value
    assert share == pytest.approx(100 * 4800 / sum(x[-1] for x in made), abs=0.5)


@independent("the recording was made so: it stands still for 9 s, and was never off")
def test_a_stall_is_no_time_on_beside_a_standby(tmp_path: Path) -> None:
    finding = trace(tmp_path, [[1.3, 60], [11, 9], [1.3, 60]], 10)
    (on,) = (x for x in finding.listings if x.title.startswith("On"))
    assert str(on.rows[0][0]) == "0 s"

"""Parts of the judgement of a recording that no recording of the checks comes near."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

import wirecalc
from wirecalc import PRACTICE
from wirecalc_plugins.motor.plate import LockedRotor
from wirecalc_plugins.trace import analysis, wave_survey
from wirecalc_plugins.trace.other_loads import _flat, beside_the_motor, ends_high
from wirecalc_plugins.trace.rms_levels import Samples
from wirecalc_plugins.trace.stamps import clock_of
from wirecalc_plugins.trace.starts_listing import seconds_in_words
from wirecalc_plugins.trace.surge import Calm, end_of_surge, since_start


class _Store:
    """Where the rows of a recording are kept."""


def _run(begins: float, highest: float = 8.1, **more: Any) -> Any:
    calm = SimpleNamespace(begin=(begins, begins, begins), level=8.0)
    return SimpleNamespace(settled=8.0, calm=[calm], highest=highest, **more)


@pytest.mark.parametrize(
    ("begins", "highest", "flat"), [(0.0, 8.1, True), (0.4, 8.1, False), (0.0, 40.0, False)]
)
def test_a_heater_holds_its_level_from_its_first_reading(
    begins: float, highest: float, flat: bool
) -> None:
    """A motor whose board starts it softly has no surge, and needs half a second all the same."""
    assert _flat(_run(begins, highest), 20.0) is flat


def _beside(runs: list[Any], step: float = 0.02, least: float = 20.0) -> tuple[int, int]:
    """Return how many runs are starts of the motor, and of how many something else is said."""
    recording: Any = SimpleNamespace(overview=SimpleNamespace(step=step))
    starts, said = beside_the_motor(runs, LockedRotor(least, least, PRACTICE), None, recording)
    return len(starts), len(said)


def test_a_flat_load_is_none_of_the_motor_where_a_start_of_it_was_seen() -> None:
    """A motor of 20 A locked starts at 14 A or more; 8 A from the first reading on is a heater."""
    heater = _run(0.0, rise=False, settle=None, start=5.0)
    start = _run(0.4, 19.0, rise=False, settle=(0.4, 0.3, 0.5), start=60.0)
    assert _beside([start, heater]) == (1, 1)
    assert _beside([heater]) == (1, 0)  # no start was seen: it may be the motor's
    assert _beside([start, heater], step=0.1) == (1, 1)
    assert _beside([start, heater], step=0.101) == (2, 0)  # too slow a log to show a surge
    assert _beside([start, heater], least=0.0) == (2, 0)  # nothing is known of the motor


@pytest.mark.parametrize(
    ("seconds", "step", "high"),
    [(1.0, 0.5, True), (1.25, 0.5, True), (1.3, 0.5, False), (1.0, 0.4, False)],
)
def test_a_try_of_a_slow_log_is_a_reading_or_two(seconds: float, step: float, high: bool) -> None:
    run = _run(0.0, 18.0, cut_end=False, cut_start=False, start=0.0, end=seconds)
    run.settled = None
    assert ends_high(run, 20.0, step) is high


@pytest.mark.parametrize(
    ("step", "rectified", "kind"),
    [(0.001, False, "rms"), (0.001, True, "instantaneous"), (0.1, True, "rms")],
)
def test_what_was_recorded_on_one_side_of_zero(
    monkeypatch: pytest.MonkeyPatch, step: float, rectified: bool, kind: str
) -> None:
    """A fast logger of rms values is no waveform, and neither are ten readings a second."""
    monkeypatch.setattr(analysis, "clock_of", lambda recording: SimpleNamespace(step=step))
    wave = SimpleNamespace(rectified=rectified, frequency=None)
    monkeypatch.setattr(analysis, "waveform_of", lambda recording, clock: wave)
    overview = SimpleNamespace(step=step, repeats=0, low=(0.2,), high=(9.0,))
    recording: Any = SimpleNamespace(columns=["current"], heads=["amps"], overview=overview)
    assert analysis.kind_of(recording, "auto")[0] == kind


@pytest.mark.parametrize(("end", "seen"), [(1.5, True), (1.49, False)])
def test_a_level_that_holds_for_half_a_second_ends_a_surge(end: float, seen: bool) -> None:
    """From its likeliest beginning, not from the latest: 1.0 to 1.5 s (common practice)."""
    calm = [Calm((1.0, 0.8, 1.3), end, 5.0, 5.0, "")]
    assert end_of_surge(calm, 30.0, settled=5.0) == ((1.0, 0.8, 1.3) if seen else None)


def test_what_holds_from_the_first_reading_on_begins_with_the_start() -> None:
    times = np.array([4.0, 4.5, 5.0])
    assert since_start(times, 0, 4.0, None, 0.5, waveform=False) == (0.0, 0.0, 0.5)
    assert since_start(times, 1, 4.0, None, 0.5, waveform=False) == (0.5, 0.0, 1.0)


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(599.0, "599 s"), (600.0, "10 min"), (35_940.0, "599 min"), (36_000.0, "10 h")],
)
def test_a_length_of_time_is_said_in_the_unit_that_a_person_would_take(
    seconds: float, said: str
) -> None:
    assert seconds_in_words(seconds) == said


def test_a_log_with_a_clock_in_whole_seconds_is_no_waveform(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Its rms values lie on one side of zero, and several stand under one stamp."""
    monkeypatch.setattr(analysis, "clock_of", lambda recording: SimpleNamespace(step=0.002))
    wave = SimpleNamespace(rectified=True, frequency=None)
    monkeypatch.setattr(analysis, "waveform_of", lambda recording, clock: wave)
    overview = SimpleNamespace(step=1.0, repeats=9, low=(0.2,), high=(9.0,))
    recording: Any = SimpleNamespace(columns=["current"], heads=["amps"], overview=overview)
    assert analysis.kind_of(recording, "auto")[0] == "rms"


@pytest.mark.parametrize("rows", [37, 64, 1000])
def test_ten_readings_under_each_stamp_are_a_tenth_of_a_second_apart(rows: int) -> None:
    """However the recording is cut in blocks: 1,000 readings are 100 s of whole seconds."""
    stamps = np.floor(np.arange(1000) / 10)
    blocks = [SimpleNamespace(t=stamps[at : at + rows]) for at in range(0, 1000, rows)]
    overview = SimpleNamespace(step=1.0, repeats=900, rows=1000)
    store = _Store()  # what was counted is remembered by it
    recording: Any = SimpleNamespace(overview=overview, blocks=lambda: iter(blocks), store=store)
    clock = clock_of(recording)
    assert clock.coarse
    assert clock.step == pytest.approx(0.1, rel=1e-12)


def test_nine_readings_are_not_smoothed_over_ten(monkeypatch: pytest.MonkeyPatch) -> None:
    """They stay what they are: a current that rests, by its mean."""
    frame = SimpleNamespace(t=np.arange(9) * 0.001, values=(np.full(9, 2.0),))
    monkeypatch.setattr(wave_survey, "frames", lambda recording, clock: [frame])
    clock: Any = SimpleNamespace(step=0.001, even=lambda t: t)
    recording: Any = SimpleNamespace(overview=SimpleNamespace(high=(10.0,), low=(-10.0,)))
    assert wave_survey._survey(recording, clock, 10).quiet == [2.0]


def test_a_late_fall_leaves_the_end_of_a_surge_open_up_to_the_last_that_was_seen() -> None:
    """A minute and a half at a quarter of the highest: a start winding that stays in, or a load."""
    calm = [
        Calm((2.0, 1.5, 2.5), 100.0, 10.0, 10.0, "down"),
        Calm((101.0, 101.0, 101.0), 101.2, 6.0, 6.0, "down"),
        Calm((150.0, 150.0, 150.0), 150.3, 5.0, 5.0, ""),
    ]
    assert end_of_surge(calm, 40.0, settled=None) == (2.0, 1.5, 150.3)


def test_the_rms_of_a_span_goes_up_to_the_last_sample() -> None:
    times, twos = np.arange(101) * 0.01, np.full(101, 2.0)
    lost = np.zeros(101)
    samples = Samples(times, twos, 4.0 * np.arange(101), lost, 0.01)
    assert samples.rms(0.0, 1.0) == pytest.approx(2.0)
    assert samples.rms(0.5, 0.51) is None  # it ends before
    lost[60:] = 3
    assert samples.rms(0.0, 0.4) == pytest.approx(2.0)
    assert samples.rms(0.0, 1.0) is None  # a hole lies in it
    assert samples.first_over(0.0, 1.0, 1.9) == 0.0
    assert samples.first_over(0.0, 1.0, 2.1) is None


def test_a_current_that_rests_has_no_drift_and_no_energy(tmp_path: Path) -> None:
    """Ten readings a second: a start of 20 A, then 3 A for a minute. No volts were recorded."""
    amps = [0.0] * 50 + [20.0] * 3 + [3.0] * 600
    rows = "\n".join(f"{n / 10:.1f},{x}" for n, x in enumerate(amps))
    file = tmp_path / "run.csv"
    file.write_text(f"time (s),current (A)\n{rows}\n", encoding="utf-8")
    names = [one.figure.name for one in wirecalc.run("trace", recording=str(file)).figures]
    assert [name for name in names if name.startswith("settled level")]
    assert [name for name in names if "drift" in name or "energy" in name] == []

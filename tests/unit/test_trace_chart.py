"""The chart of a recording: what is drawn of it, and the limits beside it."""

from __future__ import annotations

import math
from itertools import pairwise
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest

import wirecalc
from wirecalc_plugins.trace import chart
from wirecalc_plugins.trace.plate_view import TracePlate


def test_the_limits_of_a_start_stand_at_their_shares_of_the_locked_rotor_current() -> None:
    """70 % of LRA at least (common practice), 112 % over 100 ms at most, and the rated load."""
    plate = TracePlate(1.3, 12.0, 115.0, None, voltage=115.0)
    drawn = [(one.name.partition(":")[0], one.y) for one in chart._expected(plate)]
    assert [name for name, _ in drawn] == [
        "expected start rms, least",
        "expected start rms, most",
        "rated load",
    ]
    assert [value for _, value in drawn] == pytest.approx([8.4, 13.44, 1.3])


def test_a_plate_without_a_locked_rotor_current_has_no_expected_start() -> None:
    plate = TracePlate(1.3, None, 115.0, None)
    assert [one.y for one in chart._expected(plate)] == [1.3]


def _span(settle: float | None, end: float) -> tuple[float, float]:
    recording: Any = SimpleNamespace(overview=SimpleNamespace(first=0.0, last=3600.0))
    found: Any = SimpleNamespace(wave=object())
    times = None if settle is None else (settle, settle, settle)
    run: Any = SimpleNamespace(settle=times, start=20.0, end=end, cut_start=False)
    window = chart._near(recording, found, run)
    assert window is not None
    return window.begin, window.end


def test_the_start_is_drawn_and_not_the_hour_that_it_stands_in() -> None:
    begin, end = _span(0.6, 3000.0)
    assert 19.0 < begin < 20.0
    assert 20.6 < end < 25.0


def test_a_start_that_does_not_settle_is_drawn_to_its_end() -> None:
    """It ran for half a second and was switched off: that is on the chart, and a little after."""
    begin, end = _span(None, 20.5)
    assert begin < 20.0
    assert 20.5 <= end < 22.5


def test_many_readings_are_drawn_by_least_and_most_and_a_gap_stays_one() -> None:
    times = np.linspace(0.0, 100.0, 50_001)
    values = np.sin(times)
    there = (times < 40.0) | (times > 60.0)
    x, y = chart._drawn(iter([(times[there], values[there], True)]), chart._window(0.0, 100.0))
    assert len(x) == len(y)
    assert all(a <= b for a, b in pairwise(x))
    broken = [at for at, value in zip(x, y, strict=True) if math.isnan(value)]
    assert len(broken) == 1
    assert not [at for at in x if 41.0 < at < 59.0]
    assert min(v for v in y if v == v) == pytest.approx(-1.0, abs=1e-3)
    assert max(v for v in y if v == v) == pytest.approx(1.0, abs=1e-3)


def test_a_waveform_is_drawn_fine_and_its_rms_strong(tmp_path: Path) -> None:
    times = np.arange(2400) / 2000
    amps = 3.0 * np.sin(2 * np.pi * 60 * times) * (times > 0.2)
    file = tmp_path / "start.csv"
    rows = "\n".join(f"{t:.4f},{x:.4f}" for t, x in zip(times, amps, strict=True))
    file.write_text(f"time (s),current (A)\n{rows}\n", encoding="utf-8")
    found = wirecalc.run("trace", recording=str(file))
    drawn = [one for chart in found.charts for one in chart().lines]
    marks = {one.name: (one.fine, one.strong) for one in drawn}
    assert marks == {"current": (True, False), "one-cycle rms": (False, True)}

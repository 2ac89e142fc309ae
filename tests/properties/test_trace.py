"""A recording shifted, scaled, read in other pieces, or followed by nothing: the same start."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import wirecalc
from wirecalc import Finding
from wirecalc.recorded import blocks as readings_blocks

FEW = settings(
    max_examples=12,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
RATES = st.sampled_from([1000.0, 1200.0, 3000.0, 7000.0])
AMPLITUDES = [
    "highest instantaneous current",
    "highest one-cycle rms",
    "highest 100 ms rms from a start",
    "settled level",
]
TIMES = ["mains frequency", "end of the surge"]
FIGURES = [*AMPLITUDES, *TIMES]


def figures(path: Path) -> dict[str, float]:
    finding: Finding = wirecalc.run("trace", recording=str(path))
    return {f.figure.name: f.figure.value for f in finding.figures}


def close(one: dict[str, float], other: dict[str, float], rel: float) -> bool:
    return all(one[name] == pytest.approx(other[name], rel=rel, abs=1e-3) for name in FIGURES)


@FEW
@given(RATES, st.integers(-500_000, 500_000))
def test_shifting_the_time_changes_no_figure(
    start: Any, record: Any, tmp_path: Path, rate: float, shift: int
) -> None:
    t, x = start().sampled(rate)
    one = figures(record(tmp_path / "one.csv", t, x))
    other = figures(record(tmp_path / "other.csv", t + shift / 10, x))
    assert close(one, other, 1e-3)


@FEW
@given(RATES, st.sampled_from([0.1, 0.5, 3.0, 10.0, -1.0]))
def test_scaling_the_current_scales_its_figures(
    start: Any, record: Any, tmp_path: Path, rate: float, factor: float
) -> None:
    t, x = start().sampled(rate)
    one = figures(record(tmp_path / "one.csv", t, x))
    other = figures(record(tmp_path / "other.csv", t, x * factor))
    for name in AMPLITUDES:
        assert other[name] == pytest.approx(abs(factor) * one[name], rel=2e-3)
    for name in TIMES:
        assert other[name] == pytest.approx(one[name], rel=1e-3, abs=1e-3)


@FEW
@given(RATES, st.sampled_from([60, 1000, 4096, 99_999]), st.sampled_from([0, 500]))
def test_other_pieces_give_the_very_same(
    start: Any, record: Any, tmp_path: Path, rate: float, chunk: int, kept: int
) -> None:
    path = record(tmp_path / "one.csv", *start().sampled(rate))
    one = wirecalc.run("trace", recording=str(path))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(readings_blocks, "CHUNK", chunk)
        patch.setattr(readings_blocks, "MOST_KEPT", kept)
        other = wirecalc.run("trace", recording=str(path))
    assert one.figures == other.figures or [
        (f.figure.name, f.figure.value, f.low, f.high) for f in one.figures
    ] == [(f.figure.name, f.figure.value, f.low, f.high) for f in other.figures]
    assert one.listings == other.listings


@FEW
@given(RATES, st.floats(0.05, 3.0))
def test_time_with_nothing_after_it_changes_no_start(
    start: Any, record: Any, tmp_path: Path, rate: float, more: float
) -> None:
    one_start = start()
    t, x = one_start.sampled(rate)
    after = np.arange(len(t), len(t) + round(more * rate)) / rate
    whole = np.concatenate((t, after)), np.concatenate((x, np.zeros(len(after))))
    one = figures(record(tmp_path / "one.csv", t, x))
    other = figures(record(tmp_path / "other.csv", *whole))
    assert close(one, other, 2e-3)


@FEW
@given(st.lists(st.tuples(st.integers(3, 40), st.integers(3, 40)), min_size=1, max_size=6))
def test_cycles_of_a_log_are_those_that_were_written(
    record: Any, tmp_path: Path, cycles: list[tuple[int, int]]
) -> None:
    x = np.concatenate([[0.0] * 5, *([2.0] * on + [0.0] * off for on, off in cycles)])
    found = figures(record(tmp_path / "log.csv", np.arange(len(x)), x))
    whole = cycles[:-1]
    assert found.get("whole cycles", 0) == len(whole)
    if whole:
        on = sum(c[0] for c in whole)
        assert found["duty of the whole cycles"] == pytest.approx(
            100 * on / sum(map(sum, whole)), rel=1e-9
        )

"""`trace` over a waveform, beside numpy's own read of the same file in the same run."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc

SAMPLES = 10_000_000
Sized = Callable[[int], int]
RATE, CYCLE = 20_000, 400  # 50 Hz


@pytest.fixture(scope="module")
def waveform(sized: Sized, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("waveform") / "start.csv"
    one = [f",{1.7 * math.sin(2 * math.pi * i / CYCLE):.3f}\n" for i in range(CYCLE)]
    with path.open("w") as file:
        file.write("t_s,current_A\n")
        file.writelines(f"{i / RATE:.5f},0.000\n" for i in range(RATE // 2))
        for first in range(RATE // 2, sized(SAMPLES), CYCLE):
            size = 1 + 9 * math.exp(-(first - RATE // 2) / RATE / 0.1)
            big = [f",{1.7 * size * math.sin(2 * math.pi * i / CYCLE):.3f}\n" for i in range(CYCLE)]
            cycle = big if size > 1.001 else one
            file.writelines(f"{(first + i) / RATE:.5f}{cycle[i]}" for i in range(CYCLE))
    return path


@pytest.fixture(scope="module")
def as_parquet(waveform: Path) -> Path:
    from pyarrow import csv, parquet

    path = waveform.with_suffix(".parquet")
    parquet.write_table(csv.read_csv(waveform), path)
    return path


def plain_read(path: Path) -> Any:
    import numpy as np

    return np.loadtxt(path, delimiter=",", skiprows=1)


def traced(path: Path) -> Any:
    return wirecalc.run("trace", recording=str(path))


def judged(found: Any) -> None:
    assert found.figure("settled level").figure.value == pytest.approx(1.7 / 2**0.5, rel=0.01)


@pytest.mark.benchmark(group="trace over 1e7 samples")
@pytest.mark.parametrize("work", [plain_read, traced], ids=["floor: numpy.loadtxt", "trace"])
def test_trace(benchmark: Any, waveform: Path, work: Callable[[Path], Any]) -> None:
    found = benchmark.pedantic(work, args=(waveform,), rounds=1)
    if work is traced:
        judged(found)


@pytest.mark.benchmark(group="trace over 1e7 samples")
def test_trace_of_parquet(benchmark: Any, as_parquet: Path) -> None:
    judged(benchmark.pedantic(traced, args=(as_parquet,), rounds=1))

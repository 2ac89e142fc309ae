"""Calculations over files: `pull-batch` and `trip` over 1e6 rows, `choose` over 10,000 parts,
each beside a plain csv read of the same file in the same run."""

from __future__ import annotations

import csv
import random
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc

PULLS, PARTS, SAMPLES = 1_000_000, 10_000, 1_000_000
Sized = Callable[[int], int]


@pytest.fixture(scope="module")
def pulls(sized: Sized, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("pulls") / "pulls.csv"
    draw = random.Random(18)
    with path.open("w") as file:
        file.write("learner,force_lbf\n")
        file.writelines(f"l{i % 8},{draw.gauss(27, 1):.1f}\n" for i in range(sized(PULLS)))
    return path


@pytest.fixture(scope="module")
def stock(sized: Sized, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("stock") / "stock.csv"
    ranges = ("22-18 AWG", "16-14 AWG", "12-10 AWG", "2050-5180 cmil")
    with path.open("w") as file:
        file.write("part,connector,barrel,tab_in,listed_for,wire_limit,temperature_C,voltage_V\n")
        file.writelines(
            f"p{i},push-on,{ranges[i % 4]},0.250,stranded,1,{105 + i % 5 * 20},300\n"
            for i in range(sized(PARTS))
        )
    return path


@pytest.fixture(scope="module")
def course(sized: Sized, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A compressor that starts every 100 s, recorded a hundred times a second."""
    path = tmp_path_factory.mktemp("course") / "course.csv"
    draw = random.Random(19)
    with path.open("w") as file:
        file.write("time_s,current_A\n")
        file.writelines(
            f"{i / 100:.2f},{(14.2 if i % 10_000 < 40 else 1.3) + draw.uniform(-0.1, 0.1):.2f}\n"
            for i in range(sized(SAMPLES))
        )
    return path


def plain_read(path: Path) -> int:
    with path.open(newline="") as file:
        return sum(1 for _ in csv.reader(file))


def batch(path: Path) -> Any:
    return wirecalc.run("pull-batch", wire="18 AWG", terminal="ring", readings=str(path))


def chosen(path: Path) -> Any:
    given = {"place_temperature": "60 C", "wire_temperature": "105 C", "tab_width": "0.250 in"}
    return wirecalc.run("choose", wire=["14 AWG"], connector="push-on", stock=str(path), **given)


def tripped(path: Path) -> Any:
    given = {"device": "iec-60898-b", "breaker": "10 A", "device_ambient": "30 C"}
    return wirecalc.run("trip", **given, recording=str(path))


@pytest.mark.benchmark(group="pull-batch over 1e6 rows")
@pytest.mark.parametrize("work", [plain_read, batch], ids=["floor: plain csv read", "pull-batch"])
def test_pull_batch(benchmark: Any, sized: Sized, pulls: Path, work: Callable[[Path], Any]) -> None:
    found = benchmark.pedantic(work, args=(pulls,), rounds=1)
    assert found == sized(PULLS) + 1 or len(found.criteria) == 2


@pytest.mark.benchmark(group="choose over a stock of 10,000 rows")
@pytest.mark.parametrize("work", [plain_read, chosen], ids=["floor: plain csv read", "choose"])
def test_choose(benchmark: Any, sized: Sized, stock: Path, work: Callable[[Path], Any]) -> None:
    found = benchmark.pedantic(work, args=(stock,), rounds=3)
    assert found == sized(PARTS) + 1 or found.verdict == "pass"


@pytest.mark.benchmark(group="trip over a course of 1e6 points")
@pytest.mark.parametrize("work", [plain_read, tripped], ids=["floor: plain csv read", "trip"])
def test_trip(benchmark: Any, sized: Sized, course: Path, work: Callable[[Path], Any]) -> None:
    found = benchmark.pedantic(work, args=(course,), rounds=1)
    assert found == sized(SAMPLES) + 1 or found.verdict == "pass"

"""Rows a second of a batch, a line a row as CSV, beside a bare pass of the csv module.

Every row differs, save those of a gauge that shows 0.1 lbf. Measured is processor time.
"""

from __future__ import annotations

import csv
import random
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc.jobs import batch, batch_columns
from wirecalc.jobs.batch_rows import RowsFile
from wirecalc.jobs.batch_tally import Tally
from wirecalc.output import batch as output

CATALOGUE = wirecalc.build(bundled_only=True)
Benchmark = Any  # a function that measures, with room for what is said beside
Sized = Callable[[int], int]
ONCE = {"max_time": 0.5, "min_rounds": 3, "timer": time.process_time}  # of a shared machine too
HEADS = {
    "pull": "wire,terminal,force",
    "breaker": "current,breaker,building_wire,run_time,receptacle,only_receptacle",
    "splice": "wire,barrel,wire_temperature,terminal_temperature,place_temperature",
    "inrush": "rated_load_current,locked_rotor_current,nameplate_voltage,voltage,peak,settled,"
    "settle_time,meter_mode",
}
KINDS = {  # name, digits behind the point, rows
    "pull": ("pull", 5, 4_000),
    "pull, as a gauge shows it": ("pull", 1, 20_000),
    "breaker": ("breaker", 5, 2_000),
    "splice": ("splice", 5, 2_000),
    "inrush, three readings with an error": ("inrush", 4, 400),
}


def rows(name: str, digits: int, count: int) -> Iterator[str]:
    chance = random.Random(7)
    for _ in range(count):
        a, b, c = (f"{chance.random():.{digits}f}" for _ in range(3))
        yield {
            "pull": f"{chance.choice(['18', '16', '14'])} AWG,ring,{float(a) * 40:.{digits}f} lbf",
            "breaker": f"{float(a) * 20:.{digits}f} A,15 A,14 AWG,1 h,15 A,"
            + chance.choice(["yes", "unknown"]),
            "splice": f"18 AWG,22-18 AWG,105 C,105 C,{float(a) * 120:.{digits}f} C",
            "inrush": f"1.6 A,12 A,115 V,{108 + 17 * float(a):.{digits}f} V ±1%,"
            f"{5 + 9 * float(b):.{digits}f} A ±2%,{0.8 + 1.6 * float(c):.{digits}f} A ±2%,"
            "0.4 s,inrush",
        }[name]


def by_csv(path: Path) -> int:
    with path.open(encoding="utf-8", newline="") as file:
        return sum(1 for _ in csv.reader(file)) - 1


def by_batch(path: Path, name: str) -> int:
    file = RowsFile(str(path))
    planned = batch_columns.plan(CATALOGUE.find(name).calculation, file.header, {})
    tally = Tally()
    form = output.Form("csv")
    worker = batch.Worker(CATALOGUE.outcomes(name, origin="sheet"), planned, form.make)
    found = tally.watch(batch.results(worker, file.rows()))
    for _ in output.table_lines(found, name, form, kept=[], labels=False):
        pass
    assert not tally.refused
    return tally.rows


@pytest.mark.parametrize("way", ["floor: csv", "batch"])
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.benchmark(group="rows of a batch", **ONCE)
def test_rows(benchmark: Benchmark, sized: Sized, tmp_path: Path, kind: str, way: str) -> None:
    name, digits, count = KINDS[kind]
    path = tmp_path / "rows.csv"
    lines = [HEADS[name], *rows(name, digits, sized(count))]
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    done = benchmark(by_csv, path) if way.startswith("floor") else benchmark(by_batch, path, name)
    assert done == len(lines) - 1
    benchmark.extra_info["rows"] = done

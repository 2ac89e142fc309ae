"""Counting and exporting 10,000 records, beside a plain read and parse of the same files."""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc.commands import job_record
from wirecalc.jobs import record
from wirecalc.output.json import finding_object
from wirecalc.testing.command import run_command

RECORDS = 10_000
Sized = Callable[[int], int]


@pytest.fixture(scope="module")
def shop(sized: Sized, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Records with three checks each, as plain files."""
    folder = tmp_path_factory.mktemp("shop")
    finding = wirecalc.run("pull", wire="18 AWG", terminal="ring", force="24 lbf")
    check = {"name": "pull", "stage": "as left", "finding": finding_object(finding)}
    job = {"schema": "wirecalc.job/1", "verdict": "pass", "checks": [check] * 3, "not_tested": []}
    for number in range(sized(RECORDS)):
        text = json.dumps({"title": f"invented {number}", **job}, indent=2)
        day = date(2026, 1, 1) + timedelta(days=number % 365)
        made = record.Record(day, f"invented {number}", b"[job]", text, "<p>" * 10_000)
        (folder / made.name).mkdir()
        for name, content in made.contents.items():
            (folder / made.name / name).write_bytes(content)
    return folder


def plain_read(folder: Path) -> int:
    n = 0
    for entry in os.scandir(folder):
        found = {p.name: p.read_bytes() for p in Path(entry).iterdir()}
        n += bool(json.loads(found["job.json"]))
    return n


def counted(folder: Path) -> int:
    return job_record.count(folder, record.entries(folder)).n


@pytest.mark.benchmark(group="export of 10,000 records")
@pytest.mark.parametrize("turn", ["first", "again, nothing new"])
def test_export(benchmark: Any, shop: Path, tmp_path: Path, turn: str) -> None:
    words = ("job", "--export", str(shop), "--output", str(tmp_path / "tables"))
    if turn != "first":
        run_command(*words)
    assert benchmark.pedantic(run_command, args=words, rounds=1).status == 0


@pytest.mark.benchmark(group="history of 10,000 records")
@pytest.mark.parametrize("work", [plain_read, counted], ids=["floor: plain read", "history"])
def test_history(benchmark: Any, sized: Sized, shop: Path, work: Callable[[Path], int]) -> None:
    assert benchmark.pedantic(work, args=(shop,), rounds=1) == sized(RECORDS)

"""What a whole process costs, beside the least that its libraries cost.

Compared in one group, so that one run pairs them. Budgets: one calculation in its declared
units, its `--help` and the listing within 2 times the floor of argparse, pluggy and tabulate;
one that converts a unit within 1.4 times the same floor with pint.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

COMMAND = str(Path(sys.executable).with_name("wirecalc"))
PULL = (COMMAND, "pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
PROCESSES = {
    "floor: bare python": (sys.executable, "-c", "pass"),
    "floor: argparse, pluggy, tabulate": (
        sys.executable,
        "-c",
        "import argparse, pluggy, tabulate",
    ),
    "floor: argparse, pluggy, tabulate, pint": (
        sys.executable,
        "-c",
        "import argparse, pluggy, tabulate, pint",
    ),
    "version": (COMMAND, "--version"),
    "listing": (COMMAND,),
    "help of a calculation": (COMMAND, "pull", "--help"),
    "calculation in its declared unit": (*PULL, "24 lbf"),
    "calculation in its declared unit, as JSON": (*PULL, "24 lbf", "--format", "json"),
    "calculation with a meter's error": (*PULL, "24 lbf ±3%"),
    "calculation that converts a unit": (*PULL, "110 N"),
}


def start(words: tuple[str, ...]) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(words, capture_output=True, check=False)


@pytest.mark.parametrize("process", list(PROCESSES))
@pytest.mark.benchmark(group="cold start of a whole process")
def test_cold_start(benchmark: Callable[..., Any], process: str) -> None:
    done = benchmark.pedantic(start, args=(PROCESSES[process],), rounds=5, warmup_rounds=1)
    assert done.returncode == 0, done.stderr
    assert done.stdout or process.startswith("floor")

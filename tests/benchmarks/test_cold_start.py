"""What a whole process costs, beside the least that its libraries cost.

Compared in one group, so that one run pairs them. Budgets: one calculation in its declared
units, its `--help` and the listing within 2 times the floor of argparse, pluggy and tabulate;
one that converts a unit within 1.4 times the same floor with pint.
"""

from __future__ import annotations

import os
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

PLUGIN = '''
from typing import Annotated
from wirecalc import HouseRule, Reading, calculation, figure, hookimpl


@calculation(part="shop")
def demo_{number}(
    current: Annotated[float, Reading("A", above=0, high=100, text="line current of the load")],
):
    """Is it this one?"""
    yield figure("current", current, "A")


@hookimpl
def wirecalc_calculations():
    return [demo_{number}]


@hookimpl
def wirecalc_house_rules():
    return [HouseRule("nothing", ("strip",), lambda inputs, items: [])]
'''


def start(words: tuple[str, ...]) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(words, capture_output=True, check=False)


@pytest.mark.parametrize("process", list(PROCESSES))
@pytest.mark.benchmark(group="cold start of a whole process")
def test_cold_start(benchmark: Callable[..., Any], process: str) -> None:
    done = benchmark.pedantic(start, args=(PROCESSES[process],), rounds=5, warmup_rounds=1)
    assert done.returncode == 0, done.stderr
    assert done.stdout or process.startswith("floor")


@pytest.mark.parametrize("plugins", [0, 10, 100])
@pytest.mark.benchmark(group="cold start beside installed plugins")
def test_cold_start_beside_plugins(
    benchmark: Callable[..., Any], plugins: int, tmp_path: Path
) -> None:
    """Each plugin is a distribution with one small module, one calculation and one house rule."""
    for number in range(plugins):
        name = f"demo_{number}"
        info = tmp_path / f"{name}-1.0.dist-info"
        info.mkdir()
        (info / "METADATA").write_text(f"Metadata-Version: 2.1\nName: {name}\nVersion: 1.0\n")
        (info / "entry_points.txt").write_text(f"[wirecalc]\n{name} = {name}\n")
        (tmp_path / f"{name}.py").write_text(PLUGIN.format(number=number))
    env = os.environ | {"PYTHONPATH": str(tmp_path)}
    done = benchmark.pedantic(
        subprocess.run,
        args=((*PULL, "24 lbf"),),
        kwargs={"env": env, "capture_output": True, "check": False},
        rounds=5,
        warmup_rounds=1,
    )
    assert (done.returncode, done.stderr) == (0, b"")

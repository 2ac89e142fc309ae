"""What a simulated start costs: one motor beside a circuit simulator, and a thousand at once.

Both simulate the same machine in the same run; the simulator's time holds starting its process
and writing its file, which is how it would be used. With benchmarks disabled the sizes are small.
"""

from __future__ import annotations

import math
import random
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

from wirecalc_plugins.start_curve import starting
from wirecalc_plugins.start_curve.machines import MotorModel, StartWinding
from wirecalc_plugins.start_curve.spread import spread
from wirecalc_plugins.start_curve.start_case import (
    ShaftLoad,
    SimulatedStart,
    StartDevice,
    StartSupply,
)

Benchmark = Any
FEW: Any = {"max_time": 5.0, "min_rounds": 3}
NETLIST = Path(__file__).parents[1] / "data" / "start.cir"
MACHINE = MotorModel(
    110, 60, 4, 2.02, 2.79, 4.12, 2.12, 66.8, 24, 13, 0.05, StartWinding(7.14, 3.22, 1.18)
)
LOAD, SUPPLY = ShaftLoad(0.0146, constant=0.4), StartSupply(110, 0.5)
STAYS = StartDevice(run_capacitor=183e-6, cut_out=None)
PARAMS = {
    "volts": 110, "hertz": 60, "angle": 0, "rs": 0.5, "r1": 2.02, "x1": 2.79, "r2": 4.12,
    "x2": 2.12, "xm": 66.8, "ra": 7.14, "xa": 3.22, "turns": 1.18, "farads": 183e-6, "pairs": 2,
    "inertia": 0.0146, "constant": 0.4, "turning": 1, "step": 2e-5,
    "viscous": 13 / (0.95 * 4 * math.pi * 60 / 4) ** 2,
}  # fmt: skip


@pytest.fixture
def seconds(benchmark: Benchmark) -> float:
    return 1.0 if benchmark.enabled else 0.1


@pytest.mark.benchmark(group="one simulated second of a start", **FEW)
def test_one_start(benchmark: Benchmark, seconds: float) -> None:
    case = SimulatedStart(MACHINE, STAYS, LOAD, SUPPLY)
    curve = benchmark(starting.simulate, case, seconds, to_the_end=True)
    assert curve.time[-1] == pytest.approx(seconds, abs=0.02)


@pytest.mark.benchmark(group="one simulated second of a start", **FEW)
def test_one_start_in_a_circuit_simulator(
    benchmark: Benchmark, seconds: float, tmp_path: Path
) -> None:
    command = shutil.which("ngspice")
    if command is None:
        pytest.skip("ngspice is not installed")
    title, _, rest = NETLIST.read_text().partition("\n")
    params = "\n".join(f".param {k}={v!r}" for k, v in {**PARAMS, "duration": seconds}.items())
    (tmp_path / "start.cir").write_text(f"{title}\n{params}\n{rest}")
    words = [command, "-b", "start.cir"]
    benchmark(lambda: subprocess.run(words, cwd=tmp_path, capture_output=True, check=False))
    assert (tmp_path / "start.txt").stat().st_size > 1000


@pytest.mark.benchmark(group="many starts of one second", max_time=5.0, min_rounds=1)
def test_a_spread_of_tolerances(benchmark: Benchmark, seconds: float) -> None:
    draw = random.Random(1)
    count = 1000 if benchmark.enabled else 10

    def tolerance(value: float, share: float) -> float:
        return value * (1 + share * draw.uniform(-1, 1))

    cases = [
        SimulatedStart(
            MACHINE._replace(r1=tolerance(MACHINE.r1, 0.07), r2=tolerance(MACHINE.r2, 0.1)),
            StartDevice(capacitor=tolerance(183e-6, 0.2), resistance=3.0),
            LOAD._replace(constant=tolerance(LOAD.constant, 0.3)),
            SUPPLY._replace(voltage=tolerance(110, 0.1), closing_angle=draw.uniform(0, 180)),
        )
        for _ in range(count)
    ]
    found = benchmark.pedantic(spread, args=(cases, seconds), rounds=1)
    assert len(found.peak) == count

"""What a simulated start costs: one motor, and a thousand, beside numpy and a circuit simulator.

All simulate the same machine in the same run, with a capacitor that stays in. In plain numpy the
coils are matrices, a machine each, with the same fixed steps; the circuit simulator's time holds
starting its process and writing its file, which is how it would be used, and it does ten of the
thousand. With benchmarks disabled the sizes are small.
"""

from __future__ import annotations

import math
import random
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import pytest

from wirecalc_plugins.start_curve import starting
from wirecalc_plugins.start_curve.courses import STEPS
from wirecalc_plugins.start_curve.machines import MotorModel, StartWinding
from wirecalc_plugins.start_curve.spread import spread
from wirecalc_plugins.start_curve.start_case import (
    ShaftLoad,
    SimulatedStart,
    StartDevice,
    StartSupply,
)

Benchmark = Any
Sized = Callable[[int], int]
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


def in_circuit_simulator(folder: Path, seconds: float, **changed: float) -> Path:
    """Have ngspice simulate a start; return the file that it wrote."""
    command = shutil.which("ngspice")
    if command is None:
        pytest.skip("ngspice is not installed")
    title, _, rest = NETLIST.read_text().partition("\n")
    values = {**PARAMS, "duration": seconds, **changed}
    params = "\n".join(f".param {name}={value!r}" for name, value in values.items())
    (folder / "start.cir").write_text(f"{title}\n{params}\n{rest}")
    words = [command, "-b", "start.cir"]
    subprocess.run(words, cwd=folder, capture_output=True, check=False)
    return folder / "start.txt"


@pytest.mark.benchmark(group="one simulated second of a start", **FEW)
def test_one_start_in_a_circuit_simulator(
    benchmark: Benchmark, seconds: float, tmp_path: Path
) -> None:
    written = benchmark(in_circuit_simulator, tmp_path, seconds)
    assert written.stat().st_size > 1000


class Drawn(NamedTuple):
    """What is drawn of each of many starts: ohm, N m, V and degrees."""

    r1: list[float]
    r2: list[float]
    constant: list[float]
    volts: list[float]
    angle: list[float]


def drawn(count: int) -> Drawn:
    draw = random.Random(1)

    def around(value: float, share: float) -> list[float]:
        return [value * (1 + share * draw.uniform(-1, 1)) for _ in range(count)]

    return Drawn(
        around(MACHINE.r1, 0.07),
        around(MACHINE.r2, 0.1),
        around(LOAD.constant, 0.3),
        around(SUPPLY.voltage, 0.1),
        [draw.uniform(0, 180) for _ in range(count)],
    )


def cases_of(drawn: Drawn) -> list[SimulatedStart]:
    return [
        SimulatedStart(
            MACHINE._replace(r1=r1, r2=r2),
            STAYS,
            LOAD._replace(constant=constant),
            SUPPLY._replace(voltage=volts, closing_angle=angle),
        )
        for r1, r2, constant, volts, angle in zip(*drawn, strict=True)
    ]


def in_plain_numpy(drawn: Drawn, seconds: float) -> Any:
    """Return the crest of each start: coils as a matrix, Runge-Kutta, the steps of the package."""
    m, count = MACHINE, len(drawn.r1)
    assert m.start is not None
    omega, a, rotor = 2 * math.pi * m.frequency, m.start.turns, m.x2 + m.xm
    coils = np.array(
        [
            [m.x1 + m.xm, 0, m.xm, 0],
            [0, m.start.reactance + a * a * m.xm, 0, a * m.xm],
            [m.xm, 0, rotor, 0],
            [0, a * m.xm, 0, rotor],
        ]
    )
    inverse = np.linalg.inv(coils / omega)
    r1, r2, load, volts, angle = (np.array(column) for column in drawn)
    ohm = np.array([r1, np.full(count, m.start.resistance), r2, r2])
    peak, phase, viscous = math.sqrt(2) * volts, np.radians(angle), PARAMS["viscous"]

    def slopes(t: float, y: Any) -> Any:
        i, turn = inverse @ y[:4], 2 * y[5]
        at = peak * np.sin(omega * t + phase) - SUPPLY.resistance * (i[0] + i[1])
        made = np.array([at, at - y[4], turn * y[3], -turn * y[2]]) - ohm * i
        pull = 2 * (y[2] * i[3] - y[3] * i[2]) - load * np.tanh(y[5]) - viscous * y[5]
        return np.array([*made, i[1] / 183e-6, pull / LOAD.inertia])

    h, y, crest = 1 / (m.frequency * STEPS), np.zeros((6, count)), np.zeros(count)
    for step in range(round(seconds / h)):
        t = step * h
        k1 = slopes(t, y)
        k2 = slopes(t + h / 2, y + h / 2 * k1)
        k3 = slopes(t + h / 2, y + h / 2 * k2)
        y = y + h / 6 * (k1 + 2 * (k2 + k3) + slopes(t + h, y + h * k3))
        i = inverse[:2] @ y[:4]
        crest = np.maximum(crest, np.abs(i[0] + i[1]))
    return crest


MANY = "many starts of one second"


@pytest.mark.benchmark(group=MANY, max_time=5.0, min_rounds=1)
def test_a_thousand_starts(benchmark: Benchmark, seconds: float, sized: Sized) -> None:
    many = drawn(sized(1000))
    found = benchmark.pedantic(spread, args=(cases_of(many), seconds), rounds=1)
    assert found.peak == pytest.approx(in_plain_numpy(many, 0.1), rel=3e-3)


@pytest.mark.benchmark(group=MANY, max_time=5.0, min_rounds=1)
def test_a_thousand_starts_in_plain_numpy(
    benchmark: Benchmark, seconds: float, sized: Sized
) -> None:
    crest = benchmark.pedantic(in_plain_numpy, args=(drawn(sized(1000)), seconds), rounds=1)
    assert crest.min() > 20


@pytest.mark.benchmark(group=MANY, max_time=5.0, min_rounds=1)
def test_ten_of_them_in_a_circuit_simulator(
    benchmark: Benchmark, seconds: float, sized: Sized, tmp_path: Path
) -> None:
    rows = list(zip(*drawn(max(1, sized(10))), strict=True))

    def all_of_them() -> int:
        size = 0
        for r1, r2, constant, volts, angle in rows:
            changed = {"r1": r1, "r2": r2, "constant": constant, "volts": volts, "angle": angle}
            size += in_circuit_simulator(tmp_path, seconds, **changed).stat().st_size
        return size

    assert benchmark.pedantic(all_of_them, rounds=1) > 1000

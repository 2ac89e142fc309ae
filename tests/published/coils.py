"""A start of a single-phase motor as four coupled coils, integrated with scipy.

The coils' inductances and the equations of motion are typed here once more, from the winding axes:
main and start winding a quarter of a pole pair apart, two equal rotor windings on their axes.
Nothing is computed by the package, which gives the case alone.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from scipy.integrate import solve_ivp

from wirecalc_plugins.start_curve.start_case import SimulatedStart

OPENS = 0.75  # of synchronous speed, at the next zero of the start winding's current


class Coils(NamedTuple):
    """What the coils do: line current in A and speed in rad/s at each sample from closing on."""

    line: np.ndarray
    speed: np.ndarray


def by_coils(case: SimulatedStart, duration: float, samples: int = 128) -> Coils:
    """Integrate a start of so many seconds; `samples` a cycle. A PTC is not known here."""
    m, device, load, supply = case
    assert m.start is not None
    assert device.ptc is None
    omega, pairs, a, rotor = 2 * math.pi * m.frequency, m.poles / 2, m.start.turns, m.x2 + m.xm
    coils = np.array(
        [
            [m.x1 + m.xm, 0, m.xm, 0],
            [0, m.start.reactance + a * a * m.xm, 0, a * m.xm],
            [m.xm, 0, rotor, 0],
            [0, a * m.xm, 0, rotor],
        ]
    )
    both = np.linalg.inv(coils / omega)
    alone = np.zeros((4, 4))  # no current in the start winding
    alone[np.ix_([0, 2, 3], [0, 2, 3])] = np.linalg.inv(coils[np.ix_([0, 2, 3], [0, 2, 3])] / omega)
    ohm = np.array([m.r1, m.start.resistance + device.resistance, m.r2, m.r2])
    farads = (device.capacitor or 0) + (device.run_capacitor or 0) or math.inf
    viscous = m.rotational_loss / ((1 - m.slip) * m.synchronous) ** 2

    def slopes(t: float, y: np.ndarray, inverse: np.ndarray) -> list[float]:
        i, turn = inverse @ y[:4], pairs * y[5]
        volts = math.sqrt(2) * supply.voltage
        volts *= math.sin(omega * t + math.radians(supply.closing_angle))
        volts -= supply.resistance * (i[0] + i[1])
        driven = np.array([volts, volts - y[4], turn * y[3], -turn * y[2]]) - ohm * i
        torque = pairs * (y[2] * i[3] - y[3] * i[2])
        pull = torque - load.constant * math.tanh(y[5]) - viscous * y[5]
        return [*driven, i[1] / farads, 0.0 if load.locked else pull / load.inertia]

    def at_speed(t: float, y: np.ndarray, inverse: np.ndarray) -> float:
        return float(y[5] - OPENS * m.synchronous)

    def at_zero(t: float, y: np.ndarray, inverse: np.ndarray) -> float:
        return float((inverse @ y[:4])[1])

    at_speed.terminal = at_zero.terminal = True  # type: ignore[attr-defined]
    stages: list[tuple] = [(alone, None)]
    if device.connected:
        opens = [(both, at_speed), (both, at_zero), *stages]
        stages = opens if device.cut_out else [(both, None)]
    times = np.arange(round(duration * m.frequency * samples)) / (m.frequency * samples)
    y, begin, line, speed = np.zeros(6), 0.0, [], []
    for inverse, until in stages:
        done = solve_ivp(
            slopes, (begin, duration), y, "DOP853", times[times >= begin],
            events=until, args=(inverse,), rtol=1e-8, atol=1e-8,
        )  # fmt: skip
        line.extend((inverse @ done.y[:4])[:2].sum(axis=0))
        speed.extend(done.y[5])
        if done.status == 0:
            break
        y, begin = done.y_events[0][0], done.t_events[0][0]
    return Coils(np.array(line), np.array(speed))

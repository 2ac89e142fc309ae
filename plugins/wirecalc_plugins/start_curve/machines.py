"""Single-phase induction machines in the steady state: one winding or two, running or locked.

The double-revolving-field circuit, in complex numbers and without numpy. All values are whole
branches referred to the main winding, in ohm at the machine's frequency; each revolving field
takes half of them:

    Zf = 0.5 jXm (R2/s + jX2) / (R2/s + j(X2 + Xm))        Zb the same with 2 - s
    main alone     Z = R1 + jX1 + Zf + Zb
    two windings   Z11 = R1 + jX1 + Zf + Zb                Z12 = -j a (Zf - Zb) = -Z21
                   Z22 = a^2 (Zf + Zb) + Ra + jXa + external

The air-gap torque is [(|Im|^2 + a^2 |Ia|^2)(Rf - Rb) + 2 a |Im||Ia| sin(angle) (Rf + Rb)] / ws,
the angle by which the start winding's current leads the main one's. Sources: Electric
Machinery, 6th ed., chapter 9; Electric Machinery and Transformers, chapter 10.
"""

from __future__ import annotations

import cmath
import math
from typing import NamedTuple

RATED_SLIP = 0.05  # of an estimated machine; common practice


class StartWinding(NamedTuple):
    """A start winding: its own ohm, and its effective turns over those of the main winding."""

    resistance: float
    reactance: float
    turns: float


class MotorModel(NamedTuple):
    """A single-phase induction machine, in V, Hz, ohm and W, referred to the main winding."""

    voltage: float
    frequency: float
    poles: int
    r1: float
    x1: float
    r2: float
    x2: float
    xm: float
    core_loss: float = 0.0
    rotational_loss: float = 0.0
    slip: float = RATED_SLIP
    start: StartWinding | None = None

    @property
    def synchronous(self) -> float:
        """Synchronous speed in rad/s of the shaft."""
        return 4 * math.pi * self.frequency / self.poles

    @property
    def rated_torque(self) -> float:
        """Torque at the shaft in N m at rated slip and voltage, the main winding alone."""
        return main_alone(self, self.voltage, self.slip).shaft_torque


class Steady(NamedTuple):
    """A steady state: phasors in A against the supply's voltage, torque in N m, power in W."""

    main: complex
    start: complex
    torque: float
    input_power: float
    shaft_power: float
    shaft_torque: float

    @property
    def line(self) -> complex:
        """Line current: both windings together."""
        return self.main + self.start


def fields(machine: MotorModel, slip: float) -> tuple[complex, complex]:
    """Return the impedances of the forward and the backward field in ohm; slip 0 is no slip."""

    def half(share: float) -> complex:
        rotor = complex(machine.r2, machine.x2 * share)  # both sides of the branch times the slip
        return 0.5j * machine.xm * rotor / (rotor + 1j * machine.xm * share)

    return half(slip), half(2 - slip)


def main_alone(
    machine: MotorModel, voltage: float, slip: float, source_resistance: float = 0.0
) -> Steady:
    """Return the steady state with the start winding open, at a supply voltage and a slip."""
    forward, backward = fields(machine, slip)
    z = source_resistance + machine.r1 + 1j * machine.x1 + forward + backward
    current = voltage / z
    gap = abs(current) ** 2 * (forward.real - backward.real)
    return _steady(machine, slip, voltage, current, 0j, gap)


def both_windings(
    machine: MotorModel,
    voltage: float,
    slip: float,
    external: complex = 0j,
    source_resistance: float = 0.0,
) -> Steady:
    """Return the steady state with both windings on one supply.

    `external` is what is in series with the start winding, in ohm: -jXc for a capacitor;
    `source_resistance` is common to both. Slip 1 is the locked rotor. Raises ValueError for a
    machine without a start winding.
    """
    winding = machine.start
    if winding is None:
        raise ValueError("the machine has no start winding")
    forward, backward = fields(machine, slip)
    a, rs = winding.turns, source_resistance
    z11 = rs + machine.r1 + 1j * machine.x1 + forward + backward
    z12, z21 = rs - 1j * a * (forward - backward), rs + 1j * a * (forward - backward)
    own = winding.resistance + 1j * winding.reactance + external
    z22 = rs + a * a * (forward + backward) + own
    determinant = z11 * z22 - z12 * z21
    main, start = voltage * (z22 - z12) / determinant, voltage * (z11 - z21) / determinant
    same = (abs(main) ** 2 + (a * abs(start)) ** 2) * (forward.real - backward.real)
    cross = 2 * a * (start * main.conjugate()).imag * (forward.real + backward.real)
    return _steady(machine, slip, voltage, main, start, same + cross)


def _steady(
    machine: MotorModel, slip: float, voltage: float, main: complex, start: complex, gap: float
) -> Steady:
    speed = (1 - slip) * machine.synchronous
    torque = gap / machine.synchronous
    lost = (machine.rotational_loss + machine.core_loss) if speed else 0.0
    shaft = torque * speed - lost
    power = voltage * (main + start).real
    return Steady(main, start, torque, power, shaft, shaft / speed if speed else torque)


def locked_rotor(machine: MotorModel, voltage: float, external: complex | None = None) -> Steady:
    """Return the locked-rotor state; `external` None leaves the start winding open."""
    if external is None:
        return main_alone(machine, voltage, 1.0)
    return both_windings(machine, voltage, 1.0, external)


def reactance_for_most_torque(main: complex, start: complex) -> float:
    """Return the capacitor's reactance in ohm that gives a split-phase motor most start torque.

    Xc = Xa + Ra Rm / (Xm + |Zm|), from the windings' impedances at standstill.
    """
    return start.imag + start.real * main.real / (main.imag + abs(main))


def reactance_for_quadrature(main: complex, start: complex) -> float:
    """Return the capacitor's reactance in ohm that puts the two currents 90 degrees apart."""
    return start.imag + start.real * main.real / main.imag


def capacitance(reactance: float, frequency: float) -> float:
    """Return the capacitance in F that has this reactance in ohm at a frequency in Hz."""
    return 1 / (2 * math.pi * frequency * reactance)


def swapped(machine: MotorModel) -> MotorModel:
    """Return the machine with start and main lead exchanged, referred to what is main then."""
    winding = machine.start
    if winding is None:
        raise ValueError("the machine has no start winding")
    square = winding.turns**2
    return machine._replace(
        r1=winding.resistance,
        x1=winding.reactance,
        r2=machine.r2 * square,
        x2=machine.x2 * square,
        xm=machine.xm * square,
        start=StartWinding(machine.r1, machine.x1, 1 / winding.turns),
    )


def phase(value: complex) -> float:
    """Return the angle of a phasor in degrees."""
    return math.degrees(cmath.phase(value))

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

WATTS_PER_HP = 745.7
TURNS = 1.18  # effective turns of start over main winding where unknown; an estimate
RATED_SLIP = 0.05  # of an estimated machine; common practice
LEAST_ROTOR_SHARE = 0.1  # of the locked-rotor resistance that is left to the rotor at least
_XM_SPAN = (4.0, 60.0)  # magnetising over locked-rotor reactance, textbook machines and some more


class StartWinding(NamedTuple):
    """A start winding: its own ohm, and its effective turns over those of the main winding."""

    resistance: float
    reactance: float
    turns: float


class Machine(NamedTuple):
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


def fields(machine: Machine, slip: float) -> tuple[complex, complex]:
    """Return the impedances of the forward and the backward field in ohm; slip 0 is no slip."""

    def half(share: float) -> complex:
        rotor = complex(machine.r2, machine.x2 * share)  # both sides of the branch times the slip
        return 0.5j * machine.xm * rotor / (rotor + 1j * machine.xm * share)

    return half(slip), half(2 - slip)


def main_alone(
    machine: Machine, voltage: float, slip: float, source_resistance: float = 0.0
) -> Steady:
    """Return the steady state with the start winding open, at a supply voltage and a slip."""
    forward, backward = fields(machine, slip)
    z = source_resistance + machine.r1 + 1j * machine.x1 + forward + backward
    current = voltage / z
    gap = abs(current) ** 2 * (forward.real - backward.real)
    return _steady(machine, slip, voltage, current, 0j, gap)


def both_windings(
    machine: Machine,
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
    machine: Machine, slip: float, voltage: float, main: complex, start: complex, gap: float
) -> Steady:
    speed = (1 - slip) * machine.synchronous
    torque = gap / machine.synchronous
    lost = (machine.rotational_loss + machine.core_loss) if speed else 0.0
    shaft = torque * speed - lost
    power = voltage * (main + start).real
    return Steady(main, start, torque, power, shaft, shaft / speed if speed else torque)


def locked_rotor(machine: Machine, voltage: float, external: complex | None = None) -> Steady:
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


def swapped(machine: Machine) -> Machine:
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


class Plate(NamedTuple):
    """What a nameplate and an ohmmeter say of a motor, in V, Hz, A, W and ohm."""

    voltage: float
    frequency: float
    poles: int
    locked_rotor_current: float
    rated_load_current: float
    power: float
    main_resistance: float
    start_resistance: float | None


def estimate(plate: Plate, power_factor: float, external: complex | None = None) -> Machine:
    """Return a machine that would have such a plate: an estimate (common practice).

    The locked-rotor current is taken for both windings with `external` in series with the start
    winding, for the main winding alone where that is None. The power factor of the main winding
    at locked rotor (0.5 to 0.8 in small motors) splits its impedance into resistance and
    reactance; the rotor gets what the ohmmeter leaves of the resistance, both leakages are equal,
    the magnetising reactance is that which draws the rated current at the rated power, and the
    start winding has 1.18 times the turns of the main one.
    """
    low, high = 0.2 * plate.locked_rotor_current, plate.locked_rotor_current
    for _ in range(30 if external is not None else 0):
        middle = (low + high) / 2
        machine = _with_locked(plate, power_factor, middle)
        drawn = abs(locked_rotor(machine._replace(xm=1e9), plate.voltage, external).line)
        low, high = (middle, high) if drawn < plate.locked_rotor_current else (low, middle)
    machine = _with_locked(plate, power_factor, high)

    def at(xm: float) -> Machine:
        return _at_power(machine._replace(xm=xm), plate.power)

    low, high = (factor * 2 * machine.x1 for factor in _XM_SPAN)
    for _ in range(25):
        middle = math.sqrt(low * high)
        tried = at(middle)
        drawn = abs(main_alone(tried, plate.voltage, tried.slip).main)
        low, high = (middle, high) if drawn > plate.rated_load_current else (low, middle)
    return at(math.sqrt(low * high))


def _with_locked(plate: Plate, power_factor: float, current: float) -> Machine:
    """Return a machine whose main winding alone draws this current in A at locked rotor."""
    z = plate.voltage / current
    resistance = z * power_factor
    rotor = max(resistance - plate.main_resistance, LEAST_ROTOR_SHARE * resistance)
    x = z * math.sqrt(1 - power_factor**2) / 2
    start = None
    if plate.start_resistance is not None:
        start = StartWinding(plate.start_resistance, x * TURNS**2, TURNS)
    coils = (plate.main_resistance, x, rotor, x, 0.0)
    return Machine(plate.voltage, plate.frequency, plate.poles, *coils, start=start)


def _at_power(machine: Machine, power: float) -> Machine:
    """Give a machine the slip at which it yields this power in W, or the most that it can."""
    low, high = 1e-4, 0.2
    for _ in range(30):
        slip = (low + high) / 2
        enough = main_alone(machine, machine.voltage, slip).shaft_power >= power
        low, high = (low, slip) if enough else (slip, high)
    return machine._replace(slip=high)


def phase(value: complex) -> float:
    """Return the angle of a phasor in degrees."""
    return math.degrees(cmath.phase(value))

"""A motor estimated from its nameplate and its windings, as an ohmmeter reads them."""

from __future__ import annotations

import math
from typing import NamedTuple

from .machines import MotorModel, StartWinding, locked_rotor, main_alone

WATTS_PER_HP = 745.7
TURNS = 1.18  # effective turns of start over main winding where unknown; an estimate
LEAST_ROTOR_SHARE = 0.1  # of the locked-rotor resistance that is left to the rotor at least
_XM_SPAN = (4.0, 60.0)  # magnetising over locked-rotor reactance, textbook machines and some more


class MotorPlate(NamedTuple):
    """What a nameplate and an ohmmeter say of a motor, in V, Hz, A, W and ohm."""

    voltage: float
    frequency: float
    poles: int
    locked_rotor_current: float
    rated_load_current: float
    power: float
    main_resistance: float
    start_resistance: float | None


def estimate(plate: MotorPlate, power_factor: float, external: complex | None = None) -> MotorModel:
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

    def at(xm: float) -> MotorModel:
        return _at_power(machine._replace(xm=xm), plate.power)

    low, high = (factor * 2 * machine.x1 for factor in _XM_SPAN)
    for _ in range(25):
        middle = math.sqrt(low * high)
        tried = at(middle)
        drawn = abs(main_alone(tried, plate.voltage, tried.slip).main)
        low, high = (middle, high) if drawn > plate.rated_load_current else (low, middle)
    return at(math.sqrt(low * high))


def _with_locked(plate: MotorPlate, power_factor: float, current: float) -> MotorModel:
    """Return a machine whose main winding alone draws this current in A at locked rotor."""
    z = plate.voltage / current
    resistance = z * power_factor
    rotor = max(resistance - plate.main_resistance, LEAST_ROTOR_SHARE * resistance)
    x = z * math.sqrt(1 - power_factor**2) / 2
    start = None
    if plate.start_resistance is not None:
        start = StartWinding(plate.start_resistance, x * TURNS**2, TURNS)
    coils = (plate.main_resistance, x, rotor, x, 0.0)
    return MotorModel(plate.voltage, plate.frequency, plate.poles, *coils, start=start)


def _at_power(machine: MotorModel, power: float) -> MotorModel:
    """Give a machine the slip at which it yields this power in W, or the most that it can."""
    low, high = 1e-4, 0.2
    for _ in range(30):
        slip = (low + high) / 2
        enough = main_alone(machine, machine.voltage, slip).shaft_power >= power
        low, high = (low, slip) if enough else (slip, high)
    return machine._replace(slip=high)

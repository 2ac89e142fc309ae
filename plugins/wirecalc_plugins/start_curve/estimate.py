"""A motor estimated from its nameplate and its windings, as an ohmmeter reads them.

A plate leaves much open. So the estimate is a band: several machines that all have this plate, each
a `Member` with its share of the rotor in the locked resistance of the main winding (rho), its
locked torque (kappa) or turns ratio, and its friction. With V plate volts, ws synchronous rad/s:

1. The main winding, locked, has Rm = R1 / (1 - rho); R2 and X1 = X2 = x are what makes it draw a
   trial current through R1 + jx + jXm (R2 + jx) / (R2 + j(x + Xm)).
2. The start winding has a times its turns: Ra + a^2 (jx + rotor branch) + what is in series. The
   trial current is the one at which both windings together draw the locked-rotor amps (LRA).
3. kappa = T ws / (V LRA), T the locked torque: a is searched until it is the one wanted.
4. Friction is a share of the rated power, and Xm that which draws the rated amps at the rated
   power, with the run capacitor where one stays in; the slip comes out. 1 to 4 are done twice.

The spans of rho and kappa, and the errors of what comes out, were found on textbook machines
(docs/start-estimate.md); which kind of start has which kappa is what such machines have.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from .machines import MotorModel, StartWinding, Steady, both_windings, locked_rotor, main_alone
from .members import HIGH, LOW, MID, Kind, Member
from .motor_plate import MotorPlate, Series

WATTS_PER_HP = 745.7
MOST_PF, LEAST_PF = 0.92, 0.30  # of the main winding, locked; textbook machines have 0.35 to 0.92
FIRST_XM = 24.0  # magnetising over leakage reactance, to begin with
XM_SPAN = (6.0, 120.0)  # textbook machines and some more
LEAST_RHO, MOST_RHO = 0.2, 0.72  # of the rotor in the locked resistance of the main winding
RHO_STEP = 0.04  # a rotor share with which no machine has this plate is lowered
NEAR_KAPPA = 0.05  # within this share a turns ratio gives the torque that is wanted
FIT_KAPPA = 0.2  # further off than this the readings and the way of starting do not fit
FIT_RATED = 0.4  # a machine that misses rated amps or power by more has another plate
SLIPS = {LOW: 0.93, MID: 1.0, HIGH: 1.07}  # of the plate's slip, what each rotor share stands for
NEAR_SLIP = 0.15  # a slip further off than this is that of another motor
_SCANNED = tuple(0.40 + 0.04 * i for i in range(9))
_TURNS = 20  # ratios that are tried
_CURRENTS = 32  # main-winding currents between which the trial current is found
_MOST_SLIP = 0.2


class _Main(NamedTuple):
    """A main winding, locked: leakage and magnetising reactance, rotor ohm, rotor branch."""

    x: float
    r2: float
    xm: float
    rotor: complex


def kappa(machine: MotorModel, series: Series) -> float:
    """Return locked torque times synchronous speed over volts and locked-rotor amps."""
    found = locked_rotor(machine, machine.voltage, series.locked)
    return found.torque * machine.synchronous / (machine.voltage * abs(found.line))


def machines_of(plate: MotorPlate, kind: Kind, series: Series) -> list[MotorModel]:
    """Return the machines that may stand behind a plate, the nominal one first.

    A member that has no machine of this plate, at its rated power and amps too, is left out.
    """
    found = (machine_of(plate, member, kind, series) for member in kind.members)
    return [machine for machine in found if machine is not None]


def machine_of(plate: MotorPlate, member: Member, kind: Kind, series: Series) -> MotorModel | None:
    """Return the machine of this plate that a member stands for; None if there is none."""
    told = plate.slip is not None and kind.by_speed
    found = (_by_speed if told else estimate)(plate, member, kind, series)
    return found if found is not None and _has_plate(plate, found, series) else None


def _by_speed(plate: MotorPlate, member: Member, kind: Kind, series: Series) -> MotorModel | None:
    """Return a member's machine, with the rotor share that the speed on the plate tells."""
    wanted = (plate.slip or 0.0) * SLIPS[member.rho]
    tried = (estimate(plate, member._replace(rho=rho), kind, series) for rho in _SCANNED)
    there = [machine for machine in tried if machine is not None]
    return min(there, key=lambda machine: abs(machine.slip - wanted), default=None)


def _has_plate(plate: MotorPlate, machine: MotorModel, series: Series) -> bool:
    """Whether a machine draws about the rated amps at about the rated power."""
    rated = running(machine, machine.slip, series.running)
    amps = abs(rated.line) / plate.rated_load_current
    return abs(amps - 1) <= FIT_RATED and rated.shaft_power >= (1 - FIT_RATED) * plate.power


def estimate(plate: MotorPlate, member: Member, kind: Kind, series: Series) -> MotorModel | None:
    """Return the machine of this plate that a member stands for; None if there is none."""
    xm: float | None = None
    machine: MotorModel | None = None
    for _ in range(2):
        machine = _windings(plate, member, kind, series, xm)
        if machine is None:
            return None
        machine = _magnetised(plate, machine, series)
        xm = machine.xm
    return machine


def _windings(
    plate: MotorPlate, member: Member, kind: Kind, series: Series, xm: float | None
) -> MotorModel | None:
    """Return the machine with this plate's locked-rotor amps and the torque that is wanted."""

    def built(main: _Main, turns: float) -> MotorModel:
        ohm = plate.start_resistance
        start = None if ohm is None else StartWinding(ohm, main.x * turns**2, turns)
        coils = (plate.main_resistance, main.x, main.r2, main.x, main.xm)
        loss = member.loss * plate.power
        plain = MotorModel(plate.voltage, plate.frequency, plate.poles, *coils)
        return plain._replace(rotational_loss=loss, start=start)

    if series.locked is None or plate.start_resistance is None:
        main = _alone(plate, member.rho, xm)
        return None if main is None else built(main, kind.usual)

    solve = _solver(plate, series.locked, xm)

    def at(turns: float) -> MotorModel | None:
        rho = member.rho
        while rho >= LEAST_RHO:
            main = solve(rho, turns)
            if main is not None:
                return built(main, turns)
            rho -= RHO_STEP
        return None

    if member.kappa is None:
        return at(member.turns or kind.usual)
    low, high = kind.turns
    ratios = [low * (high / low) ** (i / (_TURNS - 1)) for i in range(_TURNS)]
    tried = [m for m in map(at, ratios) if m is not None]
    wanted, usual = member.kappa, kind.usual

    def off(machine: MotorModel) -> float:
        return abs(kappa(machine, series) / wanted - 1)

    def unusual(machine: MotorModel) -> float:
        return abs(math.log(machine.start.turns / usual)) if machine.start else 0.0

    near = [m for m in tried if off(m) <= NEAR_KAPPA]
    return min(near, key=unusual) if near else min(tried, key=off, default=None)


def _locked_main(plate: MotorPlate, rho: float, current: float, xm: float | None) -> _Main | None:
    """Return the main winding that draws this current in A locked, with this rotor share."""
    r1, z = plate.main_resistance, plate.voltage / current
    resistance = max(r1 / (1 - rho), LEAST_PF * z)
    if resistance > MOST_PF * z or r1 < (1 - MOST_RHO) * resistance:
        return None
    reactance = math.sqrt(z * z - resistance * resistance)
    x, r2 = reactance / 2, resistance - r1
    for _ in range(30):
        magnetising = FIRST_XM * x if xm is None else xm
        rotor = 1j * magnetising * complex(r2, x) / complex(r2, x + magnetising)
        off = complex(resistance, reactance) - (r1 + 1j * x + rotor)
        if abs(off) < 1e-4 * z:
            break
        r2, x = r2 + off.real, x + off.imag / 2
        if r2 <= 0 or x <= 0:
            return None
    return _Main(x, r2, magnetising, rotor)


def _alone(plate: MotorPlate, rho: float, xm: float | None) -> _Main | None:
    """Return the main winding that draws the locked-rotor amps by itself."""
    while rho >= LEAST_RHO:
        main = _locked_main(plate, rho, plate.locked_rotor_current, xm)
        if main is not None:
            return main
        rho -= RHO_STEP
    return None


def _solver(
    plate: MotorPlate, external: complex, xm: float | None
) -> Callable[[float, float], _Main | None]:
    """Return what finds the main winding with which both draw the locked-rotor amps."""
    ra = plate.start_resistance or 0.0

    def line(main: _Main, turns: float) -> float:
        r1 = plate.main_resistance + 1j * main.x + main.rotor
        start = ra + external + turns**2 * (1j * main.x + main.rotor)
        return abs(plate.voltage / r1 + plate.voltage / start)

    @lru_cache
    def candidates(rho: float) -> list[tuple[float, _Main]]:
        shares = (0.2 * 6 ** (i / _CURRENTS) for i in range(_CURRENTS + 1))
        currents = [share * plate.locked_rotor_current for share in shares]
        found = ((amps, _locked_main(plate, rho, amps, xm)) for amps in currents)
        return [(amps, main) for amps, main in found if main is not None]

    def solve(rho: float, turns: float) -> _Main | None:
        wanted = plate.locked_rotor_current
        drawn = [(amps, line(main, turns)) for amps, main in candidates(rho)]
        for (low, less), (high, more) in reversed(list(pairwise(drawn))):
            if less <= wanted <= more:
                amps = low + (high - low) * (wanted - less) / (more - less)
                return _locked_main(plate, rho, amps, xm)
        return None

    return solve


def _magnetised(plate: MotorPlate, machine: MotorModel, series: Series) -> MotorModel:
    """Give a machine the magnetising reactance that draws the rated amps, and its slip then."""

    def at(xm: float) -> tuple[MotorModel, Steady]:
        return _at_power(machine._replace(xm=xm), plate.power, series.running)

    low, high = (factor * machine.x1 for factor in XM_SPAN)
    for _ in range(14):
        middle = math.sqrt(low * high)
        drawn = abs(at(middle)[1].line)
        low, high = (middle, high) if drawn > plate.rated_load_current else (low, middle)
    return at(math.sqrt(low * high))[0]


def running(machine: MotorModel, slip: float, external: complex | None) -> Steady:
    """Return the running state: the main winding, and the start winding where it stays in."""
    if external is None or machine.start is None:
        return main_alone(machine, machine.voltage, slip)
    return both_windings(machine, machine.voltage, slip, external)


def _at_power(
    machine: MotorModel, power: float, external: complex | None
) -> tuple[MotorModel, Steady]:
    """Give a machine the slip at which it yields this power in W, or the most that it can."""
    low, high = 1e-4, _MOST_SLIP
    for _ in range(16):
        slip = (low + high) / 2
        enough = running(machine, slip, external).shaft_power >= power
        low, high = (low, slip) if enough else (slip, high)
    return machine._replace(slip=high), running(machine, high, external)

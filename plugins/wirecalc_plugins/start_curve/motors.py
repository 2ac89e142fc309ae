"""The motors that are simulated: a textbook's, or those that may stand behind a plate."""

from __future__ import annotations

import math

from wirecalc import PRACTICE, tables

from .estimate import FIT_KAPPA, NEAR_SLIP, WATTS_PER_HP, kappa, machine_of, machines_of
from .machines import MotorModel, StartWinding
from .members import Kind, capacitor_start, main_winding_alone, resistance_start, run_capacitor
from .members import between as members_between
from .motor_plate import MotorPlate, Series
from .setup import Motor, Setup, device, in_series
from .start_case import StartDevice
from .start_curve_inputs import NONE, OWN, RELAY, RUN_CAPACITOR, START_CAPACITOR

HEAVY = 0.0146 / 186.4  # kg m2 per W: a quarter-horse textbook motor with its load
ROTOR_ALONE = 0.05 / 1.39 * HEAVY  # rotors of small motors: 0.04 to 0.053 s, against its 1.39 s


def motors(setup: Setup) -> list[Motor]:
    """Return the textbook's motor, or the motors that may have this plate, the nominal one first.

    The list is empty where no motor that the estimate knows has such a plate.
    """
    return [_textbook(setup)] if setup.textbook_motor is not None else _estimated(setup)


def _textbook(setup: Setup) -> Motor:
    row = tables.load("textbook-motors").row(motor=setup.textbook_motor)
    names = ("main_resistance", "main_reactance", "rotor_resistance", "rotor_reactance")
    r1, x1, r2, x2, xm = (row.number(f"{n}_ohm") for n in (*names, "magnetising_reactance"))
    machine = MotorModel(
        row.number("voltage_V"),
        row.number("frequency_Hz"),
        int(row.number("poles")),
        *(r1, x1, r2, x2, xm),
        core_loss=row.number("core_loss_W"),
        rotational_loss=row.number("rotational_loss_W"),
        slip=row.number("slip"),
    )
    known = row.cells["inertia_kg_m2"] is not None
    power = machine.rated_torque * (1 - machine.slip) * machine.synchronous
    spans = (row.number("inertia_kg_m2"),) * 2 if known else _inertias(power, machine.poles)
    winding = tables.load("textbook-start-windings").row(motor=setup.textbook_motor)
    coil = StartWinding(
        winding.number("resistance_ohm"),
        winding.number("reactance_ohm"),
        winding.number("turns_ratio"),
    )
    machine = machine._replace(start=None if setup.start_method == NONE else coil)
    method, setup = setup.start_method, _with_own_parts(setup, winding)
    if method == OWN:
        method = RUN_CAPACITOR if winding.text("stays_in") == "yes" else START_CAPACITOR
    ohm = winding.number("capacitor_ohm")
    parts = device(setup, method, machine.frequency, ohm)
    return Motor(machine, parts, row.source, winding.source, spans, known)


def _with_own_parts(setup: Setup, winding: tables.Row) -> Setup:
    """Fill in the textbook's capacitor where the start has one and none was typed."""
    stays = winding.text("stays_in") == "yes"
    own = RUN_CAPACITOR if stays else START_CAPACITOR
    method = own if setup.start_method == OWN else setup.start_method
    farads = winding.number("capacitor_uF")
    if method == RUN_CAPACITOR and setup.run_capacitor is None:
        return setup._replace(run_capacitor=farads)
    if method == START_CAPACITOR and setup.start_capacitor is None:
        return setup._replace(start_capacitor=farads)
    return setup


def _estimated(setup: Setup) -> list[Motor]:
    plate, parts, kind, series = _plate(setup)
    found = machines_of(plate, kind, series)
    spans = _inertias(plate.power, plate.poles)
    return [Motor(m, parts, PRACTICE, PRACTICE, spans, estimated=True) for m in found]


def between(setup: Setup, number: int) -> list[Motor | None]:
    """Return so many motors between those that may have a plate; None where none has it."""
    plate, parts, kind, series = _plate(setup)
    spans = _inertias(plate.power, plate.poles)
    told = plate.slip is not None and kind.by_speed
    found = (
        machine_of(plate, member, kind, series)
        for member in members_between(kind, number, by_speed=told)
    )
    return [m and Motor(m, parts, PRACTICE, PRACTICE, spans, estimated=True) for m in found]


def torque_of_its_kind(setup: Setup, nominal: Motor) -> float:
    """Return the locked torque of the nominal motor by that of motors that start this way.

    1 where it is within a fifth, or where nothing is known of such motors.
    """
    if not nominal.estimated:
        return 1.0
    _, _, kind, series = _plate(setup)
    wanted = kind.members[0].kappa
    share = 1.0 if wanted is None else kappa(nominal.machine, series) / wanted
    return 1.0 if abs(share - 1) <= FIT_KAPPA else share


def slip_of(setup: Setup) -> float:
    """Return the slip of the speed on the plate."""
    return 1 - (setup.rated_speed or 0) * (setup.poles or 4) / (120 * setup.frequency)


def speed_fits(setup: Setup, nominal: Motor) -> bool:
    """Whether a motor of these amps, power and ohms runs about as fast as its plate says."""
    if not nominal.estimated or setup.rated_speed is None or not _plate(setup)[2].by_speed:
        return True
    return abs(nominal.machine.slip / slip_of(setup) - 1) <= NEAR_SLIP


def _plate(setup: Setup) -> tuple[MotorPlate, StartDevice, Kind, Series]:
    values = (setup.nameplate_voltage, setup.locked_rotor_current, setup.rated_load_current)
    volts, locked, rated = (v or 0.0 for v in values)
    method = RELAY if setup.start_method == OWN else setup.start_method
    plate = MotorPlate(
        *(volts, setup.frequency, setup.poles or 4, locked, rated),
        power=(setup.horsepower or 0.0) * WATTS_PER_HP,
        main_resistance=setup.main_winding or 0.0,
        start_resistance=None if method == NONE else setup.start_winding,
        slip=None if setup.rated_speed is None else slip_of(setup),
    )
    parts = device(setup, method, setup.frequency, None)
    kind = {
        NONE: main_winding_alone,
        START_CAPACITOR: capacitor_start,
        RUN_CAPACITOR: run_capacitor,
    }.get(method, resistance_start)()
    locked_in = None if method == NONE else in_series(parts, setup.frequency)
    stays = parts.run_capacitor
    running = None if stays is None else 1 / (2j * math.pi * setup.frequency * stays)
    return plate, parts, kind, Series(locked_in, running)


def _inertias(power: float, poles: int) -> tuple[float, float]:
    """Return the inertia of the rotor alone and that with a heavy load in kg m2, by W and poles."""
    size = max(power, 1.0) * (poles / 4) ** 2
    return ROTOR_ALONE * size, HEAVY * size

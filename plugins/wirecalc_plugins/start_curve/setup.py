"""From what was typed to the case that is simulated, and the faults that are shown beside it."""

from __future__ import annotations

import math
from typing import NamedTuple

from wirecalc import RecordedColumns, Source, Wire, put, read_wire
from wirecalc.trade import conductors

from .machines import MotorModel, both_windings, locked_rotor, swapped
from .start_case import Ptc, ShaftLoad, SimulatedStart, StartDevice, StartSupply
from .start_curve_inputs import NONE, PTC, RELAY, RUN_CAPACITOR

EASY, HARD = 0, 1  # the ends of a load that was not given
SHARES = (25.0, 100.0)  # of rated torque, where none was given: easy and hard; practice
KM_PER_FT = 0.3048 / 1000
WARM_C = 75.0  # of the cord's copper, the unkind end
LOSSY = 0.1  # resistance of a start capacitor over its reactance; practice
WEAK, LOW = 0.5, 0.85  # what a weak capacitor has left, and a low supply
LONG = (100.0, "16 AWG")  # ft and wire of the long cord
PULSATION = 0.8  # of a compressor's mean torque; practice


class Setup(NamedTuple):
    """What was typed, in the declared units."""

    textbook_motor: str | None
    nameplate_voltage: float | None
    frequency: float
    locked_rotor_current: float | None
    rated_load_current: float | None
    horsepower: float | None
    poles: int | None
    rated_speed: int | None
    main_winding: float | None
    start_winding: float | None
    start_method: str
    start_capacitor: float | None
    run_capacitor: float | None
    ptc_resistance: float | None
    load_torque: float | None
    load_curve: str
    inertia: float | None
    voltage_at_rest: float | None
    source_resistance: float | None
    cord: Wire | None
    cord_length: float | None
    closing_angle: float
    duration: float
    variants: list[str] | None
    spread: int | None = None
    fit: RecordedColumns | None = None


class Motor(NamedTuple):
    """A machine with the way it starts, where its values come from, and its inertia in kg m2.

    The inertia is that of the rotor alone and that with a heavy load, the same where it is known.
    """

    machine: MotorModel
    device: StartDevice
    source: Source
    start_source: Source
    inertia: tuple[float, float]
    inertia_known: bool = False
    estimated: bool = False


def rated_torque(own: Motor) -> float:
    """Return the torque at rated slip and volts in N m, with a run capacitor that stays in."""
    machine, run = own.machine, own.device.run_capacitor
    if run is None or machine.start is None:
        return max(machine.rated_torque, 0.0)
    series = 1 / (2j * math.pi * machine.frequency * run)
    return max(both_windings(machine, machine.voltage, machine.slip, series).shaft_torque, 0.0)


def device(setup: Setup, method: str, frequency: float, ohm: float | None) -> StartDevice:
    """Return what is in series with the start winding; `ohm` of a start capacitor, if known."""
    if method == NONE:
        return StartDevice(connected=False)
    run = None if setup.run_capacitor is None else setup.run_capacitor * 1e-6
    if method == RUN_CAPACITOR:
        return StartDevice(run_capacitor=run, cut_out=None)
    if method == PTC:
        return StartDevice(run_capacitor=run, ptc=Ptc(setup.ptc_resistance or 1.0), cut_out=None)
    if method == RELAY:
        return StartDevice()
    farads = (setup.start_capacitor or 0.0) * 1e-6
    lossy = LOSSY / (2 * math.pi * frequency * farads) if ohm is None else ohm
    return StartDevice(capacitor=farads, run_capacitor=run, resistance=lossy)


def ohm_working(setup: Setup) -> str:
    """Put in the ohm of the supply as typed, and the loop of the cord."""
    ohms = [] if setup.source_resistance is None else [put(setup.source_resistance, "ohm")]
    if setup.cord is not None and setup.cord_length is not None:
        per_km = conductors.resistance(setup.cord, WARM_C)
        ohms.append(f"2 x {put(setup.cord_length, 'ft')} x {put(KM_PER_FT)} x {put(per_km, 'ohm')}")
    return " + ".join(ohms)


def standstill_share(own: Motor) -> float:
    """Return the torque at standstill on the plate's volts, as a share of the rated one in %."""
    machine, rated = own.machine, rated_torque(own)
    series = in_series(own.device, machine.frequency) if own.device.connected else None
    locked = locked_rotor(machine, machine.voltage, None if machine.start is None else series)
    return 100 * locked.torque / rated if rated else 0.0


def in_series(parts: StartDevice, frequency: float) -> complex:
    """Return the impedance in series with the start winding at the first moment, in ohm."""
    farads = (parts.capacitor or 0.0) + (parts.run_capacitor or 0.0)
    admittance = 2j * math.pi * frequency * farads
    if parts.ptc is not None:
        return 1 / (1 / parts.ptc.cold + admittance)
    return parts.resistance + (1 / admittance if farads else 0.0)


def case(setup: Setup, own: Motor, end: int = HARD) -> SimulatedStart:
    """Return the case as typed, with the easy or the hard end of a load that was not given."""
    machine = own.machine
    share = SHARES[end] if setup.load_torque is None else setup.load_torque
    torque = rated_torque(own) * share / 100
    fan = setup.load_curve == "fan"
    load = ShaftLoad(
        own.inertia[end] if setup.inertia is None else setup.inertia,
        constant=0.0 if fan else torque,
        quadratic=torque / (1 - machine.slip) ** 2 if fan else 0.0,
        pulsation=PULSATION if setup.load_curve == "compressor" else 0.0,
    )
    ohm = setup.source_resistance or 0.0
    if setup.cord is not None and setup.cord_length is not None:
        ohm += cord_ohm(setup.cord, setup.cord_length)
    volts = machine.voltage if setup.voltage_at_rest is None else setup.voltage_at_rest
    return SimulatedStart(machine, own.device, load, StartSupply(volts, ohm, setup.closing_angle))


def cord_ohm(cord: Wire, length: float) -> float:
    """Return the ohm of a cord there and back, warm, for a length in ft one way."""
    return 2 * length * KM_PER_FT * conductors.resistance(cord, WARM_C)


def with_fault(healthy: SimulatedStart, variant: str) -> SimulatedStart:
    """Return the case with the fault that a variant names."""
    device, supply = healthy.device, healthy.supply
    if variant == "open-start-winding":
        return healthy._replace(device=device._replace(connected=False))
    if variant == "weak-capacitor":
        start, run = (
            None if farads is None else WEAK * farads
            for farads in (device.capacitor, device.run_capacitor)
        )
        return healthy._replace(device=device._replace(capacitor=start, run_capacitor=run))
    if variant == "low-supply":
        return healthy._replace(supply=supply._replace(voltage=LOW * supply.voltage))
    if variant == "long-cord":
        more = cord_ohm(read_wire(LONG[1]), LONG[0])
        return healthy._replace(supply=supply._replace(resistance=supply.resistance + more))
    if variant == "locked-rotor":
        return healthy._replace(load=healthy.load._replace(locked=True))
    if variant == "swapped-leads":
        return healthy._replace(machine=swapped(healthy.machine))
    return healthy

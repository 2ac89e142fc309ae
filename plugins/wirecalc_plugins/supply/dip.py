"""The dip of the volts when a motor starts."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Problem,
    Wire,
    at_least,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    figure,
    put,
)

from ..most_current import on_building_wire
from .dip_inputs import (
    BuildingWire,
    ConductorTemperature,
    Cord,
    CordLength,
    LockedRotorCurrent,
    NameplateVoltage,
    OtherCurrent,
    RatedLoadCurrent,
    RunLength,
    StartPowerFactor,
    VoltageAtRest,
    VoltageAtStart,
)
from .dip_model import LEAST_SHARE, StartOverPath, volts
from .path import loops, missing, nothing_given, path_to, too_much
from .start_volts import LEAST, judge_locked, judge_start, not_above
from .volts_left import plate_limits, volts_that_clash


def _refuse(
    locked_rotor_current: float,
    nameplate_voltage: float,
    voltage_at_rest: float,
    rated_load_current: float | None,
    building_wire: Wire | None,
    run_length: float | None,
    cord: Wire | None,
    cord_length: float | None,
    other_current: float | None,
    voltage_at_start: float | None,
    conductor_temperature: float,
) -> Iterator[Problem]:
    if voltage_at_start is None:
        yield from nothing_given(building_wire, run_length, cord, cord_length)
    if rated_load_current is not None:
        yield from not_above(locked_rotor_current, rated_load_current, "rated load")
    clash = list(volts_that_clash(nameplate_voltage, voltage_at_rest, voltage_at_start))
    yield from clash
    given = building_wire is not None or cord is not None
    if given and not clash and missing(LEAST, building_wire, run_length, cord, cord_length) is None:
        path = path_to(building_wire, run_length, cord, cord_length, conductor_temperature)
        lost = locked_rotor_current * abs(path.whole) + (other_current or 0.0) * abs(path.shared)
        yield from too_much(lost, voltage_at_rest, path)


@calculation(
    part="motor and start",
    words=(
        "lights dim; dim lights; lights dim when it starts; dimming; lights blink; flicker",
        "lights flicker; voltage dip; voltage sag; sag; start voltage; starting voltage",
        "volts during start; voltage drop on start; LRA; locked rotor; starting current",
        "hard start; hard starting; slow start; struggles to start; will not start",
        "low voltage start; brownout; brown out; generator; inverter; solar; long run",
        "weak supply; compressor; motor; AC; air conditioner; soft start; big motor; dims; dips",
        "sags; start sag; volt drop at start; long lead; generator size; bogs down",
        "compressor stalls; blinks; lights dip; pump start; voltage at start; motor bogs",
        "air compressor; lights go dim",
        "what size generator; generator size freezer; generator for a freezer",
        "generator for a fridge; generator for a pump; run on a generator",
        "run a fridge on an inverter; inverter size; off grid; boat; camper; RV; caravan",
        "volts fall when it starts; voltage falls when it starts; volts drop when it starts",
        "voltage drops when motor kicks in; voltage drops at start; falls at start; drops to",
        "lights go down; lights dip when; flickers when it starts; power station; UPS",
        "battery backup",
    ),
    go_on="start it with all on that usually runs beside it; read the volts then",
    chosen=("building_wire",),
    cautions=("live-01", "meter-01", "start-01", "pin-01", "flam-01", "brk-01"),
    not_checked=(
        "that this motor takes the LRA of its plate",
        "the service and the feeder: their own dip comes on top",
        "joints, plug and receptacle: a bad one adds more than the wire",
    ),
    refuse=_refuse,
    renamed={"wire": "building_wire"},
    example_with=("building_wire=14 AWG", "run_length", "rated_load_current"),
)
def dip(
    locked_rotor_current: LockedRotorCurrent,
    nameplate_voltage: NameplateVoltage,
    voltage_at_rest: VoltageAtRest,
    rated_load_current: RatedLoadCurrent = None,
    building_wire: BuildingWire = None,
    run_length: RunLength = None,
    cord: Cord = None,
    cord_length: CordLength = None,
    other_current: OtherCurrent = None,
    voltage_at_start: VoltageAtStart = None,
    start_power_factor: StartPowerFactor = None,
    conductor_temperature: ConductorTemperature = 75.0,
) -> Iterator[Item]:
    """Do the volts stay high enough while the motor starts?

    Bound: V - LRA x path - other x shared wire. Model: (V - other x shared wire) x Z / |Z + path|,
    Z the motor as a constant impedance, plate V / LRA, of power factor 0.5 to 0.8 (practice); other
    loads a resistance. 90 % of the plate is advice, the makers' for a machine that runs; under
    80 %, 64 % of the torque, it fails (practice). A bound above passes; it fails where the kindest
    there may be (cold wire, no reactance, inductive other loads) is below; between, and where only
    the cord is known, the measured voltage_at_start tells, unless it is above the kindest: a slow
    meter, or another's LRA. Meant for induction motors started at the line, not for an inverter, a
    brush motor or a shaded-pole fan; LRA under three times RLA is questioned (practice).

    Inputs: currents in A, volts in V, lengths in ft one way (over 0 to 2000), temperature in C,
    start_power_factor in %. Yields loops, bound, model, torque (with the square of the volts) and
    criteria. Refuses volts of another plug, LRA up to RLA, neither wire, cord nor volts at start.
    Source: tables supply-ranges, nec-ch9-table8, iec-60228, nec-ch9-table9, nec-ampacity,
    iec-ampacity.
    """
    known = building_wire is not None or cord is not None
    unknown = missing(LEAST, building_wire, run_length, cord, cord_length)
    start = StartOverPath(
        voltage_at_rest,
        nameplate_voltage,
        locked_rotor_current,
        other_current or 0.0,
        None if start_power_factor is None else start_power_factor / 100,
    )
    yield from _limits(nameplate_voltage)
    yield from _at_rest(voltage_at_rest, nameplate_voltage)
    yield from judge_locked(
        locked_rotor_current, nameplate_voltage, rated_load_current, "rated_load_current"
    )
    if unknown is not None or not known:
        yield from judge_start(start, None, voltage_at_start)
        if unknown is not None and voltage_at_start is None:
            yield unknown
        return
    if building_wire is not None:
        yield from on_building_wire(building_wire, start.other + (rated_load_current or 0.0))
    path = path_to(building_wire, run_length, cord, cord_length, conductor_temperature)
    yield from loops(path)
    if path.cord is not None:
        yield caution("cord-03")
    yield figure(
        "impedance of the motor",
        start.impedance,
        "ohm",
        working=lambda: f"{put(nameplate_voltage)} V / {put(locked_rotor_current)} A",
    )
    yield from volts(start, path)
    yield from judge_start(start, path, voltage_at_start)


def _at_rest(at_rest: float, plate: float) -> Iterator[Item]:
    """Fail volts at rest that are too few for any running machine; question too many."""
    limits = plate_limits(plate)
    if not at_or_below(limits.low, at_rest):
        yield at_least(
            "volts at rest",
            at_rest,
            limits.low,
            "V",
            source=limits.source,
            origin=Origin.MAKER,
            says="90 % of the plate, and that is asked while it runs",
            action="have the supply looked at first, and read it with the load on: ask supply",
        )
    elif not at_or_below(at_rest, limits.high):
        yield cannot_tell(
            "volts at rest",
            f"{at_rest:.4g} V at rest, and the plate allows {limits.high:.4g} V while it runs",
            measure="read plate and meter again, and the volts while it runs: ask supply",
            needs=("voltage_at_rest",),
            source=limits.source,
        )


def _limits(plate: float) -> Iterator[Item]:
    limits = plate_limits(plate)
    yield figure(
        "advised at a start, 90 % of the plate",
        limits.low,
        "V",
        source=limits.source,
        toward="up",
        working=lambda: f"{limits.low / plate:g} x {put(plate, 'V')}",
    )
    yield figure(
        "least at a start, 80 % of the plate",
        LEAST_SHARE * plate,
        "V",
        source=PRACTICE,
        toward="up",
        working=lambda: f"{LEAST_SHARE} x {put(plate, 'V')}",
    )

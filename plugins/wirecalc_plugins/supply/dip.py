"""The dip of the volts when a motor starts."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Item,
    Nameplate,
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
from wirecalc.rounding import show
from wirecalc.runs import Path
from wirecalc.sources import confirmed

from ..inputs import (
    CONDUCTOR_TEMPERATURE,
    CORD_LENGTH,
    LOCKED_ROTOR,
    NAMEPLATE_VOLTAGE,
    OTHER_CURRENT,
    RUN_LENGTH,
    VOLTAGE_AT_REST,
    VOLTAGE_AT_START,
)
from .dip_model import LEAST_SHARE, Start, volts
from .path import loops, missing, nothing_given, path_to, too_much

SUPPLY_SPAN = (0.7, 1.3)  # share of the plate's volts at rest; more is another plug
STEADY = 1.05  # what the supply itself may rise between two readings

NAME = "volts at start"
_MEND = "no extension cord, nothing else on this wire, or a receptacle nearer to the panel"
_MAKERS = confirmed(
    "makers-volts", "makers' sheets", "volts at the machine, 90 to 110 % of the plate", copies=2
)


def at_another_plug(at_rest: float, plate: float) -> Iterator[Problem]:
    """Refuse volts at rest that do not belong to the plate's."""
    low, high = SUPPLY_SPAN
    if not low * plate <= at_rest <= high * plate:
        outlet = 120 if at_rest < 170 else 240
        asked = f"{plate:g} V plate"
        what = f"{outlet} V outlet for a {asked}? " if at_rest > 90 else ""
        yield Problem(
            "voltage_at_rest",
            f"{at_rest:g} V at rest does not belong to a {asked}",
            f"{what}read plate and meter again, V and mV",
        )


def judge_measured(at_start: float, plate: float) -> Item:
    """Judge the lowest volts that were measured during a start."""
    return at_least(
        NAME,
        at_start,
        LEAST_SHARE * plate,
        "V",
        source=_MAKERS,
        origin=Origin.MAKER,
        action=_MEND,
    )


def judge_start(start: Start, path: Path) -> Item:
    """Judge the lowest volts by where arithmetic says that they may lie."""
    low, limit, kindest = start.lowest(path), start.limit, start.highest(path)
    passes = at_or_below(-low, -limit)
    if passes and path.wire is None:
        return cannot_tell(
            NAME,
            f"{low:.4g} V or more behind the cord, and the building wire before it was not given",
            measure="read gauge and length of the building wire, or measure the lowest volts",
            needs=("wire", "run_length", "voltage_at_start"),
            source=_MAKERS,
        )
    if not passes and at_or_below(limit, kindest):
        high = start.modelled(path, start.factors[0])
        more = f", up to {kindest:.4g} V with a cold wire" if high < limit else ""
        return cannot_tell(
            NAME,
            f"{low:.4g} to {high:.4g} V by arithmetic{more}, and the least is "
            f"{show(limit, 'V', toward='up')}",
            measure="measure the lowest volts at the plug during a start, with all that runs "
            "beside it (voltage_at_start)",
            needs=("voltage_at_start",),
            source=_MAKERS,
        )
    return at_least(
        NAME,
        low if passes else kindest,
        limit,
        "V",
        source=_MAKERS,
        origin=Origin.MAKER,
        says="" if passes else "the most that it may be",
        action=_MEND,
    )


def _refuse(
    locked_rotor_current: float,
    nameplate_voltage: float,
    voltage_at_rest: float,
    rated_load_current: float | None,
    wire: Wire | None,
    run_length: float | None,
    cord: Wire | None,
    cord_length: float | None,
    other_current: float | None,
    voltage_at_start: float | None,
    start_power_factor: float | None,
    conductor_temperature: float,
) -> Iterator[Problem]:
    del start_power_factor
    yield from nothing_given(wire, run_length, cord, cord_length)
    if rated_load_current is not None and locked_rotor_current <= rated_load_current:
        yield Problem(
            "locked_rotor_current",
            f"{locked_rotor_current:g} A is not above the rated load of {rated_load_current:g} A",
            "look at the plate again: LRA is several times RLA",
        )
    clash = list(volts_that_clash(nameplate_voltage, voltage_at_rest, voltage_at_start))
    yield from clash
    if not clash and missing(NAME, wire, run_length, cord, cord_length) is None:
        path = path_to(wire, run_length, cord, cord_length, conductor_temperature)
        lost = locked_rotor_current * abs(path.whole) + (other_current or 0.0) * abs(path.shared)
        yield from too_much(lost, voltage_at_rest, path)


def volts_that_clash(
    plate: float, at_rest: float | None, at_start: float | None
) -> Iterator[Problem]:
    """Refuse volts that do not belong together."""
    if at_rest is None:
        return
    another_plug = list(at_another_plug(at_rest, plate))
    yield from another_plug
    if not another_plug and at_start is not None and at_start > at_rest * STEADY:
        yield Problem(
            "voltage_at_start",
            f"{at_start:g} V during the start is above the {at_rest:g} V at rest",
            "give the lowest reading of the start, and both at the same plug",
        )


@calculation(
    part="motor and start",
    cautions=("live-01", "meter-01", "start-01"),
    not_checked=(
        "that this motor takes the LRA of its plate",
        "the service and the feeder: their own dip comes on top",
        "joints, plug and receptacle: a bad one adds more than the wire",
    ),
    refuse=_refuse,
    example_with=(
        "wire=14 AWG",
        "run_length",
    ),
)
def dip(
    locked_rotor_current: Annotated[float, LOCKED_ROTOR],
    nameplate_voltage: Annotated[float, NAMEPLATE_VOLTAGE],
    voltage_at_rest: Annotated[float, VOLTAGE_AT_REST],
    rated_load_current: Annotated[
        float | None, Nameplate("A", above=0, high=60, typical="1.6 A", text="RLA on the plate")
    ] = None,
    wire: Annotated[Wire | None, "building wire from the panel to the receptacle"] = None,
    run_length: Annotated[float | None, RUN_LENGTH] = None,
    cord: Annotated[Wire | None, "wire of the cord, extension cord included"] = None,
    cord_length: Annotated[float | None, CORD_LENGTH] = None,
    other_current: Annotated[float | None, OTHER_CURRENT] = None,
    voltage_at_start: Annotated[float | None, VOLTAGE_AT_START] = None,
    start_power_factor: Annotated[
        float | None,
        Nameplate("%", low=10, high=100, typical="65 %", text="power factor of the locked rotor"),
    ] = None,
    conductor_temperature: Annotated[float, CONDUCTOR_TEMPERATURE] = 75.0,
) -> Iterator[Item]:
    """Do the volts stay high enough while the motor starts?

    Bound: V - LRA x path - other x shared wire. Model: (V - other x shared wire) x Z / |Z + path|,
    Z the motor as a constant impedance, plate V / LRA, of power factor 0.5 to 0.8 (common
    practice); other loads a resistance.
    All of the band at 90 % of the plate or more passes; it fails where the kindest there may be
    (cold wire, no reactance, inductive other loads) is below; between, and where only the cord
    is known, a measured voltage_at_start tells: it always decides.

    Inputs: currents in A, volts in V, lengths in ft one way (over 0 to 2000), temperature in C,
    start_power_factor in %. Yields loops, bound, model, torque (with the square of the volts) and
    one criterion. Refuses volts of another plug, LRA up to RLA, neither wire nor cord.
    Source: makers' sheets; tables nec-ch9-table8 and iec-60228 (resistance), nec-ch9-table9.
    """
    unknown = missing(NAME, wire, run_length, cord, cord_length)
    start = Start(
        voltage_at_rest,
        nameplate_voltage,
        locked_rotor_current,
        other_current or 0.0,
        None if start_power_factor is None else start_power_factor / 100,
    )
    yield figure(
        "least volts, 90 % of the plate",
        start.limit,
        "V",
        source=_MAKERS,
        toward="up",
        working=lambda: f"{LEAST_SHARE} x {put(nameplate_voltage, 'V')}",
    )
    if voltage_at_start is not None:
        yield judge_measured(voltage_at_start, nameplate_voltage)
    if unknown is not None:
        if voltage_at_start is None:
            yield unknown
        return
    path = path_to(wire, run_length, cord, cord_length, conductor_temperature)
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
    if voltage_at_start is None:
        yield judge_start(start, path)

"""The circuit of a motor or compressor: NEC 430 and 440, apart from the general rules."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    Wire,
    YesNo,
    calculation,
    figure,
    not_checked,
)

from ..inputs import (
    AROUND_WIRE,
    BREAKER,
    MAXIMUM_BREAKER,
    SLIP_A,
    TERMINATION,
    TOGETHER,
    WIRE_CLASS,
)
from .building_wire import Place, wrong_columns
from .motor_checks import MotorLoad, device_of_motor, needed, small_wire, wire_of_motor
from .motor_rules import (
    COMPRESSOR,
    DEVICES,
    INVERSE,
    MOTOR,
    compressor_sizing,
    motor_sizing,
    overload_limits,
    plate_sizing,
    table_current,
    unsized,
)


def _refuse(
    fastened_in_place: bool,
    insulation_class: float = 60.0,
    termination_temperature: float = 60.0,
    rated_load_current: float | None = None,
    branch_selection_current: float | None = None,
    **_: object,
) -> Iterator[Problem]:
    yield from wrong_columns(
        insulation_class=insulation_class, termination_temperature=termination_temperature
    )
    if not fastened_in_place:
        yield Problem(
            "fastened_in_place",
            "what is plugged in is not judged by these rules but by NEC 210.23 and its plate",
            "ask breaker, with the plate's current",
        )
    rla, bcsc = rated_load_current, branch_selection_current
    if rla is not None and bcsc is not None and bcsc < rla:
        yield Problem(
            "branch_selection_current",
            f"{bcsc:g} A is below the rated load of {rla:g} A",
            "look at the plate again: it is never the smaller one",
        )


@calculation(
    part="circuit",
    cautions=("brk-01", "dead-03", "live-01"),
    not_checked=(
        "the overload protector itself: the device guards against short circuit only",
        "anything with a cord and plug (NEC 210.23 and the plate: breaker)",
        "whether this motor is the largest on its circuit",
        "room air conditioners (NEC 440.62)",
        "the code edition in force here",
    ),
    refuse=_refuse,
    example_with=(
        "horsepower",
        "nameplate_voltage",
        "full_load_current",
        "plate_governs=no",
        "breaker",
        "wire=14 AWG",
        "ambient=30 C",
        "conductors=3",
    ),
)
def motor_circuit(
    motor_kind: Annotated[
        str, OneOf((MOTOR, COMPRESSOR), text="open motor, or hermetic (sealed) compressor")
    ],
    fastened_in_place: Annotated[bool, "it is built in or wired in, not plugged in"],
    horsepower: Annotated[
        float | None, Nameplate("hp", above=0, high=10, typical="1/2 hp", text="power on the plate")
    ] = None,
    nameplate_voltage: Annotated[
        float | None,
        Nameplate(
            "V",
            low=12,
            high=600,
            typical="115 V",
            text="volts on the plate",
            goes_with="horsepower",
        ),
    ] = None,
    full_load_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=100, typical="8.6 A", text="FLA on a motor's plate"),
    ] = None,
    plate_governs: Annotated[
        bool | None,
        YesNo(
            "a shaded-pole, PSC fan, low-speed, high-torque or multispeed motor, or part of a "
            "listed appliance",
            goes_with="full_load_current",
        ),
    ] = None,
    cool_running: Annotated[
        bool | None,
        YesNo(
            "its plate shows service factor 1.15 or more, or a rise of 40 C or less",
            goes_with="full_load_current",
        ),
    ] = None,
    rated_load_current: Annotated[
        float | None, Nameplate("A", above=0, high=60, typical="6.4 A", text="RLA on the plate")
    ] = None,
    branch_selection_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=60, typical="7.2 A", text="BCSC on the plate"),
    ] = None,
    minimum_ampacity: Annotated[
        float | None,
        Nameplate(
            "A", above=0, high=100, typical="9 A", text="least circuit ampacity on the plate"
        ),
    ] = None,
    maximum_breaker: Annotated[float | None, MAXIMUM_BREAKER] = None,
    breaker: Annotated[float | None, BREAKER] = None,
    motor_device: Annotated[
        str, OneOf(DEVICES, text="kind of the fuse or breaker", goes_with="breaker")
    ] = INVERSE,
    will_not_start: Annotated[
        bool | None,
        YesNo("it will not start on a device of the first limit", goes_with="breaker"),
    ] = None,
    other_current: Annotated[
        float | None,
        Reading(
            "A",
            low=0,
            high=100,
            typical="3 A",
            text="amps of other loads on the same building wire",
            slip_under=SLIP_A,
        ),
    ] = None,
    wire: Annotated[Wire | None, "wire of the building circuit"] = None,
    insulation_class: Annotated[float, WIRE_CLASS] = 60.0,
    termination_temperature: Annotated[float, TERMINATION] = 60.0,
    ambient: Annotated[float | None, AROUND_WIRE] = None,
    conductors: Annotated[int | None, TOGETHER] = None,
) -> Iterator[Item]:
    """Do wire and breaker of this motor or compressor keep to NEC 430 and 440?

    A motor is sized by the table's current for its horsepower and volts, not its plate (430.6(A),
    Table 430.248), by both where the plate may govern; a compressor by RLA or BCSC, the greater.
    The wire, corrected, carries 125 % of it and the other loads (430.22, 430.24, 440.32). The
    device is at most 250 % (breaker; fuses as Table 430.52), rounded up; on a compressor 175 %,
    rounded down (440.22); beyond that only where it will not start. The plate's largest device
    rules. 240.4(D) does not bind 14 AWG and thicker (240.4(G)).

    Inputs: plate values in hp, V, A; device and other loads in A; wire; temperatures in C. Yields
    what it needs, limits, overload settings, criteria on wire and device. Refuses what is plugged
    in. Source: tables nec-motor-full-load, nec-motor-locked-rotor, nec-motor-devices,
    nec-motor-overload, nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors,
    standard-ratings.
    """
    kind, device, plate = motor_kind, motor_device, full_load_current
    place = Place(int(insulation_class), int(termination_temperature), ambient, conductors)
    if kind == MOTOR:
        sizing = motor_sizing(horsepower, nameplate_voltage, plate, plate_governs)
    else:
        sizing = compressor_sizing(rated_load_current, branch_selection_current)
    yield from _unused(
        kind, horsepower or plate, max(rated_load_current or 0.0, branch_selection_current or 0.0)
    )
    if sizing is None:
        yield unsized(kind)
        yield from overload_limits(kind, None, plate, cool_running)
        return
    yield figure(
        "current that sizes the circuit",
        sizing.amps,
        "A",
        source=sizing.source,
        working=lambda: sizing.working,
    )
    other = plate_sizing(sizing, plate, plate_governs) if kind == MOTOR else None
    others = other_current or 0.0
    load = MotorLoad(kind, device, sizing, other, plate_governs, others, minimum_ampacity)
    yield from needed(load, wire, breaker, maximum_breaker, place)
    if wire is not None:
        yield from wire_of_motor(load, wire, place)
    if breaker is not None:
        yield from device_of_motor(load, breaker, maximum_breaker, will_not_start)
    if breaker is not None and wire is not None:
        yield from small_wire(load, breaker, wire, place)
    yield from overload_limits(kind, sizing.amps, plate, cool_running)
    yield from _locked_rotor(kind, horsepower, nameplate_voltage)


def _unused(kind: str, motor: float | None, compressor: float) -> Iterator[Item]:
    """Say which plate values do not count for this kind."""
    if kind == MOTOR and compressor:
        yield not_checked("RLA and BCSC", "they size compressors, and this is an open motor")
    if kind == COMPRESSOR and motor:
        yield not_checked("horsepower and FLA", "they size motors, and this is a compressor")


def _locked_rotor(kind: str, horsepower: float | None, voltage: float | None) -> Iterator[Item]:
    if kind == MOTOR and horsepower is not None and voltage is not None:
        locked = table_current("nec-motor-locked-rotor", horsepower, voltage)
        if locked is not None:
            name = "locked-rotor current for the disconnect"
            yield figure(name, locked.amps, "A", source=locked.source)

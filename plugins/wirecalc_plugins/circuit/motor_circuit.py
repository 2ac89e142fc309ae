"""The circuit of a motor or compressor: NEC 430 and 440, apart from the general rules."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PLATE,
    PRACTICE,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Problem,
    Reading,
    Wire,
    YesNo,
    answer,
    at_least,
    at_or_below,
    calculation,
    figure,
    not_checked,
)
from wirecalc import (
    conductors as wires,
)
from wirecalc.sources import confirmed

from ..inputs import AROUND_WIRE, BREAKER, MAXIMUM_BREAKER, TERMINATION, TOGETHER, WIRE_CLASS
from .building_wire import Place, building_wire, wrong_columns
from .circuit_size import against_plate
from .motor_rules import (
    CONDUCTOR,
    DEVICES,
    HERMETIC,
    INSTANTANEOUS,
    INVERSE,
    MOTOR,
    Sizing,
    compressor_sizing,
    device_limits,
    judge_device,
    motor_sizing,
    overload_limits,
    table_current,
    unsized,
)

_ONE = confirmed("nec-430-22", "NEC", "430.22", copies=2)
_SEVERAL = confirmed("nec-430-24", "NEC", "430.24", copies=2)
_COMPRESSOR = confirmed("nec-440-32", "NEC", "440.32", copies=1)


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
    example_with=("horsepower", "nameplate_voltage", "breaker", "wire"),
)
def motor_circuit(
    motor_kind: Annotated[str, OneOf((MOTOR, HERMETIC), text="open motor, or hermetic compressor")],
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
            "a shaded-pole or PSC fan motor, or part of a listed appliance",
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
    Table 430.248); a compressor by RLA or branch-circuit selection current, the greater. The wire,
    corrected, carries 125 % of it and the other loads (430.22, 430.24, 440.32). The device is at
    most 250 % (breaker; fuses as Table 430.52), rounded up; on a compressor 175 %, rounded down
    (440.22); beyond that only where it will not start. The plate's largest device rules. 240.4(D)
    does not bind (240.4(G)).

    Inputs: plate values in hp, V, A; device and other loads in A; wire; temperatures in C. Yields
    the current, limits, overload settings, criteria on wire and device. Refuses what is plugged
    in. Source: tables nec-motor-full-load, nec-motor-locked-rotor, nec-motor-devices,
    nec-motor-overload, nec-ampacity and those that correct it, standard-ratings.
    """
    kind, device, plate = motor_kind, motor_device, full_load_current
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
    others = other_current or 0.0
    running = sizing.amps + others
    yield from _needed(kind, sizing, others, minimum_ampacity)
    if kind == HERMETIC or not others:
        yield from device_limits(kind, device, sizing.amps, others)
    if maximum_breaker is not None:
        yield figure("largest device by the plate", maximum_breaker, "A", source=PLATE)
    if wire is not None:
        least = max(_wire_current(sizing, others), minimum_ampacity or 0.0)
        place = Place(int(insulation_class), int(termination_temperature), ambient, conductors)
        yield from building_wire(least, 1.0, None, wire, place)
    if breaker is not None:
        judged = judge_device(kind, device, breaker, sizing.amps, others, will_not_start)
        yield from _device(kind, breaker, maximum_breaker, running, judged)
        if not others:
            yield from _small_wire(breaker, wire)
        if device == INSTANTANEOUS:
            yield not_checked("that the breaker is part of a listed combination", "see its marking")
    yield from overload_limits(kind, sizing.amps, plate, cool_running)
    yield from _locked_rotor(kind, horsepower, nameplate_voltage)


def _unused(kind: str, motor: float | None, compressor: float) -> Iterator[Item]:
    """Say which plate values do not count for this kind."""
    if kind == MOTOR and compressor:
        yield not_checked("RLA and BCSC", "they size compressors, and this is an open motor")
    if kind == HERMETIC and motor:
        yield not_checked("horsepower and FLA", "they size motors, and this is a compressor")


def _locked_rotor(kind: str, horsepower: float | None, voltage: float | None) -> Iterator[Item]:
    if kind == MOTOR and horsepower is not None and voltage is not None:
        locked = table_current("nec-motor-locked-rotor", horsepower, voltage)
        if locked is not None:
            name = "locked-rotor current for the disconnect"
            yield figure(name, locked.amps, "A", source=locked.source)


def _needed(kind: str, sizing: Sizing, others: float, plate: float | None) -> Iterator[Item]:
    source = _SEVERAL if others else _ONE if kind == MOTOR else _COMPRESSOR
    more = f" + {others:.4g} A" if others else ""
    yield figure(
        "current that the wire must carry",
        _wire_current(sizing, others),
        "A",
        source=source,
        working=lambda: f"1.25 x {sizing.amps:.4g} A{more}",
        toward="up",
    )
    if plate is not None:
        yield figure("least ampacity by the plate", plate, "A", source=PLATE)


def _wire_current(sizing: Sizing, others: float) -> float:
    return CONDUCTOR * sizing.amps + others


def _device(
    kind: str, rating: float, largest: float | None, running: float, judged: Item
) -> Iterator[Item]:
    """Judge the device by its plate, which rules on a compressor, else by the code as well."""
    if largest is not None:
        yield against_plate(rating, largest)
    if largest is None or kind == MOTOR:
        yield judged
    yield at_least(
        "device carries the running current",
        rating,
        running,
        "A",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        says="it will trip; no reason to go over the largest device",
        action="look at what the motor draws, then have an electrician choose within the limit",
    )


def _small_wire(rating: float, wire: Wire | None) -> Iterator[Item]:
    """Say why a device over the wire's ampacity may be right, so that nobody mends it."""
    small = None if wire is None else wires.small_conductor_breaker(wire)
    if wire is None or small is None or at_or_below(rating, small.number("breaker_A")):
        return
    yield answer(
        "more amps than on other circuits",
        f"the {small.number('breaker_A'):g} A of NEC 240.4(D) for {wire} does not bind a motor "
        "circuit (240.4(G)): a device within its limit here stays as it is",
        because=["the device guards against short circuit, the overload protector against heat"],
        against=["only with an overload protector that works, and nothing else on the wire"],
    )

"""The circuit of a motor or compressor: NEC 430 and 440, apart from the general rules."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, Problem, Wire, calculation, figure, not_checked

from .building_inputs import AroundWire, InsulationClass, TerminationTemperature, Together
from .motor_checks import MotorLoad, device_of_motor, needed, small_wire, wire_of_motor
from .motor_inputs import (
    BranchSelectionCurrent,
    BuildingWire,
    CoolRunning,
    Device,
    DeviceRating,
    FastenedInPlace,
    FullLoadCurrent,
    Horsepower,
    LargestOnPlate,
    ListedCombination,
    MinimumAmpacity,
    MotorKind,
    OtherCurrent,
    OverloadSetting,
    OverloadTooLow,
    PlateGoverns,
    PlateVolts,
    RatedLoadCurrent,
    WillNotStart,
)
from .motor_overload import combination, judge_relay, judge_setting, overload_limits
from .motor_plate import beside_table, by_plate, contradictions, under_compressor
from .motor_rules import (
    COMPRESSOR,
    INVERSE,
    MOTOR,
    Sizing,
    compressor_sizing,
    motor_sizing,
    plate_sizing,
    table_current,
    unsized,
)
from .wire_place import WirePlace, below, place_of, too_low


def _refuse(
    fastened_in_place: bool,
    insulation_class: float = 60.0,
    termination_temperature: float = 60.0,
    rated_load_current: float | None = None,
    branch_selection_current: float | None = None,
    minimum_ampacity: float | None = None,
    maximum_breaker: float | None = None,
) -> Iterator[Problem]:
    least, most = minimum_ampacity, maximum_breaker
    if least is not None and most is not None and most < least:
        yield Problem(
            "maximum_breaker",
            f"{most:g} A is below the least circuit ampacity of {least:g} A",
            "look at the plate again: are the two exchanged?",
        )
    yield from too_low(
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
    words=(
        "MCA; MOCP; MOP; minimum circuit ampacity; maximum fuse; maximum breaker; max fuse",
        "overcurrent device; RLA; FLA; full load amps; selection current; time delay fuse",
        "motor fuse; motor breaker; breaker size; motor wire size; motor load; compressor breaker",
        "compressor wire; disconnect; service factor; HVAC; AC; AC unit; air conditioner; air con",
        "aircon; condenser; condensing unit; heat pump; mini split; window unit; rooftop unit",
        "pump; well pump; pool pump; blower; furnace; air handler; 430; 440; min circuit amps",
        "max overcurrent; chiller; walk-in cooler; ice machine; split unit; dual element fuse",
        "overload setting; overload heater; contactor; three phase motor; 3 phase; chilled",
        "wire for motor; nameplate MCA; condenser wire; NEC 430; NEC 440; 430.52; 430.22",
        "hp; hp to amps; horsepower to amps; motor amps; motor hp; amps for a motor; 1/3 hp",
        "1/2 hp; 3/4 hp; 1 hp; full load; motor full load; fan motor; compressor circuit",
        "what breaker for a motor; wire for hp; breaker for hp; pump breaker",
        "air compressor breaker; lathe; table saw; motor starter; condenser breaker; mca mop",
        "nameplate mocp; motor wire; motor overload size; DP contactor; contactor size",
    ),
    go_on="fit no larger device than that, then see the volts at a start: dip",
    chosen=("building_wire",),
    cautions=("brk-01", "dead-03", "live-01"),
    not_checked=(
        "the overload protector itself: the device guards against short circuit only",
        "anything with a cord and plug (NEC 210.23 and the plate: breaker)",
        "whether this motor is the largest on its circuit",
        "room air conditioners (NEC 440.62)",
        "the code edition in force here",
    ),
    refuse=_refuse,
    renamed={"wire": "building_wire"},
    example_with=(
        "horsepower",
        "nameplate_voltage",
        "full_load_current",
        "plate_governs=no",
        "breaker",
        "motor_device",
        "building_wire=14 AWG",
        "insulation_class=60 C",
        "termination_temperature=60 C",
        "ambient=30 C",
        "conductors=3",
    ),
)
def motor_circuit(
    motor_kind: MotorKind,
    fastened_in_place: FastenedInPlace,
    horsepower: Horsepower = None,
    nameplate_voltage: PlateVolts = None,
    full_load_current: FullLoadCurrent = None,
    plate_governs: PlateGoverns = None,
    cool_running: CoolRunning = None,
    rated_load_current: RatedLoadCurrent = None,
    branch_selection_current: BranchSelectionCurrent = None,
    minimum_ampacity: MinimumAmpacity = None,
    maximum_breaker: LargestOnPlate = None,
    breaker: DeviceRating = None,
    motor_device: Device = INVERSE,
    will_not_start: WillNotStart = None,
    listed_combination: ListedCombination = None,
    other_current: OtherCurrent = None,
    overload_setting: OverloadSetting = None,
    overload_too_low: OverloadTooLow = None,
    building_wire: BuildingWire = None,
    insulation_class: InsulationClass = 60.0,
    termination_temperature: TerminationTemperature = 60.0,
    ambient: AroundWire = None,
    conductors: Together = None,
) -> Iterator[Item]:
    """Do wire and breaker of this motor or compressor keep to NEC 430 and 440?

    For one motor or hermetic compressor that is built in; not for what is plugged in (breaker), nor
    for several motors behind one device. A motor is sized by the table's current for its
    horsepower and volts, not its plate (430.6(A), Table 430.248), by both where the plate may
    govern; a compressor by RLA or BCSC, the greater; a unit by its plate's least ampacity. The
    wire, corrected, carries 125 % of it and the other loads (430.22, 430.24, 440.32). The device is
    at most 250 % (breaker; fuses as Table 430.52), rounded up; on a compressor 175 %, rounded down
    (440.22); beyond that only where it will not start. The plate's largest device rules. An
    instantaneous breaker serves only as part of a listed combination (Table 430.52). A separate
    overload is at most 125 or 115 % of the plate, 140 or 130 % where it will not start (430.32).
    Inputs: plate values in hp, V, A; device and other loads in A; wire; temperatures in C. Yields
    what it needs, limits, overload settings, criteria on wire and device. Refuses what is plugged
    in. Source: tables nec-motor-full-load, nec-motor-locked-rotor, nec-motor-devices,
    nec-motor-overload, nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors,
    standard-ratings.
    """
    kind, plate = motor_kind, full_load_current
    place = place_of(insulation_class, termination_temperature, ambient, conductors)
    if building_wire is not None:
        yield from below(
            insulation_class=insulation_class, termination_temperature=termination_temperature
        )
    if kind == MOTOR:
        sizing = motor_sizing(horsepower, nameplate_voltage, plate, plate_governs)
    else:
        sizing = compressor_sizing(rated_load_current, branch_selection_current)
    compressor = max(rated_load_current or 0.0, branch_selection_current or 0.0)
    yield from _unused(kind, horsepower or plate or nameplate_voltage, compressor)
    if kind == MOTOR:
        yield from judge_setting(overload_setting, plate, cool_running, overload_too_low)
    else:
        yield from judge_relay(overload_setting, compressor or None)
    others = other_current or 0.0
    least = None if minimum_ampacity is None else minimum_ampacity + others
    if breaker is not None:
        yield from combination(motor_device, listed_combination)
    if sizing is None:
        if least is not None:
            yield from by_plate(least, maximum_breaker, breaker, building_wire, place)
            return
        yield unsized(kind, plate_governs)
        yield from overload_limits(kind, None, plate, cool_running)
        return
    yield _sized_by(sizing)
    yield from contradictions(kind, sizing.amps, minimum_ampacity, maximum_breaker)
    if least is not None and under_compressor(kind, sizing.amps, minimum_ampacity):
        # only what the lesser of the two fails is sure
        yield from by_plate(least, maximum_breaker, breaker, building_wire, place, questioned=True)
        return
    yield from beside_table(horsepower, nameplate_voltage, plate)
    other = plate_sizing(sizing, plate, plate_governs) if kind == MOTOR else None
    load = MotorLoad(kind, motor_device, sizing, other, plate_governs, others, minimum_ampacity)
    yield from needed(load, building_wire, breaker, maximum_breaker, place)
    yield from _judged(load, building_wire, place, breaker, maximum_breaker, will_not_start)
    yield from overload_limits(kind, sizing.amps, plate, cool_running)
    yield from _locked_rotor(kind, horsepower, nameplate_voltage)


def _sized_by(sizing: Sizing) -> Item:
    return figure(
        "current that sizes the circuit",
        sizing.amps,
        "A",
        source=sizing.source,
        working=lambda: sizing.working,
    )


def _judged(
    load: MotorLoad,
    wire: Wire | None,
    place: WirePlace,
    breaker: float | None,
    maximum_breaker: float | None,
    will_not_start: bool | None,
) -> Iterator[Item]:
    """Judge what is there of wire and device, in A."""
    if wire is not None:
        yield from wire_of_motor(load, wire, place)
    if breaker is not None:
        yield from device_of_motor(load, breaker, maximum_breaker, will_not_start)
    if breaker is not None and wire is not None:
        yield from small_wire(load, breaker, wire, place)


def _unused(kind: str, motor: float | None, compressor: float) -> Iterator[Item]:
    """Say which plate values do not count for this kind."""
    if kind == MOTOR and compressor:
        yield not_checked("RLA and BCSC", "they size compressors, and this is an open motor")
    if kind == COMPRESSOR and motor:
        yield not_checked("horsepower, volts and FLA", "they size motors, and this is a compressor")


def _locked_rotor(kind: str, horsepower: float | None, voltage: float | None) -> Iterator[Item]:
    if kind == MOTOR and horsepower is not None and voltage is not None:
        locked = table_current("nec-motor-locked-rotor", horsepower, voltage)
        if locked is not None:
            name = "locked-rotor current for the disconnect"
            yield figure(name, locked.amps, "A", source=locked.source)

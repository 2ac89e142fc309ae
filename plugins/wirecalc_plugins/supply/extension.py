"""The extension cord: whether the maker lets one be used, and whether this one will do."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    Item,
    Origin,
    Problem,
    Wire,
    at_most,
    calculation,
    caution,
    not_checked,
)
from wirecalc.trade.wire_runs import WirePath

from ..circuit.cord_load import cord_load
from ..most_current import on_building_wire
from .cord_volts import cord_dip, cord_drop
from .extension_inputs import (
    BuildingWire,
    ConductorTemperature,
    CordAmbient,
    CordConductors,
    CordRating,
    Current,
    ExtensionCord,
    ExtensionLength,
    Grounding,
    HasMotor,
    LockedRotorCurrent,
    MakerAllows,
    MotorStart,
    NameplateVoltage,
    OtherCurrent,
    Protection,
    RunLength,
    VoltageAtRest,
    VoltageAtStart,
)
from .makers_word import cord_cautions, makers_word
from .path import DROP, loops, missing, path_to, running_drop, too_much
from .start_volts import LEAST, judge_locked, not_above
from .volts_left import volts_that_clash


def _refuse(
    extension_cord: Wire,
    extension_length: float,
    current: float,
    nameplate_voltage: float | None,
    locked_rotor_current: float | None,
    voltage_at_rest: float | None,
    voltage_at_start: float | None,
    building_wire: Wire | None,
    run_length: float | None,
    other_current: float | None,
    conductor_temperature: float,
    has_motor: bool | None,
    protection: str | None,
) -> Iterator[Problem]:
    if protection == "class-iii":
        yield Problem(
            "protection",
            "a machine fed by extra-low volts hangs on its supply unit, and that on the cord",
            "give the class of the supply unit that is plugged into the cord",
        )
    if not extension_cord.stranded:
        yield Problem(
            "extension_cord",
            "solid wire is that of a building, and no flexible cord is made of it",
            "read the print on the cord, or measure a strand",
        )
    if locked_rotor_current is not None:
        yield from not_above(locked_rotor_current, current, "running current")
    if locked_rotor_current is not None and has_motor is False:
        yield Problem("has_motor", "no motor, and an LRA on the plate", "look at the plate again")
    if nameplate_voltage is None:
        return
    clash = list(volts_that_clash(nameplate_voltage, voltage_at_rest, voltage_at_start))
    yield from clash
    runs = building_wire, run_length, extension_cord, extension_length
    if not clash and missing(DROP, *runs) is None:
        path = path_to(*runs, conductor_temperature)
        lost = running_drop(current, other_current or 0.0, path)
        yield from too_much(lost, nameplate_voltage / 2, path, "extension")


@calculation(
    part="circuit",
    words=(
        "extension; extension cord; extension lead; ext cord; lead; cable reel; drop cord",
        "trailing lead; cord gauge; cord size; long cord; SJT; SJOOW; flex; heavy duty cord",
        "power strip; multi-plug; daisy chain; adaptor; warm extension; hot cord; cord hot",
        "power tool; generator; garage freezer; temporary power; adapter; drum; cable drum; reel",
        "caravan; hook-up lead; mower; garden; outdoor; jobsite; length of cord; coiled",
        "cord too long; lead too thin; cord reel; line cord; heater on an extension",
        "replacement cord",
        "cord for a freezer; cord for; cord length; cord gauge for; foot cord; ft cord",
        "metre lead; reel 1.5; coiled cord; cord warm; cord gets hot; long lead",
        "fridge on extension; lead for heater; lead for a heater; drum lead; outdoor lead; 50 ft",
        "100 ft; 25 ft; hedge trimmer; welder; compressor on extension; adaptor lead; gang lead",
        "four way; multiway; surge strip",
    ),
    go_on="uncoil all of it, run the machine, look at both plugs after an hour",
    chosen=("extension_cord", "extension_length"),
    cautions=("live-02", "meter-01", "cord-04"),
    not_checked=(
        "the cord itself: cuts, crushed or warm places, loose plug",
        "water, sun and what may run over it",
    ),
    refuse=_refuse,
    renamed={
        "wire": "building_wire",
        "cord": "extension_cord",
        "cord_length": "extension_length",
        "ambient": "cord_ambient",
    },
    example_with=(
        "extension_cord=14 AWG",
        "maker_allows=three-wire grounding",
        "grounding",
        "cord_rating",
        "cord_conductors",
        "cord_ambient=30 C",
        "nameplate_voltage",
        "building_wire=14 AWG",
        "run_length",
        "has_motor=no",
    ),
)
def extension(
    extension_cord: ExtensionCord,
    extension_length: ExtensionLength,
    current: Current,
    maker_allows: MakerAllows = None,
    grounding: Grounding = None,
    cord_rating: CordRating = None,
    cord_conductors: CordConductors = None,
    cord_ambient: CordAmbient = None,
    nameplate_voltage: NameplateVoltage = None,
    has_motor: HasMotor = None,
    locked_rotor_current: LockedRotorCurrent = None,
    voltage_at_rest: VoltageAtRest = None,
    voltage_at_start: VoltageAtStart = None,
    building_wire: BuildingWire = None,
    run_length: RunLength = None,
    other_current: OtherCurrent = None,
    conductor_temperature: ConductorTemperature = 75.0,
    motor_start: MotorStart = None,
    protection: Protection = None,
) -> Iterator[Item]:
    """May this extension cord feed this machine?

    The maker's word comes first: a sheet that allows none ends it. Sheets that accept one ask for
    a three-wire grounding cord of 15 A or more; where this maker's own allows any, the 15 A of
    the others are advice. The cord carries the load by NEC Table 400.5(A)(1) and by its own
    rating. Drop, and dip unless it has no motor, or one that an inverter or brushes start, are
    judged as by `drop` and `dip`; what they need and was not given leaves it untold. Meant for a
    machine with a plug on an outlet of a house.

    Inputs: extension_cord, extension_length in ft one way (over 0 to 2000), currents in A,
    maker_allows, grounding, cord_rating in A, cord_ambient and conductor_temperature in C, volts in
    V, has_motor, motor_start, protection, the building wire. Yields loops, drop and dip, and one
    criterion a question. Refuses volts of another plug. Source: makers' sheets; tables cords,
    supply-ranges, nec-ch9-table8, nec-ch9-table9, iec-60228, nec-ampacity, iec-ampacity.
    """
    yield from cord_cautions(maker_allows)
    if voltage_at_rest is not None or voltage_at_start is not None:
        yield caution("live-01")
    yield from makers_word(maker_allows, grounding, cord_rating, protection)
    yield cord_load(current, extension_cord, cord_conductors, cord_ambient, air="cord_ambient")
    if cord_rating is not None:
        yield at_most(
            "load against the printed rating",
            current,
            cord_rating,
            "A",
            source=MAKER,
            origin=Origin.MAKER,
            action="take the extension cord away; it is too light for this load",
        )
    other = other_current or 0.0
    if building_wire is not None:
        yield from on_building_wire(building_wire, current + other)
    runs = building_wire, run_length, extension_cord, extension_length
    path: WirePath | Item | None = missing(DROP, *runs)
    if path is None:
        path = path_to(*runs, conductor_temperature)
        yield from loops(path)
    yield from cord_drop(path, current, other, nameplate_voltage, voltage_at_rest)
    if locked_rotor_current is not None:
        yield from judge_locked(
            locked_rotor_current, nameplate_voltage or 0.0, current, "locked_rotor_current"
        )
    no_surge = motor_start in ("inverter", "brush motor") and locked_rotor_current is None
    if no_surge and voltage_at_start is None:
        yield not_checked(LEAST, f"{motor_start}: no LRA on the plate, no such start")
    elif has_motor is not False or voltage_at_start is not None:
        path = missing(LEAST, *runs) or path
        given = {"locked_rotor_current": locked_rotor_current}
        given |= {"nameplate_voltage": nameplate_voltage, "voltage_at_rest": voltage_at_rest}
        yield from cord_dip(path, given, other, voltage_at_start, has_motor)

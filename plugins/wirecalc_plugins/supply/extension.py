"""The extension cord: whether the maker lets one be used, and whether this one will do."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    MAKER,
    PRACTICE,
    Count,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Problem,
    Reading,
    Wire,
    asked,
    assumed,
    at_most,
    calculation,
    extra,
    may_be_absent,
    not_checked,
)
from wirecalc.runs import Path

from ..circuit.cord_load import CORDS, cord_load
from ..inputs import (
    CONDUCTOR_TEMPERATURE,
    LOAD_ON_A_RUN,
    LOCKED_ROTOR,
    NAMEPLATE_VOLTAGE,
    OTHER_CURRENT,
    RUN_LENGTH,
    VOLTAGE_AT_REST,
    VOLTAGE_AT_START,
)
from ..most_current import on_building_wire
from .cord_volts import cord_dip, cord_drop
from .makers_word import ALLOWS, cord_cautions, makers_word
from .path import DROP, loops, missing, path_to, running_drop, too_much
from .start_volts import LEAST, judge_locked, not_above
from .volts_left import volts_that_clash

STARTS = ("direct", "inverter", "brush motor")
_MAY = "maker_allows=three-wire grounding|yes|not stated"


def _refuse(
    cord: Wire,
    cord_length: float,
    current: float,
    nameplate_voltage: float | None,
    locked_rotor_current: float | None,
    voltage_at_rest: float | None,
    voltage_at_start: float | None,
    wire: Wire | None,
    run_length: float | None,
    other_current: float | None,
    conductor_temperature: float,
    has_motor: bool | None,
    **_others: object,
) -> Iterator[Problem]:
    if not cord.stranded:
        yield Problem(
            "cord",
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
    if not clash and missing(DROP, wire, run_length, cord, cord_length) is None:
        path = path_to(wire, run_length, cord, cord_length, conductor_temperature)
        lost = running_drop(current, other_current or 0.0, path)
        yield from too_much(lost, nameplate_voltage / 2, path)


@calculation(
    part="circuit",
    cautions=("cord-04",),
    not_checked=(
        "the cord itself: cuts, crushed or warm places, loose plug",
        "water, sun and what may run over it",
    ),
    refuse=_refuse,
    example_with=(
        "cord=14 AWG",
        "maker_allows=three-wire grounding",
        "grounding",
        "cord_rating",
        "cord_conductors",
        "ambient=30 C",
        "nameplate_voltage",
        "wire=14 AWG",
        "run_length",
        "has_motor=no",
    ),
)
def extension(
    cord: Annotated[Wire, "wire of the extension cord"],
    cord_length: Annotated[
        float,
        Reading("ft", above=0, high=2000, typical="50 ft", text="length of the cord, one way"),
    ],
    current: Annotated[float, LOAD_ON_A_RUN],
    maker_allows: Annotated[
        str | None, OneOf(ALLOWS, text="what the machine's sheet says of extension cords"), asked()
    ] = None,
    grounding: Annotated[
        bool | None,
        "it is a three-wire grounding cord",
        asked(when="maker_allows=three-wire grounding|not stated"),
        asked(when="maker_allows=yes and protection!=class-ii"),
    ] = None,
    cord_rating: Annotated[
        float | None,
        Nameplate("A", low=1, high=60, typical="15 A", text="rating printed on the cord"),
        asked(when=_MAY),
    ] = None,
    cord_conductors: Annotated[
        int | None,
        Count("wires of the cord that carry current", low=2, high=3),
        assumed("2", source=CORDS, why="3, which carries less"),
    ] = None,
    ambient: Annotated[
        float | None,
        Reading("C", low=-40, high=90, typical="25 C", text="temperature around the cord"),
        asked(),
    ] = None,
    nameplate_voltage: Annotated[float | None, NAMEPLATE_VOLTAGE, asked()] = None,
    has_motor: Annotated[
        bool | None,
        "the machine is driven by a motor",
        asked(when="not locked_rotor_current and not voltage_at_start"),
    ] = None,
    locked_rotor_current: Annotated[
        float | None,
        LOCKED_ROTOR,
        asked(when="has_motor=yes and motor_start=direct and not voltage_at_start"),
        extra("a start is asked for where there is a motor that has one"),
    ] = None,
    voltage_at_rest: Annotated[
        float | None,
        VOLTAGE_AT_REST,
        asked(when="locked_rotor_current and not voltage_at_start"),
        extra("a run that takes over 10 % of the plate's volts asks for it"),
    ] = None,
    voltage_at_start: Annotated[
        float | None,
        VOLTAGE_AT_START,
        extra("all that arithmetic allows is tried, and where that does not tell it is asked for"),
    ] = None,
    wire: Annotated[
        Wire | None,
        "building wire from the panel to the receptacle",
        asked("it takes its part of the volts before the cord"),
    ] = None,
    run_length: Annotated[float | None, RUN_LENGTH, asked()] = None,
    other_current: Annotated[
        float | None, OTHER_CURRENT, may_be_absent("nothing else runs on this wire")
    ] = None,
    conductor_temperature: Annotated[
        float, CONDUCTOR_TEMPERATURE, assumed("20 C", source=PRACTICE)
    ] = 75.0,
    motor_start: Annotated[
        str | None,
        OneOf(STARTS, text="how its motor starts: at the line, by an inverter, with brushes"),
        extra("a motor without an LRA on its plate asks for it"),
    ] = None,
    protection: Annotated[
        str | None,
        OneOf(("class-i", "class-ii"), text="class-i: ground pin; class-ii: double square, no pin"),
        extra("a ground pin is taken, which needs the ground of the cord"),
    ] = None,
) -> Iterator[Item]:
    """May this extension cord feed this machine?

    The maker's word comes first: a sheet that allows none ends it. Sheets that accept one ask for
    a three-wire grounding cord of 15 A or more; where this maker's own allows any, the 15 A of
    the others are advice. The cord carries the load by NEC Table 400.5(A)(1) and by its own
    rating. Drop, and dip unless it has no motor, or one that an inverter or brushes start, are
    judged as by `drop` and `dip`; what they need and was not given leaves it untold. Meant for a
    machine with a plug on an outlet of a house.

    Inputs: cord, cord_length in ft one way (over 0 to 2000), currents in A, maker_allows,
    grounding, cord_rating in A, ambient and conductor_temperature in C, volts in V, has_motor,
    motor_start, protection, the building wire. Yields loops, drop and dip, and one criterion a
    question. Refuses volts of another plug. Source: makers' sheets; tables cords, supply-ranges,
    nec-ch9-table8, nec-ch9-table9, iec-60228, nec-ampacity, iec-ampacity.
    """
    yield from cord_cautions(maker_allows)
    yield from makers_word(maker_allows, grounding, cord_rating, protection)
    yield cord_load(current, cord, cord_conductors, ambient)
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
    if wire is not None:
        yield from on_building_wire(wire, current + other)
    path: Path | Item | None = missing(DROP, wire, run_length, cord, cord_length)
    if path is None:
        path = path_to(wire, run_length, cord, cord_length, conductor_temperature)
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
        path = missing(LEAST, wire, run_length, cord, cord_length) or path
        given = {"locked_rotor_current": locked_rotor_current}
        given |= {"nameplate_voltage": nameplate_voltage, "voltage_at_rest": voltage_at_rest}
        yield from cord_dip(path, given, other, voltage_at_start, has_motor)

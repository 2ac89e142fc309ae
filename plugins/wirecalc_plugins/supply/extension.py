"""The extension cord: whether the maker lets one be used, and whether this one will do."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    MAKER,
    Caution,
    Confidence,
    Count,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Problem,
    Reading,
    Source,
    Wire,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    caution,
    figure,
    put,
    requires,
)
from wirecalc.runs import Path
from wirecalc.sources import confirmed

from ..circuit.cord_load import cord_load
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
from .dip import NAME as DIP
from .dip import judge_measured, judge_start, volts_that_clash
from .dip_model import Start, volts
from .path import DROP, judge_drop, loops, missing, path_to, running_drop, too_much

ALLOWS = ("no", "three-wire grounding", "yes", "not stated")
_ALLOWED = ("three-wire grounding", "yes")
LEAST_RATING_A = 15.0  # printed on the cord; makers' sheets that accept one

_SHEETS = confirmed(
    "makers-cords", "makers' sheets", "extension cords: one allows none, three on conditions", 4
)
_SHEET = Source("maker-sheet", "the maker's sheet", confidence=Confidence.TYPED)
_NONE = (
    "take the extension cord away and use no other; then move the machine to a receptacle, "
    "or have an electrician add one"
)
_OTHER = (
    "take the extension cord away; only a three-wire grounding appliance cord of 15 A or more "
    "will do"
)
_LAID = Caution(
    "cord-laid",
    "One that stays lies uncoiled, not under a rug or through a doorway. No adapter, and no second "
    "cord.",
    "maker sheet",
    "stop",
    "an extension cord is in use",
)
_AWAY = Caution(
    "cord-away",
    "Take it away: no cord will do, however thick or short, and no adapter.",
    "maker sheet",
    "stop",
    "an extension cord that the maker does not allow",
)


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
    if locked_rotor_current is not None and locked_rotor_current <= current:
        yield Problem(
            "locked_rotor_current",
            f"{locked_rotor_current:g} A is not above the running current of {current:g} A",
            "look at the plate again: LRA is several times the running current",
        )
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
        str | None, OneOf(ALLOWS, text="what the machine's sheet says of extension cords")
    ] = None,
    grounding: Annotated[bool | None, "it is a three-wire grounding cord"] = None,
    cord_rating: Annotated[
        float | None,
        Nameplate("A", low=1, high=60, typical="15 A", text="rating printed on the cord"),
    ] = None,
    cord_conductors: Annotated[
        int | None, Count("wires of the cord that carry current", low=2, high=3)
    ] = None,
    ambient: Annotated[
        float | None,
        Reading("C", low=-40, high=90, typical="25 C", text="temperature around the cord"),
    ] = None,
    nameplate_voltage: Annotated[float | None, NAMEPLATE_VOLTAGE] = None,
    has_motor: Annotated[bool | None, "the machine is driven by a motor"] = None,
    locked_rotor_current: Annotated[float | None, LOCKED_ROTOR] = None,
    voltage_at_rest: Annotated[float | None, VOLTAGE_AT_REST] = None,
    voltage_at_start: Annotated[float | None, VOLTAGE_AT_START] = None,
    wire: Annotated[Wire | None, "building wire from the panel to the receptacle"] = None,
    run_length: Annotated[float | None, RUN_LENGTH] = None,
    other_current: Annotated[float | None, OTHER_CURRENT] = None,
    conductor_temperature: Annotated[float, CONDUCTOR_TEMPERATURE] = 75.0,
) -> Iterator[Item]:
    """May this extension cord feed this machine?

    The maker's word comes first: a sheet that allows none ends it. Sheets that accept one ask for
    a three-wire grounding cord of 15 A or more. The cord carries the load by NEC Table
    400.5(A)(1) and by its own rating. Drop, and dip unless it has no motor, are judged as by
    `drop` and `dip`; what they need and was not given leaves it untold.

    Inputs: cord, cord_length in ft one way (over 0 to 2000), currents in A, maker_allows,
    grounding, cord_rating in A, ambient and conductor_temperature in C, volts in V, has_motor,
    the building wire. Yields loops, drop and dip, and one criterion a question. Refuses volts of
    another plug, half of the volts lost. Source: makers' sheets; tables cords, nec-ch9-table8,
    nec-ch9-table9, iec-60228.
    """
    yield from _cautions(maker_allows)
    yield from _makers_word(maker_allows, grounding, cord_rating)
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
    path: Path | Item | None = missing(DROP, wire, run_length, cord, cord_length)
    if path is None:
        path = path_to(wire, run_length, cord, cord_length, conductor_temperature)
        yield from loops(path)
    yield from _drop(path, current, other, nameplate_voltage)
    if voltage_at_start is not None and nameplate_voltage is not None:
        yield judge_measured(voltage_at_start, nameplate_voltage)
    elif has_motor is not False or voltage_at_start is not None:
        path = missing(DIP, wire, run_length, cord, cord_length) or path
        given = {"locked_rotor_current": locked_rotor_current}
        given |= {"nameplate_voltage": nameplate_voltage, "voltage_at_rest": voltage_at_rest}
        yield from _dip(path, given, other, has_motor)


def _cautions(allows: str | None) -> Iterator[Item]:
    """Yield what to do with the cord: never both to take it away and how to lay it."""
    if allows == "no":
        yield _AWAY
        return
    yield _LAID
    if allows not in _ALLOWED:
        yield caution("cord-03")


def _makers_word(
    allows: str | None, grounding: bool | None, rating: float | None
) -> Iterator[Item]:
    name = "the maker's word on extension cords"
    if allows is None:
        yield cannot_tell(
            name,
            "one sheet allows none, three allow one on conditions",
            measure="read the maker's sheet of this machine",
            needs=("maker_allows",),
            source=_SHEETS,
        )
    else:
        yield requires(
            name,
            allows in _ALLOWED,
            says="the maker's sheet allows none, and one is there"
            if allows == "no"
            else "the maker's sheet says nothing of it, and makers advise against it",
            source=_SHEETS if allows == "not stated" else _SHEET,
            origin=Origin.MAKER,
            advisory=allows == "not stated",
            action=_NONE,
        )
    asked = allows in ("three-wire grounding", "yes", "not stated")
    if grounding is not None or asked:
        yield _grounding(grounding)
    if rating is not None or asked:
        yield _rating(rating)


def _grounding(grounding: bool | None) -> Item:
    name = "three-wire grounding cord"
    if grounding is None:
        return cannot_tell(
            name,
            "sheets that accept a cord accept only one with a ground",
            measure="look at plug and connector: three blades",
            needs=("grounding",),
            source=_SHEETS,
        )
    return requires(
        name,
        grounding,
        says="it has no ground",
        source=_SHEETS,
        origin=Origin.MAKER,
        action=_OTHER,
    )


def _rating(rating: float | None) -> Item:
    name = "rating of the cord"
    if rating is None:
        return cannot_tell(
            name,
            f"sheets that accept a cord ask for {LEAST_RATING_A:g} A or more",
            measure="read the rating on the tag or the jacket of the cord",
            needs=("cord_rating",),
            source=_SHEETS,
        )
    return at_least(
        name, rating, LEAST_RATING_A, "A", source=_SHEETS, origin=Origin.MAKER, action=_OTHER
    )


def _drop(path: Path | Item, current: float, other: float, plate: float | None) -> Iterator[Item]:
    if not isinstance(path, Path):
        yield path
        return
    lost = running_drop(current, other, path)
    more = f" + {put(other, 'A')} x {put(path.shared.real, 'ohm')}" if other else ""
    yield figure(
        "drop" if path.wire is not None else "drop in the cord",
        lost,
        "V",
        working=lambda: f"{put(current, 'A')} x {put(path.whole.real, 'ohm')}{more}",
    )
    needs = [] if plate is not None else ["nameplate_voltage"]
    needs += [] if path.wire is not None else ["wire", "run_length"]
    if plate is None or needs:
        yield cannot_tell(
            DROP,
            f"{lost:.3g} V"
            + (" and the building wire's" if path.wire is None else "")
            + (", of a plate that was not given" if plate is None else ""),
            measure="read the volts on the plate, and gauge and length of the building wire",
            needs=needs,
        )
    else:
        yield judge_drop(lost, plate)


def _dip(
    path: Path | Item, given: dict[str, float | None], other: float, has_motor: bool | None
) -> Iterator[Item]:
    locked_rotor, plate, at_rest = given.values()
    if not isinstance(path, Path):
        yield path
    elif locked_rotor is None or plate is None or at_rest is None:
        left_out = [name for name, value in given.items() if value is None]
        yield cannot_tell(
            DIP,
            f"{', '.join(left_out)} not given"
            + ("" if has_motor else "; a machine without a motor has no start"),
            measure="read the plate, and the volts at the plug with nothing running",
            needs=[*left_out, *([] if has_motor else ["has_motor"])],
        )
    else:
        start = Start(at_rest, plate, locked_rotor, other)
        yield from volts(start, path)
        yield judge_start(start, path)

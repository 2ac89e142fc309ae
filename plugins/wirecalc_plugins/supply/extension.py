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
    figure,
    requires,
)
from wirecalc.runs import Path
from wirecalc.sources import confirmed

from ..circuit.cord_load import cord_load
from ..inputs import (
    CONDUCTOR_TEMPERATURE,
    LOCKED_ROTOR,
    NAMEPLATE_VOLTAGE,
    OTHER_CURRENT,
    RUN_LENGTH,
    VOLTAGE_AT_REST,
    VOLTAGE_AT_START,
)
from .dip import NAME as DIP
from .dip import Start, judge_measured, judge_start, volts, volts_that_clash
from .path import DROP, judge_drop, loops, missing, path_to, running_drop, too_much

ALLOWS = ("no", "three-wire grounding", "yes", "not stated")
LEAST_RATING_A = 15.0  # printed on the cord; makers' sheets that accept one

_SHEETS = confirmed(
    "makers-cords", "makers' sheets", "extension cords: one allows none, three on conditions", 4
)
_SHEET = Source("maker-sheet", "the maker's sheet", confidence=Confidence.TYPED)
_NONE = "take the cord away; move the machine, or have an electrician add a receptacle"
_OTHER = "take the cord away; only a three-wire grounding appliance cord of 15 A or more will do"
_LAID = Caution(
    "cord-laid",
    "Lay it out uncoiled, not under a rug or through a doorway. No adapter, and no second cord.",
    "maker sheet",
    "stop",
    "an extension cord is in use",
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
    **_others: object,
) -> Iterator[Problem]:
    if locked_rotor_current is not None and locked_rotor_current <= current:
        yield Problem(
            "locked_rotor_current",
            f"{locked_rotor_current:g} A is not above the running current of {current:g} A",
            "look at the plate again: LRA is several times the running current",
        )
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
    cautions=("cord-03", "cord-04"),
    not_checked=(
        "the cord itself: cuts, crushed or warm places, loose plug",
        "water, sun and what may run over it",
    ),
    refuse=_refuse,
    example_with=("maker_allows",),
)
def extension(
    cord: Annotated[Wire, "wire of the extension cord"],
    cord_length: Annotated[
        float,
        Reading("ft", above=0, high=2000, typical="50 ft", text="length of the cord, one way"),
    ],
    current: Annotated[
        float, Reading("A", above=0, high=200, typical="1.6 A", text="line current of the load")
    ],
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
    400.5(A)(1) and by its own rating; drop and dip are judged as by `drop` and `dip`, where
    plate volts, volts at rest and locked-rotor current are given.

    Inputs: cord, cord_length in ft one way (over 0 to 2000), currents in A, maker_allows,
    grounding, cord_rating in A, ambient and conductor_temperature in C, volts in V, the building
    wire. Yields loops, drop and dip, and one criterion a question. Refuses volts of another plug
    and half of the volts lost. Source: makers' sheets; tables cords, nec-ch9-table8 and -table9.
    """
    yield _LAID
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
            action="take the cord away; it is too light for this load",
        )
    path = path_to(wire, run_length, cord, cord_length, conductor_temperature)
    other = other_current or 0.0
    unknown = missing(DROP, wire, run_length, cord, cord_length)
    if unknown is None:
        yield from loops(path)
    if nameplate_voltage is not None:
        yield from _drop(unknown, current, other, path, nameplate_voltage)
    if voltage_at_start is not None and nameplate_voltage is not None:
        yield judge_measured(voltage_at_start, nameplate_voltage)
    elif locked_rotor_current is not None or voltage_at_start is not None:
        unknown = missing(DIP, wire, run_length, cord, cord_length)
        volts_given = {"nameplate_voltage": nameplate_voltage, "voltage_at_rest": voltage_at_rest}
        yield from _dip(unknown, path, volts_given, locked_rotor_current or 0.0, other)


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
            allows in ("yes", "three-wire grounding"),
            says="the maker's sheet allows none"
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


def _drop(
    unknown: Item | None, current: float, other: float, path: Path, plate: float
) -> Iterator[Item]:
    if unknown is not None:
        yield unknown
        return
    lost = running_drop(current, other, path)
    yield figure("drop", lost, "V")
    yield judge_drop(lost, plate)


def _dip(
    unknown: Item | None,
    path: Path,
    volts_given: dict[str, float | None],
    locked_rotor: float,
    other: float,
) -> Iterator[Item]:
    plate, at_rest = volts_given.values()
    if unknown is not None:
        yield unknown
    elif plate is None or at_rest is None:
        left_out = [name for name, value in volts_given.items() if value is None]
        yield cannot_tell(
            DIP,
            f"{' and '.join(left_out)} not given",
            measure="read the plate, and the volts at the plug with nothing running",
            needs=left_out,
        )
    else:
        start = Start(at_rest, plate, locked_rotor, other)
        yield from volts(start, path)
        yield judge_start(start, path)

"""What may take the place of a thermal cut-off."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Item,
    Nameplate,
    OneOf,
    Problem,
    YesNo,
    asked,
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    may_be_absent,
    put,
    tables,
)

from ..inputs_joint import PLACE
from .cutoff_place import TEXTS, cause, holds, opens_there, pair

_LOWER = "what is not known counts as lower"
_SAME = "get the cut-off that the maker of the machine names"


def _functioning(whose: str) -> Nameplate:
    text = f"functioning temperature marked on the {whose} cut-off"
    return Nameplate("C", low=50, high=320, typical="130 C", text=text)


def _current(whose: str) -> Nameplate:
    text = f"current marked on the {whose} cut-off"
    return Nameplate("A", above=0, high=60, typical="15 A", text=text)


def _voltage(whose: str) -> Nameplate:
    text = f"volts marked on the {whose} cut-off"
    return Nameplate("V", low=12, high=600, typical="250 V", text=text)


def _refuse(
    old_functioning_temperature: float,
    new_functioning_temperature: float,
    old_cutoff_current: float | None = None,
    new_cutoff_current: float | None = None,
    old_cutoff_voltage: float | None = None,
    new_cutoff_voltage: float | None = None,
    holding_temperature: float | None = None,
    place_temperature: float | None = None,
    cause_found: bool | None = None,
    paired_part: str | None = None,
) -> Iterator[Problem]:
    if holding_temperature is not None and at_or_below(
        new_functioning_temperature, holding_temperature
    ):
        yield Problem(
            "holding_temperature",
            f"{holding_temperature:g} C is not below the new cut-off's functioning temperature of "
            f"{new_functioning_temperature:g} C",
            "the holding temperature is the lower of the two on the maker's sheet",
        )


@calculation(
    part="heating element",
    words=(
        "thermal fuse; thermal cutoff; thermal cut-out; TCO; thermal link; temperature fuse",
        "one-shot thermostat; high limit; hi-limit; limit switch; limit thermostat",
        "overheat thermostat; thermal limiter; blown thermal fuse; dryer; tumble dryer",
        "dryer dead; no heat; not heating; dryer will not heat; stops heating; vent blocked",
        "blocked vent; lint; coffee maker; iron; kettle; rice cooker; hair dryer; fan heater",
        "microwave; thermostat; open fuse; bypassed fuse; jumper; functioning temperature",
        "opening temperature; oven dead; link; blown link; thermostat kit; machine dead",
        "different temperature; overheated; slow cooker; coffee machine; hair straightener",
        "blown cut-out; replaced fuse blows again; stat; safety thermostat; thermofuse",
        "thermal fuse blown; thermal fuse open; tco; one shot fuse; blown tco",
        "no continuity thermal fuse; hi limit keeps tripping; limit trips; limit keeps tripping",
        "limit opens; keeps blowing thermal fuse; which thermal fuse; thermal fuse temperature",
        "thermal fuse swap; dryer stopped heating; dryer no heat; iron dead; door interlock",
        "microwave dead; microwave door switch; interlock; reset limit; boiler limit",
        "cutout tripped",
        "stops halfway; stops mid cycle; does nothing; will not turn on; completely dead",
        "dead machine; fuse inside",
    ),
    go_on="find what opened the old one (lint, vent, thermostat), then fit this",
    cautions=("heat-02", "heat-03", "sub-01", "dead-01", "hot-01", "heat-01"),
    not_checked=(
        "size, leads and fastening of the new cut-off: it must sit as the old one did",
        "heat of a crimp or solder joint at its leads, which can open it",
    ),
    refuse=_refuse,
    example_with=(
        "old_cutoff_current",
        "new_cutoff_current",
        "old_cutoff_voltage",
        "new_cutoff_voltage",
        "holding_temperature",
        "place_temperature",
        "cause_found",
        "paired_part",
    ),
)
def cutoff(
    old_functioning_temperature: Annotated[float, _functioning("old")],
    new_functioning_temperature: Annotated[float, _functioning("new")],
    old_cutoff_current: Annotated[float | None, _current("old"), asked(_LOWER)] = None,
    new_cutoff_current: Annotated[float | None, _current("new"), asked(_LOWER)] = None,
    old_cutoff_voltage: Annotated[float | None, _voltage("old"), asked(_LOWER)] = None,
    new_cutoff_voltage: Annotated[float | None, _voltage("new"), asked(_LOWER)] = None,
    holding_temperature: Annotated[
        float | None,
        Nameplate(
            "C", low=20, high=320, typical="100 C", text="holding temperature of the new cut-off"
        ),
        asked("it lies above the place"),
    ] = None,
    place_temperature: Annotated[float | None, PLACE, asked("it is a heated place")] = None,
    cause_found: Annotated[
        bool | None,
        YesNo("why the old one opened was found and cured"),
        asked("a new one will open too"),
    ] = None,
    paired_part: Annotated[
        str | None,
        OneOf(
            ("no-pair", "both-new", "one-new"),
            text="the maker sells it in a kit with a thermostat (dryers), and: no such pair, both "
            "were changed, or one alone",
        ),
        may_be_absent("its maker sells it in no kit with a thermostat"),
    ] = None,
) -> Iterator[Item]:
    """May this thermal cut-off take the place of the old one?

    It has the same functioning temperature: a higher one fails. A cut-off may open up to 10 K
    below its mark by two makers' texts, 5 K by a third: a mark up to 5 K lower is marginal, a
    lower one fails (the stricter rules). Current and volts are no lower than the old ones'. Its
    holding temperature lies above the place in normal use, and its mark 10 K or more. Why the old
    one opened is found and cured first. What is not known counts as lower: it can't be told. Marks
    are whole degrees: 352 F is the mark of 178 C. What a maker sells as a kit is changed together.

    For cut-offs that open once; not for thermostats and high limits that reset. Inputs:
    functioning temperatures in C (50 to 320), currents in A (over 0 to 60), volts (12 to
    600), holding and place temperature in C, cause_found. Yields both spans and one criterion a
    rating. Refuses a holding temperature that is not below the functioning temperature.
    Source: table thermal-cutoffs.
    """
    marks = float(round(old_functioning_temperature)), float(round(new_functioning_temperature))
    yield from _same_temperature(*marks)
    for name, old, new, unit in (
        ("current", old_cutoff_current, new_cutoff_current, "A"),
        ("voltage", old_cutoff_voltage, new_cutoff_voltage, "V"),
    ):
        yield _no_lower(name, old, new, unit)
    yield from holds(holding_temperature, place_temperature)
    yield from opens_there(marks[1], place_temperature)
    yield cause(cause_found)
    if paired_part is not None:
        yield pair(paired_part != "one-new")


def _lowest(old: float, row: tables.Row) -> Item:
    return figure(
        f"lowest mark by {row.text('said_by').replace('-', ' ')}",
        old - row.number("below_K"),
        "C",
        source=row.source,
        toward="up",
        working=lambda: f"{put(old, 'C')} - {put(row.number('below_K'), 'K')}",
    )


def _same_temperature(old: float, new: float) -> Iterator[Item]:
    rows = sorted(tables.load("thermal-cutoffs").rows, key=lambda r: r.number("below_K"))
    yield from (_lowest(old, row) for row in rows)
    yield at_most(
        "functioning temperature not higher",
        new,
        old,
        "C",
        source=TEXTS,
        says="it would let the machine get hotter than its maker allows",
        action=_SAME,
    )
    yield at_least(
        "functioning temperature not lower",
        new,
        old - rows[0].number("below_K"),
        "C",
        caution=old,
        source=rows[0].source,
        says="not the same mark: it may open in normal use",
        action=_SAME,
    )


def _no_lower(name: str, old: float | None, new: float | None, unit: str) -> Item:
    said = f"{name} rating"
    missing = [f"{w}_cutoff_{name}" for w, v in (("old", old), ("new", new)) if v is None]
    if old is None or new is None:
        return cannot_tell(
            said,
            "a rating that is not known counts as lower",
            measure="read the marking of both, or the maker's sheet",
            needs=missing,
            source=TEXTS,
        )
    return at_least(said, new, old, unit, source=TEXTS, action=_SAME)

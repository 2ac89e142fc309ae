"""A cold cabinet against how cold food is kept, and its evaporator against the cabinet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Item,
    OneOf,
    Origin,
    Problem,
    Reading,
    asked,
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    extra,
    figure,
    put,
    requires,
    show,
    tables,
)

SETTLED_H = 24.0  # since it was started, loaded or defrosted; common practice
FREEZES_C = 0.0
_COLD = "how cold the cabinet keeps food"
FOOD, AIR = "food", "air"
_LOOK = "door seals, frost on the evaporator, fans, condenser; then the sealed system, by its trade"


def _rules() -> list[str]:
    return list(dict.fromkeys(r.text("food_rule") for r in tables.load("food-cold").rows))


def _refuse(food_rule: str, compartment: str) -> Iterator[Problem]:
    table = tables.load("food-cold")
    if table.find(food_rule=food_rule, compartment=compartment) is None:
        there = [r.text("food_rule") for r in table.rows if r.text("compartment") == compartment]
        yield Problem(
            "food_rule",
            f"{food_rule!r} has no temperature of a {compartment} compartment",
            f"take {' or '.join(there)}",
        )


@calculation(
    part="heat and cold",
    words=(
        "not cooling; not cold; too warm; refrigerator warm; freezer warm; food spoils; milk warm",
        "inside temperature; fridge temperature; freezer temperature; food safety; cold hold",
        "evaporator temperature; 40 F; 41 F; 0 F; walk-in; reach-in; cooler; wine cooler; thaws",
        "food temperature; box temp; box warm; milk; ice cream soft; ice cream melts",
        "freezer not freezing; fridge runs but warm; not freezing; too cold; freezes food",
        "lettuce freezes; fridge too warm; chiller; display case; degrees in the fridge",
        "thermometer; glass of water; meat spoiled; spoiled food; drinks warm",
        "larder; fresh food; vegetables freeze; health inspector",
        "bottle cooler; reefer; evaporator; temperature inside",
    ),
    go_on="leave a thermometer in a glass of water, and read it again after a day",
    cautions=("refr-01", "flam-01", "mov-01", "dead-02"),
    not_checked=(
        "how long food was warm: by the time it was, not by what it reads now",
        "the warmest place: door shelf and front are warmer than the back",
        "charge and pressures of the sealed system",
    ),
    refuse=_refuse,
    example_with=("measured_in", "settled_time", "evaporator_temperature"),
)
def cooling(
    compartment: Annotated[
        str, OneOf(("fresh-food", "freezer"), text="fresh-food or freezer compartment")
    ],
    food_rule: Annotated[str, OneOf(_rules, text="whose rule on cold food")],
    cabinet_temperature: Annotated[
        float,
        Reading("C", low=-50, high=60, typical="3.0 C", text="temperature read in the cabinet"),
    ],
    measured_in: Annotated[
        str | None,
        OneOf(
            (FOOD, "glass-of-water", "between-packs", AIR),
            text="what the thermometer stood in for hours",
        ),
        asked("air swings with door and compressor, and the rule is about food"),
    ] = None,
    settled_time: Annotated[
        float | None,
        Reading(
            "h",
            low=0,
            high=1000,
            typical="24 h",
            text="time since it was started, loaded or defrosted",
        ),
        asked("a cabinet that still pulls down is not yet warm for good"),
    ] = None,
    evaporator_temperature: Annotated[
        float | None,
        Reading(
            "C",
            low=-60,
            high=60,
            typical="-15 C",
            text="temperature of the evaporator while the compressor runs",
        ),
        extra("the cabinet shows what the evaporator does"),
    ] = None,
) -> Iterator[Item]:
    """Is this refrigerator or freezer as cold as food must be kept?

    What the thermometer read, in food, in a glass of water or between packs, against the
    temperature of the rule that is named. Air swings by some degrees with the door and the
    compressor, so air alone tells nothing of the food. Until 24 h after a start, a load or a
    defrost (common practice) a warm cabinet can't be told from one that still pulls down. Fresh
    food below 0 C freezes. An evaporator that is no colder than the cabinet takes no heat out.

    For household and commercial cold cabinets; not for single foods with rules of their own.
    Inputs: temperatures in C, time in h. Yields a criterion of the rule, of freezing, and of the
    evaporator. Refuses a rule that has none for the compartment. Source: table food-cold.
    """
    row = tables.load("food-cold").row(food_rule=food_rule, compartment=compartment)
    yield _kept(cabinet_temperature, row, measured_in, settled_time)
    if compartment == "fresh-food":
        yield at_least(
            "fresh food does not freeze",
            cabinet_temperature,
            FREEZES_C,
            "C",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            advisory=True,
            behind="nothing: food that freezes is spoiled, and unwholesome it is not",
            action="check the setting, the damper and the sensor",
            plain="whether fresh food freezes",
        )
    if evaporator_temperature is not None:
        yield from _evaporator(evaporator_temperature, cabinet_temperature)


def _kept(cabinet: float, row: tables.Row, measured_in: str | None, settled: float | None) -> Item:
    name, limit = "cold enough for food", row.number("most_C")
    if measured_in in (None, AIR):
        return cannot_tell(
            name,
            f"air of {show(cabinet, 'C')} swings with door and compressor"
            if measured_in
            else f"what {show(cabinet, 'C')} was read in was not said",
            measure="stand the thermometer in a glass of water, or between packs, overnight",
            needs=() if measured_in else ("measured_in",),
            source=row.source,
            plain=_COLD,
        )
    early = settled is None or settled < SETTLED_H
    if early and not at_or_below(cabinet, limit):
        return cannot_tell(
            name,
            f"{show(cabinet, 'C')} is over {row.text('as_printed')}, and a start, a load or a "
            f"defrost was {'less than a day ago' if settled is not None else 'not ruled out'}",
            measure="read it again a day after; `pull-down` says when it will be there",
            needs=() if settled is not None else ("settled_time",),
            source=row.source,
            plain=_COLD,
        )
    return at_most(
        name, cabinet, limit, "C", source=row.source, action=_LOOK, plain=_COLD,
        says=f"{row.text('as_printed')} as printed",
    )  # fmt: skip


def _evaporator(evaporator: float, cabinet: float) -> Iterator[Item]:
    yield figure(
        "evaporator below the cabinet",
        cabinet - evaporator,
        "K",
        source=PRACTICE,
        working=lambda: f"{put(cabinet, 'C')} - {put(evaporator, 'C')}",
    )
    yield requires(
        "evaporator colder than the cabinet",
        evaporator < cabinet,
        says="it is no colder, and takes no heat out",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="does the compressor run and pump? Then the sealed system, by its trade",
        plain="whether the cold part is colder than the cabinet",
    )

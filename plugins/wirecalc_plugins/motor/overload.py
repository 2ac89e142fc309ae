"""The overload of a motor or compressor, by its resistance and its temperatures."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Problem,
    Reading,
    YesNo,
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    requires,
    tables,
)

from ..inputs import LEADS
from ..leads import less_leads, ohms_at_most, without_leads

_REPLACE = (
    "fit only the overload that the compressor's maker lists; find out why it opened: stuck rotor, "
    "start device, volts, dirty condenser, fan"
)
_CONDUCTS = "overload conducts"


def _refuse(
    overload_resistance: float | None = None,
    lead_resistance: float | None = None,
    overload_open: bool | None = None,
    overload_cold: bool | None = None,
    trip_temperature: float | None = None,
    reset_temperature: float | None = None,
) -> Iterator[Problem]:
    if overload_open and overload_resistance is not None:
        yield Problem(
            "overload_open",
            f"an overload that reads {overload_resistance:g} ohm is not open",
            "give the resistance, or overload_open yes",
        )
    if (
        overload_resistance is not None
        and lead_resistance is not None
        and not at_or_below(lead_resistance, overload_resistance)
    ):
        yield Problem(
            "overload_resistance",
            f"{overload_resistance:g} ohm is less than the leads of {lead_resistance:g} ohm",
            "give the reading with the leads in it, and the leads touched together",
        )
    if trip_temperature is None or reset_temperature is None:
        return
    if at_or_below(trip_temperature, reset_temperature):
        yield Problem(
            "reset_temperature",
            f"{reset_temperature:g} C is not below the {trip_temperature:g} C at which it opens",
            "an overload closes again cooler than it opens",
        )


@calculation(
    part="motor and start",
    cautions=("dead-01", "hot-01", "heat-03", "flam-02", "pin-01"),
    not_checked=(
        "that it is the very overload which the compressor's maker lists: no other fits",
        "the current at which it opens, and how soon",
    ),
    refuse=_refuse,
    example_with=("overload_resistance", "lead_resistance"),
)
def overload(
    overload_resistance: Annotated[
        float | None,
        Reading(
            "ohm",
            low=0,
            high=10_000,
            typical="0.4 ohm",
            text="across the overload, off it",
            if_open="leave it out and give overload_open yes",
        ),
    ] = None,
    lead_resistance: Annotated[float | None, LEADS] = None,
    overload_open: Annotated[bool | None, YesNo("the overload reads open")] = None,
    overload_cold: Annotated[
        bool | None, YesNo("it and the motor it sits on are as cold as the room")
    ] = None,
    trip_temperature: Annotated[
        float | None,
        Reading("C", low=40, high=200, typical="110 C", text="temperature at which it opened"),
    ] = None,
    reset_temperature: Annotated[
        float | None,
        Reading("C", low=20, high=180, typical="68 C", text="temperature at which it closed again"),
    ] = None,
) -> Iterator[Item]:
    """Is this overload good?

    Cold it reads 1 ohm at most (one service manual), less the test leads. Open when cold fails;
    open when warm it may only have done its work: let it cool, an internal one up to 60 min (one
    manual). Opened at 225 to 250 F and closed at 150 to 160 F (107 to 121 C, 65 to 71 C) is usual
    (one trade author, whose two pages differ); parts differ, so outside is marginal.

    Inputs: resistances in ohm (0 to 10000, leads to 2), overload_open, overload_cold,
    trip_temperature and reset_temperature in C where they were measured. Yields a criterion a
    question. Refuses an open overload with a reading, a reading
    below the leads, and a reset not below the trip.
    Source: table start-parts.
    """
    if overload_resistance is not None:
        yield from _reads(overload_resistance, lead_resistance, overload_cold)
    elif overload_open:
        yield _open(overload_cold)
    else:
        yield cannot_tell(
            _CONDUCTS,
            "it was not read",
            measure="take it off, let it cool, and read across it",
            needs=("overload_resistance", "overload_open"),
        )
    if trip_temperature is not None:
        yield from _usual("opens", trip_temperature)
    if reset_temperature is not None:
        yield from _usual("closes", reset_temperature)


def _reads(reading: float, leads: float | None, cold: bool | None) -> Iterator[Item]:
    ohms = less_leads(reading, leads)
    row = _text("cold resistance", "manual")
    most = row.number("most")
    if leads is not None:
        yield without_leads("resistance less leads", ohms, reading, leads)
    if not cold and not at_or_below(ohms.high, most):
        yield cannot_tell(
            _CONDUCTS,
            f"{ohms.high:.4g} ohm is over {most:g} ohm, and " + _warmth(cold),
            measure="let it cool to the room and read it again",
            needs=("overload_cold",) if cold is None else (),
            source=row.source,
        )
        return
    yield ohms_at_most(
        _CONDUCTS,
        ohms,
        most,
        source=row.source,
        says="burnt contacts, or not closed",
        action=_REPLACE,
    )


def _warmth(cold: bool | None) -> str:
    return "it was not said whether it is cold" if cold is None else "it is warm"


def _open(cold: bool | None) -> Item:
    if not cold:
        wait = _text("wait before a reading", "manual")
        return cannot_tell(
            _CONDUCTS,
            f"it reads open, and {_warmth(cold)}: it may only have tripped",
            measure="let it cool and read it again; an internal one may take "
            f"{wait.number('least'):g} min",
            needs=("overload_cold",) if cold is None else (),
            source=wait.source,
        )
    return requires(
        _CONDUCTS,
        False,
        says="it reads open when cold",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=_REPLACE,
    )


def _usual(verb: str, celsius: float) -> Iterator[Item]:
    """Judge a temperature by the usual span, in the unit of its source, degrees Fahrenheit."""
    row = _text(verb, "trade-author")
    fahrenheit = 1.8 * celsius + 32
    says = "usual for refrigerator overloads; the maker's sheet rules"
    action = "compare with the maker's sheet; replace it only by the part listed there"
    least, most = row.number("least"), row.number("most")
    yield at_least(
        f"{verb} hot enough",
        fahrenheit,
        least,
        "F",
        source=row.source,
        advisory=True,
        says=says,
        action=action,
    )
    yield at_most(
        f"{verb} cool enough",
        fahrenheit,
        most,
        "F",
        source=row.source,
        advisory=True,
        says=says,
        action=action,
    )


def _text(quantity: str, said_by: str) -> tables.Row:
    return tables.load("start-parts").row(part="overload", quantity=quantity, said_by=said_by)

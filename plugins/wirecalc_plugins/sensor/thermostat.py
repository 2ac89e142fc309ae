"""A thermostat, limit or defrost control by the temperatures at which it opens and closes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Nameplate,
    Origin,
    Problem,
    Reading,
    YesNo,
    asked,
    at_least,
    at_most,
    at_or_above,
    calculation,
    extra,
    figure,
    instead_of,
    put,
    requires,
)

ANOTHER = "heat and cool it again, slower than 1 K a minute; then another of the maker's number"
_PLAIN = "the temperatures at which the thermostat switches"


def _at(text: str, typical: str) -> Reading:
    return Reading("C", low=-60, high=350, typical=typical, text=text)


def _mark(text: str, typical: str) -> Nameplate:
    return Nameplate("C", low=-60, high=350, typical=typical, text=text)


def _kelvin(text: str, typical: str) -> Nameplate:
    return Nameplate(
        "K",
        above=0,
        high=100,
        typical=typical,
        text=text,
        dimension="temperature difference",
    )


def _refuse(
    opening_temperature: float | None,
    closing_temperature: float | None,
    never_opened: bool | None,
    never_closed: bool | None,
    marked_opening: float | None,
    marked_closing: float | None,
    marked_differential: float | None,
) -> Iterator[Problem]:
    for what, never, at in (
        ("opened", never_opened, opening_temperature),
        ("closed", never_closed, closing_temperature),
    ):
        if never and at is not None:
            yield Problem(
                f"never_{what}", f"it {what} at {at:g} C, and never did", "give one of both"
            )
    if marked_closing is not None and marked_differential is not None:
        yield Problem(
            "marked_differential",
            "the closing temperature was given, and the differential says it too",
            "give one of both",
        )
    if marked_opening is not None and marked_opening == marked_closing:
        yield Problem(
            "marked_closing",
            f"it opens and closes at {marked_opening:g} C",
            "they lie apart; read the sheet again, or leave one out",
        )


@calculation(
    part="sensor and switch",
    words=(
        "thermostat; cycling thermostat; limit; high limit; bimetal; disc thermostat",
        "defrost thermostat; defrost control; defrost bimetal; termination thermostat; L140; L55",
        "opens at; closes at; differential; cut in; cut out; cut-in temperature; stat",
        "cold control; dryer runs too hot; frost on the evaporator; never defrosts; sticks",
    ),
    go_on="fit it, let it cycle twice, and read where it opens in its place",
    cautions=("dead-01", "heat-02", "heat-03", "hot-01", "sub-01"),
    not_checked=(
        "how fast it was heated: faster than 1 K a minute it reads late, both ways",
        "whether it sits tight on what it should feel",
        "what its contacts carry: ohms say little of a contact under load",
    ),
    refuse=_refuse,
    example_with=(
        "opening_temperature",
        "closing_temperature",
        "marked_opening",
        "opening_tolerance",
        "marked_closing",
        "closing_tolerance",
    ),
)
def thermostat(
    opening_temperature: Annotated[
        float | None,
        _at("temperature at which it opened", "59 C"),
        asked("its mark is about it", when="marked_opening and never_opened!=yes"),
    ] = None,
    closing_temperature: Annotated[
        float | None,
        _at("temperature at which it closed", "46 C"),
        asked("its mark is about it", when="marked_closing and never_closed!=yes"),
        asked("the differential is about it", when="marked_differential and never_closed!=yes"),
    ] = None,
    never_opened: Annotated[
        bool | None,
        YesNo("it stayed closed, well past where it should open"),
        extra("a temperature at which it opened says so"),
    ] = None,
    never_closed: Annotated[
        bool | None,
        YesNo("it stayed open, well past where it should close"),
        extra("a temperature at which it closed says so"),
    ] = None,
    marked_opening: Annotated[
        float | None,
        _mark("temperature at which its mark or sheet has it open", "60 C"),
        asked("without its mark no point is wrong", when="opening_temperature"),
    ] = None,
    opening_tolerance: Annotated[
        float | None,
        _kelvin("tolerance of that temperature, each way", "3 K"),
        asked("near is no measure", when="marked_opening"),
    ] = None,
    marked_closing: Annotated[
        float | None,
        _mark("temperature at which its mark or sheet has it close", "45 C"),
        asked(
            "without its mark no point is wrong",
            when="closing_temperature and not marked_differential",
        ),
    ] = None,
    closing_tolerance: Annotated[
        float | None,
        _kelvin("tolerance of that temperature, each way", "4 K"),
        asked("near is no measure", when="marked_closing"),
        asked("near is no measure", when="marked_differential"),
    ] = None,
    marked_differential: Annotated[
        float | None,
        _kelvin("how far below its opening it closes, as L140-30 has it", "15 K"),
        instead_of("marked_closing"),
    ] = None,
) -> Iterator[Item]:
    """Does this thermostat open and close where its mark says?

    The temperatures at which it opened and closed, by a thermometer beside it, against its mark or
    sheet, each with its tolerance. Where the mark has a differential, it closes that far below its
    opening. One that stays closed past its opening has welded, one that stays open is done. Heated
    faster than about 1 K a minute it reads late (common practice).

    For bimetal discs, cycling and limit thermostats, defrost controls and cold controls; not for
    cut-offs that open once (cutoff) nor for overloads (overload). Inputs: temperatures in C (-60 to
    350), tolerances and differential in K. Yields the differential and a criterion for each side of
    each point. Refuses what never opened and did. Source: the mark or sheet as typed.
    """
    for name, never, does in (
        ("opens at all", never_opened, "it stays closed: its contacts have welded"),
        ("closes at all", never_closed, "it stays open"),
    ):
        if never is not None:
            yield requires(
                name, not never, says=does, source=PRACTICE, action=ANOTHER, plain=_PLAIN
            )
    if opening_temperature is not None and closing_temperature is not None:
        yield _differential(opening_temperature, closing_temperature)
    closes = marked_closing
    if marked_differential is not None and marked_opening is not None:
        closes = marked_opening - marked_differential
    for verb, read, mark, tolerance in (
        ("opens", opening_temperature, marked_opening, opening_tolerance),
        ("closes", closing_temperature, closes, closing_tolerance),
    ):
        if read is not None and mark is not None and tolerance is not None:
            yield from _within(verb, read, mark, tolerance)


def _differential(opening: float, closing: float) -> Item:
    return figure(
        "differential",
        abs(opening - closing),
        "K",
        source=PRACTICE,
        working=lambda: (
            f"{put(opening, 'C')} - {put(closing, 'C')}"
            if at_or_above(opening, closing)
            else f"{put(closing, 'C')} - {put(opening, 'C')}"
        ),
    )


def _within(verb: str, read: float, mark: float, tolerance: float) -> Iterator[Item]:
    yield at_most(
        f"{verb} no hotter than its mark",
        read,
        mark + tolerance,
        "C",
        source=MAKER,
        origin=Origin.MAKER,
        action=ANOTHER,
        plain=_PLAIN,
    )
    yield at_least(
        f"{verb} no colder than its mark",
        read,
        mark - tolerance,
        "C",
        source=MAKER,
        origin=Origin.MAKER,
        action=ANOTHER,
        plain=_PLAIN,
    )

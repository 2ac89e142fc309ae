"""A thermostat, limit or defrost control by the temperatures at which it opens and closes."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    at_or_above,
    calculation,
    figure,
    put,
    requires,
)

from .thermostat_inputs import (
    ClosingTemperature,
    ClosingTolerance,
    MarkedClosing,
    MarkedDifferential,
    MarkedOpening,
    NeverClosed,
    NeverOpened,
    OpeningTemperature,
    OpeningTolerance,
    refuse,
)

ANOTHER = "heat and cool it again, slower than 1 K a minute; then another of the maker's number"
_PLAIN = "the temperatures at which the thermostat switches"


@calculation(
    part="sensor and switch",
    words=(
        "thermostat; cycling thermostat; limit; high limit; bimetal; disc thermostat",
        "defrost thermostat; defrost control; defrost bimetal; termination thermostat; L140; L55",
        "opens at; closes at; differential; cut in; cut out; cut-in temperature; stat",
        "cold control; dryer runs too hot; frost on the evaporator; never defrosts; sticks",
        "bimetal test; bimetal opens; snap disc; cycling stat; fixed stat; stat opens",
        "stat closes; opens too early; closes too late; stuck closed; stuck open; does not open",
        "thermostat test; thermostat ohms; thermostat bad; disc; 155; capillary; sensing bulb",
        "defrost stat; differential of a thermostat",
        "will not turn off; never turns off; will not switch off; stays on; keeps heating",
        "does not stop heating; will not shut off",
        "ice on the back wall; ice on back; frost on the back; iced up; ice builds up; makes ice",
    ),
    go_on="fit it, let it cycle twice, and read where it opens in its place",
    cautions=("dead-01", "heat-02", "heat-03", "hot-01", "sub-01"),
    not_checked=(
        "how fast it was heated: faster than 1 K a minute it reads late, both ways",
        "whether it sits tight on what it should feel",
        "what its contacts carry: ohms say little of a contact under load",
    ),
    refuse=refuse,
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
    opening_temperature: OpeningTemperature = None,
    closing_temperature: ClosingTemperature = None,
    never_opened: NeverOpened = None,
    never_closed: NeverClosed = None,
    marked_opening: MarkedOpening = None,
    opening_tolerance: OpeningTolerance = None,
    marked_closing: MarkedClosing = None,
    closing_tolerance: ClosingTolerance = None,
    marked_differential: MarkedDifferential = None,
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
    for name, never, at, does in (
        ("opens at all", never_opened, opening_temperature, "it stays closed: welded contacts"),
        ("closes at all", never_closed, closing_temperature, "it stays open"),
    ):
        if never is not None or at is not None:
            does_it = never is not True
            yield requires(name, does_it, says=does, source=PRACTICE, action=ANOTHER, plain=_PLAIN)
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

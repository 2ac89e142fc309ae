"""The inputs of `thermostat`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    Nameplate,
    Problem,
    Reading,
    YesNo,
    asked,
    extra,
    instead_of,
)


def _at(text: str, typical: str) -> Reading:
    return Reading("C", low=-60, high=350, typical=typical, text=text)


def _mark(text: str, typical: str) -> Nameplate:
    return Nameplate("C", low=-60, high=350, typical=typical, text=text, either_scale=True)


def _kelvin(text: str, typical: str) -> Nameplate:
    return Nameplate(
        "K",
        above=0,
        high=100,
        typical=typical,
        text=text,
        dimension="temperature difference",
    )


OpeningTemperature = Annotated[
    float | None,
    _at("temperature at which it opened", "59 C"),
    asked("its mark is about it", when="marked_opening and never_opened!=yes"),
    asked("that it opens is not yet where", when="never_opened=no"),
]
ClosingTemperature = Annotated[
    float | None,
    _at("temperature at which it closed", "46 C"),
    asked("its mark is about it", when="marked_closing and never_closed!=yes"),
    asked("the differential is about it", when="marked_differential and never_closed!=yes"),
    asked("that it closes is not yet where", when="never_closed=no"),
]
NeverOpened = Annotated[
    bool | None,
    YesNo("it stayed closed, well past where it should open"),
    extra("a temperature at which it opened says so"),
]
NeverClosed = Annotated[
    bool | None,
    YesNo("it stayed open, well past where it should close"),
    extra("a temperature at which it closed says so"),
]
MarkedOpening = Annotated[
    float | None,
    _mark("temperature at which its mark or sheet has it open", "60 C"),
    asked("without its mark no point is wrong", when="opening_temperature"),
]
OpeningTolerance = Annotated[
    float | None,
    _kelvin("tolerance of that temperature, each way", "3 K"),
    asked("near is no measure", when="marked_opening"),
]
MarkedClosing = Annotated[
    float | None,
    _mark("temperature at which its mark or sheet has it close", "45 C"),
    asked(
        "without its mark no point is wrong",
        when="closing_temperature and not marked_differential",
    ),
]
ClosingTolerance = Annotated[
    float | None,
    _kelvin("tolerance of that temperature, each way", "4 K"),
    asked("near is no measure", when="marked_closing"),
    asked("near is no measure", when="marked_differential"),
]
MarkedDifferential = Annotated[
    float | None,
    _kelvin("how far below its opening it closes, as L140-30 has it", "15 K"),
    instead_of("marked_closing"),
]


def refuse(
    opening_temperature: float | None,
    closing_temperature: float | None,
    never_opened: bool | None,
    never_closed: bool | None,
    marked_opening: float | None,
    marked_closing: float | None,
    marked_differential: float | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
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

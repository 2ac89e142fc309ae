"""Heat-shrink sleeving over a joint: size, heat, volts and length."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Problem,
    Reading,
    YesNo,
    answer,
    asked,
    at_least,
    at_most,
    calculation,
    extra,
    figure,
    instead_of,
    put,
    requires,
)

from ..inputs import CIRCUIT_VOLTAGE
from ..inputs_joint import CONNECTOR, PLACE, SLEEVE_RATING
from .sleeve_checks import PLAIN, long_enough, ratings

SNUG = 0.9  # of the thinnest: recovered wider than that it is just snug; common practice
NONE = ("closed-end", "twist-on")
_ANOTHER = "take another size or ratio of sleeve"


def _mm(text: str, typical: str) -> Nameplate:
    return Nameplate("mm", above=0, high=100, typical=typical, text=text)


def _thick(text: str, typical: str, high: float = 100) -> Reading:
    return Reading("mm", above=0, high=high, typical=typical, text=text)


def _refuse(
    supplied_diameter: float,
    recovered_diameter: float | None,
    shrink_ratio: str | None,
    largest_diameter: float,
    smallest_diameter: float,
) -> Iterator[Problem]:
    if recovered_diameter is not None and shrink_ratio is not None:
        yield Problem(
            "shrink_ratio", "the recovered diameter was given, and the ratio says it", "give one"
        )
    if recovered_diameter is not None and recovered_diameter >= supplied_diameter:
        yield Problem(
            "recovered_diameter",
            f"{recovered_diameter:g} mm is not below the {supplied_diameter:g} mm as supplied",
            "the sheet prints both, inside: as supplied, and fully recovered",
        )
    if smallest_diameter > largest_diameter:
        yield Problem(
            "smallest_diameter",
            f"{smallest_diameter:g} mm is more than the largest, {largest_diameter:g} mm",
            "the thinnest that it must grip, and the thickest that it must slip over",
        )


@calculation(
    part="wire and joint",
    words=(
        "heat shrink; heatshrink; shrink tubing; shrink tube; sleeve; sleeving; tubing; boot",
        "insulate a splice; cover a joint; shrink ratio; 2:1; 3:1; adhesive lined; size of tubing",
        "sleeve slid off; sleeve too big; polyolefin; silicone sleeve; fibreglass sleeve",
    ),
    go_on="slide it over, recover it evenly from the middle out, tug both ends",
    cautions=("dead-01", "heat-01", "hot-01"),
    not_checked=(
        "sharp strands or edges under it, which cut through as it shrinks",
        "water: only a lined sleeve that shows a bead of adhesive all round keeps it out",
        "that it was heated all round: shiny, no cold bumps, no burnt place",
    ),
    refuse=_refuse,
    example_with=(
        "shrink_ratio",
        "sleeve_temperature",
        "place_temperature",
        "sleeve_voltage",
        "circuit_voltage",
        "covered_length",
        "sleeve_length",
        "slides",
    ),
)
def sleeve(
    supplied_diameter: Annotated[float, _mm("inside diameter as supplied", "6.4 mm")],
    largest_diameter: Annotated[
        float, _thick("thickest that it must slip over: terminal, joint, insulation", "5.0 mm")
    ],
    smallest_diameter: Annotated[
        float, _thick("thinnest that it must grip, mostly the insulation of the wire", "3.6 mm")
    ],
    recovered_diameter: Annotated[
        float | None,
        _mm("inside diameter fully recovered", "3.2 mm"),
        asked("it grips only what is thicker", when="not shrink_ratio"),
    ] = None,
    shrink_ratio: Annotated[
        str | None,
        OneOf(("2:1", "3:1", "4:1"), text="ratio on the reel: supplied to recovered"),
        instead_of("recovered_diameter"),
    ] = None,
    connector: Annotated[
        str | None, CONNECTOR, extra("a joint has a sleeve; closed ends and caps need none")
    ] = None,
    sleeve_temperature: Annotated[
        float | None,
        SLEEVE_RATING,
        asked("the weakest rating of a joint decides"),
    ] = None,
    place_temperature: Annotated[
        float | None, PLACE, asked("a rating is good for a place and not by itself")
    ] = None,
    sleeve_voltage: Annotated[
        float | None,
        Nameplate("V", low=1, high=35_000, typical="600 V", text="volts printed on the sleeve"),
        asked("it is the insulation of the joint"),
    ] = None,
    circuit_voltage: Annotated[
        float | None, CIRCUIT_VOLTAGE, asked("the sleeve insulates against them")
    ] = None,
    covered_length: Annotated[
        float | None,
        _thick("bare metal to cover, end to end", "20 mm", 1000),
        asked("bare metal must not look out"),
    ] = None,
    sleeve_length: Annotated[
        float | None,
        _thick("length of the sleeve as cut", "40 mm", 1000),
        asked("bare metal must not look out"),
    ] = None,
    lengthwise_shrink: Annotated[
        float | None,
        Nameplate(
            "%", low=0, high=50, typical="10 %", text="how much shorter its sheet has it get"
        ),
        extra("without its sheet 15 % count"),
    ] = None,
    slides: Annotated[
        bool | None,
        YesNo("recovered and cold, fingers can slide or turn it"),
        extra("its diameters say whether it grips; the hand proves it"),
    ] = None,
) -> Iterator[Item]:
    """Does this heat-shrink sleeve fit, hold and stand the place?

    As supplied it slips over the thickest, fully recovered it is thinner than the thinnest that it
    must grip; over 90 % of that it is just snug, which is marginal (common practice). Recovered, it
    still covers the bare metal and 6 mm of insulation at each end (common practice), 15 % shorter
    where its sheet was not read. Its rating is no lower than the place and than the circuit's
    volts. Closed-end connectors and twist-on caps are insulated: they need none.

    For single joints in an appliance; not for cords, which are not spliced in service. Inputs:
    diameters and lengths in mm, temperatures in C, volts, lengthwise_shrink in %. Yields the
    recovered diameter and a criterion each. Refuses a recovered one that is not below the supplied.
    Source: the printing on the sleeve; common practice.
    """
    if connector in NONE:
        yield answer("sleeve", f"a {connector} connector needs none: it is insulated")
        return
    yield at_least(
        "slips over the thickest",
        supplied_diameter,
        largest_diameter,
        "mm",
        source=MAKER,
        action=_ANOTHER,
        plain=PLAIN,
    )
    recovered = recovered_diameter
    if shrink_ratio is not None:
        times = float(shrink_ratio[0])
        recovered = supplied_diameter / times
        yield figure(
            "recovered diameter",
            recovered,
            "mm",
            source=MAKER,
            working=lambda: f"{put(supplied_diameter, 'mm')} / {times:g}",
        )
    if recovered is not None:
        yield at_most(
            "grips the thinnest",
            recovered,
            smallest_diameter,
            "mm",
            caution=SNUG * smallest_diameter,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="just snug: heat or a pull may slide it",
            action=_ANOTHER,
            plain=PLAIN,
        )
    if slides is not None:
        yield requires(
            "holds by hand",
            not slides,
            says="it slides or turns",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=_ANOTHER,
            plain=PLAIN,
        )
    yield from ratings(sleeve_temperature, place_temperature, sleeve_voltage, circuit_voltage)
    if covered_length is not None and sleeve_length is not None:
        yield from long_enough(covered_length, sleeve_length, lengthwise_shrink)

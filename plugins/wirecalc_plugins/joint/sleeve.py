"""Heat-shrink sleeving over a joint: size, heat, volts and length."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    answer,
    at_least,
    at_most,
    calculation,
    figure,
    put,
    requires,
)

from .sleeve_checks import PLAIN, long_enough, ratings
from .sleeve_inputs import (
    CircuitVoltage,
    Connector,
    CoveredLength,
    LargestDiameter,
    LengthwiseShrink,
    PlaceTemperature,
    RecoveredDiameter,
    ShrinkRatio,
    SleeveLength,
    SleeveTemperature,
    SleeveVoltage,
    Slides,
    SmallestDiameter,
    SuppliedDiameter,
    refuse,
)

SNUG = 0.9  # of the thinnest: recovered wider than that it is just snug; common practice
NONE = ("closed-end", "twist-on")
_ANOTHER = "take another size or ratio of sleeve"


@calculation(
    part="wire and joint",
    words=(
        "heat shrink; heatshrink; shrink tubing; shrink tube; sleeve; sleeving; tubing; boot",
        "insulate a splice; cover a joint; shrink ratio; 2:1; 3:1; adhesive lined; size of tubing",
        "sleeve slid off; sleeve too big; polyolefin; silicone sleeve; fibreglass sleeve",
        "heat shrink size; shrink size; what size heat shrink; which heat shrink; shrink for",
        "glue lined; glued sleeve; waterproof splice; wet area; wet splice; seal a splice; seal",
        "outdoor splice; insulating tube; spaghetti; sleeve for butt splice; shrinks; shrunk",
        "slide over; 4:1; recovered; insulating sleeve; sleeving size; cover splice",
        "tape or sleeve",
    ),
    go_on="slide it over, recover it evenly from the middle out, tug both ends",
    cautions=("dead-01", "heat-01", "hot-01"),
    not_checked=(
        "sharp strands or edges under it, which cut through as it shrinks",
        "water: only a lined sleeve that shows a bead of adhesive all round keeps it out",
        "that it was heated all round: shiny, no cold bumps, no burnt place",
    ),
    refuse=refuse,
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
    supplied_diameter: SuppliedDiameter,
    largest_diameter: LargestDiameter,
    smallest_diameter: SmallestDiameter,
    recovered_diameter: RecoveredDiameter = None,
    shrink_ratio: ShrinkRatio = None,
    connector: Connector = None,
    sleeve_temperature: SleeveTemperature = None,
    place_temperature: PlaceTemperature = None,
    sleeve_voltage: SleeveVoltage = None,
    circuit_voltage: CircuitVoltage = None,
    covered_length: CoveredLength = None,
    sleeve_length: SleeveLength = None,
    lengthwise_shrink: LengthwiseShrink = None,
    slides: Slides = None,
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
    yield from _grips(recovered, smallest_diameter, slides)
    yield from ratings(sleeve_temperature, place_temperature, sleeve_voltage, circuit_voltage)
    if covered_length is not None and sleeve_length is not None:
        yield from long_enough(covered_length, sleeve_length, lengthwise_shrink)


def _grips(recovered: float | None, smallest: float, slides: bool | None) -> Iterator[Item]:
    """Judge whether a sleeve grips, by its diameter in mm and by hand."""
    if recovered is not None:
        yield at_most(
            "grips the thinnest",
            recovered,
            smallest,
            "mm",
            caution=SNUG * smallest,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="it grips only what is thicker, and what is hardly thicker it holds just snugly",
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

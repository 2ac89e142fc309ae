"""Inputs that the calculations of sensors share, and what they share of judging."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product
from typing import Annotated, NamedTuple

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Nameplate,
    Origin,
    Problem,
    Reading,
    Source,
    YesNo,
    at_or_below,
    extra,
    instead_of,
    requires,
)

from ..inputs import LEADS
from ..lead_resistance import LEADS_COUNT
from ..spread import Unknown, most

COLDEST_C, HOTTEST_C = -200.0, 1300.0  # of any sensor
MOST_OHM = 2_000_000.0
ICE_K = 0.5  # how near to 0 C stirred ice water is; common practice
REPLACE = "clean its plug and read again; then another sensor of the maker's number"
WARMTH = ("tells warmer than it is", "tells colder than it is")
PLAIN = "whether the sensor tells the temperature that it has"

Ends = tuple[float, float]

RESISTANCE = Reading(
    "ohm",
    above=0,
    high=MOST_OHM,
    typical="5060 ohm",
    text="ohms of the sensor, unplugged from its board",
    if_open="give sensor_open yes",
)
TEMPERATURE = Reading(
    "C",
    low=COLDEST_C,
    high=HOTTEST_C,
    typical="25 C",
    text="temperature of the sensor by a thermometer",
)
TOLERANCE = Nameplate(
    "K",
    above=0,
    high=20,
    typical="1 K",
    text="tolerance of its temperature",
    dimension="temperature difference",
)

InIceWater = Annotated[
    bool | None,
    YesNo("it hung in stirred water full of crushed ice for three minutes: 0 C"),
    instead_of("sensor_temperature"),
]
SensorOpen = Annotated[
    bool | None,
    YesNo("the sensor reads open (OL)"),
    extra("a reading of it says that it conducts"),
]
LeadResistance = Annotated[float | None, LEADS, extra(LEADS_COUNT, when="sensor_resistance")]


class Read(NamedTuple):
    """What the sensor reads and its temperature in C, each from low to high, and the middle."""

    reading: Ends
    celsius: Ends
    at: float

    def ends(self, of: Callable[[float, float], float]) -> Ends:
        """Return the least and the most of what reading and temperature come to."""
        each = [of(r, c) for r, c in product(self.reading, self.celsius)]
        return min(each), max(each)


def beside(thermometer: float | None, ice_water: bool | None) -> tuple[float, Ends] | None:
    """Return the temperature in C and its ends; ice water is 0 C within 0.5 K."""
    if ice_water:
        return 0.0, (-ICE_K, ICE_K)
    return None if thermometer is None else (thermometer, (thermometer, thermometer))


def conducts(is_open: bool) -> Item:
    """A sensor that reads open is broken."""
    return requires(
        "sensor conducts",
        not is_open,
        says="it reads open",
        source=PRACTICE,
        action=REPLACE,
        plain="whether the temperature sensor has a break in it",
    )


def within_both(
    names: tuple[str, str],
    ends: Ends,
    limit: tuple[float, str],
    source: Source = MAKER,
    origin: Origin = Origin.MAKER,
    needs: tuple[str, ...] = ("lead_resistance",),
) -> Iterator[Item]:
    """Judge how far a sensor is off, upward and downward, against a tolerance and its unit."""
    unknown = Unknown(
        "leads that were not read, or ice water, which is 0 C within 0.5 K",
        "read the leads touched together, and take a thermometer into the bath",
        needs,
    )
    for name, each in zip(names, (ends, (-ends[1], -ends[0])), strict=True):
        yield most(
            name,
            each,
            limit[0],
            limit[1],
            unknown=unknown,
            source=source,
            origin=origin,
            action=REPLACE,
            plain=PLAIN,
        )


def refuse_reading(
    what: str,
    reading: float | None,
    unit: str,
    thermometer: float | None,
    ice_water: bool | None,
    is_open: bool | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself in the reading of any sensor."""
    if is_open and reading is not None:
        yield Problem(
            "sensor_open",
            f"a sensor that reads {reading:g} {unit} is not open",
            f"give {what}, or sensor_open yes",
        )
    if ice_water and thermometer is not None:
        yield Problem(
            "in_ice_water",
            "ice water is the temperature, and another was given",
            "give one of both",
        )


def refuse_leads(reading: float | None, leads: float | None) -> Iterator[Problem]:
    """Yield a reading that is no more than its leads."""
    if reading is not None and at_or_below(reading, leads or 0.0):
        yield Problem(
            "sensor_resistance",
            f"{reading:g} ohm is no more than the {leads:g} ohm of the leads",
            "type the reading with the leads in it; they are subtracted here",
        )

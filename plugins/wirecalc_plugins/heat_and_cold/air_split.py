"""The air on both sides of a coil or a heater: its difference, the heat and the air that moves."""

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
    asked,
    at_least,
    at_most,
    calculation,
    computed,
    extra,
    figure,
    instead_of,
    put,
    requires,
)

AIR_KG_K = 353.05  # kg/m3 times K: dry air at 101.325 kPa, 28.965 g/mol, ideal gas
AIR_J = 1006.0  # J/(kg K), dry air near room temperature
ZERO_C = 273.15
BTU_H = 3.412142  # in a watt
HEAT = computed("air-heat", "heat of dry air at sea level", "353.05/T kg/m3 x 1006 J/(kg K)")
_PLAIN = "how much it cools or heats the air"


def joule_per_m3(celsius: float) -> float:
    """Return the heat in J that a kelvin takes in a cubic metre of air of a temperature in C."""
    return AIR_KG_K / (celsius + ZERO_C) * AIR_J


def _refuse(
    air_in: float, air_out: float, air_flow: float | None, air_heat: float | None
) -> Iterator[Problem]:
    if air_heat is not None and air_flow is not None:
        yield Problem(
            "air_heat", "heat and air flow were given, and each follows from the other", "give one"
        )
    elif air_heat is not None and air_in == air_out:
        yield Problem(
            "air_out",
            f"{air_out:g} C in and out: no air flow follows from no difference",
            "read both again, or leave air_heat out",
        )


@calculation(
    part="heat and cold",
    words=(
        "temperature split; delta T; air in and out; supply and return; coil; air conditioner",
        "dryer outlet; dryer exhaust temperature; condenser air; air flow; CFM; duct; vent",
        "not drying; not cooling room; heat pump; dehumidifier; fan heater; 20 degree split",
    ),
    go_on="note split, humidity and ambient, to compare next time",
    cautions=("mov-01", "hot-01", "refr-01"),
    not_checked=(
        "water that condenses: a cooling coil takes out more heat than the dry air shows",
        "height: at 1500 m air has a sixth less mass, and takes a sixth less heat",
        "how even the air is: read in several places and take the mean",
    ),
    refuse=_refuse,
    example_with=("least_split", "most_split", "air_flow"),
)
def air_split(
    air_does: Annotated[
        str, OneOf(("cools", "warms"), text="what the air should do on its way across")
    ],
    air_in: Annotated[
        float,
        Reading("C", low=-40, high=200, typical="25 C", text="air where it goes in"),
    ],
    air_out: Annotated[
        float,
        Reading("C", low=-40, high=300, typical="14 C", text="air where it comes out"),
    ],
    least_split: Annotated[
        float | None,
        Nameplate(
            "K",
            above=0,
            high=200,
            typical="8 K",
            text="least difference by the maker's sheet",
            dimension="temperature difference",
        ),
        asked("without the maker's span no difference is wrong"),
    ] = None,
    most_split: Annotated[
        float | None,
        Nameplate(
            "K",
            above=0,
            high=200,
            typical="12 K",
            text="greatest difference by the maker's sheet",
            dimension="temperature difference",
        ),
        extra("a sheet may print the least alone; more tells of little air"),
    ] = None,
    air_flow: Annotated[
        float | None,
        Reading("m3/h", above=0, high=20_000, typical="350 m3/h", text="air that goes in"),
        extra("the difference is judged without; with it the heat is told"),
    ] = None,
    air_heat: Annotated[
        float | None,
        Reading(
            "W", above=0, high=100_000, typical="5000 W", text="heat that is put in or taken out"
        ),
        instead_of("air_flow"),
    ] = None,
) -> Iterator[Item]:
    """How much does the air change in temperature across it, and what heat is that?

    The difference of air in and out against the maker's span. Air that should be cooled and comes
    out no colder, or warmed and no warmer, fails without any span. The heat of the dry air is its
    flow x 353.05/T kg/m3 x 1006 J/(kg K) x the difference (sea level, at the temperature where it
    goes in); or the flow from a known heat, as of a dryer's element. A cooling coil that drips
    takes out more than that.

    For coils of air conditioners, condensers, dryers, heaters with a fan. Inputs: temperatures in
    C, differences in K, air_flow in m3/h, air_heat in W. Yields difference, heat or flow, and a
    criterion a side. Refuses heat and flow at once. Source: the maker's sheet; the ideal gas law.
    """
    split = air_in - air_out if air_does == "cools" else air_out - air_in
    yield figure(
        "difference across it",
        split,
        "K",
        source=PRACTICE,
        also=[(split * 1.8, "F")],
        working=lambda: (
            f"{put(air_in, 'C')} - {put(air_out, 'C')}"
            if air_does == "cools"
            else f"{put(air_out, 'C')} - {put(air_in, 'C')}"
        ),
    )
    yield requires(
        "the air goes the right way",
        split > 0,
        says="it comes out no colder" if air_does == "cools" else "it comes out no warmer",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="does it run, and does air move? Were the two places swapped?",
        plain=_PLAIN,
    )
    each = joule_per_m3(air_in) / 3600
    if air_flow is not None:
        watts = air_flow * each * split
        yield figure(
            "heat of the dry air",
            watts,
            "W",
            source=HEAT,
            working=lambda: (
                f"{put(air_flow, 'm3/h')} / 3600 x 353.05 / ({air_in:g} + 273.15) x 1006 x "
                f"{put(split, 'K')}; {watts * BTU_H:.0f} Btu/h"
            ),
        )
    if air_heat is not None and split > 0:
        flow = air_heat / (each * split)
        yield figure(
            "air that moves", flow, "m3/h", source=HEAT, also=[(flow / 1.699011, "ft3/min")]
        )
    if least_split is not None:
        yield at_least(
            "difference, lower limit",
            split,
            least_split,
            "K",
            source=MAKER,
            origin=Origin.MAKER,
            action="does it run? Clean coil and filter; then charge or element, by its trade",
            plain=_PLAIN,
        )
    if most_split is not None:
        yield at_most(
            "difference, upper limit",
            split,
            most_split,
            "K",
            source=MAKER,
            origin=Origin.MAKER,
            action="too little air: filter, duct, lint, fan",
            plain=_PLAIN,
        )

"""The air on both sides of a coil or a heater: its difference, the heat and the air that moves."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    calculation,
    computed,
    figure,
    put,
    requires,
)

from .air_split_inputs import (
    AirDoes,
    AirFlow,
    AirHeat,
    AirIn,
    AirOut,
    LeastSplit,
    MostSplit,
    refuse,
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


@calculation(
    part="heat and cold",
    words=(
        "temperature split; delta T; air in and out; supply and return; coil; air conditioner",
        "dryer outlet; dryer exhaust temperature; condenser air; air flow; CFM; duct; vent",
        "not drying; not cooling room; heat pump; dehumidifier; fan heater; 20 degree split",
        "blower; air temperature difference; temperature drop across coil",
        "temperature rise across; evaporator air; return air; supply air; register",
        "vent temperature; weak air flow; low air flow; clogged filter; dirty coil; iced coil",
        "frosted coil; frozen coil; split system; mini split; furnace rise; air handler",
        "hair dryer; ducts; AC not cooling; aircon not cold; blows warm; blowing warm air",
        "not blowing cold; exhaust; airflow; difference of temperature",
    ),
    go_on="note split, humidity and ambient, to compare next time",
    cautions=("mov-01", "hot-01", "refr-01"),
    not_checked=(
        "water that condenses: a cooling coil takes out more heat than the dry air shows",
        "height: at 1500 m air has a sixth less mass, and takes a sixth less heat",
        "how even the air is: read in several places and take the mean",
    ),
    refuse=refuse,
    example_with=("least_split", "most_split", "air_flow"),
)
def air_split(
    air_does: AirDoes,
    air_in: AirIn,
    air_out: AirOut,
    least_split: LeastSplit = None,
    most_split: MostSplit = None,
    air_flow: AirFlow = None,
    air_heat: AirHeat = None,
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
    yield from _heat_and_flow(air_in, split, air_flow, air_heat)
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


def _heat_and_flow(
    air_in: float, split: float, air_flow: float | None, air_heat: float | None
) -> Iterator[Item]:
    """Yield the heat of a flow in m3/h, or the flow of a heat in W."""
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

"""What a joint must stand: temperature of its place, current, voltage, thickness of insulation."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    Wire,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    caution,
    conductors,
    tables,
)

ROOM_K = 20.0  # kelvin that the weakest rating lies above the place; 15 to 20 K is practice
SHARE_CARE = 0.8  # share of the test current that calls for care; common practice
TAB_SLACK_IN = 0.003  # 6.3 mm is 0.248 in, and the tab is 0.250


def temperature(wire: float | None, terminal: float | None, place: float | None) -> Iterator[Item]:
    """Judge the ratings of wire and terminal, in C, against the temperature of the place."""
    if place is None:
        return
    yield caution("heat-01")
    for name, rating, needs in (
        ("temperature rating of the wire", wire, "wire_temperature"),
        ("temperature rating of the terminal", terminal, "terminal_temperature"),
    ):
        if rating is None:
            yield cannot_tell(
                name,
                "the rating is not known, and the weakest one decides",
                measure=f"a rating of {place + ROOM_K:.0f} C or more would do; read the marking",
                needs=(needs,),
            )
        else:
            yield at_least(
                name,
                rating,
                place + ROOM_K,
                "C",
                source=PRACTICE,
                origin=Origin.PRACTICE,
                says=f"it must lie {ROOM_K:.0f} K above the place, for the heat of the current",
                action=f"use parts rated {place + ROOM_K:.0f} C or more",
            )


def current(wires: Sequence[Wire], amps: float) -> Item:
    """Judge the current by what UL 486 assigns to a connector of one wire."""
    name = "current in the connector"
    thinnest = min(wires, key=lambda w: w.area_cmil)
    gauge = conductors.gauge_for_current(thinnest)
    row = tables.load("joint-currents").find(awg=gauge) if gauge else None
    measure = "take the current from the connector maker's sheet"
    if row is None or row.cells["assigned_A"] is None:
        return cannot_tell(name, f"UL 486 assigns no current to {thinnest} here", measure=measure)
    assigned = row.number("assigned_A")
    most = row.number("higher_assigned_A") if row.cells["higher_assigned_A"] else assigned
    within = at_or_below(amps, assigned) and len(wires) == 1
    if at_or_below(amps, most) and not within:
        wanted = "one wire" if len(wires) > 1 else "some connectors only"
        return cannot_tell(
            name, f"UL 486 assigns {most:g} A to {wanted}", measure=measure, source=row.source
        )
    return at_most(
        name,
        amps,
        assigned if within else most,
        "A",
        source=row.source,
        action="use a thicker wire and its connector, or the maker's own rating",
    )


def push_on(wires: Sequence[Wire], amps: float, tab: float | None) -> Item:
    """Judge the current by the UL 310 test current of tab and gauge."""
    name = "current in the connector"
    thinnest = min(wires, key=lambda w: w.area_cmil)
    gauge = conductors.gauge_for_current(thinnest)
    rows = tables.load("quick-connect-currents").where(awg=gauge)
    fit = [r for r in rows if tab is None or abs(r.number("tab_in") - tab) <= TAB_SLACK_IN]
    limits = sorted((r.number("current_A"), r.source) for r in fit)
    if not limits:
        return cannot_tell(
            name,
            f"UL 310 has no test current for {thinnest} on such a tab",
            measure="take the current from the terminal maker's sheet",
        )
    least, most = limits[0], limits[-1]
    if at_or_below(amps, most[0]) and not at_or_below(amps, least[0]):
        return cannot_tell(
            name,
            f"{least[0]:g} A on the narrowest tab, {most[0]:g} A on the widest",
            measure="measure the width of the tab",
            needs=("tab_width",),
            source=most[1],
        )
    limit, source = least if at_or_below(amps, least[0]) else most
    care = SHARE_CARE * limit
    return at_most(
        name,
        amps,
        limit,
        "A",
        caution=care,
        source=source,
        says="80 % of the test current is common practice",
        action="use a wider tab and terminal, or a thicker wire",
    )


def voltage(volts: float, rated: float | None) -> Iterator[Item]:
    """Judge the voltage of the circuit against that marked on the connector."""
    name = "voltage of the connector"
    if rated is None:
        yield cannot_tell(
            name,
            "the voltage marked on the connector is not known",
            measure="read it on the package (300 V and 600 V are usual)",
            needs=("terminal_voltage",),
        )
    else:
        yield at_most(
            name,
            volts,
            rated,
            "V",
            source=MAKER,
            origin=Origin.MAKER,
            action="use a connector marked for the voltage",
        )


def insulation(diameter: float, limit: float | None) -> Item:
    """Judge whether the insulation goes into the funnel or the insulation barrel."""
    name = "insulation in the insulation barrel"
    if limit is None:
        return cannot_tell(
            name,
            "the largest insulation that the maker lists is not known; it differs by maker",
            measure="read the terminal maker's sheet",
            needs=("insulation_limit",),
        )
    return at_most(
        name,
        diameter,
        limit,
        "mm",
        source=MAKER,
        origin=Origin.MAKER,
        action="use a terminal for thicker insulation; do not shave it",
    )

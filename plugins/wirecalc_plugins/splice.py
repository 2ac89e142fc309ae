"""Choosing a splice or terminal: does the barrel take these wires, here?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated, Any

from wirecalc import (
    MAKER,
    PRACTICE,
    Calculation,
    Count,
    Criterion,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Reading,
    SizeRange,
    Verdict,
    Wire,
    answer,
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    conductors,
    figure,
    hookimpl,
    requires,
    tables,
)
from wirecalc.sources import computed, confirmed
from wirecalc.wires import gauge_cmil, gauge_number

CONNECTORS = ("butt", "closed-end", "twist-on", "push-on", "ring")
LISTED_FOR = ("stranded", "solid", "either", "combination")
EDGE = 0.05  # share of a maker's range at each end that calls for care; common practice
ROOM_K = 20.0  # kelvin that the weakest rating lies above the place; 15 to 20 K is practice
TAB_SLACK_IN = 0.003  # 6.3 mm is 0.248 in, and the tab is 0.250

_GAUGES = computed("astm-b258", "ASTM B258", "areas of the gauges that the barrel names")
_UL_310 = confirmed("ul-310", "UL 310", "scope 1.2 and 1.3", copies=2)
_ALUMINIUM = confirmed("cpsc-516", "CPSC Publication 516", "June 2011", copies=3)
_UL_486C = confirmed("ul-486c-scope", "UL 486C", "6th edition, scope 1.1", copies=3)


@calculation(
    part="wire and joint",
    cautions=("crimp-01", "dead-01"),
    not_checked=("insulation diameter against the insulation barrel", "the die of the tool"),
)
def splice(
    wire: Annotated[list[Wire], "wire in the barrel; repeat it for each"],
    barrel: Annotated[SizeRange, "range of the barrel, as stamped or as on the bag"],
    connector: Annotated[str | None, OneOf(CONNECTORS, text="kind of connector")] = None,
    listed_for: Annotated[
        str | None,
        OneOf(LISTED_FOR, text="wire that the maker lists it for; combination: just these wires"),
    ] = None,
    wire_limit: Annotated[
        int | None, Count("most wires that the maker lists for one barrel", low=1, high=12)
    ] = None,
    wire_temperature: Annotated[
        float | None,
        Nameplate("C", low=40, high=500, typical="105 C", text="rating printed on the wire"),
    ] = None,
    terminal_temperature: Annotated[
        float | None,
        Nameplate("C", low=40, high=500, typical="105 C", text="rating of the terminal"),
    ] = None,
    place_temperature: Annotated[
        float | None,
        Reading("C", low=-40, high=500, typical="60 C", text="temperature of the place"),
    ] = None,
    current: Annotated[
        float | None,
        Reading("A", low=0, high=200, typical="8.7 A", text="line current of the load"),
    ] = None,
    tab_width: Annotated[
        float | None,
        Nameplate("in", low=0.05, high=0.5, typical="0.250 in", text="width of the tab"),
    ] = None,
    voltage: Annotated[
        float | None, Reading("V", low=0, high=1000, typical="120 V", text="voltage of the circuit")
    ] = None,
    terminal_voltage: Annotated[
        float | None,
        Nameplate(
            "V",
            low=1,
            high=35000,
            typical="300 V",
            text="voltage marked on the connector",
            goes_with="voltage",
        ),
    ] = None,
) -> Iterator[Item]:
    """Does this barrel take this wire or these wires, and may it sit in this place?

    One wire with a gauge in a barrel named by gauges is judged by gauge. Sums, metric and odd
    wire are judged by area: inside the areas of the named gauges passes, up to one gauge beyond
    either end is marginal (the area ranges of barrel classes reach just so far, from memory),
    outside fails. A range typed in cmil or mm2 is the maker's and binds as typed, with care in
    the 5 % at either end (common practice). Solid or mixed wire, and more wires than one, need a
    connector listed for them; aluminium is refused. The weakest temperature rating must lie 20 K
    above the place (common practice). The current is judged by the thinnest wire: on a push-on
    tab by UL 310's test current, else by what UL 486 assigns to a connector of one wire.

    Inputs: wire, barrel, connector, listed_for, wire_limit, temperatures in C, current in A,
    voltages in V. Yields the sum, the place in the range, the barrel class that would do, and a
    criterion for each question. Source: tables barrel-ranges and joint-currents.
    """
    total = sum(w.area_cmil for w in wire)
    yield figure(
        "copper in the barrel",
        total,
        "cmil",
        source=conductors.AWG_LAW,
        working=lambda: " + ".join(f"{w.area_cmil:.0f}" for w in wire) + f" = {total:.0f} cmil",
        also=[(sum(w.area_mm2 for w in wire), "mm2")],
    )
    yield from _fit(wire, barrel, total)
    yield from _count(wire, connector, wire_limit, listed_for)
    yield from _build(wire, listed_for)
    yield from _temperature(wire_temperature, terminal_temperature, place_temperature)
    if current is not None:
        yield (
            _push_on(wire, current, tab_width)
            if connector == "push-on"
            else _current(wire, current)
        )
    if voltage is not None:
        yield from _voltage(voltage, terminal_voltage)


def _fit(wires: Sequence[Wire], barrel: SizeRange, total: float) -> Iterator[Item]:
    gauge = conductors.known_gauge(wires[0]) if len(wires) == 1 else None
    if barrel.by_gauge and gauge is not None:
        fits = _by_gauge(gauge, barrel)
    elif barrel.by_gauge:
        fits = _by_named_area(total, barrel)
    else:
        named = len(wires) == 1 and wires[0].nominal_mm2 is not None and barrel.unit == "mm2"
        fits = _by_typed_area(total, barrel, 0.0 if named else EDGE)
        if barrel.high_cmil > barrel.low_cmil:
            share = (total - barrel.low_cmil) / (barrel.high_cmil - barrel.low_cmil)
            yield figure("place in the range", 100 * share, "%")
    judged = list(fits)
    yield from judged
    if any(c.verdict is not Verdict.PASS for c in judged):
        yield _would_do(wires, gauge, total)


def _by_gauge(gauge: str, barrel: SizeRange) -> Iterator[Criterion]:
    number = gauge_number(gauge)
    thin, thick = gauge_number(barrel.thinnest or ""), gauge_number(barrel.thickest or "")
    yield requires(
        "wire is not too thin for the barrel",
        number <= thin,
        says=f"{gauge} AWG is thinner than the {barrel} barrel takes",
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not fold the wire double",
    )
    yield requires(
        "wire is not too thick for the barrel",
        number >= thick,
        says=f"{gauge} AWG is thicker than the {barrel} barrel takes",
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not trim strands",
    )


def _by_named_area(total: float, barrel: SizeRange) -> Iterator[Criterion]:
    thin, thick = gauge_number(barrel.thinnest or ""), gauge_number(barrel.thickest or "")
    says = "it lies within one gauge beyond what the barrel names"
    yield at_least(
        "wire is not too thin for the barrel",
        total,
        gauge_cmil(thin + 1),
        "cmil",
        caution=barrel.low_cmil,
        source=_GAUGES,
        says=says if total < barrel.low_cmil else "",
        action="take the maker's area range from the bag, or the barrel class named below",
    )
    yield at_most(
        "wire is not too thick for the barrel",
        total,
        gauge_cmil(thick - 1),
        "cmil",
        caution=barrel.high_cmil,
        source=_GAUGES,
        says=says if total > barrel.high_cmil else "",
        action="take the maker's area range from the bag, or the barrel class named below",
    )


def _by_typed_area(total: float, barrel: SizeRange, edge: float) -> Iterator[Criterion]:
    span = barrel.high_cmil - barrel.low_cmil
    yield at_least(
        "wire is not too thin for the barrel",
        total,
        barrel.low_cmil,
        "cmil",
        caution=barrel.low_cmil + edge * span,
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not fold the wire double",
    )
    yield at_most(
        "wire is not too thick for the barrel",
        total,
        barrel.high_cmil,
        "cmil",
        caution=barrel.high_cmil - edge * span,
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not trim strands",
    )


def _would_do(wires: Sequence[Wire], gauge: str | None, total: float) -> Item:
    """Name the barrel class that would take the wire."""
    classes = []
    for row in tables.load("barrel-ranges").where(system="US insulated closed barrel"):
        thin, thick = row.text("awg_smallest"), row.text("awg_largest")
        if gauge is not None:
            fits = gauge_number(thick) <= gauge_number(gauge) <= gauge_number(thin)
        else:
            low, high = gauge_cmil(gauge_number(thin)), gauge_cmil(gauge_number(thick))
            fits = low <= total <= high
        if fits:
            classes.append(row.text("barrel_class"))
    what = f"{gauge} AWG" if gauge else f"{total:.0f} cmil"
    if not classes:
        return answer(
            "barrel that would do",
            f"none of the gauge classes holds {what}: "
            "look for a barrel with an area range around it",
        )
    named = " or ".join(f"{c} AWG" for c in classes)
    return answer("barrel that would do", named, because=[f"its gauges include {what}"])


def _count(
    wires: Sequence[Wire], connector: str | None, limit: int | None, listed_for: str | None
) -> Iterator[Item]:
    number = float(len(wires))
    name = "wires in one barrel"
    if connector == "push-on" and number > 2:
        yield at_most(
            name,
            number,
            2,
            source=_UL_310,
            action="use a terminal or splice listed for so many wires",
        )
    elif limit is not None:
        yield at_most(
            name,
            number,
            limit,
            source=MAKER,
            origin=Origin.MAKER,
            action="use a connector listed for so many wires",
        )
    elif number > 1 and listed_for != "combination":
        yield cannot_tell(
            name,
            f"whether the maker lists it for {len(wires)} wires together is not known",
            measure="read the package: --wire-limit, or --listed-for combination",
            needs=("wire_limit",),
        )
    if connector in ("closed-end", "twist-on"):
        yield at_least(
            "wires to join", number, 2, source=_UL_486C, action="it joins two wires or more"
        )


def _build(wires: Sequence[Wire], listed_for: str | None) -> Iterator[Item]:
    others = sorted({w.metal for w in wires} - {"copper"})
    if others:
        yield caution("alu-01")
    yield requires(
        "copper only",
        not others,
        says=f"{' and '.join(others)} wire is not for an ordinary copper connector",
        source=_ALUMINIUM,
        action="stop: it needs a method listed for that metal and a qualified electrician",
    )
    builds = {"stranded" if w.stranded else "solid" for w in wires}
    what = "solid and stranded wire together" if len(builds) > 1 else f"{builds.pop()} wire"
    name = "listed for this wire"
    takes = {"stranded": "stranded wire", "solid": "solid wire"}
    if listed_for is None:
        if what != "stranded wire":
            yield cannot_tell(
                name,
                f"whether the maker lists it for {what} is not known",
                measure="read the package and say --listed-for",
                needs=("listed_for",),
            )
        return
    single = what != "solid and stranded wire together"
    fits = listed_for == "combination" or (single and listed_for == "either")
    yield requires(
        name,
        fits or takes.get(listed_for) == what,
        says=f"a connector listed for {listed_for} wire is not listed for {what}",
        source=MAKER,
        origin=Origin.MAKER,
        action=f"use a connector listed for {what}",
    )


def _temperature(wire: float | None, terminal: float | None, place: float | None) -> Iterator[Item]:
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


def _current(wires: Sequence[Wire], current: float) -> Item:
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
    within = at_or_below(current, assigned) and len(wires) == 1
    if at_or_below(current, most) and not within:
        wanted = "one wire" if len(wires) > 1 else "some connectors only"
        return cannot_tell(
            name, f"UL 486 assigns {most:g} A to {wanted}", measure=measure, source=row.source
        )
    return at_most(
        name,
        current,
        assigned if within else most,
        "A",
        source=row.source,
        action="use a thicker wire and its connector, or the maker's own rating",
    )


def _push_on(wires: Sequence[Wire], current: float, tab: float | None) -> Item:
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
    if at_or_below(current, most[0]) and not at_or_below(current, least[0]):
        return cannot_tell(
            name,
            f"{least[0]:g} A on the narrowest tab, {most[0]:g} A on the widest",
            measure="measure the width of the tab",
            needs=("tab_width",),
            source=most[1],
        )
    limit, source = least if at_or_below(current, least[0]) else most
    return at_most(
        name,
        current,
        limit,
        "A",
        source=source,
        action="use a wider tab and terminal, or a thicker wire",
    )


def _voltage(voltage: float, rated: float | None) -> Iterator[Item]:
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
            voltage,
            rated,
            "V",
            source=MAKER,
            origin=Origin.MAKER,
            action="use a connector marked for the voltage",
        )


@hookimpl
def wirecalc_calculations() -> Sequence[Calculation[Any]]:
    """Provide the splice check."""
    return [splice]

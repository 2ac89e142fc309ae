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
    calculation,
    cannot_tell,
    caution,
    conductors,
    figure,
    hookimpl,
    requires,
    tables,
)
from wirecalc.sources import computed, confirmed, from_memory
from wirecalc.wires import gauge_cmil, gauge_number

CONNECTORS = ("butt", "closed-end", "twist-on", "push-on", "ring")
LISTED_FOR = ("stranded", "solid", "either", "mix")
EDGE = 0.05  # share of a maker's range at each end that calls for care; common practice
ROOM_K = 20.0  # kelvin between the place and the weakest rating; 15 to 20 K is common practice

_GAUGES = computed("astm-b258", "ASTM B258", "areas of the gauges that the barrel names")
_UL_310 = confirmed("ul-310", "UL 310", "scope 1.2 and 1.3", copies=2)
_ALUMINIUM = confirmed("cpsc-516", "CPSC Publication 516", "June 2011", copies=3)
_SOLID = confirmed("nasa-8739-4", "NASA-STD-8739.4", "Change 6, 4.3.4", copies=4)
_MIX = from_memory("ul-486c", "UL 486C", "combinations must be listed on the package")
_UL_486C = confirmed("ul-486c-scope", "UL 486C", "6th edition, scope 1.1", copies=3)
_TEMPERATURE = confirmed("faa-43-13", "FAA AC 43.13-1B", "11-174 a", copies=1)


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
        str,
        OneOf(LISTED_FOR, text="wire that the maker lists it for; mix: this very combination"),
    ] = "stranded",
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
    either end is marginal (the ranges of barrel classes, from memory, reach just so far), outside
    fails. A range typed in cmil or mm2 is the maker's and binds as typed, with care in the 5 % at
    either end (common practice). Solid or mixed wire needs a connector listed for it; aluminium
    is refused. The weakest temperature rating must reach the place, with 20 K of room (common
    practice). The current is that of UL 486's assigned currents for the thinnest wire.

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
    yield from _count(wire, connector, wire_limit)
    yield from _build(wire, listed_for)
    yield from _temperature(wire_temperature, terminal_temperature, place_temperature)
    if current is not None:
        yield _current(wire, current)
    if voltage is not None:
        yield from _voltage(voltage, terminal_voltage)


def _fit(wires: Sequence[Wire], barrel: SizeRange, total: float) -> Iterator[Item]:
    gauge = conductors.known_gauge(wires[0]) if len(wires) == 1 else None
    if barrel.by_gauge and gauge is not None:
        fits = _by_gauge(gauge, barrel)
    elif barrel.by_gauge:
        fits = _by_named_area(total, barrel)
    else:
        fits = _by_typed_area(total, barrel)
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
    says = "up to one gauge beyond the name; barrel classes reach so far, from memory"
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


def _by_typed_area(total: float, barrel: SizeRange) -> Iterator[Criterion]:
    span = barrel.high_cmil - barrel.low_cmil
    yield at_least(
        "wire is not too thin for the barrel",
        total,
        barrel.low_cmil,
        "cmil",
        caution=barrel.low_cmil + EDGE * span,
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not fold the wire double",
    )
    yield at_most(
        "wire is not too thick for the barrel",
        total,
        barrel.high_cmil,
        "cmil",
        caution=barrel.high_cmil - EDGE * span,
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


def _count(wires: Sequence[Wire], connector: str | None, limit: int | None) -> Iterator[Item]:
    number = float(len(wires))
    name = "wires in one barrel"
    if limit is not None:
        yield at_most(name, number, limit, "wires", source=MAKER, origin=Origin.MAKER)
    elif connector == "push-on":
        yield at_most(
            name,
            number,
            2,
            "wires",
            source=_UL_310,
            action="use a terminal or splice listed for so many wires",
        )
    elif connector in ("closed-end", "twist-on"):
        yield at_least("wires to join", number, 2, "wires", source=_UL_486C)
    elif number > 1:
        yield at_most(
            name,
            number,
            3,
            "wires",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            advisory=True,
            says="check the maker's list",
        )


def _build(wires: Sequence[Wire], listed_for: str) -> Iterator[Item]:
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
    solid = any(not w.stranded for w in wires)
    if solid and any(w.stranded for w in wires):
        yield requires(
            "solid and stranded together",
            listed_for == "mix",
            says=f"a connector listed for {listed_for} wire is not listed for this mix",
            source=MAKER if listed_for == "mix" else _MIX,
            origin=Origin.MAKER,
            action="use a connector listed for this combination",
        )
    elif solid:
        yield requires(
            "solid wire",
            listed_for != "stranded",
            says="the connector is not listed for solid wire",
            source=MAKER if listed_for != "stranded" else _SOLID,
            origin=Origin.MAKER,
            action="use a connector listed for solid wire",
        )
    else:
        yield requires(
            "stranded wire",
            listed_for != "solid",
            says="the connector is listed for solid wire only",
            source=MAKER,
            origin=Origin.MAKER,
            action="use a connector listed for stranded wire",
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
                place,
                "C",
                caution=place + ROOM_K,
                source=_TEMPERATURE,
                says=f"{ROOM_K:.0f} K above the place is common practice",
                action=f"use parts rated {place + ROOM_K:.0f} C or more",
            )


def _current(wires: Sequence[Wire], current: float) -> Item:
    """Judge the current by the thinnest wire's assigned current in a connector."""
    name = "current in the connector"
    thinnest = min(wires, key=lambda w: w.area_cmil)
    gauge = conductors.gauge_for_current(thinnest)
    row = tables.load("joint-currents").find(awg=gauge) if gauge else None
    if row is None or row.cells["assigned_A"] is None:
        return cannot_tell(
            name,
            f"UL 486 assigns no current to {thinnest} here",
            measure="take the current from the connector maker's sheet",
        )
    return at_most(
        name,
        current,
        row.number("assigned_A"),
        "A",
        source=row.source,
        action="use a thicker wire and its connector, or the maker's own rating",
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

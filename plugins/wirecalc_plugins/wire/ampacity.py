"""The current that a published table gives a wire in its use."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, NamedTuple

from wirecalc import (
    Count,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    Source,
    Wire,
    answer,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    figure,
    not_checked,
    put,
    requires,
    tables,
)
from wirecalc import conductors as trade
from wirecalc.sources import confirmed

from ..inputs import SLIP_A
from .appliance_wire import appliance_wire

USES = ("building", "cord", "fixture", "appliance")
RATINGS = (60, 75, 90)

_TERMINATION = confirmed("nec-110-14", "NEC", "110.14(C)(1)", copies=2)
_LOAD = "load on the wire"
_ELECTRICIAN = "put the load on a circuit that carries it: a job for an electrician"
_LESS = "take less load, or a thicker wire or one of a higher temperature rating"
_CORD_OTHERWISE = "take the current from the cord's marking or its maker"
_ONLY_FOR = {  # input -> uses whose table asks for it; in the order of `given` below
    "insulation_class": ("building",),
    "conductors": ("building",),
    "cord_conductors": ("cord",),
    "wire_temperature": ("appliance",),
    "place_temperature": ("appliance",),
    "ambient": ("building", "cord", "fixture"),
}


def _refuse(insulation_class: float | None = None, **others: object) -> Iterator[Problem]:
    termination = others.get("termination_temperature")
    for name, value in (
        ("insulation_class", insulation_class),
        ("termination_temperature", termination),
    ):
        if value is not None and value not in RATINGS:
            yield Problem(
                name, f"{value:g} C is no column of the ampacity table", "write 60 C, 75 C or 90 C"
            )


@calculation(
    part="circuit",
    not_checked=(
        "125 % for a load that runs 3 hours or more, and the breaker: see `breaker`",
        "the terminals at both ends, and what else warms the wire",
    ),
    refuse=_refuse,
    example_with=(
        "wire=14 AWG",
        "insulation_class=75 C",
        "conductors",
        "ambient=40 C",
        "current=10 A",
    ),
)
def ampacity(
    use: Annotated[str, OneOf(USES, text="where the wire serves")],
    wire: Annotated[Wire, "wire that carries the current"],
    insulation_class: Annotated[
        float | None,
        Nameplate(
            "C", low=0, high=300, typical="60 C", text="insulation class of the building wire"
        ),
    ] = None,
    termination_temperature: Annotated[
        float,
        Nameplate(
            "C",
            low=0,
            high=300,
            typical="60 C",
            text="rating marked on the terminations of the building wire",
            goes_with="insulation_class",
        ),
    ] = 60.0,
    conductors: Annotated[
        int | None,
        Count("current-carrying wires in the cable or raceway of the building", low=1, high=100),
    ] = None,
    cord_conductors: Annotated[
        int | None, Count("wires of the cord that carry current", low=2, high=3)
    ] = None,
    wire_temperature: Annotated[
        float | None,
        Nameplate(
            "C",
            above=0,
            high=500,
            typical="105 C",
            text="temperature rating printed on an appliance wire",
        ),
    ] = None,
    place_temperature: Annotated[
        float | None,
        Reading("C", low=-40, high=500, typical="60 C", text="place where an appliance wire runs"),
    ] = None,
    ambient: Annotated[
        float | None,
        Reading("C", low=-40, high=90, typical="25 C", text="air around building wire or cord"),
    ] = None,
    current: Annotated[
        float | None,
        Reading(
            "A",
            above=0,
            high=400,
            typical="8.7 A",
            text="current to judge, if any",
            slip_under=SLIP_A,
        ),
    ] = None,
) -> Iterator[Item]:
    """How much current does a published table give this wire in this use?

    building: NEC Table 310.16 for the insulation class, times the factors of ambient and bundling,
    and not above the termination's column (60 C assumed); the largest breaker of 240.4(D) is shown.
    cord: NEC Table 400.5(A)(1); fixture: NEC Table 402.5; both for up to 30 C. appliance: no body
    has issued an ampacity, so two published views are given as advice, the current of a wire in a
    large aircraft bundle (a low bound, to 70 C) and what one wire maker suggests for a single
    wire. A size that a table does not list counts as the next thinner one.

    Inputs: use; wire; classes and ratings in C; ambient in C (-40 to 90) or
    place_temperature in C (-40 to 500) of appliance wire; counts; current in A
    (over 0 to 400). Yields the table and its values, and judges the current: binding by the NEC,
    advice for appliance wire. Refuses a class that is no column. Can't tell for a use or size
    without a table, metric wire included.
    Source: tables nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors, cords,
    appliance-wire, appliance-wire-ambient.
    """
    given: tuple[float | None, ...] = (insulation_class, conductors, cord_conductors)
    given += (wire_temperature, place_temperature, ambient)
    for (name, uses), value in zip(_ONLY_FOR.items(), given, strict=True):
        if value is not None and use not in uses:
            yield not_checked(name, f"no table for {use} wire asks for it")
    if use == "building":
        yield caution("brk-01")
        lies = _Lies(insulation_class, int(termination_temperature), ambient, conductors)
        yield from _building(wire, lies, current)
    elif use == "cord":
        yield from _cord(wire, cord_conductors, ambient, current)
    elif use == "fixture":
        yield answer("table", "NEC Table 402.5, fixture wire, 30 C")
        row = None
        if wire.metal == "copper":
            row = trade.listed_size(tables.load("cords").where(use="fixture wire"), wire)
        yield from _at_30(wire, row, ambient, current)
    else:
        yield caution("heat-01")
        yield from appliance_wire(wire, wire_temperature, place_temperature, current)


def _name(current: float | None) -> str:
    return "ampacity" if current is None else _LOAD


class _Lies(NamedTuple):
    """How a building wire lies: class and ambient in C, current-carrying wires together."""

    wire_class: float | None
    termination: int
    ambient: float | None
    together: int | None


def _building(wire: Wire, lies: _Lies, current: float | None) -> Iterator[Item]:
    if lies.wire_class is None:
        for rating in RATINGS:
            row = trade.ampacity(wire, rating)
            if row is not None:
                yield figure(f"{rating} C column", row.number("ampacity_A"), "A", source=row.source)
        yield cannot_tell(
            _name(current),
            "it depends on the insulation class, which was not given",
            measure="read the class on the wire or its cable: 60, 75 or 90 C",
            needs=("insulation_class",),
        )
        return
    if wire.metal != "copper":
        yield caution("alu-01")
    wire_class = int(lies.wire_class)
    yield answer("table", f"NEC Table 310.16, {wire.metal}, {wire_class} C column")
    small = trade.small_conductor_breaker(wire)
    if small is not None:
        amps = small.number("breaker_A")
        yield figure("largest breaker (NEC 240.4(D))", amps, "A", source=small.source)
        yield not_checked(f"the breaker of {amps:g} A", small.text("condition"))
        if current is not None:
            yield at_most(
                "load against the largest breaker of this wire",
                current,
                amps,
                "A",
                source=small.source,
                advisory=True,
                says="motor circuits aside",
                action="a load above it needs thicker wire and its breaker",
            )
    column = min(wire_class, lies.termination)
    own, capped = trade.ampacity(wire, wire_class), trade.ampacity(wire, column)
    if own is not None:
        yield from _listed(wire, own)
    if own is None or capped is None:
        where = f" in the {column} C column of its terminations" if own is not None else ""
        yield _no_row(wire, trade.thinnest_ampacity(wire, column), current, where)
        return
    cap = capped.number("ampacity_A")
    yield figure(
        "most at the termination",
        cap,
        "A",
        source=_TERMINATION,
        working=lambda: f"the {column} C column of the table",
    )
    yield from _corrected(own, cap, lies, current)


def _corrected(own: tables.Row, cap: float, lies: _Lies, current: float | None) -> Iterator[Item]:
    wire_class = int(lies.wire_class or 0)
    given = (("ambient", lies.ambient), ("conductors", lies.together))
    missing = [name for name, value in given if value is None]
    if lies.ambient is None or lies.together is None:
        if current is not None and not at_or_below(current, cap):
            yield _binding(current, cap, _TERMINATION)
        else:
            yield cannot_tell(
                _name(current),
                f"{' and '.join(missing)} not given: heat around the wire lowers what it carries",
                measure="measure the hottest air around the wire; count the wires in the cable",
                needs=missing,
            )
        return
    heat = trade.ambient_factor(wire_class, lies.ambient)
    if heat is None:
        yield requires(
            _name(current),
            False,
            says=f"the table of {wire_class} C wire ends below {lies.ambient:g} C",
            source=trade.hottest_factor(wire_class).source,
            action="this wire is not for so hot a place: a job for an electrician",
        )
        return
    bundle = trade.count_factor(lies.together)
    amps = own.number("ampacity_A") * heat.value * bundle.value
    source = bundle.source if bundle.value < heat.value else heat.source
    yield figure(
        "ampacity as it lies",
        min(amps, cap),
        "A",
        source=source if amps < cap else _TERMINATION,
        working=lambda: (
            f"{put(own.number('ampacity_A'))} A x {put(heat.value)} x {put(bundle.value)}; at "
            f"{put(lies.ambient or 0.0)} C, {lies.together} wires"
            if amps < cap
            else f"the most at the termination, which is less than {put(amps, 'A')}"
        ),
        toward="down",
    )
    if current is not None:
        yield _binding(current, min(amps, cap), source if amps < cap else _TERMINATION)


def _binding(current: float, amps: float, source: Source) -> Item:
    return at_most(_LOAD, current, amps, "A", source=source, action=_ELECTRICIAN)


def _listed(wire: Wire, row: tables.Row) -> Iterator[Item]:
    yield figure("ampacity of the table", row.number("ampacity_A"), "A", source=row.source)
    if trade.known_gauge(wire) != row.text("awg"):
        yield not_checked(f"{wire} itself", f"not listed, so it counts as {row.text('awg')} AWG")


def _no_row(wire: Wire, last: tables.Row | None, current: float | None, where: str = "") -> Item:
    """Judge a wire without a row: thinner than all of them, it carries no more than the last."""
    if current is not None and last is not None:
        amps = last.number("ampacity_A")
        if not at_or_below(current, amps):
            return at_most(
                _LOAD,
                current,
                amps,
                "A",
                source=last.source,
                says=f"{wire} is thinner than the thinnest size listed",
                action=_ELECTRICIAN,
            )
    return cannot_tell(
        _name(current),
        f"this table has no ampacity for {wire}{where}",
        measure="use the table that this wire was installed by, or its maker's sheet",
    )


def _cord(
    wire: Wire, live: int | None, ambient: float | None, current: float | None
) -> Iterator[Item]:
    if live is None:
        yield cannot_tell(
            _name(current),
            "a cord with three live wires carries less than one with two",
            measure="count the wires of the cord that carry current, the ground not among them",
            needs=("cord_conductors",),
        )
        return
    word = {2: "two", 3: "three"}[live]
    yield answer("table", f"NEC Table 400.5(A)(1), {word} live wires, 30 C")
    yield from _at_30(wire, trade.cord_ampacity(wire, live), ambient, current)


def _at_30(
    wire: Wire, row: tables.Row | None, ambient: float | None, current: float | None
) -> Iterator[Item]:
    """Judge by a table that is for 30 C and lower only."""
    if row is None:
        yield _no_row(wire, None, current)
        return
    yield from _listed(wire, row)
    amps, warmest = row.number("ampacity_A"), row.number("ambient_C")
    over = current is not None and not at_or_below(current, amps)
    if not over and ambient is None:
        yield cannot_tell(
            _name(current),
            f"the table is for {warmest:g} C and the ambient was not given",
            measure="measure the hottest air around the wire",
            needs=("ambient",),
            source=row.source,
        )
    elif not over and ambient is not None and not at_or_below(ambient, warmest):
        yield cannot_tell(
            _name(current),
            f"the table is for {warmest:g} C and it is {ambient:g} C here",
            measure=_CORD_OTHERWISE,
            source=row.source,
        )
    elif current is not None:
        yield at_most(_LOAD, current, amps, "A", source=row.source, action=_LESS)

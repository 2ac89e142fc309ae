"""The branch circuit: does it carry the load?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated, Any

from wirecalc import (
    Calculation,
    Count,
    Item,
    Nameplate,
    Problem,
    Reading,
    Wire,
    YesNo,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    conductors,
    figure,
    hookimpl,
    requires,
    tables,
)
from wirecalc.sources import confirmed

LONG_RUN_H = 3.0  # NEC article 100: a load of 3 hours or more is continuous
CONTINUOUS = 1.25
RATINGS = (60, 75, 90)

_CONTINUOUS = confirmed("nec-210-20", "NEC", "210.19(A)(1) and 210.20(A)", copies=2)
_INDIVIDUAL = confirmed("nec-210-22", "NEC", "210.22", copies=1)
_TERMINATION = confirmed("nec-110-14", "NEC", "110.14(C)(1)", copies=2)


def _refuse(
    current: float,
    breaker: float,
    wire: Wire | None = None,
    wire_temperature: float = 60.0,
    termination_temperature: float = 60.0,
    run_time: float = LONG_RUN_H,
    receptacle: float | None = None,
    only_receptacle: bool | None = None,
    cord: Wire | None = None,
    cord_conductors: int = 3,
    ambient: float | None = None,
    conductors: int | None = None,
) -> Iterator[Problem]:
    for name, value in (
        ("wire_temperature", wire_temperature),
        ("termination_temperature", termination_temperature),
    ):
        if value not in RATINGS:
            yield Problem(
                name, f"{value:g} C is no column of the ampacity table", "write 60 C, 75 C or 90 C"
            )


@calculation(
    part="circuit",
    cautions=("brk-01", "cord-04", "live-01"),
    not_checked=(
        "motor and compressor circuits (NEC 430 and 440 set the breaker by other rules)",
        "browned, warm or loose plug, receptacle and joints: no breaker sees those",
        "the code edition in force here",
    ),
    refuse=_refuse,
)
def breaker(
    current: Annotated[
        float, Reading("A", above=0, high=100, typical="8.7 A", text="line current of the load")
    ],
    breaker: Annotated[
        float, Nameplate("A", low=5, high=100, typical="15 A", text="rating on the breaker handle")
    ],
    wire: Annotated[Wire | None, "wire of the building circuit"] = None,
    wire_temperature: Annotated[
        float,
        Nameplate(
            "C",
            low=0,
            high=300,
            typical="60 C",
            text="insulation class of the wire",
            goes_with="wire",
        ),
    ] = 60.0,
    termination_temperature: Annotated[
        float,
        Nameplate(
            "C",
            low=0,
            high=300,
            typical="60 C",
            text="rating marked on the terminations",
            goes_with="wire",
        ),
    ] = 60.0,
    run_time: Annotated[
        float,
        Reading("h", low=0, high=8760, typical="1 h", text="longest time that the load runs"),
    ] = LONG_RUN_H,
    receptacle: Annotated[
        float | None,
        Nameplate("A", low=5, high=60, typical="15 A", text="rating of the receptacle"),
    ] = None,
    only_receptacle: Annotated[
        bool | None, YesNo("it is the only outlet of its circuit", goes_with="receptacle")
    ] = None,
    cord: Annotated[Wire | None, "wire of the flexible cord"] = None,
    cord_conductors: Annotated[
        int, Count("wires of the cord that carry current", low=2, high=3, goes_with="cord")
    ] = 3,
    ambient: Annotated[
        float | None,
        Reading("C", low=-40, high=90, typical="25 C", text="temperature around the building wire"),
    ] = None,
    conductors: Annotated[
        int | None,
        Count("current-carrying wires in the cable or raceway", low=1, high=100, goes_with="wire"),
    ] = None,
) -> Iterator[Item]:
    """Do breaker, building wire, receptacle and cord carry this load?

    The breaker and the wire before correction carry 125 % of a load that runs 3 hours or more
    (NEC 210.19, 210.20), any other as it is; the wire after correction for ambient and bundling
    carries the load; small wire has a largest breaker of its own (240.4(D)). The ampacity is
    never taken above the termination's column (110.14(C)). One plug-in load takes at most 80 % of
    a receptacle that shares its circuit (Table 210.21(B)(2)). The cord has its own table
    (400.5(A)(1)), for 30 C.

    Inputs: current in A (over 0 to 100), breaker, receptacle in A, wire and cord, run_time in h
    (3 h assumed), temperatures in C, counts. Yields shares and one criterion a link.
    Source: tables nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors,
    nec-receptacles, cords.
    """
    factor = CONTINUOUS if run_time >= LONG_RUN_H else 1.0
    yield figure(
        "share of the breaker",
        100 * current / breaker,
        "%",
        source=_INDIVIDUAL,
        working=lambda: f"100 x {current:.4g} A / {breaker:.4g} A",
    )
    yield at_most(
        "load on the breaker",
        current * factor,
        breaker,
        "A",
        source=_CONTINUOUS,
        says="a load of 3 h or more counts 125 %" if factor > 1 else "",
        action="put the load on a circuit that carries it; never fit a larger breaker",
    )
    if wire is not None:
        yield from _building_wire(
            current,
            factor,
            breaker,
            wire,
            wire_temperature,
            termination_temperature,
            ambient,
            conductors,
        )
    if receptacle is not None:
        yield from _receptacle(current, breaker, receptacle, only_receptacle)
    if cord is not None:
        yield from _cord(current, cord, cord_conductors, ambient)


def _building_wire(
    current: float,
    factor: float,
    rating: float,
    wire: Wire,
    wire_class: float,
    termination: float,
    ambient: float | None,
    count: int | None,
) -> Iterator[Item]:
    own = conductors.ampacity(wire, int(wire_class))
    at_terminal = conductors.ampacity(wire, int(min(wire_class, termination)))
    if own is None or at_terminal is None:
        yield _unlisted(current * factor, wire, int(wire_class))
        return
    yield from _protection(rating, wire, at_terminal)
    yield at_most(
        "load on the wire",
        current * factor,
        at_terminal.number("ampacity_A"),
        "A",
        source=at_terminal.source,
        says="a load of 3 h or more counts 125 %" if factor > 1 else "",
        action="put the load on a circuit with thicker wire: a job for an electrician",
    )
    yield from _corrected(current, own, at_terminal, int(wire_class), ambient, count)


def _unlisted(load: float, wire: Wire, wire_class: int) -> Item:
    """Judge a wire that the table does not list: thinner than all carries no more than the last."""
    name = "load on the wire"
    last = conductors.thinnest_ampacity(wire, wire_class)
    if last is not None and not at_or_below(load, last.number("ampacity_A")):
        return at_most(
            name,
            load,
            last.number("ampacity_A"),
            "A",
            source=last.source,
            says=f"{wire} is thinner than the thinnest size listed",
            action="take the load off this wire: a job for an electrician",
        )
    return cannot_tell(
        name,
        f"NEC Table 310.16 has no ampacity for {wire} at {wire_class} C",
        measure="use the table of the code that this wire was installed by",
    )


def _protection(rating: float, wire: Wire, at_terminal: tables.Row) -> Iterator[Item]:
    """Judge the breaker on this wire: NEC 240.4(D) for small wire, else its ampacity."""
    name = "breaker on this wire"
    small = conductors.small_conductor_breaker(wire)
    if small is not None and _only_if(small, rating):
        yield cannot_tell(
            name,
            f"NEC 240.4(D) allows {small.number('breaker_A'):g} A here {small.text('condition')}",
            measure="read the breaker's marking and the code in force",
            source=small.source,
        )
    elif small is not None:
        yield at_most(
            name,
            rating,
            small.number("breaker_A"),
            "A",
            source=small.source,
            action="have an electrician fit the breaker that the wire allows",
        )
    elif rating <= at_terminal.number("ampacity_A"):
        yield at_most(
            name, rating, at_terminal.number("ampacity_A"), "A", source=at_terminal.source
        )
    else:
        yield cannot_tell(
            name,
            f"the breaker is over the wire's {at_terminal.number('ampacity_A'):g} A; "
            "NEC 240.4(B) allows the next standard rating on some circuits (from memory)",
            measure="have an electrician read the code for this circuit",
            source=at_terminal.source,
        )


def _only_if(small: tables.Row, rating: float) -> bool:
    """Whether 240.4(D) allows the breaker on conditions only: below 15 A it asks for more."""
    return small.number("breaker_A") < 15 and at_or_below(rating, small.number("breaker_A"))


def _corrected(
    current: float,
    own: tables.Row,
    at_terminal: tables.Row,
    wire_class: int,
    ambient: float | None,
    count: int | None,
) -> Iterator[Item]:
    name = "load on the wire, corrected"
    missing = [n for n, v in (("ambient", ambient), ("conductors", count)) if v is None]
    if ambient is None or count is None:
        yield cannot_tell(
            name,
            f"{' and '.join(missing)} not given: heat around the wire lowers what it carries",
            measure="measure the hottest air around the wire; count the wires in the cable",
            needs=missing,
        )
        return
    heat, bundle = conductors.ambient_factor(wire_class, ambient), conductors.count_factor(count)
    if heat is None:
        yield requires(
            name,
            False,
            says=f"the table of {wire_class} C wire ends below {ambient:g} C",
            source=_TERMINATION,
            action="this wire is not for so hot a place: a job for an electrician",
        )
        return
    corrected = own.number("ampacity_A") * heat.value * bundle.value
    limit = min(corrected, at_terminal.number("ampacity_A"))
    yield figure(
        "corrected ampacity",
        limit,
        "A",
        source=heat.source,
        working=lambda: (
            f"{own.number('ampacity_A'):g} A x {heat.value:g} ({ambient:g} C) x {bundle.value:g} "
            f"({count} wires), at most {at_terminal.number('ampacity_A'):g} A at the termination"
        ),
    )
    yield at_most(
        name,
        current,
        limit,
        "A",
        source=heat.source if corrected < at_terminal.number("ampacity_A") else _TERMINATION,
        action="take the load off this circuit: a job for an electrician",
    )


def _receptacle(
    current: float, circuit: float, receptacle: float, only: bool | None
) -> Iterator[Item]:
    name = "load on the receptacle"
    table = tables.load("nec-receptacles")
    row = table.find(circuit_A=circuit, receptacle_A=receptacle)
    if row is None:
        yield cannot_tell(
            name,
            f"NEC Table 210.21(B) has no {receptacle:g} A receptacle on a {circuit:g} A circuit",
            measure="have an electrician look at the circuit",
        )
        return
    shared = row.number("max_plug_load_A") if row.cells["max_plug_load_A"] else None
    source = table.column_source(row, "max_plug_load_A")
    if only or shared is None:
        yield at_most(name, current, receptacle, "A", source=_INDIVIDUAL)
    elif only is None and not at_or_below(current, shared) and at_or_below(current, receptacle):
        yield cannot_tell(
            name,
            f"over {shared:g} A, and it was not said whether the circuit has other outlets",
            measure="switch the breaker off and see what else goes dead",
            needs=("only_receptacle",),
            source=source,
        )
    else:
        yield at_most(
            name,
            current,
            shared if only is False or at_or_below(current, shared) else receptacle,
            "A",
            source=source,
            action="put the load on a circuit of its own",
        )


def _cord(current: float, cord: Wire, live: int, ambient: float | None) -> Iterator[Item]:
    name = "load on the cord"
    row = conductors.cord_ampacity(cord, live)
    if row is None:
        yield cannot_tell(
            name,
            f"NEC Table 400.5(A)(1) has no {cord} with {live} live wires",
            measure="take the cord's current from its marking or its maker",
        )
    elif (
        ambient is not None
        and ambient > row.number("ambient_C")
        and at_or_below(current, row.number("ampacity_A"))
    ):
        yield cannot_tell(
            name,
            f"the cord table is for {row.number('ambient_C'):g} C and it is {ambient:g} C here",
            measure="take the cord's current from its maker",
            source=row.source,
        )
    else:
        yield at_most(
            name,
            current,
            row.number("ampacity_A"),
            "A",
            source=row.source,
            action="fit a cord with thicker wire, of the same type",
        )


@hookimpl
def wirecalc_calculations() -> Sequence[Calculation[Any]]:
    """Provide the breaker check."""
    return [breaker]

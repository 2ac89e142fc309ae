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
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    hookimpl,
    requires,
    tables,
)
from wirecalc import conductors as trade
from wirecalc.sources import confirmed

from .building_wire import CONTINUOUS, Place, building_wire
from .inputs import BREAKER

LONG_RUN_H = 3.0  # NEC article 100: a load of 3 hours or more is continuous
RATINGS = (60, 75, 90)

_CONTINUOUS = confirmed("nec-210-20", "NEC", "210.19(A)(1) and 210.20(A)", copies=2)
_INDIVIDUAL = confirmed("nec-210-22", "NEC", "210.22", copies=1)
_FASTENED = confirmed("nec-210-23-a", "NEC", "210.23(A)(2)", copies=2)
_SINGLE = confirmed("nec-210-21-b-1", "NEC", "210.21(B)(1)", copies=2)
_SEVERAL = confirmed("nec-210-21-b-3", "NEC", "Table 210.21(B)(3)", copies=2)


def _refuse(
    current: float,
    breaker: float,
    wire: Wire | None = None,
    insulation_class: float = 60.0,
    termination_temperature: float = 60.0,
    run_time: float | None = None,
    receptacle: float | None = None,
    only_receptacle: bool | None = None,
    fastened_in_place: bool | None = None,
    feeds_others: bool | None = None,
    cord: Wire | None = None,
    cord_conductors: int | None = None,
    ambient: float | None = None,
    conductors: int | None = None,
) -> Iterator[Problem]:
    for name, value in (
        ("insulation_class", insulation_class),
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
        "other loads on the circuit",
        "the code edition in force here",
    ),
    refuse=_refuse,
)
def breaker(
    current: Annotated[
        float, Reading("A", above=0, high=100, typical="8.7 A", text="line current of the load")
    ],
    breaker: Annotated[float, BREAKER],
    wire: Annotated[Wire | None, "wire of the building circuit"] = None,
    insulation_class: Annotated[
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
        float | None,
        Reading("h", low=0, high=8760, typical="1 h", text="longest time that the load runs"),
    ] = None,
    receptacle: Annotated[
        float | None,
        Nameplate("A", low=5, high=60, typical="15 A", text="rating of the receptacle"),
    ] = None,
    only_receptacle: Annotated[
        bool | None, YesNo("it is the only outlet of its circuit", goes_with="receptacle")
    ] = None,
    fastened_in_place: Annotated[bool | None, "it is built in or wired in, not plugged in"] = None,
    feeds_others: Annotated[
        bool | None,
        YesNo("the circuit also feeds lights or receptacles", goes_with="fastened_in_place"),
    ] = None,
    cord: Annotated[Wire | None, "wire of the flexible cord"] = None,
    cord_conductors: Annotated[
        int | None,
        Count("wires of the cord that carry current", low=2, high=3, goes_with="cord"),
    ] = None,
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
    (400.5(A)(1)), for 30 C. What is fastened in place takes at most half of a circuit that also
    feeds others (210.23(A)(2)).

    Inputs: current in A (over 0 to 100), breaker and receptacle in A, wire and cord, run_time in
    h, temperatures in C, counts. Where a criterion turns on an input that was left out, it can't
    be told between the two answers. Yields shares and one criterion a link.
    Source: tables nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors,
    standard-ratings, nec-receptacles, cords.
    """
    factor = 1.0 if run_time is not None and run_time < LONG_RUN_H else CONTINUOUS
    yield figure(
        "share of the breaker",
        100 * current / breaker,
        "%",
        source=_INDIVIDUAL,
        working=lambda: f"100 x {current:.4g} A / {breaker:.4g} A",
    )
    yield _on_breaker(current, factor, breaker, run_time)
    if wire is not None:
        place = Place(int(insulation_class), int(termination_temperature), ambient, conductors)
        known = factor if run_time is not None else None
        yield from building_wire(current, known, breaker, wire, place)
    if receptacle is not None:
        yield from _receptacle(current, breaker, receptacle, only_receptacle)
    if fastened_in_place:
        yield from _fastened(current, breaker, feeds_others)
    if cord is not None:
        yield _cord(current, cord, cord_conductors, ambient)


def _on_breaker(current: float, factor: float, breaker: float, run_time: float | None) -> Item:
    """Judge the load on the breaker; how long it runs matters between 80 and 100 %."""
    name = "load on the breaker"
    if (
        run_time is None
        and at_or_below(current, breaker)
        and not at_or_below(current * factor, breaker)
    ):
        return cannot_tell(
            name,
            f"{current:.4g} A on {breaker:g} A: from 3 h on the load counts 125 %, and it was not "
            "said how long it runs",
            measure="find out how long it runs at most",
            needs=("run_time",),
            source=_CONTINUOUS,
        )
    counted = (
        current if run_time is None and not at_or_below(current, breaker) else current * factor
    )
    return at_most(
        name,
        counted,
        breaker,
        "A",
        source=_CONTINUOUS,
        says="a load of 3 h or more counts 125 %" if counted > current else "",
        action="put the load on a circuit that carries it; never fit a larger breaker",
    )


def _fastened(current: float, circuit: float, feeds_others: bool | None) -> Iterator[Item]:
    """What is fastened in place takes at most half of a circuit that also feeds others."""
    if feeds_others is False:
        return
    name, half = "load fastened in place", circuit / 2
    yield figure("load over half of the circuit", current - half, "A", source=_FASTENED)
    if feeds_others is None and not at_or_below(current, half):
        yield cannot_tell(
            name,
            f"over half of the circuit, {half:g} A, and it was not said whether it feeds others",
            measure="switch the breaker off and see what else goes dead",
            needs=("feeds_others",),
            source=_FASTENED,
        )
        return
    yield at_most(
        name,
        current,
        half,
        "A",
        source=_FASTENED,
        says="whoever caused it; a repair does not make it worse",
        action="give it a circuit of its own: a job for an electrician",
    )


def _receptacle(
    current: float, circuit: float, receptacle: float, only: bool | None
) -> Iterator[Item]:
    """Judge the receptacle on its circuit, and the load on the receptacle."""
    table = tables.load("nec-receptacles")
    row = table.find(circuit_A=circuit, receptacle_A=receptacle)
    yield _fits_circuit(circuit, receptacle, only, row)
    name = "load on the receptacle"
    action = "put the load on a circuit of its own"
    if only or row is None or not row.cells["max_plug_load_A"]:
        source = _SINGLE if row is None or only else row.source
        yield at_most(name, current, receptacle, "A", source=source, action=action)
        return
    shared = row.number("max_plug_load_A")
    source = table.column_source(row, "max_plug_load_A")
    if only is None and not at_or_below(current, shared) and at_or_below(current, receptacle):
        yield cannot_tell(
            name,
            f"over {shared:g} A, and it was not said whether the circuit has other outlets",
            measure="switch the breaker off and see what else goes dead",
            needs=("only_receptacle",),
            source=source,
        )
        return
    limit = shared if only is False or at_or_below(current, shared) else receptacle
    yield at_most(name, current, limit, "A", source=source, action=action)


def _fits_circuit(
    circuit: float, receptacle: float, only: bool | None, row: tables.Row | None
) -> Item:
    """A single receptacle has the circuit's rating or more; several those of the table."""
    name = "receptacle on this circuit"
    action = "have an electrician fit the receptacle that belongs on this circuit"
    if only or (row is None and receptacle < circuit):
        return at_least(name, receptacle, circuit, "A", source=_SINGLE, action=action)
    if row is not None:
        return requires(name, True, says="", source=row.source)
    if only is False:
        says = f"no {receptacle:g} A receptacle belongs on a {circuit:g} A circuit with others"
        return requires(name, False, says=says, source=_SEVERAL, action=action)
    return cannot_tell(
        name,
        "a single receptacle may be larger than its circuit, one of several may not",
        measure="switch the breaker off and see what else goes dead",
        needs=("only_receptacle",),
        source=_SEVERAL,
    )


def _cord(current: float, cord: Wire, live: int | None, ambient: float | None) -> Item:
    """Judge the load on a flexible cord; the table is for 30 C and two or three live wires."""
    name = "load on the cord"
    rows = [trade.cord_ampacity(cord, n) for n in ((2, 3) if live is None else (live,))]
    found = [row for row in rows if row is not None]
    if not found:
        return cannot_tell(
            name,
            f"NEC Table 400.5(A)(1) has no {cord}",
            measure="take the cord's current from its marking or its maker",
        )
    most = max(found, key=lambda r: r.number("ampacity_A"))
    least = min(found, key=lambda r: r.number("ampacity_A"))
    if at_or_below(current, most.number("ampacity_A")):
        if ambient is None:
            return cannot_tell(
                name,
                f"the cord table is for {most.number('ambient_C'):g} C, and the air was not given",
                measure="measure the air around the cord",
                needs=("ambient",),
                source=most.source,
            )
        if ambient > most.number("ambient_C"):
            return cannot_tell(
                name,
                f"the cord table is for {most.number('ambient_C'):g} C, and here it is {ambient:g}",
                measure="take the cord's current from its maker",
                source=most.source,
            )
        if not at_or_below(current, least.number("ampacity_A")):
            return cannot_tell(
                name,
                f"{most.number('ampacity_A'):g} A with two live wires, "
                f"{least.number('ampacity_A'):g} A with three",
                measure="count the wires of the cord that carry current",
                needs=("cord_conductors",),
                source=most.source,
            )
        most = least
    return at_most(
        name,
        current,
        most.number("ampacity_A"),
        "A",
        source=most.source,
        action="fit a cord with thicker wire, of the same type",
    )


@hookimpl
def wirecalc_calculations() -> Sequence[Calculation[Any]]:
    """Provide the breaker check."""
    return [breaker]

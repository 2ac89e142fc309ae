"""Everything on one branch circuit, counted against each of its limits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated, NamedTuple

from wirecalc import (
    Item,
    Problem,
    Reading,
    Wire,
    at_most,
    calculation,
    figure,
    listing,
    not_checked,
    put,
)

from ..inputs import AROUND_WIRE, BREAKER, RECEPTACLE, SLIP_A, TERMINATION, TOGETHER, WIRE_CLASS
from .building_wire import CONTINUOUS, Place, building_wire, wrong_columns
from .circuit_size import SUM, least_to_move, loads_to_move, needed_circuit, sizes, weakest_first
from .receptacle import receptacle_load
from .shared_circuit import fastened_load, plug_in_load

PLUGGED, FASTENED = "plugged in", "fastened in place"


def _load(text: str) -> Reading:
    return Reading(
        "A",
        above=0,
        high=100,
        typical="6.2 A",
        text=f"{text}; repeat it for each",
        slip_under=SLIP_A,
    )


class _Load(NamedTuple):
    """One load of the list, in A."""

    kind: str
    amps: float
    long: bool

    @property
    def counted(self) -> float:
        return self.amps * (CONTINUOUS if self.long else 1.0)


def _refuse(
    insulation_class: float = 60.0,
    termination_temperature: float = 60.0,
    plug_loads: Sequence[float] | None = None,
    long_plug_loads: Sequence[float] | None = None,
    fastened_loads: Sequence[float] | None = None,
    long_fastened_loads: Sequence[float] | None = None,
    light_loads: Sequence[float] | None = None,
    **_: object,
) -> Iterator[Problem]:
    yield from wrong_columns(
        insulation_class=insulation_class, termination_temperature=termination_temperature
    )
    if not (plug_loads or long_plug_loads or fastened_loads or long_fastened_loads or light_loads):
        yield Problem(
            "plug_loads",
            "no load was listed",
            'list each, such as --plug-loads "6.2 A" --fastened-loads "8.7 A"',
        )


@calculation(
    part="circuit",
    cautions=("brk-01", "cord-04", "live-01"),
    not_checked=(
        "whether all loads are listed: switch the breaker off and see what goes dead",
        "motor and compressor circuits (NEC 430 and 440: motor-circuit)",
        "several cords in one receptacle; cords and plugs (breaker, one load at a time)",
        "the code edition in force here",
    ),
    refuse=_refuse,
    example_with=(
        "plug_loads=6.2 A; 1.6 A",
        "long_plug_loads=1.2 A",
        "feeds_others=yes",
        "receptacle=15 A",
    ),
)
def circuit(
    breaker: Annotated[float, BREAKER],
    plug_loads: Annotated[list[float] | None, _load("plugged in, runs under 3 h at a time")] = None,
    long_plug_loads: Annotated[list[float] | None, _load("plugged in, runs 3 h or more")] = None,
    fastened_loads: Annotated[
        list[float] | None, _load("built in or wired in, runs under 3 h at a time")
    ] = None,
    long_fastened_loads: Annotated[
        list[float] | None, _load("built in or wired in, runs 3 h or more")
    ] = None,
    light_loads: Annotated[
        list[float] | None, _load("lights, counted as running 3 h or more")
    ] = None,
    feeds_others: Annotated[
        bool | None, "the circuit also feeds lights or receptacles, in use or not"
    ] = None,
    receptacle: Annotated[float | None, RECEPTACLE] = None,
    wire: Annotated[Wire | None, "wire of the building circuit"] = None,
    insulation_class: Annotated[float, WIRE_CLASS] = 60.0,
    termination_temperature: Annotated[float, TERMINATION] = 60.0,
    ambient: Annotated[float | None, AROUND_WIRE] = None,
    conductors: Annotated[int | None, TOGETHER] = None,
) -> Iterator[Item]:
    """Does this branch circuit carry all that hangs on it?

    The breaker, and the wire before correction, carry the sum, with 125 % of what runs 3 hours or
    more (NEC 210.19(A)(1), 210.20(A)); the wire after correction for ambient and bundling carries
    the sum as it is. On a 15 or 20 A circuit with several outlets the largest plug-in load takes
    at most 80 % (210.23(A)(1)) and what its receptacle may give (Table 210.21(B)(2)), and all
    that is fastened in place, lights aside, at most half if anything else is fed (210.23(A)(2)).
    With one load listed and feeds_others left out these can't be told where they turn on it.

    Inputs: each load in A (over 0 to 100), a list for each kind; breaker and receptacle in A;
    temperatures in C; counts. Refuses an empty list. Yields the loads as counted, the sum, the
    room left, what has to go, the weakest link and one criterion a limit.
    Source: tables nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors,
    standard-ratings, nec-receptacles.
    """
    loads = [
        *(_Load(PLUGGED, a, long=False) for a in plug_loads or ()),
        *(_Load(PLUGGED, a, long=True) for a in long_plug_loads or ()),
        *(_Load(FASTENED, a, long=False) for a in fastened_loads or ()),
        *(_Load(FASTENED, a, long=True) for a in long_fastened_loads or ()),
        *(_Load("lights", a, long=True) for a in light_loads or ()),
    ]
    place = Place(int(insulation_class), int(termination_temperature), ambient, conductors)
    total, counted = sum(x.amps for x in loads), sum(x.counted for x in loads)
    yield figure(
        "sum of the loads",
        total,
        "A",
        source=SUM,
        working=lambda: " + ".join(put(x.amps, "A") for x in loads),
    )
    yield figure(
        "sum as it counts",
        counted,
        "A",
        source=SUM,
        working=lambda: " + ".join(
            f"1.25 x {put(x.amps)} A" if x.long else f"{put(x.amps)} A" for x in loads
        ),
    )
    yield figure(
        "room left on the breaker",
        breaker - counted,
        "A",
        source=SUM,
        toward="down",
        working=lambda: f"{put(breaker, 'A')} - {put(counted, 'A')}",
    )
    yield from sizes("breaker that carries the sum", counted, breaker, wire, place)
    remedy = needed_circuit if len(loads) == 1 else loads_to_move
    yield from remedy(total, counted / total, breaker, wire, place)
    yield from weakest_first(_links(loads, breaker, feeds_others, receptacle, wire, place))
    yield from _list(loads)


def _links(
    loads: Sequence[_Load],
    breaker: float,
    feeds_others: bool | None,
    receptacle: float | None,
    wire: Wire | None,
    place: Place,
) -> Iterator[Item]:
    """Judge the sum on breaker and wire, the largest plug-in load, and what is fastened."""
    total, counted = sum(x.amps for x in loads), sum(x.counted for x in loads)
    yield at_most(
        "all loads on the breaker",
        counted,
        breaker,
        "A",
        source=SUM,
        says="a load of 3 h or more counts 125 %" if counted > total else "",
        action=least_to_move(total, counted / total, breaker, wire, place),
    )
    if wire is not None:
        yield from building_wire(total, counted / total, breaker, wire, place)
    largest = max((x.amps for x in loads if x.kind == PLUGGED), default=None)
    if largest is not None:
        single = None if feeds_others is None else not feeds_others
        alone = False if len(loads) > 1 else single
        yield from plug_in_load(largest, breaker, alone, True, asks="feeds_others")
        if receptacle is not None:
            yield from receptacle_load(largest, breaker, receptacle, alone, asks="feeds_others")
    elif receptacle is not None:
        yield not_checked("the receptacle", "no plug-in load was listed")
    fastened = [x.amps for x in loads if x.kind == FASTENED]
    if fastened:
        feeds = True if len(fastened) < len(loads) else feeds_others
        yield from fastened_load(sum(fastened), breaker, feeds, "loads fastened in place")


def _list(loads: Sequence[_Load]) -> Iterator[Item]:
    amps = [x.amps for x in loads]
    twice = [amps.index(a) + 1 for a in amps]
    rows = (
        (n, x.kind, "3 h or more" if x.long else "", *_amps(x), f"as line {same}" * (same < n))
        for n, (x, same) in enumerate(zip(loads, twice, strict=True), start=1)
    )
    yield listing("Loads as counted", ("line", "load", "runs", "A", "counts A", "note"), rows)
    if len(set(amps)) < len(amps):
        yield not_checked("loads of the same amps", "two of a kind, or one that is listed twice?")


def _amps(load: _Load) -> tuple[str, str]:
    return f"{load.amps:.4g}", f"{load.counted:.4g}"

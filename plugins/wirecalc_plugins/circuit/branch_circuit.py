"""Everything on one branch circuit, counted against each of its limits."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import (
    Item,
    Problem,
    Wire,
    at_most,
    calculation,
    figure,
    not_checked,
    put,
)

from .branch_circuit_inputs import (
    Breaker,
    BuildingWire,
    FastenedLoads,
    FeedsOthers,
    LightLoads,
    LongFastenedLoads,
    LongPlugLoads,
    PlugLoads,
    Receptacle,
)
from .building_inputs import (
    AroundWire,
    InsulationClass,
    TerminationTemperature,
    Together,
    WiringRules,
)
from .building_wire import load_on_wire
from .circuit_size import SUM, least_to_move, loads_to_move, needed_circuit, sizes, weakest_first
from .iec_wire import iec_wire
from .listed_loads import FASTENED, PLUGGED, ListedLoad, listed
from .not_seen import unseen_receptacle, zero_amps
from .receptacle import receptacle_load
from .shared_circuit import fastened_load, plug_in_load
from .wire_place import WirePlace, below, place_of, too_low
from .wiring_rules import IEC, NEC, of_metric, on_iec_breaker

_SUM_NAME = "all loads on the breaker"


def _refuse(
    insulation_class: float = 60.0,
    termination_temperature: float = 60.0,
    plug_loads: Sequence[float] | None = None,
    long_plug_loads: Sequence[float] | None = None,
    fastened_loads: Sequence[float] | None = None,
    long_fastened_loads: Sequence[float] | None = None,
    light_loads: Sequence[float] | None = None,
) -> Iterator[Problem]:
    yield from too_low(
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
    words=(
        "branch circuit; overloaded circuit; circuit overload; too many appliances",
        "too many things plugged in; shared circuit; same circuit; multiple appliances",
        "add up loads; total load; total amps; sum of loads; load calculation; ring main",
        "ring final; radial; spur; what else is on the breaker; trips when both run",
        "breaker trips; tripping; power strip; multi-plug; sockets; outlets; lights; same socket",
        "add an appliance; at the same time; run together; both on; how many outlets",
        "fridge and microwave; fridge and micro; two on one circuit; how many on one circuit",
        "two appliances one socket; adaptor with two; kettle and toaster; too much on",
        "too much plugged in; add to the circuit; total load on a breaker; kitchen circuit",
        "extra socket; extra load; double adaptor; board full; how many amps on this circuit",
        "can I add; all at once; everything on",
    ),
    go_on="keep the list of loads at the panel; add up again before a new one",
    chosen=("building_wire",),
    category="III",
    cautions=("brk-01", "cord-04", "live-01", "live-02", "meter-01"),
    not_checked=(
        "whether all loads are listed: switch the breaker off and see what goes dead",
        "motor and compressor circuits (NEC 430 and 440: motor-circuit)",
        "browned, warm or loose plug, receptacle and joints: no breaker sees those",
        "several cords in one receptacle; cords and plugs (breaker, one load at a time)",
        "the code edition in force here",
    ),
    refuse=_refuse,
    renamed={"wire": "building_wire"},
    example_with=(
        "plug_loads=6.2 A; 1.6 A",
        "long_plug_loads=1.2 A",
        "feeds_others=yes",
        "receptacle=15 A",
        "building_wire=14 AWG",
        "insulation_class=60 C",
        "termination_temperature=60 C",
        "ambient=30 C",
        "conductors=2",
    ),
)
def circuit(
    breaker: Breaker,
    wiring_rules: WiringRules = NEC,
    plug_loads: PlugLoads = None,
    long_plug_loads: LongPlugLoads = None,
    fastened_loads: FastenedLoads = None,
    long_fastened_loads: LongFastenedLoads = None,
    light_loads: LightLoads = None,
    feeds_others: FeedsOthers = None,
    receptacle: Receptacle = None,
    building_wire: BuildingWire = None,
    insulation_class: InsulationClass = 60.0,
    termination_temperature: TerminationTemperature = 60.0,
    ambient: AroundWire = None,
    conductors: Together = None,
) -> Iterator[Item]:
    """Does this branch circuit carry all that hangs on it?

    For a circuit with several loads, each listed by how it is connected and how long it runs; not
    for the circuit of a motor or compressor alone (motor-circuit).
    The breaker, and the wire before correction, carry the sum, with 125 % of what runs 3 hours or
    more (NEC 210.19(A)(1), 210.20(A)); the wire after correction for ambient and bundling carries
    the sum as it is. On a 15 or 20 A circuit with several outlets the largest plug-in load takes
    at most 80 % (210.23(A)(1)) and what its receptacle may give (Table 210.21(B)(2)), and all
    that is fastened in place, lights aside, at most half if anything else is fed (210.23(A)(2)).
    With one load listed and feeds_others left out these can't be told where they turn on it.

    Inputs: each load in A (0 to 100), a list for each kind; breaker and receptacle in A;
    temperatures in C; counts. Refuses an empty list. Yields the loads as counted, the sum, the
    room left, what has to go, the weakest link and one criterion a limit.
    Source: tables nec-ampacity, nec-ambient, nec-conductor-count, nec-small-conductors,
    standard-ratings, nec-receptacles, iec-ampacity, iec-grouping, breaker-iec60898.
    """
    long = wiring_rules == NEC  # by IEC rules a load counts as it is, however long it runs
    loads = [
        *(ListedLoad(PLUGGED, a, long=False) for a in plug_loads or ()),
        *(ListedLoad(PLUGGED, a, long) for a in long_plug_loads or ()),
        *(ListedLoad(FASTENED, a, long=False) for a in fastened_loads or ()),
        *(ListedLoad(FASTENED, a, long) for a in long_fastened_loads or ()),
        *(ListedLoad("lights", a, long) for a in light_loads or ()),
    ]
    if not all(x.amps for x in loads):
        yield zero_amps(_SUM_NAME)
        yield from listed(loads)
        return
    place = place_of(insulation_class, termination_temperature, ambient, conductors)
    if building_wire is not None:
        yield from below(
            insulation_class=insulation_class, termination_temperature=termination_temperature
        )
    yield from _summed(loads, breaker)
    total, counted = math.fsum(x.amps for x in loads), math.fsum(x.counted for x in loads)
    if wiring_rules == IEC:
        yield from weakest_first(_by_iec(total, breaker, building_wire, place))
    else:
        yield from sizes("breaker that carries the sum", counted, breaker, building_wire, place)
        remedy = needed_circuit if len(loads) == 1 else loads_to_move
        yield from remedy(total, counted / total, breaker, building_wire, place)
        yield from weakest_first(
            _links(loads, breaker, feeds_others, receptacle, building_wire, place)
        )
    yield from listed(loads)


def _summed(loads: Sequence[ListedLoad], breaker: float) -> Iterator[Item]:
    """Yield the sum of the loads in A, as it counts, and what it leaves of the breaker."""
    total, counted = math.fsum(x.amps for x in loads), math.fsum(x.counted for x in loads)
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


def _by_iec(total: float, breaker: float, wire: Wire | None, place: WirePlace) -> Iterator[Item]:
    """Judge the sum in A on breaker and wire by IEC rules."""
    yield on_iec_breaker(_SUM_NAME, total, breaker, "move loads to a second circuit")
    if wire is not None:
        yield from iec_wire(total, breaker, wire, place)


def _links(
    loads: Sequence[ListedLoad],
    breaker: float,
    feeds_others: bool | None,
    receptacle: float | None,
    wire: Wire | None,
    place: WirePlace,
) -> Iterator[Item]:
    """Judge the sum on breaker and wire, the largest plug-in load, and what is fastened."""
    total, counted = math.fsum(x.amps for x in loads), math.fsum(x.counted for x in loads)
    yield at_most(
        _SUM_NAME,
        counted,
        breaker,
        "A",
        source=SUM,
        says="a load of 3 h or more counts 125 %" if counted > total else "",
        action=least_to_move(total, counted / total, breaker, wire, place),
    )
    if wire is not None:
        judged = load_on_wire(total, counted / total, breaker, wire, place)
        yield from of_metric(wire, judged)
    largest = max((x.amps for x in loads if x.kind == PLUGGED), default=None)
    if largest is not None:
        single = None if feeds_others is None else not feeds_others
        alone = False if len(loads) > 1 else single
        yield from plug_in_load(largest, breaker, alone, True, asks="feeds_others")
        if receptacle is not None:
            yield from receptacle_load(largest, breaker, receptacle, alone, asks="feeds_others")
        else:
            yield from unseen_receptacle(largest, breaker)
    elif receptacle is not None:
        yield not_checked("the receptacle", "no plug-in load was listed")
    fastened = [x.amps for x in loads if x.kind == FASTENED]
    if fastened:
        feeds = True if len(fastened) < len(loads) else feeds_others
        yield from fastened_load(math.fsum(fastened), breaker, feeds, "loads fastened in place")

"""The links of one load on its circuit: breaker, wire and receptacle, by either set of rules."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import PLATE, Item, Origin, Source, Wire, at_most

from .building_wire import load_on_wire
from .iec_wire import iec_wire
from .load_on_breaker import BreakerLoad, on_breaker, on_breaker_by_iec
from .not_seen import unseen_receptacle, unseen_wire
from .receptacle import receptacle_load
from .shared_circuit import fastened_load, plug_in_load
from .wire_place import WirePlace
from .wiring_rules import of_metric

IEC_UNSEEN_A = 16.0  # the largest IEC breaker whose wire is not asked for; practice


class Circuit(NamedTuple):
    """A load on its circuit: breaker and receptacle in A, None where not known or not there."""

    load: BreakerLoad
    breaker: float
    wire: Wire | None
    place: WirePlace
    receptacle: float | None
    alone: bool | None
    plugged: bool | None


def by_nec(circuit: Circuit, source: Source | None) -> Iterator[Item]:
    """Judge the links by the NEC; `source` is that of a rule which makes the load continuous."""
    load, breaker = circuit.load, circuit.breaker
    yield on_breaker(load, breaker, source)
    yield from plug_in_load(load.amps, breaker, circuit.alone, circuit.plugged)
    if circuit.wire is None:
        yield from unseen_wire(load.most, breaker)
    else:
        wire = circuit.wire
        judged = load_on_wire(load.total, load.total_factor, breaker, wire, circuit.place)
        yield from of_metric(wire, judged)
    if circuit.receptacle is not None:
        yield from receptacle_load(load.amps, breaker, circuit.receptacle, circuit.alone)
    elif circuit.plugged:
        yield from unseen_receptacle(load.amps, breaker)
    if circuit.plugged is False:
        feeds = None if circuit.alone is None else not circuit.alone
        yield from fastened_load(load.amps, breaker, feeds, "load fastened in place")


def by_iec(circuit: Circuit) -> Iterator[Item]:
    """Judge the links by IEC rules: nothing is added for a load that runs long."""
    load, breaker = circuit.load, circuit.breaker
    yield on_breaker_by_iec(load, breaker)
    if circuit.wire is not None:
        yield from iec_wire(load.total, breaker, circuit.wire, circuit.place)
    else:
        yield from unseen_wire(load.total, breaker, IEC_UNSEEN_A)
    if circuit.receptacle is not None:
        yield at_most(
            "load on the receptacle",
            load.amps,
            circuit.receptacle,
            "A",
            source=PLATE,
            origin=Origin.MAKER,
            action="put the load on a circuit of its own",
        )

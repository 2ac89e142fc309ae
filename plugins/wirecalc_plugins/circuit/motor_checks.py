"""Wire and device of a motor circuit, judged by every current that may size it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import zip_longest
from typing import NamedTuple

from wirecalc import (
    PLATE,
    PRACTICE,
    Criterion,
    Item,
    Origin,
    Verdict,
    Wire,
    answer,
    at_least,
    at_or_below,
    cannot_tell,
    confirmed,
    figure,
    put,
)
from wirecalc.trade import nec_ampacity

from .building_wire import load_on_wire
from .circuit_size import against_plate, carries, copper_carrying
from .motor_rules import (
    COMPRESSOR,
    CONDUCTOR,
    MOTOR,
    Sizing,
    device_limit,
    judge_device,
    largest_device,
)
from .thin_wire import EXEMPT_FROM_A, too_thin
from .wire_place import WirePlace

_ONE = confirmed("nec-430-22", "NEC", "430.22", copies=2)
_SEVERAL = confirmed("nec-430-24", "NEC", "430.24", copies=2)
_COMPRESSOR = confirmed("nec-440-32", "NEC", "440.32", copies=1)


_STRICT = (
    "it was not said whether the plate's amps govern: the wire is by the greater current, the "
    "device by the smaller"
)


class MotorLoad(NamedTuple):
    """A motor or compressor, what sizes its circuit, the other loads and the plate's least, in A.

    `other` is the plate's current where that may size the circuit in place of `sizing`.
    """

    kind: str
    device: str
    sizing: Sizing
    other: Sizing | None
    plate_governs: bool | None
    others: float
    minimum_ampacity: float | None

    @property
    def sizings(self) -> list[Sizing]:
        """Whatever may size the circuit, from the smaller to the greater current."""
        both = [s for s in (self.sizing, self.other) if s is not None]
        return sorted(both, key=lambda s: s.amps)

    def on_wire(self, sizing: Sizing) -> float:
        """Return the A that the wire must carry by one of the currents, and by the plate."""
        return max(self.by_code(sizing), self.minimum_ampacity or 0.0)

    def by_code(self, sizing: Sizing) -> float:
        """Return the A that the wire must carry by the code (NEC 430.22, 430.24, 440.32)."""
        return CONDUCTOR * sizing.amps + self.others


def needed(
    load: MotorLoad,
    wire: Wire | None,
    breaker: float | None,
    maximum_breaker: float | None,
    place: WirePlace,
) -> Iterator[Item]:
    """Yield the current that the wire must carry, and wire and device that are still to find.

    Where plate and table differ, the wire is by the greater and the device by the smaller; a wire
    that one of them allows is not replaced. A device that is there and allowed is kept.
    """
    least, greatest = load.sizings[0], load.sizings[-1]
    amps = load.on_wire(greatest)
    yield from _wire_figures(load, greatest)
    largest = maximum_breaker
    if load.kind == MOTOR or maximum_breaker is None:
        largest = largest_device(load.kind, load.device, least.amps, load.others)
        if largest is not None and (breaker is None or not at_or_below(breaker, largest)):
            yield device_limit(load.kind, load.device, least.amps, load.others)
    if maximum_breaker is not None:
        yield figure("largest device by the plate", maximum_breaker, "A", source=PLATE)
        largest = min(maximum_breaker, largest or maximum_breaker)
    parts = []
    gauge = copper_carrying(amps, place)
    if gauge is not None and (wire is None or not carries(wire, load.on_wire(least), place)):
        parts.append(f"{gauge} AWG copper or thicker")
    if breaker is None and largest is not None:
        device = "breaker or fuse" if load.kind == COMPRESSOR else load.device
        parts.append(f"{device} of at most {largest:g} A")
    if parts:
        column = min(place.wire_class, place.termination)
        yield answer(
            "what this circuit needs",
            "; ".join(parts),
            because=[f"the wire must carry {amps:.4g} A, by the {column} C column"],
            against=["to change wire or device is a job for an electrician"]
            + [_STRICT] * (load.other is not None and load.plate_governs is None)
            + ["heat and bundling may ask for thicker wire"] * bool(place.missing),
        )


def _wire_figures(load: MotorLoad, sizing: Sizing) -> Iterator[Item]:
    others = load.others
    source = _SEVERAL if others else _ONE if load.kind == MOTOR else _COMPRESSOR
    more = f" + {put(others, 'A')}" if others else ""
    yield figure(
        "current that the wire must carry",
        load.by_code(sizing),
        "A",
        source=source,
        working=lambda: f"1.25 x {put(sizing.amps)} A{more}",
        toward="up",
    )
    if sizing is load.other:
        yield figure(
            "current by the plate, over the table's", sizing.amps, "A", source=sizing.source
        )
    if load.minimum_ampacity is not None:
        yield figure("least ampacity by the plate", load.minimum_ampacity, "A", source=PLATE)


def wire_of_motor(load: MotorLoad, wire: Wire, place: WirePlace) -> Iterator[Item]:
    """Judge the wire by each current that may size the circuit, and by how thin it is."""
    judged = (load_on_wire(load.on_wire(s), 1.0, None, wire, place) for s in load.sizings)
    yield from _both(load, *judged)
    yield from too_thin(wire)


def device_of_motor(
    load: MotorLoad,
    rating: float,
    largest: float | None,
    will_not_start: bool | None,
) -> Iterator[Item]:
    """Judge the device by its plate, which rules on a compressor, else by the code as well."""
    if largest is not None:
        yield against_plate(rating, largest)
    if largest is None or load.kind == MOTOR:
        judged = (
            judge_device(load.kind, load.device, rating, s.amps, load.others, will_not_start)
            for s in load.sizings
        )
        yield from _both(load, *([item] for item in judged))
    runs = (
        at_least(
            "device carries the running current",
            rating,
            s.amps + load.others,
            "A",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="it would trip; no reason to go over the largest device",
            action="look at what the motor draws, then have an electrician choose within the limit",
        )
        for s in load.sizings
    )
    yield from _both(load, *([item] for item in runs))


def _both(load: MotorLoad, *ways: Iterable[Item]) -> Iterator[Item]:
    """Judge what was judged by two currents; what fails by one of them only cannot be told.

    The smaller current may leave out the last thing that the larger one is judged by.
    """
    for items in zip_longest(*ways):
        judged = [item for item in items if isinstance(item, Criterion)]
        failed = [c for c in judged if c.verdict is Verdict.FAIL]
        if failed and len(failed) < len(items):
            yield _differs(load, failed[0], items.index(failed[0]))
        elif judged:
            yield max(judged, key=_stricter)
        else:
            yield next(item for item in items if item is not None)


def _stricter(judged: Criterion) -> tuple[bool, float]:
    """Rank what cannot be told first, then the one that is nearer to its limit or further past it.

    So the limit shown does not turn on the device or wire that is there.
    """
    return judged.verdict is Verdict.CANNOT_TELL, -judged.closeness


def _differs(load: MotorLoad, failed: Criterion, at: int) -> Item:
    """Say by which current a criterion fails, and how to find out whether that one counts."""
    fails = load.sizings[at]
    which = "plate" if fails is load.other else "table"
    known = load.plate_governs is not None
    return cannot_tell(
        failed.name,
        f"{failed.reason}, if it goes by the {fails.amps:.4g} A of the {which}",
        measure="read hp, volts and amps on the plate again: it has more amps than the table"
        if known
        else "find out whether the plate's amps govern: a fan, low-speed, high-torque or "
        "multispeed motor, or part of a listed appliance",
        needs=() if known else ("plate_governs",),
        source=failed.source,
    )


def small_wire(load: MotorLoad, rating: float, wire: Wire, place: WirePlace) -> Iterator[Item]:
    """Say why a device over the wire's ampacity may be right, so that nobody mends it."""
    small = nec_ampacity.small_conductor_breaker(wire)
    if load.others or not carries(wire, load.on_wire(load.sizings[-1]), place):
        return
    if small is None or small.number("breaker_A") < EXEMPT_FROM_A:
        return
    if at_or_below(rating, small.number("breaker_A")):
        return
    yield answer(
        "more amps than on other circuits",
        f"the {small.number('breaker_A'):g} A of NEC 240.4(D) for {wire} does not bind a motor "
        "circuit (240.4(G)): a device within its limit here stays as it is",
        because=["the device guards against short circuit, the overload protector against heat"],
        against=["only with an overload protector that works, and nothing else on the wire"],
    )

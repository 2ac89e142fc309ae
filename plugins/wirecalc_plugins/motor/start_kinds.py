"""Which kind of start the readings of a clamp meter show, with what speaks for and against each."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, answer, at_or_below, cannot_tell, listing

from .settled_checks import LOADED, TURNS
from .start_checks import NORMAL_S, SEEN
from .start_evidence import (
    ALL,
    BOTH_WIRES,
    DRIVEN,
    HEATER,
    IDLE,
    LOCKED,
    NORMAL,
    NOT_IN_FULL,
    OPEN_START,
    OTHER_WIRE,
    OVERLOADED,
    RAMP,
    SLOW,
    SMALL_PEAK,
    STOPPED,
    evidence_on,
    in_words,
    seen_in,
)
from .start_seen import SeenStart

PLATE_LOADS = ("appliance", "heater", "motor")  # what the amps of a plate may be of

_SHORT = {
    OPEN_START: "start circuit open",
    RAMP: "slow ramp",
    DRIVEN: "driven by a board",
    OTHER_WIRE: "another wire",
    IDLE: "runs idle",
    OVERLOADED: "overloaded",
    BOTH_WIRES: "clamp on both wires",
    SMALL_PEAK: "small start current",
    HEATER: "heater's plate amps",
}
_SETTLES = {  # what tells two kinds apart that fit the same readings
    LOCKED: "read the three windings and the start device, dead and cold",
    BOTH_WIRES: "close the jaws around one wire only, and see whether it turns",
    HEATER: "read RLA on the motor or compressor itself",
    SLOW: "time the start with the meter's inrush function",
}


def kind_of_start(start: SeenStart) -> Iterator[Item]:
    """Yield the kind of start, or those that can't be told apart, with the evidence on all."""
    kinds = _candidates(start)
    if not kinds:
        return
    alone = len(kinds) == 1
    because, against = evidence_on(kinds[0], start) if alone else (seen_in(start), [])
    text = kinds[0] if len(kinds) == 1 else f"cannot tell: {' / '.join(kinds)}"
    yield answer("kind of start", text, because=because or seen_in(start), against=against)
    yield listing(
        "Kinds of start, and what speaks for and against each",
        ("kind", "evidence"),
        lambda: [
            (_SHORT.get(kind, kind), in_words(*found))
            for kind in ALL
            if any(found := evidence_on(kind, start))
        ],
    )
    if len(kinds) > 1:
        measure = next((_SETTLES[k] for k in kinds if k in _SETTLES), _SETTLES[HEATER])
        yield cannot_tell(
            "evidence for one kind of start",
            f"these readings fit more than one: {' / '.join(_SHORT.get(k, k) for k in kinds)}",
            measure=measure,
            needs=("settle_time",) if kinds == [NORMAL, SLOW] else (),
        )


def _candidates(start: SeenStart) -> list[str]:
    """Return the kinds that the readings fit and that nothing read tells apart."""
    if start.stays_high:
        return [LOCKED, OPEN_START]
    if start.mark is None:
        return []
    if start.rated is None:
        return _beside_a_heater(start)
    if start.over:
        return [OVERLOADED] if start.stays_high is False else [OVERLOADED, LOCKED, OPEN_START]
    if start.settles_below(SEEN, start.rated):
        return [STOPPED] if start.seen else [STOPPED, BOTH_WIRES]
    return [DRIVEN] if start.inverter else _by_itself(start)


def _by_itself(start: SeenStart) -> list[str]:
    """Kinds of a motor that starts across the line and settles within its rated load."""
    if start.settles_below(TURNS, start.rated):
        return [OTHER_WIRE]
    if start.ramps:
        return [RAMP]
    if start.settles_below(LOADED, start.rated):
        return [IDLE]
    if start.small_peak:
        return [SMALL_PEAK]
    return _in_time(start)


def _in_time(start: SeenStart) -> list[str]:
    if start.settle_time is not None and not at_or_below(start.settle_time, NORMAL_S):
        return [SLOW]
    if start.peak is None or (start.mode == "max-hold" and start.near is False):
        return [NOT_IN_FULL]
    return [NORMAL, SLOW] if start.settle_time is None else [NORMAL]


def _beside_a_heater(start: SeenStart) -> list[str]:
    """Kinds where the plate's amps may be those of a heater, or of all that runs at once."""
    if start.over:
        return [OVERLOADED]
    if start.settles_below(SEEN, start.plate) and not start.seen:
        return [STOPPED, BOTH_WIRES, HEATER]
    if start.settles_below(LOADED, start.plate):
        return [HEATER, IDLE]
    return [NORMAL, OVERLOADED]

"""The kinds of start that the readings of a clamp meter show, and what speaks for each."""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import at_or_below

from .settled_checks import LOADED, TURNS
from .start_checks import NORMAL_S, SEEN, SHORT_OF_LRA, STOP_S
from .start_seen import SeenStart

NORMAL = "normal start"
SLOW = "slow start"
LOCKED = "locked rotor"
OPEN_START = "start winding or start device open"
RAMP = "slow ramp: a board that drives the motor, or a slow start on too little current"
DRIVEN = "start of a motor that a board drives"
OTHER_WIRE = "no motor settles so low: another wire, another load or another plate"
IDLE = "runs with little load: it may not be pumping"
OVERLOADED = "starts, and runs overloaded"
STOPPED = "not running"
BOTH_WIRES = "clamp around both wires, or around none that carries it"
SMALL_PEAK = "starts on too little current: was the peak missed, one wire in the jaws?"
HEATER = "the plate's amps are a heater's, not the motor's"
NOT_IN_FULL = "settled current is normal; the start was not measured in full"

ALL = (
    *(NORMAL, SLOW, RAMP, DRIVEN, LOCKED, OPEN_START, SMALL_PEAK, IDLE),
    *(OVERLOADED, STOPPED, OTHER_WIRE, BOTH_WIRES, HEATER),
)


def in_words(because: Sequence[str], against: Sequence[str]) -> str:
    """Write what speaks for and against a kind."""
    parts = (("for: ", because), ("against: ", against))
    return ". ".join(word + ", ".join(facts) for word, facts in parts if facts)


def seen_in(start: SeenStart) -> list[str]:
    """Return what the readings of a start show."""
    facts = []
    if start.mark is not None:
        of = "the plate's amps" if start.rated is None else "rated load"
        facts.append(f"settles at {start.settled / start.mark:.0%} of {of}")
    if start.settle_time is not None:
        facts.append(f"settled after {start.settle_time:g} s")
    if start.peak is not None and start.settled > 0:
        facts.append(f"peak {start.peak / start.settled:.1f} times the settled current")
    return facts


def evidence_on(kind: str, start: SeenStart) -> tuple[list[str], list[str]]:
    """Return what speaks for and against one kind."""
    facts = _FACTS[kind](start) if kind in _FACTS else []
    found: tuple[list[str], list[str]] = ([], [])
    for holds, said, unsaid in facts:
        if holds is not None and (said if holds else unsaid):
            found[0 if holds else 1].append(said if holds else unsaid)
    return found


_Facts = Sequence[tuple[bool | None, str, str]]  # whether it holds, said then, said else


def _down(start: SeenStart) -> _Facts:
    below = start.settles_below(SHORT_OF_LRA, start.level)
    share = "" if not start.level else f"to {start.settled / start.level:.0%} of the start's"
    return [(below, f"the current came down {share}", "the current does not come down")]


def _high(start: SeenStart) -> _Facts:
    ((below, down, high),) = _down(start)
    late = None if start.settle_time is None else not at_or_below(start.settle_time, STOP_S)
    after = f"high for {start.settle_time:g} s" if late else ""
    return [(None if below is None else not below, high, down), (late or None, after, "")]


def _time(start: SeenStart, *, slow: bool) -> _Facts:
    if start.settle_time is None:
        return []
    late = not at_or_below(start.settle_time, NORMAL_S)
    said = f"settled after {start.settle_time:g} s"
    return [(late is slow, said, said)]


def _settles(start: SeenStart, holds: bool | None) -> _Facts:
    said = next(iter(seen_in(start)), "") if start.mark is not None else ""
    return [(holds if start.mark is not None else None, said, said)]


def _peak(start: SeenStart, *, small: bool) -> _Facts:
    if start.locked is None or start.peak is None or start.mode == "max-hold":
        return []
    said = f"peak {start.peak:g} A against {start.locked.least:.3g} A of a locked rotor"
    return [(start.small_peak is small, said, said)]


def _normal(start: SeenStart) -> _Facts:
    inside = start.over is False and start.settles_below(LOADED, start.mark) is False
    return [*_settles(start, inside), *_time(start, slow=False), *_peak(start, small=False)]


def _slow(start: SeenStart) -> _Facts:
    ((below, down, high),) = _down(start)
    return [*_time(start, slow=True), (below, down if below else "", high)]


def _idle(start: SeenStart) -> _Facts:
    low = start.settles_below(LOADED, start.mark)
    return _settles(start, low and not start.settles_below(TURNS, start.mark))


def _other_wire(start: SeenStart) -> _Facts:
    low = start.settles_below(TURNS, start.mark)
    return _settles(start, low and not start.settles_below(SEEN, start.mark))


def _ramp(start: SeenStart) -> _Facts:
    if start.settle_time is None:
        return []
    return [(start.ramps, f"settled after {start.settle_time:g} s", "it settled soon")]


def _driven(start: SeenStart) -> _Facts:
    return [(start.inverter, "it was said that a board drives it", "no board drives it")]


def _overloaded(start: SeenStart) -> _Facts:
    ((below, down, high),) = _down(start)
    return [*_settles(start, start.over), (None if below else below, down, high)]


def _stopped(start: SeenStart) -> _Facts:
    return _settles(start, start.settles_below(SEEN, start.mark))


def _both_wires(start: SeenStart) -> _Facts:
    seen = f"a peak of {start.peak:g} A was seen" if start.seen else "no current was seen at all"
    return [*_stopped(start), (None if start.peak is None else not start.seen, seen, seen)]


def _heater(start: SeenStart) -> _Facts:
    if start.rated is not None:
        return [(False, "", "RLA is the motor's own")]
    return _settles(start, start.settles_below(LOADED, start.plate))


_FACTS = {
    NORMAL: _normal,
    SLOW: _slow,
    RAMP: _ramp,
    DRIVEN: _driven,
    OTHER_WIRE: _other_wire,
    LOCKED: _high,
    OPEN_START: _high,
    SMALL_PEAK: lambda start: _peak(start, small=True),
    IDLE: _idle,
    OVERLOADED: _overloaded,
    STOPPED: _stopped,
    BOTH_WIRES: _both_wires,
    HEATER: _heater,
}

"""Which kind of start the readings of a clamp meter show, with what speaks for and against each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import Item, answer, at_or_below, cannot_tell, listing

from .start_checks import (
    LOADED,
    NORMAL_S,
    OVER_RLA,
    RUNNING,
    SHORT_OF_LRA,
    STOP_S,
    LockedRotor,
    as_rms,
)

PLATE_LOADS = ("appliance", "heater", "motor")  # what the amps of a plate may be of

NORMAL = "normal start"
SLOW = "slow start"
LOCKED = "locked rotor"
OPEN_START = "start winding or start device open"
IDLE = "runs with little load: it may not be pumping"
OVERLOADED = "starts, and runs overloaded"
STOPPED = "not running"
BOTH_WIRES = "clamp around both wires, or around none that carries it"
SMALL_PEAK = "starts on too little current: was the peak missed, one wire in the jaws?"
HEATER = "the plate's amps are a heater's, not the motor's"
NOT_IN_FULL = "settled current is normal; the start was not measured in full"

_SHORT = {
    OPEN_START: "start circuit open",
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


class Start(NamedTuple):
    """The readings of one start, in A and s. `locked` is at the supply's voltage.

    `rated` is the motor's own rated-load current, `plate` amps of a plate that may be of more.
    """

    locked: LockedRotor | None
    rated: float | None
    plate: float | None
    peak: float | None
    settled: float
    settle_time: float | None
    mode: str

    @property
    def rms(self) -> float | None:
        """The peak as an rms value; None where it was not taken, or too slowly to show one."""
        return as_rms(self.peak, self.mode)

    @property
    def level(self) -> float | None:
        """The current that a start has: locked-rotor current, else the peak that was seen."""
        if self.locked is not None and self.locked.least > 0:
            return self.locked.least
        return self.rms

    @property
    def mark(self) -> float | None:
        """The amps to compare the settled current with."""
        return self.plate if self.rated is None else self.rated

    def settles_below(self, share: float, of: float | None) -> bool | None:
        """Whether the settled current is under a share of some amps; None where they lack."""
        return None if of is None else not at_or_below(-self.settled, -share * of)

    @property
    def stays_high(self) -> bool | None:
        """Whether the current never comes down from that of a start; None where unknown."""
        below = self.settles_below(SHORT_OF_LRA, self.level)
        if below is None:
            return None
        if self.locked is not None and self.locked.least > 0:
            return not below
        return not below and self.over is not False

    @property
    def over(self) -> bool | None:
        """Whether it settles above what the plate allows."""
        if self.mark is None:
            return None
        return not at_or_below(self.settled, OVER_RLA * self.mark)

    @property
    def small_peak(self) -> bool:
        """Whether the peak is short of locked-rotor current; a slow meter misses peaks."""
        if self.locked is None or self.peak is None or self.mode == "max-hold":
            return False
        scale = 2**0.5 if self.mode == "peak-hold" else 1.0
        return not at_or_below(-self.peak, -SHORT_OF_LRA * self.locked.least * scale)

    @property
    def seen(self) -> bool:
        """Whether a peak in the jaws shows that they are around one wire that carries it."""
        floor = self.mark if self.locked is None else self.locked.least
        return self.peak is not None and floor is not None and self.peak > RUNNING * floor


def kind_of_start(start: Start) -> Iterator[Item]:
    """Yield the kind of start, or those that can't be told apart, with the evidence on all."""
    kinds = _candidates(start)
    if not kinds:
        return
    evidence = {kind: _evidence(kind, start) for kind in _ALL}
    because, against = evidence.get(kinds[0], ([], [])) if len(kinds) == 1 else (_seen(start), [])
    text = kinds[0] if len(kinds) == 1 else f"cannot tell: {' / '.join(kinds)}"
    yield answer("kind of start", text, because=because or _seen(start), against=against)
    yield listing(
        "Kinds of start, and what speaks for and against each",
        ("kind", "evidence"),
        [(_SHORT.get(kind, kind), _said(*found)) for kind, found in evidence.items() if any(found)],
    )
    if len(kinds) > 1:
        measure = next((_SETTLES[k] for k in kinds if k in _SETTLES), _SETTLES[HEATER])
        yield cannot_tell(
            "evidence for one kind of start",
            f"these readings fit more than one: {' / '.join(_SHORT.get(k, k) for k in kinds)}",
            measure=measure,
            needs=("settle_time",) if kinds == [NORMAL, SLOW] else (),
        )


def _candidates(start: Start) -> list[str]:
    """Return the kinds that the readings fit and that nothing read tells apart."""
    if start.stays_high:
        return [LOCKED, OPEN_START]
    if start.mark is None:
        return []
    if start.rated is None:
        return _beside_a_heater(start)
    if start.over:
        return [OVERLOADED] if start.stays_high is False else [OVERLOADED, LOCKED, OPEN_START]
    if start.settles_below(RUNNING, start.rated):
        return [STOPPED] if start.seen else [STOPPED, BOTH_WIRES]
    if start.settles_below(LOADED, start.rated):
        return [IDLE]
    if start.small_peak:
        return [SMALL_PEAK]
    return _in_time(start)


def _in_time(start: Start) -> list[str]:
    if start.settle_time is not None and not at_or_below(start.settle_time, NORMAL_S):
        return [SLOW]
    if start.peak is None:
        return [NOT_IN_FULL]
    return [NORMAL, SLOW] if start.settle_time is None else [NORMAL]


def _beside_a_heater(start: Start) -> list[str]:
    """Kinds where the plate's amps may be those of a heater, or of all that runs at once."""
    if start.over:
        return [OVERLOADED]
    if start.settles_below(RUNNING, start.plate) and not start.seen:
        return [STOPPED, BOTH_WIRES, HEATER]
    if start.settles_below(LOADED, start.plate):
        return [HEATER, IDLE]
    return [NORMAL, OVERLOADED]


_ALL = (NORMAL, SLOW, LOCKED, OPEN_START, SMALL_PEAK, IDLE, OVERLOADED, STOPPED, BOTH_WIRES, HEATER)


def _said(because: Sequence[str], against: Sequence[str]) -> str:
    parts = (("for: ", because), ("against: ", against))
    return ". ".join(word + ", ".join(facts) for word, facts in parts if facts)


def _seen(start: Start) -> list[str]:
    facts = []
    if start.mark is not None:
        of = "the plate's amps" if start.rated is None else "rated load"
        facts.append(f"settles at {start.settled / start.mark:.0%} of {of}")
    if start.settle_time is not None:
        facts.append(f"settled after {start.settle_time:g} s")
    if start.peak is not None and start.settled > 0:
        facts.append(f"peak {start.peak / start.settled:.1f} times the settled current")
    return facts


def _evidence(kind: str, start: Start) -> tuple[list[str], list[str]]:
    """Return what speaks for and against one kind."""
    facts = _FACTS[kind](start)
    found: tuple[list[str], list[str]] = ([], [])
    for holds, said, unsaid in facts:
        if holds is not None and (said if holds else unsaid):
            found[0 if holds else 1].append(said if holds else unsaid)
    return found


_Facts = Sequence[tuple[bool | None, str, str]]  # whether it holds, said then, said else


def _down(start: Start) -> _Facts:
    below = start.settles_below(SHORT_OF_LRA, start.level)
    share = "" if not start.level else f"to {start.settled / start.level:.0%} of the start's"
    return [(below, f"the current came down {share}", "the current does not come down")]


def _high(start: Start) -> _Facts:
    ((below, down, high),) = _down(start)
    late = None if start.settle_time is None else not at_or_below(start.settle_time, STOP_S)
    after = f"high for {start.settle_time:g} s" if late else ""
    return [(None if below is None else not below, high, down), (late or None, after, "")]


def _time(start: Start, *, slow: bool) -> _Facts:
    if start.settle_time is None:
        return []
    late = not at_or_below(start.settle_time, NORMAL_S)
    said = f"settled after {start.settle_time:g} s"
    return [(late is slow, said, said)]


def _settles(start: Start, holds: bool | None) -> _Facts:
    said = next(iter(_seen(start)), "") if start.mark is not None else ""
    return [(holds if start.mark is not None else None, said, said)]


def _peak(start: Start, *, small: bool) -> _Facts:
    if start.locked is None or start.peak is None or start.mode == "max-hold":
        return []
    said = f"peak {start.peak:g} A against {start.locked.least:.3g} A of a locked rotor"
    return [(start.small_peak is small, said, said)]


def _normal(start: Start) -> _Facts:
    inside = start.over is False and start.settles_below(LOADED, start.mark) is False
    return [*_settles(start, inside), *_time(start, slow=False), *_peak(start, small=False)]


def _slow(start: Start) -> _Facts:
    ((below, down, high),) = _down(start)
    return [*_time(start, slow=True), (below, down if below else "", high)]


def _idle(start: Start) -> _Facts:
    low = start.settles_below(LOADED, start.mark)
    return _settles(start, low and not start.settles_below(RUNNING, start.mark))


def _overloaded(start: Start) -> _Facts:
    ((below, down, high),) = _down(start)
    return [*_settles(start, start.over), (None if below else below, down, high)]


def _stopped(start: Start) -> _Facts:
    return _settles(start, start.settles_below(RUNNING, start.mark))


def _both_wires(start: Start) -> _Facts:
    seen = f"a peak of {start.peak:g} A was seen" if start.seen else "no current was seen at all"
    return [*_stopped(start), (None if start.peak is None else not start.seen, seen, seen)]


def _heater(start: Start) -> _Facts:
    if start.rated is not None:
        return [(False, "", "RLA is the motor's own")]
    return _settles(start, start.settles_below(LOADED, start.plate))


_FACTS = {
    NORMAL: _normal,
    SLOW: _slow,
    LOCKED: _high,
    OPEN_START: _high,
    SMALL_PEAK: lambda start: _peak(start, small=True),
    IDLE: _idle,
    OVERLOADED: _overloaded,
    STOPPED: _stopped,
    BOTH_WIRES: _both_wires,
    HEATER: _heater,
}

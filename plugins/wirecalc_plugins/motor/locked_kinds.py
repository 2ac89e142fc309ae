"""Locked, slow, overloaded, a weak overload or normal: what speaks for and against each."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import Item, answer, at_or_below, cannot_tell, listing

from .start_checks import NORMAL_S, STOP_S

LOCKED = "locked, or its start circuit is open"
SLOW = "slow start"
WEAK = "weak overload"
HOT = "compressor too hot (fan, condenser, charge) or started again too soon"
OVERLOADED = "runs overloaded"
NORMAL = "normal"


class Seen(NamedTuple):
    """What was seen: near or far of locked-rotor current, over rated load; None where unknown.

    `running`: whether the settled current is that of a motor which runs at all.
    """

    high_time: float
    near: bool | None
    far: bool | None
    over: bool | None
    running: bool | None
    trips: int | None

    @property
    def short(self) -> bool:
        """Whether the start was over within a second."""
        return at_or_below(self.high_time, NORMAL_S)

    @property
    def long(self) -> bool:
        """Whether the current stayed high beyond what any start takes."""
        return not at_or_below(self.high_time, STOP_S)

    @property
    def runs(self) -> bool | None:
        """Whether it settled as a motor that turns and is not overloaded, and did not trip."""
        if self.running is None or self.over is None or self.trips is None:
            return None
        return self.running and not self.over and not self.trips

    @property
    def opened(self) -> bool | None:
        """Whether the overload opened."""
        return None if self.trips is None else self.trips > 0

    @property
    def said_time(self) -> str:
        """Say how long the current was high."""
        return f"current high for {self.high_time:g} s"

    @property
    def said_load(self) -> str:
        """Say how it settles."""
        return "settles above rated load" if self.over else "settles within rated load"

    @property
    def said_trips(self) -> str:
        """Say how often the overload opened."""
        if not self.trips:
            return "the overload did not open"
        return f"the overload opened {self.trips} times in an hour"


def what_it_is(seen: Seen) -> Iterator[Item]:
    """Yield what it is where one kind alone fits what was seen, and the evidence on all."""
    evidence = {kind: _evidence(kind, seen) for kind in _FACTS}
    left = [kind for kind, (because, against) in evidence.items() if because and not against]
    name = "what it is"
    if len(left) == 1:
        yield answer(name, left[0], because=evidence[left[0]][0])
    else:
        either = " / ".join(left)
        yield answer(name, f"cannot tell: {either or 'the readings fit none of these'}")
        measure = "take the current while it is high and once settled, and count the clicks"
        if left == [WEAK, HOT]:
            measure = "feel the shell, look at fan and condenser, wait 5 min between starts; only "
            measure += "then change the overload"
        yield cannot_tell(
            "evidence for one of them",
            f"the readings fit more than one: {either}" if left else "the readings fit none",
            measure=measure,
            needs=("overload_trips",) if seen.trips is None else (),
        )
    yield listing(
        "What speaks for and against each",
        ("kind", "evidence"),
        lambda: [(kind, _said(*found)) for kind, found in evidence.items()],
    )


def _evidence(kind: str, seen: Seen) -> tuple[list[str], list[str]]:
    facts = _FACTS[kind](seen)
    because = [said for holds, said in facts if holds]
    return because, [said for holds, said in facts if holds is False]


def _said(because: list[str], against: list[str]) -> str:
    parts = (("for: ", because), ("against: ", against))
    return ". ".join(word + ", ".join(facts) for word, facts in parts if facts)


_Facts = list[tuple[bool | None, str]]  # whether it speaks for the kind, and what is said


def _locked(seen: Seen) -> _Facts:
    by_itself = seen.short or seen.opened is False  # it came down, and no overload opened
    time = True if seen.long else (False if by_itself else None)
    near = True if seen.near else (False if seen.far else None)
    said = f"{'near' if near else 'far from'} locked-rotor current"
    facts: _Facts = [(time, seen.said_time), (near, said), (seen.opened or None, seen.said_trips)]
    return [*facts, (False if seen.runs else None, f"it {seen.said_load}")]


def _slow(seen: Seen) -> _Facts:
    late = not seen.short and (not seen.long or seen.runs is True)
    near = False if seen.long and seen.far else None
    facts: _Facts = [(late, seen.said_time), (near, "far from locked-rotor current")]
    return [*facts, (False if seen.opened else None, seen.said_trips)]


def _weak(seen: Seen) -> _Facts:
    load = None if seen.over is None else not seen.over
    facts: _Facts = [(seen.opened, seen.said_trips), (load, seen.said_load)]
    return [*facts, (False if seen.long else seen.short or None, seen.said_time)]


def _overloaded(seen: Seen) -> _Facts:
    facts: _Facts = [(seen.over, seen.said_load), (seen.opened or None, seen.said_trips)]
    return [*facts, (False if seen.long else None, seen.said_time)]


def _normal(seen: Seen) -> _Facts:
    opened = None if seen.opened is None else not seen.opened
    load = None if seen.over is None else not seen.over
    facts: _Facts = [(seen.short, seen.said_time), (opened, seen.said_trips)]
    if seen.running is False:
        return [*facts, (False, "the settled current is that of a motor not running")]
    if seen.running is None and seen.high_time == 0:
        facts.append((False, "no start was seen"))
    return [*facts, (load, seen.said_load)]


_FACTS = {
    LOCKED: _locked,
    SLOW: _slow,
    WEAK: _weak,
    HOT: _weak,
    OVERLOADED: _overloaded,
    NORMAL: _normal,
}

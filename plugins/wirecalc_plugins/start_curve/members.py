"""The machines that may stand behind a plate: what they differ in, by the way of starting.

The spans are those of textbook machines with some room, found on the machines that
docs/start-estimate.md lists: rotor share of the locked main winding 0.47 to 0.66 of nine; kappa,
which is locked torque times synchronous speed over volts and locked-rotor amps, 0.065 to 0.119 of
eleven resistance-start ones and 0.27 to 0.39 of eight capacitor-start ones.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple


class Member(NamedTuple):
    """One machine of a band: rotor share, kappa or turns ratio, friction as a share of power."""

    rho: float
    kappa: float | None
    turns: float | None
    loss: float


class Kind(NamedTuple):
    """A way of starting: its members, the nominal one first, and the turns ratios it may have.

    `by_speed` says whether a speed on the plate tells the rotor share. Of textbook machines it
    does for those with a capacitor; the torque of resistance-start ones is no better known by it.
    """

    members: tuple[Member, ...]
    turns: tuple[float, float] = (0.5, 1.6)
    usual: float = 0.95
    by_speed: bool = True


LOW, MID, HIGH = 0.45, 0.58, 0.68  # rho of nine textbook machines, 0.47 to 0.66, and some room
_LOSSES = (0.0, 0.12, 0.25)


def resistance_start(kappas: tuple[float, float, float] = (0.060, 0.105, 0.135)) -> Kind:
    """Return the band of a resistance-start motor, relay or PTC: eleven textbook machines."""
    low, mid, high = kappas
    none, some, much = _LOSSES
    wanted = [(MID, mid, some), (LOW, low, none), (LOW, high, much), (HIGH, high, none)]
    wanted += [(MID, low, some), (MID, high, some)]
    return Kind(
        tuple(Member(rho, kappa, None, loss) for rho, kappa, loss in wanted), by_speed=False
    )


def capacitor_start(kappas: tuple[float, float, float] = (0.25, 0.325, 0.42)) -> Kind:
    """Return the band of a capacitor-start motor: eight textbook machines."""
    low, mid, high = kappas
    none, some, much = _LOSSES
    wanted = [(MID, mid, some), (LOW, low, none), (LOW, high, much), (HIGH, high, none)]
    wanted += [(MID, low, some), (HIGH, high, some)]
    members = tuple(Member(rho, kappa, None, loss) for rho, kappa, loss in wanted)
    return Kind(members, (0.75, 1.7), 1.2)


def run_capacitor() -> Kind:
    """Return the band of a motor whose run capacitor alone starts it: three textbook machines."""
    none, some, much = _LOSSES
    wanted = [(MID, 1.45, some), (LOW, 1.2, none), (LOW, 1.75, much), (HIGH, 1.2, much)]
    wanted += [(HIGH, 1.75, none)]
    return Kind(tuple(Member(rho, None, turns, loss) for rho, turns, loss in wanted))


def main_winding_alone() -> Kind:
    """Return the band of a motor on its main winding: a rotor share and a friction are all."""
    shares = zip((MID, LOW, HIGH), (_LOSSES[1], _LOSSES[0], _LOSSES[2]), strict=True)
    return Kind(tuple(Member(rho, None, None, loss) for rho, loss in shares))


def between(kind: Kind, number: int, *, by_speed: bool) -> Iterator[Member]:
    """Yield so many members, spread evenly between those of a kind.

    Where the speed on the plate tells the rotor share, it is one of those that stand for a slip.
    """
    ends = [_ends([m[i] for m in kind.members]) for i in range(len(Member._fields))]
    for i in range(number):
        places = [(i + 0.5) * math.sqrt(prime) % 1 for prime in (23, 29, 31, 37)]
        values = [
            None if span is None else span[0] + (span[1] - span[0]) * place
            for span, place in zip(ends, places, strict=True)
        ]
        rho = (LOW, MID, HIGH)[i % 3] if by_speed else values[0]
        yield Member(rho or MID, values[1], values[2], values[3] or 0.0)


def _ends(values: list[float | None]) -> tuple[float, float] | None:
    there = [value for value in values if value is not None]
    return (min(there), max(there)) if there else None

"""Starts drawn evenly from what is not known of a motor, its load and the instant of closing.

The draws are those of an additive recurrence (the fractions of multiples of square roots), so that
they lie evenly and are the same on every run. How many of them do something is no likelihood:
nobody knows how motors, loads and inertias are spread.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from .courses import Courses
from .motors import motors
from .not_known import SLOWER, ptc_ends
from .setup import EASY, HARD, SHARES, Motor, Setup, case
from .spread import Spread, simulated
from .start_case import Ptc, SimulatedStart

_PRIMES = (2, 3, 5, 7, 11, 13, 17, 19)
LOAD, _INERTIA, _ANGLE, _PTC, CUT_OUT, *_READINGS = range(len(_PRIMES))


class DrawnStarts(NamedTuple):
    """The courses of the drawn starts, and what the meters show of each."""

    courses: Courses
    shown: Spread

    @property
    def number(self) -> int:
        """How many there are."""
        return int(self.shown.peak.size)

    @property
    def settling(self) -> int:
        """How many come to speed and settle in the time that was simulated."""
        return int(self.settles.sum())

    @property
    def settles(self) -> Any:
        """Which of them do, an array."""
        return self.shown.settle_time < math.inf

    def ends(self, field: str, *, settled_only: bool = False) -> list[float]:
        """Return least and most of a reading; none where it is not read of drawn starts."""
        if field not in Spread._fields:
            return []
        values = getattr(self.shown, field)
        mine = values[(values < math.inf) & (self.settles | (not settled_only))]
        return [float(mine.min()), float(mine.max())] if mine.size else []


def drawn_starts(
    setup: Setup, own: Sequence[Motor], bands: Mapping[str, tuple[Any, Any]], number: int
) -> DrawnStarts:
    """Simulate so many starts of the motors that it may be."""
    return DrawnStarts(*simulated(cases(setup, own, bands, number), setup.duration))


def cases(
    setup: Setup, own: Sequence[Motor], bands: Mapping[str, tuple[Any, Any]], number: int
) -> list[SimulatedStart]:
    """Return so many starts, drawn from the motors, what was not given and the meters' errors."""
    pool = list(own)
    for name, ends in bands.items():
        if name not in SLOWER:
            pool += [motor for end in ends for motor in motors(setup._replace(**{name: end}))]
    return [drawn(setup, pool[i % len(pool)], bands, places_of(i)) for i in range(number)]


def places_of(number: int) -> list[float]:
    """Return the place of a draw in each direction, 0 to 1."""
    return [(number + 0.5) * math.sqrt(prime) % 1 for prime in _PRIMES]


def drawn(
    setup: Setup, motor: Motor, bands: Mapping[str, tuple[Any, Any]], places: Sequence[float]
) -> SimulatedStart:
    """Return a start of a motor with what was not given at these places of its span, 0 to 1."""
    changed: dict[str, Any] = {"closing_angle": 180 * places[_ANGLE]}
    if setup.load_torque is None:
        changed["load_torque"] = _between(SHARES[EASY], SHARES[HARD], places[LOAD])
    if setup.inertia is None:
        rotor, heavy = motor.inertia
        changed["inertia"] = rotor * (heavy / rotor) ** places[_INERTIA]
    for name, place in zip(SLOWER, (places[i] for i in _READINGS), strict=True):
        if name in bands:
            changed[name] = _between(*bands[name], place)
    one = case(setup._replace(**changed), motor)
    ptc = one.device.ptc
    if ptc is None:
        return one
    return one._replace(device=one.device._replace(ptc=_ptc(ptc, places[_PTC])))


def _ptc(typed: Ptc, place: float) -> Ptc:
    soonest, latest = ptc_ends(typed)
    return Ptc(*(_between(low, high, place) for low, high in zip(soonest, latest, strict=True)))


def _between(low: float, high: float, place: float) -> float:
    return low + (high - low) * place

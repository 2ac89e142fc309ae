"""How the volts of a capacitor fall while it bleeds: V = V0 exp(-t / RC)."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import NamedTuple

from wirecalc import Item, computed, figure, put

LIVE_V, PROVEN_V = 50.0, 5.0  # volts treated as live; volts to prove with the meter
TIME_CONSTANTS = 5

_DECAY = computed("rc-decay", "V = V0 exp(-t / RC)")
_ENERGY = computed("capacitor-energy", "E = C V^2 / 2")


class Bleed(NamedTuple):
    """A capacitor in uF that bleeds from `start` volts through a resistor in ohm."""

    start: float
    ohm: float
    uf: float

    @property
    def constant(self) -> float:
        """The time constant RC in s."""
        return self.ohm * self.uf * 1e-6

    @property
    def hold(self) -> float:
        """How long to hold the resistor across it, in s."""
        return max(TIME_CONSTANTS * self.constant, self.time_to(PROVEN_V))

    @property
    def energy(self) -> float:
        """The energy that is in it, in J."""
        return self.uf * 1e-6 * self.start**2 / 2

    def time_to(self, level: float) -> float:
        """Return the time in s until its volts are down to a level."""
        return self.constant * math.log(self.start / level) if self.start > level else 0.0


def course(bleed: Bleed) -> Iterator[Item]:
    """Show the time constant, the times, what is left after them, and the energy."""
    start, constant, hold = bleed.start, bleed.constant, bleed.hold
    yield figure(
        "time constant",
        constant,
        "s",
        source=_DECAY,
        working=lambda: f"{put(bleed.ohm)} ohm x {put(bleed.uf)} uF / 10^6",
    )
    for level in (LIVE_V, PROVEN_V):
        yield figure(
            f"time to {level:g} V",
            bleed.time_to(level),
            "s",
            source=_DECAY,
            working=_time_working(start, level, constant),
        )
    yield figure(
        "hold for",
        hold,
        "s",
        source=_DECAY,
        toward="up",
        working=lambda: (
            f"{TIME_CONSTANTS} x {put(constant, 's')}; longer than the time to {PROVEN_V:g} V"
            if hold == TIME_CONSTANTS * constant
            else f"the time to {PROVEN_V:g} V, longer than {TIME_CONSTANTS} time constants"
        ),
    )
    yield figure(
        "voltage after that",
        start * math.exp(-hold / constant),
        "V",
        source=_DECAY,
        working=lambda: f"{put(start, 'V')} x exp(-{put(hold, 's')} / {put(constant, 's')})",
    )
    yield figure(
        "energy",
        bleed.energy,
        "J",
        source=_ENERGY,
        working=lambda: f"{put(bleed.uf, 'uF')} / 10^6 x ({put(start, 'V')})^2 / 2",
    )


def _time_working(start: float, level: float, constant: float) -> Callable[[], str]:
    if start > level:
        return lambda: f"{put(constant, 's')} x ln({put(start, 'V')} / {put(level, 'V')})"
    return lambda: "none: it starts at or below that"

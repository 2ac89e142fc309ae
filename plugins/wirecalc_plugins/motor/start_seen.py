"""The readings of one start, and what they show by themselves."""

from __future__ import annotations

from typing import NamedTuple

from wirecalc import at_or_above, at_or_below

from .plate import LockedRotor
from .settled_checks import OVER_RLA
from .start_checks import SEEN, SHORT_OF_LRA, STOP_S, as_rms, near_locked


class SeenStart(NamedTuple):
    """The readings of one start, in A and s. `locked` is at the supply's voltage.

    `rated` is the motor's own rated-load current, `plate` amps of a plate that may be of more;
    `allowed` is how many times its rated current this kind of motor may draw.
    """

    locked: LockedRotor | None
    rated: float | None
    plate: float | None
    peak: float | None
    settled: float
    settle_time: float | None
    mode: str
    allowed: float = OVER_RLA
    inverter: bool | None = None

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
        return None if of is None else not at_or_above(self.settled, share * of)

    @property
    def stays_high(self) -> bool | None:
        """Whether the current never comes down from that of a start; None where unknown."""
        below = self.settles_below(SHORT_OF_LRA, self.level)
        if below is None:
            return None
        own = self.rated is not None or self.locked is None or self.locked.least == 0
        return not below and not (own and self.over is False)

    @property
    def over(self) -> bool | None:
        """Whether it settles above what the plate allows."""
        if self.mark is None:
            return None
        return not at_or_below(self.settled, self.allowed * self.mark)

    @property
    def small_peak(self) -> bool:
        """Whether the peak is short of locked-rotor current; a slow meter misses peaks."""
        if self.locked is None or self.peak is None or self.mode == "max-hold":
            return False
        scale = 2**0.5 if self.mode == "peak-hold" else 1.0
        return not at_or_above(self.peak, SHORT_OF_LRA * self.locked.least * scale)

    @property
    def seen(self) -> bool:
        """Whether a peak in the jaws shows that they are around one wire that carries it."""
        floor = self.mark if self.locked is None else self.locked.least
        return self.peak is not None and floor is not None and self.peak > SEEN * floor

    @property
    def near(self) -> bool | None:
        """Whether it was near locked-rotor current, at its peak or as it stayed."""
        least = self.peak if self.mode == "max-hold" else self.rms
        return near_locked(self.locked, max(least or 0.0, self.settled))

    @property
    def ramps(self) -> bool:
        """Whether it rose slowly and not near locked-rotor current, as a drive's start does."""
        late = self.settle_time is not None and not at_or_below(self.settle_time, STOP_S)
        return late and not self.near

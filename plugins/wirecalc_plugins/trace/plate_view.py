"""The plate beside a recording: the band of the meter, and a run as the plate lets it be read."""

from __future__ import annotations

import math
from typing import NamedTuple

from wirecalc import RecordedColumns, at_or_above, at_or_below

from ..motor.plate import LockedRotor, at_supply, locked_rotor
from ..motor.start_checks import SHORT_OF_LRA, STOP_S
from .machine_run import MachineRun
from .surge import end_of_surge


class TracePlate(NamedTuple):
    """What is printed, in A and V, and the volts while it ran; None where unknown."""

    rated: float | None
    locked: float | None
    nameplate_voltage: float | None
    breaker: float | None
    device: str = "ul-489"
    kind: str | None = None
    inverter: bool | None = None
    voltage: float | None = None
    frequency: float = 60.0

    @property
    def known(self) -> bool:
        """Whether there is anything to compare with."""
        return any(v is not None for v in (self.rated, self.locked, self.breaker))


class Ends(NamedTuple):
    """The recording at the low end, the centre and the high end of the meter's band.

    `doubt` is the share by which the stamps may move a level too, `blur` the A by which noise may
    move an rms over a second.
    """

    low: RecordedColumns
    centre: RecordedColumns
    high: RecordedColumns
    doubt: float = 0.0
    blur: float = 0.0

    def at(self, value: float, side: int, seconds: float = math.inf) -> float:
        """Return a value at one end of the band (-1, 0, 1), an rms over so many seconds."""
        moved = (self.centre, self.high, self.low)[side].moved(value) * (1 + side * self.doubt)
        return max(moved + side * self.blur / math.sqrt(seconds), 0.0)

    def of(self, value: float, seconds: float = math.inf) -> tuple[float, float]:
        """Return the band of a value, an rms over so many seconds."""
        return self.at(value, -1, seconds), self.at(value, 1, seconds)


def locked_at_supply(plate: TracePlate) -> LockedRotor | None:
    """Return the locked-rotor current of the plate at the supply's voltage."""
    locked = locked_rotor(plate.locked, None, None, None)
    if locked is None:
        return None
    return at_supply(locked, plate.voltage, plate.nameplate_voltage)


def peak_of(run: MachineRun, mode: str) -> float | None:
    """Return what a meter shows of a start in its `mode`: of max-hold it is the least."""
    return {"inrush": run.surge, "peak-hold": run.crest}.get(mode, run.highest)


def stays_high(settled: float | None, of: float | None) -> bool:
    """Whether a level has not come down from a locked-rotor current."""
    if settled is None or not of:
        return False
    return at_or_above(settled, SHORT_OF_LRA * of)


def as_shown(run: MachineRun, plate: TracePlate, step: float) -> MachineRun:
    """Return a run with the end of its surge as the plate lets it be read.

    A current that stays high has its whole length as its surge.
    """
    if plate.rated is not None:
        surge = end_of_surge(run.calm, run.highest, run.settled, plate.rated)
        run = run._replace(settle=surge)
    locked = locked_at_supply(plate)
    if locked is None or run.cut_start or not stays_high(run.settled, locked.least):
        return run
    long = run.end - run.start
    if run.cut_end and at_or_below(long, STOP_S):  # it may be starting still
        return run._replace(settled=None, settle=None)
    if at_or_below(long, STOP_S) or not stays_high(run.settled, locked.most):
        return run._replace(settle=None)
    return run._replace(settle=(long, max(0.0, long - step), long + step))

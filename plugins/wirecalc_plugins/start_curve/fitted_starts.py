"""The starts of a plate that reproduce a recording of this very machine. Needs numpy.

Machines are drawn evenly between the members of their kind, with load, PTC, cut-out and instant of
closing between their ends. The locked-rotor amps, and an inertia that was not given, are set by the
recording in two rounds. A start is kept if its first 100 ms, its falls and its settled current are
those recorded, within what such a model leaves out and the meter's error. What the kept ones have
in common is learnt; what they differ in, the recording does not tell.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, NamedTuple

from .meter_readings import INRUSH_S
from .not_known import WIDER
from .recorded_start import RecordedStart
from .setup import Motor, Setup, rated_torque, standstill_share
from .start_case import SimulatedStart
from .tried_starts import FEWEST, MOST_LOAD, STARTS, TriedStarts, move_inertias, tried_starts

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]

ROUNDS, MOST_ROUNDS = 2, 4  # in which the recording sets amps and inertia
MOST_OFF = 0.3  # share by which the LRA of a plate may be off that of its motor; practice
TOLD = 0.85  # a band that is not so much narrower than before the recording tells nothing new
# what a band of kept starts is made wider by, as a share: as textbook machines showed
LEARNT = {"locked": 0.02, "torque": 0.12, "load": 0.08, "inertia": 0.15}
QUICK = 0.12  # more for amps and inertia of a start that falls within the 100 ms
_QUICKLY = ("locked", "inertia")
_NEAR = 0.5  # share by which a fall may be off and its start still tell the amps

Band = tuple[float, float]


class Kept(NamedTuple):
    """A start that reproduces the recording.

    `locked` is the locked-rotor current in A at the plate's volts, `torque` at standstill and
    `load` shares of the rated torque in %, `inertia` in kg m2; `speed_time` to 80 % of speed and
    `opened`, when the start device opened, in s.
    """

    motor: Motor
    case: SimulatedStart
    locked: float
    torque: float
    load: float
    inertia: float
    speed_time: float
    opened: float


class FittedStarts(NamedTuple):
    """The kept starts, the nearest first, of so many that were tried; `torque` of all those.

    `quick` says that the current fell within the first 100 ms, `cycle` is that of the mains in s;
    `rms` has the one-cycle rms of each kept start as a column.
    """

    kept: list[Kept]
    tried: int
    torque: Band
    quick: bool
    cycle: float
    recorded: RecordedStart
    rms: Samples

    def band(self, field: str) -> Band:
        """Return what was learnt of a field of the kept starts: least and most."""
        values = [float(getattr(one, field)) for one in self.kept]
        by = LEARNT.get(field, 0.0) + (QUICK if field in _QUICKLY and self.quick else 0.0)
        beside = self.cycle if field in ("speed_time", "opened") else 0.0
        return max(0.0, min(values) * (1 - by) - beside), max(values) * (1 + by) + beside

    def told(self, field: str) -> bool:
        """Whether the torque or the load is known better than before the recording."""
        before = self.torque if field == "torque" else (0.0, MOST_LOAD)
        low, high = self.band(field)
        return high - low < TOLD * (before[1] - before[0])

    @property
    def outer(self) -> list[Kept]:
        """The nearest start, and the least and the most of each thing that may differ."""
        picked = [self.kept[0]]
        for field in ("torque", "load", "inertia", "speed_time"):
            ranked = sorted(self.kept, key=lambda one: float(getattr(one, field)))
            picked += [one for one in (ranked[0], ranked[-1]) if one not in picked]
        return picked


def fitted_starts(
    setup: Setup, recorded: RecordedStart, bands: Mapping[str, tuple[Any, Any]]
) -> FittedStarts | str:
    """Return the starts that reproduce a recording, or why there are none."""
    import numpy as np

    plate = locked = setup.locked_rotor_current or 0.0
    inertias = np.zeros(STARTS)
    fitted: FittedStarts | str = ""
    for number in range(MOST_ROUNDS):
        if number >= ROUNDS and (not isinstance(fitted, str) or setup.inertia is not None):
            break
        tried = tried_starts(setup._replace(locked_rotor_current=locked), recorded, bands, inertias)
        if tried is None:
            return "no motor that is known here has this plate and draws this current"
        fitted = _fitted(tried, recorded, locked)
        near = np.abs(tried.falls[1] / recorded.falls[1] - 1) < _NEAR
        amps = tried.shown.inrush[near] if near.any() else tried.shown.inrush
        locked *= recorded.inrush / float(np.median(amps))
        if abs(locked / plate - 1) > MOST_OFF:
            return (
                f"its first 100 ms are at {recorded.inrush:.3g} A, which no motor of this plate "
                "draws on these volts"
            )
        if setup.inertia is None:
            move_inertias(inertias, tried, recorded)
    return fitted


def _reproduce(tried: TriedStarts, recorded: RecordedStart) -> list[int]:
    """Return which starts reproduce the recording, the nearest first."""
    import numpy as np

    shown, cycle = tried.shown, 1 / tried.courses.frequency
    off = [
        _off(shown.inrush, recorded.inrush_band, WIDER["inrush"]),
        _off(shown.settled, recorded.settled_band, WIDER["settled"]),
    ]
    for found, wanted in zip(tried.falls, recorded.falls, strict=True):
        off.append(np.abs(found - wanted) / (WIDER["speed_time"] * wanted + cycle / 2))
    worst = np.where(np.isfinite(shown.settle_time), np.max(off, axis=0), np.inf)
    return [int(i) for i in np.argsort(worst) if worst[i] <= 1]


def _off(values: Samples, band: Band, share: float) -> Samples:
    """Return how far values are off the middle of a band, 1 at its ends made wider by a share."""
    low, high = band[0] * (1 - share), band[1] * (1 + share)
    off: Samples = abs(values - (low + high) / 2) / ((high - low) / 2)
    return off


def _fitted(tried: TriedStarts, recorded: RecordedStart, locked: float) -> FittedStarts | str:
    """Return the starts that reproduce the recording, or that too few do."""
    mine = _reproduce(tried, recorded)
    if len(mine) < FEWEST:
        some = f"only {len(mine)}" if mine else "none"
        return f"of {len(tried.cases)} starts that this plate may have {some} reproduces it"
    torques = [standstill_share(motor) for motor in tried.motors]
    kept = [
        Kept(
            tried.motors[i],
            tried.cases[i],
            locked * recorded.inrush / float(tried.shown.inrush[i]),
            torques[i],
            _load(tried.motors[i], tried.cases[i]),
            tried.cases[i].load.inertia,
            float(tried.shown.speed_time[i]),
            float(tried.courses.opened[i]),
        )
        for i in mine
    ]
    quick = recorded.falls[0] < INRUSH_S
    cycle = 1 / tried.courses.frequency
    rms = tried.courses.rms[:, mine]
    ends = min(torques), max(torques)
    return FittedStarts(kept, len(tried.cases), ends, quick, cycle, recorded, rms)


def _load(motor: Motor, case: SimulatedStart) -> float:
    """Return the load of a start as a share of its motor's rated torque in %."""
    torque = case.load.constant + case.load.quadratic * (1 - motor.machine.slip) ** 2
    rated = rated_torque(motor)
    return 100 * torque / rated if rated else 0.0

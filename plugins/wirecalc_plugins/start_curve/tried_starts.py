"""Starts that a plate may have, simulated beside a recording of its motor. Needs numpy."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, NamedTuple

from .courses import Courses
from .drawn_starts import CUT_OUT, LOAD, drawn, places_of
from .motors import between
from .not_known import SLOWER
from .recorded_start import FALLS, RecordedStart, last_above
from .setup import EASY, Motor, Setup
from .spread import Spread, simulated
from .start_case import SimulatedStart

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]

MACHINES, STARTS = 60, 240
MOST_LOAD = 120.0  # % of rated torque that a load is looked for up to; practice
CUT_OUTS = (0.70, 0.80)  # of synchronous speed, at which relays and switches open; practice
LIGHTEST = 0.8  # times the inertia of a rotor alone: 0.04 s of 0.05 s
FEWEST = 10  # starts; fewer show no band
_MOST_MOVED = 20.0  # times that an inertia is moved in a round
_ROOM, _AFTER_S = 1.5, 0.4  # of the simulated time after the surge


class TriedStarts(NamedTuple):
    """Starts that were tried, side by side, each at its place among the draws."""

    places: list[int]
    motors: list[Motor]
    cases: list[SimulatedStart]
    courses: Courses
    shown: Spread
    falls: list[Samples]


def tried_starts(
    setup: Setup,
    recorded: RecordedStart,
    bands: Mapping[str, tuple[Any, Any]],
    inertias: Samples,
) -> TriedStarts | None:
    """Simulate the starts of a plate; an inertia of 0 is drawn, and written down."""
    others = [
        setup._replace(**{name: end})
        for name, ends in bands.items()
        if name not in SLOWER
        for end in ends
    ]
    setups = [setup, *others]
    pool = [motor for one in setups for motor in between(one, max(6, MACHINES // len(setups)))]
    there = {i: motor for i in range(STARTS) if (motor := pool[i % len(pool)]) is not None}
    if len(there) < FEWEST:
        return None
    cases = []
    for i, motor in there.items():
        case = _case(setup, motor, bands, i, float(inertias[i]))
        inertias[i] = case.load.inertia
        cases.append(case)
    found, shown = simulated(cases, _ROOM * recorded.surge_over + _AFTER_S)
    return TriedStarts(list(there), list(there.values()), cases, found, shown, _falls(found, shown))


def _case(
    setup: Setup, motor: Motor, bands: Mapping[str, tuple[Any, Any]], place: int, inertia: float
) -> SimulatedStart:
    """Return a start at a place among the draws, with this inertia if it is known by now."""
    places = places_of(place)
    if setup.load_torque is None:
        setup = setup._replace(load_torque=MOST_LOAD * places[LOAD])
    case = drawn(setup, motor, bands, places)
    if inertia and setup.inertia is None:
        inertia = max(LIGHTEST * motor.inertia[EASY], inertia)
        case = case._replace(load=case.load._replace(inertia=inertia))
    if case.device.cut_out is not None:
        low, high = CUT_OUTS
        cut = low + (high - low) * places[CUT_OUT]
        case = case._replace(device=case.device._replace(cut_out=cut))
    return case


def _falls(found: Courses, shown: Spread) -> list[Samples]:
    """Return when each start last fell below each share of the way, as it is read off the other."""
    import numpy as np

    t = (np.arange(len(found.rms)) + 0.5) / found.frequency
    return [
        last_above(t, found.rms, shown.settled + share * (shown.inrush - shown.settled))
        for share in FALLS
    ]


def move_inertias(inertias: Samples, tried: TriedStarts, recorded: RecordedStart) -> None:
    """Move each inertia by how much too soon or late its start falls: the time goes with it."""
    import numpy as np

    off = recorded.falls[1] / np.maximum(tried.falls[1], 1e-3)
    off = np.where(np.isfinite(tried.falls[1]), off, 1 / 3)
    inertias[tried.places] *= np.clip(off, 1 / _MOST_MOVED, _MOST_MOVED)

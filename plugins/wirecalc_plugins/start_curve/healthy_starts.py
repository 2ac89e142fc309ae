"""The healthy starts of a motor: of every machine, load and end of a reading that it may have."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from . import starting
from .drawn_starts import DrawnStarts, drawn_starts
from .fitted_starts import FittedStarts
from .meter_readings import MeterReadings, read_meters
from .motors import motors
from .not_known import ASSUMED, SLOWER, WIDER, ptc_ends
from .setup import EASY, HARD, SHARES, Motor, Setup, case, standstill_share
from .start_case import SimulatedStart

Band = tuple[float, float]


class Start(NamedTuple):
    """One simulated start and what the meters show of it."""

    curve: starting.Curve
    meters: MeterReadings

    @property
    def settles(self) -> bool:
        """Whether it comes to speed and settles in the time that was simulated."""
        return self.meters.settle_time is not None


class HealthyStarts(NamedTuple):
    """The starts of a healthy motor, the first with the nominal machine and the hard load.

    `torque` at standstill and `load` are shares of the rated torque in %: least and most. `drawn`
    are starts between those ends, where they were asked for; every band holds them too. `fitted`
    are those that reproduce a recording, and then the starts are the outer ones of them.
    """

    motor: Motor
    starts: list[Start]
    torque: Band
    load: Band
    assumed: tuple[str, ...]
    drawn: DrawnStarts | None = None
    fitted: FittedStarts | None = None

    @property
    def sure(self) -> bool:
        """Whether it starts, whatever machine, load and reading it is."""
        every = self.drawn is None or self.drawn.settling == self.drawn.number
        return every and all(one.settles for one in self.starts)

    @property
    def never(self) -> bool:
        """Whether it starts in no case."""
        some = self.drawn is not None and self.drawn.settling > 0
        return not some and not any(one.settles for one in self.starts)

    def band(self, field: str, *, settled_only: bool = False) -> Band:
        """Return least and most of a reading, wider by what an estimate leaves out."""
        runs = [one.meters for one in self.starts if one.settles or not settled_only]
        values = [value for run in runs if (value := getattr(run, field)) is not None]
        if self.drawn is not None:
            values += self.drawn.ends(field, settled_only=settled_only)
        return self.wider((min(values), max(values)), field)

    def wider(self, band: Band, field: str) -> Band:
        """Return a band of a reading, wider by what an estimate leaves out."""
        by = WIDER.get(field, 0.0) if self.motor.estimated else 0.0
        return band[0] * (1 - by), band[1] * (1 + by)


def healthy_starts(
    setup: Setup, own: list[Motor], bands: Mapping[str, tuple[Any, Any]]
) -> HealthyStarts:
    """Simulate the starts of the motors that it may be, at both ends of what is not known."""
    nominal = own[0]
    assumed = tuple(name for name in ASSUMED if getattr(setup, name) is None)
    if nominal.inertia_known:
        assumed = tuple(name for name in assumed if name != "inertia")
    cases = [case(setup, nominal)]
    cases += [case(setup, motor) for motor in own[1:]]
    cases += [case(setup, motor, EASY) for motor in own if assumed]
    cases += _ptc_starts(cases[0])
    cases += _reading_ends(setup, nominal, bands, bool(assumed))
    torques = [standstill_share(motor) for motor in own]
    share = setup.load_torque
    return HealthyStarts(
        nominal,
        [simulate(one, setup.duration) for one in cases],
        (min(torques), max(torques)),
        SHARES if share is None else (share, share),
        assumed,
        drawn_starts(setup, own, bands, setup.spread) if setup.spread else None,
    )


def recorded_starts(setup: Setup, fitted: FittedStarts) -> HealthyStarts:
    """Simulate the outer ones of the starts that reproduce a recording, the nearest first."""
    torques = [one.torque for one in fitted.kept]
    loads = [one.load for one in fitted.kept]
    return HealthyStarts(
        fitted.kept[0].motor,
        [simulate(one.case, setup.duration) for one in fitted.outer],
        (min(torques), max(torques)),
        (min(loads), max(loads)),
        (),
        fitted=fitted,
    )


def simulate(one: SimulatedStart, duration: float) -> Start:
    """Simulate a start and read the meters."""
    curve = starting.simulate(one, duration)
    return Start(curve, read_meters(curve, duration))


def _ptc_starts(typed: SimulatedStart) -> Iterator[SimulatedStart]:
    """Yield the start with each end of its PTC, if it has one."""
    for ptc in [] if typed.device.ptc is None else ptc_ends(typed.device.ptc):
        yield typed._replace(device=typed.device._replace(ptc=ptc))


def _reading_ends(
    setup: Setup, nominal: Motor, bands: Mapping[str, tuple[Any, Any]], assumed: bool
) -> Iterator[SimulatedStart]:
    """Yield the ends of the readings: each that changes the motor alone, all slow, all fast.

    What weakens the nominal motor at standstill makes it slow. Of the motors of an end, the
    nominal, the weakest and the strongest are run.
    """
    fast: dict[str, Any] = {}
    slow: dict[str, Any] = {}
    for name, ends in bands.items():
        if name in SLOWER:
            slow[name], fast[name] = ends if SLOWER[name] == 0 else ends[::-1]
            continue
        moved = [(end, motors(setup._replace(**{name: end}))) for end in ends]
        there = [(end, of_end[0]) for end, of_end in moved if of_end]
        yield from (case(setup._replace(**{name: end}), motor) for end, motor in there)
        by_torque = sorted(there, key=lambda pair: standstill_share(pair[1]))
        slow[name], fast[name] = by_torque[0][0], by_torque[-1][0]
    if not bands:
        return
    for changed, end in ((slow, HARD), (fast, EASY if assumed else HARD)):
        moved_setup = setup._replace(**changed)
        found = motors(moved_setup) if set(changed) - set(SLOWER) else None
        yield from (case(moved_setup, motor, end) for motor in _outer(found or motors(setup)))


def _outer(found: list[Motor]) -> list[Motor]:
    """Return the nominal motor, the weakest and the strongest at standstill."""
    ranked = sorted(found, key=standstill_share)
    picked = [found[0]]
    picked += [motor for motor in (ranked[0], ranked[-1]) if motor not in picked]
    return picked

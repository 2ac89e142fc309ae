"""What judges a simulated start: its volts, its time, and where it settles."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from wirecalc import PRACTICE, Item, Origin, at_least, at_most, at_or_below, cannot_tell, requires

from .healthy_starts import HealthyStarts
from .in_words import cannot_say_whether_it_starts
from .setup import Motor, Setup

NORMAL_S, STOP_S = 1.0, 3.0  # a small motor settles within 1 s; over 3 s: stop; practice
LEAST_VOLTS = 0.9  # share of plate volts that makers ask for while it starts; practice
HARDLY_STARTS = 0.8  # share of plate volts that leaves 64 % of the torque; practice
MOST_VOLTS, WRONG_VOLTS = 1.1, 1.2  # share of plate volts: it runs hot; the wrong supply; practice
FAR_OVER = 2.0  # times RLA: more than the model is off by, at any load that it carries; practice
_SETTLE, _VOLTS = "time to settle", "volts at the motor while it starts"
_LOOK = "look for low volts, a start device or capacitor that is wrong, a heavy load"
_HOLD = "hold a real start with the meter's inrush function"
_OR_LOAD = f"{_HOLD}, or give the load"


def refuse_estimate() -> Item:
    """Say that no motor that is known here has such a plate."""
    return cannot_tell(
        _SETTLE,
        "no motor that is known here has amps, power and ohms like these",
        measure="read plate, windings and the mark of the capacitor again: a slipped point?",
        source=PRACTICE,
    )


def judge_estimate(torque: float, *, speed_fits: bool) -> Iterator[Item]:
    """Question readings whose motor is far from those that start its way, in torque or speed."""
    if not speed_fits:
        yield cannot_tell(
            "speed of the plate against its amps and ohms",
            "no motor of these amps, power and ohms runs at this speed",
            measure="read the plate and the windings again: a slipped point?",
            source=PRACTICE,
        )
    if torque != 1:
        yield cannot_tell(
            "readings against the way of starting",
            f"with these ohms and this LRA it has {torque:.2g} times the torque at standstill of "
            "motors that start this way: they do not fit each other",
            measure="is there a start capacitor? is the LRA that of other volts? are start and "
            "main winding exchanged?",
            source=PRACTICE,
        )


def judge(
    setup: Setup, healthy: HealthyStarts, bands: Mapping[str, tuple[Any, Any]]
) -> Iterator[Item]:
    """Judge a healthy start: the volts that it is given, its time, its volts and where it settles.

    A time is judged where every start settled; where a known motor never does, that is what is
    judged; what an estimate does not settle cannot be told.
    """
    own = healthy.motor
    yield from _supply(setup, own, bands)
    if setup.cord is not None and setup.cord_length is None:
        for name in (_SETTLE, _VOLTS):
            yield cannot_tell(
                name,
                "there is a cord, and its length was not given",
                measure="measure the cord",
                needs=("cord_length",),
            )
        return
    yield _time(setup, healthy) if healthy.sure else _no_time(setup, healthy)
    yield from _volts(healthy)
    yield from _settled(setup, healthy)


def _time(setup: Setup, healthy: HealthyStarts) -> Item:
    """Judge the time of starts that all settle."""
    band = healthy.band("settle_time")
    if healthy.assumed and not at_or_below(band[1], STOP_S):
        return cannot_tell(
            _SETTLE,
            "it does not settle in time with every load that was assumed",
            measure=_OR_LOAD,
            needs=healthy.assumed,
        )
    if (
        healthy.motor.estimated
        and at_or_below(band[0], STOP_S)
        and not at_or_below(band[1], STOP_S)
    ):
        says = f"the estimate leaves {band[0]:.2g} to {band[1]:.2g} s open, across {STOP_S:g} s"
        return cannot_tell(_SETTLE, says, measure=_HOLD)
    return at_most(
        _SETTLE,
        healthy.starts[0].meters.settle_time or 0.0,
        STOP_S,
        "s",
        caution=NORMAL_S,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=_LOOK,
        band=band,
    )


def _no_time(setup: Setup, healthy: HealthyStarts) -> Item:
    """Judge, or say that it cannot be told, where not every start settles."""
    own, shown = healthy.motor, healthy.starts[0].meters
    winding = own.machine.start is not None
    hold = _OR_LOAD if healthy.assumed else _HOLD
    if setup.duration <= STOP_S:
        return cannot_tell(
            _SETTLE,
            f"it had not settled when the simulation ended at {setup.duration:g} s",
            measure="give a duration of 4 s",
        )
    if not winding or (healthy.never and not healthy.assumed and not own.estimated):
        slow = shown.speed_time is None
        says = "it does not come to speed" if slow else "it comes to speed and does not settle"
        return requires(
            f"settles within {STOP_S:g} s",
            False,
            says=f"{says} in the {setup.duration:g} s that were simulated",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=_LOOK,
        )
    if not own.estimated:
        at_end = "with every load that was assumed" if healthy.assumed else "at every end of them"
        says = f"it does not settle in time {at_end}"
        return cannot_tell(_SETTLE, says, measure=hold, needs=healthy.assumed)
    return cannot_tell(
        _SETTLE, cannot_say_whether_it_starts(healthy), measure=hold, needs=healthy.assumed
    )


def _volts(healthy: HealthyStarts) -> Iterator[Item]:
    """Judge the lowest volts at the motor."""
    plate = healthy.motor.machine.voltage
    yield at_least(
        _VOLTS,
        healthy.starts[0].meters.volts,
        HARDLY_STARTS * plate,
        "V",
        caution=LEAST_VOLTS * plate,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="under 80 % of its plate a motor has 64 % of its torque",
        action="shorten or thicken the cord, take other loads off the circuit",
        band=healthy.band("volts"),
    )


def _supply(setup: Setup, own: Motor, bands: Mapping[str, tuple[Any, Any]]) -> Iterator[Item]:
    """Judge volts at rest that are above what the motor is for."""
    rest, plate = setup.voltage_at_rest, own.machine.voltage
    if rest is None:
        return
    low, high = bands.get("voltage_at_rest", (rest, rest))
    if not at_or_below(high, MOST_VOLTS * plate):
        yield at_most(
            "volts at rest, upper limit",
            rest,
            WRONG_VOLTS * plate,
            "V",
            caution=MOST_VOLTS * plate,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="over 110 % of its plate a motor runs hot; over 120 % it is the wrong supply",
            action="read the volts again, and the plate: is it that of this motor?",
            band=(low, high),
        )


def _settled(setup: Setup, healthy: HealthyStarts) -> Iterator[Item]:
    """Question a motor of a plate that settles far above its plate."""
    rated = setup.rated_load_current
    if rated is None or not healthy.sure:
        return
    least = healthy.band("settled")[0]
    if not at_or_below(least, FAR_OVER * rated):
        yield cannot_tell(
            "settled current, upper limit",
            f"the simulated motor settles at {least:.3g} A, {least / rated:.2g} times RLA: "
            "windings, capacitor, volts or load are not those of this plate",
            measure="read plate, windings and the mark of the capacitor again: a slipped point?",
            source=PRACTICE,
        )

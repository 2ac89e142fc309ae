"""What judges a simulated start: its volts, its time, and where it settles."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from wirecalc import PRACTICE, Item, Origin, at_least, at_most, at_or_below, cannot_tell

from . import meter_readings
from .setup import Motor, Setup

NORMAL_S, STOP_S = 1.0, 3.0  # a small motor settles within 1 s; over 3 s: stop; practice
LEAST_VOLTS = 0.9  # share of plate volts that makers ask for while it starts; practice
HARDLY_STARTS = 0.8  # share of plate volts that leaves 64 % of the torque; practice
MOST_VOLTS, WRONG_VOLTS = 1.1, 1.2  # share of plate volts: it runs hot; the wrong supply; practice
FAR_OVER = 2.0  # times RLA: more than the model is off by, at any load that it carries; practice
_SETTLE, _VOLTS = "time to settle", "volts at the motor while it starts"
ASSUMED = ("load_torque", "inertia")  # taken unkindly where they are left out


def judge(
    setup: Setup,
    runs: Sequence[meter_readings.MeterReadings],
    own: Motor,
    bands: Mapping[str, tuple[Any, Any]],
) -> Iterator[Item]:
    """Judge a healthy start: the volts that it is given, its time, its volts and where it settles.

    `runs` are the start as typed and those at the ends of its band.
    """
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
    never = max(setup.duration, 2 * STOP_S)
    times = [never if run.settle_time is None else run.settle_time for run in runs]
    assumed = tuple(name for name in ASSUMED if getattr(setup, name) is None)
    if own.inertia_known:
        assumed = tuple(name for name in assumed if name != "inertia")
    winding = own.machine.start is not None
    cut = setup.duration <= STOP_S and any(run.settle_time is None for run in runs)
    if cut:
        yield cannot_tell(
            _SETTLE,
            f"it had not settled when the simulation ended at {setup.duration:g} s",
            measure="give a duration of 4 s",
        )
    elif assumed and winding and not all(at_or_below(t, STOP_S) for t in times):
        yield cannot_tell(
            _SETTLE,
            "it does not settle in time with the load that was assumed",
            measure="hold a real start with the meter's inrush function, or give the load",
            needs=assumed,
        )
    else:
        yield at_most(
            _SETTLE,
            times[0],
            STOP_S,
            "s",
            caution=NORMAL_S,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="" if runs[0].settle_time is not None else "it does not come to speed",
            action="look for low volts, a start device or capacitor that is wrong, a heavy load",
            band=(min(times), max(times)),
        )
    volts = [run.volts for run in runs]
    yield at_least(
        _VOLTS,
        volts[0],
        HARDLY_STARTS * own.machine.voltage,
        "V",
        caution=LEAST_VOLTS * own.machine.voltage,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="under 80 % of its plate a motor has 64 % of its torque",
        action="shorten or thicken the cord, take other loads off the circuit",
        band=(min(volts), max(volts)),
    )
    yield from _settled(setup, runs)


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


def _settled(setup: Setup, runs: Sequence[meter_readings.MeterReadings]) -> Iterator[Item]:
    """Question a motor of a plate that settles far above its plate."""
    rated = setup.rated_load_current
    least = min(run.settled for run in runs)
    if rated is None or any(run.settle_time is None for run in runs):
        return
    if not at_or_below(least, FAR_OVER * rated):
        yield cannot_tell(
            "settled current, upper limit",
            f"the simulated motor settles at {least:.3g} A, {least / rated:.2g} times RLA: "
            "windings, capacitor, volts or load are not those of this plate",
            measure="read plate, windings and the mark of the capacitor again: a slipped point?",
            source=PRACTICE,
        )

"""How the readings of a motor's start are judged: helpers of several checks."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    cannot_tell,
    computed,
    figure,
    not_checked,
    put,
)
from wirecalc.trade import motors

from ..overcurrent.breaker_at_start import PF_LOW
from .plate import LockedRotor

PF_HIGH = 0.8  # most locked-rotor power factor of a small single-phase motor; practice
SHORT_OF_LRA = 0.7  # share of locked-rotor current that a good start shows at least; practice
SEEN = 0.05  # share of locked-rotor or rated current under which nothing starts or runs; practice
MISSED = 1.5  # times the settled current that a peak at least is which was not missed; practice
WINDOW_RMS = 1.12  # 100 ms rms of an offset start over locked-rotor rms at R/X 0.1, integrated
NO_METER = 2 * math.sqrt(2)  # highest crest over rms of any closing R-L circuit
NORMAL_S, STOP_S = 1.0, 3.0  # a small compressor settles within 1 s; over 3 s: stop; practice

_OFFSET = computed("rl-offset", "offset peak of an R-L circuit closed at the voltage zero")
_PEAK = "start peak, lower limit"
_TIME = "time to settle"


def expected_start(locked: LockedRotor, frequency: float) -> Iterator[Item]:
    """Yield what the start should show: least, most, and the highest first crest."""
    at_volts = "LRA at the supply's volts"
    yield figure(
        "expected start current, least",
        locked.least * SHORT_OF_LRA,
        "A",
        source=PRACTICE,
        working=lambda: f"{SHORT_OF_LRA} x {put(locked.least, 'A')}; {at_volts}",
    )
    most = locked.most
    if most is None:
        return
    yield figure(
        "expected start current, most",
        most * WINDOW_RMS,
        "A",
        source=locked.source,
        working=lambda: f"{WINDOW_RMS} x {put(most, 'A')}; {at_volts}",
    )
    crest = motors.offset_crest(PF_LOW)
    yield figure(
        "highest first crest",
        most * crest,
        "A",
        source=_OFFSET,
        working=lambda: f"{put(most)} A x {put(crest)}; power factor {PF_LOW}",
    )
    angle = motors.first_peak_angle(PF_LOW)
    yield figure(
        "time of the first crest",
        angle / (2 * math.pi * frequency) * 1000,
        "ms",
        source=_OFFSET,
        working=lambda: f"1000 x {put(angle, 'rad')} / (2 x pi x {put(frequency, 'Hz')})",
    )


def judge_peak(
    locked: LockedRotor, peak: float | None, mode: str, settled: float | None = None
) -> Iterator[Item]:
    """Judge the highest current of a start against the locked-rotor current."""
    if peak is None:
        yield cannot_tell(
            _PEAK,
            "the start was not measured",
            measure="hold the start with the meter's inrush function, jaws around one wire",
            needs=("peak",),
        )
        return
    yield _high_enough(locked, peak, mode, settled)
    if locked.most is not None:
        yield from _not_too_high(locked.most, peak, mode)


def _high_enough(locked: LockedRotor, peak: float, mode: str, settled: float | None) -> Item:
    scale = math.sqrt(2) if mode == "peak-hold" else 1.0
    least = locked.least * scale
    short = not at_or_above(peak, SHORT_OF_LRA * least)
    why = measure = ""
    if locked.least == 0:
        why, measure = "the code letter sets no least current", "read LRA on the plate"
    elif not at_or_above(peak, SEEN * least):
        why = f"{peak:g} A is no start of a motor of {locked.least:.3g} A: it did not try, or the "
        why += "jaws are around both wires or none that feeds it"
        measure = "see and hear whether it tries; one wire in the jaws"
    elif short and mode == "max-hold":
        why = "a slow max-hold misses part of a start shorter than half a second"
        measure = "use the meter's inrush function"
    elif short and settled is not None and not at_or_above(peak, MISSED * scale * settled):
        than = "below" if peak < settled else "hardly above"
        why = (
            f"a peak of {peak:g} A is {than} the settled {settled:g} A: it was missed, or a board "
        )
        why += "drives the motor"
        measure = "hold the start with the meter's inrush function, set before it starts"
    if why:
        return cannot_tell(_PEAK, why, measure=measure, source=PRACTICE)
    return at_least(
        _PEAK,
        peak,
        SEEN * least,
        "A",
        caution=SHORT_OF_LRA * least,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="one wire in the jaws? a start winding or start device that is open?",
        action="check the clamp and the start device",
    )


def _not_too_high(most: float, peak: float, mode: str) -> Iterator[Item]:
    name, crest = "start peak, upper limit", motors.offset_crest(PF_LOW)
    top = most * (crest if mode == "peak-hold" else WINDOW_RMS)
    action = "repeat the reading with the inrush function on the motor's own wire"
    if not at_or_below(peak, NO_METER * most):
        yield cannot_tell(
            name,
            f"{peak:g} A is {peak / most:.2g} times locked-rotor current, and no start has over "
            f"{NO_METER:.3g} times: a slipped point, another load, another plate, a short",
            measure=action,
            source=_OFFSET,
        )
    elif mode != "max-hold" or not at_or_below(peak, top):  # a slow one proves no upper limit
        yield at_most(
            name,
            peak,
            top,
            "A",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            advisory=True,
            behind="over 2.83 times locked-rotor current, more than any crest of a start, it "
            "cannot be told",
            says="a crest taken for an rms value, another load, or a shorted part?",
            action=action,
        )


def near_locked(locked: LockedRotor | None, rms: float | None) -> bool | None:
    """Whether a start's rms current is near locked-rotor current; None where that is not sure."""
    if locked is None or rms is None or locked.least == 0:
        return None
    if locked.most is not None and at_or_above(rms, SHORT_OF_LRA * locked.most):
        return True
    return None if at_or_above(rms, SHORT_OF_LRA * locked.least) else False


def judge_time(
    settle_time: float | None,
    near: bool | None,
    *,
    apart: bool = True,
    inverter: bool | None = None,
) -> Iterator[Item]:
    """Judge how long the current took to settle, in s.

    Over 3 s it fails where it was `near` locked-rotor current: a drive's ramp is not. `apart`:
    whether locked-rotor and running current lie so far apart that settling shows.
    """
    if settle_time is None:
        return
    if not apart:
        yield not_checked(_TIME, "running current of this motor is near that of its locked rotor")
        return
    if not near and not at_or_below(settle_time, STOP_S):
        asks = inverter is None
        yield cannot_tell(
            _TIME,
            f"{settle_time:.4g} s is over {STOP_S:g} s, and it was not surely near locked-rotor "
            "current: a slow start" + (", or the ramp of a board that drives it" if asks else ""),
            measure=("say whether a board drives it; else " if asks else "")
            + "read LRA and hold the start with the inrush function",
            needs=("inverter",) if asks else (),
            source=PRACTICE,
        )
        return
    yield at_most(
        _TIME,
        settle_time,
        STOP_S,
        "s",
        caution=NORMAL_S,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="do not start it again before it has cooled; check volts, start device, load",
    )


def as_rms(peak: float | None, mode: str) -> float | None:
    """Return the start's rms current that a reading shows; a slow max-hold shows none."""
    if peak is None or mode == "max-hold":
        return None
    return peak / motors.offset_crest(PF_HIGH) if mode == "peak-hold" else peak

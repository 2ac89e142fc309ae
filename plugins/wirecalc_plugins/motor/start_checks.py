"""How one reading of a motor's start or running current is judged: helpers of several checks."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    PLATE,
    PRACTICE,
    Item,
    Origin,
    Problem,
    Source,
    Verdict,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    motors,
    put,
)
from wirecalc.sources import computed

from ..overcurrent.breaker_hold import PF_LOW

PF_HIGH = 0.8  # most locked-rotor power factor of a small single-phase motor; practice
SHORT_OF_LRA = 0.7  # share of locked-rotor current that a good start shows at least; practice
WINDOW_RMS = 1.12  # 100 ms rms of an offset start over locked-rotor rms at R/X 0.1, integrated
NORMAL_S, STOP_S = 1.0, 3.0  # a small compressor settles within 1 s; over 3 s: stop; practice
OVER_RLA = 1.1  # settled current over rated load that is too much; practice
LOADED, RUNNING = 0.3, 0.05  # share of rated load below which it runs idle, or not at all; practice
SUPPLY = (0.9, 1.1)  # share of plate voltage where it was not measured; makers' sheets

_OFFSET = computed("rl-offset", "offset peak of an R-L circuit closed at the voltage zero")


def wrong_plate(rated: float | None, locked: float | None) -> Iterator[Problem]:
    """Yield what is wrong between rated-load and locked-rotor current of a plate."""
    if rated is not None and locked is not None and locked <= rated:
        yield Problem(
            "locked_rotor_current",
            f"{locked:g} A is not above the rated load of {rated:g} A",
            "look at the plate again: LRA is several times RLA",
        )


def judge_volts(voltage: float | None, plate: float | None) -> Iterator[Item]:
    """Judge the volts at the plug, where they are outside what makers allow of the plate's."""
    if voltage is None or plate is None:
        return
    low, high = (share * plate for share in SUPPLY)
    action = "measure the supply with and without the load; is it the plate of this unit?"
    if not at_or_below(-voltage, -low):
        yield at_least(
            "volts at the plug, lower limit",
            voltage,
            low,
            "V",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            advisory=True,
            says="90 % of the plate's: below, a motor starts badly and overheats",
            action=action,
        )
    if not at_or_below(voltage, high):
        yield at_most(
            "volts at the plug, upper limit",
            voltage,
            high,
            "V",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            advisory=True,
            says="110 % of the plate's",
            action=action,
        )


class LockedRotor(NamedTuple):
    """Locked-rotor current at the supply's voltage, in A; `most` is None where it has no end."""

    least: float
    most: float | None
    source: Source


def locked_rotor(
    current: float | None, letter: str | None, horsepower: float | None, voltage: float | None
) -> LockedRotor | None:
    """Return the plate's locked-rotor current, else that of its code letter, else None."""
    if current is not None:
        return LockedRotor(current, current, PLATE)
    if letter is None or horsepower is None or voltage is None:
        return None
    return LockedRotor(*motors.locked_rotor_band(letter, horsepower, voltage))


def at_supply(locked: LockedRotor, voltage: float | None, plate: float | None) -> LockedRotor:
    """Scale the locked-rotor current with the supply: it goes with the voltage."""
    measured = voltage / plate if voltage is not None and plate is not None else None
    low, high = SUPPLY if measured is None else (measured, measured)
    most = None if locked.most is None else locked.most * high
    return LockedRotor(locked.least * low, most, locked.source)


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


def judge_peak(locked: LockedRotor, peak: float | None, mode: str) -> Iterator[Item]:
    """Judge the highest current of a start against the locked-rotor current."""
    if peak is None:
        yield cannot_tell(
            "start peak, lower limit",
            "the start was not measured",
            measure="hold the start with the meter's inrush function, jaws around one wire",
            needs=("peak",),
        )
        return
    scale = math.sqrt(2) if mode == "peak-hold" else 1.0
    name = "start peak, lower limit"
    if mode == "max-hold":
        yield cannot_tell(
            name,
            "a slow max-hold misses part of a start shorter than half a second",
            measure="use the meter's inrush function",
        )
    elif locked.least == 0:
        yield cannot_tell(
            name, "the code letter sets no least current", measure="read LRA on the plate"
        )
    else:
        yield at_least(
            name,
            peak,
            locked.least * RUNNING * scale,
            "A",
            caution=locked.least * SHORT_OF_LRA * scale,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="one wire in the jaws? a start winding or start device that is open?",
            action="check the clamp and the start device",
        )
    if locked.most is None:
        return
    most = motors.offset_crest(PF_LOW) if mode == "peak-hold" else WINDOW_RMS
    high = at_most(
        "start peak, upper limit",
        peak,
        locked.most * most,
        "A",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        says="a crest taken for an rms value, another load, or a shorted part?",
        action="repeat the reading with the inrush function on the motor's own wire",
    )
    if mode != "max-hold" or high.verdict is not Verdict.PASS:
        yield high  # the least that a start was proves no upper limit


def judge_settled(settled: float | None, rated: float | None) -> Iterator[Item]:
    """Judge the settled current of a motor against its own rated-load current."""
    if settled is None:
        yield cannot_tell(
            "settled current, upper limit",
            "the settled current was not measured",
            measure="let it run, and read the current once it has settled",
            needs=("settled",),
        )
        return
    if rated is None:
        yield cannot_tell(
            "settled current, upper limit",
            "no rated-load current to compare with",
            measure="read RLA on the plate",
            needs=("rated_load_current",),
        )
        return
    yield at_most(
        "settled current, upper limit",
        settled,
        OVER_RLA * rated,
        "A",
        caution=rated,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="switch off; look for a stuck rotor, a hot condenser, low volts or a weak capacitor",
    )
    yield at_least(
        "settled current, lower limit",
        settled,
        RUNNING * rated,
        "A",
        caution=LOADED * rated,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="it may run idle without pumping, or not run at all",
        action="see and feel whether it runs, cools or pumps; one wire in the jaws",
    )


def judge_time(settle_time: float | None) -> Iterator[Item]:
    """Judge how long the current took to settle, in s."""
    if settle_time is None:
        return
    yield at_most(
        "time to settle",
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

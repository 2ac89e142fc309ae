"""The start of a motor: what the clamp meter should show, and whether the breaker holds."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Annotated, Any, NamedTuple

from wirecalc import (
    PLATE,
    PRACTICE,
    Calculation,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Problem,
    Reading,
    Source,
    answer,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    figure,
    hookimpl,
    motors,
    not_checked,
)
from wirecalc.sources import computed

from .breaker_hold import PF_LOW, breaker_hold
from .inputs import BREAKER

PF_HIGH = 0.8  # most locked-rotor power factor of a small single-phase motor; practice
SHORT_OF_LRA = 0.7  # share of locked-rotor current that a good start shows at least; practice
WINDOW_RMS = 1.12  # 100 ms rms of an offset start over locked-rotor rms at R/X 0.1, integrated
NORMAL_S, STOP_S = 1.0, 3.0  # a small compressor settles within 1 s; over 3 s: stop; practice
OVER_RLA = 1.1  # settled current over rated load that is too much; practice
LOADED, RUNNING = 0.3, 0.05  # share of rated load below which it runs idle, or not at all; practice
SUPPLY = (0.9, 1.1)  # share of plate voltage where it was not measured; makers' sheets

METER_MODES = ("inrush", "peak-hold", "max-hold")
_OFFSET = computed("rl-offset", "offset peak of an R-L circuit closed at the voltage zero")
_CODE_NEEDS = ("locked_rotor_current", "code_letter", "horsepower", "nameplate_voltage")


class _LockedRotor(NamedTuple):
    """Locked-rotor current at the supply's voltage, in A; `most` is None where it has no end."""

    least: float
    most: float | None
    source: Source


def _refuse(
    rated_load_current: float | None = None,
    locked_rotor_current: float | None = None,
    code_letter: str | None = None,
    horsepower: float | None = None,
    nameplate_voltage: float | None = None,
    frequency: float = 60.0,
    voltage: float | None = None,
    peak: float | None = None,
    settled: float | None = None,
    settle_time: float | None = None,
    meter_mode: str = "inrush",
    breaker: float | None = None,
) -> Iterator[Problem]:
    rla, lra = rated_load_current, locked_rotor_current
    if rla is not None and lra is not None and lra <= rla:
        yield Problem(
            "locked_rotor_current",
            f"{lra:g} A is not above the rated load of {rla:g} A",
            "look at the plate again: LRA is several times RLA",
        )
    if peak is not None and settled is not None and peak < settled:
        yield Problem(
            "peak",
            f"{peak:g} A is below the settled {settled:g} A",
            "the peak is the highest reading of the start",
        )
    if peak == 0 and settled == 0:
        yield Problem(
            "peak", "peak and settled are both zero", "close the jaws around one wire only"
        )


@calculation(
    part="motor and start",
    cautions=("live-02", "meter-01", "start-01", "pin-01"),
    not_checked=(
        "that it cools, pumps or turns: current alone does not show it",
        "the breaker's own curve (its maker's sheet)",
    ),
    refuse=_refuse,
    example_with=("rated_load_current", "locked_rotor_current", "peak", "settled", "settle_time"),
)
def inrush(
    rated_load_current: Annotated[
        float | None, Nameplate("A", above=0, high=60, typical="1.6 A", text="RLA on the plate")
    ] = None,
    locked_rotor_current: Annotated[
        float | None, Nameplate("A", above=0, high=400, typical="12 A", text="LRA on the plate")
    ] = None,
    code_letter: Annotated[
        str | None,
        OneOf(motors.code_letters, text="locked-rotor code letter of an open motor", on_plate=True),
    ] = None,
    horsepower: Annotated[
        float | None, Nameplate("hp", above=0, high=10, typical="1/4 hp", text="power on the plate")
    ] = None,
    nameplate_voltage: Annotated[
        float | None, Nameplate("V", low=12, high=600, typical="115 V", text="volts on the plate")
    ] = None,
    frequency: Annotated[
        float, Nameplate("Hz", low=16, high=400, typical="60 Hz", text="frequency on the plate")
    ] = 60.0,
    voltage: Annotated[
        float | None,
        Reading(
            "V",
            above=0,
            high=700,
            typical="117 V",
            text="volts at the plug",
            goes_with="nameplate_voltage",
        ),
    ] = None,
    peak: Annotated[
        float | None,
        Reading("A", low=0, high=600, typical="11 A", text="highest current of the start"),
    ] = None,
    settled: Annotated[
        float | None,
        Reading("A", low=0, high=400, typical="1.2 A", text="current once it has settled"),
    ] = None,
    settle_time: Annotated[
        float | None,
        Reading("s", low=0, high=600, typical="0.4 s", text="time until the current settled"),
    ] = None,
    meter_mode: Annotated[
        str, OneOf(METER_MODES, text="how the meter took the peak", goes_with="peak")
    ] = "inrush",
    breaker: Annotated[float | None, BREAKER] = None,
) -> Iterator[Item]:
    """Do start and running current make sense, and does the breaker hold?

    The expected start is the locked-rotor current of the plate, or kVA per hp of the code letter,
    times the measured share of plate voltage (90 to 110 % where it was not measured). The first
    crest is worst when closed at the voltage zero (exact R-L expression, power factor 0.5 to
    0.8). Settling within 1 s is normal and over 3 s stops; the settled current is at most 1.1
    times RLA; under 0.3 RLA it runs idle (all common practice). A UL 489 breaker holds at its
    rating and must trip within set times above it; its instantaneous trip is not standardised
    (5 to 10 times the rating, common practice), so between these it may trip: marginal.

    Inputs: plate values in A, hp, V, Hz; readings in A, V, s. Yields the expected band, the first
    crest, what the readings mean with the evidence, and one criterion a question.
    Source: tables code-letters and breaker-ul489.
    """
    locked = _locked_rotor(locked_rotor_current, code_letter, horsepower, nameplate_voltage)
    if locked is None:
        yield cannot_tell(
            "start peak is high enough",
            "no locked-rotor current and no code letter with hp and volts was given",
            measure="read LRA on the plate of the compressor or motor",
            needs=_CODE_NEEDS,
        )
    else:
        locked = _at_supply(locked, voltage, nameplate_voltage)
        if voltage is None:
            yield not_checked("volts at the plug", "90 to 110 % of the plate's were taken")
        yield from _expected(locked, frequency)
        yield from _peak(locked, peak, meter_mode)
    yield from _settled(settled, rated_load_current)
    yield from _time(settle_time)
    if settled is not None and rated_load_current is not None:
        yield _meaning(locked, rated_load_current, peak, settled, settle_time, meter_mode)
    if breaker is not None:
        expected = 0.0 if locked is None else locked.most or locked.least
        yield from breaker_hold(breaker, expected, _as_rms(peak, meter_mode), settled, settle_time)


def _locked_rotor(
    current: float | None, letter: str | None, horsepower: float | None, voltage: float | None
) -> _LockedRotor | None:
    if current is not None:
        return _LockedRotor(current, current, PLATE)
    if letter is None or horsepower is None or voltage is None:
        return None
    return _LockedRotor(*motors.locked_rotor_band(letter, horsepower, voltage))


def _at_supply(locked: _LockedRotor, voltage: float | None, plate: float | None) -> _LockedRotor:
    """Scale the locked-rotor current with the supply: it goes with the voltage."""
    measured = voltage / plate if voltage is not None and plate is not None else None
    low, high = SUPPLY if measured is None else (measured, measured)
    most = None if locked.most is None else locked.most * high
    return _LockedRotor(locked.least * low, most, locked.source)


def _expected(locked: _LockedRotor, frequency: float) -> Iterator[Item]:
    yield figure("expected start current, least", locked.least * SHORT_OF_LRA, "A", source=PRACTICE)
    if locked.most is None:
        return
    yield figure(
        "expected start current, most", locked.most * WINDOW_RMS, "A", source=locked.source
    )
    crest = motors.offset_crest(PF_LOW)
    yield figure(
        "highest first crest",
        locked.most * crest,
        "A",
        source=_OFFSET,
        working=lambda: f"{locked.most:.4g} A x {crest:.4g} (power factor {PF_LOW})",
    )
    moment = motors.first_peak_angle(PF_LOW) / (2 * math.pi * frequency) * 1000
    yield figure("time of the first crest", moment, "ms", source=_OFFSET)


def _peak(locked: _LockedRotor, peak: float | None, mode: str) -> Iterator[Item]:
    if peak is None:
        yield cannot_tell(
            "start peak is high enough",
            "the start was not measured",
            measure="hold the start with the meter's inrush function, jaws around one wire",
            needs=("peak",),
        )
        return
    scale = math.sqrt(2) if mode == "peak-hold" else 1.0
    name = "start peak is high enough"
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
    if locked.most is not None:
        most = motors.offset_crest(PF_LOW) if mode == "peak-hold" else WINDOW_RMS
        yield at_most(
            "start peak is low enough",
            peak,
            locked.most * most,
            "A",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            advisory=True,
            says="a crest taken for an rms value, another load, or a shorted part?",
            action="repeat the reading with the inrush function on the motor's own wire",
        )


def _settled(settled: float | None, rated: float | None) -> Iterator[Item]:
    if settled is None:
        return
    if rated is None:
        yield cannot_tell(
            "settled current is low enough",
            "no rated-load current to compare with",
            measure="read RLA on the plate",
            needs=("rated_load_current",),
        )
        return
    yield at_most(
        "settled current is low enough",
        settled,
        OVER_RLA * rated,
        "A",
        caution=rated,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="switch off; look for a stuck rotor, a hot condenser, low volts or a weak capacitor",
    )
    yield at_least(
        "settled current is high enough",
        settled,
        RUNNING * rated,
        "A",
        caution=LOADED * rated,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="it may run idle without pumping, or not run at all",
        action="see and feel whether it runs, cools or pumps; one wire in the jaws",
    )


def _time(settle_time: float | None) -> Iterator[Item]:
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


def _meaning(
    locked: _LockedRotor | None,
    rated: float,
    peak: float | None,
    settled: float,
    settle_time: float | None,
    mode: str,
) -> Item:
    """Say what kind of start this is, with the evidence."""
    because = [f"settles at {settled / rated:.0%} of rated load"]
    if settle_time is not None:
        because.append(f"settled after {settle_time:g} s")
    if peak is not None and settled > 0:
        because.append(f"peak {peak / settled:.1f} times the settled current")
    if locked is not None and settled >= SHORT_OF_LRA * locked.least:
        kind = "locked rotor: the current does not come down"
    elif settled > OVER_RLA * rated:
        kind = "starts, and runs overloaded"
    elif settled < RUNNING * rated:
        kind = "not running, or the clamp is not around one wire"
    elif settled < LOADED * rated:
        kind = "runs with little load: it may not be pumping"
    elif _too_little(locked, peak, mode):
        kind = "starts on too little current: one wire in the jaws? start winding open?"
    elif settle_time is not None and settle_time > NORMAL_S:
        kind = "slow start"
    elif peak is None or settle_time is None:
        kind = "settled current is normal; the start was not measured in full"
    else:
        kind = "normal start"
    return answer("kind of start", kind, because=because)


def _too_little(locked: _LockedRotor | None, peak: float | None, mode: str) -> bool:
    if locked is None or peak is None or mode == "max-hold":
        return False
    scale = math.sqrt(2) if mode == "peak-hold" else 1.0
    return peak < SHORT_OF_LRA * locked.least * scale


def _as_rms(peak: float | None, mode: str) -> float | None:
    """Return the start's rms current that a reading shows; a slow max-hold shows none."""
    if peak is None or mode == "max-hold":
        return None
    return peak / motors.offset_crest(PF_HIGH) if mode == "peak-hold" else peak


@hookimpl
def wirecalc_calculations() -> Sequence[Calculation[Any]]:
    """Provide the start check."""
    return [inrush]

"""The start of a motor: what the clamp meter should show, and whether the breaker holds."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Problem,
    Reading,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    motors,
    not_checked,
    put,
)
from wirecalc.sources import confirmed

from ..inputs import BREAKER, SETTLED, SLIP_A
from ..overcurrent.breaker_hold import breaker_hold
from .start_checks import (
    LOADED,
    OVER_RLA,
    as_rms,
    at_supply,
    expected_start,
    judge_peak,
    judge_settled,
    judge_time,
    judge_volts,
    locked_rotor,
    wrong_plate,
)
from .start_kinds import PLATE_LOADS, Start, kind_of_start

METER_MODES = ("inrush", "peak-hold", "max-hold")
MCC_OVER_RLA = 1.44  # least ratio of continuous limit to RLA that makers use; others 1.56
_CODE_NEEDS = ("locked_rotor_current", "code_letter", "horsepower", "nameplate_voltage")
_RLA = confirmed("rla", "trade articles on compressor ratings", "RLA = MCC / 1.56 or 1.44", 2)


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
    nameplate_current: float | None = None,
    nameplate_load: str | None = None,
) -> Iterator[Problem]:
    yield from wrong_plate(rated_load_current, locked_rotor_current)
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
        Reading(
            "A",
            low=0,
            high=600,
            typical="11 A",
            text="highest current of the start",
            slip_under=SLIP_A,
        ),
    ] = None,
    settled: Annotated[float | None, SETTLED] = None,
    settle_time: Annotated[
        float | None,
        Reading("s", low=0, high=600, typical="0.4 s", text="time until the current settled"),
    ] = None,
    meter_mode: Annotated[
        str, OneOf(METER_MODES, text="how the meter took the peak", goes_with="peak")
    ] = "inrush",
    breaker: Annotated[float | None, BREAKER] = None,
    nameplate_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=100, typical="6.5 A", text="amps on the appliance's plate"),
    ] = None,
    nameplate_load: Annotated[
        str | None,
        OneOf(
            PLATE_LOADS,
            text="what the plate's amps are of",
            on_plate=True,
            goes_with="nameplate_current",
        ),
    ] = None,
) -> Iterator[Item]:
    """Do start and running current make sense, and does the breaker hold?

    The expected start is the locked-rotor current of the plate, or kVA per hp of the code letter,
    times the measured share of plate voltage (else 90 to 110 %). The first crest is worst when
    closed at the voltage zero (exact R-L expression, power factor 0.5 to 0.8). Settling within
    1 s is normal, over 3 s stops; the settled current is at most 1.1 times RLA, a ceiling mark;
    under 0.3 RLA it runs idle (all common practice). Amps of an appliance's plate may be its
    heater's and pass nothing. A breaker holds at its rating and must trip within set times above
    (UL 489); its instantaneous trip is not standardised: between, it may trip (marginal).

    Inputs: plate values in A, hp, V, Hz; readings in A, V, s. Yields the expected band, the first
    crest, the kind of start with what speaks for and against each, one criterion a question.
    Source: tables code-letters and breaker-ul489.
    """
    yield from judge_volts(voltage, nameplate_voltage)
    locked = locked_rotor(locked_rotor_current, code_letter, horsepower, nameplate_voltage)
    if locked is None:
        yield cannot_tell(
            "start peak, lower limit",
            "no locked-rotor current and no code letter with hp and volts was given",
            measure="read LRA on the plate of the compressor or motor",
            needs=_CODE_NEEDS,
        )
    else:
        locked = at_supply(locked, voltage, nameplate_voltage)
        if voltage is None:
            yield not_checked("volts at the plug", "90 to 110 % of the plate's were taken")
        yield from expected_start(locked, frequency)
        yield from judge_peak(locked, peak, meter_mode)
    rated = _rated(rated_load_current, nameplate_current, nameplate_load)
    plate = nameplate_current if rated is None else None
    yield from _marks(rated, rated_load_current)
    if plate is not None and settled is not None:
        yield _against_the_plate(settled, plate, nameplate_load)
    else:
        yield from judge_settled(settled, rated)
    yield from judge_time(settle_time)
    if settled is not None:
        start = Start(locked, rated, plate, peak, settled, settle_time, meter_mode)
        yield from kind_of_start(start)
    if breaker is not None:
        expected = 0.0 if locked is None else locked.most or locked.least
        yield from breaker_hold(breaker, expected, as_rms(peak, meter_mode), settled, settle_time)


def _rated(own: float | None, plate: float | None, load: str | None) -> float | None:
    """Return the motor's rated current: its own RLA, else amps of a plate that are the motor's."""
    return plate if own is None and load == "motor" else own


def _marks(rated: float | None, own: float | None) -> Iterator[Item]:
    if rated is not None:
        yield figure(
            "idle floor",
            LOADED * rated,
            "A",
            source=PRACTICE,
            working=lambda: f"{LOADED} x {put(rated, 'A')}",
        )
    if own is not None:
        yield figure(
            "continuous limit that RLA stands for",
            MCC_OVER_RLA * own,
            "A",
            source=_RLA,
            working=lambda: f"{MCC_OVER_RLA} x {put(own)} A; some take 1.56; no expected current",
            toward="down",
        )


def _against_the_plate(settled: float, plate: float, load: str | None) -> Item:
    """Judge a settled current by amps that may not be the motor's: they can only be exceeded."""
    name = "settled current, upper limit"
    if at_or_below(settled, OVER_RLA * plate):
        whose = "are a heater's" if load == "heater" else "may be those of its heater"
        return cannot_tell(
            name,
            f"the plate's {plate:g} A {whose}, not the motor's",
            measure="read RLA on the compressor or motor itself",
            needs=("rated_load_current",),
        )
    return at_most(
        name,
        settled,
        OVER_RLA * plate,
        "A",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="more than the whole appliance's plate",
        action="switch off; look for a stuck rotor, low volts, another load on the same wire",
    )

"""The start of a motor: what the clamp meter should show, and whether the breaker holds."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    asked,
    assumed,
    calculation,
    extra,
    instead_of,
    may_be_absent,
    motors,
    not_checked,
    overcurrent,
    setting,
)

from ..inputs import BREAKER, SETTLED, SLIP_A
from ..overcurrent.breaker_hold import breaker_hold
from .against_plate import (
    against_the_plate,
    judge_start,
    marks_of,
    rated_current,
    settling_shows,
)
from .plate import (
    ASKS_VOLTS,
    INVERTER,
    MOTOR_KIND,
    NO_START,
    PLATE_VOLTS,
    PLUG_VOLTS,
    at_supply,
    judge_plate,
    judge_volts,
    locked_rotor,
    wrong_plate,
)
from .settled_checks import (
    MCC_OVER_RLA,
    OVER_RLA,
    judge_settled,
    judge_turning,
)
from .start_checks import as_rms, judge_time
from .start_kinds import PLATE_LOADS, kind_of_start
from .start_seen import Start

METER_MODES = ("inrush", "peak-hold", "max-hold")


def _refuse(
    rated_load_current: float | None = None,
    locked_rotor_current: float | None = None,
    **others: object,
) -> Iterator[Problem]:
    yield from wrong_plate(rated_load_current, locked_rotor_current)


@calculation(
    part="motor and start",
    cautions=("live-02", "meter-01", "start-01", "pin-01", "flam-01"),
    not_checked=(
        "that it cools, pumps or turns: current alone does not show it",
        "the breaker's own curve (its maker's sheet)",
    ),
    refuse=_refuse,
    example_with=(
        *("rated_load_current", "locked_rotor_current", "nameplate_voltage", "voltage"),
        *("peak", "meter_mode", "settled", "settle_time"),
    ),
)
def inrush(
    rated_load_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=60, typical="1.6 A", text="RLA on the plate"),
        instead_of("nameplate_current", when="nameplate_load=motor"),
        asked("without it a settled current says nothing"),
    ] = None,
    locked_rotor_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=400, typical="12 A", text="LRA on the plate"),
        instead_of("code_letter", when="code_letter"),
        may_be_absent("a board drives it: it has no LRA", when="inverter=yes"),
        asked("without it a peak says nothing"),
    ] = None,
    code_letter: Annotated[
        str | None,
        OneOf(motors.code_letters, text="locked-rotor code letter of an open motor", on_plate=True),
        instead_of("locked_rotor_current"),
    ] = None,
    horsepower: Annotated[
        float | None,
        Nameplate("hp", above=0, high=10, typical="1/4 hp", text="power on the plate"),
        asked("a code letter is kVA per hp", when="code_letter and not locked_rotor_current"),
        instead_of("locked_rotor_current"),
    ] = None,
    nameplate_voltage: Annotated[float | None, PLATE_VOLTS, asked(ASKS_VOLTS)] = None,
    frequency: Annotated[
        float,
        Nameplate("Hz", low=16, high=400, typical="60 Hz", text="frequency on the plate"),
        setting("when the first crest comes"),
    ] = 60.0,
    voltage: Annotated[float | None, PLUG_VOLTS, asked(ASKS_VOLTS)] = None,
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
        extra("a drive's board limits its start", when="inverter=yes"),
        asked("the start is the question"),
    ] = None,
    settled: Annotated[float | None, SETTLED, asked("it tells whether the motor runs well")] = None,
    settle_time: Annotated[
        float | None,
        Reading(
            "s",
            low=0,
            high=600,
            typical="0.4 s",
            text="time until the current settled",
            zero=NO_START,
        ),
        extra("a drive's ramp takes its time", when="inverter=yes"),
        asked("it tells a slow start from a normal one"),
    ] = None,
    meter_mode: Annotated[
        str,
        OneOf(METER_MODES, text="how the meter took the peak", goes_with="peak"),
        setting("a drive's start is not judged", when="inverter=yes"),
        assumed("peak-hold", "max-hold", source=PRACTICE, why="the same start reads otherwise"),
    ] = "inrush",
    breaker: Annotated[
        float | None, BREAKER, extra("the start is judged without it, and its load by breaker")
    ] = None,
    device: Annotated[
        str,
        OneOf(overcurrent.devices, text="standard or class of the breaker", goes_with="breaker"),
        assumed("iec-60898-b", source=PRACTICE, why="the breaker of the other side of the ocean"),
    ] = "ul-489",
    nameplate_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=100, typical="6.5 A", text="amps on the appliance's plate"),
        instead_of("rated_load_current"),
    ] = None,
    nameplate_load: Annotated[
        str | None,
        OneOf(
            PLATE_LOADS,
            text="what the plate's amps are of",
            on_plate=True,
            goes_with="nameplate_current",
        ),
        setting("RLA counts", when="rated_load_current"),
        asked("they may be a heater's"),
    ] = None,
    motor_kind: Annotated[
        str | None,
        MOTOR_KIND,
        extra(
            "over 1.1 times the rated current, or where LRA is under 3 times it, it is asked for"
        ),
    ] = None,
    service_factor_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=100, typical="6.8 A", text="SFA on an open motor's plate"),
        extra("over 1.1 times the rated current of an open motor it is asked for"),
    ] = None,
    inverter: Annotated[
        bool | None, INVERTER, extra("where the current ramps or stays low it is asked for")
    ] = None,
) -> Iterator[Item]:
    """Do start and running current make sense, and does the breaker hold?

    For a single-phase motor that starts across the line; of one that a board drives only the
    settled current is judged. The expected start is the locked-rotor current of the plate, or kVA
    per hp of the code letter, times the measured share of plate voltage (else 90 to 110 %). The
    first crest is worst when closed at the voltage zero (exact R-L expression, power factor 0.5
    to 0.8). Settling within 1 s is normal, over 3 s near locked-rotor current stops. A compressor
    may draw 1.44 times its RLA (two trade articles), an open motor 1.1 times its amps or its SFA;
    under 0.3 times it runs idle, under 0.2 nothing turns (all common practice). Amps of an
    appliance's plate may be its heater's and pass nothing. A breaker carries its rating and must
    trip within set times above (UL 489, IEC 60898-1): between, it may trip (marginal).

    Inputs: plate values in A, hp, V, Hz; readings in A, V, s. Yields the expected band, the first
    crest, the kind of start with what speaks for and against each, one criterion a question.
    Source: tables code-letters, breaker-ul489, breaker-iec60898, fuses-ul248.
    """
    locked = locked_rotor(locked_rotor_current, code_letter, horsepower, nameplate_voltage)
    yield from judge_volts(voltage, nameplate_voltage)
    if locked is not None:
        locked = at_supply(locked, voltage, nameplate_voltage)
        if voltage is None:
            yield not_checked("volts at the plug", "90 to 110 % of the plate's were taken")
    rated = rated_current(rated_load_current, nameplate_current, nameplate_load)
    plate = nameplate_current if rated is None else None
    allowed = MCC_OVER_RLA if motor_kind == "compressor" else OVER_RLA
    start = Start(
        *(locked, rated, plate, peak, settled or 0.0, settle_time, meter_mode, allowed, inverter)
    )
    yield from judge_plate(rated, locked_rotor_current, motor_kind)
    yield from judge_start(start, settled, frequency)
    yield from marks_of(rated, rated_load_current, motor_kind)
    if plate is not None and settled is not None:
        yield against_the_plate(settled, plate, nameplate_load)
    else:
        yield from judge_settled(settled, rated, motor_kind, service_factor_current)
        yield from judge_turning(settled, rated, seen=start.seen, inverter=inverter)
    if not inverter:
        apart = settling_shows(locked, rated, motor_kind)
        yield from judge_time(settle_time, start.near, apart=apart, inverter=inverter)
    if settled is not None:
        yield from kind_of_start(start)
    if breaker is not None:
        expected = 0.0 if locked is None else locked.most or locked.least
        measured = as_rms(peak, meter_mode)
        yield from breaker_hold(device, breaker, expected, measured, settled, settle_time)

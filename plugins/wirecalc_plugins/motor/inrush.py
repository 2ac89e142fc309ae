"""The start of a motor: what the clamp meter should show, and whether the breaker holds."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Problem,
    calculation,
    not_checked,
)

from ..overcurrent.breaker_at_start import breaker_at_start
from .against_plate import against_the_plate, judge_start, marks_of, rated_current, settling_shows
from .inrush_inputs import (
    Breaker,
    CodeLetter,
    Device,
    Frequency,
    Horsepower,
    Inverter,
    LockedRotorCurrent,
    MeterMode,
    MotorKind,
    NameplateCurrent,
    NameplateLoad,
    NameplateVoltage,
    Peak,
    RatedLoadCurrent,
    ServiceFactorCurrent,
    Settled,
    SettleTime,
    Voltage,
)
from .plate import (
    at_supply,
    judge_plate,
    judge_volts,
    locked_rotor,
    wrong_plate,
)
from .settled_checks import MCC_OVER_RLA, OVER_RLA, judge_settled, judge_turning
from .start_checks import as_rms, judge_time
from .start_kinds import kind_of_start
from .start_seen import SeenStart


def _refuse(
    rated_load_current: float | None = None, locked_rotor_current: float | None = None
) -> Iterator[Problem]:
    yield from wrong_plate(rated_load_current, locked_rotor_current)


@calculation(
    part="motor and start",
    words=(
        "start current; starting current; starting amps; start amps; startup amps; surge",
        "start surge; peak amps; peak current; running amps; run amps; running current; amp draw",
        "current draw; draws too much; high amps; low amps; amps; FLA; RLA; LRA",
        "locked rotor amps; full load amps; nameplate amps; clamp meter; amp clamp; clamp reading",
        "clamp; min max; compressor; fridge; refrigerator; freezer; AC; pump; motor; vacuum; fan",
        "will not start; tries to start; trips on start; trips when it starts; code letter",
        "kVA code; horsepower; hp; not cooling; overload trips; high start; normal start",
        "motor current; motor amps; startup; start up; washer; kicks on; peak; peak amp",
        "peak hold; in-rush; kick; current spike; spike; highest amps; normal amps; power draw",
        "meter reading; draws; what should it draw; excessive current; starting surge",
        "first second; pulling amps; pulls high amps; pulling high amps; amp pull",
        "starts and runs; amps on start; amps at start; what amps should I see; hz drive",
        "amps at switch on; jump of amps; max hold; inrush clamp; fridge amps; freezer amps",
        "compressor amps; AC amps; comp amps; pump amps at start; hp amps; amps for hp",
        "start kick; peaks; peaks at; first half second; generator size; generator for",
        "plate says; pulls more than plate",
        "ammeter; amp meter; ammeter on start",
    ),
    go_on="close up, and watch one whole cycle: cut-out, rest and restart",
    cautions=("live-02", "meter-01", "start-01", "pin-01", "flam-01", "brk-01"),
    not_checked=(
        "that it cools, pumps or turns: current alone does not show it",
        "the breaker's own curve (its maker's sheet)",
    ),
    refuse=_refuse,
    example_with=(
        *("rated_load_current", "locked_rotor_current", "nameplate_voltage", "voltage"),
        *("peak", "meter_mode", "settled", "settle_time"),
    ),
    exercises=".inrush_exercises",
)
def inrush(
    rated_load_current: RatedLoadCurrent = None,
    locked_rotor_current: LockedRotorCurrent = None,
    code_letter: CodeLetter = None,
    horsepower: Horsepower = None,
    nameplate_voltage: NameplateVoltage = None,
    frequency: Frequency = 60.0,
    voltage: Voltage = None,
    peak: Peak = None,
    settled: Settled = None,
    settle_time: SettleTime = None,
    meter_mode: MeterMode = "inrush",
    breaker: Breaker = None,
    device: Device = "ul-489",
    nameplate_current: NameplateCurrent = None,
    nameplate_load: NameplateLoad = None,
    motor_kind: MotorKind = None,
    service_factor_current: ServiceFactorCurrent = None,
    inverter: Inverter = None,
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
    start = SeenStart(
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
        yield from breaker_at_start(device, breaker, expected, measured, settled, settle_time)

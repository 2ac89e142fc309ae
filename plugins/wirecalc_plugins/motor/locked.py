"""A motor that hums and trips its overload: is it locked, or is the overload weak?"""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PLATE,
    Item,
    Problem,
    at_or_above,
    at_or_below,
    calculation,
    figure,
    put,
)

from .locked_checks import judge_current, judge_high, judge_reset, judge_times_rated, judge_trips
from .locked_inputs import (
    HighCurrent,
    HighTime,
    Inverter,
    LockedRotorCurrent,
    MotorKind,
    NameplateVoltage,
    OverloadTrips,
    RatedLoadCurrent,
    ResetTime,
    Settled,
    Voltage,
)
from .locked_kinds import Seen, what_it_is
from .plate import (
    at_supply,
    judge_plate,
    judge_volts,
    locked_rotor,
    wrong_plate,
)
from .settled_checks import MCC_OVER_RLA, OVER_RLA, TURNS, judge_settled, judge_turning
from .start_checks import SEEN, SHORT_OF_LRA


def _refuse(
    high_current: float | None = None,
    locked_rotor_current: float | None = None,
    rated_load_current: float | None = None,
    settled: float | None = None,
    overload_trips: int | None = None,
    reset_time: float | None = None,
) -> Iterator[Problem]:
    yield from wrong_plate(rated_load_current, locked_rotor_current)
    if high_current is not None and settled is not None and high_current < settled:
        yield Problem(
            "high_current",
            f"{high_current:g} A is below the settled {settled:g} A",
            "it is the current while it stays high",
        )
    if overload_trips == 0 and reset_time is not None:
        yield Problem(
            "overload_trips", "an overload that never opened does not reset", "count its clicks"
        )


@calculation(
    part="motor and start",
    words=(
        "locked rotor; LRA; LRC; locked rotor amps; stuck; stuck rotor; seized; seized motor",
        "jammed; bound; motor hums; hums; humming; buzzes; buzzing; growls; will not start",
        "does not start; tries to start; will not turn; not spinning; stalled; stall; start fails",
        "clicks; clicking; clicks off; trips on overload; overload trips; overload; cuts out",
        "high amps; compressor; fridge; refrigerator; freezer; not cooling; AC; disposer",
        "disposal; garbage disposal; pump; fan; washer; bad bearing; bearing; mechanical",
        "motor hot; bad compressor; burnt motor; compressor dead; hard start; dead compressor",
        "tight compressor; stuck compressor; turn over; will not turn over; frozen; frozen motor",
        "locked up; lock up; jam; draws too much; high draw; grinding; impeller; blade stuck",
        "no rotation; slugging; rusted; free it; breaker trips; stiff; hard to turn",
        "pulling high amps; pulls locked rotor amps; motor trips",
        "stalls; hums no start; hums then trips; hums then clicks off; disposal hums",
        "will not spin; drum stuck; pump stuck; pump jammed; fan stuck; impeller stuck",
        "blower stuck; rotor; does not spin; starts then stops; LRA reading; reading at LRA",
        "LRA for seconds; stays at LRA; amps never drop; amps stay high; amps do not come down",
        "no start",
    ),
    go_on="let it run to its own cut-out, and read the amps once it has settled",
    cautions=("start-01", "heat-03", "mov-01", "live-02", "meter-01", "pin-01", "flam-01"),
    not_checked=(
        "windings, start device and capacitor, dead: current alone does not tell them apart",
        "whether it is mechanically stuck, or starts against pressure",
    ),
    refuse=_refuse,
    exercises=".locked_exercises",
    example_with=(
        *("high_current", "locked_rotor_current", "rated_load_current"),
        *("nameplate_voltage", "voltage", "overload_trips", "reset_time"),
    ),
)
def locked(
    high_time: HighTime,
    high_current: HighCurrent = None,
    locked_rotor_current: LockedRotorCurrent = None,
    rated_load_current: RatedLoadCurrent = None,
    nameplate_voltage: NameplateVoltage = None,
    voltage: Voltage = None,
    settled: Settled = None,
    overload_trips: OverloadTrips = None,
    reset_time: ResetTime = None,
    motor_kind: MotorKind = None,
    inverter: Inverter = None,
) -> Iterator[Item]:
    """Is the motor locked, or its overload weak?

    For a single-phase motor that starts across the line; a board that drives one limits its
    current. A start is over within 1 s; over 3 s near locked-rotor current (0.7 of the plate's
    LRA at the volts of the supply, or more): stop, and do not repeat it; if it then runs, it was
    a slow start. An overload that opens at all fails: near locked-rotor current it does its work;
    after a short start, with a settled current within its rated one, it is weak or the compressor
    too hot (fan, condenser, charge, a restart too soon). It opens in seconds and resets in
    minutes (all common practice); an internal one may take 60 min (one manual).

    Inputs: high_time in s (0 to 180), currents in A, volts, overload_trips, reset_time in min
    (over 0 to 240). Yields the share of locked-rotor current, what it is with the evidence for
    and against each, and a criterion a question. Refuses LRA not above RLA, a high current below
    the settled one. Source: table start-parts.
    """
    plate = locked_rotor(locked_rotor_current, None, None, None)
    lra = None if plate is None else at_supply(plate, voltage, nameplate_voltage)
    near = far = None
    if high_current is not None and lra is not None:
        middle = (lra.least + (lra.most or lra.least)) / 2
        yield figure(
            "share of locked-rotor current",
            100 * high_current / middle,
            "%",
            source=PLATE,
            working=lambda: (
                f"100 x {put(high_current, 'A')} / {put(middle, 'A')}; LRA at the supply's volts"
            ),
        )
        near = at_or_above(high_current, SHORT_OF_LRA * (lra.most or lra.least))
        far = not at_or_above(high_current, SHORT_OF_LRA * lra.least)
    over = running = None
    allowed = MCC_OVER_RLA if motor_kind == "compressor" else OVER_RLA
    if settled is not None and rated_load_current is not None:
        over = not at_or_below(settled, allowed * rated_load_current)
        running = at_or_above(settled, (SEEN if inverter else TURNS) * rated_load_current)
        yield figure(
            "share of rated load",
            100 * settled / rated_load_current,
            "%",
            source=PLATE,
            working=lambda: f"100 x {put(settled, 'A')} / {put(rated_load_current, 'A')}",
        )
    if settled is not None and rated_load_current is not None:
        yield from judge_settled(settled, rated_load_current, motor_kind)
        yield from judge_turning(settled, rated_load_current, seen=False, inverter=inverter)
    yield from judge_plate(rated_load_current, locked_rotor_current, motor_kind)
    yield from judge_volts(voltage, nameplate_voltage)
    yield from judge_current(high_current, None if lra is None else (lra.most or lra.least))
    yield from judge_times_rated(high_current, rated_load_current, locked_rotor_current)
    yield judge_high(high_time, near, high_current, locked_rotor_current, inverter)
    yield judge_trips(overload_trips)
    yield from judge_reset(reset_time)
    yield from what_it_is(Seen(high_time, near, far, over, running, overload_trips))

"""The supply at the plug: its volts against plate and service, and what is lost on the way."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from wirecalc import (
    Item,
    Problem,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
)

from .start_volts import judge_measured
from .supply_inputs import (
    Current,
    NameplateVoltage,
    NameplateVoltageLow,
    NominalVoltage,
    VoltageAtRest,
    VoltageAtStart,
    VoltageRunning,
)
from .supply_loss import lost_with_load
from .supply_plate import IS_208, ON_THE_WAY, against_plate, shares
from .supply_service import NOMINAL, against_service, looks_like_208, match, service_of
from .volts_left import MOST_V, plate_limits

DRIFT = 0.03  # share by which a supply may rise between two readings; common practice
GHOST = 0.25  # share of the plate's volts; less is a meter on an open wire, or a slip of the unit

_AT_LOAD = "measure the volts at the plug while the load runs"


def _refuse(
    nameplate_voltage: float,
    voltage_running: float | None,
    voltage_at_rest: float | None,
    voltage_at_start: float | None,
    nameplate_voltage_low: float | None,
    nominal_voltage: float | None,
) -> Iterator[Problem]:
    if nameplate_voltage_low is not None:
        yield from _refuse_plate(nameplate_voltage_low, nameplate_voltage)
    if nominal_voltage is not None and nominal_voltage not in NOMINAL:
        yield Problem(
            "nominal_voltage", f"{nominal_voltage:g} V", "a service is 120 V, 208 V, 230 V or 240 V"
        )
    readings = {
        "voltage_at_rest": voltage_at_rest,
        "voltage_running": voltage_running,
        "voltage_at_start": voltage_at_start,
    }
    sound = []
    for name, volts in readings.items():
        if volts is not None and volts > MOST_V >= nameplate_voltage:
            yield Problem(
                name,
                f"{volts:g} V is no line of a house, for a {nameplate_voltage:g} V plate",
                "check the meter's range and unit; if it is so, plug nothing in",
            )
        elif volts is not None and not 0 < volts < GHOST * nameplate_voltage:
            sound.append((name, volts))
        elif volts is not None:
            yield Problem(
                name,
                f"{volts:g} V is neither a supply for a {nameplate_voltage:g} V plate nor a "
                "dead outlet",
                "check the unit, and test with a lamp: an open wire shows such volts; dead is 0 V",
            )
    for (_, before), (name, volts) in pairwise(sound):
        if volts > before * (1 + DRIFT):
            yield Problem(
                name,
                f"{volts:g} V is over the {before:g} V before the load was on",
                "are the readings exchanged? Measure again, one right after the other",
            )


def _refuse_plate(low: float, high: float) -> Iterator[Problem]:
    if low > high:
        yield Problem(
            "nameplate_voltage_low", f"{low:g} V is not below {high:g} V", "exchange them"
        )
    elif low * 1.1 < high * 0.9:
        yield Problem(
            "nameplate_voltage_low",
            f"{low:g}/{high:g} V is no span of volts: a three-wire supply, or two connections",
            "leave it out, and give the volts that the load is connected for",
        )


@calculation(
    part="circuit",
    words=(
        "line voltage; mains; mains voltage; supply voltage; house voltage; incoming volts",
        "utility; voltage; low voltage; high voltage; undervoltage; overvoltage; brownout",
        "brown out; sag; surge; voltage spike; voltage too low; voltage too high; wrong voltage",
        "volts; volts at outlet; volts at socket; volts at plug; 208; 240; 230; 220; 120; 115",
        "110; 208 or 240; voltage tolerance; plate voltage; line volts; leg to leg; no power",
        "dead outlet; dead socket; no voltage; half voltage; generator; transformer",
        "unstable power; phase to neutral; leg voltage; line to neutral; line to line; L1 L2",
        "too much voltage; low line; volts too high; volts too low; voltage check",
        "voltage reading; mains low; mains high; nominal; imported machine; 277; 480; 400",
        "bulbs burn out; voltage unbalance; voltage imbalance; unbalanced legs; transformer tap",
        "tap voltage",
        "voltage off; volts off; board output; dc output; power supply output; adapter output",
        "low volt; volts at the machine; volts at the unit; control voltage; 24 V; 24 volts",
        "12 V; 12 volts; no volts; volts missing; high mains; mains too high; shop voltage",
        "volts under load; reads low volts; low supply; voltage falls; volts drop; voltage range",
        "acceptable voltage; wrong country; foreign machine; export model; travel",
        "stabilizer; stabiliser; voltage stabilizer; voltage regulator; AVR; bad mains",
        "mains at night",
        "single phasing; phase loss; lost phase; missing phase; voltage unbalance between phases",
        "does nothing; will not turn on; will not switch on; completely dead; no lights",
        "control transformer; led driver; battery voltage; volts wander; voltage wanders",
        "voltage jumps",
    ),
    go_on="read the volts at the machine while it starts too: dip",
    cautions=("live-01", "meter-01", "brk-01"),
    not_checked=(
        "a maker's narrower span: one service manual allows 6 % off the plate",
        "the volts at another time of the day",
    ),
    refuse=_refuse,
    example_with=("voltage_running", "voltage_at_rest", "current=8.7 A"),
)
def supply(
    nameplate_voltage: NameplateVoltage,
    voltage_running: VoltageRunning = None,
    voltage_at_rest: VoltageAtRest = None,
    voltage_at_start: VoltageAtStart = None,
    nameplate_voltage_low: NameplateVoltageLow = None,
    nominal_voltage: NominalVoltage = None,
    current: Current = None,
) -> Iterator[Item]:
    """Is the supply voltage acceptable?

    Running volts past 90 or 110 % of the plate fail (makers' sheets; 110 and 220 V plates are
    marginal up to 110 % of 115 and 230 V); without them it can't be told, and the volts at rest are
    held against the same, since a load only lowers them. Those are also held against the service as
    advice: from 120 V scaled, one state's rule and ANSI C84.1 range A from memory; 230 V, IEC 60038
    from memory. Over 3 % lost when the load comes on is marginal (advice of the NEC); with the
    current, what the same resistance takes at 12 A must leave 90 % of the plate. The errors of the
    two readings are independent, as nothing says that one meter read both. Volts at start: as in
    dip. Meant for a line of a house, not for what is behind an inverter or a dimmer.

    Inputs in V: nameplate_voltage (12 to 600) and its lower end, readings at rest, running and at
    start (0 to 700; 0 is a dead outlet), nominal_voltage; current in A. Yields shares of the plate,
    power of a resistive load, criteria. Refuses volts that rise by over 3 % with the load, under
    25 % of the plate or over 300 V, a plate that is no span. Source: table supply-ranges.
    """
    if current is not None:
        yield caution("live-02")
    if nameplate_voltage_low == nameplate_voltage:
        nameplate_voltage_low = None
    limits = plate_limits(nameplate_voltage, nameplate_voltage_low)
    if nominal_voltage is not None:
        yield from match(
            nominal_voltage, nameplate_voltage, nameplate_voltage_low, limits.low, limits.high
        )
    seen_208 = (
        nominal_voltage is None
        and voltage_at_rest is not None
        and looks_like_208(voltage_at_rest, nameplate_voltage, nameplate_voltage_low)
    )
    if voltage_running is not None:
        own = nameplate_voltage_low if nominal_voltage == 208 else None
        yield from shares(voltage_running, own or nameplate_voltage)
        fault = IS_208 if seen_208 else ""
        if not fault and voltage_at_rest is not None and at_or_below(limits.low, voltage_at_rest):
            fault = ON_THE_WAY
        yield from against_plate("running volts", voltage_running, limits, nameplate_voltage, fault)
    else:
        yield cannot_tell(
            "running volts, lower limit",
            "the volts while the load runs were not given; those at rest show no bad joint",
            measure=_AT_LOAD,
            needs=("voltage_running",),
        )
    if voltage_at_rest is not None:
        if voltage_running is None:
            yield from against_plate("volts at rest", voltage_at_rest, limits, nameplate_voltage)
        else:
            yield from lost_with_load(voltage_at_rest, voltage_running, current, limits)
        nominal = nominal_voltage or service_of(nameplate_voltage, nameplate_voltage_low)
        says = "" if nominal_voltage else f"taken as {nominal or 0:g} V, from the plate"
        if seen_208:
            says = f"{voltage_at_rest:g} V at rest are those of a 208 V service"
            nominal = 208.0
        yield from against_service(voltage_at_rest, nominal, says)
    if voltage_at_start is not None:
        yield from judge_measured(voltage_at_start, nameplate_voltage_low or nameplate_voltage)

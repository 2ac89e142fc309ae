"""What a machine draws at the plug, against its plate, at the volts that are there."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    at_or_below,
    calculation,
    figure,
    put,
)

from ..motor.settled_checks import judge_turning
from .draw_inputs import (
    HEATER,
    MOTOR,
    AllOn,
    Current,
    CycleEnergy,
    CycleTime,
    DrawKind,
    GreatestCycleEnergy,
    MeasuredPower,
    MeasuredPowerFactor,
    NameplateCurrent,
    NameplateVoltage,
    RatedInput,
    VoltageRunning,
    refuse,
)
from .draw_limits import Drawn, judge

IDLE_PF = 50.0  # %, under which an induction motor works little; common practice, no source
_IDLE = "few amps and fewer watts: it magnetises and turns idle (belt off, pump dry, no gas)"
_HEAVY = "more amps than its plate and few watts: too many volts, a weak capacitor, shorted turns"


@calculation(
    part="return to service",
    words=(
        "watts; wattage; amps; amperage; power draw; power consumption; energy meter; watt meter",
        "plug-in meter; power factor; VA; volt-amps; apparent power; kilowatt hours; kWh",
        "energy per cycle; electricity use; bill; uses too much power; draws too much",
        "overcurrent; high amps; low amps; amp draw; running amps; nameplate amps; rating plate",
        "rated watts; input power; half heat; one element dead; runs idle; no load; unloaded motor",
        "current draw; amps too high; amps too low; pulls too many amps; kettle amps; motor amps",
        "how many amps should it draw; rated amps; rated current; plate amps; plate says",
        "nameplate; data plate; rating label; draws less; low watts; igniter amps; ignitor amps",
        "igniter; glow bar; glows; hot surface igniter; evaporator fan amps; load amps",
        "consumption; input; power check; meter says; measured watts; measured amps; drawing",
        "electricity meter; amps vs plate; amps test; both wires in clamp; clamp around the cord",
        "clamp reads zero; line splitter; turns on clamp; ten turns; volts times amps",
        "amps times volts; amps to watts; watts to amps; fan amps; blower amps; pump amps",
        "ammeter; amp meter",
        "fridge back hot; overloading the motor",
        "amps of a machine; amps of a cooler; peltier; thermoelectric; peltier amps",
        "standby watts; how many watts should it use; cooler amps; washer amps; dryer amps",
        "dishwasher amps; machine amps; limits for current",
    ),
    go_on="write the watts and the volts on the sheet, to compare next time",
    cautions=("live-01", "live-02", "meter-01", "cord-04", "hot-01", "mov-01"),
    not_checked=(
        "whether it does its work: warmth, cold and water have their own readings",
        "a start: ask inrush",
        "leakage and ground: watts and amps show neither",
    ),
    refuse=refuse,
    example_with=("current", "measured_power", "rated_input", "all_on=yes"),
)
def draw(
    draw_kind: DrawKind,
    nameplate_voltage: NameplateVoltage,
    voltage_running: VoltageRunning,
    current: Current = None,
    measured_power: MeasuredPower = None,
    measured_power_factor: MeasuredPowerFactor = None,
    rated_input: RatedInput = None,
    nameplate_current: NameplateCurrent = None,
    all_on: AllOn = None,
    cycle_energy: CycleEnergy = None,
    cycle_time: CycleTime = None,
    greatest_cycle_energy: GreatestCycleEnergy = None,
) -> Iterator[Item]:
    """Does it draw what its plate says, at the volts that are there?

    Watts and amps once it runs steadily, as far over and, of what heats, under the plate's as IEC
    60335-1 lets them be (from memory). A heater's watts are taken to the plate's volts by the
    square of the volts, its amps by the volts; a motor's and a board's are not, and say nothing
    beyond 10 % off the plate's volts; of a mixture both ends count, a heater's limit is care, a
    motor's binds. Less than the plate's fails only where all was on. A heater's watts are volts
    times amps. A motor under 50 % power factor is marginal: it may turn idle; its amps as in
    inrush. Energy of a cycle against what its maker or label says.

    For machines with a plug or terminal block, running; not for a start. Inputs: volts in V (12 to
    600; 0 to 700), current in A (over 0 to 400), watts in W (to 20000), power factor in %, energy
    in kWh (to 100), time in min. Yields VA, power factor, shares of the plate, criteria. Refuses
    more watts than volts times amps. Source: table power-input, practice.
    """
    watts = measured_power
    if current is not None:
        apparent = voltage_running * current
        yield figure(
            "apparent power",
            apparent,
            "VA",
            working=lambda: f"{put(voltage_running, 'V')} x {put(current, 'A')}",
        )
        share = 1.0 if draw_kind == HEATER else None
        if measured_power_factor is not None:
            share = measured_power_factor / 100
        if watts is None and share is not None:
            watts = share * apparent
            yield _watts(watts, voltage_running, current, share)
        if watts is not None:
            yield from _power_factor(draw_kind, watts, voltage_running, current, nameplate_current)
    volts = (voltage_running, nameplate_voltage)
    if watts is not None and rated_input is not None:
        yield from judge(Drawn("power", "W", watts, rated_input, *volts, draw_kind), all_on)
    if current is not None and nameplate_current is not None:
        yield from judge(
            Drawn("current", "A", current, nameplate_current, *volts, draw_kind), all_on
        )
    if draw_kind == MOTOR and current is not None and nameplate_current is not None:
        yield from judge_turning(current, nameplate_current, seen=False)
    if cycle_energy is not None:
        yield from _cycle(cycle_energy, cycle_time, greatest_cycle_energy)


def _watts(watts: float, volts: float, amps: float, share: float) -> Item:
    return figure(
        "watts",
        watts,
        "W",
        working=lambda: f"{put(volts, 'V')} x {put(amps, 'A')} x {put(share)}",
    )


def _power_factor(
    kind: str, watts: float, volts: float, current: float, marked: float | None
) -> Iterator[Item]:
    """Show the power factor; of a motor a low one is advice, with what it says at such amps."""
    share = 100 * watts / (volts * current)
    if kind == HEATER:
        return
    yield figure(
        "power factor",
        share,
        "%",
        working=lambda: f"100 x {put(watts, 'W')} / ({put(volts, 'V')} x {put(current, 'A')})",
    )
    if kind != MOTOR:
        return
    heavy = marked is not None and not at_or_below(current, marked)
    yield at_least(
        "power factor of the motor",
        share,
        IDLE_PF,
        "%",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        behind="the amps and watts of the plate",
        says=_HEAVY if heavy else _IDLE,
        action="see and feel what it drives, and read it again under its load",
    )


def _cycle(energy: float, minutes: float | None, greatest: float | None) -> Iterator[Item]:
    if minutes is not None:
        yield figure(
            "mean power of the cycle",
            1000 * energy / (minutes / 60),
            "W",
            working=lambda: f"1000 x {put(energy, 'kWh')} / ({put(minutes, 'min')} / 60)",
        )
    if greatest is not None:
        yield at_most(
            "energy of the cycle",
            energy,
            greatest,
            "kWh",
            source=MAKER,
            origin=Origin.MAKER,
            action="cold water, an open door, a control that does not end: what ran on?",
        )

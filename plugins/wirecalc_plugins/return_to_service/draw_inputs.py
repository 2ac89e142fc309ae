"""The inputs of `draw`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import Nameplate, OneOf, Problem, Reading, YesNo, asked, extra, instead_of

from ..inputs import (
    ALIVE,
    CURRENT,
    NAMEPLATE_CURRENT,
    NAMEPLATE_VOLTAGE,
    VOLTAGE_RUNNING,
)

HEATER, MOTOR, MIXED, ELECTRONIC = KINDS = ("heater", "motor", "mixed", "electronic")
OVER_VA = 1.05  # watts over volts x amps that two meters explain; common practice, no source
UNDER_VA = 0.9  # watts under volts x amps of a heater that two meters explain; common practice
_MOST_KWH = 100.0

DrawKind = Annotated[
    str,
    OneOf(
        KINDS,
        text="what its plate counts. heater: nothing but resistance; motor: nothing but a motor; "
        "mixed: heater and motor (dryer, dishwasher, refrigerator with a defrost heater); "
        "electronic: a board makes what it draws (inverter, microwave oven)",
    ),
]
NameplateVoltage = Annotated[float, NAMEPLATE_VOLTAGE.but(typical="120 V")]
VoltageRunning = Annotated[float, VOLTAGE_RUNNING.but(typical="117.5 V", not_zero=ALIVE)]
Current = Annotated[
    float | None,
    CURRENT.but(not_zero="without current it does not run"),
    asked("the plate has amps", when="nameplate_current"),
    asked("watts of a heater are volts times amps", when="draw_kind=heater and not measured_power"),
    asked("a power factor is of volts and amps", when="measured_power_factor"),
    extra("the watts are judged by the plate's"),
]
MeasuredPower = Annotated[
    float | None,
    Reading(
        "W",
        low=0,
        high=20_000,
        typical="1010 W",
        text="watts at the plug while it runs",
        not_zero="without watts it does not run",
    ),
    instead_of("measured_power_factor", when="measured_power_factor"),
    asked("the plate has watts", when="rated_input and draw_kind!=heater"),
    extra("the amps are judged by the plate's; whether a motor runs idle, its watts say"),
]
MeasuredPowerFactor = Annotated[
    float | None,
    Reading("%", above=0, high=100, typical="92 %", text="power factor at the plug, as read"),
    instead_of("measured_power"),
]
RatedInput = Annotated[
    float | None,
    Nameplate(
        "W", above=0, high=20_000, typical="1050 W", text="watts that its plate says it draws"
    ),
    asked("the watts are held against it", when="not nameplate_current"),
    extra("the amps of the plate are judged by"),
]
NameplateCurrent = Annotated[
    float | None,
    NAMEPLATE_CURRENT,
    asked("the amps are held against it", when="not rated_input"),
    extra("the watts of the plate are judged by"),
]
AllOn = Annotated[
    bool | None,
    YesNo("all that the plate counts was on: every heater, its motor, the highest setting, warm"),
    extra("asked for where it draws less than its plate"),
]
CycleEnergy = Annotated[
    float | None,
    Reading(
        "kWh", above=0, high=_MOST_KWH, typical="1.10 kWh", text="energy of a whole cycle or day"
    ),
    asked("the maker's figure is held against it", when="greatest_cycle_energy"),
    extra("what it draws at once is judged"),
]
CycleTime = Annotated[
    float | None,
    Reading(
        "min",
        above=0,
        high=10_000,
        typical="105 min",
        text="time in which it took that energy",
        goes_with="cycle_energy",
    ),
    extra("its mean power is not worked out"),
]
GreatestCycleEnergy = Annotated[
    float | None,
    Nameplate(
        "kWh",
        above=0,
        high=_MOST_KWH,
        typical="1.3 kWh",
        text="most that its maker or label says of such a cycle or day",
    ),
    extra("no figure of a maker or label was typed: its energy is shown, not judged"),
]


def refuse(
    draw_kind: str,
    nameplate_voltage: float,
    voltage_running: float,
    current: float | None,
    measured_power: float | None,
    measured_power_factor: float | None,
) -> Iterator[Problem]:
    """Yield volts of another outlet, more watts than there may be, and watts said in two ways."""
    if not 0.4 * nameplate_voltage <= voltage_running <= 1.3 * nameplate_voltage:
        wrong = f"{voltage_running:g} V, and its plate says {nameplate_voltage:g} V"
        yield Problem("voltage_running", wrong, "read plate and meter again; ask supply first")
        return
    if measured_power is not None and measured_power_factor is not None:
        wrong = "it stands in place of measured_power, and both were given"
        yield Problem("measured_power_factor", wrong, "give the watts alone")
    if measured_power_factor is not None and draw_kind == HEATER and measured_power_factor < 95:
        wrong = f"{measured_power_factor:g} %, and a heater has 100 %"
        yield Problem("measured_power_factor", wrong, "one with a fan or motor in it is mixed")
    if measured_power is None or current is None:
        return
    apparent = voltage_running * current
    if measured_power > OVER_VA * apparent:
        wrong = f"{measured_power:g} W are more than {apparent:.4g} VA of volts times amps"
        yield Problem("measured_power", wrong, "read all three at one moment, one wire in the jaws")
    if draw_kind == HEATER and measured_power < UNDER_VA * apparent:
        wrong = f"{measured_power:g} W of {apparent:.4g} VA: a heater has as many"
        yield Problem("draw_kind", wrong, "one with a fan or motor in it is mixed")

"""The inputs of `inrush`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Nameplate,
    OneOf,
    Reading,
    asked,
    assumed,
    extra,
    instead_of,
    may_be_absent,
    setting,
)
from wirecalc.trade import motors, overcurrent

from ..inputs import BREAKER, SETTLED, SLIP_A
from .plate import (
    ASKS_VOLTS,
    INVERTER,
    MOTOR_KIND,
    NO_START,
    PLATE_VOLTS,
    PLUG_VOLTS,
)
from .start_kinds import PLATE_LOADS

METER_MODES = ("inrush", "peak-hold", "max-hold")

RatedLoadCurrent = Annotated[
    float | None,
    Nameplate("A", above=0, high=60, typical="1.6 A", text="RLA on the plate"),
    instead_of("nameplate_current", when="nameplate_load=motor"),
    asked("without it a settled current says nothing"),
]
LockedRotorCurrent = Annotated[
    float | None,
    Nameplate("A", above=0, high=400, typical="12 A", text="LRA on the plate"),
    instead_of("code_letter", when="code_letter"),
    may_be_absent("a board drives it: it has no LRA", when="inverter=yes"),
    asked("without it a peak says nothing"),
]
CodeLetter = Annotated[
    str | None,
    OneOf(motors.code_letters, text="locked-rotor code letter of an open motor", on_plate=True),
    instead_of("locked_rotor_current"),
]
Horsepower = Annotated[
    float | None,
    Nameplate("hp", above=0, high=10, typical="1/4 hp", text="power on the plate"),
    asked("a code letter is kVA per hp", when="code_letter and not locked_rotor_current"),
    instead_of("locked_rotor_current"),
]
NameplateVoltage = Annotated[float | None, PLATE_VOLTS, asked(ASKS_VOLTS)]
Frequency = Annotated[
    float,
    Nameplate("Hz", low=16, high=400, typical="60 Hz", text="frequency on the plate"),
    setting("when the first crest comes"),
]
Voltage = Annotated[float | None, PLUG_VOLTS, asked(ASKS_VOLTS)]
Peak = Annotated[
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
]
Settled = Annotated[float | None, SETTLED, asked("it tells whether the motor runs well")]
SettleTime = Annotated[
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
]
MeterMode = Annotated[
    str,
    OneOf(METER_MODES, text="how the meter took the peak", goes_with="peak"),
    setting("a drive's start is not judged", when="inverter=yes"),
    assumed("peak-hold", "max-hold", source=PRACTICE, why="the same start reads otherwise"),
]
Breaker = Annotated[
    float | None, BREAKER, extra("the start is judged without it, and its load by breaker")
]
Device = Annotated[
    str,
    OneOf(overcurrent.devices, text="standard or class of the breaker", goes_with="breaker"),
    assumed("iec-60898-b", source=PRACTICE, why="the breaker of the other side of the ocean"),
]
NameplateCurrent = Annotated[
    float | None,
    Nameplate("A", above=0, high=100, typical="6.5 A", text="amps on the appliance's plate"),
    instead_of("rated_load_current"),
]
NameplateLoad = Annotated[
    str | None,
    OneOf(
        PLATE_LOADS,
        text="what the plate's amps are of",
        on_plate=True,
        goes_with="nameplate_current",
    ),
    setting("RLA counts", when="rated_load_current"),
    asked("they may be a heater's"),
]
MotorKind = Annotated[
    str | None,
    MOTOR_KIND,
    extra("over 1.1 times the rated current, or where LRA is under 3 times it, it is asked for"),
]
ServiceFactorCurrent = Annotated[
    float | None,
    Nameplate("A", above=0, high=100, typical="6.8 A", text="SFA on an open motor's plate"),
    extra("over 1.1 times the rated current of an open motor it is asked for"),
]
Inverter = Annotated[
    bool | None, INVERTER, extra("where the current ramps or stays low it is asked for")
]

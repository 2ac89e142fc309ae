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

from ..inputs import BREAKER, NAMEPLATE_CURRENT, NAMEPLATE_VOLTAGE, SETTLED, SLIP_A
from ..inputs_motor import (
    CODE_LETTER,
    DEVICE,
    FREQUENCY,
    HORSEPOWER,
    INVERTER,
    LOCKED_ROTOR_CURRENT,
    MOTOR_KIND,
    RATED_LOAD_CURRENT,
    SETTLE_TIME,
)
from .plate import ASKS_VOLTS, NO_START, PLUG_VOLTS
from .start_kinds import PLATE_LOADS

METER_MODES = ("inrush", "peak-hold", "max-hold")

RatedLoadCurrent = Annotated[
    float | None,
    RATED_LOAD_CURRENT,
    instead_of("nameplate_current", when="nameplate_load=motor"),
    asked("without it a settled current says nothing"),
]
LockedRotorCurrent = Annotated[
    float | None,
    LOCKED_ROTOR_CURRENT,
    instead_of("code_letter", when="code_letter"),
    may_be_absent("a board drives it: it has no LRA", when="inverter=yes"),
    asked("without it a peak says nothing"),
]
CodeLetter = Annotated[
    str | None,
    CODE_LETTER,
    instead_of("locked_rotor_current"),
]
Horsepower = Annotated[
    float | None,
    HORSEPOWER,
    asked("a code letter is kVA per hp", when="code_letter and not locked_rotor_current"),
    instead_of("locked_rotor_current"),
]
NameplateVoltage = Annotated[float | None, NAMEPLATE_VOLTAGE, asked(ASKS_VOLTS)]
Frequency = Annotated[
    float,
    FREQUENCY,
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
        crest_input="meter_mode",
    ),
    extra("a drive's board limits its start", when="inverter=yes"),
    asked("the start is the question"),
]
Settled = Annotated[float | None, SETTLED, asked("it tells whether the motor runs well")]
SettleTime = Annotated[
    float | None,
    SETTLE_TIME.but(zero=NO_START),
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
    DEVICE.but(goes_with="breaker"),
    assumed("iec-60898-b", source=PRACTICE, why="the breaker of the other side of the ocean"),
]
NameplateCurrent = Annotated[
    float | None,
    NAMEPLATE_CURRENT,
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

"""The inputs of `trace`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    RecordedColumns,
    asked,
    assumed,
    extra,
    may_be_absent,
    setting,
)

from ..inputs import BREAKER, NAMEPLATE_VOLTAGE
from ..inputs_motor import DEVICE, INVERTER, LOCKED_ROTOR_CURRENT, MOTOR_KIND, RATED_LOAD_CURRENT
from ..inputs_recording import (
    BY_ITSELF,
    CLAMP,
    COLUMN,
    CURRENT_ERROR,
    DECIMAL_COMMA,
    EXACT,
    FIRST_COLUMN,
    HOW_READ,
    IN_AMPERES,
    RECORDED,
    RECORDING,
)
from ..motor.plate import PLUG_VOLTS

_SHOWN = "without a plate a recording is shown, and no start is judged"

Recording = Annotated[RecordedColumns, RECORDING]
Recorded = Annotated[str, RECORDED, setting(BY_ITSELF)]
Column = Annotated[str | None, COLUMN, may_be_absent(FIRST_COLUMN)]
Clamp = Annotated[str | None, CLAMP, may_be_absent(IN_AMPERES)]
CurrentError = Annotated[str | None, CURRENT_ERROR, may_be_absent(EXACT)]
DecimalComma = Annotated[bool, DECIMAL_COMMA, setting(HOW_READ)]
RatedLoadCurrent = Annotated[
    float | None,
    RATED_LOAD_CURRENT,
    asked("the settled current is judged by it", when="locked_rotor_current"),
    extra(_SHOWN),
]
LockedRotorCurrent = Annotated[
    float | None,
    LOCKED_ROTOR_CURRENT,
    may_be_absent("a board drives it: it has no LRA", when="inverter=yes"),
    asked("the start is judged by it", when="rated_load_current"),
    extra(_SHOWN),
]
NameplateVoltage = Annotated[
    float | None,
    NAMEPLATE_VOLTAGE,
    asked("the start goes with the volts", when="locked_rotor_current"),
    extra(_SHOWN),
]
Voltage = Annotated[
    float | None,
    PLUG_VOLTS,
    extra("recorded volts go before it; a start without any is asked for it"),
]
Breaker = Annotated[
    float | None, BREAKER, extra("the start is judged without it, and its load by breaker")
]
Device = Annotated[
    str,
    DEVICE.but(goes_with="breaker"),
    assumed("iec-60898-b", source=PRACTICE),
]
MotorKind = Annotated[
    str | None,
    MOTOR_KIND,
    extra("over 1.1 times the rated current, or under 3 times LRA, it is asked for"),
]
Inverter = Annotated[
    bool | None, INVERTER, extra("where the current ramps or stays low it is asked for")
]

"""The inputs of `trace`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    OneOf,
    Reading,
    ReadingsStream,
    RecordedColumns,
    Words,
    YesNo,
    asked,
    assumed,
    extra,
    may_be_absent,
    setting,
)

from ..inputs import BREAKER, NAMEPLATE_VOLTAGE
from ..inputs_motor import DEVICE, INVERTER, LOCKED_ROTOR_CURRENT, MOTOR_KIND, RATED_LOAD_CURRENT
from ..motor.plate import PLUG_VOLTS

_SHOWN = "without a plate a recording is shown, and no start is judged"

_KINDS = {
    "current": Reading("A", low=-5000, high=5000, text="current"),
    "power": Reading("W", low=-100_000, high=100_000, text="power"),
    "voltage": Reading("V", low=-1500, high=1500, text="volts at the plug"),
    "peak": Reading(
        "A", low=-5000, high=5000, text="highest instantaneous current of each reading"
    ),
}

# an invented log of two starts, for the example
_SAMPLE = (
    "t_s,current_A 0,0.02 1,0.02 2,7.8 3,1.42 4,1.31 5,1.27 6,1.26 7,1.25 8,1.26 9,1.25 10,0.02 "
    "11,0.02 12,0.02 13,0.02 14,7.6 15,1.40 16,1.30 17,1.26 18,1.25 19,1.26 20,1.25 21,1.26 "
    "22,0.02 23,0.02"
).replace(" ", "\n")

Recording = Annotated[
    RecordedColumns,
    ReadingsStream(
        ("current", "power"),
        _KINDS,
        beside=("voltage", "peak"),
        text="CSV or Parquet of time and current (or power), and volts and peaks if recorded",
        error_input="current_error",
        comma_input="decimal_comma",
        column_input="column",
        clamp_input="clamp",
        typical="start.csv",
        sample=_SAMPLE,
    ),
]
Recorded = Annotated[
    str,
    OneOf(
        ("auto", "instantaneous", "rms", "power"),
        text="what the values are; auto: by the header and the values",
    ),
    setting("found by the header and the values, and said"),
]
Column = Annotated[
    str | None,
    Words("header of the column to take, if not the first that fits"),
    may_be_absent("the first column that fits"),
]
Clamp = Annotated[
    str | None,
    Words("scale of a clamp that gives volts", typical="100 mV/A"),
    may_be_absent("the file is in A, or its header says the scale"),
]
CurrentError = Annotated[
    str | None,
    Words("meter error of every value, as 2% or (2%+5)", typical="2%"),
    may_be_absent("readings taken as exact"),
]
DecimalComma = Annotated[
    bool, YesNo("the numbers of the file have decimal commas"), setting("how the file is read")
]
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

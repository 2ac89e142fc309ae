"""The inputs of `capacitor`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Reading,
    YesNo,
    asked,
    extra,
    instead_of,
    may_be_absent,
)

from ..inputs import CAPACITOR_VOLTAGE, MARKED_CAPACITANCE
from ..inputs_motor import FREQUENCY, VOLTAGE
from .marked_capacitance import (
    MARKED_HIGH,
)

CapacitorCurrent = Annotated[
    float | None,
    Reading("A", low=0, high=50, typical="2.05 A", text="amps in the capacitor's own lead"),
    asked("read it so, or by a capacitance meter", when="not measured_capacitance"),
    instead_of("measured_capacitance"),
]
CapacitorVoltage = Annotated[
    float | None,
    CAPACITOR_VOLTAGE,
    asked("read it so, or by a capacitance meter", when="not measured_capacitance"),
    instead_of("measured_capacitance"),
]
ProbesOnCapacitor = Annotated[
    bool | None,
    YesNo("both probes were on its own terminals when the volts were read"),
    extra("volts that equal the line's are suspected to be the line's", when="capacitor_voltage"),
]
Frequency = Annotated[
    float | None,
    FREQUENCY,
    asked("amps over volts goes with it", when="capacitor_current and capacitor_voltage"),
]
MeasuredCapacitance = Annotated[
    float | None,
    Reading("uF", low=0, high=2000, typical="26 uF", text="by a capacitance meter, discharged"),
    instead_of("capacitor_current", "capacitor_voltage"),
]
MarkedCapacitance = Annotated[
    float | None,
    MARKED_CAPACITANCE.but(upper_input="marked_high", tolerance_input="tolerance"),
    asked("it is what the reading is held against"),
]
CapacitorDuty = Annotated[
    str | None,
    OneOf(("run", "start"), text="what it is: run or start", on_plate=True),
    extra(
        "good by the marks of run and of start parts it is good; else it is asked for",
        when="measured_capacitance and not tolerance and not marked_high",
    ),
    may_be_absent("a run part: it was read while the motor runs", when="capacitor_current"),
]
MarkedHigh = Annotated[float | None, MARKED_HIGH, may_be_absent("no range is marked")]
Tolerance = Annotated[
    float | None,
    Nameplate(
        "%",
        low=0,
        high=50,
        typical="5 %",
        text="tolerance as marked",
        goes_with="marked_capacitance",
    ),
    extra("good within the narrowest that is marked on such parts; between, it is asked for"),
]
ToleranceAbove = Annotated[
    float | None,
    Nameplate(
        "%",
        low=0,
        high=50,
        typical="10 %",
        text="tolerance upward, where it is another",
        goes_with="tolerance",
    ),
    may_be_absent("the same upward as downward"),
]
CapacitorRating = Annotated[
    float | None,
    Nameplate("V", low=50, high=1000, typical="250 V", text="volts marked on it"),
    extra("whether it is weak is told without it", when="capacitor_voltage"),
]
Voltage = Annotated[
    float | None,
    VOLTAGE,
    asked(
        "volts that equal it were probably read at the line",
        when="capacitor_voltage and not probes_on_capacitor",
    ),
    extra("the probes were on its own terminals", when="capacitor_voltage"),
]

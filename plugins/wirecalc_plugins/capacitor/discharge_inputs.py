"""The inputs of `discharge`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    Reading,
    asked,
    extra,
    instead_of,
    may_be_absent,
)

from ..inputs import CAPACITOR_VOLTAGE, MARKED_CAPACITANCE
from .marked_capacitance import MARKED_HIGH

MarkedCapacitance = Annotated[float, MARKED_CAPACITANCE.but(upper_input="marked_high")]
Resistor = Annotated[
    float,
    Nameplate("ohm", low=5, high=1e6, typical="20000 ohm", text="resistor it bleeds through"),
]
MarkedHigh = Annotated[float | None, MARKED_HIGH, may_be_absent("no range is marked")]
CapacitorVoltage = Annotated[
    float | None,
    CAPACITOR_VOLTAGE,
    asked("they, or those left on it", when="not left_voltage"),
    instead_of("left_voltage"),
]
LeftVoltage = Annotated[
    float | None,
    Reading(
        "V",
        wave="dc",
        low=0,
        high=20_000,
        typical="300 V",
        text="dc volts left on it, switched off",
    ),
    instead_of("capacitor_voltage"),
]
ResistorPower = Annotated[
    float | None,
    Nameplate(
        "W",
        above=0,
        high=500,
        typical="2 W",
        text="power rating of the resistor, against the pulse and the heat in it",
    ),
    asked("one that burns out discharges nothing"),
]
ResistorVoltage = Annotated[
    float | None,
    Nameplate("V", above=0, high=20_000, typical="500 V", text="volts rating of the resistor"),
    extra("whether it flashes over its maker's sheet says"),
]
PulseEnergy = Annotated[
    float | None,
    Nameplate(
        "J",
        above=0,
        high=10_000,
        typical="5 J",
        text="energy of one pulse that its maker prints for the resistor",
    ),
    extra("its power is judged by what resistors stand for the time of a bleed"),
]
BledFor = Annotated[
    float | None,
    Reading("s", above=0, high=86_400, typical="5 s", text="how long the resistor was held on it"),
    extra("a time is a plan, the meter proves"),
]
VoltsAfter = Annotated[
    float | None,
    Reading(
        "V",
        wave="dc",
        low=0,
        high=20_000,
        typical="0.6 V",
        text="dc volts across its terminals after the bleed",
    ),
    asked("only a meter shows that it is discharged", when="bled_for"),
    extra("nothing shows yet that it is discharged: prove it under 5 V, meter on its terminals"),
]

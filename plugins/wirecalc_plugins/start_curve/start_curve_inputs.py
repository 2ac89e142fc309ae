"""The inputs of `start-curve`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Count,
    Nameplate,
    OneOf,
    Reading,
    Wire,
    asked,
    assumed,
    extra,
    instead_of,
    may_be_absent,
    setting,
    tables,
)

from ..inputs import ALIVE, CORD, CORD_LENGTH, NAMEPLATE_VOLTAGE, VOLTAGE_AT_REST
from ..inputs_motor import FREQUENCY, HORSEPOWER, LOCKED_ROTOR_CURRENT, RATED_LOAD_CURRENT

OWN, RELAY, PTC, START_CAPACITOR, RUN_CAPACITOR, NONE = METHODS = (
    "own",
    "relay",
    "ptc",
    "start-capacitor",
    "run-capacitor",
    "none",
)

LOADS = ("constant", "fan", "compressor")

VARIANTS = (
    "healthy",
    "open-start-winding",
    "weak-capacitor",
    "low-supply",
    "long-cord",
    "locked-rotor",
    "swapped-leads",
)


def _machines() -> list[str]:
    return [row.text("motor") for row in tables.load("textbook-start-windings").rows]


TextbookMotor = Annotated[
    str | None,
    OneOf(_machines, text="motor of a textbook, in place of a plate"),
    instead_of("nameplate_voltage"),
]
NameplateVoltage = Annotated[
    float | None,
    NAMEPLATE_VOLTAGE,
    instead_of("textbook_motor"),
]
Frequency = Annotated[
    float,
    FREQUENCY.but(goes_with="nameplate_voltage"),
    assumed("50 Hz", source=PRACTICE),
]
LockedRotorCurrent = Annotated[
    float | None,
    LOCKED_ROTOR_CURRENT.but(goes_with="nameplate_voltage", typical="20 A"),
    instead_of("textbook_motor"),
]
RatedLoadCurrent = Annotated[
    float | None,
    RATED_LOAD_CURRENT.but(goes_with="nameplate_voltage", typical="4.4 A"),
    instead_of("textbook_motor"),
]
Horsepower = Annotated[
    float | None,
    HORSEPOWER.but(goes_with="nameplate_voltage"),
    instead_of("textbook_motor"),
]
Poles = Annotated[
    int | None,
    Count(
        "number of poles: 2 near 3450 rpm, 4 near 1725",
        low=2,
        high=24,
        goes_with="nameplate_voltage",
    ),
    instead_of("textbook_motor"),
]
RatedSpeed = Annotated[
    int | None,
    Count(
        "speed on the plate in turns a minute, such as 1725",
        low=100,
        high=24_000,
        goes_with="nameplate_voltage",
    ),
    extra("it would tell the rotor of a motor with a capacitor better"),
]
MainWinding = Annotated[
    float | None,
    Reading(
        "ohm",
        above=0,
        high=500,
        typical="2 ohm",
        text="main winding, cold",
        goes_with="nameplate_voltage",
    ),
    instead_of("textbook_motor"),
]
StartWinding = Annotated[
    float | None,
    Reading(
        "ohm",
        above=0,
        high=1000,
        typical="7 ohm",
        text="start winding, cold",
        goes_with="nameplate_voltage",
    ),
    instead_of("textbook_motor"),
]
StartMethod = Annotated[
    str,
    OneOf(METHODS, text="how it starts; own: the textbook's way, a relay for a plate"),
    asked("how it starts decides the start", when="nameplate_voltage"),
    setting("as the textbook has it"),
]
StartCapacitor = Annotated[
    float | None,
    Nameplate(
        "uF",
        low=1,
        high=2000,
        typical="189 uF",
        text="start capacitor's mark",
        goes_with="start_method",
    ),
    may_be_absent("none in this start but what a textbook has"),
]
RunCapacitor = Annotated[
    float | None,
    Nameplate(
        "uF",
        low=1,
        high=200,
        typical="15 uF",
        text="run capacitor's mark",
        goes_with="start_method",
    ),
    may_be_absent("none in this start but what a textbook has"),
]
PtcResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        low=1,
        high=100,
        typical="6.8 ohm",
        text="PTC start device, cold",
        goes_with="start_method",
    ),
    may_be_absent("none in this start but what a textbook has"),
]
LoadTorque = Annotated[
    float | None,
    Nameplate("%", low=0, high=300, typical="50 %", text="load, share of rated torque"),
    extra("25 and 100 % of rated torque are run, and it is asked for where they differ"),
]
LoadCurve = Annotated[
    str,
    OneOf(LOADS, text="constant; a fan's, with the square of speed; a compressor's"),
    extra("a torque that is there from standstill is taken, the unkind one"),
]
Inertia = Annotated[
    float | None,
    Nameplate("kg m2", low=0.0001, high=10, typical="0.005 kg m2", text="rotor and load"),
    extra("a rotor alone and a heavy load are run, and it is asked for where they differ"),
]
VoltageAtRest = Annotated[
    float | None,
    VOLTAGE_AT_REST.but(not_zero=ALIVE),
    asked("a start goes with the volts", when="nameplate_voltage"),
    may_be_absent("the plate's volts"),
]
SourceResistance = Annotated[
    float | None,
    Reading("ohm", low=0, high=50, typical="0.4 ohm", text="supply and building wire, both"),
    asked("a stiff supply hides its own dip", when="nameplate_voltage"),
    may_be_absent("a stiff supply"),
]
Cord = Annotated[
    Wire | None,
    CORD,
    may_be_absent("no cord"),
]
CordLength = Annotated[
    float | None,
    CORD_LENGTH,
    asked("there is a cord"),
]
ClosingAngle = Annotated[
    float,
    Nameplate("deg", low=0, high=180, typical="90 deg", text="closing, after zero volts"),
    setting("it moves the first crest"),
]
Duration = Annotated[
    float,
    Nameplate("s", low=0.5, high=20, typical="4 s", text="time to simulate at most"),
    setting("how long is simulated"),
]
Variants = Annotated[
    list[str] | None,
    OneOf(VARIANTS, text="what to show side by side; left out: healthy"),
    extra("a healthy start alone is shown and judged"),
]
Spread = Annotated[
    int | None,
    Count(
        "how many starts to draw from what is not known, such as 1000",
        low=20,
        high=5000,
    ),
    extra("the ends of what is not known are run; more starts show what lies between"),
]

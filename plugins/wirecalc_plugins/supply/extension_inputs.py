"""The inputs of `extension`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Nameplate,
    OneOf,
    Reading,
    Wire,
    asked,
    assumed,
    extra,
    may_be_absent,
)

from ..circuit.cord_load import CORDS
from ..inputs import (
    ALIVE,
    BUILDING_WIRE,
    CONDUCTOR_TEMPERATURE,
    CORD_CONDUCTORS,
    EXTENSION_CORD,
    EXTENSION_LENGTH,
    HAS_MOTOR,
    LOAD_ON_A_RUN,
    NAMEPLATE_VOLTAGE,
    OTHER_CURRENT,
    PROTECTION,
    RUN_LENGTH,
    VOLTAGE_AT_REST,
    VOLTAGE_AT_START,
)
from ..inputs_motor import LOCKED_ROTOR_CURRENT
from .makers_word import ALLOWS

STARTS = ("direct", "inverter", "brush motor")

_MAY = "maker_allows=three-wire grounding|yes|not stated"

ExtensionCord = Annotated[Wire, EXTENSION_CORD]
ExtensionLength = Annotated[float, EXTENSION_LENGTH.but(goes_with="")]
Current = Annotated[float, LOAD_ON_A_RUN]
MakerAllows = Annotated[
    str | None, OneOf(ALLOWS, text="what the machine's sheet says of extension cords"), asked()
]
Grounding = Annotated[
    bool | None,
    "it is a three-wire grounding cord",
    asked(when="maker_allows=three-building_wire grounding"),
    asked(when="maker_allows=yes|not stated and protection!=class-ii"),
]
CordRating = Annotated[
    float | None,
    Nameplate("A", low=1, high=60, typical="15 A", text="rating printed on the cord"),
    asked(when=_MAY),
]
CordConductors = Annotated[
    int | None,
    CORD_CONDUCTORS,
    assumed("2", source=CORDS, why="3, which carries less"),
]
CordAmbient = Annotated[
    float | None,
    Reading("C", low=-40, high=90, typical="25 C", text="temperature around the cord"),
    asked(),
]
NameplateVoltage = Annotated[float | None, NAMEPLATE_VOLTAGE, asked()]
HasMotor = Annotated[
    bool | None,
    HAS_MOTOR,
    asked(when="not locked_rotor_current and not voltage_at_start"),
]
LockedRotorCurrent = Annotated[
    float | None,
    LOCKED_ROTOR_CURRENT.but(typical="14.2 A"),
    asked(when="has_motor=yes and motor_start=direct and not voltage_at_start"),
    extra("a start is asked for where there is a motor that has one"),
]
VoltageAtRest = Annotated[
    float | None,
    VOLTAGE_AT_REST.but(not_zero=ALIVE),
    asked(when="locked_rotor_current and not voltage_at_start"),
    extra("a run that takes over 10 % of the plate's volts asks for it"),
]
VoltageAtStart = Annotated[
    float | None,
    VOLTAGE_AT_START.but(not_zero=ALIVE),
    extra("all that arithmetic allows is tried, and where that does not tell it is asked for"),
]
BuildingWire = Annotated[
    Wire | None,
    BUILDING_WIRE,
    asked("it takes its part of the volts before the cord"),
]
RunLength = Annotated[float | None, RUN_LENGTH, asked()]
OtherCurrent = Annotated[
    float | None, OTHER_CURRENT, may_be_absent("nothing else runs on this wire")
]
ConductorTemperature = Annotated[float, CONDUCTOR_TEMPERATURE, assumed("20 C", source=PRACTICE)]
MotorStart = Annotated[
    str | None,
    OneOf(STARTS, text="how its motor starts: at the line, by an inverter, with brushes"),
    extra("a motor without an LRA on its plate asks for it"),
]
Protection = Annotated[
    str | None,
    PROTECTION,
    extra("a ground pin is taken, which needs the ground of the cord"),
]

"""The inputs of a motor's circuit, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Wire,
    YesNo,
    asked,
    assumed,
    confirmed,
    extra,
    instead_of,
    may_be_absent,
    setting,
)

from ..inputs import BREAKER, BUILDING_WIRE, MAXIMUM_BREAKER, NAMEPLATE_VOLTAGE, OTHER_CURRENT
from ..inputs_motor import HORSEPOWER, MOTOR_KIND, RATED_LOAD_CURRENT
from .motor_rules import DEVICES

_BY_TABLE = "motor_kind=motor and plate_governs!=yes and not minimum_ampacity"
_COMPRESSOR = "motor_kind=compressor and not branch_selection_current and not minimum_ampacity"
_UNIT = "minimum_ampacity and not rated_load_current and not horsepower"
_430_6 = confirmed("nec-430-6-a", "NEC", "430.6(A)(1)", copies=2)
_430_52 = confirmed("nec-430-52-left-out", "NEC", "430.52", copies=2)

MotorKind = Annotated[str, MOTOR_KIND]
FastenedInPlace = Annotated[bool, "it is built in or wired in, not plugged in"]
BuildingWire = Annotated[Wire | None, BUILDING_WIRE, asked("the device is not there to save it")]
Horsepower = Annotated[
    float | None,
    HORSEPOWER.but(typical="1/2 hp"),
    asked("the table's current goes by it", when=_BY_TABLE),
]
PlateVolts = Annotated[
    float | None,
    NAMEPLATE_VOLTAGE,
    asked("the table's current goes by them", when=_BY_TABLE),
]
FullLoadCurrent = Annotated[
    float | None,
    Nameplate("A", above=0, high=100, typical="8.6 A", text="FLA on a motor's plate"),
    asked("it sizes the circuit", when="plate_governs=yes"),
    asked("an overload is set by it", when="overload_setting and motor_kind=motor"),
    extra(
        "the table's current sizes the circuit; the plate's is for the overload protector",
        when="motor_kind=motor",
    ),
]
PlateGoverns = Annotated[
    bool | None,
    YesNo(
        "a shaded-pole, PSC fan, low-speed, high-torque or multispeed motor, or part of a "
        "listed appliance"
    ),
    assumed("yes", "no", source=_430_6, why="either way", when="full_load_current"),
]
CoolRunning = Annotated[
    bool | None,
    YesNo("its plate shows service factor 1.15 or more, or a rise of 40 C or less"),
    setting("it raises the overload setting that is shown"),
]
OverloadSetting = Annotated[
    float | None,
    Nameplate(
        "A",
        above=0,
        high=200,
        typical="9.8 A",
        text="amps at which a separate overload of the motor is set or rated",
    ),
    extra("its limit is shown, and what is fitted was not looked at"),
]
OverloadTooLow = Annotated[
    bool | None,
    YesNo("an overload of the first limit does not let it start or carry its load"),
    extra("a setting over the first limit asks for it", when="overload_setting"),
]
RatedLoadCurrent = Annotated[
    float | None,
    RATED_LOAD_CURRENT.but(typical="6.4 A"),
    asked("it sizes the circuit of a compressor", when=_COMPRESSOR),
    instead_of("branch_selection_current", "minimum_ampacity", when="motor_kind=compressor"),
]
BranchSelectionCurrent = Annotated[
    float | None,
    Nameplate(
        "A",
        above=0,
        high=60,
        typical="7.2 A",
        text="branch-circuit selection current (BCSC) on the plate",
    ),
    may_be_absent("none on the plate"),
]
MinimumAmpacity = Annotated[
    float | None,
    Nameplate("A", above=0, high=100, typical="9 A", text="least circuit ampacity on the plate"),
    may_be_absent("none on the plate"),
]
LargestOnPlate = Annotated[
    float | None,
    MAXIMUM_BREAKER,
    asked("it stands beside the least ampacity", when=_UNIT),
    may_be_absent("none on the plate"),
]
DeviceRating = Annotated[
    float | None, BREAKER, asked("it guards wire and motor against short circuit")
]
Device = Annotated[
    str,
    OneOf(DEVICES, text="kind of the fuse or breaker"),
    extra(
        "a rating on a handle is that of an ordinary breaker; a fuse has its kind printed on it",
        when="motor_kind=motor",
    ),
]
WillNotStart = Annotated[
    bool | None,
    YesNo("it will not start on a device of the first limit"),
    assumed("yes", "no", source=_430_52, why="either way", when="breaker"),
]
ListedCombination = Annotated[
    bool | None,
    YesNo("an instantaneous breaker is part of a listed combination, with the overload protector"),
    asked("alone it is no guard", when="breaker and motor_device=instantaneous breaker"),
]
OtherCurrent = Annotated[
    float | None,
    OTHER_CURRENT.but(typical="3 A", goes_with=""),
    may_be_absent("nothing else on the circuit"),
]

"""The inputs of `screening`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    YesNo,
    asked,
)

from ..inputs import SLIP_MOHM

LEAST_TRIP_MA = 4.0  # what a class A GFCI may trip at; no device is finer: UL 943

OverRange = Annotated[
    bool | None,
    YesNo(
        "power off, live parts joined read over range (OL) to bare metal of the case, on the "
        "highest ohm range"
    ),
    asked("it comes before power"),
]
OhmRange = Annotated[
    float | None,
    Nameplate(
        "Mohm",
        above=0,
        high=10_000,
        typical="20 Mohm",
        text="end of that ohm range",
        slip_under=SLIP_MOHM,
    ),
    asked("over a low range says nothing"),
]
SwitchedOn = Annotated[
    bool | None,
    YesNo("switches, thermostats and relays were closed, so that all was in the reading").but(
        before="over_range"
    ),
    asked("what lies behind an open switch is not in it"),
]
DeviceHeld = Annotated[
    bool | None,
    YesNo("a GFCI or RCD held through a full run, all that can be switched on was on once"),
    asked("parts that get hot or wet leak only then"),
]
TestButtonTrips = Annotated[
    bool | None,
    YesNo("the test button of that GFCI or RCD switches it off").but(before="device_held"),
    asked("one that never trips holds always"),
]
TripCurrent = Annotated[
    float | None,
    Nameplate(
        "mA",
        low=LEAST_TRIP_MA,
        high=1000,
        typical="6 mA",
        text="residual current at which it trips: 6 mA of a class A GFCI, else as printed",
    ),
    asked("a coarse one holds beside a machine that shocks"),
]

"""The inputs of `ground`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Nameplate,
    OneOf,
    Reading,
    Wire,
    YesNo,
    asked,
    assumed,
    extra,
    instead_of,
    may_be_absent,
)

from ..inputs import CONDUCTOR_TEMPERATURE, CORD, CORD_LENGTH, LEADS
from .ground_limits import STANDARDS
from .neutral import NO_STRAP, STRAP

GroundPoint = Annotated[
    str,
    OneOf(
        ("plug-pin", "cord-end", "wired-in", "neutral-blade"),
        text="read from the case to: the pin of the plug; the ground wire where the cord ends in "
        "the machine; the ground wire of a machine without a cord; the neutral blade of a "
        "three-wire range or dryer",
    ),
]
GroundResistance = Annotated[
    float | None,
    Reading(
        "ohm",
        low=0,
        high=10_000,
        typical="0.25 ohm",
        text="case to that point, by an ohmmeter, the leads still in it",
        past="<",
        if_open="leave it out and give ground_open yes",
    ),
    asked("read the path", when="not test_current and not ground_open"),
    instead_of("test_current"),
]
GroundOpen = Annotated[
    bool | None, YesNo("the path reads open (OL)"), instead_of("ground_resistance")
]
LeadResistance = Annotated[
    float | None, LEADS, assumed("0 ohm", source=PRACTICE, why="0 to 0.3 ohm")
]
SameRange = Annotated[
    bool | None,
    YesNo(
        "path and leads were read by one meter on one range, one after the other; with "
        "meter_resolution and the error typed with both, what the two share drops out"
    ),
    extra("without it the error of each counts by itself", when="lead_resistance"),
]
MeterResolution = Annotated[
    float | None,
    Nameplate(
        "ohm",
        above=0,
        high=1,
        typical="0.01 ohm",
        text="of same_range: smallest step of its display on that range, 0.1 ohm of a common meter",
    ),
    asked("a step of each reading is left of a shared error", when="same_range=yes"),
]
TestCurrent = Annotated[
    float | None,
    Reading(
        "A",
        above=0,
        high=60,
        typical="2 A",
        text="known current sent through the path, from 12 V at most",
        slip_under=0.0001,  # an ohmmeter sends a milliamp or less
    ),
    instead_of("ground_resistance"),
]
PathDrop = Annotated[
    float | None,
    Reading(
        "mV",
        low=0,
        high=12_000,
        typical="120 mV",
        text="across the path, case to that point, while that current flows",
        goes_with="test_current",
    ),
    asked("the path is the drop over the current"),
]
GroundStandard = Annotated[
    str | None,
    OneOf(STANDARDS, text="standard of the product"),
    extra("0.1 ohm without the cord binds, and 0.1 with it is advice"),
]
Cord = Annotated[
    Wire | None,
    CORD,
    extra(
        "a cord only adds: where it decides, it is asked for",
        when="ground_point=plug-pin|neutral-blade",
    ),
]
CordLength = Annotated[
    float | None,
    CORD_LENGTH.but(goes_with="", typical="6 ft"),
    extra("where it decides, it is asked for", when="cord"),
    extra("where it decides, it is asked for", when="ground_standard=vde-0701-0702"),
]
ConductorTemperature = Annotated[
    float, CONDUCTOR_TEMPERATURE, assumed("0 C", "40 C", source=PRACTICE)
]
CordGroundClosed = Annotated[
    bool | None,
    YesNo("the cord's own ground wire reads closed, pin to end"),
    asked("it was not in the reading", when="ground_point=cord-end"),
]
NeutralStrap = Annotated[
    str | None,
    STRAP.but(before="ground_resistance"),
    asked("the strap is the path", when="ground_point=neutral-blade"),
    may_be_absent(NO_STRAP),
]
NeutralOpen = Annotated[
    bool | None,
    YesNo("case to neutral reads open, unplugged"),
    asked("on four wires it must", when="neutral_strap=removed"),
]

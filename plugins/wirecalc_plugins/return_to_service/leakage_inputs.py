"""The inputs of `leakage`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    PRACTICE,
    Nameplate,
    OneOf,
    Reading,
    YesNo,
    asked,
    assumed,
    extra,
    may_be_absent,
    setting,
)

from ..inputs import NAMEPLATE_POWER
from .leakage_limits import kinds, standards
from .neutral import NO_STRAP, STRAP

SLIP_MA = 0.001  # less than a leakage tester shows: typed in uA it is a slip of the unit

SMALL_PLUG = "plug"

_LEAKS = "read it with a leakage tester or a leakage clamp, everything switched on"

_NO_ZERO = (
    "a reading of exactly 0: a machine that runs leaks something; a clamp around all its wires, or "
    "one that was off, shows none",
    "clamp line and neutral together, without the ground, and read again; type less than it shows "
    "as such, <0.1 mA of a meter of tenths",
)

LeakageCurrent = Annotated[
    float | None,
    Reading(
        "mA",
        low=0,
        high=50,
        typical="0.3 mA",
        text="leakage of this machine, from its case or ground wire to ground",
        past="<",
        slip_under=SLIP_MA,
        zero=_NO_ZERO,
    ),
    asked(_LEAKS),
]
MachineKind = Annotated[
    str | None,
    OneOf(
        kinds,
        text="two-wire: no ground pin; double-insulated: double square; with a ground pin: "
        "portable, stationary (motor), refrigerator, heater (stationary)",
    ),
    extra("within the least limit of its standard it is good as any kind; else it is asked for"),
]
LeakageStandard = Annotated[
    str,
    OneOf(
        standards,
        text="standard of its region: ul-101 in North America, iec-60335-1 (new) or "
        "vde-0701-0702 (repaired) for 230 V; or the strictest of all",
    ),
    assumed("iec-60335-1", "vde-0701-0702", source=PRACTICE),
]
Connection = Annotated[
    str | None,
    OneOf(
        (SMALL_PLUG, "large-plug", "wired-in"),
        text="plug: cord and plug of up to 20 A; large-plug: of more (ranges, dryers); "
        "wired-in: none",
    ),
    asked(
        "UL 101 is of plugs up to 20 A",
        when="leakage_standard=ul-101 and machine_kind=heater",
    ),
    may_be_absent("a cord and plug of up to 20 A"),
]
NeutralStrap = Annotated[str | None, STRAP.but(before="leakage_current"), may_be_absent(NO_STRAP)]
SwitchedOn = Annotated[
    bool | None,
    YesNo("switches, thermostats and relays were closed, so that all was in the reading").but(
        before="leakage_current"
    ),
    asked("what lies behind an open one does not leak into the reading"),
]
NameplatePower = Annotated[
    float | None,
    NAMEPLATE_POWER,
    assumed("20000 W", source=PRACTICE, why="the least limit", when="machine_kind=heater"),
    setting("only elements are judged by their power"),
]
OnGfci = Annotated[
    bool | None, YesNo("it is fed through a class A GFCI"), may_be_absent("no GFCI feeds it")
]
RcdRating = Annotated[
    float | None,
    Nameplate(
        "mA", low=5, high=500, typical="30 mA", text="rating of the RCD that feeds it (230 V)"
    ),
    may_be_absent("no RCD feeds it"),
]
OtherLeakage = Annotated[
    list[float] | None,
    Reading(
        "mA",
        low=0,
        high=50,
        typical="0.5 mA",
        text="leakage of each other machine on the same GFCI or RCD",
        past="<",
        slip_under=SLIP_MA,
        zero=_NO_ZERO,
    ),
    may_be_absent("no other machine on the same GFCI or RCD"),
]

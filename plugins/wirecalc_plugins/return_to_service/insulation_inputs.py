"""The inputs of `insulation`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    OneOf,
    Reading,
    YesNo,
    asked,
    assumed,
    confirmed,
    extra,
    may_be_absent,
    setting,
)

from ..inputs import NAMEPLATE_POWER, NAMEPLATE_VOLTAGE, PROTECTION, SLIP_MOHM
from .neutral import NO_STRAP, STRAP

VDE = confirmed("vde-0701", "DIN VDE 0701", "insulation resistance at 500 V dc", 2)

InsulationResistance = Annotated[
    float,
    Reading(
        "Mohm",
        low=0,
        high=1e6,
        typical="50 Mohm",
        text="live parts joined, to the bare case; over range (OL): its top, as in >999 Mohm",
        past=">",
        slip_under=SLIP_MOHM,
    ),
]
Protection = Annotated[
    str,
    PROTECTION,
]
TestedPart = Annotated[
    str,
    OneOf(
        ("machine", "heater", "compressor", "motor"),
        text="what was tested; heater: heating elements, alone or switched on in the machine",
    ),
]
TestVoltage = Annotated[
    float | None,
    Nameplate(
        "V", above=0, high=1000, typical="500 V", text="dc volts that the tester is set to"
    ).but(before="insulation_resistance"),
    asked("the limits hold at 500 V dc"),
]
SwitchedOn = Annotated[
    bool | None,
    YesNo("switches, thermostats and relays were closed, so that all was in the reading").but(
        before="insulation_resistance"
    ),
    asked("what lies behind an open one was not tested", when="tested_part=machine|heater"),
    may_be_absent("a bare part, read at its own pins: no switch in between"),
]
ElectronicsUnplugged = Annotated[
    bool | None,
    YesNo("boards, surge parts and inverter were unplugged, or there are none").but(
        before="insulation_resistance"
    ),
    asked("500 V into boards misreads and harms them", when="tested_part=machine|heater"),
    may_be_absent("a bare part, read at its own pins: no board connected"),
]
Dried = Annotated[
    bool | None,
    YesNo("a sheathed element was warmed and dried before this reading"),
    extra("a good reading is good damp or dry; a low one of heaters asks for it"),
]
NameplatePower = Annotated[
    float | None,
    NAMEPLATE_POWER,
    assumed(
        "4000 W",
        source=VDE,
        why="under 3.5 kW",
        when="tested_part=heater and protection=class-i",
    ),
    setting("only elements are judged by their power"),
]
NameplateVoltage = Annotated[
    float | None,
    NAMEPLATE_VOLTAGE,
    extra(
        "above the limit of class-ii it is good as any class; else it is asked for",
        when="protection=class-iii",
    ),
    setting("only class-iii is known by its volts"),
]
NeutralStrap = Annotated[
    str | None, STRAP.but(before="insulation_resistance"), may_be_absent(NO_STRAP)
]

"""The inputs of `substitute`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    Wire,
    YesNo,
    asked,
    setting,
)

OldWire = Annotated[Wire, "wire that is to be replaced"]
NewWire = Annotated[Wire, "wire that shall take its place"]
OldWireTemperature = Annotated[
    float | None,
    Nameplate("C", above=0, high=500, typical="105 C", text="temperature rating of old wire"),
    asked("what is not known counts as lower"),
]
NewWireTemperature = Annotated[
    float | None,
    Nameplate("C", above=0, high=500, typical="105 C", text="temperature rating of new wire"),
    asked("what is not known counts as lower"),
]
OldWireVoltage = Annotated[
    float | None,
    Nameplate("V", above=0, high=5000, typical="600 V", text="voltage rating of the old wire"),
    asked("what is not known counts as lower"),
]
NewWireVoltage = Annotated[
    float | None,
    Nameplate("V", above=0, high=5000, typical="600 V", text="voltage rating of the new wire"),
    asked("what is not known counts as lower"),
]
OldOilResistant = Annotated[
    bool | None,
    YesNo("the old wire is marked or known to stand oil and chemicals"),
    asked("what is not known counts as lower", when="new_oil_resistant!=yes"),
    setting("the new wire has it"),
]
NewOilResistant = Annotated[
    bool | None,
    YesNo("the new wire is marked to stand oil and chemicals"),
    asked("what is not known counts as lower", when="old_oil_resistant!=no"),
    setting("the old wire has it not"),
]
OldFlameRated = Annotated[
    bool | None,
    YesNo("the old wire is marked with a flame rating, as VW-1 or FT1"),
    asked("what is not known counts as lower", when="new_flame_rated!=yes"),
    setting("the new wire has it"),
]
NewFlameRated = Annotated[
    bool | None,
    YesNo("the new wire is marked with a flame rating, as VW-1 or FT1"),
    asked("what is not known counts as lower", when="old_flame_rated!=no"),
    setting("the old wire has it not"),
]

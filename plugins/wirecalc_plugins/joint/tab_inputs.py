"""The inputs of `tab`, and what leaving each of them out means."""

from __future__ import annotations

from typing import Annotated

from wirecalc import (
    Nameplate,
    Wire,
    asked,
    extra,
)

from ..inputs import CURRENT, WIRE
from ..inputs_joint import TAB_WIDTH
from ..steps import tab_widths

TabWidth = Annotated[float, TAB_WIDTH]
WireInput = Annotated[Wire, WIRE]
Current = Annotated[
    float,
    CURRENT.but(typical="10.8 A", not_zero="no terminal is judged by no current"),
]
TerminalWidth = Annotated[
    float | None,
    Nameplate(
        "in",
        low=0.05,
        high=0.5,
        typical="0.250 in",
        text="tab width that the female is for",
        steps=tab_widths,
    ),
    asked("a female for another width sits loose or bends the tab"),
]
TabThickness = Annotated[
    float | None,
    Nameplate("in", low=0.01, high=0.1, typical="0.032 in", text="thickness of the tab"),
    extra("a female for another thickness is felt: it does not go on, or sits loose"),
]
TerminalThickness = Annotated[
    float | None,
    Nameplate(
        "in",
        low=0.01,
        high=0.1,
        typical="0.032 in",
        text="tab thickness that the female is for",
    ),
    extra("the tab is then held against the thicknesses that are published for its width"),
]

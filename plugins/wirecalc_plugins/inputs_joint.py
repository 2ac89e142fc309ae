"""Inputs of joints and of the wires in them that several calculations share."""

from __future__ import annotations

from typing import Annotated

from wirecalc import Count, Nameplate, OneOf, Reading, extra
from wirecalc.trade import crimps

from .steps import WIRE_CLASSES, tab_widths

OWN = "own"  # the standard of the terminal itself

TAB_WIDTH = Nameplate(
    "in", low=0.05, high=0.5, typical="0.250 in", text="width of the tab", steps=tab_widths
)
WIRE_RATING = Nameplate(
    "C",
    low=40,
    high=500,
    typical="105 C",
    text="temperature rating printed on the wire",
    steps=WIRE_CLASSES,
)
TERMINAL_RATING = Nameplate(
    "C",
    low=40,
    high=500,
    typical="105 C",
    text="temperature rating of the terminal",
    steps=WIRE_CLASSES,
)
SLEEVE_RATING = Nameplate("C", low=40, high=500, typical="125 C", text="rating of the sleeve")
PLACE = Reading(
    "C",
    low=-40,
    high=500,
    typical="60 C",
    text="temperature of the place, with the machine running",
)
STRANDS = Count("strands of the wire; 1 for solid wire", low=1, high=5000)
CUT_STRANDS = Count("strands cut off or broken", low=0, high=5000)
CONNECTOR = OneOf(
    ("butt", "closed-end", "twist-on", "push-on", "ring", "fork"), text="kind of connector"
)


def _pull_standards() -> list[str]:
    return [OWN, *crimps.pull_standards()]


PULL_STANDARD = OneOf(_pull_standards, text="standard to judge by; own: that of the terminal")
TERMINAL = OneOf(crimps.terminal_kinds, text="kind of terminal")
FORCE = Reading("lbf", low=0, high=7000, typical="24 lbf", text="force at which it let go")
LISTED_FOR = OneOf(
    ("stranded", "solid", "either", "combination"),
    text="wire that the maker lists it for; combination: just these wires",
)
ListedFor = Annotated[
    str | None,
    LISTED_FOR,
    extra("stranded wire needs no listing of its own; of solid wire it is asked"),
]

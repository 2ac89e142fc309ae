"""Kinds of outlet: which readings each has, and the volts that they should show."""

from __future__ import annotations

from typing import NamedTuple

from wirecalc import OneOf

_ONE_LINE = ("line_neutral", "line_ground", "neutral_ground")
_TWO_LEGS = ("line_neutral", "second_line_neutral", "line_line")
_PIN = ("other_ground_voltage",)
_MORE = ("line_neutral_loaded", "neutral_ground_loaded", *_PIN)


class Outlet(NamedTuple):
    """Volts from a line to neutral or ground, readings asked for, more of them, volts of lines."""

    leg: float
    reads: tuple[str, ...]
    also: tuple[str, ...] = ()
    between: float | None = None

    @property
    def grounded(self) -> bool:
        """Whether it has a contact for ground."""
        return "line_ground" in self.reads

    @property
    def has_ground(self) -> bool:
        """Whether something in it grounds a case: a contact, or the neutral of three wires."""
        return self.grounded or self.between is not None


KINDS = {
    "120-grounded": Outlet(120.0, _ONE_LINE, _MORE),
    "120-two-slot": Outlet(120.0, ("line_neutral",)),
    "230-grounded": Outlet(230.0, _ONE_LINE, _MORE),
    "230-two-wire": Outlet(230.0, ("line_neutral",)),
    "240-four-wire": Outlet(
        120.0,
        (*_TWO_LEGS, "line_ground", "neutral_ground"),
        ("second_line_ground", *_MORE),
        240.0,
    ),
    "240-neutral": Outlet(120.0, _TWO_LEGS, (), 240.0),
    "240-ground": Outlet(120.0, ("line_ground", "second_line_ground", "line_line"), _PIN, 240.0),
}
TWO_WIRE = tuple(kind for kind, outlet in KINDS.items() if not outlet.has_ground)
OUTLET_KIND = OneOf(
    tuple(KINDS),
    text="contacts of the outlet. 120-grounded, 230-grounded: line, neutral, ground; 120-two-slot, "
    "230-two-wire: no ground; 240-four-wire: two lines, neutral, ground; 240-neutral: two lines "
    "and neutral (older dryer, range); 240-ground: two lines and ground",
)


def having(reading: str) -> str:
    """Return the kinds that have a reading, as a condition."""
    return "outlet_kind=" + "|".join(k for k, outlet in KINDS.items() if reading in outlet.reads)


def where(kinds: tuple[str, ...]) -> str:
    """Return some kinds as a condition."""
    return "outlet_kind=" + "|".join(kinds)

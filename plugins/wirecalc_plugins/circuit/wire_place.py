"""How a building wire lies, and what the NEC's tables let it carry there."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import Item, Problem, Source, Wire, confirmed, not_checked, tables
from wirecalc.trade import conductors, nec_ampacity

RATINGS = (60, 75, 90)  # columns of the ampacity table, C
CONTINUOUS = 1.25  # NEC 210.19(A)(1), 210.20(A): a load of 3 hours or more
TERMINATION = confirmed("nec-110-14", "NEC", "110.14(C)(1)", copies=2)


class WirePlace(NamedTuple):
    """How a building wire lies: classes and ambient in C, current-carrying wires together."""

    wire_class: int
    termination: int
    ambient: float | None
    together: int | None

    @property
    def missing(self) -> tuple[str, ...]:
        """Names of the inputs without which the wire cannot be corrected."""
        values = (("ambient", self.ambient), ("conductors", self.together))
        return tuple(name for name, value in values if value is None)


class Ampacity(NamedTuple):
    """A current in A that a wire carries, and the source of what lowers it most."""

    amps: float
    source: Source


class Ampacities(NamedTuple):
    """Ampacity in A before correction, at most the termination's; corrected, None if unknown."""

    before: float
    corrected: float | None


def column(temperature: float) -> int:
    """Return the column of the ampacity table for a class in C: its own, else the next below.

    >>> column(70.0), column(105.0)
    (60, 90)
    """
    return max((c for c in RATINGS if c <= temperature), default=RATINGS[0])


def too_low(**classes: float | None) -> Iterator[Problem]:
    """Refuse a temperature class that is below the columns of the ampacity table."""
    for name, value in classes.items():
        if value is not None and value < RATINGS[0]:
            yield Problem(
                name,
                f"{value:g} C is below the columns of the ampacity table",
                "write 60 C, 75 C or 90 C as it is printed; building wire is of 60 C at least",
            )


def below(**classes: float | None) -> Iterator[Item]:
    """Say which column was taken for a class that the ampacity table does not have."""
    for name, value in classes.items():
        if value is not None and value not in RATINGS:
            text = f"the table has 60, 75 and 90 C, so the {column(value)} C column was taken"
            yield not_checked(f"{name} of {value:g} C itself", text)


def place_of(
    insulation_class: float,
    termination_temperature: float,
    ambient: float | None,
    conductors: int | None,
) -> WirePlace:
    """Return how a wire lies, from the inputs: temperatures in C, a count."""
    return WirePlace(column(insulation_class), column(termination_temperature), ambient, conductors)


def ampacities(wire: Wire, place: WirePlace) -> Ampacities | None:
    """Return what a building wire carries there; None for a size that the table does not list.

    Past the end of the ambient table it carries nothing.
    """
    own = nec_ampacity.ampacity(wire, place.wire_class)
    at_terminal = nec_ampacity.ampacity(wire, min(place.wire_class, place.termination))
    if own is None or at_terminal is None:
        return None
    before = at_terminal.number("ampacity_A")
    if place.ambient is None:
        return Ampacities(before, None)
    heat = nec_ampacity.ambient_factor(place.wire_class, place.ambient)
    if heat is None:
        return Ampacities(before, 0.0)
    if place.together is None:
        return Ampacities(before, None)
    return Ampacities(before, corrected(own, at_terminal, place, heat).amps)


def corrected(
    own: tables.Row, at_terminal: tables.Row, place: WirePlace, heat: conductors.Factor | None
) -> Ampacity:
    """Return the ampacity after correction, and the source of what lowers it most."""
    bundle = nec_ampacity.count_factor(place.together or 1)
    warm = heat or bundle
    amps = own.number("ampacity_A") * warm.value * bundle.value
    cap = at_terminal.number("ampacity_A")
    if amps >= cap:
        same = place.wire_class <= place.termination
        return Ampacity(cap, own.source if same else TERMINATION)
    return Ampacity(amps, bundle.source if bundle.value < warm.value else warm.source)

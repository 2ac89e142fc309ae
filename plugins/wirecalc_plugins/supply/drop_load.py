"""A load on a run: its currents, and the volts that wire and cord take from it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import Item, figure, not_checked, put
from wirecalc.trade.wire_runs import WirePath, effective

OTHER_LEG = "drop of the other leg"


class DropLoad(NamedTuple):
    """Currents in A; `other_leg` is None where the neutral carries all of this load or none."""

    current: float
    other: float
    other_leg: float | None
    power_factor: float | None

    def ohms(self, loop: complex) -> float:
        """Return the ohms that count: resistance alone where no power factor was given."""
        pf = self.power_factor
        return loop.real if pf is None else effective(loop, pf)

    def in_wire(self, loop: complex) -> float:
        """Return the volts that the building wire takes from this load."""
        one_way, here = self.ohms(loop) / 2, self.current + self.other
        return here * one_way + (here - (self.other_leg or 0.0)) * one_way

    def of_other_leg(self, loop: complex) -> float:
        """Return the volts that the building wire takes from the other leg."""
        other_leg = self.other_leg or 0.0
        return (2 * other_leg - self.current - self.other) * self.ohms(loop) / 2

    def in_cord(self, loop: complex) -> float:
        """Return the volts that the cord takes from this load."""
        return self.current * self.ohms(loop)


def load_of(
    current: float, other: float | None, other_leg: float | None, power_factor: float | None
) -> DropLoad:
    """Return a load of currents in A; a power factor in %."""
    pf = None if power_factor is None else power_factor / 100
    return DropLoad(current, other or 0.0, other_leg, pf)


def drops(load: DropLoad, path: WirePath, in_wire: float, in_cord: float) -> Iterator[Item]:
    """Yield the volts that wire and cord take, and those of the other leg."""
    here, other_leg = load.current + load.other, load.other_leg
    if path.wire is not None:
        loop = load.ohms(path.shared)
        yield figure(
            "drop in the wire",
            in_wire,
            "V",
            working=lambda: (
                f"{put(here)} A x {put(loop)} ohm"
                if other_leg is None
                else f"({put(here, 'A')} + [{put(here, 'A')} - {put(other_leg, 'A')}]) x "
                f"{put(loop / 2, 'ohm')}; {put(loop / 2, 'ohm')} one way"
            ),
        )
    if path.wire is not None and other_leg is not None:
        yield figure(
            "current of the neutral",
            here - other_leg,
            "A",
            working=lambda: f"{put(here, 'A')} - {put(other_leg, 'A')}",
        )
        yield figure(
            OTHER_LEG,
            load.of_other_leg(path.shared),
            "V",
            working=lambda: (
                f"({put(other_leg, 'A')} + [{put(other_leg, 'A')} - {put(here, 'A')}]) x "
                f"{put(loop / 2, 'ohm')}"
            ),
        )
        yield not_checked("a neutral that is thinner than the legs")
    if path.cord is not None:
        ohms = load.ohms(path.lead)
        yield figure(
            "drop in the cord",
            in_cord,
            "V",
            working=lambda: f"{put(load.current)} A x {put(ohms)} ohm",
        )
    yield figure(
        "drop",
        in_wire + in_cord,
        "V",
        working=lambda: f"{put(in_wire, 'V')} + {put(in_cord, 'V')}; wire and cord",
    )

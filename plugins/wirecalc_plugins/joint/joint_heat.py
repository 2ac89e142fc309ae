"""The heat of a joint in service: V I less what the wire between the probes takes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_most,
    figure,
    put,
)

HEAT_W = 1.0  # common practice, no source


class ValueBand(NamedTuple):
    """A value with the ends of its band, all alike where nothing carries an error."""

    value: float
    low: float
    high: float

    @property
    def band(self) -> tuple[float, float]:
        """The ends, as a figure or a criterion takes them."""
        return self.low, self.high


def heat_of(volts: ValueBand, amps: ValueBand, own: ValueBand) -> Iterator[Item]:
    """Judge the heat of the joint alone: V I - R I^2, greatest at I = V / 2R."""
    wire = ValueBand(*(r / 1000 for r in own))
    top = min(max(volts.high / (2 * wire.low), amps.low), amps.high)
    coldest = min(_watts(volts.low, i, wire.high) for i in (amps.low, amps.high))
    heat = ValueBand(
        _watts(volts.value, amps.value, wire.value), coldest, _watts(volts.high, top, wire.low)
    )
    yield figure(
        "heat of the joint alone",
        heat.value,
        "W",
        working=lambda: (
            f"({put(volts.value)} V - {put(wire.value)} ohm x {put(amps.value)} A) x "
            f"{put(amps.value)} A"
            if heat.value > 0
            else "none: the wire alone takes more than was read"
        ),
        band=heat.band,
    )
    yield at_most(
        "heat in the joint",
        heat.value,
        HEAT_W,
        "W",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="joints that glow were reported from 5 W on",
        action="switch off, cut back to bright metal and remake the joint",
        band=heat.band,
    )


def _watts(volts: float, amps: float, ohm: float) -> float:
    return max((volts - ohm * amps) * amps, 0.0)

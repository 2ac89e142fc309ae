"""The volts that are left while a motor starts: a bound, and a model of the motor."""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable, Iterator
from typing import NamedTuple

from wirecalc import PRACTICE, Item, at_or_below, computed, figure, put
from wirecalc.trade.wire_runs import WirePath, volts_at_start

from .path import reactances

LEAST_SHARE = 0.8  # of the plate's volts at a start, 64 % of the torque; common practice
PF_SPAN = (0.5, 0.65, 0.8)  # locked-rotor power factor of a small motor; common practice
COLD_C = 20.0  # a wire that carries nothing between starts, for the highest that may be
LOAD_PF = 0.5  # of other loads, for the highest that may be

_MODEL = computed("impedance", "constant impedance of the motor behind that of the path")
_TORQUE = computed("torque", "torque of an induction motor goes with the square of the volts")


class StartOverPath(NamedTuple):
    """A start over a path: volts at rest and on the plate in V, currents in A.

    `power_factor` is None where it is not known.
    """

    at_rest: float
    plate: float
    locked_rotor: float
    other: float
    power_factor: float | None = None

    @property
    def impedance(self) -> float:
        """Impedance of the motor at standstill, in ohm."""
        return self.plate / self.locked_rotor

    def at_limit(self, volts: float) -> bool:
        """Whether so many volts are enough to start on."""
        return at_or_below(LEAST_SHARE * self.plate, volts)

    @property
    def factors(self) -> tuple[float, ...]:
        """Power factors that the start may have, kindest first."""
        return PF_SPAN if self.power_factor is None else (self.power_factor,)

    def lowest(self, path: WirePath) -> float:
        """Return the bound: all of LRA and of the other loads, in phase with the path."""
        lost = self.locked_rotor * abs(path.whole) + self.other * abs(path.shared)
        return max(self.at_rest - lost, 0.0)

    def modelled(self, path: WirePath, power_factor: float) -> float:
        """Return the volts of the impedance model, the other loads a resistance."""
        motor = cmath.rect(self.impedance, math.acos(power_factor))
        return volts_at_start(self.at_rest, motor, path, self.other)

    def cold(self, path: WirePath) -> WirePath:
        """Return the path at its kindest: cold wire without reactance."""
        cold = path.kindest(min(path.temperature, COLD_C))
        return cold._replace(shared=complex(cold.shared.real), lead=complex(cold.lead.real))

    def lost_inductive(self, cold: WirePath) -> float:
        """Return the volts that the other loads take of the cold wire, if inductive."""
        return min(self.other * cold.shared.real, self.at_rest * LOAD_PF)

    def highest(self, path: WirePath) -> float:
        """Return the kindest there may be: cold wire without reactance, inductive other loads."""
        motor = cmath.rect(self.impedance, math.acos(self.factors[0]))
        cold = self.cold(path)
        lost = self.lost_inductive(cold)
        before = abs(self.at_rest - cmath.rect(lost, -math.acos(LOAD_PF)))
        return before * abs(motor / (motor + cold.whole))


def volts(start: StartOverPath, path: WirePath) -> Iterator[Item]:
    """Yield the band of the volts, what the model gives inside it, and the torque that is left."""
    low = start.lowest(path)
    others = f" - {put(start.other)} A x {put(abs(path.shared))} ohm" if start.other else ""
    yield from reactances(path)
    yield figure(
        "lowest volts at start",
        low,
        "V",
        working=lambda: (
            f"{put(start.at_rest)} V - {put(start.locked_rotor)} A x {put(abs(path.whole))} ohm"
            f"{others}"
            if low > 0
            else "nothing is left: the whole of the volts would be lost on the way"
        ),
    )
    share = f"{put(low, 'V')} / {put(start.plate, 'V')}"
    yield figure(
        "lowest share of the plate", 100 * low / start.plate, "%", working=lambda: f"100 x {share}"
    )
    yield figure(
        "torque at the lowest volts",
        100 * (low / start.plate) ** 2,
        "%",
        source=_TORQUE,
        working=lambda: f"100 x ({share})^2",
    )
    yield from _modelled(start, path)


def _modelled(start: StartOverPath, path: WirePath) -> Iterator[Item]:
    """Yield what the model gives for each power factor, and the kindest there may be."""
    for factor in start.factors:
        yield figure(
            f"volts at start, power factor {factor:g}",
            start.modelled(path, factor),
            "V",
            source=PRACTICE if start.power_factor is None else _MODEL,
            working=_working(start, path, factor, _before(start, path)),
        )
    kindest = start.cold(path)
    yield figure(
        "highest volts at start, cold wire",
        start.highest(path),
        "V",
        source=_MODEL,
        working=_working(start, kindest, start.factors[0], _before_kindest(start, kindest)),
    )


def _working(start: StartOverPath, path: WirePath, factor: float, before: str) -> Callable[[], str]:
    """Put in the volts before the start, and the share of them that the motor has."""

    def write() -> str:
        motor = put(start.impedance, "ohm")
        along = f"{motor} x {put(factor)} + {put(path.whole.real, 'ohm')}"
        across = f"{motor} x sqrt(1 - {put(factor)}^2)"
        if path.whole.imag:
            across += f" + {put(path.whole.imag, 'ohm')}"
        return f"{before} x {motor} / sqrt(({along})^2 + ({across})^2)"

    return write


def _before(start: StartOverPath, path: WirePath) -> str:
    """Put in the volts that the other loads leave, in phase with them."""
    if not start.other:
        return put(start.at_rest, "V")
    left = f"({put(start.at_rest, 'V')} - {put(start.other, 'A')} x {put(path.shared.real, 'ohm')})"
    if not path.shared.imag:
        return left
    across = f"({put(start.other, 'A')} x {put(path.shared.imag, 'ohm')})"
    return f"sqrt({left}^2 + {across}^2)"


def _before_kindest(start: StartOverPath, cold: WirePath) -> str:
    """Put in the volts that inductive other loads leave."""
    lost = start.lost_inductive(cold)
    if not lost:
        return put(start.at_rest, "V")
    along = f"({put(start.at_rest, 'V')} - {put(lost, 'V')} x {LOAD_PF})"
    return f"sqrt({along}^2 + ({put(lost, 'V')})^2 x (1 - {LOAD_PF}^2))"

"""Runs of wire to a load: resistance and reactance of a length, and the volts that are left.

A run is two conductors, there and back: its loop is twice its length. Resistance is that of NEC
Chapter 9 Table 8 at 75 C, the limit of IEC 60228 for a metric wire, and that of the IACS for any
other that the tables do not list.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import NamedTuple

from ..published.sources import Source, computed
from ..published.tables import load
from ..typed.wires import Wire, gauge_name
from .conductors import greatest_resistance, known_gauge, resistance

TABLE_C = 75.0  # temperature of Table 8
KFT_PER_KM = 1 / 0.3048
# per K at 75 C; 0.00393 and 0.00403 at 20 C (table metals) come to the same at 75 C
ALPHA_75 = {"copper": 0.00323, "aluminium": 0.00330}
_ALPHA = "Chapter 9, Table 8, corrected with 0.00323 (copper) or 0.00330 (aluminium) per K"
_IACS = computed(
    "iacs", "IACS resistivity over the area of the wire", "a stranded wire 2 % longer by its lay"
)
_SLACK = 0.025  # the metal that a metric wire may lack of the gauge whose reactance it takes


class PerLength(NamedTuple):
    """A value of one conductor, in ohm per 1000 ft, and where it comes from."""

    ohm_per_kft: float
    source: Source


def known_metal(wire: Wire) -> bool:
    """Whether the resistance of this metal is known: not that of copper-clad aluminium."""
    return wire.metal in ALPHA_75


def resistance_per_length(wire: Wire, temperature: float = TABLE_C) -> PerLength:
    """Return the dc resistance of one conductor at a temperature in C.

    >>> from wirecalc.typed.wires import read_wire
    >>> resistance_per_length(read_wire("14 AWG")).ohm_per_kft
    3.14

    A coated wire has the coated column, of one copy. A metric wire has the most that IEC 60228
    lets it have. What neither lists (other strandings and sizes, solid over 8 AWG) is computed.
    Raises TableError for copper-clad aluminium.
    """
    metric = greatest_resistance(wire, temperature)
    if metric is not None:
        source = metric.source
        if temperature != 20:
            source = source._replace(where=f"{source.where}, corrected for the temperature")
        return PerLength(metric.value / KFT_PER_KM, source)
    build = "stranded" if wire.stranded else "solid"
    gauge = known_gauge(wire)
    row = load("nec-ch9-table8").find(awg=gauge, stranding=build)
    if row is None or not known_metal(wire):
        return PerLength(resistance(wire, temperature) / KFT_PER_KM, _IACS)
    coated = wire.metal == "copper" and wire.coating != "bare"
    column = (
        "copper_coated" if coated else {"copper": "copper_uncoated"}.get(wire.metal, wire.metal)
    )
    source = row.source._replace(copies=1) if coated else row.source
    if temperature != TABLE_C:
        source = source._replace(where=_ALPHA)
    factor = 1 + ALPHA_75[wire.metal] * (temperature - TABLE_C)
    return PerLength(row.number(f"{column}_ohm_per_kft") * factor, source)


def least_resistance_per_length(wire: Wire, temperature: float = TABLE_C) -> PerLength:
    """Return the least that is expected of one conductor: a metric wire may hold its whole area."""
    if wire.nominal_mm2 is None:
        return resistance_per_length(wire, temperature)
    return PerLength(resistance(wire, temperature) / KFT_PER_KM, _IACS)


def reactance_per_length(wire: Wire) -> PerLength | None:
    """Return the 60 Hz reactance of one conductor, NEC Chapter 9 Table 9 (PVC conduit).

    A size that is not listed has that of the next thinner one; None under 14 AWG, where the table
    ends and reactance is under 2 % of resistance.
    """
    table = load("nec-ch9-table9")
    own = wire.area_cmil / (1 - _SLACK)
    exact = 36 - 19.5 * math.log(own / 25) / math.log(92)  # the AWG law, turned round
    for number in range(max(math.ceil(exact), -3), 15):
        row = table.find(awg=gauge_name(number))
        if row is not None:
            return PerLength(row.number("reactance_ohm_per_kft"), row.source)
    return None


class WireRun(NamedTuple):
    """A length of wire to a load: building wire or cord, in ft one way.

    `least` takes the least resistance that is expected of it, in place of the greatest. `printed`,
    a function of C, stands in place of the tables where the resistance of a length is known.
    """

    wire: Wire
    length_ft: float
    least: bool = False
    printed: Callable[[float], PerLength] | None = None

    def per_length(self, temperature: float) -> PerLength:
        """Return the resistance of one conductor, in ohm per 1000 ft."""
        if self.printed is not None:
            return self.printed(temperature)
        known = least_resistance_per_length if self.least else resistance_per_length
        return known(self.wire, temperature)

    def one_way(self, temperature: float) -> float:
        """Return the resistance of one conductor, in ohm."""
        return self.per_length(temperature).ohm_per_kft * self.length_ft / 1000

    def loop(self, temperature: float) -> float:
        """Return the resistance there and back, in ohm."""
        return 2 * self.one_way(temperature)

    def loop_impedance(self, temperature: float) -> complex:
        """Return resistance and 60 Hz reactance there and back, in ohm."""
        x = reactance_per_length(self.wire)
        reactance = 0.0 if x is None else 2 * x.ohm_per_kft * self.length_ft / 1000
        return complex(self.loop(temperature), reactance)


class WirePath(NamedTuple):
    """The way to the plug: building wire, then cord; None where there is none.

    `shared` is the impedance of the building wire's loop in ohm, which other loads share, `lead`
    that of the cord's. Made by `path`.
    """

    wire: WireRun | None
    cord: WireRun | None
    temperature: float
    shared: complex
    lead: complex

    @property
    def runs(self) -> tuple[WireRun, ...]:
        """Return the runs that there are."""
        return tuple(run for run in (self.wire, self.cord) if run is not None)

    @property
    def whole(self) -> complex:
        """Impedance of the whole loop to the load, in ohm."""
        return self.shared + self.lead

    def kindest(self, temperature: float) -> WirePath:
        """Return the same path at another temperature in C, of the least resistance expected."""
        wire, cord = (
            None if run is None else run._replace(least=True) for run in (self.wire, self.cord)
        )
        return path(wire, cord, temperature)


def path(wire: WireRun | None, cord: WireRun | None, temperature: float = TABLE_C) -> WirePath:
    """Return the way to the plug over building wire and cord, at a temperature in C."""
    shared, lead = (0j if run is None else run.loop_impedance(temperature) for run in (wire, cord))
    return WirePath(wire, cord, temperature, shared, lead)


def effective(impedance: complex, power_factor: float) -> float:
    """Return R x pf + X x sin(phi), the ohms by which a lagging load's current lowers the volts.

    NEC Chapter 9 Table 9 note 2.
    """
    return impedance.real * power_factor + impedance.imag * math.sqrt(1 - power_factor**2)


def volts_at_start(
    at_rest: float, motor: complex, way: WirePath, other: complex | float = 0.0
) -> float:
    """Return the volts at a motor at standstill, fed over a path.

    `motor` is its impedance in ohm; `other` the current in A of other loads on the building wire,
    as it flows before the start. |V0 - other x Zshared| x |Zmotor / (Zmotor + Zpath)|
    """
    return abs(at_rest - other * way.shared) * abs(motor / (motor + way.whole))

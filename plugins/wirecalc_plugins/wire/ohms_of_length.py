"""What a length of conductor has in ohm: by its size, or as it is printed."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from wirecalc import MAKER, Source, Wire, computed, tables
from wirecalc.trade.conductors import known_gauge
from wirecalc.trade.wire_runs import (
    KFT_PER_KM,
    PerLength,
    known_metal,
    least_resistance_per_length,
    resistance_per_length,
)

METAL_ROWS = {"copper": "annealed copper, IACS", "aluminium": "aluminium 1350, 61 % IACS"}
CLAD_ROWS = tuple(f"copper-clad aluminium, {share} % copper by volume" for share in (10, 15))
LAY = 1.02  # a stranded wire is 2 % longer by its lay; common practice
BASE_C = 20.0
_MIL_PER_IN = 1000.0
_RISE = computed("alpha-20", "table metals", "corrected with its coefficient per K")

At = Callable[[float], PerLength]


class Conductor(NamedTuple):
    """Most and least ohm of a length of one conductor, each as a function of C.

    `fixed_at` is the one temperature at which it is known, where no metal says how it rises.
    """

    most: At
    least: At
    fixed_at: float | None = None
    metal: str | None = None

    def warm(self, ohm_per_kft: float, at: At) -> float:
        """Return the temperature in C at which a length has these ohms; they rise on a line."""
        cold, hot = at(BASE_C).ohm_per_kft, at(BASE_C + 100).ohm_per_kft
        return BASE_C + 100 * (ohm_per_kft - cold) / (hot - cold)


def conductor_of(
    wire: Wire | None,
    ohm_per_kft: float | None,
    nohm_m: float | None,
    known_at: float,
    metal: str | None,
) -> Conductor | None:
    """Return the conductor as it was given; None where neither size nor ohms were."""
    if ohm_per_kft is not None:
        return _printed(ohm_per_kft, MAKER, known_at, metal)
    if wire is None:
        return None
    return of_wire(wire) if nohm_m is None else of_resistivity(wire, nohm_m, known_at, metal)


def of_wire(wire: Wire) -> Conductor:
    """Return the ohms of a wire by the tables: its size, metal, stranding and coating."""
    if not known_metal(wire):
        most, least = (_of_row(tables.load("metals").row(metal=name), wire) for name in CLAD_ROWS)
        return Conductor(most, least, metal=wire.metal)
    tinned = _tinned(wire)
    if tinned is not None:
        by_band = _of_row(tinned, wire)
        return Conductor(by_band, by_band, metal=wire.metal)
    return Conductor(
        lambda celsius: resistance_per_length(wire, celsius),
        lambda celsius: least_resistance_per_length(wire, celsius),
        metal=wire.metal,
    )


def of_resistivity(wire: Wire, nohm_m: float, known_at: float, metal: str | None) -> Conductor:
    """Return resistivity over the area of a wire; the lay of strands is not in it."""
    law = computed("rho-over-area", "resistivity over area", "R = rho x l / A")
    return _printed(nohm_m / wire.area_mm2 / KFT_PER_KM, law, known_at, metal)


def rise(metal: str, celsius: float) -> float:
    """Return how many times the ohms of 20 C a metal has at a temperature in C (table metals)."""
    row = tables.load("metals").row(metal=METAL_ROWS.get(metal, CLAD_ROWS[0]))
    return 1 + row.number("alpha_20C_per_K") * (celsius - BASE_C)


def _printed(ohm_per_kft: float, source: Source, known_at: float, metal: str | None) -> Conductor:
    def at(celsius: float) -> PerLength:
        if metal is None or celsius == known_at:
            return PerLength(ohm_per_kft, source)
        return PerLength(ohm_per_kft * rise(metal, celsius) / rise(metal, known_at), _RISE)

    return Conductor(at, at, known_at if metal is None else None, metal)


def _of_row(row: tables.Row, wire: Wire) -> At:
    """Return the law of a row of the table metals over the area of a wire."""
    at_20 = row.number("resistivity_20C_ohm_m") * 1e9 / wire.area_mm2 / KFT_PER_KM
    lay, alpha = (LAY if wire.stranded else 1.0), row.number("alpha_20C_per_K")
    return lambda celsius: PerLength(at_20 * lay * (1 + alpha * (celsius - BASE_C)), row.source)


def _tinned(wire: Wire) -> tables.Row | None:
    """Return the band of ASTM B33 of a tinned wire that neither Table 8 nor IEC 60228 lists."""
    build = "stranded" if wire.stranded else "solid"
    listed = tables.load("nec-ch9-table8").find(awg=known_gauge(wire), stranding=build)
    if wire.coating != "tinned" or wire.metal != "copper" or listed or wire.nominal_mm2:
        return None
    cmil = wire.strand_cmil or (wire.area_cmil if not wire.stranded else _usual_strand(wire))
    inches = cmil**0.5 / _MIL_PER_IN
    bands: Sequence[tables.Row] = [
        r for r in tables.load("metals").rows if r.text("metal").startswith("tinned")
    ]
    return next((r for r in bands if inches >= _thin_end(r)), bands[-1])


def _usual_strand(wire: Wire) -> float:
    """Return the thinnest strand listed of a gauge, in cmil: it has the most ohms."""
    rows = tables.load("strandings").where(awg=known_gauge(wire))
    counts = [r.number("strands") for r in rows]
    return wire.area_cmil / max(counts, default=7.0)


def _thin_end(row: tables.Row) -> float:
    return float(row.text("metal").removesuffix(" in").rsplit(" to ", 1)[1])

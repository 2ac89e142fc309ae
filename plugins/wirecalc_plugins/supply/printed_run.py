"""The run to the receptacle, where the resistance of a length of it is printed."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from wirecalc import CMIL_PER_MM2, Item, Problem, Wire, cannot_tell, tables
from wirecalc.trade.wire_runs import KFT_PER_KM, PerLength

from ..wire.ohms_of_length import BASE_C, METAL_ROWS, conductor_of, rise
from .path import DROP

COPPER = "copper"
UNKNOWN_SIZE = "its size was not given; read it on the jacket (ampacity)"


class PrintedRun(NamedTuple):
    """The wire of a run, and its ohms as a function of C; None where the tables have them.

    A wire of which ohms alone are known is as thick as that much metal is.
    """

    wire: Wire | None
    per_length: Callable[[float], PerLength] | None = None


def printed_run(
    wire: Wire | None,
    ohm_per_kft: float | None,
    nohm_m: float | None,
    known_at: float | None,
    metal: str | None,
) -> PrintedRun:
    """Return the wire of a run with what was printed of it, at 20 C if not said otherwise."""
    if ohm_per_kft is None and (wire is None or nohm_m is None):
        return PrintedRun(wire)
    of = (metal or COPPER) if wire is None else wire.metal
    known_at = BASE_C if known_at is None else known_at
    conductor = conductor_of(wire, ohm_per_kft, nohm_m, known_at, of)
    if conductor is None or of not in METAL_ROWS:
        return PrintedRun(wire)
    if wire is None and ohm_per_kft is not None:
        wire = _as_thick(ohm_per_kft, known_at, of)
    return PrintedRun(wire, conductor.most)


def metal_unknown() -> Item:
    """Say that a printed resistance of an unknown metal tells no drop."""
    return cannot_tell(
        DROP,
        "conductor_metal was not given, by which the ohms rise with temperature",
        measure="scrape it: copper is red through; the jacket of aluminium says AL",
        needs=("conductor_metal",),
    )


def _as_thick(ohm_per_kft: float, known_at: float, metal: str) -> Wire:
    """Return a wire whose metal has so many ohms."""
    row = tables.load("metals").row(metal=METAL_ROWS[metal])
    nohm_m = row.number("resistivity_20C_ohm_m") * 1e9 * rise(metal, known_at)
    size = f"wire of {ohm_per_kft:.4g} ohm/kft"
    cmil = nohm_m / (ohm_per_kft * KFT_PER_KM) * CMIL_PER_MM2
    return Wire(size, cmil, stranded=False, metal=metal, size=size)


def wrong_print(
    wire: Wire | None,
    ohm_per_kft: float | None,
    nohm_m: float | None,
    known_at: float | None,
    metal: str | None,
) -> Iterator[Problem]:
    """Refuse a printed resistance beside the wire in whose place it stands, and what goes alone."""
    if wire is not None and ohm_per_kft is not None:
        yield Problem(
            "resistance_per_length",
            "it stands in place of building_wire, and both were given",
            "give building_wire alone, or resistance_per_length alone",
        )
    if known_at is not None and ohm_per_kft is None and nohm_m is None:
        yield Problem(
            "known_at",
            "it goes with a printed resistance, and none was given",
            "give resistance_per_length or resistivity; a run is as warm as conductor_temperature",
        )
    if metal is not None and ohm_per_kft is None:
        yield Problem(
            "conductor_metal",
            "it goes with resistance_per_length, and a wire says its own metal",
            "write it with the wire: 12 AWG aluminum",
        )

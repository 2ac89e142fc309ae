"""Crimps: the least pull-out force that a standard asks for, and what the wire itself can bear.

A terminal's own standard judges it. Crimps and clamps are two families, kept apart: from 18 AWG
up a clamp's minima are three to five times lower.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from ..published.sources import Confidence, Source, confirmed, from_memory
from ..published.tables import Row, Table, load
from ..said.verdicts import at_or_below
from ..typed.wires import Wire
from .conductors import known_gauge, square_inches

NEWTONS_PER_LBF = 4.4482216152605  # exact, NIST SP 811 (2008) appendix B
SOFT_COPPER_PSI = (31_000.0, 40_000.0)
SOFT_COPPER_FROM = confirmed(
    "soft-copper-least",
    "a conductor maker's comparison of stranded wire",
    "least breaks of soft copper of 22, 24 and 26 AWG, 31.0 to 31.3 ksi",
    copies=1,
)
SOFT_COPPER_TO = from_memory("soft-copper-most", "tensile strength of annealed copper, to 40 ksi")
AREA_AS_PRINTED = 0.015  # a listed 0.82 or 2.1 mm2 is 18 or 14 AWG, printed to two digits
CLAMP_STANDARDS = ("ul-486e", "iec-60999-1")
CRIMP_STANDARDS = ("ul-486a", "ul-310", "ul-486c", "as7928", "iec-60352-2", "nasa-8739-4")
CONFIRMED = "ul-486a"  # the crimp ladder that was seen in copies

# kind of terminal -> the standard of its family (each terminal's own product standard)
TERMINALS = {
    "ring": "ul-486a",
    "fork": "ul-486a",
    "lug": "ul-486a",
    "push-on": "ul-310",
    "butt": "ul-486c",
    "closed-end": "ul-486c",
    "clamp": "ul-486e",
}


def terminal_kinds() -> list[str]:
    """Return the kinds of terminal that a pull can be judged for."""
    return list(TERMINALS)


def crimp_kinds() -> list[str]:
    """Return the kinds of terminal that are crimped."""
    return [kind for kind in TERMINALS if kind != "clamp"]


def pull_standards() -> list[str]:
    """Return the standards that have a pull table here."""
    return [*CRIMP_STANDARDS, *CLAMP_STANDARDS]


def same_family(terminal: str, standard: str) -> bool:
    """Whether a standard's table may judge a kind of terminal: crimps and clamps never mix."""
    return (terminal == "clamp") == (standard in CLAMP_STANDARDS)


class PullMinimum(NamedTuple):
    """The least pull-out force of a wire size, in lbf.

    `above` is the minimum of the next larger listed size where the wire itself is not listed
    and lies between two sizes; then the standard has no value for it.
    """

    lbf: float
    source: Source
    written_in: str = "lbf"
    above: float | None = None
    note: str = ""

    def decides(self, force: float) -> float | None:
        """Return the least force in lbf by which a force is judged.

        None where the wire lies between two listed sizes and the force between their minima.
        """
        if self.above is None or not at_or_below(self.lbf, force):
            return self.lbf
        return self.above if at_or_below(self.above, force) else None


def pull_minimum(wire: Wire, standard: str) -> PullMinimum | None:
    """Return the published least pull-out force; None where the standard says nothing.

    A pair of printed units is taken in the unit that the source is written in. Source: tables
    pull-crimp and pull-clamp.
    """
    name = "pull-clamp" if standard in CLAMP_STANDARDS else "pull-crimp"
    table, gauge = load(name), known_gauge(wire)
    if gauge is not None and (listed := table.made(_listed, standard, wire.metal, gauge)):
        return listed
    return _between(wire, table.made(_of_metal, standard, wire.metal))


def judging_minimum(wire: Wire, standard: str) -> PullMinimum | None:
    """Return what judges a crimp by a standard: its own minimum, or the same one where it was seen.

    A minimum from memory that UL 486A has too, to the digit, is judged by UL 486A.
    """
    own = pull_minimum(wire, standard)
    if own is None or own.source.confidence is not Confidence.MEMORY:
        return own
    seen = pull_minimum(wire, CONFIRMED)
    same = seen is not None and (seen.lbf, seen.above) == (own.lbf, own.above)
    return seen if same else own


def careful_minimum(wire: Wire, standard: str) -> float | None:
    """Return the force in lbf below which a kept minimum calls for care; None where none does.

    A splice by UL 486C, from memory, holds half of what UL 486A asks of a terminal.
    """
    seen = pull_minimum(wire, CONFIRMED) if standard == "ul-486c" else None
    return None if seen is None else seen.above or seen.lbf


def _listed(table: Table, standard: str, metal: str, gauge: str) -> PullMinimum | None:
    rows = table.made(_of_metal, standard, metal)
    return next((_minimum(row) for row in rows if row.cells["awg"] == gauge), None)


def _of_metal(table: Table, standard: str, metal: str) -> Sequence[Row]:
    rows = table.where(standard=standard)
    return tuple(row for row in rows if row.cells.get("metal", "copper") == metal)


def _minimum(row: Row, above: Row | None = None) -> PullMinimum:
    unit = row.text("judged_in")
    return PullMinimum(
        _lbf(row), row.source, unit, None if above is None else _lbf(above), row.note
    )


def _lbf(row: Row) -> float:
    if row.text("judged_in") == "N":
        return row.number("minimum_N") / NEWTONS_PER_LBF
    return row.number("minimum_lbf")


def _between(wire: Wire, rows: Sequence[Row]) -> PullMinimum | None:
    """Find a wire by its area: a listed one, or the two listed sizes that it lies between."""
    sized = sorted(
        (r for r in rows if r.cells["area_mm2"] is not None), key=lambda r: r.number("area_mm2")
    )
    for row in sized:
        if abs(row.number("area_mm2") / wire.area_mm2 - 1) <= AREA_AS_PRINTED:
            return _minimum(row)
    smaller = [r for r in sized if r.number("area_mm2") <= wire.area_mm2]
    larger = [r for r in sized if r.number("area_mm2") > wire.area_mm2]
    return _minimum(smaller[-1], larger[0]) if smaller and larger else None


def breaking_force(wire: Wire) -> tuple[float, float]:
    """Return what a soft copper wire itself bears before it breaks, low and high, in lbf.

    Area times 31 to 40 ksi; the most that a pull on its crimp can reach. The lower end is the
    least that was printed for soft copper strands, the upper one from memory.
    """
    area = square_inches(wire.area_cmil)
    low, high = SOFT_COPPER_PSI
    return area * low, area * high

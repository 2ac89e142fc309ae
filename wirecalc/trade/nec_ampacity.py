"""The current that the NEC lets a conductor carry, its factors, and the breaker of a small wire."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence

from ..published.tables import Cell, Row, Table, load
from ..typed.wires import GAUGES, Wire, gauge_number
from .conductors import Factor, counted_gauge

NEC_EDITION = "2011-2023"


def ampacity(wire: Wire, rating: int) -> Row | None:
    """Return the row of NEC Table 310.16 for a wire and an insulation class of 60, 75 or 90 C.

    At 30 C ambient and up to three current-carrying conductors. A size that is not listed is
    taken as the next thinner one that is, a metric one too. None where there is none.
    """
    return _listed(_ampacities(wire, rating), wire)


def thinnest_ampacity(wire: Wire, rating: int) -> Row | None:
    """Return the row of the thinnest listed size, if the wire is thinner; it carries no more."""
    rows = _ampacities(wire, rating)
    gauge = counted_gauge(wire)
    return rows[-1] if rows and gauge is not None and _listed(rows, wire) is None else None


def _ampacities(wire: Wire, rating: int) -> Sequence[Row]:
    metal = "copper" if wire.metal == "copper" else "aluminium"
    return _by_gauge("nec-ampacity", edition=NEC_EDITION, metal=metal, rating_C=rating)


def _by_gauge(table: str, **cells: Cell) -> Sequence[Row]:
    """Return the rows of a table that hold these cells and have a gauge, thick to thin."""
    return load(table).made(_made_by_gauge, *cells.items())


def _made_by_gauge(table: Table, *cells: tuple[str, Cell]) -> Sequence[Row]:
    return tuple(_thick_to_thin(table.where(**dict(cells))))


def _thick_to_thin(rows: Iterable[Row]) -> list[Row]:
    gauged = (r for r in rows if r.text("awg") in GAUGES)
    return sorted(gauged, key=lambda r: gauge_number(r.text("awg")))


def _listed(rows: Sequence[Row], wire: Wire) -> Row | None:
    """Return the row of a wire's gauge, or of the next thinner gauge among rows thick to thin."""
    gauge = counted_gauge(wire)
    if gauge is None:
        return None
    own = gauge_number(gauge)
    at = bisect_left(rows, own, key=lambda row: gauge_number(row.text("awg")))
    return rows[at] if at < len(rows) else None


def ambient_factor(rating: int, ambient: float) -> Factor | None:
    """Return the correction for an ambient temperature in C; None above the end of the table.

    Between two printed bands (40.5 C) the hotter one counts. Source: table nec-ambient, 30 C.
    """
    for row in load("nec-ambient").where(basis_C=30, rating_C=rating):
        if row.cells["to_C"] is None or ambient <= row.number("to_C"):
            return Factor(row.number("factor"), row.source)
    return None


def hottest_factor(rating: int) -> Factor:
    """Return the last factor of the table for an insulation class; above it there is none."""
    row = list(load("nec-ambient").where(basis_C=30, rating_C=rating))[-1]
    return Factor(row.number("factor"), row.source)


def count_factor(conductors: int) -> Factor:
    """Return the adjustment for current-carrying conductors in one raceway or cable.

    Source: table nec-conductor-count.
    """
    rows = load("nec-conductor-count").where(applies_to="raceway or cable")
    for row in rows:
        last = row.cells["to_count"]
        if last is None or conductors <= row.number("to_count"):
            return Factor(row.number("percent") / 100, row.source)
    raise AssertionError("the last band of nec-conductor-count is open")


def small_conductor_breaker(wire: Wire) -> Row | None:
    """Return the row of NEC 240.4(D) for a wire, None where the rule has none.

    The rule holds for 10 AWG and thinner; a size that is not listed is taken as the next thinner.
    """
    rows = _by_gauge("nec-small-conductors", metal=wire.metal)
    gauge = counted_gauge(wire)
    if not rows or gauge is None or gauge_number(gauge) < gauge_number(rows[0].text("awg")):
        return None
    return _listed(rows, wire)


def thinnest_breaker(wire: Wire) -> Row | None:
    """Return the row of the thinnest wire in NEC 240.4(D), if this wire is thinner still."""
    rows = _by_gauge("nec-small-conductors", metal=wire.metal)
    gauge = counted_gauge(wire)
    return rows[-1] if rows and gauge is not None and _listed(rows, wire) is None else None


def cord_ampacity(wire: Wire, current_carrying: int) -> Row | None:
    """Return the row of NEC Table 400.5(A)(1) for a flexible cord with two or three live wires.

    A size that is not listed is taken as the next thinner one that is.
    """
    word = {2: "two", 3: "three"}.get(current_carrying)
    if wire.metal != "copper":
        return None
    return _listed(_by_gauge("cords", use=f"cord, {word} current-carrying"), wire)


def listed_size(rows: Iterable[Row], wire: Wire) -> Row | None:
    """Return the row of a wire's gauge out of rows by gauge, else that of the next thinner one.

    None for a wire that is thinner than all of them.
    """
    return _listed(_thick_to_thin(rows), wire)

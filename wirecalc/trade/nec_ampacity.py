"""The current that the NEC lets a conductor carry, its factors, and the breaker of a small wire."""

from __future__ import annotations

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
    gauge = counted_gauge(wire)
    if gauge is None:
        return None
    return load("nec-ampacity").made(_ampacity, gauge, wire.metal, rating)


def _ampacity(table: Table, gauge: str, metal: str, rating: int) -> Row | None:
    return table.made(_made_at, gauge, *_column(metal, rating).items())


def thinnest_ampacity(wire: Wire, rating: int) -> Row | None:
    """Return the row of the thinnest listed size, if the wire is thinner; it carries no more."""
    cells = _column(wire.metal, rating)
    rows = _by_gauge("nec-ampacity", **cells)
    gauge = counted_gauge(wire)
    listed = _in_table("nec-ampacity", wire, **cells)
    return rows[-1] if rows and gauge is not None and listed is None else None


def _column(metal: str, rating: int) -> dict[str, Cell]:
    listed = "copper" if metal == "copper" else "aluminium"
    return {"edition": NEC_EDITION, "metal": listed, "rating_C": rating}


def _by_gauge(table: str, **cells: Cell) -> Sequence[Row]:
    """Return the rows of a table that hold these cells and have a gauge, thick to thin."""
    return load(table).made(_made_by_gauge, *cells.items())


def _made_by_gauge(table: Table, *cells: tuple[str, Cell]) -> Sequence[Row]:
    return tuple(_thick_to_thin(table.where(**dict(cells))))


def _thick_to_thin(rows: Iterable[Row]) -> list[Row]:
    gauged = (r for r in rows if r.text("awg") in GAUGES)
    return sorted(gauged, key=lambda r: gauge_number(r.text("awg")))


def _in_table(table: str, wire: Wire, **cells: Cell) -> Row | None:
    """Return the row of a wire's gauge, or of the next thinner one that is listed."""
    gauge = counted_gauge(wire)
    return None if gauge is None else load(table).made(_made_at, gauge, *cells.items())


def _made_at(table: Table, gauge: str, *cells: tuple[str, Cell]) -> Row | None:
    return _at(table.made(_made_by_gauge, *cells), gauge)


def _at(thick_to_thin: Sequence[Row], gauge: str) -> Row | None:
    own = gauge_number(gauge)
    return next((row for row in thick_to_thin if gauge_number(row.text("awg")) >= own), None)


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
    gauge = counted_gauge(wire)
    if gauge is None:
        return None
    return load("nec-small-conductors").made(_small_breaker, gauge, wire.metal)


def _small_breaker(table: Table, gauge: str, metal: str) -> Row | None:
    rows = table.made(_made_by_gauge, ("metal", metal))
    if not rows or gauge_number(gauge) < gauge_number(rows[0].text("awg")):
        return None
    return _at(rows, gauge)


def thinnest_breaker(wire: Wire) -> Row | None:
    """Return the row of the thinnest wire in NEC 240.4(D), if this wire is thinner still."""
    rows = _by_gauge("nec-small-conductors", metal=wire.metal)
    gauge = counted_gauge(wire)
    return rows[-1] if rows and gauge is not None and _at(rows, gauge) is None else None


def cord_ampacity(wire: Wire, current_carrying: int) -> Row | None:
    """Return the row of NEC Table 400.5(A)(1) for a flexible cord with two or three live wires.

    A size that is not listed is taken as the next thinner one that is.
    """
    word = {2: "two", 3: "three"}.get(current_carrying)
    if wire.metal != "copper":
        return None
    return _in_table("cords", wire, use=f"cord, {word} current-carrying")


def listed_size(rows: Iterable[Row], wire: Wire) -> Row | None:
    """Return the row of a wire's gauge out of rows by gauge, else that of the next thinner one.

    None for a wire that is thinner than all of them.
    """
    gauge = counted_gauge(wire)
    return None if gauge is None else _at(_thick_to_thin(rows), gauge)

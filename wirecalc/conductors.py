"""Conductors: which gauge a wire is, its resistance, and the current that the code lets it carry.

Everything published is looked up in the tables; what is not there is None or raises TableError,
never an extrapolation.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from .rounding import put
from .sources import Source, computed
from .tables import Cell, Row, Table, load
from .wires import GAUGES, Wire, gauge_cmil, gauge_number

NEC_EDITION = "2011-2023"
STRANDING_SLACK = (
    0.025  # the copper that a standard stranding may lack of its gauge; table strandings
)
AWG_LAW = computed("astm-b258", "ASTM B258", "the AWG law: 5 mil x 92^((36 - n) / 39)")


class Factor(NamedTuple):
    """A published factor and where it stands."""

    value: float
    source: Source


def known_gauge(wire: Wire) -> str | None:
    """Return the gauge of a wire: as named, or that of a standard stranding of the same strands.

    >>> from wirecalc.wires import read_wire
    >>> known_gauge(read_wire("19x32 AWG")), known_gauge(read_wire("1.5 mm2"))
    ('20', None)

    A metric wire and an odd stranding have none. Source: table strandings.
    """
    if wire.gauge is not None:
        return wire.gauge
    if wire.strands is None or wire.strand_cmil is None:
        return None
    for row in load("strandings").where(strands=wire.strands):
        same_strand = gauge_cmil(gauge_number(row.text("strand_awg")))
        if abs(wire.strand_cmil / same_strand - 1) <= STRANDING_SLACK:
            return row.text("awg")
    return None


def gauge_for_current(wire: Wire) -> str | None:
    """Return the gauge by which a wire's current is judged: its own, else the next thinner one.

    A wire within 2.5 % below a gauge counts as that gauge, since standard strandings are; None
    for a metric wire, whose own tables rule, and for one thinner than 40 AWG.
    """
    if wire.nominal_mm2 is not None:
        return None
    known = known_gauge(wire)
    if known is not None:
        return known
    full = wire.area_cmil / (1 - STRANDING_SLACK)
    return next((g for g in GAUGES if gauge_cmil(gauge_number(g)) <= full), None)


def counted_gauge(wire: Wire) -> str | None:
    """Return the gauge that a wire counts as in a table by gauge: a metric one as the next thinner.

    >>> from wirecalc.wires import read_wire
    >>> counted_gauge(read_wire("1.5 mm2")), counted_gauge(read_wire("19x32 AWG"))
    ('16', '20')

    None for a wire thinner than 40 AWG. IEC 60228 sets the resistance of a metric size and not its
    area; from 0.5 to 25 mm2 it is at most 2 % above that of the gauge named here, stranded.
    """
    if wire.nominal_mm2 is None:
        return gauge_for_current(wire)
    return next((g for g in GAUGES if gauge_cmil(gauge_number(g)) <= wire.area_cmil), None)


def resistance(wire: Wire, temperature: float = 20.0) -> float:
    """Return the resistance of one wire of a length, in ohm/km, at a temperature in C.

    Resistivity and temperature coefficient from the table metals (IACS copper 17.241 nohm m,
    0.00393 per K; aluminium 61 % IACS); a stranded wire is 2 % longer by its lay (common
    practice). Coatings are not counted: a tinned wire is up to 4 % higher.

    Raises TableError for copper-clad aluminium, of which no value was seen.
    """
    metal = {"copper": "annealed copper, IACS", "aluminium": "aluminium 1350, 61 % IACS"}
    row = load("metals").row(metal=metal.get(wire.metal, wire.metal))
    at_20 = row.number("resistivity_20C_ohm_m") / (wire.area_mm2 * 1e-6) * 1000
    lay = 1.02 if wire.stranded else 1.0
    return at_20 * lay * (1 + row.number("alpha_20C_per_K") * (temperature - 20))


def greatest_resistance(wire: Wire, temperature: float = 20.0) -> Factor | None:
    """Return the most that a metric wire may have, in ohm/km at a temperature in C (IEC 60228).

    >>> from wirecalc.wires import read_wire
    >>> greatest_resistance(read_wire("1.5 mm2 solid")).value
    12.1

    Such a wire is named by this limit, its area is not prescribed. Solid is class 1; stranded may
    be class 2, 5 or 6, and the highest counts. A size between has the limit of the next thinner
    one over its area. None for a wire that is not metric, and for copper-clad aluminium.
    """
    coating = "plain" if wire.coating == "bare" or wire.metal != "copper" else "tinned"
    rows = list(load("iec-60228").where(metal=wire.metal, coating=coating))
    own = wire.nominal_mm2
    if own is None or not rows:
        return None
    of_class: dict[float, Row] = {}
    for row in rows:  # thin to thick within a class
        number = row.number("class")
        if (number > 1) == wire.stranded and (
            number not in of_class or row.number("nominal_mm2") <= own
        ):
            of_class[number] = row
    most = max(
        of_class.values(), key=lambda r: r.number("max_ohm_per_km") * r.number("nominal_mm2")
    )
    nominal = most.number("nominal_mm2")
    source = most.source
    if nominal != own:
        source = computed("iec-60228-area", "IEC 60228", f"limit of {nominal:g} mm2, by area")
    metal = "annealed copper, IACS" if wire.metal == "copper" else "aluminium 1350, 61 % IACS"
    alpha = load("metals").row(metal=metal).number("alpha_20C_per_K")
    at_20 = most.number("max_ohm_per_km") * nominal / own
    return Factor(at_20 * (1 + alpha * (temperature - 20)), source)


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


def _listed(rows: Iterable[Row], wire: Wire) -> Row | None:
    """Return the row of a wire's gauge, or of the next thinner gauge among rows thick to thin."""
    gauge = counted_gauge(wire)
    if gauge is None:
        return None
    own = gauge_number(gauge)
    return next((r for r in rows if gauge_number(r.text("awg")) >= own), None)


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


def equivalent_gauge(cmil: float) -> str:
    """Return the thinnest gauge that has at least this area, for choosing a size.

    >>> equivalent_gauge(6690)
    '11'
    """
    for gauge in reversed(GAUGES):
        if gauge_cmil(gauge_number(gauge)) >= cmil * (1 - 1e-9):
            return gauge
    return GAUGES[0]


def area_working(wire: Wire) -> str:
    """Say where the area of a wire in mm2 comes from, the AWG law with its numbers put in."""
    if wire.gauge is not None:
        steps = 36 - gauge_number(wire.gauge)
        return f"pi / 4 x (0.127 mm x 92^({steps} / 39))^2; ASTM B258"
    if wire.nominal_mm2 is not None:
        return f"{put(wire.nominal_mm2, 'mm2')}; its nominal size"
    return "as typed, or the sum of its strands"


def square_inches(cmil: float) -> float:
    """Return an area in square inches; a circular mil is pi/4 square mil."""
    return cmil * math.pi / 4 * 1e-6

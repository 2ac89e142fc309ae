"""Conductors: which gauge a wire is, its resistance, and the current that the code lets it carry.

Everything published is looked up in the tables; what is not there is None or raises TableError,
never an extrapolation.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence
from typing import NamedTuple

from ..base.rounding import put
from ..published.sources import Source, computed
from ..published.tables import Row, Table, load
from ..typed.wires import GAUGES, Wire, gauge_cmil, gauge_number

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

    >>> from wirecalc.typed.wires import read_wire
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

    >>> from wirecalc.typed.wires import read_wire
    >>> counted_gauge(read_wire("1.5 mm2")), counted_gauge(read_wire("19x32 AWG"))
    ('16', '20')

    None for a wire thinner than 40 AWG. IEC 60228 sets the resistance of a metric size and not its
    area; from 0.5 to 25 mm2 it is at most 2 % above that of the gauge named here, stranded.
    """
    if wire.nominal_mm2 is None:
        return wire.gauge or gauge_for_current(wire)
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

    >>> from wirecalc.typed.wires import read_wire
    >>> greatest_resistance(read_wire("1.5 mm2 solid")).value
    12.1

    Such a wire is named by this limit, its area is not prescribed. Solid is class 1; stranded may
    be class 2, 5 or 6, and the highest counts. A size between has the limit of the next thinner
    one over its area. None for a wire that is not metric, and for copper-clad aluminium.
    """
    coating = "plain" if wire.coating == "bare" or wire.metal != "copper" else "tinned"
    classes = load("iec-60228").made(_classes, wire.metal, coating, wire.stranded)
    own = wire.nominal_mm2
    if own is None or not classes:
        return None
    most = max(
        (rows[max(bisect_right(rows, own, key=_nominal) - 1, 0)] for rows in classes),
        key=lambda r: r.number("max_ohm_per_km") * r.number("nominal_mm2"),
    )
    nominal = most.number("nominal_mm2")
    source = most.source
    if nominal != own:
        source = computed("iec-60228-area", "IEC 60228", f"limit of {nominal:g} mm2, by area")
    metal = "annealed copper, IACS" if wire.metal == "copper" else "aluminium 1350, 61 % IACS"
    alpha = load("metals").row(metal=metal).number("alpha_20C_per_K")
    at_20 = most.number("max_ohm_per_km") * nominal / own
    return Factor(at_20 * (1 + alpha * (temperature - 20)), source)


def _classes(table: Table, metal: str, coating: str, stranded: bool) -> Sequence[Sequence[Row]]:
    """Return the rows of each class of solid or stranded wire, thin to thick."""
    of_class: dict[float, list[Row]] = {}
    for row in table.where(metal=metal, coating=coating):
        if (row.number("class") > 1) == stranded:
            of_class.setdefault(row.number("class"), []).append(row)
    return tuple(tuple(sorted(rows, key=_nominal)) for rows in of_class.values())


def _nominal(row: Row) -> float:
    return row.number("nominal_mm2")


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

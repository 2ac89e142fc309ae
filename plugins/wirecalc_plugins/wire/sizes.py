"""Which named size an area is of: gauge or metric, the nearest or the two that it lies between."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import Item, Wire, answer, at_or_below, conductors, figure, put, tables
from wirecalc.wires import CMIL_PER_MM2, GAUGES, gauge_cmil, gauge_number

ONE_SIZE = 0.08  # nearer than this a wire is of that size; beyond it both neighbours are named


def by_gauge(wire: Wire) -> Iterator[Item]:
    """Name the gauge: that of a standard build, else the nearest, else two neighbours."""
    areas = {g: gauge_cmil(gauge_number(g)) / CMIL_PER_MM2 for g in reversed(GAUGES)}
    sizes = [(f"{g} AWG", area) for g, area in areas.items()]
    nearest, near = _nearest(wire.area_mm2, sizes)
    known = conductors.known_gauge(wire)
    size = nearest if known is None else f"{known} AWG"
    if known is not None:
        build = next(tables.load("strandings").where(awg=known, strands=wire.strands))
        by_area = near and size == nearest
        yield answer(
            "gauge",
            size if by_area else f"{size}, build {build.text('construction')}",
            because=[f"{build.text('construction')} is a standard build ({build.source.trust})"],
            against=[] if by_area else [f"by its area it would be {_by_area(wire, sizes)}"],
        )
    elif near:
        yield answer("gauge", size, because=["its area is within 8 % of that size"])
    else:
        yield answer("gauge", _neighbours(wire.area_mm2, sizes), against=list(_builds(wire)))
    own = dict(sizes)[size]
    yield figure(
        f"difference from {size}",
        100 * (wire.area_mm2 / own - 1),
        "%",
        source=conductors.AWG_LAW,
        working=lambda: f"100 x ({put(wire.area_mm2)} mm2 / {put(own)} mm2 - 1)",
    )


def _by_area(wire: Wire, sizes: Sequence[tuple[str, float]]) -> str:
    size, near = _nearest(wire.area_mm2, sizes)
    return size if near else _neighbours(wire.area_mm2, sizes)


def _builds(wire: Wire) -> Iterator[str]:
    """Name the standard builds of so many strands that a coarse calliper may have missed."""
    for row in tables.load("strandings").where(strands=wire.strands):
        own = gauge_cmil(gauge_number(row.text("strand_awg")))
        if abs((wire.strand_cmil or 0.0) / own - 1) <= ONE_SIZE:
            strand = row.number("strand_diameter_mm")
            yield f"with strands of {strand:.4g} mm it would be {row.text('awg')} AWG"


def by_metric(wire: Wire) -> Iterator[Item]:
    """Name the metric size that is near, else the two that the area lies between."""
    rows = {f"{r.number('nominal_mm2'):g} mm2": r for r in tables.load("iec-60228").rows}
    sizes = sorted(((n, r.number("nominal_mm2")) for n, r in rows.items()), key=_size)
    size, near = _nearest(wire.area_mm2, sizes)
    yield answer(
        "metric size",
        size if near else _neighbours(wire.area_mm2, sizes),
        because=["its area is within 8 % of that nominal size"] if near else [],
    )
    nominal = dict(sizes)[size]
    yield figure(
        f"difference from {size}",
        100 * (wire.area_mm2 / nominal - 1),
        "%",
        source=rows[size].source,
        working=lambda: f"100 x ({put(wire.area_mm2, 'mm2')} / {put(nominal, 'mm2')} - 1)",
    )


def _size(named: tuple[str, float]) -> float:
    return named[1]


def _nearest(area: float, sizes: Sequence[tuple[str, float]]) -> tuple[str, bool]:
    name, size = min(sizes, key=lambda s: abs(math.log(area / s[1])))
    return name, at_or_below(abs(area / size - 1), ONE_SIZE)


def _neighbours(area: float, sizes: Sequence[tuple[str, float]]) -> str:
    """Name the two sizes that an area lies between, of sizes from thin to thick."""
    below = [name for name, size in sizes if size <= area]
    above = [name for name, size in sizes if size > area]
    if not below or not above:
        return f"thinner than {above[0]}" if above else f"thicker than {below[-1]}"
    return f"between {below[-1]} and {above[0]}"

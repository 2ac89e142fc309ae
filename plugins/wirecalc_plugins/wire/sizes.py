"""Which named size an area is of: gauge or metric, the nearest or the two that it lies between."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import (
    CMIL_PER_MM2,
    GAUGES,
    Item,
    Wire,
    answer,
    at_or_below,
    cannot_tell,
    figure,
    gauge_cmil,
    gauge_number,
    put,
    tables,
)
from wirecalc.trade import conductors

ONE_SIZE = 0.08  # nearer than this a wire is of that size; beyond it both neighbours are named
_PAIR = 2  # neighbours that one answer may name
_TWO_GAUGES = 92 ** (4 / 39)  # areas of sizes that are two gauges apart, as even ones are


class Band(NamedTuple):
    """A wire at low, centre and high of what its strand was read with; all alike if exact."""

    thin: Wire
    wire: Wire
    thick: Wire

    @property
    def areas(self) -> tuple[float, float]:
        """The ends in mm2."""
        return self.thin.area_mm2, self.thick.area_mm2

    @property
    def exact(self) -> bool:
        """Whether the strand was read without an error."""
        return self.thin == self.thick

    def build(self) -> tables.Row | None:
        """Return the standard build of so many strands within the band; None for none or two.

        A strand may lack 2.5 % of its area. Over two gauges and more a band tells no build.
        """
        low, high = self.thin.strand_cmil or 0.0, self.thick.strand_cmil or 0.0
        if high > low * _TWO_GAUGES:
            return None
        slack = conductors.STRANDING_SLACK
        found: dict[str, tables.Row] = {}
        for row in tables.load("strandings").where(strands=self.wire.strands):
            own = gauge_cmil(gauge_number(row.text("strand_awg")))
            if low <= own * (1 + slack) and own * (1 - slack) <= high:
                found.setdefault(row.text("awg"), row)
        return next(iter(found.values())) if len(found) == 1 else None


def by_gauge(band: Band) -> Iterator[Item]:
    """Name the gauge: that of a standard build, else the nearest, else two neighbours."""
    wire, build = band.wire, band.build()
    sizes = _gauges()
    spanned = _spanned(band, sizes)
    size, _ = _nearest(wire.area_mm2, sizes)
    if build is not None:
        size = f"{build.text('awg')} AWG"
        named = build.text("construction")
        by_area = spanned == [size]
        yield answer(
            "gauge",
            size if by_area else f"{size}, build {named}",
            because=[f"{named} is a standard build ({build.source.trust})"],
            against=[] if by_area else [f"by its area it would be {_said(spanned)}"],
        )
    elif len(spanned) > _PAIR:
        yield cannot_tell(
            "gauge",
            f"over the meter's band it is {spanned[0]} to {spanned[-1]}",
            measure="lay ten strands side by side and measure over all of them, or measure one "
            "with a better instrument, a micrometer",
            needs=("strand_diameter",),
        )
    elif len(spanned) == 1:
        yield answer("gauge", spanned[0], because=["its area is within 8 % of that size"])
    else:
        counts = [] if band.exact else ["its current is judged by the thinner one"]
        yield answer("gauge", _said(spanned), against=[*counts, *_builds(wire)])
    own = dict(sizes)[size]
    yield figure(
        f"difference from {size}",
        100 * (wire.area_mm2 / own - 1),
        "%",
        source=conductors.AWG_LAW,
        band=_differences(band, own),
        working=lambda: f"100 x ({put(wire.area_mm2)} mm2 / {put(own)} mm2 - 1)",
    )


def one_gauge(band: Band) -> bool:
    """Whether the area is that of one gauge over all of the band."""
    return len(_spanned(band, _gauges())) == 1


def _gauges() -> list[tuple[str, float]]:
    return [(f"{g} AWG", gauge_cmil(gauge_number(g)) / CMIL_PER_MM2) for g in reversed(GAUGES)]


def _differences(band: Band, own: float) -> tuple[float, float]:
    low, high = band.areas
    return 100 * (low / own - 1), 100 * (high / own - 1)


def _builds(wire: Wire) -> Iterator[str]:
    """Name the standard builds of so many strands that a coarse calliper may have missed."""
    for row in tables.load("strandings").where(strands=wire.strands):
        own = gauge_cmil(gauge_number(row.text("strand_awg")))
        if abs((wire.strand_cmil or 0.0) / own - 1) <= ONE_SIZE:
            strand = row.number("strand_diameter_mm")
            yield f"with strands of {strand:.4g} mm it would be {row.text('awg')} AWG"


def by_metric(band: Band) -> Iterator[Item]:
    """Name the metric size that is near, else those that the area lies between."""
    wire = band.wire
    rows = {f"{r.number('nominal_mm2'):g} mm2": r for r in tables.load("iec-60228").rows}
    sizes = sorted(((n, r.number("nominal_mm2")) for n, r in rows.items()), key=_size)
    spanned = _spanned(band, sizes)
    yield answer(
        "metric size",
        _said(spanned),
        because=["its area is within 8 % of that nominal size"] if len(spanned) == 1 else [],
    )
    size, _ = _nearest(wire.area_mm2, sizes)
    nominal = dict(sizes)[size]
    yield figure(
        f"difference from {size}",
        100 * (wire.area_mm2 / nominal - 1),
        "%",
        source=rows[size].source,
        band=_differences(band, nominal),
        working=lambda: f"100 x ({put(wire.area_mm2, 'mm2')} / {put(nominal, 'mm2')} - 1)",
    )


def _spanned(band: Band, sizes: Sequence[tuple[str, float]]) -> list[str]:
    """Name the sizes from that of the thin end to that of the thick end, of sizes thin to thick.

    An end within 8 % of a size is of that size, else of the neighbour that lies further out.
    """
    names = [name for name, _ in sizes]
    (low, low_near), (high, high_near) = (_nearest(area, sizes) for area in band.areas)
    below = [n for n, size in sizes if size <= band.areas[0]]
    above = [n for n, size in sizes if size > band.areas[1]]
    first = low if low_near else next(reversed(below), f"thinner than {names[0]}")
    last = high if high_near else next(iter(above), f"thicker than {names[-1]}")
    ends = [names.index(n) if n in names else None for n in (first, last)]
    if ends[0] is None or ends[1] is None:
        return [first] if ends[0] is None and ends[1] is None else [first, last]
    return names[ends[0] : ends[1] + 1]


def _said(spanned: Sequence[str]) -> str:
    if len(spanned) == 1:
        return spanned[0]
    beyond = [n for n in (spanned[0], spanned[-1]) if n.startswith("thi")]
    return beyond[0] if beyond else f"between {spanned[0]} and {spanned[-1]}"


def _size(named: tuple[str, float]) -> float:
    return named[1]


def _nearest(area: float, sizes: Sequence[tuple[str, float]]) -> tuple[str, bool]:
    name, size = min(sizes, key=lambda s: abs(math.log(area / s[1])))
    return name, at_or_below(abs(area / size - 1), ONE_SIZE)

"""Wire by itself: which size it is, and the size of the other system that may stand for it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    Bands,
    Item,
    Problem,
    Wire,
    answer,
    calculation,
    cannot_tell,
    confirmed,
    figure,
    not_checked,
    put,
    requires,
)
from wirecalc.trade import conductors

from .by_ohms import (
    LEAST_MM2,
    MOST_MM2,
    band_of,
    known_or_20,
    metric_by_ohms,
    ohm_per_km,
    outside,
    wrong_ohms,
)
from .equivalent import thinnest_metric, thinnest_stocked
from .gauge_inputs import (
    KnownAt,
    Metal,
    OutsideDiameter,
    ResistancePerLength,
    StrandDiameter,
    Strands,
)
from .sizes import Band, by_gauge, by_metric, one_gauge

_ALUMINIUM = confirmed("cpsc-516", "CPSC Publication 516", "aluminium wire", copies=3)


def _area_mm2(strands: int, diameter: float) -> float:
    return strands * math.pi / 4 * diameter**2


def _refuse(
    strands: int | None = None,
    strand_diameter: float | None = None,
    metal: str = "copper",
    outside_diameter: float | None = None,
    resistance_per_length: float | None = None,
    known_at: float | None = None,
) -> Iterator[Problem]:
    counted = strands is not None or strand_diameter is not None
    yield from wrong_ohms(resistance_per_length, known_at, metal, counted=counted)
    if strands is None or strand_diameter is None:
        return
    area = _area_mm2(strands, strand_diameter)
    if outside(area):
        yield Problem(
            "strand_diameter",
            f"{strands} x {strand_diameter:g} mm is {area:.3g} mm2, outside 0.1 to 10 mm2",
            _check_what(strands, strand_diameter, area),
        )
    elif outside_diameter is not None and outside_diameter <= strand_diameter * math.sqrt(strands):
        yield Problem(
            "outside_diameter",
            f"{outside_diameter:g} mm does not hold {strands} strands of {strand_diameter:g} mm",
            "check the count and the units",
        )


def _check_what(strands: int, diameter: float, area: float) -> str:
    if LEAST_MM2 <= area * 25.4**2 <= MOST_MM2:
        return f"did you mean {diameter:g} in?"
    if area > MOST_MM2:
        return "measure one strand and not the bundle; check mm, mil and in"
    return "count every strand; check mm, mil and in"


@calculation(
    part="wire and joint",
    words=(
        "wire gauge; wire size; what gauge; what size is this wire; unmarked wire; unknown wire",
        "identify wire; no print; no marking; caliper; calipers; micrometer; count strands",
        "number of strands; strand count; strand diameter; measure wire; wire diameter; diameter",
        "thickness; circular mils; AWG; copper clad; CCA; faded print; unprinted; gauge tool",
        "no writing; tell the size; find the size; identify the size; wire identification",
        "strand size; feeler gauge; dia; sizing; bare diameter; outside diameter; OD",
        "what wire is this; what size is it; unknown cable; mystery wire; old wire size",
        "no printing; wire has no marking; number of strands and diameter; thickness of wire",
        "tell gauge; which gauge; measure gauge; vernier; 0.8 mm; 1 mm thick; magnet wire",
    ),
    cautions=("dead-01", "alu-01"),
    not_checked=("the insulation: its temperature and voltage rating are printed on it",),
    refuse=_refuse,
    exercises=".gauge_exercises",
    example_with=(
        "strands=26",
        "strand_diameter",
    ),
)
def gauge(
    strands: Strands = None,
    strand_diameter: StrandDiameter = None,
    metal: Metal = "copper",
    outside_diameter: OutsideDiameter = None,
    resistance_per_length: ResistancePerLength = None,
    known_at: KnownAt = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Which size is this unmarked wire?

    Area = strands x pi/4 x diameter squared. A standard build of so many strands names its gauge
    (a strand may lack 2.5 % of its area); else a wire within 8 % of a size of the ASTM B258 law,
    or of a nominal size of IEC 60228, is of that size, and beyond it both neighbours are named.
    To replace it: the thinnest stocked size that is not thinner. To judge its current: the
    thickest gauge that is not thicker. Both allow 2.5 %. Over a meter's band a build is named where
    it is the only one, else two neighbours; the thick end is replaced, the thin one judged by.
    In place of the strands printed ohms: resistivity over them, solid and bare to stranded (2 %)
    of its worst coating; the metric size is the thickest whose limit they keep.

    For wire inside appliances. Inputs: strands; strand_diameter in mm (over 0 to 5); metal; ohm/kft
    and the C of it; outside_diameter in mm, from which nothing is judged. Yields area, difference
    from the sizes, and the answers. Refuses an area under 0.1 or over 10 mm2, and an outside
    diameter that does not hold the strands. Aluminium and copper-clad wire fail: copper parts are
    not for them. Source: tables strandings, iec-60228, metals; ASTM B258.
    """
    if resistance_per_length is not None:
        yield from _by_ohms(resistance_per_length, known_or_20(known_at), metal)
        return
    if strands is None or strand_diameter is None:
        yield _too_little(strands, strand_diameter, outside_diameter)
        return
    if outside_diameter is not None:
        yield not_checked(
            "the outside diameter", "insulation is of any thickness: no gauge is in it"
        )
    low, high = (bands or {}).get("strand_diameter", (strand_diameter, strand_diameter))
    band = Band(*(_wire(strands, d, metal) for d in (low, strand_diameter, high)))
    yield figure(
        "area",
        band.wire.area_mm2,
        "mm2",
        band=band.areas,
        working=lambda: f"{strands} x pi / 4 x ({put(strand_diameter)} mm)^2",
    )
    yield figure(
        "circular mils",
        band.wire.area_cmil,
        "cmil",
        band=(band.thin.area_cmil, band.thick.area_cmil),
        working=lambda: f"{strands} x ({put(strand_diameter, 'mm')} / 0.0254)^2; strands x mil^2",
    )
    yield from by_gauge(band)
    yield from by_metric(band)
    yield from _what_to_do(band)


def _by_ohms(ohm_per_kft: float, known_at: float, metal: str) -> Iterator[Item]:
    """Name the size of what has so many ohms, solid and bare or stranded and coated."""
    band = band_of(ohm_per_kft, known_at, metal)
    yield figure(
        "area",
        band.wire.area_mm2,
        "mm2",
        band=band.areas,
        working=lambda: f"resistivity / {put(ohm_per_kft, 'ohm/kft')} at {put(known_at, 'C')}",
    )
    yield from by_gauge(band)
    if "aluminium" not in metal:
        yield from metric_by_ohms(ohm_per_km(ohm_per_kft, known_at), metal)
    yield from _what_to_do(band)


def _wire(strands: int, diameter: float, metal: str) -> Wire:
    words = metal.removesuffix(" copper") if metal.endswith(" copper") else "bare"
    strand = (diameter / 0.0254) ** 2
    return Wire(
        f"{strands}x{diameter:.4g} mm",
        strands * strand,
        strands=strands,
        strand_cmil=strand,
        stranded=strands > 1,
        metal=metal if "aluminium" in metal else "copper",
        coating=words,
    )


def _too_little(count: int | None, diameter: float | None, outside: float | None) -> Item:
    given = (("strands", count), ("strand_diameter", diameter))
    missing = [name for name, value in given if value is None]
    only = " and insulation is of any thickness, so the outside diameter names no gauge"
    return cannot_tell(
        "gauge",
        f"{' and '.join(missing)} not given" + (only if outside is not None else ""),
        measure="strip the end, count the strands, and measure one strand with a calliper",
        needs=missing,
    )


def _what_to_do(band: Band) -> Iterator[Item]:
    """Replace it by what is no thinner than its thick end, judge its current by its thin end."""
    wire, build = band.wire, band.build()
    if wire.metal != "copper":
        yield requires(
            "copper wire",
            False,
            says=f"this is {wire.metal}: ordinary copper terminals and splices are not for it",
            source=_ALUMINIUM,
            action="stop: leave it to a qualified electrician",
        )
        return
    known = None if build is None else build.text("awg")
    current = conductors.gauge_for_current(wire if band.exact else band.thin)
    thickest = wire if one_gauge(band) else band.thick
    least = thickest.area_mm2 * (1 - conductors.STRANDING_SLACK)
    awg, metric = known or thinnest_stocked(least), thinnest_metric(least)
    either = [f"{awg} AWG"] * bool(awg) + [f"{metric:g} mm2"] * bool(metric)
    yield answer(
        "replace with",
        f"{' or '.join(either)}, or thicker" if either else "no size listed here",
        because=["a standard build of that gauge" if known else "no thinner than what is there"],
        against=["a thicker wire may not fit the barrel or the strain relief"],
    )
    plated = ["plated strands read thick, so it may be thinner"] if wire.coating != "bare" else []
    yield answer(
        "judge its current as",
        f"{current} AWG" if current else "no gauge listed here",
        against=plated,
    )

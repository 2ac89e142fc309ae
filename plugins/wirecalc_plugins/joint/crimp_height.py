"""Crimp height and width against a maker's sheet, and how far the metal was pressed."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Bands,
    Item,
    Origin,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    computed,
    figure,
    put,
    show,
)

from .crimp_height_inputs import (
    HEXAGON,
    ROLLED,
    ROUND,
    BarrelMetal,
    CrimpHeight,
    CrimpShape,
    CrimpWidth,
    HeightTolerance,
    NominalHeight,
    NominalWidth,
    TheWires,
    WidthTolerance,
)

_SHARES = {  # of height x width that a crimp fills, least and most
    HEXAGON: (math.sqrt(3) / 2, math.sqrt(3) / 2),  # across flats, all three alike
    ROUND: (math.pi / 4, math.pi / 4),
    ROLLED: (math.pi / 4, 1.0),  # two rolls over a base: between an ellipse and a rectangle
}
AREA = computed("crimp-area", "area of the shape", "hexagon 0.866 h2, round 0.785 h w")
_PLAIN = "how far the crimp was pressed"
_LOW = "too low: strands are cut; another die or a smaller step, and a new terminal"
_HIGH = "too high: loose; another die, or a wire too thin for it, and a new terminal"


@calculation(
    part="wire and joint",
    words=(
        "crimp height; crimp width; CCH; CCW; micrometer; caliper; compression; crimp force",
        "over crimped; under crimped; loose crimp; flat crimp; die worn; die setting; hex crimp",
        "F crimp; B crimp; open barrel; crimp quality; deformation; crimp too tight; too loose",
        "crimp thickness; measure a crimp; crimp size; squeezed too much; too tight",
        "crimp too loose; die height; applicator; press; crimp spec; crimp micrometer; anvil",
        "terminal data sheet; crimp depth; height of crimp; bad die; bell mouth; bellmouth",
        "crimp inspection; inspect crimp",
    ),
    go_on="note height, die and wire; pull a sample of the same make-up: pull",
    cautions=("crimp-02", "dead-01"),
    not_checked=(
        "strands missing, cut or outside: height sees none of them",
        "insulation crimp, bell mouth, brush and the pull: see `strip` and `pull`",
        "a burr or an edge under the jaws reads higher: blade and point anvil, mid crimp",
    ),
    example_with=(
        "nominal_height",
        "height_tolerance",
        "crimp_width",
        "wire=18 AWG",
        "crimp_shape=rolled",
        "barrel_metal",
    ),
)
def crimp_height(
    crimp_height: CrimpHeight,
    nominal_height: NominalHeight = None,
    height_tolerance: HeightTolerance = None,
    crimp_width: CrimpWidth = None,
    nominal_width: NominalWidth = None,
    width_tolerance: WidthTolerance = None,
    wire: TheWires = None,
    crimp_shape: CrimpShape = None,
    barrel_metal: BarrelMetal = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Is this crimp as high and as wide as its maker wants it?

    Height and width against the maker's sheet, each with its tolerance and the micrometer's error.
    Some 0.05 mm each way is usual (two trade articles); the sheet governs. With the copper of the
    wires, the metal of the barrel and the shape, the compression is worked out: how much less area
    the crimp has than the metal that went in, a hexagon 0.866 x its height squared, round 0.785 x
    height x width, rolled between that and height x width. More area than metal is a slip.

    For crimps with a sheet; a height that is right shows no cut strand and no other wire. Inputs:
    heights and widths in mm (over 0 to 50), wire, barrel_metal in mm2. Yields compression, and a
    criterion a side. Source: the maker's sheet as typed.
    """
    ends = bands or {}
    for what, read, nominal, tolerance in (
        ("height", crimp_height, nominal_height, height_tolerance),
        ("width", crimp_width, nominal_width, width_tolerance),
    ):
        if read is not None and nominal is not None and tolerance is not None:
            band = ends.get(f"crimp_{what}", (read, read))
            yield from _within(what, read, band, nominal, tolerance)
    if wire is None or crimp_shape is None or barrel_metal is None:
        return
    if crimp_shape == HEXAGON or crimp_width is not None:
        high = ends.get("crimp_height", (crimp_height,) * 2)
        wide = high if crimp_shape == HEXAGON else ends.get("crimp_width", (crimp_width,) * 2)
        copper = sum(w.area_mm2 for w in wire)
        yield from _compression(crimp_shape, high, wide, copper, barrel_metal)


def _within(
    what: str, read: float, band: tuple[float, float], nominal: float, tolerance: float
) -> Iterator[Item]:
    for name, judge, limit, action in (
        (f"crimp {what}, upper limit", at_most, nominal + tolerance, _HIGH),
        (f"crimp {what}, lower limit", at_least, nominal - tolerance, _LOW),
    ):
        yield judge(
            name,
            read,
            limit,
            "mm",
            source=MAKER,
            origin=Origin.MAKER,
            action=action,
            plain=_PLAIN,
            band=band,
        )


def _compression(
    shape: str,
    high: tuple[float, float],
    wide: tuple[float, float],
    copper: float,
    barrel: float,
) -> Iterator[Item]:
    least, most = _SHARES[shape]
    metal = copper + barrel
    small, large = least * high[0] * wide[0], most * high[1] * wide[1]
    low, top = 100 * (1 - large / metal), 100 * (1 - small / metal)
    yield figure(
        "metal before",
        metal,
        "mm2",
        source=AREA,
        working=lambda: f"{put(copper, 'mm2')} + {put(barrel, 'mm2')}",
    )
    yield figure("compression", (low + top) / 2, "%", source=AREA, band=(low, top))
    if small > metal:
        yield cannot_tell(
            "crimp against its metal",
            f"{show(small, 'mm2')} or more across, and {show(metal, 'mm2')} of metal went in",
            measure="check height, width, wire and the metal of the barrel: or it is hollow",
            source=PRACTICE,
            plain=_PLAIN,
        )

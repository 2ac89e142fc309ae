"""Crimp height and width against a maker's sheet, and how far the metal was pressed."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    MAKER,
    PRACTICE,
    Bands,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Reading,
    Wire,
    asked,
    at_least,
    at_most,
    calculation,
    cannot_tell,
    computed,
    extra,
    figure,
    put,
    show,
)

from ..inputs import WIRE

HEXAGON, ROUND, ROLLED = SHAPES = ("hexagon", "round", "rolled")
_SHARES = {  # of height x width that a crimp fills, least and most
    HEXAGON: (math.sqrt(3) / 2, math.sqrt(3) / 2),  # across flats, all three alike
    ROUND: (math.pi / 4, math.pi / 4),
    ROLLED: (math.pi / 4, 1.0),  # two rolls over a base: between an ellipse and a rectangle
}
AREA = computed("crimp-area", "area of the shape", "hexagon 0.866 h2, round 0.785 h w")
_PLAIN = "how far the crimp was pressed"
_LOW = "too low: strands are cut; another die or a smaller step, and a new terminal"
_HIGH = "too high: loose; another die, or a wire too thin for it, and a new terminal"


def _read(text: str, typical: str) -> Reading:
    return Reading("mm", above=0, high=50, typical=typical, text=text)


def _sheet(text: str, typical: str) -> Nameplate:
    return Nameplate("mm", above=0, high=50, typical=typical, text=text)


@calculation(
    part="wire and joint",
    words=(
        "crimp height; crimp width; CCH; CCW; micrometer; caliper; compression; crimp force",
        "over crimped; under crimped; loose crimp; flat crimp; die worn; die setting; hex crimp",
        "F crimp; B crimp; open barrel; crimp quality; deformation; crimp too tight; too loose",
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
    crimp_height: Annotated[float, _read("height of the wire crimp", "1.42 mm")],
    nominal_height: Annotated[
        float | None,
        _sheet("crimp height on the sheet for this wire", "1.40 mm"),
        asked("the sheet of terminal, wire and tool has it"),
    ] = None,
    height_tolerance: Annotated[
        float | None,
        _sheet("tolerance of that height, each way", "0.05 mm"),
        asked("near is no measure", when="nominal_height"),
    ] = None,
    crimp_width: Annotated[
        float | None,
        _read("width of the wire crimp", "2.05 mm"),
        asked("its sheet has it", when="nominal_width"),
        extra("the die makes the width; the height is what the press sets"),
    ] = None,
    nominal_width: Annotated[
        float | None,
        _sheet("crimp width on the sheet", "2.03 mm"),
        extra("the die makes the width; the height is what the press sets"),
    ] = None,
    width_tolerance: Annotated[
        float | None,
        _sheet("tolerance of that width, each way", "0.10 mm"),
        asked("near is no measure", when="nominal_width"),
    ] = None,
    wire: Annotated[
        list[Wire] | None, WIRE, extra("height and width are judged without the copper")
    ] = None,
    crimp_shape: Annotated[
        str | None,
        OneOf(SHAPES, text="rolled: open barrel, two rolls over a base; hexagon; round"),
        extra("height and width are judged without the shape"),
    ] = None,
    barrel_metal: Annotated[
        float | None,
        Nameplate(
            "mm2",
            above=0,
            high=500,
            typical="2.6 mm2",
            text="metal of the barrel across: sheet thickness x its unrolled width",
        ),
        extra("height and width are judged without the metal"),
    ] = None,
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

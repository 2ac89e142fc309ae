"""Sizes of wire and ranges of barrels that are sold, thin to thick: what is tried where one is
sought. The tables of barrels and of conductors hold the same sizes (a test compares them).
"""

from __future__ import annotations

from ..base.errors import BadText
from .trials import Request
from .wires import read_wire

# even gauges, and every one from 1 AWG on (common practice, no source)
_GAUGES = (*(f"{n} AWG" for n in range(30, 0, -2)), "1 AWG", *(f"{n}/0 AWG" for n in range(1, 5)))
# IEC 60228:2023, nominal areas of conductors
_AREAS = tuple(
    f"{area} mm2"
    for area in ("0.5", "0.75", "1", "1.5", "2.5", "4", "6", "10", "16", "25", "35", "50", "70")
)
_RANGES = tuple(  # stamped on barrels sold by gauge, and by area
    f"{sizes} AWG"
    for sizes in ("26-22", "22-18", "22-16", "16-14", "12-10", "8", "6", "4", "2", "1/0", "2/0")
)
_AREA_RANGES = tuple(f"{r} mm2" for r in ("0.5-1.0", "0.5-1.5", "1.5-2.5", "2.5-6", "4-6"))


def wires_to_try(request: Request) -> tuple[str, ...]:
    """Return gauges, or areas where these are asked for; raises BadText."""
    sizes = _by_unit(request, _GAUGES, _AREAS)
    if not request.high:
        return sizes
    unit = " mm2" if sizes is _AREAS else " AWG"
    ends = [
        read_wire(end if end.endswith(unit.strip()) else end + unit).area_cmil
        for end in (request.low, request.high)
    ]
    found = tuple(s for s in sizes if min(ends) <= read_wire(s).area_cmil <= max(ends))
    if not found:
        raise BadText(f"no size is sold from {request.low} to {request.high}", "write sought")
    return found


def ranges_to_try(request: Request) -> tuple[str, ...]:
    """Return the ranges stamped on barrels, of gauges or of areas; raises BadText."""
    if request.high:
        raise BadText("a range cannot be sought between two", "write sought, or sought in mm2")
    return _by_unit(request, _RANGES, _AREA_RANGES)


def _by_unit(request: Request, gauges: tuple[str, ...], areas: tuple[str, ...]) -> tuple[str, ...]:
    if request.error:
        raise BadText("a size has no meter error", "drop the ± part")
    metric = "mm" in f"{request.unit} {request.high}"
    if request.unit and not metric and request.unit.casefold() != "awg":
        raise BadText(f"sizes are not sold in {request.unit!r}", "write sought, or sought in mm2")
    return areas if metric else gauges

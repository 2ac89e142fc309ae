"""Two wires line by line: nothing of the new one may be lower than of the old one."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Criterion,
    Origin,
    Wire,
    at_least,
    cannot_tell,
    gauge_number,
    requires,
)
from wirecalc.trade import conductors

COATINGS = ("bare", "tinned", "silver-plated", "nickel-plated")  # each stands more heat
_KEEP = "keep looking: equal or better on every line, the maker's own wire first"


class ComparedLine(NamedTuple):
    """One line of the comparison: what stood there, what shall, and what comes of it."""

    old: str
    new: str
    judged: Criterion


def _requires(name: str, holds: bool, says: str) -> Criterion:
    return requires(name, holds, says=says, source=PRACTICE, origin=Origin.PRACTICE, action=_KEEP)


def _least(
    name: str, new: float, old: float, unit: str, says: str = "", behind: str = ""
) -> Criterion:
    return at_least(
        name,
        new,
        old,
        unit,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=bool(behind),
        says=says,
        action=_KEEP,
        behind=behind,
    )


def size(old: Wire, new: Wire) -> ComparedLine:
    """Compare the gauges of two wires, else their areas."""
    name = "size of the wire"
    one, two = conductors.known_gauge(old), conductors.known_gauge(new)
    if one is not None and two is not None:
        holds = gauge_number(two) <= gauge_number(one)
        judged = _requires(
            name,
            holds,
            f"{new} is {two} AWG, thinner than {one} AWG: a larger AWG number is a thinner wire",
        )
    else:
        judged = _least(name, new.area_mm2, _allowed(old), "mm2", "the new wire is thinner")
    return ComparedLine(_area(old), _area(new), judged)


def _allowed(old: Wire) -> float:
    """Return the least area in mm2: what standard builds of a gauge may lack is allowed."""
    return old.area_mm2 * (1 - conductors.STRANDING_SLACK)


def _area(wire: Wire) -> str:
    known = conductors.known_gauge(wire)
    name = f"{known} AWG" if known else wire.name
    return f"{name} ({wire.area_mm2:.3g} mm2)"


def same_gauge(old: Wire, new: Wire) -> bool:
    """Whether both wires are builds of one gauge."""
    known = conductors.known_gauge(old)
    return known is not None and known == conductors.known_gauge(new)


def copper(old: Wire, new: Wire) -> Criterion:
    """Judge the area of two builds of one gauge, which may differ by a sixth: advice only."""
    return _least(
        "area of the same gauge",
        new.area_mm2,
        _allowed(old),
        "mm2",
        "another build of the same gauge, with less metal",
        behind="a thinner gauge fails; builds that are sold as one gauge differ by up to a sixth",
    )


def strands(old: Wire, new: Wire) -> ComparedLine:
    """Compare solid and stranded."""
    judged = _requires(
        "strands of the wire",
        new.stranded or not old.stranded,
        "solid wire in place of stranded breaks where it flexes",
    )
    return ComparedLine(_build(old), _build(new), judged)


def _build(wire: Wire) -> str:
    if not wire.stranded:
        return "solid"
    return f"{wire.strands} strands" if wire.strands else "stranded"


def metal(old: Wire, new: Wire) -> ComparedLine:
    """Compare the metals: only copper by copper is judged."""
    judged = _requires(
        "metal of the wire",
        old.metal == new.metal == "copper",
        f"{old.metal} replaced by {new.metal}: only copper by copper is judged here",
    )
    return ComparedLine(old.metal, new.metal, judged)


def coating(old: Wire, new: Wire) -> ComparedLine:
    """Compare the coatings by the heat that they stand."""
    judged = _requires(
        "coating of the wire",
        COATINGS.index(new.coating) >= COATINGS.index(old.coating),
        f"{new.coating} in place of {old.coating} strands",
    )
    return ComparedLine(old.coating, new.coating, judged)


def rating(name: str, key: str, old: float | None, new: float | None, unit: str) -> ComparedLine:
    """Compare a rating that is a number."""
    if old is None or new is None:
        return _unknown(name, key, old, new, tuple(_shown(v, unit) for v in (old, new)))
    return ComparedLine(_shown(old, unit), _shown(new, unit), _least(name, new, old, unit))


def _shown(value: float | None, unit: str) -> str:
    return "not given" if value is None else f"{value:g} {unit}"


def marked(name: str, key: str, old: bool | None, new: bool | None) -> ComparedLine:
    """Compare a mark that a wire has or has not."""
    words = {None: "not given", True: "yes", False: "no"}
    shown = words[old], words[new]
    if old is False or new is True:
        return ComparedLine(*shown, _requires(name, True, ""))
    if old is None or new is None:
        return _unknown(name, key, old, new, shown)
    return ComparedLine(
        *shown, _requires(name, False, "the old wire has it and the new one has not")
    )


def _unknown(name: str, key: str, old: object, new: object, shown: Sequence[str]) -> ComparedLine:
    given = ((f"old_{key}", old), (f"new_{key}", new))
    missing = [n for n, value in given if value is None]
    judged = cannot_tell(
        name,
        f"{' and '.join(missing)} not given",
        measure="read the print on both wires; what is not known counts as lower",
        needs=missing,
    )
    return ComparedLine(shown[0], shown[1], judged)

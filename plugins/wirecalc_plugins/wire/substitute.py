"""Another wire in place of the one that was there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated, NamedTuple

from wirecalc import (
    PRACTICE,
    Criterion,
    Item,
    Nameplate,
    Origin,
    Verdict,
    Wire,
    YesNo,
    asked,
    at_least,
    calculation,
    cannot_tell,
    caution,
    conductors,
    figure,
    listing,
    put,
    requires,
    setting,
)
from wirecalc.wires import gauge_number

COATINGS = ("bare", "tinned", "silver-plated", "nickel-plated")  # each stands more heat
_KEEP = "keep looking: equal or better on every line, the maker's own wire first"
_WORDS = {
    Verdict.PASS: "not lower",
    Verdict.MARGINAL: "lower, advised",
    Verdict.CANNOT_TELL: "not known",
    Verdict.FAIL: "LOWER",
}


class _Line(NamedTuple):
    """One line of the comparison: what stood there, what shall, and what comes of it."""

    old: str
    new: str
    judged: Criterion


@calculation(
    part="wire and joint",
    cautions=("sub-01",),
    not_checked=(
        "the maker's sheet, which comes first",
        "whether the new wire fits the barrel, the strain relief and the place",
        "current: no building-wire table makes a thinner wire do inside an appliance",
    ),
    example_with=(
        "new_wire=16 AWG tinned",
        "old_wire_temperature",
        "new_wire_temperature",
        "old_wire_voltage",
        "new_wire_voltage",
        "old_oil_resistant=no",
        "old_flame_rated=no",
    ),
)
def substitute(
    old_wire: Annotated[Wire, "wire that is to be replaced"],
    new_wire: Annotated[Wire, "wire that shall take its place"],
    old_wire_temperature: Annotated[
        float | None,
        Nameplate("C", above=0, high=500, typical="105 C", text="temperature rating of old wire"),
        asked("what is not known counts as lower"),
    ] = None,
    new_wire_temperature: Annotated[
        float | None,
        Nameplate("C", above=0, high=500, typical="105 C", text="temperature rating of new wire"),
        asked("what is not known counts as lower"),
    ] = None,
    old_wire_voltage: Annotated[
        float | None,
        Nameplate("V", above=0, high=5000, typical="600 V", text="voltage rating of the old wire"),
        asked("what is not known counts as lower"),
    ] = None,
    new_wire_voltage: Annotated[
        float | None,
        Nameplate("V", above=0, high=5000, typical="600 V", text="voltage rating of the new wire"),
        asked("what is not known counts as lower"),
    ] = None,
    old_oil_resistant: Annotated[
        bool | None,
        YesNo("the old wire is marked or known to stand oil and chemicals"),
        asked("what is not known counts as lower", when="new_oil_resistant!=yes"),
        setting("the new wire has it"),
    ] = None,
    new_oil_resistant: Annotated[
        bool | None,
        YesNo("the new wire is marked to stand oil and chemicals"),
        asked("what is not known counts as lower", when="old_oil_resistant!=no"),
        setting("the old wire has it not"),
    ] = None,
    old_flame_rated: Annotated[
        bool | None,
        YesNo("the old wire is marked with a flame rating, as VW-1 or FT1"),
        asked("what is not known counts as lower", when="new_flame_rated!=yes"),
        setting("the new wire has it"),
    ] = None,
    new_flame_rated: Annotated[
        bool | None,
        YesNo("the new wire is marked with a flame rating, as VW-1 or FT1"),
        asked("what is not known counts as lower", when="old_flame_rated!=no"),
        setting("the old wire has it not"),
    ] = None,
) -> Iterator[Item]:
    """May this wire take the place of that one?

    Line by line, new against old, nothing may be lower (common practice): size, strands, metal,
    coating, temperature, voltage, oil and chemicals, flame. Two gauges, or standard builds of
    them, are compared by gauge (a larger AWG number is a thinner wire), other wires by area with
    2.5 % allowed. Solid does not replace stranded. Copper only. Bare is less than tinned, tinned
    less than silver, silver less than nickel; a wire written without a coating counts as bare. A
    line that either wire lacks can't be told, unless the old one was not so marked or the new is.

    Inputs: both wires; temperature ratings in C (to 500), voltage ratings in V (to 5000);
    oil and flame as yes or no. Yields the lines and one criterion a line.
    Source: common practice; ASTM B258 for the gauges.
    """
    lines = {
        "size": _size(old_wire, new_wire),
        "strands": _strands(old_wire, new_wire),
        "metal": _metal(old_wire, new_wire),
        "coating": _coating(old_wire, new_wire),
        "temperature rating": _rating(
            "temperature rating",
            "wire_temperature",
            old_wire_temperature,
            new_wire_temperature,
            "C",
        ),
        "voltage rating": _rating(
            "voltage rating", "wire_voltage", old_wire_voltage, new_wire_voltage, "V"
        ),
        "oil and chemicals": _marked(
            "oil and chemicals", "oil_resistant", old_oil_resistant, new_oil_resistant
        ),
        "flame rating": _marked("flame rating", "flame_rated", old_flame_rated, new_flame_rated),
    }
    yield figure(
        "copper of the new wire against the old",
        100 * (new_wire.area_cmil / old_wire.area_cmil - 1),
        "%",
        working=lambda: f"100 x ({put(new_wire.area_mm2)} mm2 / {put(old_wire.area_mm2)} mm2 - 1)",
    )
    for line in lines.values():
        yield line.judged
    if _same_gauge(old_wire, new_wire):
        yield _copper(old_wire, new_wire)
    if {old_wire.metal, new_wire.metal} != {"copper"}:
        yield caution("alu-01")
    yield listing(
        "Line by line",
        ("line", "old", "new", ""),
        ((name, x.old, x.new, _WORDS[x.judged.verdict]) for name, x in lines.items()),
    )


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


def _size(old: Wire, new: Wire) -> _Line:
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
    return _Line(_area(old), _area(new), judged)


def _allowed(old: Wire) -> float:
    """Return the least area in mm2: what standard builds of a gauge may lack is allowed."""
    return old.area_mm2 * (1 - conductors.STRANDING_SLACK)


def _area(wire: Wire) -> str:
    known = conductors.known_gauge(wire)
    name = f"{known} AWG" if known else wire.name
    return f"{name} ({wire.area_mm2:.3g} mm2)"


def _same_gauge(old: Wire, new: Wire) -> bool:
    known = conductors.known_gauge(old)
    return known is not None and known == conductors.known_gauge(new)


def _copper(old: Wire, new: Wire) -> Criterion:
    """Judge the area of two builds of one gauge, which may differ by a sixth: advice only."""
    return _least(
        "area of the same gauge",
        new.area_mm2,
        _allowed(old),
        "mm2",
        "another build of the same gauge, with less metal",
        behind="a thinner gauge fails; builds that are sold as one gauge differ by up to a sixth",
    )


def _strands(old: Wire, new: Wire) -> _Line:
    judged = _requires(
        "strands of the wire",
        new.stranded or not old.stranded,
        "solid wire in place of stranded breaks where it flexes",
    )
    return _Line(_build(old), _build(new), judged)


def _build(wire: Wire) -> str:
    if not wire.stranded:
        return "solid"
    return f"{wire.strands} strands" if wire.strands else "stranded"


def _metal(old: Wire, new: Wire) -> _Line:
    judged = _requires(
        "metal of the wire",
        old.metal == new.metal == "copper",
        f"{old.metal} replaced by {new.metal}: only copper by copper is judged here",
    )
    return _Line(old.metal, new.metal, judged)


def _coating(old: Wire, new: Wire) -> _Line:
    judged = _requires(
        "coating of the wire",
        COATINGS.index(new.coating) >= COATINGS.index(old.coating),
        f"{new.coating} in place of {old.coating} strands",
    )
    return _Line(old.coating, new.coating, judged)


def _rating(name: str, key: str, old: float | None, new: float | None, unit: str) -> _Line:
    if old is None or new is None:
        return _unknown(name, key, old, new, tuple(_shown(v, unit) for v in (old, new)))
    return _Line(_shown(old, unit), _shown(new, unit), _least(name, new, old, unit))


def _shown(value: float | None, unit: str) -> str:
    return "not given" if value is None else f"{value:g} {unit}"


def _marked(name: str, key: str, old: bool | None, new: bool | None) -> _Line:
    words = {None: "not given", True: "yes", False: "no"}
    shown = words[old], words[new]
    if old is False or new is True:
        return _Line(*shown, _requires(name, True, ""))
    if old is None or new is None:
        return _unknown(name, key, old, new, shown)
    return _Line(*shown, _requires(name, False, "the old wire has it and the new one has not"))


def _unknown(name: str, key: str, old: object, new: object, shown: Sequence[str]) -> _Line:
    given = ((f"old_{key}", old), (f"new_{key}", new))
    missing = [n for n, value in given if value is None]
    judged = cannot_tell(
        name,
        f"{' and '.join(missing)} not given",
        measure="read the print on both wires; what is not known counts as lower",
        needs=missing,
    )
    return _Line(shown[0], shown[1], judged)

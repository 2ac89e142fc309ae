"""Whether wire fits a barrel: by gauge, by the areas of named gauges, or by the maker's range."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import (
    MAKER,
    Criterion,
    Item,
    Origin,
    SizeRange,
    Verdict,
    Wire,
    answer,
    at_least,
    at_most,
    computed,
    figure,
    gauge_cmil,
    gauge_number,
    put,
    requires,
    tables,
)
from wirecalc.trade import conductors

EDGE = 0.05  # share of a maker's range at each end that calls for care; common practice
_GAUGES = computed("astm-b258", "ASTM B258", "areas of the gauges that the barrel names")


def fit(wires: Sequence[Wire], barrel: SizeRange, total: float) -> Iterator[Item]:
    """Judge whether wires of a total area in cmil fit a barrel; name the class that would do."""
    gauge = conductors.known_gauge(wires[0]) if len(wires) == 1 else None
    if barrel.by_gauge and gauge is not None:
        fits = _by_gauge(gauge, barrel)
    elif barrel.by_gauge:
        fits = _by_named_area(total, barrel)
    else:
        named = len(wires) == 1 and wires[0].nominal_mm2 is not None and barrel.unit == "mm2"
        fits = _by_typed_area(total, barrel, 0.0 if named else EDGE)
        if barrel.high_cmil > barrel.low_cmil:
            share = (total - barrel.low_cmil) / (barrel.high_cmil - barrel.low_cmil)
            yield figure(
                "place in the range",
                100 * share,
                "%",
                working=lambda: (
                    f"100 x ({put(total, 'cmil')} - {put(barrel.low_cmil, 'cmil')}) / "
                    f"({put(barrel.high_cmil, 'cmil')} - {put(barrel.low_cmil, 'cmil')})"
                ),
            )
    judged = list(fits)
    yield from judged
    if any(c.verdict is not Verdict.PASS for c in judged):
        yield _would_do(wires, gauge, total)


def _by_gauge(gauge: str, barrel: SizeRange) -> Iterator[Criterion]:
    number = gauge_number(gauge)
    thin, thick = gauge_number(barrel.thinnest or ""), gauge_number(barrel.thickest or "")
    yield requires(
        "area in the barrel, lower limit",
        number <= thin,
        says=f"{gauge} AWG is thinner than the {barrel} barrel takes",
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not fold the wire double",
    )
    yield requires(
        "area in the barrel, upper limit",
        number >= thick,
        says=f"{gauge} AWG is thicker than the {barrel} barrel takes",
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not trim strands",
    )


def _by_named_area(total: float, barrel: SizeRange) -> Iterator[Criterion]:
    thin, thick = gauge_number(barrel.thinnest or ""), gauge_number(barrel.thickest or "")
    says = "it lies within one gauge beyond what the barrel names"
    yield at_least(
        "area in the barrel, lower limit",
        total,
        gauge_cmil(thin + 1),
        "cmil",
        caution=barrel.low_cmil,
        source=_GAUGES,
        says=says if total < barrel.low_cmil else "",
        action="take the maker's area range from the bag, or the barrel class named below",
    )
    yield at_most(
        "area in the barrel, upper limit",
        total,
        gauge_cmil(thick - 1),
        "cmil",
        caution=barrel.high_cmil,
        source=_GAUGES,
        says=says if total > barrel.high_cmil else "",
        action="take the maker's area range from the bag, or the barrel class named below",
    )


def _by_typed_area(total: float, barrel: SizeRange, edge: float) -> Iterator[Criterion]:
    span = barrel.high_cmil - barrel.low_cmil
    yield at_least(
        "area in the barrel, lower limit",
        total,
        barrel.low_cmil,
        "cmil",
        caution=barrel.low_cmil + edge * span,
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not fold the wire double",
    )
    yield at_most(
        "area in the barrel, upper limit",
        total,
        barrel.high_cmil,
        "cmil",
        caution=barrel.high_cmil - edge * span,
        source=MAKER,
        origin=Origin.MAKER,
        action="use the barrel class named below; do not trim strands",
    )


def _would_do(wires: Sequence[Wire], gauge: str | None, total: float) -> Item:
    """Name the barrel class that would take the wire."""
    classes = []
    for row in tables.load("barrel-ranges").where(system="US insulated closed barrel"):
        thin, thick = row.text("awg_smallest"), row.text("awg_largest")
        if gauge is not None:
            fits = gauge_number(thick) <= gauge_number(gauge) <= gauge_number(thin)
        else:
            low, high = gauge_cmil(gauge_number(thin)), gauge_cmil(gauge_number(thick))
            fits = low <= total <= high
        if fits:
            classes.append(row.text("barrel_class"))
    what = f"{gauge} AWG" if gauge else f"{total:.0f} cmil"
    if not classes:
        return answer(
            "barrel that would do",
            f"none of the gauge classes holds {what}: "
            "look for a barrel with an area range around it",
        )
    named = " or ".join(f"{c} AWG" for c in classes)
    return answer("barrel that would do", named, because=[f"its gauges include {what}"])

"""A capacitance against what is marked on the part."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Nameplate,
    Origin,
    Problem,
    Source,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    not_checked,
    put,
    show,
    tables,
)

WIDEST_RANGE = 1.5  # upper over lower end: 88-108, 189-227 uF; common practice
LARGEST_RUN_UF = 150.0  # run parts of single-phase motors end near 100 uF; common practice

MARKED_HIGH = Nameplate(
    "uF",
    above=0,
    high=2000,
    typical="108 uF",
    text="upper end, where a range is marked",
    goes_with="marked_capacitance",
)


def range_problem(low: float | None, high: float | None) -> Iterator[Problem]:
    """Refuse a range that was typed the wrong way round."""
    if high is not None and high <= (low or 0.0):
        yield Problem(
            "marked_high",
            f"{high:g} uF is not above {low or 0:g} uF",
            "a range is marked low to high, such as 88-108 uF",
        )


class ReadCapacitance(NamedTuple):
    """A capacitance in uF, and what to look at before the part is blamed for it."""

    uf: float
    too_low: str
    too_high: str


class Mark(NamedTuple):
    """What is marked on the part: uF, the upper end of a range, tolerances in %; and its duty."""

    size: float
    high: float | None
    tolerance: float | None
    above: float | None
    duty: str | None = None


class CapacitanceLimits(NamedTuple):
    """Where the capacitance must lie; outside `widest` no marked tolerance allows it."""

    low: float
    high: float
    widest: tuple[float, float] | None
    of_low: Source
    of_high: Source


def under_load(uf: float) -> ReadCapacitance:
    """Return a capacitance that was worked out from amps, volts and frequency."""
    first = (
        "first make sure that the volts were taken across the capacitor and the jaws held its lead "
        "alone"
    )
    return ReadCapacitance(
        uf,
        f"{first} (60 Hz given on a supply of 50 Hz reads 17 % low); then replace it",
        f"capacitors seldom gain: {first} (line volts in place of its own, or 50 Hz given on a "
        "supply of 60 Hz, read high); then replace it",
    )


def by_meter(uf: float) -> ReadCapacitance:
    """Return what a capacitance meter read."""
    first = (
        "first read it again discharged, off the circuit and its bleed resistor off, with the "
        "meter nulled on its leads"
    )
    return ReadCapacitance(
        uf, f"{first}; then replace it", f"capacitors seldom gain: {first}; then replace it"
    )


def against_mark(read: ReadCapacitance | None, mark: Mark) -> Iterator[Item]:
    """Yield the limits; of a capacitance that was read also its deviation and two criteria."""
    limits = _limits(mark)
    for end, value, toward, source in (
        ("low", limits.low, "up", limits.of_low),
        ("high", limits.high, "down", limits.of_high),
    ):
        yield figure(
            f"limit {end}",
            value,
            "uF",
            source=source,
            toward=toward,
            working=_limit_working(mark, value),
        )
    if mark.high is not None:
        yield from _wide_range(mark.size, mark.high)
        if mark.tolerance is not None:
            yield not_checked("tolerance", "the ends of the marked range decide")
    elif mark.duty == "run":
        yield from _wide(max(mark.tolerance or 0.0, mark.above or 0.0))
        yield from no_run_part(mark.size)
    if read is not None:
        yield from _judge(read, mark, limits)


def no_run_part(size: float) -> Iterator[Item]:
    """Question a size in uF that no run capacitor has."""
    if not at_or_below(size, LARGEST_RUN_UF):
        yield cannot_tell(
            "size of a run part",
            f"{size:g} uF, and run parts end near 100 uF: a start part, or a slipped point?",
            measure="read size and duty on the part again: a start part is marked with a range",
            source=PRACTICE,
        )


def _wide_range(low: float, high: float) -> Iterator[Item]:
    """Question a range that no start capacitor is marked with; ends in uF."""
    if not at_or_below(high, WIDEST_RANGE * low):
        yield cannot_tell(
            "marked range",
            f"{low:g} to {high:g} uF, and such ranges end about a fifth above where they begin: a "
            "slipped point?",
            measure="read the mark on the part again",
            source=PRACTICE,
        )


def _wide(tolerance: float) -> Iterator[Item]:
    """Question a tolerance in % that no run capacitor is sold with."""
    rows = tables.load("capacitor-tolerances").where(duty="run")
    widest = max(rows, key=lambda r: r.number("below_pct"))
    if not at_or_below(tolerance, widest.number("below_pct")):
        yield cannot_tell(
            "tolerance",
            f"{tolerance:g} %, and the widest mark on a run capacitor that was seen is "
            f"{widest.number('below_pct'):g} %: a slipped point, or a start capacitor?",
            measure="read the tolerance on the part again",
            needs=("tolerance",),
            source=widest.source,
        )


def _limit_working(mark: Mark, limit: float) -> Callable[[], str]:
    if mark.high is not None:
        return lambda: "the end of the marked range"
    percent = 100 * (limit / mark.size - 1)
    sign = "-" if percent < 0 else "+"
    return lambda: f"{put(mark.size, 'uF')} x (1 {sign} {put(abs(percent), '%')} / 100)"


def _limits(mark: Mark) -> CapacitanceLimits:
    marked, high, tolerance, above, duty = mark
    if high is not None:
        return CapacitanceLimits(marked, high, None, MAKER, MAKER)
    if tolerance is not None:
        up = tolerance if above is None else above
        low, high = marked * (1 - tolerance / 100), marked * (1 + up / 100)
        return CapacitanceLimits(low, high, None, MAKER, MAKER)
    rows = [r for r in tables.load("capacitor-tolerances").rows if duty in (None, r.text("duty"))]
    lows = sorted((marked * (1 - r.number("below_pct") / 100), r.source) for r in rows)
    highs = sorted((marked * (1 + r.number("above_pct") / 100), r.source) for r in rows)
    widest = lows[0][0], highs[-1][0]
    return CapacitanceLimits(lows[-1][0], highs[0][0], widest, lows[-1][1], highs[0][1])


def _judge(read: ReadCapacitance, mark: Mark, limits: CapacitanceLimits) -> Iterator[Item]:
    """Yield the same names however it was read, so that a shop's rule holds for both ways."""
    value = read.uf
    if mark.high is None:
        yield figure(
            "deviation",
            100 * (value / mark.size - 1),
            "%",
            working=lambda: f"100 x ({put(value)} uF / {put(mark.size)} uF - 1)",
        )
    low, high = "capacitance, lower limit", "capacitance, upper limit"
    least, most = limits.widest or (limits.low, limits.high)
    needs = ("tolerance",) if mark.duty else ("tolerance", "capacitor_duty")
    if at_or_below(least, value) and not at_or_below(limits.low, value):
        yield _between(low, value, (limits.low, least), "up", needs)
    else:
        yield at_least(
            low,
            value,
            limits.low if at_or_below(limits.low, value) else least,
            "uF",
            source=limits.of_low,
            origin=Origin.MAKER,
            action=read.too_low,
        )
    if at_or_below(value, most) and not at_or_below(value, limits.high):
        yield _between(high, value, (limits.high, most), "down", needs)
    else:
        yield at_most(
            high,
            value,
            limits.high if at_or_below(value, limits.high) else most,
            "uF",
            source=limits.of_high,
            origin=Origin.MAKER,
            action=read.too_high,
        )


def _between(
    name: str, value: float, ends: tuple[float, float], toward: str, needs: tuple[str, ...]
) -> Item:
    narrow, wide = (show(end, "uF", toward=toward) for end in ends)
    return cannot_tell(
        name,
        f"{value:.4g} uF: past {narrow} by the narrowest marked tolerance, within {wide} by the "
        "widest",
        measure="read the tolerance on the part, or the range, and whether it is run or start",
        needs=needs,
    )

"""A capacitance against what is marked on the part."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from wirecalc import (
    MAKER,
    Item,
    Origin,
    Source,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    caution,
    figure,
    not_checked,
    put,
    tables,
)

_READ_AGAIN = (
    "first make sure that the volts were taken across the capacitor and the jaws held its lead "
    "alone; then replace it"
)


class Mark(NamedTuple):
    """What is marked on the part: uF, the upper end of a range, tolerances in %."""

    size: float
    high: float | None
    tolerance: float | None
    above: float | None


class Limits(NamedTuple):
    """Where the capacitance must lie; outside `widest` no marked tolerance allows it."""

    low: float
    high: float
    widest: tuple[float, float] | None
    source: Source


def against_mark(found: dict[str, float], mark: Mark) -> Iterator[Item]:
    """Yield the limits, and two criteria for each capacitance that was found, by its name."""
    limits = _limits(mark)
    for end, value, toward in (("low", limits.low, "up"), ("high", limits.high, "down")):
        yield figure(
            f"limit {end}",
            value,
            "uF",
            source=limits.source,
            toward=toward,
            working=_limit_working(mark, value),
        )
    if mark.high is not None:
        yield caution("cap-02")
        yield caution("start-01")
        if mark.tolerance is not None:
            yield not_checked("tolerance", "the ends of the marked range decide")
    for name, value in found.items():
        yield from _judge(name, value, mark, limits)


def _limit_working(mark: Mark, limit: float) -> Callable[[], str]:
    if mark.high is not None:
        return lambda: "the end of the marked range"
    percent = 100 * (limit / mark.size - 1)
    sign = "-" if percent < 0 else "+"
    return lambda: f"{put(mark.size, 'uF')} x (1 {sign} {put(abs(percent), '%')} / 100)"


def _limits(mark: Mark) -> Limits:
    marked, high, tolerance, above = mark
    if high is not None:
        return Limits(marked, high, None, MAKER)
    if tolerance is not None:
        up = tolerance if above is None else above
        return Limits(marked * (1 - tolerance / 100), marked * (1 + up / 100), None, MAKER)
    rows = list(tables.load("capacitor-tolerances").where(duty="run"))
    least = min(rows, key=lambda r: r.number("below_pct"))
    most = max(rows, key=lambda r: r.number("below_pct"))
    widest = (
        marked * (1 - most.number("below_pct") / 100),
        marked * (1 + most.number("above_pct") / 100),
    )
    return Limits(
        marked * (1 - least.number("below_pct") / 100),
        marked * (1 + least.number("above_pct") / 100),
        widest,
        least.source,
    )


def _judge(name: str, value: float, mark: Mark, limits: Limits) -> Iterator[Item]:
    if mark.high is None:
        what = "deviation" if name == "capacitance" else "deviation by meter"
        yield figure(
            what,
            100 * (value / mark.size - 1),
            "%",
            working=lambda: f"100 x ({put(value)} uF / {put(mark.size)} uF - 1)",
        )
    low, high = f"{name}, lower limit", f"{name}, upper limit"
    wide = limits.widest
    if wide and at_or_below(wide[0], value) and not at_or_below(limits.low, value):
        yield _between(low, value, limits.low, wide[0])
    else:
        yield at_least(
            low,
            value,
            limits.low,
            "uF",
            source=limits.source,
            origin=Origin.MAKER,
            says="with 50 Hz taken for 60 Hz it would read 17 % less",
            action=_READ_AGAIN,
        )
    if wide and at_or_below(value, wide[1]) and not at_or_below(value, limits.high):
        yield _between(high, value, limits.high, wide[1])
    else:
        yield at_most(
            high,
            value,
            limits.high,
            "uF",
            source=limits.source,
            origin=Origin.MAKER,
            says="capacitors seldom gain: line volts in place of its own, or 50 Hz for 60 Hz, "
            "read so",
            action=_READ_AGAIN,
        )


def _between(name: str, value: float, narrow: float, wide: float) -> Item:
    return cannot_tell(
        name,
        f"{value:.4g} uF: past {narrow:.4g} uF by the narrowest marked tolerance, within "
        f"{wide:.4g} uF by the widest",
        measure="read the tolerance on the part",
        needs=("tolerance",),
    )

"""The chart of a breaker or fuse: between the earliest and the latest trip, and the course."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import charts
from wirecalc.trade import current_over_time, overcurrent, trip_curves

from .course import TimedCurrent

_SHORTEST, _LONGEST = 0.01, 20_000.0  # s, ends of the time axis
_SMALLEST = 0.5  # times the rating, where the current axis begins
_HIGH = 1500.0  # s, where the area of a sure trip is named
_STEPS = 80
_HELD, _TRIPPED, _RECALLED, _CURVE = range(4)  # the same marks in every chart
_MULTIPLES = (0.5, 1, 2, 3, 5, 10, 20, 50, 100, 200)
_TIMES = ((0.01, "0.01"), (0.1, "0.1"), (1.0, "1"), (10.0, "10"), (60.0, "60 (1 min)"))
_LONG = ((600.0, "600 (10 min)"), (3600.0, "3600 (1 h)"))
_NAMES = {
    "ul-489": "UL 489 breaker",
    "fuse-ul-248-14": "UL 248-14 fuse",
    "fuse-class-k-time-delay": "Class K time-delay fuse",
    "fuse-class-r-j-time-delay": "Class R or J time-delay fuse",
    "fuse-plug-time-delay": "Time-delay plug fuse",
}


def trip_chart(
    stated: overcurrent.OvercurrentDevice,
    points: Sequence[trip_curves.CurvePoint],
    run: TimedCurrent,
) -> charts.Chart:
    """Describe the chart: current over time, both logarithmic."""
    device = trip_curves.with_curve(stated, points, None) if points else stated
    rating = stated.rating
    most = max([2 * t.multiple for t in device.trips] or [20.0])
    most = max(most, 1.5 * device.most, 1.3 * run.course.highest / rating, 12.0)
    shortest = min(_SHORTEST, 0.5 * (run.course.times[-1] - run.course.times[0]) or _SHORTEST)
    band = _band(device, most, shortest)
    marks = tuple((m * rating, f"{m * rating:.4g}") for m in _MULTIPLES if m <= most)
    return charts.Chart(
        title=f"{_title(stated.name)}, {rating:g} A: earliest and latest trip",
        text=_text(device, run),
        x=charts.Axis(
            "current",
            "A",
            logarithmic=True,
            marks=marks,
            across=("times the rating", rating),
            span=(_SMALLEST * rating, most * rating),
        ),
        y=charts.Axis(
            "time",
            "s",
            logarithmic=True,
            marks=(*_TIMES, *_LONG),
            span=(shortest, _LONGEST),
        ),
        points=tuple(_points(stated, points)),
        lines=(
            charts.Line("earliest trip, from cold", band.x, band.low),
            charts.Line("latest trip", band.x, band.high),
            *_instantaneous(device, shortest),
            _course(run, rating, shortest),
        ),
        bands=(band,),
        words=tuple(_areas(device, most)),
    )


def _title(name: str) -> str:
    return _NAMES.get(name) or f"IEC 60898-1 breaker, type {name[-1].upper()}"


def _band(device: overcurrent.OvercurrentDevice, most: float, shortest: float) -> charts.Band:
    """Return the band with upright edges: each level stands twice, below and above its step."""
    levels = {p.multiple for p in (*device.holds, *device.trips)}
    x: list[float] = []
    for level in sorted({_SMALLEST, *levels, most}):
        x += [level * (1 - 1e-6), level * (1 + 1e-6)]
    low = [max(min(device.held_for(m), _LONGEST), shortest) for m in x]
    high = [max(min(device.tripped_in(m), _LONGEST), shortest) for m in x]
    name = "may trip" if device.holds or device.trips else "not known"
    return charts.Band(name, [m * device.rating for m in x], low, high)


def _areas(device: overcurrent.OvercurrentDevice, most: float) -> Iterator[charts.Words]:
    """Name the three areas at a height where each is wide."""
    height = 6.0
    rating = device.rating
    held = max((h.multiple for h in device.holds if h.seconds >= height), default=_SMALLEST)
    tripped = min((t.multiple for t in device.trips if t.seconds <= height), default=most)
    if device.holds:
        yield charts.Words("holds", rating * 0.65, height)
    known = bool(device.holds or device.trips)
    says = "may trip" if known else "nothing confirmed: cannot tell"
    yield charts.Words(says, rating * math.sqrt(held * tripped), height)
    if any(t.from_cold < _HIGH for t in device.trips):
        yield charts.Words("trips", rating * most * 0.7, _HIGH)


def _points(
    device: overcurrent.OvercurrentDevice, points: Sequence[trip_curves.CurvePoint]
) -> Iterator[charts.Points]:
    rating = device.rating
    held = [h for h in device.holds if math.isfinite(h.seconds)]
    for name, limits, word in (("held", held, "holds"), ("tripped", device.trips, "trips in")):
        if limits:
            yield charts.Points(
                f"{name} for so long" if name == "held" else "tripped by then",
                [p.multiple * rating for p in limits],
                [p.seconds for p in limits],
                [f"{p.multiple:g} x {word} {_time(p)} ({_whose(p)})" for p in limits],
                shape=_HELD if name == "held" else _TRIPPED,
            )
    recalled = [r for _, r in device.recalled]
    if recalled:
        yield charts.Points(
            "recalled, judges nothing",
            [r.multiple * rating for r in recalled],
            [r.seconds for r in recalled],
            shape=_RECALLED,
        )
    if points:
        yield charts.Points(
            "the maker's curve, as typed",
            [p.multiple * rating for p in points for _ in (0, 1)],
            [t for p in points for t in (p.hold, p.trip)],
            shape=_CURVE,
        )


def _whose(limit: overcurrent.TripPoint) -> str:
    return limit.source.title.partition(",")[0]


def _time(limit: overcurrent.TripPoint) -> str:
    seconds = limit.seconds
    text = f"{seconds:g} s" if seconds < 600 else f"{seconds / 3600:g} h"
    return text + (" after test a" if limit.after else "")


def _instantaneous(device: overcurrent.OvercurrentDevice, shortest: float) -> Iterator[charts.Line]:
    part = device.instantaneous
    if part is None or part.high is None:
        return
    ends = [part.low * device.rating, part.high * device.rating]
    name = f"instantaneous trip {part.low:.3g} to {part.high:.3g} x, {part.source.title}"
    yield charts.Line(name, [ends[0], ends[0]], [shortest, 0.1])
    yield charts.Line("", [ends[1], ends[1]], [shortest, 0.1])
    yield charts.Line("", ends, [0.1, 0.1])


def _course(run: TimedCurrent, rating: float, shortest: float) -> charts.Line:
    """Return the longest time without a break at or above each current, as a line."""
    top = run.course.highest
    start = min(_SMALLEST * rating, top)
    if top <= 0:
        return charts.Line("", [], [])
    levels = [start * (top / start) ** (i / _STEPS) for i in range(_STEPS)]
    levels = sorted({*levels, current_over_time.from_level(top)})
    times = current_over_time.longest(run.course, levels)
    pairs = [(x, min(t, _LONGEST)) for x, t in zip(levels, times, strict=True) if t > 0]
    pairs.append((pairs[-1][0] if pairs else top, shortest))
    name = "this current: longest time at or above"
    return charts.Line(name, [x for x, _ in pairs], [t for _, t in pairs], strong=True)


def _text(device: overcurrent.OvercurrentDevice, run: TimedCurrent) -> str:
    rating = device.rating
    held = [f"{h.multiple * rating:.4g} A for {_ends(h.seconds)}" for h in device.holds[:4]]
    trips = [f"{t.multiple * rating:.4g} A within {t.seconds:g} s" for t in device.trips[:4]]
    said = f"It holds {', '.join(held) or 'nothing stated'}; "
    said += f"it has tripped at {', '.join(trips) or 'nothing stated'}. Between them it may trip. "
    seconds = run.course.times[-1] - run.course.times[0]
    return said + (
        f"The current lasts {seconds:.4g} s and reaches {run.course.highest:.4g} A, "
        f"{run.course.highest / rating:.3g} times the rating."
    )


def _ends(seconds: float) -> str:
    return "any time" if math.isinf(seconds) else f"{seconds:g} s"

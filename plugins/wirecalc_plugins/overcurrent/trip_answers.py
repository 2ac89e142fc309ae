"""What is told of a breaker or fuse beside its criteria: the answer, times, heat, known points."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import Criterion, Item, Verdict, answer, figure, listing, put
from wirecalc.trade import current_over_time, overcurrent, trip_curves

from .course import TimedCurrent

AIR = "air around the device"
_WORDS = {Verdict.PASS: "holds", Verdict.MARGINAL: "may trip", Verdict.FAIL: "trips"}
_ENDLESS = "without end"


def heat_rows(heats: Sequence[current_over_time.Heat]) -> Item:
    """List the heat before and after each start."""
    rows = []
    for number, same in enumerate(zip(*(h.first for h in heats), strict=True), start=1):
        before, after = (100 * max(getattr(e, n) for e in same) for n in ("before", "after"))
        rows.append((str(number), f"{same[0].start:.6g}", f"{before:.1f}", f"{after:.1f}"))
    left = heats[0].excursions - len(rows)
    if left:
        highest = 100 * max(h.highest for h in heats)
        rows.append((f"{left} more", "", "", f"{highest:.1f} at the most"))
    head = ("above the rating", "from, s", "heat before, %", "heat after, %")
    return listing("Heat of each start, % of a trip (model)", head, rows)


def answered(criteria: Sequence[Criterion]) -> Item:
    """Answer in words what the criteria come to: it holds, may trip, or trips."""
    asked = [c for c in criteria if c.name == AIR and c.needs]
    criteria = [c for c in criteria if c not in asked]
    worst = max((c.verdict for c in criteria), key=lambda v: v.rank)
    word = _WORDS.get(worst, "cannot tell")
    if worst is Verdict.CANNOT_TELL and any(c.verdict is Verdict.FAIL for c in criteria):
        word = "trips"
    decided = [c for c in criteria if c.verdict is worst]
    because = [f"{c.name}: {c.reason}" for c in decided][:3] if word != "holds" else []
    if asked and word in ("holds", "may trip"):
        word += ", where the air is as its standard has it"
    return answer("device", word, because=because)


def figures(device: overcurrent.OvercurrentDevice, run: TimedCurrent) -> Iterator[Item]:
    """Yield the current as a share of the rating, and the earliest and the latest trip."""
    highest = run.course.highest
    yield figure(
        "highest current, share of the rating",
        100 * highest / device.rating,
        "%",
        working=lambda: f"100 x {put(highest)} A / {put(device.rating)} A",
    )
    if device.instantaneous is not None:
        yield figure("crest over sqrt2", run.crest, "A", working=lambda: run.crest_says)
    if run.level is None:
        return
    multiple = run.level / device.rating
    earliest, latest = device.held_for(multiple), device.tripped_in(multiple)
    if 0 < earliest < math.inf:
        yield figure(
            "earliest trip at this current, from cold",
            earliest,
            "s",
            toward="down",
            working=lambda: "the longest time for which it holds this current or more",
        )
        if run.elapsed is not None and run.elapsed < earliest:
            yield _left("left until it may trip", earliest, run.elapsed, "down")
    if latest < math.inf:
        yield figure(
            "latest trip at this current",
            latest,
            "s",
            toward="up",
            working=lambda: "the shortest time in which this current or less has tripped it",
        )
        if run.elapsed is not None and run.elapsed < latest:
            yield _left("left until it has tripped", latest, run.elapsed, "up")


def _left(name: str, end: float, elapsed: float, toward: str) -> Item:
    return figure(
        name,
        end - elapsed,
        "s",
        toward=toward,
        working=lambda: f"{put(end, 's')} - {put(elapsed, 's')}",
    )


def known_points(
    device: overcurrent.OvercurrentDevice, points: Sequence[trip_curves.CurvePoint]
) -> Item:
    """List what is known of the device; what is only remembered says so."""
    rows = [_row(device, "holds", h, "") for h in device.holds]
    rows += [_row(device, "trips within", t, "") for t in device.trips]
    for point in points:
        hold, trip = (
            overcurrent.TripPoint(point.multiple, s, overcurrent.CURVE)
            for s in (point.hold, point.trip)
        )
        rows += [_row(device, "holds", hold, ""), _row(device, "trips within", trip, "")]
    for what, recalled in device.recalled:
        judged = what == "trips within" and not device.name.startswith("iec-")
        rows.append(_row(device, what, recalled, "" if judged else "shown only"))
    return listing("What is known of it", ("it", "at, A", "for, s", "source"), rows)


def _row(
    device: overcurrent.OvercurrentDevice, what: str, limit: overcurrent.TripPoint, more: str
) -> tuple[str, str, str, str]:
    seconds = _ENDLESS if math.isinf(limit.seconds) else f"{limit.seconds:g}"
    if limit.after is not None:
        seconds += f" after {limit.after[1]:g} s at {limit.after[0] * device.rating:.4g} A"
    said = [limit.source.title.partition(",")[0], limit.source.trust, more]
    return (
        what,
        f"{limit.multiple * device.rating:.4g}",
        seconds,
        ", ".join(p for p in said if p),
    )

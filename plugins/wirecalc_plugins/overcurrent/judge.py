"""What a course means for a breaker or fuse: criteria, times, heat, and the answer in words."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import (
    PRACTICE,
    Criterion,
    Item,
    Origin,
    Source,
    Verdict,
    answer,
    at_most,
    at_or_below,
    cannot_tell,
    courses,
    figure,
    listing,
    not_checked,
    overcurrent,
    put,
    trip_curves,
)
from wirecalc.sources import computed

from .course import Run

_READ = "read the maker's curve of this device; never fit a larger one"
_SWITCH_OFF = "switch off and find out what draws so much; never fit a larger breaker or fuse"
_MODEL = computed("thermal-memory", "first-order thermal model", "most sensitive allowed devices")
_WORDS = {Verdict.PASS: "holds", Verdict.MARGINAL: "may trip", Verdict.FAIL: "trips"}
_ENDLESS = "without end"
_AIR = "air around the device"


def judge(
    stated: overcurrent.Device,
    points: Sequence[trip_curves.CurvePoint],
    run: Run,
    ambient: float | None,
) -> Iterator[Item]:
    """Judge a run on a device by its standard and the points of its maker's curve."""
    device = stated
    if points:
        device = trip_curves.with_curve(stated, points, run.levels(stated.rating))
    elements = overcurrent.elements(device)
    heats = [courses.heat(run.course, e, stated.rating) for e in elements]
    criteria = list(_criteria(device, run, ambient))
    if heats:
        criteria.append(_heat(heats))
    yield _answer(criteria)
    yield from _figures(device, run)
    yield from criteria
    if heats and max(h.excursions for h in heats) > 1:
        yield _heat_rows(heats)
    elif not heats and run.level is None and run.course.highest > stated.rating:
        yield not_checked(
            "heat carried from one start to the next",
            "the standard sets no least time to reckon it from; give the maker's --curve",
        )
    if ambient is not None and device.ambient is None:
        yield not_checked("air around the fuse", "its reference ambient was not seen")
    for what, why in run.ignored:
        yield not_checked(what, why)
    yield _points(stated, points)


def _criteria(device: overcurrent.Device, run: Run, ambient: float | None) -> Iterator[Criterion]:
    found = overcurrent.measure(device, run.course)
    if device.holds:
        yield _highest(device, run.course.highest)
    else:
        yield cannot_tell(
            "highest current, however short",
            f"no confirmed limit of a {device.name} of {device.rating:g} A was seen",
            measure="give the maker's --curve",
            needs=("curve",),
        )
    if found.held is not None:
        yield _held(device, found.held)
    yield from _crest(device, run)
    cold = ambient is not None and device.ambient is not None and ambient < device.ambient.trip
    known = found if run.known is None else overcurrent.measure(device, run.known)
    if found.trips is not None:
        sure = known.trips if known.trips and _past(known.trips) else found.trips
        yield _must(device, sure, "time at what must trip it", timed=sure is known.trips, cold=cold)
    if found.instant is not None:
        sure = known.instant if known.instant and _past(known.instant) else found.instant
        timed = sure is known.instant
        yield _must(device, sure, "time at what trips it at once", timed=timed, cold=False)
    if device.ambient is not None and ambient is None:
        yield cannot_tell(
            _AIR,
            f"it holds as stated up to {device.ambient.hold:g} C, and the air was not given",
            measure="measure the air at the panel or fuse",
            needs=("device_ambient",),
            source=device.ambient.source,
        )
    if ambient is not None and device.ambient is not None:
        yield at_most(
            _AIR,
            ambient,
            device.ambient.hold,
            "C",
            source=device.ambient.source,
            advisory=True,
            says="hotter than its reference it may trip sooner; no factor is published",
            action="ask its maker for the rating at this temperature",
        )


def _origin(source: Source) -> Origin:
    if source == overcurrent.CURVE:
        return Origin.MAKER
    return Origin.PRACTICE if source == PRACTICE else Origin.STANDARD


def _highest(device: overcurrent.Device, highest: float) -> Criterion:
    top = device.holds[-1]
    return at_most(
        "highest current, however short",
        highest,
        top.multiple * device.rating,
        "A",
        source=top.source,
        origin=_origin(top.source),
        advisory=True,
        says="above it no least time is stated, so it may trip",
        action=_READ,
    )


def _held(device: overcurrent.Device, held: overcurrent.Reached) -> Criterion:
    upto = held.limit.multiple * device.rating
    return at_most(
        "time above what it holds longer",
        held.stretch.time,
        held.stretch.limit,
        "s",
        source=held.limit.source,
        origin=_origin(held.limit.source),
        advisory=True,
        says=f"up to {upto:.4g} A is held for so long, from cold",
        action=_READ,
    )


def _crest(device: overcurrent.Device, run: Run) -> Iterator[Criterion]:
    part = device.instantaneous
    if part is None:
        return
    low = part.low * device.rating
    high = None if part.high is None else part.high * device.rating
    says = "the instantaneous part sees the crest, not the rms value"
    if high is not None:
        says = "a house breaker's is not standardised"
    yield at_most(
        "crest over sqrt2 against the instantaneous trip",
        run.crest,
        low if high is None else high,
        "A",
        caution=None if high is None else low,
        source=part.source,
        origin=_origin(part.source),
        advisory=high is None,
        says=says,
        action=_READ,
    )


def _past(reached: overcurrent.Reached) -> bool:
    return not at_or_below(reached.stretch.time, reached.stretch.limit)


def _must(
    device: overcurrent.Device, reached: overcurrent.Reached, name: str, *, timed: bool, cold: bool
) -> Criterion:
    amperes = reached.limit.multiple * device.rating
    stretch = reached.stretch
    if not timed and _past(reached):
        return cannot_tell(
            name,
            f"{amperes:.4g} A trips it within {stretch.limit:g} s, "
            "and how long the current flows was not given",
            measure="time it with the meter's inrush or record function",
            needs=("overcurrent_time", "settle_time", "on_time"),
            source=reached.limit.source,
        )
    says = f"at {amperes:.4g} A and above it has tripped by then"
    return at_most(
        name,
        stretch.time,
        stretch.limit,
        "s",
        source=reached.limit.source,
        origin=_origin(reached.limit.source),
        advisory=cold,
        says=says + (", at its reference ambient; here it is colder" if cold else ""),
        action=_SWITCH_OFF,
    )


def _heat(heats: Sequence[courses.Heat]) -> Criterion:
    again = max(h.excursions for h in heats) > 1
    return at_most(
        "heat in the most sensitive device allowed",
        100 * max(h.highest for h in heats),
        100.0,
        "%",
        source=_MODEL,
        origin=Origin.PRACTICE,
        advisory=True,
        says="heat left from one start counts in the next" if again else "",
        action="let it cool between starts, minutes not seconds",
    )


def _heat_rows(heats: Sequence[courses.Heat]) -> Item:
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


def _answer(criteria: Sequence[Criterion]) -> Item:
    asked = [c for c in criteria if c.name == _AIR and c.needs]
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


def _figures(device: overcurrent.Device, run: Run) -> Iterator[Item]:
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


def _points(device: overcurrent.Device, points: Sequence[trip_curves.CurvePoint]) -> Item:
    """List what is known of the device; a recalled point is shown and judges nothing."""
    rows = [_row(device, "holds", h, "") for h in device.holds]
    rows += [_row(device, "trips within", t, "") for t in device.trips]
    for point in points:
        hold, trip = (
            overcurrent.Limit(point.multiple, s, overcurrent.CURVE)
            for s in (point.hold, point.trip)
        )
        rows += [_row(device, "holds", hold, ""), _row(device, "trips within", trip, "")]
    rows += [_row(device, what, r, "shown only") for what, r in device.recalled]
    return listing("What is known of it", ("it", "at, A", "for, s", "source"), rows)


def _row(
    device: overcurrent.Device, what: str, limit: overcurrent.Limit, more: str
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

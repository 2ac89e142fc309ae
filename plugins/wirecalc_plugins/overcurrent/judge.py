"""What a course means for a breaker or fuse: criteria, times, heat, and the answer in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import (
    PRACTICE,
    Confidence,
    Criterion,
    Item,
    Origin,
    Source,
    at_most,
    at_or_below,
    cannot_tell,
    courses,
    not_checked,
    overcurrent,
    trip_curves,
)
from wirecalc.sources import computed

from .course import Run
from .told import AIR, answered, figures, heat_rows, known_points

_READ = "read the maker's curve of this device; never fit a larger one"
_SWITCH_OFF = "switch off and find out what draws so much; never fit a larger breaker or fuse"
_MEMORY = "time at what trips it, from memory"
_GFCI = "what a GFCI or AFCI part of it trips on: leakage or arcing, at any current (see leakage)"
_MODEL = computed("thermal-memory", "first-order thermal model", "most sensitive allowed devices")


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
    yield answered(criteria)
    yield from figures(device, run)
    yield from criteria
    if heats and max(h.excursions for h in heats) > 1:
        yield heat_rows(heats)
    elif not heats and run.level is None and run.course.highest > stated.rating:
        yield not_checked(
            "heat carried from one start to the next",
            "the standard sets no least time to reckon it from; give the maker's --curve",
        )
    if not device.name.startswith("fuse"):
        yield not_checked(_GFCI, "a trip with little current points to it")
    if ambient is not None and device.ambient is None:
        yield not_checked("air around the fuse", "its reference ambient was not seen")
    for what, why in run.ignored:
        yield not_checked(what, why)
    yield known_points(stated, points)


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
    yield from _from_memory(device, run, cold=cold)
    if device.ambient is not None and ambient is None:
        yield cannot_tell(
            AIR,
            f"it holds as stated up to {device.ambient.hold:g} C, and the air was not given",
            measure="measure the air at the panel or fuse",
            needs=("device_ambient",),
            source=device.ambient.source,
        )
    if ambient is not None and device.ambient is not None:
        yield at_most(
            AIR,
            ambient,
            device.ambient.hold,
            "C",
            source=device.ambient.source,
            advisory=True,
            behind="nothing: hotter it trips sooner, which is its kind side",
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
        behind="the times by which it has tripped; whether it trips sooner no standard says",
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
        behind="the times by which it has tripped; whether it trips sooner no standard says",
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
        behind="what trips it at once, within 0.1 s",
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
    says += ", at its reference ambient; here it is colder" if cold else ""
    if reached.limit.source.confidence is Confidence.MEMORY:
        says += "; limit not confirmed"
    return at_most(
        name,
        stretch.time,
        stretch.limit,
        "s",
        source=reached.limit.source,
        origin=_origin(reached.limit.source),
        advisory=cold or _within_doubt(reached),
        behind="in warm air it fails; a time from memory fails where 25 % more is past too",
        says=says,
        action=_SWITCH_OFF,
        better="" if stretch.time else f"an ammeter that settles {amperes:.4g} A",
    )


def _from_memory(device: overcurrent.Device, run: Run, *, cold: bool) -> Iterator[Criterion]:
    """Judge by the trip times that are only remembered: past all that they may be off it trips.

    The windows of IEC 60898-1 are of its later editions, and judge nothing.
    """
    trips = tuple(limit for what, limit in device.recalled if what == "trips within")
    if not trips or device.name.startswith("iec-"):
        return
    remembered = device._replace(holds=(), trips=trips)
    found = overcurrent.measure(remembered, run.course).trips
    known = None if run.known is None else overcurrent.measure(remembered, run.known).trips
    if found is not None:
        timed = run.known is None or (known is not None and _past(known))
        sure = known if known is not None and timed else found
        yield _must(device, sure, _MEMORY, timed=timed, cold=cold)


def _within_doubt(reached: overcurrent.Reached) -> bool:
    """Whether a time is past a remembered one, and not past all that it may be off."""
    limit, source = reached.stretch.limit, reached.limit.source
    if source.confidence is not Confidence.MEMORY:
        return False
    return at_or_below(reached.stretch.time, limit + source.may_be_off(limit, "s")[0])


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
        behind="the times by which it has tripped; the model is of the most sensitive one",
        says="heat left from one start counts in the next" if again else "",
        action="let it cool between starts, minutes not seconds",
    )

"""What a course means for a breaker or fuse: criteria, times, heat, and the answer in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import (
    PRACTICE,
    Criterion,
    Item,
    Origin,
    Verdict,
    at_most,
    at_or_below,
    cannot_tell,
    computed,
    not_checked,
)
from wirecalc.trade import current_over_time, overcurrent, trip_curves, tripping

from .course import TimedCurrent
from .must_trip import from_memory, must_trip, origin_of, past
from .trip_answers import AIR, answered, figures, heat_rows, known_points
from .trip_inputs import EASY, HOT

_AIR_COUNTS = (Verdict.PASS.rank, Verdict.FAIL.rank)  # hot it may not hold, cold it may not trip
_READ = "read the maker's curve of this device; never fit a larger one"
_GFCI = "what a GFCI or AFCI part of it trips on: leakage or arcing, at any current (see leakage)"
_MODEL = computed("thermal-memory", "first-order thermal model", "most sensitive allowed devices")


def judge(
    stated: overcurrent.OvercurrentDevice,
    points: Sequence[trip_curves.CurvePoint],
    run: TimedCurrent,
    ambient: float | None,
    doubts: Sequence[Criterion] = (),
) -> Iterator[Item]:
    """Judge a run on a device by its standard and the points of its maker's curve.

    `doubts` question what was given of the run.
    """
    device = stated
    if points:
        device = trip_curves.with_curve(stated, points, run.levels(stated.rating))
    elements = tripping.elements(device)
    heats = [current_over_time.heat(run.course, e, stated.rating) for e in elements]
    criteria = [*_criteria(device, run, ambient), *doubts]
    if heats:
        criteria.append(_heat(heats))
    if device.ambient is not None and ambient is None:
        air = _air_left_out(device, device.ambient, run, criteria)
        criteria += [air] if isinstance(air, Criterion) else []
        yield from () if isinstance(air, Criterion) else (air,)
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


def _criteria(
    device: overcurrent.OvercurrentDevice, run: TimedCurrent, ambient: float | None
) -> Iterator[Criterion]:
    found = tripping.measure(device, run.course)
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
    known = found if run.known is None else tripping.measure(device, run.known)
    if found.trips is not None:
        sure = known.trips if known.trips and past(known.trips) else found.trips
        yield must_trip(
            device, sure, "time at what must trip it", timed=sure is known.trips, cold=cold
        )
    if found.instant is not None:
        sure = known.instant if known.instant and past(known.instant) else found.instant
        timed = sure is known.instant
        yield must_trip(device, sure, "time at what trips it at once", timed=timed, cold=False)
    yield from from_memory(device, run, cold=cold)
    if ambient is not None and device.ambient is not None:
        easy = _easy(device, run)
        yield at_most(
            AIR,
            ambient,
            HOT if easy else device.ambient.hold,
            "C",
            source=PRACTICE if easy else device.ambient.source,
            advisory=True,
            behind="nothing: hotter it trips sooner, which is its kind side",
            says="hotter than its reference it may trip sooner; no factor is published",
            action="ask its maker for the rating at this temperature",
        )


def _easy(device: overcurrent.OvercurrentDevice, run: TimedCurrent) -> bool:
    """Whether a run is so far below the rating that hot air does not make it trip.

    Makers' tables take under 1 % of the rating off for each kelvin above the reference.
    """
    return at_or_below(run.course.highest, EASY * device.rating)


def _air_left_out(
    device: overcurrent.OvercurrentDevice,
    reference: overcurrent.Ambient,
    run: TimedCurrent,
    criteria: Sequence[Criterion],
) -> Item:
    """Ask for the air where it can change the answer, and else say why it cannot."""
    worst = max(c.verdict.rank for c in criteria)
    if worst not in _AIR_COUNTS:
        return not_checked(AIR, "hotter or colder it may trip as well")
    if worst == Verdict.PASS.rank and _easy(device, run):
        why = f"up to {EASY:g} of its rating is held in air up to {HOT:g} C"
        return not_checked(AIR, f"{why} ({PRACTICE.title})")
    return cannot_tell(
        AIR,
        f"it holds as stated up to {reference.hold:g} C, and the air was not given",
        measure="measure the air at the panel or fuse",
        needs=("device_ambient",),
        source=reference.source,
    )


def _highest(device: overcurrent.OvercurrentDevice, highest: float) -> Criterion:
    top = device.holds[-1]
    return at_most(
        "highest current, however short",
        highest,
        top.multiple * device.rating,
        "A",
        source=top.source,
        origin=origin_of(top.source),
        advisory=True,
        behind="the times by which it has tripped; whether it trips sooner no standard says",
        says="above it no least time is stated, so it may trip",
        action=_READ,
    )


def _held(device: overcurrent.OvercurrentDevice, held: tripping.Reached) -> Criterion:
    upto = held.limit.multiple * device.rating
    return at_most(
        "time above what it holds longer",
        held.stretch.time,
        held.stretch.limit,
        "s",
        source=held.limit.source,
        origin=origin_of(held.limit.source),
        advisory=True,
        behind="the times by which it has tripped; whether it trips sooner no standard says",
        says=f"up to {upto:.4g} A is held for so long, from cold",
        action=_READ,
    )


def _crest(device: overcurrent.OvercurrentDevice, run: TimedCurrent) -> Iterator[Criterion]:
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
        origin=origin_of(part.source),
        advisory=high is None,
        behind="what trips it at once, within 0.1 s",
        says=says,
        action=_READ,
    )


def _heat(heats: Sequence[current_over_time.Heat]) -> Criterion:
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

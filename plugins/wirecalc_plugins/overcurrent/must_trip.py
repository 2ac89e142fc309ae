"""The times by which a breaker or fuse has tripped: of its standard, and those from memory."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Confidence,
    Criterion,
    Origin,
    Source,
    at_most,
    at_or_below,
    cannot_tell,
    confirmed,
    tables,
)
from wirecalc.trade import overcurrent, tripping

from .course import TimedCurrent

_MEMORY = "time at what trips it, from memory"
_LONG_S = 3 * 3600.0  # NEC article 100: a load of 3 hours or more is continuous
_STAYS = confirmed("nec-210-20", "NEC", "210.19(A)(1) and 210.20(A)", copies=2)
_SWITCH_OFF = "switch off and find out what draws so much; never fit a larger breaker or fuse"


def origin_of(source: Source) -> Origin:
    """Return whose limit a point of a device is."""
    if source == overcurrent.CURVE:
        return Origin.MAKER
    return Origin.PRACTICE if source == PRACTICE else Origin.STANDARD


def past(reached: tripping.Reached) -> bool:
    """Whether a course uses more than the time of a limit."""
    return not at_or_below(reached.stretch.time, reached.stretch.limit)


def must_trip(
    device: overcurrent.OvercurrentDevice,
    reached: tripping.Reached,
    name: str,
    *,
    timed: bool,
    cold: bool,
) -> Criterion:
    """Judge a course by a time within which it trips; `cold` is air below its reference."""
    amperes = reached.limit.multiple * device.rating
    stretch = reached.stretch
    if not timed and past(reached):
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
        origin=origin_of(reached.limit.source),
        advisory=cold or _within_doubt(reached),
        behind="in warm air it fails; a time from memory fails where 25 % more is past too",
        says=says,
        action=_SWITCH_OFF,
        better="" if stretch.time else f"an ammeter that settles {amperes:.4g} A",
    )


def from_memory(
    device: overcurrent.OvercurrentDevice, run: TimedCurrent, *, cold: bool
) -> Iterator[Criterion]:
    """Judge by the trip times that are only remembered: past all that they may be off it trips.

    The windows of IEC 60898-1 are of its later editions, and judge nothing.
    """
    trips = tuple(limit for what, limit in device.recalled if what == "trips within")
    if not trips or device.name.startswith("iec-"):
        return
    remembered = device._replace(holds=(), trips=trips)
    found = tripping.measure(remembered, run.course).trips
    known = None if run.known is None else tripping.measure(remembered, run.known).trips
    if found is not None:
        timed = run.known is None or (known is not None and past(known))
        sure = known if known is not None and timed else found
        yield must_trip(device, sure, _MEMORY, timed=timed, cold=cold)


def _within_doubt(reached: tripping.Reached) -> bool:
    """Whether a time is past a remembered one, and not past all that it may be off."""
    limit, source = reached.stretch.limit, reached.limit.source
    if source.confidence is not Confidence.MEMORY:
        return False
    return at_or_below(reached.stretch.time, limit + source.may_be_off(limit, "s")[0])


def stays(
    device: overcurrent.OvercurrentDevice, amps: float | None, seconds: float | None, other: float
) -> Iterator[Criterion]:
    """Fail a load in A that stays above the rating, whatever the device does; ask how long.

    `seconds` is None where it was not given. Between its rating and what must trip it, a breaker
    may carry a load for ever; the wire behind it is sized for the rating.
    """
    load = (amps or 0.0) + other
    if amps is None or at_or_below(load, device.rating):
        return
    name, source = "load that stays", _STAYS
    if device.name.startswith("iec-"):
        rows = tables.load("breaker-iec60898").rows
        source = next(r for r in rows if r.text("test") == "rated").source
    if seconds is None:
        yield cannot_tell(
            name,
            f"{load:.4g} A is above the rating of {device.rating:g} A, and how long it flows was "
            "not given: one that stays is an overload, whether it trips or not",
            measure="time it; what runs for hours goes on a circuit that carries it",
            needs=("overcurrent_time", "on_time"),
            source=source,
        )
    elif seconds >= _LONG_S:
        yield at_most(
            name,
            load,
            device.rating,
            "A",
            source=source,
            says="for 3 h and more it is an overload, whether it trips or not",
            action="put load on a circuit that carries it; never fit a larger breaker or fuse",
        )

"""Times on and off, and the starts in an hour: what makes a compressor cycle."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from statistics import median

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    cannot_tell,
)

# min on or off: an overload cycles under the one; compressors rest for the other before they
# start again; practice
CYCLES, RESTS = 1.0, 3.0
MANY_STARTS, MOST_STARTS = 6.0, 12.0  # in an hour; practice


def cycling(on_times: Sequence[float], off_times: Sequence[float]) -> Iterator[Item]:
    """Judge the times themselves: minutes, and no seconds as those of an overload."""
    if min(off_times) == 0 and len(on_times) + len(off_times) > 2:
        yield cannot_tell(
            "times off",
            "it stood 0 minutes between two runs: that is one run, or one time was missed",
            measure="log it again: a start without a pause is one against pressure",
            source=PRACTICE,
        )
    for what, times in (("on", on_times), ("off", [t for t in off_times if t > 0])):
        if not times:
            continue
        yield at_least(
            f"time {what}, the middle one",
            median(times),
            CYCLES,
            "min",
            caution=RESTS,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="an overload or a control cycles it, or it starts again too soon",
            action="clamp one wire and count the clicks: wirecalc locked; look at start device, "
            "overload, volts and thermostat",
        )
        yield at_least(
            f"shortest time {what}",
            min(times),
            CYCLES,
            "min",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            advisory=True,
            behind="the middle one of the times: a single short one may be cut by a door, a "
            "defrost or the watch",
            says="was it a whole one?",
            action="time it again",
        )


def starts(on_times: Sequence[float], off_times: Sequence[float]) -> Iterator[Item]:
    """Judge the starts in an hour, by the middle ones of its times."""
    rests = [t for t in off_times if t > 0]
    if not rests:
        return
    on, off = median(on_times), median(rests)
    yield at_most(
        "starts in an hour",
        60 / (on + off),
        MOST_STARTS,
        "",
        caution=MANY_STARTS,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="it starts too often: the heat of a start needs minutes to go, pressures to even out",
        action="find out what cycles it: thermostat, overload, start device, volts; time it again",
    )

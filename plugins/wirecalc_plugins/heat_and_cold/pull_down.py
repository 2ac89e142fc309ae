"""When a cabinet will be cold, by its readings so far."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Annotated

from wirecalc import (
    MAKER,
    PRACTICE,
    Bands,
    FileColumns,
    Item,
    Nameplate,
    Origin,
    Problem,
    Reading,
    ReadingsFile,
    answer,
    asked,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    extra,
    figure,
    instead_of,
    show,
    show_band,
)

from .fall import Course, Readings, course_of

OFF_K = 0.5  # that a reading is off by, whose error was not given; common practice
LEAST = 4  # readings: three fit any exponential
THERE, IN_TIME = "gets as cold as its target", "time to its target"
_PLAIN = "whether the cabinet gets cold, and when"
_READ_ON = "read on, with the door shut, for as long again"

_HOURS = Nameplate("h", low=0, high=240, typical="0 h", text="time of each reading since the start")
_LOGGED = Reading("h", low=0, high=240, typical="0 h", text="time since the start")
_CELSIUS = Reading("C", low=-50, high=60, typical="24 C", text="temperature at that time")


def _columns(
    log: FileColumns | None, hours: list[float] | None, celsius: list[float] | None
) -> tuple[Sequence[float], Sequence[float]]:
    if log is not None:
        return log.numbers["time"], log.numbers["temperature"]
    return hours or (), celsius or ()


def _refuse(
    reading_time: list[float] | None,
    reading_temperature: list[float] | None,
    pull_down_log: FileColumns | None,
    target_temperature: float | None,
) -> Iterator[Problem]:
    hours, celsius = _columns(pull_down_log, reading_time, reading_temperature)
    where = "pull_down_log" if pull_down_log is not None else "reading_time"
    if pull_down_log is not None and (reading_time or reading_temperature):
        yield Problem(where, "the readings were given in a file and typed", "give them one way")
    elif len(hours) != len(celsius):
        yield Problem(
            where, f"{len(hours)} times for {len(celsius)} temperatures", "give a time for each"
        )
    elif any(b <= a for a, b in pairwise(hours)):
        yield Problem(where, "the times do not rise", "give the readings in order, each time once")
    elif celsius and target_temperature is not None and celsius[0] <= target_temperature:
        yield Problem(
            "target_temperature",
            f"it was at {celsius[0]:g} C, no warmer than the target, to begin with",
            "give a target below the first reading",
        )


@calculation(
    part="heat and cold",
    words=(
        "pull-down; pulldown; cool down; how long until cold; refrigerator slow to cool; recovery",
        "after defrost; after start; freezer recovery; time constant; will it get cold; when cold",
        "temperature log; data logger; cooling curve; weak cooling; low charge; how long",
        "hours to get cold; time to get cold; getting cold; getting cold yet",
        "box temp after hours; how long till cold; till cold; still warm after; after power cut",
        "takes hours to cool; loaded with warm food; just installed; new fridge; first cool",
        "down to temperature; down to temp; cooling rate; cooling slow; cooling speed; down to 4",
        "slow cooling; overnight cooling; cool-down; ready by",
    ),
    go_on="come back, or have the owner read it, when it is to be cold: cooling",
    cautions=("refr-01", "flam-01"),
    not_checked=(
        "food that is put in, a door that is opened, a defrost: each begins the course anew",
        "the thermostat, which stops the fall at its setting",
        "why it falls so slowly, if it does",
    ),
    refuse=_refuse,
    example_with=(
        "reading_time=0 h; 1 h; 2 h; 3 h; 4 h",
        "reading_temperature=24.0 C; 16.4 C; 11.5 C; 8.3 C; 6.1 C",
        "target_temperature",
        "due_time",
    ),
)
def pull_down(
    reading_time: Annotated[
        list[float] | None,
        _HOURS,
        asked("a course has times", when="reading_temperature"),
    ] = None,
    reading_temperature: Annotated[
        list[float] | None, _CELSIUS, asked("the course is read off them", when="not pull_down_log")
    ] = None,
    pull_down_log: Annotated[
        FileColumns | None,
        ReadingsFile(
            {"time": _LOGGED, "temperature": _CELSIUS},
            text="CSV of a logger: time and temperature",
            typical="log.csv",
        ),
        instead_of("reading_temperature"),
    ] = None,
    target_temperature: Annotated[
        float | None,
        Nameplate(
            "C",
            low=-40,
            high=30,
            typical="5 C",
            text="temperature that it should get to",
            either_scale=True,
        ),
        asked("without it there is nothing to get to"),
    ] = None,
    due_time: Annotated[
        float | None,
        Nameplate("h", above=0, high=240, typical="24 h", text="time by which it should be there"),
        extra("whether it gets there is told without"),
    ] = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """When will this refrigerator or freezer be cold, by its readings so far?

    A cabinet that is left alone falls along T = end + fall x exp(-t / constant). Each reading may
    be off by its error, by 0.5 K where none was given (common practice); every such course that
    keeps within all of them is one that it may take; where they scatter by more, the scatter
    counts, up to 1 K. From these come the end temperature and the
    time to the target, from low to high. Where some of them arrive and some never do, it is too
    early to say. Where all end above the target it fails. Of a long log twelve readings count.

    For refrigerators and freezers after a start, a load or a defrost, the door shut. Inputs: times
    in h, temperatures in C, four readings or more. Yields end, time, and a criterion each. Refuses
    times that do not rise and a target that it began below. Source: the law of cooling.
    """
    hours, celsius = _columns(pull_down_log, reading_time, reading_temperature)
    if target_temperature is None or not hours or not celsius:
        return
    if len(hours) < LEAST:
        yield _not_yet(f"{len(hours)} readings: fewer than {LEAST} fit any course")
        return
    course = course_of(Readings(hours, celsius, _off(bands, celsius)), target_temperature)
    if course is None:
        yield _not_yet("no falling course fits: a door, a load, a defrost or the thermostat")
        return
    yield from _judged(course, target_temperature, due_time)


def _off(bands: Bands | None, celsius: Sequence[float]) -> float:
    """Return how far off a reading may be in K."""
    ends = (bands or {}).get("reading_temperature")
    if ends is None:
        return OFF_K
    each = zip(ends[0], celsius, ends[1], strict=True)
    return max(float(max(high - c, c - low)) for low, c, high in each)


def _not_yet(why: str) -> Item:
    return cannot_tell(THERE, why, measure=_READ_ON, source=PRACTICE, plain=_PLAIN)


def _judged(course: Course, target: float, due: float | None) -> Iterator[Item]:
    ends_above = not at_or_below(course.end_low, target)
    never = math.isinf(course.latest)
    if never and not ends_above:
        yield _not_yet(
            f"too early to say: these readings allow an end of {show(course.end_high, 'C')}, and "
            "one far below the target"
        )
        return
    low = max(course.end_low, -273.15)
    yield figure(
        "end that it falls towards",
        (low + course.end_high) / 2,
        "C",
        source=PRACTICE,
        band=(low, course.end_high),
    )
    yield at_most(
        THERE,
        course.end_low if ends_above else min(course.end_high, target),
        target,
        "C",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="frost on the evaporator, fans, condenser, door; then the sealed system",
        plain=_PLAIN,
    )
    if ends_above:
        return
    said = f"after {show(course.latest, 'h')}"
    if course.earliest != course.latest:
        said = f"after {show_band(course.earliest, course.latest, 'h')}"
    yield answer("at its target", said, in_numbers=True)
    middle = (course.earliest + course.latest) / 2
    yield figure(
        "hours to its target", middle, "h", source=PRACTICE, band=(course.earliest, course.latest)
    )
    if due is not None:
        yield at_most(
            IN_TIME,
            middle,
            due,
            "h",
            source=MAKER,
            origin=Origin.MAKER,
            action="see why it falls so slowly: frost, fans, condenser, door, load",
            plain=_PLAIN,
            band=(course.earliest, course.latest),
        )

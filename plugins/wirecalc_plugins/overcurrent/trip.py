"""Whether a breaker or fuse holds, may trip or trips, for a current and for a whole course."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated, Any

from wirecalc import (
    PRACTICE,
    Count,
    Criterion,
    FileColumns,
    Item,
    Nameplate,
    OneOf,
    Reading,
    ReadingsFile,
    Words,
    asked,
    assumed,
    calculation,
    chart,
    extra,
    instead_of,
    may_be_absent,
    overcurrent,
    setting,
    trip_curves,
)

from ..inputs import SLIP_A
from .course import SAMPLES, Run, course_of_file, course_of_starts, curve_of
from .judge import judge
from .must_trip import stays
from .wrong_trip import doubtful_start, refuse

_TIME = "s"
_LONGEST = 86_400.0  # s; a day stands for without end, every limit is shorter
_START = "not current"
WAVEFORMS = ("rms", "instantaneous")


@calculation(
    part="circuit",
    cautions=("brk-01", "start-01", "pin-02", "meter-01"),
    not_checked=(
        "what heat the breaker had before (taken as cold), and its neighbours in the panel",
        "a start current above the plate's: it goes with the supply voltage",
    ),
    refuse=refuse,
    example_with=("current", "overcurrent_time", "device_ambient"),
)
def trip(
    device: Annotated[str, OneOf(overcurrent.devices, text="standard or class of the device")],
    breaker: Annotated[
        float,
        Nameplate("A", low=1, high=100, typical="15 A", text="rating on the handle or fuse"),
    ],
    current: Annotated[
        float | None,
        Reading(
            "A",
            above=0,
            high=2000,
            typical="20 A",
            text="line current, rms, of the load",
            slip_under=SLIP_A,
        ),
        instead_of("locked_rotor_current", "recording"),
    ] = None,
    overcurrent_time: Annotated[
        float | None,
        Reading(
            _TIME,
            above=0,
            high=_LONGEST,
            typical="60 s",
            text="how long this current flows",
            goes_with="current",
        ),
        extra("it is taken to flow for good, and what trips by the time asks for it"),
    ] = None,
    locked_rotor_current: Annotated[
        float | None,
        Nameplate("A", above=0, high=400, typical="12 A", text="LRA on the plate"),
        instead_of("current", "recording"),
    ] = None,
    settle_time: Annotated[
        float | None,
        Reading(
            _TIME,
            low=0,
            high=600,
            typical="0.4 s",
            text="how long a start lasts",
            goes_with="locked_rotor_current",
        ),
        extra("the start is taken to last for good, and what trips by the time asks for it"),
    ] = None,
    settled: Annotated[
        float | None,
        Reading(
            "A",
            low=0,
            high=400,
            typical="1.2 A",
            text="current once it has settled",
            goes_with="locked_rotor_current",
        ),
        asked("a device that holds the start may trip on what is drawn after it", when=_START),
        extra("a current was given, and no start is judged"),
    ] = None,
    on_time: Annotated[
        float | None,
        Reading(
            _TIME,
            low=0,
            high=_LONGEST,
            typical="600 s",
            text="how long it runs after a start",
            goes_with="settled",
        ),
        extra("it is taken to run on for good"),
    ] = None,
    off_time: Annotated[
        float | None,
        Reading(
            _TIME,
            low=0,
            high=_LONGEST,
            typical="120 s",
            text="pause before the next start",
            goes_with="starts",
        ),
        extra("the starts are taken to follow each other without a pause"),
    ] = None,
    starts: Annotated[
        int | None,
        Count("starts one after the other", high=1000),
        may_be_absent("one start"),
    ] = None,
    other_current: Annotated[
        float | None,
        Reading(
            "A",
            low=0,
            high=100,
            typical="6.2 A",
            text="other loads on this device, rms",
            slip_under=SLIP_A,
        ),
        may_be_absent("nothing else runs on this device"),
    ] = None,
    device_ambient: Annotated[
        float | None,
        Reading("C", low=-40, high=90, typical="25 C", text="air around the breaker or fuse"),
        extra(
            "one that may trip may do so in any air; where it would hold or trip it is asked for"
        ),
    ] = None,
    recording: Annotated[
        FileColumns | None,
        ReadingsFile(
            SAMPLES,
            text="CSV of a recording; a value holds until the next time stamp",
            error_input="current_error",
            typical="start.csv",
        ),
        instead_of("current", "locked_rotor_current"),
    ] = None,
    current_error: Annotated[
        str | None,
        Words("error of the recorder in percent, such as 2%", goes_with="recording"),
        extra("the values are taken as exact"),
    ] = None,
    waveform: Annotated[
        str,
        OneOf(WAVEFORMS, text="what the recorder wrote down", goes_with="recording"),
        extra("a value below zero shows that it is not rms, and is refused"),
    ] = "rms",
    frequency: Annotated[
        float,
        Nameplate(
            "Hz",
            low=16,
            high=400,
            typical="60 Hz",
            text="frequency of the supply",
            goes_with="recording",
        ),
        assumed("50 Hz", source=PRACTICE, when="waveform=instantaneous"),
        setting("it counts for instantaneous values only"),
    ] = 60.0,
    curve: Annotated[
        FileColumns | None,
        ReadingsFile(
            {
                "multiple": Reading("%", low=100, high=5000, text="percent of the rating"),
                "hold_time": Reading(_TIME, above=0, high=_LONGEST, text="least trip time"),
                "trip_time": Reading(_TIME, above=0, high=_LONGEST, text="most trip time"),
            },
            text="CSV of the maker's curve: percent of the rating, least and most trip time",
            typical="curve.csv",
        ),
        extra("the standard alone is judged; its maker's curve is at least as tight"),
    ] = None,
) -> Iterator[Item]:
    """Does the breaker or fuse hold, may it trip, or does it trip?

    Only what the standard states counts: held points (so much current for so long from cold) and
    points by which it has tripped; less current for less time is held too, more for more trips too,
    and all between may trip (marginal); but a load above the rating for 3 h fails, tripped or not,
    and is asked for its time. A time from memory trips where 25 % more is past too. A start's
    crest, worst at power factor 0.5, is set against the instantaneous trip (of a house breaker 5
    to 10 times, practice). Starts in a row: two elements of the first order, the most sensitive
    that the standard allows, must stay below their trip (model, practice). Hotter than the
    reference it may trip; colder it may hold. Not for a motor's overload, a GFCI or an AFCI.

    Inputs: device; breaker in A; current in A, rms, for overcurrent_time in s; or LRA with
    settle_time, settled, on_time, off_time, starts; either with other_current beside it; or a
    recording (CSV: time, current; waveform, Hz); a maker's curve; device_ambient in C. Yields the
    answer, times in s, heat of each start, criteria and a chart. Refuses a stamp that does not
    rise. Source: tables breaker-ul489, breaker-iec60898, fuses-ul248.
    """
    found = overcurrent.device(device, breaker)
    if recording is not None:
        run = course_of_file(recording, waveform, frequency)
    elif current is not None:
        run = Run.steady(current, overcurrent_time, _LONGEST)
    else:
        run = course_of_starts(
            locked_rotor_current or 0.0, settle_time, settled, on_time, off_time, starts, _LONGEST
        )
    if other_current:
        run = run.beside(other_current)
    points = curve_of(curve) if curve is not None else []
    if current is not None and locked_rotor_current is not None:
        run = run.without("start on the plate's LRA", "a current was given")
    doubts: list[Criterion] = []
    if current is None and locked_rotor_current is not None and settled is not None:
        doubts = list(doubtful_start(found, locked_rotor_current, settled))
    yield from judge(found, points, run, device_ambient, doubts)
    yield from stays(found, current or settled, overcurrent_time or on_time, other_current or 0.0)
    yield chart(lambda: _picture(found, points, run))


def _picture(found: overcurrent.Device, points: Sequence[trip_curves.CurvePoint], run: Run) -> Any:
    from .chart import trip_chart  # only where somebody asks for the picture

    return trip_chart(found, points, run)

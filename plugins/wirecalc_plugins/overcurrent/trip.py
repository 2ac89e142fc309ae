"""Whether a breaker or fuse holds, may trip or trips, for a current and for a whole course."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any

from wirecalc import (
    Count,
    FileColumns,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    ReadingsFile,
    Words,
    calculation,
    chart,
    overcurrent,
    trip_curves,
)

from ..inputs import SLIP_A
from .course import SAMPLES, Run, course_of_file, course_of_starts, curve_of, wrong_course
from .judge import judge

_TIME = "s"
_LONGEST = 86_400.0  # s; a day stands for without end, every limit is shorter
_STARTED = ("settle_time", "settled", "on_time", "off_time", "starts")
WAVEFORMS = ("rms", "instantaneous")


def _refuse(**given: Any) -> Iterator[Problem]:
    yield from _wrong_choice(given)
    yield from _wrong_starts(given)
    if given.get("recording") is not None:
        waveform, error = given.get("waveform", "rms"), given.get("current_error")
        yield from wrong_course(given["recording"], waveform, given.get("frequency", 60.0), error)
    if given.get("curve") is not None:
        found = overcurrent.device(given["device"], given["breaker"])
        for row, wrong in trip_curves.wrong_curve(curve_of(given["curve"]), found):
            yield Problem("curve", f"row {row + 2}: {wrong}", "read the maker's curve again")


def _wrong_choice(given: Mapping[str, Any]) -> Iterator[Problem]:
    """A current, the plate's start or a recording: one of them."""
    course, current = given.get("recording"), given.get("current")
    if course is not None and current is not None:
        yield Problem("current", "a current and a recording were both given", "give one of them")
    if course is None and current is None and given.get("locked_rotor_current") is None:
        yield Problem("current", "there is no current to judge", "--current 20 A, or a --recording")
    if course is not None and given.get("other_current"):
        yield Problem("other_current", "a recording has all loads in it", "leave it out")
    typed = [n for n in _STARTED if given.get(n) is not None]
    if typed and (course is not None or current is not None):
        said = "a recording" if current is None else "a current"
        yield Problem(typed[0], f"is part of a start, and {said} was given", "give one of them")


def _wrong_starts(given: Mapping[str, Any]) -> Iterator[Problem]:
    starts = given.get("starts") or 1
    if starts > 1 and given.get("settle_time") is None:
        yield Problem("starts", f"{starts} starts, and how long each lasts is not said", "0.4 s")
    elif starts > 1 and given.get("settled") is not None and given.get("on_time") is None:
        yield Problem("starts", "how long it runs after each is not said", "--on-time 10 min")
    locked, settled = given.get("locked_rotor_current"), given.get("settled")
    if locked is not None and settled is not None and settled > locked:
        yield Problem(
            "settled",
            f"{settled:g} A is above the start current of {locked:g} A",
            "LRA on the plate is several times the running current",
        )


@calculation(
    part="circuit",
    cautions=("brk-01", "start-01", "pin-02", "meter-01"),
    not_checked=(
        "what heat the breaker had before (taken as cold), and its neighbours in the panel",
        "a start current above the plate's: it goes with the supply voltage",
    ),
    refuse=_refuse,
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
    ] = None,
    locked_rotor_current: Annotated[
        float | None, Nameplate("A", above=0, high=400, typical="12 A", text="LRA on the plate")
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
    ] = None,
    starts: Annotated[
        int | None, Count("starts one after the other", high=1000, goes_with="off_time")
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
    ] = None,
    device_ambient: Annotated[
        float | None,
        Reading("C", low=-40, high=90, typical="25 C", text="air around the breaker or fuse"),
    ] = None,
    recording: Annotated[
        FileColumns | None,
        ReadingsFile(
            SAMPLES,
            text="CSV of a recording; a value holds until the next time stamp",
            error_input="current_error",
            typical="start.csv",
        ),
    ] = None,
    current_error: Annotated[
        str | None, Words("error of the recorder in percent, such as 2%", goes_with="recording")
    ] = None,
    waveform: Annotated[
        str, OneOf(WAVEFORMS, text="what the recorder wrote down", goes_with="recording")
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
    ] = None,
) -> Iterator[Item]:
    """Does the breaker or fuse hold, may it trip, or does it trip?

    Only what the standard states counts: held points (so much current for so long from cold) and
    points by which it has tripped; less current for less time is held too, more for more trips too,
    and all between may trip (marginal). The crest of a start, worst at power factor 0.5, is set
    against the instantaneous trip (of a house breaker 5 to 10 times, practice). Starts that follow
    each other: two elements of the first order, the most sensitive that the standard allows, must
    stay below their trip (model, practice). Hotter than the reference it may trip; colder it may
    hold.

    Inputs: device; breaker in A; current in A, rms, for overcurrent_time in s; or LRA with
    settle_time, settled, on_time, off_time, starts; either with other_current beside it; or a
    recording (CSV: time, current; waveform, Hz); a maker's curve; device_ambient in C. Yields the
    answer, times in s, heat of each start, criteria and a chart. Refuses a stamp that does not
    rise, a curve against its standard. Source: tables breaker-ul489, breaker-iec60898,
    fuses-ul248; recalled points are shown and judge nothing.
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
    yield from judge(found, points, run, device_ambient)
    yield chart(lambda: _picture(found, points, run))


def _picture(found: overcurrent.Device, points: Sequence[trip_curves.CurvePoint], run: Run) -> Any:
    from .chart import trip_chart  # only where somebody asks for the picture

    return trip_chart(found, points, run)

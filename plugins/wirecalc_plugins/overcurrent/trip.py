"""Whether a breaker or fuse holds, may trip or trips, for a current and for a whole course."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from wirecalc import (
    Criterion,
    Item,
    calculation,
    chart,
)
from wirecalc.trade import trip_curves
from wirecalc.trade.overcurrent import OvercurrentDevice
from wirecalc.trade.overcurrent import device as device_of

from .course import TimedCurrent, course_of_starts, curve_of
from .must_trip import stays
from .recorded_course import course_of_recording, cut_off
from .trip_inputs import (
    _LONGEST,
    Breaker,
    Clamp,
    Column,
    CurrentError,
    Curve,
    DecimalComma,
    Device,
    DeviceAmbient,
    LockedRotorCurrent,
    OffTime,
    OnTime,
    OtherCurrent,
    Overcurrent,
    OvercurrentTime,
    Recorded,
    Recording,
    Settled,
    SettleTime,
    Starts,
)
from .trip_judge import judge
from .wrong_trip import doubtful_start, refuse


@calculation(
    part="circuit",
    words=(
        "trips; tripping; keeps tripping; breaker trips; breaker tripping; trips at start",
        "trips after a while; trips at once; nuisance trip; breaker pops; breaker kicks; popped",
        "kicked out; kicks off; fuse; fuse blows; blown fuse; blows fuses; blowing fuses",
        "fuse popped; MCB; circuit breaker; trip curve; trip time; time-current curve; type B",
        "type C; type D; slow blow; time delay fuse; cartridge fuse; plug fuse; magnetic trip",
        "thermal trip; instantaneous trip; weak breaker; bad breaker; breaker will not hold",
        "will not reset; hot breaker; fuse box; fusebox; consumer unit; startup trips breaker",
        "trips when compressor starts; how long it holds; will not hold; fuse will not hold",
        "holds; melts; fuse time; will it trip; warm breaker; keeps popping; keeps blowing",
        "tripped; breaker will not reset; heater trips breaker; overload trip time",
        "trips instantly; trips right away; sensitive",
        "breaker goes; trips straight away; trips after ten minutes; fuse blew; fuse blew again",
        "blew again; fuse keeps going; trips on start; trips on dryer; how many seconds",
        "holds for; mcb trips; breaker warm; trips at amps; curve; curve C; type K",
        "fuse or breaker; aM fuse; gG fuse; breaker test; breaker bad; new breaker still trips",
        "trips with nothing on; trips overnight; trips randomly",
        "C16; B16; C10; C20; B32; B6; D16; C32; curve letter",
    ),
    go_on="run a whole cycle; if it trips all the same, find what else it feeds",
    category="III",
    cautions=("brk-01", "start-01", "pin-02", "live-02", "meter-01"),
    not_checked=(
        "what heat the breaker had before (taken as cold), and its neighbours in the panel",
        "a start current above the plate's: it goes with the supply voltage",
    ),
    refuse=refuse,
    renamed={
        "current": "overcurrent",
        "current_log": "recording",
        "recorder_error": "current_error",
        "waveform": "recorded",
    },
    example_with=("overcurrent", "overcurrent_time", "device_ambient"),
)
def trip(
    device: Device,
    breaker: Breaker,
    overcurrent: Overcurrent = None,
    overcurrent_time: OvercurrentTime = None,
    locked_rotor_current: LockedRotorCurrent = None,
    settle_time: SettleTime = None,
    settled: Settled = None,
    on_time: OnTime = None,
    off_time: OffTime = None,
    starts: Starts = None,
    other_current: OtherCurrent = None,
    device_ambient: DeviceAmbient = None,
    recording: Recording = None,
    recorded: Recorded = "auto",
    column: Column = None,
    clamp: Clamp = None,
    current_error: CurrentError = None,
    decimal_comma: DecimalComma = False,
    curve: Curve = None,
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

    Inputs: device; breaker in A; overcurrent in A, rms, for overcurrent_time in s; or LRA with
    settle_time, settled, on_time, off_time, starts; either with other_current beside it; or a
    recording (CSV or Parquet of A); a maker's curve; device_ambient in C. Yields the answer, times
    in s, heat of each start, criteria and a chart. Refuses stamps that go backwards and a pause of
    the recorder. Source: tables breaker-ul489, breaker-iec60898, fuses-ul248.
    """
    found = device_of(device, breaker)
    del column, clamp, current_error, decimal_comma  # read with the recording
    if recording is not None:
        run = course_of_recording(recording, recorded)
    elif overcurrent is not None:
        run = TimedCurrent.steady(overcurrent, overcurrent_time, _LONGEST)
    else:
        run = course_of_starts(
            locked_rotor_current or 0.0, settle_time, settled, on_time, off_time, starts, _LONGEST
        )
    if other_current:
        run = run.beside(other_current)
    points = curve_of(curve) if curve is not None else []
    if overcurrent is not None and locked_rotor_current is not None:
        run = run.without("start on the plate's LRA", "a current was given")
    doubts: list[Criterion] = []
    if overcurrent is None and locked_rotor_current is not None and settled is not None:
        doubts = list(doubtful_start(found, locked_rotor_current, settled))
    if recording is not None:
        doubts = list(cut_off(recording, recorded))
    yield from judge(found, points, run, device_ambient, doubts)
    yield from stays(
        found, overcurrent or settled, overcurrent_time or on_time, other_current or 0.0
    )
    yield chart(lambda: _picture(found, points, run))


def _picture(
    found: OvercurrentDevice,
    points: Sequence[trip_curves.CurvePoint],
    run: TimedCurrent,
) -> Any:
    from .chart import trip_chart  # only where somebody asks for the picture

    return trip_chart(found, points, run)

"""A recording as the course of a current: rms over time, with its highest crest. Needs numpy."""

from __future__ import annotations

import math
from array import array
from collections.abc import Iterator
from typing import TYPE_CHECKING

from wirecalc import Criterion, Problem, RecordedColumns, cannot_tell, put, show
from wirecalc.trade import current_over_time

from ..trace.analysis import INSTANT, POWER, kind_of
from ..trace.frames import flat_top
from ..trace.refusals import wrong_recording
from ..trace.rms_levels import LevelPoints, cycles, readings
from ..trace.stamps import clock_of
from ..trace.wave_survey import waveform
from .course import TimedCurrent, crest_of

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

SLOW_S = 0.1  # between readings of a log, above which a start may lie between; practice
GAP_S, GAP_TIMES = 3600.0, 100.0  # a pause of a recorder: over an hour and 100 usual intervals


def course_of_recording(recording: RecordedColumns, recorded: str) -> TimedCurrent:
    """Return the run of a recording, at its end of the meter's band.

    A log's reading holds until the next stamp; of a waveform the rms over one cycle counts. The
    crest is the highest that was recorded, or of a log without peaks that of the worst start.
    """
    kind, _ = kind_of(recording, recorded)
    instantaneous = kind == INSTANT
    times, currents, parts = array("d"), array("d"), 0
    crest, half, end = 0.0, 0.0, recording.overview.last
    if instantaneous:
        wave = waveform(recording, clock_of(recording))
        half = wave.per_cycle * wave.clock.step / 2
        points = cycles(recording, wave)
    else:
        points = readings(recording)
    for point in points:
        times.frombytes((point.t - half).tobytes())
        currents.frombytes(_moved(point, recording).tobytes())
        parts += point.fresh
        if point.crest is not None:
            crest = max(crest, float(point.crest.max(initial=0.0)))
    last = currents.pop() if times and times[-1] >= end else None
    if last is None:
        times.append(end)
    course = current_over_time.Course(times, currents)
    run = TimedCurrent(course, *crest_of(course.highest))
    if crest:
        highest = recording.moved(crest)
        says = f"{put(highest, 'A')} / sqrt(2); the highest instantaneous value"
        run = TimedCurrent(course, highest / math.sqrt(2), says)
    if parts > 1:
        holes = f"{parts - 1} hole{'s' * (parts > 2)} of the recording"
        run = run.without(f"current in {holes}", "the level before it was taken")
    if not instantaneous and recording.overview.step > SLOW_S:
        why = f"one in {recording.overview.step:.3g} s misses a short start"
        run = run.without("current between two readings", why)
    return run


def cut_off(recording: RecordedColumns, recorded: str) -> Iterator[Criterion]:
    """Doubt a waveform that is cut off: it shows the least that there was."""
    if kind_of(recording, recorded)[0] != INSTANT:
        return
    flat = flat_top(recording, waveform(recording, clock_of(recording)))
    if flat:
        top = max(recording.overview.high[0], -recording.overview.low[0])
        yield cannot_tell(
            "recorded current",
            f"{flat} readings in a row at the top: it is cut off at {show(top, 'A')}, and there "
            "was more",
            measure="record again in a higher range",
        )


def _moved(point: LevelPoints, recording: RecordedColumns) -> Numbers:
    import numpy as np

    moved: Numbers = np.maximum(point.level * recording.scale + recording.shift, 0.0)
    return moved


def wrong_course(recording: RecordedColumns, recorded: str) -> Iterator[Problem]:
    """Yield what is wrong with a recording as the load of a breaker or fuse."""
    wrong = list(wrong_recording(recording, recorded))
    yield from wrong
    if wrong:
        return
    kind, _ = kind_of(recording, recorded)
    over = recording.overview
    if kind == POWER:
        yield Problem("recording", "a power log has no current", "record the current")
    elif over.longest > GAP_S and over.longest > GAP_TIMES * over.step:
        wrong_gap = f"nothing was recorded for {over.longest:.4g} s"
        yield Problem("recording", wrong_gap, "split the recording there")
    elif kind == INSTANT:
        wave = waveform(recording, clock_of(recording))
        if next(cycles(recording, wave), None) is None:
            long = f"{over.last - over.first:.3g} s"
            yield Problem("recording", f"{long} show no whole cycle", "record a second or more")

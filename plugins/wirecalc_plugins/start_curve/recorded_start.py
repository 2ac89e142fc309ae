"""What a recorded start has to be reproduced by: its first 100 ms, its falls, where it settles.

The recording is read as `trace` reads it. Needs numpy (the extra `analysis`).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from wirecalc import RecordedColumns

from ..trace.analysis import INSTANT, analyse, kind_of
from ..trace.frames import Waveform
from ..trace.machine_run import MachineRun
from ..trace.plate_view import Ends
from ..trace.rms_levels import cycles
from ..trace.surge import level_after

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]

FALLS = (0.75, 0.5, 0.25)  # of the way from the settled current up to the first 100 ms
COMES_DOWN = 0.7  # times its first 100 ms that a current is at most that came down; practice
NEAR_HZ = 0.02  # share by which the recording's frequency may be off the plate's; practice

Band = tuple[float, float]


class RecordedStart(NamedTuple):
    """A recorded start in A, and in s from closing; `falls` are when it fell below each share.

    The bands are the meter's error with what noise and stamps leave open; `time` and `level` are
    the middle of each cycle and its rms, four a cycle.
    """

    inrush: float
    inrush_band: Band
    settled: float
    settled_band: Band
    falls: tuple[float, ...]
    surge_over: float
    time: Samples
    level: Samples


def recorded_start(
    low: RecordedColumns, recording: RecordedColumns, high: RecordedColumns, frequency: float
) -> RecordedStart | str:
    """Return the highest start of a recording, or why it shows none that can be reproduced."""
    kind, _ = kind_of(recording, "auto")
    if kind != INSTANT:
        step = recording.overview.step
        return f"one reading in {step:.3g} s shows no run-up: it takes the current's waveform"
    found = analyse(recording, kind)
    wave = found.wave
    if wave is None or wave.frequency is None:
        return "it shows no steady cycle of the mains"
    if abs(wave.frequency / frequency - 1) > NEAR_HZ:
        return (
            f"it was recorded at {wave.frequency:.4g} Hz, and the motor is one for {frequency:g} Hz"
        )
    run = max(found.begun, key=lambda one: one.highest, default=None)
    if run is None or run.surge is None:
        return "no start is in it: it begins while the machine runs, or is too short"
    if found.flat:
        return "its crests are cut off: the recorder's range is too small for this start"
    settled = level_after(run.calm, run.settle)
    if run.settle is None or settled is None or settled > COMES_DOWN * run.surge:
        return (
            "the current does not come down to a running one, or not for half a second: ask trace"
        )
    ends = Ends(low, recording, high, wave.doubt + wave.begins, wave.blur(1.0))
    time, level = _levels(recording, wave, run, run.settle[2])
    limits = (settled + share * (run.surge - settled) for share in FALLS)
    falls = tuple(float(last_above(time, level[:, None], limit)[0]) for limit in limits)
    return RecordedStart(
        run.surge,
        ends.of(run.surge, 0.1),
        settled,
        ends.of(settled),
        falls,
        run.settle[0],
        time,
        level,
    )


def _levels(
    recording: RecordedColumns, wave: Waveform, run: MachineRun, end: float
) -> tuple[Samples, Samples]:
    """Return the middle of each cycle of the start in s from closing, and its rms without noise."""
    import numpy as np

    cycle = wave.per_cycle * wave.clock.step
    times, levels = [], []
    for points in cycles(recording, wave):
        inside = (points.t >= run.start + cycle / 2) & (points.t <= run.start + end + 5 * cycle)
        times.append(points.t[inside] - run.start)
        levels.append(np.sqrt(np.maximum(points.level[inside] ** 2 - wave.noise**2, 0.0)))
    return np.concatenate(times), np.concatenate(levels)


def last_above(t: Samples, level: Samples, limit: Any) -> Samples:
    """Return when each column of levels was last above its limit; infinite where it still is."""
    import numpy as np

    above = level > limit
    last = len(level) - 1 - np.argmax(above[::-1], axis=0)
    ever, ends = above.any(axis=0), last == len(level) - 1
    after = np.minimum(last + 1, len(level) - 1)
    lane = np.arange(level.shape[1])
    drop = level[last, lane] - level[after, lane]
    part = (level[last, lane] - limit) / np.where(drop > 0, drop, 1.0)
    when = t[last] + part * (t[after] - t[last])
    found: Samples = np.where(ever, np.where(ends, np.inf, when), 0.0)
    return found

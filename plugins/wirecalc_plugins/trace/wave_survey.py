"""The frequency, the direct part and the noise of a waveform, from its first clear windows."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from wirecalc import RecordedColumns

from .frames import SURGE_S, Waveform, frames
from .stamps import Clock

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

MAINS_HZ = ((15.0, 18.0), (45.0, 66.0), (380.0, 420.0))  # railway, mains, aircraft; practice
_WINDOW_S, _LEAST_SAMPLES, _LEAST_PERIODS = 0.25, 64, 4
_ENOUGH = 40  # windows with a clear frequency
_QUIET = 0.02  # share of the span within which nothing runs
_NOISY = 0.002  # share of the span under which noise changes nothing
_SIDED = 0.05  # share of the highest that a rectified waveform dips below zero; practice
_SMOOTHED = 12  # parts of a cycle over which noise is averaged to count it


class _Seen(NamedTuple):
    """Frequencies, means, errors of the clear windows; means and rms of those with nothing on."""

    found: list[float]
    means: list[float]
    errors: list[float]
    quiet: list[float]
    noises: list[float]


def waveform(recording: RecordedColumns, clock: Clock) -> Waveform:
    """Find the frequency and the direct part of a waveform from its first clear windows.

    In windows of 0.25 s the upward crossings are counted, with hysteresis of 0.3 rms; a window
    whose periods scatter is left out; the median of up to 40 windows counts. Where there is noise
    they are counted again, over means of a twelfth of a cycle.
    """
    import numpy as np

    step, over = clock.step, recording.overview
    seen = _survey(recording, clock, 1)
    noise = float(np.quantile(seen.noises, 0.1)) if seen.noises else 0.0
    noise = noise if noise > _NOISY * (over.high[0] - over.low[0]) else 0.0
    if noise and seen.found:
        wide = max(1, int(1 / (float(np.median(seen.found)) * step * _SMOOTHED)))
        seen = _survey(recording, clock, wide)._replace(quiet=seen.quiet)
    apparent = float(np.median(seen.found)) if seen.found else None
    rectified = _one_sided(recording, apparent)
    frequency = apparent / 2 if apparent is not None and rectified else apparent
    if not any(low <= (frequency or 0.0) <= high for low, high in MAINS_HZ):
        frequency = None
    per_cycle = 1 / (frequency * step) if frequency is not None else SURGE_S / step
    offset = float(np.median(seen.quiet or ([] if rectified else seen.means) or [0.0]))
    scatter = 0.0
    if apparent is not None and (clock.jitter or noise):
        among = float(np.std(seen.found)) / apparent / math.sqrt(len(seen.found))
        scatter = max(among, float(np.median(seen.errors)))
    about = frequency, per_cycle, offset, bool(seen.quiet), apparent, scatter
    return Waveform(clock, *about, noise, rectified)


def _survey(recording: RecordedColumns, clock: Clock, wide: int) -> _Seen:
    """Go through the windows of a waveform, over means of so many readings."""
    import numpy as np

    size = max(_LEAST_SAMPLES, round(_WINDOW_S / clock.step))
    span = recording.overview.high[0] - recording.overview.low[0]
    seen = _Seen([], [], [], [], [])
    for frame in frames(recording, clock):
        t, x = clock.even(frame.t), frame.values[0]
        if wide > 1 and len(x) > wide:
            x = np.convolve(x, np.full(wide, 1 / wide), "valid")
            t = t[wide // 2 :][: len(x)]
        for begin in range(0, len(x), size):
            window = x[begin : begin + size]
            if len(window) < min(size, len(x)) / 2 or len(window) < 8:
                continue
            periods = _periods(t[begin : begin + size], window)
            if periods is not None:
                seen.found.append(1 / periods[0])
                seen.means.append(periods[1])
                seen.errors.append(periods[2])
            elif window.std() < _QUIET * span:
                seen.quiet.append(float(window.mean()))
                seen.noises.append(float(window.std()))
        if len(seen.found) >= _ENOUGH:
            break
    return seen


def _one_sided(recording: RecordedColumns, apparent: float | None) -> bool:
    """Whether no reading lies on one side of zero, and there are twice as many waves as mains."""
    low, high = recording.overview.low[0], recording.overview.high[0]
    twice = apparent is not None and any(2 * a <= apparent <= 2 * b for a, b in MAINS_HZ)
    return twice and (low >= -_SIDED * high or high <= -_SIDED * low)


def _periods(t: Numbers, window: Numbers) -> tuple[float, float, float] | None:
    """Return the mean period in s and the mean over whole periods, and the error.

    None where it is not clear. Each end of them is off by what a period scatters, of its root of 2.
    """
    import numpy as np

    x = window - (window.max() + window.min()) / 2
    edge = 0.3 * float(x.std())
    if edge == 0:
        return None
    side = np.where(x > edge, 1, np.where(x < -edge, -1, 0))
    known = np.flatnonzero(side)
    up = np.flatnonzero((side[known[1:]] > 0) & (side[known[:-1]] < 0))
    at = known[1:][up]  # the first sample over the upper edge
    if len(at) <= _LEAST_PERIODS:
        return None
    when = t[at] - (x[at] - edge) / (x[at] - x[at - 1]) * (t[at] - t[at - 1])
    lengths = np.diff(when)
    if lengths.std() > 0.1 * lengths.mean():
        return None
    mean = float(lengths.mean())
    error = float(lengths.std()) / mean / len(lengths) * math.sqrt(2)
    return mean, float(window[at[0] : at[-1]].mean()), error

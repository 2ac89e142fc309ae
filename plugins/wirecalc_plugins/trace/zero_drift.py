"""The zero of a clamp that drifts over minutes, from the means over whole cycles. Needs numpy."""

from __future__ import annotations

from typing import TYPE_CHECKING

from wirecalc import RecordedColumns

from .frames import Waveform, frames

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

BIN_S = 4.0  # over which a clamp's zero stands still; practice
_CYCLES = 12  # whole cycles of a window that gives one mean
_QUIET, _STEADY = 0.02, 0.05  # shares of the highest rms: nothing on; change from window to window
_DRIFTS = 0.02  # share of the usual rms by which a zero must move to matter
_OWN, _SOON_S = 0.15, 3.0  # share of the usual rms by which a load has a mean of its own; in s
_FEWEST = 3  # windows of a bin that give its median

Drift = tuple[tuple[float, ...], tuple[float, ...]]
NONE: Drift = ((), ())


def zero_drift(recording: RecordedColumns, wave: Waveform) -> Drift:
    """Return times in s and direct parts in A, a pair each four seconds; none where it stands.

    A running load whose own direct part steps as it is switched (half waves) tells no zero: then
    only the times with nothing on count.
    """
    import numpy as np

    over = recording.overview
    if wave.frequency is None or wave.rectified or over.last - over.first < 2 * BIN_S:
        return NONE
    t, mean, rms = _windows(recording, wave)
    if not t.size:
        return NONE
    quiet = rms < _QUIET * rms.max()
    steps = np.abs(np.diff(rms, prepend=rms[0])) + np.abs(np.diff(rms, append=rms[-1]))
    steady = ~quiet & (steps < _STEADY * rms)
    off, on = (_bins(t[kind], mean[kind]) for kind in (quiet, steady))
    usual = float(np.median(rms[~quiet])) if (~quiet).any() else 0.0
    known = off if _own(t, mean, quiet, steady) > _OWN * usual else {**on, **off}
    if len(known) < 2:
        return NONE
    knots = sorted(known.values())
    zeros = tuple(zero for _, zero in knots)
    if max(zeros) - min(zeros) < _DRIFTS * usual:
        return NONE
    return tuple(when for when, _ in knots), zeros


def _own(t: Numbers, mean: Numbers, quiet: NDArray[np.bool_], steady: NDArray[np.bool_]) -> float:
    """Return by how many A the mean steps as a load is switched on, at most."""
    import numpy as np

    at = np.flatnonzero(quiet | steady)
    one, two = at[:-1], at[1:]
    switched = (quiet[one] != quiet[two]) & (t[two] - t[one] < _SOON_S)
    return float(np.abs(mean[two] - mean[one])[switched].max(initial=0.0))


def _windows(recording: RecordedColumns, wave: Waveform) -> tuple[Numbers, Numbers, Numbers]:
    """Return times, means and rms about the mean, over windows of twelve whole cycles."""
    import numpy as np

    size = round(_CYCLES * wave.per_cycle)
    found = []
    for frame in frames(recording, wave.clock):
        whole = len(frame.t) // size * size
        if whole:
            parts = frame.values[0][:whole].reshape(-1, size)
            middle = frame.t[size // 2 : whole : size]
            found.append(np.array([middle, parts.mean(axis=1), parts.std(axis=1)]))
    t, mean, rms = np.concatenate(found, axis=1) if found else np.zeros((3, 0))
    return t, mean, rms


def _bins(t: Numbers, mean: Numbers) -> dict[int, tuple[float, float]]:
    """Return the middle time and the median of each four seconds that have enough windows."""
    import numpy as np

    which = (t // BIN_S).astype(int)
    found = {}
    for one in np.unique(which).tolist():
        mine = which == one
        if mine.sum() >= _FEWEST:
            found[one] = (float(t[mine].mean()), float(np.median(mean[mine])))
    return found

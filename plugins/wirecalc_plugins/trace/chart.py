"""The chart of a recording: the highest start of a waveform, or the whole log."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from wirecalc import RecordedColumns, charts, show

from ..motor.start_checks import SHORT_OF_LRA, WINDOW_RMS
from . import frames as recordings
from . import rms_levels
from .analysis import Analysis
from .machine_run import MachineRun
from .plate_view import TracePlate, locked_at_supply

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

_ACROSS = 1600  # places across the chart; of more readings the least and most of each are drawn
_BEFORE, _AFTER, _LEAST_S = 0.1, 3.0, 0.4  # of the time to settle, around a start
_MOST_S = 5.0


def trace_chart(
    recording: RecordedColumns,
    found: Analysis,
    run: MachineRun | None,
    plate: TracePlate,
    unit: str,
) -> charts.Chart:
    """Describe the chart: what was recorded, its rms, the settled level, the expected band."""
    begin, end = _span(recording, found, run)
    wave = found.wave
    name = "current" if wave is not None else f"{found.kind} readings"
    rows = recordings.frames(recording, None if wave is None else wave.clock)
    zero = (lambda t: 0.0) if wave is None else wave.zero
    pieces = ((f.t, f.values[0] - zero(f.t), f.fresh) for f in rows)
    lines = [
        charts.Line(name, *_drawn(pieces, begin, end), fine=wave is not None, strong=wave is None)
    ]
    if wave is not None:
        levels = ((p.t, p.level, p.fresh) for p in rms_levels.cycles(recording, wave))
        lines.append(charts.Line("one-cycle rms", *_drawn(levels, begin, end), strong=True))
    limits = []
    if run is not None and run.settled is not None:
        limits.append(
            charts.Limit(f"settled: {show(run.settled, unit)}", run.settled, binding=False)
        )
    if unit == "A":
        limits += _expected(plate)
    what = "Highest start" if wave is not None and found.begun else "Recording"
    quantity = "power" if unit == "W" else "current"
    return charts.Chart(
        title=f"{what} of {recording.name}",
        text=_text(recording, found, run, unit),
        x=charts.Axis("time", "s"),
        y=charts.Axis(quantity, unit),
        lines=tuple(lines),
        limits=tuple(limits),
    )


def _expected(plate: TracePlate) -> Iterator[charts.Limit]:
    """Yield the expected band of a start and the rated load, as `inrush` has them."""
    locked = locked_at_supply(plate)
    if locked is not None:
        least = locked.least * SHORT_OF_LRA
        yield charts.Limit(f"expected start rms, least: {show(least, 'A')}", least)
        if locked.most is not None:
            most = locked.most * WINDOW_RMS
            yield charts.Limit(f"expected start rms, most: {show(most, 'A')}", most)
    if plate.rated is not None:
        yield charts.Limit(f"rated load: {show(plate.rated, 'A')}", plate.rated, binding=False)


def _span(
    recording: RecordedColumns, found: Analysis, run: MachineRun | None
) -> tuple[float, float]:
    """Return the span of time to draw: around the start of a waveform, or all."""
    over = recording.overview
    if found.wave is None or run is None:
        return over.first, over.last
    settle = run.settle[0] if run.settle is not None else run.end - run.start
    long = min(max(_AFTER * settle, _LEAST_S), _MOST_S)
    return max(over.first, run.start - _BEFORE * long), min(over.last, run.start + long)


def _drawn(
    pieces: Iterator[tuple[Numbers, Numbers, bool]], begin: float, end: float
) -> tuple[list[float], list[float]]:
    """Return the curve within a span, broken at gaps; of too many values least and most of each
    place.
    """
    import numpy as np

    least, most = np.full(_ACROSS, np.inf), np.full(_ACROSS, -np.inf)
    few: list[Numbers] | None = []
    for t, y, fresh in pieces:
        mine = (t >= begin) & (t <= end)
        t, y = t[mine], y[mine]
        place = np.minimum(((t - begin) / (end - begin) * _ACROSS).astype(int), _ACROSS - 1)
        np.minimum.at(least, place, y)
        np.maximum.at(most, place, y)
        if few is not None and t.size:
            few += [np.array([[t[0]], [np.nan]])] if fresh and few else []
            few.append(np.array([t, y]))
            few = few if sum(piece.shape[1] for piece in few) <= 2 * _ACROSS else None
    if few:
        whole = np.concatenate(few, axis=1)
        return whole[0].tolist(), whole[1].tolist()
    at = np.flatnonzero(np.isfinite(least))
    centres = begin + (at + 0.5) * (end - begin) / _ACROSS
    both = np.column_stack((least[at], most[at])).ravel()
    gaps = 2 * (np.flatnonzero(np.diff(at) > 2) + 1)
    across = np.insert(np.repeat(centres, 2), gaps, np.repeat(centres, 2)[gaps])
    return across.tolist(), np.insert(both, gaps, np.nan).tolist()


def _text(recording: RecordedColumns, found: Analysis, run: MachineRun | None, unit: str) -> str:
    said = [f"{recording}, {found.kind}, {len(found.begun)} starts."]
    if run is not None:
        said.append(f"Highest level of the start drawn: {show(run.highest, unit)}")
        if run.settled is not None:
            said.append(f", settled at {show(run.settled, unit)}")
        if run.settle is not None:
            said.append(f" after {show(run.settle[0], 's')}")
        said.append(".")
    return " ".join(said[:1]) + " " + "".join(said[1:])

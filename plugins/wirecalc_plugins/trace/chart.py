"""The chart of a recording: the highest start of a waveform, or the whole log."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

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
_SAME_TOP, _BEYOND = 0.9, 1.25  # of the farther end of a clipped waveform; how far its grey reaches
_STEPS = 12.0  # of a log that a start is drawn over at least
_ZOOMED = 8.0  # times as long a log must be as its start for that to be drawn apart
_HOUR_S, _HOURS_FROM, _MINUTES_FROM = (
    3600.0,
    7200.0,
    600.0,
)  # s; of a span, from which it is said so


class _Window(NamedTuple):
    """A span of time in s, and how it is written on the axis: in units of so many s."""

    begin: float
    end: float
    unit: str
    seconds: float
    label: str = "time"
    zero: float = 0.0

    @property
    def axis(self) -> charts.Axis:
        """The axis of this span."""
        return charts.Axis(self.label, self.unit)

    def at(self, t: Numbers) -> Numbers:
        """Return times as they stand on the axis."""
        return (t - self.zero) / self.seconds


def trace_chart(
    recording: RecordedColumns,
    found: Analysis,
    run: MachineRun | None,
    plate: TracePlate,
    unit: str,
) -> charts.Chart:
    """Describe the chart: what was recorded, its rms, the settled level, the expected band.

    Of a waveform that is the highest start; of a log all of it, with the highest start below.
    """
    over = recording.overview
    whole = _window(over.first, over.last, recording.clock)
    near = _near(recording, found, run)
    quantity = "power" if unit == "W" else "current"
    y = charts.Axis(quantity, unit)
    text = _text(recording, found, run, unit)
    settled = _settled(run, unit)
    expected = tuple(_expected(plate)) if unit == "A" else ()
    if found.wave is not None and near is not None:
        title = f"Highest start of {recording.name}{_cut(near, whole)}"
        bands, tops = _cut_off(recording, found, near)
        limits = (*settled, *expected, *tops)
        lines = _lines(recording, found, near)
        return charts.Chart(title, text, near.axis, y, (), lines, limits, bands)
    bands, tops = _cut_off(recording, found, whole)
    apart = near is not None and whole.end - whole.begin > _ZOOMED * (near.end - near.begin)
    limits = (*settled, *_rated(expected), *tops) if apart else (*settled, *expected, *tops)
    lines = _lines(recording, found, whole)
    title = f"Recording of {recording.name}"
    chart = charts.Chart(title, text, whole.axis, y, (), lines, limits, bands)
    if near is None or run is None or not apart:
        return chart
    near = near._replace(label="time from its start", zero=run.start)
    lines = _lines(recording, found, near)
    zoom = charts.Chart("Its highest start", text, near.axis, y, (), lines, (*settled, *expected))
    return chart._replace(zoom=zoom)


def _lines(recording: RecordedColumns, found: Analysis, window: _Window) -> tuple[charts.Line, ...]:
    wave = found.wave
    name = "current" if wave is not None else f"{found.kind} readings"
    rows = recordings.frames(recording, None if wave is None else wave.clock)
    zero = (lambda t: 0.0) if wave is None else wave.zero
    pieces = ((f.t, f.values[0] - zero(f.t), f.fresh) for f in rows)
    x, y = _drawn(pieces, window)
    lines = [charts.Line(name, x, y, fine=wave is not None, strong=wave is None)]
    if wave is not None:
        levels = ((p.t, p.level, p.fresh) for p in rms_levels.cycles(recording, wave))
        lines.append(charts.Line("one-cycle rms", *_drawn(levels, window), strong=True))
    return tuple(lines)


def _settled(run: MachineRun | None, unit: str) -> tuple[charts.Limit, ...]:
    if run is None or run.settled is None:
        return ()
    return (charts.Limit(f"settled: {show(run.settled, unit)}", run.settled, binding=False),)


def _rated(expected: Sequence[charts.Limit]) -> Iterator[charts.Limit]:
    """Yield what is expected of a run, without what is expected of its start."""
    return (limit for limit in expected if not limit.binding)


def _cut_off(
    recording: RecordedColumns, found: Analysis, window: _Window
) -> tuple[tuple[charts.Band, ...], tuple[charts.Limit, ...]]:
    """Describe where a waveform was cut off: the levels, and the areas that were not recorded."""
    if not found.flat or found.wave is None:
        return (), ()
    over, shift = recording.overview, found.wave.offset
    ends = (over.high[0] - shift, over.low[0] - shift)
    top = max(map(abs, ends))
    x = [(at - window.zero) / window.seconds for at in (window.begin, window.end)]
    mine = [end for end in ends if abs(end) > _SAME_TOP * top]
    areas = [sorted((end, _BEYOND * end)) for end in mine]
    bands = tuple(
        charts.Band("cut off, not recorded" if i == 0 else "", x, [low] * 2, [high] * 2)
        for i, (low, high) in enumerate(areas)
    )
    named = (charts.Limit(f"cut off at {show(end, 'A')}", end, binding=False) for end in mine)
    return bands, tuple(named)


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


def _window(begin: float, end: float, clock: bool = False) -> _Window:
    """Return a span of time, in hours or minutes where it is long."""
    label = "time since midnight" if clock else "time"
    if end - begin >= _HOURS_FROM:
        return _Window(begin, end, "h", _HOUR_S, label)
    if end - begin >= _MINUTES_FROM:
        return _Window(begin, end, "min", 60.0)
    return _Window(begin, end, "s", 1.0)


def _near(recording: RecordedColumns, found: Analysis, run: MachineRun | None) -> _Window | None:
    """Return the span around a start; None where none was recorded."""
    over = recording.overview
    if run is None or (run.cut_start and found.wave is None):
        return None
    settle = run.settle[0] if run.settle is not None else run.end - run.start
    long = min(max(_AFTER * settle, _LEAST_S), _MOST_S)
    if found.wave is None:
        long = max(_AFTER * settle, _STEPS * over.step)
    begin = max(over.first, run.start - max(_BEFORE * long, 0.0 if found.wave else over.step))
    return _window(begin, min(over.last, run.start + long))


def _cut(window: _Window, whole: _Window) -> str:
    """Say which part of a recording is drawn, where it is not all."""
    if window.end - window.begin > 0.99 * (whole.end - whole.begin):
        return ""
    drawn = f"{window.begin:.4g} to {window.end:.4g} s"
    return f", {drawn} of {whole.begin:.4g} to {whole.end:.4g} s"


def _drawn(
    pieces: Iterator[tuple[Numbers, Numbers, bool]], window: _Window
) -> tuple[list[float], list[float]]:
    """Return the curve within a span, broken at gaps; of too many values least and most of each
    place.
    """
    import numpy as np

    begin, end = window.begin, window.end
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
        return window.at(whole[0]).tolist(), whole[1].tolist()
    at = np.flatnonzero(np.isfinite(least))
    centres = window.at(begin + (at + 0.5) * (end - begin) / _ACROSS)
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

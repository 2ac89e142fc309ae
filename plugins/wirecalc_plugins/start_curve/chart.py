"""The chart of starts: one-cycle rms current of each variant, or the waveform of a single one."""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import charts

from .healthy_starts import Start
from .meter_readings import MeterReadings
from .starting import SAMPLES, Curve, sliding_rms

_LEAST_S, _ROOM = 0.3, 1.25  # the shortest time that is shown, and the room after settling
_POINTS = 400

Shown = tuple[str, Curve, MeterReadings]


def start_chart(shown: Sequence[Shown], duration: float) -> charts.Chart:
    """Describe the chart: amperes against seconds, up to shortly after the last one settles."""
    ends = [m.settle_time for _, _, m in shown if m.settle_time is not None]
    end = min(duration, max(_LEAST_S, _ROOM * max(ends))) if ends else min(duration, 1.0)
    lines = []
    if len(shown) == 1:
        _, curve, _ = shown[0]
        keep = curve.time <= end
        lines.append(
            charts.Line("current", list(curve.time[keep]), list(curve.line[keep]), fine=True)
        )
        lines.append(_rms("one-cycle rms", curve, end)._replace(strong=True))
    else:
        lines.extend(_rms(name, curve, end) for name, curve, _ in shown)
    said = "; ".join(
        f"{name} falls from {m.cycle:.3g} to {m.settled:.3g} A within {m.settle_time:.2g} s"
        if m.settle_time is not None
        else f"{name} stays at {m.settled:.3g} A"
        for name, _, m in shown
    )
    title = (
        "Line current of the start" if len(shown) == 1 else "One-cycle rms current of each start"
    )
    return charts.Chart(
        title=title,
        text=f"{title}, 0 to {end:.2g} s: {said}.",
        x=charts.Axis("time after closing", "s"),
        y=charts.Axis("line current", "A", span=_from_zero(lines)),
        lines=tuple(lines),
    )


def either_way_chart(starts: Sequence[Start]) -> charts.Chart:
    """Describe the chart of a start that cannot be foretold: both ways that it may go.

    Of those that start it is the soonest, which shows what a start that comes off looks like.
    """
    settling = [(s.meters.settle_time, s) for s in starts if s.meters.settle_time is not None]
    soonest = min(settling, key=lambda pair: pair[0], default=None)
    stays = next((s for s in starts if not s.settles), None)
    end = _LEAST_S if soonest is None else max(_LEAST_S, _ROOM * soonest[0])
    lines, said = [], []
    if soonest is not None:
        m = soonest[1].meters
        lines.append(_rms("if it starts, at the soonest", soonest[1].curve, end))
        said.append(f"if it starts the meter falls from {m.cycle:.3g} A to {m.settled:.3g} A")
    if stays is not None:
        lines.append(_rms("if it does not start", stays.curve, end))
        said.append(f"if it does not start it stays near {stays.meters.cycle:.3g} A")
    title = "One-cycle rms current of a start that cannot be foretold"
    return charts.Chart(
        title=title,
        text=f"{title}, first {end:.2g} s: {'; '.join(said)}.",
        x=charts.Axis("time after closing", "s"),
        y=charts.Axis("line current", "A", span=_from_zero(lines)),
        lines=tuple(lines),
    )


def _from_zero(lines: Sequence[charts.Line]) -> tuple[float, float]:
    """Return the span of the current axis; zero is in it, so that heights compare."""
    values = [v for line in lines for v in (min(line.y), max(line.y))]
    low, high = min(0.0, *values), max(values)
    return 1.05 * low, 1.05 * high


def _rms(name: str, curve: Curve, end: float) -> charts.Line:
    """Return one-cycle rms against the end of each cycle; what no longer changes goes on flat."""
    rms, time = sliding_rms(curve.line), curve.time[SAMPLES - 1 :]
    keep = time <= end
    step = max(1, int(keep.sum()) // _POINTS)
    x, y = list(time[keep][::step]), list(rms[keep][::step])
    if curve.time[-1] < end:
        x.append(end)
        y.append(float(rms[-1]))
    return charts.Line(name, x, y)

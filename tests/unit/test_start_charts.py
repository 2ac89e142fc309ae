"""The charts of starts as they are drawn: no legend over a line, no label over another."""

from __future__ import annotations

import math
from typing import Any

import pytest

from wirecalc import charts
from wirecalc.output import drawing
from wirecalc_plugins.start_curve import chart as start_charts
from wirecalc_plugins.start_curve.healthy_starts import Start
from wirecalc_plugins.start_curve.meter_readings import MeterReadings

NAMES = (
    "healthy",
    "open-start-winding",
    "low-supply",
    "long-cord",
    "locked-rotor",
    "swapped-leads",
)


def falls(name: str, at: float, level: float, low: float) -> charts.Line:
    x = [i / 100 for i in range(71)]
    y = [level if t < at else low + (level - low) * math.exp(-(t - at) / 0.03) for t in x]
    return charts.Line(name, x, y)


def of(lines: tuple[charts.Line, ...], bands: tuple[charts.Band, ...] = ()) -> charts.Chart:
    axis = charts.Axis("line current", "A", span=(0.0, 22.0))
    return charts.Chart(
        "Starts", "starts", charts.Axis("time", "s"), axis, lines=lines, bands=bands
    )


LEVELS = (
    (0.28, 19.5, 3.4), (9.0, 9.5, 9.5), (0.37, 16.5, 3.0),
    (0.34, 17.3, 3.3), (9.0, 19.5, 3.0), (0.3, 19.4, 14.0),
)  # fmt: skip
SIX = of(tuple(falls(name, *level) for name, level in zip(NAMES, LEVELS, strict=True)))
ONE = falls("middle of all", 0.3, 20, 4)
FAN = of(
    (ONE._replace(strong=True), falls("single starts", 0.25, 19, 3)._replace(fine=True)),
    (charts.Band("least to most", ONE.x, [0.8 * v for v in ONE.y], [1.05 * v for v in ONE.y]),),
)


def boxes(chart: charts.Chart, monkeypatch: pytest.MonkeyPatch) -> tuple[Any, Any, list[Any]]:
    """Draw a chart; return its axes, its legend's box and the boxes of its words."""
    from matplotlib import pyplot

    kept: list[Any] = []
    monkeypatch.setattr(pyplot, "close", kept.append)
    picture = drawing.draw(chart, ".png")
    assert picture.startswith(b"\x89PNG")
    (figure,) = kept
    figure.draw_without_rendering()
    (axes,) = figure.axes
    legends = [*figure.legends, *([axes.get_legend()] if axes.get_legend() else [])]
    (legend,) = (found.get_window_extent() for found in legends)
    words = [axes.xaxis.label, axes.yaxis.label, axes.title, axes._left_title]
    shown = [w.get_window_extent() for w in words if w.get_text()]
    ticks = [t.get_window_extent() for t in axes.get_xticklabels() if t.get_text()]
    assert figure.get_size_inches()[0] * figure.dpi == 800
    return axes, legend, [*shown, *ticks]


@pytest.mark.parametrize("chart", [SIX, FAN], ids=["six starts", "fan"])
def test_the_legend_covers_no_line_and_no_word(
    chart: charts.Chart, monkeypatch: pytest.MonkeyPatch
) -> None:
    axes, legend, words = boxes(chart, monkeypatch)
    for line in axes.get_lines():
        for place in axes.transData.transform(line.get_xydata()):
            assert not legend.padded(4).contains(*place), line.get_label()  # half a mark
    for i, one in enumerate(words):
        assert not legend.overlaps(one)
        assert not any(one.overlaps(other) for other in words[i + 1 :])


class Fake:
    """A simulated start of a few cycles, at one level."""

    def __init__(self, level: float) -> None:
        import numpy as np

        self.time = np.arange(128 * 60) / (128 * 60)
        self.line = level * math.sqrt(2) * np.sin(2 * math.pi * 60 * self.time)


def start(level: float, settle: float | None, settled: float) -> Start:
    curve: Any = Fake(level)
    return Start(curve, MeterReadings(30, level, 19, settled, 110, settle, settle, 1700, 100))


def test_a_start_that_is_open_shows_the_soonest_that_starts_and_one_that_does_not() -> None:
    drawn = start_charts.either_way_chart(
        [start(20, None, 20), start(19, 2.0, 4.4), start(18, 0.4, 4.1)]
    )
    soonest, never = drawn.lines
    assert soonest.name == "if it starts, at the soonest"
    assert max(soonest.y) == pytest.approx(18, rel=1e-3)
    assert never.name == "if it does not start"
    assert max(never.y) == pytest.approx(20, rel=1e-3)
    assert soonest.x[-1] == pytest.approx(0.5, abs=0.01)  # a quarter more than it takes
    assert "falls from 18 A to 4.1 A" in drawn.text

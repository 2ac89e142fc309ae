"""Charts as they are drawn: no label on another or on a curve, hours on the axis, a start apart.

The boxes are those of the drawing itself, taken before the picture is closed.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from matplotlib import pyplot
from matplotlib.text import Text

import wirecalc
from tests.published.recorded import recorded
from wirecalc import charts
from wirecalc.output.drawing import draw

PLATE = {
    "rated_load_current": "1.6 A",
    "locked_rotor_current": "12 A",
    "nameplate_voltage": "115 V",
    "voltage": "116 V",
    "motor_kind": "compressor",
}
HOURS: list[list[float]] = [[0, 600], *([[11, 2], [1.5, 1.2, 300], [1.2, 1137], [0, 1709]] * 11)]
START: list[list[float]] = [[0, 1], [11, 0.4], [1.3, 6], [0, 1]]
TRIES: list[list[float]] = [[0, 30], *([[11, 8], [0, 120]] * 40)]
RECORDINGS: dict[str, tuple[list[list[float]], float, float, float]] = {
    "hours": (HOURS, 0.5, 0, 1e9),
    "a start": (START, 2000, 60, 1e9),
    "a start cut off": (START, 2000, 60, 10.0),
    "warms up": ([[0, 10], [11, 0.4], [1.9, 1.3, 600], [0, 60]], 10, 0, 1e9),
    "tries": (TRIES, 1, 0, 1e9),
    "near its rated load": ([[0, 10], [11, 0.4], [1.58, 100], [0, 10]], 10, 0, 1e9),
}


@contextmanager
def drawn(chart: charts.Chart, monkeypatch: pytest.MonkeyPatch) -> Iterator[Any]:
    """Draw a chart and give its figure before it is closed."""
    kept: list[Any] = []
    with monkeypatch.context() as patched:
        patched.setattr(pyplot, "close", kept.append)
        draw(chart, ".png")
    (figure,) = kept
    yield figure
    pyplot.close(figure)


def boxes(axes: Any) -> list[tuple[str, Any]]:
    renderer = axes.figure.canvas.get_renderer()
    return [(t.get_text(), Text.get_window_extent(t, renderer)) for t in axes.texts]


def described(name: str, tmp_path: Path) -> charts.Chart:
    levels, rate, frequency, cut = RECORDINGS[name]
    path = tmp_path / f"{name}.csv"
    path.write_text(recorded(levels, rate, int(frequency), cut), encoding="utf-8")
    (make,) = wirecalc.run("trace", recording=str(path), **PLATE).charts
    return make()


@pytest.mark.parametrize("name", RECORDINGS)
def test_no_label_lies_on_another_or_on_a_curve(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with drawn(described(name, tmp_path), monkeypatch) as figure:
        assert figure.get_size_inches()[0] * figure.dpi == 800
        for axes in figure.axes:
            frame, labels = axes.get_window_extent(), boxes(axes)
            assert labels
            for (one, a), (two, b) in combinations(labels, 2):
                assert not a.overlaps(b), (one, two)
            for text, box in labels:
                assert frame.x0 <= box.x0 and box.x1 <= frame.x1, text
                for line in axes.lines:
                    if line.get_linewidth() > 2.5:  # what is judged
                        path = line.get_transform().transform_path(line.get_path())
                        assert not path.intersects_bbox(box, filled=False), text


@pytest.mark.parametrize(
    ("name", "unit", "last"),
    [("hours", "h", 35228 / 3600), ("tries", "min", 5149 / 60), ("a start", "s", 2.3)],
)
def test_the_axis_has_the_unit_of_so_long_a_time(
    name: str, unit: str, last: float, tmp_path: Path
) -> None:
    chart = described(name, tmp_path)
    assert chart.x.unit == unit
    assert max(chart.lines[0].x) == pytest.approx(last, rel=0.05)


def test_a_start_stands_apart_below_a_log_of_hours(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    chart = described("hours", tmp_path)
    assert chart.zoom is not None
    assert (chart.zoom.x.label, chart.zoom.x.unit) == ("time from its start", "s")
    assert min(chart.zoom.lines[0].x) < 0 < max(chart.zoom.lines[0].x) < 60
    assert any(limit.name.startswith("expected start") for limit in chart.zoom.limits)
    with drawn(chart, monkeypatch) as figure:
        one, two = figure.axes
        assert one.get_window_extent().y0 > two.get_window_extent().y1
    assert described("near its rated load", tmp_path).zoom is not None
    assert described("a start", tmp_path).zoom is None


def test_what_was_cut_from_the_picture_is_said(tmp_path: Path) -> None:
    assert described("a start", tmp_path).title.endswith("s of 0 to 8.399 s")
    assert " of " not in described("hours", tmp_path).title.removeprefix("Recording of")


def test_what_was_cut_off_is_drawn_so(tmp_path: Path) -> None:
    chart = described("a start cut off", tmp_path)
    assert {limit.y for limit in chart.limits if limit.name.startswith("cut off at")} == {10, -10}
    assert [band.low[0] for band in chart.bands] == [10, pytest.approx(-12.5)]
    assert chart.bands[0].name == "cut off, not recorded"
    assert not described("a start", tmp_path).bands


def test_a_label_with_no_free_place_gets_room_on_the_right(monkeypatch: pytest.MonkeyPatch) -> None:
    x = [i / 100 for i in range(1000)]
    full = charts.Line("full", x, [10.0 * (i % 2) for i in range(1000)], strong=True)
    chart = charts.Chart(
        *("a", "a", charts.Axis("time", "s"), charts.Axis("current", "A")),
        *((), (full,), (charts.Limit("a limit in the middle of it", 5.0),)),
    )
    with drawn(chart, monkeypatch) as figure:
        (axes,) = figure.axes
        ((_, box),) = boxes(axes)
        assert axes.transData.inverted().transform((box.x0, box.y0))[0] > 10
        assert max(axes.get_xticks()) <= 10


def test_a_log_with_clock_times_counts_from_midnight(tmp_path: Path) -> None:
    path = tmp_path / "clock.csv"
    rows = (f"{8 + i // 60:02d}:{i % 60:02d}:00,{1.3 if i % 40 < 20 else 0.0}" for i in range(300))
    path.write_text("\n".join(["time,current_rms_A", *rows, ""]), encoding="utf-8")
    (make,) = wirecalc.run("trace", recording=str(path)).charts
    chart = make()
    assert (chart.x.label, chart.x.unit) == ("time since midnight", "h")
    assert chart.lines[0].x[0] == pytest.approx(8, abs=0.02)

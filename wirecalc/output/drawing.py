"""A chart as SVG, PNG or CSV. The pictures are readable in grey and without telling colours apart.

They need matplotlib (the extra `analysis`). Marks differ in shape, lines in dashes, and every limit
is labelled where it stands. The SVG carries the text of the chart for screen readers.
"""

from __future__ import annotations

import io
import textwrap
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

from ..base.errors import BadInput, Problem
from ..base.extras import install
from ..said.charts import Chart, Line, Points
from .chart_data import as_csv
from .chart_labels import fit_places, label
from .chart_legend import DASHES, LIMIT, legend, limits_in_legend, many

FORMATS = (".svg", ".png", ".csv")
_LEFT_OUT = {".svg": ("Date", "Creator", "Format", "Type"), ".png": ("Software",)}
_MARKS = "osD^vP*X"
_WIDTH_IN, _HEIGHT_IN, _DPI = 8.0, 5.0, 100  # 800 pixels wide
_ROW_IN = 0.23  # height of a row that is named
_ZOOM_IN = 3.6  # height of a part that is drawn larger
_TITLE = 78  # letters of a line of the title
_ROOM = 0.07  # of the height, for the name above a limit
_JITTER = 0.28  # half the width over which the points of one place are spread


def check_name(path: Path) -> None:
    """Refuse a file name that says no known form of a chart; raises BadInput."""
    if path.suffix.casefold() not in FORMATS:
        wrong = f"{path.name!r} is none of {', '.join(FORMATS)}"
        raise BadInput([Problem("--chart", wrong, "such as --chart batch.svg")])


def draw(chart: Chart, form: str) -> bytes:
    """Return the picture of a chart (.svg or .png), or its numbers (.csv).

    Raises BadInput for a picture without matplotlib.
    """
    if form == ".csv":
        return as_csv(chart)
    try:
        import matplotlib as mpl
    except ImportError:
        do = install("analysis")
        raise BadInput([Problem("--chart", "drawing needs matplotlib", do)]) from None
    mpl.use("Agg")
    settings: Any = {"svg.hashsalt": "wirecalc", "svg.fonttype": "none", "font.size": 13}
    with mpl.rc_context(settings):
        from matplotlib import pyplot

        parts = [chart] if chart.zoom is None else [chart, chart.zoom]
        heights = [max(_HEIGHT_IN, _ROW_IN * len(chart.y.marks)), _ZOOM_IN][: len(parts)]
        figure, all_axes = pyplot.subplots(
            len(parts),
            squeeze=False,
            figsize=(
                _WIDTH_IN,
                sum(heights) + (1.6 if chart.bands else 1.0 if many(chart) else 0.0),
            ),
            height_ratios=heights,
            dpi=_DPI,
            layout="constrained",
        )
        try:
            drawn = list(zip(all_axes[:, 0], parts, strict=True))
            for axes, part in drawn:
                _fill(axes, part)
            legend(all_axes[0, 0], chart)
            figure.draw_without_rendering()
            for axes, part in drawn:
                if part.x.places:
                    fit_places(axes, part.x.groups)
            figure.draw_without_rendering()
            for axes, part in drawn:
                if not label(axes, part):
                    limits_in_legend(axes, part)
            out = io.BytesIO()
            metadata = dict.fromkeys(_LEFT_OUT[form])
            figure.savefig(out, format=form[1:], metadata=metadata)
        finally:
            pyplot.close(figure)
    return _with_text(out.getvalue(), chart) if form == ".svg" else out.getvalue()


def _fill(axes: Any, chart: Chart) -> None:
    for band in chart.bands:
        axes.fill_between(band.x, band.low, band.high, color="0.85", linewidth=0, label=band.name)
    for words in chart.words:
        axes.text(words.x, words.y, words.text, ha="center", va="center", fontsize=15, color="0.3")
    _data(axes, chart)
    _axes(axes, chart)
    _limits(axes, chart)
    axes.set_title(textwrap.fill(chart.title, _TITLE), loc="left", fontsize=14)
    axes.grid(axis="y", color="0.9")
    axes.set_axisbelow(True)


def _data(axes: Any, chart: Chart) -> None:
    spread = _spread(chart.points) if chart.x.places else [points.x for points in chart.points]
    for place, points in enumerate(chart.points):
        number = place if points.shape is None else points.shape
        axes.plot(
            spread[place],
            points.y,
            linestyle="none",
            marker=_MARKS[number % len(_MARKS)],
            color="0.15",
            markerfacecolor="1.0" if number % 2 else "0.55",
            markersize=7,
            label=None if chart.x.places and points.shape is None else points.name or None,
            rasterized=len(points.y) > 2000,
        )
    named = -1
    marked = many(chart)
    for line in chart.lines:  # a line without a name is a piece of the one before it
        named += 1 if line.name else 0
        axes.plot(line.x, line.y, label=line.name or None, **_line_style(line, named, marked))


def _axes(axes: Any, chart: Chart) -> None:
    if chart.x.places:
        axes.set_xticks(range(len(chart.x.places)), chart.x.places)
        axes.set_xlim(-0.6, len(chart.x.places) - 0.4)
    for axis, scale in ((chart.x, axes.set_xscale), (chart.y, axes.set_yscale)):
        if axis.logarithmic:
            scale("log")
            side_of = axes.xaxis if axis is chart.x else axes.yaxis
            side_of.set_major_formatter(lambda value, _: f"{value:g}")
    for axis, side in ((chart.x, axes.xaxis), (chart.y, axes.yaxis)):
        if axis.span:
            (axes.set_xlim if side is axes.xaxis else axes.set_ylim)(axis.span)
        if axis.marks:
            side.set_ticks([v for v, _ in axis.marks], [text for _, text in axis.marks])
            side.set_ticks([], minor=True)
    if chart.x.across:
        label, unit = chart.x.across
        top = axes.secondary_xaxis("top", functions=(lambda x: x / unit, lambda x: x * unit))
        top.set_xlabel(label)
        top.set_xticks([v / unit for v, _ in chart.x.marks])
        top.set_xticks([], minor=True)
        top.xaxis.set_major_formatter(lambda value, _: f"{value:.4g}")
    axes.set_xlabel(str(chart.x))
    axes.set_ylabel(str(chart.y))


def _limits(axes: Any, chart: Chart) -> None:
    low, high = axes.get_ylim()
    top = max((limit.y for limit in chart.limits), default=low)
    if not chart.y.logarithmic and high - top < _ROOM * (high - low):
        axes.set_ylim(low, top + _ROOM * (top - low))  # the name of the highest stands above it
    for limit in chart.limits:
        axes.axhline(
            limit.y,
            color="0.0",
            linewidth=2.0 if limit.binding else 1.2,
            linestyle="-" if limit.binding else "--",
            label=LIMIT,
        )


def _line_style(line: Line, number: int, marked: bool) -> dict[str, Any]:
    """Return how a line is drawn; where there are more lines than dashes, marks tell them apart."""
    if line.fine:
        return {"color": "0.6", "linewidth": 0.9, "linestyle": "-"}
    if line.strong:
        return {"color": "0.0", "linewidth": 2.8, "linestyle": "-"}
    style: dict[str, Any] = {
        "color": "0.35",
        "linewidth": 1.6,
        "linestyle": DASHES[(number + 1) % len(DASHES)],
    }
    if marked:
        hollow = "1.0" if number % 2 else "0.2"
        style |= {"marker": _MARKS[number % len(_MARKS)], "markerfacecolor": hollow}
        style |= {"color": "0.2", "linewidth": 1.2, "linestyle": "-" if number % 2 else "--"}
        style |= {"markevery": (0.015 * number, 0.11), "markersize": 6.5}
    return style


def _spread(points: Sequence[Points]) -> list[list[float]]:
    """Spread the points of one place side by side, in their order, so that none hides another."""
    places = [x for series in points for x in series.x]
    totals, counts = Counter(places), Counter[float]()
    spread: list[list[float]] = []
    for series in points:
        spread.append([])
        for x in series.x:
            share = counts[x] / (totals[x] - 1) if totals[x] > 1 else 0.5
            counts[x] += 1
            spread[-1].append(x + _JITTER * (2 * share - 1))
    return spread


def _with_text(svg: bytes, chart: Chart) -> bytes:
    """Put title and description into the SVG, for whoever cannot see it."""
    words = (
        f' role="img" aria-labelledby="chart-title chart-text">'
        f'<title id="chart-title">{escape(chart.title)}</title>'
        f'<desc id="chart-text">{escape(chart.text)}</desc>'
    )
    head, tag, rest = svg.decode().partition("<svg ")
    attributes, _, body = rest.partition(">")
    return f"{head}{tag}{attributes}{words}{body}".encode()

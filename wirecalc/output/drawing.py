"""Drawing a chart as SVG or PNG, readable in grey and without telling colours apart.

Needs matplotlib (the extra `analysis`). Marks differ in shape, lines in dashes, and every limit
is labelled where it stands. The SVG carries the text of the chart for screen readers.
"""

from __future__ import annotations

import io
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

from ..charts import Chart, Line, Points
from ..errors import BadInput, Problem

FORMATS = (".svg", ".png")
_LEFT_OUT = {".svg": ("Date", "Creator", "Format", "Type"), ".png": ("Software",)}
_MARKS = "osD^vP*X"
_DASHES = ("-", "--", ":", "-.")
_WIDTH_IN, _HEIGHT_IN, _DPI = 8.0, 5.0, 100  # 800 pixels wide
_JITTER = 0.28  # half the width over which the points of one place are spread


def check_name(path: Path) -> None:
    """Refuse a file name that says no known form of picture; raises BadInput."""
    if path.suffix.casefold() not in FORMATS:
        wrong = f"{path.name!r} is neither {' nor '.join(FORMATS)}"
        raise BadInput([Problem("--chart", wrong, "such as --chart batch.svg")])


def draw(chart: Chart, form: str) -> bytes:
    """Return the picture of a chart; `form` is .svg or .png. Raises BadInput without matplotlib."""
    try:
        import matplotlib as mpl
    except ImportError:
        do = "install it with: pip install 'wirecalc[analysis]'"
        raise BadInput([Problem("--chart", "drawing needs matplotlib", do)]) from None
    mpl.use("Agg")
    settings: Any = {"svg.hashsalt": "wirecalc", "svg.fonttype": "none", "font.size": 11}
    with mpl.rc_context(settings):
        from matplotlib import pyplot

        figure, axes = pyplot.subplots(
            figsize=(_WIDTH_IN, _HEIGHT_IN), dpi=_DPI, layout="constrained"
        )
        try:
            _fill(axes, chart)
            out = io.BytesIO()
            metadata = dict.fromkeys(_LEFT_OUT[form])
            figure.savefig(out, format=form[1:], metadata=metadata)
        finally:
            pyplot.close(figure)
    return _with_text(out.getvalue(), chart) if form == ".svg" else out.getvalue()


def _fill(axes: Any, chart: Chart) -> None:
    for number, points in enumerate(chart.points):
        x = _spread(points) if chart.x.places else points.x
        axes.plot(
            x,
            points.y,
            linestyle="none",
            marker=_MARKS[number % len(_MARKS)],
            color="0.15",
            markerfacecolor="1.0" if number % 2 else "0.55",
            markersize=7,
            label=None if chart.x.places else points.name,
            rasterized=len(points.y) > 2000,
        )
    named = -1
    marked = sum(1 for line in chart.lines if line.name) > len(_DASHES)
    for line in chart.lines:  # a line without a name is a piece of the one before it
        named += 1 if line.name else 0
        axes.plot(line.x, line.y, label=line.name or None, **_line_style(line, named, marked))
    if chart.x.places:
        axes.set_xticks(range(len(chart.x.places)), chart.x.places)
        axes.set_xlim(-0.6, len(chart.x.places) - 0.4)
    for axis, scale in ((chart.x, axes.set_xscale), (chart.y, axes.set_yscale)):
        if axis.logarithmic:
            scale("log")
    for number, limit in enumerate(sorted(chart.limits, key=lambda level: level.y)):
        axes.axhline(
            limit.y,
            color="0.0",
            linewidth=2.0 if limit.binding else 1.2,
            linestyle="-" if limit.binding else "--",
        )
        left = number % 2 == 0
        axes.annotate(
            limit.name,
            (0.005 if left else 0.995, limit.y),
            xytext=(0, 3),
            xycoords=("axes fraction", "data"),
            textcoords="offset points",
            ha="left" if left else "right",
            va="bottom",
            fontsize=9.5,
        )
    axes.set_xlabel(str(chart.x))
    axes.set_ylabel(str(chart.y))
    axes.set_title(chart.title, loc="left", fontsize=12)
    axes.grid(axis="y", color="0.9")
    axes.set_axisbelow(True)
    if axes.get_legend_handles_labels()[1]:
        axes.legend(loc="best", frameon=True, framealpha=0.9, edgecolor="0.8")


def _line_style(line: Line, number: int, marked: bool) -> dict[str, Any]:
    """Return how a line is drawn; where there are more lines than dashes, marks tell them apart."""
    if line.thin:
        return {"color": "0.6", "linewidth": 0.7, "linestyle": "-"}
    style: dict[str, Any] = {
        "color": "0.35",
        "linewidth": 1.6,
        "linestyle": _DASHES[(number + 1) % len(_DASHES)],
    }
    if marked:
        hollow = "1.0" if number % 2 else "0.2"
        style |= {"marker": _MARKS[number % len(_MARKS)], "markerfacecolor": hollow}
        style |= {"color": "0.2", "linewidth": 1.2, "linestyle": "-" if number % 2 else "--"}
        style |= {"markevery": (0.015 * number, 0.11), "markersize": 6.5}
    return style


def _spread(points: Points) -> list[float]:
    """Spread points of one place side by side, in their order, so that none hides another."""
    counts: dict[float, int] = {}
    totals = {x: list(points.x).count(x) for x in set(points.x)}
    spread = []
    for x in points.x:
        seen = counts[x] = counts.get(x, -1) + 1
        share = seen / (totals[x] - 1) if totals[x] > 1 else 0.5
        spread.append(x + _JITTER * (2 * share - 1))
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

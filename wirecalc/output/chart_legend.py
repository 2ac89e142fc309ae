"""What the shapes and lines of a chart mean, below its axes."""

from __future__ import annotations

from typing import Any

from ..said.charts import Chart

DASHES = ("-", "--", ":", "-.")
LIMIT = "_limit"  # a label that is in no legend
_LIMIT_DASHES: tuple[Any, ...] = ("-", (0, (7, 2)), (0, (2, 1.5)), (0, (7, 2, 2, 2)))


def legend(axes: Any, chart: Chart) -> None:
    """Say what shapes and lines mean: in the axes, or below where it might cover data."""
    # a filled area and many lines leave no free corner, a limit is never covered
    if chart.bands or chart.limits or many(chart):
        handles, names = axes.get_legend_handles_labels()
        if chart.x.places:
            handles, names = _points_left(handles, names)
        axes.figure.legend(
            handles, names, loc="outside lower left", ncols=2, frameon=False, fontsize=12
        )
    elif axes.get_legend_handles_labels()[1]:
        axes.legend(loc="best", frameon=True, framealpha=0.9, edgecolor="0.8")


def _points_left(handles: list[Any], names: list[str]) -> tuple[list[Any], list[str]]:
    """Return what a legend of two columns has: points in the left one, lines in the right one."""
    from matplotlib.lines import Line2D

    both = list(zip(handles, names, strict=True))
    points = [x for x in both if x[0].get_linestyle() == "None"]
    lines = [x for x in both if x not in points]
    blank = (Line2D([], [], linestyle="none"), "")
    rows = max(len(points), len(lines))
    padded = [*points, *[blank] * (rows - len(points)), *lines, *[blank] * (rows - len(lines))]
    return [h for h, _ in padded], [name for _, name in padded]


def limits_in_legend(axes: Any, chart: Chart) -> None:
    """Name the limits below the axes, where beside their lines each name would cover data."""
    lines = [line for line in axes.lines if line.get_label() == LIMIT]
    for place, (line, limit) in enumerate(zip(lines, chart.limits, strict=True)):
        line.set(label=limit.name, linestyle=_LIMIT_DASHES[place % len(_LIMIT_DASHES)])
    for before in list(axes.figure.legends):
        before.remove()
    legend(axes, chart)
    axes.figure.draw_without_rendering()


def many(chart: Chart) -> bool:
    """Whether data lie everywhere: more lines than dashes tell apart, or rows at marks."""
    named = [line.name for line in chart.lines] + [points.name for points in chart.points]
    rows = bool(chart.y.marks) and any(named)
    return rows or sum(bool(n.name) and not (n.fine or n.strong) for n in chart.lines) > len(DASHES)

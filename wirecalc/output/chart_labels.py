"""The labels of a chart's limits and points: each where it covers no other, no curve, no edge.

Each label is written at the first of its places that is free; where none is, at the one that covers
least. Covering another label counts before all else.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from ..said.charts import Chart

# where the label of a point may stand, in points right and up of it
_PLACES = [(r, u) for d in (10, 24, 44, 70) for r in (d, -d) for u in (d * 0.9, -d * 0.9)]
_ALONG = (0.005, 0.995, 0.5, 0.25, 0.75)  # places of a limit's label along its line
_COVERS_LABEL, _OUTSIDE, _COVERS_POINT = 1000, 300, 30  # how much worse than to cover a curve
_PLACE_NAMES = ((14, 0), (12, 0), (10.5, 0), (12, 90), (8, 90))  # size, turned by degrees
_PAD = 2  # pixels that a label keeps from the rest
_BACKGROUND = {"facecolor": "1.0", "edgecolor": "none", "alpha": 0.8, "pad": 1}


class _Drawn(NamedTuple):
    """What is drawn, in pixels: the frame, labels that stand, curves, and points."""

    frame: Any
    taken: list[Any]
    curves: list[Any]
    marks: list[Any]

    def covered(self, box: Any) -> int:
        """Return how bad it is for a label to stand in a box; 0 where all is free."""
        outside = box.x0 < self.frame.x0 or box.x1 > self.frame.x1
        outside = outside or box.y0 < self.frame.y0 or box.y1 > self.frame.y1
        return int(
            _COVERS_LABEL * sum(box.overlaps(other) for other in self.taken)
            + _OUTSIDE * outside
            + _COVERS_POINT * sum(box.contains(*mark) for mark in self.marks)
            + sum(path.intersects_bbox(box, filled=False) for path in self.curves)
        )


def label(axes: Any, chart: Chart) -> bool:
    """Write the labels of limits and of points into axes that are laid out.

    Returns False where places leave the limits no room that is free: then nothing is written.
    """
    drawn = _drawn(axes, chart)
    limits = sorted(chart.limits, key=lambda limit: limit.y)
    before = len(axes.texts)
    covered = [_write(axes, drawn, limit.name, _of_limit(limit.y)) for limit in limits]
    if any(covered) and chart.x.places:
        for text in axes.texts[before:]:
            text.remove()
        return False
    if any(covered) and not (chart.x.logarithmic or chart.x.span):
        for text in axes.texts[before:]:
            text.remove()
        _widen(axes, max(box.width for box in drawn.taken[-len(limits) :]) + 6 * _PAD)
        drawn = _drawn(axes, chart)
        for limit in limits:
            _write(axes, drawn, limit.name, _of_limit(limit.y))
    for points in chart.points:
        for x, y, text in zip(points.x, points.y, points.labels, strict=bool(points.labels)):
            _write(axes, drawn, text, _of_point(x, y))
    return True


def fit_places(axes: Any, groups: Sequence[str] = ()) -> None:
    """Write the names of places smaller until none touches its neighbour.

    Where that does not do, the names of their groups stand in place of them; last they are turned.
    """
    level = [size for size, turned in _PLACE_NAMES if not turned]
    if any(_fits(axes, size, 0) for size in level):
        return
    if groups:
        members = {name: [i for i, x in enumerate(groups) if x == name] for name in groups}
        axes.set_xticks([(at[0] + at[-1]) / 2 for at in members.values()], list(members))
        for at in list(members.values())[1:]:
            axes.axvline(at[0] - 0.5, color="0.8", linewidth=0.8, zorder=0)
    for size, turned in _PLACE_NAMES:
        if _fits(axes, size, turned):
            break


def _fits(axes: Any, size: float, turned: float) -> bool:
    """Write the names of the marks in a size, turned by degrees; return whether none touches."""
    from matplotlib.text import Text

    names = axes.get_xticklabels()
    for name in names:
        name.set(fontsize=size, rotation=turned)
    boxes = [Text.get_window_extent(name).padded(1) for name in names]
    return not any(one.overlaps(two) for one, two in pairwise(boxes))


def _widen(axes: Any, pixels: float) -> None:
    """Make room on the right for labels of so many pixels; no mark of the axis stands there."""
    low, high = axes.get_xlim()
    share = min(pixels / axes.get_window_extent().width, 0.5)
    marks = [at for at in axes.get_xticks() if low <= at <= high]
    axes.set_xlim(low, low + (high - low) / (1 - share))
    axes.set_xticks(marks)


def _drawn(axes: Any, chart: Chart) -> _Drawn:
    drawn = _Drawn(
        axes.get_window_extent(),
        [text.get_window_extent().padded(_PAD) for text in axes.texts],
        [line.get_transform().transform_path(line.get_path()) for line in axes.lines],
        [
            axes.transData.transform(place)
            for points in chart.points
            for place in zip(points.x, points.y, strict=True)
        ],
    )
    if axes.get_legend():
        drawn.taken.append(axes.get_legend().get_window_extent())
    return drawn


def _of_limit(level: float) -> Iterator[dict[str, Any]]:
    for up in (3, -3):
        for along in _ALONG:
            side = "left" if along < 0.1 else "right" if along > 0.9 else "center"
            yield {
                "xy": (along, level),
                "xycoords": ("axes fraction", "data"),
                "xytext": (0, up),
                "ha": side,
                "va": "bottom" if up > 0 else "top",
                "fontsize": 12,
            }


def _of_point(x: float, y: float) -> Iterator[dict[str, Any]]:
    for right, up in _PLACES:
        yield {
            "xy": (x, y),
            "xytext": (right, up),
            "ha": "left" if right > 0 else "right",
            "va": "center",
            "fontsize": 11,
            "arrowprops": {"arrowstyle": "-", "color": "0.5", "linewidth": 0.7},
        }


def _write(axes: Any, drawn: _Drawn, words: str, places: Iterator[dict[str, Any]]) -> int:
    """Write one label at the first place that is free, or else the best; return what it covers."""
    from matplotlib.text import Text  # an annotation's own extent would hold its arrow

    renderer = axes.figure.canvas.get_renderer()
    best: tuple[int, Any, Any] | None = None
    for place in places:
        text = axes.annotate(words, zorder=5, bbox=_BACKGROUND, textcoords="offset points", **place)
        text.update_positions(renderer)
        box = Text.get_window_extent(text, renderer).padded(_PAD)
        covered = drawn.covered(box)
        if best is None or covered < best[0]:
            if best is not None:
                best[1].remove()
            best = covered, text, box
        else:
            text.remove()
        if covered == 0:
            break
    assert best is not None
    drawn.taken.append(best[2])
    return best[0]

"""The numbers of a chart as CSV, for a spreadsheet: one row a point, and the limits below."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence

from ..said.charts import Axis, Chart

Row = tuple[str, str, float | str, float]


def as_csv(chart: Chart) -> bytes:
    """Return what a chart draws, in the units of its axes, as UTF-8 CSV with a header."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(("drawn as", "name", str(chart.x), str(chart.y)))
    writer.writerows(_rows(chart))
    return out.getvalue().encode()


def _rows(chart: Chart) -> Iterator[Row]:
    for points in chart.points:
        yield from _series("point", points.name, chart.x, points.x, points.y)
    name = ""
    for line in chart.lines:  # a line without a name is a piece of the one before it
        name = line.name or name
        yield from _series("line", name, chart.x, line.x, line.y)
    for band in chart.bands:
        yield from _series("band, low", band.name, chart.x, band.x, band.low)
        yield from _series("band, high", band.name, chart.x, band.x, band.high)
    for limit in chart.limits:
        yield ("limit", limit.name, "", limit.y)


def _series(
    kind: str, name: str, axis: Axis, x: Sequence[float], y: Sequence[float]
) -> Iterator[Row]:
    for at, value in zip(x, y, strict=True):
        place = axis.places[round(at)] if axis.places else float(at)
        yield (kind, name, place, float(value))

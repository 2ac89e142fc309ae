"""The numbers of a chart as CSV."""

import csv
import io

from wirecalc.output.chart_data import as_csv
from wirecalc.said.charts import Axis, Band, Chart, Limit, Line, Points

CHART = Chart(
    title="A chart",
    text="what it shows",
    x=Axis("time", "s"),
    y=Axis("current", "A"),
    points=(Points("read", [1.0], [2.5]),),
    lines=(Line("start", [0.0, 0.5], [12.0, 1.25]), Line("", [0.5, 1.0], [1.25, 1.0])),
    limits=(Limit("rated", 1.6),),
    bands=(Band("may trip", [1.0], [0.1], [3600.0]),),
)


def rows(chart: Chart) -> list[list[str]]:
    return list(csv.reader(io.StringIO(as_csv(chart).decode())))


def test_every_number_stands_in_a_row_under_the_axes() -> None:
    assert rows(CHART) == [
        ["drawn as", "name", "time (s)", "current (A)"],
        ["point", "read", "1.0", "2.5"],
        ["line", "start", "0.0", "12.0"],
        ["line", "start", "0.5", "1.25"],
        ["line", "start", "0.5", "1.25"],
        ["line", "start", "1.0", "1.0"],
        ["band, low", "may trip", "1.0", "0.1"],
        ["band, high", "may trip", "1.0", "3600.0"],
        ["limit", "rated", "", "1.6"],
    ]


def test_places_are_named() -> None:
    chart = CHART._replace(
        x=Axis("set", places=("A", "B")), points=(Points("B", [1.0], [3.0]),), lines=(), bands=()
    )
    assert rows(chart)[1] == ["point", "B", "B", "3.0"]

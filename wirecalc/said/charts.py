"""What a chart shows: points, lines, bands and limits with units, and the same in words.

A calculation describes a chart and yields it with `chart(lambda: Chart(...))`; the function is
called only when somebody asks for the picture, at the centre of the band. `output/drawing.py`
draws it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple


class Axis(NamedTuple):
    """An axis: what it shows, its unit, and the names of places along it, if it has names.

    `marks` are (value, text) in place of the marks that the drawing would choose; `across` is a
    second label with what its numbers are to be divided by, drawn on the other side. `groups` names
    for each place the group that it is in, written where the places have no room for their names.
    """

    label: str
    unit: str = ""
    places: tuple[str, ...] = ()
    logarithmic: bool = False
    marks: tuple[tuple[float, str], ...] = ()
    across: tuple[str, float] | None = None
    span: tuple[float, float] | None = None
    groups: tuple[str, ...] = ()

    def __str__(self) -> str:
        return f"{self.label} ({self.unit})" if self.unit else self.label


class Points(NamedTuple):
    """Measured values, or points of a standard; each may have a label of its own.

    `shape` numbers the mark, where the same kind of points shall look alike in every chart.
    """

    name: str
    x: Sequence[float]
    y: Sequence[float]
    labels: Sequence[str] = ()
    shape: int | None = None


class Line(NamedTuple):
    """A curve, or a piece of a level from one x to another; a strong one is what is judged.

    A fine one is what was recorded, drawn thin behind the rest.
    """

    name: str
    x: Sequence[float]
    y: Sequence[float]
    strong: bool = False
    fine: bool = False


class Band(NamedTuple):
    """An area between two lines over the same x, filled light grey."""

    name: str
    x: Sequence[float]
    low: Sequence[float]
    high: Sequence[float]


class Limit(NamedTuple):
    """A level across the whole chart, labelled with whose it is."""

    name: str
    y: float
    binding: bool = True


class Words(NamedTuple):
    """Words that stand in an area and say what it means."""

    text: str
    x: float
    y: float


class Chart(NamedTuple):
    """A chart: `text` says what the picture shows, for whoever cannot see it.

    `zoom` is a part of it drawn larger below, with its own axes.
    """

    title: str
    text: str
    x: Axis
    y: Axis
    points: tuple[Points, ...] = ()
    lines: tuple[Line, ...] = ()
    limits: tuple[Limit, ...] = ()
    bands: tuple[Band, ...] = ()
    words: tuple[Words, ...] = ()
    zoom: Chart | None = None


ChartMaker = Callable[[], Chart]

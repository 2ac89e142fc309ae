"""What a chart shows: points, lines and limits with units, and the same in words.

A calculation describes a chart and yields it with `chart(lambda: Chart(...))`; the function is
called only when somebody asks for the picture, at the centre of the band. `output/drawing.py`
draws it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple


class Axis(NamedTuple):
    """An axis: what it shows, its unit, and the names of places along it, if it has names."""

    label: str
    unit: str = ""
    places: tuple[str, ...] = ()
    logarithmic: bool = False

    def __str__(self) -> str:
        return f"{self.label} ({self.unit})" if self.unit else self.label


class Points(NamedTuple):
    """Measured values."""

    name: str
    x: Sequence[float]
    y: Sequence[float]


class Line(NamedTuple):
    """A curve, or a piece of a level from one x to another; `thin` for a waveform behind others."""

    name: str
    x: Sequence[float]
    y: Sequence[float]
    thin: bool = False


class Limit(NamedTuple):
    """A level across the whole chart, labelled with whose it is."""

    name: str
    y: float
    binding: bool = True


class Chart(NamedTuple):
    """A chart: `text` says what the picture shows, for whoever cannot see it."""

    title: str
    text: str
    x: Axis
    y: Axis
    points: tuple[Points, ...] = ()
    lines: tuple[Line, ...] = ()
    limits: tuple[Limit, ...] = ()


ChartMaker = Callable[[], Chart]

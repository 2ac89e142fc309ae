"""The chart of a batch for the wall: every pull by how it let go, the minima, the bound.

Learners and tools have numbers and letters on it in place of names, unless names are asked for.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wirecalc import charts

from .batch_places import Places, Words

MODES = ("slip", "break", "other", "pull")  # how a crimp let go; `pull` where nobody wrote it
_SLIPS = ("slip", "pulled out", "pull out", "pull-out")
_BREAKS = ("break", "broke")


class PullLimits(NamedTuple):
    """Labelled minima in lbf with their marks, and the tolerance bound of each set, or None."""

    minima: tuple[tuple[str, float, str], ...]
    bounds: Mapping[str, float | None]
    confidence: str


class Shown(NamedTuple):
    """A set on the chart: its forces in lbf, how each let go."""

    forces: Sequence[float]
    modes: Sequence[str]


def mode_of(said: str | None) -> str:
    """Return how a pull let go: slip, break or other, as written; `pull` where nothing is said."""
    if said is None or not said.strip():
        return "pull"
    words = said.casefold()
    if any(word in words for word in _SLIPS):
        return "slip"
    return "break" if any(word in words for word in _BREAKS) else "other"


def placed(
    sets: Mapping[str, Shown], words: Words, by: Sequence[str], *, names: bool
) -> tuple[dict[str, Shown], charts.Axis]:
    """Return the sets in the order of the chart, and the axis that names them."""
    if not by:
        return dict(sets), charts.Axis("set", places=tuple(sets))
    places = Places(words, by, names=names)
    return (
        {(name := ", ".join(cells)): sets.get(name, Shown([], [])) for cells in places.sets},
        charts.Axis(
            places.label,
            places=tuple(places.name(cells) for cells in places.sets),
            groups=places.groups,
        ),
    )


def batch_chart(sets: Mapping[str, Shown], axis: charts.Axis, limits: PullLimits) -> charts.Chart:
    """Describe the chart: forces in lbf by set and how each let go; each limit has its standard."""
    names = [name for name, shown in sets.items() if shown.forces]
    worst = min(names, key=lambda n: min(sets[n].forces))
    lowest = min(sets[worst].forces)
    missed = [label for label, lbf, _ in limits.minima if lowest < lbf]
    verdict = f"below {', '.join(missed)}" if missed else "above every minimum"
    said = "; ".join(f"{label} {lbf:.4g} lbf{mark}" for label, lbf, mark in limits.minima)
    many = len(names) > 1
    among, of_worst = (f" in {len(names)} sets", f" in {worst}") if many else ("", "")
    share, sure = limits.confidence.split("/")[1], limits.confidence.split("/")[0]
    return charts.Chart(
        title="Pull-out force of each specimen",
        text=(
            f"{sum(len(s.forces) for s in sets.values())} specimens{among}. Worst specimen: "
            f"{lowest:.4g} lbf{of_worst}, {verdict}. Minima: {said}."
        ),
        x=axis,
        y=charts.Axis("pull-out force", "lbf"),
        points=tuple(_points(list(sets.values()))),
        lines=_bounds(
            list(sets), limits, f"{sure} % sure: {share} % of such crimps hold more than this"
        ),
        limits=tuple(
            charts.Limit(f"{_title(n)}: {lbf:.4g} lbf{mark}", lbf) for n, lbf, mark in limits.minima
        ),
    )


def _points(sets: Sequence[Shown]) -> list[charts.Points]:
    found = []
    for shape, mode in enumerate(MODES):
        places = [
            (float(at), force)
            for at, shown in enumerate(sets)
            for force, its in zip(shown.forces, shown.modes, strict=True)
            if its == mode
        ]
        if places:
            x, y = zip(*places, strict=True)
            found.append(charts.Points(mode, x, y, shape=shape))
    return found


def _bounds(names: Sequence[str], limits: PullLimits, says: str) -> tuple[charts.Line, ...]:
    """Return a piece of line at each set's bound; one below zero bounds nothing."""
    pieces = [
        ([i - 0.35, i + 0.35], [b, b])
        for i, n in enumerate(names)
        if (b := limits.bounds.get(n)) is not None and b > 0
    ]
    return tuple(
        charts.Line(says if at == 0 else "", *xy, strong=True) for at, xy in enumerate(pieces)
    )


def _title(standard: str) -> str:
    """Write a standard's key as people do: ul-486a is UL 486A."""
    return standard if " " in standard else standard.replace("-", " ", 1).upper()

"""The chart of a batch for the wall: every pull by how it let go, the minima, the bound.

Learners and tools have numbers and letters on it in place of names, unless names are asked for.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wirecalc import charts

MODES = ("slip", "break", "other", "pull")  # how a crimp let go; `pull` where nobody wrote it
_SLIPS = ("slip", "pulled out", "pull out", "pull-out")
_BREAKS = ("break", "broke")


class PullLimits(NamedTuple):
    """Labelled minima in lbf with their marks, and the tolerance bound of each set, or None."""

    minima: tuple[tuple[str, float, str], ...]
    bounds: Mapping[str, float | None]
    confidence: str


class Shown(NamedTuple):
    """A set on the chart: what it is called there, its forces in lbf, how each let go."""

    place: str
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


def places_of(cells: Sequence[Sequence[str]], *, names: bool) -> dict[tuple[str, ...], str]:
    """Return what each set is called on the chart: names, or a number and a letter (3b).

    The number that a cell ends in is kept where each has its own.
    """
    sets = list(dict.fromkeys(zip(*cells, strict=True)))
    if names:
        return {x: ", ".join(x) for x in sets}
    codes = [
        _codes(list(dict.fromkeys(column)), letters=at == 1) for at, column in enumerate(cells)
    ]
    return {x: "".join(codes[at][cell] for at, cell in enumerate(x)) for x in sets}


def _codes(levels: Sequence[str], *, letters: bool) -> dict[str, str]:
    if letters and len(levels) <= 26:
        return {level: chr(ord("a") + at) for at, level in enumerate(levels)}
    own = [m[0] if (m := re.search(r"\d{1,3}$", x.strip())) else "" for x in levels]
    if all(own) and len(set(own)) == len(own):
        return dict(zip(levels, own, strict=True))
    return {level: str(at) for at, level in enumerate(levels, start=1)}


def batch_chart(sets: Mapping[str, Shown], limits: PullLimits, by: Sequence[str]) -> charts.Chart:
    """Describe the chart: forces in lbf by set and how each let go; each limit has its standard."""
    names = list(sets)
    worst = min(names, key=lambda n: min(sets[n].forces))
    lowest = min(sets[worst].forces)
    missed = [label for label, lbf, _ in limits.minima if lowest < lbf]
    verdict = f"below {', '.join(missed)}" if missed else "above every minimum"
    said = "; ".join(f"{label} {lbf:.4g} lbf{mark}" for label, lbf, mark in limits.minima)
    many = len(names) > 1
    place = sets[worst].place
    its = f"{' and '.join(by)} {place}" if place[:1].isdigit() else place
    among, of_worst = (f" in {len(names)} sets", f" in {its}") if many else ("", "")
    share, sure = limits.confidence.split("/")[1], limits.confidence.split("/")[0]
    return charts.Chart(
        title="Pull-out force of each specimen",
        text=(
            f"{sum(len(s.forces) for s in sets.values())} specimens{among}. Worst specimen: "
            f"{lowest:.4g} lbf{of_worst}, {verdict}. Minima: {said}."
        ),
        x=charts.Axis(" and ".join(by) or "set", places=tuple(sets[n].place for n in names)),
        y=charts.Axis("pull-out force", "lbf"),
        points=tuple(_points(list(sets.values()))),
        lines=_bounds(
            names, limits, f"{sure} % sure: {share} % of such crimps hold more than this"
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
        if (b := limits.bounds[n]) is not None and b > 0
    ]
    return tuple(
        charts.Line(says if at == 0 else "", *xy, strong=True) for at, xy in enumerate(pieces)
    )


def _title(standard: str) -> str:
    """Write a standard's key as people do: ul-486a is UL 486A."""
    body, _, number = standard.partition("-")
    return f"{body.upper()} {number.upper()}" if number else standard

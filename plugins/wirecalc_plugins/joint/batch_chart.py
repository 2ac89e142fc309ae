"""The chart of a batch of pulls: every specimen, the minima, the tolerance bound."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wirecalc import charts


class PullLimits(NamedTuple):
    """Labelled minima in lbf with their marks, and the tolerance bound of each set, or None."""

    minima: tuple[tuple[str, float, str], ...]
    bounds: Mapping[str, float | None]
    confidence: str


def batch_chart(sets: Mapping[str, Sequence[float]], limits: PullLimits) -> charts.Chart:
    """Describe the chart: forces in lbf by set, each limit labelled with its standard."""
    names = list(sets)
    points = tuple(
        charts.Points(n, [float(i)] * len(sets[n]), list(sets[n])) for i, n in enumerate(names)
    )
    lines = tuple(
        charts.Line(
            f"tolerance bound {limits.confidence}" if i == 0 else "", [i - 0.35, i + 0.35], [b, b]
        )
        for i, n in enumerate(names)
        if (b := limits.bounds[n]) is not None
    )
    worst = min(names, key=lambda n: min(sets[n]))
    lowest = min(sets[worst])
    missed = [label for label, lbf, _ in limits.minima if lowest < lbf]
    verdict = f"below {', '.join(missed)}" if missed else "above every minimum"
    said = "; ".join(f"{label} {lbf:.4g} lbf{mark}" for label, lbf, mark in limits.minima)
    among, of_worst = (f" in {len(names)} sets", f" in {worst}") if len(names) > 1 else ("", "")
    return charts.Chart(
        title="Pull-out force of each specimen",
        text=(
            f"{sum(map(len, sets.values()))} specimens{among}. Worst specimen: "
            f"{lowest:.4g} lbf{of_worst}, {verdict}. Minima: {said}."
        ),
        x=charts.Axis("set", places=tuple(names)),
        y=charts.Axis("pull-out force", "lbf"),
        points=points,
        lines=lines,
        limits=tuple(
            charts.Limit(f"{_title(n)}: {lbf:.4g} lbf{mark}", lbf) for n, lbf, mark in limits.minima
        ),
    )


def _title(standard: str) -> str:
    """Write a standard's key as people do: ul-486a is UL 486A."""
    body, _, number = standard.partition("-")
    return f"{body.upper()} {number.upper()}" if number else standard

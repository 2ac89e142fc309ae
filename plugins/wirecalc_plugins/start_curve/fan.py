"""Many drawn starts as a listing and as a fan: how a start lies between its ends."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from wirecalc import Item, charts, listing

from .drawn_starts import DrawnStarts
from .in_words import rounded

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]

SHARES = (0.0, 0.1, 0.5, 0.9, 1.0)  # of the drawn starts that show less
_COLUMNS = ("shown", "least", "10 % below", "middle", "90 % below", "most")
_ROWS = (
    ("crest", "peak"),
    ("one cycle", "cycle"),
    ("first 100 ms", "inrush"),
    ("max-hold, at most", "held_most"),
    ("max-hold, at least", "held_least"),
)
_IF_SETTLED = (("settled, if it settles", "settled"), ("s until settled", "settle_time"))
_SINGLE, _LEAST_S, _ROOM = 24, 0.3, 1.25  # lines of single starts; shortest time; room after it


def drawn_show(drawn: DrawnStarts) -> Item:
    """List what the meters show of the drawn starts, from the least to the most."""
    import numpy as np

    wanted = [(name, getattr(drawn.shown, field)) for name, field in _ROWS]
    if drawn.settling:
        wanted += [
            (name, getattr(drawn.shown, field)[drawn.settles]) for name, field in _IF_SETTLED
        ]
    rows: list[tuple[str | float, ...]] = [
        (name, *(rounded(float(value)) for value in np.quantile(values, SHARES)))
        for name, values in wanted
    ]
    return listing(
        f"What {drawn.number} starts drawn from what is not known show (A)", _COLUMNS, rows
    )


def said_of_drawn(drawn: DrawnStarts) -> str:
    """Say how many of the drawn starts settle, and what that is not."""
    return (
        f"{drawn.settling} of {drawn.number} come to speed and settle. Machine, load, inertia and "
        "instant of closing are drawn evenly from what is not known: how many is no likelihood"
    )


def fan_chart(drawn: DrawnStarts) -> charts.Chart:
    """Describe the fan: one-cycle rms of all drawn starts, some of them singly, and the middle."""
    import numpy as np

    rms = drawn.courses.rms
    ends = drawn.shown.settle_time[drawn.settles]
    most = float(np.max(ends)) if ends.size else 1.0
    end = min(len(rms), math.ceil(max(_LEAST_S, _ROOM * most) * drawn.courses.frequency))
    time = [float(t) for t in (np.arange(end) + 1) / drawn.courses.frequency]
    low, high = rms[:end].min(axis=1), rms[:end].max(axis=1)
    lines = [
        charts.Line("single starts" if i == 0 else "", time, _plain(rms[:end, i]), fine=True)
        for i in range(min(_SINGLE, drawn.number))
    ]
    if drawn.settling == drawn.number:  # else it would be a start that nobody has
        middle = _plain(np.median(rms[:end], axis=1))
        lines.append(charts.Line("middle of all", time, middle, strong=True))
    said = f"{said_of_drawn(drawn)}; the first cycle is at {low[0]:.3g} to {high[0]:.3g} A"
    title = f"One-cycle rms current of {drawn.number} drawn starts"
    return charts.Chart(
        title=title,
        text=f"{title}, 0 to {time[-1]:.2g} s: {said}.",
        x=charts.Axis("time after closing", "s"),
        y=charts.Axis("line current", "A", span=(0.0, 1.05 * float(high.max()))),
        bands=(charts.Band("least to most", time, _plain(low), _plain(high)),),
        lines=tuple(lines),
    )


def _plain(values: Samples) -> list[float]:
    return [float(v) for v in values]

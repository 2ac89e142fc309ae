"""Many drawn starts as a listing and as a fan: how a start lies between its ends."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from wirecalc import Item, charts, listing

from .drawn_starts import DrawnStarts
from .fitted_starts import FittedStarts
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

    rms, cycle = drawn.courses.rms, 1 / drawn.courses.frequency
    ends = drawn.shown.settle_time[drawn.settles]
    most = float(np.max(ends)) if ends.size else 1.0
    rms = rms[: math.ceil(max(_LEAST_S, _ROOM * most) / cycle)]
    strong = []
    if drawn.settling == drawn.number:  # else it would be a start that nobody has
        middle = _plain(np.median(rms, axis=1))
        strong.append(charts.Line("middle of all", _middles(rms, cycle), middle, strong=True))
    title = f"One-cycle rms current of {drawn.number} drawn starts"
    return _fan(title, said_of_drawn(drawn), rms, cycle, strong)


def recorded_chart(fitted: FittedStarts) -> charts.Chart:
    """Describe the fan of the starts that reproduce a recording, and the recorded one."""
    one = fitted.recorded
    length = math.ceil(float(one.time[-1]) / fitted.cycle)
    line = charts.Line("recorded", _plain(one.time), _plain(one.level), strong=True)
    said = f"the recorded start falls from {one.inrush:.3g} to {one.settled:.3g} A within its fan"
    title = f"One-cycle rms current, recorded and of {len(fitted.kept)} starts"
    return _fan(title, said, fitted.rms[:length], fitted.cycle, [line])


def _fan(
    title: str, said: str, rms: Samples, cycle: float, strong: Sequence[charts.Line]
) -> charts.Chart:
    """Describe a fan of one-cycle rms, a column a start: least to most, and some singly."""
    time = _middles(rms, cycle)
    low, high = rms.min(axis=1), rms.max(axis=1)
    singles = [
        charts.Line("single starts" if i == 0 else "", time, _plain(rms[:, i]), fine=True)
        for i in range(min(_SINGLE, rms.shape[1]))
    ]
    top = max(float(high.max()), *(max(line.y) for line in strong), 0.0)
    return charts.Chart(
        title=title,
        text=f"{title}, 0 to {time[-1]:.2g} s: {said}; the first cycle is at {low[0]:.3g} to "
        f"{high[0]:.3g} A.",
        x=charts.Axis("time after closing", "s"),
        y=charts.Axis("line current", "A", span=(0.0, 1.05 * top)),
        bands=(charts.Band("least to most", time, _plain(low), _plain(high)),),
        lines=(*singles, *strong),
    )


def _middles(rms: Samples, cycle: float) -> list[float]:
    """Return the middle of each cycle in s."""
    return [(i + 0.5) * cycle for i in range(len(rms))]


def _plain(values: Samples) -> list[float]:
    return [float(v) for v in values]

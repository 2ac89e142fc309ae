"""The end of a start: when the surge is over, where the current goes then, what comes later.

A level is calm while it is within 15 % of the median of the ten seconds that follow. The surge
ends where the first calm stretch begins that is not left by a fall: a level that stays high for
seconds and then falls was a part of the start, a level that drifts was not. Needs numpy.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from .on_off import RISE

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]

NEAR = 0.15  # share of the level that follows within which the surge is over; practice
AHEAD_S, AHEAD_READINGS = 10.0, 4  # what follows: so many s, and at least so many; practice
HOLD_S = 0.5  # calm for less than this shows no end; practice
MINUTE_S = 60.0  # a fall later than this may be another load that goes off; practice
WITHIN = 1.1  # times its rated current at which a motor runs on its running winding; practice
FEWEST = 4  # levels of a stretch
_PLACES = 41  # levels of what follows that its median is taken from

Span = tuple[float, float, float]  # value, least and most


class Calm(NamedTuple):
    """A stretch within which the current holds or drifts.

    `begin` in s from the start, with least and most; `end` in s from the start; `level` in the
    ten seconds after it began, `last` at its end; `left` is "down", "up", or empty at the end.
    """

    begin: Span
    end: float
    level: float
    last: float
    left: str


def calm_stretches(
    inner: Numbers,
    start: float,
    before: float | None,
    width: float,
    *,
    waveform: bool,
    doubt: float = 0.0,
    blur: float = 0.0,
) -> tuple[Calm, ...]:
    """Return the calm stretches of a run, from its levels (time, level, least, most).

    `doubt` is the share, and `blur` the amount, by which each level may be off: a level counts as
    calm where it may be so, and they widen when a stretch began.
    """
    import numpy as np

    t, level, least, most = inner[:4]
    if len(t) < FEWEST:
        return ()
    follows = _following(t, level, width)
    slack = doubt + blur / np.maximum(follows, blur + 1e-12)
    low, high = least < (1 - NEAR - slack) * follows, most > (1 + NEAR + slack) * follows
    surely = most <= (1 + NEAR - slack) * follows
    if not waveform and low[0]:  # the first reading covers a part of a step
        low[0] = False
        high[0] = False
    out = low | high
    edges = np.flatnonzero(np.diff(out.astype(int), prepend=1, append=1))
    found = []
    for i, k in zip(edges[::2], edges[1::2], strict=True):
        if k - i < FEWEST:
            continue
        begin = since_start(t, int(i), start, before, width, waveform=waveform)
        if doubt or blur:  # it began by then at the latest
            at = int(i) + int(np.argmax(surely[i:k]))
            last = since_start(t, at, start, before, width, waveform=waveform)
            begin = begin[0], begin[1], max(begin[2], last[2])
        near = t[i:k] <= t[i] + AHEAD_S
        found.append(
            Calm(
                begin,
                float(t[k - 1]) - start,
                float(np.median(level[i:k][near])),
                float(np.median(level[max(i, k - FEWEST) : k])),
                _left(level, high, int(i), int(k)),
            )
        )
    return tuple(found)


def _left(level: Numbers, high: NDArray[np.bool_], first: int, end: int) -> str:
    """Return how a stretch is left: by a fall if its level stood until what follows was lower."""
    import numpy as np

    if end == len(level):
        return ""
    last = float(np.median(level[max(first, end - FEWEST) : end]))
    return "down" if high[end] and level[end] <= (1 + NEAR) * last else "up"


def _following(t: Numbers, level: Numbers, width: float) -> Numbers:
    """Return the median of the levels that follow each, itself among them."""
    import numpy as np

    ahead = max(AHEAD_S, AHEAD_READINGS * width)
    end = np.searchsorted(t, t + ahead, side="right")
    first = np.arange(len(t))
    places = first[:, None] + (end - first - 1)[:, None] * np.linspace(0, 1, _PLACES)
    middle: Numbers = np.median(level[np.round(places).astype(int)], axis=1)
    return middle


def since_start(
    t: Numbers, at: int, start: float, before: float | None, width: float, *, waveform: bool
) -> Span:
    """Return the time from the start to the level at a place, which the one before is not yet.

    A level of a waveform covers half a cycle either way, a log's the time from the one before.
    """
    value = max(0.0, float(t[at]) - start) if at else 0.0
    soonest = max(0.0, float(t[at - 1]) - start) if at else 0.0
    if waveform:
        return value, max(0.0, soonest - width / 2), value + width / 2
    latest = float(t[at]) - (start - width if before is None else before)
    return value, soonest, max(value, latest)


def end_of_surge(
    calm: Sequence[Calm], highest: float, settled: float | None, rated: float | None = None
) -> Span | None:
    """Return when the surge was over, in s from the start; None where its end was not seen.

    A last stretch of less than ten seconds counts where the run `settled`. At or below 1.1 times
    its `rated` current in A a motor runs, and what falls later is no part of its start. Else a fall
    after more than a minute, from less than half of the `highest` level, may be a start winding
    that goes out late or another load: it widens the span.
    """
    doubtful: Calm | None = None
    for one in calm:
        long = one.end - one.begin[0]
        if long < HOLD_S:
            continue
        runs = rated is not None and one.level <= WITHIN * rated
        if one.left == "down" and not runs:
            if long > MINUTE_S and one.level < highest / RISE:
                doubtful = doubtful or one
        elif one.left or settled is not None or long >= AHEAD_S:
            begin = one.begin if doubtful is None else doubtful.begin
            return begin[0], begin[1], one.begin[2]
    return None if doubtful is None else (*doubtful.begin[:2], calm[-1].end)


def later_changes(calm: Sequence[Calm], surge: Span | None) -> list[tuple[float, str, Calm, Calm]]:
    """Return what changed in a step after the surge: when, what, and the stretches around it."""
    if surge is None:
        return []
    mine = [one for one in calm if one.begin[0] >= surge[0] - 1e-9]
    return [
        (after.begin[0], "drops" if after.level < one.last else "rises", one, after)
        for one, after in pairwise(mine)
    ]


def level_after(calm: Sequence[Calm], surge: Span | None) -> float | None:
    """Return the level in the ten seconds after the surge."""
    if surge is None:
        return None
    return next((c.level for c in calm if math.isclose(c.begin[0], surge[0])), None)

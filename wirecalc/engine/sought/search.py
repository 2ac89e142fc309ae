"""Which values to try: a grid, what the findings point at, then halving between what differs.

A grid alone misses narrow islands: a window between two limits, one step of a staircase. So what
was given in the same unit is tried too, the limits that the criteria show, the values at which a
criterion would meet its limit if it went with the value or against it, and both sides of the best
and the worst of each criterion. Then every gap between neighbours that are judged differently is
halved until they stand next to each other.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from itertools import pairwise

from ...said.findings import Finding
from ...typed.units import converter, dimension_of
from .axis import Axis
from .states import State, Try, key_of

GRID = 12  # places by ratio, and as many by value
ROUNDS = 2  # of looking at what the findings point at


def search(axis: Axis, run: Try, stop: Callable[[int], bool]) -> tuple[dict[int, State], bool]:
    """Return the states of the places that were tried, and whether all edges were found.

    `stop` is asked after each run, with how many there were, whether it is time to end.
    """
    tried: dict[int, State] = {}
    ended = False

    def attempt(places: Iterable[int]) -> None:
        nonlocal ended
        for place in sorted({p for p in places if 0 <= p <= axis.last} - tried.keys()):
            if ended:
                return
            tried[place] = run(axis.text(place))
            ended = stop(len(tried))

    if axis.all_tried:
        attempt(range(axis.last + 1))
        return dict(sorted(tried.items())), len(tried) > axis.last
    attempt({0, axis.last, *axis.spread(GRID)})
    for _ in range(ROUNDS):
        attempt(_pointed_at(axis, tried))
    while open_ := list(_gaps(tried)):
        before = len(tried)
        attempt((one + two) // 2 for one, two in open_)
        if len(tried) == before:
            break
    return dict(sorted(tried.items())), not open_


def _gaps(tried: Mapping[int, State]) -> Iterator[tuple[int, int]]:
    """Yield the neighbours that are judged differently and have something between them."""
    for one, two in pairwise(sorted(tried)):
        if two - one > 1 and tried[one].verdicts != tried[two].verdicts:
            yield one, two


def _pointed_at(axis: Axis, tried: Mapping[int, State]) -> set[int]:
    """Return the places that the findings so far point at."""
    found = Counter(
        value
        for state in tried.values()
        if state.finding is not None
        for value in _same_unit(state.finding, axis.unit)
    )  # what stands in one finding alone goes with the value that was tried there
    places = {p for value, times in found.items() if times > 1 for p in axis.near(value)}
    return places | _crossings(axis, tried) | _turns(tried)


def _same_unit(finding: Finding, unit: str) -> Iterator[float]:
    """Yield what was given, and the limits that are shown, where they are of the unit."""
    for record in finding.inputs:
        if isinstance(record.value, float | int) and not isinstance(record.value, bool):
            yield from _in_unit((record.value, record.low, record.high), record.unit, unit)
    for judged in finding.criteria:
        c = judged.criterion
        yield from _in_unit((c.limit, c.caution_limit), c.unit, unit)


def _in_unit(values: Iterable[float | None], of: str, unit: str) -> Iterator[float]:
    try:
        dimension = dimension_of(of)
        to = converter(of, unit, dimension) if dimension == dimension_of(unit) else None
    except LookupError:
        return
    if to is not None:
        yield from (to(v) for v in values if v is not None)


def _crossings(axis: Axis, tried: Mapping[int, State]) -> set[int]:
    """Return where each criterion would meet its limit, going with the value or against it.

    Taken from where it comes nearest to it.
    """
    nearest: dict[tuple[object, ...], tuple[float, float]] = {}
    for place, state in tried.items():
        value = axis.value(place)
        for judged in state.judged:
            c = judged.criterion
            for which, limit in enumerate((c.limit, c.caution_limit)):
                if value and c.actual and limit and c.actual * limit > 0:
                    ratio = max(c.actual / limit, limit / c.actual)
                    key = *key_of(judged), which
                    nearest[key] = min(nearest.get(key, (ratio, value)), (ratio, value))
    found = {v for ratio, value in nearest.values() for v in (value * ratio, value / ratio)}
    return {place for value in found for place in axis.near(value)}


def _turns(tried: Mapping[int, State]) -> set[int]:
    """Return places on both sides of where a criterion's margin turns round."""
    margins: dict[tuple[str, str], list[tuple[int, float]]] = {}
    for place in sorted(tried):
        for judged in tried[place].judged:
            if judged.criterion.margin is not None:
                margins.setdefault(key_of(judged), []).append((place, judged.criterion.margin))
    places: set[int] = set()
    for along in margins.values():
        for (a, before), (b, here), (c, after) in zip(along, along[1:], along[2:], strict=False):
            if (here - before) * (after - here) < 0:
                places |= {(a + b) // 2, (b + c) // 2}
    return places

"""The instrument counts: where in the band a calculation is run, and how the runs are merged.

Readings that carry an error are run at low, centre and high: every combination up to three of
them; beyond that all corners, the centre, and each alone. A criterion that fails in every run
fails; one that fails in some cannot be told; else the worse of pass and marginal. That holds
because each criterion is monotone in each reading (a property test samples the band).
A calculation that works out its band itself runs once, and its items are merged from the ends
of the bands that they bring along.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import product
from typing import Any, NamedTuple

from ..base.rounding import show, show_band
from ..said.criteria import Criterion
from ..said.findings import BandFigure, Judged
from ..said.items import Answer, Figure, Item, Listing
from ..said.verdicts import Verdict, worst
from ..typed.kinds import Read

MIDDLE = "at the middle of the meter's band"
AT_AN_END = "at an end of the meter's band"
ALL_COMBINATIONS = 3  # readings; above that corners, centre and one at a time


class Given(NamedTuple):
    """An item and who gave it: the plugin of the calculation, or that of a house rule.

    `rule` tells one house rule from another, and is empty for the calculation's own items.
    """

    item: Item
    provider: str
    rule: str = ""


Run = Sequence[Given]
Key = tuple[str, str, str]  # of a criterion: its rule, its provider, its name


def points(names: Sequence[str]) -> Iterator[dict[str, int]]:
    """Yield where to run: for each reading -1 (low), 0 (centre) or 1 (high). Centre comes first."""
    centre = dict.fromkeys(names, 0)
    yield centre
    if len(names) <= ALL_COMBINATIONS:
        for steps in product((-1, 0, 1), repeat=len(names)):
            if any(steps):
                yield dict(zip(names, steps, strict=True))
        return
    for steps in product((-1, 1), repeat=len(names)):
        yield dict(zip(names, steps, strict=True))
    for name in names:
        yield centre | {name: -1}
        yield centre | {name: 1}


def values_over(
    values: Mapping[str, Any], bands: Mapping[str, Sequence[Read]]
) -> list[dict[str, Any] | None]:
    """Return the values at each point of the band, the centre first."""
    return [values_at(point, values, bands) for point in points(list(bands))]


def values_at(
    point: Mapping[str, int], values: Mapping[str, Any], bands: Mapping[str, Sequence[Read]]
) -> dict[str, Any] | None:
    """Return the values at one point of the band, None where an input cannot have that value.

    The values of one list move together.
    """
    moved = dict(values)
    for name, step in point.items():
        reads = bands[name]
        if step < 0 and any(r.excluded for r in reads):
            return None
        at = [_at(read, step) for read in reads]
        moved[name] = at if isinstance(values[name], list) else at[0]
    return moved


def _at(read: Read, step: int) -> Any:
    if step == 0 or read.low is None:
        return read.value
    return read.low if step < 0 else read.high


def at_end(item: Item, step: int) -> Item:
    """Return an item at the low (-1) or high (1) end of the band that it brings along."""
    if isinstance(item, Figure) and item.band is not None and step:
        return item._replace(value=item.band[step > 0])
    if isinstance(item, Criterion) and item.band is not None and step:
        return item._replace(actual=item.band[step > 0])
    return item


def merge_figures(runs: Sequence[Run]) -> tuple[BandFigure, ...]:
    """Return the figures of the centre run, each with its low and high over all runs.

    One that some of the runs do not have has no band: what they have is another figure.
    """
    if len(runs) <= 1:
        return tuple(BandFigure(g.item) for run in runs for g in run if isinstance(g.item, Figure))
    by_name: dict[str, list[float]] = {}
    for run in runs:
        for given in run:
            if isinstance(given.item, Figure):
                by_name.setdefault(given.item.name, []).append(given.item.value)
    merged = []
    for given in runs[0]:
        if isinstance(given.item, Figure):
            alone = BandFigure(given.item)
            values = by_name[given.item.name]
            low, high = min(values), max(values)
            there = len(values) == len(runs)  # else another figure stands at some of the ends
            merged.append(BandFigure(given.item, low, high) if there and low != high else alone)
    return tuple(merged)


def merge_answers(runs: Sequence[Run]) -> tuple[tuple[Answer, ...], tuple[Judged, ...]]:
    """Return the answers of the centre run, and a `cannot tell` for each that changes."""
    answers: list[Answer] = []
    unsettled: list[Judged] = []
    each = [{item.name: (item, by) for item, by, _ in run if type(item) is Answer} for run in runs]
    for name, (answer, provider) in each[0].items() if runs else ():
        texts = [of_run[name][0].text if name in of_run else "" for of_run in each]
        if len(set(texts)) == 1:
            answers.append(answer)
            continue
        if answer.in_numbers and all(texts):
            answers.append(answer._replace(text=f"{answer.text} ({MIDDLE})"))
            continue
        either = " / ".join(sorted({t or "nothing" for t in texts}))
        answers.append(Answer(name, f"cannot tell: {either}"))
        criterion = Criterion(
            name,
            "cannot tell",
            says=f"over the meter's band: {either}",
            action="measure with a better instrument",
        )
        unsettled.append(
            Judged(criterion, provider, criterion.verdict, criterion.says, criterion.action)
        )
    return tuple(answers), tuple(unsettled)


def merge_listings(
    runs: Sequence[Run], listed: Callable[[Listing], Listing]
) -> tuple[Listing, ...]:
    """Return the listings of the centre run; one that changes over the band says which it is.

    `listed` makes the rows of those that were put off.
    """
    if not runs:
        return ()
    found, *others = [[listed(g.item) for g in run if isinstance(g.item, Listing)] for run in runs]
    return tuple(
        x if all(x in of for of in others) else x._replace(title=f"{x.title}, {MIDDLE}")
        for x in found
    )


def merge_criteria(runs: Sequence[Run], missing_runs: int) -> dict[Key, Judged]:
    """Return each criterion once, judged over all runs, by rule, provider and name.

    `missing_runs` counts the points at which nothing could be run; a criterion counts as absent
    there.
    """
    found: dict[Key, list[Criterion]] = {}
    for run in runs:
        for item, provider, rule in run:
            if type(item) is Criterion:
                key = (rule, provider, item.name)
                if key in found:
                    found[key].append(item)
                else:
                    found[key] = [item]
    everywhere = len(runs) + missing_runs
    return {
        key: _judge(key[1], criteria, absent=len(criteria) < everywhere)
        for key, criteria in found.items()
    }


def _judge(provider: str, criteria: Sequence[Criterion], absent: bool) -> Judged:
    if len(criteria) == 1 and not absent:
        (only,) = criteria
        return Judged(only, provider, only.verdict)
    each = [(c, c.verdict) for c in criteria]
    verdicts = {verdict for _, verdict in each}
    most = worst(verdicts) or Verdict.CANNOT_TELL
    weakest = _nearest(each, most, min)
    actuals = {c.actual for c in criteria if c.actual is not None}
    low, high = (min(actuals), max(actuals)) if len(actuals) > 1 else (None, None)
    unsettled = bool(verdicts & {Verdict.FAIL, Verdict.CANNOT_TELL}) and len(verdicts) > 1
    unknown = next((c for c, verdict in each if verdict is Verdict.CANNOT_TELL), None)
    if unknown is not None and (absent or unsettled):  # no meter settles what is not known
        reason = unknown.says if unknown is criteria[0] else f"{unknown.says} ({AT_AN_END})"
        return Judged(unknown, provider, unknown.verdict, reason, unknown.action, low, high)
    if absent or unsettled:
        reason, action = _too_close(weakest, low, high), _would_settle(criteria[0])
        return Judged(weakest, provider, Verdict.CANNOT_TELL, reason, action, low, high)
    if verdicts == {Verdict.FAIL}:  # shown where it is mildest: what makes it sure
        mildest = _nearest(each, Verdict.FAIL, max)
        sure = None if low is None else mildest.sure_reason
        return Judged(mildest, provider, Verdict.FAIL, sure, None, low, high)
    said = None
    if weakest.sense == "cannot tell" and len({c.says for c in criteria}) > 1:
        said = f"{weakest.reason} ({MIDDLE})"  # its words have numbers in them: the centre's
    return Judged(weakest, provider, most, said, None, low, high)


def _nearest(
    each: Sequence[tuple[Criterion, Verdict]],
    verdict: Verdict,
    which: Callable[..., tuple[Criterion, Verdict]],
) -> Criterion:
    """Return of those with this verdict the nearest to its limit (min), or the farthest (max)."""
    alike = (one for one in each if one[1] is verdict)
    return which(alike, key=lambda one: one[0].closeness_as(verdict))[0]


def _would_settle(centre: Criterion) -> str:
    """Say how well the value must be known; the distance to the limit is what there is."""
    far = centre.actual == 0 and centre.margin == centre.limit  # it is another reading that counts
    if not centre.margin or far:
        return f"measure with {centre.better or 'a better instrument'}"
    enough = show(abs(centre.margin), centre.unit, toward="down")
    instrument = f"with {centre.better}, " if centre.better else ""
    return f"measure {instrument}so that it is known to better than ±{enough}"


def _too_close(weakest: Criterion, low: float | None, high: float | None) -> str:
    if low is None or high is None or weakest.limit is None:
        return "too close for this meter"
    toward = "up" if weakest.sense == "at least" else "down"
    limit = show(weakest.limit, weakest.unit, toward=toward)
    band = show_band(low, high, weakest.unit)
    if low <= weakest.limit <= high:
        return f"{band} reaches across {limit}: too close for this meter"
    return f"{band} against {limit}: this meter can't tell it from zero"

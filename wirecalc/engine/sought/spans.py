"""Values next to each other that are judged alike, as one span."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import groupby
from typing import NamedTuple

from ...said.verdicts import Verdict
from .axis import Axis
from .states import Judgement, Key, State, judgement

REFUSED = "refused"


class End(NamedTuple):
    """The value at an end of a span, which was run, and what decides there."""

    place: int
    shown: str
    value: float | None
    judged: Judgement
    refusal: str = ""


class Span(NamedTuple):
    """Values from one to another that come to one verdict; `word` is that, or `refused`.

    `texts` are all of them where they are no numbers. `said` is why a value is refused.
    """

    word: str
    first: End
    last: End
    texts: tuple[str, ...] = ()

    @property
    def verdict(self) -> Verdict | None:
        """The verdict of its values; None where they are refused, or nothing is judged."""
        return self.first.judged.verdict


def spans(axis: Axis, tried: Mapping[int, State], aside: Iterable[Key]) -> tuple[Span, ...]:
    """Return the spans in order, of what is judged without the criteria that are set aside."""
    left_out = tuple(aside)
    found = []
    judged = {place: judgement(state.without(left_out)) for place, state in tried.items()}
    for (word, _), places in groupby(tried, lambda p: _alike(tried[p], judged[p], left_out)):
        run = list(places)
        first, last = (_end(axis, p, tried[p], judged[p]) for p in (run[0], run[-1]))
        texts = tuple(axis.shown(place) for place in run) if axis.all_tried else ()
        found.append(Span(word, first, last, texts))
    return tuple(found)


def _alike(
    state: State, judged: Judgement, left_out: tuple[Key, ...]
) -> tuple[str, tuple[str, ...]]:
    """Return what two neighbours share in a span: the verdict, and of a marginal by what."""
    if state.finding is None:
        return REFUSED, ()
    if judged.verdict is None:
        return "no verdict", ()
    by = [j for j in state.without(left_out) if j.verdict is Verdict.MARGINAL]
    names = sorted(j.criterion.name for j in by) if judged.verdict is Verdict.MARGINAL else []
    return str(judged.verdict), tuple(names)


def _end(axis: Axis, place: int, state: State, judged: Judgement) -> End:
    why = "; ".join(problem.wrong for problem in state.problems)
    return End(place, axis.shown(place), axis.value(place), judged, why)

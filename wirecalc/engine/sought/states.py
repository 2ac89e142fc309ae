"""What came of one value that was tried."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import NamedTuple

from ...base.errors import Problem
from ...said.findings import Finding, Judged, weakest
from ...said.verdicts import Verdict, worst

Key = tuple[str, str]  # of a criterion: who gave it, and its name


class State(NamedTuple):
    """A finding with what is judged of it, or the refusal of the value."""

    finding: Finding | None
    judged: tuple[Judged, ...] = ()
    problems: tuple[Problem, ...] = ()

    @property
    def verdicts(self) -> tuple[tuple[str, str, str], ...]:
        """The verdict of each criterion: what must not change between two neighbours unseen."""
        if self.finding is None:
            return (("", "refused", ""),)
        return tuple(sorted((*key_of(j), str(j.verdict)) for j in self.judged))

    def without(self, aside: Iterable[Key]) -> tuple[Judged, ...]:
        """Return what is judged, without the criteria that were set aside."""
        left_out = set(aside)
        return tuple(j for j in self.judged if key_of(j) not in left_out)


Try = Callable[[str], State]


class Judgement(NamedTuple):
    """The verdict on a value, and the criterion that decides it; None where nothing is judged."""

    verdict: Verdict | None
    by: Judged | None


def key_of(judged: Judged) -> Key:
    """Return what a criterion is known by."""
    return judged.provider, judged.criterion.name


def judgement(judged: Iterable[Judged]) -> Judgement:
    """Return the worst verdict of some criteria and the weakest of them."""
    of = tuple(judged)
    return Judgement(worst(j.verdict for j in of), weakest(of))


def the_same_throughout(states: Iterable[State]) -> tuple[Judged, ...]:
    """Return the criteria that come to one and the same verdict everywhere, and that is no pass."""
    found = [{key_of(j): j for j in s.judged} for s in states if s.finding is not None]
    if not found:
        return ()
    everywhere = set(found[0]).intersection(*found[1:])
    return tuple(
        judged
        for key, judged in found[0].items()
        if key in everywhere
        and judged.verdict is not Verdict.PASS
        and all(other[key].verdict is judged.verdict for other in found)
    )

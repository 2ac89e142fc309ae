"""In which order a person has the answers, and which questions still have a bearing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from ..engine.inputs import Input
from ..engine.left_out import LeftOut, Word, terms, word_for
from ..engine.one_input import is_known
from ..typed.kinds import Kind
from ..typed.quantity_kinds import Nameplate, Reading
from ..typed.word_kinds import OneOf

PRINTED, SEEN, READ = range(3)  # on plate or part; looked at; taken with an instrument


def had_when(kind: Kind) -> int:
    """Say when a person has the answer: plates are read first, the meter comes out last."""
    if isinstance(kind, Nameplate) or (isinstance(kind, OneOf) and kind.on_plate):
        return PRINTED
    return READ if isinstance(kind, Reading) else SEEN


def in_order(inputs: Iterable[Input]) -> list[Input]:
    """Return inputs as they are asked, each right behind what it goes with.

    How the peak was taken is asked after the peak, what must be so for a reading right before it.
    """
    sorted_once = sorted(inputs, key=lambda i: had_when(i.kind))
    names = {i.name for i in sorted_once}

    def with_its_own(declared: Input) -> Iterator[Input]:
        for one in sorted_once:
            if one.kind.before == declared.name:
                yield from with_its_own(one)
        yield declared
        for one in sorted_once:
            if one.kind.goes_with == declared.name:
                yield from with_its_own(one)

    leads = [i for i in sorted_once if not names & {i.kind.goes_with, i.kind.before}]
    return [i for lead in leads for i in with_its_own(lead)]


def bearing(
    declared: Input, given: Mapping[str, object], values: Mapping[str, Any]
) -> LeftOut | None:
    """Return what leaving an input out means in this run; None where it has no bearing on it.

    It has none where no word of its declaration holds, where it is a mere setting, where it stands
    in for another that is given, and where what it goes with is not there. One without words is
    taken for asked.
    """
    if declared.kind.goes_with and given.get(declared.kind.goes_with) is None:
        return None
    if not declared.words:
        return LeftOut(Word.ASKED)
    word = word_for(declared.words, values)
    if word is None or word.word is Word.SETTING:
        return None
    return None if _replaced(word, given) else word


def replaced(declared: Input, given: Mapping[str, object], values: Mapping[str, Any]) -> bool:
    """Whether another input is given that an input would only stand in for."""
    word = word_for(declared.words, values)
    return word is not None and _replaced(word, given)


def _replaced(word: LeftOut, given: Mapping[str, object]) -> bool:
    others = word.others if word.word is Word.INSTEAD_OF else ()
    return any(is_known(given.get(name)) for name in others)


def follows(declared: Input) -> bool:
    """Whether an input is asked for only behind another: the horsepower behind a code letter."""
    asked = (word for word in declared.words if word.word is Word.ASKED)
    return any(not t.negated and not t.wanted for word in asked for t in terms(word.when))

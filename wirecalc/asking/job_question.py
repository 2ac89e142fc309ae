"""A question of a job that is no input of a calculation: words, one of a list, or several."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from ..base.errors import BadText, nearest

_MAY_BE_A_NUMBER = ("machine",)  # of a type


class Question(NamedTuple):
    """What is asked, at which step, what may be chosen, and what an empty answer does.

    `enter` says so; where it is empty an answer is needed. `default` is what it answers. Where
    `free`, other words than the choices may be typed; where `several`, more than one choice. `also`
    has words that mean a choice, `stops` what hands are to keep to first.
    """

    key: str
    says: str
    notes: Sequence[str] = ()
    choices: Sequence[str] = ()
    enter: str = ""
    default: str = ""
    step: str = ""
    free: bool = False
    several: bool = False
    also: Mapping[str, str] = MappingProxyType({})
    stops: Sequence[str] = ()


def chosen(question: Question, typed: str) -> list[str]:
    """Return what an answer means: the words typed, or the choices by number or by word.

    Raises BadText for what is no answer to it.

    >>> chosen(Question("a", "Which?", choices=("left", "right"), several=True), "1 2")
    ['left', 'right']
    """
    words = " ".join(typed.split())
    if not words:
        if not question.enter:
            raise BadText("an answer is needed", _may_be(question))
        return [question.default] if question.default else []
    if not question.choices:
        if words.isdecimal() and question.key not in _MAY_BE_A_NUMBER:
            raise BadText(
                f"{words} is a number",
                "type words, or Enter alone" if question.enter else "type words",
            )
        return [words]
    numbers = re.split(r"[\s,;+]+", words) if question.several else [words]
    if all(re.fullmatch(r"[0-9]{1,3}", number) for number in numbers):
        return [_by_number(question, number) for number in dict.fromkeys(numbers)]
    parts = re.split(r"\s*[,;]\s*", words) if question.several else [words]
    return [_by_word(question, part) for part in dict.fromkeys(parts) if part]


def _by_number(question: Question, number: str) -> str:
    if not 1 <= int(number) <= len(question.choices):
        raise BadText(f"there is no {number} in the list", _may_be(question))
    return question.choices[int(number) - 1]


def _by_word(question: Question, word: str) -> str:
    lowered = {choice.casefold(): choice for choice in question.choices}
    starts = [choice for low, choice in lowered.items() if low.startswith(word.casefold())]
    reasons = {low.partition(": ")[2]: choice for low, choice in lowered.items()}
    if exact := lowered.get(word.casefold()) or reasons.get(word.casefold()):
        return exact  # of "does not apply: it has none" the reason alone serves
    if question.free:
        return word
    if len(starts) == 1:
        return starts[0]
    meant = {
        question.also[w] for w in re.findall(r"[a-z']+", word.casefold()) if w in question.also
    }
    if len(meant) == 1:
        return meant.pop()
    near = nearest(word, question.choices)
    raise BadText(f"{word!r} is none of these", f"did you mean {near}?" if near else "")


def _may_be(question: Question) -> str:
    return f"type a number from 1 to {len(question.choices)}" if question.choices else ""

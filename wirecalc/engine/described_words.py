"""What a thing says of itself, in words: each with what it counts for, and its phrases."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from .word_stems import EMPTY, stems

_NAME, SAID, _QUESTION, _INPUT = 7.0, 5.0, 2.5, 1.0  # what a word counts for, by where it stands


class Described(NamedTuple):
    """What one thing says of itself: the weight of each of its words, its phrases, its question.

    `takes` has the quantities that its inputs are of, each with what it counts for.
    """

    name: str
    weights: Mapping[str, float]
    phrases: Sequence[frozenset[str]]
    question: frozenset[str] = frozenset()
    not_checked: Sequence[tuple[str, frozenset[str]]] = ()
    takes: Mapping[str, float] = MappingProxyType({})

    def speaks_of(self, words: frozenset[str]) -> bool:
        """Whether each of some words stands in its phrases, its question or its inputs."""
        return words <= self.weights.keys()


def described(
    name: str, question: str, more: Iterable[str] = (), words: Sequence[str] = ()
) -> Described:
    """Return what a thing says of itself: name and words count most, then its question."""
    weights: dict[str, float] = {}

    def count(word: str, weight: float) -> None:
        weights[word] = max(weights.get(word, 0.0), weight)

    for text, weight in ((question, _QUESTION), *((text, _INPUT) for text in more)):
        for word in stems(text):
            count(word, weight)
    said = [(name, _NAME), *((phrase, SAID) for phrase in _both_spellings(words))]
    phrases = [(frozenset(stems(phrase)), weight) for phrase, weight in said]
    for phrase, weight in phrases:
        telling = phrase - EMPTY
        for word in telling:
            count(word, weight / math.sqrt(len(telling)))
    return Described(name, weights, [p for p, _ in phrases if p], frozenset(stems(question)))


def _both_spellings(phrases: Iterable[str]) -> Iterator[str]:
    """Yield phrases as they are declared, and with words in one that have a hyphen: cut-out."""
    for phrase in phrases:
        yield phrase
        if "-" in phrase:
            yield phrase.replace("-", "")

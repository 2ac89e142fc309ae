"""Which calculations fit what a person typed, who does not know their names.

Word by word over what each declares: its name, its words, its question, its inputs and their
choices. A slip of the pen is forgiven, a rare word counts more than a frequent one, and a phrase
that was typed whole counts more than its parts. All of it is made when somebody asks.
"""

from __future__ import annotations

import difflib
import functools
import math
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from ..typed.word_kinds import OneOf
from .declaration import Calculation
from .word_stems import EMPTY, stem, stems, values

_NAME, _SAID, _QUESTION, _INPUT = 7.0, 5.0, 2.5, 1.0  # what a word counts for, by where it stands
_WHOLE = 0.8  # all words of a phrase together, beside each
_BEGINS, _SLIP = 0.75, 0.8  # a longer word that begins so; one that is spelled nearly so
_ALIKE = {3: 0.85, 4: 0.75, 5: 0.75}  # how like a word of so many letters is that is a slip of one
_LONG_ALIKE = 0.78  # of more letters
_SPELLED = 0.9  # for another spelling of a known word, such as aluminum
_SHORTEST = 3  # letters that a word needs for that
_LONGEST = 40  # letters of two words in one; what is longer is none
_STEM = 5  # letters that a longer word must begin with
_VALUE = 0.4  # a number or its unit, as "14 AWG": beside other words it says little
_FEW = 0.3  # of what the best one counts, what the last one must


class Found(NamedTuple):
    """The names of the calculations that fit, best first, and the words that none speaks of.

    `unchecked` has what all the words stand in together that a calculation says it never checks.
    """

    names: tuple[str, ...]
    strange: tuple[str, ...] = ()
    unchecked: tuple[tuple[str, str], ...] = ()


class Described(NamedTuple):
    """What one thing says of itself: the weight of each of its words, and its phrases."""

    name: str
    weights: Mapping[str, float]
    phrases: Sequence[frozenset[str]]
    not_checked: Sequence[tuple[str, frozenset[str]]] = ()


class WordIndex:
    """The words of some calculations, or of other things with a name, to be asked again."""

    def __init__(self, described: Iterable[Described]) -> None:
        self._all = list(described)
        self._spread = Counter(word for one in self._all for word in one.weights)

    def find(self, typed: str) -> Found:
        """Return what fits some words, best first; nothing where no word is known."""
        wanted = list(dict.fromkeys(w for word in stems(typed) for w in self._parted(word)))
        telling = [w for w in wanted if w not in EMPTY]
        meant = {w: self._meant(w) for w in dict.fromkeys([*telling, *self._joined(wanted)])}
        for word in values(stems(typed)):
            meant[word] = {w: sure * _VALUE for w, sure in meant.get(word, {}).items()}
        strange = self._strange(typed, telling, meant)
        scores = {one.name: self._score(one, wanted, meant) for one in self._all}
        ranked = sorted((n for n in scores if scores[n] > 0), key=lambda n: (-scores[n], n))
        best = scores[ranked[0]] if ranked else 0.0
        names = tuple(n for n in ranked if scores[n] >= _FEW * best)
        return Found(names, strange, self._unchecked(frozenset(telling)))

    def _unchecked(self, telling: frozenset[str]) -> tuple[tuple[str, str], ...]:
        """What is said not to be checked in all these words, which no calculation declares."""
        declared = any(telling == phrase - EMPTY for one in self._all for phrase in one.phrases)
        if len(telling) < 2 or declared:
            return ()
        return tuple(
            (o.name, t) for o in self._all for t, words in o.not_checked if telling <= words
        )

    def _parted(self, word: str) -> list[str]:
        """Return the two known words that one is made of here, such as "startcap", else itself."""
        if word in self._spread or word in EMPTY or len(word) > _LONGEST:
            return [word]
        if word.isalpha():
            for cut in range(_SHORTEST, len(word) - _SHORTEST + 1):
                halves = [stem(word[:cut]), stem(word[cut:])]
                if all(half in self._spread for half in halves):
                    return halves
        return [word]

    def _joined(self, wanted: Sequence[str]) -> list[str]:
        """Two words that are one here: "over load"."""
        return [a + b for a, b in pairwise(wanted) if a + b in self._spread]

    def _strange(
        self, typed: str, telling: Sequence[str], meant: Mapping[str, Mapping[str, float]]
    ) -> tuple[str, ...]:
        joined = {half for a, b in pairwise(stems(typed)) if a + b in meant for half in (a, b)}
        known = {w for w in telling if meant[w] or w in joined}
        unknown = {w for w in telling if w not in known and len(w) > 1 and w.isalpha()}
        said = re.findall(r"[^\W\d_]+", re.sub(r"['\u2019]", "", typed))
        first = {w: as_typed for as_typed in reversed(said) for w in stems(as_typed)}
        return tuple(as_typed for w, as_typed in reversed(first.items()) if w in unknown)

    def _meant(self, word: str) -> dict[str, float]:
        """Return the known words that a typed one may be, each with how surely."""
        longer = dict.fromkeys(self._longer(word), _BEGINS)
        if word in self._spread:
            return {word: 1.0} | longer | dict.fromkeys(self._alike(word, _SPELLED), _SLIP)
        if longer or len(word) < _SHORTEST:
            return longer
        close = self._alike(word, _ALIKE.get(len(word), _LONG_ALIKE))
        best = max(close.values(), default=0.0)
        return {c: _SLIP * likeness for c, likeness in close.items() if likeness > best - 0.1}

    def _longer(self, word: str) -> list[str]:
        """Known words that begin with one: a heater with heat, and no window with wind."""
        far = [k for k in self._spelled if k.startswith(word) and k != word]
        return far if len(word) >= _STEM else [k for k in far if k == f"{word}er" and len(word) > 3]

    def _alike(self, word: str, alike: float) -> dict[str, float]:
        """Known words that are spelled nearly so, each with how like they are; no abbreviations."""
        if not word.isalpha():
            return {}
        close = difflib.get_close_matches(word, self._spelled, n=3, cutoff=alike)
        same_start = len(word) < _STEM or word in self._spread
        near = [c for c in close if c != word and (c[0] == word[0] or not same_start)]
        return {c: difflib.SequenceMatcher(None, word, c).ratio() for c in near}

    @functools.cached_property
    def _spelled(self) -> list[str]:
        return [word for word in self._spread if len(word) > _SHORTEST and word.isalpha()]

    def _rare(self, word: str) -> float:
        """Return what a word tells: less, the more calculations speak of it."""
        return math.log(1 + len(self._all) / self._spread[word])

    def _score(
        self, one: Described, wanted: Sequence[str], meant: Mapping[str, Mapping[str, float]]
    ) -> float:
        worth: dict[str, float] = {}  # of each word of this calculation that was meant
        score = 0.0
        for may_be in meant.values():
            here = {w: sure * self._rare(w) for w, sure in may_be.items() if w in one.weights}
            score += max((v * one.weights[w] for w, v in here.items()), default=0.0)
            for w, v in here.items():
                worth[w] = max(worth.get(w, 0.0), v)
        typed = {*worth, *(w for w in wanted if w in EMPTY)}
        whole = [sum(worth.get(w, 0.0) for w in p) for p in one.phrases if p <= typed]
        return score + _WHOLE * _SAID * max(whole, default=0.0)


def of_calculations(calculations: Iterable[Calculation[Any]]) -> WordIndex:
    """Return the words of some calculations."""
    return WordIndex(
        described(calc.name, calc.question, _of_inputs(calc), calc.words)._replace(
            not_checked=[(text, frozenset(stems(text))) for text in calc.not_checked]
        )
        for calc in calculations
    )


def _of_inputs(calc: Calculation[Any]) -> Iterator[str]:
    for declared in calc.inputs:
        yield declared.name.replace("_", " ")
        yield declared.kind.text
        if isinstance(declared.kind, OneOf):
            yield from declared.kind.words


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
    said = [(name, _NAME), *((phrase, _SAID) for phrase in _both_spellings(words))]
    phrases = [(frozenset(stems(phrase)), weight) for phrase, weight in said]
    for phrase, weight in phrases:
        telling = phrase - EMPTY
        for word in telling:
            count(word, weight / math.sqrt(len(telling)))
    return Described(name, weights, [p for p, _ in phrases if p])


def _both_spellings(phrases: Iterable[str]) -> Iterator[str]:
    """Yield phrases as they are declared, and with words in one that have a hyphen: cut-out."""
    for phrase in phrases:
        yield phrase
        if "-" in phrase:
            yield phrase.replace("-", "")

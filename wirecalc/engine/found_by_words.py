"""Which calculations fit what a person typed, who does not know their names.

Word by word over what each declares: its name, its words, its question, its inputs and their
choices. A slip of the pen is forgiven, a rare word counts more than a frequent one, and a phrase
that was typed whole counts more than its parts. All of it is made when somebody asks.
"""

from __future__ import annotations

import difflib
import math
import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from itertools import pairwise
from typing import Any, NamedTuple

from ..typed.word_kinds import OneOf
from .declaration import Calculation

_NAME, _SAID, _QUESTION, _INPUT = 5.0, 5.0, 2.5, 1.0  # what a word counts for, by where it stands
_PART = 0.6  # of a name or phrase of several words, one of them
_WHOLE = 0.8  # all words of a phrase together, beside each
_BEGINS, _SLIP = 0.75, 0.8  # a longer word that begins so; one that is spelled nearly so
_ALIKE = 0.75  # how like a word must be to be taken for a slip, up to 1
_SHORT_ALIKE = 0.85  # of three letters: "pul" is, and "pal" is none
_SHORTEST = 3  # letters that a word needs for that
_FEW = 0.3  # of what the best one counts, what the last one must


class Found(NamedTuple):
    """The names of the calculations that fit, best first, and the words that none speaks of."""

    names: tuple[str, ...]
    strange: tuple[str, ...]


class _Described(NamedTuple):
    """What one calculation says of itself: the weight of each of its words, and its phrases."""

    name: str
    weights: Mapping[str, float]
    phrases: Sequence[frozenset[str]]


def stems(text: str) -> list[str]:
    """Return the words of a text in lower case, without endings that change no meaning.

    >>> stems("Breakers keep tripping, 14ga wires")
    ['breaker', 'keep', 'trip', '14', 'ga', 'wir']
    """
    plain = re.sub(r"['\u2019]", "", text.casefold())
    return [_stem(word) for word in re.findall(r"[^\W\d_]+|\d+", plain)]


def _stem(word: str) -> str:
    if len(word) < 4 or not word.isalpha():
        return word
    word = re.sub(r"(?<=[^su])s$", "", re.sub(r"(?<=[sx])es$", "", re.sub(r"ies$", "y", word)))
    shorter = re.sub(r"(?<=\w{3})(ing|ed|e)$", "", word)
    return re.sub(r"([bdfgkmnprt])\1$", r"\1", shorter) if shorter != word else word


_EMPTY = frozenset(  # words that say nothing of what is asked; within a phrase they count
    stems(
        "a an and any are as at be but by can cant do does doesnt dont for from get gets give good "
        "has have how i if in into is isnt it its keep let long many may me more much my need no "
        "not of off on one or our out put right says should so still than that the their them then "
        "there these they this to too up use used using want was we what when where which while "
        "who why will with without wont work would you your"
    )
)


class WordIndex:
    """The words of some calculations, to be asked again and again."""

    def __init__(self, calculations: Iterable[Calculation[Any]]) -> None:
        self._all = [_described(calc) for calc in calculations]
        self._spread = Counter(word for one in self._all for word in one.weights)

    def find(self, typed: str) -> Found:
        """Return what fits some words, best first; nothing where no word is known."""
        wanted = list(dict.fromkeys(stems(typed)))
        telling = [w for w in wanted if w not in _EMPTY]
        meant = {w: self._meant(w) for w in dict.fromkeys([*telling, *self._joined(wanted)])}
        strange = self._strange(typed, telling, meant)
        scores = {one.name: self._score(one, wanted, meant) for one in self._all}
        ranked = sorted((n for n in scores if scores[n] > 0), key=lambda n: (-scores[n], n))
        best = scores[ranked[0]] if ranked else 0.0
        return Found(tuple(n for n in ranked if scores[n] >= _FEW * best), strange)

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
        return tuple(dict.fromkeys(w for w in said if _stem(w.casefold()) in unknown))

    def _meant(self, word: str) -> dict[str, float]:
        """Return the known words that a typed one may be, each with how surely."""
        if word in self._spread:
            return {word: 1.0} | dict.fromkeys(self._longer(word), _BEGINS)
        if len(word) < _SHORTEST or not word.isalpha():
            return {}
        longer = self._longer(word)
        if longer:
            return dict.fromkeys(longer, _BEGINS)
        alike = _ALIKE if len(word) > _SHORTEST else _SHORT_ALIKE
        close = difflib.get_close_matches(word, self._spelled, n=3, cutoff=alike)
        best = max((_likeness(word, c) for c in close), default=0.0)
        return {c: _SLIP * _likeness(word, c) for c in close if _likeness(word, c) > best - 0.1}

    def _longer(self, word: str) -> list[str]:
        return [k for k in self._spelled if k.startswith(word) and k != word and len(word) > 3]

    @cached_property
    def _spelled(self) -> list[str]:
        return [word for word in self._spread if len(word) > _SHORTEST and word.isalpha()]

    def _rare(self, word: str) -> float:
        """Return what a word tells: less, the more calculations speak of it."""
        return math.log(1 + len(self._all) / self._spread[word])

    def _score(
        self, one: _Described, wanted: Sequence[str], meant: Mapping[str, Mapping[str, float]]
    ) -> float:
        worth: dict[str, float] = {}  # of each word of this calculation that was meant
        score = 0.0
        for may_be in meant.values():
            here = {w: sure * self._rare(w) for w, sure in may_be.items() if w in one.weights}
            score += max((v * one.weights[w] for w, v in here.items()), default=0.0)
            for w, v in here.items():
                worth[w] = max(worth.get(w, 0.0), v)
        typed = {*worth, *(w for w in wanted if w in _EMPTY)}
        whole = [sum(worth.get(w, 0.0) for w in p) for p in one.phrases if p <= typed]
        return score + _WHOLE * _SAID * max(whole, default=0.0)


def _likeness(one: str, other: str) -> float:
    return difflib.SequenceMatcher(None, one, other).ratio()


def _described(calc: Calculation[Any]) -> _Described:
    weights: dict[str, float] = {}

    def count(text: str, weight: float) -> None:
        for word in stems(text):
            weights[word] = max(weights.get(word, 0.0), weight)

    for declared in calc.inputs:
        count(declared.name.replace("_", " "), _INPUT)
        count(declared.kind.text, _INPUT)
        if isinstance(declared.kind, OneOf):
            count(" ".join(declared.kind.words), _INPUT)
    count(calc.question, _QUESTION)
    phrases = [frozenset(stems(phrase)) for phrase in (calc.name, *calc.words)]
    for phrase, weight in zip(phrases, [_NAME, *(_SAID for _ in calc.words)], strict=True):
        telling = phrase - _EMPTY
        for word in telling:
            weights[word] = max(weights.get(word, 0.0), weight * (_PART if len(telling) > 1 else 1))
    return _Described(calc.name, weights, [p for p in phrases if p])

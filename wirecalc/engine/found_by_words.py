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
from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from .declaration import Calculation
from .described_words import SAID, Described, described
from .said_alike import said_alike
from .values_in_words import Values, values_in
from .word_stems import EMPTY, stem, stems
from .words_of_inputs import of_calculation

_WHOLE = 0.8  # all words of a phrase together, beside each
_BEGINS, _SLIP = 0.75, 0.8  # a longer word that begins so; one that is spelled nearly so
_ALIKE = {3: 0.85, 4: 0.75, 5: 0.75}  # how like a word of so many letters is that is a slip of one
_LONG_ALIKE = 0.78  # of more letters
_SPELLED = 0.9  # for another spelling of a known word, such as aluminum
_SHORTEST = 3  # letters that a word needs for that
_LONGEST = 40  # letters of two words in one; what is longer is none
_STEM = 5  # letters that a longer word must begin with
_VALUE = 0.4  # a number or its unit, as "14 AWG": beside other words it says little
_ASKED = 1.0  # for a word that the question itself has
_LITTLE = 0.3  # for a word of a phrase that tells nothing by itself, as in "oven off"
_LIKE = 0.4  # for another word of about the same thing
_FEW = 0.3  # of what the best one counts, what the last one must
_CARRIED = 0.5  # share of the words that carries the question
_TOLD = 2  # calculations that may say they never check what one strange word names


class Found(NamedTuple):
    """The names of the calculations that fit, best first, and the words that none speaks of.

    `unchecked` has what all the words stand in together that a calculation says it never checks;
    `in_part` where no calculation is about more than half of the words together.
    """

    names: tuple[str, ...]
    strange: tuple[str, ...] = ()
    unchecked: tuple[tuple[str, str], ...] = ()
    in_part: bool = False


class Asked(NamedTuple):
    """What was typed: its words, those that tell something, what each may be, the strange ones."""

    wanted: Sequence[str]
    telling: Sequence[str]
    meant: Mapping[str, Mapping[str, float]]
    strange: Sequence[str]
    values: Values

    def whole(self, one: Described) -> set[str]:
        """Return the words of the names and phrases of one that were typed as a whole."""
        typed = {*self.wanted, *(w for may_be in self.meant.values() for w in may_be)}
        return {word for phrase in one.phrases if phrase <= typed for word in phrase}


class WordIndex:
    """The words of some calculations, or of other things with a name, to be asked again."""

    def __init__(self, described: Iterable[Described]) -> None:
        self._all = list(described)
        self._spread = Counter(word for one in self._all for word in one.weights)
        self._taken = Counter(quantity for one in self._all for quantity in one.takes)

    def find(self, typed: str) -> Found:
        """Return what fits some words, best first; nothing where no word is known."""
        values = values_in(typed)
        wanted = list(dict.fromkeys(w for word in stems(typed) for w in self._parted(word)))
        telling = [w for w in wanted if w not in EMPTY]
        meant = {w: self._meant(w) for w in dict.fromkeys([*telling, *self._joined(wanted)])}
        of_values = [w for w in telling if w in values.stems]
        for word in [*of_values, *(w for w in stems(" ".join(values.words)) if w not in meant)]:
            may_be = meant.get(word) or self._meant(word)
            meant[word] = {w: sure * _VALUE for w, sure in may_be.items()}
        said = Asked(wanted, telling, meant, self._strange(typed, telling, meant), values)
        offered = [one for one in self._all if self._speaks(one, said)]
        scores = {one.name: self._score(one, said) for one in offered}
        ranked = sorted((n for n in scores if scores[n] > 0), key=lambda n: (-scores[n], n))
        best = scores[ranked[0]] if ranked else 0.0
        names = tuple(n for n in ranked if scores[n] >= _FEW * best)
        unchecked = self._unchecked(frozenset(telling))
        names = names or tuple(name for name, _ in unchecked)
        return Found(names, tuple(said.strange), unchecked, self._in_part(names, said))

    def _speaks(self, one: Described, typed: Asked) -> bool:
        """Whether one may be offered; where strange words carry the question, for a phrase."""
        carried = typed.strange and len(typed.strange) >= _CARRIED * len(typed.telling)
        return not carried or bool(typed.whole(one))

    def _in_part(self, names: Sequence[str], typed: Asked) -> bool:
        """Whether none of them is about more than half of the words.

        A word counts half where it stands only in a longer phrase, or beside other things.
        """
        said = [word for word in typed.telling if word not in typed.values.stems]
        each_may_be = [{word, *typed.meant[word]} for word in said]
        held = [0.0]
        for one in (one for one in self._all if one.name in names):
            whole = typed.whole(one) | one.question
            share = (
                1.0 if w & whole else 0.5 if w & one.weights.keys() else 0.0 for w in each_may_be
            )
            held.append(sum(share))
        return bool(said) and max(held) <= _CARRIED * len(said)

    def _unchecked(self, telling: frozenset[str]) -> tuple[tuple[str, str], ...]:
        """What is said not to be checked in all these words, which no calculation declares."""
        declared = any(telling == phrase - EMPTY for one in self._all for phrase in one.phrases)
        if not telling or declared:
            return ()
        said = tuple(
            (o.name, t)
            for o in self._all
            for t, words in o.not_checked
            if telling <= words and not o.speaks_of(telling)
        )
        alone = len(telling) == 1 and (telling & self._spread.keys() or len(said) > _TOLD)
        return () if alone else said

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
        of_values = values_in(typed).stems
        known = {w for w in telling if meant[w] or w in joined or w in of_values}
        unknown = {w for w in telling if w not in known and len(w) > 1 and w.isalpha()}
        said = re.findall(r"[^\W\d_]+", re.sub(r"['\u2019]", "", typed))
        first = {w: as_typed for as_typed in reversed(said) for w in stems(as_typed)}
        return tuple(as_typed for w, as_typed in reversed(first.items()) if w in unknown)

    def _meant(self, word: str) -> dict[str, float]:
        """Return the known words that a typed one may be, each with how surely."""
        spelled = self._spelled_so(word)
        alike = [w for w in said_alike(word) if w in self._spread and w not in spelled]
        return dict.fromkeys(alike, _LIKE) | spelled

    def _spelled_so(self, word: str) -> dict[str, float]:
        """Return the known words that are spelled as a typed one is, or nearly so."""
        longer = dict.fromkeys(self._longer(word), _BEGINS)
        if word in self._spread:
            return {word: 1.0} | longer | dict.fromkeys(self._alike(word, _SPELLED), _SLIP)
        if longer or len(word) < _SHORTEST:
            return longer
        verb = stem(re.sub(r"ers?$", "ing", word))  # a megger is for what is megged
        if word[-1] in "rs" and verb in self._spread:
            return {verb: _BEGINS}
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

    def _score(self, one: Described, typed: Asked) -> float:
        worth: dict[str, float] = {}  # of each word of this calculation that was meant
        score = 0.0
        for word, may_be in typed.meant.items():
            most = self._rare(word) if word in self._spread else math.inf  # what was typed tells
            here = {w: s * min(most, self._rare(w)) for w, s in may_be.items() if w in one.weights}
            score += max((v * one.weights[w] for w, v in here.items()), default=0.0)
            for w, v in here.items():
                worth[w] = max(worth.get(w, 0.0), v)
        known = {*worth, *(w for w in typed.wanted if w in EMPTY)}
        whole = [sum(worth.get(w, _LITTLE) for w in p) for p in one.phrases if p <= known]
        score += _WHOLE * SAID * max(whole, default=0.0)
        score += _ASKED * sum(v for w, v in worth.items() if w in one.question)
        return score + self._takes(one, typed.values) if score else 0.0

    def _takes(self, one: Described, values: Values) -> float:
        """Return what the values count for that one can take: more, the fewer others can."""
        return sum(
            sure * one.takes[of] * math.log(1 + len(self._all) / self._taken[of])
            for of, sure in values.of.items()
            if of in one.takes
        )


def of_calculations(
    calculations: Iterable[Calculation[Any]], tools: Iterable[tuple[str, tuple[str, ...]]] = ()
) -> WordIndex:
    """Return the words of some calculations, and of tools beside them, each with its words."""
    return _index(tuple(calculations), tuple(tools))


@functools.lru_cache(maxsize=8)  # of the same calculations it is made once
def _index(
    calculations: tuple[Calculation[Any], ...], tools: tuple[tuple[str, tuple[str, ...]], ...]
) -> WordIndex:
    phrases = (
        (name, [w.strip() for text in said for w in text.split(";")]) for name, said in tools
    )
    of_tools = (described(name, "", (), words) for name, words in phrases)
    return WordIndex([*map(of_calculation, calculations), *of_tools])

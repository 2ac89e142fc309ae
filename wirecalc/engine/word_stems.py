"""The words of a text as they are compared: in lower case, and forms of one word as one."""

from __future__ import annotations

import functools
import re

_FORMS = {  # of one word
    **dict.fromkeys(("aint", "cannot", "cant", "didnt", "doesnt", "dont", "isnt"), "not"),
    **dict.fromkeys(("never", "wasnt", "wont", "wouldnt"), "not"),
    **{"held": "hold", "broke": "break", "broken": "break", "blew": "blow", "blown": "blow"},
    **{"burnt": "burn", "came": "come", "fell": "fall", "ran": "run", "drew": "draw"},
    **{"spun": "spin", "swollen": "swell", "tore": "tear", "torn": "tear", "shook": "shake"},
    **{"gage": "gauge", "guage": "gauge", "fuze": "fuse", "tork": "torque", "lite": "light"},
    **{"froze": "frozen", "got": "get", "gone": "go", "went": "go", "lost": "lose"},
    **{"one": "1", "two": "2", "three": "3", "four": "4", "twice": "2"},
    # as the trade shortens them
    **{"alu": "aluminium", "brkr": "breaker", "ckt": "circuit", "cct": "circuit"},
    **{"comp": "compressor", "compr": "compressor", "conn": "connector", "cond": "condenser"},
    **{"elec": "electric", "elem": "element", "ext": "extension", "extn": "extension"},
    **{"gen": "generator", "genny": "generator", "genset": "generator", "gnd": "ground"},
    **{"insul": "insulation", "neut": "neutral", "recep": "receptacle", "recpt": "receptacle"},
    **{"res": "resistance", "temp": "temperature", "term": "terminal", "terms": "terminal"},
    **{"wdg": "winding", "xfmr": "transformer", "stat": "thermostat"},
}
_JOINING = frozenset(
    re.findall(
        "[a-z]+",
        "a an and are as at be but by can do does for from get gets getting give gives had how i "
        "if in into is it its just me my need of or our put says should so still than that the "
        "their them then there these they this to use used using want was we what when where which "
        "while who why will with work works would you your",
    )
)


def stems(text: str) -> list[str]:
    """Return the words of a text in lower case, without endings that change no meaning.

    Words that only join others are left out, and every "won't" is a "not".

    >>> stems("Breakers keep tripping, 14ga wires of the AC won't start")
    ['breaker', 'keep', 'trip', '14', 'ga', 'wir', 'ac', 'not', 'start']
    """
    return list(_stems(text))


@functools.lru_cache(maxsize=5_000)  # calculations share texts of inputs
def _stems(text: str) -> tuple[str, ...]:
    plain = re.sub(r"['\u2019]", "", text.casefold())
    words = (_FORMS.get(word, word) for word in re.findall(r"[^\W\d_]+|\d+", plain))
    return tuple(stem(word) for word in words if word not in _JOINING)


@functools.lru_cache(maxsize=5_000)  # and words
def stem(word: str) -> str:
    """Return a word without an ending that changes no meaning."""
    if len(word) < 4 or not word.isalpha():
        return word
    word = re.sub(r"(?<=[^su])s$", "", re.sub(r"(?<=[sx])es$", "", re.sub(r"ies$", "y", word)))
    shorter = re.sub(r"(?<=\w{3})(ing|ed|e)$", "", word)
    return re.sub(r"([bdfgkmnprt])\1$", r"\1", shorter) if shorter != word else word


EMPTY = frozenset(  # words that tell something only within a phrase, such as "no heat"
    stems(
        "any good has have keep let long many may more much no not off ok okay on one out right "
        "too up"
    )
)

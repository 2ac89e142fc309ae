"""One answer to one question: what was meant, whether it can be read, and how it is read back."""

from __future__ import annotations

import re
from pathlib import Path
from typing import NamedTuple

from ..base.errors import BadText, Problem
from ..base.rounding import show
from ..engine.inputs import Input
from ..engine.one_input import UNKNOWN, says_unknown
from ..typed.quantities import split_error
from ..typed.quantity_kinds import Nameplate, Reading
from ..typed.units import convert
from ..typed.word_kinds import OneOf, RangeKind, WireKind, YesNo

Answer = str | list[str] | None  # None: left out

BACK, HELP, SKIP = "back", "help", "skip"
WORDS = {  # what may be typed in place of an answer -> what it means
    UNKNOWN: UNKNOWN,
    "don't know": UNKNOWN,
    "dont know": UNKNOWN,
    "do not know": UNKNOWN,
    "not known": UNKNOWN,
    "no idea": UNKNOWN,
    "dunno": UNKNOWN,
    BACK: BACK,
    HELP: HELP,
    "?": HELP,
    SKIP: SKIP,
}
_BARE = re.compile(r"[<>]?\s*[-+−]?[\d.]+(?:[\s-]+\d+/\d+|/\d+)?", re.ASCII)  # and no unit
_GAUGES = re.compile(r"#?\d{1,2}(?:/0)?(?:\s*-\s*#?\d{1,2}(?:/0)?)?", re.ASCII)  # and no unit
_SHORT = 2  # letters; a code letter is typed as quickly as its number


class Taken(NamedTuple):
    """An answer that can be read; `read_back` says what it was taken for, where that is not it.

    What had no unit is `doubtful`: it is looked at before it counts.
    """

    text: str
    read_back: str = ""
    doubtful: bool = False


def meaning(typed: str) -> str:
    """Return the word that stands in place of an answer, or the answer itself.

    >>> meaning("Don’t know"), meaning(" ? "), meaning("11 A")
    ('unknown', 'help', '11 A')
    """
    plain = typed.strip()
    return WORDS.get(plain.casefold().replace("’", "'"), plain)


def taken(declared: Input, typed: str) -> Taken | Problem:
    """Read one answer by the input's own kind; what is wrong is said as on the command line.

    A number without a unit gets the one that the question showed; where words are listed, the
    number of one of them serves.
    """
    kind = declared.kind
    if typed == UNKNOWN or (kind.of_file and Path(typed).is_file()):
        return Taken(typed)  # a file is read with the answers that say how
    if (word := _numbered(declared, typed)) is not None:
        return Taken(word, word)
    text = _with_unit(declared, typed)
    try:
        for one in declared.each(text):
            if not says_unknown(one):
                kind.read(one)
    except BadText as error:
        return error.about(declared.name)
    return Taken(text) if text == typed else Taken(text, _read_back(declared, text), True)


def choices(declared: Input) -> list[str]:
    """Return the words to choose from, to be numbered from 1; nothing where they are as short."""
    kind = declared.kind
    if isinstance(kind, YesNo):
        return ["yes", "no"]
    words = kind.words if isinstance(kind, OneOf) else []
    return words if all(len(word) > _SHORT for word in words) else []


def _numbered(declared: Input, typed: str) -> str | None:
    words = choices(declared)
    return words[int(typed) - 1] if typed in map(str, range(1, len(words) + 1)) else None


def _with_unit(declared: Input, typed: str) -> str:
    """Return a bare number with the unit of its input; any other text as it stands.

    An error that is typed behind it stays behind it. A bare gauge or range of gauges is one of AWG.
    """
    kind = declared.kind
    if isinstance(kind, WireKind | RangeKind):
        return f"{typed.strip()} AWG" if _GAUGES.fullmatch(typed.strip()) else typed
    if not isinstance(kind, Reading | Nameplate):
        return typed
    try:
        number, error = split_error(typed)
    except BadText:
        return typed
    if not _BARE.fullmatch(number.strip()):
        return typed
    return f"{number.strip()} {kind.unit}" + (f" ±{error}" if error else "")


def _read_back(declared: Input, text: str) -> str:
    """Say what a bare number was taken for; of a temperature in both scales."""
    if declared.kind.unit != "C":
        return text
    value = declared.kind.read(text).value
    return f"{text} (that is {show(round(convert(value, 'C', 'F')))} F)"

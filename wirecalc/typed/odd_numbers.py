"""A number that is written in another way: with an end above and below, a side, powers of ten."""

from __future__ import annotations

import re
from collections.abc import Iterator

from .odd_units import NUMBER
from .unit_names import SPELLINGS

_N = NUMBER
_MORE = r"^(?:over|more than|above|greater than|at least)\s+|(?<=\d)\s*\+(?=\s*[a-zA-Z]|$)"
_LESS = r"^(?:under|less than|below|at most|up to)\s+"


def other_numbers(clean: str, dimension: str) -> Iterator[tuple[str, str]]:
    """Yield a tolerance with two ends, and a number in powers of ten."""
    if ends := re.fullmatch(rf"\+({_N})\s*%?\s*/\s*-({_N})\s*%?", clean):
        wrong = "has an end above and one below"
        yield (
            wrong,
            f"write [{ends[2]} %] here, and {ends[1]} % as the end above, where it is asked",
        )
    if power := re.fullmatch(rf"({_N}[eE][-+]?\d{{1,2}})\s*(\S+)", clean):
        yield from _in_usual_digits(float(power[1]), power[2], dimension)


def _in_usual_digits(number: float, word: str, dimension: str) -> Iterator[tuple[str, str]]:
    """Yield a number in powers of ten with its point written out, in a unit that shows digits."""
    wrong = "is in powers of ten"
    yield wrong, f"write [{number:.10g} {word}]"
    for tens, letter in ((3, "m"), (6, "u"), (9, "n"), (12, "p"), (-3, "k"), (-6, "M")):
        there = number * 10.0**tens
        if f"{letter}{word}" in SPELLINGS[dimension] and 0.1 <= abs(there) < 10_000:
            yield wrong, f"write [{there:.10g} {letter}{word}]"


def up_to(number: str, unit: str) -> str:
    """Return what would do for a value that is under a number: a band from zero up to it."""
    half = f"{float(number.replace('−', '-')) / 2:.6g} {unit}"
    return f"read it on a lower range, or write [{half} ±{half}] for 0 to {number} {unit}"


def sides(clean: str) -> Iterator[tuple[str, str]]:
    """Yield a value of which a word says on which side it lies: under 2 ohm, 20+ A."""
    for pattern, sign in ((_MORE, ">"), (_LESS, "<")):
        side = " ".join(re.sub(pattern, " ", clean, flags=re.IGNORECASE).split())
        if side == clean:
            continue
        yield "says a side", f"write [{sign}{side}]"
        wrong = "says a side, and this is one value"
        if sign == "<" and (found := re.fullmatch(rf"({_N})\s*(\S.*)", side)):
            yield wrong, up_to(found[1], found[2])
        yield wrong, "write the value itself; where no more than a side is known, write unknown"

"""A number that is written in another way: with an end above and one below, in powers of ten."""

from __future__ import annotations

import re
from collections.abc import Iterator

from .odd_units import NUMBER

_N = NUMBER


def other_numbers(clean: str) -> Iterator[tuple[str, str]]:
    """Yield a tolerance with two ends, and a number in powers of ten."""
    if ends := re.fullmatch(rf"\+({_N})\s*%?\s*/\s*-({_N})\s*%?", clean):
        wrong = "has an end above and one below"
        yield (
            wrong,
            f"write [{ends[2]} %] here, and {ends[1]} % as the end above, where it is asked",
        )
    if power := re.fullmatch(rf"({_N}[eE][-+]?\d{{1,2}})\s*(\S+)", clean):
        yield from _in_usual_digits(float(power[1]), power[2])


def _in_usual_digits(number: float, word: str) -> Iterator[tuple[str, str]]:
    """Yield a number in powers of ten with its point written out, in a unit that shows digits."""
    wrong = "is in powers of ten"
    yield wrong, f"write [{number:.10g} {word}]"
    for tens, letter in ((3, "m"), (6, "u"), (9, "n"), (12, "p"), (-3, "k"), (-6, "M")):
        if 0.1 <= (there := abs(number) * 10.0**tens) < 10_000:
            yield wrong, f"write [{there:.10g} {letter}{word}]"

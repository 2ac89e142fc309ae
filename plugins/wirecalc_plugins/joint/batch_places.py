"""Numbers in place of names: what a learner is called wherever others may read it, and the key.

What is known to be a thing, a tool or a lesson, keeps its name; all else may be a person.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import product

THINGS = frozenset(
    (
        *("tool", "crimper", "pliers", "die", "jaw", "press", "machine", "tester", "terminal"),
        *("barrel", "part", "wire", "gauge", "spool", "reel", "lot", "batch", "supplier", "bench"),
        *("lesson", "tug", "day", "date", "week", "shift", "round", "session", "setting", "strip"),
    )
)
_LETTERS = 26

Words = Mapping[str, Sequence[str]]


def numbered(words: Words, by: Sequence[str]) -> dict[str, list[str]]:
    """Return the columns with `learner 3` in place of a name, in each that groups and has names.

    The number that a cell ends in, or its one letter, is kept where each has its own, else they are
    counted as they come.
    """
    found = {column: list(cells) for column, cells in words.items()}
    for column in by:
        if column.casefold().strip() not in THINGS:
            codes = _numbers(list(dict.fromkeys(words[column])))
            found[column] = [f"{column} {codes[cell]}" for cell in words[column]]
    return found


def key_of(named: Words, coded: Words, by: Sequence[str]) -> list[tuple[str, str]]:
    """Return whose number each is; nothing where no name was hidden."""
    pairs = dict.fromkeys(
        (number, name)
        for column in by
        for number, name in zip(coded[column], named[column], strict=True)
        if name not in (number, number.removeprefix(f"{column} "))
    )
    return list(pairs)


def _numbers(levels: Sequence[str]) -> dict[str, str]:
    own = [m[0] if (m := re.search(r"\d{1,3}$|^\w$", x.strip())) else "" for x in levels]
    if all(own) and len(set(own)) == len(own):
        return dict(zip(levels, own, strict=True))
    return {level: str(at) for at, level in enumerate(levels, start=1)}


class Places:
    """Where the sets stand on a chart, and what each is called there.

    With numbers a set is called 3, or 3b: the letter stands for its second column. With names
    all of it is written out. `groups` are the first column's, where most have every level of the
    second; then each has a place for all of them, and one without pulls stays empty.
    """

    def __init__(self, words: Words, by: Sequence[str], *, names: bool) -> None:
        self.sets = list(dict.fromkeys(zip(*(words[column] for column in by), strict=True)))
        levels = [list(dict.fromkeys(words[column])) for column in by]
        lettered = not names and len(by) == 2 and len(levels[1]) <= _LETTERS
        self.letters = {x: chr(ord("a") + at) for at, x in enumerate(levels[1])} if lettered else {}
        self._short = {
            x: x.removeprefix(f"{column} ") if not names and _counted(x, column) else x
            for column, its in zip(by, levels, strict=True)
            for x in its
        }
        self.groups: tuple[str, ...] = ()
        every = list(product(*levels)) if lettered else []
        if len(self.sets) > len(every) / 2 > 0:
            self.sets = every
            self.groups = tuple(self._short[first] for first, _ in self.sets)
        self.label = " and ".join(by)
        if lettered:
            told = ", ".join(f"{letter} {x}" for x, letter in self.letters.items())
            told = f"from left: {told}" if self.groups else told
            self.label += f" ({told})" if len(told) <= 50 else ""

    def name(self, cells: tuple[str, ...]) -> str:
        """Return what a set is called on the chart."""
        if self.letters:
            first = self._short[cells[0]]
            letter = self.letters[cells[1]]
            return f"{first}{letter}" if first[-1:].isdigit() else f"{first}, {letter}"
        return ", ".join(self._short[cell] for cell in cells)


def _counted(level: str, column: str) -> bool:
    return re.fullmatch(rf"{re.escape(column)} (\d+|\w)", level) is not None

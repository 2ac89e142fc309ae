"""An entry of a rules file: what may stand in it, and what is wrong with it, with its line.

Only the shape is checked here. Whether a calculation has such an input is known when the rule is
bound to it (rules_file.py).
"""

from __future__ import annotations

import contextlib
import math
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

from ..base.errors import BadText, did_you_mean
from ..said.items import GRAVITY
from ..typed.quantities import read_number

BOUNDS = ("at_least", "at_most")
WORDS = ("one_of", "not_one_of")
ASKS = ("times", *BOUNDS, *WORDS)
_ASKS = {  # what a rule looks at -> what it may ask of that
    "criterion": ("times", *BOUNDS),
    "figure": BOUNDS,
    "input": (*BOUNDS, *WORDS),
    "forbid": (),
}
_TEXT, _TEXTS, _YES = "a text in quotes", 'texts, as ["pull"]', "true or false"
_FACTOR, _AMOUNT = "a number, as 1.25", 'a quantity in quotes, as "25 lbf", or a count'
_WHEN = 'inputs, as { terminal = ["ring"] }'
_RULE_KEYS = {
    "name": _TEXT,
    "calculations": _TEXTS,
    "criterion": _TEXT,
    "figure": _TEXT,
    "input": _TEXT,
    "forbid": _YES,
    "times": _FACTOR,
    "at_least": _AMOUNT,
    "at_most": _AMOUNT,
    "one_of": _TEXTS,
    "not_one_of": _TEXTS,
    "when": _WHEN,
    "optional": _YES,
    "advisory": _YES,
    "why": _TEXT,
    "source": _TEXT,
    "action": _TEXT,
    "caution": _TEXT,
    "severity": _TEXT,
}
_REQUIRED_KEYS = {"name": _TEXT, "kinds": _TEXTS, "calculations": _TEXTS}
SECTIONS = {"rule": _RULE_KEYS, "required": _REQUIRED_KEYS}


class Entry(NamedTuple):
    """One `[[rule]]` or `[[required]]`: what stands in it, and in which line it and each key is."""

    section: str
    line: int
    given: Mapping[str, Any]
    lines: Mapping[str, int] = MappingProxyType({})

    @property
    def name(self) -> str:
        """The name of the rule; a place holder where it has none."""
        name = self.given.get("name")
        return name if isinstance(name, str) and name else f"of line {self.line}"

    @property
    def calculations(self) -> tuple[str, ...]:
        """The calculations that it names, as far as they can be read."""
        named = self.given.get("calculations")
        return tuple(named) if isinstance(named, list) and is_texts(named) else ()

    @property
    def asked(self) -> str:
        """The key that says what is asked; empty where the rule only forbids or warns."""
        return next((key for key in ASKS if key in self.given), "")

    def line_of(self, key: str) -> int:
        """Return the line of a key, or that of the entry where it has no such key."""
        return self.lines.get(key, self.line)


class WrongEntry(BadText):
    """Something in an entry that cannot be used, with its line."""

    def __init__(self, line: int, wrong: str, would_do: str = "") -> None:
        self.line, self.said = line, wrong
        super().__init__(f"line {line}: {wrong}", would_do)


@contextlib.contextmanager
def at_key(entry: Entry, key: str) -> Iterator[None]:
    """Within this, a text that cannot be read is one of a key of an entry; raises WrongEntry."""
    try:
        yield
    except WrongEntry:
        raise
    except BadText as error:
        raise WrongEntry(entry.line_of(key), error.wrong, error.would_do) from None


class Wrong(NamedTuple):
    """Something wrong in a rules file: where, what, and what would do. Line 0: the whole file."""

    entry: Entry | None
    line: int
    wrong: str
    would_do: str = ""

    def __str__(self) -> str:
        said = f"line {self.line}: {self.wrong}" if self.line else self.wrong
        return f"{said}; {self.would_do}" if self.would_do else said


def check(entry: Entry) -> Iterator[Wrong]:
    """Yield what is wrong with the shape of an entry."""
    keys = SECTIONS[entry.section]
    sound = True
    for key, value in entry.given.items():
        line = entry.line_of(key)
        if key not in keys:
            sound = False
            would_do = did_you_mean(key, list(keys)) or f"known: {', '.join(keys)}"
            yield Wrong(entry, line, f"there is no key {key!r} in a {entry.section}", would_do)
        elif not _fits(keys[key], value):
            sound = False
            yield Wrong(entry, line, f"{key} = {_shown(value)} is not right", f"write {keys[key]}")
    needed = ("name", "calculations") + (("kinds",) if entry.section == "required" else ())
    for key in needed:
        if key not in entry.given:
            sound = False
            yield Wrong(entry, entry.line, f"{key} is missing", f"write {key} = ..., {keys[key]}")
    if sound and entry.section == "rule":
        yield from _check_asks(entry)


def _check_asks(entry: Entry) -> Iterator[Wrong]:
    """Check that a rule asks one thing, and that what it asks fits what it looks at."""
    given = entry.given
    of = [key for key in _ASKS if key in given]
    asks = [key for key in ASKS if key in given]
    if len(of) > 1:
        yield Wrong(entry, entry.line, f"asks of {' and '.join(of)}", "write a rule for each")
    elif not of and (asks or "caution" not in given):
        yield Wrong(entry, entry.line, "asks nothing", f"write one of {', '.join(_ASKS)}, caution")
    elif of and _ASKS[of[0]] and len([a for a in asks if a in _ASKS[of[0]]]) != 1:
        may = ", ".join(_ASKS[of[0]])
        yield Wrong(entry, entry.line, f"of the {of[0]} one thing is asked", f"write one of {may}")
    elif of and any(a not in _ASKS[of[0]] for a in asks):
        stray = next(a for a in asks if a not in _ASKS[of[0]])
        line = entry.line_of(stray)
        yield Wrong(entry, line, f"{stray} does not go with {of[0]}", "leave one of them out")
    elif given.get("forbid") is False:
        yield Wrong(entry, entry.line_of("forbid"), "forbids nothing", "leave it out")
    yield from _check_severity(entry)
    if {"criterion", "figure"} & set(of):
        for key in asks:
            yield from _unread(entry, entry.line_of(key), key, given[key])


def _check_severity(entry: Entry) -> Iterator[Wrong]:
    line, said = entry.line_of("severity"), "severity says how grave a caution is"
    if "severity" in entry.given and "caution" not in entry.given:
        would_do = 'write caution = "..." beside it, or leave it out'
        yield Wrong(entry, line, f"{said}, and there is no caution", would_do)
    elif entry.given.get("severity", GRAVITY[0]) not in GRAVITY:
        yield Wrong(entry, line, said, f"write {', '.join(GRAVITY)}")


def _unread(entry: Entry, line: int, key: str, value: object) -> Iterator[Wrong]:
    if not isinstance(value, str):
        return
    try:
        read_number(value)
    except BadText as error:
        yield Wrong(entry, line, f"{key}: {error.wrong}", error.would_do)


def _shown(value: object) -> str:
    return {True: "true", False: "false"}[value] if isinstance(value, bool) else repr(value)


def is_texts(value: object) -> bool:
    """Whether a value is a list of texts, none of them empty."""
    return isinstance(value, list) and bool(value) and all(isinstance(v, str) and v for v in value)


def _is_number(value: object) -> bool:
    right = isinstance(value, int | float) and not isinstance(value, bool)
    return right and math.isfinite(value)  # type: ignore[arg-type]


def _fits(what: str, value: object) -> bool:
    """Whether a value is what a key takes."""
    if what == _TEXTS:
        return is_texts(value)
    if what == _YES:
        return isinstance(value, bool)
    if what == _FACTOR:
        return _is_number(value) and value > 0 and value != 1  # type: ignore[operator]
    if what == _AMOUNT:
        return _is_number(value) or (isinstance(value, str) and bool(value))
    if what == _WHEN:
        return isinstance(value, dict) and bool(value) and all(map(_is_condition, value.values()))
    return isinstance(value, str) and bool(value.strip())


def _is_condition(value: object) -> bool:
    if isinstance(value, dict):
        return len(value) == 1 and all(k in BOUNDS and _fits(_AMOUNT, v) for k, v in value.items())
    return is_texts(value) or (isinstance(value, str) and bool(value))

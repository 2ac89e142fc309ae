"""Reading a shop's rules file: TOML to entries, with the line of everything that is wrong.

    [[rule]]                      name, calculations, then what it asks, and of whom
    [[required]]                  name, kinds, calculations: checks that a kind of job needs
    tables = ["folder"]           above all others: folders of tables beside the file
    new_kinds = ["boat fridge"]   there too: kinds of job that only this shop has

Only the shape is checked here. Whether a calculation has such an input is known when the rule is
bound to it (rules_file.py).
"""

from __future__ import annotations

import contextlib
import math
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

from .errors import BadText, did_you_mean
from .items import GRAVITY
from .quantities import read_number
from .rules_lines import Lines, of_toml

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
_SECTIONS = {"rule": _RULE_KEYS, "required": _REQUIRED_KEYS}
_ABOVE_ALL = {  # what may stand above all sections -> what it is, and an example of it
    "tables": ("folders", '["our-tables"]'),
    "new_kinds": ("texts", '["boat fridge"]'),
}


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
        return tuple(named) if isinstance(named, list) and _is_texts(named) else ()

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


class RulesText(NamedTuple):
    """A rules file that was read: its name, the entries that may be used, and what is wrong.

    `folders` are its folders of tables, `new_kinds` the kinds of job that it adds, and the lines
    those where they are named.
    """

    file: str
    entries: tuple[Entry, ...]
    wrong: tuple[Wrong, ...]
    folders: tuple[Path, ...] = ()
    folders_line: int = 0
    new_kinds: tuple[str, ...] = ()
    new_kinds_line: int = 0


def read(path: Path) -> RulesText:
    """Read a rules file. What is wrong is returned, not raised: the rest still holds."""
    try:
        text = path.read_text(encoding="utf-8-sig")
        sheet = tomllib.loads(text)
    except FileNotFoundError:
        return _nothing(path, "there is no such file", "check the name")
    except (OSError, UnicodeDecodeError, RecursionError) as error:
        return _nothing(path, f"cannot be read ({getattr(error, 'strerror', None) or error})")
    except tomllib.TOMLDecodeError as error:
        line, would_do = of_toml(text, str(error))
        return _nothing(path, f"is not TOML: {error}", would_do, line)
    lines = Lines(text)
    entries: list[Entry] = []
    wrong = [*_sections(sheet, lines)]
    for section in _SECTIONS:
        raw = sheet.get(section, [])
        for number, given in enumerate(raw if isinstance(raw, list) else []):
            start = lines.of_entry(section, number)
            keys = {key: lines.of_key(key, start) for key in given} if given else {}
            entry = Entry(section, start, given, keys)
            found = [*_check(entry)] if isinstance(given, dict) else []
            found += _twice(entry, entries)
            wrong += found
            if isinstance(given, dict) and not found:
                entries.append(entry)
    above = {key: sheet[key] if _is_texts(sheet.get(key)) else () for key in _ABOVE_ALL}
    return RulesText(
        path.name,
        tuple(entries),
        tuple(sorted(wrong, key=lambda w: w.line)),
        tuple(path.parent / name for name in above["tables"]),
        lines.of_section("tables"),
        tuple(above["new_kinds"]),
        lines.of_section("new_kinds"),
    )


def _nothing(path: Path, wrong: str, would_do: str = "", line: int = 0) -> RulesText:
    return RulesText(path.name, (), (Wrong(None, line, wrong, would_do),))


def _sections(sheet: Mapping[str, Any], lines: Lines) -> Iterator[Wrong]:
    for key, value in sheet.items():
        if key in _ABOVE_ALL:
            if not _is_texts(value):
                what, example = _ABOVE_ALL[key]
                wrong, would_do = f"{key} are {what}", f"write {key} = {example}"
                yield Wrong(None, lines.of_section(key), wrong, would_do)
        elif key not in _SECTIONS:
            would_do = did_you_mean(key, [*_SECTIONS, *_ABOVE_ALL])
            yield Wrong(None, lines.of_section(key), f"there is no section {key!r}", would_do)
        elif not isinstance(value, list) or not all(isinstance(v, dict) for v in value):
            would_do = f"write [[{key}]] above each"
            yield Wrong(None, lines.of_section(key), f"{key} is written wrongly", would_do)
    if not sheet:
        yield Wrong(None, 0, "holds no rule", "write [[rule]] and what it asks below")


def _twice(entry: Entry, before: Sequence[Entry]) -> Iterator[Wrong]:
    for other in before:
        if (other.section, other.name) == (entry.section, entry.name):
            wrong = f"the name {entry.name!r} stands in line {other.line} too"
            yield Wrong(entry, entry.line, wrong, "give each a name of its own")


def _check(entry: Entry) -> Iterator[Wrong]:
    keys = _SECTIONS[entry.section]
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
    severity = given.get("severity", "caution")
    if severity not in GRAVITY or ("severity" in given and "caution" not in given):
        line = entry.line_of("severity")
        yield Wrong(entry, line, "severity says how grave a caution is", _among(GRAVITY))
    if {"criterion", "figure"} & set(of):
        for key in asks:
            yield from _unread(entry, entry.line_of(key), key, given[key])


def _unread(entry: Entry, line: int, key: str, value: object) -> Iterator[Wrong]:
    if not isinstance(value, str):
        return
    try:
        read_number(value)
    except BadText as error:
        yield Wrong(entry, line, f"{key}: {error.wrong}", error.would_do)


def _among(words: Sequence[str]) -> str:
    return f"write {', '.join(words)}"


def _shown(value: object) -> str:
    return {True: "true", False: "false"}[value] if isinstance(value, bool) else repr(value)


def _is_texts(value: object) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(v, str) and v for v in value)


def _is_number(value: object) -> bool:
    right = isinstance(value, int | float) and not isinstance(value, bool)
    return right and math.isfinite(value)  # type: ignore[arg-type]


def _fits(what: str, value: object) -> bool:
    """Whether a value is what a key takes."""
    if what == _TEXTS:
        return _is_texts(value)
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
    return _is_texts(value) or (isinstance(value, str) and bool(value))

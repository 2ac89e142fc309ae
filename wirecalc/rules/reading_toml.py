"""Reading a shop's rules file: TOML to entries, with the line of everything that is wrong.

[[rule]]                      name, calculations, then what it asks, and of whom
[[required]]                  name, kinds, calculations: checks that a kind of job needs
tables = ["folder"]           above all others: folders of tables beside the file
new_kinds = ["boat fridge"]   there too: kinds of job that only this shop has
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from ..base.errors import BadText, did_you_mean
from ..base.text_files import MOST_TOML, read_text, toml_of
from .entries import SECTIONS, Entry, Wrong, check, is_texts
from .lines import Lines, of_toml

_ABOVE_ALL = {  # what may stand above all sections -> what it is, and an example of it
    "tables": ("folders", '["our-tables"]'),
    "new_kinds": ("texts", '["boat fridge"]'),
}


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
        text = read_text(path, MOST_TOML)
        sheet = toml_of(text)
    except FileNotFoundError:
        return _nothing(path, "there is no such file", "check the name")
    except (OSError, BadText) as error:
        return _nothing(path, f"cannot be read ({getattr(error, 'strerror', None) or error})")
    except tomllib.TOMLDecodeError as error:
        line, would_do = of_toml(text, str(error))
        return _nothing(path, f"is not TOML: {error}", would_do, line)
    lines = Lines(text)
    entries: list[Entry] = []
    wrong = [*_sections(sheet, lines)]
    for section in SECTIONS:
        raw = sheet.get(section, [])
        for number, given in enumerate(raw if isinstance(raw, list) else []):
            start = lines.of_entry(section, number)
            keys = {key: lines.of_key(key, start) for key in given} if given else {}
            entry = Entry(section, start, given, keys)
            found = [*check(entry)] if isinstance(given, dict) else []
            found += _twice(entry, entries)
            wrong += found
            if isinstance(given, dict) and not found:
                entries.append(entry)
    above = {key: sheet[key] if is_texts(sheet.get(key)) else () for key in _ABOVE_ALL}
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
            if not is_texts(value):
                what, example = _ABOVE_ALL[key]
                wrong, would_do = f"{key} are {what}", f"write {key} = {example}"
                yield Wrong(None, lines.of_section(key), wrong, would_do)
        elif key not in SECTIONS:
            would_do = did_you_mean(key, [*SECTIONS, *_ABOVE_ALL])
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

"""A sheet as TOML: what stands in it, and no more."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator, Mapping
from typing import Any

from .shape import SECTIONS, SEVERAL, as_toml

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")


def sheet_text(sheet: Mapping[str, Any], head: str = "") -> str:
    """Return a sheet as TOML, its sections in their usual order, below some words on it.

    Reading it gives the same sheet.
    """
    lines = [f"# {line}" for line in head.splitlines()]
    known = [key for key in SECTIONS if key in sheet]
    for key in (*known, *(k for k in sheet if k not in known)):
        lines += _section((key,), sheet[key])
    return "\n".join(lines).lstrip("\n") + "\n"


def entry_text(section: str, entry: Mapping[str, Any]) -> str:
    """Return one entry of a sheet, such as a [[check]], to paste into one."""
    return "\n".join(_section((section,), [entry])[1:])


def _section(path: tuple[str, ...], value: Any) -> list[str]:
    """Return the lines of a table, or of several entries of one name; a blank line before each."""
    name = ".".join(map(_key, path))
    if not isinstance(value, Mapping):
        return [
            line for one in value for line in ("", f"[[{name}]]", *_pairs(one), *_below(path, one))
        ]
    pairs, below = list(_pairs(value)), list(_below(path, value))
    alone = below and not pairs  # [readings] above [readings.after] says nothing
    return [*([] if alone else ["", f"[{name}]", *pairs]), *below]


def _pairs(table: Mapping[str, Any]) -> Iterator[str]:
    for key, value in table.items():
        if not _is_section(key, value):
            yield f"{_key(key)} = {_value(value)}"


def _below(path: tuple[str, ...], table: Mapping[str, Any]) -> Iterator[str]:
    for key, value in table.items():
        if _is_section(key, value):
            yield from _section((*path, key), value)


def _is_section(key: str, value: Any) -> bool:
    entries = key in SEVERAL and isinstance(value, list)
    return isinstance(value, Mapping) or (entries and all(isinstance(v, Mapping) for v in value))


def _key(key: str) -> str:
    return key if _BARE_KEY.fullmatch(key) else as_toml(key)


def _value(value: Any) -> str:
    """Write one value; TOML has no null, and a job sheet no other kinds than these."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, datetime.date | datetime.time):
        return value.isoformat()
    if isinstance(value, int | float):
        return repr(value)
    if isinstance(value, Mapping):
        inside = ", ".join(f"{_key(k)} = {_value(v)}" for k, v in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    if isinstance(value, list):
        return f"[{', '.join(map(_value, value))}]"
    return as_toml(str(value)).replace("\x7f", "\\u007f")

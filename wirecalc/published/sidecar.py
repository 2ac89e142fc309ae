"""The sidecar of a table: what it may say, and reading it. What it says of no use is refused."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from ..base.errors import BadText, TableError, did_you_mean
from ..base.text_files import read_toml


def read_sidecar(folder: Path, name: str) -> dict[str, Any]:
    """Return what the sidecar of a table says; raises TableError where it cannot be read."""
    try:
        sidecar = read_toml(folder / f"{name}.toml")
    except (OSError, BadText, tomllib.TOMLDecodeError) as error:
        why = getattr(error, "strerror", None) or error
        raise TableError(f"table {name}: its sidecar cannot be read ({why})") from error
    strange = [f"table {name}: {wrong}" for wrong in _strange(sidecar)]
    if strange:  # before what is missing: it may be there, misspelt
        raise TableError("\n".join(strange))
    missing = [k for k in _SHAPES if not sidecar.get(k)]
    if missing:
        raise TableError(f"table {name}: its sidecar lacks {', '.join(missing)}")
    for key, shape in (*_SHAPES.items(), *_MAY_SAY.items()):
        if not isinstance(sidecar.get(key, shape()), shape):
            raise TableError(f"table {name}: {key} in its sidecar is written wrongly")
    if not all(isinstance(k, str) for k in sidecar["key"]):
        raise TableError(f"table {name}: key in its sidecar is no list of columns")
    return sidecar


_SHAPES: dict[str, type] = {  # what a sidecar must say
    **dict.fromkeys(("title", "purpose", "not_for", "checked"), str),
    **{"key": list, "sources": dict, "columns": dict},
}
_MAY_SAY: dict[str, type] = {"rules": list, "stricter_than": str, "stands_alone": bool}
_IN_SECTIONS = {
    "sources": ("title", "edition", "where", "off"),
    "columns": ("type", "text", "unit", "required", "stricter", "source", "confidence"),
    "rules": ("column", "runs", "along", "within", "no_gaps"),
}


def _strange(sidecar: Mapping[str, Any]) -> Iterator[str]:
    """Say which keys of a sidecar there are none of: what they ask for would not be done."""
    yield from _none_of(sidecar, (*_SHAPES, *_MAY_SAY), "a sidecar")
    for section, known in _IN_SECTIONS.items():
        parts = sidecar.get(section)
        named = parts.items() if isinstance(parts, dict) else [("", p) for p in _listed(parts)]
        for name, part in named:
            where = f"[{section}.{name}]" if name else f"[[{section}]]"
            yield from _none_of(part if isinstance(part, dict) else {}, known, where)


def _listed(value: object) -> list[Any]:
    return value if isinstance(value, list) else []


def _none_of(given: Mapping[str, Any], known: Sequence[str], where: str) -> Iterator[str]:
    for key in given:
        if key not in known:
            would_do = did_you_mean(key, known) or f"known: {', '.join(known)}"
            yield f"there is no key {key!r} in {where}; {would_do}"

"""How many copies a source in the code says were seen: that of `copies.toml`."""

from __future__ import annotations

import importlib
import pkgutil
import tomllib
from collections.abc import Iterator
from pathlib import Path

import wirecalc_plugins
from wirecalc import Source

NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "six": 6}
TABLE = tomllib.loads(Path(__file__).with_name("copies.toml").read_text(encoding="utf-8"))
SEEN = {key: NUMBERS[word] for word, keys in TABLE.items() for key in keys}


def _confirmed() -> Iterator[tuple[str, int]]:
    """Yield the key and the copies of each source that a module of the calculations confirms."""
    package = wirecalc_plugins
    for found in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
        for value in vars(importlib.import_module(found.name)).values():
            if isinstance(value, Source) and value.confidence == "confirmed":
                yield value.key, value.copies


def test_a_source_counts_the_copies_that_were_seen() -> None:
    found = set(_confirmed())
    assert sorted({key for key, _ in found}) == sorted(SEEN)
    assert [(key, n) for key, n in found if n != SEEN[key]] == []

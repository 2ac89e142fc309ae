"""How many copies a source in the code says were seen: that of `copies.toml`."""

from __future__ import annotations

import ast
import tomllib
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "six": 6}
TABLE = tomllib.loads(Path(__file__).with_name("copies.toml").read_text(encoding="utf-8"))
SEEN = {key: NUMBERS[word] for word, keys in TABLE.items() for key in keys}


def _confirmed() -> Iterator[tuple[str, int]]:
    """Yield the key and the copies of each source that the code of a calculation confirms."""
    for path in (ROOT / "plugins").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "confirmed":
                key, _, _, *copies = [*node.args, *(k.value for k in node.keywords)]
                yield ast.literal_eval(key), ast.literal_eval(copies[0])


def test_a_source_counts_the_copies_that_were_seen() -> None:
    found = list(_confirmed())
    assert sorted({key for key, _ in found}) == sorted(SEEN)
    assert [(key, n) for key, n in found if n != SEEN[key]] == []

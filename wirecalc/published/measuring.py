"""How readings are taken, declared once for every calculation that asks for them.

The texts stand in the table measuring; a plugin may bring a table measuring-NAME for inputs of
its own.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import NamedTuple

from .tables import load, names

TABLE = "measuring"


class Way(NamedTuple):
    """A kind of reading: which inputs are read so, how it is done, and a drawing of it, if any."""

    name: str
    inputs: tuple[str, ...]
    drawing: str
    text: str


def ways(inputs: Collection[str]) -> list[Way]:
    """Return how these inputs are read, each way once with those of them that are, as declared."""
    found: list[Way] = []
    for table in [n for n in names() if n == TABLE or n.startswith(f"{TABLE}-")]:
        for row in load(table).rows:
            read = set(row.text("inputs").split())
            if mine := tuple(name for name in inputs if name in read):
                found.append(Way(row.text("way"), mine, row.text("drawing"), row.text("text")))
    order = list(inputs)
    return sorted(found, key=lambda way: order.index(way.inputs[0]))

"""The ratings of the parts of a joint: as marked, else as usual for what they are made of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import PRACTICE, Item, Source, figure, not_checked, put, tables

from .joint_ratings import ROOM_K


class Part(NamedTuple):
    """One part of the joint: its rating as marked, else what it is made of."""

    name: str
    marked: float | None
    material: str | None = None


def terminals() -> list[str]:
    """Return the makes of a terminal that have a usual rating."""
    return _materials("terminal")


def sleeves() -> list[str]:
    """Return the makes of a sleeve that have a usual rating."""
    return _materials("sleeve")


def _materials(part: str) -> list[str]:
    return [r.text("material") for r in tables.load("temperature-classes").where(part=part)]


def rating_of(part: Part) -> tuple[float, float, Source] | None:
    """Return the least and greatest rating of a part and its source, None where unknown."""
    if part.marked is not None:
        return part.marked, part.marked, PRACTICE
    if part.material is None:
        return None
    row = tables.load("temperature-classes").row(material=part.material)
    return row.number("least_C"), row.number("greatest_C"), row.source


def weakest(parts: Sequence[Part]) -> Iterator[Item]:
    """Yield the weakest rating, and the usual ones of parts without a mark."""
    known = [r for r in map(rating_of, parts) if r is not None]
    if known:
        name = "weakest rating" if len(known) == len(parts) else "weakest known rating"
        ratings = [least for least, _, _ in known]
        yield figure(
            name,
            min(ratings),
            "C",
            toward="down",
            working=lambda: f"the least of {', '.join(put(r, 'C') for r in ratings)}",
        )
    for part, rating in zip(parts, map(rating_of, parts), strict=True):
        if rating is not None and part.marked is None:
            least, _, source = rating
            yield figure(f"usual rating of the {part.name}", least, "C", source=source)
        elif part.material is not None:
            yield not_checked(f"{part.name}_material", "the marked rating decides")


def would_do(parts: Sequence[Part]) -> str:
    """Say up to which place the parts would do, as far as their ratings are known."""
    known = [r[0] for r in map(rating_of, parts) if r is not None]
    if not known:
        return ""
    weakest, up_to = min(known), min(known) - ROOM_K
    known_says = f"the weakest rating that is known, {weakest:g} C"
    return f"; {known_says}, would do up to {up_to:g} C, {ROOM_K:g} K below it"

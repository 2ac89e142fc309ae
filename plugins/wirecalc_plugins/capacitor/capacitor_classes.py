"""Classes that are marked on run capacitors: how one is protected when it fails, and its life."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import PRACTICE, Item, OneOf, Origin, cannot_tell, requires

# IEC 60252-1, from memory: S0 was P0, S3 was P2; texts differ on whether P2 became S2 or S3
_LEVELS = {"none-marked": 0, "s0": 0, "p0": 0, "s1": 1, "p1": 1, "s2": 2, "s3": 3, "p2": 3}
PROTECTIVE = ("s1", "s2", "s3", "p1", "p2", "protected")
PROTECTION = OneOf(
    (*_LEVELS, "protected"),
    text="class of protection marked on it: S0 to S3, P0 to P2, protected, or none-marked",
    on_plate=True,
)
LIFE = OneOf(
    ("a", "b", "c", "d"),
    text="class of operation marked on it: A 30000 h, B 10000 h, C 3000 h, D 1000 h",
    on_plate=True,
)


def protection(old: str | None, new: str | None) -> Iterator[Item]:
    """Require that a protected part is replaced by one; two systems of marks can't be compared."""
    if old not in PROTECTIVE or new is None:
        return
    name = "protection"
    unmarked = _LEVELS.get(new) == 0
    if not unmarked and ("protected" in (old, new) or {old, new} == {"p2", "s2"}) and old != new:
        yield cannot_tell(
            name,
            f"{old} and {new} are marks of different systems",
            measure="ask the maker of the part, or take one with the mark of the old one",
            source=PRACTICE,
        )
        return
    yield requires(
        name,
        old == new or _LEVELS[new] >= _LEVELS.get(old, 1),
        says=f"marked {new} in the place of {old}: it does not open by itself when it fails",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action="take a part with the class of the old one",
    )


def life(old: str | None, new: str | None) -> Iterator[Item]:
    """Advise against a part of a shorter life."""
    if old is None or new is None:
        return
    yield requires(
        "class of operation",
        new <= old,
        says=f"class {new.upper()} in the place of {old.upper()}: it wears out sooner",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        action="take one of the same class, or look after it sooner",
        behind="nothing: a worn part is weak, and its capacitance shows it",
    )

"""Which level of a factor stands apart, whether that can be told, and what speaks against it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from .layouts import SIGNIFICANT, Difference, Layout

FEWEST = 5  # pulls below which nothing is said of a learner or a tool
FEWEST_APART = 3  # pulls of a level with one level of the other factor, to be compared there
OUTCOMES = frozenset(
    ("failure_mode", "let_go", "mode", "tug", "note", "notes", "remark", "remarks", "comment")
)
PEOPLE = frozenset(
    ("learner", "student", "apprentice", "trainee", "operator", "technician", "person", "name")
)


class Found(NamedTuple):
    """A level: `low`, `high`, or nothing shown, and the difference from those it is beside.

    `alone` has nobody whom it could be compared with; `few` has too few pulls. `chance` is the
    probability that it was held against.
    """

    level: str
    says: str = ""
    difference: Difference | None = None
    beside: tuple[str, ...] = ()
    chance: float = SIGNIFICANT
    alone: bool = False
    few: bool = False

    @property
    def left_over(self) -> bool:
        """Whether all whom it could be compared with are named: the other of two that differ."""
        return not (self.says or self.few or self.alone or self.beside)


def found_in(
    layout: Layout, factor: str, cells: Sequence[str], fewest: int = FEWEST, chance: float = 0.05
) -> dict[str, Found]:
    """Say of each level of a factor whether it stands apart from the others.

    Step by step: the level that lies farthest from the mean of the others is named if chance alone
    makes it so less than `chance` over the number compared (Bonferroni), and then the rest is
    compared without it. Of two the lower one is named.
    """
    levels = sorted(set(cells))
    found = {x: Found(x, few=True) for x in levels if cells.count(x) < fewest}
    groups = layout.together(factor, [x for x in levels if x not in found])
    for group in groups:
        if len(group) == 1:
            found[group[0]] = Found(group[0], alone=len(levels) > 1)
        else:
            found |= _of_group(layout, factor, group, chance)
    return {x: found[x] for x in levels}


def _of_group(layout: Layout, factor: str, group: list[str], chance: float) -> dict[str, Found]:
    found: dict[str, Found] = {}
    left = list(group)
    far = {x: _against(layout, factor, x, group) for x in group}
    while len(left) > 1:
        held = chance / len(left) if len(left) > 2 else chance
        tried = [(x, _against(layout, factor, x, left)) for x in left]
        known = [(x, d) for x, d in tried if d is not None]
        if not known:
            return found | {x: Found(x) for x in left}
        if len(left) == 2:  # the one that lies farther from all; of two in all, the lower
            known.sort(key=lambda k: (-abs(_by(far[k[0]])), k[1].by) if len(group) > 2 else k[1].by)
        else:
            known.sort(key=lambda k: -abs(k[1].by) / k[1].error)
        level, difference = known[0]
        beside = tuple(x for x in left if x != level)
        if difference.probability >= held:
            break
        says = "low" if difference.by < 0 else "high"
        found[level] = Found(level, says, difference, beside, held)
        left.remove(level)
    for level in left:
        beside = tuple(x for x in left if x != level)
        held = chance / len(left) if len(left) > 2 else chance
        rest = _against(layout, factor, level, left) if beside else None
        found[level] = Found(level, "", rest, beside, held)
    return found


def _against(layout: Layout, factor: str, level: str, among: Sequence[str]) -> Difference | None:
    return layout.difference(factor, level, [x for x in among if x != level])


def _by(difference: Difference | None) -> float:
    return 0.0 if difference is None else difference.by


def others_in(words: Mapping[str, Sequence[str]], by: Sequence[str]) -> list[str]:
    """Return the other columns that may move with the groups: some values, each of several pulls.

    How a crimp let go is what came out of it, and a remark is no factor.
    """
    return [
        name
        for name, cells in words.items()
        if name not in by
        and name.casefold() not in OUTCOMES
        and 1 < len(set(cells)) <= len(cells) / 2
    ]

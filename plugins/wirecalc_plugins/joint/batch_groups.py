"""The sets of a batch: who pulled what, and how it let go."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

ALL = "all"  # the name of a batch that is one set


def sets_of(
    forces: Sequence[float], words: Mapping[str, Sequence[str]], by: Sequence[str]
) -> dict[str, list[int]]:
    """Return the positions of each set's pulls, in the order of the file."""
    sets: dict[str, list[int]] = {}
    for i in range(len(forces)):
        name = ", ".join(words[column][i] for column in by) if by else ALL
        sets.setdefault(name, []).append(i)
    return sets


def modes_of(words: Mapping[str, Sequence[str]], members: Sequence[int]) -> str:
    """Count how the specimens let go, if the file has a column failure_mode."""
    modes = words.get("failure_mode")
    if modes is None:
        return ""
    counts: dict[str, int] = {}
    for i in members:
        counts[modes[i]] = counts.get(modes[i], 0) + 1
    return ", ".join(f"{n} {mode}" for mode, n in sorted(counts.items()))

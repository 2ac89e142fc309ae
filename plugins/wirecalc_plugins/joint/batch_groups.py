"""The sets of a batch: who pulled what, how it let go, and which factor makes a difference."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from wirecalc import Item, answer

from . import statistics

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


def difference(
    forces: Sequence[float], words: Mapping[str, Sequence[str]], by: Sequence[str]
) -> Iterator[Item]:
    """Say which factor makes a difference, if the layout allows telling."""
    found = statistics.effects(forces, {name: words[name] for name in by})
    name = " or ".join(by)
    if found is None:
        yield answer(
            f"what differs: {name}",
            "the data do not tell" if len(by) > 1 else "one level only, or too few pulls",
            because=["let the same learner use both tools"] if len(by) > 1 else [],
        )
        return
    words_for = {True: "differs", False: "shows no difference"}
    said = [f"{e.factor} {words_for[e.probability < statistics.SIGNIFICANT]}" for e in found]
    because = [
        f"{e.factor}: p {e.probability:.2g} (F test, {e.freedom} and {e.residual_freedom} degrees)"
        for e in found
    ]
    against = [f"{other} changes with it" for other in _together(words, by)]
    yield answer(f"what differs: {name}", "; ".join(said), because=because, against=against)


def _together(words: Mapping[str, Sequence[str]], by: Sequence[str]) -> list[str]:
    """Return the other columns that change together with the one that the sets go by."""
    if len(by) != 1:
        return []
    found = []
    for other, cells in words.items():
        pairs = set(zip(words[by[0]], cells, strict=True))
        changes = other not in (by[0], "failure_mode") and len(set(cells)) > 1
        if changes and len(pairs) == len(set(words[by[0]])):
            found.append(other)
    return found

"""In a line each which learner or tool is low, of which it can't be told, and why."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from wirecalc import Item, answer, show

from . import statistics
from .batch_groups import sets_of
from .batch_named import FEWEST, FEWEST_APART, PEOPLE, Found, found_in, others_in
from .layouts import POWER, SIGNIFICANT, Layout, errors_shown, pulls_needed
from .layouts import apart as apart_of

MOST_MORE = 20  # times as many pulls; a difference that takes more is hardly one
MOST_NAMED = 8  # of a column; where there are more, their number is told
_NOTHING = "no difference shown"


class Pulls(NamedTuple):
    """Forces in lbf and the columns of words beside them."""

    forces: Sequence[float]
    words: Mapping[str, Sequence[str]]

    def layout(self, columns: Sequence[str]) -> Layout:
        """Return the additive layout by these columns."""
        return Layout(self.forces, {c: self.words[c] for c in columns})

    def only(self, rows: Sequence[int]) -> Pulls:
        """Return some of the pulls."""
        kept = {n: [cells[i] for i in rows] for n, cells in self.words.items()}
        return Pulls([self.forces[i] for i in rows], kept)


def difference(
    forces: Sequence[float], words: Mapping[str, Sequence[str]], by: Sequence[str]
) -> Iterator[Item]:
    """Say in a line each which learner or tool is low, and of which it can't be told."""
    if statistics.missing_library():
        return
    pulls = Pulls(forces, words)
    sets = list(sets_of(forces, words, by).values())
    apart = {i: f"pull {i + 1} of the file" for i in apart_of(forces, sets)}
    without = pulls.only([i for i in range(len(forces)) if i not in apart])
    quiet: list[str] = []
    numbers: list[str] = []
    for factor in by:
        named, same = False, []
        for found in found_in(pulls.layout(by), factor, words[factor]).values():
            if found.left_over:
                continue
            name = _named(factor, found.level)
            odd = [s for i, s in apart.items() if words[factor][i] == found.level]
            text, against = _text(pulls, by, factor, found)
            text = _odd(text, without, by, factor, found, odd, [*apart.values()])
            named = named or text != _NOTHING
            if text == _NOTHING and odd and factor == by[0]:
                text = f"{_NOTHING}; one pull stands apart, {odd[0]}"
            if text == _NOTHING:
                same.append(name)
                numbers += [f"{name}: {said}" for said in _numbers(found, len(forces))]
            else:
                yield answer(name, text, because=_numbers(found, len(forces)), against=against)
        quiet += same if len(same) <= MOST_NAMED else [f"{len(same)} of the column {factor}"]
        if not named and len(set(words[factor])) > 2:
            yield from _which(pulls, by, factor)
    if quiet:
        yield answer(_NOTHING, ", ".join(quiet), because=numbers)


def _named(factor: str, level: str) -> str:
    """Return a level with its column before it, unless it says so itself."""
    return level if level.casefold().startswith(factor.casefold()) else f"{factor} {level}"


def _which(pulls: Pulls, by: Sequence[str], factor: str) -> Iterator[Item]:
    """Say where a factor as a whole makes a difference and no level of it could be named."""
    effects = statistics.effects(pulls.forces, {c: pulls.words[c] for c in by}) or ()
    for effect in effects:
        if effect.factor == factor and effect.probability < SIGNIFICANT:
            p = f"p {effect.probability:.2g} (F test, {effect.freedom} and "
            said = f"{p}{effect.residual_freedom} degrees)"
            yield answer(factor, "can't tell which: some differ", because=[said])


def _text(pulls: Pulls, by: Sequence[str], factor: str, found: Found) -> tuple[str, list[str]]:
    """Return what is said of a level in a line, and the evidence against it."""
    rest = [c for c in by if c != factor]
    if found.few:
        missing = FEWEST - list(pulls.words[factor]).count(found.level)
        return "too few pulls to say", [f"{FEWEST} at least: {missing} more"]
    cells = list(pulls.words[factor])
    if found.alone and sum(cells.count(x) >= FEWEST for x in set(cells)) == 1:
        return "too few pulls of the others to say", [f"{FEWEST} of another at least"]
    if found.alone:
        with_it = " and ".join(rest)
        advice = f"let each {with_it} be used with each {factor}"
        return f"can't tell it from the {with_it} that goes with it", [advice]
    apart = _by_other(pulls, factor, rest[0], found) if len(rest) == 1 else None
    if apart is not None:
        return apart, [f"what {factor} does hangs on {rest[0]}"]
    moved, against = _moved(pulls, by, factor, found)
    if moved:
        return moved, against
    if not found.says:
        return _NOTHING, []
    if len(found.beside) == 1:
        against = [*against, f"beside {_named(factor, found.beside[0])} alone, one of the two"]
    where = _where(pulls, factor, rest[0], found) if len(rest) == 1 else ""
    return f"{found.says}{where}", against


def _by_other(pulls: Pulls, factor: str, other: str, found: Found) -> str | None:
    """Return where a level stands apart, if that hangs on the other factor; else None."""
    chance = pulls.layout([factor, other]).depends()
    if chance is None or chance >= SIGNIFICANT:
        return None
    levels = sorted(set(pulls.words[other]))
    said = []
    for level in levels:
        rows = [i for i, cell in enumerate(pulls.words[other]) if cell == level]
        part = pulls.only(rows)
        held = SIGNIFICANT / len(levels)
        inside = found_in(part.layout([factor]), factor, part.words[factor], FEWEST_APART, held)
        here = inside.get(found.level)
        if here is not None and here.says:
            said.append(f"{here.says} with {_named(other, level)}")
    used = sum(1 for level in levels if found.level in _beside(pulls, factor, other, level))
    same = bool(found.says) and len(said) == used and all(s.startswith(found.says) for s in said)
    if same or not said:
        return None
    mostly = found.says and 2 * len(said) > used and all(s.startswith(found.says) for s in said)
    return f"{found.says} on the whole" if mostly else "; ".join(said)


def _beside(pulls: Pulls, factor: str, other: str, level: str) -> set[str]:
    cells = zip(pulls.words[factor], pulls.words[other], strict=True)
    return {mine for mine, its in cells if its == level}


def _where(pulls: Pulls, factor: str, other: str, found: Found) -> str:
    """Return with which levels of the other factor it is so, where it is so with each of them."""
    cells, beside = pulls.words[factor], pulls.words[other]
    signs = []
    used = sorted({b for c, b in zip(cells, beside, strict=True) if c == found.level})
    for level in used:
        mine = [
            f
            for f, c, b in zip(pulls.forces, cells, beside, strict=True)
            if b == level and c == found.level
        ]
        rest = [
            f
            for f, c, b in zip(pulls.forces, cells, beside, strict=True)
            if b == level and c in found.beside
        ]
        if rest:
            signs.append((sum(mine) / len(mine) < sum(rest) / len(rest)) == (found.says == "low"))
    if not all(signs) or len(signs) < len(used):
        return " on the whole"
    if len(used) == 1:
        return f" with {_named(other, used[0])}, the only one used"
    if other.casefold() in PEOPLE:
        return (
            " for everyone" if used == sorted(set(beside)) else f" for all {len(used)} who used it"
        )
    return f" with both {other}s" if len(used) == 2 else f" with all {len(used)} {other}s"


def _moved(pulls: Pulls, by: Sequence[str], factor: str, found: Found) -> tuple[str, list[str]]:
    """Look whether another column moves with the groups; return what then can't be told."""
    against = []
    for other in others_in(pulls.words, by):
        both = found_in(pulls.layout([*by, other]), factor, pulls.words[factor])[found.level]
        if both.says == found.says:
            if found.says and not both.alone:
                against.append(f"also with {other} accounted for")
            if not (both.alone and found.says):
                continue
        if both.alone:
            if not found.says:
                continue
            return f"can't tell: {other} changes with it", [
                f"it is {found.says}, and so may be {other}"
            ]
        if both.says:
            return (
                f"can't tell: {both.says} only with {other} accounted for",
                [f"name it too: --by {other}"],
            )
        return (
            f"can't tell: not shown with {other} accounted for",
            [f"it is {found.says} without it; name it too: --by {other}"],
        )
    return "", against


def _odd(
    text: str,
    without: Pulls,
    by: Sequence[str],
    factor: str,
    found: Found,
    odd: Sequence[str],
    everywhere: Sequence[str],
) -> str:
    """Return the text, or that it hangs on a pull that stands apart."""
    if not everywhere or found.few or found.alone or text.startswith("can't"):
        return text
    again = found_in(without.layout(by), factor, without.words[factor], FEWEST_APART)
    if again[found.level].says == found.says:
        return text
    one = odd[0] if odd else everywhere[0]
    then = again[found.level].says or "no difference"
    return f"can't tell: hangs on one pull that stands apart, {one}; without it {then}"


def _numbers(found: Found, rows: int) -> list[str]:
    """Return the difference with its interval, and what more pulls would show."""
    d = found.difference
    if d is None:
        return []
    beside = "the mean of the others" if len(found.beside) > 1 else "the other"
    said = [
        f"{d.by:+.2f} lbf beside {beside}, 95 % interval {d.low:+.2f} to {d.high:+.2f} lbf, "
        f"p {d.probability:.2g} (t, held against {found.chance:.2g})"
    ]
    if not found.says and d.error > 0:
        least = d.error * errors_shown(d.freedom, found.chance)
        need = pulls_needed(abs(d.by) / d.error, d.freedom, rows, found.chance, MOST_MORE * rows)
        said.append(
            f"so many pulls show {show(least, 'lbf')} or more with a power of {POWER:.0%}; "
            f"if this difference is truly so large, {_more(need, rows)} to show it so"
        )
    return said


def _more(need: int | None, rows: int) -> str:
    """Say how many more pulls it takes; `need` is their number in all, or None."""
    if need is None:
        return f"it takes more than {MOST_MORE} times as many pulls"
    if need <= rows:
        return "it would take no more pulls than these"
    return f"it takes about {need - rows} more pulls, shared as these are,"

"""What rests on an assumption: plausible values are tried in place of the assumed ones.

A pass that one of them undoes, and a fail that rests on the assumption alone, can't be told.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import product
from typing import Any, NamedTuple

from ..said.findings import Judged
from ..said.verdicts import Verdict, worst
from .band import Key
from .declaration import Calculation
from .prepared_inputs import Prepared

MOST_TRIED = 32  # combinations of several assumed inputs; beyond that one at a time

Choice = Mapping[str, Any]


class Other(NamedTuple):
    """What the criteria come to with other values in place of those that were assumed."""

    choice: Choice
    judged: Mapping[Key, Judged]


def worth_trying(prepared: Prepared, judged: Mapping[Key, Judged]) -> bool:
    """Whether other values could change the verdict: not where it can't be told anyway."""
    if not prepared.others:
        return False
    verdict = worst(j.verdict for j in judged.values())
    gaps = bool(prepared.unknown or prepared.asked)
    return verdict is Verdict.FAIL or (verdict is not Verdict.CANNOT_TELL and not gaps)


def choices(others: Mapping[str, Sequence[Any]]) -> list[Choice]:
    """Return the values to try, those with the fewest changes first."""
    kept = object()
    total = 1
    for values in others.values():
        total *= len(values) + 1
    if total > MOST_TRIED:
        return [{name: value} for name, values in others.items() for value in values]
    ways = product(*([kept, *values] for values in others.values()))
    chosen = [{n: v for n, v in zip(others, way, strict=True) if v is not kept} for way in ways]
    return sorted((c for c in chosen if c), key=len)


def with_others(
    calc: Calculation[Any], judged: Mapping[Key, Judged], others: Sequence[Other]
) -> dict[Key, Judged]:
    """Return the criteria as they can be told with all that is plausible."""
    settled = {key: _settled(calc, key, one, others) for key, one in judged.items()}
    for other in others:
        for key, one in other.judged.items():
            if key not in settled and one.verdict.rank > Verdict.MARGINAL.rank:
                settled[key] = _untold(calc, one, other, f"{one.verdict}: {one.reason}")
    return settled


def _settled(calc: Calculation[Any], key: Key, judged: Judged, others: Sequence[Other]) -> Judged:
    if judged.verdict is Verdict.CANNOT_TELL:
        return judged
    if judged.verdict is Verdict.FAIL:
        for other in others:
            one = other.judged.get(key)
            if one is None or one.verdict is not Verdict.FAIL:
                said = "it does not count" if one is None else f"{one.verdict}: {one.reason}"
                return _untold(calc, judged, other, said)
        return judged
    found = list(_there(key, others))
    for other, one in found:
        if one.verdict.rank > Verdict.MARGINAL.rank:
            return _untold(calc, judged, other, f"{one.verdict}: {one.reason}")
    for other, one in found:
        if one.verdict.rank > judged.verdict.rank:
            return one._replace(said=f"{one.reason} (with {_said(calc, other)})")
    return judged


def _there(key: Key, others: Sequence[Other]) -> Iterator[tuple[Other, Judged]]:
    for other in others:
        if key in other.judged:
            yield other, other.judged[key]


def _untold(calc: Calculation[Any], judged: Judged, other: Other, then: str) -> Judged:
    names = tuple(other.choice)
    was = ", ".join(_assumed(calc, name) for name in names)
    reason = f"{was} was assumed; with {_said(calc, other)} {then}"
    action = "find out: " + ", ".join(calc.input(name).kind.text for name in names)
    criterion = judged.criterion._replace(needs=names)
    return judged._replace(
        criterion=criterion, verdict=Verdict.CANNOT_TELL, said=reason, to_do=action
    )


def _assumed(calc: Calculation[Any], name: str) -> str:
    default = calc.input(name).assumed
    return f"{name} {default}" if default else name


def _said(calc: Calculation[Any], other: Other) -> str:
    texts = []
    for name, value in other.choice.items():
        one = value[0] if isinstance(value, list) else value
        texts.append(f"{name} {calc.input(name).kind.show(one)}")
    return ", ".join(texts)

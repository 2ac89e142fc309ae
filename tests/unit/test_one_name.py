"""One name, one quantity: a name that several calculations have means the same in each."""

from __future__ import annotations

from collections import defaultdict

import pytest

from wirecalc.engine.inputs import Input
from wirecalc.plugging import host
from wirecalc.typed.kinds import Kind
from wirecalc.typed.word_kinds import OneOf

PENDING: set[str] = set()  # names that still stand for more than one quantity


def _by_name() -> dict[str, list[tuple[str, Input]]]:
    found: dict[str, list[tuple[str, Input]]] = defaultdict(list)
    for name, provided in sorted(host.build(bundled_only=True).calculations.items()):
        for declared in provided.calculation.inputs:
            found[declared.name].append((name, declared))
    return {name: several for name, several in found.items() if len(several) > 1}


SHARED = _by_name()


def quantity(kind: Kind) -> tuple[object, ...]:
    """What makes a quantity: how it is read, its unit, span, choices and text.

    That one calculation has nothing to say at 0 is its own: what it then refuses is said there.
    """
    whole = kind.but(not_zero="") if hasattr(kind, "not_zero") else kind
    choices = tuple(kind.words) if isinstance(kind, OneOf) else ()
    return type(kind), kind.unit, whole.span, choices, kind.text


@pytest.mark.parametrize("name", sorted(SHARED))
def test_a_name_is_one_quantity(name: str) -> None:
    meanings: dict[tuple[object, ...], list[str]] = defaultdict(list)
    for calculation, declared in SHARED[name]:
        meanings[quantity(declared.kind)].append(calculation)
    if name in PENDING:
        assert len(meanings) > 1, f"{name} is told in one way now: take it out of PENDING"
    else:
        assert len(meanings) == 1, meanings


def test_nothing_is_pending_that_is_not_shared() -> None:
    assert set(SHARED) >= PENDING

"""What a calculation says of itself, for who looks for one: its words, and what it can take."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ..typed.word_kinds import OneOf
from .declaration import Calculation
from .described_words import Described, described
from .values_in_words import values_in
from .word_stems import stems

_TAKES, _MAY_TAKE = 4.0, 2.0  # for a quantity that an input is of: needed, or not


def of_calculation(calc: Calculation[Any]) -> Described:
    """Return what a calculation says of itself, in words and in what its inputs are of."""
    said = described(calc.name, calc.question, _of_inputs(calc), calc.words)
    not_checked = [(text, frozenset(stems(text))) for text in calc.not_checked]
    return said._replace(not_checked=not_checked, takes=_takes(calc))


def _takes(calc: Calculation[Any]) -> dict[str, float]:
    """Return the quantities that the inputs of a calculation are of, as their examples show."""
    takes: dict[str, float] = {}
    for declared in calc.inputs:
        counts = _TAKES if declared.required else _MAY_TAKE
        of = values_in(declared.kind.example).of
        takes |= {quantity: max(counts, takes.get(quantity, 0.0)) for quantity in of}
    return takes


def _of_inputs(calc: Calculation[Any]) -> Iterator[str]:
    for declared in calc.inputs:
        yield declared.name.replace("_", " ")
        yield declared.kind.text
        if isinstance(declared.kind, OneOf):
            yield from declared.kind.words

"""What else than its example a calculation may be given, made of the examples of its inputs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from ..typed.word_kinds import OneOf, YesNo
from .declaration import Calculation
from .inputs import Input


def variants(
    calc: Calculation[Any], given: Mapping[str, object] | None = None
) -> Iterator[Mapping[str, object]]:
    """Yield inputs that a calculation may be given: those of its example, or `given`, then others.

    Each input that may be left out is given too, by itself and with all the others; of a choice
    every word is taken once, and yes and no. Some may contradict each other, and are refused.
    """
    example: Mapping[str, object] = calc.example_inputs if given is None else given
    more = {
        i.name: i.kind.example.split("; ") if i.many else i.kind.example
        for i in calc.inputs
        if i.name not in example and not i.kind.of_file
    }
    whole = {**example, **more}
    yield example
    yield from ({**example, name: text} for name, text in more.items())
    yield whole
    for declared in calc.inputs:
        for word in choices(declared):
            chosen = {declared.name: [word] if declared.many else word}
            yield from ({**example, **chosen}, {**whole, **chosen})


def choices(declared: Input) -> list[str]:
    """Return the words of a choice, yes and no; none where an input is no choice."""
    if isinstance(declared.kind, OneOf):
        return declared.kind.words
    return ["yes", "no"] if isinstance(declared.kind, YesNo) else []

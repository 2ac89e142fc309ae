"""What a form needs to know of a calculation and of its inputs, as JSON."""

from __future__ import annotations

from typing import Any

from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..engine.left_out import Word, terms, word_for
from ..typed.kinds import Kind
from ..typed.quantity_kinds import QuantityKind
from ..typed.unit_names import SPELLINGS
from ..typed.word_kinds import OneOf, YesNo

_UNITS = 4  # to tap beside a number; another can be typed


def calculation_object(calc: Calculation[Any]) -> dict[str, Any]:
    """Return what a form of a calculation shows."""
    example = calc.example_inputs
    needed = _needed(calc)
    return {
        "name": calc.name,
        "part": calc.part,
        "question": calc.question,
        "words": list(calc.words),
        "fields": [
            {**field(i), "needed": i.name in needed, "example": example.get(i.name, "")}
            for i in calc.inputs
        ],
        "needs_computer": needs_computer(calc),
    }


def field(declared: Input) -> dict[str, Any]:
    """Return what the field of one input shows: its words, its units or choices, what it means."""
    kind = declared.kind
    return {
        "name": declared.name,
        "says": kind.text,
        "may_be": kind.span,
        "such_as": kind.example,
        "unit": kind.unit if isinstance(kind, QuantityKind) else "",
        "units": units(kind) if isinstance(kind, QuantityKind) else [],
        "choices": ["yes", "no"] if isinstance(kind, YesNo) else _words(declared),
        "many": declared.many,
        "left_out": declared.need,
        "of_file": kind.of_file,
        "sought": type(kind).trials is not Kind.trials,
    }


def _needed(calc: Calculation[Any]) -> set[str]:
    """Return what is asked where nothing is given that may be left out.

    What goes with another input is asked where that is; what a choice decides is not yet.
    """
    given: dict[str, object] = {}
    for declared in calc.inputs:
        words = tuple(w for w in declared.words if not any(t.wanted for t in terms(w.when)))
        word = word_for(words, {i.name: given.get(i.name) for i in calc.inputs})
        asked = word is not None and word.word is Word.ASKED
        if (declared.required or asked) and declared.kind.goes_with in ("", *given):
            given[declared.name] = declared.name
    return set(given)


def needs_computer(calc: Calculation[Any]) -> str:
    """Say why a calculation gives no answer in a browser; empty where it does."""
    if any(i.required and i.kind.of_file for i in calc.inputs):
        return "it reads a recording"
    return "it needs more of numerics than a browser has" if calc.analysis else ""


def units(kind: QuantityKind) -> list[str]:
    """Return the units that may be tapped, the input's own first."""
    others = [unit for unit in SPELLINGS[kind.dimension] if unit != kind.unit]
    return [kind.unit, *others][:_UNITS]


def _words(declared: Input) -> list[str]:
    return declared.kind.words if isinstance(declared.kind, OneOf) else []

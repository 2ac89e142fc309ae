"""What does not change from one run of a calculation to the next, found once and kept."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, NamedTuple

from ..said.criteria import Criterion
from ..said.findings import InputRecord
from ..said.items import NotChecked
from ..typed.kinds import Read
from .declaration import Calculation
from .inputs import Input
from .left_out import Term, terms

MOST_REMEMBERED = 4_000  # texts; so that a batch of any length takes no more memory
MOST_SHAPES = 64


Taken = tuple[Read, InputRecord]  # what was read of a text, and the record of it


class ToTake(NamedTuple):
    """An input for which something was given, or has to be.

    It stands `alone` where what it goes with was not given, and is `plain` where its text is all
    of it: it goes with what is there, is no list and no file, and nothing says how it is read.
    """

    declared: Input
    alone: bool
    plain: bool
    never_zero: bool


class Shape(NamedTuple):
    """What comes of which inputs are given, whatever is given for them.

    `values` are all defaults, `in_turn` what to take and the records of what is assumed,
    `left` the inputs that were left out. `terms` are those of what leaving them out means that
    hang on the values given, and `meant` what it came to, by them and by what is unknown.
    """

    values: Mapping[str, Any]
    in_turn: tuple[ToTake | InputRecord, ...]
    left: Mapping[str, Input]
    terms: tuple[Term, ...]
    meant: dict[tuple[object, ...], list[tuple[str, Meaning]]]


class Meaning(NamedTuple):
    """What an input that was left out, or is not known, comes to."""

    criterion: Criterion | None = None
    not_checked: NotChecked | None = None
    record: InputRecord | None = None
    others: list[Any] | None = None  # plausible where one is assumed


class Remembered:
    """What is kept between the runs of one calculation with inputs of one origin."""

    def __init__(self) -> None:
        self.texts: dict[tuple[str, str], Taken] = {}  # by input and text
        self.plain: dict[tuple[str, str], Taken] = {}  # those where the text is all that counts
        self.shapes: dict[tuple[object, ...], Shape] = {}
        self.meanings: dict[tuple[object, ...], Meaning] = {}

    @staticmethod
    def keep(texts: dict[tuple[str, str], Taken], key: tuple[str, str], taken: Taken) -> None:
        """Remember what was read of a text."""
        if len(texts) >= MOST_REMEMBERED:
            texts.clear()
        texts[key] = taken


def shape_of(calc: Calculation[Any], given: Mapping[str, object]) -> Shape:
    """Return what comes of which inputs of a calculation are given."""
    values: dict[str, Any] = {}
    in_turn: list[ToTake | InputRecord] = []
    left: dict[str, Input] = {}
    said_as_before = {calc.renamed[name] for name in given if name in calc.renamed}
    for declared in calc.inputs:
        name, kind = declared.name, declared.kind
        values[name] = declared.default
        alone = bool(kind.goes_with) and given.get(kind.goes_with) is None
        if name in said_as_before:
            continue
        if given.get(name) is not None or declared.required:
            simple = not (alone or declared.many or kind.companions or kind.of_file)
            in_turn.append(ToTake(declared, alone, simple, bool(kind.zero[0])))
        elif not alone:
            left[name] = declared
            if declared.default is not None:
                in_turn.append(_assumed(declared))
    taken = {step.declared.name for step in in_turn if isinstance(step, ToTake)}
    every = (t for i in calc.inputs for word in i.words for t in terms(word.when))
    hanging = dict.fromkeys(term for term in every if term.name in taken)
    return Shape(values, tuple(in_turn), left, tuple(hanging), {})


def _assumed(declared: Input) -> InputRecord:
    value, unit = plain(declared.default), declared.kind.unit
    return InputRecord(declared.name, None, value, unit, None, None, "assumed", (declared.assumed,))


def plain(value: object) -> float | str:
    """Return a value as a record keeps it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return value if math.isfinite(value) else str(value)
    return str(value)


def recorded(declared: Input, item: object, read: Read, origin: str) -> Taken:
    """Return what was read of a given value, with its record."""
    record = InputRecord(
        declared.name,
        _shown(item),
        plain(read.value),
        declared.kind.unit,
        _number(read.low),
        _number(read.high),
        origin,
        read.notes,
        read.understood,
    )
    return read, record


def _number(value: object) -> float | None:
    return float(value) if isinstance(value, int | float) else None


def _shown(given: object) -> str:
    if isinstance(given, bool):
        return "yes" if given else "no"
    return str(given).strip()

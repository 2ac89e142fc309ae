"""The inputs of one run, read and checked, and what leaving some of them out comes to."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

from ..said.criteria import Criterion, cannot_tell
from ..said.findings import InputRecord
from ..said.items import NotChecked
from ..typed.kinds import Read
from .declaration import Calculation
from .inputs import Input
from .left_out import UNDECLARED, LeftOut, Word, word_for
from .remembered import MOST_SHAPES, Meaning, Remembered, Shape


@dataclass
class Prepared:
    """The inputs of one run, read and checked."""

    values: dict[str, Any] = field(default_factory=dict)
    bands: dict[str, list[Read]] = field(default_factory=dict)
    records: list[InputRecord] = field(default_factory=list)
    unknown: list[Criterion] = field(default_factory=list)
    asked: list[Criterion] = field(default_factory=list)  # left out, or 0 where it is never 0
    left_out: list[NotChecked] = field(default_factory=list)
    others: dict[str, list[Any]] = field(default_factory=dict)  # plausible where one is assumed
    taken_by: dict[str, str] = field(default_factory=dict)  # readings, and their instruments
    runs: bool = True  # False where a required input is unknown

    def excluded(self) -> list[str]:
        """Names of the readings whose band reaches a value that the input cannot have."""
        return [n for n, reads in self.bands.items() if any(r.excluded for r in reads)]


def leave_out(
    calc: Calculation[Any], shape: Shape, prepared: Prepared, remembered: Remembered
) -> None:
    """Take what the declaration says of inputs that were left out, once all others are read."""
    unknown = tuple([name for criterion in prepared.unknown for name in criterion.needs])
    key = (unknown, *[term.holds(prepared.values) for term in shape.terms])
    meant = shape.meant.get(key)
    if meant is None:
        if len(shape.meant) >= MOST_SHAPES:
            shape.meant.clear()
        every = _all_left_out(calc, shape, prepared, remembered, unknown)
        meant = shape.meant[key] = [(name, one) for name, one in every if one != Meaning()]
    for name, one in meant:
        _leave_out(prepared, one, name)


def _all_left_out(
    calc: Calculation[Any],
    shape: Shape,
    prepared: Prepared,
    remembered: Remembered,
    unknown: Sequence[str],
) -> Iterator[tuple[str, Meaning]]:
    for declared in calc.inputs:
        name = declared.name
        if name in shape.left:
            yield name, _meaning(declared, prepared, remembered, _of_left_out)
        elif name in unknown:  # it was worked with what is assumed of it
            yield name, _meaning(declared, prepared, remembered, _of_unknown)


def _meaning(
    declared: Input,
    prepared: Prepared,
    remembered: Remembered,
    make: Callable[[Input, LeftOut | None], Meaning],
) -> Meaning:
    """Return what leaving an input out comes to with these values; made once of each word."""
    left = word_for(declared.words, prepared.values)
    key = (make, declared.name, id(left))
    known = remembered.meanings.get(key)
    if known is None:
        known = remembered.meanings[key] = make(declared, left)
    return known


def _leave_out(prepared: Prepared, meant: Meaning, name: str) -> None:
    if meant.criterion is not None:
        prepared.asked.append(meant.criterion)
    elif meant.not_checked is not None:
        prepared.left_out.append(meant.not_checked)
    if meant.record is not None:
        prepared.records.append(meant.record)
    if meant.others is not None:
        prepared.others[name] = meant.others


def _of_left_out(declared: Input, left: LeftOut | None) -> Meaning:
    name, kind = declared.name, declared.kind
    if left is None and not declared.words:
        if declared.default is not None:
            why = f"assumed {declared.assumed}; its plugin does not say what else is plausible"
            return Meaning(not_checked=NotChecked(name, why))
        left = UNDECLARED
    if left is None:
        return Meaning()
    if left.word is Word.ASKED:
        why = f"{name} was not given" + (f": {left.why}" if left.why else "")
        measure = f"find out: {kind.text} ({kind.span})"
        return Meaning(cannot_tell(name, why, measure=measure, needs=(name,), plain=kind.text))
    if left.word is Word.EXTRA:
        return Meaning(not_checked=NotChecked(name, f"not given ({kind.text}): {left.why}"))
    if left.word is Word.MAY_BE_ABSENT:
        return Meaning(record=_noted(declared, left.why))
    if left.word is Word.ASSUMED:
        record = _noted(declared, left.why or "the strictest") if declared.default is None else None
        return Meaning(record=record, others=_others(declared, left))
    return Meaning()


def _of_unknown(declared: Input, left: LeftOut | None) -> Meaning:
    if left is None or left.word is not Word.ASSUMED:
        return Meaning()
    return Meaning(others=_others(declared, left))


def _noted(declared: Input, note: str) -> InputRecord:
    unit = declared.kind.unit
    return InputRecord(declared.name, None, None, unit, None, None, "assumed", (note,))


def _others(declared: Input, left: LeftOut) -> list[Any]:
    """Read the values that are plausible in place of an assumed one."""
    read = [declared.kind.read(text).value for text in left.others]
    return [[value] for value in read] if declared.many else read

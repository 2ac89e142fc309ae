"""The inputs of one run, read and checked, and what leaving some of them out comes to."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from ..said.criteria import Criterion, cannot_tell
from ..said.findings import InputRecord
from ..said.items import NotChecked
from ..typed.kinds import Read
from .declaration import Calculation
from .inputs import Input
from .left_out import UNDECLARED, LeftOut, Word, word_for


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


def leave_out(calc: Calculation[Any], given: Mapping[str, object], prepared: Prepared) -> None:
    """Take what the declaration says of inputs that were left out, once all others are read."""
    unknown = {name for criterion in prepared.unknown for name in criterion.needs}
    for declared in calc.inputs:
        if given.get(declared.name) is None and not declared.required:
            _leave_out(declared, given, prepared)
        elif declared.name in unknown:
            _try_others(declared, prepared)


def _leave_out(declared: Input, given: Mapping[str, object], prepared: Prepared) -> None:
    alone = declared.kind.goes_with and given.get(declared.kind.goes_with) is None
    left = word_for(declared.words, prepared.values)
    name, kind = declared.name, declared.kind
    if left is None and not declared.words and not alone:
        if declared.default is None:
            left = UNDECLARED
        else:
            why = f"assumed {declared.assumed}; its plugin does not say what else is plausible"
            prepared.left_out.append(NotChecked(name, why))
    if left is None or alone:
        return
    if left.word is Word.ASKED:
        why = f"{name} was not given" + (f": {left.why}" if left.why else "")
        measure = f"find out: {kind.text} ({kind.span})"
        prepared.asked.append(
            cannot_tell(name, why, measure=measure, needs=(name,), plain=kind.text)
        )
    elif left.word is Word.EXTRA:
        prepared.left_out.append(NotChecked(name, f"not given ({kind.text}): {left.why}"))
    elif left.word is Word.MAY_BE_ABSENT:
        record = InputRecord(name, None, None, kind.unit, None, None, "assumed", (left.why,))
        prepared.records.append(record)
    elif left.word is Word.ASSUMED:
        prepared.others[name] = _others(declared, left)
        if declared.default is None:
            note = left.why or "the strictest"
            record = InputRecord(name, None, None, kind.unit, None, None, "assumed", (note,))
            prepared.records.append(record)


def _try_others(declared: Input, prepared: Prepared) -> None:
    """An assumed input that is said to be unknown was worked with what is assumed of it."""
    left = word_for(declared.words, prepared.values)
    if left is not None and left.word is Word.ASSUMED:
        prepared.others[declared.name] = _others(declared, left)


def _others(declared: Input, left: LeftOut) -> list[Any]:
    """Read the values that are plausible in place of an assumed one."""
    read = [declared.kind.read(text).value for text in left.others]
    return [[value] for value in read] if declared.many else read


def plain(value: object) -> float | str:
    """Return a value as a record keeps it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return value if math.isfinite(value) else str(value)
    return str(value)

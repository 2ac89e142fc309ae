"""One input: given, said to be unknown, or left out."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from ..base.errors import BadText, Problem
from ..instruments import readings
from ..said.criteria import cannot_tell
from ..said.findings import InputRecord
from ..said.items import NotChecked
from ..typed.kinds import Kind
from ..typed.quantity_kinds import Reading
from ..typed.trials import is_sought
from .declaration import Calculation
from .inputs import Input
from .left_out import Word
from .prepared_inputs import Prepared
from .remembered import Meaning, Remembered, Taken, ToTake, recorded

UNKNOWN = "unknown"
METER = "meter"  # given beside the inputs: the instrument of all readings that name none
_WHERE_SOUGHT = "give one; `wirecalc NAME` and wirecalc.seek find what it would have to be"


def is_known(given: object) -> bool:
    """Whether a value was given for an input, and not all of it is said to be unknown."""
    items = given if isinstance(given, list | tuple) else [given]
    return any(item is not None and not says_unknown(item) for item in items)


def says_unknown(given: object) -> bool:
    """Whether a value is said to be unknown."""
    return isinstance(given, str) and given.strip().casefold() == UNKNOWN


def called(declared: Input, origin: str) -> str:
    """Return what a person calls an input: typed, it is an option."""
    return declared.option if origin == "typed" else declared.name


def under_its_name(calc: Calculation[Any], problem: Problem, origin: str) -> Problem:
    """Return a problem as the person knows its inputs: typed, they are options."""
    if origin != "typed":
        return problem
    names = {i.name: i.option for i in calc.inputs}
    spelled = [name for name in names if "_" in name]  # another may be a plain word
    pattern = rf"(?<![\w-])(?:{'|'.join(spelled) or '(?!)'})(?![\w-])"
    said = (re.sub(pattern, lambda n: names[n[0]], t) for t in (problem.wrong, problem.would_do))
    return Problem(names.get(problem.name, problem.name), *said)


def take_plain(
    step: ToTake,
    given: Mapping[str, object],
    origin: str,
    prepared: Prepared,
    remembered: Remembered,
) -> bool:
    """Take an input of which the text is all that counts; say whether it is such a one.

    Raises BadText, saying what is wrong with the text.
    """
    declared = step.declared
    text = given.get(declared.name)
    if type(text) is not str or not step.plain or readings.any_in_use():
        return False
    key = (declared.name, text)
    taken = remembered.plain.get(key)
    if taken is None:
        if says_unknown(text) or is_sought(text) or readings.may_have_one(text):
            return False
        taken = recorded(declared, text, declared.kind.read(text), origin)
        remembered.keep(remembered.plain, key, taken)
    read, record = taken
    if read.low is not None or (step.never_zero and read.value == 0):
        _keep(declared, [taken], prepared)
    else:
        prepared.values[declared.name] = read.value
        prepared.records.append(record)
    return True


def take_input(
    declared: Input,
    all_given: Mapping[str, object],
    origin: str,
    prepared: Prepared,
    missing_is_unknown: bool,
    remembered: Remembered,
) -> None:
    """Take one input into what is prepared; raises BadText, saying what is wrong with it."""
    given = all_given.get(declared.name)
    if given is None and declared.required and not missing_is_unknown:
        option = f"{declared.option} " if origin == "typed" else ""
        raise BadText(
            f"is needed ({declared.kind.text})", f'such as {option}"{declared.kind.example}"'
        )
    items = declared.each(given)
    if any(map(is_sought, items)):
        raise BadText("is sought, and this is a run with values", _WHERE_SOUGHT)
    known = [item for item in items if not says_unknown(item)]
    companions = {n: all_given.get(n) for n in declared.kind.companions}
    meter = str(all_given.get(METER) or "")
    if len(known) < len(items) or (given is None and declared.required):
        _take_unknown(declared, prepared, remembered, given is not None, bool(known))
        if given is not None and known:
            _take_given(declared, known, companions, origin, prepared, remembered, meter)
    else:
        _take_given(declared, items, companions, origin, prepared, remembered, meter)


def put_aside(calc: Calculation[Any], step: ToTake, prepared: Prepared) -> None:
    """Note what goes with an input that is not there; a length of no cord is refused."""
    if not step.alone:
        return
    declared = step.declared
    lead = calc.input(declared.kind.goes_with)
    why = f"says something of {lead.name}, which was not given"
    if lead.assumed or any(word.word is Word.MAY_BE_ABSENT for word in lead.words):
        raise BadText(why)
    prepared.values[declared.name] = declared.default
    prepared.bands.pop(declared.name, None)
    prepared.left_out.append(NotChecked(declared.name, f"not used: it {why}"))


def _take_unknown(
    declared: Input, prepared: Prepared, remembered: Remembered, said: bool, rest: bool
) -> None:
    """Take an input that is not known, or of which only the rest is."""
    key = (UNKNOWN, declared.name, said, rest)
    meant = remembered.meanings.get(key)
    if meant is None:
        meant = remembered.meanings[key] = _of_unknown(declared, said, rest)
    assert meant.record is not None and meant.criterion is not None
    prepared.values[declared.name] = declared.default
    prepared.records.append(meant.record)
    prepared.unknown.append(meant.criterion)
    prepared.runs = prepared.runs and (not declared.required or (said and rest))


def _of_unknown(declared: Input, said: bool, rest: bool) -> Meaning:
    kind = declared.kind
    notes = (f"worked with {declared.assumed}",) if declared.assumed else ()
    given = UNKNOWN if said else None
    record = InputRecord(declared.name, given, None, kind.unit, None, None, UNKNOWN, notes)
    criterion = cannot_tell(
        declared.name,
        _why(declared.name, said=said, rest=rest and said),
        measure=f"find out: {kind.text} ({kind.span})",
        needs=(declared.name,),
        plain=kind.text,
    )
    return Meaning(criterion, record=record)


def _why(name: str, *, said: bool, rest: bool) -> str:
    if rest:
        return f"not all of {name} is known"
    return f"{name} is not known" if said else f"{name} was not given"


def _take_given(
    declared: Input,
    items: list[object],
    companions: Mapping[str, object],
    origin: str,
    prepared: Prepared,
    remembered: Remembered,
    meter: str,
) -> None:
    if len(items) > 1 and not declared.many:
        raise BadText(f"was given {len(items)} times", "give it once")
    if not items:
        raise BadText("is an empty list", f"such as {declared.kind.example}")
    taken = [_read(declared, item, companions, origin, remembered, meter) for item in items]
    _keep(declared, taken, prepared)


def _keep(declared: Input, taken: list[Taken], prepared: Prepared) -> None:
    """Note what was read of an input."""
    reads = [read for read, _ in taken]
    if by := next((r.by for r in reads if r.by), ""):
        prepared.taken_by[declared.name] = by
    prepared.values[declared.name] = [r.value for r in reads] if declared.many else reads[0].value
    if any(r.low is not None for r in reads):
        prepared.bands[declared.name] = reads
    prepared.records += [record for _, record in taken]
    why, measure = declared.kind.zero
    if why and any(r.value == 0 and not r.high for r in reads):
        prepared.asked.append(
            cannot_tell(
                declared.name,
                why,
                measure=measure,
                needs=(declared.name,),
                plain=declared.kind.text,
            )
        )


def _read(
    declared: Input,
    item: object,
    companions: Mapping[str, object],
    origin: str,
    remembered: Remembered,
    meter: str,
) -> Taken:
    """Read one given value, or remember it; a file is read again, it may have changed."""
    kind = declared.kind
    by = _by_instrument(kind, item, companions, meter)
    apart = kind.of_file or kind.companions  # its text is not all of it
    key = (declared.name, by or item) if isinstance(item, str) and not apart else None
    if key is not None and key in remembered.texts:
        return remembered.texts[key]
    if by and isinstance(kind, Reading):
        read = readings.read(kind, by)
    else:
        read = kind.read_with(item, companions)
    taken = recorded(declared, item, read, origin)
    if key is not None:
        remembered.keep(remembered.texts, key, taken)
    return taken


def _by_instrument(kind: Kind, item: object, companions: Mapping[str, object], meter: str) -> str:
    """Return a reading with the instrument that it was taken by behind it; empty where none can be.

    An error that was typed for all values of a list goes before an instrument.
    """
    if not isinstance(kind, Reading) or not isinstance(item, str) or any(companions.values()):
        return ""
    return readings.with_instrument(kind, item, meter) if readings.may_have_one(item) else ""

"""From what was given to the values that a calculation runs with.

Everything is read before anything is computed, and everything that is wrong is reported at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from .criteria import cannot_tell
from .declaration import Calculation, Input
from .errors import BadInput, BadText, Problem, did_you_mean
from .findings import InputRecord
from .items import NotChecked
from .kinds import Read
from .left_out import Word
from .prepared import Prepared, leave_out, plain

UNKNOWN = "unknown"
MOST_BANDS = 6  # readings with an error in one run
MOST_REMEMBERED = 4_000  # texts; so that a batch of any length takes no more memory

Remembered = dict[tuple[str, str | None], tuple[Read, InputRecord]]  # by input and text


def prepare(
    calc: Calculation[Any],
    given: Mapping[str, object],
    origin: str,
    *,
    missing_is_unknown: bool,
    remembered: Remembered | None = None,
) -> Prepared:
    """Read every input; raises BadInput with all that is wrong.

    A required input that was left out is refused, or, with `missing_is_unknown` (a job sheet),
    is taken as one that is said to be unknown. `remembered` holds what was read before, of this
    calculation and origin: a batch reads each distinct text once.
    """
    remembered = {} if remembered is None else remembered
    prepared = Prepared()
    problems = list(_unknown_names(calc, given))
    for declared in calc.inputs:
        alone = declared.kind.goes_with and given.get(declared.kind.goes_with) is None
        if alone and not _known(given.get(declared.name)):
            prepared.values[declared.name] = declared.default
            continue
        try:
            _take(declared, given, origin, prepared, missing_is_unknown, remembered)
            if alone:
                _put_aside(calc, declared, prepared)
        except BadText as error:
            problems.append(error.about(declared.option if origin == "typed" else declared.name))
    if not problems:
        leave_out(calc, given, prepared)
    if len(prepared.bands) > MOST_BANDS and not calc.own_band:
        names = ", ".join(prepared.bands)
        problems.append(
            Problem(
                "",
                f"{len(prepared.bands)} readings have an error ({names})",
                f"at most {MOST_BANDS} may; leave the smallest out",
            )
        )
    if not problems and prepared.runs:
        problems = [_named(calc, p, origin) for p in _refused(calc, given, prepared)]
    if problems:
        raise BadInput(problems)
    return prepared


def _refused(
    calc: Calculation[Any], given: Mapping[str, object], prepared: Prepared
) -> list[Problem]:
    """Return what its refusal yields; raises TypeError where that is no Problem."""
    found: list[Problem] = []
    for problem in calc.refuse(**prepared.values) if calc.refuse is not None else ():
        if not isinstance(problem, Problem):
            raise TypeError(f"its refusal yields {problem!r}, which is no Problem")
        found.append(problem)
    if not prepared.unknown:
        return found
    there = [p for p in found if _known(given.get(p.name))]  # the unknown is not missing
    prepared.runs = len(there) == len(found)
    return there


def _known(given: object) -> bool:
    """Whether a value was given for an input, and not all of it is said to be unknown."""
    items = given if isinstance(given, list | tuple) else [given]
    return any(item is not None and not says_unknown(item) for item in items)


def says_unknown(given: object) -> bool:
    """Whether a value is said to be unknown."""
    return isinstance(given, str) and given.strip().casefold() == UNKNOWN


def _named(calc: Calculation[Any], problem: Problem, origin: str) -> Problem:
    if origin != "typed" or problem.name not in {i.name for i in calc.inputs}:
        return problem
    return Problem(calc.input(problem.name).option, problem.wrong, problem.would_do)


def _unknown_names(calc: Calculation[Any], given: Mapping[str, object]) -> Iterator[Problem]:
    known = [i.name for i in calc.inputs]
    for name in given:
        if name not in known:
            yield Problem(name, f"{calc.name} has no such input", did_you_mean(name, known))


def _take(
    declared: Input,
    all_given: Mapping[str, object],
    origin: str,
    prepared: Prepared,
    missing_is_unknown: bool,
    remembered: Remembered,
) -> None:
    given = all_given.get(declared.name)
    if given is None and declared.required and not missing_is_unknown:
        option = f"{declared.option} " if origin == "typed" else ""
        raise BadText(
            f"is needed ({declared.kind.text})", f'such as {option}"{declared.kind.example}"'
        )
    items = declared.each(given)
    known = [item for item in items if not says_unknown(item)]
    companions = {n: all_given.get(n) for n in declared.kind.companions}
    if len(known) < len(items) or (given is None and declared.required):
        _take_unknown(declared, prepared, said=given is not None, rest=bool(known))
        if given is not None and known:
            _take_given(declared, known, companions, origin, prepared, remembered)
    elif given is None:
        _take_default(declared, prepared, remembered)
    else:
        _take_given(declared, items, companions, origin, prepared, remembered)


def _put_aside(calc: Calculation[Any], declared: Input, prepared: Prepared) -> None:
    """Note what goes with an input that is not there; a length of no cord is refused."""
    lead = calc.input(declared.kind.goes_with)
    why = f"says something of {lead.name}, which was not given"
    if lead.assumed or any(word.word is Word.MAY_BE_ABSENT for word in lead.words):
        raise BadText(why)
    prepared.values[declared.name] = declared.default
    prepared.bands.pop(declared.name, None)
    prepared.left_out.append(NotChecked(declared.name, f"not used: it {why}"))


def _take_unknown(declared: Input, prepared: Prepared, *, said: bool, rest: bool) -> None:
    """Take an input that is not known, or of which only the rest is."""
    kind, unit = declared.kind, declared.kind.unit
    prepared.values[declared.name] = declared.default
    notes = (f"worked with {declared.assumed}",) if declared.assumed else ()
    prepared.records.append(
        InputRecord(
            declared.name, UNKNOWN if said else None, None, unit, None, None, UNKNOWN, notes
        )
    )
    prepared.unknown.append(
        cannot_tell(
            declared.name,
            _why(declared.name, said=said, rest=rest and said),
            measure=f"find out: {kind.text} ({kind.span})",
            needs=(declared.name,),
        )
    )
    prepared.runs = prepared.runs and (not declared.required or (said and rest))


def _why(name: str, *, said: bool, rest: bool) -> str:
    if rest:
        return f"not all of {name} is known"
    return f"{name} is not known" if said else f"{name} was not given"


def _take_default(declared: Input, prepared: Prepared, remembered: Remembered) -> None:
    default, kind = declared.default, declared.kind
    prepared.values[declared.name] = default
    if default is None:
        return  # `leave_out` says what that means
    key = declared.name, None
    if key not in remembered:
        value, notes = plain(default), (declared.assumed,)
        record = InputRecord(declared.name, None, value, kind.unit, None, None, "assumed", notes)
        remembered[key] = Read(default), record
    prepared.records.append(remembered[key][1])


def _take_given(
    declared: Input,
    items: list[object],
    companions: Mapping[str, object],
    origin: str,
    prepared: Prepared,
    remembered: Remembered,
) -> None:
    if len(items) > 1 and not declared.many:
        raise BadText(f"was given {len(items)} times", "give it once")
    if not items:
        raise BadText("is an empty list", f"such as {declared.kind.example}")
    taken = [_read(declared, item, companions, origin, remembered) for item in items]
    reads = [read for read, _ in taken]
    prepared.values[declared.name] = [r.value for r in reads] if declared.many else reads[0].value
    if any(r.low is not None for r in reads):
        prepared.bands[declared.name] = reads
    prepared.records += [record for _, record in taken]
    why, measure = declared.kind.zero
    if why and any(r.value == 0 and not r.high for r in reads):
        prepared.asked.append(
            cannot_tell(declared.name, why, measure=measure, needs=(declared.name,))
        )


def _read(
    declared: Input,
    item: object,
    companions: Mapping[str, object],
    origin: str,
    remembered: Remembered,
) -> tuple[Read, InputRecord]:
    """Read one given value, or remember it; a file is read again, it may have changed."""
    apart = declared.kind.of_file or declared.kind.companions  # its text is not all of it
    key = (declared.name, item) if isinstance(item, str) and not apart else None
    if key is not None and key in remembered:
        return remembered[key]
    read = declared.kind.read_with(item, companions)
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
    if key is not None:
        if len(remembered) >= MOST_REMEMBERED:
            remembered.clear()
        remembered[key] = read, record
    return read, record


def _number(value: object) -> float | None:
    return float(value) if isinstance(value, int | float) else None


def _shown(given: object) -> str:
    if isinstance(given, bool):
        return "yes" if given else "no"
    return str(given).strip()

"""The columns of a batch: which input each one is, and in which unit."""

from __future__ import annotations

import functools
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ..base.errors import BadInput, BadText, Problem, nearest
from ..engine.declaration import Calculation
from ..engine.inputs import Input
from ..engine.left_out import option_of
from ..engine.one_input import METER, UNKNOWN
from ..engine.remembered import MOST_REMEMBERED
from ..engine.trade_names import abbreviations, candidates
from ..recorded.files import unit_behind
from ..typed.quantities import read_number, split_error
from ..typed.units import dimension_of, read_unit

Given = str | Sequence[str]
_COMMA = re.compile(r"(?<=\d),(?=\d)", re.ASCII)


class InputColumn(NamedTuple):
    """A column that is an input: where it stands, and what makes a given value of its cells."""

    name: str
    at: int
    given: Callable[[str], Given]


class Plan(NamedTuple):
    """What the columns of a file are."""

    columns: Sequence[InputColumn]
    fixed: Mapping[str, object]  # the inputs that are the same in every row
    label: int | None = None
    kept: Mapping[str, int] = {}
    reads_files: bool = False


def plan(
    calc: Calculation[Any],
    header: Sequence[str],
    fixed: Mapping[str, object],
    *,
    label: str = "",
    keep: Sequence[str] = (),
    decimal_comma: bool = False,
) -> Plan:
    """Say what each column is; raises BadInput with everything that is wrong with them.

    `fixed` are the inputs that are the same in every row. `label` names the column of the rows'
    names, `keep` those that are passed through. With `decimal_comma` the numbers of the cells
    have decimal commas.
    """
    problems = list(_twice(header))
    places = {head.casefold(): at for at, head in enumerate(header)}
    for name in (label, *keep) if label else keep:
        if name.casefold() not in places:
            problems.append(Problem(f"column {name}", "is not in the file", _meant(name, header)))
    passed = {name.casefold() for name in (label, *keep)} - {""}
    columns: dict[str, InputColumn] = {}
    for at, head in enumerate(header):
        if head.casefold() == METER and METER not in passed:
            columns[METER] = InputColumn(METER, at, str.strip)
            continue
        try:
            found = _input(calc, head)
            if found is None and head.casefold() in passed:
                continue
            declared, unit = found or _unknown(calc, head)
            if declared.name in columns or declared.name in fixed:
                raise BadText(f"{declared.name} is given twice", "give it once")
            columns[declared.name] = InputColumn(
                declared.name, at, _reader(declared, unit, decimal_comma)
            )
        except BadText as error:
            problems.append(error.about(f"column {head}" if head else f"column {at + 1}"))
    problems += _fixed(calc, fixed)
    renamed = {calc.renamed[old] for old in calc.renamed if _is_there(old, header, fixed)}
    problems += _missing(calc, {*columns, *fixed, *renamed})
    if problems:
        raise BadInput(problems)
    kept = {header[places[name.casefold()]]: places[name.casefold()] for name in keep}
    at_label = places[label.casefold()] if label else None
    files = any(i.kind.of_file for i in calc.inputs if i.name in columns or i.name in fixed)
    return Plan(tuple(columns.values()), fixed, at_label, kept, files)


def _reader(declared: Input, unit: str, decimal_comma: bool) -> Callable[[str], Given]:
    if not (unit or declared.many or decimal_comma):
        return str  # a cell is the text itself
    how = functools.partial(_given, declared, unit, decimal_comma)
    return functools.lru_cache(MOST_REMEMBERED)(how)


def _given(declared: Input, unit: str, decimal_comma: bool, cell: str) -> Given:
    """Return what a cell gives: a text, or several of them for a list, with the header's unit."""
    quantity = bool(declared.kind.unit)
    if quantity and decimal_comma:
        cell = _COMMA.sub(".", cell)
    if not declared.many or ";" not in cell:
        return _with_unit(cell, unit)
    return tuple(_with_unit(item.strip(), unit) for item in cell.split(";"))


def _with_unit(text: str, unit: str) -> str:
    if not unit or text.casefold() == UNKNOWN:
        return text
    main, error = split_error(text)
    try:
        own = read_number(main.lstrip("<>"))[1]  # a side may stand before the number
    except BadText:
        return text  # its kind says what is wrong with it
    if own:
        raise BadText(f"{text!r} has a unit, and so has the header", f"write {unit} in one of them")
    return f"{main} {unit} ±{error}" if error else f"{main} {unit}"


def _input(calc: Calculation[Any], head: str) -> tuple[Input, str] | None:
    """Return the input that a header names, and the unit in it; None where it names none."""
    found: tuple[Input, str] | None = None
    short = abbreviations([i.name for i in calc.inputs])
    called = [(i.name, i) for i in calc.inputs]
    called += [(word, calc.input(name)) for word, name in short.items()]
    longest = ""
    for name, declared in called:
        if head.casefold() == name:
            return declared, ""
        unit = unit_behind(name, head) if declared.kind.unit else None
        if unit and len(name) > len(longest):
            found, longest = (declared, unit), name
    if found is None:
        return None
    declared, unit = found
    dimension = getattr(declared.kind, "dimension", "") or dimension_of(declared.kind.unit)
    try:
        return declared, read_unit(unit, dimension)
    except BadText:
        if head[len(longest)] in "_ ":  # force_at_start is another name, not a unit
            return None
        raise


def _unknown(calc: Calculation[Any], head: str) -> tuple[Input, str]:
    if not head:
        raise BadText("has no name", "give it one, or take it out")
    for old in calc.renamed:
        if unit_behind(old, head) is not None:
            raise BadText(calc.name_now(old))
    names = [i.name for i in calc.inputs]
    close = " or ".join(candidates(head, names)) or nearest(head, names)
    meant = f"did you mean {close}? " if close else ""
    raise BadText(
        f"{calc.name} has no such input", f'{meant}--keep "{head}" passes it through unread'
    )


def _twice(header: Sequence[str]) -> Iterator[Problem]:
    seen: set[str] = set()
    for head in header:
        if head.casefold() in seen:
            yield Problem(f"column {head}", "stands there twice", "give each a name of its own")
        seen |= {head.casefold()} - {""}


def _meant(name: str, header: Sequence[str]) -> str:
    close = nearest(name, [head for head in header if head])
    return f"did you mean {close}?" if close else f"its columns: {', '.join(header)}"


def _fixed(calc: Calculation[Any], fixed: Mapping[str, object]) -> Iterator[Problem]:
    """Refuse at once what would be refused in every row."""
    for name in fixed:
        if now := calc.name_now(name, option=True):
            yield Problem(option_of(name), now)
    for declared in calc.inputs:
        value = fixed.get(declared.name)
        if value is None or declared.kind.of_file:
            continue
        for item in declared.each(value):
            if str(item).strip().casefold() != UNKNOWN:
                try:
                    declared.kind.read(item)
                except BadText as error:
                    yield error.about(declared.option)


def _is_there(name: str, header: Sequence[str], fixed: Mapping[str, object]) -> bool:
    return name in fixed or any(unit_behind(name, head) is not None for head in header)


def _missing(calc: Calculation[Any], there: set[str]) -> Iterator[Problem]:
    for declared in calc.inputs:
        if declared.required and declared.name not in there:
            yield Problem(
                declared.name,
                f"is needed ({declared.kind.text})",
                f'write a column {declared.name}, or {declared.option} "{declared.kind.example}"',
            )

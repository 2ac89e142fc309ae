"""Columns of a table that hold one quantity in two units: both are given, and are the same."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from itertools import combinations

from ..base.rounding import show
from ..typed.units import convert
from .table_files import Column, Row, Table

_AMOUNTS = ("number", "integer")


def twins(one: Column, other: Column) -> bool:
    """Whether two columns hold the same quantity, as minimum_lbf and minimum_N do."""
    if one.unit == other.unit or not {one.type, other.type} <= set(_AMOUNTS):
        return False
    quantity = one.name.rpartition("_")[0]
    if not quantity or quantity != other.name.rpartition("_")[0]:
        return False
    with contextlib.suppress(LookupError):  # a unit that nobody typed: its name says enough
        try:
            convert(1.0, one.unit, other.unit)
        except ValueError:  # step_m and step_ohm
            return False
    return True


def differing(table: Table) -> Iterator[str]:
    """Say in which rows of a table twins are not the same, as far as they are printed."""
    pairs = [p for p in combinations(table.columns, 2) if twins(*p)]
    for number, row in enumerate(table.rows, start=2) if pairs else ():
        for one, other in pairs:
            if row.text(one.name) and row.text(other.name) and not _same(row, one, other):
                said = f"{one.name} {row.text(one.name)} and {other.name} {row.text(other.name)}"
                is_ = show(convert(row.number(one.name), one.unit, other.unit), other.unit)
                why = f"{row.text(one.name)} {one.unit} is {is_}"
                yield f"line {number}: {said} are not the same: {why}"


def _same(row: Row, one: Column, other: Column) -> bool:
    """Whether two cells are the same within half of the last digit of each."""
    try:
        mine = convert(row.number(one.name), one.unit, other.unit)
        off = abs(convert(_half(row.text(one.name)), one.unit, other.unit))
    except LookupError:
        return True
    return abs(mine - row.number(other.name)) <= (off + _half(row.text(other.name))) * (1 + 1e-9)


def _half(printed: str) -> float:
    """Return the worth of half of the last digit of a number as printed."""
    digits, _, power = printed.partition("e")
    return 0.5 * 10.0 ** (int(power or 0) - len(digits.partition(".")[2]))

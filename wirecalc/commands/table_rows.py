"""The rows of a table that `--where COLUMN=VALUE` asks for.

Several values of one column are either, several columns are all of them. A number is compared as
a number, a text without regard to capitals, and a unit behind a value of a column that has it may
stand there: `awg=18`, `area_mm2=1.5`, `"standard=UL-486A"`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from ..base.errors import BadInput, Problem, did_you_mean, nearest
from ..published.shop_tables import Overlaid
from ..published.tables import Column, Row, Table

OPTION = "--where"
_MOST = 30  # values of a column that are named where none fits


def chosen(
    table: Table, shops: Sequence[Overlaid], wanted: Sequence[str]
) -> tuple[Table, list[Overlaid]]:
    """Return a table, and a shop's rows beside it, with the rows alone that are wanted.

    Raises BadInput for a column that it has not, a value that no row has, and values that no row
    has together.
    """
    if not wanted:
        return table, list(shops)
    columns = {c.name: c for c in table.columns}
    asked: dict[str, list[str]] = {}
    problems: list[Problem] = []
    for text in wanted:
        named, equals, value = (part.strip() for part in text.partition("="))
        column = _column(named, columns)
        if not equals or not value:
            would_do = f'write {OPTION} "{column or table.columns[0].name}=..."'
            problems.append(Problem(OPTION, f"{text!r} has no value", would_do))
        elif not column:
            wrong = f"table {table.name} has no column {named!r}"
            known = did_you_mean(named, list(columns)) or f"known: {', '.join(columns)}"
            problems.append(Problem(OPTION, wrong, known))
        elif not any(_holds(row, columns[column], value) for row in _all(table, shops)):
            problems.append(_no_row(table, columns[column], value, shops))
        else:
            asked.setdefault(column, []).append(value)
    if problems:
        raise BadInput(problems)
    found = replace(table, rows=_kept(table.rows, columns, asked))
    theirs = [s._replace(rows=_kept(s.rows, columns, asked)) for s in shops]
    if not found.rows and not any(s.rows for s in theirs):
        raise BadInput([Problem(OPTION, "no row has all of these", "leave one of them out")])
    return found, theirs


def _all(table: Table, shops: Sequence[Overlaid]) -> list[Row]:
    return [*table.rows, *(row for s in shops for row in s.rows)]


def _kept(
    rows: Sequence[Row], columns: Mapping[str, Column], asked: Mapping[str, Sequence[str]]
) -> tuple[Row, ...]:
    return tuple(
        row
        for row in rows
        if all(any(_holds(row, columns[n], v) for v in values) for n, values in asked.items())
    )


def _column(named: str, columns: Mapping[str, Column]) -> str:
    """Return the column that is meant: by its name, or all of it but the unit behind it."""
    plain = re.sub(r"[\s-]+", "_", named).casefold()
    for name, column in columns.items():
        if plain in (name.casefold(), name.casefold().removesuffix(f"_{column.unit}".casefold())):
            return name
    return ""


def _holds(row: Row, column: Column, value: str) -> bool:
    """Whether a row has a value in a column, as a number or as a text."""
    printed = row.text(column.name).strip()
    unit = "AWG" if column.type == "gauge" else column.unit
    plain = re.sub(rf"\s*{re.escape(unit)}$", "", value, flags=re.IGNORECASE) if unit else value
    if plain.casefold() == printed.casefold():
        return True
    try:
        return float(plain) == float(printed)
    except ValueError:
        return False


def _no_row(table: Table, column: Column, value: str, shops: Sequence[Overlaid]) -> Problem:
    """Say which values a column has, or which one is meant."""
    there = list(dict.fromkeys(r.text(column.name) for r in _all(table, shops)))
    shown = [v for v in there if v]
    close = nearest(value, shown) if column.type == "text" else ""
    listed = ", ".join(shown[:_MOST]) + (", ..." if len(shown) > _MOST else "")
    would_do = f"did you mean {close}?" if close else f"it has {listed}"
    return Problem(OPTION, f"no row of {table.name} has {column.name} {value!r}", would_do)

"""What must hold in a table, checked whenever one is loaded.

The sidecar's `[[rules]]` say what must hold beyond types and unique keys: a value that rises or
falls along another, integer bands without gaps.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from typing import Any

from ..base.errors import TableError
from ..typed.wires import GAUGES, gauge_number
from .sources import Confidence
from .table_files import Cell, Row, Table

TYPES = ("gauge", "number", "integer", "text")
_WHOLE, _RANKED = ("integer",), ("gauge", "number", "integer")
STRICTER = ("", "higher", "lower", "narrower")

_HOLDS: dict[str, Callable[[float, float], bool]] = {
    "rising": lambda a, b: a < b,
    "falling": lambda a, b: a > b,
    "not falling": lambda a, b: a <= b,
    "not rising": lambda a, b: a >= b,
}


def check(table: Table, rules: Sequence[Any]) -> None:
    """Check a table; raises TableError with all that is wrong."""
    wrong = [*_check_columns(table), *_check_rows(table)]
    if not wrong:
        for rule in rules:
            wrong += [*_check_rule(table, rule)] or _kept(table, rule)
    if wrong:
        raise TableError("\n".join(f"table {table.name}: {w}" for w in wrong))


def _check_columns(table: Table) -> Iterator[str]:
    names = {c.name for c in table.columns}
    for column in table.columns:
        if column.type not in TYPES:
            yield f"column {column.name} has type {column.type!r}; known: {', '.join(TYPES)}"
        if column.stricter not in STRICTER:
            yield f"column {column.name}: stricter is higher, lower or narrower"
        if column.source and column.source not in table.sources:
            yield f"column {column.name}: source {column.source!r} is not in the sidecar"
        if column.confidence and column.confidence not in list(Confidence):
            yield f"column {column.name}: confidence {column.confidence!r} is not known"
    for key in table.key:
        if key not in names:
            yield f"key {key} is not a column"


def _check_rows(table: Table) -> Iterator[str]:
    if not table.rows:
        yield "it has no rows"
    seen: set[tuple[Cell, ...]] = set()
    gauges = [c.name for c in table.columns if c.type == "gauge"]
    numbers = [c.name for c in table.columns if c.type == "number"]
    for line, row in enumerate(table.rows, start=2):
        key = tuple(row.cells.get(k) for k in table.key)
        if key in seen:
            yield f"line {line}: {key} stands there twice"
        seen.add(key)
        for name in gauges:
            if row.cells[name] is not None and row.cells[name] not in GAUGES:
                yield f"line {line}: {row.cells[name]!r} is no AWG name"
        for name in numbers:
            value = row.cells[name]
            if isinstance(value, float) and not math.isfinite(value):
                yield f"line {line}: {name} is not finite"
        if row.source.confidence is Confidence.CONFIRMED and row.source.copies < 1:
            yield f"line {line}: confirmed, and by no copy"


def _groups(table: Table, within: Sequence[str]) -> Iterator[list[Row]]:
    groups: dict[tuple[Cell, ...], list[Row]] = {}
    for row in table.rows:
        groups.setdefault(tuple(row.cells[w] for w in within), []).append(row)
    yield from groups.values()


def _rank(value: Cell) -> float:
    """Return where a cell stands along a column: a gauge from thick to thin, a number as it is."""
    if isinstance(value, str):
        return gauge_number(value)
    return math.nan if value is None else value


def _check_rule(table: Table, rule: Any) -> Iterator[str]:
    """Say which columns of a rule are none, or none that it could compare."""
    if not isinstance(rule, dict):
        yield "its rules are written wrongly; write [[rules]] above each"
        return
    types = {c.name: c.type for c in table.columns}
    bands = "no_gaps" in rule
    compared = rule["no_gaps"] if bands else [rule.get("column"), rule.get("along")]
    within = rule.get("within", [])
    if not (isinstance(compared, list) and len(compared) == 2 and isinstance(within, list)):
        yield "a rule names two columns to compare, and may list others that it is within"
        return
    for name in (*compared, *within):
        if not isinstance(name, str) or name not in types:
            yield f"a rule names {name!r}, which is no column"
        elif name in compared and types[name] not in (_WHOLE if bands else _RANKED):
            yield f"a rule compares {name}, which is {types[name]}"


def _kept(table: Table, rule: dict[str, Any]) -> Iterator[str]:
    return _check_bands(table, rule) if "no_gaps" in rule else _check_order(table, rule)


def _check_order(table: Table, rule: dict[str, Any]) -> Iterator[str]:
    column, along, runs = rule["column"], rule["along"], rule.get("runs")
    holds = _HOLDS.get(runs) if isinstance(runs, str) else None
    if holds is None:
        yield f"rule for {column}: {runs!r} is none of {', '.join(_HOLDS)}"
        return
    for group in _groups(table, rule.get("within", ())):
        filled = [r for r in group if r.cells[column] is not None and r.cells[along] is not None]
        filled.sort(key=lambda r: _rank(r.cells[along]))
        for one, two in pairwise(filled):
            if not holds(_rank(one.cells[column]), _rank(two.cells[column])):
                yield (
                    f"{column} is not {rule['runs']} from {along} {one.cells[along]} "
                    f"to {two.cells[along]}"
                )


def _check_bands(table: Table, rule: dict[str, Any]) -> Iterator[str]:
    start, end = rule["no_gaps"]
    for group in _groups(table, rule.get("within", ())):
        bands = sorted(group, key=lambda r: _open(r.cells[start], -math.inf))
        for one, two in pairwise(bands):
            upper, lower = _open(one.cells[end], math.inf), _open(two.cells[start], -math.inf)
            if upper + 1 != lower:
                yield f"bands {start}..{end}: after {upper:g} comes {lower:g}"


def _open(value: Cell, where_empty: float) -> float:
    return where_empty if value is None else float(value)

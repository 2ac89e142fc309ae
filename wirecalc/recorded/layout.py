"""How a recording is laid out: a CSV with a header or without, or a Parquet file."""

from __future__ import annotations

import re
from pathlib import Path

from ..base.errors import BadText
from .clamp import Clamp
from .columns import Columns, Declared, columns_of
from .head import CLOCK, cells_of, first_lines, is_value, stamps_of
from .parquet import head_of, is_parquet
from .rows import Layout


def layout_of(
    path: Path, declared: Declared, wanted: str, clamp: Clamp | None, *, comma: bool
) -> tuple[tuple[str, ...], Layout]:
    """Return the names of the columns that are read, and how the file is laid out."""
    if is_parquet(path):
        return _of_parquet(path, declared, wanted, clamp)
    lines, delimiter = first_lines(path)
    head = cells_of(lines[0], delimiter)
    used = 1
    if all(is_value(cell, comma) for cell in head):
        found = _without_head(head, declared, wanted, clamp)
        stamps, factor, heads, used = [0], 1.0, found.names, 0
    else:
        units = cells_of(lines[1], delimiter) if len(lines) > 1 else []
        if len(units) == len(head) and all(re.fullmatch(r"[(\[].*[)\]]|", u) for u in units):
            head, used = [f"{h} {u}" for h, u in zip(head, units, strict=True)], 2
        stamps, factor = stamps_of(head)
        found = columns_of(head, stamps, declared, wanted, clamp)
        heads = tuple(head[i] for i in found.places)
    first = cells_of(lines[used], delimiter) if len(lines) > used else []
    if not found.names or len(first) < 2:
        raise BadText(f"{str(path)!r} holds no readings", "write t_s and current_A, and rows")
    clock = len(first) == len(head) and CLOCK.match(first[stamps[0]]) is not None
    return found.names, Layout(
        delimiter,
        len(head),
        tuple(stamps if clock else stamps[:1]),
        found.places,
        (1.0 if clock else factor, *found.factors),
        tuple(declared.kinds[n] for n in found.names),
        heads,
        lines[used].begins,
        lines[used].number,
        comma,
        clock,
        found.clamp,
    )


def _without_head(head: list[str], declared: Declared, wanted: str, clamp: Clamp | None) -> Columns:
    """Return the columns of a file without a header: time, what is measured, what is beside it."""
    if wanted:
        raise BadText(f"it has no header, so no column {wanted!r}", "leave --column out")
    beside = tuple(n for n in declared.beside if n != "peak")
    names = (declared.measured[0], *beside)[: len(head) - 1]
    factor = 1.0 if clamp is None else clamp.amps(None)
    places = tuple(range(1, len(names) + 1))
    return Columns(names, places, (factor, 1.0, 1.0)[: len(names)], clamp)


def _of_parquet(
    path: Path, declared: Declared, wanted: str, clamp: Clamp | None
) -> tuple[tuple[str, ...], Layout]:
    head, times = head_of(path)
    clock = any(times)
    stamps, factor = ([times.index(True)], 1.0) if clock else stamps_of(head)
    found = columns_of(head, stamps, declared, wanted, clamp)
    return found.names, Layout(
        "",
        len(head),
        tuple(stamps[:1]),
        found.places,
        (factor, *found.factors),
        tuple(declared.kinds[n] for n in found.names),
        tuple(head[i] for i in found.places),
        0,
        0,
        False,
        clock,
        found.clamp,
        parquet=True,
    )

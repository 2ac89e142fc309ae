"""The stock list of a shop: its rows, and what they say of a part."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wirecalc import BadText, Confidence, FileColumns, SizeRange, Source, read_size_range, tables

from ..inputs_joint import LISTED_FOR

SHOP_TABLE, DEMO_TABLE = "stock", "stock-demo"
NEEDED = ("part", "connector", "barrel")
_PROPERTIES = ("barrel", "tab_in", "listed_for", "wire_limit", "temperature_C", "voltage_V")
MOST = 40_000  # more than any number in a stock list: a slip
HOUSE = Source("stock", "the stock list", confidence=Confidence.HOUSE)
DEMO = Source("stock-demo", "a stock list for demonstrations", confidence=Confidence.DEMO)

Row = Mapping[str, str]


class Stocked(NamedTuple):
    """What a row says of its part; None where it says nothing."""

    barrel: SizeRange
    tab: float | None
    listed_for: str | None
    wire_limit: int | None
    temperature: float | None
    voltage: float | None


def read_stock(file: FileColumns | None) -> tuple[list[Row], Source]:
    """Return the rows of the file; else of the shop's table, or of an invented one."""
    if file is not None:
        heads = list(file.words)
        return [
            dict(zip(heads, cells, strict=True)) for cells in zip(*file.words.values(), strict=True)
        ], HOUSE
    name = SHOP_TABLE if SHOP_TABLE in tables.names() else DEMO_TABLE
    return [row.printed for row in tables.load(name).rows], HOUSE if name == SHOP_TABLE else DEMO


def by_part(rows: Iterable[Row], connector: str) -> list[list[Row]]:
    """Gather the rows of a kind of connector by part number; one without a number stands alone."""
    found: dict[str, list[Row]] = {}
    for at, row in enumerate(rows):
        if row.get("connector", "").strip().casefold() == connector:
            found.setdefault(row.get("part", "").strip() or f"row {at + 1}", []).append(row)
    return list(found.values())


def properties(row: Row) -> tuple[str, ...]:
    """Return all that decides whether a part fits, as it stands in the list."""
    return tuple(row.get(name, "").strip() for name in _PROPERTIES)


def read_row(row: Row) -> Stocked:
    """Read what a row says of its part; raises BadText where it cannot be read."""
    listed = row.get("listed_for", "").strip() or None
    if listed not in (None, *LISTED_FOR.words):
        raise BadText(f"listed_for {listed!r}", f"write one of {LISTED_FOR.span}")
    return Stocked(
        read_size_range(row.get("barrel", "")),
        _number(row, "tab_in"),
        listed,
        _whole(row, "wire_limit"),
        _number(row, "temperature_C"),
        _number(row, "voltage_V"),
    )


def left(rows: Iterable[Row]) -> int | None:
    """Return how many are left, None where a row does not say; raises BadText."""
    counts = [_whole(row, "on_hand") for row in rows]
    known = [count for count in counts if count is not None]
    return sum(known) if any(known) or len(known) == len(counts) else None


def _number(row: Row, name: str) -> float | None:
    text = row.get(name, "").strip()
    if not text:
        return None
    try:
        value = float(text)
    except ValueError:
        raise BadText(f"{name} {text!r} is no number", "write it in digits, such as 5") from None
    if not 0 <= value <= MOST:
        raise BadText(f"{name} {text!r} is no plain number", f"write a number from 0 to {MOST}")
    return value


def _whole(row: Row, name: str) -> int | None:
    value = _number(row, name)
    if value is not None and value != int(value):
        raise BadText(f"{name} {row[name]!r} is no whole number", "write it without a fraction")
    return None if value is None else int(value)

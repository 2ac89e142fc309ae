"""The limits of a leakage current by standard and kind of machine, and a reading judged by them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from wirecalc import (
    Item,
    Source,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    from_memory,
    put,
    tables,
)

LEAKAGE = "leakage current"
BETTER = "a leakage tester that reads 0.01 mA"
UL_101, STRICTEST = "ul-101", "strictest"
_REGIONS = ((UL_101,), ("iec-60335-1", "vde-0701-0702"))  # whose standards go together
_ACTION = "find what leaks: unplug parts one by one; wet parts, elements and filters first"
_SCOPE = from_memory("ul-101-scope", "UL 101 (ANSI C101)", "scope: cord and plug, up to 20 A")


class LeakageLimit(NamedTuple):
    """A limit in mA, and the row that it comes from."""

    ma: float
    row: tables.Row

    @property
    def source(self) -> Source:
        """Where it comes from."""
        return self.row.source

    @property
    def standard(self) -> str:
        """Whose it is."""
        return self.row.text("standard")


def standards() -> list[str]:
    """Return the standards, by table, and the strictest of them all."""
    rows = tables.load("leakage-limits").rows
    return [*dict.fromkeys(r.text("standard") for r in rows), STRICTEST]


def kinds() -> list[str]:
    """Return the kinds of machine, by table."""
    return list(dict.fromkeys(r.text("machine_kind") for r in tables.load("leakage-limits").rows))


def limits_of(kind: str, power: float | None) -> list[LeakageLimit]:
    """Return the limits of a kind by all standards; without the power of a heater its least."""
    rows = tables.load("leakage-limits").where(machine_kind=kind)
    return [LeakageLimit(_ma(row, power), row) for row in rows]


def _ma(row: tables.Row, power: float | None) -> float:
    least = row.number("limit_mA")
    if row.cells["per_kW_mA"] is None or power is None:
        return least
    return min(max(least, row.number("per_kW_mA") * power / 1000), row.number("most_mA"))


def shown(limits: Sequence[LeakageLimit], power: float | None) -> Iterator[Item]:
    """Show the limits of all standards side by side."""
    for limit in limits:
        yield figure(
            f"most by {limit.standard}",
            limit.ma,
            "mA",
            source=limit.source,
            toward="down",
            working=_working(limit, power),
        )


def _working(limit: LeakageLimit, power: float | None) -> Callable[[], str] | None:
    """Return how a limit grows with the power; None for one that the table has as it is."""
    if power is None or limit.row.cells["per_kW_mA"] is None:
        return None
    per_kw = limit.row.number("per_kW_mA")
    by_power = per_kw * power / 1000
    if by_power != limit.ma:
        end = "least" if by_power < limit.ma else "most"
        return lambda: f"the {end} that it has, whatever the power"
    return lambda: f"{put(per_kw, 'mA/kW')} x {put(power, 'W')} / 1000"


def judge(
    value: float, limits: Sequence[LeakageLimit], standard: str, on: bool | None, in_scope: bool
) -> Iterator[Item]:
    """Judge a reading by its standard; a stricter one of the same region is advice."""
    own = _own(limits, standard)
    if not in_scope:
        yield _out_of_scope(value, limits)
        return
    if at_or_below(value, own.ma) and on is not True:
        yield _hidden(own, on)
        return
    yield _at_most(value, own)
    region = next((r for r in _REGIONS if standard in r), ())
    for other in limits:
        if other.standard in region and other.ma < own.ma:
            yield at_most(
                f"leakage by {other.standard}",
                value,
                other.ma,
                "mA",
                source=other.source,
                advisory=True,
                says="stricter than the standard that was named",
                action=_ACTION,
                better=BETTER,
                behind="the limit of the standard that was named fails",
            )


def without_kind(value: float, standard: str, on: bool | None) -> Item:
    """Judge a machine of a kind that is not known: by the least limit and by the greatest."""
    least = min((_own(limits_of(k, None), standard) for k in kinds()), key=lambda x: x.ma)
    greatest = max((_own(limits_of(k, 1e6), standard) for k in kinds()), key=lambda x: x.ma)
    if not at_or_below(value, greatest.ma):
        return _at_most(value, greatest)
    if not at_or_below(value, least.ma):
        return cannot_tell(
            LEAKAGE,
            f"{value:.4g} mA, and the kind of machine decides by which limit it is judged",
            measure="say what kind of machine it is, and the power of a heater by its plate",
            needs=("machine_kind",),
            source=greatest.source,
        )
    return _at_most(value, least) if on is True else _hidden(least, on)


def _own(limits: Sequence[LeakageLimit], standard: str) -> LeakageLimit:
    if standard == STRICTEST:
        return min(limits, key=lambda x: x.ma)
    return next(x for x in limits if x.standard == standard)


def _hidden(limit: LeakageLimit, on: bool | None) -> Item:
    return cannot_tell(
        LEAKAGE,
        "what lies behind an open switch or relay does not leak into the reading",
        measure="read it again with everything switched on and running",
        needs=("switched_on",) if on is None else (),
        source=limit.source,
    )


def _at_most(value: float, limit: LeakageLimit) -> Item:
    return at_most(
        LEAKAGE,
        value,
        limit.ma,
        "mA",
        source=limit.source,
        says="do not return it to service",
        action=_ACTION,
        better=BETTER,
    )


def _out_of_scope(value: float, limits: Sequence[LeakageLimit]) -> Item:
    """Say that UL 101 does not cover it; what is past every standard's limit fails all the same."""
    greatest = max(limits, key=lambda x: x.ma)
    if not at_or_below(value, greatest.ma):
        return _at_most(value, greatest)
    return cannot_tell(
        LEAKAGE,
        "UL 101 is of machines with a cord and plug of up to 20 A, and this is none",
        measure="unplugged or locked out, read the insulation at 500 V dc, and follow the maker's "
        "sheet",
        source=_SCOPE,
    )

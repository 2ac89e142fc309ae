"""Standard ratings of fuses and breakers (NEC 240.6(A))."""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import Source, at_or_below, tables


def rating_at_least(amps: float, *, fuse: bool = False) -> float:
    """Return the standard rating at or above a current (NEC 240.6(A)); without one, itself.

    A `fuse` has smaller ones too, from 1 A.
    """
    return next((r for r in _ratings(fuse) if at_or_below(amps, r)), amps)


def rating_at_most(amps: float) -> float | None:
    """Return the standard rating at or below a current (NEC 240.6(A)), None under the least."""
    return max((r for r in _ratings() if at_or_below(r, amps)), default=None)


def _ratings(fuse: bool = False) -> Sequence[float]:
    return tables.load("standard-ratings").made(_in_order, fuse)


def _in_order(table: tables.Table, fuse: bool) -> Sequence[float]:
    return tuple(sorted(r.number("rating_A") for r in table.rows if fuse or r.text("of") == "any"))


def rating_source() -> Source:
    """Return where the standard ratings stand."""
    return tables.load("standard-ratings").rows[0].source

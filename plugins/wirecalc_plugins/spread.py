"""A limit on what is known only from low to high, where no meter's error is the reason."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wirecalc import (
    Item,
    Origin,
    Source,
    at_most,
    at_or_below,
    cannot_tell,
    show,
    show_band,
)


class Unknown(NamedTuple):
    """Why a value has two ends, what would settle it, and the inputs that were left out."""

    why: str
    measure: str
    needs: Sequence[str] = ()


def most(
    name: str,
    ends: tuple[float, float],
    limit: float,
    unit: str,
    *,
    unknown: Unknown,
    source: Source,
    origin: Origin = Origin.STANDARD,
    caution: float | None = None,
    says: str = "",
    action: str = "",
    plain: str = "",
) -> Item:
    """Judge a value of two ends against a most; where only one end keeps it, it can't be told."""
    low, high = ends
    if at_or_below(low, limit) and not at_or_below(high, limit):
        return cannot_tell(
            name,
            f"{show_band(low, high, unit)} against {show(limit, unit, toward='down')}: "
            f"{unknown.why}",
            measure=unknown.measure,
            needs=unknown.needs,
            source=source,
            plain=plain,
        )
    return at_most(
        name,
        high if at_or_below(high, limit) else low,
        limit,
        unit,
        caution=caution,
        source=source,
        origin=origin,
        says=says,
        action=action,
        plain=plain,
    )

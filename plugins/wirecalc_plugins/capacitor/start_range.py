"""Start capacitors: their marked range, and the volts at which they are switched out."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    Origin,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    caution,
    confirmed,
    figure,
    tables,
)

_RANGE = confirmed("start-range", "one component maker's guide", "size of start parts", copies=1)


def in_range(old: tuple[float, float | None], new: tuple[float, float | None]) -> Iterator[Item]:
    """Require that the whole range of the new part lies inside that of the old one."""
    action = "take a start part whose whole range lies inside the old one"
    yield at_least(
        "size, lower limit",
        new[0],
        old[0],
        "uF",
        source=_RANGE,
        origin=Origin.MAKER,
        action=action,
    )
    over = old[1] is not None and not at_or_below(new[0], old[1])
    unread = [n for n, end in (("old", old[1]), ("new", new[1])) if end is None]
    if unread and not over:
        parts = " and ".join(unread)
        yield cannot_tell(
            "size, upper limit",
            f"start parts are marked with a range, and its upper end was not read: {parts}",
            measure="read the whole range on both parts",
            needs=tuple(f"{name}_capacitor_high" for name in unread),
            source=_RANGE,
        )
        return
    yield at_most(
        "size, upper limit",
        new[0] if new[1] is None else new[1],
        old[1] or 0.0,
        "uF",
        source=_RANGE,
        origin=Origin.MAKER,
        action=action,
    )


def cut_off(rating: float, measured: float | None) -> Iterator[Item]:
    """Hold the volts at cut-off against the limit of the class; between classes the lower."""
    yield caution("start-01")
    rows = [r for r in tables.load("start-capacitors").rows if _limited(r, rating)]
    if not rows:
        if measured is not None:
            yield cannot_tell(
                "volts at cut-off",
                f"no limit was seen for a start part of {rating:g} V",
                measure="take it from the maker's sheet of the part",
            )
        return
    row = max(rows, key=lambda r: r.number("rated_V"))
    limit = row.number("cutoff_V")
    yield figure("cut-off limit of its class", limit, "V", source=row.source, toward="down")
    if measured is not None:
        yield at_most(
            "volts at cut-off",
            measured,
            limit,
            "V",
            source=row.source,
            origin=Origin.MAKER,
            action="take a part of a higher class, and see that the relay drops out in time",
        )


def _limited(row: tables.Row, rating: float) -> bool:
    return bool(row.cells["cutoff_V"]) and at_or_below(row.number("rated_V"), rating)

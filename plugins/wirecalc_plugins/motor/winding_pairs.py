"""The three readings between the pins of a motor, less the leads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wirecalc import (
    Bands,
    Item,
    figure,
    put,
)

from .winding_pins import Pair


def less_leads(given: Mapping[str, float | None], ends: Bands, leads: float) -> Iterator[Pair]:
    """Yield each pair that was read, in ohm less the leads, with the ends of its band."""
    lead_low, lead_high = ends.get("lead_resistance", (leads, leads))
    for name, reading in given.items():
        if reading is not None:
            own = ends.get(f"reading_{name.replace('-', '_')}", (reading, reading))
            yield Pair(name, reading - leads, own[0] - lead_high, own[1] - lead_low)


def pair_figure(pair: Pair, reading: float | None, leads: float | None) -> Item:
    """Show what is left of a reading without the leads."""
    return figure(
        f"{pair.name} less leads",
        pair.ohm,
        "ohm",
        band=(pair.low, pair.high),
        working=lambda: (
            "as read: the leads were not read"
            if leads is None
            else f"{put(reading or 0.0, 'ohm')} - {put(leads, 'ohm')}"
        ),
    )

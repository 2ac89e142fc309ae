"""A place whose temperature was not measured, or was read cold."""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import (
    PRACTICE,
    Item,
    cannot_tell,
)

from .part_ratings import Part, would_do

HEATER_C = 200.0  # place beside a heater that was not measured; common practice, no source

COLD_C = 40.0  # a warm room; a place beside a heater that runs is hotter; practice, no source


def assumed_place(parts: Sequence[Part]) -> Item:
    """Ask for the place beside a heater, which was not measured."""
    return cannot_tell(
        "temperature of the place",
        f"not measured; {HEATER_C:.0f} C is assumed, as beside a heater, and there are hotter "
        f"places{would_do(parts)}",
        measure="fix a probe there with the power off, close it and read it hot; or ask the "
        "maker's sheet",
        needs=("place_temperature",),
        source=PRACTICE,
    )


def read_cold(place: float) -> Item:
    """Question a place in C beside a heater that is no warmer than a room."""
    return cannot_tell(
        "temperature of the place",
        f"{place:.4g} C beside a heater is as cold as a room: it was read cold, or elsewhere",
        measure="fix a probe at the joint with the power off, close it and read it hot",
        source=PRACTICE,
    )


def unknown_place(parts: Sequence[Part], near_heater: bool | None) -> Item:
    """Ask for the temperature of a place that nothing is known of."""
    return cannot_tell(
        "temperature of the place",
        f"it was not measured{would_do(parts)}",
        measure="measure it with the machine hot; a shiny metal misleads an infrared thermometer",
        needs=("place_temperature",)
        if near_heater is not None
        else ("place_temperature", "near_heater"),
    )

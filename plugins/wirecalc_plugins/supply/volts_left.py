"""The volts that are left at a load, against those that its maker allows."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    Item,
    Origin,
    Problem,
    Source,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    tables,
)

from .supply_service import service_top

LEFT = "volts at the load while it runs"
SUPPLY_SPAN = (0.7, 1.3)  # share of the plate's volts at rest; more is another plug
MOST_V = 300.0  # more is no line of a house; common practice
STEADY = 1.05  # what the supply itself may rise between two readings; common practice

_MEND = "a shorter or thicker run: no extension cord, or a receptacle added nearer"
_REST = "measure the volts at the plug with nothing running, or while the load runs (supply)"


class PlateLimits(NamedTuple):
    """Least and most volts that a plate allows while the load runs, in V, and their source."""

    low: float
    high: float
    source: Source


def plate_limits(plate: float, low_plate: float | None = None) -> PlateLimits:
    """Return the limits of a plate in V; `low_plate` is the lower end of a plate with a span."""
    row = tables.load("supply-ranges").row(range="plate")
    low = row.number("low") / 100 * (low_plate or plate)
    return PlateLimits(low, row.number("high") / 100 * plate, row.source)


def judge_left(lost: float, plate: float, at_rest: float | None, name: str = LEFT) -> Item:
    """Judge what is left of the volts at rest, in V, or by the most that there may be at rest."""
    limits = plate_limits(plate)
    if at_rest is not None:
        return at_least(
            name,
            at_rest - lost,
            limits.low,
            "V",
            source=limits.source,
            origin=Origin.MAKER,
            says=f"90 % of the plate; {lost:.3g} V are lost on the way",
            action=_MEND,
        )
    most = min(limits.high, service_top(plate)) - limits.low
    if at_or_below(lost, plate - limits.low) or not at_or_below(lost, most):
        return at_most(
            name,
            lost,
            most,
            "V",
            source=limits.source,
            origin=Origin.MAKER,
            says="from the most volts that plate and service allow to 90 % of the plate",
            action=_MEND,
        )
    return cannot_tell(
        name,
        f"{lost:.3g} V are lost, and the least for this plate is {limits.low:.4g} V",
        measure=_REST,
        needs=("voltage_at_rest",),
        source=limits.source,
    )


def too_many(lost: float, plate: float, at_rest: float | None) -> Iterator[Item]:
    """Fail more volts than the plate allows, in V, where `lost` of those at rest do not save it."""
    limits = plate_limits(plate)
    if at_rest is not None and not at_or_below(at_rest - lost, limits.high):
        yield at_most(
            "volts at the load, upper limit",
            at_rest - lost,
            limits.high,
            "V",
            source=limits.source,
            origin=Origin.MAKER,
            says="110 % of the plate",
            action="leave it off: is it the plate of this machine, and the outlet for it? Then "
            "have the supply looked at",
        )


def at_another_plug(at_rest: float, plate: float) -> Iterator[Problem]:
    """Refuse volts at rest that do not belong to the plate's."""
    low, high = SUPPLY_SPAN
    if not low * plate <= at_rest <= high * plate:
        outlet = 120 if at_rest < 170 else 240
        asked = f"{plate:g} V plate"
        what = f"{outlet} V outlet for a {asked}? " if at_rest > 90 else ""
        yield Problem(
            "voltage_at_rest",
            f"{at_rest:g} V at rest does not belong to a {asked}",
            f"{what}read plate and meter again, V and mV",
        )


def volts_that_clash(
    plate: float, at_rest: float | None, at_start: float | None
) -> Iterator[Problem]:
    """Refuse volts that do not belong together."""
    if at_start is not None and at_start > SUPPLY_SPAN[1] * plate:
        yield Problem(
            "voltage_at_start",
            f"{at_start:g} V during the start does not belong to a {plate:g} V plate",
            "read plate and meter again, its range and unit",
        )
        return
    if at_rest is None:
        return
    another_plug = list(at_another_plug(at_rest, plate))
    yield from another_plug
    if not another_plug and at_start is not None and at_start > at_rest * STEADY:
        yield Problem(
            "voltage_at_start",
            f"{at_start:g} V during the start is above the {at_rest:g} V at rest",
            "give the lowest reading of the start, and both at the same plug",
        )

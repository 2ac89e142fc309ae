"""What a plate lets a machine draw, and what it draws against that."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    Item,
    Source,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    cannot_tell,
    figure,
    put,
    tables,
)

from .draw_inputs import HEATER, MIXED, MOTOR

NEAR = (0.9, 1.1)  # of the plate's volts, where a motor's or a board's amps may be compared
INPUTS = {"power": "power input", "current": "current input"}
_MORE = (
    "switch off: is it the plate of this machine, and are the volts its own? A heater bridged in "
    "part, a stiff or stalled motor, another load on the meter"
)
_LESS = "which heater, leg or motor does not run: ask element, supply"


class Limits(NamedTuple):
    """Most and least that a plate allows, in its unit; the most for which it is beyond doubt."""

    most: float
    care: float | None
    least: float | None
    source: Source


class Drawn(NamedTuple):
    """What is drawn at the volts that are there, by `power` or `current`, against the plate."""

    basis: str
    unit: str
    actual: float
    marked: float
    volts: float
    plate_volts: float
    kind: str

    @property
    def at_plate(self) -> float:
        """Return what a resistance would draw at the plate's volts."""
        ratio = self.plate_volts / self.volts
        return self.actual * (ratio**2 if self.basis == "power" else ratio)

    @property
    def ends(self) -> tuple[float, float]:
        """Return the least and the most that it may draw at the plate's volts.

        A heater goes with the volts, a motor and a board hold what they draw; of a mixture it is
        not known how much is of which.
        """
        if self.kind == HEATER:
            return self.at_plate, self.at_plate
        if self.kind == MIXED:
            return min(self.actual, self.at_plate), max(self.actual, self.at_plate)
        return self.actual, self.actual

    @property
    def comparable(self) -> bool:
        """Whether the volts are near enough to the plate's for this kind."""
        low, high = (share * self.plate_volts for share in NEAR)
        near = at_or_above(self.volts, low) and at_or_below(self.volts, high)
        return self.kind == HEATER or near


def judge(drawn: Drawn, all_on: bool | None) -> Iterator[Item]:
    """Show the share of the plate, and judge it from above and, of what heats, from below."""
    name, unit, (low, high) = INPUTS[drawn.basis], drawn.unit, drawn.ends
    yield figure(
        f"share of the plate's {'watts' if unit == 'W' else 'amps'}",
        100 * drawn.actual / drawn.marked,
        "%",
        working=lambda: f"100 x {put(drawn.actual, unit)} / {put(drawn.marked, unit)}",
    )
    if drawn.kind in (HEATER, MIXED):
        power = "^2" if drawn.basis == "power" else ""
        yield figure(
            f"{drawn.basis} of a resistance at the plate's volts",
            drawn.at_plate,
            unit,
            working=lambda: (
                f"{put(drawn.actual, unit)} x ({put(drawn.plate_volts, 'V')} / "
                f"{put(drawn.volts, 'V')}){power}"
            ),
        )
    limits = limits_of(drawn)
    if not drawn.comparable:
        yield cannot_tell(
            f"{name}, upper limit",
            f"{drawn.volts:.4g} V are not within 10 % of the plate's {drawn.plate_volts:g} V",
            measure="the volts first: ask supply; then read what it draws again",
            source=limits.source,
        )
        return
    yield _from_above(name, low, high, limits, drawn)
    if limits.least is not None:
        yield _from_below(name, (low, high), limits.least, drawn, all_on, limits.source)


def _from_above(name: str, low: float, high: float, limits: Limits, drawn: Drawn) -> Item:
    over = not at_or_below(low, limits.most)
    if not over and not at_or_below(high, limits.most):
        return _by_volts(f"{name}, upper limit", drawn, limits.source)
    return at_most(
        f"{name}, upper limit",
        low if over else high,
        limits.most,
        drawn.unit,
        caution=limits.care,
        source=limits.source,
        says=f"of {put(drawn.marked, drawn.unit)} on the plate",
        action=_MORE,
    )


def _from_below(
    name: str,
    ends: tuple[float, float],
    least: float,
    drawn: Drawn,
    all_on: bool | None,
    source: Source,
) -> Item:
    low, high = ends
    under = not at_or_above(high, least)
    if all_on is not True and not at_or_above(low, least):
        return cannot_tell(
            f"{name}, lower limit",
            f"{drawn.actual:.4g} {drawn.unit} of {drawn.marked:g} {drawn.unit} on the plate, and "
            "all that it counts may not have been on",
            measure="read it with every heater and the motor on, at the highest setting",
            needs=("all_on",),
            source=source,
        )
    if not under and not at_or_above(low, least):
        return _by_volts(f"{name}, lower limit", drawn, source)
    return at_least(
        f"{name}, lower limit",
        high if under else low,
        least,
        drawn.unit,
        source=source,
        says=f"of {put(drawn.marked, drawn.unit)} on the plate",
        action=_LESS,
    )


def _by_volts(name: str, drawn: Drawn, source: Source) -> Item:
    """Say that it hangs on how much of a mixture goes with the volts."""
    return cannot_tell(
        name,
        f"at {drawn.volts:.4g} V it hangs on how much of it is heater, and how much motor",
        measure="read it at volts nearer to the plate's, or heater and motor each alone",
        source=source,
    )


def limits_of(drawn: Drawn) -> Limits:
    """Return what the plate allows; of a mixture a motor's limit binds, and a heater's is care."""
    heater = _row(HEATER, drawn)
    own = heater if drawn.kind == HEATER else _row(MOTOR, drawn)
    care = _most(heater, drawn.marked) if drawn.kind == MIXED else None
    most = _most(own, drawn.marked)
    minus = heater.number("minus_percent") if heater.printed["minus_percent"] else None
    heats = drawn.kind in (HEATER, MIXED) and minus is not None
    least = (1 - (minus or 0.0) / 100) * drawn.marked if heats else None
    return Limits(max(most, care or 0.0), care, least, own.source)


def _row(kind: str, drawn: Drawn) -> tables.Row:
    rows = tables.load("power-input").where(kind=kind, basis=drawn.basis)
    return max((r for r in rows if r.number("over") < drawn.marked), key=lambda r: r.number("over"))


def _most(row: tables.Row, marked: float) -> float:
    share = (1 + row.number("plus_percent") / 100) * marked
    return max(share, marked + row.number("plus_amount"))

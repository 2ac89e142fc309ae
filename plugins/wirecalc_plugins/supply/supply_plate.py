"""Volts at the plug against those that the plate allows."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, Origin, at_least, at_most, at_or_below, computed, figure, put

from .volts_left import PlateLimits, plate_limits

OLDER = {110.0: 115.0, 220.0: 230.0}  # plates by an older name of the same volts; common practice

_RESISTIVE = computed("resistive", "power of a resistance", "goes with the square of the volts")
_LOST = "look for the loss: upstream, drop; a dead outlet: breaker, GFCI or an open joint"
ON_THE_WAY = "stop using it: the volts are there at rest and lost on the way; ask upstream, drop"
IS_208 = "it is a 208 V service, and no part is at fault; ask the maker for a 208 V version or part"
_IS_IT_208 = "is it a 208 V service? Then no part is at fault; else " + _LOST
_HALF = "one leg is open (breaker, fuse, joint), or it is a 120 V outlet: read each leg to neutral"
_OLDER = "see that the machine is made for this service; a motor may run hot at so many volts"
_TOO_HIGH = "do not run it; see that plug and plate are of one voltage, then call the utility"


def shares(volts: float, plate: float) -> Iterator[Item]:
    """Yield the share of the plate's volts, and the power that it leaves of a resistance."""
    yield figure(
        "share of the plate's volts",
        100 * volts / plate,
        "%",
        working=lambda: f"100 x {put(volts)} V / {put(plate)} V",
    )
    yield figure(
        "power of a resistive load",
        100 * (volts / plate) ** 2,
        "%",
        source=_RESISTIVE,
        working=lambda: f"100 x ({put(volts)} V / {put(plate)} V)^2",
    )


def against_plate(
    what: str, volts: float, limits: PlateLimits, plate: float, fault: str = ""
) -> Iterator[Item]:
    """Judge volts by 90 and 110 % of the plate; `fault` says what is known of too few."""
    low, high, source = limits
    name, says = f"{what}, lower limit", "90 % of the plate"
    action = _IS_IT_208 if 190 < low < 230 and volts > 180 else _LOST
    action = _HALF if low > 180 and 0.4 * high < volts < 0.6 * high else fault or action
    yield at_least(
        name, volts, low, "V", source=source, origin=Origin.MAKER, says=says, action=action
    )
    today = OLDER.get(plate)
    most, says = high, "110 % of the plate"
    if today is not None:
        most = plate_limits(today).high
        says += f"; {plate:g} V is an older name of {today:g} V, whose 110 % bind"
    yield at_most(
        f"{what}, upper limit",
        volts,
        most,
        "V",
        caution=None if today is None else high,
        source=source,
        origin=Origin.MAKER,
        says=says,
        action=_TOO_HIGH if not at_or_below(volts, most) else _OLDER,
    )

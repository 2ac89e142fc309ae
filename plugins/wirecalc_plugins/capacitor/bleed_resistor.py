"""What a resistor bears while a capacitor bleeds through it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    from_memory,
    put,
)

from .bleed_course import Bleed

TIMES = 10.0  # its power for the second that a bleed takes; practice: 2 W and 20 kohm at 440 V
OVERLOAD_S, OVERLOAD_VOLTS = 5.0, 2.5  # a standard test: so long at so many times its volts
LOAD, HEAT = "load on the resistor", "heat in the resistor"

_LARGER = "take 20 kohm of 2 W or more"
SHORT_BLEED_S, SHORT_HEAT = 0.1, 5.0  # a bleed that ends sooner heats the wire alone, in J/W
_WIRE_ALONE = from_memory(
    "pulse-heat", "makers' sheets of wire-wound resistors", "heat of one pulse under 0.1 s"
)
_OVERLOAD = from_memory("iec-60115-1", "IEC 60115-1", "short-time overload, 2.5 x its volts, 5 s")


def loaded(bleed: Bleed, power: float | None, pulse: float | None = None) -> Iterator[Item]:
    """Show the first instant in the resistor, and judge it; one `pulse` in J decides if known."""
    start, ohm, constant = bleed.start, bleed.ohm, bleed.constant
    first = start**2 / ohm
    yield figure(
        "resistor first instant",
        first,
        "W",
        working=lambda: f"({put(start)} V)^2 / {put(ohm)} ohm; falling at once",
    )
    if power is None:
        yield cannot_tell(
            LOAD,
            f"{first:.4g} W in the first instant, and the power of the resistor was not given",
            measure="read it on the resistor: one that burns out discharges nothing",
            needs=("resistor_power",),
        )
        return
    times = first / power
    yield figure(
        "first instant over its rating",
        times,
        "times",
        working=lambda: f"{put(first, 'W')} / {put(power, 'W')}",
    )
    if at_or_below(times, TIMES):
        yield at_most(
            LOAD,
            times,
            TIMES,
            "times",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=_LARGER,
        )
    elif pulse is None:
        yield cannot_tell(
            LOAD,
            f"{times:.4g} times its power in the first instant: its pulse rating decides",
            measure=f"read the pulse rating on its maker's sheet, or {_LARGER}",
            source=PRACTICE,
        )
    short = constant < SHORT_BLEED_S
    yield at_most(
        HEAT,
        _beyond(times, constant),
        SHORT_HEAT if short else OVERLOAD_S * (OVERLOAD_VOLTS**2 - 1),
        "J/W",
        source=_WIRE_ALONE if short else _OVERLOAD,
        says="beyond its rating, for each watt of it",
        action="take one of more power: this one burns out, and then it discharges nothing",
    )


def _beyond(times: float, constant: float) -> float:
    """Return the heat of a bleed beyond the rating, in J for each watt of it.

    The power falls as exp(-2 t / RC), and what is under the rating the resistor bears for good.
    """
    return constant / 2 * (times - 1 - math.log(times)) if times > 1 else 0.0

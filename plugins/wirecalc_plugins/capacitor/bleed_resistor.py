"""What a resistor bears while a capacitor bleeds through it."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    put,
)
from wirecalc.sources import from_memory

TIMES = 10.0  # its power for the second that a bleed takes; practice: 2 W and 20 kohm at 440 V
OVERLOAD_S, OVERLOAD_VOLTS = 5.0, 2.5  # a standard test: so long at so many times its volts
LOAD = "load on the resistor"

_OVERLOAD = from_memory("iec-60115-1", "IEC 60115-1", "short-time overload, 2.5 x its volts, 5 s")


def loaded(start: float, ohm: float, constant: float, power: float | None) -> Iterator[Item]:
    """Show the first instant in the resistor, and judge it; `constant` is RC in s."""
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
    heat = first * constant / 2 / power  # J for each watt of its rating
    most = OVERLOAD_S * OVERLOAD_VOLTS**2
    if at_or_below(times, TIMES):
        yield at_most(
            LOAD,
            times,
            TIMES,
            "times",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action="take 20 kohm of 2 W or more",
        )
    elif at_or_below(heat, most):
        yield cannot_tell(
            LOAD,
            f"{times:.4g} times its power in the first instant: its pulse rating decides",
            measure="read the pulse rating on its maker's sheet, or take 20 kohm of 2 W or more",
            source=PRACTICE,
        )
    else:
        yield at_most(
            LOAD,
            times,
            TIMES,
            "times",
            source=_OVERLOAD,
            says="more heat than a short-time overload may leave in it",
            action="take 20 kohm of 2 W or more",
        )

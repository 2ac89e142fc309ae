"""What is no motor capacitor: a high-voltage one can kill unplugged."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import Problem, at_or_below

HIGH_V = 1000.0  # ac volts; motor capacitors are marked 660 V at most
HIGH_CREST_V = math.sqrt(2) * HIGH_V  # dc volts that such a one is left with


def high_voltage(name: str, volts: float | None, most: float) -> Iterator[Problem]:
    """Yield a problem for the volts of an input above those of a motor capacitor."""
    if volts is not None and not at_or_below(volts, most):
        yield Problem(
            name,
            f"{volts:g} V is a high-voltage capacitor, as of a microwave oven: not by this",
            "leave it to who is trained for it, by its sheet; it can kill unplugged",
        )

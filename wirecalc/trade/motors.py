"""Single-phase motors at standstill: locked-rotor current and the offset first peak."""

from __future__ import annotations

import functools
import math

from ..published.sources import Source
from ..published.tables import load


def code_letters() -> list[str]:
    """Return the locked-rotor code letters of NEC Table 430.7(B)."""
    return [row.text("letter") for row in load("code-letters").rows]


def locked_rotor_band(
    letter: str, horsepower: float, voltage: float
) -> tuple[float, float | None, Source]:
    """Return least and most locked-rotor current in A for a code letter, power in hp, and volts.

    Single phase: kVA per hp x hp x 1000 / V. The last letter, V, has no most. Source: table
    code-letters (NEC Table 430.7(B), half-open bands).
    """
    row = load("code-letters").row(letter=letter)
    per_kva = horsepower * 1000 / voltage
    below = row.cells["kva_per_hp_below"]
    most = None if below is None else row.number("kva_per_hp_below") * per_kva
    return row.number("kva_per_hp_min") * per_kva, most, row.source


@functools.lru_cache(maxsize=64)
def offset_crest(power_factor: float) -> float:
    """Return the highest instantaneous current of a closing R-L circuit over its rms current.

    i / I = sqrt2 [sin(wt - phi) + sin(phi) exp(-wt / tan phi)], closed at the voltage zero, which
    is the worst moment; phi = acos(power factor), over 0 to 1. The usual closed form
    sqrt2 (1 + exp(-pi R/X)) is up to 2.9 % lower near R/X 0.7.

    >>> round(offset_crest(math.cos(math.atan(1 / 0.7))), 3)
    1.618
    """
    return _crest_at(power_factor, first_peak_angle(power_factor))


@functools.lru_cache(maxsize=64)
def first_peak_angle(power_factor: float) -> float:
    """Return the angle wt in radians of the first peak after closing at the voltage zero.

    Where the slope cos(wt - phi) - cos(phi) exp(-wt / tan phi) first becomes zero after the
    start; found by halving between the sine's crest and where the slope is surely negative.
    """
    phi = math.acos(power_factor)
    tan = math.tan(phi)

    def slope(angle: float) -> float:
        return math.cos(angle - phi) - math.cos(phi) * math.exp(-angle / tan)

    low, high = phi, phi + math.pi / 2  # slope(phi) > 0, slope(phi + pi/2) < 0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if slope(middle) > 0 else (low, middle)
    return (low + high) / 2


def _crest_at(power_factor: float, angle: float) -> float:
    phi = math.acos(power_factor)
    decay = math.sin(phi) * math.exp(-angle / math.tan(phi))
    return math.sqrt(2) * (math.sin(angle - phi) + decay)

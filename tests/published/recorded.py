"""Recordings that are invented from a few numbers, so that what is in them is known."""

from __future__ import annotations

import math
from typing import Any

import numpy as np


def recorded(
    levels: list[list[float]], rate: float, frequency: float = 0, cut_off: float = math.inf
) -> str:
    """Return the text of a recording that holds one level after another.

    `levels` are [A rms, s], `rate` in readings a second. Without a frequency, in Hz, it is a log of
    rms; with one it is the waveform, `cut_off` at so many A either way.
    """
    ends = np.cumsum([seconds for _, seconds in levels])
    t = np.arange(round(ends[-1] * rate)) / rate
    x: Any = np.array([amps for amps, _ in levels])[np.searchsorted(ends, t + 1e-9)]
    name = "current_rms_A"
    if frequency:
        name = "current_A"
        x = np.clip(math.sqrt(2) * x * np.sin(2 * math.pi * frequency * t), -cut_off, cut_off)
    rows = (f"{when:.6f},{amps:.3f}" for when, amps in zip(t, x, strict=True))
    return "\n".join([f"t_s,{name}", *rows, ""])

"""Recordings that are invented from a few numbers, so that what is in them is known."""

from __future__ import annotations

import math
from typing import Any

import numpy as np


def recorded(
    levels: list[list[float]], rate: float, frequency: float = 0, cut_off: float = math.inf
) -> str:
    """Return the text of a recording that holds one level after another.

    `levels` are [A rms, s] or, for one that goes straight from one to another, [A, A, s]; `rate`
    in readings a second. Without a frequency, in Hz, it is a log of rms; with one it is the
    waveform, `cut_off` at so many A either way.
    """
    ends = np.cumsum([level[-1] for level in levels])
    t = np.arange(round(ends[-1] * rate)) / rate
    at = np.searchsorted(ends, t + 1e-9)
    first, last, long = np.array([(level[0], level[-2], level[-1]) for level in levels])[at].T
    x: Any = first + (last - first) * (t - (ends[at] - long)) / long
    name = "current_rms_A"
    if frequency:
        name = "current_A"
        x = np.clip(math.sqrt(2) * x * np.sin(2 * math.pi * frequency * t), -cut_off, cut_off)
    rows = (f"{when:.6f},{amps:.3f}" for when, amps in zip(t, x, strict=True))
    return "\n".join([f"t_s,{name}", *rows, ""])

"""Starts in closed form as recorders give them: with holes, jitter, noise, cut off, on one side."""

from __future__ import annotations

from typing import Any

import numpy as np


def spoiled(one: Any, rate: float, how: str, seed: int) -> tuple[Any, Any]:
    """Return times and currents of a start, spoiled in one way or another; the seed is fixed."""
    chance = np.random.default_rng(seed)
    t, x = one.sampled(rate)
    if how in ("jitter", "jitter and holes"):
        t = t + chance.uniform(-0.3, 0.3, len(t)) / rate
        x = one.at(t)
    if how in ("holes", "jitter and holes"):
        keep = chance.random(len(t)) > 0.02
        t, x = t[keep], x[keep]
    if how == "stamps":
        t = t + chance.uniform(-0.3, 0.3, len(t)) / rate
    if how == "coarse clock":
        t = np.floor(t * 100 + 1e-9) / 100
    if how == "direct part":
        x = x + 0.4
    if how == "cut off":
        x = np.clip(x, -10, 10)
    if how == "rectified":
        x = np.abs(x)
    if how.startswith("noise"):  # a share of the highest crest
        x = x + chance.normal(0, float(how.split()[1]) * np.abs(x).max(), len(x))
    return t, x

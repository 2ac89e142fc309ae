"""Runs on drawn values, as several files of properties make them."""

from __future__ import annotations

from typing import Any

from hypothesis import assume

import wirecalc
from wirecalc import BadInput, Finding


def run(name: str, **typed: Any) -> Finding:
    """Run a calculation; what is drawn and contradicts itself is drawn anew."""
    try:
        return wirecalc.run(name, **typed)
    except BadInput:
        assume(False)
        raise


def rank(finding: Finding) -> int:
    """Return how bad the verdict is, a pass the least."""
    assert finding.verdict is not None
    return finding.verdict.rank


def rank_of(name: str, **typed: Any) -> int:
    """Return how bad the verdict of a run is."""
    return rank(run(name, **typed))


def full(number: float, unit: str) -> str:
    """Write a number with all its digits, so that it reads back as the same."""
    return f"{number:.17f} {unit}"

"""After the bleed: volts by the meter, the time that was waited, ratings of the resistor."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    cannot_tell,
    figure,
    put,
)

from .bleed_course import LIVE_V, PROVEN_V, Bleed

# of the volts that must be left, how few a meter may show: a capacitor 20 % under its mark and a
# resistor 10 % under its own bleed in 0.72 of the time; common practice, no source
FAST = 0.72
_AGAIN = "bleed it again: the resistor or a clip may be open; short it only once it is proven"


def after(bleed: Bleed, waited: float | None, left: float | None, before: bool) -> Iterator[Item]:
    """Judge volts that a meter shows after the bleed; `before`: those at its start were read too.

    The meter alone proves it; a time is a plan.
    """
    if waited is not None:
        yield at_least(
            "time of the bleed",
            waited,
            bleed.hold,
            "s",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            advisory=True,
            behind="the volts by the meter, under 5 V",
            says="shorter than five time constants or the time to 5 V",
            action="hold the resistor across it longer, then read it again",
        )
    if left is None:
        return
    yield at_most(
        "volts after the bleed",
        left,
        PROVEN_V,
        "V",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says=f"{LIVE_V:g} V and more count as live" if at_or_above(left, LIVE_V) else "",
        action=_AGAIN,
    )
    if waited is not None and before:
        yield from _too_few(bleed, waited, left)


def _too_few(bleed: Bleed, waited: float, left: float) -> Iterator[Item]:
    """Show what must be left after that time; a meter that shows less is no proof."""
    expected = bleed.start * math.exp(-waited / bleed.constant)
    yield figure(
        "volts left after that time",
        expected,
        "V",
        working=lambda: (
            f"{put(bleed.start, 'V')} x exp(-{put(waited, 's')} / {put(bleed.constant, 's')})"
        ),
    )
    least = bleed.start * math.exp(-waited / (FAST * bleed.constant))
    if not at_or_below(least, PROVEN_V) and not at_or_above(left, least):
        yield cannot_tell(
            "volts fit the time",
            f"{left:.3g} V, and after {waited:.3g} s at least {least:.3g} V must be left",
            measure="the meter on dc volts, on a known source, then on its own terminals again",
            source=PRACTICE,
        )


def rating(start: float, volts: float | None) -> Iterator[Item]:
    """Judge the volts that are printed for the resistor."""
    if volts is not None:
        yield at_least(
            "volts of the resistor",
            volts,
            start,
            "V",
            source=MAKER,
            origin=Origin.MAKER,
            says="of its rating, and the capacitor may have more",
            action="two like it in a row, or one of more volts: past its own it flashes over",
        )


def pulse(energy: float, rated: float | None) -> Iterator[Item]:
    """Judge the energy of the bleed, in J, by what a maker prints for one pulse."""
    if rated is not None:
        yield at_most(
            "energy in the resistor",
            energy,
            rated,
            "J",
            source=MAKER,
            origin=Origin.MAKER,
            action="take one that is made for the pulse, or 20 kohm of 2 W or more",
        )

"""What a recording of this very machine taught, in figures and words."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import Item, answer, cannot_tell, computed, figure

from .fitted_starts import FittedStarts
from .setup import Setup

_RECORDED = computed("fitted-start", "starts of the two-axis model that reproduce the recording")
_WAVE = "record the current's waveform from before the start on: 1000 values a second or more"


def not_fitted(why: str) -> Item:
    """Say why a recording tells nothing of this plate."""
    return cannot_tell("recorded start against this plate", why, measure=_WAVE)


def learnt(setup: Setup, fitted: FittedStarts) -> Iterator[Item]:
    """Yield what the starts that reproduce the recording have in common."""
    yield answer(
        "recorded start", f"{len(fitted.kept)} of {fitted.tried} starts of this plate reproduce it"
    )
    wanted = [("locked-rotor current, learnt", "locked", "A")]
    wanted.append(("time to 80 % of speed, learnt", "speed_time", "s"))
    if all(math.isfinite(one.opened) for one in fitted.kept):
        wanted.append(("start winding out, learnt", "opened", "s"))
    if setup.inertia is None:
        wanted.append(("moment of inertia, learnt", "inertia", "kg m2"))
    elif fitted.told("torque"):
        wanted.append(("torque at standstill, share of rated, learnt", "torque", "%"))
    if setup.load_torque is None and fitted.told("load"):
        wanted.append(("load, share of rated torque, learnt", "load", "%"))
    for name, field, unit in wanted:
        value = float(getattr(fitted.kept[0], field))
        yield figure(name, value, unit, source=_RECORDED, band=fitted.band(field))
    yield from _untold(setup, fitted)


def _untold(setup: Setup, fitted: FittedStarts) -> Iterator[Item]:
    """Say what a current alone does not tell."""
    low, high = fitted.band("torque")
    if setup.inertia is None:
        yield answer(
            "torque at standstill, learnt",
            "cannot tell: the current shows how fast it comes to speed, and twice the torque with "
            f"twice the inertia does so as fast ({low:.0f} to {high:.0f} % of rated reproduce it); "
            "give the inertia",
        )
    elif not fitted.told("torque"):
        said = f"cannot tell: {low:.0f} to {high:.0f} % of rated reproduce the recording"
        more = "; give the load" if setup.load_torque is None else ""
        yield answer("torque at standstill, learnt", said + more)
    if setup.load_torque is None and not fitted.told("load"):
        low, high = fitted.band("load")
        yield answer(
            "load, learnt",
            f"cannot tell: {low:.0f} to {high:.0f} % of rated torque settle within the errors of "
            "what was recorded",
        )

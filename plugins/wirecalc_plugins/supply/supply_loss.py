"""What is lost between the volts at rest and those while the load runs, and what that means."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import PRACTICE, Caution, Item, Origin, at_most, at_or_below, cannot_tell, figure, put

from .path import ADVICE, ADVISED_PCT, TOTAL_PCT
from .volts_left import PlateLimits

LOST = "volts lost with the load, of those at rest"
AT_OUTLET = "volts lost at a full outlet, 12 A or more"
OUTLET_A = 12.0  # 80 % of a 15 A outlet, NEC 210.23(A)(1)
MOST_AT_PLUG_A = 60.0  # the largest receptacle of a house; common practice, no source
TOO_SMALL_PCT = 1.0  # lost at any current; common practice, no source
STOP_PCT = 5.0  # lost of the volts at rest, from where use stops until it is found

_ASK = (
    "ask upstream whether the wire explains it, or a bad joint; if only the meter's error reaches "
    "so far and one meter in one range read both, its percent is the same in both and cancels: for "
    "this question alone leave the percent out of both and keep the counts"
)
_LOOK = (
    "use this outlet for nothing; with the power off look for a browned or loose plug, receptacle "
    "or joint, and ask upstream whether the wire explains it"
)
_STOP = Caution(
    "loss-stop",
    "STOP: what is lost on the way is heat in a wire or a joint, and no breaker sees it. Use the "
    "outlet for nothing until it is found.",
    "electrician",
    "stop",
    "many volts are lost before the outlet",
    in_a_line="a wire or joint heats, no breaker sees it: use the outlet for nothing",
)


def lost_with_load(
    at_rest: float, running: float, current: float | None, limits: PlateLimits
) -> Iterator[Item]:
    """Show and judge what is lost when the load comes on; volts at rest of 0 are a dead outlet."""
    lost = at_rest - running
    yield figure(
        "volts lost when the load comes on",
        lost,
        "V",
        working=lambda: f"{put(at_rest, 'V')} - {put(running, 'V')}",
    )
    if at_rest <= 0:
        return
    share = 100 * lost / at_rest
    if running > 0 and not at_or_below(share, STOP_PCT):
        yield _STOP
    if current is None:
        yield _share_alone(lost, share)
        return
    yield _share(share)
    if running > 0:
        yield from _by_current(at_rest, lost, current, limits)


def _share(share: float) -> Item:
    return at_most(
        LOST,
        share,
        TOTAL_PCT,
        "%",
        caution=ADVISED_PCT,
        source=ADVICE,
        advisory=True,
        behind="the running volts, 90 % of the plate, and as many at 12 A of the outlet",
        says="advice, no rule: 3 % for a branch circuit, 5 % with its feeder",
        action=_ASK,
    )


def _share_alone(lost: float, share: float) -> Item:
    """A loss of unknown current is told only where it is small at any."""
    if at_or_below(share, TOO_SMALL_PCT):
        return _share(share)
    return cannot_tell(
        LOST,
        f"{lost:.3g} V are lost, {share:.2g} %: wire under a heater's current, a bad joint under "
        "a small one, and the current was not given",
        measure="clamp the current of that load (current)",
        needs=("current",),
        source=ADVICE,
    )


def _by_current(at_rest: float, lost: float, current: float, limits: PlateLimits) -> Iterator[Item]:
    """Judge what the same resistance would take at the current that an outlet may be put to."""
    amps, most = max(current, OUTLET_A), max(at_rest - limits.low, 0.0)
    ohm = max(lost, 0.0) / current
    yield figure(
        "resistance of all upstream",
        ohm,
        "ohm",
        working=lambda: f"{put(lost, 'V')} / {put(current, 'A')}",
    )
    yield figure(
        "heat on the way to the outlet",
        max(lost, 0.0) * current,
        "W",
        working=lambda: f"{put(lost, 'V')} x {put(current, 'A')}",
    )
    if not at_or_below(current, MOST_AT_PLUG_A):
        yield cannot_tell(
            AT_OUTLET,
            f"{current:.4g} A is more than any plug of a house carries: a slipped point would hide "
            "a bad joint",
            measure="read the clamp again, around one wire of that load",
            needs=("current",),
            source=PRACTICE,
        )
        return
    yield at_most(
        AT_OUTLET,
        ohm * amps,
        most,
        "V",
        caution=min(TOTAL_PCT / 100 * at_rest, most),
        source=limits.source,
        origin=Origin.MAKER,
        says=f"{ohm:.3g} ohm from the service to here; a house wire has tenths of an ohm",
        action=_ASK if at_or_below(ohm * amps, most) else _LOOK,
    )

"""What cannot be judged as a load on a breaker or fuse: inputs that contradict each other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from wirecalc import PRACTICE, Criterion, Problem, at_or_below, cannot_tell
from wirecalc.trade import overcurrent, trip_curves

from .course import curve_of
from .recorded_course import wrong_course

MOST_A = 2000.0  # more is a short circuit of a house; common practice
LEAST_TIMES = 3.0  # LRA over the settled current of an induction motor; common practice
LOCKED_TIMES = 6.0  # LRA over rated current of single-phase motors, NEC Table 430.251(A)
_STARTED = ("settle_time", "settled", "on_time", "off_time", "starts")


def refuse(**given: Any) -> Iterator[Problem]:
    """Refuse no current or two, starts without their times, a recording or curve that is none."""
    yield from _wrong_choice(given)
    yield from _wrong_starts(given)
    if given.get("recording") is not None:
        yield from wrong_course(given["recording"], given.get("recorded", "auto"))
    if given.get("curve") is not None:
        found = overcurrent.device(given["device"], given["breaker"])
        for row, wrong in trip_curves.wrong_curve(curve_of(given["curve"]), found):
            yield Problem("curve", f"row {row + 2}: {wrong}", "read the maker's curve again")


def _wrong_choice(given: Mapping[str, Any]) -> Iterator[Problem]:
    """A current, the plate's start or a recording: one of them."""
    course, current = given.get("recording"), given.get("overcurrent")
    if course is not None and current is not None:
        yield Problem(
            "overcurrent", "a current and a recording were both given", "give one of them"
        )
    if course is None and current is None and given.get("locked_rotor_current") is None:
        yield Problem(
            "overcurrent", "there is no current to judge", "--overcurrent 20 A, or a --recording"
        )
    if course is not None and given.get("other_current"):
        yield Problem("other_current", "a recording has all loads in it", "leave it out")
    if current is not None and current > MOST_A:
        yield Problem(
            "overcurrent",
            f"{current:g} A is a short circuit: what the device can break counts then",
            f"up to {MOST_A:g} A here; ask short-time what the wire stands",
        )
    typed = [n for n in _STARTED if given.get(n) is not None]
    if typed and (course is not None or current is not None):
        said = "a recording" if current is None else "a current"
        yield Problem(typed[0], f"is part of a start, and {said} was given", "give one of them")


def _wrong_starts(given: Mapping[str, Any]) -> Iterator[Problem]:
    starts = given.get("starts") or 1
    if starts > 1 and given.get("settle_time") is None:
        yield Problem("starts", f"{starts} starts, and how long each lasts is not said", "0.4 s")
    elif starts > 1 and given.get("settled") is not None and given.get("on_time") is None:
        yield Problem("starts", "how long it runs after each is not said", "--on-time 10 min")
    locked, settled = given.get("locked_rotor_current"), given.get("settled")
    if locked is not None and settled is not None and settled > locked:
        yield Problem(
            "settled",
            f"{settled:g} A is above the start current of {locked:g} A",
            "LRA on the plate is several times the running current",
        )


def doubtful_start(
    device: overcurrent.OvercurrentDevice, locked: float, settled: float
) -> Iterator[Criterion]:
    """Question an LRA in A near the settled current, where that of a motor would not be held."""
    of_a_motor = LOCKED_TIMES * settled
    if at_or_below(LEAST_TIMES * settled, locked) or at_or_below(
        of_a_motor, device.most * device.rating
    ):
        return
    yield cannot_tell(
        "LRA beside the settled current",
        f"{locked:.4g} A is {locked / settled:.2g} times the settled {settled:.4g} A, and an "
        f"induction motor takes {LEAST_TIMES:g} times or more at a start",
        measure="read LRA on the label of the compressor or motor itself, not of the cabinet",
        needs=("locked_rotor_current",),
        source=PRACTICE,
    )

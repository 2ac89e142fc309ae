"""The inputs of `instant-trip`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import Nameplate, Problem, Reading, YesNo, asked, extra, instead_of

MOST_A = 5000.0  # 50 times a breaker of 100 A
UL = "ul-489"


def _amperes(text: str, typical: str) -> Reading:
    return Reading("A", above=0, high=MOST_A, typical=typical, text=text, slip_under=1)


def _printed(text: str, typical: str) -> Nameplate:
    return Nameplate("A", above=0, high=MOST_A, typical=typical, text=text)


_RANGE = "without its setting or its maker's curve no current is too low or too high"
OpenedCurrent = Annotated[
    float | None,
    _amperes("least current at which it opened at once, each try from cold", "120 A"),
    asked("what opened it is what is judged", when="not held_current"),
    extra("what it held is judged, and that it opens is not known"),
]
OpeningTime = Annotated[
    float | None,
    Reading(
        "s", above=0, high=60, typical="0.02 s", text="how long opened_current took to open it"
    ),
    asked("from 0.1 s on it is the thermal part that opened it", when="opened_current"),
]
HeldCurrent = Annotated[
    float | None,
    _amperes("highest current below that which it held for 0.1 s", "110 A"),
    asked("between what it held and what opened it lies its trip", when="opened_current"),
    asked("between what it held and what opened it lies its trip", when="not opened_current"),
]
TripSetting = Annotated[
    float | None,
    _printed("setting of an adjustable instantaneous trip", "150 A"),
    asked(_RANGE, when=f"device={UL} and not curve_low"),
]
CurveLow = Annotated[
    float | None,
    _printed("current at which the instantaneous part of its maker's curve begins", "75 A"),
    instead_of("trip_setting"),
]
CurveHigh = Annotated[
    float | None,
    _printed("current at which the instantaneous part of its maker's curve ends", "150 A"),
    asked("a curve has two ends", when="curve_low"),
]
OutOfCircuit = Annotated[
    bool | None,
    YesNo("it is out of its circuit, both sides dead, tested by a person licensed for it"),
    asked("a test set drives hundreds of amperes, and a panel stays live ahead of its main"),
]


def refuse(
    device: str,
    opened_current: float | None,
    held_current: float | None,
    trip_setting: float | None,
    curve_low: float | None,
    curve_high: float | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself, and what has no instantaneous trip."""
    if device != UL and not device.startswith("iec-60898"):
        yield Problem(
            "device", f"{device} has no instantaneous trip", f"{UL} or iec-60898-b, -c, -d"
        )
    marked = [
        name
        for name, value in (("trip_setting", trip_setting), ("curve_low", curve_low))
        if value is not None
    ]
    if device != UL and marked:
        yield Problem(marked[0], f"the letter of {device} is its range", "leave it out")
    elif len(marked) > 1:
        yield Problem("curve_low", "a setting and a curve were both given", "give one of them")
    if curve_low is not None and curve_high is not None and curve_high <= curve_low:
        yield Problem(
            "curve_high",
            f"{curve_high:g} A is not above the {curve_low:g} A at which it begins",
            "read the curve again, or swap them",
        )
    if opened_current is not None and held_current is not None and held_current >= opened_current:
        yield Problem(
            "held_current",
            f"it held {held_current:g} A, and opened at {opened_current:g} A",
            "give the highest that it held below what opened it",
        )

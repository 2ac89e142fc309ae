"""The inputs of `restart-wait`: what leaving each out means, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import Count, Nameplate, OneOf, Problem, Reading, YesNo, asked, extra, may_be_absent

from ..inputs_motor import LOCKED_ROTOR_CURRENT, MOTOR_KIND
from .start_devices import DEVICES

FAILED, TRIPPED, RAN = ENDS = ("failed", "overload", "ran")
CAPILLARY, VALVE = ("capillary", "expansion-valve")

MotorKind = Annotated[str, MOTOR_KIND]
LastStart = Annotated[
    str,
    OneOf(
        ENDS,
        text="how the last start ended. failed: it hummed or stood and was switched off; "
        "overload: its overload opened; ran: it ran and was switched off",
    ),
]
StoodFor = Annotated[
    float | None,
    Reading(
        "min", low=0, high=10_000, typical="6 min", text="how long it has stood since the last try"
    ),
    extra("the wait is worked out; whether it has passed is not judged"),
]
StartDevice = Annotated[
    str | None,
    OneOf(DEVICES, text="kind of start device"),
    extra("the wait of a PTC counts"),
]
Metering = Annotated[
    str | None,
    OneOf(
        (CAPILLARY, VALVE),
        text="how its refrigerant is let through: capillary, a thin tube as in refrigerators; "
        "expansion-valve",
    ),
    asked("behind a valve pressures stay apart", when="motor_kind=compressor"),
]
HighTorque = Annotated[
    bool | None,
    YesNo("it is made to start against pressure (high starting torque, start capacitor and relay)"),
    asked(
        "behind a valve pressures stay apart",
        when="motor_kind=compressor and metering=expansion-valve",
    ),
]
OverloadClosed = Annotated[
    bool | None,
    YesNo("the overload has closed again: it clicked, or reads closed with the power off"),
    asked("time alone does not show it", when="last_start=overload"),
]
FailedStarts = Annotated[
    int | None,
    Count("starts in a row that failed", low=0, high=100),
    asked("each heats a winding that stands still", when="last_start=failed|overload"),
]
MakerWait = Annotated[
    float | None,
    Nameplate("min", above=0, high=240, typical="5 min", text="least stop that its maker asks for"),
    may_be_absent("its maker asks for no stop of its own"),
]
RestartCurrent = Annotated[
    float | None,
    Reading(
        "A",
        low=0,
        high=400,
        typical="1.3 A",
        text="current 3 s after the next start",
        slip_under=0.1,
    ),
    extra("the next start was not read"),
]
LockedRotorCurrent = Annotated[
    float | None,
    LOCKED_ROTOR_CURRENT,
    asked("a locked rotor shows by it", when="restart_current"),
]


def refuse(
    last_start: str,
    failed_starts: int | None,
    restart_current: float | None,
    stood_for: float | None,
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    if last_start == RAN and failed_starts:
        would_do = "say how the last one ended: failed or overload"
        yield Problem("last_start", f"ran, and {failed_starts} failed in a row", would_do)
    if last_start != RAN and failed_starts == 0:
        would_do = "count the last one too"
        yield Problem("failed_starts", f"0, and the last start ended as {last_start}", would_do)
    if restart_current is not None and stood_for is None:
        would_do = "say how long it stood before that start"
        yield Problem("restart_current", "the pause before that start was not given", would_do)

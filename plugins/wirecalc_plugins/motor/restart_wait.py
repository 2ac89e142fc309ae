"""How long a motor or compressor stands before the next start, and a start that came too soon."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    Source,
    at_least,
    at_most,
    at_or_above,
    calculation,
    cannot_tell,
    caution,
    figure,
    put,
    requires,
    tables,
)

from .restart_wait_inputs import (
    RAN,
    TRIPPED,
    VALVE,
    FailedStarts,
    HighTorque,
    LastStart,
    LockedRotorCurrent,
    MakerWait,
    Metering,
    MotorKind,
    OverloadClosed,
    RestartCurrent,
    StartDevice,
    StoodFor,
    refuse,
)
from .start_checks import SHORT_OF_LRA
from .start_devices import RELAYS

PRESSURES_MIN = 5.0  # for pressures to even out through a capillary; common practice, no source
HEAT_MIN = 5.0  # for the heat of a rotor that stood still to go; common practice, no source
MOST_FAILED = 2  # starts in a row, each after the whole wait; common practice, no source

_TEST = "no further start: read windings and case, start device, volts during the start (dip)"


class Wait(NamedTuple):
    """One of the things that must come to rest: least minutes, and whose they are."""

    name: str
    minutes: float
    source: Source


@calculation(
    part="motor and start",
    words=(
        "wait before restart; restart delay; restart; short cycle; short cycling; anti short cycle",
        "how long to wait; let it rest; hot restart; will not restart; hums on restart; PTC hot",
        "PTC cooling; equalize; equalise; pressures equal; pressure equalization; delay timer",
        "power blip; unplugged and plugged in again; starts after a while; overload reset wait",
        "compressor restart; five minutes; 3 minutes; locked on restart; time delay",
        "wait; how soon can I restart; how long off; minutes off; off and on; switch off and on",
        "let it cool; cool before restart; rest time; when can I try again; try again; power cut",
        "after a power cut; tripped restart; minimum off time; delay on make; off cycle",
        "start again; plugged back in; moved the fridge; stand after moving",
        "transport; laid on its side; tipped",
    ),
    go_on="start it once, and read the amps while it starts: inrush",
    cautions=("start-01", "heat-03", "pin-02", "pin-01", "flam-01", "refr-01", "hot-01", "mov-01"),
    not_checked=(
        "a board's own delay: it may wait on for minutes by itself",
        "pressures: only gauges show them, and the sealed system is for licensed persons",
        "how hot the winding is: winding-heat works it out of its ohms",
    ),
    refuse=refuse,
    example_with=(
        "motor_kind=compressor",
        "stood_for",
        "start_device=ptc",
        "metering=capillary",
        "failed_starts=1",
    ),
)
def restart_wait(
    motor_kind: MotorKind,
    last_start: LastStart,
    stood_for: StoodFor = None,
    start_device: StartDevice = None,
    metering: Metering = None,
    high_torque: HighTorque = None,
    overload_closed: OverloadClosed = None,
    failed_starts: FailedStarts = None,
    maker_wait: MakerWait = None,
    restart_current: RestartCurrent = None,
    locked_rotor_current: LockedRotorCurrent = None,
) -> Iterator[Item]:
    """How long must it stand before the next start?

    The longest of what must come to rest, and no less: a PTC, which must cool to the room (5 min,
    one service manual) unless a relay starts it; pressures of a compressor (5 min through a
    capillary, practice; behind an expansion valve they stay apart, and only one of high starting
    torque starts); heat of a failed start (5 min, practice); what its maker asks for. An overload
    must have closed again, in whatever time: an internal one may take 60 min (one manual). Two
    starts in a row that failed are the last (practice). Over 0.7 of LRA 3 s after the next start
    the rotor is locked again: after too short a wait that tells nothing of the motor, after the
    whole one it fails.

    For single-phase motors and small compressors on the line; a drive board has its own delay.
    Inputs: stood_for in min (0 to 10000), maker_wait in min (to 240), currents in A, a count.
    Yields each wait and the longest, criteria. Source: table start-parts, practice.
    """
    waits = _waits(motor_kind, last_start, start_device, maker_wait)
    for wait in waits:
        yield figure(wait.name, wait.minutes, "min", source=wait.source, toward="up")
    longest = max(waits, key=lambda wait: wait.minutes, default=None)
    least = 0.0 if longest is None else longest.minutes
    yield figure(
        "longest wait",
        least,
        "min",
        toward="up",
        working=lambda: (
            "the longest of: " + "; ".join(put(w.minutes, "min") for w in waits)
            if waits
            else "nothing is known that must come to rest"
        ),
    )
    if longest is not None and stood_for is not None:
        yield at_least(
            "time it stood",
            stood_for,
            least,
            "min",
            source=longest.source,
            says=longest.name,
            action="do not start it yet: wait the whole time",
        )
    yield from _overload(last_start, overload_closed)
    if motor_kind == "compressor":
        yield from _pressures(metering, high_torque)
    if failed_starts:
        yield at_most(
            "starts that failed in a row",
            failed_starts,
            MOST_FAILED - 1,
            "starts",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=_TEST,
        )
    if restart_current is not None and locked_rotor_current is not None and stood_for is not None:
        yield _second(restart_current, locked_rotor_current, at_or_above(stood_for, least))


def _waits(kind: str, last: str, device: str | None, maker: float | None) -> list[Wait]:
    """Return what must come to rest before the next start."""
    found = []
    if device not in RELAYS:
        row = tables.load("start-parts").row(
            part="ptc", quantity="wait before a reading", said_by="manual"
        )
        found.append(Wait("wait for a PTC", row.number("least"), row.source))
    if kind == "compressor":
        found.append(Wait("wait for pressures", PRESSURES_MIN, PRACTICE))
    if last != RAN:
        found.append(Wait("wait for the heat of the failed start", HEAT_MIN, PRACTICE))
    if maker is not None:
        found.append(Wait("wait that its maker asks for", maker, MAKER))
    return found


def _overload(last: str, closed: bool | None) -> Iterator[Item]:
    if last != TRIPPED:
        return
    row = tables.load("start-parts").row(
        part="overload", quantity="wait before a reading", said_by="manual"
    )
    yield figure("an internal overload may take", row.number("least"), "min", source=row.source)
    yield caution("cap-01")
    if closed is not None:
        yield requires(
            "overload closed again",
            closed,
            says="its overload is open still, and nothing starts",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action="let it cool, an internal one up to an hour; never bridge it",
        )


def _pressures(metering: str | None, high_torque: bool | None) -> Iterator[Item]:
    if metering == VALVE and high_torque is False:
        yield cannot_tell(
            "pressures at the start",
            "behind an expansion valve they stay apart, and it has low starting torque",
            measure="a licensed person reads the pressures; ask its maker which start kit it has",
            source=PRACTICE,
        )


def _second(current: float, locked: float, waited: bool) -> Item:
    """Judge the next start: a rotor that stands again after the whole wait is no matter of time."""
    name, most = "next start", SHORT_OF_LRA * locked
    if not waited and at_or_above(current, most):
        return cannot_tell(
            name,
            f"{current:.4g} A of {locked:g} A LRA: it was locked again, and started too soon",
            measure="switch off; wait the whole time, and try it once more",
            source=PRACTICE,
        )
    return at_most(
        name,
        current,
        most,
        "A",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says=f"{SHORT_OF_LRA} of LRA: the rotor stands, and it was no matter of time",
        action=f"switch off within 3 s; {_TEST}",
    )

"""What a recording shows beside the starts of its motor: tries that fail, a heater, later rises."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    RecordedColumns,
    answer,
    at_or_below,
    cannot_tell,
    requires,
    show,
)
from wirecalc import not_checked as left_open

from ..motor.plate import LockedRotor
from ..motor.start_checks import SHORT_OF_LRA
from .machine_run import MachineRun
from .plate_view import stays_high
from .starts_listing import seconds_in_words
from .surge import NEAR

FAST_S = 0.1  # readings at least so often show a start; practice
TRIES = 3  # that end high, one after the other, are no chance; practice
FEW_STEPS, SLOW_S = 2.5, 0.5  # a try of a slow log: steps that it lasts, and their least; practice
HEATER_MOST = 0.4  # share of LRA above which it may be a motor that stands; practice


def ends_high(run: MachineRun, least: float, step: float) -> bool:
    """Whether a run is a try that ends at the current of a locked rotor, `least` A.

    In a slow log, with a `step` in s, it is so where it has a reading or two, and one is near it.
    """
    if run.cut_end or run.cut_start:
        return False
    if run.settled is not None:
        return stays_high(run.settled, least)
    short = run.end - run.start <= FEW_STEPS * step and step >= SLOW_S
    return short and stays_high(run.highest, least)


def tries(runs: Sequence[MachineRun], locked: LockedRotor, step: float) -> Iterator[Item]:
    """Say that an overload cycles where several tries end at the current of a locked rotor."""
    high = [r for r in runs if ends_high(r, locked.least, step)]
    if len(high) < 2 or locked.least == 0:
        return
    on = [r.end - r.start for r in high]
    off = [b.start - a.end for a, b in pairwise(high)]
    yield answer(
        "tries",
        f"{len(high)} tries end near locked-rotor current and come again: its overload opens "
        "and closes",
        because=[f"on {_from_to(on)}, off {_from_to(off)}"],
    )
    if len(high) >= TRIES and len(high) == len(runs):
        yield requires(
            "runs after a start",
            False,
            says=f"{len(high)} tries, and after none of them it runs: the rotor is locked, or the "
            "start winding or its device is open",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action="switch it off; read windings and start device, dead and cold",
        )


def _from_to(seconds: Sequence[float]) -> str:
    least, most = seconds_in_words(min(seconds)), seconds_in_words(max(seconds))
    return least if least == most else f"{least} to {most}"


def beside_the_motor(
    runs: Sequence[MachineRun],
    locked: LockedRotor,
    volts: float | None,
    recording: RecordedColumns,
) -> tuple[list[MachineRun], list[Item]]:
    """Return the runs that are starts of the motor, and what is to be said of the others.

    Where a start of the motor was seen, a load that is flat from its first reading is none: a
    motor has a surge. A current that rises while it runs, and not near locked-rotor current, may
    be another load or the motor's own.
    """
    least = SHORT_OF_LRA * locked.least
    started = [r for r in runs if at_or_below(least, r.highest) and r.settle is not None]
    started = [r for r in started if not stays_high(r.settled, locked.least)]
    starts, said = [], []
    for run in runs:
        if not started or run in started or locked.least == 0:
            starts.append(run)
        elif run.rise and not at_or_below(least, run.highest):
            said.append(_rises(run))
        elif recording.overview.step <= FAST_S and _flat(run, HEATER_MOST * locked.least):
            said.append(_heater(run, volts))
        else:
            starts.append(run)
    return starts, said[:3]


def _flat(run: MachineRun, most: float) -> bool:
    """Whether a run holds its level from its first reading on, at or below `most` A."""
    if run.settled is None or not run.calm or run.calm[0].begin[1] > 0:
        return False
    level = run.calm[0].level
    return at_or_below(run.highest, (1 + NEAR) * level) and at_or_below(level, most)


def _rises(run: MachineRun) -> Item:
    return cannot_tell(
        "current that rises later",
        f"at {seconds_in_words(run.start)} it rises to {show(run.highest, 'A')} while it runs: "
        "another load on the wire (a defrost heater, a second motor), or the motor's own load",
        measure="record the motor by itself, one wire in the jaws",
        source=PRACTICE,
    )


def _heater(run: MachineRun, volts: float | None) -> Item:
    level = run.settled or 0.0
    watts = "" if volts is None else f"; at {volts:.4g} V they would be {show(level * volts, 'W')}"
    return left_open(
        f"the load of {show(level, 'A')} from {seconds_in_words(run.start)} on",
        f"it has no surge, as a heater has none and a motor has one{watts}",
    )

"""A start and a settled current against what stands on the plate of the motor or its machine."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    not_checked,
    put,
)

from .plate import LockedRotor
from .settled_checks import LOADED, MCC_OVER_RLA, OVER_RLA, RLA
from .start_checks import SHORT_OF_LRA, expected_start, judge_peak
from .start_seen import SeenStart

_CODE_NEEDS = ("locked_rotor_current", "code_letter", "horsepower", "nameplate_voltage")


def judge_start(start: SeenStart, settled: float | None, frequency: float) -> Iterator[Item]:
    """Say what the start should show and judge its peak; a drive's board limits its own."""
    locked = start.locked
    if start.inverter:
        yield from _driven(start)
    elif locked is None:
        yield cannot_tell(
            "start peak, lower limit",
            "no locked-rotor current and no code letter with hp and volts was given",
            measure="read LRA on the plate of the compressor or motor",
            needs=_CODE_NEEDS,
        )
    else:
        yield from expected_start(locked, frequency)
        yield from judge_peak(locked, start.peak, start.mode, settled)


def _driven(start: SeenStart) -> Iterator[Item]:
    yield not_checked("start current", "the board that drives the motor limits it")
    if start.near and start.peak is not None:
        yield cannot_tell(
            "start of a driven motor",
            f"{start.peak:g} A is near locked-rotor current, which no board lets through",
            measure="see whether a board drives it (three like windings); one wire in the jaws",
            source=PRACTICE,
        )


def settling_shows(locked: LockedRotor | None, rated: float | None, kind: str | None) -> bool:
    """Whether locked-rotor current is well above what a motor may run at; a fan's is not."""
    if locked is None or rated is None or kind == "compressor":
        return True
    return not at_or_below(SHORT_OF_LRA * locked.least, OVER_RLA * rated)


def rated_current(own: float | None, plate: float | None, load: str | None) -> float | None:
    """Return the motor's rated current: its own RLA, else amps of a plate that are the motor's."""
    return plate if own is None and load == "motor" else own


def marks_of(rated: float | None, own: float | None, kind: str | None) -> Iterator[Item]:
    """Yield the marks that a rated current sets."""
    if rated is not None:
        yield figure(
            "idle floor",
            LOADED * rated,
            "A",
            source=PRACTICE,
            working=lambda: f"{LOADED} x {put(rated, 'A')}",
        )
    if own is not None and kind == "compressor":
        yield figure(
            "continuous limit that RLA stands for",
            MCC_OVER_RLA * own,
            "A",
            source=RLA,
            working=lambda: f"{MCC_OVER_RLA} x {put(own)} A; some take 1.56; no expected current",
            toward="down",
        )


def against_the_plate(settled: float, plate: float, load: str | None) -> Item:
    """Judge a settled current by amps that may not be the motor's: they can only be exceeded."""
    name = "settled current, upper limit"
    if at_or_below(settled, OVER_RLA * plate):
        whose = "are a heater's" if load == "heater" else "may be those of its heater"
        return cannot_tell(
            name,
            f"the plate's {plate:g} A {whose}, not the motor's",
            measure="read RLA on the compressor or motor itself",
            needs=("rated_load_current",),
        )
    return at_most(
        name,
        settled,
        OVER_RLA * plate,
        "A",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="more than the whole appliance's plate",
        action="switch off; look for a stuck rotor, low volts, another load on the same wire",
    )

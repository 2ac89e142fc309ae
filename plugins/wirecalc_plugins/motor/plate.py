"""What a motor's plate says: locked-rotor current at the supply's volts, doubts about it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    PLATE,
    PRACTICE,
    Item,
    Origin,
    Problem,
    Source,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    cannot_tell,
)
from wirecalc.trade import motors

from ..inputs_motor import VOLTAGE

PLUG_VOLTS = VOLTAGE.but(goes_with="nameplate_voltage")
ASKS_VOLTS = "on wrong or low volts a good motor starts and runs like a bad one"

SUPPLY = (0.9, 1.1)  # share of plate voltage where it was not measured; makers' sheets
WRONG_SUPPLY = (0.8, 1.2)  # beyond: 64 % of the torque, or saturated iron; practice
LEAST_RATIO, MOST_RATIO = 3.0, 25.0  # locked-rotor over rated current of a compressor; practice


def wrong_plate(rated: float | None, locked: float | None) -> Iterator[Problem]:
    """Yield what is wrong between rated-load and locked-rotor current of a plate."""
    if rated is not None and locked is not None and locked <= rated:
        yield Problem(
            "locked_rotor_current",
            f"{locked:g} A is not above the rated load of {rated:g} A",
            "look at the plate again: LRA is several times RLA",
        )


def judge_plate(rated: float | None, locked: float | None, kind: str | None) -> Iterator[Item]:
    """Question a plate whose locked-rotor and rated current are not those of one compressor."""
    if rated is None or locked is None:
        return
    name, ratio = "locked-rotor over rated current of the plate", locked / rated
    said = f"LRA {locked:g} A is {ratio:.2g} times RLA {rated:g} A"
    if kind != "motor" and not at_or_below(LEAST_RATIO, ratio):
        yield cannot_tell(
            name,
            f"{said}; a compressor has {LEAST_RATIO:g} times and more: amps of the whole cabinet, "
            "or a small fan motor",
            measure="read RLA and LRA on the compressor's own label",
            needs=("motor_kind",) if kind is None else (),
            source=PRACTICE,
        )
    if not at_or_below(ratio, MOST_RATIO):
        yield cannot_tell(
            name,
            f"{said}, over {MOST_RATIO:g} times: a slipped point?",
            measure="read RLA and LRA on the plate again",
            source=PRACTICE,
        )


NO_START = (
    "0 s: every start takes some tenths of a second, so none was seen",
    "watch a start from its first moment, one wire in the jaws; type the error of the watch, as in "
    "0 s ±0.3 s",
)


def judge_volts(voltage: float | None, plate: float | None) -> Iterator[Item]:
    """Judge the volts at the plug, where they are outside what makers allow of the plate's."""
    if voltage is None or plate is None:
        return
    low, high = (share * plate for share in SUPPLY)
    hardly, wrong = (share * plate for share in WRONG_SUPPLY)
    action = "measure the supply with and without the load; is it the plate of this unit?"
    if not at_or_above(voltage, low):
        yield at_least(
            "volts at the plug, lower limit",
            voltage,
            hardly,
            "V",
            caution=low,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="under 90 % of its plate a motor starts badly and overheats, under 80 % hardly",
            action=action,
        )
    if not at_or_below(voltage, high):
        yield at_most(
            "volts at the plug, upper limit",
            voltage,
            wrong,
            "V",
            caution=high,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="over 110 % of its plate a motor runs hot; over 120 % it is the wrong supply",
            action=action,
        )


class LockedRotor(NamedTuple):
    """Locked-rotor current at the supply's voltage, in A; `most` is None where it has no end."""

    least: float
    most: float | None
    source: Source


def locked_rotor(
    current: float | None, letter: str | None, horsepower: float | None, voltage: float | None
) -> LockedRotor | None:
    """Return the plate's locked-rotor current, else that of its code letter, else None."""
    if current is not None:
        return LockedRotor(current, current, PLATE)
    if letter is None or horsepower is None or voltage is None:
        return None
    return LockedRotor(*motors.locked_rotor_band(letter, horsepower, voltage))


def at_supply(locked: LockedRotor, voltage: float | None, plate: float | None) -> LockedRotor:
    """Scale the locked-rotor current with the supply: it goes with the voltage."""
    measured = voltage / plate if voltage is not None and plate is not None else None
    low, high = SUPPLY if measured is None else (measured, measured)
    most = None if locked.most is None else locked.most * high
    return LockedRotor(locked.least * low, most, locked.source)

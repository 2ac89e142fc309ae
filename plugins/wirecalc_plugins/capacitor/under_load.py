"""What a capacitor shows under load: its size, its volts and amps against its rating."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_most,
    at_or_below,
    cannot_tell,
    computed,
    confirmed,
    figure,
    put,
    requires,
)

SAME_VOLTS = 0.02  # volts this near the line's may be the line's: practice
OVER_VOLTAGE, OVER_CURRENT = 1.1, 1.3

UNDER_LOAD = computed("capacitor-under-load", "C = I / (2 pi f V), the capacitor under load")
_OVER = confirmed(
    "iec-60252-1-overload", "IEC 60252-1 as in one data sheet", "1.1 x volts, 1.3 x amps", copies=1
)


def by_load(current: float, voltage: float, frequency: float) -> float:
    """Return the capacitance in uF from amps, volts and Hz."""
    return 1e6 * current / (2 * math.pi * frequency * voltage)


def not_read(current: float | None, voltage: float | None) -> Item:
    """Say what is missing for the capacitance."""
    if current is not None and voltage is not None:
        at_60, at_50 = (by_load(current, voltage, f) for f in (60.0, 50.0))
        return cannot_tell(
            "capacitance under load",
            f"{at_60:.4g} uF at 60 Hz, {at_50:.4g} uF at 50 Hz, and the frequency was not given",
            measure="read the frequency on the plate",
            needs=("frequency",),
        )
    missing = {"capacitor_current": current, "capacitor_voltage": voltage}
    needs = [name for name, value in missing.items() if value is None]
    return cannot_tell(
        "capacitance under load",
        f"not read: {', '.join(needs)}",
        measure="read amps in its own lead and volts across it at one moment, running; or use "
        "a capacitance meter",
        needs=needs,
    )


def not_marked() -> Item:
    """Say that the mark is missing."""
    return cannot_tell(
        "marked capacitance",
        "it was not given",
        measure="read it on the part or on the wiring diagram",
        needs=("marked_capacitance",),
    )


def line_volts(across: float, line: float | None, on_it: bool | None) -> Iterator[Item]:
    """Volts across a run capacitor mostly differ from the line's; the same may be the line's."""
    same = line is not None and at_or_below(abs(across - line), SAME_VOLTS * line)
    if on_it is False or (same and on_it is None):
        why = f"{across:.4g} V is the line's {line:.4g} V within 2 %" if same else "it was said so"
        yield cannot_tell(
            "volts across the capacitor",
            f"{why}: probably not read across it",
            measure="put both probes on its own terminals, and say probes_on_capacitor yes",
            needs=("probes_on_capacitor",) if on_it is None else (),
        )
    elif line is not None and on_it is None:  # a band that reaches from one side to the other
        side = "above" if across > line else "below"  # has a run without this criterion
        name = f"volts across the capacitor, {side} the line's"
        yield requires(name, True, says="", source=PRACTICE, origin=Origin.PRACTICE)


def stress(
    read: tuple[float | None, float | None],
    rating: float,
    marked: float | None,
    frequency: float | None,
) -> Iterator[Item]:
    """Hold the running volts and amps against what IEC 60252-1 lets a run capacitor take."""
    current, voltage = read
    if voltage is not None:
        yield at_most(
            "volts against its rating",
            voltage,
            OVER_VOLTAGE * rating,
            "V",
            caution=rating,
            source=_OVER,
            action="fit the voltage of the wiring diagram; is it on the right winding?",
        )
    if current is not None and marked is not None and frequency is not None:
        rated = 2 * math.pi * frequency * marked * 1e-6 * rating
        yield figure(
            "rated current",
            rated,
            "A",
            source=UNDER_LOAD,
            working=lambda: (
                f"2 x pi x {put(frequency, 'Hz')} x {put(marked, 'uF')} / 10^6 x {put(rating, 'V')}"
            ),
        )
        yield at_most(
            "amps against its rating",
            current,
            OVER_CURRENT * rated,
            "A",
            source=_OVER,
            action="check the supply's frequency and volts, and the marked size",
        )

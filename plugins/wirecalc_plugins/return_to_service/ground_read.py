"""A ground path as it was read: by a known current, or by an ohmmeter."""

from __future__ import annotations

from collections.abc import Generator

from wirecalc import (
    PRACTICE,
    Bands,
    Item,
    at_or_below,
    cannot_tell,
    caution,
    not_checked,
)

from .ground_limits import NAME
from .ground_path import (
    ONE_A,
    Meter,
    ReadPath,
    by_current,
    by_ohmmeter,
    shown_by_current,
    shown_by_ohmmeter,
)
from .ground_refusals import LOW_VOLTAGE

LEAST_PATH_MOHM = 0.1  # 3 cm of 10 AWG without a joint have it; common practice


def read_by_current(
    amps: float, millivolts: float | None, ohmmeter: float | None, bands: Bands
) -> Generator[Item, None, ReadPath | None]:
    """Yield what a known current shows of the path, and return it; None without its drop."""
    yield LOW_VOLTAGE
    yield caution("flam-01")
    if millivolts is None:
        return None
    path = by_current(amps, millivolts, bands)
    yield shown_by_current(path, amps, millivolts)
    if millivolts < LEAST_PATH_MOHM * amps:
        yield cannot_tell(
            "drop across the path",
            "no path has so little: the current is not in it, the probes are on one point, or "
            "volts were typed as millivolts",
            measure="look where the current flows and where the probes are, and read again",
            source=PRACTICE,
        )
    if not at_or_below(ONE_A, amps):
        yield cannot_tell(
            "test current",
            f"{amps:g} A crosses a bond of few strands as if it were whole",
            measure=f"send {ONE_A:g} A or more, from a low-voltage source of 12 V at most",
            source=PRACTICE,
        )
    if ohmmeter is not None:
        yield not_checked("the ohmmeter's reading", "the current and its drop are judged")
    return path


def read_by_ohmmeter(
    reading: float | None, leads: float | None, meter: Meter, bands: Bands
) -> Generator[Item, None, ReadPath | None]:
    """Yield what an ohmmeter shows of the path, and return it; None where it was not read."""
    if reading is None:
        yield cannot_tell(
            NAME,
            "the path was not read",
            measure="unplug it; touch the leads together and read them, then case to ground",
            needs=("ground_resistance",),
        )
        return None
    path = by_ohmmeter(reading, leads, meter, bands)
    if leads is not None:
        yield shown_by_ohmmeter(path, reading, leads)
    return path

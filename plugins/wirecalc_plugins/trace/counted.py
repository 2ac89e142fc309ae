"""What is counted in a recording: volts while it ran, cycles, time on, energy."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, figure, not_checked, put

from .analysis import POWER, Analysis, whole_cycles
from .machine_run import MachineRun

_SURELY = 2.5  # steps that a time on or off must last to be seen each time; practice


def volts(found: Analysis, main: MachineRun | None) -> Iterator[Item]:
    """Yield the volts that were recorded while it ran."""
    levels = [run.volts for run in found.runs if run.volts is not None]
    if levels and main is not None and main.volts is not None:
        yield figure(
            "volts while it runs",
            main.volts[1],
            "V",
            working=lambda: "the median of the volts in the settled part",
        )
        yield figure(
            "lowest volts while it is on",
            min(low for low, _ in levels),
            "V",
            working=lambda: "the lowest volts in the recording while it is on",
        )


def cycles(found: Analysis, step: float) -> Iterator[Item]:
    """Yield what the whole cycles come to: those with their start and their end.

    Each time on and off of a log is known to a step, in s, and cycles that are alike may all be off
    to the same side.
    """
    whole = whole_cycles(found.runs)
    if not whole:
        return
    on, off = sum(c.on for c in whole), sum(c.off for c in whole)
    each = len(whole)
    blur = step if found.wave is None else 0.0
    moved = each * blur
    said = "counted: on from its start to its end, and off until the next start"
    if min(min(c.on, c.off) for c in whole) < _SURELY * blur:
        yield figure("whole cycles, at least", each, working=lambda: said)
        yield not_checked(
            "cycles that lie between two readings",
            f"some are as short as its steps of {step:.3g} s: more may have been missed",
        )
    else:
        yield figure("whole cycles", each, working=lambda: said)
        yield figure(
            "mean time on",
            on / each,
            "s",
            band=_band(on / each, moved / each),
            working=lambda: f"{put(on, 's')} / {each}",
        )
        yield figure(
            "mean time off",
            off / each,
            "s",
            band=_band(off / each, moved / each),
            working=lambda: f"{put(off, 's')} / {each}",
        )
        yield figure(
            "cycles an hour",
            3600 * each / (on + off),
            band=_band(3600 * each / (on + off), 3600 * each * blur / (on + off) ** 2),
            working=lambda: f"3600 s x {each} / ({put(on, 's')} + {put(off, 's')})",
        )
    yield figure(
        "duty of the whole cycles",
        100 * on / (on + off),
        "%",
        band=_band(100 * on / (on + off), 100 * moved / (on + off)),
        working=lambda: f"100 x {put(on)} s / ({put(on)} s + {put(off)} s)",
    )


def _band(value: float, off: float) -> tuple[float, float] | None:
    return (max(value - off, 0.0), value + off) if off else None


def shares(found: Analysis, kind: str) -> Iterator[Item]:
    """Yield what share of the recorded time it was on, and the energy of a power log."""
    if found.begun and found.recorded > 0:
        running = sum(run.end - run.start for run in found.runs)
        recorded = found.recorded
        yield figure(
            "on, of the recorded time",
            100 * running / recorded,
            "%",
            working=lambda: f"100 x {put(running, 's')} / {put(recorded, 's')}",
        )
    if kind == POWER and found.recorded > 0:
        kwh, time = found.energy / 3.6e6, found.recorded
        yield figure(
            "energy recorded",
            kwh,
            "kWh",
            working=lambda: "the sum of power times time of every reading",
        )
        yield figure(
            "energy a day at this rate",
            kwh * 86400 / time,
            "kWh",
            working=lambda: f"{put(kwh, 'kWh')} x 86400 s / {put(time, 's')}",
        )

"""What is counted in a recording: volts while it ran, cycles, time on, energy."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, figure, put

from .analysis import POWER, Analysis, whole_cycles
from .machine_run import MachineRun


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


def cycles(found: Analysis) -> Iterator[Item]:
    """Yield what the whole cycles come to: those with their start and their end."""
    whole = whole_cycles(found.runs)
    if whole:
        on, off = sum(c.on for c in whole), sum(c.off for c in whole)
        each = len(whole)
        said = "counted: on from its start to its end, and off until the next start"
        yield figure("whole cycles", each, working=lambda: said)
        yield figure("mean time on", on / each, "s", working=lambda: f"{put(on, 's')} / {each}")
        yield figure("mean time off", off / each, "s", working=lambda: f"{put(off, 's')} / {each}")
        yield figure(
            "duty of the whole cycles",
            100 * on / (on + off),
            "%",
            working=lambda: f"100 x {put(on)} s / ({put(on)} s + {put(off)} s)",
        )
        yield figure(
            "cycles an hour",
            3600 * each / (on + off),
            working=lambda: f"3600 s x {each} / ({put(on, 's')} + {put(off, 's')})",
        )


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

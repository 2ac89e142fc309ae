"""What a recording shows: its kind, its runs, its highest values, duty and energy."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from wirecalc import RecordedColumns

from . import frames as recordings
from . import machine_run, rms_levels
from . import machine_runs as starts
from . import on_off as levels
from .stamps import Clock, clock_of
from .wave_survey import waveform as waveform_of
from .zero_drift import zero_drift

if TYPE_CHECKING:
    from .rms_levels import LevelPoints

INSTANT, RMS, POWER = "instantaneous", "rms", "power"
SLOWEST_S = 0.005  # between instantaneous values; four a cycle of 50 Hz
CREST_SAMPLES = 10  # a cycle; fewer miss more than 5 % of a crest
BEGINS_IN = 1.5  # times the settled level at which a recording begins within a start; practice


class Analysis(NamedTuple):
    """What was found. `highest` is the highest one-cycle rms, reading or power.

    `wave` is None for a log; `flat` is how many samples in a row a clipped top has; `recorded` the
    time in s without gaps, `on` the time in s that it is on, `energy` in Ws for a power log.
    """

    kind: str
    wave: recordings.Waveform | None
    switch: levels.Switch
    runs: tuple[machine_run.MachineRun, ...]
    highest: float
    flat: int
    recorded: float
    gaps: int
    energy: float
    crest: float = 0.0  # the highest instantaneous current, where one was recorded
    peaks: bool = False  # a log has the recorder's own peak of each reading

    @property
    def mode(self) -> str:
        """How a meter would have taken the highest current of a start."""
        if self.kind == INSTANT and not self.flat:
            return "inrush"
        return "peak-hold" if self.peaks else "max-hold"

    @property
    def begun(self) -> list[machine_run.MachineRun]:
        """The runs whose start was recorded."""
        return [run for run in self.runs if not run.cut_start]


class Cycle(NamedTuple):
    """A whole time on and the pause after it, in s."""

    on: float
    off: float


def kind_of(recording: RecordedColumns, said: str) -> tuple[str, list[str]]:
    """Return what was recorded, and the evidence."""
    over, head = recording.overview, recording.heads[0]
    if said != "auto":
        return said, ["as typed"]
    if recording.columns[0] == "power":
        return POWER, [f"column {head} is in units of power"]
    if "rms" in head.casefold():
        return RMS, [f"column {head} says rms"]
    step = over.step if not over.repeats or over.low[0] >= 0 else clock_of(recording).step
    if over.low[0] < 0 and step <= SLOWEST_S:
        return INSTANT, ["values on both sides of zero", f"{1 / step:.4g} a second"]
    seen = waveform_of(recording, clock_of(recording)) if step <= SLOWEST_S else None
    if seen is not None and seen.rectified:
        return INSTANT, ["a rectified waveform: one side of zero", f"{1 / step:.4g} a second"]
    if seen is not None and seen.frequency is not None:
        return INSTANT, [f"waves of {seen.frequency:.4g} Hz", f"{1 / step:.4g} a second"]
    return RMS, ["no value below zero", f"one reading in {over.step:.3g} s"]


def analyse(recording: RecordedColumns, kind: str) -> Analysis:
    """Go through the recording: frequency, then levels, then runs."""
    waveform = kind == INSTANT
    wave = waveform_of(recording, clock_of(recording)) if waveform else None
    if wave is not None:
        wave = wave._replace(drift=zero_drift(recording, wave))
    flat = recordings.flat_top(recording, wave) if wave is not None else 0
    histogram, highest, crest = levels.Histogram(), 0.0, 0.0
    for points in _points(recording, wave):
        histogram.add(points.level)
        highest = max(highest, points.highest)
        if points.crest is not None:
            crest = max(crest, float(points.crest.max(initial=0.0)))
    switch = histogram.switch(log=not waveform)
    over = recording.overview
    width = wave.per_cycle * wave.clock.step if wave is not None else over.step
    doubt = wave.doubt if wave is not None else 0.0
    finder = starts.Finder(
        switch, width, waveform=waveform, rises=kind != POWER, doubt=doubt, wave=wave
    )
    if wave is not None:
        highest = math.sqrt(max(highest**2 - wave.noise**2, 0.0))
    runs: list[machine_run.MachineRun] = []
    for points in _points(recording, wave):
        runs.extend(finder.add(points))
    runs.extend(finder.close(cut=True))
    clock = None if wave is None else wave.clock
    recorded, gaps, energy = _covered(recording, clock, power=kind == POWER)
    seen = recorded, gaps, energy, crest, recording.place("peak") is not None and not waveform
    return Analysis(kind, wave, switch, tuple(runs), highest, flat, *seen)


def _points(recording: RecordedColumns, wave: recordings.Waveform | None) -> Iterator[LevelPoints]:
    if wave is not None:
        return rms_levels.cycles(recording, wave)
    return rms_levels.readings(recording)


def _covered(
    recording: RecordedColumns, clock: Clock | None, *, power: bool
) -> tuple[float, int, float]:
    """Return the time that is covered, the gaps, and the integral of a power (trapezoids)."""
    import numpy as np  # dear to load, and only a recording needs it

    over = recording.overview
    if not power and over.longest <= recordings.gap_of(recording, clock):
        return over.last - over.first, 0, 0.0
    covered, gaps, energy = 0.0, -1, 0.0
    last: tuple[float, float] | None = None
    for frame in recordings.frames(recording, clock):
        t, x = frame.t, frame.values[0]
        if frame.fresh or last is None:
            gaps += 1
        else:
            covered += float(t[0]) - last[0]
            energy += (float(t[0]) - last[0]) * (float(x[0]) + last[1]) / 2
        covered += float(t[-1] - t[0])
        energy += float(((x[1:] + x[:-1]) * np.diff(t)).sum()) / 2 if power else 0.0
        last = (float(t[-1]), float(x[-1]))
    return covered, gaps, energy


def whole_cycles(runs: Sequence[machine_run.MachineRun]) -> list[Cycle]:
    """Return the cycles of which neither start nor end nor pause is cut."""
    joined: list[machine_run.MachineRun] = []
    for run in runs:  # a further start during a run is the same time on
        if run.rise and joined:
            joined[-1] = joined[-1]._replace(end=run.end, cut_end=run.cut_end)
        else:
            joined.append(run)
    return [
        Cycle(run.end - run.start, after.start - run.end)
        for run, after in pairwise(joined)
        if not (run.cut_start or run.cut_end or after.cut_start or after.gap_before)
    ]

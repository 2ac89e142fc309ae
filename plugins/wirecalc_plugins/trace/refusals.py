"""Recordings that cannot be what they are said to be."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Problem, RecordedColumns

from .analysis import INSTANT, POWER, RMS, SLOWEST_S, kind_of
from .stamps import clock_of


def wrong_recording(recording: RecordedColumns, recorded: str) -> Iterator[Problem]:
    """Yield what is wrong between the values and what they are said to be."""
    over = recording.overview
    kind, _ = kind_of(recording, recorded)
    unit = recording.store.layout.kinds[0].unit
    if (kind == POWER) != (recording.columns[0] == POWER):
        head = recording.heads[0]
        yield Problem("recorded", f"the column {head} is in {unit}", "take --recorded auto")
        return
    if over.low[0] == over.high[0] == 0:
        yield Problem("recording", "every value is zero", "close the jaws around one wire")
    clock = clock_of(recording) if kind == INSTANT else None
    if clock is not None and clock.step > SLOWEST_S:
        yield Problem(
            "recording",
            f"one instantaneous value in {clock.step:.3g} s shows no cycle of the mains",
            "record 1000 a second or more, or rms values",
        )
    elif clock is not None and clock.vague:
        yield Problem(
            "recording",
            f"{over.repeats} rows of a waveform have the time of the row before, and {clock.ticks} "
            "ticks of its clock do not tell how fast it was sampled",
            "write the time with more decimals",
        )
    if kind == RMS and over.low[0] < -0.02 * over.high[0]:
        yield Problem(
            "recording",
            f"a value of {over.low[0]:g} {unit} is no rms",
            "say --recorded instantaneous, or record faster",
        )

"""The figures of a waveform: its frequency, its direct part, its highest values."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import Item, RecordedColumns, cannot_tell, computed, figure, not_checked, show

from .analysis import CREST_SAMPLES, Analysis
from .frames import SURGE_S, Waveform
from .judge import banded
from .plate_view import Ends

CREST_NOISE = 4.0  # times its rms by which noise makes a crest higher; practice
_COUNTED = computed("recording", "worked out from the recording")


def mains(wave: Waveform, highest: float, unit: str) -> Iterator[Item]:
    """Yield the frequency, the readings a cycle and the direct part of a waveform."""
    if wave.rectified:
        yield cannot_tell(
            "mains frequency",
            "a rectified waveform has one side of zero only: neither the frequency nor a crest "
            "is told from it, and its rms is over one cycle",
            measure="record the current itself, both sides of zero",
        )
    elif wave.frequency is not None:
        yield figure(
            "mains frequency",
            wave.frequency,
            "Hz",
            source=_COUNTED,
            band=_spread(wave.frequency, 3 * wave.scatter),
            working=lambda: "counted from crossing to crossing, over the whole steady part",
        )
        yield figure(
            "readings a cycle",
            wave.per_cycle,
            working=lambda: "the readings from crossing to crossing, on average",
        )
    else:
        seen = wave.apparent
        said = "no steady cycle" if seen is None else f"{show(seen, 'Hz')} is no mains"
        yield cannot_tell(
            "mains frequency",
            f"{said}; rms is over 100 ms" + ("; folded by too few readings?" if seen else ""),
            measure="record faster, and for longer than a second",
        )
    off = "with nothing on" if wave.from_off else "over whole cycles"
    yield figure(
        "direct part, taken off",
        wave.offset,
        unit,
        band=(min(wave.drift[1]), max(wave.drift[1])) if wave.drift[0] else None,
        working=lambda: f"the mean of the readings {off}",
    )
    if not wave.from_off and abs(wave.offset) > 0.02 * highest:
        yield not_checked(
            "whether the direct part is the clamp's or the load's",
            "record some time with it off",
        )


def _spread(value: float, share: float) -> tuple[float, float] | None:
    return (value * (1 - share), value * (1 + share)) if share else None


def highest(recording: RecordedColumns, found: Analysis, ends: Ends) -> Iterator[Item]:
    """Yield the highest values of a waveform; one that is rectified shows no crest."""
    wave, over = found.wave, recording.overview
    if wave is None:
        return
    if not wave.rectified:
        crest = max(abs(over.high[0] - wave.offset), abs(over.low[0] - wave.offset))
        crest = found.crest if wave.drift[0] else crest
        # the nearest reading may stand half a step beside the crest of a sine, a step in a hole
        missed, beside = 1.0, 1.0 if wave.clock.holes or wave.clock.jitter else 0.5
        if wave.per_cycle >= CREST_SAMPLES and wave.frequency is not None:
            missed = 1 / math.cos(2 * math.pi * beside / wave.per_cycle)
        said = "the reading farthest from the direct part"
        meter = ends._replace(doubt=0.0, blur=0.0)
        least = max(0.0, 1 - CREST_NOISE * wave.noise / crest) if crest else 1.0
        yield banded(
            "highest instantaneous current", crest, meter, said, missed=missed, least=least
        )
    said = "the root of the mean square over one cycle, at its highest"
    cycle, off = wave.per_cycle * wave.clock.step, wave.trapezoids
    yield banded("highest one-cycle rms", found.highest, ends, said, off=off, seconds=cycle)
    surges = [run.surge for run in found.begun if run.surge is not None]
    if surges:
        said = "the root of the mean square over the first 100 ms of a start, the highest"
        more = {"off": wave.begins, "seconds": SURGE_S}
        yield banded("highest 100 ms rms from a start", max(surges), ends, said, **more)

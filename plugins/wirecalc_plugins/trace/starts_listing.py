"""The times on that a recording shows, a row each, and lengths of time as they are written."""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import Item, RecordedColumns, listing, show

from .analysis import Analysis
from .frames import Waveform
from .machine_run import MachineRun

MOST_ROWS = 20  # starts that are listed


def starts(recording: RecordedColumns, found: Analysis, unit: str) -> Item:
    """List the times on of a recording, the first of them."""
    runs = found.runs
    rows = [_row(run, recording, found, unit) for run in runs[:MOST_ROWS]]
    title = "On" if len(runs) <= MOST_ROWS else f"On, the first {MOST_ROWS} of {len(runs)}"
    if found.wave is None:
        peak = ("peak",) if found.peaks else ()
        head: Sequence[str] = (
            *("from", "until", "time on", "highest"),
            *peak,
            *("settled", "surge", ""),
        )
    else:
        head = ("from", "time on", "crest", "100 ms", "settled", "surge", "")
    return listing(title, head, rows)


def _row(run: MachineRun, recording: RecordedColumns, found: Analysis, unit: str) -> Sequence[str]:
    settled = "" if run.settled is None else show(run.settled, unit)
    settle = "" if run.settle is None or run.cut_start else settling_in_words(run.settle)
    cut = [w for w, is_ in (("begins", run.cut_start), ("ends", run.cut_end)) if is_]
    quiet = "a rise" if run.rise else "after a gap" if run.gap_before else ""
    note = f"{' and '.join(cut)} unseen" if cut else quiet
    start, end = _time(run.start, recording, found), _time(run.end, recording, found)
    on = seconds_in_words(run.end - run.start)
    crest = "" if run.crest is None else show(run.crest, unit)
    if found.wave is None:
        peak = (crest,) if found.peaks else ()
        return (start, end, on, show(run.highest, unit), *peak, settled, settle, note)
    surge = "" if run.surge is None else show(run.surge, unit)
    return (start, on, crest, surge, settled, settle, note)


def _time(when: float, recording: RecordedColumns, found: Analysis) -> str:
    if not recording.clock:
        return f"{when:.3f} s" if found.wave is not None else f"{show(when)} s"
    day, rest = divmod(when, 86400)
    minutes, seconds = divmod(rest, 60)
    fine = f"{seconds:06.3f}" if found.wave is not None else f"{seconds:02.0f}"
    later = f" +{day:.0f} d" if day else ""
    return f"{minutes // 60:02.0f}:{minutes % 60:02.0f}:{fine}{later}"


def settling_in_words(settle: tuple[float, float, float]) -> str:
    """Write a time to settle with what the sampling leaves open."""
    _, low, high = settle
    middle, off = (low + high) / 2, (high - low) / 2
    return f"{show(middle, digits=3)} s ±{show(off, digits=2, toward='up')} s"


def seconds_in_words(seconds: float) -> str:
    """Write a length of time in s, min or h."""
    if seconds < 600:
        return show(seconds, "s")
    return f"{show(seconds / 60)} min" if seconds < 36_000 else f"{show(seconds / 3600)} h"


def stamps_in_words(wave: Waveform | None, repeats: int) -> list[str]:
    """Say what the stamps of a recording are like, where they are not even."""
    if wave is None or not wave.clock.coarse:
        said = [f"{repeats} rows repeat the time before"] if repeats else []
    else:
        said = [
            f"{repeats} rows repeat the time before: the rate was worked out from "
            f"{wave.clock.ticks} ticks of its clock"
        ]
    if wave is not None and wave.clock.missing:
        lacks, holes = wave.clock.missing, wave.clock.holes
        said.append(
            f"{lacks} reading{'s' * (lacks > 1)} missing in {holes} hole{'s' * (holes > 1)}: "
            "single ones are bridged, what a longer one touches is left out"
        )
    if wave is not None and wave.clock.jitter:
        said.append(f"its stamps jitter by {wave.clock.jitter:.0%} of a step")
    if wave is not None and wave.drift[0]:
        low, high = (show(f(wave.drift[1]), "A") for f in (min, max))
        said.append(f"its zero drifts, from {low} to {high}: taken off as it drifts")
    if wave is not None and wave.noise:
        said.append(f"noise of {show(wave.noise, 'A')} rms with nothing on, taken off every rms")
    return said

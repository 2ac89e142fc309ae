"""The report of a recording: what was found, what cannot be seen, and how to go on."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    RecordedColumns,
    answer,
    cannot_tell,
    chart,
    show,
)

from .after_start import after_the_start
from .analysis import POWER, Analysis, analyse, kind_of
from .chart import trace_chart
from .counted import cycles, shares, volts
from .judge import banded, judged, running
from .machine_run import MachineRun
from .next_commands import cycles_on, go_on
from .plate_doubt import scale_doubted
from .plate_view import Ends, TracePlate, as_shown
from .starts_listing import seconds_in_words, stamps_in_words, starts
from .unseen import FASTER, unseen, untold
from .wave_figures import highest, mains


class Report:
    """One recording, at the centre and the ends of the meter's band."""

    def __init__(
        self, recording: RecordedColumns, low: RecordedColumns, high: RecordedColumns, said: str
    ) -> None:
        self.recording, self.ends = recording, Ends(low, recording, high)
        self.kind, self.because = kind_of(recording, said)
        self.found: Analysis = analyse(recording, self.kind)
        wave = self.found.wave
        if wave is not None:
            self.ends = self.ends._replace(doubt=wave.doubt, blur=wave.blur(1.0))
        self.unit = recording.store.layout.kinds[0].unit
        runs = self.found.begun or list(self.found.runs)
        self.main: MachineRun | None = max(runs, key=lambda r: r.highest, default=None)

    def items(self, plate: TracePlate) -> Iterator[Item]:
        """Yield all that is to be said; volts and frequency are those of the recording."""
        found = self.found
        frequency = found.wave.frequency if found.wave is not None else None
        at = plate.voltage
        if self.main is not None and self.main.volts:
            at = self.main.volts[1]
        plate = plate._replace(voltage=at, frequency=frequency or 60.0)
        if self.kind != POWER:
            step = self.recording.overview.step
            shown = tuple(as_shown(run, plate, step) for run in found.runs)
            self.found = found._replace(runs=shown)
            self.main = None if self.main is None else as_shown(self.main, plate, step)
        yield self._what()
        step = self.recording.overview.step
        counts = [*cycles(self.found, step), *shares(self.found, self.kind)]
        if found.wave is None:
            yield from counts
        yield from self._highest()
        yield from self._start(plate)
        yield from volts(self.found, self.main)
        if found.wave is not None:
            yield from counts
        yield from unseen(self.recording, self.found, plate)
        if plate.known and self.kind != POWER and found.begun:
            yield from scale_doubted(self.found.begun, plate, self.recording)
            yield from judged(self.found.begun, plate, self.ends, found.mode)
        elif plate.known:
            why = "a power log has no current" if self.kind == POWER else "no start was recorded"
            yield cannot_tell("start against the plate", why, measure=FASTER)
            if self.kind != POWER:
                yield from running(self.found.runs, plate, self.ends)
        yield starts(self.recording, self.found, self.unit)
        if self.main is not None and self.kind != POWER and not self.main.cut_start:
            yield go_on(self.main, plate, self.ends, found.mode)
        yield from cycles_on(self.found, plate, self.ends)
        yield chart(lambda: trace_chart(self.recording, found, self.main, plate, self.unit))

    def _what(self) -> Item:
        over, found = self.recording.overview, self.found
        step = over.step if found.wave is None else found.wave.clock.step
        each = f"{1 / step:.4g} a second" if step < 0.5 else f"one in {step:.3g} s"
        lasts = seconds_in_words(over.last - over.first)
        said = f"{self.kind}, {over.rows} values in {lasts}, {each}"
        counted = len(found.begun)
        begun = f"{counted} start{'s' * (counted != 1)}" if counted else "no start"
        evidence = [*self.because, *stamps_in_words(found.wave, over.repeats)]
        if found.switch.high > 0:
            low, high = show(found.switch.low, self.unit), show(found.switch.high, self.unit)
            evidence.append(f"off about {low}, on about {high}")
        if found.gaps:
            evidence.append(f"{found.gaps} gap{'s' * (found.gaps > 1)}, not bridged")
        return answer("recording", f"{said}; {begun}", because=evidence)

    def _highest(self) -> Iterator[Item]:
        found, over = self.found, self.recording.overview
        if found.wave is None:
            said = "the highest in the recording"
            yield banded("highest reading", found.highest, self.ends, said)
            if found.peaks:
                said = "the highest of the recorder's own peaks"
                yield banded("highest instantaneous current", found.crest, self.ends, said)
        elif not found.runs and found.highest == 0:
            why = f"{seconds_in_words(over.last - over.first)} show no whole cycle"
            yield cannot_tell("length of the recording", why, measure="record a second or more")
        else:
            yield from mains(found.wave, found.highest, self.unit)
            yield from highest(self.recording, found, self.ends)

    def _start(self, plate: TracePlate) -> Iterator[Item]:
        run = self.main
        if run is None:
            return
        one = "" if len(self.found.runs) == 1 else ", highest start"
        yield from after_the_start(run, self.ends, one)
        if run.settled is None:
            why = "its last quarter does not stay within 10 %"
            yield from untold(
                f"settled level{one}", why, "record until it runs steadily", needed=plate.known
            )

"""What a recording cannot show, with the least that it does show."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, RecordedColumns, cannot_tell, not_checked, show

from .analysis import BEGINS_IN, CREST_SAMPLES, POWER, RMS, Analysis
from .plate_view import TracePlate

FASTER = "record the start at 1000 readings a second or more, or with the inrush function"
_CREST = "highest instantaneous current"
LEAST_CREST = 1.2  # crest over rms of what a mains load draws, at least; practice


def untold(name: str, why: str, measure: str, *, needed: bool) -> Iterator[Item]:
    """Yield what cannot be told; where nothing that was asked needs it, that it was not checked."""
    if needed:
        yield cannot_tell(name, why, measure=measure)
    else:
        yield not_checked(name, why)


def unseen(recording: RecordedColumns, found: Analysis, plate: TracePlate) -> Iterator[Item]:
    """Say what the recording cannot show.

    A crest is needed where a breaker is asked about and no plate says what the start may draw.
    """
    least = show(found.highest, recording.store.layout.kinds[0].unit, toward="down")
    if found.kind == POWER:
        yield from untold(
            "current of the start",
            f"a power log has no current and no power factor; the power was at least {least}",
            "record the current",
            needed=plate.known,
        )
    elif found.peaks:
        yield from _peaks(found)
    elif found.kind == RMS:
        yield from untold(
            _CREST,
            f"one reading in {recording.overview.step:.3g} s shows no crest; it was at least "
            f"{least}",
            FASTER,
            needed=plate.breaker is not None and plate.locked is None,
        )
    else:
        yield from _crest(recording, found, least)
    for run in found.runs[:1]:
        begins = run.settled is not None and run.first > BEGINS_IN * run.settled
        if run.cut_start and begins:
            unit = recording.store.layout.kinds[0].unit
            yield from untold(
                "start at the beginning",
                f"the recording begins within a start; at least {show(run.highest, unit)}",
                "begin to record before it is switched on",
                needed=plate.known,
            )


def _peaks(found: Analysis) -> Iterator[Item]:
    """Doubt peaks that lie too near their rms to be those of a current."""
    if found.crest < LEAST_CREST * found.highest:
        yield cannot_tell(
            _CREST,
            f"its peaks reach {show(found.crest, 'A')} and its rms {show(found.highest, 'A')}: no "
            "current has so low a crest, so they are no instantaneous values",
            measure="see in the recorder's sheet what its peak is",
        )


def _crest(recording: RecordedColumns, found: Analysis, least: str) -> Iterator[Item]:
    over, wave = recording.overview, found.wave
    crest = show(max(over.high[0], -over.low[0]), "A", toward="down")
    if wave is not None and wave.rectified:
        return  # that it shows no crest is told beside its frequency
    if found.flat:
        yield cannot_tell(
            _CREST,
            f"{found.flat} readings in a row at the top: it is cut off at {crest}; "
            f"rms was at least {least}",
            measure="record again in a higher range",
        )
    elif wave is not None and wave.per_cycle < CREST_SAMPLES and wave.frequency is not None:
        yield cannot_tell(
            _CREST,
            f"{wave.per_cycle:.3g} readings a cycle miss the crest; at least {crest}",
            measure=FASTER,
        )

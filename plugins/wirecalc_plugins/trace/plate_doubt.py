"""Currents that are not of this world for the plate: a slipped point, or the wrong scale."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import PRACTICE, Item, RecordedColumns, cannot_tell, show

from .machine_run import MachineRun
from .plate_view import TracePlate, locked_at_supply

_SLIPS = (0.001, 0.01, 0.1, 10.0, 100.0, 1000.0)  # by which a reading is off where a point slipped
_START, _RUN = (0.4, 2.0), (0.3, 2.0)  # shares of LRA and of RLA of a start and a run; practice
_NAMES = {1.0: "1 V/A", 1e-1: "100 mV/A", 1e-2: "10 mV/A", 1e-3: "1 mV/A", 1e-4: "0.1 mV/A"}


def scale_doubted(
    runs: Sequence[MachineRun], plate: TracePlate, recording: RecordedColumns
) -> Iterator[Item]:
    """Doubt a recording whose start and run are off from the plate by the same power of ten."""
    locked = locked_at_supply(plate)
    settled = [r.settled for r in runs if r.settled is not None]
    if locked is None or not locked.least or plate.rated is None or not settled:
        return
    highest, runs_at = max(r.highest for r in runs), max(settled)
    start, run = highest / locked.least, runs_at / plate.rated
    slip = next((s for s in _SLIPS if _fits(start / s, _START) and _fits(run / s, _RUN)), None)
    if slip is None or (_fits(start, _START) and _fits(run, _RUN)):
        return
    yield cannot_tell(
        "scale of the recording",
        f"a start of {show(highest, 'A')} and {show(runs_at, 'A')} after it are both {_times(slip)}"
        f" what its plate has: {_cause(recording, slip)}",
        measure="read the scale on the clamp, and check it against a load that is known",
        needs=("clamp",),
        source=PRACTICE,
    )


def _fits(share: float, span: tuple[float, float]) -> bool:
    return span[0] <= share <= span[1]


def _times(slip: float) -> str:
    return f"about {slip:g} times" if slip > 1 else f"about 1/{1 / slip:g} of"


def _cause(recording: RecordedColumns, slip: float) -> str:
    clamp = recording.store.layout.clamp
    real = None if clamp is None else _NAMES.get(float(f"{clamp.volts_per_amp * slip:.6g}"))
    if real is None:
        return "a slipped point, or millivolts of a clamp taken for amperes"
    return f"a clamp of {real} read as one of {clamp}?"

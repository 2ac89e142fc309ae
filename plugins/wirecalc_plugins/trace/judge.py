"""Recorded starts against the plate, by the criteria of `inrush`, the worst start for each."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from wirecalc import Answer, Criterion, Figure, Item, Verdict, at_or_below, cannot_tell

from ..motor.against_plate import settling_shows
from ..motor.plate import LockedRotor, judge_plate, judge_volts
from ..motor.settled_checks import MCC_OVER_RLA, OVER_RLA, judge_settled, judge_turning
from ..motor.start_checks import (
    STOP_S,
    as_rms,
    expected_start,
    judge_peak,
    judge_time,
)
from ..motor.start_kinds import kind_of_start
from ..motor.start_seen import SeenStart
from ..overcurrent.breaker_at_start import breaker_at_start
from .analysis import SLOWEST_S
from .frames import SURGE_S
from .machine_run import MachineRun
from .other_loads import beside_the_motor, tries
from .plate_view import Ends, TracePlate, locked_at_supply, peak_of, stays_high
from .surge import NEAR
from .unseen import FASTER

_TIME = "time to settle"


def judged(runs: Sequence[MachineRun], plate: TracePlate, ends: Ends, mode: str) -> Iterator[Item]:
    """Yield what is expected, and each criterion for the start that meets it worst.

    `mode` is that of a meter that would show as much of a start as the recording does.
    """
    locked = locked_at_supply(plate)
    if locked is not None:
        yield from expected_start(locked, plate.frequency)
    if locked is not None and plate.voltage is None:
        yield cannot_tell(
            "volts at the plug",
            "no volts were recorded or given, and a start goes with them",
            measure="record the volts beside the current, or measure them while it starts",
            needs=("voltage",),
        )
    yield from judge_plate(plate.rated, plate.locked, plate.kind)
    yield from judge_volts(plate.voltage, plate.nameplate_voltage)
    if locked is not None:
        yield from tries(runs, locked, ends.centre.overview.step)
        starts, said = beside_the_motor(runs, locked, plate.voltage, ends.centre)
        yield from said
        runs = starts
    worst: dict[str, Criterion] = {}
    kinds: list[Answer | Criterion] = []
    for run in runs:
        at_ends = [_criteria(run, plate, ends, side, mode) for side in (-1, 0, 1)]
        for found in _with_bands([criteria for criteria, _ in at_ends], ends.centre.overview.step):
            known = worst.get(found.name)
            if known is None or _badness(found) > _badness(known):
                worst[found.name] = found
        kinds += _kind([answer for _, answer in at_ends])
    yield from worst.values()
    if kinds:
        yield next((k for k in kinds if not _normal(k)), kinds[0])


def running(runs: Sequence[MachineRun], plate: TracePlate, ends: Ends) -> Iterator[Criterion]:
    """Yield how a motor runs whose start was not recorded, the highest level that it settled at."""
    settled = max((r.settled for r in runs if r.settled is not None), default=None)
    if settled is None or plate.rated is None:
        return
    at_ends = []
    for side in (-1, 0, 1):
        amps = ends.at(settled, side)
        items = [*judge_settled(amps, plate.rated, plate.kind)]
        items += judge_turning(amps, plate.rated, seen=False, inverter=plate.inverter)
        at_ends.append([i for i in items if isinstance(i, Criterion)])
    yield from _with_bands(at_ends, ends.centre.overview.step)


def _criteria(
    run: MachineRun, plate: TracePlate, ends: Ends, side: int, mode: str
) -> tuple[list[Criterion], Answer | None]:
    """Ask the criteria of `inrush` at one end of the band (-1, 0, 1)."""
    raw = peak_of(run, mode)
    peak = None if raw is None else ends.at(raw, side, SURGE_S)
    quarter = max((run.end - run.start) / 4, SURGE_S)
    settled = None if run.settled is None else ends.at(run.settled, side, quarter)
    locked = locked_at_supply(plate)
    time = _time(run, settled, locked, side, ends.centre.overview.step)
    items: list[Item] = []
    answer: Answer | None = None
    allowed = MCC_OVER_RLA if plate.kind == "compressor" else OVER_RLA
    start = SeenStart(
        *(locked, plate.rated, None, peak, settled or 0.0, time, mode, allowed, plate.inverter)
    )
    if locked is not None and not plate.inverter:
        items += judge_peak(locked, peak, mode, settled)
    if plate.rated is not None:
        items += judge_settled(settled, plate.rated, plate.kind)
        items += judge_turning(settled, plate.rated, seen=start.seen, inverter=plate.inverter)
    if not plate.inverter:
        apart = settling_shows(locked, plate.rated, plate.kind)
        items += judge_time(time, start.near, apart=apart, inverter=plate.inverter)
    if time is None:
        items.append(_end_unseen(run))
    if settled is not None and (plate.rated is not None or locked is not None):
        kind = list(kind_of_start(start))
        answer = next((i for i in kind if isinstance(i, Answer)), None)
        items += (i for i in kind if isinstance(i, Criterion))
    if plate.breaker is not None:
        most = 0.0 if locked is None else locked.most or locked.least
        rms = as_rms(peak, mode)
        items += breaker_at_start(plate.device, plate.breaker, most, rms, settled, time)
    return [i for i in items if isinstance(i, Criterion)], answer


def _time(
    run: MachineRun, settled: float | None, locked: LockedRotor | None, side: int, step: float
) -> float | None:
    """Return the time to settle at one end of the band; None where it has not settled.

    A current that stays at a locked rotor's has not: then it is the whole length of the run, if
    that is over what any start takes. Between the least and the most of a locked rotor either is.
    """
    time = None if run.settle is None else run.settle[(0, 1, 2)[side]]
    if locked is None or not stays_high(settled, locked.least):
        return time
    long = run.end - run.start
    if at_or_below(long, STOP_S):
        return None
    if not stays_high(settled, locked.most):
        return (None, long + step, time)[side]
    return max(0.0, long + side * step)


def _end_unseen(run: MachineRun) -> Criterion:
    """Say how a start was cut short of which the end was not recorded."""
    long = f"{run.end - run.start:.3g} s"
    falls = not run.calm or run.calm[-1].last < (1 - NEAR) * run.highest
    measure = "record until it runs steadily"
    if run.cut_end:
        does = "still falls" if falls else "had not come down"
        return cannot_tell(
            _TIME, f"it {does} when the recording ends, {long} after", measure=measure
        )
    why = f"it went off {long} after it started, and had not settled"
    return cannot_tell(_TIME, why, measure=measure)


def _untimed(criterion: Criterion, step: float) -> Criterion:
    """Say that the steps of a recording, and no meter, leave the time to settle open."""
    assert criterion.band is not None
    low, high = (f"{end:.3g}" for end in criterion.band)
    why = f"{low} to {high} s reaches across {criterion.limit:g} s: "
    why += f"one reading in {step:.3g} s tells no more" if step > SLOWEST_S else "too near to tell"
    return cannot_tell(_TIME, why, measure=FASTER, source=criterion.source)


def _with_bands(ends: Sequence[Sequence[Criterion]], step: float) -> Iterator[Criterion]:
    """Yield the criteria at the centre, each with its actual value at the ends of the band.

    The band of a time is that of the recording's `step` in s, and not of a meter.
    """
    by_name: dict[str, list[Criterion]] = {}
    for criteria in (ends[1], ends[0], ends[2]):
        for criterion in criteria:
            by_name.setdefault(criterion.name, []).append(criterion)
    for alike in by_name.values():
        untold = next((c for c in alike if c.sense == "cannot tell"), None)
        if untold is not None:  # what can't be told at one end of the band can't be told
            yield untold
            continue
        actuals = [c.actual for c in alike if c.actual is not None]
        band = (min(actuals), max(actuals)) if len(actuals) > 1 else None
        found = alike[0]._replace(band=band)
        verdicts = {c.verdict for c in alike}
        open_ = found.name == _TIME and Verdict.FAIL in verdicts and len(verdicts) > 1
        yield _untimed(found, step) if open_ else found


def _badness(criterion: Criterion) -> tuple[int, float]:
    return criterion.verdict.rank, -criterion.closeness


def _kind(answers: Sequence[Answer | None]) -> list[Answer | Criterion]:
    known = [a for a in answers if a is not None]
    if not known:
        return []
    said = list(dict.fromkeys(a.text for a in known))
    if len(said) == 1:
        return [known[len(known) // 2]]
    return [
        cannot_tell(
            known[0].name,
            f"over the band of the readings: {' / '.join(said)}",
            measure="measure with a better instrument or a faster recorder",
        )
    ]


def _normal(found: Answer | Criterion) -> bool:
    return isinstance(found, Answer) and found.text.startswith("normal")


def banded(name: str, value: float, ends: Ends, said: str, **more: float) -> Figure:
    """Return a figure of the measured quantity with the band of the meter.

    `said` says how it was found; `missed` is a factor for its high end, what the sampling may have
    missed, `least` one for its low end, `off` a share for both, `seconds` how long an rms it is.
    """
    low, high = ends.of(value, more.get("seconds", math.inf))
    unit = ends.centre.store.layout.kinds[0].unit
    off = more.get("off", 0.0)
    band = low * (1 - off) * more.get("least", 1.0), high * more.get("missed", 1.0) * (1 + off)
    return Figure(name, value, unit, band=band, working=lambda: said)

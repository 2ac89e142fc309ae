"""The command lines that go on with the readings of a start."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import Item, listing, show

from .analysis import POWER, Analysis, Cycle, whole_cycles
from .machine_run import MachineRun
from .other_loads import ends_high
from .plate_view import Ends, TracePlate, locked_at_supply, peak_of
from .starts_listing import settling_in_words

MOST_CYCLES = 6  # that are written one by one; of more, their mean


def go_on(run: MachineRun, plate: TracePlate, ends: Ends, mode: str) -> Item:
    """Give the command lines that go on with the readings of a start."""
    peak = peak_of(run, mode)
    words = []
    if peak is not None:
        words.append(_option("peak", peak, ends))
        words.append(f"--meter-mode {mode}")
    if run.settled is not None:
        words.append(_option("settled", run.settled, ends))
    if run.settle is not None:
        words.append(f'--settle-time "{settling_in_words(run.settle)}"')
    words += _of_plate(plate)
    lines = _continued("wirecalc inrush", words)
    if peak is not None and run.settle is not None and mode == "inrush":
        held = f'--overcurrent-time "{settling_in_words(run.settle)}"'
        lines += _continued("wirecalc trip", [_option("overcurrent", peak, ends), held])
        lines.append("# and --device and --breaker: what stands on the breaker")
    title = "Go on with the readings of the highest start"
    return listing(title, ("command",), [[line] for line in lines])


def _of_plate(plate: TracePlate, *, breaker: bool = True) -> list[str]:
    printed = {
        "rated-load-current": (plate.rated, "A"),
        "locked-rotor-current": (plate.locked, "A"),
        "nameplate-voltage": (plate.nameplate_voltage, "V"),
        "breaker": (plate.breaker if breaker else None, "A"),
    }
    words = [] if plate.kind is None else [f"--motor-kind {plate.kind}"]
    words += [f'--{n} "{v:g} {u}"' for n, (v, u) in printed.items() if v is not None]
    if plate.nameplate_voltage is not None and plate.voltage is not None:
        words.append(f'--voltage "{plate.voltage:.4g} V"')
    return words


def cycles_on(found: Analysis, plate: TracePlate, ends: Ends) -> Iterator[Item]:
    """Give the command lines that go on with cycles: `duty`, or `locked` where none runs."""
    whole = whole_cycles(found.runs)
    if not whole:
        return
    locked = locked_at_supply(plate)
    least = 0.0 if locked is None else locked.least
    high = [r for r in found.begun if ends_high(r, least, ends.centre.overview.step)]
    if least and found.kind != POWER and len(high) == len(found.begun):
        words = _tries(high, whole, plate, ends)
        lines = _continued("wirecalc locked", words)
    elif found.wave is not None:  # of minutes, and no measure of a duty
        return
    else:
        shown = whole if len(whole) <= MOST_CYCLES else [_mean(whole)]
        words = [f'--on-times "{show(c.on / 60)} min"' for c in shown]
        words += [f'--off-times "{show(c.off / 60)} min"' for c in shown]
        lines = _continued("wirecalc duty", words)
    yield listing("Go on with its cycles", ("command",), [[line] for line in lines])


def _mean(whole: Sequence[Cycle]) -> Cycle:
    return Cycle(sum(c.on for c in whole) / len(whole), sum(c.off for c in whole) / len(whole))


def _tries(
    high: Sequence[MachineRun], whole: Sequence[Cycle], plate: TracePlate, ends: Ends
) -> list[str]:
    """Return the words that hand the longest try to `locked`."""
    step = ends.centre.overview.step
    longest = max(high, key=lambda run: run.end - run.start)
    mean = _mean(whole)
    words = [
        f'--high-time "{show(longest.end - longest.start)} s ±{show(step, toward="up")} s"',
        _option("high-current", longest.settled or longest.highest, ends),
        f"--overload-trips {int(3600 / (mean.on + mean.off))}",
        f'--reset-time "{show(mean.off / 60)} min"',
    ]
    return [*words, *_of_plate(plate, breaker=False)]


def _option(name: str, value: float, ends: Ends) -> str:
    low, high = ends.of(value)
    off = max(value - low, high - value)
    error = f" ±{show(off)} A" if off > 0 else ""
    return f'--{name} "{show(value)} A{error}"'


def _continued(command: str, words: Sequence[str]) -> list[str]:
    """Write a command line in pieces that a shell takes as one."""
    if not words:
        return []
    lines = [f"{command} {words[0]}", *words[1:]]
    return [*(f"{line} \\" for line in lines[:-1]), lines[-1]]

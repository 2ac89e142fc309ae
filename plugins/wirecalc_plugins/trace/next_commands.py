"""The command lines that go on with the readings of a start."""

from __future__ import annotations

from collections.abc import Sequence

from wirecalc import Item, listing, show

from .judge import LOG_MODE, WAVE_MODE
from .machine_run import MachineRun
from .plate_view import Ends, TracePlate, peak_of
from .starts_listing import settling_in_words


def go_on(run: MachineRun, plate: TracePlate, ends: Ends, *, lower_bound: bool) -> Item:
    """Give the command lines that go on with the readings of a start."""
    peak = peak_of(run, lower_bound)
    words = []
    if peak is not None:
        words.append(_option("peak", peak, ends))
        words.append(f"--meter-mode {LOG_MODE if lower_bound else WAVE_MODE}")
    if run.settled is not None:
        words.append(_option("settled", run.settled, ends))
    if run.settle is not None:
        words.append(f'--settle-time "{settling_in_words(run.settle)}"')
    printed = {
        "rated-load-current": (plate.rated, "A"),
        "locked-rotor-current": (plate.locked, "A"),
        "nameplate-voltage": (plate.nameplate_voltage, "V"),
        "breaker": (plate.breaker, "A"),
    }
    if plate.kind is not None:
        words.append(f"--motor-kind {plate.kind}")
    words += [f'--{n} "{v:g} {u}"' for n, (v, u) in printed.items() if v is not None]
    if plate.nameplate_voltage is not None and plate.voltage is not None:
        words.append(f'--voltage "{plate.voltage:.4g} V"')
    lines = _continued("wirecalc inrush", words)
    if peak is not None and run.settle is not None and not lower_bound:
        held = f'--overcurrent-time "{settling_in_words(run.settle)}"'
        lines += _continued("wirecalc trip", [_option("current", peak, ends), held])
        lines.append("# and --device and --breaker: what stands on the breaker")
    title = "Go on with the readings of the highest start"
    return listing(title, ("command",), [[line] for line in lines])


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

"""What a start comes to: the end of its surge, the level and the drift after it, later changes."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import PRACTICE, Item, figure, listing, put, show

from .frames import SURGE_S
from .judge import banded
from .machine_run import MachineRun
from .plate_view import Ends
from .starts_listing import seconds_in_words
from .surge import NEAR, later_changes, level_after

MOST_ROWS = 10  # changes that are listed
DRIFTS = 0.03  # share by which a level must change to be said to drift; practice


def after_the_start(run: MachineRun, ends: Ends, one: str) -> Iterator[Item]:
    """Yield the figures of one start; `one` says which it is, where there are several."""
    if run.settle is not None and not run.cut_start:
        value, low, high = run.settle
        said = f"from the start until it stays within {NEAR:.0%} of the ten seconds that follow"
        yield figure(
            f"end of the surge{one}",
            value,
            "s",
            source=PRACTICE,
            band=(min(low, value), high),
            working=lambda: said,
        )
    after = level_after(run.calm, run.settle)
    if run.settled is not None:
        said = "the median of the last half of the time on, or of its last quarter"
        long = max((run.end - run.start) / 4, SURGE_S)
        yield banded(f"settled level{one}", run.settled, ends, said, seconds=long)
    if after is not None and run.settled and abs(run.settled / after - 1) >= DRIFTS:
        yield from _drift(run, after, run.settled, ends, one)
    yield from _changes(run, ends.centre.store.layout.kinds[0].unit)


def _drift(run: MachineRun, after: float, settled: float, ends: Ends, one: str) -> Iterator[Item]:
    yield banded(
        f"level after the surge{one}", after, ends, "the median of the ten seconds after its end"
    )
    yield figure(
        f"drift after the surge{one}",
        100 * (settled / after - 1),
        "%",
        working=lambda: f"100 x ({put(settled)} / {put(after)} - 1)",
    )
    if run.steady is not None and not run.cut_start:
        value, low, high = run.steady
        yield figure(
            f"settled from{one}",
            value,
            "s",
            source=PRACTICE,
            band=(min(low, value), high),
            working=lambda: "from the start until it stays within 10 % of the settled level",
        )


def _changes(run: MachineRun, unit: str) -> Iterator[Item]:
    changes = later_changes(run.calm, run.settle)
    if changes:
        rows = [
            (seconds_in_words(when), what, show(one.last, unit), show(other.level, unit))
            for when, what, one, other in changes[:MOST_ROWS]
        ]
        more = "" if len(changes) <= MOST_ROWS else f", the first {MOST_ROWS} of {len(changes)}"
        title = f"After the start{more}"
        yield listing(title, ("after", "it", "from", "to"), rows)

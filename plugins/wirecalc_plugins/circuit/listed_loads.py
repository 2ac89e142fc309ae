"""The loads of a circuit as they are listed and counted."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import Item, LeftOut, Reading, listing, may_be_absent, not_checked

from ..inputs import SLIP_A
from .wire_place import CONTINUOUS

PLUGGED, FASTENED = "plugged in", "fastened in place"


def load_input(text: str) -> Reading:
    """Declare a list of loads in A."""
    return Reading(
        "A",
        low=0,
        high=100,
        typical="6.2 A",
        text=f"{text}; repeat it for each",
        slip_under=SLIP_A,
    )


def none(what: str) -> LeftOut:
    """Say that a list left out has no loads."""
    return may_be_absent(f"no {what}")


class ListedLoad(NamedTuple):
    """One load of the list, in A."""

    kind: str
    amps: float
    long: bool

    @property
    def counted(self) -> float:
        """What it counts in A, 125 % from 3 hours on."""
        return self.amps * (CONTINUOUS if self.long else 1.0)


def listed(loads: Sequence[ListedLoad]) -> Iterator[Item]:
    """List the loads as counted, and point out those of the same amps."""
    amps = [x.amps for x in loads]
    twice = [amps.index(a) + 1 for a in amps]
    rows = (
        (n, x.kind, "3 h or more" if x.long else "", *_amps(x), f"as line {same}" * (same < n))
        for n, (x, same) in enumerate(zip(loads, twice, strict=True), start=1)
    )
    yield listing("Loads as counted", ("line", "load", "runs", "A", "counts A", "note"), rows)
    if len(set(amps)) < len(amps):
        yield not_checked("loads of the same amps", "two of a kind, or one that is listed twice?")


def _amps(load: ListedLoad) -> tuple[str, str]:
    return f"{load.amps:.4g}", f"{load.counted:.4g}"

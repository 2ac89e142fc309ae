"""The sum of leakages on one GFCI or RCD."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Source,
    at_most,
    at_or_below,
    cannot_tell,
    confirmed,
    figure,
    from_memory,
    put,
)

from .leakage_limits import BETTER

HOLDS_MA, TRIPS_MA = 4.0, 6.0  # a class A GFCI may trip above the first, must above the second
RCD_HOLDS = 0.5  # share of its rating up to which an RCD holds; common practice

RCD_SHARE = 30.0  # percent of its rating that may leak in service

_RCD_SHARE = from_memory(
    "iec-60364-5-53", "IEC 60364-5-53", "531.3.2, leakage in service", off="1 %"
)
_GFCI = confirmed("ul-943", "UL 943", "class A, trips between 4 and 6 mA", 3)


class ResidualDevice(NamedTuple):
    """What trips on residual current: in mA, where it may and where it must."""

    name: str
    may_ma: float
    must_ma: float
    source: Source
    origin: Origin


def on_devices(
    each: Sequence[float],
    without_this: bool,
    fed_by: tuple[bool | None, float | None, list[float] | None],
) -> Iterator[Item]:
    """Judge the sum on each device that feeds the machine; without one only its share is shown."""
    on_gfci, rcd, others = fed_by
    yield figure(
        "share of the 4 mA of a GFCI",
        100 * math.fsum(each) / HOLDS_MA,
        "%",
        source=_GFCI,
        working=lambda: f"100 x ({' + '.join(put(e, 'mA') for e in each)}) / 4 mA",
    )
    if on_gfci or (others and rcd is None):
        gfci = ResidualDevice("GFCI", HOLDS_MA, TRIPS_MA, _GFCI, Origin.STANDARD)
        yield _sum(each, without_this, gfci)
    if rcd is not None:
        device = ResidualDevice("RCD", RCD_HOLDS * rcd, rcd, PRACTICE, Origin.PRACTICE)
        yield _sum(each, without_this, device)
        yield at_most(
            "share of the rating of the RCD",
            100 * math.fsum(each) / rcd,
            RCD_SHARE,
            "%",
            source=_RCD_SHARE,
            advisory=True,
            behind="the sum on the RCD, which may trip it from half its rating",
            says="more on one device makes it trip for nothing",
            action="give this machine an RCD of its own",
        )


def _sum(each: Sequence[float], without_this: bool, device: ResidualDevice) -> Item:
    """Judge the sum on a device: the plain sum is the most, the root of the squares the least."""
    most, least = math.fsum(each), math.hypot(*each)
    name = f"sum on the {device.name}"
    if without_this and at_or_below(least, device.must_ma):
        span = f"{most:.4g}" if len(each) == 1 else f"{least:.4g} to {most:.4g}"
        return cannot_tell(
            name,
            f"the others add up to {span} mA, and this machine's own leakage is not in it",
            measure="read this machine's own leakage too",
            needs=("leakage_current",),
            source=device.source,
        )
    if not at_or_below(most, device.must_ma) and at_or_below(least, device.must_ma):
        return cannot_tell(
            name,
            f"{least:.4g} to {most:.4g} mA, as they add up: it trips above {device.must_ma:g} mA, "
            f"may above {device.may_ma:g}",
            measure=f"clamp line and neutral together at the {device.name}, all machines running",
            source=device.source,
        )
    within = at_or_below(most, device.must_ma)
    return at_most(
        name,
        most if within else least,
        device.must_ma,
        "mA",
        caution=device.may_ma,
        source=device.source,
        origin=device.origin,
        says="it may trip" if within else "it trips",
        action=f"find the machine that leaks most, or have them put on two {device.name}s",
        better=BETTER,
    )

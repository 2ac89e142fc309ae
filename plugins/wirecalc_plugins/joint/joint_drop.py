"""A joint in service: the drop across it. The tab and the stud have modules of their own."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Reading,
    Wire,
    at_most,
    calculation,
    cannot_tell,
    caution,
    conductors,
    figure,
    put,
)
from wirecalc.sources import computed

RATIO, RATIO_CARE = 10.0, 3.0  # joint over the same length of wire; common practice, no source
TOO_GOOD = 0.5  # times its wire: no joint is so good, practice
HEAT_W = 1.0  # common practice, no source

_WIRE = computed("iacs", "IACS copper, 17.241 nohm m", "over the area of the wire, 2 % more by lay")


@calculation(
    part="wire and joint",
    cautions=("live-01", "meter-01", "cord-04"),
    not_checked=(
        "heat at a larger current than this: it grows with the square of the current",
        "a joint that is loose only at times",
    ),
)
def joint_drop(
    drop: Annotated[
        float,
        Reading("V", above=0, high=10, typical="14 mV", text="voltage across the loaded joint"),
    ],
    current: Annotated[
        float,
        Reading("A", above=0, high=100, typical="8.7 A", text="current at the same moment"),
    ],
    wire: Annotated[Wire, "wire of the joint; of two sizes the thicker one judges harder"],
    joint_length: Annotated[
        float,
        Reading("mm", above=0, high=305, typical="150 mm", text="length between the probes"),
    ],
) -> Iterator[Item]:
    """Is this joint heating?

    R = V / I and P = V x I. R is compared with the same length of the same wire at 20 C
    (stranded 2 % longer by its lay). Over 3 times that is marginal, over 10 times fails, and so
    does over 1 W: common practice, no source. Joints that glow were reported at 5 W with 0.8 A
    and 35 W with 15 A (NBSIR 76-1011); neither breaker, fuse nor GFCI sees them.

    Inputs: drop in V, mostly typed in mV (over 0 to 10 V), current in A (over 0 to 100), wire,
    joint_length in mm (over 0 to 305, a foot; over more, the wire itself makes much of the heat).
    Yields resistance, power, the wire's own resistance, the ratio and two criteria; a ratio under
    0.5 is no reading of a joint. Source: table metals.
    """
    resistance = 1000 * drop / current
    yield figure(
        "joint resistance",
        resistance,
        "mohm",
        working=lambda: f"1000 x {put(drop)} V / {put(current)} A",
    )
    yield figure("power", drop * current, "W", working=lambda: f"{put(drop)} V x {put(current)} A")
    yield from _against_wire(resistance, wire, joint_length)
    yield at_most(
        "heat in the joint",
        drop * current,
        HEAT_W,
        "W",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="joints that glow were reported from 5 W on",
        action="switch off, cut back to bright metal and remake the joint",
    )


def _against_wire(resistance: float, wire: Wire, length: float) -> Iterator[Item]:
    name = "joint against its wire"
    if wire.metal != "copper":
        yield caution("alu-01")
    if wire.metal not in ("copper", "aluminium"):
        yield cannot_tell(
            name,
            f"the resistance of {wire.metal} wire was not seen",
            measure="compare with the drop over the same length of this wire beside the joint",
        )
        return
    per_length = conductors.resistance(wire)  # ohm/km, which is mohm/m
    own = per_length * length / 1000
    yield figure(
        "wire resistance",
        own,
        "mohm",
        source=_WIRE if wire.metal == "copper" else None,
        working=lambda: f"{put(per_length)} mohm/m x {put(length / 1000)} m; at 20 C",
    )
    yield figure(
        "ratio", resistance / own, working=lambda: f"{put(resistance)} mohm / {put(own)} mohm"
    )
    if resistance < TOO_GOOD * own:
        yield cannot_tell(
            name,
            f"{resistance / own:.2g} times: the wire between the probes alone drops more than this",
            measure="check the range, and set the probes on the wire at both sides of the joint",
        )
        return
    yield at_most(
        name,
        resistance / own,
        RATIO,
        "times",
        caution=RATIO_CARE,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="a good joint is about as good as its wire",
        action="cut back to bright metal and remake the joint, then measure again",
    )

"""A joint in service: the drop across it, less that of the wire between the probes."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Bands,
    Item,
    Origin,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    computed,
    figure,
    put,
)
from wirecalc.trade import conductors

from ..most_current import on_any_wire
from .joint_drop_inputs import Drop, JointCurrent, JointLength, WireInput
from .joint_heat import ValueBand, heat_of

STATED_MM = 150.0  # length of wire that a joint is compared with, wherever the probes sit
RATIO, RATIO_CARE = 10.0, 3.0  # joint in its wire over that length; common practice, no source
LEAST_SHARE, BRIDGED_MM = 0.9, 15.0  # of the wire; what a connector bridges; practice, no source

_WIRE = computed("iacs", "IACS copper, 17.241 nohm m", "over the area of the wire, 2 % more by lay")
_AGAINST = "joint against its wire"


@calculation(
    part="wire and joint",
    words=(
        "millivolt drop; mV drop; millivolts; mV; mV across; drop across; voltage drop",
        "voltage drop across a joint; hot joint; hot connection; hot connector; hot splice",
        "hot terminal; hot plug; warm plug; warm joint; joint gets hot; burnt connector",
        "burnt terminal; burned terminal; burnt spade; burnt plug; burnt contacts",
        "melted connector; melted plug; browned; discolored; loose; loose connection",
        "loose terminal; loose crimp; bad crimp; bad connection; bad splice; poor connection",
        "high resistance; high resistance joint; contact resistance; connection resistance",
        "splice; spliced wire; overheated; contacts; contactor; switch contacts; terminal block",
        "choc block; connector strip; corroded; corrosion; corroded terminal; green terminal",
        "arcing; thermal camera; infrared; hot spot; solder joint; smell; scorched; wire nut",
        "warm connector; warm terminal; warm splice; heats up; gets hot; blackened; charred",
        "singed; toasted; resistance of a joint; resistance of a splice; loose screw",
        "screw terminal; jumper; burnt jumper; warm switch; hot switch; too hot to touch",
        "loose lug; hot lug; milliohm; milliohmmeter; aluminium joint",
        "connection gets warm; connection test; warm connection; warm wire; warm to touch",
        "gets warm; discoloured terminal; green corrosion; rusty terminal; dirty contact",
        "dirty contacts; switch contact; switch gets hot; switch hot; burnt switch",
        "good enough splice; splice good enough; is this splice good; crackles",
        "sparks at the terminal; sparks; smells burnt; smell of burning; hot wire nut",
        "wire nut melted; wire nut hot; IR camera; volts across a switch",
        "volts across a closed switch; fuse clip; relay contact drop; loose wire nut",
    ),
    go_on="close the joint; one that was remade, read again after an hour",
    cautions=("live-01", "live-02", "meter-01", "cord-04", "hot-01", "flam-01"),
    not_checked=(
        "heat at a larger current than this: it grows with the square of the current",
        "a joint that is loose only at times",
    ),
    renamed={"current": "joint_current"},
)
def joint_drop(
    drop: Drop,
    joint_current: JointCurrent,
    wire: WireInput,
    joint_length: JointLength,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Is this joint heating?

    R = V / I, less the wire between the probes at 20 C (stranded 2 % longer by its lay), is the
    joint alone; its heat is R I^2. With 150 mm of its wire (of two sizes the thicker), wherever the
    probes sat, it is compared with that wire: over 3 times is marginal, over 10 times fails, and so
    does over 1 W: common practice, no source. Joints that glow were reported at 5 W with 0.8 A and
    35 W with 15 A (NBSIR 76-1011); neither breaker, fuse nor GFCI sees them. A reading under 0.9 of
    the wire, or under the wire less 15 mm, is none of this joint: current or length is wrong. A
    current above all that any table gives the wire fails.

    Inputs: drop in V, mostly typed in mV (over 0 to 10 V), joint_current in A (over 0 to 100),
    wire, joint_length in mm (over 0 to 305, a foot). Yields resistance, power, the wire's own
    resistance, the joint alone, the ratio and two criteria. For joints of copper and aluminium
    wire; of copper-clad wire only the heat is judged, as if it were aluminium. Source:
    tables metals, cords, metric-cords, appliance-wire, nec-ampacity, iec-ampacity.
    """
    volts, amps, length = (
        ValueBand(value, *(bands or {}).get(name, (value, value)))
        for name, value in (
            ("drop", drop),
            ("joint_current", joint_current),
            ("joint_length", joint_length),
        )
    )
    whole = ValueBand(
        *(1000 * v / i for v, i in zip(volts, (amps[0], amps[2], amps[1]), strict=True))
    )
    yield figure(
        "joint resistance",
        whole.value,
        "mohm",
        working=lambda: f"1000 x {put(drop)} V / {put(joint_current)} A",
        band=whole.band,
    )
    yield figure(
        "power",
        drop * joint_current,
        "W",
        working=lambda: f"{put(drop)} V x {put(joint_current)} A",
        band=(volts.low * amps.low, volts.high * amps.high),
    )
    if wire.metal != "copper":
        yield caution("alu-01")
    known = wire.metal in ("copper", "aluminium")
    per_length = conductors.resistance(wire if known else wire._replace(metal="aluminium"))
    own = ValueBand(*(per_length * mm / 1000 for mm in length))  # ohm/km is mohm/m
    if known:
        yield figure(
            "wire resistance",
            own.value,
            "mohm",
            source=_WIRE if wire.metal == "copper" else None,
            working=lambda: f"{put(per_length)} mohm/m x {put(joint_length / 1000)} m; at 20 C",
            band=own.band,
        )
        yield from _against_wire(whole, own, per_length, length)
    else:
        yield cannot_tell(
            _AGAINST,
            f"the resistance of {wire.metal} wire was not seen",
            measure="compare with the drop over the same length of this wire beside the joint",
        )
    yield from heat_of(volts, amps, own)
    yield from on_any_wire(wire, joint_current, amps.band)


def _against_wire(
    whole: ValueBand, own: ValueBand, per_length: float, length: ValueBand
) -> Iterator[Item]:
    alone = ValueBand(
        *(max(r - w, 0.0) for r, w in zip(whole, (own.value, own.high, own.low), strict=True))
    )
    stated = per_length * STATED_MM / 1000
    yield figure(
        "joint alone",
        alone.value,
        "mohm",
        working=lambda: (
            f"{put(whole.value)} mohm - {put(own.value)} mohm"
            if at_or_below(own.value, whole.value)
            else "none: the wire alone has more than was read"
        ),
        band=alone.band,
    )
    ratio = ValueBand(*(1 + r / stated for r in alone))
    yield figure(
        f"ratio over {STATED_MM:g} mm of wire",
        ratio.value,
        working=lambda: f"1 + {put(alone.value)} mohm / {put(stated)} mohm",
        band=ratio.band,
    )
    least = [_least(per_length, mm) for mm in (length.value, length.high, length.low)]
    if not all(at_or_below(bound, r) for bound, r in zip(least, whole, strict=True)):
        yield cannot_tell(
            _AGAINST,
            f"{whole.value / own.value:.2g} times the wire between the probes, which alone drops "
            "more than this",
            measure="clamp one wire only and read the current again, check range and length",
        )
        return
    yield at_most(
        _AGAINST,
        alone.value,
        (RATIO - 1) * stated,
        "mohm",
        caution=(RATIO_CARE - 1) * stated,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says=f"over {RATIO_CARE:g} times {STATED_MM:g} mm of the wire calls for care, over "
        f"{RATIO:g} times fails",
        action="cut back to bright metal and remake the joint, then measure again",
        band=alone.band,
    )


def _least(per_length: float, mm: float) -> float:
    """Return the least that the probes can read over a good joint, in mohm."""
    return per_length / 1000 * max(min(LEAST_SHARE * mm, mm - BRIDGED_MM), 0.0)

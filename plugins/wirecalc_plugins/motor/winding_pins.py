"""Which pin of a motor is which, by three pairs of pins; or why none can be named."""

from __future__ import annotations

from collections.abc import Generator, Iterator
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    answer,
    at_least,
    at_or_below,
    cannot_tell,
    caution,
    figure,
    listing,
    put,
    requires,
    tables,
)

LIKE = 1.2  # start over run resistance below which they are two like windings; practice
CLOSURE_OHM, CLOSURE_SHARE = 0.3, 0.05  # how far three readings may miss adding up; practice
NOISE = 1e-12
LOOSE = 0.1  # share of the largest pair over which the closure allowed says little
NO_MOTOR = 12.0  # start over run resistance, twice the highest that was seen; practice
UNUSUAL = 5.0  # start over run resistance above all that were seen: table winding-ratios


class Pair(NamedTuple):
    """One pair of pins: its resistance without the leads, and low and high of that."""

    name: str
    ohm: float
    low: float
    high: float


def no_more_than_leads(low: Pair, unread: bool) -> Item:
    """Say why a pair that reads no more than the test leads names no pin."""
    return cannot_tell(
        "start over run winding",
        f"{low.name} reads no more than the test leads, or than this meter can show: shorted, "
        "bridged pins, or a very low winding",
        measure="look for a bridge; read it with a four-wire low-ohm meter",
        needs=("lead_resistance",) if unread else (),
    )


def pins(
    low: Pair, middle: Pair, high: Pair, marked: str | None
) -> Generator[Item, None, tuple[str, str, str] | None]:
    """Name the pins by the order of the pairs; returns them, or None where none can be named."""
    closure = low.ohm + middle.ohm - high.ohm
    if abs(closure) < NOISE * high.ohm:  # what binary fractions leave of decimal ones
        closure = 0.0
    allowed = max(CLOSURE_OHM, CLOSURE_SHARE * high.ohm)
    ratio, least = middle.ohm / low.ohm, min(middle.low, high.low) / low.high
    yield from _worked_out(low, middle, high, closure, allowed)
    yield _known_motors()
    near = at_or_below(abs(closure), allowed)
    says_little = allowed > LOOSE * high.ohm
    fits = near and (not says_little or at_or_below(abs(closure), CLOSURE_SHARE * high.ohm))
    evidence = (
        f"{low.name} and {middle.name}: 1 to {ratio:.3g}",
        f"together {low.ohm + middle.ohm:.4g} ohm, {high.name} {high.ohm:.4g} ohm",
    )
    alike = high.ohm < LIKE * low.ohm
    if not fits and not alike:
        yield _too_small(closure, high) if near else _contradict(closure, allowed, high)
    if not at_or_below(LIKE, least):
        yield from _two_alike(alike, fits, ratio, evidence)
        return None
    yield at_least(
        "start over run winding",
        ratio,
        LIKE,
        "times",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        band=(least, middle.high / low.low),
    )
    if not at_or_below(least, NO_MOTOR):
        yield cannot_tell(
            "start over run winding, upper limit",
            f"{least:.3g} times or more, and over {NO_MOTOR:g} is no motor that was seen: a run "
            "winding with shorted turns, or another part in one of the readings",
            measure="look for the maker's ohms of this motor",
            source=PRACTICE,
        )
    if not fits:
        return None
    if not at_or_below(middle.high, high.low) or middle.high == high.low:
        yield cannot_tell(
            "largest pair",
            f"{high.name} and {middle.name} are too close for this meter, and the largest pair "
            "says which pin is common",
            measure="read both again on a finer range",
        )
        return None
    common, run, start = _named(low, high)
    yield answer(
        "pins",
        f"common {common}, run {run}, start {start}",
        because=(f"{high.name} is the largest pair: it leaves common out", *evidence),
        against=tuple(_doubts(ratio, allowed, high)),
    )
    if marked is not None:
        yield _as_marked(marked, common)
    return common, run, start


def _worked_out(
    low: Pair, middle: Pair, high: Pair, closure: float, allowed: float
) -> Iterator[Item]:
    """Show how well two pairs add up to the largest, and the ratio of the two lower ones."""
    yield figure(
        "closure",
        closure,
        "ohm",
        source=PRACTICE,
        working=lambda: f"{put(low.ohm)} ohm + {put(middle.ohm)} ohm - {put(high.ohm)} ohm",
        band=(low.low + middle.low - high.high, low.high + middle.high - high.low),
    )
    yield figure(
        "closure allowed",
        allowed,
        "ohm",
        source=PRACTICE,
        working=lambda: (
            f"{CLOSURE_SHARE} x {put(high.ohm, 'ohm')}; more than {CLOSURE_OHM} ohm"
            if allowed > CLOSURE_OHM
            else f"{CLOSURE_OHM} ohm; {100 * CLOSURE_SHARE:g} % of the largest pair is no more"
        ),
    )
    yield figure(
        "ratio",
        middle.ohm / low.ohm,
        working=lambda: f"{put(middle.ohm)} ohm / {put(low.ohm)} ohm",
        band=(min(middle.low, high.low) / low.high, middle.high / low.low),
    )


def _doubts(ratio: float, allowed: float, high: Pair) -> Iterator[str]:
    if ratio > UNUSUAL:
        yield f"a ratio over {UNUSUAL:g} is unusual: look at the list of motors"
    if allowed > LOOSE * high.ohm:
        yield f"{allowed:g} ohm of closure is a loose check on windings so low: use a finer meter"


def _named(low: Pair, high: Pair) -> tuple[str, str, str]:
    ends = high.name.split("-")
    common = next(p for p in "123" if p not in ends)
    run = next(p for p in low.name.split("-") if p != common)
    start = next(p for p in ends if p != run)
    return common, run, start


def _as_marked(marked: str, common: str) -> Item:
    name = "common pin as marked"
    if marked == common:
        return requires(name, True, says="", source=PRACTICE, origin=Origin.PRACTICE)
    return cannot_tell(
        name,
        f"the readings say {common}, the marking says {marked}",
        measure="were the pins numbered as the marking sits? number them again and read again",
    )


def _too_small(closure: float, high: Pair) -> Item:
    """Say why readings within the ohms allowed still name no pin: the ohms are too few."""
    return cannot_tell(
        "readings fit together",
        f"the other two together miss {high.name} by {abs(closure):.3g} ohm, "
        f"{100 * abs(closure) / high.ohm:.2g} % of it, on windings so low",
        measure="read all three again with a four-wire low-ohm meter",
        source=PRACTICE,
    )


def _contradict(closure: float, allowed: float, high: Pair) -> Item:
    if closure < 0:
        return cannot_tell(
            "readings fit together",
            f"{high.name} is {-closure:.3g} ohm over the other two together ({allowed:.3g} is "
            "allowed), and no three pins can read so",
            measure="clean the pins, press the probes, and read all three again on one range",
        )
    return cannot_tell(
        "readings fit together",
        f"the other two together are {closure:.3g} ohm over {high.name} ({allowed:.3g} is "
        "allowed): more than two windings, or another path between the pins",
        measure="take every wire and the capacitor off the pins, and read all three again",
    )


def _two_alike(alike: bool, fits: bool, ratio: float, evidence: tuple[str, ...]) -> Iterator[Item]:
    """Say what a motor without a start winding may be; no pin is named."""
    if ratio >= LIKE:
        kind, why = "", f"over the meter's band the ratio of {ratio:.3g} may be under {LIKE:g}"
    elif alike:
        kind = "three like windings: a three-phase or inverter motor, or a misreading"
        why = "all three pairs read alike"
        yield caution("inv-01")
    elif fits:
        kind = "two like windings: a reversing motor, whose windings serve as run and start in turn"
        why = f"two windings within {100 * (ratio - 1):.2g} % of each other"
    else:
        kind, why = "", "two pairs read alike, and the third is not their sum"
    if kind:
        yield answer(
            "kind of motor",
            kind,
            because=evidence,
            against=() if alike else ("some fan motors with a run capacitor read nearly alike",),
        )
    yield cannot_tell(
        "start over run winding",
        f"{why}: start and run cannot be named. This condemns no motor",
        measure="take the pins from the wiring diagram or the marking; jump no pin by these ohms",
        source=PRACTICE,
    )


def _known_motors() -> Item:
    rows = tables.load("winding-ratios").rows
    return listing(
        "start over run resistance of known motors (shown, judges nothing)",
        ("motor", "least", "greatest", "seen in"),
        [(r.text("motor"), r.number("least"), r.number("greatest"), r.source.title) for r in rows],
    )

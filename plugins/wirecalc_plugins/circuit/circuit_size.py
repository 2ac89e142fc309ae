"""What circuit a load needs, what a wire allows, and which link is the weakest."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from wirecalc import (
    PLATE,
    Criterion,
    Item,
    Origin,
    Verdict,
    Wire,
    answer,
    at_most,
    at_or_below,
    confirmed,
    figure,
    listing,
    put,
    read_wire,
    show,
    tables,
)
from wirecalc.trade import nec_ampacity

from .standard_ratings import rating_at_least, rating_at_most, rating_source
from .wire_place import WirePlace, ampacities

PLUG_IN_CIRCUIT_A = 20.0  # NEC Table 210.21(B)(3): the largest circuit of 15 and 20 A receptacles
SUM = confirmed("nec-210-20", "NEC", "210.19(A)(1) and 210.20(A)", copies=2)


def sizes(
    name: str, counted: float, breaker: float, wire: Wire | None, place: WirePlace
) -> Iterator[Item]:
    """Yield the standard rating that carries a load by itself, and the largest that a wire allows.

    `counted` in A, 125 % of what runs 3 hours or more; `name` says what the standard rating is.
    Neither is shown above the breaker that is there: nobody is to fit a larger one on its wire.
    """
    rating = rating_at_least(counted)
    if at_or_below(rating, breaker):
        yield figure(
            name,
            rating,
            "A",
            source=rating_source(),
            working=lambda: f"the least standard rating at or above {put(counted)} A",
        )
    largest = None if wire is None else largest_breaker(wire, place)
    if largest is not None and not at_or_below(breaker, largest):
        yield figure(
            "largest breaker on this wire",
            largest,
            "A",
            source=rating_source(),
            working=lambda: "the largest rating within NEC 240.4(D) and the corrected ampacity",
            toward="down",
        )


def largest_breaker(wire: Wire, place: WirePlace) -> float | None:
    """Return the largest standard rating that size and surroundings of a wire allow, in A.

    NEC 240.4(D) and the corrected ampacity, without the next rating up of 240.4(B). None where
    that cannot be told: heat or bundling unknown, size not listed, or no standard rating fits.
    """
    carried = ampacities(wire, place)
    if carried is None or carried.corrected is None:
        return None
    small = nec_ampacity.small_conductor_breaker(wire)
    least = carried.corrected
    if small is not None:
        least = min(least, small.number("breaker_A"))
    return rating_at_most(least)


def needed_circuit(
    current: float, factor: float, breaker: float, wire: Wire | None, place: WirePlace
) -> Iterator[Item]:
    """Name the circuit for a load that breaker or wire does not carry, as a job for others.

    `current` in A; `factor` 1.25 where it runs 3 hours or more. Never a larger breaker alone.
    """
    if not _over(current, factor, breaker, wire, place):
        return
    counted = current * factor
    rating = rating_at_least(counted)
    gauge = copper_for(rating, place)
    if gauge is None:
        return
    thick_enough = wire is not None and _protected(wire, rating, place)
    yield answer(
        "circuit that carries it",
        ("a circuit of its own" if thick_enough else f"{rating:g} A on {gauge} AWG copper")
        + ": a job for an electrician",
        because=[f"the load counts {counted:.4g} A"],
        against=["a larger breaker on the wire that is there is never the cure"]
        + ["15 and 20 A receptacles do not belong on it"] * (rating > PLUG_IN_CIRCUIT_A)
        + ["heat and bundling may ask for thicker wire"] * bool(place.missing),
    )


def loads_to_move(
    current: float, factor: float, breaker: float, wire: Wire | None, place: WirePlace
) -> Iterator[Item]:
    """Say how many of the amps of several loads have to go to a second circuit.

    `current` in A, their sum; `factor` makes it the sum as it counts. No circuit is named that
    carries them all: its receptacles would not belong on it.
    """
    excess = _over(current, factor, breaker, wire, place)
    if not excess:
        return
    yield figure(
        "loads that have to go",
        excess,
        "A",
        source=SUM,
        working=lambda: "what is over the breaker or the wire, the greater, as it counts there",
        toward="up",
    )
    yield answer(
        "more than this circuit carries",
        "move loads to a second circuit; a new circuit is a job for an electrician",
        because=[f"at least {amps_up(excess)} A have to go"],
        against=["a larger breaker on the wire that is there is never the cure"],
    )


def least_to_move(
    current: float, factor: float, breaker: float, wire: Wire | None, place: WirePlace
) -> str:
    """Say what to do about several loads that breaker or wire does not carry, all in A."""
    excess = _over(current, factor, breaker, wire, place)
    amps = f"at least {amps_up(excess)} A of " if excess else ""
    return f"move {amps}these loads to a second circuit; never fit a larger breaker"


def amps_up(amps: float) -> str:
    """Write amps to 0.01 A, rounded up: whoever moves so many has moved enough."""
    return f"{math.ceil(round(100 * amps, 6)) / 100:g}"


def _over(
    current: float, factor: float, breaker: float, wire: Wire | None, place: WirePlace
) -> float:
    """Return by how many A a load is over breaker or wire, the greater; 0 where both carry it."""
    counted = current * factor
    limits = [(counted, breaker)]
    carried = None if wire is None else ampacities(wire, place)
    if carried is not None:
        limits.append((counted, carried.before))
        if carried.corrected is not None:
            limits.append((current, carried.corrected))
    return max((load - most for load, most in limits if not at_or_below(load, most)), default=0.0)


def copper_for(rating: float, place: WirePlace) -> str | None:
    """Return the thinnest listed copper gauge that carries a breaker's whole rating there.

    None where no size does, as past the end of the ambient table.
    """
    for row in _copper():
        wire = read_wire(f"{row.text('awg')} AWG")
        if _protected(wire, rating, place):
            return row.text("awg")
    return None


def copper_carrying(amps: float, place: WirePlace) -> str | None:
    """Return the thinnest gauge of the 60 C column that carries a motor's amps; None without one.

    NEC 240.4(D) is left out: it does not bind a motor circuit (240.4(G)).
    """
    for row in _copper():
        if carries(read_wire(f"{row.text('awg')} AWG"), amps, place):
            return row.text("awg")
    return None


def _copper() -> Iterable[tables.Row]:
    """Return the listed copper sizes from thin to thick."""
    return tables.load("nec-ampacity").where(
        edition=nec_ampacity.NEC_EDITION, metal="copper", rating_C=60
    )


def carries(wire: Wire, amps: float, place: WirePlace) -> bool:
    """Whether a wire carries so many A, as far as its surroundings are known."""
    carried = ampacities(wire, place)
    if carried is None:
        return False
    corrected = carried.corrected
    return at_or_below(amps, carried.before if corrected is None else corrected)


def _protected(wire: Wire, rating: float, place: WirePlace) -> bool:
    """Whether a wire carries a breaker's whole rating, and NEC 240.4(D) allows that breaker."""
    small = nec_ampacity.small_conductor_breaker(wire)
    allowed = small is None or at_or_below(rating, small.number("breaker_A"))
    return allowed and carries(wire, rating, place)


def weakest_first(items: Iterable[Item]) -> Iterator[Item]:
    """Pass items on, and list after them how much of each load limit is used, the most first.

    What cannot be told comes before what holds: it may be the weaker.
    """
    links: list[Criterion] = []
    for item in items:
        if isinstance(item, Criterion) and "load" in item.name:
            links.append(item)
        yield item
    if len(links) > 1:
        columns = ("link", "A", "limit A", "used %")
        rows = lambda: map(_link, sorted(links, key=_order))  # noqa: E731
        yield listing("Weakest link first", columns, rows)


def _order(link: Criterion) -> tuple[int, float]:
    rank = link.verdict.rank
    return (-rank if rank >= Verdict.CANNOT_TELL.rank else 0), -_used(link)


def _used(link: Criterion) -> float:
    return 100 * link.actual / link.limit if link.actual is not None and link.limit else 0.0


def _link(link: Criterion) -> tuple[str, str, str, str]:
    if link.actual is None or link.limit is None:
        return link.name, "", "", str(link.verdict)
    return link.name, f"{link.actual:.4g}", show(link.limit, toward="down"), f"{_used(link):.0f}"


def against_plate(breaker: float, largest: float) -> Item:
    """Judge a breaker by the largest that the plate allows, both in A."""
    return at_most(
        "breaker against the plate",
        breaker,
        largest,
        "A",
        source=PLATE,
        origin=Origin.MAKER,
        action="have an electrician fit the breaker that the plate allows",
    )

"""What circuit a load needs, what a wire allows, and which link is the weakest."""

from __future__ import annotations

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
    conductors,
    figure,
    listing,
    tables,
)
from wirecalc.wires import read_wire

from .building_wire import Place, ampacities
from .standard_ratings import rating_at_least, rating_at_most, rating_source


def sizes(name: str, counted: float, wire: Wire | None, place: Place) -> Iterator[Item]:
    """Yield the standard rating that carries a load by itself, and the largest that a wire allows.

    `counted` in A, 125 % of what runs 3 hours or more; `name` says what the standard rating is.
    """
    yield figure(
        name,
        rating_at_least(counted),
        "A",
        source=rating_source(),
        working=lambda: f"standard rating at or above {counted:.4g} A",
    )
    largest = None if wire is None else largest_breaker(wire, place)
    if largest is not None:
        yield figure(
            "largest breaker on this wire",
            largest,
            "A",
            source=rating_source(),
            working=lambda: "standard rating within NEC 240.4(D) and the corrected ampacity",
            toward="down",
        )


def largest_breaker(wire: Wire, place: Place) -> float | None:
    """Return the largest standard rating that size and surroundings of a wire allow, in A.

    NEC 240.4(D) and the corrected ampacity, without the next rating up of 240.4(B). None where
    that cannot be told: heat or bundling unknown, size not listed, or no standard rating fits.
    """
    carried = ampacities(wire, place)
    if carried is None or carried.corrected is None:
        return None
    small = conductors.small_conductor_breaker(wire)
    least = carried.corrected
    if small is not None:
        least = min(least, small.number("breaker_A"))
    return rating_at_most(least)


def needed_circuit(
    current: float, factor: float, breaker: float, wire: Wire | None, place: Place
) -> Iterator[Item]:
    """Name the circuit for a load that breaker or wire does not carry, as a job for others.

    `current` in A; `factor` 1.25 where it runs 3 hours or more. Never a larger breaker alone.
    """
    counted = current * factor
    carried = None if wire is None else ampacities(wire, place)
    enough = at_or_below(counted, breaker)
    if carried is not None:
        enough = enough and at_or_below(counted, carried.before)
        enough = enough and (carried.corrected is None or at_or_below(current, carried.corrected))
    rating = rating_at_least(counted)
    gauge = None if enough else copper_for(rating, place)
    if gauge is None:
        return
    yield answer(
        "circuit that carries it",
        f"{rating:g} A on {gauge} AWG copper: a job for an electrician",
        because=[f"the load counts {counted:.4g} A"],
        against=["a larger breaker on the wire that is there is never the cure"]
        + ["heat and bundling may ask for thicker wire"] * bool(place.missing),
    )


def copper_for(rating: float, place: Place) -> str | None:
    """Return the thinnest listed copper gauge that carries a breaker's whole rating there.

    None where no size does, as past the end of the ambient table.
    """
    listed = tables.load("nec-ampacity").where(
        edition=conductors.NEC_EDITION, metal="copper", rating_C=60
    )
    for row in listed:  # from thin to thick
        wire = read_wire(f"{row.text('awg')} AWG")
        carried = ampacities(wire, place)
        small = conductors.small_conductor_breaker(wire)
        if carried is None or (
            small is not None and not at_or_below(rating, small.number("breaker_A"))
        ):
            continue
        amps = carried.before if carried.corrected is None else carried.corrected
        if at_or_below(rating, amps):
            return row.text("awg")
    return None


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
        links.sort(key=_order)
        columns = ("link", "A", "limit A", "used %")
        yield listing("Weakest link first", columns, map(_link, links))


def _order(link: Criterion) -> tuple[int, float]:
    rank = link.verdict.rank
    return (-rank if rank >= Verdict.CANNOT_TELL.rank else 0), -_used(link)


def _used(link: Criterion) -> float:
    return 100 * link.actual / link.limit if link.actual is not None and link.limit else 0.0


def _link(link: Criterion) -> tuple[str, str, str, str]:
    if link.actual is None or link.limit is None:
        return link.name, "", "", str(link.verdict)
    return link.name, f"{link.actual:.4g}", f"{link.limit:.4g}", f"{_used(link):.0f}"


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

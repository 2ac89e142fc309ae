"""What a building wire carries as it lies (NEC Table 310.16 and its corrections)."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import (
    Item,
    Source,
    Wire,
    answer,
    at_most,
    at_or_below,
    cannot_tell,
    caution,
    figure,
    not_checked,
    put,
    requires,
    tables,
)
from wirecalc.trade import nec_ampacity

from ..circuit.wire_names import counts_as
from ..circuit.wire_place import RATINGS, below, column
from ..circuit.wire_place import TERMINATION as _TERMINATION

LOAD = "load on the wire"
_SMALL = "load against the largest breaker of this wire"
_ELECTRICIAN = "put the load on a circuit that carries it: a job for an electrician"


def name_of(current: float | None) -> str:
    """Name what is judged: the load, or without one the ampacity."""
    return "ampacity" if current is None else LOAD


class Lies(NamedTuple):
    """How a building wire lies: class and ambient in C, current-carrying wires together."""

    wire_class: float | None
    termination: float
    ambient: float | None
    together: int | None


def building(wire: Wire, lies: Lies, current: float | None) -> Iterator[Item]:
    """Give the ampacity of a building wire as it lies, and judge a current in A by it."""
    if lies.wire_class is None:
        for rating in RATINGS:
            row = nec_ampacity.ampacity(wire, rating)
            if row is not None:
                yield figure(f"{rating} C column", row.number("ampacity_A"), "A", source=row.source)
        yield cannot_tell(
            name_of(current),
            "it depends on the insulation class, which was not given",
            measure="read the class on the wire or its cable: 60, 75 or 90 C",
            needs=("insulation_class",),
        )
        return
    if wire.metal != "copper":
        yield caution("alu-01")
    yield from below(insulation_class=lies.wire_class, termination_temperature=lies.termination)
    wire_class = column(lies.wire_class)
    yield answer("table", f"NEC Table 310.16, {wire.metal}, {wire_class} C column")
    small = nec_ampacity.small_conductor_breaker(wire)
    if small is not None:
        amps = small.number("breaker_A")
        yield figure("largest breaker (NEC 240.4(D))", amps, "A", source=small.source)
        yield not_checked(f"the breaker of {amps:g} A", small.text("condition"))
        if current is not None:
            yield _by_small_rule(wire, current, small)
    lowest = min(wire_class, column(lies.termination))
    own, capped = nec_ampacity.ampacity(wire, wire_class), nec_ampacity.ampacity(wire, lowest)
    if own is not None:
        yield from as_listed(wire, own)
    if own is None or capped is None:
        where = f" in the {lowest} C column of its terminations" if own is not None else ""
        yield no_row(wire, nec_ampacity.thinnest_ampacity(wire, lowest), current, where)
        return
    cap = capped.number("ampacity_A")
    yield figure(
        "most at the termination",
        cap,
        "A",
        source=_TERMINATION,
        working=lambda: f"the {lowest} C column of the table",
    )
    yield from _corrected(own, cap, lies, current)


def _by_small_rule(wire: Wire, current: float, small: tables.Row) -> Item:
    """Judge a load in A by the largest breaker that its wire may have; a motor's may be larger."""
    amps = small.number("breaker_A")
    if at_or_below(current, amps):
        return at_most(_SMALL, current, amps, "A", source=small.source)
    return cannot_tell(
        _SMALL,
        f"{current:.4g} A is above the breaker of {amps:g} A that {wire} may have, motor circuits "
        "aside (240.4(G))",
        measure="a wired-in motor or compressor: ask `motor-circuit`; any other load needs thicker "
        "wire and its breaker",
        source=small.source,
    )


def _corrected(own: tables.Row, cap: float, lies: Lies, current: float | None) -> Iterator[Item]:
    wire_class = column(lies.wire_class or 0.0)
    given = (("ambient", lies.ambient), ("conductors", lies.together))
    missing = [name for name, value in given if value is None]
    if lies.ambient is None or lies.together is None:
        if current is not None and not at_or_below(current, cap):
            yield _binding(current, cap, _TERMINATION)
        else:
            yield cannot_tell(
                name_of(current),
                f"{' and '.join(missing)} not given: heat around the wire lowers what it carries",
                measure="measure the hottest air around the wire; count the wires in the cable",
                needs=missing,
            )
        return
    heat = nec_ampacity.ambient_factor(wire_class, lies.ambient)
    if heat is None:
        yield requires(
            name_of(current),
            False,
            says=f"the table of {wire_class} C wire ends below {lies.ambient:g} C",
            source=nec_ampacity.hottest_factor(wire_class).source,
            action="this wire is not for so hot a place: a job for an electrician",
        )
        return
    bundle = nec_ampacity.count_factor(lies.together)
    amps = own.number("ampacity_A") * heat.value * bundle.value
    source = bundle.source if bundle.value < heat.value else heat.source
    yield figure(
        "ampacity as it lies",
        min(amps, cap),
        "A",
        source=source if amps < cap else _TERMINATION,
        working=lambda: (
            f"{put(own.number('ampacity_A'))} A x {put(heat.value)} x {put(bundle.value)}; at "
            f"{put(lies.ambient or 0.0)} C, {lies.together} wires"
            if amps < cap
            else f"the most at the termination, which is less than {put(amps, 'A')}"
        ),
        toward="down",
    )
    if current is not None:
        yield _binding(current, min(amps, cap), source if amps < cap else _TERMINATION)


def _binding(current: float, amps: float, source: Source) -> Item:
    return at_most(LOAD, current, amps, "A", source=source, action=_ELECTRICIAN)


def as_listed(wire: Wire, row: tables.Row) -> Iterator[Item]:
    """Give the value of a row, and say so where the wire itself is not listed."""
    yield figure("ampacity of the table", row.number("ampacity_A"), "A", source=row.source)
    yield from counts_as(wire, row)


def no_row(wire: Wire, last: tables.Row | None, current: float | None, where: str = "") -> Item:
    """Judge a wire without a row: thinner than all of them, it carries no more than the last."""
    if current is not None and last is not None:
        amps = last.number("ampacity_A")
        if not at_or_below(current, amps):
            return at_most(
                LOAD,
                current,
                amps,
                "A",
                source=last.source,
                says=f"{wire} is thinner than the thinnest size listed",
                action=_ELECTRICIAN,
            )
    return cannot_tell(
        name_of(current),
        f"this table has no ampacity for {wire}{where}",
        measure="use the table that this wire was installed by, or its maker's sheet",
    )

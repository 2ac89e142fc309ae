"""What an appliance wire may carry: two published views, both of them advice."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PLATE,
    Item,
    Origin,
    Wire,
    answer,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    gauge_number,
    not_checked,
    put,
    tables,
)
from wirecalc.trade import conductors, nec_ampacity

_BUNDLE, _SUGGESTED = (
    "load against the aircraft bundle value",
    "load against the wire maker's value",
)
_LESS = "take less load, or a thicker wire or one of a higher temperature rating"


def appliance_wire(
    wire: Wire, rating: float | None, place: float | None, current: float | None
) -> Iterator[Item]:
    """Give both views, and judge the current in A by them; `rating` and `place` are in C."""
    yield answer(
        "table",
        "none: no body has issued an ampacity for appliance wire; two published views stand below "
        "as advice",
    )
    given = (("wire_temperature", rating), ("place_temperature", place))
    missing = [name for name, value in given if value is None]
    if rating is None or place is None:
        yield cannot_tell(
            "ampacity" if current is None else "load on the wire",
            f"{' and '.join(missing)} not given: the current turns on both",
            measure="read the print on the wire; measure the air around it at its hottest",
            needs=missing,
        )
        return
    yield at_most(
        "place against the wire's rating",
        place,
        rating,
        "C",
        source=PLATE,
        origin=Origin.MAKER,
        says="without any current it is hotter than it may be",
        action="fit wire of a higher temperature rating, and find out why it is so hot",
    )
    yield from _bundle(_rated("aircraft bundle", wire, rating), wire, rating, place, current)
    suggested = _rated("wire maker", wire, rating)
    yield from _suggested(suggested, wire, place, current)
    if suggested is None and current is not None:
        yield from _bundle_alone(wire, _rated("aircraft bundle", wire, rating), current)
    if current is not None:
        yield from _largest(wire, current)


def _largest(wire: Wire, current: float) -> Iterator[Item]:
    """Judge by the most that a wire of this size is given at any rating, in either view."""
    gauge = conductors.counted_gauge(wire)
    rows = tables.load("appliance-wire").rows
    sized = [r for r in rows if gauge is not None and r.text("awg") == gauge]
    if wire.metal != "copper" or not sized:
        return
    row = max(sized, key=lambda r: r.number("current_A"))
    yield at_most(
        "load against the largest published value",
        current,
        row.number("current_A"),
        "A",
        source=row.source,
        origin=Origin.MAKER,
        says=f"no wire of {row.text('awg')} AWG is given more, of whatever rating",
        action=_LESS,
    )


def _rated(basis: str, wire: Wire, rating: float) -> tables.Row | None:
    """Return the row of the hottest column that the wire's own rating reaches.

    None where the metal, the rating or the size is outside the table; a size between two listed
    ones counts as the thinner.
    """
    rows = list(tables.load("appliance-wire").where(basis=basis))
    reached = [r for r in rows if at_or_below(r.number("conductor_C"), rating)]
    gauge = conductors.counted_gauge(wire)
    if wire.metal != "copper" or gauge is None or not reached:
        return None
    hottest = max(r.number("conductor_C") for r in reached)
    column = [r for r in reached if r.number("conductor_C") == hottest]
    thickest = min(gauge_number(r.text("awg")) for r in column)
    return nec_ampacity.listed_size(column, wire) if gauge_number(gauge) >= thickest else None


def _bundle(
    row: tables.Row | None, wire: Wire, rating: float, place: float, current: float | None
) -> Iterator[Item]:
    if row is None:
        yield cannot_tell(
            _BUNDLE,
            f"no aircraft value was found for {wire} of {rating:g} C",
            measure="take the current from the wire maker's sheet, or measure how warm it runs",
        )
        return
    amps, warmest = row.number("current_A"), row.number("ambient_C")
    yield figure(
        "in a large aircraft bundle, a low bound",
        amps,
        "A",
        source=row.source,
        working=lambda: (
            f"the value for {row.text('awg')} AWG, {row.text('conductor_C')} C wire, at "
            f"{put(warmest, 'C')}"
        ),
    )
    if not at_or_below(place, warmest):
        yield cannot_tell(
            _BUNDLE,
            f"the value is for {warmest:g} C and it is {place:g} C here",
            measure="take the current from the wire maker's sheet",
            source=row.source,
        )
    elif current is not None:
        yield at_most(
            _BUNDLE,
            current,
            amps,
            "A",
            source=row.source,
            advisory=True,
            behind="the largest value that any wire of its size is given, alone in free air",
            says="a low bound for an appliance, no rule for one",
            action="compare with the sheet of the wire's maker, or measure how warm it runs",
        )


def _bundle_alone(wire: Wire, bundle: tables.Row | None, current: float) -> Iterator[Item]:
    """Say that a current in A above the one view there is can't be told: nothing else is known."""
    if bundle is None or at_or_below(current, bundle.number("current_A")):
        return
    yield cannot_tell(
        _SUGGESTED,
        f"{current:.4g} A is above the aircraft value of {wire}, and no wire maker's was found",
        measure="take the current from the wire maker's sheet, or measure how warm it runs",
        source=bundle.source,
    )


def _suggested(
    row: tables.Row | None, wire: Wire, place: float, current: float | None
) -> Iterator[Item]:
    if row is None:
        yield not_checked("a wire maker's value", f"none was found for {wire}")
        return
    table = tables.load("appliance-wire-ambient")
    warmer = table.where(conductor_C=row.cells["conductor_C"])
    factor = next((r for r in warmer if at_or_below(place, r.number("ambient_C"))), None)
    if factor is None:
        yield cannot_tell(
            _SUGGESTED,
            f"the maker gives {row.text('conductor_C')} C wire no current at {place:g} C",
            measure="take a wire of a higher temperature rating, or ask its maker",
            source=row.source,
        )
        return
    amps = row.number("current_A") * factor.number("factor")
    yield figure(
        "single wire, a wire maker's advice",
        amps,
        "A",
        source=row.source,
        working=lambda: (
            f"{row.text('current_A')} A x {factor.text('factor')}; {row.text('awg')} AWG of "
            f"{row.text('conductor_C')} C, up to {factor.text('ambient_C')} C"
        ),
        toward="down",
    )
    if current is None:
        return
    if not at_or_below(current, amps):
        yield cannot_tell(
            _SUGGESTED,
            f"{current:.4g} A is above the {amps:.4g} A that a wire maker advises, and no binding "
            "limit is published",
            measure=_LESS,
            source=row.source,
        )
        return
    yield at_most(
        _SUGGESTED,
        current,
        amps,
        "A",
        source=row.source,
        origin=Origin.MAKER,
        advisory=True,
        behind="the largest value that any wire of its size is given, alone in free air",
        says="advice for one wire alone; bundled wires carry less",
        action=_LESS,
    )

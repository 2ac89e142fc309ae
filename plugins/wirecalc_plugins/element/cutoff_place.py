"""The place of a thermal cut-off: its heat, why the old one opened, what is changed with it."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_most,
    at_or_below,
    cannot_tell,
    confirmed,
    figure,
    put,
    requires,
    tables,
)

TEXTS = confirmed("cutoff-application", "component makers' texts on IEC 60691", "replacing", 3)


def holds(holding: float | None, place: float | None) -> Iterator[Item]:
    """Require that the holding temperature lies above the place."""
    name = "holding temperature above the place"
    if holding is None or place is None:
        given = (("holding_temperature", holding), ("place_temperature", place))
        yield cannot_tell(
            name,
            "a cut-off that sits hotter than its holding temperature ages and opens",
            measure="take the holding temperature from its maker's sheet and measure the place in "
            "normal use",
            needs=[n for n, value in given if value is None],
            source=TEXTS,
        )
        return
    yield figure(
        "holding temperature over the place",
        holding - place,
        "K",
        source=TEXTS,
        working=lambda: f"{put(holding, 'C')} - {put(place, 'C')}",
    )
    yield requires(
        name,
        not at_or_below(holding, place),
        says=f"{holding:g} C is not above the place of {place:.4g} C in normal use",
        source=TEXTS,
        action="find out why the place is so hot; the maker's part stands the normal heat",
    )


def opens_there(mark: float, place: float | None) -> Iterator[Item]:
    """Fail a place in C so hot that a cut-off of this mark may open in normal use.

    A mark has no tolerance upward: it may open as far below as the widest of its makers' texts say.
    """
    if place is None:
        return
    row = max(tables.load("thermal-cutoffs").rows, key=lambda r: r.number("below_K"))
    yield at_most(
        "place below where the new one may open",
        place,
        mark - row.number("below_K"),
        "C",
        source=row.source,
        says=f"a mark of {mark:g} C may open {row.number('below_K'):g} K below it",
        action="find out why the place is so hot, and measure it in normal use; take the mark that "
        "the maker of the machine names",
    )


def cause(found: bool | None) -> Item:
    """Require that the cause of the opening was found."""
    name, look = (
        "cause of the opening",
        "look for lint, a blocked vent, a stopped fan, a welded relay",
    )
    if found is None:
        return cannot_tell(
            name,
            "it was not said whether the cause was found",
            measure=look,
            needs=("cause_found",),
            source=TEXTS,
        )
    return requires(
        name,
        found,
        says="a new cut-off will open too, or hide a fault that is still there",
        source=TEXTS,
        action=look,
    )


def pair(together: bool) -> Item:
    """Require that the parts of a maker's kit were changed together."""
    return requires(
        "parts of a kit changed together",
        together,
        says="the thermostat of the same kit has cycled as long, and may be why it opened",
        source=PRACTICE,
        origin=Origin.MAKER,
        action="fit both parts of the kit",
    )

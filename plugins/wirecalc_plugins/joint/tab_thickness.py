"""The thickness of a tab and of the female for it."""

from __future__ import annotations

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_or_below,
    cannot_tell,
    not_checked,
    requires,
    tables,
)

THICK_SLACK_IN = 0.002  # 0.8 mm is 0.0315 in and printed as 0.032 in


def _published(size: tables.Row) -> list[tables.Row]:
    """Return the rows of a width that have a thickness."""
    table = tables.load("quick-connect-tabs")
    return [r for r in table.where(tab_in=size.number("tab_in")) if r.cells["thickness_in"]]


def not_measured(size: tables.Row, female_for: float) -> Item:
    """Say of a female whose tab was not measured whether such a tab is published."""
    name, known = "female for the thickness of the tab", _published(size)
    if not known or any(_alike(r.number("thickness_in"), female_for) for r in known):
        return not_checked(name, "the thickness of the tab was not measured")
    return cannot_tell(
        name,
        f"no tab of {size.text('tab_in')} in by {female_for:.3f} in was seen published",
        measure="measure the thickness of the tab",
        needs=("tab_thickness",),
        source=known[0].source,
    )


def _alike(one: float, other: float) -> bool:
    return at_or_below(abs(one - other), THICK_SLACK_IN)


def thickness(size: tables.Row, tab_is: float, female_for: float | None) -> Item:
    """Judge by the female; where it is not known, by the thicknesses that are published."""
    if female_for is not None:
        return requires(
            "female for the thickness of the tab",
            _alike(tab_is, female_for),
            says=f"a female for {female_for:.3f} in does not hold a tab of {tab_is:.3f} in",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=f"use a female for {tab_is:.3f} in",
        )
    name, known = "thickness of the tab", _published(size)
    if not known:
        return not_checked(name, f"none of a {size.text('tab_in')} in tab was seen published")
    if any(_alike(r.number("thickness_in"), tab_is) for r in known):
        return requires(name, True, says="", source=known[0].source)
    printed = " and ".join(r.text("thickness_in") for r in known)
    return cannot_tell(
        name,
        f"{tab_is:.3f} in; published for {size.text('tab_in')} in are {printed} in",
        measure="measure it again; if it holds, say which thickness the female is for",
        needs=("terminal_thickness",),
        source=known[0].source,
    )

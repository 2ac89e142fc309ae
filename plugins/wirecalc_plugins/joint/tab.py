"""Flat push-on tabs: width, thickness and current."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated

from wirecalc import (
    PRACTICE,
    Item,
    Nameplate,
    Origin,
    Problem,
    Reading,
    Wire,
    at_most,
    calculation,
    cannot_tell,
    caution,
    conductors,
    figure,
    put,
    requires,
    tables,
)
from wirecalc.sources import confirmed

from ..inputs import SLIP_A, TAB_WIDTH
from .joint_ratings import SHARE_CARE, TAB_SLACK_IN

THICK_SLACK_IN = 0.002  # 0.8 mm is 0.0315 in and printed as 0.032 in

_COPPER = confirmed("ul-310", "UL 310", "scope 1.3", copies=2)


def _width(inches: float) -> tables.Row | None:
    """Return a row of the published width that this one is."""
    rows = tables.load("quick-connect-tabs").rows
    return next((r for r in rows if abs(r.number("tab_in") - inches) <= TAB_SLACK_IN), None)


def _refuse(
    tab_width: float,
    wire: Wire,
    current: float,
    terminal_width: float | None = None,
    tab_thickness: float | None = None,
    terminal_thickness: float | None = None,
) -> Iterator[Problem]:
    printed = sorted({r.text("tab_in") for r in tables.load("quick-connect-tabs").rows})
    for name, width in (("tab_width", tab_width), ("terminal_width", terminal_width)):
        if width is not None and _width(width) is None:
            yield Problem(
                name,
                f"{width:.4g} in is the width of no published tab",
                f"write one of {', '.join(printed)} in",
            )


@calculation(
    part="wire and joint",
    cautions=("dead-01", "cord-04"),
    not_checked=(
        "the heat of the place: the test current is for 30 C of rise in a room, no promise beside "
        "a heater",
        "a female that is sprung, browned or loose on its tab",
    ),
    refuse=_refuse,
    example_with=("wire=14 AWG",),
)
def tab(
    tab_width: Annotated[float, TAB_WIDTH],
    wire: Annotated[Wire, "wire in the female terminal"],
    current: Annotated[
        float,
        Reading(
            "A",
            above=0,
            high=100,
            typical="10.8 A",
            text="line current of the load",
            slip_under=SLIP_A,
        ),
    ],
    terminal_width: Annotated[
        float | None,
        Nameplate(
            "in", low=0.05, high=0.5, typical="0.250 in", text="tab width that the female is for"
        ),
    ] = None,
    tab_thickness: Annotated[
        float | None,
        Nameplate("in", low=0.01, high=0.1, typical="0.032 in", text="thickness of the tab"),
    ] = None,
    terminal_thickness: Annotated[
        float | None,
        Nameplate(
            "in",
            low=0.01,
            high=0.1,
            typical="0.032 in",
            text="tab thickness that the female is for",
            goes_with="tab_thickness",
        ),
    ] = None,
) -> Iterator[Item]:
    """Is this push-on terminal good for this current on this tab?

    The limit is the continuous test current of UL 310 for the tab width and the gauge; over 80 %
    of it is marginal (common practice). The female must be for the width and the thickness of
    the tab. A metric wire counts by no gauge, and a gauge that UL 310 does not list for the tab
    can't be told.

    Inputs: tab_width in inch (0.110 to 0.375, or in mm as 2.8 to 9.5), wire, current in A (over 0
    to 100), terminal_width, tab_thickness and terminal_thickness in inch or mm. Yields the
    allowed current, the share of it, and a criterion each. Refuses a width that no published tab
    has. Source: tables quick-connect-tabs and quick-connect-currents.
    """
    size = _width(tab_width)
    if size is None:  # refused where it is typed
        yield cannot_tell("current on the tab", "this is the width of no published tab")
        return
    if wire.metal != "copper":
        yield caution("alu-01")
    yield requires(
        "copper only",
        wire.metal == "copper",
        says=f"{wire.metal} wire is not for a push-on terminal",
        source=_COPPER,
        action="stop: it needs a method listed for that metal and a qualified electrician",
    )
    yield from _current(size, wire, current)
    if terminal_width is not None:
        yield _same_width(size, terminal_width)
    if tab_thickness is not None:
        yield from _thickness(size, tab_thickness, terminal_thickness)


def _current(size: tables.Row, wire: Wire, current: float) -> Iterator[Item]:
    name = "current on the tab"
    gauge = conductors.gauge_for_current(wire)
    row = gauge and tables.load("quick-connect-currents").find(
        tab_in=size.number("tab_in"), awg=gauge
    )
    if not row:
        yield cannot_tell(
            name,
            f"UL 310 has no test current for {wire} on a {size.text('tab_in')} in tab",
            measure="take the current from the terminal maker's sheet",
        )
        return
    allowed = row.number("current_A")
    yield figure("allowed current", allowed, "A", source=row.source, toward="down")
    yield figure(
        "share of it",
        100 * current / allowed,
        "%",
        working=lambda: f"100 x {put(current)} A / {put(allowed)} A",
    )
    yield at_most(
        name,
        current,
        allowed,
        "A",
        caution=SHARE_CARE * allowed,
        source=row.source,
        says=f"{100 * SHARE_CARE:.0f} % of the test current is common practice",
        action="use a wider tab and terminal, or a thicker wire",
    )


def _same_width(size: tables.Row, width: float) -> Item:
    return requires(
        "female for the width of the tab",
        _width(width) is not None and abs(size.number("tab_in") - width) <= TAB_SLACK_IN,
        says=f"a female for {width:.3f} in does not hold a {size.text('tab_in')} in tab",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=f"use a female for {size.text('tab_in')} in",
    )


def _thickness(size: tables.Row, tab_is: float, female_for: float | None) -> Iterator[Item]:
    name = "thickness of the tab"
    table = tables.load("quick-connect-tabs")
    known = [r for r in table.where(tab_in=size.number("tab_in")) if r.cells["thickness_in"]]
    if not known:
        yield cannot_tell(
            name,
            f"no thickness of a {size.text('tab_in')} in tab was seen published",
            measure="read it in the terminal maker's sheet",
        )
    else:
        printed = " and ".join(r.text("thickness_in") for r in known)
        yield requires(
            name,
            any(abs(r.number("thickness_in") - tab_is) <= THICK_SLACK_IN for r in known),
            says=f"{tab_is:.3f} in; published for {size.text('tab_in')} in are {printed} in",
            source=known[0].source,
            advisory=True,
            action="measure it again; if it holds, use the terminal that the maker names",
        )
    if female_for is not None:
        yield requires(
            "female for the thickness of the tab",
            abs(tab_is - female_for) <= THICK_SLACK_IN,
            says=f"a female for {female_for:.3f} in does not hold a tab of {tab_is:.3f} in",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=f"use a female for {tab_is:.3f} in",
        )

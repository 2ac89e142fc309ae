"""Flat push-on tabs: width, thickness and current."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Problem,
    Wire,
    calculation,
    cannot_tell,
    confirmed,
    requires,
    tables,
)

from ..inputs_joint import ListedFor
from .joint_current import on_tab, same_width
from .joint_ratings import copper_only, listed
from .tab_inputs import (
    Current,
    TabThickness,
    TabWidth,
    TerminalThickness,
    TerminalWidth,
    WireInput,
)
from .tab_thickness import not_measured, thickness

_COPPER = confirmed("ul-310", "UL 310", "scope 1.3", copies=2)


def _width(inches: float) -> tables.Row | None:
    """Return a row of the published width that this one is."""
    rows = tables.load("quick-connect-tabs").rows
    return next((r for r in rows if same_width(r.number("tab_in"), inches)), None)


def _refuse(
    tab_width: float, wire: Wire, current: float, terminal_width: float | None = None
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
    words=(
        "tab; spade; spade terminal; push-on; push on; push on terminal; quick connect",
        "quick disconnect; QC; QC terminal; female terminal; female spade; female; male tab",
        "blade terminal; blade; slip-on; flag terminal; piggyback; quarter inch; 250; 187; 6.3 mm",
        "4.8 mm; 1/4; loose; loose terminal; loose spade; loose push on; falls off; comes off",
        "burnt spade; burnt terminal; browned; hot terminal; relay terminal; switch terminal",
        "element terminal; tab width; tab current; terminal amps; terminal size; terminal",
        "connector; overheated terminal; spade size; spade amps; female spade amps; male spade",
        "quarter inch push-on; fast connect; tab thickness; push-on amps; 1/4 inch; 3/16",
        "lug on switch",
        "loose push-on; female spade loose; tab loose; tab burnt; receptacle terminal",
        "spade connector; which spade; fem spade; fem spades; fem; 110",
        "205; 3/8 tab; tab size; element tab; spade gets hot; switch tab; flag; flag spade",
        "blade width; tab amps; spade current; wont stay on; does not stay on; pulls off easily",
        "tag; terminal tag; burnt tag; heater tag; tag broke off; tag burnt off; element tag",
    ),
    go_on="push it home, tug it, and look for browning after an hour of load",
    cautions=("dead-01", "live-02", "cord-04"),
    not_checked=(
        "the heat of the place: the test current is for 30 C of rise in a room, no promise beside "
        "a heater",
        "a female that is sprung, browned or loose on its tab",
    ),
    refuse=_refuse,
    example_with=("wire=14 AWG", "terminal_width"),
)
def tab(
    tab_width: TabWidth,
    wire: WireInput,
    current: Current,
    terminal_width: TerminalWidth = None,
    tab_thickness: TabThickness = None,
    terminal_thickness: TerminalThickness = None,
    listed_for: ListedFor = None,
) -> Iterator[Item]:
    """Is this push-on terminal good for this current on this tab?

    UL 310 tests each width with each gauge at a continuous current. That is no rating: over 80 %
    of it is marginal (common practice), and above it too, for the maker's sheet decides. It fails
    above what a cord of the wire's gauge carries (NEC Table 400.5(A)(1), two live wires; its
    cycling current where the table has no such gauge), and above the greatest test current of
    the width. A metric or odd wire counts as the next thinner gauge. The female must be for the
    width and the thickness of the tab.

    Inputs: tab_width in inch (0.110 to 0.375, or in mm as 2.8 to 9.5), wire, current in A (over 0
    to 200), terminal_width, tab_thickness and terminal_thickness in inch or mm, listed_for for
    solid wire. Yields the test current, the share of it, and a criterion each. Refuses a width
    that no published tab has. Meant for push-on joints of appliances, not for plugs. Source:
    tables quick-connect-tabs, quick-connect-currents, cords and metric-cords.
    """
    size = _width(tab_width)
    if size is None:  # refused where it is typed
        yield cannot_tell("current on the tab", "this is the width of no published tab")
        return
    yield from copper_only([wire], "a push-on terminal", _COPPER)
    yield from on_tab([wire], current, size.number("tab_in"))
    if terminal_width is not None:
        yield _same_width(size, terminal_width)
    yield from listed([wire], listed_for)
    if tab_thickness is not None:
        yield thickness(size, tab_thickness, terminal_thickness)
    elif terminal_thickness is not None:
        yield not_measured(size, terminal_thickness)


def _same_width(size: tables.Row, width: float) -> Item:
    return requires(
        "female for the width of the tab",
        _width(width) is not None and same_width(size.number("tab_in"), width),
        says=f"a female for {width:.3f} in does not hold a {size.text('tab_in')} in tab",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=f"use a female for {size.text('tab_in')} in",
    )

"""What a push-on terminal may carry on its tab, and what a wire carries.

A test current is no rating: up to the current of the wire, or to the greatest that is published
for the width of the tab, the maker's sheet decides; above that nothing does.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import (
    Item,
    Source,
    Wire,
    answer,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    gauge_number,
    put,
    read_wire,
    tables,
)
from wirecalc.trade import conductors, nec_ampacity

SHARE_CARE = 0.8  # share of the test current that calls for care; common practice
TAB_SLACK_IN = 0.003  # 6.3 mm is 0.248 in, and the tab is 0.250
LIVE_WIRES = 2  # of a cord, whose current is taken for a wire by itself

_ON_TAB, _TESTED = "current on the tab", "current against the test current"
_SHEET = "take the current from the terminal maker's sheet"


class GreatestCurrent(NamedTuple):
    """A greatest current in A and where it stands."""

    amps: float
    source: Source


def on_tab(wires: Sequence[Wire], amps: float, tab: float | None) -> Iterator[Item]:
    """Judge a current on a push-on tab, whose width in inch may not be known."""
    tests = [_Width(rows, thinnest(wires), amps) for rows in _by_width(tab)]
    known = [t for t in tests if t.test is not None]
    narrow, wide = min(known, key=_Width.least, default=None), max(tests, key=_Width.most)
    if narrow is not None and (len(tests) == 1 or narrow.eases(amps)):
        yield from judged_as(wires, narrow.row)
        yield from _judged(narrow, amps)
    elif wide.limit is not None and not at_or_below(amps, wide.limit.amps):
        yield _within(wide.limit, amps)
    elif len(tests) > 1:
        yield cannot_tell(
            _ON_TAB,
            "it turns on the width of the tab",
            measure="measure the width of the tab",
            needs=("tab_width",),
        )
    else:
        yield cannot_tell(
            _ON_TAB,
            f"UL 310 has no test current for {thinnest(wires)} on such a tab",
            measure=_SHEET,
        )


class _Width:
    """A width of tab with a wire on it: the test current, and the most that anything may carry."""

    def __init__(self, rows: Sequence[tables.Row], wire: Wire, amps: float) -> None:
        """Take the rows of one width, the wire, and the current in A."""
        self.row = row = row_of(rows, conductors.counted_gauge(wire))
        self.test = row and GreatestCurrent(row.number("current_A"), row.source)
        own = carried(wire, amps)
        if own is None and row is not None:
            own = GreatestCurrent(row.number("cycling_A"), row.source)
        series = [GreatestCurrent(r.number("current_A"), r.source) for r in rows]
        limits = [x for x in (own, max(series, default=None)) if x is not None]
        self.limit = min(limits, default=None)

    def least(self) -> float:
        """Return the test current."""
        return self.test.amps if self.test is not None else 0.0

    def most(self) -> float:
        """Return the most that anything may carry, 0 where that is not known."""
        return self.limit.amps if self.limit is not None else 0.0

    def eases(self, amps: float) -> bool:
        """Whether a current is so small that this width passes it."""
        return at_or_below(amps, SHARE_CARE * self.least())


def _judged(width: _Width, amps: float) -> Iterator[Item]:
    if width.limit is not None:
        yield _within(width.limit, amps)
    if width.test is not None:
        yield from _tested(width.test, amps)


def _tested(test: GreatestCurrent, amps: float) -> Iterator[Item]:
    allowed = test.amps
    yield figure("test current", allowed, "A", source=test.source, toward="down")
    yield figure(
        "share of it",
        100 * amps / allowed,
        "%",
        working=lambda: f"100 x {put(amps)} A / {put(allowed)} A",
    )
    over = not at_or_below(amps, allowed)
    yield at_most(
        _TESTED,
        amps,
        allowed,
        "A",
        caution=SHARE_CARE * allowed,
        source=test.source,
        advisory=True,
        says="a test current is no rating"
        if over
        else f"over {100 * SHARE_CARE:.0f} % of the test current calls for care, common practice",
        action="ask the maker's sheet of the terminal for its current, or use a wider tab",
        behind="the current of the wire, or the greatest of the width, fails",
    )


def judged_as(wires: Sequence[Wire], row: tables.Row | None) -> Iterator[Item]:
    """Say which listed gauge the thinnest wire counts as, where that is not the one it has."""
    if row is not None and row.text("awg") != thinnest(wires).gauge:
        because = ["the gauge that is listed and no thicker than it"]
        yield answer("current judged as", f"{row.text('awg')} AWG", because=because)


def _within(limit: GreatestCurrent, amps: float) -> Item:
    return at_most(
        _ON_TAB,
        amps,
        limit.amps,
        "A",
        source=limit.source,
        action="use a wider tab and terminal, or a thicker wire",
    )


def same_width(one: float, other: float) -> bool:
    """Whether two widths of a tab in inches are one size."""
    return at_or_below(abs(one - other), TAB_SLACK_IN)


def _by_width(tab: float | None) -> Iterator[list[tables.Row]]:
    """Yield the rows of each width that it may be; one empty list where none is published."""
    rows = tables.load("quick-connect-currents").rows
    widths = sorted({r.number("tab_in") for r in rows})
    for width in widths:
        if tab is None or same_width(width, tab):
            yield [r for r in rows if r.number("tab_in") == width]
    if tab is not None and not any(same_width(width, tab) for width in widths):
        yield []


def row_of(rows: Sequence[tables.Row], gauge: str | None) -> tables.Row | None:
    """Return the row of a gauge, or of the next thinner one; none for a wire that is thicker."""
    if gauge is None or not rows:
        return None
    thick_to_thin = sorted(rows, key=_number)
    if gauge_number(gauge) < _number(thick_to_thin[0]):
        return None
    return next((r for r in thick_to_thin if _number(r) >= gauge_number(gauge)), None)


def _number(row: tables.Row) -> int:
    return gauge_number(row.text("awg"))


def carried(wire: Wire, amps: float) -> GreatestCurrent | None:
    """Return what a wire carries in a cord of two live wires; None where none is listed.

    An appliance wire has no published ampacity of its own. A metric one carries as the next
    thinner gauge, which is confirmed, and above that as its own size.
    """
    gauge = conductors.counted_gauge(wire)
    row = gauge and nec_ampacity.cord_ampacity(read_wire(f"{gauge} AWG"), LIVE_WIRES)
    found = [GreatestCurrent(row.number("ampacity_A"), row.source)] if row else []
    if wire.nominal_mm2 is not None:
        own = [r for r in tables.load("metric-cords").rows if _is_in(r, wire.nominal_mm2)]
        found += [GreatestCurrent(r.number("current_A"), r.source) for r in own[-1:]]
    enough = (x for x in found if at_or_below(amps, x.amps))
    return next(enough, max(found, default=None))


def _is_in(row: tables.Row, nominal: float) -> bool:
    """Whether a size is no thinner than that of a row."""
    return at_or_below(row.number("nominal_mm2"), nominal)


def above_the_wire(wires: Sequence[Wire], amps: float) -> Item | None:
    """Judge a current that is above what the thinnest wire carries; None where it is not."""
    own = carried(thinnest(wires), amps)
    if own is None or at_or_below(amps, own.amps):
        return None
    return at_most(
        "current of the wire",
        amps,
        own.amps,
        "A",
        source=own.source,
        action="use a thicker wire: no part mends it",
    )


def thinnest(wires: Sequence[Wire]) -> Wire:
    """Return the wire with the least copper, which the current is judged by."""
    return min(wires, key=_area)


def _area(wire: Wire) -> float:
    return wire.area_cmil

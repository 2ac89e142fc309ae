"""Heat beyond the known wire, over the band of the meter: what is known, what may explain it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import PRACTICE, Bands, Item, Origin, Wire, at_most, at_or_below, cannot_tell, figure
from wirecalc.runs import Run, known_metal, resistance_per_length

HEAT_W, HEAT_CARE_W = 5.0, 1.0  # common practice, no source
AHEAD_OHM = 0.1  # what service and transformer may add, where not measured; common practice
TOO_GOOD = 0.8  # times the known wire: no wire is so good, its size or length is wrong; practice
PLUG_A = 12.0  # what one plug takes from a 15 A receptacle

HEAT = "heat beyond the wiring"
_REMAKE = "stop use; with the power off look for a browned or loose plug, receptacle, joint; remake"
_DIRECT = "measure the millivolt drop across plug, receptacle and each joint with the load on"
_COMPARE = "read another receptacle of this panel and leg, load off and on"


class Span(NamedTuple):
    """A value over the meter's band."""

    low: float
    centre: float
    high: float

    def less(self, other: Span) -> Span:
        """Return the difference of two values that move on their own."""
        return Span(self.low - other.high, self.centre - other.centre, self.high - other.low)

    def over(self, current: Span) -> Span:
        """Return volts per ampere; the current is above zero."""
        return Span(
            self.low / (current.high if self.low > 0 else current.low),
            self.centre / current.centre,
            self.high / (current.low if self.high > 0 else current.high),
        )

    def figure(self, name: str, unit: str) -> Item:
        """Show it with its band."""
        return figure(name, self.centre, unit, band=(self.low, self.high))


def span(name: str, value: float, bands: Bands) -> Span:
    """Return a reading with its band, if it has one."""
    low, high = bands.get(name, (value, value))
    return Span(low, value, high)


class Wiring(NamedTuple):
    """Known runs of wire, each at low, centre and high of the band.

    `complete` says that nothing of the wiring from the panel on is unknown.
    """

    runs: tuple[tuple[Run, Run, Run], ...]
    temperature: Span
    complete: bool

    def ohms(self, ways: int) -> Span:
        """Return the resistance of one conductor (1 way) or of the loop (2 ways)."""
        low, centre, high = (
            ways * sum(run[i].one_way(self.temperature[i]) for run in self.runs) for i in range(3)
        )
        return Span(low, centre, high)

    def figures(self, ways: int) -> Iterator[Item]:
        """Yield the resistance of each run."""
        for name, (_, run, _) in zip(("wire", "cord"), self.runs, strict=False):
            yield _run_figure(name, run, self.temperature.centre, ways)


def _run_figure(name: str, run: Run, at: float, ways: int) -> Item:
    per_length = resistance_per_length(run.wire, at)
    return figure(
        f"{run.length_ft:.4g} ft of {run.wire}, {'there and back' if ways == 2 else 'one way'}",
        ways * run.one_way(at),
        "ohm",
        source=per_length.source,
        working=lambda: (
            f"{ways} x {run.length_ft:.4g} ft x {per_length.ohm_per_kft:.4g} ohm/kft at {at:g} C "
            "/ 1000"
        ),
    )


def wiring_of(
    wire: Wire | None,
    run_length: float | None,
    cord: Wire | None,
    cord_length: float | None,
    temperature: float,
    bands: Bands,
) -> Wiring:
    """Return what of the wiring is known."""
    runs = []
    for one, name, length in ((wire, "run_length", run_length), (cord, "cord_length", cord_length)):
        if one is not None and length is not None and known_metal(one):
            low, centre, high = span(name, length, bands)
            runs.append((Run(one, low), Run(one, centre), Run(one, high)))
    complete = wire is not None and len(runs) == (1 if cord is None else 2)
    return Wiring(tuple(runs), span("conductor_temperature", temperature, bands), complete)


def heat(drop: Span, current: Span, ohm: Span) -> Span:
    """Return the heat beyond a resistance, I x V - I^2 x R in W; none below zero.

    Over the current it has its most where the resistance explains half of the volts.
    """
    at = [current.low, current.high]
    if ohm.low > 0:
        half = drop.high / (2 * ohm.low)
        at += [half] if current.low < half < current.high else []
    least = min(i * (drop.low - i * ohm.high) for i in (current.low, current.high))
    centre = current.centre * (drop.centre - current.centre * ohm.centre)
    most = max(i * (drop.high - i * ohm.low) for i in at)
    return Span(max(least, 0.0), max(centre, 0.0), max(most, 0.0))


class Leg(NamedTuple):
    """What one leg loses: volts, current, wiring; `ahead` is what is lost ahead of the panel.

    `ways` is 1 where the neutral may carry none of the current.
    """

    drop: Span
    current: Span
    wiring: Wiring
    ways: int
    ahead: Span | None = None
    which: str = ""

    def items(self) -> Iterator[Item]:
        """Yield what the leg loses, and judge what its wiring does not explain."""
        known = self.wiring.ohms(self.ways)
        behind = self.drop if self.ahead is None else self.drop.less(self.ahead)
        beyond = behind.over(self.current).less(known)
        watts = heat(behind, self.current, known)
        if self.drop.centre > 0:
            whole = self.drop.over(self.current)
            yield whole.figure(f"resistance of all upstream{self.which}", "ohm")
            if self.ahead is not None:
                yield self.ahead.figure("volts lost ahead of the panel", "V")
            if self.wiring.runs or self.ahead is not None:
                yield beyond.figure(f"resistance beyond the wiring{self.which}", "ohm")
        yield watts.figure(f"{HEAT} at this current{self.which}", "W")
        if beyond.centre > 0 and self.current.centre < PLUG_A:
            yield figure(f"the same at {PLUG_A:g} A{self.which}", beyond.centre * PLUG_A**2, "W")
        yield self._judge(behind, known, watts)

    def _judge(self, behind: Span, known: Span, watts: Span) -> Item:
        """Judge at most what is certain: what else may explain the volts makes it untold."""
        all_of_it = heat(behind, self.current, Span(0.0, 0.0, 0.0)).high
        if not at_or_below(all_of_it, HEAT_CARE_W):
            if not self.wiring.complete:
                return self._untold(
                    f"up to {all_of_it:.3g} W, and wire of unknown resistance makes a part of it",
                    "measure the length one way, and read the gauge on the jacket",
                    ("wire", "run_length"),
                )
            if not at_or_below(TOO_GOOD * known.high * self.current.high, behind.low):
                return self._no_such_wire(behind, known)
            least = heat(behind, self.current, self._most_that_explains()).low
            if not at_or_below(watts.high, HEAT_W) and at_or_below(least, HEAT_W):
                return self._too_near(watts, least)
        return at_most(
            f"{HEAT}{self.which}",
            watts.centre,
            HEAT_W,
            "W",
            caution=HEAT_CARE_W,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="neither breaker nor fuse sees it",
            action=_REMAKE,
            band=(watts.low, watts.high),
        )

    def _most_that_explains(self) -> Span:
        """Return the loop, and ahead of the panel what was not measured."""
        more = AHEAD_OHM if self.ahead is None else 0.0
        loop = self.wiring.ohms(2)
        return Span(loop.low + more, loop.centre + more, loop.high + more)

    def _no_such_wire(self, behind: Span, known: Span) -> Item:
        wire_takes = known.centre * self.current.centre
        if behind.centre < TOO_GOOD * wire_takes:
            return self._untold(
                f"{behind.centre:.3g} V were lost, and the wire alone takes {wire_takes:.3g} V: a "
                "size or length is wrong",
                "check gauge and length (one way), and that the current is of this load",
            )
        return self._untold(
            f"0 to {heat(behind, self.current, known).high:.3g} W: too close for this meter, whose "
            "readings allow less than the wire itself has",
            _DIRECT,
        )

    def _too_near(self, watts: Span, least: float) -> Item:
        causes = [f"{AHEAD_OHM:g} ohm ahead of the panel"] if self.ahead is None else []
        causes += ["current in the neutral"] if self.ways == 1 else []
        if at_or_below(watts.low, HEAT_W):
            return self._untold(
                f"{watts.low:.3g} to {watts.high:.3g} W reaches across {HEAT_W:g} W: too close for "
                "this meter",
                _DIRECT,
            )
        return self._untold(
            f"{least:.3g} to {watts.high:.3g} W: {' and '.join(causes)} may make the difference",
            _DIRECT if self.ahead is not None or self.which else f"{_COMPARE}; or {_DIRECT}",
            () if self.ahead is not None or self.which else ("panel_at_rest", "panel_running"),
        )

    def _untold(self, reason: str, measure: str, needs: tuple[str, ...] = ()) -> Item:
        return cannot_tell(f"{HEAT}{self.which}", reason, measure=measure, needs=needs)

"""A leg of the way to the plug: what it loses, judged by what is known and what may explain it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import PRACTICE, Item, Origin, at_most, at_or_below, cannot_tell, figure, put
from wirecalc.runs import Run
from wirecalc.wires import read_wire

from .upstream_heat import COLD_C, Load, Span, Wiring, heat

HEAT_W, HEAT_CARE_W = 5.0, 1.0  # common practice, no source
AHEAD_OHM = 0.1  # what service and transformer may add, where not measured; common practice
TOO_GOOD = 0.8  # times the known wire: no wire is so good, its size or length is wrong; practice
PLUG_A = 12.0  # what one plug takes from a 15 A receptacle
SCALE = "14 AWG copper"  # wire of a 15 A circuit, for a scale of what was lost

HEAT = "heat beyond the wiring"
_REMAKE = "stop use; with the power off look for a browned or loose plug, receptacle, joint; remake"
_DIRECT = "measure the millivolt drop across plug, receptacle and each joint with the load on"
_COMPARE = "read another receptacle of this panel and leg, load off and on"


class Leg(NamedTuple):
    """What one leg loses: volts at rest and running, current, wiring, and the load.

    `ahead` is what is lost ahead of the panel; `ways` is 1 where the neutral may carry none of
    the current.
    """

    rest: Span
    running: Span
    current: Span
    wiring: Wiring
    load: Load
    ways: int
    ahead: Span | None = None
    which: str = ""

    @property
    def lost(self) -> Span:
        """Return the volts that the meter lost."""
        return self.rest.less(self.running)

    def _in_phase(self, lost: Span) -> Span:
        x = self.wiring.reactance(self.ways)
        return self.load.in_phase(lost, self.running, self.current, x)

    def _says_in_phase(self, lost: Span) -> str:
        x = self.wiring.reactance(self.ways)
        return self.load.in_phase_working(lost, self.running, self.current, x)

    def items(self) -> Iterator[Item]:
        """Yield what the leg loses, and judge what its wiring does not explain."""
        known = self.wiring.ohms(self.ways)
        lost = self.lost
        after = lost if self.ahead is None else lost.less(self.ahead)
        behind = self._in_phase(after)
        beyond = behind.over(self.current).less(known)
        watts = heat(behind, self.current, known)
        yield from self._lost()
        if lost.centre > 0:
            whole = self._in_phase(lost).over(self.current)
            yield whole.figure(
                f"resistance of all upstream{self.which}", "ohm", lambda: self._says_ohm(lost)
            )
            if self.ahead is not None:
                yield self.ahead.figure(
                    "volts lost ahead of the panel",
                    "V",
                    lambda: "at rest less running, at the other receptacle of this panel",
                )
            if self.wiring.runs or self.ahead is not None:
                yield beyond.figure(
                    f"resistance beyond the wiring{self.which}",
                    "ohm",
                    lambda: f"{self._says_ohm(after)} - {put(known.centre, 'ohm')}",
                )
        yield watts.figure(
            f"{HEAT} at this current{self.which}", "W", lambda: self._says_heat(watts, after)
        )
        if beyond.centre > 0 and self.current.centre < PLUG_A:
            yield figure(
                f"the same at {PLUG_A:g} A{self.which}",
                beyond.centre * PLUG_A**2,
                "W",
                working=lambda: f"{put(beyond.centre, 'ohm')} x ({PLUG_A:g} A)^2",
            )
        yield self._judge(behind, known, watts)

    def _says_ohm(self, lost: Span) -> str:
        return f"{self._says_in_phase(lost)} / {put(self.current.centre, 'A')}"

    def _says_heat(self, watts: Span, after: Span) -> str:
        if watts.centre <= 0:
            return "none: the known wire takes all of the volts that were lost"
        amps = put(self.current.centre, "A")
        ohms = put(self.wiring.ohms(self.ways).centre, "ohm")
        return f"{amps} x ({self._says_in_phase(after)} - {amps} x {ohms})"

    def _lost(self) -> Iterator[Item]:
        """Yield the volts lost, their share, and for a scale the run that takes as much."""
        lost, rest = self.lost, self.rest

        def says() -> str:
            return f"{put(rest.centre, 'V')} - {put(self.running.centre, 'V')}"

        yield lost.figure(f"volts lost{self.which}", "V", says)
        low, high = (100 * v / r for v, r in ((lost.low, rest.low), (lost.high, rest.high)))
        share = Span(min(low, high), 100 * lost.centre / rest.centre, max(low, high))
        yield share.figure(
            f"volts lost of those at rest{self.which}",
            "%",
            lambda: f"100 x ({says()}) / {put(rest.centre, 'V')}",
        )
        if lost.centre > 0 and not self.wiring.complete:
            run = Run(read_wire(SCALE), 1.0)
            per_ft = run.per_length(COLD_C)
            yield figure(
                f"{SCALE} at {COLD_C:g} C that takes as much{self.which}",
                self._in_phase(lost).centre / self.current.centre / run.loop(COLD_C),
                "ft one way",
                source=per_ft.source,
                working=lambda: (
                    f"{self._says_in_phase(lost)} / {put(self.current.centre, 'A')} / "
                    f"(2 x {put(per_ft.ohm_per_kft, 'ohm/kft')} / 1000)"
                ),
            )

    def _judge(self, behind: Span, known: Span, watts: Span) -> Item:
        """Judge at most what is certain: what else may explain the volts makes it untold."""
        all_of_it = heat(behind, self.current, Span(0.0, 0.0, 0.0)).high
        fails = False
        if not at_or_below(all_of_it, HEAT_CARE_W):
            if not self.wiring.complete:
                return self._untold(
                    f"up to {all_of_it:.3g} W, and wire of unknown resistance makes a part of it",
                    "measure the length one way, and read the gauge on the jacket",
                    ("wire", "run_length"),
                )
            wire_takes = TOO_GOOD * known.high * self.current.high
            if self.load.known and not at_or_below(wire_takes, behind.low):
                return self._no_such_wire(behind, known)
            least = self._least_heat(behind)
            fails = not at_or_below(least, HEAT_W)
            if self.load.known and not fails and not at_or_below(watts.high, HEAT_W):
                return self._too_near(watts, least)
        if not self.load.known and not fails:
            return self._load_unknown(watts)
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

    def _least_heat(self, behind: Span) -> float:
        """Return the least heat that is certain, whatever else may explain the volts."""
        x = self.wiring.reactance(2)
        low, centre, high = (
            self.load.least(v, i * ohm)
            for v, i, ohm in zip(behind, reversed(self.current), reversed(x), strict=True)
        )
        return heat(Span(low, centre, high), self.current, self._most_that_explains()).low

    def _load_unknown(self, watts: Span) -> Item:
        what = "a heater" if self.load.kind is None else "its current in phase with the volts"
        return self._untold(
            f"{watts.centre:.3g} W if the load is {what}; with a power factor below 1 a bad joint "
            "takes fewer volts",
            "load the plug with a heater (toaster, space heater) and read again, or give the "
            "power factor of the load",
            ("load_kind", "power_factor") if self.load.kind is None else ("power_factor",),
        )

    def _most_that_explains(self) -> Span:
        """Return the loop at its most, and ahead of the panel what was not measured."""
        more = AHEAD_OHM if self.ahead is None else 0.0
        loop = self.wiring.most_ohms(2)
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
        if at_or_below(watts.low, HEAT_W):
            return self._untold(
                f"{watts.low:.3g} to {watts.high:.3g} W reaches across {HEAT_W:g} W: too close for "
                "this meter",
                _DIRECT,
            )
        to_give = [] if self.ahead is not None or self.which else ["panel_at_rest", "panel_running"]
        measure = f"{_COMPARE}; or {_DIRECT}" if to_give else _DIRECT
        if self.wiring.warm != self.wiring.cold:
            to_give.append("conductor_temperature")
        return self._untold(
            f"{least:.3g} to {watts.high:.3g} W: {' and '.join(self._causes())} may make the "
            "difference",
            measure,
            tuple(to_give),
        )

    def _causes(self) -> Iterator[str]:
        """Yield what may explain volts that the known wire does not."""
        if self.ahead is None:
            yield f"{AHEAD_OHM:g} ohm ahead of the panel"
        if self.ways == 1:
            yield "current in the neutral"
        if self.wiring.warm != self.wiring.cold:
            yield f"a wire at {self.wiring.warm.centre:g} C"
        if any(run.wire.nominal_mm2 is not None for _, run, _ in self.wiring.runs):
            yield "what IEC 60228 lets a metric wire have"

    def _untold(self, reason: str, measure: str, needs: tuple[str, ...] = ()) -> Item:
        return cannot_tell(f"{HEAT}{self.which}", reason, measure=measure, needs=needs)

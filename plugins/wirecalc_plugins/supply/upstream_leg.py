"""A leg of the way to the plug: what it loses, judged by what is known and what may explain it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import Item, figure, put, read_wire
from wirecalc.trade.wire_runs import WireRun

from .upstream_heat import COLD_C, DrawnLoad, Span, Wiring, heat

PLUG_A = 12.0  # 80 % of a 15 A receptacle, NEC 210.23(A)(1)
SCALE = "14 AWG copper"  # wire of a 15 A circuit, for a scale of what was lost

# what service and transformer may add, where it was not read, in ohm: 120 and 240 V of North
# America by common practice; 230 V by the reference impedance of IEC 60725, from memory
AHEAD_OHM, AHEAD_230_OHM, FROM_230_V = 0.1, 0.4, 200.0

HEAT = "heat beyond the wiring"


class Leg(NamedTuple):
    """What one leg loses: volts at rest and running, current, wiring, and the load.

    `ahead` is what is lost ahead of the panel; `ways` is 1 where the neutral may carry none of
    the current.
    """

    rest: Span
    running: Span
    current: Span
    wiring: Wiring
    load: DrawnLoad
    ways: int
    ahead: Span | None = None
    which: str = ""

    @property
    def lost(self) -> Span:
        """Return the volts that the meter lost."""
        return self.rest.less(self.running)

    @property
    def most_ahead(self) -> float:
        """Return what may lie ahead of the panel, in ohm; wire in AWG is of North America."""
        of_awg = any(run.wire.nominal_mm2 is None for _, run, _ in self.wiring.runs)
        return AHEAD_OHM if of_awg or self.rest.centre < FROM_230_V else AHEAD_230_OHM

    def _in_phase(self, lost: Span) -> Span:
        x = self.wiring.reactance(self.ways)
        return self.load.in_phase(lost, self.running, self.current, x)

    def _says_in_phase(self, lost: Span) -> str:
        x = self.wiring.reactance(self.ways)
        return self.load.in_phase_working(lost, self.running, self.current, x)

    @property
    def after_panel(self) -> Span:
        """Return the volts lost behind the panel."""
        return self.lost if self.ahead is None else self.lost.less(self.ahead)

    @property
    def behind(self) -> Span:
        """Return the volts that resistance behind the panel takes."""
        return self._in_phase(self.after_panel)

    def items(self) -> Iterator[Item]:
        """Yield what the leg loses, and what of it its wiring does not explain."""
        known = self.wiring.ohms(self.ways)
        lost, after, behind = self.lost, self.after_panel, self.behind
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
            run = WireRun(read_wire(SCALE), 1.0)
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

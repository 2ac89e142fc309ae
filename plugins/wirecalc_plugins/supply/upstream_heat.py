"""Volts, wire and heat over the band of the meter: the arithmetic of what is lost upstream."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import NamedTuple

from wirecalc import Bands, Item, Wire, figure, put
from wirecalc.trade.wire_runs import WireRun, known_metal

COLD_C, WARM_C = 20.0, 75.0  # a wire whose temperature was not given; NEC Table 8 is for 75 C


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

    def figure(self, name: str, unit: str, working: Callable[[], str]) -> Item:
        """Show it with its band; the working is that of its centre."""
        return figure(name, self.centre, unit, band=(self.low, self.high), working=working)


def span(name: str, value: float, bands: Bands) -> Span:
    """Return a reading with its band, if it has one."""
    low, high = bands.get(name, (value, value))
    return Span(low, value, high)


class DrawnLoad(NamedTuple):
    """The load that draws the current; `power_factor` is a share, None where not known."""

    kind: str | None
    power_factor: float | None

    @property
    def known(self) -> bool:
        """Whether the volts that it lost say what resistance took them."""
        return self.kind == "heater" or self.power_factor is not None

    def in_phase(self, lost: Span, running: Span, current: Span, reactance: Span) -> Span:
        """Return the volts that resistance takes, I x R, out of the volts that a meter lost.

        V0 = |V + I (R + jX)| solved for I x R, the current lagging V by the power factor; it
        rises with the volts. A heater takes them as they are.
        """
        pf = self.power_factor
        if pf is None or pf >= 1:
            return lost
        sine = math.sqrt(1 - pf**2)

        def resistive(lost: float, volts: float, across: float) -> float:
            squared = (volts + lost) ** 2 - (volts * sine + across) ** 2
            return math.sqrt(max(squared, 0.0)) - volts * pf

        across = [i * x for i, x in zip(current, reactance, strict=True)]
        return Span(  # the least is lost where the most is left
            resistive(lost.low, running.high, across[2]),
            resistive(lost.centre, running.centre, across[1]),
            resistive(lost.high, running.low, across[0]),
        )

    def in_phase_working(self, lost: Span, running: Span, current: Span, reactance: Span) -> str:
        """Put the centre into what `in_phase` works out."""
        pf = self.power_factor
        if pf is None or pf >= 1:
            return put(lost.centre, "V")
        volts, sine = put(running.centre, "V"), f"sqrt(1 - {put(pf)}^2)"
        across = f"{volts} x {sine} + {put(current.centre, 'A')} x {put(reactance.centre, 'ohm')}"
        return f"(sqrt(({volts} + {put(lost.centre, 'V')})^2 - ({across})^2) - {volts} x {put(pf)})"

    def least(self, lost: float, across: float) -> float:
        """Return the least that resistance may take of the volts lost, whatever the power factor.

        (lost - across x sin) / pf is smallest at sqrt(lost^2 - across^2).
        """
        return lost if self.known else math.sqrt(max(lost * abs(lost) - across**2, 0.0))


class Wiring(NamedTuple):
    """Known runs of wire, each at low, centre and high of the band.

    `cold` and `warm` are the temperatures between which the wire is, `complete` says that nothing
    of the wiring from the panel on is unknown.
    """

    runs: tuple[tuple[WireRun, WireRun, WireRun], ...]
    cold: Span
    warm: Span
    complete: bool

    def ohms(self, ways: int) -> Span:
        """Return the least resistance of one conductor (1 way) or of the loop (2 ways)."""
        return self._sum(ways, self.cold, least=True)

    def most_ohms(self, ways: int) -> Span:
        """Return the most that they may have: warm, and a metric wire at its limit."""
        return self._sum(ways, self.warm, least=False)

    def _sum(self, ways: int, at: Span, *, least: bool) -> Span:
        low, centre, high = (
            ways * math.fsum(r[i]._replace(least=least).one_way(at[i]) for r in self.runs)
            for i in range(3)
        )
        return Span(low, centre, high)

    def reactance(self, ways: int) -> Span:
        """Return the 60 Hz reactance, in ohm."""
        at = self.cold.centre
        low, centre, high = (
            ways / 2 * sum(r[i].loop_impedance(at).imag for r in self.runs) for i in range(3)
        )
        return Span(low, centre, high)

    def figures(self, ways: int) -> Iterator[Item]:
        """Yield the least resistance of each run."""
        for _, run, _ in self.runs:
            yield _run_figure(run._replace(least=True), self.cold.centre, ways)


def _run_figure(run: WireRun, at: float, ways: int) -> Item:
    per_length = run.per_length(at)
    return figure(
        f"{run.length_ft:.4g} ft of {run.wire}, {'there and back' if ways == 2 else 'one way'}, "
        f"{at:.4g} C",
        ways * run.one_way(at),
        "ohm",
        source=per_length.source,
        working=lambda: (
            f"{ways} x {put(run.length_ft)} ft x {put(per_length.ohm_per_kft)} ohm/kft / 1000"
        ),
    )


def wiring_of(
    wire: Wire | None,
    run_length: float | None,
    cord: Wire | None,
    cord_length: float | None,
    temperature: float | None,
    bands: Bands,
) -> Wiring:
    """Return what of the wiring is known; a temperature that was not given is 20 to 75 C."""
    runs = []
    for one, name, length in (
        (wire, "run_length", run_length),
        (cord, "extension_length", cord_length),
    ):
        if one is not None and length is not None and known_metal(one):
            low, centre, high = span(name, length, bands)
            runs.append((WireRun(one, low), WireRun(one, centre), WireRun(one, high)))
    complete = wire is not None and len(runs) == (1 if cord is None else 2)
    cold, warm = (
        span("conductor_temperature", at if temperature is None else temperature, bands)
        for at in (COLD_C, WARM_C)
    )
    return Wiring(tuple(runs), cold, warm, complete)


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

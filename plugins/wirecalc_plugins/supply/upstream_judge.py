"""Whether a leg has heat beyond its wiring, and whether the neutral is weak."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import PRACTICE, Item, Origin, answer, at_most, at_or_below, cannot_tell

from .upstream_heat import Span, heat
from .upstream_leg import HEAT, PLUG_A, Leg

HEAT_W, HEAT_CARE_W = 5.0, 1.0  # common practice, no source
TOO_GOOD = 0.8  # times the known wire: no wire is so good, its size or length is wrong; practice
RISE_PCT, RISE_CARE_PCT = 5.0, 2.0  # of the other leg when this one falls; common practice
FULL = f"{HEAT} at {PLUG_A:g} A"

_REMAKE = "stop use; with the power off look for a browned or loose plug, receptacle, joint; remake"
_DIRECT = "measure the millivolt drop across plug, receptacle and each joint with the load on"
_LENGTH = "measure the length one way, and read the gauge on the jacket"
_HEATER = "load the plug with a heater of 8 A or more (toaster, space heater) and read again"
_PANEL = ("panel_at_rest", "panel_running")
_COMPARE = "read another receptacle of this panel and leg, load off and on"


def judge_leg(leg: Leg) -> Iterator[Item]:
    """Yield what the leg loses, and judge what its wiring does not explain."""
    yield from leg.items()
    judge, behind, known = _Judge(leg), leg.behind, leg.wiring.ohms(leg.ways)
    yield judge.now(behind, known, heat(behind, leg.current, known))
    if leg.current.low < PLUG_A:
        yield judge.full(behind, known)


class _Judge(NamedTuple):
    """Judge a leg at most by what is certain: what else may explain the volts is not told."""

    leg: Leg

    def now(self, behind: Span, known: Span, watts: Span) -> Item:
        """Judge the heat at the current that was read."""
        all_of_it = heat(behind, self.leg.current, Span(0.0, 0.0, 0.0)).high
        fails, least = False, watts.low
        wire_least = TOO_GOOD * known.low * self.leg.current.low
        sure = self.leg.wiring.complete and self.leg.load.known
        if sure and not at_or_below(wire_least, behind.high):
            return self._no_such_wire(behind, known)
        if not at_or_below(all_of_it, HEAT_CARE_W):
            if not self.leg.wiring.complete:
                return self._untold(
                    f"up to {all_of_it:.3g} W, and wire of unknown resistance makes a part of it",
                    _LENGTH,
                    ("building_wire", "run_length"),
                )
            wire_takes = TOO_GOOD * known.high * self.leg.current.high
            if self.leg.load.known and not at_or_below(wire_takes, behind.low):
                return self._no_such_wire(behind, known)
            least = self._least_heat(behind)
            fails = not at_or_below(least, HEAT_W)
            if self.leg.load.known and not fails and not at_or_below(watts.high, HEAT_W):
                return self._too_near(watts, least)
        if not self.leg.load.known and not fails:
            return self._load_unknown(watts)
        return at_most(
            f"{HEAT}{self.leg.which}",
            watts.centre,
            HEAT_W,
            "W",
            caution=HEAT_CARE_W,
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="neither breaker nor fuse sees it",
            action=_REMAKE if watts.high > HEAT_W else _DIRECT,
            band=(least if fails else watts.low, watts.high),
        )

    def full(self, behind: Span, known: Span) -> Item:
        """Judge the same resistance at what one outlet may carry: a small current hides it."""
        whole = behind.over(self.leg.current)
        beyond = whole.less(known)
        watts = Span(*(max(ohm, 0.0) * PLUG_A**2 for ohm in beyond))
        sure = self._least_in_phase(behind).over(self.leg.current).less(self._most_that_explains())
        least = sure.low * PLUG_A**2
        small = at_or_below(whole.high * PLUG_A**2, HEAT_W)
        fails = not at_or_below(least, HEAT_W)
        if not small and not self.leg.wiring.complete:
            return self._full_untold(watts, _LENGTH, ("building_wire", "run_length"))
        if not small and not fails and not self.leg.load.known:
            return self._full_untold(watts, _HEATER, ("load_kind", "power_factor"))
        if not small and not fails and not at_or_below(watts.high, HEAT_W):
            needs = () if self.leg.ahead is not None or self.leg.which else _PANEL
            return self._full_untold(watts, f"{_HEATER}; or {_DIRECT}", needs)
        return at_most(
            f"{FULL}{self.leg.which}",
            watts.centre,
            HEAT_W,
            "W",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            says="what one outlet may carry; neither breaker nor fuse sees it",
            action=_REMAKE,
            band=(least if fails else watts.low, watts.high),
        )

    def _full_untold(self, watts: Span, measure: str, needs: tuple[str, ...]) -> Item:
        return cannot_tell(
            f"{FULL}{self.leg.which}",
            f"{watts.low:.3g} to {watts.high:.3g} W there, of which "
            f"{self.leg.current.centre:.3g} A show little",
            measure=measure,
            needs=needs,
        )

    def _least_in_phase(self, behind: Span) -> Span:
        """Return the least that resistance takes of the volts, whatever the power factor."""
        x = self.leg.wiring.reactance(2)
        low, centre, high = (
            self.leg.load.least(v, i * ohm)
            for v, i, ohm in zip(behind, reversed(self.leg.current), reversed(x), strict=True)
        )
        return Span(low, centre, high)

    def _least_heat(self, behind: Span) -> float:
        """Return the least heat that is certain, whatever else may explain the volts."""
        return heat(self._least_in_phase(behind), self.leg.current, self._most_that_explains()).low

    def _load_unknown(self, watts: Span) -> Item:
        what = "a heater" if self.leg.load.kind is None else "its current in phase with the volts"
        return self._untold(
            f"{watts.centre:.3g} W if the load is {what}; with a power factor below 1 a bad joint "
            "takes fewer volts",
            "load the plug with a heater (toaster, space heater) and read again, or give the "
            "power factor of the load",
            ("load_kind", "power_factor") if self.leg.load.kind is None else ("power_factor",),
        )

    def _most_that_explains(self) -> Span:
        """Return the loop at its most, and ahead of the panel what was not measured."""
        more = self.leg.most_ahead if self.leg.ahead is None else 0.0
        loop = self.leg.wiring.most_ohms(2)
        return Span(loop.low + more, loop.centre + more, loop.high + more)

    def _no_such_wire(self, behind: Span, known: Span) -> Item:
        wire_takes = known.centre * self.leg.current.centre
        if behind.centre < TOO_GOOD * wire_takes:
            return self._untold(
                f"{behind.centre:.3g} V were lost, and the wire alone takes {wire_takes:.3g} V: a "
                "size or length is wrong",
                "check gauge and length (one way), and that the current is of this load",
            )
        return self._untold(
            f"0 to {heat(behind, self.leg.current, known).high:.3g} W: too close for this meter, "
            "whose readings allow less than the wire itself has",
            _DIRECT,
        )

    def _too_near(self, watts: Span, least: float) -> Item:
        if at_or_below(watts.low, HEAT_W):
            return self._untold(
                f"{watts.low:.3g} to {watts.high:.3g} W reaches across {HEAT_W:g} W: too close for "
                "this meter",
                _DIRECT,
            )
        to_give = (
            []
            if self.leg.ahead is not None or self.leg.which
            else ["panel_at_rest", "panel_running"]
        )
        measure = f"{_COMPARE}; or {_DIRECT}" if to_give else _DIRECT
        if self.leg.wiring.warm != self.leg.wiring.cold:
            to_give.append("conductor_temperature")
        return self._untold(
            f"{least:.3g} to {watts.high:.3g} W: {' and '.join(self._causes())} may make the "
            "difference",
            measure,
            tuple(to_give),
        )

    def _causes(self) -> Iterator[str]:
        """Yield what may explain volts that the known wire does not."""
        if self.leg.ahead is None:
            yield f"{self.leg.most_ahead:g} ohm ahead of the panel"
        if self.leg.ways == 1:
            yield "current in the neutral"
        if self.leg.wiring.warm != self.leg.wiring.cold:
            yield f"a wire at {self.leg.wiring.warm.centre:g} C"
        if any(run.wire.nominal_mm2 is not None for _, run, _ in self.leg.wiring.runs):
            yield "what IEC 60228 lets a metric wire have"

    def _untold(self, reason: str, measure: str, needs: tuple[str, ...] = ()) -> Item:
        return cannot_tell(f"{HEAT}{self.leg.which}", reason, measure=measure, needs=needs)


def judge_neutral(fell: Span, before: Span, after: Span) -> Iterator[Item]:
    """Judge the rise of the second leg: with a weak neutral the legs move apart."""
    rise = Span(
        100 * (after.low / before.high - 1),
        100 * (after.centre / before.centre - 1),
        100 * (after.high / before.low - 1),
    )
    if fell.low > 0 and not at_or_below(rise.low, RISE_CARE_PCT):
        yield answer(
            "neutral",
            f"suspect it: one leg fell by {fell.centre:.3g} V and the other rose by "
            f"{after.centre - before.centre:.3g} V. Switch all off, lamps too",
        )
    yield at_most(
        "rise of the second leg",
        rise.centre,
        RISE_PCT,
        "%",
        caution=RISE_CARE_PCT,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="one leg falls and the other rises: suspect the neutral",
        action="switch all off, lamps too; have an electrician or the utility look at the neutral",
        band=(rise.low, rise.high),
    )

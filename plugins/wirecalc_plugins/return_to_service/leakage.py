"""Leakage current of one machine, and the sum of several on one GFCI."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from typing import Annotated, NamedTuple

from wirecalc import (
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    Source,
    YesNo,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    figure,
    put,
    tables,
)
from wirecalc.sources import confirmed
from wirecalc.tables import Row

HOLDS_MA, TRIPS_MA = 4.0, 6.0  # a class A GFCI may trip above the first, must above the second
SLIP_MA = 0.001  # less than a leakage tester shows: typed in uA it is a slip of the unit
BETTER = "a leakage tester that reads 0.01 mA"
LEAKAGE, SUM = "leakage current", "sum on the GFCI"
STRICTEST = "strictest"

_GFCI = confirmed("ul-943", "UL 943", "class A, trips between 4 and 6 mA", 3)


def _kinds() -> list[str]:
    return list(dict.fromkeys(r.text("machine_kind") for r in tables.load("leakage-limits").rows))


def _standards() -> list[str]:
    rows = tables.load("leakage-limits").rows
    return [STRICTEST, *dict.fromkeys(r.text("standard") for r in rows)]


class _Limit(NamedTuple):
    """A limit in mA: one value, or a span where the power is not known."""

    low: float
    high: float
    row: Row

    @property
    def source(self) -> Source:
        return self.row.source


def _refuse(
    on_gfci: bool | None, other_leakage: list[float] | None, **_others: object
) -> Iterator[Problem]:
    if on_gfci is False and other_leakage:
        yield Problem(
            "on_gfci",
            "no GFCI, and leakage of other machines on it",
            "say on_gfci yes, or leave other_leakage out",
        )


@calculation(
    part="return to service",
    cautions=("wat-01", "gfci-01"),
    not_checked=(
        "leakage at 106 % of the plate's volts, as IEC 60335-1 reads it: it grows with the volts",
        "leakage with line and neutral swapped at the plug: the higher one counts",
        "the GFCI itself: press its test button",
    ),
    refuse=_refuse,
    example_with=(
        "leakage_current",
        "machine_kind",
        "switched_on",
        "on_gfci",
        "other_leakage",
    ),
)
def leakage(
    leakage_current: Annotated[
        float | None,
        Reading(
            "mA",
            low=0,
            high=50,
            typical="0.3 mA",
            text="leakage of this machine, from its case or ground wire to ground",
            past="<",
            slip_under=SLIP_MA,
        ),
    ] = None,
    machine_kind: Annotated[
        str | None,
        OneOf(
            _kinds,
            text="two-wire: no ground pin; double-insulated: double square; with a ground pin: "
            "portable, stationary (motor), refrigerator, heater (stationary)",
        ),
    ] = None,
    standard: Annotated[str, OneOf(_standards, text="standard to judge by")] = STRICTEST,
    switched_on: Annotated[
        bool | None,
        YesNo("switches, thermostats and relays were closed, so that all was in the reading"),
    ] = None,
    nameplate_power: Annotated[
        float | None,
        Nameplate("W", above=0, high=20_000, typical="2585 W", text="power of the elements"),
    ] = None,
    on_gfci: Annotated[bool | None, YesNo("it is fed through a class A GFCI")] = None,
    other_leakage: Annotated[
        list[float] | None,
        Reading(
            "mA",
            low=0,
            high=50,
            typical="0.5 mA",
            text="leakage of each other machine on the same GFCI",
            past="<",
            slip_under=SLIP_MA,
        ),
    ] = None,
) -> Iterator[Item]:
    """Does this machine leak too much, and does its GFCI hold?

    The limits of UL 101, IEC 60335-1 and DIN VDE 0701-0702 stand side by side; the strictest is
    judged by unless `standard` names one. That of a stationary heater grows with its power. With
    parts switched off a low reading shows nothing. A class A GFCI trips between 4 and 6 mA: a sum
    over 4 mA may trip it, and one without this machine's own leakage passes nothing. Leakage adds
    up to the plain sum at most, and on one leg to the root of the sum of squares at least: where
    only that reaches 6 mA it fails.

    Inputs: leakage in mA (0 to 50), machine_kind, standard, nameplate_power in W (over 0 to
    20000), other_leakage in mA, yes or no of the rest. Yields the limits, share of 4 mA, criteria.
    Refuses under 1 uA that is not 0: uA for mA. Source: table leakage-limits, UL 943.
    """
    if leakage_current is None and other_leakage is None:
        yield cannot_tell(
            LEAKAGE,
            "nothing was read",
            measure="read it with a leakage tester or a leakage clamp, everything switched on",
            needs=("leakage_current", "other_leakage"),
        )
    if leakage_current is not None:
        limits = list(_limits(machine_kind, nameplate_power))
        yield from _shown(limits, machine_kind, nameplate_power)
        yield _judge(leakage_current, limits, standard, machine_kind, switched_on)
    yield caution("live-01")
    if machine_kind not in ("two-wire", "double-insulated"):
        yield caution("gnd-01")
    each = [*([] if leakage_current is None else [leakage_current]), *(other_leakage or ())]
    if each:
        yield figure(
            "share of the 4 mA of a GFCI",
            100 * sum(each) / HOLDS_MA,
            "%",
            source=_GFCI,
            working=lambda: f"100 x ({' + '.join(put(e, 'mA') for e in each)}) / 4 mA",
        )
    if each and (on_gfci or other_leakage):
        yield _on_gfci(each, leakage_current is None)


def _limits(kind: str | None, power: float | None) -> Iterator[_Limit]:
    for row in tables.load("leakage-limits").rows:
        if kind not in (None, row.text("machine_kind")):
            continue
        least = row.number("limit_mA")
        if row.cells["per_kW_mA"] is None:
            yield _Limit(least, least, row)
            continue
        most = row.number("most_mA")
        if power is None:
            yield _Limit(least, most, row)
        else:
            limit = min(max(least, row.number("per_kW_mA") * power / 1000), most)
            yield _Limit(limit, limit, row)


def _shown(limits: Sequence[_Limit], kind: str | None, power: float | None) -> Iterator[Item]:
    if kind is None:
        return
    for limit in limits:
        name = f"most by {limit.row.text('standard')}"
        if limit.low == limit.high:
            working = _limit_working(limit, power)
            yield figure(name, limit.low, "mA", source=limit.source, toward="down", working=working)
        else:
            ends = limit.low, limit.high
            for end, value in zip(("least", "greatest"), ends, strict=True):
                yield figure(f"{name}, {end} power", value, "mA", source=limit.source)


def _limit_working(limit: _Limit, power: float | None) -> Callable[[], str] | None:
    """Return how a limit grows with the power; None for one that the table has as it is."""
    if power is None or limit.row.cells["per_kW_mA"] is None:
        return None
    per_kw = limit.row.number("per_kW_mA")
    by_power = per_kw * power / 1000
    if by_power != limit.low:
        end = "least" if by_power < limit.low else "most"
        return lambda: f"the {end} that it has, whatever the power"
    return lambda: f"{put(per_kw, 'mA/kW')} x {put(power, 'W')} / 1000"


def _judge(
    value: float, limits: Sequence[_Limit], standard: str, kind: str | None, on: bool | None
) -> Item:
    """Judge by the strictest limit of the standards that are asked for."""
    asked = [x for x in limits if standard in (STRICTEST, x.row.text("standard"))]
    strictest = min(asked, key=lambda x: x.low)
    by_kind: dict[str, _Limit] = {}
    for limit in sorted(asked, key=lambda x: -x.high):  # the strictest of a kind is left
        by_kind[limit.row.text("machine_kind")] = limit
    kindest = max(by_kind.values(), key=lambda x: x.high)
    if at_or_below(value, strictest.low) and on is not True:
        return cannot_tell(
            LEAKAGE,
            "what lies behind an open switch or relay does not leak into the reading",
            measure="read it again with everything switched on and running",
            needs=("switched_on",) if on is None else (),
            source=strictest.source,
        )
    if not at_or_below(value, strictest.low) and at_or_below(value, kindest.high):
        needs = ["machine_kind"] if kind is None else ["nameplate_power"]
        return cannot_tell(
            LEAKAGE,
            f"{value:.4g} mA is between the limits of {strictest.low:g} and {kindest.high:g} mA: "
            f"{needs[0]} decides",
            measure="say what kind of machine it is, and the power of a heater by its plate",
            needs=needs,
            source=strictest.source,
        )
    within = at_or_below(value, strictest.low)
    return at_most(
        LEAKAGE,
        value,
        strictest.low if within else kindest.high,
        "mA",
        source=strictest.source if within else kindest.source,
        says="do not return it to service",
        action="find what leaks: unplug parts one by one; wet parts, elements and filters first",
        better=BETTER,
    )


def _on_gfci(each: Sequence[float], without_this: bool) -> Item:
    """Judge the sum on a GFCI: the plain sum is the most, the root of the squares the least."""
    most, least = sum(each), math.hypot(*each)
    if without_this and at_or_below(least, TRIPS_MA):
        span = f"{most:.4g}" if len(each) == 1 else f"{least:.4g} to {most:.4g}"
        return cannot_tell(
            SUM,
            f"the others add up to {span} mA, and this machine's own leakage is not in it",
            measure="read this machine's own leakage too",
            needs=("leakage_current",),
            source=_GFCI,
        )
    if not at_or_below(most, TRIPS_MA) and at_or_below(least, TRIPS_MA):
        return cannot_tell(
            SUM,
            f"{least:.4g} to {most:.4g} mA, as they add up: it trips above 6 mA, may above 4",
            measure="clamp line and neutral together at the GFCI, all machines running",
            source=_GFCI,
        )
    within = at_or_below(most, TRIPS_MA)
    return at_most(
        SUM,
        most if within else least,
        TRIPS_MA,
        "mA",
        caution=HOLDS_MA,
        source=_GFCI,
        says="it may trip" if within else "it trips",
        action="find the machine that leaks most, or have them put on two GFCIs",
        better=BETTER,
    )

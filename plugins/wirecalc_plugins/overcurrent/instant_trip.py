"""A breaker's instantaneous trip, as a test set found it, against its type, setting or curve."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, NamedTuple

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    Source,
    answer,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    calculation,
    cannot_tell,
    confirmed,
    figure,
    from_memory,
    put,
    requires,
    tables,
)
from wirecalc.trade.overcurrent import FASTEST_THERMAL

from ..inputs import BREAKER
from ..inputs_motor import DEVICE
from .instant_trip_inputs import (
    UL,
    CurveHigh,
    CurveLow,
    HeldCurrent,
    OpenedCurrent,
    OpeningTime,
    OutOfCircuit,
    TripSetting,
    refuse,
)

SETTING_LOW, SETTING_HIGH = 0.70, 1.40  # of the setting
CURVE_LOW, CURVE_HIGH = 0.75, 1.25  # of the ends of the maker's curve
LOWER, UPPER = "does not trip at once too low", "trips at once by its upper end"
NETA = confirmed("neta-100-8", "ANSI/NETA MTS-2019", "Table 100.8, adjustable trip", copies=2)
AB_4 = from_memory("nema-ab-4", "NEMA AB 4", "Table 4, trip that is not adjustable")
_PLAIN = "the breaker's trip at a short circuit"
_REPLACE = "have a licensed person replace it by one of the same type and rating"
_FINER = "raise the current in finer steps from the last that it held, cold each time"


class TripRange(NamedTuple):
    """From where to where in A the instantaneous part may trip, and whose limit that is."""

    low: float
    high: float
    source: Source
    origin: Origin = Origin.STANDARD


def trip_range(
    device: str,
    rating: float,
    setting: float | None,
    curve_low: float | None,
    curve_high: float | None,
) -> TripRange | None:
    """Return the range of a breaker; None where neither type, setting nor curve states one."""
    if device != UL:
        letter = device[-1].upper()
        rows = [r for r in tables.load("breaker-iec60898").rows if r.text("type") == letter]
        low, high = (next(r for r in rows if r.text("test") == test) for test in ("d", "e"))
        multiples = low.number("multiple"), high.number("multiple")
        return TripRange(multiples[0] * rating, multiples[1] * rating, low.source)
    if setting is not None:
        return TripRange(SETTING_LOW * setting, SETTING_HIGH * setting, NETA)
    if curve_low is not None and curve_high is not None:
        return TripRange(CURVE_LOW * curve_low, CURVE_HIGH * curve_high, AB_4)
    return None


@calculation(
    part="circuit",
    words=(
        "instantaneous trip test; magnetic trip; primary injection; breaker test set; pick-up",
        "injection test; breaker testing; trips too low; does not trip on a short; pulse test",
        "adjustable trip; instantaneous setting; trip dial; type B; type C; type D; MCB test",
    ),
    go_on="a licensed person refits it; note pole, current and test set",
    cautions=("dead-03", "dead-01", "brk-01"),
    not_checked=(
        "how long it holds an overload: its thermal part (trip)",
        "its other poles: each is tested alone",
        "contacts, and what short circuit it can still break: no trip test shows it",
        "where on the wave the test set closes: an offset first crest trips it lower",
    ),
    refuse=refuse,
    example_with=(
        "device=iec-60898-c",
        "breaker=16 A",
        "opened_current",
        "opening_time",
        "held_current",
        "out_of_circuit=yes",
    ),
)
def instant_trip(
    device: Annotated[str, DEVICE],
    breaker: Annotated[float, BREAKER],
    opened_current: OpenedCurrent = None,
    opening_time: OpeningTime = None,
    held_current: HeldCurrent = None,
    trip_setting: TripSetting = None,
    curve_low: CurveLow = None,
    curve_high: CurveHigh = None,
    out_of_circuit: OutOfCircuit = None,
) -> Iterator[Item]:
    """Does this breaker trip at once where its mark says, on a test set?

    The trip lies between the highest current that it held and the least that opened it in under
    0.1 s; slower, the thermal part opened it, and it held. IEC 60898-1: held for 0.1 s at 3, 5, 10
    times its rating, open in 0.1 s at 5, 10, 20 times (types B, C, D). An adjustable trip: 30 %
    under to 40 % over its setting (ANSI/NETA MTS, Table 100.8). One that is not adjustable: 25 %
    under to 25 % over its maker's curve (NEMA AB 4, from memory). A house breaker of UL 489 has no
    range in its standard.

    For one pole of one breaker, out of its circuit, tested by a licensed person; each try from
    cold. Inputs: device; breaker in A; currents in A (up to 5000), time in s. Yields the range and
    two criteria. Refuses a fuse, and a current that it held above what opened it. Source: tables
    breaker-iec60898, fuses-ul248 (what is none); NETA and NEMA as said.
    """
    if out_of_circuit is not None:
        yield requires(
            "out of its circuit",
            out_of_circuit,
            says="a panel stays live ahead of its main",
            source=PRACTICE,
            action="STOP: no test in its place; a licensed person takes it out and tests it",
            plain=_PLAIN,
        )
    found = trip_range(device, breaker, trip_setting, curve_low, curve_high)
    if found is None:
        return
    for end, amperes in (("low", found.low), ("high", found.high)):
        yield figure(
            f"range, {end} end",
            amperes,
            "A",
            source=found.source,
            also=[(amperes / breaker, "times its rating")],
        )
    held, opened = held_current or 0.0, opened_current
    if opened is not None and opening_time is not None and opening_time >= FASTEST_THERMAL:
        yield answer(
            "what opened it",
            "the thermal part: it held this current at first",
            because=[f"it took {put(opening_time, 's')}, and at once is under 0.1 s"],
        )
        held, opened = opened, None
    yield _lower(found, held, opened)
    yield _upper(found, held, opened)


def _lower(found: TripRange, held: float, opened: float | None) -> Item:
    below = opened is not None and not at_or_above(opened, found.low)
    if not below and not at_or_above(held, found.low):
        return cannot_tell(
            LOWER,
            f"it held {held:.4g} A, and nothing says whether it holds {found.low:.4g} A",
            measure=_FINER,
            needs=("held_current",),
            source=found.source,
            plain=_PLAIN,
        )
    return at_least(
        LOWER,
        opened if below and opened is not None else held,
        found.low,
        "A",
        source=found.source,
        origin=found.origin,
        action=_REPLACE,
        plain=_PLAIN,
    )


def _upper(found: TripRange, held: float, opened: float | None) -> Item:
    above = not at_or_below(held, found.high)
    if not above and (opened is None or not at_or_below(opened, found.high)):
        return cannot_tell(
            UPPER,
            f"nothing says whether {found.high:.4g} A opens it at once",
            measure=f"{_FINER}, up to {found.high:.4g} A",
            needs=("opened_current",),
            source=found.source,
            plain=_PLAIN,
        )
    return at_most(
        UPPER,
        held if above or opened is None else opened,
        found.high,
        "A",
        source=found.source,
        origin=found.origin,
        action=f"do not use it; {_REPLACE}",
        plain=_PLAIN,
    )

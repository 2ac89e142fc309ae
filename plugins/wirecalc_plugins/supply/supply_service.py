"""The service that a plate belongs to, and the range that its volts at rest should keep."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    Item,
    Origin,
    answer,
    at_least,
    at_most,
    at_or_below,
    figure,
    not_checked,
    put,
    tables,
)

NOMINAL = (120.0, 208.0, 230.0, 240.0)  # volts of a service
AROUND_208 = 0.05  # share by which a 208 V service may be off; as ANSI C84.1 range A
LEGS_208 = (208.0, 240.0)  # volts between two lines that have 120 V each
IEC = 230.0  # the service of IEC 60038; the others are scaled from 120 V

_TELL = "measure at the panel and at another hour, then tell the utility"


def service_of(plate: float, plate_low: float | None) -> float | None:
    """Return the service that a plate is made for, None where it may be one of several."""
    if plate_low is not None:
        return None
    spans = ((110, 125, 120.0), (200, 209, 208.0), (220, 230, 230.0), (231, 250, 240.0))
    return next((nominal for low, high, nominal in spans if low <= plate <= high), None)


def service_top(plate: float) -> float:
    """Return the most volts of the service that a plate is made for; infinite where not known."""
    nominal = service_of(plate, None)
    if nominal is None:
        return math.inf
    table = tables.load("supply-ranges")
    if nominal == IEC:
        return table.row(range="iec-60038").number("high")
    return table.row(range="state-code").number("high") * nominal / 120


def looks_like_208(at_rest: float, plate: float, plate_low: float | None) -> bool:
    """Whether the volts at rest are those of a 208 V service, and the plate is for 240 V."""
    off = abs(at_rest - 208) <= AROUND_208 * 208 + 1e-9
    return plate_low is None and plate > IEC and off


def against_service(volts: float, nominal: float | None, says: str) -> Iterator[Item]:
    """Judge volts at rest by the range of a service; `says` is how the service was found."""
    if nominal is None:
        yield not_checked(
            "the service's own range", "the plate does not say which; nominal_voltage"
        )
        return
    if says:
        yield answer("service", says)
    yield from _iec(volts) if nominal == IEC else _scaled(volts, nominal)


def _iec(volts: float) -> Iterator[Item]:
    row = tables.load("supply-ranges").row(range="iec-60038")
    for end, name, sense in (
        ("low", "service volts, lower limit", at_least),
        ("high", "service volts, upper limit", at_most),
    ):
        yield sense(
            name,
            volts,
            row.number(end),
            "V",
            source=row.source,
            advisory=True,
            behind="90 and 110 % of the plate's volts while the load runs",
            says="230 V plus and minus 10 %",
            action=_TELL,
        )


def _range_end(row: tables.Row, end: str, nominal: float) -> Item:
    at_120 = row.number(end)
    return figure(
        f"ANSI C84.1 range A, {end}",
        at_120 * nominal / 120,
        "V",
        source=row.source,
        toward="up" if end == "low" else "down",
        working=lambda: f"{put(at_120, 'V')} x {put(nominal, 'V')} / 120 V",
    )


def _scaled(volts: float, nominal: float) -> Iterator[Item]:
    rule, care, wide = (
        tables.load("supply-ranges").row(range=r) for r in ("state-code", "ansi-a", "ansi-b")
    )
    scale = nominal / 120
    yield from (_range_end(care, end, nominal) for end in ("low", "high"))
    for end, name, sense, sign in (
        ("low", "service volts, lower limit", at_least, -1),
        ("high", "service volts, upper limit", at_most, 1),
    ):
        limit, inner = rule.number(end) * scale, care.number(end) * scale
        within = [at_or_below(sign * volts, sign * end_) for end_ in (limit, inner)]
        by_memory = within == [True, False]
        yield sense(
            name,
            volts,
            inner if by_memory else limit,
            "V",
            source=(care if by_memory else rule).source,
            advisory=True,
            behind="90 and 110 % of the plate's volts while the load runs",
            says=f"range A; the {limit:.4g} V of one state's rule is kept"
            if by_memory
            else f"one state's rule; range B ends at {wide.number(end) * scale:.4g} V, from memory",
            action=_TELL,
        )


def match(
    nominal: float, plate: float, plate_low: float | None, low: float, high: float
) -> Iterator[Item]:
    """Judge the service itself against the plate: a 240 V plate does not match 208 V."""
    source = tables.load("supply-ranges").row(range="plate").source
    says = "the plate is for another service"
    power = 100 * (nominal / plate) ** 2
    if nominal == 208 and plate_low is None and nominal < low:
        yield answer(
            "part at fault",
            f"none: on 208 V a resistive load gives {power:.0f} % of its plate power",
            because=[f"(208 V / {plate:g} V)^2"],
        )
    yield at_least(
        "service for the plate, lower limit",
        nominal,
        low,
        "V",
        source=source,
        origin=Origin.MAKER,
        says=says,
        action="change no part for it; ask the maker for a 208 V version or part",
    )
    yield at_most(
        "service for the plate, upper limit",
        nominal,
        high,
        "V",
        source=source,
        origin=Origin.MAKER,
        says=says,
        action="do not plug it in: it wants another outlet",
    )

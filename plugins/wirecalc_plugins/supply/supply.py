"""The supply at the plug: its volts against plate and service, and what is lost on the way."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Annotated

from wirecalc import (
    Item,
    Nameplate,
    Problem,
    Reading,
    answer,
    at_least,
    at_most,
    at_or_below,
    calculation,
    cannot_tell,
    figure,
    not_checked,
    put,
    tables,
)
from wirecalc.sources import computed

from ..inputs import NAMEPLATE_VOLTAGE
from .path import ADVICE, ADVISED_PCT, TOTAL_PCT

NOMINAL = (120.0, 208.0, 240.0)  # volts of a service
DRIFT = 0.03  # share by which a supply may rise between two readings; common practice
GHOST = 0.25  # share of the plate's volts; less is a meter on an open wire, or a slip of the unit

_RESISTIVE = computed("resistive", "power of a resistance", "goes with the square of the volts")
_AT_LOAD = "measure the volts at the plug while the load runs"
_LOST = "look for the loss: upstream, drop; a dead outlet: breaker, GFCI or an open joint"
_IS_IT_208 = "is it a 208 V service? Then no part is at fault; else " + _LOST
_WIRE_OR_JOINT = (
    "ask upstream whether the wire explains it, or a bad joint; if only the meter's error reaches "
    "so far and one meter in one range read both, its percent is the same in both and cancels: for "
    "this question alone leave the percent out of both and keep the counts"
)
_HALF = "one leg is open (breaker, fuse, joint), or it is a 120 V outlet: read each leg to neutral"
_TOO_HIGH = "do not run it; see that plug and plate are of one voltage, then call the utility"


def _reading(text: str, typical: str) -> Reading:
    return Reading("V", low=0, high=700, typical=typical, text=text)


def _refuse(
    nameplate_voltage: float,
    voltage_running: float | None,
    voltage_at_rest: float | None,
    voltage_at_start: float | None,
    nameplate_voltage_low: float | None,
    nominal_voltage: float | None,
) -> Iterator[Problem]:
    if nameplate_voltage_low is not None:
        yield from _refuse_plate(nameplate_voltage_low, nameplate_voltage)
    if nominal_voltage is not None and nominal_voltage not in NOMINAL:
        yield Problem(
            "nominal_voltage", f"{nominal_voltage:g} V", "a service is 120 V, 208 V or 240 V"
        )
    readings = {
        "voltage_at_rest": voltage_at_rest,
        "voltage_running": voltage_running,
        "voltage_at_start": voltage_at_start,
    }
    sound = []
    for name, volts in readings.items():
        if volts is not None and not 0 < volts < GHOST * nameplate_voltage:
            sound.append((name, volts))
        elif volts is not None:
            yield Problem(
                name,
                f"{volts:g} V is neither a supply for a {nameplate_voltage:g} V plate nor a "
                "dead outlet",
                "check the unit, and test with a lamp: an open wire shows such volts; dead is 0 V",
            )
    for (_, before), (name, volts) in pairwise(sound):
        if volts > before * (1 + DRIFT):
            yield Problem(
                name,
                f"{volts:g} V is over the {before:g} V before the load was on",
                "are the readings exchanged? Measure again, one right after the other",
            )


def _refuse_plate(low: float, high: float) -> Iterator[Problem]:
    if low >= high:
        yield Problem(
            "nameplate_voltage_low", f"{low:g} V is not below {high:g} V", "exchange them"
        )
    elif low * 1.1 < high * 0.9:
        yield Problem(
            "nameplate_voltage_low",
            f"{low:g}/{high:g} V is no span of volts: a three-wire supply, or two connections",
            "leave it out, and give the volts that the load is connected for",
        )


@calculation(
    part="circuit",
    cautions=("live-01", "meter-01", "brk-01"),
    not_checked=(
        "a maker's narrower span: one service manual allows 6 % off the plate",
        "the volts at another time of the day",
    ),
    refuse=_refuse,
    example_with=("voltage_running", "voltage_at_rest"),
)
def supply(
    nameplate_voltage: Annotated[float, NAMEPLATE_VOLTAGE],
    voltage_running: Annotated[
        float | None, _reading("volts at the plug while the load runs", "117.2 V")
    ] = None,
    voltage_at_rest: Annotated[
        float | None, _reading("volts at the plug with nothing running", "119.4 V")
    ] = None,
    voltage_at_start: Annotated[
        float | None, _reading("lowest volts at the plug during a start", "109 V")
    ] = None,
    nameplate_voltage_low: Annotated[
        float | None,
        Nameplate(
            "V",
            low=12,
            high=600,
            typical="208 V",
            text="lower volts of a 208/240 V plate",
            goes_with="nameplate_voltage",
        ),
    ] = None,
    nominal_voltage: Annotated[
        float | None,
        Nameplate("V", low=100, high=300, typical="120 V", text="the service: 120, 208 or 240 V"),
    ] = None,
) -> Iterator[Item]:
    """Is the supply voltage acceptable?

    Running volts past 90 or 110 % of the plate fail (makers' sheets); without them it can't be
    told, and the volts at rest are held against the same limits, since a load only lowers them.
    Volts at rest are also held against the service, scaled from 120 V, as advice: 113 to 127 V by
    one state's rule, and 114 to 126 V, ANSI C84.1 range A from memory. Over 3 % lost when the
    load comes on is marginal (advice of the NEC); the errors of the two readings count as
    independent, as nothing says that one meter read both. Volts at start under 90 % fail, as in
    dip. A 240 V plate does not match a 208 V service.

    Inputs in V: nameplate_voltage (12 to 600) and its lower end, readings at rest, running and at
    start (0 to 700; 0 is a dead outlet), nominal_voltage. Yields shares of the plate, power of a
    resistive load, criteria. Refuses volts that rise by over 3 % with the load, under 25 % of
    the plate, and a plate of two voltages that are no span. Source: table supply-ranges.
    """
    plate = tables.load("supply-ranges").row(range="plate")
    low = plate.number("low") / 100 * (nameplate_voltage_low or nameplate_voltage)
    high = plate.number("high") / 100 * nameplate_voltage
    if nominal_voltage is not None:
        yield from _match(nominal_voltage, nameplate_voltage, nameplate_voltage_low, low, high)
    if voltage_running is not None:
        own = nameplate_voltage_low if nominal_voltage == 208 else None
        yield from _shares(voltage_running, own or nameplate_voltage)
        yield from _against_plate("running volts", voltage_running, low, high)
    else:
        yield cannot_tell(
            "running volts, lower limit",
            "the volts while the load runs were not given; those at rest show no bad joint",
            measure=_AT_LOAD,
            needs=("voltage_running",),
        )
    if voltage_at_rest is not None:
        if voltage_running is None:
            yield from _against_plate("volts at rest", voltage_at_rest, low, high)
        else:
            yield from _lost_with_load(voltage_at_rest, voltage_running)
        nominal = nominal_voltage or _service_of(nameplate_voltage, nameplate_voltage_low)
        yield from _against_service(voltage_at_rest, nominal, nominal_voltage is None)
    if voltage_at_start is not None:
        yield at_least(
            "volts at start against the plate",
            voltage_at_start,
            low,
            "V",
            source=plate.source,
            says="90 % of the plate, as dip has it",
            action="find what takes the volts: dip; no cord, fewer loads on the circuit",
        )


def _shares(volts: float, plate: float) -> Iterator[Item]:
    yield figure(
        "share of the plate's volts",
        100 * volts / plate,
        "%",
        working=lambda: f"100 x {put(volts)} V / {put(plate)} V",
    )
    yield figure(
        "power of a resistive load",
        100 * (volts / plate) ** 2,
        "%",
        source=_RESISTIVE,
        working=lambda: f"100 x ({put(volts)} V / {put(plate)} V)^2",
    )


def _against_plate(what: str, volts: float, low: float, high: float) -> Iterator[Item]:
    source = tables.load("supply-ranges").row(range="plate").source
    name, says = f"{what}, lower limit", "90 % of the plate"
    action = _IS_IT_208 if 190 < low < 230 and volts > 180 else _LOST
    action = _HALF if low > 180 and 0.4 * high < volts < 0.6 * high else action
    yield at_least(name, volts, low, "V", source=source, says=says, action=action)
    name, says = f"{what}, upper limit", "110 % of the plate"
    yield at_most(name, volts, high, "V", source=source, says=says, action=_TOO_HIGH)


def _lost_with_load(at_rest: float, running: float) -> Iterator[Item]:
    """Show and judge what is lost when the load comes on; volts at rest of 0 are a dead outlet."""
    lost = at_rest - running
    yield figure(
        "volts lost when the load comes on",
        lost,
        "V",
        working=lambda: f"{put(at_rest, 'V')} - {put(running, 'V')}",
    )
    if at_rest > 0:
        yield at_most(
            "volts lost with the load, of those at rest",
            100 * lost / at_rest,
            TOTAL_PCT,
            "%",
            caution=ADVISED_PCT,
            source=ADVICE,
            advisory=True,
            says="advice, no rule: 3 % for a branch circuit, 5 % with its feeder",
            action=_WIRE_OR_JOINT,
        )


def _match(
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
        says=says,
        action="change no part for it; ask the maker for a 208 V version or part",
    )
    yield at_most(
        "service for the plate, upper limit",
        nominal,
        high,
        "V",
        source=source,
        says=says,
        action="do not plug it in: it wants another outlet",
    )


def _service_of(plate: float, plate_low: float | None) -> float | None:
    """Return the service that a plate is made for, None where it may be one of several."""
    if plate_low is not None:
        return None
    spans = ((100, 127, 120.0), (200, 209, 208.0), (220, 250, 240.0))
    return next((nominal for low, high, nominal in spans if low <= plate <= high), None)


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


def _against_service(volts: float, nominal: float | None, by_plate: bool) -> Iterator[Item]:
    if nominal is None:
        yield not_checked(
            "the service's own range", "the plate does not say which; nominal_voltage"
        )
        return
    if by_plate:
        yield answer("service", f"taken as {nominal:g} V, from the plate")
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
            says=f"range A; the {limit:.4g} V of one state's rule is kept"
            if by_memory
            else f"one state's rule; range B ends at {wide.number(end) * scale:.4g} V, from memory",
            action="measure at the panel and at another hour, then tell the utility",
        )

"""The ohms of a ground path from what was read, the meter's error counted as it enters."""

from __future__ import annotations

import math
from collections.abc import Generator, Iterator
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Bands,
    Item,
    Origin,
    Wire,
    at_or_below,
    cannot_tell,
    computed,
    figure,
    not_checked,
    put,
    requires,
)
from wirecalc.trade.wire_runs import WireRun, known_metal

from ..lead_resistance import LEADS_OHM, Ohms

ONE_A = 1.0  # a known current below it misses a bond of few strands, as an ohmmeter does; practice
STANDARDS_A = 10.0  # the least test current of the standards, from 12 V at most
COUNTS = 2  # of the last digit, one of each of two readings that share their offset; practice
CORD_AT_LEAST_OHM = 0.001  # under 3 ft of 6 AWG (0.395 ohm/kft), a short cord of a range; practice
OF_ITS_CORD = 0.9  # of the cord's least ohms, for its length as measured; practice
THROUGH_A_CORD = ("plug-pin", "neutral-blade")
OWN_GROUND_WIRE = "ground wire of the cord"

Span = tuple[float, float]  # the ends of a reading
_OPEN = "find the break: the lead off its screw, a painted face, the cord, the pin of the plug"
_OHM = computed("ohms-law", "R = U / I")


class ReadPath(NamedTuple):
    """A path in ohm: its middle, its ends, and the readings of it that lack the meter's error."""

    middle: float
    ends: Ohms
    exact: tuple[str, ...] = ()


class Meter(NamedTuple):
    """How an ohmmeter was used: on one range for path and leads, and its last digit in ohm."""

    same_range: bool
    resolution: float | None


def by_ohmmeter(reading: float, leads: float | None, meter: Meter, bands: Bands) -> ReadPath:
    """Return a reading less its leads; leads that were not read have 0 to 0.3 ohm.

    Two readings of one meter on one range have the same offset, which drops out; a count of each
    and the error that grows with the reading are left.
    """
    low, high = bands.get("ground_resistance", (reading, reading))
    if leads is None:
        alone = () if "ground_resistance" in bands else ("ground_resistance",)
        return ReadPath(reading, _floored(low - LEADS_OHM, high), alone)
    leads_low, leads_high = bands.get("lead_resistance", (leads, leads))
    needed = {"ground_resistance": reading, "lead_resistance": leads}
    exact = tuple(n for n, value in needed.items() if n not in bands and (value or n[0] == "g"))
    error, of_leads = high - reading, leads_high - leads
    past = low < reading == high  # "<0.1 ohm": a side, no error
    apart = low - leads_high, high - leads_low
    if meter.same_range and meter.resolution is not None and not exact and not past:
        shared = abs(error - of_leads) + COUNTS * meter.resolution
        path = reading - leads
        apart = max(apart[0], path - shared), min(apart[1], path + shared)
    return ReadPath(reading - leads, _floored(*apart), exact)


def by_current(amps: float, millivolts: float, bands: Bands) -> ReadPath:
    """Return the millivolts across a path over the current that was sent through it."""
    least_a, most_a = bands.get("test_current", (amps, amps))
    least_mv, most_mv = bands.get("path_drop", (millivolts, millivolts))
    highest = most_mv / least_a / 1000 if least_a > 0 else math.inf
    return ReadPath(millivolts / amps / 1000, Ohms(least_mv / most_a / 1000, highest))


def shown_by_ohmmeter(path: ReadPath, reading: float, leads: float) -> Item:
    """Show a reading in ohm less its leads."""
    return figure(
        "path to ground",
        max(path.middle, 0.0),
        "ohm",
        source=PRACTICE,
        band=(path.ends.low, path.ends.high),
        working=lambda: f"{put(reading, 'ohm')} - {put(leads, 'ohm')}",
    )


def shown_by_current(path: ReadPath, amps: float, millivolts: float) -> Item:
    """Show millivolts over amperes."""
    return figure(
        "path to ground",
        path.middle,
        "ohm",
        source=_OHM,
        band=(path.ends.low, path.ends.high) if math.isfinite(path.ends.high) else None,
        working=lambda: f"{put(millivolts)} / {put(amps)} / 1000; mV over A",
    )


def possible(path: ReadPath, point: str, own: Ohms | None) -> Iterator[Item]:
    """A path to the pin has at least the ohms of the cord's wire, `own` where that is known."""
    if point not in THROUGH_A_CORD:
        return
    least = CORD_AT_LEAST_OHM if own is None else OF_ITS_CORD * own.low
    if not at_or_below(least, path.ends.high):
        wire = "any cord" if own is None else "this cord's ground wire alone"
        yield cannot_tell(
            "path against its cord",
            f"{path.ends.high:.3g} ohm at the most, and {wire} has {least:.3g} ohm or more: both "
            "probes on one point, a lead off, or another unit than was read",
            measure="probe the bare case and the pin itself, and look at the unit on the meter",
            source=PRACTICE,
        )


def missed(amps: float | None) -> Iterator[Item]:
    """Say what the current of the test does not show."""
    if amps is None:
        yield not_checked(
            "a bond of few strands",
            "the milliamperes of an ohmmeter cross it as if it were whole; send a known current "
            f"of {ONE_A:g} A or more through the path and read the millivolts across it",
        )
    elif not at_or_below(STANDARDS_A, amps):
        yield not_checked(
            "whether it carries a fault current",
            f"the standards test at {STANDARDS_A:g} A or more, from 12 V at most",
        )


def of_cord(cord: Wire, feet: Span, celsius: Span) -> Generator[Item, None, Ohms]:
    """Yield the resistance of the cord's ground wire, one way; return its least and greatest."""
    most = WireRun(cord, feet[1]), celsius[1]
    least = WireRun(cord, feet[0], least=True), celsius[0]
    low, high = (run.one_way(temperature) for run, temperature in (least, most))
    yield _ground_wire("greatest", *most)
    if low != high:
        yield _ground_wire("least", *least)
    return Ohms(low, high)


def least_of_cord(cord: Wire | None, length: float | None, temperature: float) -> float:
    """Return the least ohms of the cord's ground wire; 0 where its metal is not known."""
    if cord is None or not known_metal(cord):
        return 0.0
    return WireRun(cord, length or 0.0, least=True).one_way(temperature)


def _ground_wire(name: str, run: WireRun, temperature: float) -> Item:
    per_length = run.per_length(temperature)
    return figure(
        f"{OWN_GROUND_WIRE}, {name}",
        run.one_way(temperature),
        "ohm",
        source=per_length.source,
        working=lambda: (
            f"{put(run.length_ft, 'ft')} x {put(per_length.ohm_per_kft, 'ohm/kft')} / 1000; one "
            f"way at {put(temperature, 'C')}"
        ),
    )


def _floored(low: float, high: float) -> Ohms:
    return Ohms(max(0.0, low), max(0.0, high))


def closed(reading: float | None, is_open: bool | None, cord: bool | None) -> Iterator[Item]:
    """Require that the path, and the cord's own ground wire, are closed."""
    parts = []
    if reading is not None or is_open:
        parts.append(("the path to ground is closed", not is_open, _OPEN))
    if cord is not None:
        parts.append((OWN_GROUND_WIRE, cord, "replace the cord"))
    for name, is_closed, action in parts:
        yield requires(
            name,
            is_closed,
            says="it reads open: the case can become live",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=action,
        )

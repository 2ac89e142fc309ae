"""What the simulated starts look like, in words."""

from __future__ import annotations

from typing import NamedTuple

from wirecalc import Item, listing

from . import meter_readings, starting
from .each_meter import each_meter
from .healthy_starts import Band, HealthyStarts

_UNTOLD = "cannot tell"


class Shown(NamedTuple):
    """A variant, its curve and what the meters show of it."""

    name: str
    curve: starting.Curve
    meters: meter_readings.MeterReadings


def looks_like(one: Shown, healthy: HealthyStarts, duration: float) -> str:
    """Say in words what a meter shows of a fault."""
    meters = one.meters
    if meters.speed_time is None:
        text = f"does not come to speed: the meter stays at {meters.settled:.3g} A"
        if healthy.sure:
            times = meters.settled / healthy.starts[0].meters.settled
            text += f", {times:.1f} times the healthy settled current"
        return text
    if meters.settle_time is None:
        return (
            f"at speed after {meters.speed_time:.2g} s, and still not settled at {duration:g} s: "
            f"{meters.settled:.3g} A"
        )
    return (
        f"at speed after {meters.speed_time:.2g} s; the meter falls from {meters.cycle:.3g} A to "
        f"{meters.settled:.3g} A within {meters.settle_time:.2g} s"
    )


def said_of_healthy(healthy: HealthyStarts, duration: float) -> str:
    """Say in words what a meter shows of the healthy start, as far as it is known."""
    meters = healthy.starts[0].meters
    if healthy.sure:
        speed, settle = (_span(healthy.band(f), 2) for f in ("speed_time", "settle_time"))
        settled = _span(healthy.band("settled"), 3)
        return (
            f"at speed after {speed} s; the meter falls from {meters.cycle:.3g} A to "
            f"{settled} A within {settle} s"
        )
    if healthy.motor.estimated and healthy.motor.machine.start is not None:
        return cannot_say_whether_it_starts(healthy)
    if healthy.assumed and not healthy.never:
        return "starts the light end of the load that was assumed and not the heavy one"
    if meters.settle_time is not None or not healthy.never:
        return "starts at one end of the readings and not at the other"
    if meters.speed_time is not None:
        return f"at speed after {meters.speed_time:.2g} s, and still not settled at {duration:g} s"
    torque, load = _percent(healthy.torque), _percent(healthy.load)
    return (
        f"not at speed after {duration:g} s: its torque at standstill is {torque} of rated, "
        f"the load takes {load}, and the meter stays near {meters.settled:.3g} A"
    )


def cannot_say_whether_it_starts(healthy: HealthyStarts) -> str:
    """Say why an estimate leaves open whether the motor starts."""
    torque, load = _percent(healthy.torque), _percent(healthy.load)
    assumed = ", assumed" if "load_torque" in healthy.assumed else ""
    known = f"torque at standstill {torque} of rated, load {load}{assumed}"
    if healthy.torque[0] > healthy.load[1]:
        return f"the estimate starts this load, and cannot tell whether in time: {known}"
    if not healthy.never:
        return f"the estimate cannot tell whether it starts this load: {known}"
    if healthy.assumed:
        return f"no motor of the estimate starts the load that was assumed: {known}"
    return (
        f"the estimate has too little torque for this load, and the estimate, not the motor, may "
        f"be wrong: {known}"
    )


def not_shown(healthy: HealthyStarts) -> str:
    """Say why a fault is not shown beside a start that may not happen."""
    why = (
        "whether the healthy motor starts cannot be told"
        if not healthy.never
        else ("the healthy motor does not start this load in the simulation")
    )
    return f"not shown: {why}, so there is nothing to compare it with"


def clamp_shows(shown: list[Shown], healthy: HealthyStarts) -> Item:
    """List what a clamp meter on the line shows of each start."""
    columns = ("variant", "highest", "one cycle", "first 100 ms", "settled", "settles after")
    return listing(
        "What a clamp meter on the line shows (A; s)",
        columns,
        [
            (
                s.name,
                *(rounded(v) for v in (s.meters.peak, s.meters.cycle, s.meters.inrush)),
                _UNTOLD if _open(s, healthy) else rounded(s.meters.settled),
                _UNTOLD if _open(s, healthy) else _time(s.meters.settle_time),
            )
            for s in shown
        ],
    )


def each_meter_shows(healthy: HealthyStarts) -> Item:
    """List what each kind of meter shows of the same healthy start, one after the other."""
    shown = each_meter(healthy)
    rows = (
        ("inrush, first 100 ms", shown.inrush),
        ("peak-hold, crest, by the instant of closing", shown.crest),
        ("max-hold, a reading every 250 to 500 ms", shown.held),
    )
    columns = ("meter", "least", "most")
    return listing(
        "What each kind of meter shows of the healthy start (A)",
        columns,
        [(name, rounded(least), rounded(most)) for name, (least, most) in rows],
    )


def machine_side_shows(shown: list[Shown], healthy: HealthyStarts) -> Item:
    """List what happens at the motor in each start."""
    columns = ("variant", "at speed after", "speed", "lowest volts", "heat")
    return listing(
        "At the motor (s; rpm; V; J in the start winding)",
        columns,
        [
            (
                s.name,
                _UNTOLD if _open(s, healthy) else _time(s.meters.speed_time),
                _UNTOLD if _open(s, healthy) else round(s.meters.rpm),
                rounded(s.meters.volts),
                _UNTOLD if _open(s, healthy) else rounded(s.meters.start_heat),
            )
            for s in shown
        ],
    )


def _open(one: Shown, healthy: HealthyStarts) -> bool:
    """Whether a healthy start is one that an estimate leaves open."""
    return one.name == "healthy" and healthy.motor.estimated and not healthy.sure


def _time(seconds: float | None) -> float | str:
    return "does not" if seconds is None else rounded(seconds)


def _span(band: Band, digits: int) -> str:
    low, high = (f"{value:.{digits}g}" for value in band)
    return low if low == high else f"{low} to {high}"


def _percent(band: Band) -> str:
    low, high = (f"{value:.0f}" for value in band)
    return f"{low} %" if low == high else f"{low} to {high} %"


def rounded(value: float) -> float:
    """Return a reading as it is listed: three digits."""
    shown = float(f"{value:.3g}")
    return int(shown) if shown >= 100 else shown

"""What the simulated starts look like, in words."""

from __future__ import annotations

from typing import NamedTuple

from wirecalc import Item, listing

from . import meter_readings, starting


class Shown(NamedTuple):
    """A variant, its curve and what the meters show of it."""

    name: str
    curve: starting.Curve
    meters: meter_readings.MeterReadings


def looks_like(one: Shown, healthy: meter_readings.MeterReadings | None, duration: float) -> str:
    """Say in words what a meter shows of a variant."""
    meters = one.meters
    if meters.speed_time is None:
        text = f"does not come to speed: the meter stays at {meters.settled:.3g} A"
        return text + _beside(meters, healthy)
    if meters.settle_time is None:
        return (
            f"at speed after {meters.speed_time:.2g} s, and still not settled at {duration:g} s: "
            f"{meters.settled:.3g} A"
        )
    return (
        f"at speed after {meters.speed_time:.2g} s; the meter falls from {meters.cycle:.3g} A to "
        f"{meters.settled:.3g} A within {meters.settle_time:.2g} s"
    )


def _beside(
    meters: meter_readings.MeterReadings, healthy: meter_readings.MeterReadings | None
) -> str:
    if healthy is None or healthy is meters or healthy.speed_time is None:
        return ""
    return f", {meters.settled / healthy.settled:.1f} times the healthy settled current"


def clamp_shows(shown: list[Shown]) -> Item:
    """List what a clamp meter on the line shows of each start."""
    columns = ("variant", "highest", "one cycle", "first 100 ms", "settled", "settles after")
    return listing(
        "What a clamp meter on the line shows (A; s)",
        columns,
        [
            (
                s.name,
                *(_round(v) for v in (s.meters.peak, s.meters.cycle, s.meters.inrush)),
                _round(s.meters.settled),
                "does not" if s.meters.settle_time is None else _round(s.meters.settle_time),
            )
            for s in shown
        ],
    )


def machine_side_shows(shown: list[Shown]) -> Item:
    """List what happens at the motor in each start."""
    columns = ("variant", "at speed after", "speed", "lowest volts", "heat")
    return listing(
        "At the motor (s; rpm; V; J in the start winding)",
        columns,
        [
            (
                s.name,
                "does not" if s.meters.speed_time is None else _round(s.meters.speed_time),
                round(s.meters.rpm),
                _round(s.meters.volts),
                _round(s.meters.start_heat),
            )
            for s in shown
        ],
    )


def _round(value: float) -> float:
    shown = float(f"{value:.3g}")
    return int(shown) if shown >= 100 else shown

"""NEC 430.32, 430.52, 440.52: who sees the overload of a motor or compressor, and its settings."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, at_or_below, cannot_tell, figure, not_checked, put, requires, tables

from .motor_rules import COMPRESSOR, INSTANTANEOUS, MOTOR


def overload_limits(
    kind: str, amps: float | None, plate: float | None, cool_running: bool | None
) -> Iterator[Item]:
    """Yield the largest overload settings: they protect the motor, which the device does not.

    `amps` is the current that sizes the circuit, `plate` the full-load current on the plate.
    """
    rows = tables.load("nec-motor-overload")
    if kind == COMPRESSOR:
        if amps is not None:
            relay = rows.row(protector="compressor relay", case="any")
            yield _percent("largest trip of the overload relay", relay, amps)
            system = rows.row(protector="compressor protective system", case="any")
            yield _percent("most that its protector may let run on", system, amps)
        return
    if plate is not None:
        case = "service factor 1.15 or rise 40 C" if cool_running else "other"
        separate = rows.row(protector="separate", case=case)
        yield _percent("largest overload setting", separate, plate)
        if cool_running is None:
            text = "its service factor and rise were not given, so the stricter 115 % counts"
            yield not_checked("an overload setting of 125 %", text)
    if amps is not None:
        bands = rows.where(protector="thermal")
        ends = ((r, r.cells["to_A"]) for r in bands)
        thermal = next(r for r, to in ends if to is None or at_or_below(amps, r.number("to_A")))
        yield _percent("largest trip of a thermal protector", thermal, amps)


def _percent(name: str, row: tables.Row, amps: float) -> Item:
    percent = row.number("percent")
    return figure(
        name,
        percent / 100 * amps,
        "A",
        source=row.source,
        working=lambda: f"{put(percent)} / 100 x {put(amps)} A",
        toward="down",
    )


def combination(device: str, listed: bool | None) -> Iterator[Item]:
    """Require that an instantaneous breaker is part of a listed combination.

    It has no delayed trip: nothing but the overload protector of its combination sees an overload.
    """
    if device != INSTANTANEOUS:
        return
    name = "instantaneous breaker in its combination"
    source = tables.load("nec-motor-devices").row(kind=MOTOR, device=device, case="starts").source
    if listed is None:
        yield cannot_tell(
            name,
            "it was not said whether it is part of a listed combination",
            measure="read the marking of the controller that it sits in",
            needs=("listed_combination",),
            source=source,
        )
        return
    yield requires(
        name,
        listed,
        says="by itself it does not guard a motor circuit: it sees no overload",
        source=source,
        action="have an electrician fit an inverse-time breaker within the limit",
    )

"""NEC 430.32, 430.52, 440.52: who sees the overload of a motor or compressor, and its settings."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    at_most,
    at_or_below,
    cannot_tell,
    figure,
    not_checked,
    put,
    requires,
    tables,
)

from .motor_rules import COMPRESSOR, INSTANTANEOUS, MOTOR

SETTING = "overload setting"
_PLAIN = "the protector that switches the motor off before it burns"


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
        raised = rows.row(protector="raised", case=case)
        yield _percent("largest setting where that does not let it start", raised, plate)
        if cool_running is None:
            text = "its service factor and rise were not given, so the stricter 115 % counts"
            yield not_checked("an overload setting of 125 %", text)
    if amps is not None:
        bands = rows.where(protector="thermal")
        ends = ((r, r.cells["to_A"]) for r in bands)
        thermal = next(r for r, to in ends if to is None or at_or_below(amps, r.number("to_A")))
        yield _percent("largest trip of a thermal protector", thermal, amps)


def judge_relay(setting: float | None, amps: float | None) -> Iterator[Item]:
    """Judge the amps of a compressor's overload relay by the current that sizes its circuit."""
    if setting is not None and amps is not None:
        row = tables.load("nec-motor-overload").row(protector="compressor relay", case="any")
        yield _within(setting, row, amps, f"the compressor's {amps:g} A")


def judge_setting(
    setting: float | None, plate: float | None, cool_running: bool | None, too_low: bool | None
) -> Iterator[Item]:
    """Judge the amps of a motor's separate overload; what is not known of it counts either way."""
    if setting is None or plate is None:
        return
    rows = tables.load("nec-motor-overload")

    def limit(protector: str, cool: bool) -> tables.Row:
        case = "service factor 1.15 or rise 40 C" if cool else "other"
        return rows.row(protector=protector, case=case)

    surely = limit("raised" if too_low else "separate", bool(cool_running))
    perhaps = limit("separate" if too_low is False else "raised", cool_running is not False)
    least, most = (row.number("percent") / 100 * plate for row in (surely, perhaps))
    if at_or_below(setting, least) or not at_or_below(setting, most):
        row = surely if at_or_below(setting, least) else perhaps
        yield _within(setting, row, plate, f"the plate's {plate:g} A")
        return
    needs = [] if cool_running is not None else ["cool_running"]
    needs += [] if too_low is not None else ["overload_too_low"]
    yield cannot_tell(
        SETTING,
        f"{setting:g} A is over {least:.4g} A, and {most:.4g} A may be allowed",
        measure="read service factor and rise on the plate; try it at the first limit",
        needs=needs,
        source=surely.source,
        plain=_PLAIN,
    )


def _within(setting: float, row: tables.Row, amps: float, of: str) -> Item:
    percent = row.number("percent")
    return at_most(
        SETTING,
        setting,
        percent / 100 * amps,
        "A",
        source=row.source,
        says=f"{percent:g} % of {of}",
        action="set it, or have one fitted, within the limit; never bridge it",
        plain=_PLAIN,
    )


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

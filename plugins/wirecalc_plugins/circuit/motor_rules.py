"""NEC 430 and 440: the current that sizes a motor circuit, and its largest device."""

from __future__ import annotations

from typing import NamedTuple

from wirecalc import (
    Item,
    Source,
    at_most,
    at_or_below,
    cannot_tell,
    computed,
    confirmed,
    figure,
    put,
    tables,
)

from .standard_ratings import rating_at_least, rating_at_most

MOTOR, COMPRESSOR = "motor", "compressor"
INVERSE, INSTANTANEOUS = "inverse-time breaker", "instantaneous breaker"
DEVICES = (INVERSE, "time-delay fuse", "nontime-delay fuse", INSTANTANEOUS)
CONDUCTOR = 1.25  # NEC 430.22, 430.24, 440.32
_NAME = "device on this motor circuit"
_PRINTED_AS = 0.002  # 1/3 hp stands as 0.3333; a power nearer than this is that of the row
_COLUMNS = (  # system ranges of the table, V
    (110, 120, "at_115V_A"),
    (200, 200, "at_200V_A"),
    (208, 208, "at_208V_A"),
    (220, 240, "at_230V_A"),
)
_FLOOR_A = 15.0
_FLOOR = computed(  # 440.22(A) has an exception that says so, from memory
    "nec-240-6-least", "NEC", "240.6(A), the least standard rating; a smaller breaker is none"
)
_WITH_OTHERS = confirmed("nec-440-22-b", "NEC", "440.22(B)", copies=1)
_BY_PLATE = confirmed(
    "nec-430-6-a-1", "NEC", "440.6(B); 430.6(A)(1) exceptions, these from memory", copies=1
)
_BY_RLA = confirmed("nec-440-2", "NEC", "440.2 and 440.6(A)", copies=1)
_FIT = "have an electrician fit a device within the limit"


class Sizing(NamedTuple):
    """The current in A that sizes conductors and device, and where it stands."""

    amps: float
    source: Source
    working: str


class _Limit(NamedTuple):
    """The largest rating of a device in A, and where it stands."""

    amps: float
    source: Source


def table_current(table: str, horsepower: float, voltage: float) -> Sizing | None:
    """Return the current of a motor by horsepower and rated volts; None between rows.

    `table` is nec-motor-full-load (430.248) or nec-motor-locked-rotor (430.251(A)).
    """
    column = next((c for low, high, c in _COLUMNS if low <= voltage <= high), "")
    for row in tables.load(table).rows:
        if column in row.cells and abs(horsepower / row.number("hp_decimal") - 1) < _PRINTED_AS:
            working = f"{row.text('hp')} hp, column of {column[3:6]} V"
            return Sizing(row.number(column), row.source, working)
    return None


def motor_sizing(
    horsepower: float | None, voltage: float | None, plate: float | None, by_plate: bool | None
) -> Sizing | None:
    """Return the current that sizes a motor's circuit; None where the table has no row."""
    if by_plate:
        return None if plate is None else Sizing(plate, _BY_PLATE, "the plate's current")
    if horsepower is None or voltage is None:
        return None
    return table_current("nec-motor-full-load", horsepower, voltage)


def plate_sizing(sizing: Sizing, plate: float | None, by_plate: bool | None) -> Sizing | None:
    """Return the plate's current where it may size a motor's circuit in place of the table's.

    So while it was not said whether the plate governs, and whenever it has more than the table:
    that is not for low-speed, high-torque and multispeed motors, or the plate was misread.
    """
    if plate is None or by_plate or (by_plate is False and at_or_below(plate, sizing.amps)):
        return None
    return Sizing(plate, _BY_PLATE, "the plate's current")


def compressor_sizing(rated: float | None, selection: float | None) -> Sizing | None:
    """Return the current that sizes a compressor's circuit, the greater of RLA and BCSC."""
    amps = max(rated or 0.0, selection or 0.0)
    return Sizing(amps, _BY_RLA, "the greater of RLA and BCSC") if amps else None


def unsized(kind: str, by_plate: bool | None) -> Item:
    """Say what is missing for the current that sizes the circuit."""
    name = "current that sizes the circuit"
    if kind == COMPRESSOR:
        return cannot_tell(
            name,
            "neither RLA nor branch-circuit selection current was given",
            measure="read RLA on the plate of the compressor",
            needs=("rated_load_current", "branch_selection_current"),
        )
    if by_plate:
        return cannot_tell(
            name,
            "the plate's amps govern, and were not given",
            measure="read the amps on the plate",
            needs=("full_load_current",),
        )
    return cannot_tell(
        name,
        "NEC Table 430.248 has no row for this motor, or horsepower or volts were not given",
        measure="read hp and volts on the plate; for a fan or a listed appliance its amps",
        needs=("horsepower", "nameplate_voltage", "full_load_current", "plate_governs"),
    )


def largest_device(kind: str, device: str, amps: float, others: float) -> float | None:
    """Return the largest device in A on which it starts; None where NEC 430.53 rules."""
    return None if kind == MOTOR and others else _first(kind, device, amps, others)[1].amps


def device_limit(kind: str, device: str, amps: float, others: float) -> Item:
    """Return the largest device as a figure, with what it is worked out from."""
    row, first = _first(kind, device, amps, others)
    return figure(
        "largest device by the rule",
        first.amps,
        "A",
        source=first.source,
        working=lambda: _device_working(row, first, amps, others),
        toward="down",
    )


def _device_working(row: tables.Row, first: _Limit, amps: float, others: float) -> str:
    percent = row.number("percent")
    if first.source is _FLOOR:
        return f"a device of {put(first.amps, 'A')} may always serve a compressor"
    if row.text("rounded") == "not":
        more = f" + {put(others, 'A')}" if others else ""
        return f"{put(percent)} / 100 x {put(amps, 'A')}{more}; not rounded"
    most = put(percent / 100 * amps + others, "A")
    more = f" with {put(others, 'A')} of other loads" if others else ""
    rule = {"up": "the least standard rating at or above", "down": "the largest at or below"}
    return f"{rule[row.text('rounded')]} {most}, {put(percent)} % of {put(amps, 'A')}{more}"


def judge_device(
    kind: str, device: str, rating: float, amps: float, others: float, will_not_start: bool | None
) -> Item:
    """Judge the rating of the device in A, which protects against short circuit only.

    Up to the first limit it holds; up to the second only where the motor will not start on the
    first; a device of 15 A may always serve a compressor.
    """
    if kind == MOTOR and others > 0:
        return cannot_tell(
            _NAME,
            "several loads behind one device: NEC 430.53 rules, which was not seen",
            measure="have an electrician read the code for this group",
        )
    row, first = _first(kind, device, amps, others)
    last = _last(kind, device, amps, others, first)
    if will_not_start and last is not None:
        first = last
    unsure = will_not_start is None or (will_not_start and last is None)
    inside = last is None or at_or_below(rating, last.amps)
    if unsure and inside and not at_or_below(rating, first.amps):
        return cannot_tell(
            _NAME,
            f"over {first.amps:.4g} A, {row.number('percent'):g} %; allowed only where the motor "
            "will not start on that",
            measure="find out whether it starts on the smaller device; never fit a larger one",
            needs=("will_not_start",),
            source=first.source,
        )
    return at_most(
        _NAME,
        rating,
        first.amps,
        "A",
        source=first.source,
        says=row.note if kind == COMPRESSOR and first.source is not _FLOOR else "",
        action=_FIT,
    )


def _row(kind: str, device: str, case: str) -> tables.Row | None:
    listed, of = ("hermetic", "any") if kind == COMPRESSOR else (kind, device)
    return tables.load("nec-motor-devices").find(kind=listed, device=of, case=case)


def _first(kind: str, device: str, amps: float, others: float) -> tuple[tables.Row, _Limit]:
    row = _row(kind, device, "starts")
    if row is None:
        raise LookupError(f"nec-motor-devices has no row for {kind}, {device}")
    return row, _limit(row, amps, others)


def _last(kind: str, device: str, amps: float, others: float, first: _Limit) -> _Limit | None:
    row = _row(kind, device, "will not start")
    if row is None:
        return None
    last = _limit(row, amps, others)
    return first if at_or_below(last.amps, first.amps) else last


def _limit(row: tables.Row, amps: float, others: float) -> _Limit:
    """Return percent of the motor's current, with the other loads, as a standard rating."""
    most = row.number("percent") / 100 * amps + others
    source = _WITH_OTHERS if others else row.source
    if row.text("rounded") == "up":
        fuse = row.text("device").endswith("fuse")
        return _Limit(rating_at_least(most, fuse=fuse), source)
    if row.text("rounded") == "not":
        return _Limit(most, source)
    rating = rating_at_most(most)
    return _Limit(_FLOOR_A, _FLOOR) if rating is None else _Limit(rating, source)
